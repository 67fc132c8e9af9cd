"""The cone wanted and the wheel that grinds it, as three subjects of this topic state them."""

from pydantic import Field

from halfangle_service.fields import Length, UnitsField
from halfangle_service.fields.slopes import ConeFields, cone_slope
from halfangle_service.trade.unit_slips import require_wheel_diameter
from halfangle_service.trade.wheel.dressing_errors import DressedCone


class WheelConeFields(ConeFields):
    """The cone wanted, by its slope and its two diameters, and the wheel's diameter."""

    units: UnitsField
    wheel_diameter: Length = Field(description="Diameter of the wheel, in `units`.", examples=[7.0])


def cone_of(request: WheelConeFields, wheel_diameter: float) -> DressedCone:
    """The cone wanted under a wheel of this diameter; refuses a wheel that there is not."""
    require_wheel_diameter(request.wheel_diameter, request.units, "wheel_diameter")
    return DressedCone(
        cone_slope(request).half_angle_rad,
        request.small_diameter / 2.0,
        request.large_diameter / 2.0,
        wheel_diameter / 2.0,
    )
