"""Dressing with a single-point diamond: overlap, lead, traverse, the thread that it leaves.

Lengths in any one unit. A diamond with a round nose of radius ρ that cuts a deep touches the wheel
over a chord of that circle, b = 2 √(2 ρ a − a²). It moves f along the wheel in one turn of it; the
overlap ratio is U = b / f. For U of 1 or more its nose leaves cusps ρ − √(ρ² − f²/4) high, which is
f²/(8 ρ) nearly. Derived here.
"""

from halfangle_service.errors import Impossible
from halfangle_service.trade import elementary
from halfangle_service.trade.wording import of_any_unit


def active_width(nose_radius: float, depth: float) -> float:
    """Width over which a round nose touches a wheel that it cuts `depth` deep: a chord.

    >>> round(active_width(0.38, 0.025), 3)
    0.271

    Raises Impossible where the depth is more than the nose's radius.
    """
    if depth > nose_radius:
        raise Impossible(
            f"The diamond's nose has a radius of {of_any_unit(nose_radius)}; at "
            f"{of_any_unit(depth)} deep its "
            "shank would touch the wheel.",
            fields={
                "depth_per_pass": f"should be no more than the nose radius, "
                f"{of_any_unit(nose_radius)}"
            },
        )
    return 2.0 * elementary.sqrt(2.0 * nose_radius * depth - depth**2)


def cusp_height(nose_radius: float, lead: float) -> float | None:
    """Height of the cusps between two turns; None where the nose is too narrow for the lead."""
    return None if lead > 2.0 * nose_radius else _cusps(nose_radius, lead)


def _cusps(nose_radius: float, lead: float) -> float:
    """Not ρ − √(ρ² − f²/4), which cancels for a small lead."""
    half = lead / 2.0
    return half**2 / (nose_radius + elementary.sqrt(nose_radius**2 - half**2))


def lead_for(width: float, overlap_ratio: float) -> float:
    """Lead, along the wheel for one turn of it, that gives an overlap ratio."""
    return width / overlap_ratio


#: Overlap ratios between which roughness was seen to follow the cusps.
RULE_OVERLAPS = (1.0, 6.0)


def within_rule(overlap_ratio: float) -> bool:
    """True where the rules of roughness are taken to hold for an overlap ratio.

    A part in 10¹² is rounding: a lead of just the active width has an overlap of 1.
    """
    low, high = RULE_OVERLAPS
    return low * (1.0 - 1e-12) <= overlap_ratio <= high * (1.0 + 1e-12)


def roughness_by_cusps(known: float, nose_radius: float, known_lead: float, lead: float) -> float:
    """Roughness in proportion to the height of the cusps, from one that is known of another lead.

    Both leads are within the rule, so no wider than the nose.
    """
    return known * _cusps(nose_radius, lead) / _cusps(nose_radius, known_lead)


def roughness_by_power_rule(known: float, lead_ratio: float, depth_ratio: float) -> float:
    """Roughness as the square root of the lead and the fourth root of the depth of a pass."""
    return known * elementary.sqrt(lead_ratio * elementary.sqrt(depth_ratio))
