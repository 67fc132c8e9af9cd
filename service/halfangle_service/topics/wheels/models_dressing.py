"""Request and result of dressing, and its guide values."""

from typing import Annotated, Literal

from pydantic import Field

from halfangle_service.fields import (
    FINITE,
    Count,
    Length,
    LengthOut,
    NonNegativeLength,
    NumberOut,
    RequestModel,
    ResultModel,
    Unit,
)
from halfangle_service.topics.wheels.models_flank import UnitsField
from halfangle_service.topics.wheels.models_speed import Rpm

Purpose = Literal["roughing", "general", "finishing"]
OverlapRatio = Annotated[float, FINITE, Field(ge=0.01, le=1000), Unit("1")]
Traverse = Annotated[float, FINITE, Field(ge=1e-6, le=1e5), Unit("length_per_minute")]
TraverseOut = Annotated[float, Unit("length_per_minute")]
SecondOut = Annotated[float, Unit("second")]


class WheelDressingRequest(RequestModel):
    """A diamond, its depth of cut, and an overlap ratio, a traverse or a purpose."""

    units: UnitsField
    rpm: Rpm = Field(
        description="Spindle speed of the wheel while it is dressed, per minute.", examples=[1410.0]
    )
    nose_radius: Length | None = Field(
        None,
        description="Radius of the diamond's nose, in `units`. Either this or `active_width`.",
        examples=[0.38],
    )
    active_width: Length | None = Field(
        None,
        description="Width over which the diamond touches the wheel, in `units`, where it is known "
        "by itself (a flat or worn diamond, a blade).",
    )
    depth: Length = Field(description="Depth of one pass, in `units`.", examples=[0.025])
    overlap_ratio: OverlapRatio | None = Field(
        None,
        description="Overlap ratio wanted. One of this, `traverse` and `purpose`.",
        examples=[2.0],
    )
    traverse: Traverse | None = Field(
        None, description="Traverse of the diamond, in `units` per minute."
    )
    purpose: Purpose | None = Field(
        None, description="Purpose: the middle of the guide's overlap ratio for it is taken."
    )
    wheel_width: Length = Field(
        description="Width, or length of flank, to dress, in `units`.", examples=[25.0]
    )
    overrun: NonNegativeLength = Field(
        0.0, description="How far the diamond runs past each side, in `units`."
    )
    passes: Annotated[int, Count(ge=1, le=100_000)] = Field(
        1, description="How many passes of this depth."
    )


class DressingGuideRange(ResultModel):
    """What the guide values for one purpose mean for this diamond and wheel."""

    purpose: Purpose = Field(description="Purpose.")
    overlap_low: NumberOut = Field(description="Overlap ratio, from.")
    overlap_high: NumberOut = Field(description="Overlap ratio, to.")
    traverse_fastest: TraverseOut = Field(description="Traverse at the lower overlap ratio.")
    traverse_slowest: TraverseOut = Field(description="Traverse at the higher overlap ratio.")
    meets: bool = Field(description="True where the overlap ratio of this dress lies within.")
    source: str = Field(description="Where the guide values come from.")
    standing: Literal["published", "from-memory"] = Field(description="How they are had.")


class WheelDressingResult(ResultModel):
    """Lead, traverse and time of a dress, and the thread that it leaves on the wheel."""

    active_width: LengthOut = Field(description="Width over which the diamond touches the wheel.")
    lead: LengthOut = Field(description="Way of the diamond along the wheel in one turn of it.")
    overlap_ratio: NumberOut = Field(
        description="Active width over lead: how many times each place is dressed in one pass."
    )
    traverse: TraverseOut = Field(description="Traverse of the diamond, in `units` per minute.")
    cusp_height: LengthOut | None = Field(
        description="Height of the cusps that a round nose leaves, in theory; absent for an active "
        "width given by itself, or a lead past the nose's width."
    )
    cusp_height_um: Annotated[float, Unit("micrometre")] | None = Field(
        description="The same in micrometres."
    )
    pass_time: SecondOut = Field(description="Time of one pass over the width and both overruns.")
    total_time: SecondOut = Field(description="Time of all passes, reversals not counted.")
    total_depth: LengthOut = Field(description="Depth dressed away by all passes.")
    guides: list[DressingGuideRange] = Field(description="The guide values, coarse to fine.")


class DressingGuideEntry(ResultModel):
    """Guide values for one purpose."""

    purpose: Purpose = Field(description="Purpose.")
    overlap_low: NumberOut = Field(description="Overlap ratio, from.")
    overlap_high: NumberOut = Field(description="Overlap ratio, to.")
    depth_low_mm: Annotated[float, Unit("millimetre")] = Field(
        description="Depth of one pass, from."
    )
    depth_high_mm: Annotated[float, Unit("millimetre")] = Field(
        description="Depth of one pass, to."
    )
    note: str = Field(description="What it does.")
    source: str = Field(description="Where the values come from.")
    standing: Literal["published", "from-memory"] = Field(description="How they are had.")


class DressingGuideList(ResultModel):
    """Guide values for single-point dressing of vitrified wheels, coarse to fine."""

    guides: list[DressingGuideEntry] = Field(description="The rows.")
