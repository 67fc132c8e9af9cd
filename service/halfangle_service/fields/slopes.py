"""Slope of a cone or taper; cone, taper or face: as every request that needs one states it."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Annotated, Any

from pydantic import Field

from halfangle_service.errors import Disagreement
from halfangle_service.fields.angles import Angle, AngleInput, angle_from_radians
from halfangle_service.fields.base import Group, RequestModel, ResultModel
from halfangle_service.fields.numbers import (
    FINITE,
    Arcsec,
    Length,
    NonNegativeLength,
    NumberOut,
    Unit,
)
from halfangle_service.trade import elementary
from halfangle_service.trade.cone import (
    AGREE_WITHIN_ARCSEC,
    INCHES_PER_FOOT,
    Slope,
    rate_from_half_angle,
    rate_from_taper_per_foot,
    require_before_point,
    require_smaller,
)
from halfangle_service.trade.tables.tapers.designations import one_standard, rate_of
from halfangle_service.trade.tables.tapers.grades import AngleGradeName
from halfangle_service.trade.tables.tapers.standard import StandardTaper
from halfangle_service.trade.units import Units, in_units
from halfangle_service.trade.wheel.flank import Surface, require_extent
from halfangle_service.trade.wording import plain

#: Fields that state a slope, in the order in which one is named as the first.
SLOPE_FIELDS = (
    "included_angle",
    "half_angle",
    "taper_per_foot",
    "one_in_x",
    "rate_of_taper",
    "designation",
)
_DESIGNATION = (
    "Designation of a standard taper or rate, as `GET /v1/tapers/standard` and "
    "`GET /v1/tapers/rates` list them, or what a toolmaker calls it: `MT3`, `B&S 9`, `JT33`, "
    "`NT40`, `1:20`. The answer says what it was read as."
)


@dataclass(frozen=True)
class TaperName:
    """Marks a request's field that names a standard taper, so that an answer says which it read."""


Designation = Annotated[
    str,
    Field(min_length=1, max_length=60, description=_DESIGNATION, examples=["morse-2"]),
    TaperName(),
]


class SlopeFields(RequestModel):
    """A cone's slope, stated in at least one of six ways; several must agree."""

    group = Group("Slope of the cone")

    included_angle: Annotated[float, AngleInput(gt=0.01, lt=179)] | None = Field(
        None, description="Angle between opposite surfaces of the cone, in degrees."
    )
    half_angle: Annotated[float, AngleInput(gt=0.005, lt=89.5)] | None = Field(
        None, description="Angle between the cone's axis and its surface, in degrees."
    )
    taper_per_foot: Annotated[float, FINITE, Field(ge=0.003, le=2000), Unit("inch_per_foot")] | (
        None
    ) = Field(None, description="Inches of diameter a foot of length, whatever `units` are.")
    one_in_x: Annotated[float, FINITE, Field(ge=0.005, le=5000), Unit("1")] | None = Field(
        None, description="The x of a taper written 1:x, on the diameter (ISO 1119)."
    )
    rate_of_taper: Annotated[float, FINITE, Field(ge=0.0002, le=200), Unit("length_per_length")] | (
        None
    ) = Field(None, description="Change of diameter for one unit of length, C = 1/x (ISO 3040).")
    designation: Designation | None = Field(None, description=_DESIGNATION, examples=["morse-2"])


ConeAngleGrade = Annotated[
    AngleGradeName | None, Field(description="Grade of the cone angle.", examples=["AT5"])
]
IncludedAngleBand = Annotated[
    Annotated[float, FINITE, Field(gt=0, le=36_000), Unit("arcsecond")] | None,
    Field(description="Whole tolerance of the included angle, from least to most."),
]

TaperPerFootOut = Annotated[
    float, Unit("inch_per_foot"), Field(description="Inches of diameter a foot of length.")
]
OneInXOut = Annotated[
    NumberOut,
    Field(
        description="The x of the taper written 1:x, on the diameter: how far a gauge moves along "
        "the axis for one unit of diameter."
    ),
]
RateOfTaperOut = Annotated[
    float,
    Unit("length_per_length"),
    Field(
        description="C = (D − d) / l = 2 tan α: change of diameter for one unit of length "
        "(ISO 3040)."
    ),
]


class SlopeForms(ResultModel):
    """A cone's slope as an answer gives it, in the forms that drawings and tables use.

    The half angle stands beside these: an `Angle`, or an estimate where it was measured.
    """

    included_angle: Angle = Field(description="Angle between opposite surfaces of the cone.")
    taper_per_foot: TaperPerFootOut
    one_in_x: OneInXOut
    rate_of_taper: RateOfTaperOut


def slope_forms(half_angle_rad: float) -> dict[str, Any]:
    """Values of the fields of `SlopeForms` for a half angle in radians."""
    rate = rate_from_half_angle(half_angle_rad)
    return {
        "included_angle": angle_from_radians(2.0 * half_angle_rad),
        "taper_per_foot": INCHES_PER_FOOT * rate,
        "one_in_x": 1.0 / rate,
        "rate_of_taper": rate,
    }


class ConeFields(SlopeFields):
    """The cone wanted, by its slope and its two diameters."""

    large_diameter: Length = Field(
        description="Larger diameter to grind, in `units`.", examples=[0.75]
    )
    small_diameter: NonNegativeLength = Field(
        description="Smaller diameter to grind, in `units`; 0 for a sharp point.", examples=[0.05]
    )


