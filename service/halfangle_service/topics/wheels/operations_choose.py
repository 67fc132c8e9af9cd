"""Choosing a way to grind a cone: models to maths and back."""

import math
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from typing import get_args

from halfangle_service.cautions import DEFERENCE
from halfangle_service.errors import Disagreement, Impossible
from halfangle_service.fields import angle_from_radians
from halfangle_service.fields.advisories import Advisory, caution, note
from halfangle_service.operation import Operation, Outcome, Source
from halfangle_service.topics.wheels.models_choose import (
    ChooseDressedWheel,
    ChooseSinePlate,
    ChooseWays,
    ChooseWheelSide,
    ChooseWorkhead,
    GrindingWay,
    WayContribution,
    WayName,
    WheelChooseRequest,
    WheelChooseResult,
)
from halfangle_service.topics.wheels.models_flank import ScaleDresser
from halfangle_service.topics.wheels.operations_errors import cone_of
from halfangle_service.trade.wheel.dresser import dresser_angle
from halfangle_service.trade.wheel.dressing_errors import DressedCone
from halfangle_service.trade.wheel.flank import dressing_passes, flank_for_rise
from halfangle_service.trade.wheel.ways import (
    Contribution,
    by_axis_offset,
    by_diamond_height,
    by_scale,
    by_sine_base,
    by_wear,
    root_sum_square,
    verdict,
    worst_case,
)
from halfangle_service.trade.wording import plain

_RANK = {"fits": 0, "doubtful": 1, "ruled out": 2}


@dataclass(slots=True)
class _Way:
    """A way as far as it is known: errors, times, checks, reasons against it."""

    name: WayName
    setup_minutes: float
    inspection_minutes: float
    inspect: tuple[str, ...]
    contributions: list[Contribution]
    reasons: list[str] = field(default_factory=list)


def choose(request: WheelChooseRequest) -> Outcome[WheelChooseResult]:
    """The ways side by side for one cone."""
    cone = cone_of(request, request.wheel_diameter)
    ways = list(_ways(request.ways, cone))
    if not ways:
        names = ("sine_plate", "dressed_wheel", "wheel_side", "swivelled_workhead")
        raise Disagreement(
            "No way is described: send at least one of " + ", ".join(names) + ".",
            fields=dict.fromkeys(
                (f"ways/{name}" for name in names), "send at least one of the ways"
            ),
        )
    rows = sorted(
        (_row(request, way) for way in ways),
        key=lambda row: (_RANK[row.verdict], row.total_minutes, row.way),
    )
    described = {way.name for way in ways}
    result = WheelChooseResult(
        half_angle=angle_from_radians(cone.angle_rad),
        best=None if rows[0].verdict == "ruled out" else rows[0].way,
        ways=rows,
        not_described=[name for name in get_args(WayName) if name not in described],
        considered=len(rows),
    )
    return Outcome(result, tuple(_advisories(request, result)))


def _ways(ways: ChooseWays, cone: DressedCone) -> Iterator[_Way]:
    if ways.sine_plate is not None:
        yield _sine_plate(ways.sine_plate, cone)
    if ways.dressed_wheel is not None:
        yield _dressed_wheel(ways.dressed_wheel, cone)
    if ways.wheel_side is not None:
        yield _wheel_side(ways.wheel_side, cone)
    if ways.swivelled_workhead is not None:
        yield _workhead(ways.swivelled_workhead, cone)


def _sine_plate(plate: ChooseSinePlate, cone: DressedCone) -> _Way:
    way = _Way(
        "sine plate",
        plate.setup_minutes,
        plate.inspection_minutes,
        (
            "The stack against a wrong block: measure it, or build it again from other blocks.",
            "The fixture's axis parallel to the plate, by an indicator along a test bar.",
        ),
        [
            Contribution(
                "stack", by_sine_base(plate.center_distance, cone.angle_rad, plate.stack_tolerance)
            ),
            Contribution("plate", 2.0 * plate.plate_error_arcsec),
            Contribution("fixture's pitch", 2.0 * plate.fixture_pitch_arcsec),
            Contribution("wheel breakdown", by_wear(cone.slant, plate.wheel_breakdown)),
        ],
    )
    way.reasons.extend(_past(plate.largest_angle, cone, "The plate reaches"))
    return way


