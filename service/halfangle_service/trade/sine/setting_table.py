"""Setting tables: heights for a range of angles, as columns and as CSV."""

import csv
import io
import math
from collections.abc import Iterable, Sequence

import numpy as np
from numpy.typing import NDArray

from halfangle_service.errors import BeyondBound, Disagreement
from halfangle_service.trade.sine.geometry import height_for_angle
from halfangle_service.trade.wording import plain

#: Every minute of arc up to 90° is 5,400 rows.
MOST_ROWS = 5_400

Column = NDArray[np.float64]


def angle_range(first_degrees: float, last_degrees: float, step_degrees: float) -> Column:
    """Angles from the first to the last by a step, in degrees; each is counted from the first.

    Counted in hundredths of arc-seconds, so that a minute stays a minute at the end of the table.
    Raises Disagreement where the last is below the first, BeyondBound past MOST_ROWS.
    """
    if last_degrees < first_degrees:
        raise Disagreement(
            f"The table would end at {plain(last_degrees)}°, below its start at "
            f"{plain(first_degrees)}°.",
            fields={"last_angle": f"should be at least first_angle ({plain(first_degrees)}°)"},
        )
    rows = math.floor((last_degrees - first_degrees) / step_degrees + 1e-6) + 1
    if rows > MOST_ROWS:
        raise BeyondBound(
            f"The table would have {rows} rows; at most {MOST_ROWS} are given, every minute of arc "
            "up to 90°.",
            fields={"angle_step": f"should make no more than {MOST_ROWS} rows"},
        )
    exact: Column = first_degrees + step_degrees * np.arange(rows, dtype=np.float64)
    if _is_sexagesimal(first_degrees) and _is_sexagesimal(step_degrees):
        return np.round(exact * 360_000.0) / 360_000.0
    return exact


def _is_sexagesimal(degrees: float) -> bool:
    """True for a whole number of hundredths of arc-seconds."""
    hundredths = degrees * 360_000.0
    return math.isclose(hundredths, round(hundredths), rel_tol=1e-9, abs_tol=1e-6)


def heights(center_distance: float, angles_degrees: Column, offset: float = 0.0) -> Column:
    """Stack heights for a column of angles: h = L sin θ + offset, in the unit of L."""
    angles_rad = np.radians(angles_degrees).tolist()
    return np.array([height_for_angle(center_distance, angle, offset) for angle in angles_rad])


def csv_text(header: Sequence[str], rows: Iterable[Sequence[object]]) -> str:
    """Write rows as CSV after RFC 4180: CRLF at each line's end, quotes where needed."""
    out = io.StringIO(newline="")
    writer = csv.writer(out, lineterminator="\r\n")
    writer.writerow(header)
    writer.writerows(rows)
    return out.getvalue()
