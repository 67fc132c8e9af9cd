"""A taper from any three of large diameter, small diameter, length and slope.

The slope is kept as the rate of taper C = (D - d) / l, on the diameter, as ISO 1119 defines it:
C = 2 tan α with α the half angle; 1:x is 1/C; taper per foot is 12 C. Lengths in one unit.
"""

from collections.abc import Mapping
from dataclasses import dataclass

from halfangle_service.errors import Disagreement
from halfangle_service.trade import elementary
from halfangle_service.trade.cone import (
    half_angle_from_rate,
    require_before_point,
    require_smaller,
)
from halfangle_service.trade.wording import of_any_unit


@dataclass(frozen=True, slots=True)
class Taper:
    """A taper: both diameters and the length between them, in one unit."""

    large_diameter: float
    small_diameter: float
    length: float

    @property
    def rate(self) -> float:
        """Rate of taper C = (D - d) / l, on the diameter."""
        return (self.large_diameter - self.small_diameter) / self.length

    @property
    def half_angle_rad(self) -> float:
        """Half angle in radians: tan α = C / 2."""
        return elementary.atan(self.rate / 2.0)

    @property
    def slant_length(self) -> float:
        """Length along the surface, in the unit of the length."""
        return elementary.hypot(self.length, (self.large_diameter - self.small_diameter) / 2.0)


def solve_taper(
    *,
    large_diameter: float | None,
    small_diameter: float | None,
    length: float | None,
    rates: Mapping[str, float],
    agree_within: float,
) -> Taper:
    """Solve a taper; lengths in one unit, `rates` the given slopes as rates of taper by field name.

    Where more is given than needed, all of it must agree: the diameters that follow may differ by
    no more than `agree_within`. Raises Disagreement or Impossible.
    """
    if large_diameter is not None and small_diameter is not None:
        require_smaller(small_diameter, large_diameter)
    rate = next(iter(rates.values()), None)
    taper = _from_three(large_diameter, small_diameter, length, rate)
    _require_agreement(taper, rates, agree_within)
    return taper


def _from_three(
    large: float | None, small: float | None, length: float | None, rate: float | None
) -> Taper:
    """Solve from the first three that are there: the slope gives way to what is measured."""
    if large is not None and small is not None and length is not None:
        return Taper(large, small, length)
    if large is not None and small is not None and rate is not None:
        return Taper(large, small, (large - small) / rate)
    if large is not None and length is not None and rate is not None:
        require_before_point(large, length, half_angle_from_rate(rate))
        return Taper(large, max(0.0, large - rate * length), length)
    if small is not None and length is not None and rate is not None:
        return Taper(small + rate * length, small, length)
    given = {"large_diameter": large, "small_diameter": small, "length": length, "slope": rate}
    missing = [name for name, value in given.items() if value is None]
    raise Disagreement(
        f"Three of large diameter, small diameter, length and slope are needed; "
        f"{', '.join(missing)} are missing.",
        fields={name: "is needed, or another of the four" for name in missing if name != "slope"},
    )


def _require_agreement(taper: Taper, rates: Mapping[str, float], agree_within: float) -> None:
    """Refuse given slopes whose diameters over the length differ from the taper's."""
    for name, rate in rates.items():
        difference = (rate - taper.rate) * taper.length
        if abs(difference) > agree_within:
            raise Disagreement(
                f"{name} disagrees with the rest: over the length {of_any_unit(taper.length)} it "
                "gives a "
                f"difference of diameters of {of_any_unit(rate * taper.length)}, the rest gives "
                f"{of_any_unit(taper.rate * taper.length)}; they may differ by "
                f"{of_any_unit(agree_within)}.",
                fields={
                    name: f"is off by {of_any_unit(difference)} on the diameter over the length"
                },
                more={"disagreement": difference, "agree_within": agree_within},
            )