def _past(largest: float | None, cone: DressedCone, words: str) -> Iterator[str]:
    """The reason where a half angle is past the largest that is reached, in degrees."""
    degrees = math.degrees(cone.angle_rad)
    if largest is not None and degrees > largest * (1.0 + 1e-12):
        yield f"{words} {plain(largest)}°, the half angle is {plain(degrees)}°."


def _dressed_wheel(wheel: ChooseDressedWheel, cone: DressedCone) -> _Way:
    flank = flank_for_rise(cone.angle_rad, cone.rise, 0.0)
    with _fields_under("dressed_wheel", "diamond_height"):
        cone.require_room(wheel.diamond_height)
    passes = dressing_passes(flank.depth, wheel.depth_per_pass)
    way = _Way(
        "dressed wheel",
        wheel.setup_minutes + passes * wheel.seconds_per_pass / 60.0,
        wheel.inspection_minutes,
        (
            "The ground angle itself, optically or over rolls: the stack does not prove the wheel.",
            "The surface for straightness, for diamond height and wear bend it.",
        ),
        [
            Contribution("dresser's setting", _dresser_limit(wheel, cone)),
            Contribution("diamond height", by_diamond_height(cone, wheel.diamond_height)),
            Contribution("wear of the flank", by_wear(cone.slant, wheel.flank_wear)),
            Contribution("axes not parallel", 2.0 * wheel.axis_parallelism_arcsec),
        ],
    )
    if flank.width > wheel.wheel_width:
        way.reasons.append(
            f"The flank is {plain(flank.width)} wide, the wheel {plain(wheel.wheel_width)}."
        )
    return way


def _dresser_limit(wheel: ChooseDressedWheel, cone: DressedCone) -> float:
    if isinstance(wheel.dresser, ScaleDresser):
        return by_scale(wheel.dresser.graduation)
    angle = dresser_angle(cone.angle_rad, from_side=wheel.dresser.zero == "wheel side")
    return by_sine_base(wheel.dresser.center_distance, angle, wheel.stack_tolerance)


def _wheel_side(side: ChooseWheelSide, cone: DressedCone) -> _Way:
    way = _Way(
        "wheel side",
        side.setup_minutes,
        side.inspection_minutes,
        (
            "The wheel's rating for grinding with its side, before anything else.",
            "The ground angle itself, optically or over rolls.",
        ),
        [
            Contribution("swivel", 2.0 * side.swivel_error_arcsec),
            Contribution("side out of square", 2.0 * side.side_error_arcsec),
            Contribution("wear of the side", by_wear(cone.slant, side.side_wear)),
        ],
    )
    if not side.rated_for_side:
        what = "not known" if side.rated_for_side is None else "stated not"
        way.reasons.append(f"The wheel is {what} to be rated for grinding with its side.")
    if cone.slant > side.usable_width:
        way.reasons.append(
            f"The surface is {plain(cone.slant)} long, the side is usable over "
            f"{plain(side.usable_width)}."
        )
    return way


def _workhead(head: ChooseWorkhead, cone: DressedCone) -> _Way:
    with _fields_under("swivelled_workhead", "axis_offset"):
        from_offset = by_axis_offset(cone, head.axis_offset)
    way = _Way(
        "swivelled workhead",
        head.setup_minutes,
        head.inspection_minutes,
        (
            "The ground angle itself, over rolls or on a sine bar: a scale proves nothing.",
            "The work axis at the wheel axis' height.",
        ),
        [
            Contribution("scale", by_scale(head.graduation)),
            Contribution("axis offset", from_offset),
            Contribution("wheel breakdown", by_wear(cone.slant, head.wheel_breakdown)),
        ],
    )
    way.reasons.extend(_past(head.largest_angle, cone, "The workhead swivels to"))
    return way


@contextmanager
def _fields_under(way: str, field_name: str) -> Iterator[None]:
    """Name a way's own field by its path in the request, where the maths refuses it."""
    try:
        yield
    except Impossible as refusal:
        fields = {
            f"ways/{way}/{name}" if name == field_name else name: message
            for name, message in refusal.fields.items()
        }
        raise Impossible(refusal.detail, fields=fields) from None


