"""The part to inspect as its drawing states it, and what follows from it at once."""

import math
from typing import Annotated, Literal

from pydantic import Field

from halfangle_service.fields import (
    ARCSEC_PER_RADIAN,
    Angle,
    Arcsec,
    ArcsecOut,
    LengthOut,
    NonNegativeLength,
    ResultModel,
    Units,
    to_mm,
)
from halfangle_service.fields.choice import one_of
from halfangle_service.fields.slopes import (
    AngledFaceFields,
    ConeAngleGrade,
    ConeFields,
    IncludedAngleBand,
    SlopeFields,
    TaperFields,
    cone_slope,
    face_surface,
    slope_of,
    taper_sizes,
)
from halfangle_service.trade.cone import Slope
from halfangle_service.trade.inspection.means import InspectedCone, Tolerance
from halfangle_service.trade.inspection.sine_plate import InspectedFace
from halfangle_service.trade.tables.tapers.grades import angle_band_of_grade
from halfangle_service.trade.tapers.tolerance import (
    Cone,
    Disposition,
    half_angle_limits,
    require_cones,
    require_size_left,
)

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


class InspectedPlugFeature(InspectedConeFields, TaperFields):
    """A taper plug or shank."""

    kind: Literal["taper-plug"]


class InspectedSocketFeature(InspectedConeFields, TaperFields):
    """A taper socket; its large end is its mouth."""

    kind: Literal["taper-socket"]


class InspectedFaceFeature(AngledFaceFields):
    """A plane face at an angle to its base."""

    kind: Literal["angled-face"]


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
        surface = face_surface(feature.face_angle, feature.rise, path=_PATH)
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
    return slope, *taper_sizes(feature, slope, units, path=_PATH)


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
