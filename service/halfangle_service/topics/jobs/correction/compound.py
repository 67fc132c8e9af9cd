"""The change of both settings of a compound plate, from a surface as it was measured."""

import math
from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

import numpy as np

from halfangle_service.errors import refused_at
from halfangle_service.fields import ARCSEC_PER_RADIAN, Units, from_tenth_nm, to_tenth_nm
from halfangle_service.fields.compound.plates import plates_of
from halfangle_service.fields.plates import require_lift
from halfangle_service.fields.supply import Supply, take_stack_out
from halfangle_service.topics.jobs.correction.measured import budget_as_measured
from halfangle_service.topics.jobs.correction.request import (
    CorrectionCompoundFace,
    CorrectionCompoundPlate,
    CorrectionSurface,
)
from halfangle_service.topics.jobs.correction.result import CorrectionSetting, SettingOf
from halfangle_service.topics.jobs.correction.settings import (
    SETTING_ERROR,
    Shown,
    height_of,
    require_standing,
    unbuildable,
)
from halfangle_service.topics.jobs.correction.slips import (
    BothHinges,
    Slips,
    known_within,
    slips_of_surface,
)
from halfangle_service.trade.correction.slips import WrongHinges
from halfangle_service.trade.decimals import tidy
from halfangle_service.trade.sine.compound import (
    HingedPlate,
    Side,
    Vector,
    hinge_angles,
    normal_from_hinges,
    normal_from_slopes,
    raised_side,
    slopes_of_normal,
)
from halfangle_service.trade.sine.compound_stacks import both_stacks
from halfangle_service.trade.sine.correction import (
    HeightCorrection,
    StackChange,
    changed,
    swap_for,
)
from halfangle_service.trade.sine.geometry import angle_for_height
from halfangle_service.trade.uncertainty import (
    Budget,
    Contribution,
    Forecast,
    forecast_of,
    together,
)

#: A hinge nearer to zero than this stands without a stack: there is none to change.
LEAST_HINGE_RAD = 1e-9
_SETTINGS: tuple[SettingOf, SettingOf] = ("base", "upper")
_VIEWS = ("x_angle", "y_angle")
#: Step of the differences that give how a view acts on a hinge, in radians.
_STEP_RAD = 1e-6
_PATH = "set_up/"


@dataclass(frozen=True, slots=True)
class _Face:
    """A compound face wanted and as measured, and the plate that it was ground on.

    Angles of the hinges and of both views in radians. `acts` is how much each hinge (row) turns for
    a change of each view (column).
    """

    plate: CorrectionCompoundPlate
    hinges: tuple[HingedPlate, HingedPlate]
    wanted: tuple[float, float]
    measured: tuple[float, float]
    views: tuple[float, float]
    acts: Vector
    in_view: Budget

    def error_arcsec(self, place: int) -> float:
        """One hinge's angle as the face shows it, less the one wanted."""
        wanted, found = self.wanted[place], self.measured[place]
        return tidy((found - wanted) * ARCSEC_PER_RADIAN, wanted * ARCSEC_PER_RADIAN)

    def hinge_budget(self, place: int) -> Budget:
        """Uncertainty of one hinge's angle, by those of both views, in arc-seconds."""
        return Budget(
            tuple(
                replace(c.times(float(self.acts[place, view])), of=name)
                for view, name in enumerate(_VIEWS)
                for c in self.in_view.contributions
            ),
            not_stated=self.in_view.not_stated,
        )

    def view_budget(
        self, view: int, off_arcsec: float, own_limit: float | None, set_anew: Sequence[bool]
    ) -> Budget:
        """Budget of the angle to expect in one view, in arc-seconds off the one wanted.

        Only what is `set_anew` of both hinges has an error of its own.
        """
        per_hinge = np.linalg.inv(self.acts)[view]
        not_stated = self.in_view.not_stated
        own: tuple[Contribution, ...] = ()
        if own_limit is None:
            not_stated = (*not_stated, SETTING_ERROR) if any(set_anew) else not_stated
        else:
            own = tuple(
                Contribution(SETTING_ERROR, own_limit, "rectangular", float(by), of=name)
                for by, name, anew in zip(per_hinge, _SETTINGS, set_anew, strict=True)
                if anew
            )
        return Budget((*self.in_view.contributions, *own), off_arcsec, not_stated)


@dataclass(frozen=True, slots=True)
class HingeAtZero:
    """A plate that is to stand at zero and does not: its side stands `rise` too high at its roll.

    No stack changes that: none stands under it.
    """

    which: SettingOf
    error_arcsec: float
    side: Side
    rise: float


