"""The wheel's speed against its marks, and the usual checks before it is started."""

from collections.abc import Iterator
from typing import Annotated, Literal

from pydantic import Field

from halfangle_service.cautions import WHEEL_SAFETY, side_not_rated
from halfangle_service.errors import Impossible
from halfangle_service.fields import (
    FINITE,
    Length,
    LengthOut,
    RequestModel,
    ResultModel,
    Rpm,
    SharePercent,
    Unit,
    UnitsField,
    to_mm,
)
from halfangle_service.fields.advisories import Advisory, caution, stop
from halfangle_service.fields.base import Group, Rule
from halfangle_service.fields.choice import one_of
from halfangle_service.operation import Outcome, Source, operation
from halfangle_service.topics.wheels.sizes import unusual_sizes
from halfangle_service.trade.tables.loader import Standing
from halfangle_service.trade.tables.wheels.start_checks import start_checks
from halfangle_service.trade.uncertainty import Forecast, together
from halfangle_service.trade.unit_slips import require_any_wheel_diameter
from halfangle_service.trade.wheel.speed import (
    FLANGE_SHARE,
    FT_PER_MIN,
    Marking,
    flange_too_small,
    rpm_for_speed,
    side_forecast,
    surface_speed,
)
from halfangle_service.trade.wording import figure, of_any_unit, plain

MetresPerSecond = Annotated[float, FINITE, Field(ge=0.01, le=500), Unit("metre_per_second")]
FeetPerMinute = Annotated[float, FINITE, Field(ge=1, le=100_000), Unit("foot_per_minute")]
RpmOut = Annotated[float, Unit("per_minute")]
MetresPerSecondOut = Annotated[float, Unit("metre_per_second")]
FeetPerMinuteOut = Annotated[float, Unit("foot_per_minute")]

WheelType = Literal[
    "1-straight", "2-cylinder", "5-recessed-one-side", "6-straight-cup", "7-recessed-both-sides",
    "11-flaring-cup", "12-dish", "13-saucer",
]  # fmt: skip
#: The flange rule exempts special shapes; these are held in flanges as a straight wheel is.
_FLANGED = {"1-straight", "5-recessed-one-side", "7-recessed-both-sides"}
#: Surface speeds in m/s at which wheels are run (common practice, no source).
USUAL_SPEEDS = (5.0, 160.0)

#: What states the speed, of which one is sent.
SPEEDS = ("rpm", "surface_speed_m_per_s", "surface_speed_ft_per_min")
MARKS = ("marked_rpm", "marked_m_per_s", "marked_ft_per_min", "largest_machine_rpm")


class WheelSpeedRequest(RequestModel):
    """A wheel, how fast it turns, and what is marked on it."""

    rules = (Rule("one-of", SPEEDS),)
    group = Group("Marks of wheel and machine", fields=MARKS)

    units: UnitsField
    wheel_diameter: Length = Field(
        description="Diameter of the wheel now, in `units`.", examples=[7.0]
    )
    rpm: Rpm | None = Field(
        None,
        description="Spindle speed, per minute. This or one of the surface speeds.",
        examples=[3450.0],
    )
    surface_speed_m_per_s: MetresPerSecond | None = Field(
        None, description="Surface speed in m/s, to find the spindle speed for it."
    )
    surface_speed_ft_per_min: FeetPerMinute | None = Field(
        None, description="Surface speed in ft/min, to find the spindle speed for it."
    )
    new_diameter: Length | None = Field(
        None,
        description="Diameter of the wheel when new, in `units`, for which its marks hold. Absent: "
        "a limit marked in surface speed is reckoned for the diameter now, which is too high where "
        "the wheel is worn, and the forecast never `holds`.",
    )
    worn_diameter: Length | None = Field(
        None, description="Diameter that the wheel will wear to, in `units`.", examples=[6.0]
    )
    marked_rpm: Rpm | None = Field(
        None, description="Highest speed marked on the wheel, per minute.", examples=[3600.0]
    )
    marked_m_per_s: MetresPerSecond | None = Field(
        None, description="Highest surface speed marked on the wheel, in m/s."
    )
    marked_ft_per_min: FeetPerMinute | None = Field(
        None, description="Highest surface speed marked on the wheel, in ft/min."
    )
    largest_machine_rpm: Rpm | None = Field(
        None, description="Highest spindle speed marked on the machine, per minute."
    )
    wheel_type: WheelType | None = Field(
        None,
        description="Type of the wheel by its number in ISO 525 (from memory). Absent: the "
        "forecast never `holds`.",
    )
    grinding_side: bool = Field(
        False, strict=True, description="Whether the wheel's side is to grind."
    )
    rated_for_side: bool | None = Field(
        None,
        strict=True,
        description="Whether wheel and maker state that its side may grind. Absent where it is not "
        "known, which is not a permission.",
    )
    flange_diameter: Length | None = Field(
        None, description="Diameter of the flanges, in `units`.", examples=[2.5]
    )


