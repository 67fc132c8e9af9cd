"""The checks to make on a ground cone: which would catch a wrong block, which prove a tolerance.

A check catches a wrong block when the smallest mistake that takes the angle out of its tolerance
shows more than the check can tell apart. It proves a tolerance where what it tells apart, taken as
its expanded uncertainty, leaves room within: a reading inside the rest is then conforming. Lengths
in one unit, angles as named.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from halfangle_service.trade.angles import ARCSEC_PER_RADIAN
from halfangle_service.trade.inspection.mistakes import StackMistake
from halfangle_service.trade.inspection.practice import (
    COMPARATOR_STEPS,
    MICROMETER_STEPS,
    OPTICAL_ARCSEC,
    ROLLS,
    ROUND_RISE,
)
from halfangle_service.trade.inspection.reseating import largest_reading
from halfangle_service.trade.tapers.two_heights import TwoHeights, two_heights
from halfangle_service.trade.units import Units, from_tenth_nm
from halfangle_service.trade.units import bench_step as bench_step_of
from halfangle_service.trade.wording import arcsec, block, degrees, length, small_length


@dataclass(frozen=True, slots=True)
class Check:
    """One check in words: whether it would catch a wrong block, and what it can prove.

    `acceptance_arcsec` is the ± error of the included angle, as read, within which it proves the
    angle's tolerance, `acceptance_tir` the reading up to which it proves the limit of the runout;
    None where it proves none. `catches_wrong_block` is None where no wrong block matters.
    """

    check: str
    how: str
    expected: str
    catches_wrong_block: bool | None
    reason: str
    proves_tolerance: bool
    proof: str
    acceptance_arcsec: float | None = None
    acceptance_tir: float | None = None


@dataclass(frozen=True, slots=True)
class CheckFacts:
    """What the checks compare, lengths in `units`; `shank_diameter` is the shank's largest.

    `mistakes` are the wrong blocks that take the angle out of its tolerance, the nearest to either
    side; `smallest` the one that changes the height least, None where no other block could have
    been taken at all.
    """

    units: Units
    stack_height: float
    second_stack: str | None
    half_angle_degrees: float
    half_angle_rad: float
    large_diameter: float
    cone_length: float
    shank_diameter: float
    tolerance_arcsec: float
    cone_limit_tir: float
    mistakes: Sequence[StackMistake]
    smallest: StackMistake | None

    @property
    def bench_step(self) -> float:
        """What is read at the bench, in `units`."""
        return bench_step_of(self.units)

    @property
    def rolls(self) -> TwoHeights | None:
        """Rolls and rise for the measurement over rolls, where there is room for one."""
        rolls, step = ROLLS[self.units], ROUND_RISE[self.units]
        found = two_heights(self.cone_length, self.half_angle_rad, rolls, step)
        shoulder = (self.shank_diameter - self.large_diameter) / 2.0
        if found is None or 0.0 < shoulder < found.shoulder(self.half_angle_rad):
            return None
        return found


def checks_of_a_cone(facts: CheckFacts) -> list[Check]:
    """Give the checks, in the order in which to make them."""
    return [
        _measured_stack(facts),
        *_second_stack(facts),
        _same_setting(facts),
        *_over_rolls(facts),
        _optical(facts),
        _runout(facts),
    ]


def _measured_stack(facts: CheckFacts) -> Check:
    return _length_check(
        facts,
        check="Measure the wrung stack",
        how="With a micrometer or on a comparator, before it goes under the plate.",
        expected=length(facts.stack_height, facts.units),
        least=MICROMETER_STEPS * facts.bench_step,
    )


def _second_stack(facts: CheckFacts) -> tuple[Check, ...]:
    if facts.second_stack is None:
        return ()
    check = _length_check(
        facts,
        check="Compare with a second stack",
        how=f"Wring {facts.second_stack}, set both on one surface and pass an indicator over them.",
        expected="no difference",
        least=COMPARATOR_STEPS * facts.bench_step,
    )
    return (check,)


def _length_check(facts: CheckFacts, *, check: str, how: str, expected: str, least: float) -> Check:
    """A check that compares lengths: it catches a mistake larger than it can tell apart."""
    changes = [abs(from_tenth_nm(m.height_change, facts.units)) for m in facts.mistakes]
    smallest = min(changes, default=None)
    catches, reason = None, _nothing_to_catch(facts)
    if smallest is not None:
        catches = smallest > 0.999_999 * least
        reason = (
            "The smallest mistake that takes the angle out of its tolerance is "
            f"{length(smallest, facts.units)}, {_against(catches)} the "
            f"{length(least, facts.units)} that this tells apart."
        )
    return Check(
        check=check,
        how=how,
        expected=expected,
        catches_wrong_block=catches,
        reason=reason,
        proves_tolerance=False,
        proof="It proves the stack, not the angle that was ground on it.",
    )


def _same_setting(facts: CheckFacts) -> Check:
    return Check(
        check="Run an indicator along the cone on the same setting",
        how="Wheel stopped and clear, the work still on the plate.",
        expected="no slope along the slant",
        catches_wrong_block=False if facts.mistakes else None,
        reason="It shows breakdown of the wheel's face, but a wrong stack tilts the work and the "
        "check alike.",
        proves_tolerance=False,
        proof="It proves that the side is straight and as the plate stands, not at which angle "
        "that is.",
    )


def _over_rolls(facts: CheckFacts) -> tuple[Check, ...]:
    """Readings over two equal rolls at two heights; nothing where rolls find no place."""
    rolls = facts.rolls
    if rolls is None:
        return ()
    units, alpha = facts.units, facts.half_angle_rad
    told_apart = rolls.told_apart_rad(MICROMETER_STEPS * facts.bench_step, alpha)
    size = f"{block(rolls.roll_diameter, units)} {units}"
    check = _angle_check(
        facts,
        check="Measure the cone over two equal rolls at two heights",
        how=f"{_stand(facts)} Lay two rolls of {size} against the cone there and measure over "
        f"both; then the same rolls on two equal stacks of {length(rolls.rise, units)}, of blocks "
        "that were not in the first stack.",
        expected=f"readings that differ by {length(rolls.difference(alpha), units)}",
        least_arcsec=told_apart * ARCSEC_PER_RADIAN,
        reading=MICROMETER_STEPS * facts.bench_step,
    )
    return (check,)


def _stand(facts: CheckFacts) -> str:
    """How the cone stands upright: on the plane of its large end, where rolls can lie."""
    if facts.shank_diameter > facts.large_diameter:
        return (
            "Only where the shank's shoulder is ground square: stand the work upright, the rolls "
            "on the shoulder."
        )
    return (
        "Only where the work can stand point up in a bored block, its top square to the bore and "
        "level with the cone's large end."
    )


def _optical(facts: CheckFacts) -> Check:
    return _angle_check(
        facts,
        check="Measure the included angle optically",
        how="On a projector or microscope whose own angle is known.",
        expected=degrees(2.0 * facts.half_angle_degrees, facts.tolerance_arcsec),
        least_arcsec=OPTICAL_ARCSEC,
    )


def _angle_check(
    facts: CheckFacts,
    *,
    check: str,
    how: str,
    expected: str,
    least_arcsec: float,
    reading: float | None = None,
) -> Check:
    """A check of the ground angle itself: it shares nothing with the setting.

    `reading` is the length read that makes `least_arcsec`, where a length is read.
    """
    catches, reason = _catches_by_angle(facts, least_arcsec)
    tolerance, room = facts.tolerance_arcsec, facts.tolerance_arcsec - least_arcsec
    within = f"±{arcsec(room)}"
    if reading is not None:
        read = small_length(room / least_arcsec * reading, facts.units)
        within = f"±{read}, which is {within},"
    return Check(
        check=check,
        how=how,
        expected=expected,
        catches_wrong_block=catches,
        reason=reason,
        proves_tolerance=room > 0.0,
        proof=f"A reading within {within} proves ±{arcsec(tolerance)}."
        if room > 0.0
        else f"What it tells apart, {arcsec(least_arcsec)}, is no finer than ±{arcsec(tolerance)}.",
        acceptance_arcsec=room if room > 0.0 else None,
    )


def _catches_by_angle(facts: CheckFacts, least_arcsec: float) -> tuple[bool | None, str]:
    """Whether what tells so much of the angle apart shows the smallest mistake, and why."""
    errors = [mistake.error_arcsec for mistake in facts.mistakes]
    smallest = min((abs(error) for error in errors if error is not None), default=None)
    if smallest is not None:
        catches = smallest > least_arcsec
        return catches, (
            "The smallest mistake that takes the angle out of its tolerance turns it by "
            f"{arcsec(smallest)}, {_against(catches)} the {arcsec(least_arcsec)} that this tells "
            "apart."
        )
    if errors:
        return True, (
            "A wrong block lifts the plate by its center distance or more: the setting shows it."
        )
    return None, _nothing_to_catch(facts)


def _nothing_to_catch(facts: CheckFacts) -> str:
    if facts.smallest is not None:
        return "No single wrong block takes the angle out of its tolerance."
    return "No other block could have been taken."


def _against(catches: bool) -> str:
    return "more than" if catches else "within"


def _runout(facts: CheckFacts) -> Check:
    """The cone in another place of its adapter: turned half round, the adapter's error doubles."""
    limit, units = facts.cone_limit_tir, facts.units
    most = largest_reading(limit)
    room = most - COMPARATOR_STEPS * facts.bench_step
    return Check(
        check="Take the work out, turn it half round, seat it again, and indicate the cone",
        how="Both seats wiped clean, the indicator square to the cone's surface, at the large end "
        "and near the point; then put the work back to its mark.",
        expected=f"no more than {small_length(most, units)} TIR: turned half round the cone "
        "shows twice what it runs out to its shank",
        catches_wrong_block=False if facts.mistakes else None,
        reason="It shows runout; a cone of the wrong angle runs just as true.",
        proves_tolerance=room > 0.0,
        proof=f"A reading up to {small_length(room, units)} TIR proves the limit. In the seat in "
        "which it was ground the cone runs true whatever the adapter does."
        if room > 0.0
        else f"An indicator that tells {length(facts.bench_step, units)} apart is too coarse for "
        f"{small_length(limit, units)} TIR on the cone: take a finer one.",
        acceptance_tir=room if room > 0.0 else None,
    )
