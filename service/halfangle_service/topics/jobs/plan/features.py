"""The feature wanted, as its drawing states it, and what follows from it at once."""

import math
from dataclasses import dataclass
from typing import Annotated, Literal

import numpy as np
from pydantic import Field

from halfangle_service.errors import Impossible, refused_at
from halfangle_service.fields import (
    Angle,
    Arcsec,
    Length,
    LengthOut,
    NonNegativeLength,
    RequestModel,
    ResultModel,
    Units,
)
from halfangle_service.fields.base import Rule
from halfangle_service.fields.choice import all_or_none, needs
from halfangle_service.fields.compound.surfaces import SineOrientation, Surface, orientation_of
from halfangle_service.fields.slopes import (
    AngledFaceFields,
    ConeFields,
    SlopeFields,
    TaperFields,
    cone_slope,
    face_surface,
    slope_of,
    taper_sizes,
)
from halfangle_service.topics.jobs.plan.shank import Shank
from halfangle_service.trade.sine.compound import Vector, tilt_of_normal
from halfangle_service.trade.wheel.flank import Surface as GroundSurface
from halfangle_service.trade.wheel.flank import require_extent

FeatureKind = Literal[
    "cone", "center", "taper-plug", "taper-socket", "angled-face", "compound-face"
]
_PATH = "feature/"


class PlanTrueFields(SlopeFields):
    """A cone's angle with its tolerance, and what it must run true to."""

    included_angle_tolerance_arcsec: Arcsec = Field(
        description="± tolerance of the included angle.", examples=[120.0]
    )
    shank: Shank | None = Field(None, description="The shank that the cone must run true to.")
    limit_tir: Length | None = Field(
        None,
        description="Runout of the cone to its shank that the drawing allows, as full indicator "
        "movement square to the axis, in `units`; needs `shank`.",
        examples=[0.0003],
    )


class PlanTurnedFields(PlanTrueFields):
    """What a cone or taper of any kind states beside its size."""

    large_diameter_tolerance: NonNegativeLength | None = Field(
        None,
        description="± tolerance of the large diameter, in `units`; absent, nothing is said of it.",
    )


class PlanCone(PlanTurnedFields, ConeFields):
    """A cone between two diameters."""

    kind: Literal["cone"]


class PlanCenterFields(PlanTrueFields):
    """A cone that comes to its point, by its larger diameter."""

    large_diameter: Length = Field(
        description="Larger diameter of the cone, where it meets the body, in `units`.",
        examples=[0.75],
    )


class PlanCenter(PlanTurnedFields, PlanCenterFields):
    """A center: a cone that comes to its point."""

    kind: Literal["center"]


class PlanTaper(PlanTurnedFields, TaperFields):
    """A taper plug or socket; a standard's designation is enough."""

    kind: Literal["taper-plug", "taper-socket"] = Field(description="Which of both it is.")
    relief_length: NonNegativeLength | None = Field(
        None,
        description="How far a socket is open past its small end, no narrower; 0 where it ends.",
    )


class PlanBlockWork(RequestModel):
    """The work that has a face, as a block, for the clearance."""

    base_length: Length = Field(
        description="Length up the face's slope, of a compound face from left to right.",
        examples=[2.0],
    )
    base_width: Length | None = Field(
        None,
        description="Width across it, of a compound face from front to back.",
        examples=[1.5],
    )
    face_height: Length = Field(
        description="From the base to the face's highest place.", examples=[1.0]
    )


class PlanSlopedWork(PlanBlockWork):
    """The same with what of its top lies before the face."""

    before_face: NonNegativeLength = Field(
        0.0, description="Level top before the face's high edge."
    )


_FACE_SIZE = ("face_distance", "face_distance_tolerance")


class PlanFaceSize(RequestModel):
    """Where a face lies, with its tolerance; absent, nothing is said of it."""

    rules = (Rule("all-or-none", _FACE_SIZE),)

    face_distance: Length | None = Field(
        None,
        description="Distance of the face from what it is measured from, square to it, in `units`.",
    )
    face_distance_tolerance: NonNegativeLength | None = Field(
        None, description="± tolerance of that distance, in `units`."
    )


