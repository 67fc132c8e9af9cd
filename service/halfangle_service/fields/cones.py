"""The angle of a cone, given as included or as half angle, never mistaken for one another."""

from collections.abc import Mapping

from halfangle_service.errors import Disagreement
from halfangle_service.trade.cone import AGREE_WITHIN_ARCSEC
from halfangle_service.trade.wording import plain


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
