"""The dresser: how it is set, in the requests that dress a flank, and its setting in the answer."""

import math
from collections.abc import Iterable
from typing import Annotated, Literal

from pydantic import Field

from halfangle_service.errors import Disagreement
from halfangle_service.fields import (
    ARCSEC_PER_RADIAN,
    Angle,
    AngleInput,
    ArcsecOut,
    LengthOut,
    RequestModel,
    ResultModel,
    Units,
    angle_from_radians,
    from_tenth_nm,
    to_tenth_nm,
)
from halfangle_service.fields.plates import CenterDistance, arcsec_per_step
from halfangle_service.trade.decimals import tidy
from halfangle_service.trade.sine.geometry import angle_for_height, height_for_angle
from halfangle_service.trade.unit_slips import require_center_distance
from halfangle_service.trade.wheel.dresser import dresser_angle, round_to_graduation, stacks_for

DresserZero = Annotated[
    Literal["wheel-axis", "wheel-side"],
    Field(
        description="Direction of the diamond's path with the dresser at zero: along the wheel's "
        "axis (it dresses flat), or along its side."
    ),
]


class SineBaseDresser(RequestModel):
    """A dresser set by gauge blocks under its sine base."""

    kind: Literal["sine-base"]
    zero: DresserZero = "wheel-axis"
    center_distance: CenterDistance


class ScaleDresser(RequestModel):
    """A dresser set by its graduated scale or vernier."""

    kind: Literal["scale"]
    zero: DresserZero = "wheel-axis"
    graduation: Annotated[float, AngleInput(gt=0, le=5)] = Field(
        description="Smallest step that the scale or its vernier shows, in degrees.",
        examples=["0 05"],
    )

    @staticmethod
    def refuse_blocks(fields: Iterable[str]) -> None:
        """Refuse the fields, by their paths, of a stack that a scale is set without."""
        named = dict.fromkeys(fields, "goes with a dresser of kind sine-base")
        if named:
            raise Disagreement("A dresser with a scale is set without blocks.", fields=named)


Dresser = Annotated[
    SineBaseDresser | ScaleDresser,
    Field(discriminator="kind", description="How the dresser is set."),
]


class DresserStack(ResultModel):
    """Gauge blocks that set the dresser."""

    high_blocks: list[LengthOut] = Field(description="Blocks under the raised roll, largest first.")
    low_blocks: list[LengthOut] = Field(
        description="Blocks under the other roll; empty where one stack does it."
    )
    height_as_set: LengthOut = Field(description="Difference of the stacks as built.")
    angle_as_set: Angle = Field(description="Dresser angle that these stacks give.")
    deviation_arcsec: ArcsecOut = Field(
        description="`angle_as_set` less the dresser angle wanted; a cone's included angle is out "
        "by twice as much."
    )


class DresserSetting(ResultModel):
    """The dresser's setting for one flank."""

    dresser_angle: Angle = Field(description="Angle to set on the dresser, from its zero.")
    height: LengthOut | None = Field(
        description="Difference of the stacks under the sine base; null for a scale."
    )
    arcsec_per_step: ArcsecOut | None = Field(
        description="Change of the dressed angle for one bench step of that stack (0.0001 in or "
        "0.001 mm); a cone's included angle changes twice as much. Null for a scale."
    )
    stack: DresserStack | None = Field(
        description="The blocks; null for a scale, or where no blocks were named."
    )
    scale_reading: Angle | None = Field(
        description="Nearest graduation of the scale; null for a sine base."
    )
    deviation_arcsec: ArcsecOut | None = Field(
        description="`scale_reading` less the angle wanted; null for a sine base."
    )


def setting_of(
    dresser: SineBaseDresser | ScaleDresser,
    flank_rad: float,
    units: Units,
    sizes: tuple[int, ...] | None,
    max_blocks: int,
) -> DresserSetting:
    """Setting that dresses a flank; `sizes` of the blocks in 0.1 nm, None for no stack."""
    wanted = dresser_angle(flank_rad, from_side=dresser.zero == "wheel-side")
    if isinstance(dresser, ScaleDresser):
        reading = round_to_graduation(wanted, math.radians(dresser.graduation))
        return DresserSetting(
            dresser_angle=angle_from_radians(wanted),
            height=None,
            arcsec_per_step=None,
            stack=None,
            scale_reading=angle_from_radians(reading),
            deviation_arcsec=tidy(
                (reading - wanted) * ARCSEC_PER_RADIAN, wanted * ARCSEC_PER_RADIAN
            ),
        )
    centers = dresser.center_distance
    require_center_distance(centers, units, "dresser/center_distance")
    return DresserSetting(
        dresser_angle=angle_from_radians(wanted),
        height=height_for_angle(centers, wanted),
        arcsec_per_step=arcsec_per_step(centers, wanted, units),
        stack=None if sizes is None else _stack(centers, wanted, units, sizes, max_blocks),
        scale_reading=None,
        deviation_arcsec=None,
    )


def _stack(
    center_distance: float,
    wanted_rad: float,
    units: Units,
    sizes: tuple[int, ...],
    max_blocks: int,
) -> DresserStack:
    """Blocks under the dresser's sine base."""
    height = height_for_angle(center_distance, wanted_rad) * to_tenth_nm(1.0, units)
    pair = stacks_for(height, sizes, max_blocks)
    built = from_tenth_nm(pair.difference, units)
    as_set = angle_for_height(center_distance, built, field="dresser/center_distance")
    return DresserStack(
        high_blocks=[from_tenth_nm(size, units) for size in pair.high],
        low_blocks=[from_tenth_nm(size, units) for size in pair.low],
        height_as_set=built,
        angle_as_set=angle_from_radians(as_set),
        deviation_arcsec=(as_set - wanted_rad) * ARCSEC_PER_RADIAN,
    )
