"""What a lever indicator's reading is worth, by the form of its tip."""

from collections.abc import Iterator
from typing import Annotated, Literal

from pydantic import Field

from halfangle_service.errors import Impossible
from halfangle_service.fields import (
    Angle,
    AngleInput,
    Length,
    LengthOut,
    NonNegativeLength,
    NumberOut,
    RequestModel,
    ResultModel,
    SignedLength,
    UnitsField,
    angle_from_radians,
)
from halfangle_service.fields.advisories import Advisory, caution, note
from halfangle_service.fields.choice import not_sent
from halfangle_service.fields.estimate import LengthEstimate, estimate
from halfangle_service.operation import Outcome, Source, operation
from halfangle_service.trade import elementary
from halfangle_service.trade.measuring.lever import movement
from halfangle_service.trade.uncertainty import Budget, Contribution
from halfangle_service.trade.wording import degrees, of_any_unit, percent, plain

#: Up to here a contact point of involute form is made to correct itself; see `_PEAR`.
PEAR_DEGREES = 30.0
#: A ball reads so much too long at 8°, a hundredth.
_NOTICED_PERCENT = 1.0
#: A lever is turned no further by a reading.
_LARGEST_TURN = 0.5

_COSINE = Source(
    citation="Cosine correction of a lever indicator, true = reading × cos(tip angle): tables at "
    "cncexpo.com/IndCosine.aspx and in indicator catalogues; exact over a turn of the lever: "
    "derived here.",
    standing="published",
)
_PEAR = Source(
    citation="A contact point of involute (pear, flame) form corrects any angle from 0° to 30° by "
    "itself: quick guide to dial indicators of an indicator maker, page 34, and "
    "cncexpo.com/IndCosine.aspx for the form.",
    standing="published",
)


class MeasuringLeverTipRequest(RequestModel):
    """A reading, the tip that made it, and how the lever stands."""

    units: UnitsField
    reading: SignedLength = Field(
        description="Difference read on the dial, in `units`; positive where the work rises.",
        examples=[0.2],
    )
    tip_form: Literal["ball", "cylinder", "pear"] = Field(
        description="Form of the tip: a `ball`, a `cylinder` across the lever, or a `pear` "
        "(involute) that corrects the angle by itself.",
        examples=["ball"],
    )
    tip_angle: Annotated[float, AngleInput(ge=0, le=75, measured=True)] = Field(
        description="Angle of the lever to the surface as the reading begins, in degrees.",
        examples=[30.0],
    )
    lever_length: Length | None = Field(
        None,
        description="Pivot to the middle of the tip, in `units`: the angle then changes over the "
        "reading, and the movement is exact. Absent: the angle is taken to stay.",
    )
    indicating_error_limit: NonNegativeLength | None = Field(
        None, description="Largest error ± of the reading, in `units`."
    )
    tip_angle_error_limit: Annotated[float, AngleInput(ge=0, le=45, measured=True)] | None = Field(
        None, description="Largest error ± of the tip's angle, in degrees."
    )


class MeasuringLeverTipResult(ResultModel):
    """The movement that made the reading."""

    true_movement: LengthEstimate = Field(description="Movement square to the surface.")
    excess_reading: LengthOut = Field(description="Reading less the movement.")
    movement_per_reading: NumberOut | None = Field(
        description="Movement over reading, the cosine where the angle stays; null at a reading "
        "of 0."
    )
    tip_angle_after: Angle = Field(description="Angle of the lever as the reading ends.")


