"""What a means of measuring reads of a part, what that proves, and what it cannot see.

Angles in radians, lengths in one unit. A part has one or two tolerances: of its angle (a cone's
included angle, a face's to its base) and of its large diameter. A means turns an error of these
into readings; what it reads within the tolerance, and within what proves it, follows by the exact
relation, not by its slope. An error is what the part has less its nominal.
"""

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from itertools import product
from typing import Literal

from halfangle_service.trade.tapers.tolerance import Cone
from halfangle_service.trade.uncertainty import Budget, DecisionRule
from halfangle_service.trade.uncertainty.coverage import half_width
from halfangle_service.trade.uncertainty.zones import Case

MeansName = Literal[
    "over-rolls",
    "over-balls",
    "gauge-depth",
    "two-gauges",
    "probe",
    "sine-plate",
    "comparator",
    "bluing",
]
#: What a means cannot see, whatever its uncertainty.
Unseen = Literal[
    "angle",
    "size",
    "form-between-contacts",
    "form-round-the-part",
    "runout",
    "squareness-of-the-standing-face",
    "error-of-the-gauge",
    "errors-within-the-film",
    "error-of-the-setting",
    "edges-out-of-focus",
]
#: What a tolerance belongs to.
Quantity = Literal["angle", "large-diameter"]
ReadingUnit = Literal["length", "degree", "percent"]
Range = tuple[float, float]
#: One of the angles of a part that has two.
InspectedAngle = Literal["x-angle", "y-angle"]


@dataclass(frozen=True, slots=True)
class Tolerance:
    """Limits of an error, in its own unit, and the request's field that states them."""

    lower: float
    upper: float
    field: str

    @property
    def widest(self) -> float:
        """The largest error that it allows, either way."""
        return max(abs(self.lower), abs(self.upper))


@dataclass(frozen=True, slots=True)
class InspectedCone:
    """A cone or socket to inspect: nominal, and the limits of its included angle and its size.

    `size` is of the large diameter (a socket's mouth); None where it was not stated.
    """

    cone: Cone
    length: float
    internal: bool
    angle: Tolerance
    size: Tolerance | None

    def half_rad(self, angle_error: float) -> float:
        """Half angle with an error of the included angle."""
        return self.cone.half_rad + angle_error / 2.0

    @property
    def small_diameter(self) -> float:
        """Nominal diameter at the small end."""
        return self.cone.nominal(self.length)


@dataclass(frozen=True, slots=True)
class Proof:
    """What a means proves of one tolerance: its own uncertainty against the tolerance's limits.

    `zone` are the errors found that prove the tolerance; None where none does. `proves` is None
    where what was not stated of the means decides.
    """

    quantity: Quantity
    tolerance: Tolerance
    budget: Budget
    zone: Range | None
    proves: bool | None

    @property
    def told_apart(self) -> float | None:
        """Expanded uncertainty: what the means tells apart; None where nothing was stated of it."""
        return half_width(self.budget) if self.budget.contributions else None


def proof_of(quantity: Quantity, tolerance: Tolerance, budget: Budget, rule: DecisionRule) -> Proof:
    """Hold a means' own budget against a tolerance.

    What was stated of the means may be too much by itself: then what was not stated cannot mend it.
    """
    zone = Case(tolerance.lower, tolerance.upper, budget, rule).accepted()
    proved: bool | None = zone is not None
    if not budget.contributions or (proved and budget.not_stated):
        proved = None
    return Proof(quantity, tolerance, budget, zone, proved)


@dataclass(frozen=True, slots=True)
class Reading:
    """One figure to read: what to expect of a nominal part, and the limits to read.

    Named by the field of the operation that takes or gives it. `at_limits` is what parts at the
    limits of the tolerances read, least and most; None where a tolerance that it depends on was not
    stated. `accepted` is what proves the tolerance by itself; None where no reading does, or the
    reading speaks of angle and size at once.
    """

    name: str
    unit: ReadingUnit
    expected: float
    at_limits: Range | None
    accepted: Range | None


def reading_of(
    name: str, of_error: Callable[[float], float], proof: Proof, unit: ReadingUnit = "length"
) -> Reading:
    """A reading that follows from the one error that a proof is of, always rising or falling."""
    limits = proof.tolerance
    return Reading(
        name,
        unit,
        of_error(0.0),
        span(map(of_error, (limits.lower, limits.upper))),
        None if proof.zone is None else span(map(of_error, proof.zone)),
    )


def reading_of_both(
    name: str, of_errors: Callable[[float, float], float], part: InspectedCone
) -> Reading:
    """A reading that follows from the errors of angle and size; its limits are at the corners."""
    expected, size = of_errors(0.0, 0.0), part.size
    if size is None:
        return Reading(name, "length", expected, None, None)
    corners = product((part.angle.lower, part.angle.upper), (size.lower, size.upper))
    return Reading(name, "length", expected, span(of_errors(*corner) for corner in corners), None)


def span(values: Iterable[float]) -> Range:
    """Least and largest of some values."""
    found = tuple(values)
    return min(found), max(found)


@dataclass(frozen=True, slots=True)
class Setting:
    """What the means is set up with, by the name of the field that states it elsewhere."""

    name: str
    value: float
    unit: Literal["length", "degree"] = "length"


@dataclass(frozen=True, slots=True)
class Inspected:
    """A means that reaches the part: how it is set up, read, and what each proof comes to.

    `of` is the one angle of several that it measures; None where the part has one.
    """

    means: MeansName
    how: str
    settings: tuple[Setting, ...]
    readings: tuple[Reading, ...]
    proofs: tuple[Proof, ...]
    cannot_see: tuple[Unseen, ...]
    of: InspectedAngle | None = None


@dataclass(frozen=True, slots=True)
class OutOfReach:
    """A means that finds no room or cannot reach: why, by which field, and the nearest that works.

    `instead` is None where nothing near works.
    """

    means: MeansName
    reason: str
    field: str
    instead: str | None


def best_of(found: Iterable[Inspected]) -> MeansName | None:
    """Of the means that prove every angle the one that tells most apart; None where none does.

    Of means that tell as much apart the first.
    """
    proofs: dict[MeansName, list[Proof]] = {}
    for one in found:
        own = [proof for proof in one.proofs if proof.quantity == "angle"]
        if own:
            proofs.setdefault(one.means, []).extend(own)
    proving = {
        means: max(proof.told_apart or 0.0 for proof in own)
        for means, own in proofs.items()
        if all(proof.proves for proof in own)
    }
    return min(proving.items(), key=lambda entry: entry[1])[0] if proving else None
