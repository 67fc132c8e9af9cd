"""A setting table: heights for a range of angles on one sine bar or plate."""

import math
from collections.abc import Iterator, Sequence
from typing import Annotated

from pydantic import Field

from halfangle_service.cautions import STEEP_DEGREES, steep_angle, unusual_stack
from halfangle_service.fields import (
    Angle,
    AngleInput,
    CountOut,
    LengthOut,
    ResultModel,
    bench_step,
)
from halfangle_service.fields.advisories import Advisory
from halfangle_service.fields.plates import (
    ArcsecPerStep,
    PlateFields,
    ResolutionField,
    arcsec_per_step,
    offset_of,
    to_set,
)
from halfangle_service.operation import Outcome, operation
from halfangle_service.topics.sine.sources import SINE_RELATION, STEEP_PRACTICE
from halfangle_service.trade.sine.setting_table import MOST_ROWS, angle_range, csv_text, heights
from halfangle_service.trade.wording import plain


class SineTableRequest(PlateFields):
    """A sine bar or plate, and a range of angles."""

    first_angle: Annotated[float, AngleInput(ge=0, lt=90)] = Field(
        description="First angle of the table, in degrees.", examples=[0.0]
    )
    last_angle: Annotated[float, AngleInput(ge=0, lt=90)] = Field(
        description="Last angle of the table, in degrees; the table may end a part step below it.",
        examples=[60.0],
    )
    angle_step: Annotated[float, AngleInput(ge=1 / 3600, le=45)] = Field(
        description="Step from one angle to the next, in degrees; at least one second of arc.",
        examples=[1.0, "0°01'"],
    )
    resolution: ResolutionField = None


class SineTableRow(ResultModel):
    """One line of a setting table."""

    angle: Angle = Field(description="The angle.")
    height: LengthOut = Field(description="Difference of the stacks that sets it.")
    height_to_set: LengthOut = Field(description="The same, rounded to the resolution.")
    arcsec_per_step: ArcsecPerStep


class SineTableResult(ResultModel):
    """A setting table, as rows and as CSV."""

    count: CountOut = Field(description="How many rows.")
    rows: list[SineTableRow] = Field(description="The rows, angles ascending.")
    csv: str = Field(
        description="The same table as CSV (RFC 4180), with a header that names units; heights in "
        "full precision."
    )


@operation(
    "sine.table",
    relations=("height = center_distance × sin(angle) + offset",),
    sources=(SINE_RELATION, STEEP_PRACTICE),
    example={
        "units": "in",
        "center_distance": 5,
        "first_angle": 0,
        "last_angle": 60,
        "angle_step": 5,
    },
    largest_request=f"{MOST_ROWS} rows: every minute of arc up to 90°",
    heavy=True,
)
def table(request: SineTableRequest) -> Outcome[SineTableResult]:
    """Setting table.

    Heights for a range of angles on one sine bar or plate, as rows and as CSV.
    """
    angles = angle_range(request.first_angle, request.last_angle, request.angle_step)
    columns = zip(
        angles.tolist(),
        heights(request.center_distance, angles, offset_of(request)).tolist(),
        strict=True,
    )
    rows = [_row(request, degrees, height) for degrees, height in columns]
    result = SineTableResult(count=len(rows), rows=rows, csv=_csv(request, rows))
    return Outcome(result, tuple(_advisories(request, rows)))


def _row(request: SineTableRequest, degrees: float, height: float) -> SineTableRow:
    return SineTableRow(
        angle=Angle.of(degrees),
        height=height,
        height_to_set=to_set(height, request.units, request.resolution),
        arcsec_per_step=arcsec_per_step(
            request.center_distance, math.radians(degrees), request.units
        ),
    )


def _advisories(request: SineTableRequest, rows: Sequence[SineTableRow]) -> Iterator[Advisory]:
    """What the first row past zero and the last one call for, each thing once."""
    last = rows[-1]
    first = next((row for row in rows if row.angle.degrees), last)
    yield from steep_angle(last.angle.degrees, last.arcsec_per_step, STEEP_DEGREES)
    said = {
        advisory.code: advisory
        for row in (rows[0], first, last)
        for advisory in unusual_stack(
            row.height, request.center_distance, request.units, row.height_to_set
        )
    }
    yield from said.values()


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