@dataclass(frozen=True, slots=True)
class CompoundChange:
    """Both settings changed, and the forecast of the face; None without a tolerance.

    `at_zero` are plates to stand at zero that do not.
    """

    settings: tuple[CorrectionSetting, CorrectionSetting]
    forecast: Forecast | None
    at_zero: tuple[HingeAtZero, ...]


def compound_settings(
    plate: CorrectionCompoundPlate,
    face: CorrectionCompoundFace,
    measured: CorrectionSurface,
    units: Units,
    supply: Supply | None,
    own_limit: float | None,
    max_blocks: int,
) -> CompoundChange:
    """The change of both stacks that brings a measured surface to the one wanted."""
    with refused_at(_PATH):
        hinges = plates_of(plate, units)
    with refused_at("work/orientation/"):
        wanted = face.orientation.normal
    with refused_at("measured/orientation/"):
        found = measured.orientation.normal
    work = _Face(
        plate,
        hinges,
        hinge_angles(wanted, "part", plate.base_axis),
        hinge_angles(found, "part", plate.base_axis),
        slopes_of_normal(wanted),
        _acts(wanted, plate),
        budget_as_measured(measured),
    )
    shown = [
        Shown(
            _SETTINGS[place],
            work.wanted[place],
            work.measured[place],
            work.error_arcsec(place),
            work.hinge_budget(place),
            own_limit,
        )
        for place in (0, 1)
    ]
    settings, after = _changed(work, shown, units, supply, max_blocks)
    anew = [not setting.leave_it for setting in settings]
    forecast = _forecast(work, after, face.tolerance_arcsec, own_limit, anew)
    return CompoundChange(settings, forecast, tuple(_at_zero(work, shown)))


def _at_zero(work: _Face, shown: Sequence[Shown]) -> Iterator[HingeAtZero]:
    """Plates that are to stand at zero, and show that they do not."""
    for place in (0, 1):
        if shown[place].leave_it or abs(work.wanted[place]) > LEAST_HINGE_RAD:
            continue
        plate, found = work.hinges[place], work.measured[place]
        yield HingeAtZero(
            _SETTINGS[place],
            work.error_arcsec(place),
            raised_side(plate.hinge_axis, found),
            plate.center_distance * math.sin(abs(found)),
        )


def compound_slips(
    plate: CorrectionCompoundPlate,
    face: CorrectionCompoundFace,
    measured: CorrectionSurface,
    units: Units,
    supply: Supply | None,
) -> Slips:
    """The mistakes in setting that explain a measured surface."""
    with refused_at(_PATH):
        hinges = plates_of(plate, units)
    with refused_at("work/orientation/"):
        wanted = face.orientation.normal
    with refused_at("measured/orientation/"):
        views = slopes_of_normal(measured.orientation.normal)
    wrong = WrongHinges(wanted, hinges, plate.base_axis)
    named = [
        [to_tenth_nm(block, units) for block in blocks or ()]
        for blocks in (plate.base_blocks, plate.upper_blocks)
    ]
    heights = [
        sum(stack) if stack else to_tenth_nm(hinge.height(angle), units)
        for stack, hinge, angle in zip(named, hinges, wrong.hinges, strict=True)
    ]
    both = BothHinges(wrong, slopes_of_normal(wanted), (heights[0], heights[1]), units)
    return slips_of_surface(both, views, known_within(budget_as_measured(measured)), named, supply)


def _acts(normal: Vector, plate: CorrectionCompoundPlate) -> Vector:
    """How much each hinge turns for a change of each view, by central differences."""
    views = slopes_of_normal(normal)
    columns = []
    for view in (0, 1):
        ends = []
        for sign in (1.0, -1.0):
            moved = list(views)
            moved[view] += sign * _STEP_RAD
            there = normal_from_slopes(moved[0], moved[1])
            ends.append(np.array(hinge_angles(there, "part", plate.base_axis)))
        columns.append((ends[0] - ends[1]) / (2.0 * _STEP_RAD))
    return np.column_stack(columns)


