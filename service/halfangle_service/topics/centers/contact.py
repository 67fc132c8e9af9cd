"""Where a center bears in its hole, and how the work shifts."""

from typing import Annotated

from pydantic import Field

from halfangle_service.errors import Impossible
from halfangle_service.fields import (
    AngleInput,
    Length,
    LengthOut,
    NonNegativeLength,
    UnitsField,
)
from halfangle_service.fields.advisories import caution
from halfangle_service.fields.drawings.asked import DrawnFields, DrawnResult, is_drawn
from halfangle_service.operation import Outcome, Source, operation
from halfangle_service.trade import elementary
from halfangle_service.trade.centers import contact as cones
from halfangle_service.trade.centers.drawing import contact_svg
from halfangle_service.trade.cone import cone_length
from halfangle_service.trade.wording import of_any_unit

_ONE_CIRCLE = Source(
    citation="Derived here: two coaxial cones of unlike angle touch on one circle.",
    standing="derived",
)
#: Where a center bears on an edge only, as a sentence says it.
_EDGE = {"mouth": "mouth", "small-end": "small end"}


class CenterContactRequest(DrawnFields):
    """A center and the conical hole that it enters."""

    units: UnitsField
    center_included_angle: Annotated[float, AngleInput(ge=20, le=140)] = Field(
        description="Included angle of the center, in degrees.", examples=[60]
    )
    hole_included_angle: Annotated[float, AngleInput(ge=20, le=140)] = Field(
        description="Included angle of the hole's cone, in degrees.", examples=[59]
    )
    mouth_diameter: Length = Field(description="Large diameter of the hole's cone, in `units`.")
    pilot_diameter: Length = Field(description="Diameter of the pilot, in `units`.")
    diameter_error_limit: NonNegativeLength | None = Field(
        None,
        description="Largest error ± of the bearing diameter, to turn into an axial shift, in "
        "`units`.",
    )


class CenterContactResult(DrawnResult):
    """Where the center bears, and how the work shifts."""

    bearing: cones.Bearing = Field(
        description="`mouth` or `small-end`: an edge carries; `whole-cone`: the angles match."
    )
    contact_diameter: LengthOut = Field(description="Largest diameter at which it bears.")
    gap_at_other_end: LengthOut = Field(description="Radial gap at the other end of the cone.")
    point_from_mouth: LengthOut = Field(
        description="How far the center's sharp point would lie inside the mouth."
    )
    axial_shift: LengthOut | None = Field(
        description="How far the work shifts along the axis for `diameter_error_limit`, with the "
        "hole's depth kept; null where that was not stated."
    )
    not_stated: list[str] = Field(description="`diameter_error_limit` where it was not sent.")


@operation(
    "centers.contact",
    relations=(
        "gap = depth × |tan α_hole - tan α_center|",
        "axial shift = diameter error / (2 tan α_center)",
    ),
    sources=(_ONE_CIRCLE,),
    heavy=is_drawn,
    example={
        "units": "mm",
        "center_included_angle": 60,
        "hole_included_angle": 59,
        "mouth_diameter": 8.5,
        "pilot_diameter": 4,
        "diameter_error_limit": 0.1,
        "formats": ["svg"],
    },
)
def contact(request: CenterContactRequest) -> Outcome[CenterContactResult]:
    """Where a center bears in its hole.

    A center of one angle in a hole of another: where it bears, the gap at the other end, and the
    axial shift of the work for an error of diameter.
    """
    if request.pilot_diameter >= request.mouth_diameter:
        raise Impossible(
            f"The pilot, {of_any_unit(request.pilot_diameter)}, leaves no cone under the mouth "
            "diameter "
            f"{of_any_unit(request.mouth_diameter)}.",
            fields={"pilot_diameter": "should be less than mouth_diameter"},
        )
    center_rad = elementary.radians(request.center_included_angle) / 2.0
    found = cones.contact(
        center_rad,
        elementary.radians(request.hole_included_angle) / 2.0,
        request.mouth_diameter,
        request.pilot_diameter,
    )
    error = request.diameter_error_limit
    result = CenterContactResult(
        bearing=found.bearing,
        contact_diameter=found.diameter,
        gap_at_other_end=found.gap_at_other_end,
        point_from_mouth=found.point_from_mouth,
        axial_shift=None if error is None else cone_length(error, center_rad),
        not_stated=["diameter_error_limit"] if error is None else [],
        svg=_drawing(request, found) if is_drawn(request) else None,
    )
    edge = _EDGE.get(found.bearing)
    if edge is None:
        return Outcome(result)
    message = f"The center bears on the edge at the {edge} only: the edge wears and beds."
    return Outcome(result, (caution("edge-bearing", message),))


def _drawing(request: CenterContactRequest, found: cones.Contact) -> str:
    """The center in its hole."""
    center, hole = (
        elementary.radians(angle) / 2.0
        for angle in (request.center_included_angle, request.hole_included_angle)
    )
    sizes = request.mouth_diameter, request.pilot_diameter
    return contact_svg((center, hole), *sizes, found, request.units)
