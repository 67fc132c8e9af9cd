"""Standard tapers with their sizes and shanks, from published tables."""

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
from halfangle_service.trade.cone import INCHES_PER_FOOT, half_angle_from_rate
from halfangle_service.trade.tables.loader import Standing
from halfangle_service.trade.tables.tapers.shanks import shank_dimensions
from halfangle_service.trade.tables.tapers.standard import StandardTaper, standard_tapers


class StandardShankDimensions(ResultModel):
    """Principal dimensions of a shank and its socket, null where the table gives none.

    The gauge plane is at the end of the socket, where the gauge diameter is.
    """

    units: Units = Field(description="Unit of these lengths.")
    gauge_plane_tolerance: LengthOut | None = Field(
        description="How far the gauge plane may lie from its place along the axis, plus or "
        "minus: z."
    )
    gauge_plane_to_end: LengthOut | None = Field(
        description="How far the cone runs on past the gauge plane, at most: a."
    )
    end_diameter: LengthOut | None = Field(
        description="Diameter at the cone's large end, about: D1 = D + C a."
    )
    small_end_diameter: LengthOut | None = Field(
        description="Diameter at the cone's small end, about: d = D − C l1."
    )
    small_end_depth: LengthOut | None = Field(
        description="Gauge plane to the small end of a shank without tang, at most: l1."
    )
    plain_shank_length: LengthOut | None = Field(
        description="Whole length of a shank without tang, at most: l2 = l1 + a."
    )
    tang_end_depth: LengthOut | None = Field(
        description="Gauge plane to the tang's end, at most: l3; S of the inch tables."
    )
    shank_length: LengthOut | None = Field(
        description="Whole length of a shank with tang, at most: l4 = l3 + a; B of the inch tables."
    )
    tang_thickness: LengthOut | None = Field(
        description="Thickness of the tang: b, h13; t of the inch tables."
    )
    tang_length: LengthOut | None = Field(description="Length of the tang: T of the inch tables.")
    tang_radius: LengthOut | None = Field(
        description="Radius of the tang's run-out: R of the inch tables."
    )
    tang_diameter: LengthOut | None = Field(
        description="Diameter over the tang: d of the inch tables."
    )
    socket_bore: LengthOut | None = Field(description="Bore at the socket's small end: d5, H11.")
    socket_depth: LengthOut | None = Field(
        description="Least depth of the socket's cone and bore: l5; H of the inch tables."
    )
    slot_depth: LengthOut | None = Field(
        description="Gauge plane to the near end of the slot for the drift: l6; K of the inch "
        "tables."
    )
    slot_length: LengthOut | None = Field(description="Length of the slot: L of the inch tables.")
    slot_width: LengthOut | None = Field(
        description="Width of the slot: g, A13; W of the inch tables."
    )
    published: list[str] = Field(description="Names of the columns seen in print.")
    source: str = Field(description="Standard and table.")
    standing: Standing = Field(description="How the other columns are had.")


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
    standing: Standing = Field(description="How the row is had.")
    note: str = Field(description="What to mind; empty where nothing.")


@published_table("tapers.standard", singular="standard", key="designation")
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
        note=taper.note,
    )


def _dimensions(designation: str) -> StandardShankDimensions | None:
    shank = shank_dimensions().get(designation)
    if shank is None:
        return None
    return StandardShankDimensions(
        units=shank.units,
        published=list(shank.published),
        source=shank.source,
        standing=shank.standing,
        **shank.columns,
    )
