"""Settings, angles and setting tables: models to maths and back."""

import math
from collections.abc import Iterator

from halfangle_service.cautions import STEEP_DEGREES, steep_angle
from halfangle_service.errors import Disagreement
from halfangle_service.fields import ARCSEC_PER_RADIAN, Angle, angle_from_radians, bench_step
from halfangle_service.fields.advisories import Advisory
from halfangle_service.fields.plates import arcsec_per_step, offset_of, to_set
from halfangle_service.operation import Operation, Outcome
from halfangle_service.topics.sine.models import (
    SineAngleRequest,
    SineAngleResult,
    SineComplement,
    SineSettingRequest,
    SineSettingResult,
    SineTableRequest,
    SineTableResult,
    SineTableRow,
)
from halfangle_service.topics.sine.plate import SINE_RELATION, STEEP_PRACTICE, bulk
from halfangle_service.trade.sine.geometry import (
    angle_for_height,
    arcsec_per_height,
    height_for_angle,
    require_reach,
)
from halfangle_service.trade.sine.setting_table import MOST_ROWS, angle_range, csv_text, heights
from halfangle_service.trade.wording import plain


def setting(request: SineSettingRequest) -> Outcome[SineSettingResult]:
    """Height of the stack for an angle."""
    require_reach(request.angle, request.largest_angle, "angle")
    offset = offset_of(request)
    angle_rad = math.radians(request.angle)
    height = height_for_angle(request.center_distance, angle_rad, offset)
    built = to_set(height, request.units, request.resolution)
    as_set = angle_for_height(request.center_distance, built, offset, "angle")
    step = bench_step(request.units)
    per_unit = arcsec_per_height(request.center_distance, angle_rad)
    result = SineSettingResult(
        height=height,
        height_to_set=built,
        angle_as_set=angle_from_radians(as_set),
        rounding_error_arcsec=(as_set - angle_rad) * ARCSEC_PER_RADIAN,
        arcsec_per_unit=per_unit,
        step=step,
        arcsec_per_step=per_unit * step,
        angle=Angle.of(request.angle),
        complement=_complement(request, offset),
    )
    return Outcome(result, tuple(_setting_advisories(request, result)))


def _complement(request: SineSettingRequest, offset: float) -> SineComplement | None:
    """Setting of the work turned by 90°, past the stated angle only."""
    if request.angle <= request.steep_angle:
        return None
    degrees = 90.0 - request.angle
    angle_rad = math.radians(degrees)
    height = height_for_angle(request.center_distance, angle_rad, offset)
    built = to_set(height, request.units, request.resolution)
    as_set = angle_for_height(request.center_distance, built, offset, "angle")
    return SineComplement(
        angle=Angle.of(degrees),
        height=height,
        height_to_set=built,
        rounding_error_arcsec=(as_set - angle_rad) * ARCSEC_PER_RADIAN,
        arcsec_per_step=arcsec_per_step(request.center_distance, angle_rad, request.units),
    )


def _setting_advisories(
    request: SineSettingRequest, result: SineSettingResult
) -> Iterator[Advisory]:
    yield from steep_angle(request.angle, result.arcsec_per_step, request.steep_angle)
    yield from bulk(result.height, request.center_distance)


def angle(request: SineAngleRequest) -> Outcome[SineAngleResult]:
    """Angle that a stack gives."""
    field, height = _height_of(request)
    angle_rad = angle_for_height(request.center_distance, height, offset_of(request), field)
    result = SineAngleResult(
        angle=angle_from_radians(angle_rad),
        height=height,
        arcsec_per_step=arcsec_per_step(request.center_distance, angle_rad, request.units),
    )
    return Outcome(
        result, tuple(steep_angle(result.angle.degrees, result.arcsec_per_step, STEEP_DEGREES))
    )


def _height_of(request: SineAngleRequest) -> tuple[str, float]:
    """The difference of the stacks, and the field that it came from."""
    if (request.height is None) == (request.high_stack is None):
        both = "were both sent" if request.height is not None else "are both missing"
        raise Disagreement(
            f"`height` and `high_stack` {both}; the difference of the stacks comes from one of "
            "them.",
            fields={"height": "send either this or high_stack"},
        )
    if request.height is not None:
        return "height", request.height
    return "high_stack", (request.high_stack or 0.0) - request.low_stack


def table(request: SineTableRequest) -> Outcome[SineTableResult]:
    """Setting table for a range of angles."""
    angles = angle_range(request.first_angle, request.last_angle, request.step)
    columns = zip(
        angles.tolist(),
        heights(request.center_distance, angles, offset_of(request)).tolist(),
        strict=True,
    )
    rows = [_row(request, degrees, height) for degrees, height in columns]
    result = SineTableResult(count=len(rows), rows=rows, csv=_csv(request, rows))
    last = rows[-1]
    return Outcome(
        result, tuple(steep_angle(last.angle.degrees, last.arcsec_per_step, STEEP_DEGREES))
    )


def _row(request: SineTableRequest, degrees: float, height: float) -> SineTableRow:
    return SineTableRow(
        angle=Angle.of(degrees),
        height=height,
        height_to_set=to_set(height, request.units, request.resolution),
        arcsec_per_step=arcsec_per_step(
            request.center_distance, math.radians(degrees), request.units
        ),
    )


def _csv(request: SineTableRequest, rows: list[SineTableRow]) -> str:
    """The table as CSV; the header names the units."""
    units = request.units
    header = (
        "angle_degrees",
        "angle_dms",
        f"height_{units}",
        f"height_to_set_{units}",
        f"arcsec_per_{plain(bench_step(units))}_{units}",
    )
    cells = (
        (r.angle.degrees, r.angle.dms, r.height, r.height_to_set, r.arcsec_per_step) for r in rows
    )
    return csv_text(header, cells)


SETTING = Operation(
    topic="sine",
    verb="setting",
    title="Sine setting",
    summary="The height of the stack that sets a sine bar or plate to an angle, what it is worth "
    "once rounded, and past a stated angle the setting of the complement.",
    request=SineSettingRequest,
    result=SineSettingResult,
    calculate=setting,
    relations=(
        "height = center_distance × sin(angle) + base_step − (high_roll_diameter − "
        "low_roll_diameter) / 2",
        "dθ/dh = 1 / (L cos θ)",
    ),
    sources=(SINE_RELATION, STEEP_PRACTICE),
    example={"units": "in", "center_distance": 5, "angle": 30},
)
ANGLE = Operation(
    topic="sine",
    verb="angle",
    title="Angle of a stack",
    summary="The angle that a stack, or the stacks under both rolls, gives on a sine bar or plate.",
    request=SineAngleRequest,
    result=SineAngleResult,
    calculate=angle,
    relations=(
        "angle = asin((height − offset) / center_distance)",
        "offset = base_step − (high_roll_diameter − low_roll_diameter) / 2",
    ),
    sources=(SINE_RELATION, STEEP_PRACTICE),
    example={"units": "in", "center_distance": 5, "height": 2.5},
)
TABLE = Operation(
    topic="sine",
    verb="table",
    title="Setting table",
    summary="Heights for a range of angles on one sine bar or plate, as rows and as CSV.",
    request=SineTableRequest,
    result=SineTableResult,
    calculate=table,
    relations=("height = center_distance × sin(angle) + offset",),
    sources=(SINE_RELATION, STEEP_PRACTICE),
    example={"units": "in", "center_distance": 5, "first_angle": 0, "last_angle": 60, "step": 5},
    largest_request=f"{MOST_ROWS} rows: every minute of arc up to 90°",
    heavy=True,
)
