"""Standard rates of taper, and grades of cone angle tolerance, from published tables."""

from typing import Annotated

from pydantic import Field

from halfangle_service.fields import ARCSEC_PER_RADIAN, Angle, ArcsecOut, ResultModel, Unit
from halfangle_service.fields.slopes import OneInXOut, TaperPerFootOut
from halfangle_service.operation import published_table
from halfangle_service.trade.cone import INCHES_PER_FOOT
from halfangle_service.trade.tables.loader import Standing
from halfangle_service.trade.tables.tapers.grades import (
    AngleGrade,
    angle_grades,
    printed_arcsec,
    printed_diameter_band,
)
from halfangle_service.trade.tables.tapers.rates import Rate, standard_rates

_Millimetres = Annotated[float, Unit("millimetre")]
_Micrometres = Annotated[float, Unit("micrometre")]


class TaperRateEntry(ResultModel):
    """A standard rate of taper or cone angle."""

    designation: str = Field(description="Designation to ask by.", examples=["iso-1:20"])
    used_for: str = Field(description="What it is for.")
    included_angle: Angle = Field(description="Cone angle.")
    one_in_x: OneInXOut
    taper_per_foot: TaperPerFootOut
    source: str = Field(description="Standard and table.")
    standing: Standing = Field(description="How the row is had.")
    note: str = Field(description="What to mind; empty where nothing.")


@published_table("tapers.rates", singular="rate", key="designation")
def rates() -> dict[str, TaperRateEntry]:
    """Standard rates of taper.

    Rates of taper and cone angles of ISO 1119, tapers per foot, taper pins and pipe.
    """
    return {designation: _rate_entry(row) for designation, row in standard_rates().items()}


def _rate_entry(row: Rate) -> TaperRateEntry:
    return TaperRateEntry(
        designation=row.designation,
        used_for=row.used_for,
        included_angle=Angle.of(row.cone_angle_degrees),
        one_in_x=row.one_in_x,
        taper_per_foot=INCHES_PER_FOOT * row.rate,
        source=row.source,
        standing=row.standing,
        note=row.note,
    )


class TaperAngleGradeRange(ResultModel):
    """The tolerance of one range of cone lengths."""

    over: _Millimetres = Field(description="Lower end of the range, not included.")
    up_to: _Millimetres = Field(description="Upper end of the range, included.")
    included_angle_band_arcsec: ArcsecOut = Field(
        description="Whole tolerance of the included angle: AT_α."
    )
    included_angle_band_microradians: Annotated[float, Unit("microradian")] = Field(
        description="The same in microradians, as the standard gives it."
    )
    printed_arcsec: ArcsecOut = Field(
        description="The same in whole seconds as the standard prints it, 0.206″ to a microradian."
    )
    smallest_diameter_band: _Micrometres = Field(
        description="The same on the diameter over the shortest cone of the range: AT_D, its bound."
    )
    largest_diameter_band: _Micrometres = Field(
        description="The same on the diameter over the longest cone of the range: AT_D."
    )
    smallest_printed_diameter_band: _Micrometres = Field(
        description="AT_D over the shortest cone as printed: the preferred number R10 next to it."
    )
    largest_printed_diameter_band: _Micrometres = Field(
        description="AT_D over the longest cone as printed."
    )


class TaperAngleGradeEntry(ResultModel):
    """A grade of cone angle tolerance."""

    name: str = Field(description="Name to use as `cone_angle_grade`.", examples=["AT5"])
    ranges: list[TaperAngleGradeRange] = Field(description="Its ranges of length, ascending.")
    source: str = Field(description="Standard and table.")
    standing: Standing = Field(description="How the row is had.")


@published_table("tapers.cone-angle-grades", singular="cone-angle-grade", key="name")
def cone_angle_grades() -> dict[str, TaperAngleGradeEntry]:
    """Grades of cone angle tolerance.

    Tolerance of the included angle of each grade AT, by range of cone length.
    """
    return {name: _grade_entry(grade) for name, grade in angle_grades().items()}


def _grade_entry(grade: AngleGrade) -> TaperAngleGradeEntry:
    columns = zip(grade.over_mm, grade.up_to_mm, grade.band_microradian, strict=True)
    return TaperAngleGradeEntry(
        name=grade.name,
        ranges=[
            TaperAngleGradeRange(
                over=over,
                up_to=up_to,
                included_angle_band_arcsec=band * 1e-6 * ARCSEC_PER_RADIAN,
                included_angle_band_microradians=band,
                printed_arcsec=printed_arcsec(band),
                smallest_diameter_band=band * over * 1e-3,
                largest_diameter_band=band * up_to * 1e-3,
                smallest_printed_diameter_band=printed_diameter_band(band * over * 1e-3),
                largest_printed_diameter_band=printed_diameter_band(band * up_to * 1e-3),
            )
            for over, up_to, band in columns
        ],
        source=grade.source,
        standing=grade.standing,
    )
