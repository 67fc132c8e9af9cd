"""What errors of dressing do to the flank and so to the cone. Radians, one unit of length.

Wheel and work axes are parallel and in one plane with the contact, so that at each station the
radius of the cone and that of the wheel make up a constant: whatever the flank is out, the cone is.

Diamond at a distance e from the wheel's axial plane (above or below). Its path is straight in its
own plane, at β to the axis, so that the wheel's radius is r = √(q² + e²) where q falls by tan β per
length: a hyperbola. Its slope is tan β · q / r = tan β · √(1 − (e/r)²). Derived here.
"""

from dataclasses import dataclass
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from halfangle_service.errors import Impossible
from halfangle_service.trade import elementary
from halfangle_service.trade.wording import of_any_unit

Array = NDArray[np.float64]
ErrorName = Literal[
    "diamond-height",
    "diamond-nose-radius",
    "dresser-angle",
    "wheel-wear",
    "diamond-wear",
    "all-together",
]


@dataclass(frozen=True, slots=True)
class DressedCone:
    """The cone wanted and the wheel that grinds it with a flank that begins at its periphery.

    `angle_rad` is the half angle; the wheel's radius is greatest where the cone is smallest.
    """

    angle_rad: float
    small_radius: float
    large_radius: float
    wheel_radius: float

    @property
    def rise(self) -> float:
        """Radial depth of the flank."""
        return self.large_radius - self.small_radius

    @property
    def slant(self) -> float:
        """Length of the flank along its slope."""
        return self.rise / elementary.sin(self.angle_rad)

    @property
    def length(self) -> float:
        """Length of the flank along the axis."""
        return self.rise / elementary.tan(self.angle_rad)

    def require_room(self, diamond_height: float) -> None:
        """Refuse a wheel that the flank or the diamond's height uses up. Raises Impossible."""
        smallest = self.wheel_radius - self.rise
        if smallest <= 0.0:
            raise Impossible(
                f"The flank is {of_any_unit(self.rise)} deep and the wheel's radius "
                f"{of_any_unit(self.wheel_radius)}.",
                fields={"wheel_diameter": f"should be more than {of_any_unit(2.0 * self.rise)}"},
            )
        if abs(diamond_height) >= smallest:
            raise Impossible(
                f"A diamond {of_any_unit(abs(diamond_height))} off the wheel's axis never reaches "
                "the "
                f"flank's root, at a radius of {of_any_unit(smallest)}.",
                fields={"diamond_height": f"should be between ±{of_any_unit(smallest)}"},
            )


def local_half_angle(angle_rad: float, diamond_height: float, wheel_radius: float) -> float:
    """Half angle that the flank grinds where the wheel has this radius."""
    share = diamond_height / wheel_radius
    return elementary.atan(elementary.tan(angle_rad) * elementary.sqrt(1.0 - share * share))


def hyperbolic_radii(cone: DressedCone, diamond_height: float, stations: Array) -> Array:
    """Wheel radius at stations along the axis from the periphery's edge of the flank."""
    start = elementary.sqrt(cone.wheel_radius**2 - diamond_height**2)
    return np.sqrt((start - stations * elementary.tan(cone.angle_rad)) ** 2 + diamond_height**2)


@dataclass(frozen=True, slots=True)
class Effect:
    """What an error does to the cone: to its half angle, its straightness, its surface (outward).

    `straightness` is the least distance of two parallel lines that hold the surface.
    """

    angle_rad: float = 0.0
    straightness: float = 0.0
    outward: float = 0.0

    @property
    def present(self) -> bool:
        """True where the angle or the form is out, which an inspection may show."""
        return self.angle_rad != 0.0 or self.straightness > 0.0


