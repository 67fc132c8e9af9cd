"""The part to inspect as its drawing states it, and what follows from it at once."""

import math
from typing import Annotated, Literal

from pydantic import Field

from halfangle_service.errors import Disagreement
from halfangle_service.fields import (
    ARCSEC_PER_RADIAN,
    Angle,
    AngleInput,
    Arcsec,
    ArcsecOut,
    Length,
    LengthOut,
    NonNegativeLength,
    RequestModel,
    ResultModel,
    Units,
    from_mm,
    to_mm,
)
from halfangle_service.fields.choice import one_of
from halfangle_service.fields.slopes import (
    ConeAngleGrade,
    ConeFields,
    IncludedAngleBand,
    SlopeFields,
    cone_slope,
    slope_of,
)
from halfangle_service.trade.cone import Slope, require_before_point
from halfangle_service.trade.inspection.means import InspectedCone, Tolerance
from halfangle_service.trade.inspection.sine_plate import InspectedFace
from halfangle_service.trade.tables.tapers.designations import one_standard
from halfangle_service.trade.tables.tapers.grades import angle_band_of_grade
from halfangle_service.trade.tables.tapers.standard import StandardTaper
from halfangle_service.trade.tapers.tolerance import (
    Cone,
    Disposition,
    half_angle_limits,
    require_cones,
    require_size_left,
)
from halfangle_service.trade.wheel.flank import Surface, require_extent

#: What states the tolerance of a cone's angle, of which one is sent.
TOLERANCES = (
    "cone_angle_grade",
    "included_angle_band_arcsec",
    "included_angle_tolerance_arcsec",
)
_PATH = "feature/"


class InspectedConeFields(SlopeFields):
    """A cone of any kind with its tolerances; that of its angle in one of three ways."""

    cone_angle_grade: ConeAngleGrade = None
    included_angle_band_arcsec: IncludedAngleBand = None
    included_angle_tolerance_arcsec: Arcsec | None = Field(
        None, description="± tolerance of the included angle.", examples=[120.0]
    )
    disposition: Disposition = Field(
        "symmetric",
        description="Where a grade or a band lies to the nominal angle; `symmetric` has half of it "
        "to either side.",
    )
    large_diameter_tolerance: NonNegativeLength | None = Field(
        None, description="Tolerance of the large diameter, plus and minus."
    )


class InspectedConeFeature(InspectedConeFields, ConeFields):
    """An outer cone between two diameters, such as a center: 0 for a sharp point."""

    kind: Literal["cone"]


class InspectedTaperFields(InspectedConeFields):
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


class InspectedPlugFeature(InspectedTaperFields):
    """A taper plug or shank."""

    kind: Literal["taper-plug"]


class InspectedSocketFeature(InspectedTaperFields):
    """A taper socket; its large end is its mouth."""

    kind: Literal["taper-socket"]


class InspectedFaceFeature(RequestModel):
    """A plane face at an angle to its base."""

    kind: Literal["angled-face"]
    face_angle: Annotated[float, AngleInput(gt=0, lt=90)] = Field(
        description="Angle between the face and the base, in degrees.", examples=[15.0]
    )
    rise: Length = Field(
        description="Height of the face, square to the base, in `units`.", examples=[0.2]
    )
    tolerance_arcsec: Arcsec = Field(
        description="± tolerance of that angle, in arc-seconds.", examples=[10.0]
    )


InspectedFeature = Annotated[
    InspectedConeFeature | InspectedPlugFeature | InspectedSocketFeature | InspectedFaceFeature,
    Field(discriminator="kind", description="The part to inspect."),
]


class InspectedPart(ResultModel):
    """The part as it was read, with the limits of its angle."""

    kind: Literal["cone", "taper-plug", "taper-socket", "angled-face"] = Field(
        description="Which kind it is."
    )
    included_angle: Angle | None = Field(description="Included angle; null of a face.")
    half_angle: Angle | None = Field(description="Half angle; null of a face.")
    face_angle: Angle | None = Field(description="Angle between face and base; null of a cone.")
    large_diameter: LengthOut | None = Field(
        description="Diameter at the large end, a socket's mouth; null of a face."
    )
    small_diameter: LengthOut | None = Field(
        description="Diameter at the small end, 0 at a point; null of a face."
    )
    length: LengthOut | None = Field(description="Length along the axis; null of a face.")
    smallest_allowed_angle: Angle = Field(
        description="Smallest angle that the tolerance allows: included, of a face to its base."
    )
    largest_allowed_angle: Angle = Field(description="Largest angle that the tolerance allows.")
    angle_band_arcsec: ArcsecOut = Field(
        description="Whole tolerance of that angle, from least to most."
    )