class WheelSpeedLimit(ResultModel):
    """One limit of the spindle's speed."""

    name: str = Field(description="The request's field that it comes from.")
    rpm: RpmOut = Field(description="Highest spindle speed that it allows.")
    share_percent: SharePercent = Field(description="Spindle speed as a share of it.")
    over_limit: bool = Field(description="True where the spindle speed is over it.")


class WornWheelSpeed(ResultModel):
    """The same wheel worn down."""

    worn_diameter: LengthOut = Field(description="Worn diameter.")
    surface_speed_m_per_s: MetresPerSecondOut = Field(
        description="Surface speed at the same spindle speed."
    )
    surface_speed_ft_per_min: FeetPerMinuteOut = Field(description="The same in ft/min.")
    loss_percent: SharePercent = Field(description="Surface speed lost by wear.")
    rpm_to_restore: RpmOut | None = Field(
        description="Spindle speed that would bring the surface speed back; null where a limit "
        "forbids it, where the wheel bears no mark, or one in surface speed and `new_diameter` was "
        "not stated."
    )
    reason: str | None = Field(description="Why `rpm_to_restore` is null; null where it is not.")


class WheelStartCheck(ResultModel):
    """A usual check before the wheel is started."""

    action: str = Field(description="What to do.")
    source: str = Field(description="Where it comes from.")
    standing: Standing = Field(description="How it is had.")


class WheelSpeedResult(ResultModel):
    """Speed, limits, and what can be said of them."""

    forecast: Forecast = Field(
        description="`holds`: every limit stated is kept; this sees only the figures sent, which "
        "is less than a permission. `does-not-hold`: do not run it. `may-not-hold`: of what "
        "`not_stated` names nothing is known; `not-stated`: of anything, or not of a side that "
        "is to grind."
    )
    speed_forecast: Forecast = Field(description="The speed against every mark stated.")
    side_forecast: Forecast | None = Field(
        description="The side against its rating; null where it is not to grind."
    )
    not_stated: list[str] = Field(description="Fields without which the forecast never `holds`.")
    rpm: RpmOut = Field(description="Spindle speed.")
    surface_speed_m_per_s: MetresPerSecondOut = Field(description="Surface speed in m/s.")
    surface_speed_ft_per_min: FeetPerMinuteOut = Field(description="Surface speed in ft/min.")
    limits: list[WheelSpeedLimit] = Field(description="Every limit stated.")
    limit_rpm: RpmOut | None = Field(
        description="Highest spindle speed that no limit forbids; null without a mark on the wheel."
    )
    worn: WornWheelSpeed | None = Field(description="The wheel worn; null without its diameter.")
    before_starting: list[WheelStartCheck] = Field(description="Usual checks before starting.")


