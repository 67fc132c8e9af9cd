"""Requests and results of the runout topic."""

from typing import Annotated, Literal

from pydantic import Field

from halfangle_service.fields import (
    Angle,
    AngleInput,
    ArcsecOut,
    Count,
    CountOut,
    Length,
    LengthOut,
    NonNegativeLength,
    RequestModel,
    ResultModel,
    SignedLength,
    Units,
)

Clock = Annotated[float, AngleInput(ge=-360, le=360)]


class RunoutReading(RequestModel):
    """One reading of the indicator."""

    angle: Clock = Field(
        description="Angle of the part under the indicator, in degrees.", examples=[90]
    )
    reading: SignedLength = Field(
        description="Indicator reading in `units`; more is a higher surface.", examples=[0.0004]
    )


class RunoutIndicateRequest(RequestModel):
    """Readings round one section."""

    units: Units = Field(description="Unit of every length here and in the answer.")
    readings: list[RunoutReading] = Field(
        min_length=3, max_length=720, description="Readings at any angles, each angle once."
    )
    harmonics: Annotated[int, Count(ge=1, le=15)] = Field(
        1, description="Harmonics to fit: 1 eccentricity, 2 ovality, 3 and more lobes."
    )
    resolution: Length = Field(
        description="Resolution of the indicator, in `units`.", examples=[0.0001]
    )
    tip_angle: Annotated[float, AngleInput(ge=0, le=75)] = Field(
        0.0,
        description="Angle of a lever indicator's tip to the surface, in degrees; 0 for a plunger "
        "or a tip that corrects itself.",
    )
    cone_half_angle: Annotated[float, AngleInput(ge=0, le=80)] = Field(
        0.0,
        description="Half angle of the cone indicated square to its surface, in degrees; 0 where "
        "the indicator is square to the axis.",
    )
    station_from_apex: Length | None = Field(
        None, description="Distance along the axis of the reading from the cone's apex, in `units`."
    )


class RunoutLobe(ResultModel):
    """One harmonic beyond the first."""

    order: CountOut = Field(description="Lobes a turn.")
    amplitude: LengthOut = Field(description="Amplitude, half of its own full movement.")
    direction: Angle = Field(description="Angle of its first high spot.")


class RunoutIndicateResult(ResultModel):
    """Eccentricity, what to tap, and what no tapping removes."""

    eccentricity: LengthOut = Field(description="Offset of the section's center from the axis.")
    tir_from_eccentricity: LengthOut = Field(description="Twice the eccentricity.")
    high_spot: Angle = Field(description="Direction of the eccentricity, 0 to 360 degrees.")
    tap_from: Angle = Field(description="Side to tap from, toward the axis: the high spot.")
    tap_distance: LengthOut = Field(description="How far the part has to move: the eccentricity.")
    eccentricity_uncertainty: LengthOut = Field(
        description="Standard uncertainty: the larger of the two below, since scatter holds the "
        "resolution already."
    )
    uncertainty_by_resolution: LengthOut = Field(
        description="By the indicator's resolution alone (half-width: half a step)."
    )
    uncertainty_by_scatter: LengthOut | None = Field(
        description="By the scatter of the readings about the fit; None without a spare reading."
    )
    tir_of_readings: LengthOut = Field(
        description="Highest less lowest reading, corrected for the tip, as the indicator swung."
    )
    lobes: list[RunoutLobe] = Field(description="Ovality and lobes; tapping leaves them.")
    residual_rms: LengthOut = Field(description="Root mean square of what the fit leaves.")
    tir_left_after_tapping: LengthOut = Field(
        description="Highest less lowest of the readings, square to the axis, less eccentricity."
    )
    sensed_station_from_apex: LengthOut | None = Field(
        description="Where the indicator senses the axis: z / cos² α. None without a station."
    )


class RunoutContributor(RequestModel):
    """One part of the chain that holds and turns the work."""

    name: str = Field(min_length=1, max_length=60, description="Name of the contributor.")
    tir: NonNegativeLength = Field(description="TIR at its own seat, in `units`.")
    tilt_tir: NonNegativeLength = Field(
        0.0, description="Change of its TIR over `tilt_span`, by tilt, in `units`."
    )
    tilt_span: Length = Field(1.0, description="Length over which `tilt_tir` was found.")
    distance: NonNegativeLength = Field(
        0.0, description="Distance from its seat to the station of the budget, in `units`."
    )
    can_be_mended: bool = Field(True, description="False for what has to be lived with.")


class RunoutBudgetRequest(RequestModel):
    """The chain, and the limit wanted."""

    units: Units = Field(description="Unit of every length here and in the answer.")
    contributors: list[RunoutContributor] = Field(
        min_length=1, max_length=20, description="The chain, each of unknown phase."
    )
    limit_tir: Length = Field(description="TIR wanted at the station.", examples=[0.0003])


