"""The checks of a plan: what shows a wrong block, what proves the angle and the runout.

Each means has its own uncertainty, as the shop states it, and proves by the decision rule what it
leaves of the tolerance; a mistake is seen where it shows more than the means tells apart.
"""

from collections.abc import Iterator, Sequence
from typing import Literal

from pydantic import Field

from halfangle_service.fields import (
    ARCSEC_PER_RADIAN,
    ArcsecOut,
    LengthOut,
    ResultModel,
    Units,
    from_tenth_nm,
)
from halfangle_service.fields.inspection.against import against_part
from halfangle_service.fields.inspection.compound import against_compound
from halfangle_service.fields.inspection.planned import (
    PlannedMeans,
    RuledOutInspection,
    means_out,
    ruled_out,
)
from halfangle_service.fields.inspection.plate import part_on_plate
from halfangle_service.topics.jobs.plan.features import FeatureKind, Wanted
from halfangle_service.topics.jobs.plan.shop.measuring import PlanMeasuring
from halfangle_service.trade.centers.limits import tir_on_cone
from halfangle_service.trade.inspection.compound_face import InspectedCompound
from halfangle_service.trade.inspection.means import (
    Inspected,
    InspectedAngle,
    InspectedCone,
    MeansName,
    OutOfReach,
    Tolerance,
    best_of,
)
from halfangle_service.trade.inspection.mistakes import (
    PlannedStack,
    StackMistake,
    StackRole,
    smallest_past,
)
from halfangle_service.trade.inspection.reseating import (
    SEATS,
    Shown,
    Turned,
    largest_reading,
    runout_proof,
)
from halfangle_service.trade.inspection.sine_plate import InspectedFace
from halfangle_service.trade.tapers.tolerance import Cone
from halfangle_service.trade.uncertainty import Budget, Contribution, DecisionRule
from halfangle_service.trade.uncertainty.coverage import half_width

SetUpCheckName = Literal["stack-measured", "second-stack", "same-setting", "re-seated"]
SeenBy = Literal[SetUpCheckName, MeansName]


class PlanMistake(ResultModel):
    """The smallest wrong block of one stack that leaves the tolerance of an angle."""

    role: StackRole = Field(description="Which stack it is in.")
    meant: LengthOut = Field(description="Block that belongs in the stack.")
    wrung: LengthOut = Field(description="Block taken in its place.")
    height_change: LengthOut = Field(description="What it adds to the stack's actual height.")
    angle_error_arcsec: ArcsecOut | None = Field(
        description="Angle that the feature then has, less the one wanted, by the sine itself; "
        "null where nothing stands on such a stack."
    )
    seen_by: list[SeenBy] = Field(
        description="Checks that would show it: it shows more than they tell apart. Empty where "
        "none does, or nothing was stated of any."
    )


class PlanSetUpCheck(ResultModel):
    """A check of the set-up, or of the runout."""

    check: SetUpCheckName = Field(description="Which check.")
    how: str = Field(description="How it is made.")
    told_apart: LengthOut | None = Field(
        description="Expanded uncertainty of what it reads; null where it reads no length, or "
        "nothing was stated of it."
    )
    proves_tolerance: bool | None = Field(
        description="Whether it can prove the limit of the runout, or the angle's tolerance; null "
        "where what was not stated decides."
    )
    acceptance_tir: LengthOut | None = Field(
        description="Reading up to which it proves the limit of the runout; null of the others, "
        "and where it proves none."
    )


class PlanSeatReading(ResultModel):
    """One reading of the cone's runout in a seat, and what it shows."""

    turned: Turned = Field(description="What is turned by half a turn before it is read.")
    how: str = Field(description="How, and what the reading is.")
    shows: list[Shown] = Field(description="What the reading shows, together.")
    largest_tir: LengthOut | None = Field(
        description="Most that work within its limit reads, square to its surface; null where the "
        "reading says nothing of the limit."
    )


class PlanMeansNotAtHand(ResultModel):
    """A means that is usual for such a feature, and of which nothing is stated."""

    means: MeansName = Field(description="Which means.")
    field: str = Field(description="The field of the request that states it, as a path.")
    action: str = Field(description="What to get, in plain words.")


