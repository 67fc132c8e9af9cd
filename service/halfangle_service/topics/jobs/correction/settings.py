"""The change of one setting: stacks under a plate or a dresser, or a scale."""

import math
from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass

from halfangle_service.errors import Disagreement, Unreachable
from halfangle_service.fields import (
    ARCSEC_PER_RADIAN,
    Units,
    angle_from_radians,
    from_tenth_nm,
    to_tenth_nm,
)
from halfangle_service.fields.estimate import ArcsecEstimate, estimate
from halfangle_service.fields.plates import require_lift
from halfangle_service.fields.supply import Supply, take_stack_out
from halfangle_service.topics.jobs.correction.measured import within_uncertainty
from halfangle_service.topics.jobs.correction.request import (
    CorrectionScaleDresser,
    CorrectionSwivel,
)
from halfangle_service.topics.jobs.correction.result import (
    CorrectionHeight,
    CorrectionScale,
    CorrectionSetting,
    CorrectionStack,
    SettingOf,
)
from halfangle_service.trade.decimals import tidy
from halfangle_service.trade.sine.correction import (
    HeightCorrection,
    StackChange,
    stacks_for_difference,
)
from halfangle_service.trade.sine.geometry import angle_for_height, height_for_angle
from halfangle_service.trade.uncertainty import Budget, Contribution
from halfangle_service.trade.wheel.dresser import round_to_graduation
from halfangle_service.trade.wording import figure, plain

#: Field that states how far a setting made anew may be off.
SETTING_ERROR = "setting_error_limit_arcsec"
#: Stacks that are off by more than this are no wrong block: the work lay otherwise on them.
LARGEST_MISMATCH_RAD = math.radians(1.0)


@dataclass(frozen=True, slots=True)
class Shown:
    """One setting as the part shows it: its angle wanted and as measured, in radians.

    `error_arcsec` is the second less the first, `budget` that of the angle as measured, `own_limit`
    how far a setting made anew may be off; all in arc-seconds of that angle.
    """

    setting: SettingOf
    wanted_rad: float
    measured_rad: float
    error_arcsec: float
    budget: Budget
    own_limit: float | None

    @property
    def leave_it(self) -> bool | None:
        """Whether it is no more than its uncertainty."""
        return within_uncertainty(self.error_arcsec, self.budget)

    def written(
        self,
        expected_arcsec: float,
        height: CorrectionHeight | None = None,
        scale: CorrectionScale | None = None,
    ) -> CorrectionSetting:
        """Write the change of this setting, with the error to expect after it."""
        expected = expected_of(self.budget, expected_arcsec, self.own_limit, left=self.leave_it)
        return CorrectionSetting(
            setting=self.setting,
            angle_error_arcsec=estimate(ArcsecEstimate, self.budget, self.error_arcsec),
            leave_it=self.leave_it,
            height=height,
            scale=scale,
            expected_error_arcsec=estimate(ArcsecEstimate, expected),
        )


def expected_of(
    measured: Budget, off_arcsec: float, own_limit: float | None, *, left: bool | None
) -> Budget:
    """Budget of what is to be expected: the measurement's uncertainty, and the setting's own.

    A setting that is `left` as it is has none of its own: nothing is set anew.
    """
    if left:
        return Budget(measured.contributions, off_arcsec, measured.not_stated)
    if own_limit is None:
        return Budget(measured.contributions, off_arcsec, (*measured.not_stated, SETTING_ERROR))
    own = Contribution(SETTING_ERROR, own_limit, "rectangular")
    return Budget((*measured.contributions, own), off_arcsec, measured.not_stated)


@dataclass(frozen=True, slots=True)
class Stacks:
    """A sine setting: its lengths in `units`, the stacks that stand, and the blocks to build with.

    `path` is that of the setting in the request, `high_field` and `low_field` its stacks; without
    `supply` only heights are worked out.
    """

    units: Units
    center_distance: float
    offset: float
    high: Sequence[float] | None
    low: Sequence[float] | None
    supply: Supply | None
    max_blocks: int
    path: str
    high_field: str = "blocks"
    low_field: str = "low_blocks"
    low_can_stand: bool = True

    def height_now(self, wanted_rad: float) -> float:
        """Difference of the stacks as they stand, or what the wanted angle asks for."""
        if self.high is None:
            if self.low is not None:
                raise Disagreement(
                    "A stack under the low roll says nothing without that under the high one.",
                    fields={f"{self.path}{self.high_field}": f"is needed with {self.low_field}"},
                )
            return height_for_angle(self.center_distance, wanted_rad, self.offset)
        total = sum(self.tenths(self.high)) - sum(self.tenths(self.low or ()))
        now = from_tenth_nm(total, self.units)
        require_lift(
            now - self.offset, self.center_distance, self.units, f"{self.path}{self.high_field}"
        )
        return now

    def tenths(self, blocks: Sequence[float]) -> list[int]:
        """Sizes in 0.1 nm."""
        return [to_tenth_nm(block, self.units) for block in blocks]