@operation(
    "measuring.lever-tip",
    relations=(
        "ball, cylinder: movement = reading × cos a",
        "with the lever's length l: movement = l (sin a − sin(a − reading / l))",
        "pear: movement = reading, from 0° to 30°",
    ),
    sources=(_COSINE, _PEAR),
    example={
        "units": "mm",
        "reading": 0.2,
        "tip_form": "ball",
        "tip_angle": 30,
        "lever_length": 15,
        "indicating_error_limit": 0.002,
        "tip_angle_error_limit": 5,
    },
    columns=True,
)
def lever_tip(request: MeasuringLeverTipRequest) -> Outcome[MeasuringLeverTipResult]:
    """Lever indicator by its tip.

    What a lever indicator's reading is worth at the angle of its lever: a ball or cylinder reads
    too much by the cosine, a pear corrects itself within its range.
    """
    lever = request.lever_length
    turned = 0.0 if lever is None else request.reading / lever
    if abs(turned) > _LARGEST_TURN:
        raise Impossible(
            f"A lever of {of_any_unit(lever or 0.0)} is not turned by a reading of "
            f"{of_any_unit(abs(request.reading))}.",
            fields={"reading": f"should be within ±{of_any_unit(_LARGEST_TURN * (lever or 0.0))}"},
        )
    after = request.tip_angle - elementary.degrees(turned)
    _require_range(request, after)
    pear = request.tip_form == "pear"
    true = request.reading if pear else _moved(request, request.tip_angle)
    result = MeasuringLeverTipResult(
        true_movement=estimate(LengthEstimate, _budget(request), true),
        excess_reading=request.reading - true,
        movement_per_reading=true / request.reading if request.reading else None,
        tip_angle_after=angle_from_radians(elementary.radians(after)),
    )
    return Outcome(result, tuple(_advisories(request, result)))


def _moved(request: MeasuringLeverTipRequest, angle_degrees: float) -> float:
    return movement(request.reading, elementary.radians(angle_degrees), request.lever_length)


def _budget(request: MeasuringLeverTipRequest) -> Budget:
    """Budget of the movement: the dial's error, and the angle's, which a pear does not feel.

    Along the surface the cosine is flat, so that an error of the angle acts to one side only: the
    larger of what it does to either side is taken.
    """
    pear = request.tip_form == "pear"
    error, off = request.indicating_error_limit, request.tip_angle_error_limit
    true = _moved(request, request.tip_angle)
    parts = []
    if error is not None:
        worth = 1.0 if pear or not request.reading else true / request.reading
        parts.append(Contribution("indicating_error_limit", error, sensitivity=worth))
    if off is not None and not pear:
        changes = [_moved(request, request.tip_angle + sign * off) - true for sign in (-1.0, 1.0)]
        slope = max(changes, key=abs) / off if off else 0.0
        parts.append(Contribution("tip_angle_error_limit", off, sensitivity=slope, unit="degree"))
    missing = not_sent(
        request, "indicating_error_limit", *(() if pear else ("tip_angle_error_limit",))
    )
    return Budget(tuple(parts), not_stated=tuple(missing))


def _require_range(request: MeasuringLeverTipRequest, after: float) -> None:
    """Refuse a pear-shaped tip past the angles that it corrects."""
    if request.tip_form == "pear" and max(request.tip_angle, after) > PEAR_DEGREES:
        raise Impossible(
            f"A pear-shaped tip corrects itself up to {plain(PEAR_DEGREES)}°; the lever stands "
            f"at {degrees(max(request.tip_angle, after), 120.0)}, where nothing is known of it.",
            fields={"tip_angle": f"should keep the lever within {plain(PEAR_DEGREES)}°"},
        )


def _advisories(
    request: MeasuringLeverTipRequest, result: MeasuringLeverTipResult
) -> Iterator[Advisory]:
    ratio = result.movement_per_reading
    if ratio and 100.0 * (1.0 - ratio) > _NOTICED_PERCENT:
        yield caution(
            "cosine-error",
            f"The dial shows {percent(100.0 * (1.0 / ratio - 1.0))} more than the movement: lay "
            "the lever along the surface, or correct each reading.",
        )
    if request.tip_form == "pear":
        yield note(
            "pear-tip-trusted",
            f"A pear-shaped tip is made to correct itself within {plain(PEAR_DEGREES)}°: prove it "
            "once on a step of gauge blocks at the angle used.",
        )
