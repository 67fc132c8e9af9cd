"""Requests and results of compound (two-axis) sine plates."""

from typing import Annotated, Literal

from pydantic import Field

from halfangle_service.fields import (
    Angle,
    AngleInput,
    ArcsecOut,
    CountOut,
    LengthOut,
    NumberOut,
    RequestModel,
    ResultModel,
    SignedLength,
    Unit,
    UnitsField,
)
from halfangle_service.fields.blocks import BlockSupplyFields
from halfangle_service.fields.plates import (
    ArcsecPerStep,
    CenterDistance,
    ReachField,
    ResolutionField,
)
from halfangle_service.topics.sine.models_stacks import MaxBlocks
from halfangle_service.trade.sine.compound import BaseAxis, Frame

_Slope = Annotated[float, AngleInput(gt=-90, lt=90)]
_Component = Annotated[float, Field(strict=True, allow_inf_nan=False, ge=-1e6, le=1e6), Unit("1")]
BaseAxisField = Annotated[
    BaseAxis,
    Field(
        description="Axis of the machine along which the hinge of the base plate lies: `x` (left "
        "to right; the base raises the back or the front) or `y` (front to back; the base raises "
        "the right or the left). The upper plate's hinge lies along the other. Always required: "
        "the same two stacks in the other order give another surface."
    ),
]


class SineProjectedAngles(RequestModel):
    """A surface by the two angles that its views show."""

    kind: Literal["projected-angles"]
    x_angle: _Slope = Field(
        description="Angle in the front view, in degrees: positive where the surface rises to the "
        "right (+X).",
        examples=[30.0],
    )
    y_angle: _Slope = Field(
        description="Angle in the side view, in degrees: positive where the surface rises to the "
        "back (+Y).",
        examples=[30.0],
    )


class SineTrueTilt(RequestModel):
    """A surface by its steepest tilt, and the direction in plan in which it rises."""

    kind: Literal["true-tilt"]
    tilt: Annotated[float, AngleInput(ge=0, lt=90)] = Field(
        description="Angle between the surface and the horizontal, in degrees.", examples=[25.0]
    )
    direction: Annotated[float, AngleInput(ge=-360, le=360)] = Field(
        description="Direction in plan in which the surface rises, in degrees from +X (right) "
        "toward +Y (back).",
        examples=[37.0],
    )


class SineNormal(RequestModel):
    """A surface by a vector that stands square on it, out of the work; any length."""

    kind: Literal["normal"]
    x: _Component = Field(description="Component to the right.", examples=[-0.5])
    y: _Component = Field(description="Component to the back.", examples=[-0.5])
    z: _Component = Field(description="Component upward; greater than 0.", examples=[1.0])


class SineCompoundRequest(BlockSupplyFields):
    """A compound sine plate, a surface as its drawing gives it, and the set for both stacks.

    Without `set`, `sizes` and `box` heights alone are given.
    """

    units: UnitsField
    base_center_distance: CenterDistance
    top_center_distance: CenterDistance
    base_axis: BaseAxisField
    frame: Frame = Field(
        description="Whose views the orientation is given in. `part`: the part's own, lying flat; "
        "the plate shall bring that surface level under the wheel. `machine`: the machine's; the "
        "upper plate's face itself shall stand with these angles. Always required: at 30/30 the "
        "wrong one is 4.58° out."
    )
    orientation: SineProjectedAngles | SineTrueTilt | SineNormal = Field(
        description="The surface.", discriminator="kind"
    )
    base_step: SignedLength = Field(
        0.0, description="Stack under the base plate's roll at which it stands at zero."
    )
    top_step: SignedLength = Field(
        0.0, description="Stack under the upper plate's roll at which it stands at zero."
    )
    base_largest_angle: ReachField = None
    top_largest_angle: ReachField = None
    resolution: ResolutionField = None
    max_blocks: MaxBlocks = Field(5, description="Most blocks in each of the two stacks.")


class SineHingeSetting(ResultModel):
    """The setting of one plate of a compound plate."""

    plate: Literal["base", "upper"] = Field(description="Which plate.")
    hinge_axis: BaseAxis = Field(description="Axis along which its hinge lies.")
    angle: Angle = Field(
        description="Hinge angle, signed: positive raises the right (hinge along Y) or the back "
        "(hinge along X)."
    )
    raised_side: Literal["right", "left", "back", "front", "neither"] = Field(
        description="Side whose roll stands on the stack."
    )
    height: LengthOut = Field(description="Stack under the raised roll.")
    height_to_set: LengthOut = Field(description="The same, rounded to the resolution.")
    arcsec_per_step: ArcsecPerStep
    instruction: str = Field(description="What to do, in plain words.")


