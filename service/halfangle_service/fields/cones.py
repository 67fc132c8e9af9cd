"""A cone by its slope and its two diameters, as every request that grinds one states it."""

import math
from collections.abc import Mapping

from pydantic import Field

from halfangle_service.errors import Disagreement
from halfangle_service.fields.numbers import Length, NonNegativeLength
from halfangle_service.fields.slopes import SlopeFields, slope_of, stated_slopes
from halfangle_service.trade.cone import AGREE_WITHIN_ARCSEC, Slope, require_smaller
from halfangle_service.trade.wheel.flank import require_length
from halfangle_service.trade.wording import plain


class ConeFields(SlopeFields):
    """The cone wanted, by its slope and its two diameters."""

    large_diameter: Length = Field(
        description="Larger diameter to grind, in `units`.", examples=[0.75]
    )
    small_diameter: NonNegativeLength = Field(
        description="Smaller diameter to grind, in `units`; 0 for a sharp point.", examples=[0.05]
    )


def cone_slope(request: ConeFields, *, path: str = "") -> Slope:
    """Slope of a cone; refuses diameters in the wrong order, and a surface longer than any taken.

    `path` is that of the object that holds the fields, such as `work/`.
    """
    require_smaller(request.small_diameter, request.large_diameter, path=path)
    slope = slope_of(request, path=path)
    require_length(
        (request.large_diameter - request.small_diameter) / 2.0 / math.sin(slope.half_angle_rad),
        [f"{path}{name}" for name in stated_slopes(request, path=path)],
    )
    return slope


def half_angle_degrees(
    included_angle: float | None, half_angle: float | None, *, prefix: str = ""
) -> float:
    """Half angle in degrees from whichever is given, also in degrees; both must agree.

    `prefix` is the path of the object that holds the two fields. Raises Disagreement.
    """
    if included_angle is None and half_angle is None:
        raise Disagreement(
            "The cone's angle is missing: send included_angle or half_angle.",
            fields=_both(prefix, "send this or the other angle"),
        )
    if half_angle is None:
        return (included_angle or 0.0) / 2.0
    if included_angle is not None:
        difference = (included_angle - 2.0 * half_angle) * 3600.0
        if abs(difference) > AGREE_WITHIN_ARCSEC:
            raise Disagreement(
                f"included_angle {plain(included_angle, 10)}° is not twice half_angle "
                f"{plain(half_angle, 10)}°: they differ by {plain(difference)}″.",
                fields=_both(prefix, "should agree with the other angle, or be left out"),
                more={"disagreement_arcsec": difference},
            )
    return half_angle


def _both(prefix: str, message: str) -> Mapping[str, str]:
    return {f"{prefix}included_angle": message, f"{prefix}half_angle": message}
