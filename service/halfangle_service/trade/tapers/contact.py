"""Tapers over rolls and balls, vees and dovetails over rolls.

Angles in radians, lengths in one consistent unit; heights from the face that the part stands on,
depths from the face of the mouth. α is the half angle. Derived here: a circle of radius r tangent
to a side at angle α to the axis has its center r / cos α from that side, measured across the axis,
and touches it r sin α along the axis from the center.
"""

from halfangle_service.errors import Impossible
from halfangle_service.trade import elementary
from halfangle_service.trade.wording import of_any_unit


def require_contact(station: float, length: float, what: str, field: str) -> None:
    """Refuse a contact outside the side it should touch; station and length along the axis."""
    if not 0.0 <= station <= length:
        raise Impossible(
            f"The {what} would touch {of_any_unit(station)} from the end, outside the surface, "
            "which "
            f"runs from 0 to {of_any_unit(length)}.",
            fields={field: f"should bring the contact between 0 and {of_any_unit(length)}"},
        )


def require_larger(excess: float, what: str) -> None:
    """Refuse two balls or rolls sent the wrong way round; the excess is that of the larger one."""
    if excess <= 0.0:
        raise Impossible(
            f"The {what} sent as the larger one is not larger than the other.",
            fields={
                f"large_{what}_diameter": f"should exceed small_{what}_diameter; each with its own "
                "reading",
                f"small_{what}_diameter": f"should be less than large_{what}_diameter",
            },
        )


def over_rolls(station_diameter: float, lean_rad: float, roll_diameter: float) -> float:
    """Measure over two rolls whose centers lie at that station: D + d (1 + sec α)."""
    return station_diameter + roll_diameter * (1.0 + 1.0 / elementary.cos(lean_rad))


def base_diameter(
    measure: float, lean_rad: float, roll_diameter: float, center_height: float
) -> float:
    """Diameter at the standing face from a measure over rolls.

    `lean_rad` is the half angle, positive where the part widens upward, negative where it narrows.
    """
    at_center = measure - roll_diameter * (1.0 + 1.0 / elementary.cos(lean_rad))
    return at_center - 2.0 * center_height * elementary.tan(lean_rad)


def lean_over_rolls(lower: float, upper: float, rise: float) -> float:
    """Signed half angle from measures over rolls at two heights: tan α = (M2 − M1) / (2 H)."""
    return elementary.atan((upper - lower) / (2.0 * rise))


def diameter_over_rolls(
    height: float, lower_stack: float, lower: float, upper: float, rise: float, roll_diameter: float
) -> float:
    """Diameter at a height over the standing face from measures over rolls at two heights.

    `rise` is the upper stack under each roll less `lower_stack`.
    """
    lean = lean_over_rolls(lower, upper, rise)
    center = lower_stack + roll_diameter / 2.0
    return base_diameter(lower, lean, roll_diameter, center - height)


def roll_contact(center_height: float, lean_rad: float, roll_diameter: float) -> float:
    """Height at which a roll outside the part touches it: center + r sin α, signed as the lean."""
    return center_height + roll_diameter / 2.0 * elementary.sin(lean_rad)


def half_angle_of_balls(
    large_ball: float, small_ball: float, large_depth: float, small_depth: float
) -> float:
    """Half angle of a socket from two balls: sin α = (R1 − R2) / distance of centers.

    Ball sizes are diameters, depths those of the balls' tops below the mouth, negative above it.
    """
    excess = (large_ball - small_ball) / 2.0
    require_larger(excess, "ball")
    apart = (small_depth + small_ball / 2.0) - (large_depth + large_ball / 2.0)
    if excess >= apart:
        raise Impossible(
            f"Balls whose radii differ by {of_any_unit(excess)} and whose centers lie "
            f"{of_any_unit(apart)} "
            "apart touch no common cone: the centers must lie further apart than the radii differ.",
            fields={
                "large_ball_depth": "should leave the larger ball higher",
                "small_ball_depth": "should put the smaller ball deeper",
            },
        )
    return elementary.asin(excess / apart)


def mouth_diameter(ball: float, depth: float, half_angle_rad: float) -> float:
    """Diameter at the mouth from one ball: d / cos α + 2 c tan α, c the depth of its center."""
    center = depth + ball / 2.0
    return ball / elementary.cos(half_angle_rad) + 2.0 * center * elementary.tan(half_angle_rad)