def hyperbola(cone: DressedCone, diamond_height: float) -> Effect:
    """What the flank that an off-height diamond dresses does.

    The angle is the slope of the chord from end to end; the straightness the greatest distance from
    that chord, square to it, since the curve bends one way only.
    """
    r1, r2 = hyperbolic_radii(cone, diamond_height, np.array([0.0, cone.length])).tolist()
    q1, q2 = (elementary.sqrt(r * r - diamond_height**2) for r in (r1, r2))
    # Slope of the chord against q; r² − q² is the same at both ends, so this does not cancel.
    slope = (q1 + q2) / (r1 + r2)
    # The tangent has that slope where q / r = slope; 1 − slope² is written out for the same reason.
    spread = 2.0 + 2.0 * (q1 * q1 + q2 * q2 + diamond_height**2) / (r1 * r2 + q1 * q2)
    q = slope * (r1 + r2) / elementary.sqrt(spread)
    radius = elementary.hypot(q, diamond_height)
    chord = elementary.atan(slope * elementary.tan(cone.angle_rad))
    straightness = max(r1 - slope * (q1 - q) - radius, 0.0) * elementary.cos(chord)
    return Effect(chord - cone.angle_rad, straightness)


def nose_displacement(angle_rad: float, nose_radius: float) -> float:
    """How much deeper than a sharp diamond's the flank lies, square to it.

    The round nose is set by touching the periphery and then led along the angle: its center lies
    ρ cos β from the line of a sharp point, and the flank ρ from the center.
    """
    return nose_radius * (1.0 - elementary.cos(angle_rad))


def angle_from_wear(slant: float, at_small_end: float, at_large_end: float) -> float:
    """Change of the half angle where the flank wears (square to it) unequally at its ends.

    Where the wheel has lost more at the small end, the cone is left larger there and its half angle
    smaller.
    """
    # Adding 0.0 turns a negative zero into a plain one.
    return elementary.atan((at_large_end - at_small_end) / slant) + 0.0


def small_end_diameter_change(angle_rad: float, normal: float) -> float:
    """Change of the cone's diameter at a station for stock left on, square to the surface."""
    return 2.0 * normal / elementary.cos(angle_rad) + 0.0


def effects_of(
    cone: DressedCone,
    *,
    diamond_height: float | None,
    nose_radius: float | None,
    dresser_angle_rad: float | None,
    wear_small_end: float | None,
    wear_large_end: float | None,
    diamond_wear: float | None,
    toward_small_end: bool,
) -> dict[ErrorName, Effect | None]:
    """The effect of each error, None where it was not stated, and of all that were together.

    They are small, so that angles and displacements add.
    """
    height, nose, turned = diamond_height, nose_radius, dresser_angle_rad
    effects: dict[ErrorName, Effect | None] = {
        "diamond-height": None if height is None else hyperbola(cone, height),
        "diamond-nose-radius": None if nose is None else _nose(cone, nose),
        "dresser-angle": None if turned is None else Effect(turned),
        "wheel-wear": _wheel_wear(cone, wear_small_end, wear_large_end),
        "diamond-wear": _diamond_wear(cone, diamond_wear, toward_small_end=toward_small_end),
    }
    stated = [effect for effect in effects.values() if effect is not None]
    together = Effect(
        sum(effect.angle_rad for effect in stated),
        sum(effect.straightness for effect in stated),
        sum(effect.outward for effect in stated),
    )
    return effects | {"all-together": together if stated else None}


def _nose(cone: DressedCone, nose_radius: float) -> Effect:
    return Effect(outward=nose_displacement(cone.angle_rad, nose_radius))


def _wheel_wear(
    cone: DressedCone, at_small_end: float | None, at_large_end: float | None
) -> Effect | None:
    """Wear of the flank; of one end alone nothing follows, for it is the difference that turns."""
    if at_small_end is None or at_large_end is None:
        return None
    return _wear(cone, at_small_end, at_large_end)


def _diamond_wear(
    cone: DressedCone, wear: float | None, *, toward_small_end: bool
) -> Effect | None:
    """The shorter diamond leaves the flank proud at the end of its way: wear of the other sign."""
    if wear is None:
        return None
    return _wear(cone, *((-wear, 0.0) if toward_small_end else (0.0, -wear)))


def _wear(cone: DressedCone, at_small_end: float, at_large_end: float) -> Effect:
    """Wear of the flank, square to it, turns the cone and leaves its small end larger."""
    turned = angle_from_wear(cone.slant, at_small_end, at_large_end)
    return Effect(turned, outward=at_small_end)
