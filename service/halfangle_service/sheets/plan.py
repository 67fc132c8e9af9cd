"""The set-up sheet of a plan: one of its ways, with what the hand at the machine needs of it."""

from collections.abc import Iterator, Sequence

from halfangle_service.fields import Units
from halfangle_service.fields.advisories import Advisory
from halfangle_service.fields.glossary import option_labels
from halfangle_service.sheets.drawing import hand_in_words, set_up_drawing
from halfangle_service.sheets.model import (
    Check,
    Fact,
    Reading,
    Sheet,
    Stack,
    Step,
    Text,
)
from halfangle_service.sheets.parts import (
    FORECASTS,
    by_severity,
    means_check,
    measured_blanks,
    said_once,
    stack_of,
    tone_of,
    unstated,
)
from halfangle_service.sheets.wording import angle, length, named, plus_minus, quantity, signed
from halfangle_service.topics.jobs.plan.checks import PlanChecks, PlanSetUpCheck
from halfangle_service.topics.jobs.plan.features import PlannedFeature
from halfangle_service.topics.jobs.plan.parts.feed import PlanFeed, PlanPhase
from halfangle_service.topics.jobs.plan.plan import JobPlanRequest
from halfangle_service.topics.jobs.plan.result import JobPlanResult, PlannedWay, PlanStack
from halfangle_service.topics.jobs.plan.shop.equipment import PlanEquipment
from halfangle_service.topics.jobs.plan.usual_steps import PlanStep
from halfangle_service.trade.wording import arcsec, small_length

#: Most pieces that get a column to write in.
MOST_PIECES = 5
_UNDRAWN = "none: it shows work on a plate on its stacks, and this way sets something else"
_PLACES = {
    "high": "High roll",
    "low": "Low roll",
    "base": "Base plate, raised roll",
    "upper": "Upper plate, raised roll",
    "check": "Second stack, to compare",
}


def plan_sheet(
    request: JobPlanRequest,
    result: JobPlanResult,
    advisories: Sequence[Advisory],
    shop: PlanEquipment,
    place: int = 0,
) -> Sheet:
    """The sheet of the way at a place of `ways`, from 0; the steps are those of that way."""
    way, units = result.ways[place], request.units
    drawing = set_up_drawing(request, result, way, shop)
    undrawn = () if drawing else (Fact("Drawing", _UNDRAWN),)
    stops, cautions, notes = by_severity(advisories)
    return Sheet(
        kind=f"Set-up sheet · {_label(way.way)}",
        title=result.job,
        about=_about(request, result, way),
        judgement=FORECASTS[way.forecast],
        tone=tone_of(way.forecast, stops),
        stops=stops,
        drawing=drawing,
        figures=tuple(_figures(way)),
        stacks=tuple(_stack(stack, way, units) for stack in way.stacks),
        facts=(*_facts(request, way), *undrawn),
        steps=tuple(_steps(result.steps)),
        checks=tuple(_checks(result.checks, way, units)),
        pieces=tuple(way.batch.pieces_to_measure[:MOST_PIECES]) if request.pieces > 1 else (),
        cautions=said_once(cautions),
        blanks=tuple(measured_blanks(turned=result.feature.included_angle is not None)),
        rest=tuple(_rest(result, way, units, notes)),
    )


def _steps(steps: Sequence[PlanStep]) -> Iterator[Step]:
    """What is done in turn; what the step just before is careful of is not said again."""
    before: tuple[str, ...] = ()
    for place, step in enumerate(steps):
        cautions = tuple(step.cautions)
        again = bool(cautions) and cautions == before
        yield Step(step.action, (f"As in step {place}.",) if again else cautions)
        before = cautions


def _label(name: str) -> str:
    label = option_labels().get(name, name)
    return label[0].lower() + label[1:]


