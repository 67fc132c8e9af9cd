"""Angles as text in degrees, minutes and seconds, and their units.

Inside, an angle is a float: degrees where its name says so, else radians in the maths.
"""

import math
import re
from typing import Any

import numpy as np

from halfangle_service.trade.columns import Column, Floats, in_words

ARCSEC_PER_RADIAN = math.degrees(1.0) * 3600.0

_PART = r"[0-5]?[0-9]"
_LAST = r"[0-5]?[0-9](?:\.[0-9]{1,9})?"
#: JavaScript refuses a sign escaped for nothing (its flag `u`), and a bare `-` in a set (`v`).
_PRIME, _DOUBLE_PRIME = "['′’]", '["″”]'
#: Only the last part may carry decimals; minutes and seconds stay below 60.
DMS_PATTERN = (
    r"^[+\-]?[0-9]{1,3}(?:°"
    rf"|° ?{_LAST}{_PRIME}"
    rf"|° ?{_PART}{_PRIME} ?{_LAST}{_DOUBLE_PRIME}"
    rf"|[ :]{_LAST}"
    rf"|[ :]{_PART}[ :]{_LAST})$"
)
_DMS = re.compile(DMS_PATTERN)
_NUMBER = re.compile(r"[0-9]+(?:\.[0-9]+)?")


def parse_dms(text: str) -> float:
    r"""Read an angle written in degrees, minutes and seconds; the answer is in decimal degrees.

    >>> parse_dms("30°15'20\""), parse_dms("-0 05")
    (30.255555555555556, -0.08333333333333333)

    Raises ValueError where the text is not such an angle.
    """
    # The whole text: `$` by itself would let a line's end through.
    if not _DMS.fullmatch(text):
        raise ValueError(f"{text[:40]!r} is not an angle in degrees, minutes and seconds")
    degrees, minutes, seconds = ([float(n) for n in _NUMBER.findall(text)] + [0.0, 0.0])[:3]
    magnitude = degrees + minutes / 60.0 + seconds / 3600.0
    return -magnitude if text.startswith("-") else magnitude


def format_dms(degrees: float, decimals: int = 2) -> str:
    r"""Write decimal degrees in degrees, minutes and seconds, the seconds to so many decimals.

    >>> format_dms(-0.0833333333333), format_dms(29.9999999999), format_dms(22.5, 0)
    ('-0°05\'00.00"', '30°00\'00.00"', '22°30\'00"')
    """
    if isinstance(degrees, Column):
        return in_words(format_dms, degrees, decimals)
    scale = 10**decimals
    smallest = round(abs(degrees) * 3_600 * scale)
    minutes, rest = divmod(smallest, 60 * scale)
    sign = "-" if degrees < 0 and smallest else ""
    seconds = f"{rest / scale:.{decimals}f}".zfill(decimals + 3 if decimals else 2)
    return f"{sign}{minutes // 60}°{minutes % 60:02d}'{seconds}\""


def format_dm(degrees: float) -> str:
    r"""Write a direction in degrees and minutes, to the minute, from 0° to below 360°.

    >>> format_dm(168.690067), format_dm(359.9999)
    ("168°41'", "0°00'")
    """
    if isinstance(degrees, Column):
        return in_words(format_dm, degrees)
    degree, minute = divmod(round(degrees * 60.0) % 21_600, 60)
    return f"{degree}°{minute:02d}'"


def all_dms(degrees: Floats) -> Any:
    """Write an array of decimal degrees as `format_dms` does each, to 0.01 second.

    Degrees with minutes are written once for all rows that have them, and so are seconds.
    """
    smallest = np.rint(np.abs(degrees) * 3_600.0 * 100.0).astype(np.int64)
    minutes, rest = np.divmod(smallest, 6_000)
    written, row = np.unique(minutes, return_inverse=True)
    whole = np.array([f"{m // 60}°{m % 60:02d}'" for m in written.tolist()], dtype=object)
    signs = np.array(["", "-"], dtype=object)[((degrees < 0) & (smallest > 0)).astype(np.intp)]
    return signs + whole[row] + _SECONDS[rest]


def all_dm(degrees: Floats) -> Any:
    """Write an array of directions as `format_dm` does each."""
    return np.array([format_dm(direction) for direction in degrees.tolist()], dtype=object)


#: Seconds as written, by hundredths of a second.
_SECONDS = np.array([f'{h // 100:02d}.{h % 100:02d}"' for h in range(6_000)], dtype=object)
