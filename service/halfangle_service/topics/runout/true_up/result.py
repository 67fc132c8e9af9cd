"""What is answered of a part to be tapped true."""

from pydantic import Field

from halfangle_service.fields import ArcsecOut, Direction, LengthOut, ResultModel
from halfangle_service.fields.drawings.asked import DrawnResult
from halfangle_service.fields.estimate import DirectionEstimate, LengthEstimate
from halfangle_service.topics.runout.indicate import RunoutFormHarmonic
from halfangle_service.trade.runout.true_up import TapKind
from halfangle_service.trade.uncertainty import Forecast, Verdict


class RunoutSectionRead(ResultModel):
    """What was found at a section, as `runout.indicate` finds it."""

    station: LengthOut = Field(description="The station.")
    eccentricity: LengthEstimate = Field(
        description="Offset of the section's center from the axis, with its uncertainty by "
        "rounding or by scatter, and by form that was not fitted."
    )
    tir_from_eccentricity: LengthOut = Field(description="Twice the eccentricity.")
    high_spot: DirectionEstimate | None = Field(
        description="Angle at which the eccentricity reads highest; null where there is none."
    )
    tir_of_readings: LengthOut = Field(
        description="Highest less lowest reading, square to the surface."
    )
    form: list[RunoutFormHarmonic] = Field(description="Ovality and lobes; tapping leaves them.")
    tir_left_after_tapping: LengthOut | None = Field(
        description="Highest less lowest of the readings, square to the axis, less eccentricity: "
        "no tap removes it. Null of three readings."
    )


class RunoutAfterTap(ResultModel):
    """What a section should read once a tap is made; past its uncertainty, something else moved."""

    tir: LengthOut = Field(description="TIR by eccentricity.")
    high_spot: Direction | None = Field(description="Its high spot; null where nothing runs out.")
    indicator_change: LengthOut = Field(
        description="Change of the reading by this tap with the side to tap from under the "
        "indicator: a shaft goes away from it and reads less, a bore's wall comes nearer and reads "
        "more, unless the section lies beyond the pivot."
    )
    expected_readings: list[LengthOut] = Field(
        description="Reading to expect at each angle sent, in that order, the indicator's zero "
        "left as it was; form included."
    )
    tir_of_readings: LengthOut = Field(
        description="Highest less lowest of these, square to the surface."
    )


class RunoutTap(ResultModel):
    """One tap, in its turn."""

    kind: TapKind = Field(description="Swing about the pivot, or slide whole.")
    station: LengthOut = Field(description="Where to tap.")
    pivot_station: LengthOut | None = Field(
        description="Station about which the work swings; null of a slide."
    )
    leave_it: bool = Field(
        description="True where there is nothing to tap: the movement is within its uncertainty, "
        "or the limit is kept already. What follows then holds without this tap."
    )
    tap_from: Direction | None = Field(
        description="Side to tap from, toward the axis, on the part's own angles; null where "
        "nothing has to move."
    )
    tap_distance: LengthEstimate = Field(
        description="How far the axis has to move at the place tapped."
    )
    near: RunoutAfterTap = Field(description="Near section after it.")
    far: RunoutAfterTap = Field(description="Far section after it.")


class RunoutTrueUpAtStation(ResultModel):
    """Runout of the axis at one station, before and after."""

    station: LengthOut = Field(description="The station.")
    tir: LengthEstimate = Field(description="TIR by eccentricity there now, as `runout.axis` has.")
    high_spot: DirectionEstimate | None = Field(
        description="Angle at which the same surface would read highest now."
    )
    verdict: Verdict | None = Field(
        description="Whether the limit is kept now, at 95 and 5 of 100; null without a limit."
    )
    tir_after: LengthEstimate = Field(
        description="TIR by eccentricity to expect after the taps; what is left by the readings' "
        "own uncertainty and by tapping. Form is not in it."
    )
    forecast: Forecast | None = Field(
        description="Whether the taps keep the limit, at 95 and 5 of 100; never `holds` with "
        "something not stated. Null without a limit."
    )


class RunoutTrueUpResult(DrawnResult):
    """The taps in order, with what to expect after each."""

    near: RunoutSectionRead = Field(description="Near section as read.")
    far: RunoutSectionRead = Field(description="Far section as read.")
    tilt_arcsec: ArcsecOut = Field(description="Angle between the work's axis and the spindle's.")
    leave_it: bool = Field(description="True where no tap is to be made.")
    taps: list[RunoutTap] = Field(description="In the order of `tap_places`.")
    at_stations: list[RunoutTrueUpAtStation] = Field(description="In the order sent.")
