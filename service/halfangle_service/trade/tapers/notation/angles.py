"""Notations of an angle: decimal degrees, degrees-minutes-seconds, and a tolerance beside it."""

import math
import re
from dataclasses import dataclass

from halfangle_service.trade.angles import parse_dms
from halfangle_service.trade.tapers.notation.amounts import NUMBER
from halfangle_service.trade.tapers.notation.refusals import ambiguous, unread

_DECIMAL = re.compile(rf"({NUMBER})°?")
_TIMES = re.compile(r"([0-9]{1,2}) ?x ?(.+)")
_MINUTES = re.compile(rf"({NUMBER})'")
_UNEQUAL = re.compile(r".[ °'\"]\+ ?[0-9].*-")
#: The last sign is often left out: 8° 30 is 8°30'. Two digits, since 8° 3 could be a slip.
_LAST_SIGN_LEFT_OUT = re.compile(r"[0-9]{1,3}° ?([0-5][0-9]' ?)?[0-5][0-9]")
_SECONDS = re.compile(rf'({NUMBER})"')


@dataclass(frozen=True, slots=True)
class WrittenAngle:
    """An angle as written, in degrees; `decimal` where it was written as decimal degrees."""

    degrees: float
    decimal: bool


def read_angle(text: str, said: str) -> WrittenAngle | None:
    """Read a figure as an angle, None where it is none; `said` is the whole text, for refusals."""
    if found := _TIMES.fullmatch(text):
        return _refuse_times(found[1], found[2], said)
    if found := _DECIMAL.fullmatch(text):
        return WrittenAngle(float(found[1]), decimal=True)
    if found := _LAST_SIGN_LEFT_OUT.fullmatch(text):
        text += '"' if found[1] else "'"
    try:
        return WrittenAngle(parse_dms(text), decimal=False)
    except ValueError:
        return None


def split_tolerance(text: str, said: str) -> tuple[str, float | None]:
    """The figure and, in seconds of arc, the ± written beside it; None where there is none."""
    if _UNEQUAL.search(text):
        raise unread(said, "A tolerance of two unequal limits is not read: write the angle alone.")
    figure, sign, tolerance = text.partition("±")
    if not sign:
        return text, None
    return figure.strip(), _tolerance_arcsec(tolerance.strip(), said)


def _tolerance_arcsec(text: str, said: str) -> float:
    if found := _MINUTES.fullmatch(text):
        return float(found[1]) * 60.0
    if found := _SECONDS.fullmatch(text):
        return float(found[1])
    written = read_angle(text, said) if "°" in text else None
    if written is None:
        raise unread(said, "A tolerance is read as ± one angle: ±5', ±30\" or ±0.1°.")
    return written.degrees * 3600.0


def _refuse_times(times: str, angle: str, said: str) -> WrittenAngle | None:
    """2x30° is 30° a side, 30° in two places, or a chamfer 2 long: the text does not say."""
    written = read_angle(angle, said)
    if written is None:
        return None
    if times != "2":
        raise unread(said, f"{times} places are no part of a cone's angle: leave them out.")
    radians = math.radians(written.degrees)
    each = angle if angle.endswith(("°", "'", '"')) else f"{angle}°"
    raise ambiguous(said, {f"{each} per side": radians, f"{each} included": radians / 2.0})
