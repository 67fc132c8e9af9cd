"""What is answered: the change, the deviation to expect after it, and the likely causes."""

from typing import Literal

from pydantic import Field

from halfangle_service.fields import (
    Angle,
    ArcsecOut,
    CountOut,
    Direction,
    LengthOut,
    ResultModel,
)
from halfangle_service.fields.estimate import ArcsecEstimate, LengthEstimate, NotStated
from halfangle_service.trade.correction.causes import Evidence
from halfangle_service.trade.correction.slips import BlockSlipName, WholeSlipName
from halfangle_service.trade.sine.correction import Roll
from halfangle_service.trade.stacks.mistakes import Likeness
from halfangle_service.trade.tables.correction.causes import CauseName
from halfangle_service.trade.tables.loader import Standing
from halfangle_service.trade.uncertainty import Forecast

Sense = Literal["larger", "smaller", "alike"]
SettingOf = Literal["plate", "base", "upper", "dresser", "swivel"]


class CorrectionStack(ResultModel):
    """The stack under one roll: what comes out, what goes in, and what it is then."""

    roll: Roll = Field(description="Roll that it stands under.")
    remove: list[LengthOut] = Field(description="Blocks to take out, largest first.")
    add: list[LengthOut] = Field(description="Blocks to put in, largest first.")
    blocks: list[LengthOut] = Field(description="The new stack, largest first.")
    total: LengthOut = Field(description="Its height.")


class CorrectionHeight(ResultModel):
    """The change of a sine setting."""

    height_now: LengthOut = Field(description="Difference of the stacks as they stand.")
    height_change: LengthOut = Field(description="Change of it: positive to add under the high.")
    new_height: LengthOut = Field(description="Difference of the stacks to build, exact.")
    stacks: list[CorrectionStack] = Field(
        description="The new stacks, the high roll's first; empty where no blocks were named."
    )


class CorrectionScale(ResultModel):
    """The change of a scale's setting."""

    scale_reading_now: Angle = Field(description="Reading as it stands.")
    turn_arcsec: ArcsecOut = Field(
        description="How far to turn it, exact: positive to a larger reading."
    )
    scale_reading: Angle = Field(
        description="Reading to set: the nearest graduation where that was stated, else exact."
    )
    indicator_movement: LengthOut | None = Field(
        description="How far an indicator at `scale_radius` moves by that turn, along the chord: "
        "so it is set exactly, whatever the graduation. Null without the radius."
    )


class CorrectionSetting(ResultModel):
    """The change of one setting; a compound plate has two."""

    setting: SettingOf = Field(description="Which setting.")
    angle_error_arcsec: ArcsecEstimate = Field(
        description="Its angle as the part shows it, less the one wanted; of a dresser set from "
        "the wheel's side, or a plate with the work turned a quarter, the opposite of the part's."
    )
    leave_it: bool | None = Field(
        description="True where that is no more than its uncertainty: leave it. Null where the "
        "uncertainty was not stated, or only in part and the rest may be as large."
    )
    height: CorrectionHeight | None = Field(
        description="The change of stacks; null for a scale, and where it is left."
    )
    scale: CorrectionScale | None = Field(
        description="The change of a scale's reading; null for stacks, and where it is left."
    )
    expected_error_arcsec: ArcsecEstimate = Field(
        description="Its angle less the one wanted, to expect of the next part: what the blocks or "
        "the graduation leave, with the measurement's uncertainty and, where it is changed, the "
        "setting's own."
    )


class CorrectionSeats(ResultModel):
    """Socket told from part by re-seating, as `runout.reversal` does; what to do about it."""

    socket_tir: LengthEstimate = Field(description="TIR that stays on the spindle.")
    socket_off_toward: Direction | None = Field(
        description="Direction in which the socket's axis lies off; null where it runs true."
    )
    part_tir: LengthEstimate = Field(description="TIR that turns with the work.")
    part_off_toward: Direction | None = Field(
        description="Direction in which the work's axis lies off, at its first clocking."
    )
    best_clocking: Direction | None = Field(
        description="Turn the work by so much from its first clocking; null where any is as good."
    )
    best_clocking_tir: LengthOut = Field(description="TIR to expect there.")


