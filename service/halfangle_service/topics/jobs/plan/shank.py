"""The shank that the cone must run true to, and what holds it."""

import math
from typing import Annotated, Literal

from pydantic import Field

from halfangle_service.fields import (
    Angle,
    Length,
    LengthOut,
    RequestModel,
    ResultModel,
    Units,
    angle_from_radians,
)
from halfangle_service.fields.slopes import Designation
from halfangle_service.trade.tables.tapers.designations import find_standard
from halfangle_service.trade.units import in_units


class StraightShank(RequestModel):
    """A cylindrical shank, held in a collet or bushing of the fixture."""

    kind: Literal["straight"]
    diameter: Length = Field(description="Diameter of the shank, in `units`.", examples=[0.5])


class TaperShank(RequestModel):
    """A tapered shank, held in an adapter that fits the fixture."""

    kind: Literal["taper"]
    designation: Designation


Shank = Annotated[StraightShank | TaperShank, Field(discriminator="kind")]


class PlannedShank(ResultModel):
    """The shank and how it is held."""

    kind: Literal["straight", "taper"] = Field(description="Kind of shank.")
    designation: str | None = Field(description="Designation of the taper, if it is one.")
    gauge_diameter: LengthOut = Field(
        description="Diameter at the gauge line of the taper, or of the straight shank."
    )
    included_angle: Angle | None = Field(description="Included angle of the taper, if it is one.")
    held_in: str = Field(description="What holds it.")
    test_bar: str = Field(
        description="What takes the shank's place while the holding is indicated: a bar that runs "
        "true by itself."
    )


def true_up(shank: Shank) -> str:
    """How the holding is brought to run true, as a step says it."""
    if isinstance(shank, StraightShank):
        return "Tap it true"
    return "Turn the adapter about until it runs truest"


def planned_shank(shank: Shank, units: Units) -> PlannedShank:
    """Give the shank, and what holds it."""
    if isinstance(shank, StraightShank):
        return PlannedShank(
            kind="straight",
            designation=None,
            gauge_diameter=shank.diameter,
            included_angle=None,
            held_in="a collet or bushing of the spin fixture",
            test_bar="a test bar of the shank's diameter",
        )
    taper = find_standard(shank.designation, field="shank/designation")
    return PlannedShank(
        kind="taper",
        designation=taper.designation,
        gauge_diameter=in_units(taper.gauge_diameter, taper.units, units),
        included_angle=angle_from_radians(2.0 * math.atan(taper.rate / 2.0)),
        held_in=f"an adapter with a {taper.name} socket",
        test_bar=f"a test bar with a {taper.name} shank",
    )
