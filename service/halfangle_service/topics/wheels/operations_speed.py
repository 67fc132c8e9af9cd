"""The wheel's speed against its marks: models to maths and back."""

from collections.abc import Iterator

from halfangle_service.cautions import DEFERENCE
from halfangle_service.errors import Disagreement, Impossible
from halfangle_service.fields import to_mm
from halfangle_service.fields.advisories import Advisory, caution, stop
from halfangle_service.operation import Operation, Outcome, Source
from halfangle_service.topics.wheels.models_speed import (
    WheelSpeedLimit,
    WheelSpeedRequest,
    WheelSpeedResult,
    WheelStartCheck,
    WornWheelSpeed,
)
from halfangle_service.trade.tables.wheels.start_checks import start_checks
from halfangle_service.trade.wheel.speed import (
    FT_PER_MIN,
    Marking,
    overall,
    rpm_for_speed,
    side_verdict,
    surface_speed,
)
from halfangle_service.trade.wording import plain

_SPEEDS = ("rpm", "surface_speed_m_per_s", "surface_speed_ft_per_min")
#: A flange should be at least this share of a straight wheel's diameter.
FLANGE_SHARE = 1.0 / 3.0
#: The flange rule exempts special shapes; these are held in flanges as a straight wheel is.
_FLANGED = {"1 straight", "5 recessed one side", "7 recessed both sides"}


def speed(request: WheelSpeedRequest) -> Outcome[WheelSpeedResult]:
    """Surface speed against the marks, new and worn."""
    _require_sizes(request)
    diameter = to_mm(request.wheel_diameter, request.units)
    rpm = _rpm(request, diameter)
    marking = marking_of(request)
    proved = to_mm(request.new_diameter or request.wheel_diameter, request.units)
    over = marking.exceeded(rpm, proved)
    speed_is = marking.speed_verdict(rpm, proved)
    side_is = side_verdict(asked=request.grinding_side, rated=request.rated_for_side)
    metres = surface_speed(diameter, rpm)
    result = WheelSpeedResult(
        verdict=overall(speed_is, side_is, type_known=request.wheel_type is not None),
        speed_verdict=speed_is,
        side_verdict=side_is,
        missing=list(_missing(request, marking)),
        rpm=rpm,
        surface_speed_m_per_s=metres,
        surface_speed_ft_per_min=metres * FT_PER_MIN,
        limits=[
            WheelSpeedLimit(
                name=name, rpm=limit, share_percent=100.0 * rpm / limit, exceeded=name in over
            )
            for name, limit in marking.limits(proved).items()
        ],
        largest_rpm=marking.largest_rpm(proved),
        worn=_worn(request, marking, rpm, proved),
        before_starting=[
            WheelStartCheck(
                what=check.what,
                source=check.source,
                standing=check.standing,
            )
            for check in start_checks()
        ],
    )
    return Outcome(result, tuple(_advisories(request, result)))


def marking_of(request: WheelSpeedRequest) -> Marking:
    """The marks of wheel and machine, speeds in m/s."""
    speeds = {
        "marked_m_per_s": request.marked_m_per_s,
        "marked_ft_per_min": request.marked_ft_per_min and request.marked_ft_per_min / FT_PER_MIN,
    }
    known = {name: value for name, value in speeds.items() if value is not None}
    return Marking(request.marked_rpm, known, request.machine_max_rpm)


def _require_sizes(request: WheelSpeedRequest) -> None:
    """Refuse diameters in the wrong order."""
    now = request.wheel_diameter
    if request.new_diameter is not None and request.new_diameter < now:
        raise Impossible(
            f"A wheel of {plain(now)} was not {plain(request.new_diameter)} when new.",
            fields={"new_diameter": f"should be at least wheel_diameter ({plain(now)})"},
        )
    if request.worn_diameter is not None and request.worn_diameter > now:
        raise Impossible(
            f"A wheel of {plain(now)} does not wear to {plain(request.worn_diameter)}.",
            fields={"worn_diameter": f"should be no more than wheel_diameter ({plain(now)})"},
        )