class CorrectionSlip(ResultModel):
    """A single mistake in setting that explains what was measured within its uncertainty."""

    slip: BlockSlipName | WholeSlipName = Field(description="What went wrong.")
    cause: CauseName = Field(
        description="The cause that it is; its check in `causes` tells it apart."
    )
    words: str = Field(description="The mistake in plain words.")
    setting: SettingOf | None = Field(
        description="Setting that a block is wrong in; null where the whole setting is."
    )
    roll: Roll | None = Field(
        description="Roll that its stack stands under; null of a compound plate, whose stacks have "
        "one each, and where the whole setting is wrong."
    )
    meant: LengthOut | None = Field(
        description="Block that belongs there; of blocks exchanged the one of the first stack."
    )
    wrung: LengthOut | None = Field(
        description="Block wrung there; of blocks exchanged the one of the second stack."
    )
    likeness: Likeness | None = Field(
        description="How the one block is taken for the other; null of a whole setting."
    )
    slip_errors_arcsec: list[ArcsecOut] = Field(
        description="Error that it makes: of the half angle or the face, or of a compound face in "
        "the front view and the side view."
    )
    unexplained_arcsec: list[ArcsecOut] = Field(description="What was measured less that.")
    right_heights: list[LengthOut] = Field(
        description="Difference of stacks that sets what is wanted, of a compound plate the stack "
        "of each plate; empty of a scale."
    )


class CorrectionCause(ResultModel):
    """A likely cause, and the check that tells it apart."""

    cause: CauseName = Field(description="The cause.")
    evidence: Evidence = Field(
        description="`for`: something seen speaks for it and nothing against; `against`: something "
        "speaks against it; `none`: nothing stated says anything of it."
    )
    for_it: list[str] = Field(description="What speaks for it: observations, by their fields.")
    against_it: list[str] = Field(
        description="What speaks against it; `sense` where it turns the angle the other way only."
    )
    observation: str = Field(
        description="Observation, or reading, that tells it from the others, by its field."
    )
    check: str = Field(description="The check that tells it apart, in plain words.")
    mend: str = Field(description="What to do where it is this.")
    source: str = Field(description="Where that comes from.")
    standing: Standing = Field(description="How it is had.")


class JobsCorrectionResult(ResultModel):
    """What to change, what to expect then, and what it may have been."""

    sense: Sense | None = Field(
        description="Whether the half angle, or the face's, came out larger or smaller than "
        "wanted, by what was measured; null of a compound face and of a runout."
    )
    angle_error_arcsec: ArcsecEstimate | None = Field(
        description="Half angle, or the face's, as measured less the one wanted; null where only "
        "its sense is known, of a compound face and of a runout."
    )
    included_angle_error_arcsec: ArcsecEstimate | None = Field(
        description="The same of a cone's included angle: twice as much; else null."
    )
    leave_it: bool | None = Field(
        description="True where nothing is to be changed: what was measured is within its "
        "uncertainty. Null where that cannot be said."
    )
    settings: list[CorrectionSetting] = Field(
        description="The change of each setting; empty without a set-up, of a runout, where only "
        "the sense is known, and where a mistake in the whole setting explains it: then set anew."
    )
    slips: list[CorrectionSlip] | None = Field(
        description="Single mistakes in setting that explain what was measured within its "
        "uncertainty, the most plausible first, no more than eight; null where that uncertainty "
        "was not stated, without a set-up and of a runout."
    )
    slips_found: CountOut | None = Field(description="How many there are; null likewise.")
    seats: CorrectionSeats | None = Field(description="Of a runout read twice; else null.")
    expected_included_angle_error_arcsec: ArcsecEstimate | None = Field(
        description="Included angle less the one wanted, to expect of the next part; null but of a "
        "cone with a setting."
    )
    forecast: Forecast | None = Field(
        description="Whether the next part will keep the tolerance; null without one."
    )
    causes: list[CorrectionCause] = Field(description="Likely causes, the likeliest first.")
    not_stated: NotStated = Field(
        description="Observations that were not stated and would tell the causes apart."
    )
