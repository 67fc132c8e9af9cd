"""A taper from any three of its large diameter, small diameter, length and slope."""

from pydantic import Field

from halfangle_service.fields import (
    Angle,
    Length,
    LengthOut,
    NonNegativeLength,
    UnitsField,
    angle_from_radians,
    bench_step,
)
from halfangle_service.fields.slopes import SlopeFields, SlopeForms, slope_forms, stated_slopes
from halfangle_service.operation import Outcome, operation
from halfangle_service.topics.tapers.sources import ISO_1119
from halfangle_service.trade.tapers.solve import solve_taper


class TaperSolveRequest(SlopeFields):
    """Any three of large diameter, small diameter, length and slope; more must agree."""

    units: UnitsField
    large_diameter: Length | None = Field(
        None, description="Diameter of the large end, in `units`.", examples=[0.7]
    )
    small_diameter: NonNegativeLength | None = Field(
        None,
        description="Diameter of the small end, in `units`; 0 for a sharp point.",
        examples=[0.572],
    )
    length: Length | None = Field(
        None,
        description="Distance between the two diameters along the axis, in `units`.",
        examples=[2.5625],
    )
    agree_within: Length | None = Field(
        None,
        description="How far diameters that follow from redundant values may differ, in `units`; "
        "0.0001 in or 0.001 mm where left out.",
    )


class TaperSolveResult(SlopeForms):
    """The whole taper, its slope in every form."""

    large_diameter: LengthOut = Field(description="Diameter of the large end.")
    small_diameter: LengthOut = Field(description="Diameter of the small end; 0 for a sharp point.")
    length: LengthOut = Field(description="Distance between the two diameters along the axis.")
    slant_length: LengthOut = Field(description="Length along the surface.")
    half_angle: Angle = Field(description="Angle between axis and surface.")


@operation(
    "tapers.solve",
    relations=("C = (D - d) / l = 2 tan α", "taper per foot = 12 C", "1:x with x = 1 / C"),
    sources=(ISO_1119,),
    example={"units": "in", "large_diameter": 0.7, "length": 2.5625, "taper_per_foot": 0.59941},
    columns=True,
)
def solve(request: TaperSolveRequest) -> Outcome[TaperSolveResult]:
    """Taper from three of its quantities.

    Large diameter, small diameter, length and slope from any three of them; more than three must
    agree.
    """
    taper = solve_taper(
        large_diameter=request.large_diameter,
        small_diameter=request.small_diameter,
        length=request.length,
        rates={name: slope.rate for name, slope in stated_slopes(request).items()},
        agree_within=request.agree_within or bench_step(request.units),
    )
    half = taper.half_angle_rad
    return Outcome(
        TaperSolveResult(
            large_diameter=taper.large_diameter,
            small_diameter=taper.small_diameter,
            length=taper.length,
            slant_length=taper.slant_length,
            half_angle=angle_from_radians(half),
            **slope_forms(half),
        )
    )
