"""A part compared with a standard by readings in turn, freed of the instrument's drift."""

from collections.abc import Iterator
from typing import Annotated

from pydantic import Field

from halfangle_service.errors import Disagreement
from halfangle_service.fields import (
    FINITE,
    Length,
    LengthOut,
    NonNegativeLength,
    NumberOut,
    RequestModel,
    ResultModel,
    SignedLength,
    Unit,
    UnitsField,
)
from halfangle_service.fields.advisories import Advisory, caution, note
from halfangle_service.fields.estimate import LengthEstimate, estimate
from halfangle_service.operation import Outcome, Source, operation
from halfangle_service.trade.calibration.drift import Fit, fit_drift
from halfangle_service.trade.uncertainty import Budget, Contribution
from halfangle_service.trade.wording import percent, small_length

_FIT = Source(
    citation="Derived here: least squares of a level, a steady drift and a difference; JCGM "
    "100:2008, 4.2 and H.3 for what it is worth.",
    standing="derived",
)
#: From here on the order of the readings, not their scatter, makes the doubt.
_BADLY_ORDERED = 1.2
Minute = Annotated[float, FINITE, Field(ge=0, le=10_000), Unit("minute")]


class DriftComparisonRequest(RequestModel):
    """Readings of a standard and of a part in turn."""

    units: UnitsField
    reading_order: str = Field(
        min_length=3,
        max_length=60,
        pattern="^[AB]+$",
        description="What was read, in turn: A the standard, B the part. The order returns to the "
        "first, such as ABBA, ABABA or ABBAABBA.",
        examples=["ABBA"],
    )
    readings_in_order: Annotated[list[SignedLength], Field(min_length=3, max_length=60)] = Field(
        description="The readings in that order.", examples=[[0.0, 0.0021, 0.0023, 0.0004]]
    )
    read_at_minutes: Annotated[list[Minute], Field(min_length=3, max_length=60)] | None = Field(
        None, description="When each was read, in minutes; absent, at equal times."
    )
    repeatability: NonNegativeLength | None = Field(
        None,
        description="Standard deviation of one reading, from earlier series; absent, by what the "
        "fit leaves of these.",
    )
    indicator_resolution: Length | None = Field(
        None,
        description="Resolution of the indicator; each reading may err by half of it. Counts "
        "beside `repeatability`, or where the readings scatter less.",
    )


class DriftComparisonResult(ResultModel):
    """The difference, freed of drift."""

    difference: LengthEstimate = Field(description="Part less standard.")
    drift_per_reading: LengthOut | None = Field(
        description="Drift from one reading to the next; null where times were sent."
    )
    drift_per_minute: LengthOut | None = Field(
        description="Drift in a minute; null where no times were sent."
    )
    difference_of_means: LengthOut = Field(
        description="Mean of the part's readings less that of the standard's: with the drift in it."
    )
    scatter_about_fit: LengthOut | None = Field(
        description="Standard deviation of one reading about the fit; null without a reading to "
        "spare."
    )
    residuals: list[LengthOut] = Field(description="Each reading less the fit.")
    uncertainty_inflation: NumberOut = Field(
        description="Times by which taking the drift out widens the uncertainty; 1 for an order "
        "that is balanced, such as ABBA."
    )


@operation(
    "inspection.drift",
    relations=(
        "reading = a + b t + c x, x = 1 for the part and 0 for the standard; c by least squares",
        "ABBA at equal times: c = (B1 + B2 − A1 − A2) / 2",
        "u(c) = s / √Σ(x − x̄ − r (t − t̄))²",
    ),
    sources=(_FIT,),
    example={
        "units": "mm",
        "reading_order": "ABBA",
        "readings_in_order": [0.0, 0.0021, 0.0023, 0.0004],
        "repeatability": 0.0001,
        "indicator_resolution": 0.0001,
    },
    largest_request="60 readings",
)
def drift(request: DriftComparisonRequest) -> Outcome[DriftComparisonResult]:
    """Difference freed of drift.

    A part against a standard from readings in turn (A-B-B-A and longer), the instrument's steady
    drift taken out by least squares, with the uncertainty of the difference.
    """
    times = _times(request)
    fit = fit_drift(request.reading_order, request.readings_in_order, times)
    timed = request.read_at_minutes is not None
    result = DriftComparisonResult(
        difference=estimate(LengthEstimate, _budget(request, fit), fit.difference),
        drift_per_reading=None if timed else fit.drift,
        drift_per_minute=fit.drift if timed else None,
        difference_of_means=_mean(request, "B") - _mean(request, "A"),
        scatter_about_fit=fit.scatter,
        residuals=list(fit.residuals),
        uncertainty_inflation=fit.inflation,
    )
    return Outcome(result, tuple(_advisories(request, fit)))


