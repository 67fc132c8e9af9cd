"""Terms of runout and what one says of another, as bounds; lengths in one unit.

Derived here. Let e be the least-squares center's distance from the datum axis at one section, f its
departure from roundness about that center (peak to valley) and R its full indicator movement.
The reading is e cos φ plus form, so |2e - f| <= R <= 2e + f. Any profile of range R has a first
harmonic of at most (2/π) R (the square wave), so e <= 2R/π whatever the form.
"""

import math
from dataclasses import dataclass

from halfangle_service.errors import Disagreement
from halfangle_service.trade.wording import plain

#: Largest first harmonic of a profile of range 1: that of a square wave.
LARGEST_FIRST_HARMONIC = 2.0 / math.pi


@dataclass(frozen=True)
class Bounds:
    """What is known of a value; None for no bound."""

    least: float
    most: float | None

    def scaled(self, factor: float) -> "Bounds":
        """Both bounds times a factor."""
        return Bounds(self.least * factor, None if self.most is None else self.most * factor)

    @property
    def exact(self) -> bool:
        """True where both bounds are one value."""
        return self.most is not None and math.isclose(
            self.least, self.most, rel_tol=1e-12, abs_tol=1e-15
        )


def eccentricity_from_movement(movement: Bounds, form: float | None) -> Bounds:
    """Eccentricity of a section from its full indicator movement; `form` None if unknown."""
    most = None if movement.most is None else LARGEST_FIRST_HARMONIC * movement.most
    if form is None:
        return Bounds(0.0, most)
    least = 0.0 if movement.most is None else max(movement.least - form, form - movement.most, 0.0)
    if most is not None and movement.most is not None:
        most = min(most, (movement.most + form) / 2.0)
    if most is not None and least / 2.0 > most * (1.0 + 1e-12):
        raise Disagreement(
            f"A section that is {plain(form, 5)} out of round cannot show a movement of only "
            f"{plain(movement.most, 5)}.",
            fields={"form_error": "is too large for the value sent"},
        )
    return Bounds(least / 2.0, most)


def movement_from_eccentricity(eccentricity: Bounds, form: float | None) -> Bounds:
    """Full indicator movement of a section from its eccentricity; `form` None if unknown."""
    least = eccentricity.least / LARGEST_FIRST_HARMONIC
    if form is None:
        return Bounds(least, None)
    least = max(least, 2.0 * eccentricity.least - form)
    if eccentricity.exact:
        least = max(least, abs(2.0 * eccentricity.least - form))
    elif eccentricity.most is not None:
        least = max(least, form - 2.0 * eccentricity.most)
    return Bounds(least, None if eccentricity.most is None else 2.0 * eccentricity.most + form)


def median_zone(eccentricity: Bounds, form: float | None) -> Bounds:
    """Diameter of the zone of the median points of opposed elements.

    A median point lies off the least-squares center by half the difference of two opposed radii, so
    by f/2 at most: the zone is between 2e - f and 2e + f. `form` None: nothing is known.
    """
    if form is None:
        return Bounds(0.0, None)
    most = None if eccentricity.most is None else 2.0 * eccentricity.most + form
    return Bounds(max(0.0, 2.0 * eccentricity.least - form), most)


def eccentricity_from_median_zone(zone: Bounds, form: float | None) -> Bounds:
    """Inverse of `median_zone`."""
    if form is None:
        return Bounds(0.0, None)
    most = None if zone.most is None else (zone.most + form) / 2.0
    return Bounds(max(0.0, zone.least - form) / 2.0, most)