def diameter_over_balls(
    depth: float, large_ball: float, small_ball: float, large_depth: float, small_depth: float
) -> float:
    """Diameter of a socket at a depth below its mouth; see `half_angle_of_balls`."""
    half = half_angle_of_balls(large_ball, small_ball, large_depth, small_depth)
    return mouth_diameter(large_ball, large_depth - depth, half)


def ball_depth(ball: float, mouth: float, half_angle_rad: float) -> float:
    """Depth of a ball's top below the mouth; negative where it stands out."""
    center = (mouth - ball / elementary.cos(half_angle_rad)) / (
        2.0 * elementary.tan(half_angle_rad)
    )
    return center - ball / 2.0


def ball_contact(ball: float, depth: float, half_angle_rad: float) -> float:
    """Depth of the circle on which a ball touches a socket that narrows downward."""
    return depth + ball / 2.0 * (1.0 + elementary.sin(half_angle_rad))


def vee_half_angle(
    large_roll: float, small_roll: float, large_top: float, small_top: float
) -> float:
    """Half angle of a vee from the tops of two rolls: sin ν = (R − r) / rise of the centers."""
    excess = (large_roll - small_roll) / 2.0
    require_larger(excess, "roll")
    rise = (large_top - large_roll / 2.0) - (small_top - small_roll / 2.0)
    if excess >= rise:
        raise Impossible(
            f"Rolls whose radii differ by {of_any_unit(excess)} and whose centers rise by "
            f"{of_any_unit(rise)} "
            "lie in no common vee: the rise must exceed the difference of the radii.",
            fields={
                "large_roll_top": "should put the larger roll's center higher",
                "small_roll_top": "should leave the smaller roll's center lower",
            },
        )
    return elementary.asin(excess / rise)


def vee_roll_top(width: float, half_angle_rad: float, roll: float) -> float:
    """Top of a roll in a vee above the vee's faces: r (1 + 1 / sin ν) − W / (2 tan ν)."""
    radius = roll / 2.0
    return radius * (1.0 + 1.0 / elementary.sin(half_angle_rad)) - width / (
        2 * elementary.tan(half_angle_rad)
    )


def vee_width(roll_top: float, half_angle_rad: float, roll: float) -> float:
    """Width of a vee at its faces from one roll; the way back of `vee_roll_top`."""
    apex = roll / 2.0 * (1.0 + 1.0 / elementary.sin(half_angle_rad)) - roll_top
    return 2.0 * apex * elementary.tan(half_angle_rad)


def vee_width_over_rolls(
    large_roll: float, small_roll: float, large_top: float, small_top: float
) -> float:
    """Width of a vee at its faces from the tops of two rolls; see `vee_half_angle`."""
    half = vee_half_angle(large_roll, small_roll, large_top, small_top)
    return vee_width(large_top, half, large_roll)


def vee_apex_depth(width: float, half_angle_rad: float) -> float:
    """Depth of a vee's apex below its faces: W / (2 tan ν)."""
    return width / (2.0 * elementary.tan(half_angle_rad))


def vee_apex_over_rolls(
    large_roll: float, small_roll: float, large_top: float, small_top: float
) -> float:
    """Depth of a vee's apex below its faces from the tops of two rolls; see `vee_half_angle`."""
    half = vee_half_angle(large_roll, small_roll, large_top, small_top)
    return vee_apex_depth(vee_width(large_top, half, large_roll), half)


def vee_contact_depth(roll_top: float, half_angle_rad: float, roll: float) -> float:
    """Depth below the faces at which a roll touches the vee's sides."""
    return roll / 2.0 * (1.0 + elementary.sin(half_angle_rad)) - roll_top


def dovetail_constant(angle_rad: float, roll: float) -> float:
    """Both rolls' share of a dovetail's measure: d (1 + cot(θ / 2)), θ from the base."""
    return roll * (1.0 + 1.0 / elementary.tan(angle_rad / 2.0))


def dovetail_spread(angle_rad: float, height: float) -> float:
    """How much wider a dovetail is at its open side than at its base: 2 h cot θ."""
    return 2.0 * height / elementary.tan(angle_rad)


def dovetail_contact(angle_rad: float, roll: float) -> float:
    """Height above the base at which a roll in the corner touches the flank: r (1 + cos θ)."""
    return roll / 2.0 * (1.0 + elementary.cos(angle_rad))
