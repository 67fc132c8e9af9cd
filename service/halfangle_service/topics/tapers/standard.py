"""The two published tables of tapers: standard tapers with their sizes, and rates of taper."""

from pydantic import Field

from halfangle_service.fields import (
    Angle,
    LengthOut,
    ResultModel,
    Units,
    angle_from_radians,
)
from halfangle_service.fields.slopes import OneInXOut, TaperPerFootOut
from halfangle_service.operation import published_table
from halfangle_service.topics.tapers.sources import TABLES
from halfangle_service.trade.cone import INCHES_PER_FOOT, half_angle_from_rate
from halfangle_service.trade.tables.tapers.rates import Rate, standard_rates
from halfangle_service.trade.tables.tapers.shanks import SHANK_COLUMNS, shank_dimensions
from halfangle_service.trade.tables.tapers.standard import (
    RowStanding,
    StandardTaper,
    standard_tapers,
)


class StandardShankDimensions(ResultModel):
    """Principal dimensions of a shank and its socket, null where the standard gives none."""

    units: Units = Field(description="Unit of these lengths.")
    gauge_plane_to_end: LengthOut | None = Field(
        description="How far the cone runs on past the gauge plane, at most: a."
    )
    end_diameter: LengthOut | None = Field(
        description="Diameter at the cone's large end, about: D1 = D + C a."
    )
    small_end_diameter: LengthOut | None = Field(
        description="Diameter at the small end, about: d = D − C l1."
    )
    small_end_depth: LengthOut | None = Field(
        description="Gauge plane to the small end, at most: l1."
    )
    plain_shank_depth: LengthOut | None = Field(
        description="Gauge plane to the end of a shank without tang, at most: l2."
    )
    tang_shoulder_depth: LengthOut | None = Field(
        description="Gauge plane to the tang's shoulder, at most: l3."
    )
    tang_end_depth: LengthOut | None = Field(
        description="Gauge plane to the tang's end, at most: l4."
    )
    tang_thickness: LengthOut | None = Field(description="Thickness of the tang: b, h13.")
    socket_bore: LengthOut | None = Field(description="Bore at the socket's small end: d5, H11.")
    socket_depth: LengthOut | None = Field(
        description="Least depth of the socket's cone and bore: l5."
    )
    slot_depth: LengthOut | None = Field(
        description="Gauge plane to the far end of the slot for the drift: l6."
    )
    slot_width: LengthOut | None = Field(description="Width of the slot: g, A13.")
    published: list[str] = Field(description="Names of the columns seen in print.")
    source: str = Field(description="Standard and table.")
    standing: RowStanding = Field(description="How the other columns are had.")


class StandardTaperEntry(ResultModel):
    """A standard taper; lengths in its own units."""

    designation: str = Field(description="Designation to ask by.", examples=["morse-2"])
    name: str = Field(description="Its name.")
    series: str = Field(description="Series that it belongs to.")
    units: Units = Field(description="Unit of its lengths.")
    gauge_diameter: LengthOut = Field(description="Large diameter, at the gauge plane.")
    small_diameter: LengthOut | None = Field(
        description="Small diameter, where the table gives one."
    )
    small_end_depth: LengthOut | None = Field(
        description="Distance from the gauge plane to the small diameter, where the table gives it."
    )
    included_angle: Angle = Field(description="Included angle.")
    taper_per_foot: TaperPerFootOut
    one_in_x: OneInXOut
    source: str = Field(description="Standard and clause.")
    dimensions: StandardShankDimensions | None = Field(
        description="Principal dimensions of shank and socket, where the table holds them."
    )
    standing: RowStanding = Field(description="How the row is had.")


@published_table("tapers.standard", singular="standard", key="designation", sources=(TABLES,))
def standard() -> dict[str, StandardTaperEntry]:
    """Standard tapers.

    Standard tapers from published tables, each row with its source.
    """
    return {designation: _entry(taper) for designation, taper in standard_tapers().items()}


def _entry(taper: StandardTaper) -> StandardTaperEntry:
    return StandardTaperEntry(
        designation=taper.designation,
        name=taper.name,
        series=taper.series,
        units=taper.units,
        gauge_diameter=taper.gauge_diameter,
        small_diameter=taper.small_diameter,
        small_end_depth=taper.small_end_depth,
        included_angle=angle_from_radians(2.0 * half_angle_from_rate(taper.rate)),
        taper_per_foot=taper.rate * INCHES_PER_FOOT,
        one_in_x=1.0 / taper.rate,
        source=taper.source,
        dimensions=_dimensions(taper.designation),
        standing=taper.standing,
    )


def _dimensions(designation: str) -> StandardShankDimensions | None:
    row = shank_dimensions().get(designation)
    if row is None:
        return None
    return StandardShankDimensions(
        units="mm",
        published=row["published"],
        source=row["source"],
        standing=row["standing"],
        **{column: row[column] for column in SHANK_COLUMNS},
    )


class TaperRateEntry(ResultModel):
    """A standard rate of taper or cone angle."""

    designation: str = Field(description="Designation to ask by.", examples=["iso-1:20"])
    purpose: str = Field(description="What it is for.")
    included_angle: Angle = Field(description="Cone angle.")
    one_in_x: OneInXOut
    taper_per_foot: TaperPerFootOut
    source: str = Field(description="Standard and table.")
    standing: RowStanding = Field(description="How the row is had.")


@published_table("tapers.rates", singular="rate", key="designation", sources=(TABLES,))
def rates() -> dict[str, TaperRateEntry]:
    """Standard rates of taper.

    Rates of taper and cone angles of ISO 1119, taper pins and pipe.
    """
    return {designation: _rate_entry(row) for designation, row in standard_rates().items()}


def _rate_entry(row: Rate) -> TaperRateEntry:
    return TaperRateEntry(
        designation=row.designation,
        purpose=row.purpose,
        included_angle=Angle.of(row.cone_angle_degrees),
        one_in_x=row.one_in_x,
        taper_per_foot=INCHES_PER_FOOT / row.one_in_x,
        source=row.source,
        standing=row.standing,
    )
