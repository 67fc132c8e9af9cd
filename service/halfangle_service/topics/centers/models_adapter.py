"""Request and result about a tapered shank in a socket."""

from typing import Annotated, Literal

from pydantic import Field

from halfangle_service.fields import (
    Angle,
    ArcsecOut,
    Length,
    LengthOut,
    NonNegativeLength,
    RequestModel,
    ResultModel,
    SignedLength,
    Unit,
    Units,
)

TaperRate = Annotated[
    float, Field(strict=True, allow_inf_nan=False, ge=0.001, le=1), Unit("length_per_length")
]


class CenterTaper(RequestModel):
    """A taper: a standard one, or its rate as found."""

    standard: str | None = Field(
        None,
        min_length=1,
        max_length=40,
        description="Designation, as `GET /v1/tapers/standard` lists it.",
        examples=["morse-2"],
    )
    taper_on_diameter: TaperRate | None = Field(
        None, description="Change of diameter per unit of length, as found.", examples=[0.04995]
    )


class CenterAdapterRequest(RequestModel):
    """An adapter's or a center's shank in a socket."""

    units: Units = Field(description="Unit of every length here and in the answer.")
    shank: CenterTaper = Field(description="The shank.")
    socket: CenterTaper = Field(description="The socket.")
    engagement: Length = Field(
        description="Length of the seat along the axis, in from the socket's mouth, in `units`.",
        examples=[2.5],
    )
    projection: NonNegativeLength = Field(
        description="Distance of the station from the socket's mouth, in `units`.", examples=[3.0]
    )
    diameter_difference: SignedLength = Field(
        0.0,
        description="Shank's less socket's diameter at the same gauge plane, in `units`; it moves "
        "the shank along the axis. The gauge diameters of two standard tapers count by themselves.",
    )
    socket_tir: NonNegativeLength = Field(
        0.0, description="TIR of the socket's bore at its mouth, in `units`."
    )
    socket_tilt_tir: NonNegativeLength = Field(
        0.0, description="Change of the socket's TIR over `engagement`, by tilt, in `units`."
    )
    adapter_tir: NonNegativeLength = Field(
        0.0, description="The adapter's own TIR, shank to what it carries, at the nose, in `units`."
    )
    adapter_tilt_tir: NonNegativeLength = Field(
        0.0, description="Change of the adapter's own TIR over `engagement`, by tilt, in `units`."
    )
    limit_tir: Length | None = Field(None, description="TIR wanted at the station, in `units`.")


class CenterAdapterShare(ResultModel):
    """What one cause adds."""

    name: Literal["socket", "adapter", "rocking in the seat"] = Field(description="The cause.")
    tir_at_nose: LengthOut = Field(description="Its most at the nose.")
    tir_at_station: LengthOut = Field(description="Its most at the station.")


class CenterAdapterResult(ResultModel):
    """Seat match and runout."""

    shank_half_angle: Angle = Field(description="Half angle of the shank.")
    socket_half_angle: Angle = Field(description="Half angle of the socket.")
    half_angle_difference_arcsec: ArcsecOut = Field(description="Shank's less socket's.")
    bearing: Literal["whole seat", "large end", "small end"] = Field(
        description="Where the shank bears."
    )
    gap_at_other_end: LengthOut = Field(description="Radial gap at the end that does not bear.")
    rock_arcsec: ArcsecOut = Field(description="Tilt to one side that the gap allows.")
    axial_shift: LengthOut = Field(
        description="How far the shank stands out (negative: goes in) for `diameter_difference`."
    )
    shares: list[CenterAdapterShare] = Field(description="Each cause, phases unknown.")
    worst_tir_at_nose: LengthOut = Field(description="Sum at the nose: all in line.")
    worst_tir_at_station: LengthOut = Field(description="Sum at the station: all in line.")
    rss_tir_at_station: LengthOut = Field(description="Root sum of squares at the station.")
    mend_first: Literal["socket", "adapter", "rocking in the seat"] | None = Field(
        description="The largest at the station; None where nothing runs out."
    )
    within_limit: bool | None = Field(
        description="True if the sum holds `limit_tir`; None where none was sent."
    )
