"""The angle between two lines of a profile, and what turns it.

An included angle is that between two flanks, each taken from where they would meet toward its own
points. Against an axis or a base it is the smaller angle between the two lines. Angles in radians
unless named; lengths in one unit.
"""

import math
from dataclasses import dataclass

from halfangle_service.errors import Disagreement
from halfangle_service.trade.angles import ARCSEC_PER_RADIAN
from halfangle_service.trade.comparator.line import Line, Point, direction_budget
from halfangle_service.trade.uncertainty import Budget, Contribution

#: Below this sine two lines meet nowhere that anybody could say: two seconds of arc.
LEAST_SINE = 1e-5


@dataclass(frozen=True, slots=True)
class Instrument:
    """What is known of the comparator: each ± a limit, None where it was not stated.

    `picking` is the standard deviation of one point, a length; `angle_arcsec` what the comparator
    errs by in an angle of its own; `unequal_percent` by how much the magnification along x differs
    from that along y.
    """

    picking: float | None
    angle_arcsec: float | None
    unequal_percent: float | None


@dataclass(frozen=True, slots=True)
class Corner:
    """Two lines of a profile, where they meet, and the angle between them.

    `signs` tell by what the angle opens where each of them turns to the left; `axis_rad` is the
    direction from the apex into the part: of two flanks between them, else the second line's.
    """

    first: Line
    second: Line
    apex: Point
    angle_rad: float
    signs: tuple[float, float]
    axis_rad: float

    def budget(self, instrument: Instrument) -> Budget:
        """Budget of the angle in arc-seconds."""
        lines = [direction_budget(line, instrument.picking) for line in (self.first, self.second)]
        contributions = [c for budget in lines for c in budget.contributions]
        not_stated = [name for budget in lines for name in budget.not_stated]
        own = {
            "magnification_difference_limit_percent": (
                instrument.unequal_percent,
                self.per_unequal_percent,
                "percent",
            ),
            "instrument_angle_error_limit_arcsec": (instrument.angle_arcsec, 1.0, "arcsecond"),
        }
        in_arcsec = [
            Contribution(
                c.name,
                c.value,
                c.distribution,
                c.sensitivity * ARCSEC_PER_RADIAN,
                c.degrees_of_freedom,
                unit=c.unit,
                of=c.of,
            )
            for c in contributions
        ]
        for name, (limit, sensitivity, unit) in own.items():
            if limit is None:
                not_stated.append(name)
            else:
                in_arcsec.append(Contribution(name, limit, sensitivity=sensitivity, unit=unit))
        return Budget(tuple(in_arcsec), not_stated=tuple(dict.fromkeys(not_stated)))

    @property
    def per_unequal_percent(self) -> float:
        """Arc-seconds of the angle for x magnified one percent more than y.

        A line at φ to the x axis then shows a tan φ that is less by that share: dφ = −½ sin 2φ
        times the share (derived here).
        """
        turns = [
            -0.5 * math.sin(2.0 * line.direction_rad) * 0.01 for line in (self.first, self.second)
        ]
        return self._opens(*turns) * ARCSEC_PER_RADIAN

    def _opens(self, first_turn: float, second_turn: float) -> float:
        """By how much the angle opens where the lines turn so far, each to the left."""
        return self.signs[0] * first_turn + self.signs[1] * second_turn


def corner_of(first: Line, second: Line, *, flanks: bool) -> Corner:
    """Let two lines meet; refuses parallel ones and flanks that cross among their points."""
    turn = second.direction_rad - first.direction_rad
    sine = math.sin(turn)
    if abs(sine) < LEAST_SINE:
        raise Disagreement(
            f"`{first.name}` and `{second.name}` are parallel: they meet nowhere and make no "
            "angle.",
            fields={second.name: f"should not be parallel to {first.name}"},
        )
    apex = _meeting(first, second, sine)
    one, other = _ray(first, apex), _ray(second, apex)
    if flanks:
        for line in (first, second):
            _require_one_side(line, apex)
    elif math.cos(other - one) < 0.0:
        other += math.pi
    between = math.remainder(other - one, 2.0 * math.pi)
    sign = math.copysign(1.0, between)
    axis = one + between / 2.0 if flanks else other
    return Corner(first, second, apex, abs(between), (-sign, sign), axis)


def _meeting(first: Line, second: Line, sine: float) -> Point:
    """Where two lines meet: along the first from its middle."""
    x, y = (b - a for a, b in zip(first.middle, second.middle, strict=True))
    way = (x * math.sin(second.direction_rad) - y * math.cos(second.direction_rad)) / sine
    return (
        first.middle[0] + way * math.cos(first.direction_rad),
        first.middle[1] + way * math.sin(first.direction_rad),
    )


def _ray(line: Line, apex: Point) -> float:
    """Direction of a line from the apex toward its own points, from the x axis."""
    toward = -line.place(apex)
    return line.direction_rad + (math.pi if toward < 0.0 else 0.0)


def _require_one_side(line: Line, apex: Point) -> None:
    place = line.place(apex)
    if float(line.along.min()) < place < float(line.along.max()):
        raise Disagreement(
            f"The flanks cross among the points of `{line.name}`: some lie to either side of where "
            "they meet.",
            fields={line.name: "should be picked on one side of the apex"},
        )
