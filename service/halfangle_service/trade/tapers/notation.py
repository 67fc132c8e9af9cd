"""Reads every way in which a drawing writes the angle of a taper.

The answer is the half angle in radians and the reading in words.
"""

import math
import re
from dataclasses import dataclass
from typing import Literal

from halfangle_service.errors import Disagreement, Impossible
from halfangle_service.trade.angles import parse_dms
from halfangle_service.trade.wording import plain

Meaning = Literal["included", "half", "complement"]

_N = r"(\d{1,6}(?:\.\d{1,12})?|\.\d{1,12})"
_FRACTION = re.compile(r"^(?:(\d{1,4})[ -])?(\d{1,4})/(\d{1,4})$")
_RATIO = re.compile(rf"^{_N} ?(?::|in|/) ?{_N}$")
_PER = re.compile(
    r"^(.{1,20}?)(?: ?(?:in|inch|\"))? ?(?:/|per) ?(ft|foot|in|inch|mm)$", re.IGNORECASE
)
_PERCENT = re.compile(rf"^{_N} ?%$")
_THREE = re.compile(rf"^D ?=? ?{_N},? d ?=? ?{_N},? [Ll] ?=? ?{_N}$")
_WORD = re.compile(
    r"^(.*?)[ ,]*\(?(included|incl\.?|half|per side|each side|complement|from face)\)?$",
    re.IGNORECASE,
)
_MEANINGS: dict[str, Meaning] = {
    "included": "included",
    "incl": "included",
    "incl.": "included",
    "half": "half",
    "per side": "half",
    "each side": "half",
    "complement": "complement",
    "from face": "complement",
}


@dataclass(frozen=True, slots=True)
class Reading:
    """What a notation says: the half angle in radians, and how it was read."""

    half_angle_rad: float
    read_as: str


def read_notation(text: str, meaning: Meaning | None) -> Reading:
    """Read a notation; `meaning` says what a bare angle is. Raises Disagreement or Impossible."""
    text = " ".join(text.split())
    tangent = _tangent(text)
    if tangent is not None:
        return Reading(_within(math.atan(tangent[0])), tangent[1])
    return _angle(text, meaning)


def _tangent(text: str) -> tuple[float, str] | None:
    """Tangent of the half angle where the notation is a taper, with its reading."""
    if found := _THREE.match(text):
        large, small, length = (float(n) for n in found.groups())
        return _over(large - small, 2.0 * length), "two diameters and a length"
    if found := _PERCENT.match(text):
        return float(found[1]) / 200.0, "percent of taper, on the diameter"
    if found := _PER.match(text):
        return _per(found[1], found[2].lower())
    if found := _RATIO.match(text):
        return _over(float(found[1]), 2.0 * float(found[2])), "ratio of taper, on the diameter"
    return None


def _per(amount: str, unit: str) -> tuple[float, str]:
    value = _fraction(amount.strip())
    if unit in ("ft", "foot"):
        return value / 24.0, "inches of diameter a foot of length"
    return value / 2.0, "diameter for one unit of length"


def _fraction(text: str) -> float:
    if found := _FRACTION.match(text):
        return float(found[1] or 0) + _over(float(found[2]), float(found[3]))
    if re.fullmatch(_N, text):
        return float(text)
    raise _unread(text)


def _over(top: float, bottom: float) -> float:
    if bottom == 0:
        raise Impossible("A length or denominator of 0.", fields={"text": "should not divide by 0"})
    return top / bottom


def _angle(text: str, meaning: Meaning | None) -> Reading:
    word = None
    if found := _WORD.match(text):
        text, word = found[1].strip(), _MEANINGS[found[2].lower()]
    if word and meaning and word != meaning:
        raise Disagreement(
            f"The notation says {word}, bare_angle_is says {meaning}.",
            fields={"bare_angle_is": "should agree with the notation, or be left out"},
        )
    chosen = word or meaning
    degrees = _degrees(text)
    if chosen is None:
        raise Disagreement(
            f"{text} is an angle, but not said which one.",
            fields={"bare_angle_is": "send included, half or complement, or write it in the text"},
        )
    half = {"included": degrees / 2.0, "half": degrees, "complement": 90.0 - degrees}[chosen]
    return Reading(_within(math.radians(half)), f"{chosen} angle")


def _degrees(text: str) -> float:
    bare = text.removesuffix("°").removesuffix("deg").strip()
    if re.fullmatch(_N, bare):
        return float(bare)
    try:
        return parse_dms(text)
    except ValueError:
        raise _unread(text) from None


def _within(half_rad: float) -> float:
    if not 1e-7 < half_rad < math.radians(89.999):
        raise Impossible(
            f"This is a half angle of {plain(math.degrees(half_rad))}°; a cone's lies above 0° and "
            "below 90°.",
            fields={"text": "should be the angle of a cone"},
        )
    return half_rad


def _unread(text: str) -> Disagreement:
    return Disagreement(
        f"{text[:40]!r} is none of the notations known.",
        fields={
            "text": "write 60° included, 8°17'50\" half, 1:20, 7/24, 5 %, 0.6 in/ft, 3/4 per foot, "
            "0.05 per inch, or D 20 d 18 L 40"
        },
    )
