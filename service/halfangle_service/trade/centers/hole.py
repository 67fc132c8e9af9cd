"""Depths of a center hole and its check over a ball; angles in radians, lengths in one unit."""

from halfangle_service.errors import Impossible
from halfangle_service.trade import elementary
from halfangle_service.trade.wording import of_any_unit


def cone_depth(large_diameter: float, small_diameter: float, half_angle_rad: float) -> float:
    """Depth of a cone between two diameters: (D - d)/(2 tan α)."""
    return (large_diameter - small_diameter) / (2.0 * elementary.tan(half_angle_rad))


def ball_contact_diameter(ball_diameter: float, half_angle_rad: float) -> float:
    """Diameter of the circle on which a ball touches the cone: d_b cos α."""
    return ball_diameter * elementary.cos(half_angle_rad)


def over_ball(mouth_diameter: float, ball_diameter: float, half_angle_rad: float) -> float:
    """Height of the ball's top over the mouth: d_b/(2 sin α) + d_b/2 - D/(2 tan α).

    Derived here: the ball's center stands d_b/(2 sin α) above the cone's apex, the mouth
    D/(2 tan α). Negative where the ball lies below the mouth.
    """
    center = ball_diameter / (2.0 * elementary.sin(half_angle_rad))
    return center + ball_diameter / 2.0 - mouth_diameter / (2.0 * elementary.tan(half_angle_rad))


def mouth_from_ball(height: float, ball_diameter: float, half_angle_rad: float) -> float:
    """Mouth diameter from the height over a ball: d_b (1 + sin α)/cos α - 2 P tan α."""
    at_plane = (
        ball_diameter * (1.0 + elementary.sin(half_angle_rad)) / elementary.cos(half_angle_rad)
    )
    return at_plane - 2.0 * height * elementary.tan(half_angle_rad)


def best_ball(mouth_diameter: float, pilot_diameter: float, half_angle_rad: float) -> float:
    """Ball that touches the cone halfway between pilot and mouth."""
    return (mouth_diameter + pilot_diameter) / (2.0 * elementary.cos(half_angle_rad))


def require_on_cone(
    ball_diameter: float, mouth_diameter: float, pilot_diameter: float, half_angle_rad: float
) -> None:
    """Refuse a ball that rests on an edge, not on the cone."""
    touch = ball_contact_diameter(ball_diameter, half_angle_rad)
    if pilot_diameter < touch < mouth_diameter:
        return
    edge = "falls into the pilot" if touch <= pilot_diameter else "rests on the mouth's edge"
    least, most = (d / elementary.cos(half_angle_rad) for d in (pilot_diameter, mouth_diameter))
    raise Impossible(
        f"A ball of {of_any_unit(ball_diameter)} {edge}: it would touch the cone at "
        f"{of_any_unit(touch)}, "
        f"which runs from {of_any_unit(pilot_diameter)} to {of_any_unit(mouth_diameter)}.",
        fields={
            "ball_diameter": f"should be over {of_any_unit(least)} and under {of_any_unit(most)}"
        },
    )