def inspected_part(feature: InspectedFeature, units: Units) -> InspectedCone | InspectedFace:
    """Work out a part; refuses what is no cone, no taper or no face."""
    if isinstance(feature, InspectedFaceFeature):
        surface = Surface(math.radians(feature.face_angle), feature.rise)
        require_extent(surface, angle=[f"{_PATH}face_angle"], size=[f"{_PATH}rise"])
        limit = feature.tolerance_arcsec / ARCSEC_PER_RADIAN
        tolerance = Tolerance(-limit, limit, "tolerance_arcsec")
        return InspectedFace(surface.angle_rad, surface.slant, tolerance)
    slope, large, length = _sizes(feature, units)
    half = slope.half_angle_rad
    size = feature.large_diameter_tolerance
    require_size_left(large, size, path=_PATH)
    field, band, disposition = _band(feature, length, units)
    require_cones(half, band, disposition, field=f"{_PATH}{field}")
    low, high = half_angle_limits(0.0, band, disposition)
    return InspectedCone(
        Cone(large, half, half + low, half + high),
        length,
        feature.kind == "taper-socket",
        Tolerance(2.0 * low, 2.0 * high, field),
        None if size is None else Tolerance(-size, size, "large_diameter_tolerance"),
    )


def _sizes(
    feature: InspectedConeFeature | InspectedPlugFeature | InspectedSocketFeature, units: Units
) -> tuple[Slope, float, float]:
    """Slope, large diameter and length of a cone or a taper."""
    if isinstance(feature, InspectedConeFeature):
        slope = cone_slope(feature, path=_PATH)
        run = feature.large_diameter - feature.small_diameter
        return slope, feature.large_diameter, run / slope.rate
    slope = slope_of(feature, path=_PATH)
    large, length = _taper_sizes(feature, units)
    require_before_point(large, length, slope.half_angle_rad, field=f"{_PATH}length")
    return slope, large, length


def _taper_sizes(feature: InspectedTaperFields, units: Units) -> tuple[float, float]:
    """Gauge diameter and length of a taper: its own, else those of the standard that it names."""
    standard = one_standard(feature.designation)
    large, length = feature.gauge_diameter, feature.length
    if standard is not None:
        large = _in_units(standard.gauge_diameter, standard, units) if large is None else large
        length = _in_units(standard.small_end_depth, standard, units) if length is None else length
    if large is None or length is None:
        sizes = {"gauge_diameter": large, "length": length}
        raise Disagreement(
            "The size of the taper is missing: no standard that it names has it.",
            fields={
                f"{_PATH}{name}": "is needed, or a standard's designation that has it"
                for name, size in sizes.items()
                if size is None
            },
        )
    return large, length


def _in_units(size: float | None, standard: StandardTaper, units: Units) -> float | None:
    """A size of a standard taper in the request's unit, its own figure where that is the same."""
    if size is None or standard.units == units:
        return size
    return from_mm(to_mm(size, standard.units), units)


def _band(
    feature: InspectedConeFields, length: float, units: Units
) -> tuple[str, float, Disposition]:
    """The field that states the angle's tolerance, its whole band in radians, and how it lies."""
    field = one_of(feature, *TOLERANCES, path=_PATH)
    if feature.cone_angle_grade is not None:
        stated = "length" if "length" in feature.model_fields_set else field
        grade = feature.cone_angle_grade
        band = angle_band_of_grade(grade, to_mm(length, units), field=f"{_PATH}{stated}")
        return field, band, feature.disposition
    if feature.included_angle_band_arcsec is not None:
        band = feature.included_angle_band_arcsec / ARCSEC_PER_RADIAN
        return field, band, feature.disposition
    either_way = (feature.included_angle_tolerance_arcsec or 0.0) / ARCSEC_PER_RADIAN
    return field, 2.0 * either_way, "symmetric"


def part_out(feature: InspectedFeature, part: InspectedCone | InspectedFace) -> InspectedPart:
    """Write a part as it was read."""
    limits = part.angle
    cone = part if isinstance(part, InspectedCone) else None
    nominal = (
        feature.face_angle
        if isinstance(feature, InspectedFaceFeature)
        else slope_of(feature, path=_PATH).included_angle_degrees
    )
    return InspectedPart(
        kind=feature.kind,
        included_angle=Angle.of(nominal) if cone else None,
        half_angle=Angle.of(nominal / 2.0) if cone else None,
        face_angle=None if cone else Angle.of(nominal),
        large_diameter=cone.cone.large_diameter if cone else None,
        small_diameter=cone.small_diameter if cone else None,
        length=cone.length if cone else None,
        smallest_allowed_angle=Angle.of(nominal + math.degrees(limits.lower)),
        largest_allowed_angle=Angle.of(nominal + math.degrees(limits.upper)),
        angle_band_arcsec=(limits.upper - limits.lower) * ARCSEC_PER_RADIAN,
    )
