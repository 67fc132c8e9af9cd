"""Terms of runout and what one says of another, as bounds; lengths in one unit.

Derived here. Let e be the least-squares center's distance from the datum axis at one section, f its
departure from roundness about that center (peak to valley) and R its full indicator movement.

- The reading is e cos φ plus form, so |2e - f| <= R <= 2e + f. Any profile of range R has a first
  harmonic of at most (2/π) R (the square wave), so e <= 2R/π whatever the form.
- A median point of opposed elements lies off the least-squares center by half the difference of two
  opposed radii, by f/2 at most, and all of them average out at that center. So their zone Z has
  2e <= Z <= 2e + f. Along its own direction a median point lies as far off as half the difference
  of two opposed readings, by R/2 at most, and across it by e: so Z <= R √(1 + (4/π)²).
- What one section shows, the whole feature shows at least; what the whole feature shows, one
  section shows at most.
"""

import math
from dataclasses import dataclass, replace

from halfangle_service.errors import Disagreement
from halfangle_service.trade import elementary
from halfangle_service.trade.tables.runout.terms import Term
from halfangle_service.trade.wording import of_any_unit

#: Largest first harmonic of a profile of range 1: that of a square wave.
LARGEST_FIRST_HARMONIC = 2.0 / math.pi
#: Largest zone of median points for a movement of 1: that of a square wave, where it jumps.
LARGEST_MEDIAN_ZONE = elementary.hypot(1.0, 2.0 * LARGEST_FIRST_HARMONIC)


@dataclass(frozen=True)
class Bounds:
    """What is known of a value; None for no bound."""

    least: float
    most: float | None

    def scaled(self, factor: float) -> "Bounds":
        """Both bounds times a factor."""
        return Bounds(self.least * factor, None if self.most is None else self.most * factor)

    @property
    def say_something(self) -> bool:
        """True where either bound tells more than that a length is not negative."""
        return self.most is not None or self.least > 0.0

    @property
    def exact(self) -> bool:
        """True where both bounds are one value."""
        return self.most is not None and elementary.isclose(
            self.least, self.most, rel_tol=1e-12, abs_tol=1e-15
        )


def eccentricity_from_movement(movement: Bounds, form: float | None) -> Bounds:
    """Eccentricity of a section from its full indicator movement; `form` None if unknown."""
    most = None if movement.most is None else LARGEST_FIRST_HARMONIC * movement.most
    if form is None:
        return Bounds(0.0, most)
    least = max(movement.least - form, 0.0)
    if movement.most is None or most is None:
        return Bounds(least / 2.0, None)
    least = max(least, form - movement.most)
    most = min(most, (movement.most + form) / 2.0)
    if least / 2.0 > most * (1.0 + 1e-12):
        raise Disagreement(
            f"A section that is {of_any_unit(form)} out of round cannot show a movement of only "
            f"{of_any_unit(movement.most)}.",
            fields={"out_of_roundness": "is too large for the value sent"},
        )
    return Bounds(least / 2.0, most)


def movement_from_eccentricity(eccentricity: Bounds, form: float | None) -> Bounds:
    """Full indicator movement of a section from its eccentricity; `form` None if unknown."""
    least = eccentricity.least / LARGEST_FIRST_HARMONIC
    if form is None:
        return Bounds(least, None)
    least = max(least, 2.0 * eccentricity.least - form)
    if eccentricity.most is None:
        return Bounds(least, None)
    return Bounds(max(least, form - 2.0 * eccentricity.most), 2.0 * eccentricity.most + form)


def median_zone(eccentricity: Bounds, form: float | None) -> Bounds:
    """Diameter of the zone of the median points of opposed elements; `form` None if unknown."""
    known = eccentricity.most is not None and form is not None
    most = 2.0 * (eccentricity.most or 0.0) + (form or 0.0) if known else None
    return Bounds(2.0 * eccentricity.least, most)


def eccentricity_from_median_zone(zone: Bounds, form: float | None) -> Bounds:
    """Eccentricity from the zone of the median points; `form` None if unknown."""
    least = 0.0 if form is None else max(0.0, zone.least - form) / 2.0
    return Bounds(least, None if zone.most is None else zone.most / 2.0)


@dataclass(frozen=True)
class Conversion:
    """Bounds of the value wanted, and why they are no closer."""

    bounds: Bounds
    reasons: tuple[str, ...]


def convert(
    value: float, given: Term, wanted: Term, form: float | None, *, every_section_alike: bool
) -> Conversion:
    """What `value` of one term says of another; `form` None where the roundness is not known."""
    if given.key == wanted.key:
        return Conversion(Bounds(value, value), ())
    bounds, reasons = Bounds(value, value), []
    if given.scope != wanted.scope and not every_section_alike:
        bounds, reason = _other_scope(value, given)
        reasons.append(reason)
    if given.family == "total":
        bounds = Bounds(0.0, bounds.most)
        reasons.append(
            "Total run-out also holds the taper and the shape along the axis: it only bounds the "
            "others from above."
        )
    bounds = _across(bounds, given, wanted, form)
    reasons += _why(given, wanted, form)
    if wanted.family == "total":
        bounds = Bounds(bounds.least, None)
        reasons.append("Taper and shape along the axis add to total run-out: no upper bound.")
    return Conversion(bounds, tuple(reasons))


def _other_scope(value: float, given: Term) -> tuple[Bounds, str]:
    """From one section to the whole feature, or back, where sections may differ; and why."""
    if given.scope == "section":
        return Bounds(value, None), (
            "One section was read; the term wanted speaks of the whole feature, and another "
            "section may be worse: no upper bound."
        )
    return Bounds(0.0, value), (
        "The value speaks of the whole feature, by its worst section: any one section shows it at "
        "most, and may be true."
    )


def _across(bounds: Bounds, given: Term, wanted: Term, form: float | None) -> Bounds:
    """From family to family, by way of the eccentricity where they differ."""
    moves = ("movement", "total")
    if given.family in moves and wanted.family in moves:
        return bounds
    if given.family in moves:
        offset = eccentricity_from_movement(bounds, form)
    elif given.family == "median":
        offset = eccentricity_from_median_zone(bounds, form)
    else:
        offset = bounds.scaled(1.0 / given.per_eccentricity)
    if wanted.family in moves:
        found = movement_from_eccentricity(offset, form)
        if given.family == "median":
            found = replace(found, least=max(found.least, bounds.least / LARGEST_MEDIAN_ZONE))
        return found
    if wanted.family == "median":
        found = median_zone(offset, form)
        if given.family in moves and bounds.most is not None:
            largest = LARGEST_MEDIAN_ZONE * bounds.most
            found = replace(found, most=largest if found.most is None else min(found.most, largest))
        return found
    return offset.scaled(wanted.per_eccentricity)


def _why(given: Term, wanted: Term, form: float | None) -> list[str]:
    """Why form keeps two terms apart."""
    if form == 0.0:
        return []
    families = {given.family, wanted.family}
    if "median" in families and families != {"median"}:
        return [
            "Median points of opposed elements wander with odd lobes even where the axis is true: "
            "how far, the roundness says."
        ]
    if families & {"movement", "total"} and "offset" in families:
        return [
            "An indicator shows form together with eccentricity: a full movement is twice the "
            "eccentricity only of a round section."
        ]
    return []
