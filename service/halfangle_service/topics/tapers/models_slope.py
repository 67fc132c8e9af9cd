"""The slope of a taper as every request of this topic may state it."""

import math
from typing import Annotated

from pydantic import Field

from halfangle_service.errors import Disagreement
from halfangle_service.fields import (
    ARCSEC_PER_RADIAN,
    FINITE,
    AngleInput,
    RequestModel,
    Unit,
    Units,
    angle_from_radians,
)
from halfangle_service.fields.angles import Angle
from halfangle_service.trade.cone import AGREE_WITHIN_ARCSEC
from halfangle_service.trade.wording import plain


class TaperSlopeFields(RequestModel):
    """A taper's slope, stated in at least one of four ways; several must agree."""

    units: Units = Field(description="Unit of every length here and in the answer.")
    included_angle: Annotated[float, AngleInput(gt=0.01, lt=179)] | None = Field(
        None, description="Angle between opposite surfaces of the cone, in degrees."
    )
    half_angle: Annotated[float, AngleInput(gt=0.005, lt=89.5)] | None = Field(
        None, description="Angle between axis and surface, in degrees."
    )
    taper_per_foot: Annotated[float, FINITE, Field(ge=0.003, le=2000), Unit("inch_per_foot")] | (
        None
    ) = Field(None, description="Inches of diameter a foot of length, whatever `units` are.")
    one_in_x: Annotated[float, FINITE, Field(ge=0.005, le=5000), Unit("1")] | None = Field(
        None, description="The x of a taper written 1:x, on the diameter."
    )


def stated_half_angles(request: TaperSlopeFields) -> dict[str, float]:
    """Half angle in radians from each statement of the slope, by its field."""
    stated: dict[str, float] = {}
    if request.included_angle is not None:
        stated["included_angle"] = math.radians(request.included_angle) / 2.0
    if request.half_angle is not None:
        stated["half_angle"] = math.radians(request.half_angle)
    if request.taper_per_foot is not None:
        stated["taper_per_foot"] = math.atan(request.taper_per_foot / 24.0)
    if request.one_in_x is not None:
        stated["one_in_x"] = math.atan(0.5 / request.one_in_x)
    return stated


def half_angle_rad_of(request: TaperSlopeFields) -> float:
    """Half angle in radians; raises Disagreement where none is stated, or several differ."""
    stated = stated_half_angles(request)
    if not stated:
        raise Disagreement(
            "The taper's slope is missing.",
            fields={"included_angle": "send this, half_angle, taper_per_foot or one_in_x"},
        )
    first, half = next(iter(stated.items()))
    for name, other in stated.items():
        off = 2.0 * (other - half) * ARCSEC_PER_RADIAN
        if abs(off) > AGREE_WITHIN_ARCSEC:
            raise Disagreement(
                f"{name} disagrees with {first} by {plain(off)}″ of included angle.",
                fields={name: f"should agree with {first} to {plain(AGREE_WITHIN_ARCSEC)}″"},
                more={"disagreement_arcsec": off},
            )
    return half


def included(half_rad: float) -> Angle:
    """Included angle of a half angle in radians, as the API writes it."""
    return angle_from_radians(2.0 * half_rad)