def height_setting(shown: Shown, stacks: Stacks) -> CorrectionSetting:
    """The change of a sine setting that mends what the part shows."""
    mended = HeightCorrection(
        stacks.center_distance,
        shown.wanted_rad,
        shown.measured_rad,
        stacks.height_now(shown.wanted_rad),
    )
    require_standing(
        angle_for_height(stacks.center_distance, mended.now - stacks.offset),
        (shown.wanted_rad, shown.measured_rad),
        f"{stacks.path}{stacks.high_field}",
    )
    if shown.leave_it:
        return shown.written(shown.error_arcsec)
    changes = () if stacks.supply is None else _changes(stacks, stacks.supply, mended.new)
    built = mended.new if not changes else from_tenth_nm(_difference(changes), stacks.units)
    left = (mended.angle_at(built) - shown.wanted_rad) * ARCSEC_PER_RADIAN
    return shown.written(left, height_of(mended, changes, stacks.units))


def require_standing(now_rad: float, angles_rad: Sequence[float], field: str) -> None:
    """Refuse stacks that set neither the angle wanted nor the one measured, or nearly so.

    Whichever blocks stand there, known or not, the work came out by what they set: else it lay
    otherwise, and the change would go the wrong way.
    """
    if all(abs(now_rad - angle) > LARGEST_MISMATCH_RAD for angle in angles_rad):
        wanted, found = (plain(math.degrees(angle)) for angle in angles_rad)
        raise Disagreement(
            f"These blocks set {plain(math.degrees(now_rad))}°; {wanted}° is wanted of them, and "
            f"the work says that they set {found}°.",
            fields={field: "should be those that it was ground on, and the set-up as it lay"},
        )


def height_of(
    mended: HeightCorrection, changes: Sequence[StackChange], units: Units
) -> CorrectionHeight:
    """Write the change of a height, with the stacks that make it."""
    return CorrectionHeight(
        height_now=mended.now,
        height_change=mended.change,
        new_height=mended.new,
        stacks=[_stack(change, units) for change in changes],
    )


def _stack(change: StackChange, units: Units) -> CorrectionStack:
    sizes = {
        name: [from_tenth_nm(size, units) for size in getattr(change, name)]
        for name in ("remove", "add", "blocks")
    }
    return CorrectionStack(roll=change.roll, total=from_tenth_nm(change.total, units), **sizes)


def _difference(changes: Sequence[StackChange]) -> int:
    return sum(c.total if c.roll == "high-roll" else -c.total for c in changes)


def _changes(stacks: Stacks, supply: Supply, new_height: float) -> tuple[StackChange, ...]:
    """New stacks for a height; refuses where these blocks build none."""
    high, low = stacks.tenths(stacks.high or ()), stacks.tenths(stacks.low or ())
    sizes = supply.box.sizes
    left = Counter(sizes)
    for blocks, field in ((high, stacks.high_field), (low, stacks.low_field)):
        take_stack_out(left, blocks, stacks.units, f"{stacks.path}{field}")
    target = new_height * to_tenth_nm(1.0, stacks.units)
    found = stacks_for_difference(
        high, low, sizes, target, stacks.max_blocks, low_can_stand=stacks.low_can_stand
    )
    if found is None:
        raise unbuildable(new_height, stacks.units, stacks.max_blocks)
    return found


def unbuildable(height: float, units: Units, max_blocks: int) -> Unreachable:
    """The refusal of a height that these blocks do not build."""
    return Unreachable(
        f"No stacks of up to {max_blocks} of these blocks make {figure(height, units)} to half a "
        "step of the set.",
        fields={"max_blocks": "should be larger, or the blocks others"},
    )


def scale_setting(
    shown: Shown, scale: CorrectionScaleDresser | CorrectionSwivel
) -> CorrectionSetting:
    """The change of a scale's reading that mends what the part shows."""
    if shown.leave_it:
        return shown.written(shown.error_arcsec)
    now_degrees = scale.scale_reading_now
    now = shown.wanted_rad if now_degrees is None else math.radians(now_degrees)
    exact = now - shown.error_arcsec / ARCSEC_PER_RADIAN
    reading = (
        exact
        if scale.graduation is None
        else round_to_graduation(exact, math.radians(scale.graduation))
    )
    radius = scale.scale_radius if isinstance(scale, CorrectionSwivel) else None
    turn = -shown.error_arcsec / ARCSEC_PER_RADIAN
    change = CorrectionScale(
        scale_reading_now=angle_from_radians(now),
        turn_arcsec=0.0 - shown.error_arcsec,
        scale_reading=angle_from_radians(reading),
        indicator_movement=None if radius is None else 2.0 * radius * math.sin(turn / 2.0),
    )
    # By an indicator it is set exactly; by the scale alone to a graduation.
    missed = 0.0 if radius is not None else reading - exact
    left = tidy(missed * ARCSEC_PER_RADIAN, reading * ARCSEC_PER_RADIAN)
    return shown.written(left, scale=change)