def _about(request: JobPlanRequest, result: JobPlanResult, way: PlannedWay) -> str:
    """Feature, shank, pieces and time in one line."""
    parts = [*_feature(result.feature, request, _tolerance(way))]
    if result.shank is not None:
        parts.append(f"shank {_shank(result)}")
    parts.append("1 piece" if request.pieces == 1 else f"{request.pieces} pieces")
    parts.append(f"first in {way.first_piece_minutes:.0f} min")
    return " · ".join(parts)


def _feature(feature: PlannedFeature, request: JobPlanRequest, tolerance: float) -> Iterator[str]:
    label, units = named(feature.kind), request.units
    angled = feature.included_angle or feature.face_angle
    orientation = feature.surface_orientation
    if feature.kind == "compound-face" and orientation is not None:
        hand = getattr(request.feature, "hand", "as-drawn")
        yield f"{label}, {hand_in_words(hand)}"
        front, side = (
            signed(angle(view.degrees, tolerance))
            for view in (orientation.x_angle, orientation.y_angle)
        )
        yield f"front view {front}, side view {side}"
    elif angled is not None:
        included = ", included" if feature.included_angle else " to the base"
        yield f"{label} {angle(angled.degrees, tolerance)}{included}"
    if feature.large_diameter is not None:
        small = feature.small_diameter or 0.0
        to = f" to {length(small, units)}" if small else ""
        yield f"⌀ {length(feature.large_diameter, units)}{to}"
    if feature.length is not None:
        yield f"length {length(feature.length, units)}"


def _shank(result: JobPlanResult) -> str:
    shank = result.shank
    if shank is None:
        return ""
    designation = getattr(shank, "designation", None)
    return named(designation) if designation else shank.kind


def _stack(stack: PlanStack, way: PlannedWay, units: Units) -> Stack:
    place = _place(stack.role)
    if way.way == "dressed-wheel":
        place = place.replace("roll", "roll of the dresser")
    spare = stack.role == "check"
    return stack_of(place, stack.blocks, stack.marks, stack.total, units, spare=spare)


def _tolerance(way: PlannedWay) -> float:
    """The closest tolerance of the way's angles, in arc-seconds: so fine are they written."""
    return min(found.tolerance_arcsec for found in way.angles)


def _place(role: str) -> str:
    return _PLACES.get(role, named(role))


def _figures(way: PlannedWay) -> Iterator[Fact]:
    """What is set to which angle, to the second that matters."""
    tolerance = _tolerance(way)
    for setting in way.settings:
        yield Fact(f"{named(setting.part)} to", angle(setting.angle.degrees, tolerance))


def _facts(request: JobPlanRequest, way: PlannedWay) -> Iterator[Fact]:
    """What must be kept, what to expect, how it is fed."""
    units = request.units
    for found in way.angles:
        error = found.error_arcsec
        expected = ""
        if error.value is not None and error.expanded_uncertainty is not None:
            known = signed(arcsec(error.value))
            expected = f", expect {known} ±{arcsec(error.expanded_uncertainty)}"
        yield Fact(named(found.of), f"{plus_minus(found.tolerance_arcsec)}{expected}")
    runout = way.runout_budget
    if runout is not None:
        worst = runout.tir.worst_case
        told = f", expect ≤ {small_length(worst, units)}" if worst is not None else ""
        yield Fact("Runout, TIR", f"≤ {small_length(runout.limit_tir, units)}{told}")
    clear = way.clearance
    if clear is not None and clear.smallest_gap is not None:
        gap = clear.smallest_gap
        where = f"{named(gap.part).lower()} to {named(gap.body).lower()}"
        yield Fact("Least gap", f"{length(gap.gap, units)}, {where}")
    else:
        yield Fact("Clearance", "not worked out: prove it by hand, the wheel standing")
    yield from _feed(way.feed_plan, units)
    batch = way.batch
    if request.pieces > 1:
        dress = batch.pieces_per_dress
        again = "not told" if dress is None else f"after every {dress} pieces"
        yield Fact("Dress again", again)
        if len(batch.pieces_to_measure) > MOST_PIECES:
            yield Fact("Measure pieces", _pieces(batch.pieces_to_measure))


