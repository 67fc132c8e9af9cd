"""Figures and names of a plan as a hand reads them: to what can be set or read."""

import math
import re
from collections.abc import Callable, Iterable, Sequence
from decimal import Decimal

from halfangle_client.generated import models

LENGTHS = {"in": "inches", "mm": "millimetres"}
#: Decimals of a length that is set or read, and one more for a small one.
_DECIMALS = {"in": 4, "mm": 3}
#: What is set and read at the bench.
STEP = {"in": 0.0001, "mm": 0.001}
BENCH_STEP = {units: f"{step} {units}" for units, step in STEP.items()}
NOT_STATED = "not stated"
#: Of a runout every answer names it, since no request of a plan states directions.
_DIRECTIONS = "high_spots"
_UNIT_WORDS = re.compile(r"(_error_limit|_arcsec|_celsius|_limit)+$")
#: What acts in other words than those of its field.
_CAUSES = {
    "block_calibration": "calibration of block {of}",
    "block_grade_limit": "grade limit of block {of}",
    "block_expansion": "expansion of {of} blocks",
    "plate_expansion": "expansion of the plate",
    "center_distance_error_limit": "center distance of the plate",
    "roll_difference": "difference of the rolls",
    "roll_parallelism": "parallelism of the rolls",
    "face_parallelism": "parallelism of the face",
    "face_flatness": "flatness of the face",
    "table_flatness": "flatness of the table",
    "particle": "dirt under a roll",
    "temperature_error_limit_celsius": "temperature",
    "temperature_difference_celsius": "blocks warmer than plate",
    "axis_pitch_error_limit_arcsec": "pitch of the work's axis",
    "axis_yaw_error_limit_arcsec": "yaw of the work's axis",
    "squareness_error_limit_arcsec": "squareness of the angle plate",
    "wheel_face_error_limit_arcsec": "slope of the wheel's face",
    "adapter_tir": "adapter or collet",
    "fixture_tir": "spin fixture",
    "indicating_tir": "indicating",
    "work_rpm": "turns of the work",
}
_WAYS = {"compound-sine-plate": "compound plate", "dressed-wheel": "flank dressed on the wheel"}
_UNITS = {
    "arcsecond": "″",
    "celsius": " K",
    "degree": "°",
    "per_minute": " a minute",
    "percent": " %",
    "ratio": "",
}
#: Steps in a unit of a reading that is no length: seconds of a degree, tenths of what else.
_STEPS = {"degree": 3600, "arcsecond": 10, "percent": 10, "ratio": 100}


def said(option: str) -> str:
    """An option as a sentence has it."""
    return option.replace("-no-source", ", no source").replace("-", " ")


def way_words(way: str, equipment: Sequence[str]) -> str:
    """A way with what it takes."""
    return f"{_WAYS.get(way, said(way))} ({', '.join(equipment)})"


def cause(name: str, of: str | None = None) -> str:
    """What acts, as the shop calls it; `of` says which block or material."""
    words = _CAUSES.get(name, _UNIT_WORDS.sub("", name).replace("_", " "))
    return words.format(of="" if of is None else said(of))


def field_words(path: str) -> str:
    """A field of the request, by its path, in plain words."""
    name = path.rpartition("/")[2]
    of_reading = name.removesuffix("_error_limit") if name not in _CAUSES else name
    return cause(name) if of_reading == name else f"error of the {cause(of_reading)}"


def not_stated(names: Iterable[str]) -> str:
    """What was not stated, each once, in plain words; empty where all was."""
    return ", ".join(dict.fromkeys(field_words(n) for n in names if n != _DIRECTIONS))


def size(length: float | None, units: str) -> str:
    """A length that is set or read."""
    return _length(length, _DECIMALS.get(units, 4), units)


def small(length: float | None, units: str) -> str:
    """A small length, to a tenth of what the bench reads."""
    return _length(length, _DECIMALS.get(units, 4) + 1, units)


def fine(length: float, units: str) -> str:
    """A height of a stack: two digits past what is set, no more than it has."""
    decimals = _DECIMALS.get(units, 4)
    whole = f"{length:.{decimals + 2}f}"
    return f"{whole[:-2]}{whole[-2:].rstrip('0')} {units}"


