"""The arc of a radius-dressed wheel: radius, width, sagitta, and what an off-height diamond does.

Lengths in one unit. The sagitta of an arc of radius r and width c is r − √(r² − c²/4). Derived
here: a diamond that swings its arc in a plane at a distance e from the wheel's axis leaves the
wheel's radius √(q² + e²) where the plane's own coordinate is q, so that the arc comes out flatter.
"""

from typing import Literal

from halfangle_service.errors import Impossible
from halfangle_service.trade import elementary
from halfangle_service.trade.wording import of_any_unit

ArcForm = Literal["convex", "concave"]


def sagitta_of(radius: float, width: float) -> float:
    """Sagitta of an arc; raises Impossible where it is wider than its circle.

    Not r − √(r² − c²/4), which cancels for a narrow arc.
    """
    half = width / 2.0
    if half > radius:
        raise Impossible(
            f"An arc of radius {of_any_unit(radius)} is not {of_any_unit(width)} wide.",
            fields={"arc_width": f"should be at most {of_any_unit(2.0 * radius)}"},
        )
    return half * half / (radius + elementary.sqrt((radius - half) * (radius + half)))


def width_of(radius: float, sagitta: float) -> float:
    """Width of an arc of this sagitta; raises Impossible past half a circle."""
    if sagitta > radius:
        raise Impossible(
            f"An arc of radius {of_any_unit(radius)} that is {of_any_unit(sagitta)} deep is more "
            "than half a circle, which no dresser swings.",
            fields={"sagitta": f"should be at most {of_any_unit(radius)}"},
        )
    return 2.0 * elementary.sqrt(sagitta * (2.0 * radius - sagitta))


def radius_of(width: float, sagitta: float) -> float:
    """Radius of an arc; raises Impossible past half a circle."""
    if sagitta > width / 2.0:
        raise Impossible(
            f"An arc {of_any_unit(width)} wide and {of_any_unit(sagitta)} deep is more than half a "
            "circle, which no dresser swings.",
            fields={"sagitta": f"should be at most {of_any_unit(width / 2.0)}"},
        )
    return width * width / (8.0 * sagitta) + sagitta / 2.0


def pin_over_face(radius: float, width: float, pin_diameter: float) -> tuple[float, bool]:
    """Height of a pin's top over the face of a groove of this arc; True where it rests below.

    A pin of the arc's radius or less rests on the bottom; a larger one on the groove's edges.
    """
    if pin_diameter <= 2.0 * radius:
        return pin_diameter - sagitta_of(radius, width), True
    return pin_diameter - sagitta_of(pin_diameter / 2.0, width), False


def as_dressed(
    radius: float, width: float, form: ArcForm, wheel_radius: float, diamond_height: float
) -> float:
    """Radius through the middle and both ends of the arc that the wheel comes out with.

    The diamond swings `radius` at that height; the wheel's radius is that at the arc's middle.
    """
    depth = sagitta_of(radius, width)
    in_plane = elementary.sqrt((wheel_radius - diamond_height) * (wheel_radius + diamond_height))
    turn = -1.0 if form == "convex" else 1.0
    end = elementary.hypot(in_plane + turn * depth, diamond_height)
    # end² − wheel_radius² is written out: their difference cancels.
    sagitta = depth * abs(2.0 * in_plane + turn * depth) / (wheel_radius + end)
    return width * width / (8.0 * sagitta) + sagitta / 2.0


def require_room(wheel_radius: float, diamond_height: float, sagitta: float, form: ArcForm) -> None:
    """Refuse a diamond that never reaches the arc's least radius on the wheel."""
    deepest = wheel_radius - (sagitta if form == "convex" else 0.0)
    if abs(diamond_height) >= deepest:
        raise Impossible(
            f"A diamond {of_any_unit(abs(diamond_height))} off the wheel's axis never reaches a "
            f"radius of {of_any_unit(max(0.0, deepest))}.",
            fields={"diamond_height": f"should be between ±{of_any_unit(max(0.0, deepest))}"},
        )