def _row(request: WheelChooseRequest, way: _Way) -> GrindingWay:
    expected, worst = root_sum_square(way.contributions), worst_case(way.contributions)
    reasons = list(way.reasons)
    if expected > request.tolerance_arcsec:
        reasons.append(
            f"The error to expect is ±{plain(expected, 4)}″, the tolerance ±"
            f"{plain(request.tolerance_arcsec)}″."
        )
    ahead = way.setup_minutes + way.inspection_minutes
    return GrindingWay(
        way=way.name,
        verdict=verdict(way.reasons, expected, worst, request.tolerance_arcsec),
        expected_arcsec=expected,
        worst_arcsec=worst,
        contributions=[
            WayContribution(name=c.name, limit_arcsec=c.arcsec)
            for c in sorted(way.contributions, key=lambda c: -c.arcsec)
        ],
        first_piece_minutes=ahead + request.minutes_per_piece,
        total_minutes=ahead + request.pieces * request.minutes_per_piece,
        inspect=list(way.inspect),
        ruled_out_by=reasons,
    )


def _advisories(request: WheelChooseRequest, result: WheelChooseResult) -> Iterator[Advisory]:
    if result.best is None:
        yield caution(
            "no-way-fits", "Every way described is ruled out; the reasons stand beside each."
        )
    elif result.ways[0].verdict == "doubtful":
        yield caution(
            "best-way-doubtful",
            f"The best way, {result.best}, keeps the tolerance as errors usually fall, not at "
            "their worst. Measure the first piece.",
        )
    if request.ways.wheel_side is not None:
        yield note(
            "side-grinding-last",
            "The wheel's side heats the work and cannot be dressed as truly as its periphery: "
            "where another way fits, take that (common practice, no source).",
        )
    yield note(
        "check-the-ground-angle",
        "A dressed angle must be checked optically; a sine setting only against the wrong block "
        "(common practice, no source).",
    )
    yield caution(
        "choice-safety",
        f"Ask wheels/speed with the wheel's marks before any of these. {DEFERENCE}",
    )


OPERATION = Operation(
    topic="wheels",
    verb="choose",
    title="Four ways to grind a cone, side by side",
    summary="Sine plate, dressed wheel, wheel's side and swivelled workhead for one cone: the "
    "angle error that each reaches, its time, what to inspect, and why one is ruled out.",
    request=WheelChooseRequest,
    result=WheelChooseResult,
    calculate=choose,
    relations=(
        "limits are ± on the included angle, twice those of the half angle",
        "stack: 2 × tolerance / (L cos θ); scale: its graduation; wear: 2 × atan(wear / slant)",
        "expected = √Σ limit², worst = Σ limit",
        "time = set-up + dressing passes + inspection + pieces × grinding",
    ),
    sources=(
        Source(
            citation="Derived here from the errors of dressing and of the set-up.",
            standing="derived",
        ),
        Source(
            citation="Times where the request names none, and what to inspect.",
            standing="common-practice-no-source",
        ),
    ),
    example={
        "units": "in",
        "included_angle": 60,
        "large_diameter": 0.75,
        "small_diameter": 0.05,
        "wheel_diameter": 7,
        "tolerance_arcsec": 70,
        "pieces": 5,
        "ways": {
            "sine_plate": {
                "center_distance": 5,
                "stack_tolerance": 0.00002,
                "fixture_pitch_arcsec": 5,
                "wheel_breakdown": 0.00005,
            },
            "dressed_wheel": {
                "wheel_width": 0.75,
                "dresser": {"kind": "sine-base", "center_distance": 2},
                "stack_tolerance": 0.00005,
                "diamond_height": 0.02,
                "flank_wear": 0.0001,
                "depth_per_pass": 0.001,
            },
            "wheel_side": {"usable_width": 1, "swivel_error_arcsec": 60},
            "swivelled_workhead": {"graduation": "0 05", "axis_offset": 0.02},
        },
    },
)