def _rpm(request: WheelSpeedRequest, diameter_mm: float) -> float:
    """Spindle speed from the one speed that the request gives."""
    given = [name for name in _SPEEDS if getattr(request, name) is not None]
    if len(given) != 1:
        what = "is missing" if not given else "was sent more than once"
        raise Disagreement(
            f"The speed {what}: send one of {', '.join(_SPEEDS)}.",
            fields=dict.fromkeys(given or _SPEEDS, "send exactly one of the speeds"),
        )
    if request.rpm is not None:
        return request.rpm
    metres = request.surface_speed_m_per_s or (request.surface_speed_ft_per_min or 0) / FT_PER_MIN
    return rpm_for_speed(diameter_mm, metres)


def _missing(request: WheelSpeedRequest, marking: Marking) -> Iterator[str]:
    if not marking.known:
        yield "marked_rpm"
    if request.wheel_type is None:
        yield "wheel_type"
    if request.grinding_side and request.rated_for_side is None:
        yield "rated_for_side"


def _worn(
    request: WheelSpeedRequest, marking: Marking, rpm: float, proved_mm: float
) -> WornWheelSpeed | None:
    """The worn wheel at the same spindle speed, and whether that speed may be raised."""
    if request.worn_diameter is None:
        return None
    diameter = to_mm(request.worn_diameter, request.units)
    metres = surface_speed(diameter, rpm)
    wanted = rpm * request.wheel_diameter / request.worn_diameter
    largest = marking.largest_rpm(proved_mm)
    why = None
    if largest is None:
        why = "The wheel bears no mark, so no higher speed can be named."
    elif wanted > largest * (1.0 + 1e-9):
        why = f"It would take {plain(wanted)} per minute; the lowest limit is {plain(largest)}."
    return WornWheelSpeed(
        diameter=request.worn_diameter,
        surface_speed_m_per_s=metres,
        surface_speed_ft_per_min=metres * FT_PER_MIN,
        loss_percent=100.0 * (1.0 - request.worn_diameter / request.wheel_diameter),
        rpm_to_restore=wanted if why is None else None,
        why_not=why,
    )


def _advisories(request: WheelSpeedRequest, result: WheelSpeedResult) -> Iterator[Advisory]:
    over = [limit for limit in result.limits if limit.exceeded]
    if over:
        words = " and ".join(f"{limit.name} ({plain(limit.rpm)} per minute)" for limit in over)
        yield stop(
            "over-marked-speed",
            f"{plain(result.rpm)} per minute is over {words}. Do not run this wheel at this speed.",
        )
    if result.side_verdict == "not rated":
        yield stop(
            "side-not-rated",
            "This wheel is stated not to be rated for grinding with its side. Do not grind with "
            "its side.",
        )
    if request.wheel_type == "1 straight" and result.side_verdict == "rated, as stated":
        yield caution(
            "straight-wheel-side",
            "Straight wheels are made to grind with the periphery. The rating stated must stand on "
            "the wheel or in its maker's papers, with the thickness and load that it holds for.",
        )
    if result.missing:
        yield caution(
            "wheel-unknown",
            f"Nothing can be said for running this wheel until {', '.join(result.missing)} is "
            "known. A wheel without a legible mark is not run.",
        )
    if request.new_diameter is None and (request.marked_m_per_s or request.marked_ft_per_min):
        yield caution(
            "new-diameter-unknown",
            "A surface speed is marked for the new wheel. The diameter now was taken as new: where "
            "the wheel is worn, send new_diameter, which lowers the limit.",
        )
    yield from _flange(request)
    yield caution(
        "wheel-speed-safety",
        f"This compares the figures sent and sees neither wheel nor machine. {DEFERENCE}",
    )


def _flange(request: WheelSpeedRequest) -> Iterator[Advisory]:
    least = request.wheel_diameter * FLANGE_SHARE
    if request.flange_diameter is None or request.wheel_type not in _FLANGED:
        return
    if request.flange_diameter < least * (1.0 - 1e-9):
        yield stop(
            "flange-too-small",
            f"The flanges are {plain(request.flange_diameter)}; a third of this wheel's diameter "
            f"is {plain(least)}, the least that they should be.",
        )


OPERATION = Operation(
    topic="wheels",
    verb="speed",
    title="Surface speed of a wheel against its marks",
    summary="Surface speed from diameter and spindle speed, or back, in m/s and ft/min, against "
    "what is marked on wheel and machine; the worn wheel; the usual checks before starting. A "
    "missing mark, type or rating answers `unknown`.",
    request=WheelSpeedRequest,
    result=WheelSpeedResult,
    calculate=speed,
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
        "wheel_type": "1 straight",
    },
)
