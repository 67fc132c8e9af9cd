"""An indicator that runs beside the crest of a cone; angles in radians, lengths in one unit."""

from halfangle_service.errors import Impossible
from halfangle_service.trade import elementary
from halfangle_service.trade.wording import of_any_unit


def most_miss(radius: float, half_angle_rad: float, tip_radius: float) -> float:
    """Miss as far as the tip's center at the crest is from the cone's axis: r + ρ cos α."""
    return radius + tip_radius * elementary.cos(half_angle_rad)


def crest_drop(miss: float, radius: float, half_angle_rad: float, tip_radius: float) -> float:
    """How far a ball tip, square to the cone, drops when `miss` beside the crest.

    Derived here, exact: with M = r/cos α + ρ the drop δ solves (1 - tan² α) δ² - 2 M δ + y² = 0;
    for a small miss it is y²/(2 M). Raises Impossible where the tip has left the cone.
    """
    reach = radius / elementary.cos(half_angle_rad) + tip_radius
    inside = reach**2 - (1.0 - elementary.tan(half_angle_rad) ** 2) * miss**2
    if inside < 0.0 or miss > most_miss(radius, half_angle_rad, tip_radius):
        raise Impossible(
            f"An indicator {of_any_unit(miss)} off the crest passes beside a cone of radius "
            f"{of_any_unit(radius)}.",
            fields={"miss": "should be less than the radius under the indicator"},
        )
    return miss**2 / (reach + elementary.sqrt(inside)) if miss else 0.0


def false_half_angle(
    miss: float,
    radii: tuple[float, float],
    half_angle_rad: float,
    tip_radius: float,
) -> float:
    """False change of half angle, radians, read between two radii, small one first.

    The small end drops more, so that the cone reads steeper than it is.
    """
    small, large = (crest_drop(miss, r, half_angle_rad, tip_radius) for r in radii)
    along = (radii[1] - radii[0]) / elementary.sin(half_angle_rad)
    return elementary.atan2(small - large, along)


def miss_for(
    false_rad: float, radii: tuple[float, float], half_angle_rad: float, tip_radius: float
) -> float:
    """Largest miss whose false half angle stays within `false_rad`, by halving an interval.

    No more than `most_miss` at the small end, past which no drop is given.
    """
    low, high = 0.0, most_miss(radii[0], half_angle_rad, tip_radius)
    if false_half_angle(high, radii, half_angle_rad, tip_radius) <= false_rad:
        return high
    for _ in range(80):
        middle = (low + high) / 2.0
        if false_half_angle(middle, radii, half_angle_rad, tip_radius) <= false_rad:
            low = middle
        else:
            high = middle
    return low