def within(low: float | None, high: float | None, units: str, unit: str) -> str:
    """Two limits of a reading, rounded inward to what is read; a dash where there are none."""
    if low is None or high is None:
        return "–"
    steps = _STEPS.get(unit, 10 ** _DECIMALS[units])
    low, high = _inward(low, steps, math.ceil), _inward(high, steps, math.floor)
    return f"{reading(low, units, unit)} to {reading(high, units, unit)}"


def at_most(length: float | None, units: str) -> str:
    """A largest small length, never rounded up."""
    step = 10 ** (_DECIMALS.get(units, 4) + 1)
    return small(None if length is None else _inward(length, step, math.floor), units)


def reading(value: float, units: str, unit: str) -> str:
    """What is read, in its unit."""
    if unit == "length":
        return size(value, units)
    return angle(value) if unit == "degree" else stated(round(value, 1), unit, units)


def stated(value: float, unit: str, units: str) -> str:
    """A value as it was stated or taken, in its unit."""
    written = f"{Decimal(f'{value:.6g}'):f}"
    return f"{written} {units}" if unit == "length" else f"{written}{_UNITS.get(unit, f' {unit}')}"


def blocks_to_tick(blocks: Iterable[float]) -> str:
    """The blocks of a stack, each with a box to tick."""
    return "   ".join(f"[ ] {block:.10g}" for block in blocks)


def arcsec(value: float | None, sign: str = "") -> str:
    """A small angle; one that rounds to nothing has no sign."""
    if value is None:
        return "–"
    return f"{sign}{round(value, 1) + 0.0:.1f}″"


def error(estimate: models.ArcsecEstimate) -> str:
    """What an angle is expected to be off, and how far that may be wrong."""
    if estimate.value is None and estimate.expanded_uncertainty is None:
        return NOT_STATED
    off, spread = estimate.value or 0.0, estimate.expanded_uncertainty
    return f"{round(off, 1) + 0.0:.1f} ± {'?' if spread is None else arcsec(spread)}"


def large_angle(seconds: float | None) -> str:
    """An error of an angle: seconds, past ten minutes in degrees; None where nothing stands."""
    if seconds is None:
        return "nothing stands so"
    if abs(seconds) < 600.0:
        return f"{seconds:+.1f}″"
    return f"{'-' if seconds < 0 else '+'}{angle(abs(seconds) / 3600.0)}"


def angle(degrees: float, tolerance_arcsec: float = 60.0) -> str:
    """An angle to the second that its tolerance asks for: rounded by 1 % of it at most."""
    decimals = 0 if tolerance_arcsec >= 50.0 else 1 if tolerance_arcsec >= 5.0 else 2
    scale = 10**decimals
    minutes, rest = divmod(round(abs(degrees) * 3_600 * scale), 60 * scale)
    seconds = f"{rest / scale:.{decimals}f}".zfill(decimals + 3 if decimals else 2)
    return f"{'-' if degrees < 0 else ''}{minutes // 60}°{minutes % 60:02d}'{seconds}\""


def minutes(value: float | None) -> str:
    """A time, in minutes, from an hour on in hours too."""
    if value is None:
        return "–"
    whole = round(value)
    return f"{whole // 60} h {whole % 60:02d} min" if whole >= 60 else f"{whole} min"


def all_pieces(count: int) -> str:
    """All of the pieces."""
    return "the piece" if count == 1 else f"all {count}"


def times(count: int) -> str:
    """How often."""
    return "once" if count == 1 else f"{count} times"


def percent(value: float | None) -> str:
    """A share."""
    return "–" if value is None else f"{value:.0f} %"


def _length(length: float | None, decimals: int, units: str) -> str:
    if length is None:
        return "–"
    return f"{round(length, decimals) + 0.0:.{decimals}f} {units}".rstrip()


def _inward(value: float, steps: int, rounded: Callable[[float], int]) -> float:
    """A limit rounded to one of so many steps a unit, toward what it allows."""
    return rounded(round(value * steps, 6)) / steps
