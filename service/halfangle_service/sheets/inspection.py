"""The inspection sheet: what to read of each part, its limits, and what to do out of them."""

from collections.abc import Iterator, Sequence

from halfangle_service.fields import Units
from halfangle_service.fields.advisories import Advisory
from halfangle_service.fields.inspection.planned import PlannedMeans, RuledOutInspection
from halfangle_service.sheets.model import Check, Fact, Log, Reading, Sheet, Text
from halfangle_service.sheets.parts import by_severity, means_check, said_once
from halfangle_service.sheets.wording import angle, length, named, plus_minus
from halfangle_service.topics.inspection.plan.request import InspectionPlanRequest
from halfangle_service.topics.inspection.plan.result import InspectionPlanResult
from halfangle_service.topics.jobs.plan.plan import JobPlanRequest
from halfangle_service.topics.jobs.plan.result import JobPlanResult, PlannedWay

#: Lines of the log where nobody said how many parts there are.
_LINES = 10
#: Most pieces of a batch that get a line each.
MOST_LINES = 40
_BLANKS = ("Instrument", "Rolls, balls", "Temperature", "Zero checked", "Date", "Initials")
#: Common practice, no source.
_WHAT_TO_DO = Text(
    "What to do",
    (
        "Within 'proved within': good, go on.",
        "Within the limits, not within 'proved within': neither good nor bad is proved. Clean, "
        "let it come to one temperature, read again, or measure by a finer means.",
        "Past the limits: stop. Mark the part, keep it apart, read it again. Find the cause "
        "(stack, seat, dress of the wheel) and mend it before the next part.",
        "In a batch: measure every part back to the last good one, and the next two after mending.",
    ),
)


def inspection_sheet(
    request: InspectionPlanRequest, result: InspectionPlanResult, advisories: Sequence[Advisory]
) -> Sheet:
    """The sheet of an inspection by itself: a line for each of several parts."""
    part, units = result.feature, request.units
    tolerance = part.angle_band_arcsec / 2.0
    stops, cautions, notes = by_severity(advisories)
    nominal = part.included_angle or part.face_angle
    about = [named(part.kind)]
    if nominal is not None:
        about.append(
            f"{angle(nominal.degrees, tolerance)}{', included' if part.half_angle else ''}"
        )
    if part.large_diameter is not None:
        about.append(f"⌀ {length(part.large_diameter, units)}")
    facts = (
        Fact(
            "Angle allowed",
            f"{angle(part.smallest_allowed_angle.degrees, tolerance)} … "
            f"{angle(part.largest_allowed_angle.degrees, tolerance)}",
        ),
    )
    checks = _checks(result.inspections, result.best, units, tolerance)
    return Sheet(
        kind="Inspection sheet",
        title="Inspection",
        about=" · ".join(about),
        stops=stops,
        facts=facts,
        checks=checks,
        log=_log(checks, [""] * _LINES),
        cautions=cautions,
        blanks=_BLANKS,
        rest=(_WHAT_TO_DO, *_rest(result.ruled_out, notes)),
    )


def batch_sheet(
    request: JobPlanRequest, result: JobPlanResult, advisories: Sequence[Advisory], way: PlannedWay
) -> Sheet:
    """The inspection sheet of a plan: its batch, piece by piece."""
    units, batch = request.units, way.batch
    tolerance = min(found.tolerance_arcsec for found in way.angles)
    stops, cautions, _ = by_severity(advisories)
    checks = _checks(result.checks.inspections, result.checks.best, units, tolerance)
    measured = batch.pieces_to_measure
    facts = [
        *(Fact(named(found.of), plus_minus(found.tolerance_arcsec)) for found in way.angles),
        Fact("Pieces", f"{request.pieces}, of which {len(measured)} are measured"),
        Fact("Why these", batch.reason),
    ]
    if batch.pieces_per_dress is not None:
        facts.append(Fact("Dress again", f"after every {batch.pieces_per_dress} pieces"))
    more = len(measured) - MOST_LINES
    left_out = Text(
        "Pieces", (f"{more} more to measure, the last {measured[-1]}: a further sheet.",)
    )
    return Sheet(
        kind="Inspection sheet",
        title=result.job,
        about=f"{named(result.feature.kind)} · {named(way.way)}",
        stops=stops,
        facts=tuple(facts),
        checks=checks,
        log=_log(checks or _bare(way), [str(number) for number in measured[:MOST_LINES]]),
        cautions=said_once(cautions),
        blanks=_BLANKS,
        rest=(
            *((left_out,) if more > 0 else ()),
            _WHAT_TO_DO,
            *_rest(result.checks.ruled_out, ()),
        ),
    )


def _checks(
    means: Sequence[PlannedMeans], best: str | None, units: Units, tolerance: float
) -> tuple[Check, ...]:
    """The means, the best one first."""
    ordered = sorted(means, key=lambda one: one.means != best)
    return tuple(means_check(one, units, tolerance, best=one.means == best) for one in ordered)


def _bare(way: PlannedWay) -> tuple[Check, ...]:
    """What is to be measured where no means of measuring was stated: the angles and their room."""
    readings = tuple(
        Reading(named(found.of), limits=plus_minus(found.tolerance_arcsec)) for found in way.angles
    )
    return (Check("no means of measuring was stated: write down which was used", readings),)


def _log(checks: Sequence[Check], pieces: Sequence[str]) -> Log | None:
    """Lines to write in, for the readings of the best means, or of the first."""
    if not checks or not pieces:
        return None
    return Log(checks[0].name, checks[0].readings, tuple(pieces))


def _rest(ruled_out: Sequence[RuledOutInspection], notes: Sequence[str]) -> Iterator[Text]:
    if notes:
        yield Text("Notes", tuple(notes))
    if ruled_out:
        yield Text("Not possible", tuple(f"{named(out.means)}: {out.reason}" for out in ruled_out))
