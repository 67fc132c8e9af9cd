"""The center distance of a sine bar, and its face's lean, from angle blocks levelled on it.

An angle block on the face, indicated level, says at what angle the face stands: its own angle less
the lean that the indicator still reads. The line of the rolls' centers stands at asin(h / L); the
face leans by ε to it. Of one setting ε is taken as nothing; of several L and ε are those of least
squares of the angles. Angles in radians, lengths in one unit; derived here.
"""

import math
from collections.abc import Sequence

from halfangle_service.errors import Impossible
from halfangle_service.trade import elementary
from halfangle_service.trade.wording import of_any_unit

#: Height of the high roll over the low one's, and the angle at which the face was found.
Found = tuple[float, float]
_STEPS = 50
#: Past it a search has lost its way.
_FAR = 1e4


def center_distance_of(found: Sequence[Found]) -> tuple[float, float]:
    """Center distance L and lean ε of the face; raises Impossible where none fits."""
    height, angle = max(found)
    if not (height > 0.0 and 0.0 < angle < math.pi / 2.0):
        raise no_such_bar(height)
    distance, lean = height / elementary.sin(angle), 0.0
    if len(found) == 1:
        return distance, lean
    for _ in range(_STEPS):
        step = _newton(found, distance, lean)
        distance, lean = distance + step[0], lean + step[1]
        if abs(step[0]) <= 1e-14 * distance and abs(step[1]) <= 1e-16:
            break
    return distance, lean


def _newton(found: Sequence[Found], distance: float, lean: float) -> tuple[float, float]:
    """Step of Gauss and Newton: two normal equations of the angles' residuals."""
    if not max(abs(height) for height, _ in found) < distance < math.inf:
        raise no_such_bar(distance)
    rows = []
    for height, angle in found:
        along = elementary.sqrt((distance - height) * (distance + height))
        rows.append(
            (-height / (distance * along), angle - elementary.asin(height / distance) - lean)
        )
    count = float(len(rows))
    s1, s2 = math.fsum(a for a, _ in rows), math.fsum(a * a for a, _ in rows)
    r1, r2 = math.fsum(r for _, r in rows), math.fsum(a * r for a, r in rows)
    spread = count * s2 - s1 * s1
    if spread <= 1e-12 * count * s2:
        raise no_such_bar(distance)
    return (count * r2 - s1 * r1) / spread, (s2 * r1 - s1 * r2) / spread


def largest_residual(found: Sequence[Found], distance: float, lean: float) -> float:
    """Largest difference of an angle found from the one that follows, in radians."""
    return max(abs(angle - elementary.asin(height / distance) - lean) for height, angle in found)


def no_such_bar(distance: float) -> Impossible:
    """Refuse settings that no bar explains."""
    came = f", the search came to {of_any_unit(distance)}" if 0.0 < distance < _FAR else ""
    return Impossible(
        f"No center distance explains these settings{came}: heights and angles must differ and "
        "belong together.",
        fields={"settings": "should be settings of one bar at different angles"},
    )
