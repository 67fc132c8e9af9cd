"""Request and result of the wheel's speed."""

from typing import Annotated, Literal

from pydantic import Field

from halfangle_service.fields import FINITE, Length, LengthOut, RequestModel, ResultModel, Unit
from halfangle_service.topics.wheels.models_flank import UnitsField
from halfangle_service.trade.wheel.speed import SideVerdict, SpeedVerdict, Verdict

Rpm = Annotated[float, FINITE, Field(ge=1, le=500_000), Unit("per_minute")]
MetresPerSecond = Annotated[float, FINITE, Field(ge=0.01, le=500), Unit("metre_per_second")]
FeetPerMinute = Annotated[float, FINITE, Field(ge=1, le=100_000), Unit("foot_per_minute")]
RpmOut = Annotated[float, Unit("per_minute")]
MetresPerSecondOut = Annotated[float, Unit("metre_per_second")]
FeetPerMinuteOut = Annotated[float, Unit("foot_per_minute")]

WheelType = Literal[
    "1 straight",
    "2 cylinder",
    "5 recessed one side",
    "6 straight cup",
    "7 recessed both sides",
    "11 flaring cup",
    "12 dish",
    "13 saucer",
]


class WheelSpeedRequest(RequestModel):
    """A wheel, how fast it turns, and what is marked on it."""

    units: UnitsField
    wheel_diameter: Length = Field(
        description="Diameter of the wheel now, in `units`.", examples=[7.0]
    )
    rpm: Rpm | None = Field(
        None,
        description="Spindle speed, per minute. This or one of the surface speeds.",
        examples=[3450.0],
    )
    surface_speed_m_per_s: MetresPerSecond | None = Field(
        None, description="Surface speed in m/s, to find the spindle speed for it."
    )
    surface_speed_ft_per_min: FeetPerMinute | None = Field(
        None, description="Surface speed in ft/min, to find the spindle speed for it."
    )
    new_diameter: Length | None = Field(
        None,
        description="Diameter of the wheel when new, in `units`, for which its marks hold. Absent: "
        "the diameter now is taken as new.",
    )
    worn_diameter: Length | None = Field(
        None, description="Diameter that the wheel will wear to, in `units`.", examples=[6.0]
    )
    marked_rpm: Rpm | None = Field(
        None, description="Highest speed marked on the wheel, per minute.", examples=[3600.0]
    )
    marked_m_per_s: MetresPerSecond | None = Field(
        None, description="Highest surface speed marked on the wheel, in m/s."
    )
    marked_ft_per_min: FeetPerMinute | None = Field(
        None, description="Highest surface speed marked on the wheel, in ft/min."
    )
    machine_max_rpm: Rpm | None = Field(
        None, description="Highest spindle speed marked on the machine, per minute."
    )
    wheel_type: WheelType | None = Field(
        None,
        description="Type of the wheel by its number in ISO 525 (from memory). Absent: the verdict "
        "is `unknown`.",
    )
    grinding_side: bool = Field(
        False, strict=True, description="Whether the wheel's side is to grind."
    )
    rated_for_side: bool | None = Field(
        None,
        strict=True,
        description="Whether wheel and maker state that its side may grind. Absent where it is not "
        "known.",
    )
    flange_diameter: Length | None = Field(
        None, description="Diameter of the flanges, in `units`.", examples=[2.5]
    )


class WheelSpeedLimit(ResultModel):
    """One limit of the spindle's speed."""

    name: str = Field(description="The request's field that it comes from.")
    rpm: RpmOut = Field(description="Highest spindle speed that it allows.")
    share_percent: Annotated[float, Unit("percent")] = Field(
        description="Spindle speed as a share of it."
    )
    exceeded: bool = Field(description="True where the spindle speed is over it.")


class WornWheelSpeed(ResultModel):
    """The same wheel worn down."""

    diameter: LengthOut = Field(description="Worn diameter.")
    surface_speed_m_per_s: MetresPerSecondOut = Field(
        description="Surface speed at the same spindle speed."
    )
    surface_speed_ft_per_min: FeetPerMinuteOut = Field(description="The same in ft/min.")
    loss_percent: Annotated[float, Unit("percent")] = Field(
        description="Surface speed lost by wear."
    )
    rpm_to_restore: RpmOut | None = Field(
        description="Spindle speed that would bring the surface speed back; absent where a limit "
        "forbids it, or where the wheel bears no mark."
    )
    why_not: str | None = Field(description="Why it is absent.")


class WheelStartCheck(ResultModel):
    """A usual check before the wheel is started."""

    what: str = Field(description="What to do.")
    source: str = Field(description="Where it comes from.")
    standing: Literal["published", "from-memory"] = Field(description="How it is had.")


class WheelSpeedResult(ResultModel):
    """Speed, limits, and what can be said of them."""

    verdict: Verdict = Field(
        description="`stop`: do not run it. `unknown`: marks, type or rating are missing, so "
        "nothing can be said. `no objection found`: what was stated speaks not against it, which "
        "is less than a permission."
    )
    speed_verdict: SpeedVerdict = Field(description="The speed against every mark stated.")
    side_verdict: SideVerdict = Field(description="The side against its rating.")
    missing: list[str] = Field(description="Fields without which the verdict stays unknown.")
    rpm: RpmOut = Field(description="Spindle speed.")
    surface_speed_m_per_s: MetresPerSecondOut = Field(description="Surface speed in m/s.")
    surface_speed_ft_per_min: FeetPerMinuteOut = Field(description="Surface speed in ft/min.")
    limits: list[WheelSpeedLimit] = Field(description="Every limit stated.")
    largest_rpm: RpmOut | None = Field(
        description="Highest spindle speed that no limit forbids; absent without a mark on the "
        "wheel."
    )
    worn: WornWheelSpeed | None = Field(description="The wheel worn; absent without its diameter.")
    before_starting: list[WheelStartCheck] = Field(description="Usual checks before starting.")
