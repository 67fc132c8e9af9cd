"""Surface speed of a wheel against what is marked on it. Diameters in mm, speeds in m/s.

v = π D n. A wheel is never run above any of its marks, nor its spindle above the machine's: the
lowest of them counts, and a mark that is not known is not a permission.
"""

import math
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

#: 1 m/s in ft/min: 60 s over 0.3048 m, exact (international foot).
FT_PER_MIN = 60.0 / 0.3048

SpeedVerdict = Literal["over marked speed", "within marked speed", "unknown"]
SideVerdict = Literal["not asked", "rated, as stated", "not rated", "unknown"]
Verdict = Literal["stop", "unknown", "no objection found"]

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
            found["machine_max_rpm"] = self.machine_rpm
        return found

    def exceeded(self, rpm: float, new_diameter_mm: float) -> dict[str, float]:
        """The limits that a spindle speed is over."""
        return {n: v for n, v in self.limits(new_diameter_mm).items() if rpm > v * _ROUNDING}

    def speed_verdict(self, rpm: float, new_diameter_mm: float) -> SpeedVerdict:
        """Verdict on a spindle speed; without any mark on the wheel it is never 'within'."""
        if self.exceeded(rpm, new_diameter_mm):
            return "over marked speed"
        return "within marked speed" if self.known else "unknown"

    def largest_rpm(self, new_diameter_mm: float) -> float | None:
        """Highest spindle speed that no limit forbids; None where the wheel bears no mark."""
        return min(self.limits(new_diameter_mm).values()) if self.known else None


def side_verdict(*, asked: bool, rated: bool | None) -> SideVerdict:
    """Verdict on grinding with the wheel's side: it needs a wheel stated to be rated for it."""
    if not asked:
        return "not asked"
    return "unknown" if rated is None else "rated, as stated" if rated else "not rated"


def overall(speed: SpeedVerdict, side: SideVerdict, *, type_known: bool) -> Verdict:
    """The worst of all: a stop before an unknown, an unknown before no objection."""
    if speed == "over marked speed" or side == "not rated":
        return "stop"
    if speed == "unknown" or side == "unknown" or not type_known:
        return "unknown"
    return "no objection found"
