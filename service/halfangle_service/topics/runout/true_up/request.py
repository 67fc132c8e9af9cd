"""What is asked of a part to be tapped true."""

from pydantic import Field

from halfangle_service.fields import Length, NonNegativeLength, RequestModel, SignedLength
from halfangle_service.fields.drawings.asked import DrawnFields
from halfangle_service.topics.runout.readings import (
    RunoutIndicatorFields,
    RunoutReading,
    RunoutReadingsFields,
)
from halfangle_service.trade.runout.true_up import TapKind


class RunoutTrueUpSection(RunoutReadingsFields):
    """One section as read.

    The slope is that of a cone indicated square to its surface; without one the indicator is square
    to the axis.
    """

    readings: list[RunoutReading] = Field(
        min_length=3, max_length=180, description="Readings at any angles, each angle once."
    )
    station: SignedLength = Field(
        description="Distance along the axis, in `units`; of a cone where the indicator senses its "
        "axis (`sensed_station_from_apex` of runout.indicate)."
    )


class RunoutTapPlace(RequestModel):
    """Where the work can be tapped, and how it then moves."""

    kind: TapKind = Field(
        description="`swing`: it turns about `pivot_station`; `slide`: it moves whole.",
        examples=["swing"],
    )
    station: SignedLength = Field(description="Where it is tapped, in `units`.")
    pivot_station: SignedLength | None = Field(
        None,
        description="Station about which the work swings, such as where it is held, in `units`; of "
        "a swing only.",
    )


class RunoutTrueUpRequest(RunoutIndicatorFields, DrawnFields):
    """Readings at two sections, the places to tap in their order, and where it has to run true."""

    near: RunoutTrueUpSection = Field(description="Section near the holding.")
    far: RunoutTrueUpSection = Field(description="Section far from the holding.")
    tap_places: list[RunoutTapPlace] = Field(
        min_length=1,
        max_length=2,
        description="Where the work can be tapped, in the order of the taps. Two bring the whole "
        "axis true; one alone only the first of `stations`.",
    )
    stations: list[SignedLength] = Field(
        min_length=1, max_length=100, description="Stations wanted, such as the point."
    )
    limit_tir: Length | None = Field(
        None,
        description="TIR allowed at `stations`, square to the axis, in `units`: where it is kept "
        "already nothing is tapped.",
        examples=[0.0002],
    )
    tap_error_limit: NonNegativeLength | None = Field(
        None,
        description="How far a tap may end from where it should, ± at the place tapped and alike "
        "in every direction, in `units`; not stated where absent.",
        examples=[0.00005],
    )
