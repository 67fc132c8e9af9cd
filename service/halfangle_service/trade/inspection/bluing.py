"""A cone blued in its gauge: the share of the length that the film marks, as a range.

Where the angles differ the two bear at one end and gape at the other, and the film marks as far as
the gap is no wider than itself. A film that marks all over proves the angle no closer than the
angle over which it still does. Lengths in one unit, angles in radians, shares from 0 to 1.
"""

import math
from dataclasses import dataclass

from halfangle_service.trade.angles import ARCSEC_PER_RADIAN
from halfangle_service.trade.inspection.means import (
    Inspected,
    InspectedCone,
    OutOfReach,
    Proof,
    Range,
    Reading,
    Setting,
    proof_of,
    span,
)
from halfangle_service.trade.tapers.bearing import Pair, bearing, smallest_angle_shown
from halfangle_service.trade.uncertainty import (
    Budget,
    Contribution,
    DecisionRule,
    verdict_of,
)
from halfangle_service.trade.units import Units
from halfangle_service.trade.wording import figure, percent

#: Halvings in the search for the least share that proves an angle: to a thousandth of the length.
_HALVINGS = 10
ALL_OVER = 1.0


@dataclass(frozen=True, slots=True)
class FilmAtHand:
    """A marking film and the gauge that it is on; errors None where not stated.

    `contact_length` is the length of contact, `share_error` how far a marked share may be misjudged
    by eye, `gauge_error` that of the gauge's included angle.
    """

    film: float
    film_error: float | None
    contact_length: float
    share_error: float | None
    gauge_error: float | None

    @property
    def thinnest(self) -> float:
        """Thickness of the film at its least, as far as was stated."""
        return self.film - (self.film_error or 0.0)

    @property
    def thickest(self) -> float:
        """Thickness of the film at its most, as far as was stated."""
        return self.film + (self.film_error or 0.0)

    def blind_arcsec(self, part: InspectedCone) -> float:
        """Error of the included angle, in arc-seconds, over which the film marks all over."""
        shown = smallest_angle_shown(self.contact_length, part.cone.half_rad, self.thickest)
        return shown * ARCSEC_PER_RADIAN


def inspected_by_bluing(
    part: InspectedCone, at_hand: FilmAtHand, units: Units, rule: DecisionRule
) -> Inspected | OutOfReach:
    """What share to expect marked, its range at the limits, and what it proves of the angle."""
    if at_hand.contact_length > part.length * (1.0 + 1e-12):
        return OutOfReach(
            "bluing",
            f"The gauge cannot touch over {figure(at_hand.contact_length, units)}: the part is "
            f"{figure(part.length, units)} long.",
            "bluing/contact_length",
            f"A length of contact of at most {figure(part.length, units)}.",
        )
    proof = proof_of("angle", part.angle, all_over_budget(part, at_hand), rule)
    least = least_share(part, at_hand, proof, rule)
    shares = shares_at_limits(part, at_hand)
    reading = Reading(
        "marked_share_percent",
        "percent",
        100.0,
        (100.0 * shares[0], 100.0),
        None if least is None else (100.0 * least, 100.0),
    )
    return Inspected(
        "bluing",
        f"A film of {figure(at_hand.film, units)} on the gauge, three lines along it; seat part "
        "and gauge with a light push, turn them a few degrees and part them straight. Read how "
        f"much of {figure(at_hand.contact_length, units)} is marked, and at which end."
        f"{_criterion(least)}",
        (Setting("blue_film", at_hand.film), Setting("contact_length", at_hand.contact_length)),
        (reading,),
        (proof,),
        ("size", "errors-within-the-film", "error-of-the-gauge", "runout"),
    )


def _criterion(least: float | None) -> str:
    """What share proves the angle, in a sentence; nothing where none does."""
    if least is None:
        return ""
    if least == ALL_OVER:
        return " The angle is proved where it is marked all over."
    share = percent(float(math.ceil(100.0 * least)))
    return (
        f" The angle is proved where at least {share} is marked, from either end: the gap at the "
        "open end is the film over that share."
    )


