"""A straight line through picked points: orthogonal least squares, and how well it is known.

The line goes through the points' middle along the direction in which they spread most (the first
principal axis), so the squares of the distances square to it are least, whichever way it lies.
A scatter σ of the points square to it turns it by σ / √Σt², t the places along the line (derived
here; the same as of a straight-line fit of y on x in the line's own axes). Lengths in one unit.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from halfangle_service.errors import Disagreement
from halfangle_service.trade.uncertainty import Budget, Contribution, coverage_factor
from halfangle_service.trade.wording import of_any_unit

Floats = NDArray[np.float64]
Point = tuple[float, float]

#: A line takes two points; the scatter about it at least three.
LINE_TAKES = 2
#: Points are a flank where they spread along it this many times as far as across it.
LEAST_SLENDERNESS = 3.0
#: A point is stray that by chance lies so far off in one flank of so many.
_STRAY_CHANCE = 1e-4
#: Form shows where picking alone would scatter the points so much with this chance.
_FORM_CHANCE = 0.01
#: Shares of the spread below which points are told apart by rounding only.
_ROUNDING = 1e-12


@dataclass(frozen=True, slots=True)
class Line:
    """A line through points picked on one part of a profile, named by its field in the request.

    `direction_rad` is from the x axis, over −90° to 90°; `along` and `residuals` are the points'
    places along and square to it, from their middle.
    """

    name: str
    middle: Point
    direction_rad: float
    along: Floats
    residuals: Floats

    @property
    def spare(self) -> int:
        """Points to spare: degrees of freedom of the scatter."""
        return len(self.along) - LINE_TAKES

    @property
    def scatter(self) -> float | None:
        """Standard deviation of the points about the line; None without a point to spare."""
        if self.spare < 1:
            return None
        return math.sqrt(float(np.sum(self.residuals**2)) / self.spare)

    @property
    def straightness(self) -> float:
        """Highest less lowest of the points square to the line."""
        return float(np.ptp(self.residuals))

    @property
    def turn_per_scatter(self) -> float:
        """Radians by which one unit of scatter turns it."""
        return 1.0 / math.sqrt(float(np.sum(self.along**2)))

    def distance(self, point: Point) -> float:
        """How far a point lies beside the line, signed, to the left of its direction."""
        x, y = point[0] - self.middle[0], point[1] - self.middle[1]
        return y * math.cos(self.direction_rad) - x * math.sin(self.direction_rad)

    def place(self, point: Point) -> float:
        """Where a point lies along the line, from its middle."""
        x, y = point[0] - self.middle[0], point[1] - self.middle[1]
        return x * math.cos(self.direction_rad) + y * math.sin(self.direction_rad)


def line_through(name: str, points: Sequence[Point], noise: float) -> Line:
    """Fit a line; refuses points that lie in no line, and a stray one among them.

    `noise` is the standard deviation that a point may have by being picked, 0 where unknown.
    """
    line = _fitted(name, points)
    _require_slender(line)
    _require_no_stray(line, noise)
    return line


def _fitted(name: str, points: Sequence[Point]) -> Line:
    places = np.asarray(points, dtype=np.float64)
    middle = places.mean(axis=0)
    x, y = (places - middle).T
    direction = 0.5 * math.atan2(2.0 * float(x @ y), float(x @ x) - float(y @ y))
    cosine, sine = math.cos(direction), math.sin(direction)
    return Line(
        name,
        (float(middle[0]), float(middle[1])),
        direction,
        x * cosine + y * sine,
        y * cosine - x * sine,
    )


def _require_slender(line: Line) -> None:
    along = math.sqrt(float(np.sum(line.along**2)))
    across = math.sqrt(float(np.sum(line.residuals**2)))
    size = max(abs(line.middle[0]), abs(line.middle[1]), along)
    if along <= _ROUNDING * size or along < LEAST_SLENDERNESS * across:
        raise Disagreement(
            f"The points of `{line.name}` lie in no line: they spread "
            f"{of_any_unit(float(np.ptp(line.along)))} along it and "
            f"{of_any_unit(line.straightness)} across.",
            fields={line.name: "should be picked along one straight flank, from end to end"},
        )


def _require_no_stray(line: Line, noise: float) -> None:
    """Refuse a point that the line through all others contradicts.

    Each is compared with the scatter of the fit that leaves it out, by Student's distribution, so
    at least two points must be left over; with fewer, a stray point cannot be told from form.
    """
    spare = line.spare - 1  # the point judged is left out
    if spare < 1:
        return
    count = len(line.along)
    leverage = 1.0 / count + line.along**2 / float(np.sum(line.along**2))
    left = np.maximum(1.0 - leverage, 1e-9)
    rest = np.maximum(float(np.sum(line.residuals**2)) - line.residuals**2 / left, 0.0) / spare
    floor = _ROUNDING * float(np.max(np.abs(line.along)))
    scatter = np.sqrt(rest + noise**2 + floor**2)
    ratio = np.abs(line.residuals) / np.sqrt(left) / scatter
    worst = int(np.argmax(ratio))
    if ratio[worst] > coverage_factor(1.0 - _STRAY_CHANCE / count, spare):
        off = float(abs(line.residuals[worst] / left[worst]))
        raise Disagreement(
            f"Point {worst + 1} of `{line.name}` lies {of_any_unit(off)} beside the line through "
            f"all its others, which scatter by {of_any_unit(float(scatter[worst]))}.",
            fields={f"{line.name}/{worst}": "should be picked again, or left out"},
            more={"off_by": off},
        )


def form_shows(line: Line, picking: float) -> bool:
    """Whether a line's points scatter more than picking makes them do 1 time in 100.

    By the distribution of a sum of squares; then the flank is crowned, hollow or rough besides.
    """
    if line.scatter is None:
        return False
    if not picking:
        return line.straightness > _ROUNDING * float(np.max(np.abs(line.along)))
    # Imported here: most answers need none, and scipy costs start-up time and memory.
    from scipy.special import chdtrc  # noqa: PLC0415

    return bool(chdtrc(line.spare, line.spare * (line.scatter / picking) ** 2) < _FORM_CHANCE)


def direction_budget(line: Line, picking: float | None) -> Budget:
    """Budget of a line's direction in radians.

    By what was stated of picking; where the points scatter more than that explains, or nothing was
    stated, by their scatter, which holds picking and form.
    """
    turn = line.turn_per_scatter
    if picking is not None and not form_shows(line, picking):
        name = "picking_standard_uncertainty"
        stated = Contribution(name, picking, "normal", turn, unit="length", of=line.name)
        return Budget((stated,))
    if line.scatter is None:
        return Budget((), not_stated=("picking_standard_uncertainty",))
    scattered = Contribution(
        "scatter", line.scatter, "normal", turn, line.spare, unit="length", of=line.name
    )
    return Budget((scattered,))
