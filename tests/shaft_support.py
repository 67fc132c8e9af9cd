"""A shaft or a bore in space, read by an indicator and moved by taps: geometry, no theory of it.

The spindle is the z axis. The part is a cylinder about an axis of its own, with lobes round it; the
indicator looks at it square to the spindle, so it is the nearest point of a slanting cylinder along
that line that is read. A slide shifts the part, a swing turns it about a point of its own axis.
"""

import math
from dataclasses import dataclass, replace
from typing import Any

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]


@dataclass(frozen=True)
class Shaft:
    """A cylinder by a point of its axis where z is 0, its direction, its radius and its lobes."""

    foot: complex
    slope: complex
    radius: float
    surface: str = "external"
    #: Amplitude and phase of each number of lobes, alike along the part.
    lobes: tuple[tuple[int, float, float], ...] = ()

    def center(self, station: float) -> complex:
        """Where the part's axis stands at a station of the spindle."""
        return self.foot + self.slope * station

    def dial(self, station: float, degrees: Floats) -> Floats:
        """What an indicator shows at each angle: more where metal comes nearer to it."""
        distance = np.array([self._distance(station, math.radians(a)) for a in degrees])
        form = sum(
            amplitude * np.cos(order * np.radians(degrees) - phase)
            for order, amplitude, phase in self.lobes
        )
        outward = distance - self.radius
        return np.asarray((outward if self.surface == "external" else -outward) + form)

    def _distance(self, station: float, angle: float) -> float:
        """From the spindle outward to the surface, along a line square to it."""
        axis = np.array([self.slope.real, self.slope.imag, 1.0])
        axis /= np.linalg.norm(axis)
        center = self.center(station)
        start = -np.array([center.real, center.imag, 0.0])
        ray = np.array([math.cos(angle), math.sin(angle), 0.0])
        start, ray = start - axis * (start @ axis), ray - axis * (ray @ axis)
        a, b, c = ray @ ray, start @ ray, start @ start - self.radius**2
        return float((-b + math.sqrt(b * b - a * c)) / a)

    def slid(self, by: complex) -> "Shaft":
        """Moved whole."""
        return replace(self, foot=self.foot + by)

    def swung(self, pivot: float, tapped: float, by: complex) -> "Shaft":
        """Turned about its own axis' point at the pivot, so that it moves so far where tapped.

        The turn is exact: in the plane of the movement, about the point, by the angle whose sine is
        the movement over the arm.
        """
        held, arm = self.center(pivot), tapped - pivot
        turn = math.asin(abs(by) / abs(arm)) * math.copysign(1.0, arm)
        toward = by / abs(by)
        along, across = (
            (self.slope * toward.conjugate()).real,
            (self.slope * toward.conjugate()).imag,
        )
        x, z = along, 1.0
        x, z = x * math.cos(turn) + z * math.sin(turn), z * math.cos(turn) - x * math.sin(turn)
        slope = toward * complex(x / z, across / z)
        return replace(self, slope=slope, foot=held - slope * pivot)

    def tapped(self, taps: list[dict[str, Any]]) -> "Shaft":
        """Moved as an answer's taps say, each from its side toward the axis."""
        part = self
        for tap in taps:
            if tap["leave_it"]:
                continue
            angle = math.radians(tap["tap_from"]["degrees"])
            by = -complex(math.cos(angle), math.sin(angle)) * tap["tap_distance"]["value"]
            if tap["kind"] == "slide":
                part = part.slid(by)
            else:
                part = part.swung(tap["pivot_station"], tap["station"], by)
        return part


def readings(degrees: Floats, shown: Floats) -> list[dict[str, float]]:
    """Readings as a request has them."""
    return [
        {"angular_position": float(a), "reading": float(r)}
        for a, r in zip(degrees, shown, strict=True)
    ]


EIGHT = np.arange(0.0, 360.0, 45.0)
SWING_SLIDE = [
    {"kind": "swing", "station": 80, "pivot_station": -20},
    {"kind": "slide", "station": -20},
]
TWO_SWINGS = [
    {"kind": "swing", "station": 90, "pivot_station": 5},
    {"kind": "swing", "station": 5, "pivot_station": 90},
]


def asked(part: Shaft, angles: Floats = EIGHT, **more: Any) -> dict[str, Any]:
    """A request with the part's readings at 10 and at 80 mm."""
    return {
        "units": "mm",
        "surface": part.surface,
        "indicator_resolution": 0.0001,
        "near": {"station": 10, "readings": readings(angles, part.dial(10, angles))},
        "far": {"station": 80, "readings": readings(angles, part.dial(80, angles))},
        "tap_places": SWING_SLIDE,
        "stations": [140],
        **more,
    }
