"""Center holes by shaft diameter, points of centers, tapped holes: published tables."""

from typing import Annotated

from pydantic import Field

from halfangle_service.fields import Angle, ResultModel, Unit
from halfangle_service.operation import published_table
from halfangle_service.trade.tables.centers.guides import (
    CenterPoint,
    HoleByShaft,
    TappedHole,
    center_points,
    holes_by_shaft,
    tapped_holes,
)
from halfangle_service.trade.tables.loader import Standing

_Millimetres = Annotated[float, Unit("millimetre")]


class CenterHoleByShaft(ResultModel):
    """Center hole for a range of shafts; all in millimetres."""

    key: str = Field(description="Key of the row.", examples=["12-to-18"])
    over: _Millimetres = Field(description="Shafts above this diameter.")
    up_to: _Millimetres | None = Field(description="And up to this one; null without an end.")
    pilot_diameter_mm: _Millimetres = Field(description="Diameter of the pilot: d1.")
    cone_diameter_mm: _Millimetres = Field(description="Largest diameter of the 60° cone: d2.")
    source: str = Field(description="Where the row comes from.")
    standing: Standing = Field(description="How it is known.")
    note: str = Field(description="What to mind; empty where nothing.")


class CenterPointEntry(ResultModel):
    """Included angle of centers and their holes for a kind of work."""

    key: str = Field(description="Key of the row.", examples=["general"])
    purpose: str = Field(description="What it is for.")
    included_angle: Angle = Field(description="Included angle of point and hole.")
    largest_mass_kg: Annotated[float, Unit("kilogram")] | None = Field(
        description="Heaviest work that it is for, in kilograms; null where none is given."
    )
    source: str = Field(description="Where the row comes from.")
    standing: Standing = Field(description="How it is known.")
    note: str = Field(description="What to mind; empty where nothing.")


class TappedHoleEntry(ResultModel):
    """A tapped center hole; all in millimetres."""

    key: str = Field(description="Key of the row.", examples=["d-m10"])
    thread: str = Field(description="Its thread.", examples=["M10"])
    pilot_diameter_mm: _Millimetres = Field(description="Clearance bore before the thread: d3.")
    cone_diameter_mm: _Millimetres = Field(description="Largest diameter of the 60° cone: d4.")
    chamfer_diameter_mm: _Millimetres = Field(
        description="Protecting chamfer, 120°, of form DS alone: d5."
    )
    cone_depth_mm: _Millimetres = Field(description="Depth of the cone, to a tenth.")
    source: str = Field(description="Where the row comes from.")
    standing: Standing = Field(description="How it is known.")


@published_table("centers.by-shaft", singular="shaft-range", key="key")
def by_shaft() -> dict[str, CenterHoleByShaft]:
    """Center holes by shaft diameter.

    A workshop handbook's guide to the size of center hole; for heavy work see
    `GET /v1/centers/points`.
    """
    return {key: _shaft(row) for key, row in holes_by_shaft().items()}


def _shaft(row: HoleByShaft) -> CenterHoleByShaft:
    return CenterHoleByShaft(
        key=row.key,
        over=row.over_mm,
        up_to=row.up_to_mm,
        pilot_diameter_mm=row.pilot_diameter_mm,
        cone_diameter_mm=row.cone_diameter_mm,
        source=row.source,
        standing=row.standing,
        note=row.note,
    )


@published_table("centers.points", singular="point", key="key")
def points() -> dict[str, CenterPointEntry]:
    """Points of lathe centers.

    Included angle of points and holes for general and for heavy work.
    """
    return {key: _point(row) for key, row in center_points().items()}


def _point(row: CenterPoint) -> CenterPointEntry:
    return CenterPointEntry(
        key=row.key,
        purpose=row.purpose,
        included_angle=Angle.of(row.included_angle_degrees),
        largest_mass_kg=row.largest_mass_kg,
        source=row.source,
        standing=row.standing,
        note=row.note,
    )


@published_table("centers.tapped-holes", singular="tapped-hole", key="key")
def tapped() -> dict[str, TappedHoleEntry]:
    """Tapped center holes.

    Forms D and DS of DIN 332-2, DS under a protecting chamfer, which GB/T 145 calls C: a 60° cone
    over a thread, from memory.
    """
    return {key: _tapped(row) for key, row in tapped_holes().items()}


def _tapped(row: TappedHole) -> TappedHoleEntry:
    return TappedHoleEntry(
        key=row.key,
        thread=row.thread,
        pilot_diameter_mm=row.pilot_diameter_mm,
        cone_diameter_mm=row.cone_diameter_mm,
        chamfer_diameter_mm=row.chamfer_diameter_mm,
        cone_depth_mm=row.cone_depth_mm,
        source=row.source,
        standing=row.standing,
    )