@operation(
    "wheels.speed",
    relations=(
        "v = π D n",
        "limit of a mark in surface speed = mark / (π × new diameter)",
        "1 m/s = 60 / 0.3048 ft/min",
    ),
    sources=(
        Source(
            citation="29 CFR 1910.215(d)(1), spindle speed not above the speed marked on the "
            "wheel, and (c), flanges, as state copies (WAC 296-806-40512, OAR 437-004-2100) print "
            "them.",
            standing="published",
        ),
        Source(
            citation="EN 12413 and ANSI B7.1, marking, side grinding and starting of wheels.",
            standing="from-memory",
        ),
    ),
    example={
        "units": "in",
        "wheel_diameter": 7,
        "rpm": 3450,
        "worn_diameter": 6,
        "marked_rpm": 3600,
        "wheel_type": "1-straight",
    },
    columns=True,
)
def speed(request: WheelSpeedRequest) -> Outcome[WheelSpeedResult]:
    """Surface speed of a wheel against its marks.

    Surface speed from diameter and spindle speed, or back, in m/s and ft/min, against what is
    marked on wheel and machine; the worn wheel; the usual checks before starting. Where a mark,
    type or rating is missing the forecast never `holds`.
    """
    require_any_wheel_diameter(request.wheel_diameter, request.units, "wheel_diameter")
    _require_sizes(request)
    rpm = _rpm(request)
    marking = _marking_of(request)
    proved = to_mm(request.new_diameter or request.wheel_diameter, request.units)
    over = marking.exceeded(rpm, proved)
    not_stated = list(_not_stated(request, marking))
    speed_is = marking.forecast(rpm, proved, new_diameter_known=request.new_diameter is not None)
    side_is = side_forecast(asked=request.grinding_side, rated=request.rated_for_side)
    metres = surface_speed(to_mm(request.wheel_diameter, request.units), rpm)
    result = WheelSpeedResult(
        forecast=_forecast(request, speed_is, side_is, complete=not not_stated),
        speed_forecast=speed_is,
        side_forecast=side_is,
        not_stated=not_stated,
        rpm=rpm,
        surface_speed_m_per_s=metres,
        surface_speed_ft_per_min=metres * FT_PER_MIN,
        limits=[
            WheelSpeedLimit(
                name=name, rpm=limit, share_percent=100.0 * rpm / limit, over_limit=name in over
            )
            for name, limit in marking.limits(proved).items()
        ],
        limit_rpm=marking.limit_rpm(proved),
        worn=_worn(request, marking, rpm, proved),
        before_starting=[
            WheelStartCheck(action=check.action, source=check.source, standing=check.standing)
            for check in start_checks()
        ],
    )
    return Outcome(result, tuple(_advisories(request, result)))


def _forecast(
    request: WheelSpeedRequest, speed: Forecast, side: Forecast | None, *, complete: bool
) -> Forecast:
    """Of all together; with a side that nobody states to be rated, which is stopped, of nothing."""
    found = together(_forecasts(request, speed, side, complete=complete))
    return "not-stated" if side == "not-stated" and found == "may-not-hold" else found


def _forecasts(
    request: WheelSpeedRequest, speed: Forecast, side: Forecast | None, *, complete: bool
) -> Iterator[Forecast]:
    """Of the speed, and of all else that was asked for or stated."""
    yield speed
    if side is not None:
        yield side
    if not complete:
        yield "not-stated"
    if request.flange_diameter is not None:
        yield "does-not-hold" if _flange_too_small(request) else "holds"


def _marking_of(request: WheelSpeedRequest) -> Marking:
    """The marks of wheel and machine, speeds in m/s."""
    speeds = {
        "marked_m_per_s": request.marked_m_per_s,
        "marked_ft_per_min": request.marked_ft_per_min and request.marked_ft_per_min / FT_PER_MIN,
    }
    known = {name: value for name, value in speeds.items() if value is not None}
    return Marking(request.marked_rpm, known, request.largest_machine_rpm)


def _require_sizes(request: WheelSpeedRequest) -> None:
    """Refuse diameters in the wrong order."""
    now = request.wheel_diameter
    if request.new_diameter is not None and request.new_diameter < now:
        raise Impossible(
            f"A wheel of {of_any_unit(now)} was not {of_any_unit(request.new_diameter)} when new.",
            fields={"new_diameter": f"should be at least wheel_diameter ({of_any_unit(now)})"},
        )
    if request.worn_diameter is not None and request.worn_diameter > now:
        raise Impossible(
            f"A wheel of {of_any_unit(now)} does not wear to {of_any_unit(request.worn_diameter)}.",
            fields={"worn_diameter": f"should be no more than wheel_diameter ({of_any_unit(now)})"},
        )


def _rpm(request: WheelSpeedRequest) -> float:
    """Spindle speed from the one speed that the request gives."""
    one_of(request, *SPEEDS)
    if request.rpm is not None:
        return request.rpm
    metres = request.surface_speed_m_per_s or (request.surface_speed_ft_per_min or 0) / FT_PER_MIN
    return rpm_for_speed(to_mm(request.wheel_diameter, request.units), metres)