def _times(request: DriftComparisonRequest) -> list[float]:
    """Times of the readings, in minutes or in readings; refuses lists that do not go together."""
    order, readings = request.reading_order, request.readings_in_order
    if len(readings) != len(order):
        raise Disagreement(
            f"{len(order)} readings are named in the order, and {len(readings)} were sent.",
            fields={"readings_in_order": f"should be {len(order)} readings"},
        )
    if len(set(order)) == 1:
        raise Disagreement(
            f"Only {order[0]} was read: there is nothing to compare it with.",
            fields={"reading_order": "should name A and B"},
        )
    times = request.read_at_minutes
    if times is None:
        return [float(place) for place in range(len(order))]
    if len(times) != len(order):
        raise Disagreement(
            f"{len(order)} readings are named in the order, and {len(times)} times were sent.",
            fields={"read_at_minutes": f"should be {len(order)} times"},
        )
    for place in range(1, len(times)):
        if times[place] <= times[place - 1]:
            raise Disagreement(
                f"Reading {place + 1} is said to be no later than the one before it.",
                fields={f"read_at_minutes/{place}": "should be later than the one before"},
            )
    return list(times)


def _mean(request: DriftComparisonRequest, letter: str) -> float:
    pairs = zip(request.reading_order, request.readings_in_order, strict=True)
    own = [reading for name, reading in pairs if name == letter]
    return sum(own) / len(own)


def _budget(request: DriftComparisonRequest, fit: Fit) -> Budget:
    """What the readings' spread, and the indicator's steps, leave in doubt of the difference."""
    resolution = request.indicator_resolution
    steps = (
        []
        if resolution is None
        else [Contribution("indicator_resolution", resolution / 2.0, sensitivity=fit.per_spread)]
    )
    missing = [] if steps else ["indicator_resolution"]
    if request.repeatability is not None:
        own = Contribution("repeatability", request.repeatability, "normal", fit.per_spread)
        return Budget((own, *steps), not_stated=tuple(missing))
    if fit.scatter is None:
        return Budget(tuple(steps), not_stated=("repeatability", *missing))
    # What the fit leaves holds the indicator's steps already, unless it is less than they are.
    scattered = Contribution("scatter", fit.scatter, "normal", fit.per_spread, fit.spare)
    if any(step.standard_uncertainty > scattered.standard_uncertainty for step in steps):
        return Budget(tuple(steps))
    return Budget((scattered,), not_stated=() if fit.scatter else tuple(missing))


def _advisories(request: DriftComparisonRequest, fit: Fit) -> Iterator[Advisory]:
    if fit.inflation > _BADLY_ORDERED:
        yield caution(
            "order-not-balanced",
            f"This order makes the uncertainty {percent(100.0 * (fit.inflation - 1.0))} larger "
            "than an order that is alike from both ends, such as ABBA or ABABA: read on until it "
            "is.",
        )
    spread = request.repeatability
    if spread is None or fit.scatter is None or not spread:
        return
    # Imported here: most answers need none, and scipy costs start-up time and memory.
    from scipy.special import chdtrc  # noqa: PLC0415

    # Past any chance long before the square of it would be past a float.
    ratio = min(fit.scatter / spread, _MANY_TIMES)
    if chdtrc(fit.spare, fit.spare * ratio**2) < _CHANCE:
        yield note(
            "drift-not-steady",
            f"The readings scatter by {small_length(fit.scatter, request.units)} about a steady "
            "drift, more than the repeatability stated explains: the drift bends, or a reading is "
            "off. Let all soak, and read again.",
        )


#: Scatter shows where the repeatability stated alone would make so much of it with this chance.
_CHANCE = 0.01
_MANY_TIMES = 1e6
