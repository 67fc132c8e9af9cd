"""What the shop has for a job, as a request states it, or a profile that the service was given."""

from typing import Annotated

from pydantic import Field

from halfangle_service.fields import Length, NonNegativeArcsec, NonNegativeLength, RequestModel, Rpm
from halfangle_service.fields.base import NULL_LEFT_OUT
from halfangle_service.fields.blocks import BlockBoxFields, BlockGradeFields, GradeField
from halfangle_service.fields.clearance.set_up import ClearanceFixture
from halfangle_service.fields.compound.raised_sides import RaisedSizes
from halfangle_service.fields.plates import BaseStep, CenterDistance, ReachField
from halfangle_service.fields.set_up_errors import SetUpErrorFields
from halfangle_service.fields.wheel.ways import (
    ChooseDressedWheel,
    ChooseWheelSide,
    ChooseWorkhead,
    PlateInspectionMinutes,
    PlateSetupMinutes,
)
from halfangle_service.topics.jobs.plan.shank import Shank
from halfangle_service.topics.jobs.plan.shop.errors import (
    AdapterTir,
    PlateErrorFields,
    RunoutContributions,
    WheelFaceError,
)
from halfangle_service.topics.jobs.plan.shop.measuring import PlanMeasuring
from halfangle_service.topics.jobs.plan.shop.standing import (
    BodyWidth,
    PlanAnglePlate,
    PlanHingedBody,
    PlanWorkheadBody,
    PlanWorkHolder,
)
from halfangle_service.topics.jobs.plan.shop.wheel import PlanPlateBody, PlanWheel, PlanWheelHead
from halfangle_service.trade.clearance.assembly import Direction
from halfangle_service.trade.planning import times
from halfangle_service.trade.tables.materials.expansion import MaterialName
from halfangle_service.trade.units import Units

#: Most of one kind of equipment: each plate is tried with each set.
MOST_ALIKE = 4

EquipmentName = Annotated[
    str,
    Field(
        min_length=1,
        max_length=60,
        description="What the shop calls it; the plan names it so.",
        examples=["5 in plate"],
    ),
]


WheelDiameter = Annotated[
    Length, Field(description="Diameter of the wheel, in `units`.", examples=[7.0])
]
#: What of a wheel, and of what holds work on its base, counts for the clearance alone.
_WheelWidth = Annotated[
    Length | None,
    Field(description="Width of the wheel, in `units`.", examples=[0.5]),
]
_Head = Annotated[PlanWheelHead | None, Field(description="What is about this wheel.")]
_Holder = Annotated[PlanWorkHolder | None, Field(description="What holds block-like work on it.")]


class PlanSwivelBase(RequestModel):
    """What turns work in plan on a plate: a swivelling base, or an angle set against its rail."""

    swivel_error_limit_arcsec: NonNegativeArcsec | None = Field(
        None,
        description="Largest error ± of the angle in plan, the trueing of the work with it.",
    )


class PlanSinePlate(RequestModel):
    """A sine plate with what holds the work on it, under a flat wheel."""

    name: EquipmentName
    center_distance: CenterDistance
    base_step: BaseStep = 0.0
    largest_angle: ReachField = None
    low_roll_hinged: bool = Field(
        False, description="True where the low roll is a hinge, so that no stack goes under it."
    )
    angle_errors: Annotated[PlateErrorFields, NULL_LEFT_OUT] = Field(
        default_factory=PlateErrorFields,
        description="Errors of a set-up on it that turn the angle.",
    )
    squareness_error_limit_arcsec: NonNegativeArcsec | None = Field(
        None,
        description="Largest error ± from square of what turns the work a quarter on the plate: "
        "an angle plate, or the work's own side. Takes the place of "
        "`axis_pitch_error_limit_arcsec` there.",
    )
    swivel_base: PlanSwivelBase | None = Field(
        None, description="What turns work in plan on it. Absent where there is nothing."
    )
    tilt_direction: Direction = Field(
        "along-travel",
        description="Whether the plate tilts along the table's travel (the wheel is seen as a "
        "circle) or across it (the wheel is seen on edge).",
    )
    plate_body: PlanPlateBody | None = Field(
        None, description="Its body. Absent: no clearance over it is worked out."
    )
    work_holder: _Holder = None
    work_to_high_end: NonNegativeLength | None = Field(
        None,
        description="From the work's short end up the slope to the plate's high end.",
        examples=[1.0],
    )
    angle_plate: PlanAnglePlate | None = Field(
        None, description="What work turned a quarter stands against."
    )
    setup_minutes: PlateSetupMinutes = times.PLATE.setup
    inspection_minutes: PlateInspectionMinutes = times.PLATE.inspection


class PlanCompoundPlate(RaisedSizes):
    """A compound sine plate under a flat wheel.

    Of the base plate's errors, yaw and pitch are those of the upper plate on it; of the upper
    plate's, those of the work.
    """

    name: EquipmentName
    base_largest_angle: ReachField = None
    upper_largest_angle: ReachField = None
    base_errors: Annotated[SetUpErrorFields, NULL_LEFT_OUT] = Field(
        default_factory=SetUpErrorFields, description="Errors of the base plate's setting."
    )
    upper_errors: Annotated[SetUpErrorFields, NULL_LEFT_OUT] = Field(
        default_factory=SetUpErrorFields, description="Errors of the upper plate's setting."
    )
    wheel_face_error_limit_arcsec: WheelFaceError = None
    base_body: PlanHingedBody | None = Field(None, description="Body of the base plate.")
    upper_body: PlanHingedBody | None = Field(
        None, description="Body of the upper plate; the work lies in the middle of its top."
    )
    work_holder: _Holder = None
    setup_minutes: PlateSetupMinutes = times.PLATE.setup
    inspection_minutes: PlateInspectionMinutes = times.PLATE.inspection


