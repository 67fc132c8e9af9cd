"""A surface to be ground, in every way that a drawing may give it: as it is asked and answered."""

import math
from typing import Annotated, Literal

from pydantic import Field

from halfangle_service.fields import (
    Angle,
    AngleInput,
    NumberOut,
    RequestModel,
    ResultModel,
    Unit,
    angle_from_radians,
)
from halfangle_service.trade.sine.compound import (
    Vector,
    normal_from_slopes,
    normal_from_tilt,
    normal_from_vector,
    slopes_of_normal,
    tilt_of_normal,
)

_Slope = Annotated[float, AngleInput(gt=-90, lt=90)]
_Component = Annotated[float, Field(strict=True, allow_inf_nan=False, ge=-1e6, le=1e6), Unit("1")]


class SineProjectedAngles(RequestModel):
    """A surface by the two angles that its views show."""

    kind: Literal["projected-angles"]
    x_angle: _Slope = Field(
        description="Angle in the front view, in degrees: positive where the surface rises to the "
        "right (+X).",
        examples=[30.0],
    )
    y_angle: _Slope = Field(
        description="Angle in the side view, in degrees: positive where the surface rises to the "
        "back (+Y).",
        examples=[30.0],
    )

    @property
    def normal(self) -> Vector:
        """Unit normal of the surface."""
        return normal_from_slopes(math.radians(self.x_angle), math.radians(self.y_angle))


class SineTrueTilt(RequestModel):
    """A surface by its steepest tilt, and the direction in plan in which it rises."""

    kind: Literal["true-tilt"]
    tilt: Annotated[float, AngleInput(ge=0, lt=90)] = Field(
        description="Angle between the surface and the horizontal, in degrees.", examples=[25.0]
    )
    rise_direction: Annotated[float, AngleInput(ge=-360, le=360)] = Field(
        description="Direction in plan in which the surface rises, in degrees from +X (right) "
        "toward +Y (back).",
        examples=[37.0],
    )

    @property
    def normal(self) -> Vector:
        """Unit normal of the surface."""
        return normal_from_tilt(math.radians(self.tilt), math.radians(self.rise_direction))


class SineNormal(RequestModel):
    """A surface by a vector that stands square on it, out of the work; any length."""

    kind: Literal["normal"]
    normal_x: _Component = Field(description="Component to the right.", examples=[-0.5])
    normal_y: _Component = Field(description="Component to the back.", examples=[-0.5])
    normal_z: _Component = Field(description="Component upward; greater than 0.", examples=[1.0])

    @property
    def normal(self) -> Vector:
        """Unit normal of the surface; raises Impossible where it does not point up."""
        return normal_from_vector(self.normal_x, self.normal_y, self.normal_z)


Surface = Annotated[
    SineProjectedAngles | SineTrueTilt | SineNormal,
    Field(description="The surface.", discriminator="kind"),
]


class SineVector(ResultModel):
    """A unit vector; X right, Y back, Z up."""

    normal_x: NumberOut = Field(description="Component to the right.")
    normal_y: NumberOut = Field(description="Component to the back.")
    normal_z: NumberOut = Field(description="Component upward.")


class SineOrientation(ResultModel):
    """One surface, in every way that a drawing may give it."""

    unit_normal: SineVector = Field(description="Outward unit normal.")
    x_angle: Angle = Field(description="Rise to the right in the front view.")
    y_angle: Angle = Field(description="Rise to the back in the side view.")
    tilt: Angle = Field(description="True (steepest) tilt.")
    rise_direction: Angle = Field(
        description="Direction in plan in which it rises, 0 to 360° from +X toward +Y; 0 where it "
        "is level."
    )


def orientation_of(normal: Vector) -> SineOrientation:
    """Write a surface, by its unit normal, in every way."""
    x_angle, y_angle = slopes_of_normal(normal)
    tilt, direction = tilt_of_normal(normal)
    x, y, z = (float(component) for component in normal)
    return SineOrientation(
        unit_normal=SineVector(normal_x=x, normal_y=y, normal_z=z),
        x_angle=angle_from_radians(x_angle),
        y_angle=angle_from_radians(y_angle),
        tilt=angle_from_radians(tilt),
        rise_direction=angle_from_radians(direction),
    )