class SineCompoundStacks(ResultModel):
    """The stacks of both plates from one set: they stand at once, so no block is in both."""

    base: list[LengthOut] = Field(
        description="Nominal sizes of the blocks under the base plate's roll, largest first; empty "
        "where it stays at zero."
    )
    upper: list[LengthOut] = Field(description="The same under the upper plate's roll.")
    base_height: LengthOut = Field(description="Height of the base plate's stack.")
    upper_height: LengthOut = Field(description="Height of the upper plate's stack.")
    count: CountOut = Field(description="Blocks in both.")
    proved: bool = Field(
        description="No two stacks of these heights that stand at once have fewer blocks."
    )
    as_built_arcsec: ArcsecOut = Field(
        description="Angle between the surface wanted and the one that these stacks give."
    )


class SineVector(ResultModel):
    """A unit vector; X right, Y back, Z up."""

    x: NumberOut = Field(description="Component to the right.")
    y: NumberOut = Field(description="Component to the back.")
    z: NumberOut = Field(description="Component upward.")


class SineOrientation(ResultModel):
    """One surface, in every way that a drawing may give it."""

    normal: SineVector = Field(description="Outward unit normal.")
    x_angle: Angle = Field(description="Rise to the right in the front view.")
    y_angle: Angle = Field(description="Rise to the back in the side view.")
    tilt: Angle = Field(description="True (steepest) tilt.")
    direction: Angle = Field(
        description="Direction in plan in which it rises, 0 to 360° from +X toward +Y; 0 where it "
        "is level."
    )


class SineEdgeTurns(ResultModel):
    """How far the part's edges turn in plan when the plate is set; positive from +X toward +Y."""

    x_edge: Angle = Field(description="Turn of an edge that lay along X.")
    y_edge: Angle = Field(description="Turn of an edge that lay along Y.")


class SineCompoundCheck(ResultModel):
    """The result, checked by rotating the surface's normal through both hinges."""

    residual_arcsec: ArcsecOut = Field(
        description="Angle between the surface's normal after both rotations and where it should "
        "point; rounding of the arithmetic only."
    )
    as_set_arcsec: ArcsecOut = Field(description="The same with the stacks rounded to be built.")
    wrong_frame: Angle = Field(
        description="How far out the surface would be had the angles been taken in the other frame."
    )
    uncorrected: Angle = Field(
        description="How far out it would be had both views' angles been set on the hinges as they "
        "stand."
    )


class SineCompoundResult(ResultModel):
    """Both settings of a compound plate."""

    base: SineHingeSetting = Field(description="The base plate.")
    upper: SineHingeSetting = Field(description="The upper plate, riding on the base plate.")
    order: str = Field(description="The order of the axes, in plain words.")
    surface: SineOrientation = Field(description="The surface as it was read, in the frame stated.")
    edge_turns: SineEdgeTurns = Field(description="How far the part's edges turn in plan.")
    stacks: SineCompoundStacks | None = Field(
        description="Both stacks from the set given; null where none was."
    )
    check: SineCompoundCheck = Field(description="The check.")
    conventions: list[str] = Field(description="The sign conventions, in plain words.")


class SineCompoundAnglesRequest(RequestModel):
    """The stacks under both plates of a compound plate."""

    units: UnitsField
    base_center_distance: CenterDistance
    top_center_distance: CenterDistance
    base_axis: BaseAxisField
    base_height: SignedLength = Field(
        description="Stack under the base plate's raised roll, in `units`: positive under the "
        "right or back roll, negative under the left or front one.",
        examples=[-2.2360679775],
    )
    top_height: SignedLength = Field(
        description="Stack under the upper plate's raised roll, signed in the same way.",
        examples=[-2.5],
    )
    base_step: SignedLength = Field(
        0.0, description="Stack under the base plate's roll at which it stands at zero."
    )
    top_step: SignedLength = Field(
        0.0, description="Stack under the upper plate's roll at which it stands at zero."
    )


class SineCompoundAnglesResult(ResultModel):
    """What two stacks set."""

    base_angle: Angle = Field(description="Hinge angle of the base plate, signed.")
    top_angle: Angle = Field(description="Hinge angle of the upper plate, signed.")
    part: SineOrientation = Field(
        description="The surface of the part, in the part's own views, that is level now."
    )
    machine: SineOrientation = Field(
        description="The upper plate's face as it stands in the machine's views."
    )
    edge_turns: SineEdgeTurns = Field(description="How far the part's edges turn in plan.")