class PlanBlockSet(BlockBoxFields):
    """A set of gauge blocks."""

    name: EquipmentName
    grade: GradeField = None
    block_material: MaterialName | None = Field(
        None, description="Material of the blocks. Absent: steel. A `box` says it of each block."
    )


class PlanDressedWheel(ChooseDressedWheel):
    """A wheel with a dresser for a flank."""

    name: EquipmentName
    wheel_diameter: WheelDiameter
    head: _Head = None
    work_holder: _Holder = None


class PlanWheelSide(ChooseWheelSide):
    """A wheel that may grind with its side."""

    name: EquipmentName
    wheel_diameter: WheelDiameter | None = None
    wheel_width: _WheelWidth = None
    head: _Head = None
    work_below_spindle: NonNegativeLength | None = Field(
        None,
        description="From the spindle down to the work's axis, or the middle of its face.",
        examples=[2.5],
    )
    body_width: BodyWidth | None = Field(
        None, description="Width of the spindle fixture that stands beside it."
    )


class PlanWorkhead(ChooseWorkhead):
    """A workhead swivelled by its scale, and the flat wheel beside it."""

    name: EquipmentName
    wheel_diameter: WheelDiameter
    wheel_width: _WheelWidth = None
    head: _Head = None
    workhead_body: PlanWorkheadBody | None = Field(
        None, description="The workhead's body, and how the work stands out of it."
    )


class PlanInternalSpindle(RequestModel):
    """A spindle whose wheel goes into a bore."""

    wheel_diameter: Length = Field(description="Diameter of the wheel, in `units`.", examples=[0.5])
    reach: Length = Field(
        description="How far wheel and quill go into a bore, in `units`.", examples=[3.5]
    )
    axis_offset_error_limit: NonNegativeLength | None = Field(
        None,
        description="Largest error ± sideways of the quill's axis from the bore's, at either end, "
        "in `units`; acts by its square.",
    )
    wheel_width: _WheelWidth = None
    quill_diameter: Length | None = Field(
        None, description="Diameter of the quill, in `units`.", examples=[0.35]
    )
    spindle_diameter: Length | None = Field(
        None, description="Diameter of the spindle that carries the quill.", examples=[1.5]
    )
    rpm: Rpm | None = Field(None, description="Spindle speed.", examples=[30_000])
    marked_rpm: Rpm | None = Field(
        None,
        description="Highest speed marked on the wheel for this overhang, per minute.",
        examples=[40_000],
    )


class PlanAdapter(RequestModel):
    """An adapter, collet or bushing of the fixture, by the shank that it takes."""

    name: EquipmentName
    shank: Shank = Field(description="The shank that it takes.")
    adapter_tir: AdapterTir = None


#: Fields of the equipment that list things by name.
NAMED = (
    "sine_plates",
    "compound_plates",
    "block_sets",
    "dressed_wheels",
    "wheel_sides",
    "swivelled_workheads",
    "adapters",
)


class PlanEquipment(RequestModel):
    """What the shop has; lengths in the request's `units`."""

    sine_plates: Annotated[list[PlanSinePlate], Field(max_length=MOST_ALIKE)] | None = Field(
        None, description="Sine plates and bars."
    )
    block_sets: Annotated[list[PlanBlockSet], Field(max_length=MOST_ALIKE)] | None = Field(
        None, description="Sets of gauge blocks."
    )
    compound_plates: Annotated[list[PlanCompoundPlate], Field(max_length=MOST_ALIKE)] | None = (
        Field(None, description="Compound sine plates.")
    )
    dressed_wheels: Annotated[list[PlanDressedWheel], Field(max_length=MOST_ALIKE)] | None = Field(
        None, description="Wheels on which a flank may be dressed."
    )
    wheel_sides: Annotated[list[PlanWheelSide], Field(max_length=MOST_ALIKE)] | None = Field(
        None, description="Wheels that may grind with their side."
    )
    swivelled_workheads: Annotated[list[PlanWorkhead], Field(max_length=MOST_ALIKE)] | None = Field(
        None, description="Workheads swivelled by their scale."
    )
    wheel: PlanWheel | None = Field(
        None, description="The flat wheel that grinds over the sine plates."
    )
    spin_fixture: ClearanceFixture | None = Field(
        None,
        description="The spindle fixture. Of a socket `stick_out` is to its mouth, "
        "`shank_diameter` its outside.",
    )
    internal_spindle: PlanInternalSpindle | None = Field(
        None, description="What grinds a socket. Absent where there is none."
    )
    adapters: Annotated[list[PlanAdapter], Field(max_length=40)] | None = Field(
        None, description="Adapters at hand. Absent: there is one for the shank."
    )
    runout_errors: Annotated[RunoutContributions, NULL_LEFT_OUT] = Field(
        default_factory=RunoutContributions, description="Runout that the holding adds."
    )
    measuring: Annotated[PlanMeasuring, NULL_LEFT_OUT] = Field(
        default_factory=PlanMeasuring,
        description="What the shop checks a set-up and measures a ground feature with.",
    )


def supply_fields(blocks: PlanBlockSet, units: Units) -> BlockGradeFields:
    """A set as an operation on blocks states it."""
    stated = {name: getattr(blocks, name) for name in BlockBoxFields.model_fields}
    return BlockGradeFields.model_construct(units=units, grade=blocks.grade, **stated)
