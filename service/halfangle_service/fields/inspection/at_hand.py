"""The means of measuring that the shop has, with what is known of their errors.

A limit of error that is not sent is not stated: nothing counts for it, the answer names it, and no
judgement comes out of it. 0 says that there is no such error.
"""

from typing import Annotated, Literal

from pydantic import Field

from halfangle_service.fields import (
    FINITE,
    Length,
    NonNegativeArcsec,
    NonNegativeLength,
    RequestModel,
    Unit,
)
from halfangle_service.fields.set_up_errors import Limit

_Diameters = Annotated[list[Length], Field(min_length=1, max_length=20)]


class InspectionRolls(RequestModel):
    """Pairs of equal rolls, to measure an outer cone over."""

    roll_diameters: _Diameters = Field(
        description="Diameters of the pairs at hand, in `units`.", examples=[[0.125, 0.25]]
    )
    standing_on: Literal["small-end", "large-end"] | None = Field(
        None,
        description="End that the part stands on. Absent: its small end, where that is wide enough "
        "to stand on, else its large one.",
    )
    stack_rise: Length | None = Field(
        None,
        description="Height of the two equal stacks under the rolls at the upper height. Absent: "
        "the highest in whole steps of 0.05 in or 1 mm that the cone has room for.",
    )
    measure_error_limit: Limit = Field(
        None, description="Largest error ± of each measure over the rolls, in `units`."
    )
    roll_error_limit: Limit = Field(
        None, description="Largest error ± of a roll's diameter, in `units`; counts for the size."
    )
    stack_rise_error_limit: Limit = Field(
        None, description="Largest error ± of the stacks' height, in `units`."
    )


class InspectionBalls(RequestModel):
    """Balls, to lay into a socket one at a time."""

    ball_diameters: _Diameters = Field(
        description="Diameters of the balls at hand, in `units`.", examples=[[0.625, 0.6875]]
    )
    measure_error_limit: Limit = Field(
        None, description="Largest error ± of each depth, in `units`."
    )
    roll_error_limit: Limit = Field(
        None, description="Largest error ± of a ball's diameter, in `units`."
    )


class InspectionGauges(RequestModel):
    """A plug or ring gauge whose depth is measured; two with sharp edges give the angle too."""

    gauge_diameter: Length = Field(
        description="The gauge's diameter at its line or sharp edge, in `units`.", examples=[0.7]
    )
    gauge_length: NonNegativeLength = Field(
        0.0,
        description="How far the gauge's cone runs from its line toward the small end; 0 for a "
        "sharp edge.",
    )
    second_gauge_diameter: Length | None = Field(
        None, description="Diameter of a second gauge, at a sharp edge, in `units`."
    )
    depth_error_limit: Limit = Field(None, description="Largest error ± of each depth, in `units`.")
    gauge_error_limit: Limit = Field(
        None, description="Largest error ± of each gauge's diameter, in `units`."
    )


class InspectionProbe(RequestModel):
    """A height gauge or a measuring machine, to probe a cone or socket near both its ends."""

    tip_diameter: Length = Field(description="Diameter of the tip, in `units`.", examples=[0.1])
    measure_error_limit: Limit = Field(
        None, description="Largest error ± of each travel across the axis, in `units`."
    )
    depth_error_limit: Limit = Field(None, description="Largest error ± of each depth, in `units`.")
    tip_error_limit: Limit = Field(
        None, description="Largest error ± of the tip's diameter, in `units`; counts for the size."
    )


class InspectionComparator(RequestModel):
    """An optical comparator or a toolmaker's microscope."""

    instrument_angle_error_limit_arcsec: NonNegativeArcsec | None = Field(
        None, description="Largest error ± of an angle read on it.", examples=[60.0]
    )


class InspectionBluing(RequestModel):
    """A gauge of the part's own taper and a marking film."""

    contact_length: Length | None = Field(
        None,
        description="Length of contact along the axis, from the large end, in `units`. Absent: the "
        "part's whole length.",
    )
    blue_film: Length | None = Field(
        None,
        description="Thickness of the marking film; 0.00008 in or 0.002 mm where left out (common "
        "practice, no source).",
    )
    blue_film_error_limit: Limit = Field(
        None, description="Largest error ± of that thickness, in `units`; less than it."
    )
    marked_share_error_limit_percent: (
        Annotated[float, FINITE, Field(ge=0, le=100), Unit("percent")] | None
    ) = Field(
        None,
        description="Largest error ± of the share judged by eye, in percent of the length. Absent: "
        "only a part marked all over is judged.",
    )
    gauge_angle_error_limit_arcsec: NonNegativeArcsec | None = Field(
        None, description="Largest error ± of the gauge's own included angle."
    )


#: The means of measuring, by the fields of `MeansAtHandFields`.
MEANS_AT_HAND = ("rolls", "balls", "gauges", "probe", "comparator", "bluing")


class MeansAtHandFields(RequestModel):
    """The means of measuring a ground cone or face that need no set-up of their own."""

    rolls: InspectionRolls | None = Field(None, description="Pairs of rolls.")
    balls: InspectionBalls | None = Field(None, description="Balls.")
    gauges: InspectionGauges | None = Field(
        None, description="A gauge by its depth, or two with sharp edges."
    )
    probe: InspectionProbe | None = Field(None, description="A probe of known tip.")
    comparator: InspectionComparator | None = Field(None, description="An optical comparator.")
    bluing: InspectionBluing | None = Field(None, description="A gauge and a marking film.")