class PlanAngledFace(AngledFaceFields, PlanFaceSize):
    """A plane face at an angle to its base."""

    kind: Literal["angled-face"]
    work_body: PlanSlopedWork | None = Field(None, description="The work as a block.")


class PlanCompoundFace(PlanFaceSize):
    """A plane face that slopes in both views of its drawing."""

    kind: Literal["compound-face"]
    orientation: Surface
    hand: Literal["as-drawn", "opposite"] = Field(
        "as-drawn",
        description="`opposite`: the part of the other hand, mirrored left to right.",
    )
    rise: Length = Field(description="Height of the face, square to the base, in `units`.")
    tolerance_arcsec: Arcsec = Field(
        description="± tolerance of the angle in each view, in arc-seconds.", examples=[60.0]
    )
    work_body: PlanBlockWork | None = Field(None, description="The work as a block.")


PlanFeature = Annotated[
    PlanCone | PlanCenter | PlanTaper | PlanAngledFace | PlanCompoundFace,
    Field(discriminator="kind", description="The feature wanted."),
]


class PlannedFeature(ResultModel):
    """The feature as it was read."""

    kind: FeatureKind = Field(description="Which kind it is.")
    included_angle: Angle | None = Field(description="Included angle; null of a face.")
    half_angle: Angle | None = Field(description="Half angle; null of a face.")
    face_angle: Angle | None = Field(
        description="Angle between face and base, of a compound face its tilt; null of a cone."
    )
    large_diameter: LengthOut | None = Field(description="Larger diameter; null of a face.")
    small_diameter: LengthOut | None = Field(
        description="Smaller diameter, 0 at a point; null of a face."
    )
    length: LengthOut | None = Field(description="Length along the axis; null of a face.")
    slant_length: LengthOut = Field(description="Length along the surface, up the slope.")
    surface_orientation: SineOrientation | None = Field(
        description="A compound face in its own views, the hand counted; null of all else."
    )


@dataclass(frozen=True, slots=True)
class Wanted:
    """A feature worked out: lengths in `units`, the angle that a sine plate or a flank has.

    `angle_degrees` is a cone's half angle, or a face's to its base; `tolerance_arcsec` is of what
    the drawing has: a cone's included angle, twice the half, or the face's angle.
    """

    kind: FeatureKind
    units: Units
    angle_degrees: float
    slant: float
    tolerance_arcsec: float
    large_diameter: float = 0.0
    small_diameter: float = 0.0
    shank: Shank | None = None
    limit_tir: float | None = None
    normal: Vector | None = None
    work_body: PlanBlockWork | None = None
    relief_length: float | None = None
    face_distance: float | None = None
    size_tolerance: float | None = None

    @property
    def size(self) -> float | None:
        """The size that is held: the large diameter, or a face's distance where it is stated."""
        return self.large_diameter if self.turned else self.face_distance

    @property
    def turned(self) -> bool:
        """True for a cone or taper, which turns about its axis."""
        return self.kind not in {"angled-face", "compound-face"}

    @property
    def internal(self) -> bool:
        """True where the wheel has to enter the work."""
        return self.kind == "taper-socket"

    @property
    def angle_rad(self) -> float:
        """Half angle, or the face's angle, in radians."""
        return math.radians(self.angle_degrees)

    @property
    def counted(self) -> float:
        """How often an error of that angle counts in the one that has the tolerance."""
        return 2.0 if self.turned else 1.0

    @property
    def length(self) -> float:
        """Length along the axis, or along the base."""
        return self.slant * math.cos(self.angle_rad)

    @property
    def rise(self) -> float:
        """How far the surface rises: radially, or square to the base."""
        return self.slant * math.sin(self.angle_rad)


