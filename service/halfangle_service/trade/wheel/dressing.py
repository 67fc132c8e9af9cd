"""Dressing with a single-point diamond: overlap, lead, traverse, the thread that it leaves.

Lengths in any one unit. A diamond with a round nose of radius ρ that cuts a deep touches the wheel
over a chord of that circle, b = 2 √(2 ρ a − a²). It moves f along the wheel in one turn of it; the
overlap ratio is U = b / f. For U of 1 or more its nose leaves cusps ρ − √(ρ² − f²/4) high, which is
f²/(8 ρ) nearly. Derived here.
"""

import math

from halfangle_service.errors import Impossible
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
    return 2.0 * math.sqrt(2.0 * nose_radius * depth - depth**2)


def cusp_height(nose_radius: float, lead: float) -> float | None:
    """Height of the cusps between two turns; None where the nose is too narrow for the lead."""
    if lead > 2.0 * nose_radius:
        return None
    # Not ρ − √(ρ² − f²/4), which cancels for a small lead.
    half = lead / 2.0
    return half**2 / (nose_radius + math.sqrt(nose_radius**2 - half**2))


def lead_for(width: float, overlap_ratio: float) -> float:
    """Lead, along the wheel for one turn of it, that gives an overlap ratio."""
    return width / overlap_ratio
