"""Surface speed of a wheel against what is marked on it. Diameters in mm, speeds in m/s.

v = π D n. A wheel is never run above any of its marks, nor its spindle above the machine's: the
lowest of them counts, and a mark that is not known is not a permission.
"""

import math
from collections.abc import Mapping
from dataclasses import dataclass

from halfangle_service.trade.uncertainty import Forecast

#: 1 m/s in ft/min: 60 s over 0.3048 m, exact (international foot).
FT_PER_MIN = 60.0 / 0.3048
#: A flange should be at least this share of a straight wheel's diameter.
FLANGE_SHARE = 1.0 / 3.0

#: A setting that equals its limit is not over it, whatever the rounding of π D n.
_ROUNDING = 1.0 + 1e-9


def surface_speed(diameter_mm: float, rpm: float) -> float:
    """Surface speed in m/s.

    >>> round(surface_speed(406, 1410), 2)
    29.97
    """
    return math.pi * diameter_mm * rpm / 60_000.0


def rpm_for_speed(diameter_mm: float, speed_m_per_s: float) -> float:
    """Spindle speed in 1/min that gives a surface speed."""
    return 60_000.0 * speed_m_per_s / (math.pi * diameter_mm)


@dataclass(frozen=True, slots=True)
class Marking:
    """What is marked on the wheel and the machine; None where it is not known.

    `rpm` and `speeds` (m/s, by the name of the mark) are the wheel's; `machine_rpm` the spindle's.
    """

    rpm: float | None
    speeds: Mapping[str, float]
    machine_rpm: float | None

    @property
    def known(self) -> bool:
        """True where the wheel bears any mark."""
        return self.rpm is not None or bool(self.speeds)

    def limits(self, new_diameter_mm: float) -> dict[str, float]:
        """Spindle limits in 1/min by name; a mark in surface speed holds for the new diameter.

        A worn wheel turns faster for the same surface speed, but the mark was proved at the new
        diameter: it is not raised as the wheel wears.
        """
        found = {name: rpm_for_speed(new_diameter_mm, speed) for name, speed in self.speeds.items()}
        if self.rpm is not None:
            found["marked_rpm"] = self.rpm
        if self.machine_rpm is not None:
            found["largest_machine_rpm"] = self.machine_rpm
        return found

    def exceeded(self, rpm: float, new_diameter_mm: float) -> dict[str, float]:
        """The limits that a spindle speed is over."""
        return {n: v for n, v in self.limits(new_diameter_mm).items() if rpm > v * _ROUNDING}

    def forecast(
        self, rpm: float, new_diameter_mm: float, *, new_diameter_known: bool = True
    ) -> Forecast:
        """Whether a spindle speed keeps every mark; without any on the wheel it never `holds`.

        Nor does it where a surface speed is marked and `new_diameter_mm` is only the diameter now.
        """
        if self.exceeded(rpm, new_diameter_mm):
            return "does-not-hold"
        sure = self.known and (new_diameter_known or not self.speeds)
        return "holds" if sure else "not-stated"

    def limit_rpm(self, new_diameter_mm: float) -> float | None:
        """Highest spindle speed that no limit forbids; None where the wheel bears no mark."""
        return min(self.limits(new_diameter_mm).values()) if self.known else None


def side_forecast(*, asked: bool, rated: bool | None) -> Forecast | None:
    """Whether the wheel's side may grind: it needs a wheel stated to be rated for it.

    None where its side is not to grind.
    """
    if not asked:
        return None
    return "not-stated" if rated is None else "holds" if rated else "does-not-hold"


def flange_too_small(flange_diameter: float, wheel_diameter: float) -> bool:
    """True where the flanges are less than a third of the wheel's diameter."""
    return flange_diameter < wheel_diameter * FLANGE_SHARE * (1.0 - 1e-9)
