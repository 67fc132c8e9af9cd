"""An angle between two arms from the chord between the rolls at their ends. Angles in radians.

Derived here, by the law of cosines: arms of length p and q from the pivot to the centers of the
rolls stand at θ where c² = p² + q² − 2 p q cos θ. It is written (p − q)² + 4 p q sin²(θ/2), which
does not cancel at small angles.
"""

from halfangle_service.errors import Impossible
from halfangle_service.trade import elementary
from halfangle_service.trade.wording import of_any_unit


def chord_of(angle_rad: float, first: float, second: float) -> float:
    """Distance of the centers of the rolls for an angle between the arms."""
    return elementary.hypot(
        first - second, 2.0 * elementary.sqrt(first * second) * elementary.sin(angle_rad / 2.0)
    )


def angle_of_chord(chord: float, first: float, second: float) -> float:
    """Angle between the arms for a distance of the centers of the rolls.

    Raises Impossible where no triangle has such sides.
    """
    least, most = abs(first - second), first + second
    if not least < chord < most:
        raise Impossible(
            f"The centers of the rolls would lie {of_any_unit(chord)} apart; with these arms they "
            f"lie between {of_any_unit(least)} and {of_any_unit(most)} apart.",
            fields={"measure": "should be the measure over or between the rolls, as measure_is"},
        )
    half_sine = elementary.sqrt((chord - least) * (chord + least) / (4.0 * first * second))
    return 2.0 * elementary.asin(min(1.0, half_sine))


def angle_per_chord(angle_rad: float, first: float, second: float) -> float:
    """Change of the angle for one unit of chord: c / (p q sin θ)."""
    return chord_of(angle_rad, first, second) / (first * second * elementary.sin(angle_rad))


def lean_of_chord(angle_rad: float, first: float, second: float) -> float:
    """Angle of the chord to the shorter arm's line: 90° moves it most for a turn.

    The chord changes by the shorter arm times the sine of it.
    """
    per_turn = 1.0 / angle_per_chord(angle_rad, first, second)
    return elementary.asin(min(1.0, per_turn / min(first, second)))