def shares_at_limits(part: InspectedCone, at_hand: FilmAtHand) -> Range:
    """Least and largest share that a part at a limit of its angle shows, by the film's limits."""
    return span(
        marked_share(part, at_hand, error, film)
        for error in (part.angle.lower, part.angle.upper)
        for film in (at_hand.thinnest, at_hand.thickest)
    )


def marked_share(part: InspectedCone, at_hand: FilmAtHand, error: float, film: float) -> float:
    """Share of the length that a film marks where the part's included angle is off by so much."""
    gauge, own = part.cone.half_rad, part.half_rad(error)
    outer, inner = (own, gauge) if part.internal else (gauge, own)
    pair = Pair(outer, inner, at_hand.contact_length)
    return bearing(pair, gauge, film, by_diameter=0.0).marked_share_percent / 100.0


def all_over_budget(part: InspectedCone, at_hand: FilmAtHand) -> Budget:
    """Budget of the included angle of a part that is marked all over.

    Any error that the film at its thickest still bridges may be there, one as likely as another.
    """
    shown = smallest_angle_shown(at_hand.contact_length, part.cone.half_rad, at_hand.thickest)
    film = Contribution(
        "blue_film", at_hand.thickest, sensitivity=shown / at_hand.thickest, unit="length"
    )
    return _with_gauge((film,), at_hand, ("blue_film_error_limit",))


def _with_gauge(
    parts: tuple[Contribution, ...], at_hand: FilmAtHand, asked: tuple[str, ...]
) -> Budget:
    """The gauge's own error added; `asked` are what counts beside it, where it was not stated."""
    stated = {
        "blue_film_error_limit": at_hand.film_error,
        "marked_share_error_limit_percent": at_hand.share_error,
        "gauge_angle_error_limit_arcsec": at_hand.gauge_error,
    }
    if at_hand.gauge_error is not None:
        slope = 1.0 / ARCSEC_PER_RADIAN
        parts += (
            Contribution(
                "gauge_angle_error_limit_arcsec",
                at_hand.gauge_error,
                sensitivity=slope,
                unit="arcsecond",
            ),
        )
    names = (*asked, "gauge_angle_error_limit_arcsec")
    return Budget(parts, not_stated=tuple(name for name in names if stated[name] is None))


def least_share(
    part: InspectedCone, at_hand: FilmAtHand, all_over: Proof, rule: DecisionRule
) -> float | None:
    """Least marked share, at either end, that proves the angle; None where not even all over does.

    1 where only marking all over proves it, or it was not stated how well a share is judged.
    """
    if all_over.zone is None or not all_over.zone[0] <= 0.0 <= all_over.zone[1]:
        return None
    if at_hand.share_error is None or at_hand.film_error is None:
        return ALL_OVER
    least, most = 0.0, ALL_OVER
    for _ in range(_HALVINGS):
        share = (least + most) / 2.0
        proved = _proves(part, at_hand, share, rule)
        least, most = (least, share) if proved else (share, most)
    return most


def _proves(part: InspectedCone, at_hand: FilmAtHand, share: float, rule: DecisionRule) -> bool:
    """True where a share marked at one end proves the angle, whichever end it is.

    The gap is the film over the share. A share judged too large hides more than one judged too
    small shows, so that both count by the least share that it may be.
    """
    misjudged = at_hand.share_error or 0.0
    if misjudged >= share:
        return False
    found = smallest_angle_shown(at_hand.contact_length, part.cone.half_rad, at_hand.film) / share
    parts = (
        Contribution(
            "blue_film_error_limit",
            at_hand.film_error or 0.0,
            sensitivity=found * share / (share - misjudged) / at_hand.film,
            unit="length",
        ),
        Contribution(
            "marked_share_error_limit_percent",
            100.0 * misjudged,
            sensitivity=found / (100.0 * (share - misjudged)),
            unit="percent",
        ),
    )
    asked = ("blue_film_error_limit", "marked_share_error_limit_percent")
    budget = _with_gauge(parts, at_hand, asked)
    lower, upper = part.angle.lower, part.angle.upper
    errors = (found,) if lower == -upper else (-found, found)
    return all(verdict_of(error, lower, upper, budget, rule) == "conforming" for error in errors)