class PlanChecks(ResultModel):
    """What checks the set-up and proves the feature, the same for every way."""

    set_up_checks: list[PlanSetUpCheck] = Field(description="Checks of stacks, setting and runout.")
    seat_readings: list[PlanSeatReading] = Field(
        description="Readings that tell spindle, fixture and adapter apart, in order; empty "
        "without a limit of the runout."
    )
    inspections: list[PlannedMeans] = Field(
        description="Each means at hand that reaches the ground feature, as `inspection.plan` "
        "gives it; of a compound face view by view."
    )
    not_at_hand: list[PlanMeansNotAtHand] = Field(
        description="Usual means of which nothing is stated."
    )
    ruled_out: list[RuledOutInspection] = Field(description="Each means that does not.")
    best: MeansName | None = Field(
        description="Of the means that prove the angle's tolerance the finest; null where none "
        "does."
    )


def planned_checks_of(
    wanted: Wanted, measuring: PlanMeasuring, rule: DecisionRule, path: str
) -> tuple[PlanChecks, "Sight"]:
    """The checks of a feature, and what they tell apart; `path` is that of the measuring means."""
    found = list(_measured(wanted, measuring, rule, path))
    reached = [one for one in found if isinstance(one, Inspected)]
    checks = PlanChecks(
        set_up_checks=list(_set_up_checks(wanted, measuring, rule)),
        seat_readings=list(_seats(wanted)),
        inspections=[means_out(one) for one in reached],
        not_at_hand=list(_not_at_hand(wanted, measuring, path)),
        ruled_out=[ruled_out(one, path=path) for one in found if isinstance(one, OutOfReach)],
        best=best_of(reached),
    )
    return checks, Sight(checks)


class Sight:
    """What each check tells apart: of a stack's height in its unit, of the angle in arc-seconds."""

    def __init__(self, checks: PlanChecks) -> None:
        self._of_heights: dict[SeenBy, float] = {
            one.check: one.told_apart
            for one in checks.set_up_checks
            if one.check != "re-seated" and one.told_apart is not None
        }
        self._of_angles: dict[SeenBy, float] = {}
        finest: dict[InspectedAngle | None, float] = {}
        for one in checks.inspections:
            error = None if one.angle_proof is None else one.angle_proof.angle_error_arcsec
            if error is None or error.not_stated or error.expanded_uncertainty is None:
                continue
            apart = error.expanded_uncertainty
            # Of two views the one that is seen worse decides.
            self._of_angles[one.means] = max(apart, self._of_angles.get(one.means, 0.0))
            finest[one.of] = min(apart, finest.get(one.of, apart))
        views = 2 if any(one.of is not None for one in checks.inspections) else 1
        self._finest = max(finest.values()) if len(finest) == views else None

    @property
    def finest_arcsec(self) -> float | None:
        """Expanded uncertainty of the finest measurement of the angle; None where none is known.

        Of a face with two angles that of the one that is measured worse.
        """
        return self._finest

    def seen_by(self, mistake: StackMistake, units: Units, *, compared: bool) -> Iterator[SeenBy]:
        """Checks that show a mistake; `compared` where there is a second stack to compare with."""
        change = abs(from_tenth_nm(mistake.height_change, units))
        for check, least in self._of_heights.items():
            if change > least and (check != "second-stack" or compared):
                yield check
        for means, least in self._of_angles.items():
            if mistake.error_arcsec is None or abs(mistake.error_arcsec) > least:
                yield means


def plan_mistakes(
    stacks: Sequence[PlannedStack], tolerance_arcsec: float, units: Units, sight: Sight
) -> Iterator[PlanMistake]:
    """For each stack the smallest wrong block that leaves ± a tolerance, where one does."""
    compared = any(stack.role == "check" for stack in stacks)
    for stack in stacks:
        mistake = smallest_past(stack, -tolerance_arcsec, tolerance_arcsec)
        if mistake is not None:
            yield PlanMistake(
                role=mistake.role,
                meant=from_tenth_nm(mistake.meant.size, units),
                wrung=from_tenth_nm(mistake.wrung.size, units),
                height_change=from_tenth_nm(mistake.height_change, units),
                angle_error_arcsec=mistake.error_arcsec,
                seen_by=list(sight.seen_by(mistake, units, compared=compared)),
            )


