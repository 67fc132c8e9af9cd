"""Where a grinder's wheel stands, and so which turn of the work sets the cone's angle there.

The angle is set in the plane that holds the wheel's axis and the place where it touches the work.
Above the work that plane is vertical: work is tilted. Beside it, and under the wheel's side, it is
horizontal: work is swivelled about the vertical. The same turn of the same head is pitch on one
grinder and yaw on the other.
"""

from typing import Annotated, Literal

from pydantic import Field

from halfangle_service.errors import Impossible

WayName = Literal["sine-plate", "dressed-wheel", "wheel-side", "swivelled-workhead"]
GrinderName = Literal["surface", "cylindrical"]
Grinder = Annotated[
    GrinderName,
    Field(
        description="`surface`: the wheel stands above the work, which the table carries past it. "
        "`cylindrical`: it stands beside the work, both axes at one height (tool grinders too)."
    ),
]
_Plane = Literal["vertical", "horizontal"]

#: The plane in which each way sets the angle; a pair that is missing grinds no cone.
_PLANES: dict[tuple[GrinderName, WayName], _Plane] = {
    ("surface", "sine-plate"): "vertical",
    ("surface", "dressed-wheel"): "vertical",
    ("surface", "wheel-side"): "horizontal",
    ("cylindrical", "swivelled-workhead"): "horizontal",
    ("cylindrical", "dressed-wheel"): "horizontal",
    ("cylindrical", "wheel-side"): "horizontal",
}
_NO_CONE: dict[GrinderName, str] = {
    "surface": "Swivelled about the vertical under a wheel that stands above it, work stays level: "
    "the periphery grinds a cylinder when the table carries the work past it and a waist when it "
    "stands still, whatever the swivel. The wheel's side grinds a cone so, or the work is tilted.",
    "cylindrical": "A plate tilts the work in the vertical plane, and a wheel that stands beside "
    "it grinds no cone so: there the work is swivelled about the vertical.",
}
_INSTEAD: dict[GrinderName, str] = {
    "surface": "should be sine-plate (for a head that tilts too), dressed-wheel or wheel-side",
    "cylindrical": "should be swivelled-workhead, dressed-wheel or wheel-side",
}


def why_no_cone(grinder: GrinderName, way: WayName) -> str | None:
    """Why this way grinds no cone on this grinder; None where it does."""
    return None if (grinder, way) in _PLANES else _NO_CONE[grinder]


def require_cone(grinder: GrinderName, way: WayName) -> None:
    """Refuse a way that grinds no cone on this grinder. Raises Impossible."""
    why = why_no_cone(grinder, way)
    if why is not None:
        raise Impossible(
            why,
            fields={"way": _INSTEAD[grinder], "grinder": "should be the one that the work is on"},
        )


def require_feed(grinder: GrinderName, way: WayName, feed: str) -> None:
    """Refuse to carry work past a wheel that the table only moves along. Raises Impossible."""
    if grinder == "cylindrical" and way != "wheel-side" and feed == "traversed":
        raise Impossible(
            "A cylindrical grinder's table carries the work along the wheel's axis, not past the "
            "wheel: the wheel sweeps no plane, and grinds as when it is plunged.",
            fields={"feed": "should be plunge"},
        )


def error_on_the_grinder(grinder: GrinderName, way: WayName, error: str) -> str:
    """What an error of the work's axis is on this grinder, as it can be indicated there."""
    horizontal = _PLANES[grinder, way] == "horizontal"
    if error == "axis-offset":
        how = "above or below the wheel's" if horizontal else "to one side of the wheel's"
        return f"The work's axis stands {how}."
    if way == "sine-plate":
        on_plate = {
            "axis-pitch": "One end of the work's axis is high over the plate's top, or the plate "
            "is tilted wrong.",
            "axis-yaw": "The work's axis is turned on the plate's top, out of the tilt plane.",
        }
        return on_plate[error]
    if horizontal == (error == "axis-pitch"):
        return "The work's axis is swivelled wrong about the vertical."
    return "One end of the work's axis is high."