def _changed(
    work: _Face,
    shown: Sequence[Shown],
    units: Units,
    supply: Supply | None,
    max_blocks: int,
) -> tuple[tuple[CorrectionSetting, CorrectionSetting], tuple[float, float]]:
    """Both settings written, and the hinge angles to expect of them, signed, in radians."""
    mended = [_mended(work, place, units) for place in (0, 1)]
    to_change = [
        place
        for place in (0, 1)
        if not shown[place].leave_it and abs(work.wanted[place]) > LEAST_HINGE_RAD
    ]
    stacks = _stacks(work, mended, to_change, units, supply, max_blocks)
    settings: list[CorrectionSetting] = []
    after: list[float] = []
    for place in (0, 1):
        angle, height = work.measured[place], None
        if place in to_change:
            change = stacks.get(place)
            built = mended[place].new if change is None else from_tenth_nm(change.total, units)
            angle = math.copysign(1.0, work.wanted[place]) * mended[place].angle_at(built)
            height = height_of(mended[place], () if change is None else (change,), units)
        left = tidy((angle - work.wanted[place]) * ARCSEC_PER_RADIAN, angle * ARCSEC_PER_RADIAN)
        settings.append(shown[place].written(left, height))
        after.append(angle)
    return (settings[0], settings[1]), (after[0], after[1])


def _mended(work: _Face, place: int, units: Units) -> HeightCorrection:
    """The change of one plate's stack, by the sizes of its angles: it is raised on one side."""
    hinge, wanted = work.hinges[place], work.wanted[place]
    side = math.copysign(1.0, wanted)
    blocks = _blocks(work, place)
    now = hinge.height(wanted)
    if blocks is not None:
        now = from_tenth_nm(sum(to_tenth_nm(b, units) for b in blocks), units)
        field = f"{_PATH}{_SETTINGS[place]}_blocks"
        require_lift(now - hinge.step, hinge.center_distance, units, field)
        set_rad = angle_for_height(hinge.center_distance, now - hinge.step)
        require_standing(set_rad, (abs(wanted), side * work.measured[place]), field)
    return HeightCorrection(hinge.center_distance, abs(wanted), side * work.measured[place], now)


def _blocks(work: _Face, place: int) -> Sequence[float] | None:
    return (work.plate.base_blocks, work.plate.upper_blocks)[place]


def _stacks(
    work: _Face,
    mended: Sequence[HeightCorrection],
    to_change: Sequence[int],
    units: Units,
    supply: Supply | None,
    max_blocks: int,
) -> dict[int, StackChange]:
    """The new stack of each plate to change, no block in both; none without blocks to build with.

    Blocks are swapped in one after the other; where that does not do, both stacks are built anew.
    """
    if supply is None or not to_change:
        return {}
    unit, left = to_tenth_nm(1.0, units), Counter(supply.box.sizes)
    now = [[to_tenth_nm(b, units) for b in _blocks(work, place) or ()] for place in (0, 1)]
    for place in (0, 1):
        take_stack_out(left, now[place], units, f"{_PATH}{_SETTINGS[place]}_blocks")
    found: dict[int, StackChange] = {}
    for place in to_change:
        at_hand = [*left.elements(), *now[place]]
        swap = swap_for(now[place], at_hand, mended[place].new * unit, max_blocks)
        if swap is None:
            break
        left.update(swap.remove)
        left.subtract(swap.add)
        found[place] = changed("high-roll", now[place], swap.stack)
    else:
        return found
    return _anew(mended, to_change, now, units, supply, max_blocks)


def _anew(
    mended: Sequence[HeightCorrection],
    to_change: Sequence[int],
    now: Sequence[Sequence[int]],
    units: Units,
    supply: Supply,
    max_blocks: int,
) -> dict[int, StackChange]:
    """Both stacks built anew; one that is not to be changed keeps its height."""
    unit = to_tenth_nm(1.0, units)
    heights = [
        mended[place].new * unit if place in to_change else float(sum(now[place]))
        for place in (0, 1)
    ]
    both = both_stacks(supply.box.sizes, heights, max_blocks)
    if both is None:
        raise unbuildable(mended[to_change[0]].new, units, max_blocks)
    return {
        place: changed("high-roll", now[place], both.stacks[place])
        for place in (0, 1)
        if heights[place]
    }


def _forecast(
    work: _Face,
    after: tuple[float, float],
    tolerance: float | None,
    own_limit: float | None,
    set_anew: Sequence[bool],
) -> Forecast | None:
    """Whether both views keep the tolerance, to expect of the next face."""
    if tolerance is None:
        return None
    expected = slopes_of_normal(normal_from_hinges(*after, "part", work.plate.base_axis))
    return together(
        forecast_of(
            work.view_budget(
                view,
                (expected[view] - work.views[view]) * ARCSEC_PER_RADIAN,
                own_limit,
                set_anew,
            ),
            -tolerance,
            tolerance,
        )
        for view in (0, 1)
    )