def wanted_of(feature: PlanFeature, units: Units) -> Wanted:
    """Work a feature out; refuses what is no cone, taper or face."""
    if isinstance(feature, PlanAngledFace):
        surface = face_surface(feature.face_angle, feature.rise, path=_PATH)
        _require_face_size(feature)
        return Wanted(
            feature.kind,
            units,
            feature.face_angle,
            surface.slant,
            feature.tolerance_arcsec,
            face_distance=feature.face_distance,
            size_tolerance=feature.face_distance_tolerance,
            work_body=feature.work_body,
        )
    if isinstance(feature, PlanCompoundFace):
        return _compound(feature, units)
    needs(
        feature,
        "limit_tir",
        "shank",
        why="A runout is one to the shank.",
        path=_PATH,
    )
    if isinstance(feature, PlanCone):
        half = cone_slope(feature, path=_PATH).half_angle_degrees
        large, small = feature.large_diameter, feature.small_diameter
        return _turned(feature.kind, feature, units, half, large, small)
    if isinstance(feature, PlanCenter):
        return wanted_center(feature, units, path=_PATH)
    slope = slope_of(feature, path=_PATH)
    half = slope.half_angle_degrees
    large, length = taper_sizes(feature, slope, units, path=_PATH)
    small = large - 2.0 * length * math.tan(math.radians(half))
    return _turned(feature.kind, feature, units, half, large, small)


def wanted_center(stated: PlanCenterFields, units: Units, *, path: str = "") -> Wanted:
    """Work a center out; `path` is that of its fields in the request."""
    half = slope_of(stated, path=path).half_angle_degrees
    return _turned("center", stated, units, half, stated.large_diameter, 0.0)


def _compound(feature: PlanCompoundFace, units: Units) -> Wanted:
    """A face in two views; refuses one that has no slope at all."""
    _require_face_size(feature)
    with refused_at(_PATH):
        normal = feature.orientation.normal
    if feature.hand == "opposite":
        normal = normal * np.array([-1.0, 1.0, 1.0])
    tilt, _ = tilt_of_normal(normal)
    if tilt == 0.0:
        raise Impossible(
            "This face is level: there is nothing to set.",
            fields={f"{_PATH}orientation": "should slope"},
        )
    surface = GroundSurface(tilt, feature.rise)
    require_extent(surface, angle=[f"{_PATH}orientation"], size=[f"{_PATH}rise"])
    return Wanted(
        feature.kind,
        units,
        math.degrees(tilt),
        surface.slant,
        feature.tolerance_arcsec,
        normal=normal,
        face_distance=feature.face_distance,
        size_tolerance=feature.face_distance_tolerance,
        work_body=feature.work_body,
    )


def _require_face_size(feature: PlanFaceSize) -> None:
    """Refuse a distance without its tolerance, and a tolerance of none."""
    why = "A distance is held within its tolerance, and a tolerance is of a distance."
    all_or_none(feature, *_FACE_SIZE, why=why, path=_PATH)


def _turned(
    kind: FeatureKind,
    feature: PlanTrueFields,
    units: Units,
    half_degrees: float,
    large: float,
    small: float,
) -> Wanted:
    slant = (large - small) / 2.0 / math.sin(math.radians(half_degrees))
    tolerance = None
    if isinstance(feature, PlanTurnedFields):
        tolerance = feature.large_diameter_tolerance
    return Wanted(
        kind,
        units,
        half_degrees,
        slant,
        feature.included_angle_tolerance_arcsec,
        large,
        small,
        feature.shank,
        feature.limit_tir,
        size_tolerance=tolerance,
        relief_length=feature.relief_length if isinstance(feature, PlanTaper) else None,
    )


def planned_feature(wanted: Wanted) -> PlannedFeature:
    """Write a feature as it was read."""
    turned = wanted.turned
    return PlannedFeature(
        kind=wanted.kind,
        included_angle=Angle.of(2.0 * wanted.angle_degrees) if turned else None,
        half_angle=Angle.of(wanted.angle_degrees) if turned else None,
        face_angle=None if turned else Angle.of(wanted.angle_degrees),
        large_diameter=wanted.large_diameter if turned else None,
        small_diameter=wanted.small_diameter if turned else None,
        length=wanted.length if turned else None,
        slant_length=wanted.slant,
        surface_orientation=None if wanted.normal is None else orientation_of(wanted.normal),
    )