def _pieces(numbers: Sequence[int]) -> str:
    """Numbers of pieces, the first of them where they are many."""
    told = ", ".join(map(str, numbers[:MOST_PIECES]))
    more = len(numbers) - MOST_PIECES
    return f"{told} and {more} more, the last {numbers[-1]}" if more > 0 else told


def _feed(feed: PlanFeed, units: Units) -> Iterator[Fact]:
    """Passes by their phases, and the reading to stop by."""
    phases = [("rough", feed.rough), ("finish", feed.finish)]
    told = [f"{_phase(phase, units)} {name}" for name, phase in phases if phase is not None]
    told.append(f"{feed.spark_out_passes} × spark out")
    yield Fact("Feed on the dial", ", ".join(told))
    for stop in feed.stop_readings:
        if stop.read_off == feed.stop_by and stop.at_size is not None:
            yield Fact("Stop at", f"{named(stop.read_off).lower()} {length(stop.at_size, units)}")


def _phase(phase: PlanPhase, units: Units) -> str:
    return f"{phase.cutting_passes} × {small_length(phase.dial_per_pass, units)}"


def _checks(checks: PlanChecks, way: PlannedWay, units: Units) -> Iterator[Check]:
    """Checks of the set-up, of the seats and of the angle, each with what to read."""
    tolerance = _tolerance(way)
    compared = any(stack.role == "check" for stack in way.stacks)
    for check in checks.set_up_checks:
        # A stack is measured as it is wrung; it is compared where there is one to compare it with.
        if check.check != "stack-measured" and (compared or check.check != "second-stack"):
            yield Check(named(check.check), _set_up_readings(check, units))
    for seat in checks.seat_readings:
        limit = "" if seat.largest_tir is None else f"≤ {small_length(seat.largest_tir, units)}"
        yield Check(_turned(seat.turned), (Reading("TIR", "", limit),), each_piece=True)
    for means in checks.inspections:
        yield means_check(means, units, tolerance, best=means.means == checks.best)


def _turned(what: str) -> str:
    """What is done before a seat is read."""
    return "Before it is loosened" if what == "nothing" else f"{named(what)} turned half round"


def _set_up_readings(check: PlanSetUpCheck, units: Units) -> tuple[Reading, ...]:
    if check.acceptance_tir is not None:
        return (Reading("TIR", "", f"≤ {small_length(check.acceptance_tir, units)}"),)
    if check.told_apart is not None:
        told_apart = small_length(check.told_apart, units)
        return (Reading("Difference", "0", f"seen from {told_apart}"),)
    return (Reading("Difference", "0") if check.check == "second-stack" else Reading("Movement"),)


def _rest(
    result: JobPlanResult, way: PlannedWay, units: Units, notes: tuple[str, ...]
) -> Iterator[Text]:
    """What comes after all that is done at the machine."""
    missing = [
        *(name for found in way.angles for name in found.error_arcsec.not_stated),
        *(way.runout_budget.tir.not_stated if way.runout_budget else ()),
        *way.feed_plan.not_stated,
        *way.batch.not_stated,
        *(way.clearance.not_stated if way.clearance else ()),
    ]
    if missing:
        yield unstated(missing)
    assumed = [
        f"{named(taken.name)}: {quantity(taken.assumed_value, taken.input_unit, units)}"
        for taken in way.feed_plan.assumptions
    ]
    if assumed:
        yield Text("Taken as usual, since not stated", ("; ".join(assumed) + ".",))
    if notes:
        yield Text("Notes", notes)
    others = [
        f"{place}. {named(other.way)}: {FORECASTS[other.forecast].lower()}"
        for place, other in enumerate(result.ways, start=1)
        if other is not way
    ]
    # Why they cannot is the planner's: it stands in the answer.
    ruled_out = dict.fromkeys(named(out.way) for out in result.ruled_out)
    if ruled_out:
        others.append(f"cannot: {', '.join(ruled_out)}")
    if others:
        yield Text("Other ways", tuple(others))