def _not_stated(request: WheelSpeedRequest, marking: Marking) -> Iterator[str]:
    if not marking.known:
        yield "marked_rpm"
    if marking.speeds and request.new_diameter is None:
        yield "new_diameter"
    if request.wheel_type is None:
        yield "wheel_type"
    if request.grinding_side and request.rated_for_side is None:
        yield "rated_for_side"


def _flange_too_small(request: WheelSpeedRequest) -> bool:
    """True where flanges are stated that the rule forbids for this type of wheel."""
    return (
        request.flange_diameter is not None
        and request.wheel_type in _FLANGED
        and flange_too_small(request.flange_diameter, request.wheel_diameter)
    )


def _worn(
    request: WheelSpeedRequest, marking: Marking, rpm: float, proved_mm: float
) -> WornWheelSpeed | None:
    """The worn wheel at the same spindle speed, and whether that speed may be raised."""
    if request.worn_diameter is None:
        return None
    metres = surface_speed(to_mm(request.worn_diameter, request.units), rpm)
    wanted = rpm * request.wheel_diameter / request.worn_diameter
    largest = marking.limit_rpm(proved_mm)
    why = None
    if largest is None:
        why = "The wheel bears no mark, so no higher speed can be named."
    elif wanted > largest * (1.0 + 1e-9):
        would, limit = plain(wanted), plain(largest)
        why = f"It would take {would} per minute; the lowest limit is {limit} per minute."
    elif marking.speeds and request.new_diameter is None:
        why = "The marked surface speed holds for the new wheel: send new_diameter."
    return WornWheelSpeed(
        worn_diameter=request.worn_diameter,
        surface_speed_m_per_s=metres,
        surface_speed_ft_per_min=metres * FT_PER_MIN,
        loss_percent=100.0 * (1.0 - request.worn_diameter / request.wheel_diameter),
        rpm_to_restore=wanted if why is None else None,
        reason=why,
    )


def _advisories(request: WheelSpeedRequest, result: WheelSpeedResult) -> Iterator[Advisory]:
    over = [limit for limit in result.limits if limit.over_limit]
    if over:
        words = " and ".join(f"{limit.name} ({plain(limit.rpm)} per minute)" for limit in over)
        yield stop(
            "over-marked-speed",
            f"{plain(result.rpm)} per minute is over {words}. Do not run this wheel at this speed.",
        )
    if request.grinding_side and not request.rated_for_side:
        yield side_not_rated(request.rated_for_side)
    if request.wheel_type == "1-straight" and result.side_forecast == "holds":
        yield caution(
            "straight-wheel-side",
            "Straight wheels are made to grind with the periphery. The rating stated must stand on "
            "the wheel or in its maker's papers, with the thickness and load that it holds for.",
        )
    if unknown := [name for name in result.not_stated if name != "new_diameter"]:
        yield caution(
            "wheel-unknown",
            f"Nothing can be said for running this wheel until {', '.join(unknown)} is known. A "
            "wheel without a legible mark is not run.",
        )
    if "new_diameter" in result.not_stated:
        yield caution(
            "new-diameter-unknown",
            "A surface speed is marked for the new wheel. The diameter now was taken as new: where "
            "the wheel is worn, send new_diameter, which lowers the limit.",
        )
    slowest, fastest = USUAL_SPEEDS
    if not slowest <= result.surface_speed_m_per_s <= fastest:
        yield caution(
            "unusual-speed",
            f"The surface speed is {plain(result.surface_speed_m_per_s, 4)} m/s; wheels are run at "
            f"{plain(slowest)} to {plain(fastest)} m/s (common practice, no source). Are `units`, "
            "diameter and spindle speed right?",
        )
    yield from unusual_sizes(request, request.units)
    if request.flange_diameter is not None and _flange_too_small(request):
        yield stop(
            "flange-too-small",
            f"The flanges measure {figure(request.flange_diameter, request.units)}; a third of "
            f"this wheel's diameter is "
            f"{figure(request.wheel_diameter * FLANGE_SHARE, request.units)}, the least that they "
            "should be. Do not run this wheel between them.",
        )
    yield WHEEL_SAFETY
