"""A cone by its slope and its two diameters, as every request that grinds one states it."""

from pydantic import Field

from halfangle_service.fields.numbers import Length, NonNegativeLength
from halfangle_service.fields.slopes import SlopeFields, slope_of, stated_slopes
from halfangle_service.trade.cone import Slope, require_smaller
from halfangle_service.trade.wheel.flank import Surface, require_extent


class ConeFields(SlopeFields):
    """The cone wanted, by its slope and its two diameters."""

    large_diameter: Length = Field(
        description="Larger diameter to grind, in `units`.", examples=[0.75]
    )
    small_diameter: NonNegativeLength = Field(
        description="Smaller diameter to grind, in `units`; 0 for a sharp point.", examples=[0.05]
    )


def cone_slope(request: ConeFields, *, path: str = "") -> Slope:
    """Slope of a cone; refuses diameters in the wrong order, and a surface too long or too short.

    `path` is that of the object that holds the fields, such as `work/`.
    """
    require_smaller(request.small_diameter, request.large_diameter, path=path)
    slope = slope_of(request, path=path)
    rise = (request.large_diameter - request.small_diameter) / 2.0
    require_extent(
        Surface(slope.half_angle_rad, rise),
        angle=[f"{path}{name}" for name in stated_slopes(request, path=path)],
        size=[f"{path}large_diameter", f"{path}small_diameter"],
    )
    return slope