class TaperFields(SlopeFields):
    """A taper by its gauge line; a standard's designation is enough."""

    gauge_diameter: Length | None = Field(
        None,
        description="Diameter at the gauge line, the taper's large end, in `units`; a standard "
        "taper has its own.",
    )
    length: Length | None = Field(
        None,
        description="Length from the gauge line to the small end, in `units`; of a standard taper "
        "absent where its table has one.",
    )


class AngledFaceFields(RequestModel):
    """A plane face at an angle to its base, with the tolerance of that angle."""

    face_angle: Annotated[float, AngleInput(gt=0, lt=90)] = Field(
        description="Angle between the face and the base, in degrees.", examples=[15.0]
    )
    rise: Length = Field(
        description="Height of the face, square to the base, in `units`.", examples=[0.2]
    )
    tolerance_arcsec: Arcsec = Field(
        description="± tolerance of that angle, in arc-seconds.", examples=[10.0]
    )


def face_surface(face_angle: float, rise: float, *, path: str) -> Surface:
    """The surface of a face at an angle in degrees; refuses one too long or too short to grind.

    `path` is that of the object that holds both fields, such as `work/`.
    """
    surface = Surface(elementary.radians(face_angle), rise)
    require_extent(surface, angle=[f"{path}face_angle"], size=[f"{path}rise"])
    return surface


def taper_sizes(
    request: TaperFields, slope: Slope, units: Units, *, path: str
) -> tuple[float, float]:
    """Gauge diameter and length of a taper: its own, else those of the standard that it names.

    Refuses what has neither, and a length past the point of a cone of this slope. `path` is that of
    the object that holds the fields, such as `feature/`.
    """
    standard = one_standard(request.designation)
    named: dict[str, float | None] = {} if standard is None else _sizes_of(standard, units)
    sizes = {
        name: named.get(name) if size is None else size
        for name, size in (("gauge_diameter", request.gauge_diameter), ("length", request.length))
    }
    large, length = sizes.values()
    if large is None or length is None:
        raise Disagreement(
            "The size of the taper is missing: no standard that it names has it.",
            fields={
                f"{path}{name}": "is needed, or a standard's designation that has it"
                for name, size in sizes.items()
                if size is None
            },
        )
    require_before_point(large, length, slope.half_angle_rad, field=f"{path}length")
    return large, length


def _sizes_of(standard: StandardTaper, units: Units) -> dict[str, float | None]:
    """Sizes of a standard taper, by the fields that would state them."""
    depth = standard.small_end_depth
    return {
        "gauge_diameter": in_units(standard.gauge_diameter, standard.units, units),
        "length": None if depth is None else in_units(depth, standard.units, units),
    }


def cone_slope(request: ConeFields, *, path: str = "") -> Slope:
    """Slope of a cone; refuses diameters in the wrong order, and a surface too long or too short.

    `path` is that of the object that holds the fields, such as `work/`.
    """
    require_smaller(request.small_diameter, request.large_diameter, path=path)
    slope = slope_of(request, path=path)
    rise = (request.large_diameter - request.small_diameter) / 2.0
    require_extent(
        Surface(slope.half_angle_rad, rise),
        angle=[f"{path}{name}" for name in stated_slopes(request, path=path)],
        size=[f"{path}large_diameter", f"{path}small_diameter"],
    )
    return slope


def slope_of(request: SlopeFields, *, path: str = "") -> Slope:
    """The slope that a request states; raises Disagreement where none is, or where several differ.

    `path` is that of the object that holds the fields, such as `work/`.
    """
    slope = slope_if_stated(request, path=path)
    if slope is None:
        names = f"{', '.join(SLOPE_FIELDS[:-1])} or {SLOPE_FIELDS[-1]}"
        raise Disagreement(
            "The slope of the cone is missing.",
            fields={f"{path}{SLOPE_FIELDS[0]}": f"send {names}"},
        )
    return slope


def slope_if_stated(request: SlopeFields, *, path: str = "") -> Slope | None:
    """The slope that a request states, None where it states none; several must agree."""
    stated = stated_slopes(request, path=path)
    first = next(iter(stated), None)
    for name, slope in stated.items():
        off = slope.less_arcsec(stated[first or name])
        if abs(off) > AGREE_WITHIN_ARCSEC:
            raise Disagreement(
                f"{name} disagrees with {first} by {plain(off)}″ of included angle.",
                fields={f"{path}{name}": f"should agree with {first} to {AGREE_WITHIN_ARCSEC}″"},
                more={"disagreement_arcsec": off},
            )
    return None if first is None else stated[first]


def stated_slopes(request: SlopeFields, *, path: str = "") -> dict[str, Slope]:
    """Each statement of the slope by its field, in the order of `SLOPE_FIELDS`."""
    return dict(_statements(request, path))


def _statements(request: SlopeFields, path: str) -> Iterator[tuple[str, Slope]]:
    if request.included_angle is not None:
        yield "included_angle", Slope(request.included_angle / 2.0)
    if request.half_angle is not None:
        yield "half_angle", Slope(request.half_angle)
    if request.taper_per_foot is not None:
        yield "taper_per_foot", Slope.of_rate(rate_from_taper_per_foot(request.taper_per_foot))
    if request.one_in_x is not None:
        yield "one_in_x", Slope.of_rate(1.0 / request.one_in_x)
    if request.rate_of_taper is not None:
        yield "rate_of_taper", Slope.of_rate(request.rate_of_taper)
    if request.designation is not None:
        rate = rate_of(request.designation, field=f"{path}designation")
        yield "designation", Slope.of_rate(rate)
