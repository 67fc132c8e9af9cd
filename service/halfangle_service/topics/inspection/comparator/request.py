"""Points picked on a profile: what is asked."""

from typing import Annotated, Literal

from pydantic import Field

from halfangle_service.fields import (
    FINITE,
    AngleInput,
    Arcsec,
    NonNegativeArcsec,
    NonNegativeLength,
    RequestModel,
    SignedLength,
    Unit,
    UnitsField,
)
from halfangle_service.fields.base import Rule
from halfangle_service.fields.estimate import DECISION_RULE, DecisionRuleField
from halfangle_service.topics.inspection.overlay import Magnification, ProfileOverlay

ComparedQuantity = Literal["included-angle", "half-angle", "flank-angle"]
#: The second line, what its angle to the flank is, and the fields that say what it should be.
AGAINST: dict[str, tuple[ComparedQuantity, str]] = {
    "other_flank": ("included-angle", "included_angle"),
    "axis_line": ("half-angle", "half_angle"),
    "base_line": ("flank-angle", "flank_angle"),
}
_FEWEST, _MOST = 3, 200


class PickedPoint(RequestModel):
    """One point picked on the profile."""

    x: SignedLength = Field(description="Coordinate to the right.", examples=[0.1])
    y: SignedLength = Field(description="Coordinate upward.", examples=[0.2])


Flank = Annotated[list[PickedPoint], Field(min_length=_FEWEST, max_length=_MOST)]
Datum = Annotated[list[PickedPoint], Field(min_length=2, max_length=_MOST)]


class InspectionComparatorRequest(RequestModel):
    """Points picked on a flank, and on what its angle is measured against."""

    rules = (
        Rule("one-of", tuple(AGAINST)),
        Rule("all-or-none", ("included_angle", "included_angle_tolerance_arcsec")),
        Rule("all-or-none", ("half_angle", "half_angle_tolerance_arcsec")),
        Rule("all-or-none", ("flank_angle", "flank_angle_tolerance_arcsec")),
    )

    units: UnitsField
    flank: Flank = Field(
        description="Points along one flank, from end to end, as read at the part; at the screen "
        "where `magnification` is sent."
    )
    other_flank: Flank | None = Field(
        None,
        description="Points along the opposite flank: gives the included angle.",
        examples=[[{"x": 0.1, "y": -0.058}, {"x": 0.2, "y": -0.115}, {"x": 0.3, "y": -0.173}]],
    )
    axis_line: Datum | None = Field(
        None,
        description="Points along the part's axis: gives the half angle.",
        examples=[[{"x": 0.0, "y": 0.0}, {"x": 0.5, "y": 0.0}]],
    )
    base_line: Datum | None = Field(
        None,
        description="Points along the base: gives the flank's angle to it.",
        examples=[[{"x": 0.0, "y": 0.0}, {"x": 0.5, "y": 0.0}]],
    )
    magnification: Magnification | None = Field(
        None, description="Magnification of a screen at which all points were read, such as 20."
    )
    picking_standard_uncertainty: NonNegativeLength | None = Field(
        None,
        description="Standard uncertainty of one picked point square to its line, at the part, in "
        "`units`. Not stated, it is judged by what the lines leave of the points; so it is where "
        "they scatter more than was stated explains.",
        examples=[0.0001],
    )
    magnification_difference_limit_percent: (
        Annotated[float, FINITE, Field(ge=0, le=10), Unit("percent")] | None
    ) = Field(
        None,
        description="Limit ± of the difference of the magnification, or of the scales, along x and "
        "y, in percent; alike along both it turns no angle.",
        examples=[0.02],
    )
    instrument_angle_error_limit_arcsec: NonNegativeArcsec | None = Field(
        None,
        description="Largest error ± of the comparator in an angle by itself, in arc-seconds, such "
        "as its axes out of square.",
        examples=[20],
    )
    included_angle: Annotated[float, AngleInput(gt=0.01, lt=179)] | None = Field(
        None, description="Included angle wanted, with its tolerance ±.", examples=[60]
    )
    included_angle_tolerance_arcsec: Arcsec | None = Field(
        None, description="Tolerance ± of the included angle, in arc-seconds.", examples=[120]
    )
    half_angle: Annotated[float, AngleInput(gt=0.005, lt=89.5)] | None = Field(
        None, description="Half angle wanted, with its tolerance ±."
    )
    half_angle_tolerance_arcsec: Arcsec | None = Field(
        None, description="Tolerance ± of the half angle, in arc-seconds."
    )
    flank_angle: Annotated[float, AngleInput(gt=0, lt=90)] | None = Field(
        None, description="Angle of the flank to the base that is wanted, with its tolerance ±."
    )
    flank_angle_tolerance_arcsec: Arcsec | None = Field(
        None, description="Tolerance ± of the angle to the base, in arc-seconds."
    )
    decision_rule: DecisionRuleField = DECISION_RULE
    overlay: ProfileOverlay | None = Field(
        None,
        description="The profile wanted, to be drawn with the picked points on it, apex on apex "
        "and axis on axis; of two flanks, or of a flank and the axis.",
    )