class RunoutShare(ResultModel):
    """One contributor at the station."""

    name: str = Field(description="Name as sent.")
    tir_at_station: LengthOut = Field(description="Its own TIR at the station, worst phase.")
    rss_without_it: LengthOut = Field(description="Root sum of squares were it perfect.")


class RunoutBudgetResult(ResultModel):
    """The budget against the limit."""

    shares: list[RunoutShare] = Field(description="The contributors, in the order sent.")
    worst_case_tir: LengthOut = Field(description="All in line: the sum.")
    rss_tir: LengthOut = Field(description="Root sum of squares.")
    best_clocking_tir: LengthOut = Field(description="Least that clocking alone can reach.")
    percentile_50_tir: LengthOut = Field(description="Not passed in half of assemblies.")
    percentile_95_tir: LengthOut = Field(description="Not passed in 95 of 100 assemblies.")
    percentile_99_tir: LengthOut = Field(description="Not passed in 99 of 100 assemblies.")
    mend_first: str | None = Field(description="Largest that can be mended; None if none can.")
    reachable: bool = Field(
        description="True if what cannot be mended stays within the limit in the worst case."
    )
    verdict: Literal["holds in the worst case", "holds in 95 of 100", "does not hold"] = Field(
        description="The chain as it is against the limit."
    )


class RunoutVectorIn(RequestModel):
    """A runout found: its TIR by eccentricity and its high spot."""

    tir: NonNegativeLength = Field(description="Twice the eccentricity, in `units`.")
    high_spot: Clock = Field(description="Angle of the high spot, in degrees.")


class RunoutReversalRequest(RequestModel):
    """The same station read twice, the part turned half a turn in its socket between."""

    units: Units = Field(description="Unit of every length here and in the answer.")
    at_0: RunoutVectorIn = Field(description="Part at its first clocking; angles on the spindle.")
    at_180: RunoutVectorIn = Field(description="Part turned by 180; angles on the spindle.")


class RunoutReversalResult(ResultModel):
    """Socket and part told apart."""

    socket_tir: LengthOut = Field(description="TIR that the socket makes.")
    socket_high_spot: Angle = Field(description="Its high spot on the spindle.")
    part_tir: LengthOut = Field(description="TIR that the part makes by itself.")
    part_high_spot: Angle = Field(description="Its high spot with the part at its first clocking.")
    best_clocking: Angle = Field(description="Turn the part by so much from its first clocking.")
    best_tir: LengthOut = Field(description="TIR at the best clocking: 2·||S| − |C||.")
    worst_tir: LengthOut = Field(description="TIR at the worst clocking: 2(|S| + |C|).")


class RunoutSection(RequestModel):
    """Runout found at one section."""

    station: SignedLength = Field(description="Distance along the axis, in `units`.")
    tir: NonNegativeLength = Field(description="Twice the eccentricity, in `units`.")
    high_spot: Clock = Field(description="Angle of the high spot, in degrees.")
    eccentricity_uncertainty: NonNegativeLength = Field(
        0.0,
        description="Standard uncertainty of its eccentricity, in `units`, as runout/indicate "
        "gives it.",
    )


class RunoutAxisRequest(RequestModel):
    """Two sections, and where else the runout is wanted."""

    units: Units = Field(description="Unit of every length here and in the answer.")
    near: RunoutSection = Field(description="Section near the holding.")
    far: RunoutSection = Field(description="Section far from the holding.")
    stations: list[SignedLength] = Field(
        min_length=1, max_length=100, description="Stations wanted, such as the point."
    )
    pivot_station: SignedLength = Field(description="Station about which the work swings.")


class RunoutAtStation(ResultModel):
    """Runout of the axis at one station."""

    station: LengthOut = Field(description="The station.")
    tir: LengthOut = Field(description="TIR by eccentricity there.")
    high_spot: Angle = Field(description="Angle of its high spot.")
    tir_uncertainty: LengthOut = Field(
        description="Standard uncertainty of that TIR by those of both sections; it grows past "
        "them."
    )


class RunoutCorrection(ResultModel):
    """One correction, as a move of the axis."""

    kind: Literal["swing", "slide"] = Field(description="Swing about the pivot, or slide whole.")
    near_move: LengthOut = Field(description="How far the axis moves at the near section.")
    far_move: LengthOut = Field(description="How far the axis moves at the far section.")
    tap_from: Angle = Field(
        description="Side to tap from at the far section (at any section, for a slide)."
    )


class RunoutAxisResult(ResultModel):
    """Line of the axis, and two corrections in order."""

    tilt_arcsec: ArcsecOut = Field(description="Angle between the work's axis and the spindle's.")
    at_stations: list[RunoutAtStation] = Field(description="In the order sent.")
    corrections: list[RunoutCorrection] = Field(
        description="Swing first, since it moves both sections; then the slide takes both to zero."
    )