def _measured(
    wanted: Wanted, measuring: PlanMeasuring, rule: DecisionRule, path: str
) -> Iterator[Inspected | OutOfReach]:
    """Each means at hand against the feature, a compound face view by view."""
    limit, units = wanted.tolerance_arcsec / ARCSEC_PER_RADIAN, wanted.units
    plate = measuring.plate
    if wanted.normal is not None:
        tolerance = Tolerance(-limit, limit, "tolerance_arcsec")
        work = wanted.work_body
        lengths = (None, None) if work is None else (work.base_length, work.base_width)
        compound = InspectedCompound(wanted.normal, tolerance, lengths)
        yield from against_compound(measuring, plate, compound, units, rule)
        return
    if wanted.turned:
        half = wanted.angle_rad
        cone = Cone(wanted.large_diameter, half, half - limit / 2.0, half + limit / 2.0)
        tolerance = Tolerance(-limit, limit, "included_angle_tolerance_arcsec")
        part: InspectedCone | InspectedFace = InspectedCone(
            cone, wanted.length, wanted.internal, tolerance, None
        )
    else:
        tolerance = Tolerance(-limit, limit, "tolerance_arcsec")
        part = InspectedFace(wanted.angle_rad, wanted.slant, tolerance)
    yield from against_part(measuring, part, units, rule, path=path)
    if plate is not None:
        yield part_on_plate(part, plate, None, units, rule)


#: What each means is got by, and the field of the measuring means that states it.
_TO_GET: dict[MeansName, tuple[str, str]] = {
    "over-rolls": ("rolls", "Two equal rolls and two equal stacks."),
    "over-balls": ("balls", "Two balls of unlike diameters that touch inside the socket."),
    "gauge-depth": ("gauges", "A gauge of the taper, or two with sharp edges."),
    "sine-plate": ("plate", "A sine bar or plate, and an indicator with a stand."),
    "comparator": ("comparator", "An optical comparator or a toolmaker's microscope."),
    "bluing": ("bluing", "A master of the taper, and blue."),
}
_USUAL: dict[FeatureKind, tuple[MeansName, ...]] = {
    "cone": ("over-rolls", "comparator", "sine-plate"),
    "center": ("over-rolls", "comparator", "sine-plate"),
    "taper-plug": ("over-rolls", "gauge-depth", "bluing", "sine-plate"),
    "taper-socket": ("over-balls", "gauge-depth", "bluing", "sine-plate"),
    "angled-face": ("sine-plate", "comparator"),
    "compound-face": ("sine-plate", "comparator"),
}


def _not_at_hand(
    wanted: Wanted, measuring: PlanMeasuring, path: str
) -> Iterator[PlanMeansNotAtHand]:
    """Means usual for a feature that the shop does not state."""
    for means in _USUAL[wanted.kind]:
        field, action = _TO_GET[means]
        if getattr(measuring, field) is None:
            yield PlanMeansNotAtHand(means=means, field=f"{path}{field}", action=action)


def _set_up_checks(
    wanted: Wanted, measuring: PlanMeasuring, rule: DecisionRule
) -> Iterator[PlanSetUpCheck]:
    yield _of_height(
        "stack-measured",
        "Measure each wrung stack before it goes under a roll.",
        measuring.stack_reading_error_limit,
    )
    yield _of_height(
        "second-stack",
        "Wring the second stack, set both on one surface and pass an indicator over them.",
        measuring.comparison_error_limit,
    )
    yield PlanSetUpCheck(
        check="same-setting",
        how="Run an indicator along the surface on the same setting, wheel stopped and clear: it "
        "shows the wheel's breakdown; a wrong stack tilts work and check alike.",
        told_apart=None,
        proves_tolerance=False,
        acceptance_tir=None,
    )
    if wanted.limit_tir is not None:
        limit = tir_on_cone(wanted.limit_tir / 2.0, wanted.angle_rad)
        error = measuring.tir_error_limit
        accepted = runout_proof(limit, error, rule)
        yield PlanSetUpCheck(
            check="re-seated",
            how="Take the work out, turn it half round, seat it again and indicate it square to "
            "its surface.",
            told_apart=None if error is None else _told_apart(error),
            proves_tolerance=None if error is None else accepted is not None,
            acceptance_tir=accepted,
        )


def _of_height(check: SetUpCheckName, how: str, error: float | None) -> PlanSetUpCheck:
    """A check of a stack: it proves the stack, not the angle that is ground on it."""
    return PlanSetUpCheck(
        check=check,
        how=how,
        told_apart=None if error is None else _told_apart(error),
        proves_tolerance=False,
        acceptance_tir=None,
    )


def _told_apart(error: float) -> float:
    return half_width(Budget((Contribution("reading", error),)))


def _seats(wanted: Wanted) -> Iterator[PlanSeatReading]:
    if wanted.limit_tir is None:
        return
    limit = tir_on_cone(wanted.limit_tir / 2.0, wanted.angle_rad)
    for seat in SEATS:
        yield PlanSeatReading(
            turned=seat.turned,
            how=seat.how,
            shows=list(seat.shows),
            largest_tir=largest_reading(limit) if seat.turned == "work" else None,
        )
