"""The operations of a routing, made of a plan: nothing is worked out here that the plan says."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from halfangle_service.fields.advisories import Advisory
from halfangle_service.topics.jobs.plan.parts.feed import PlanAssumption
from halfangle_service.topics.jobs.plan.plan import JobPlanRequest
from halfangle_service.topics.jobs.plan.result import JobPlanResult, PlannedWay
from halfangle_service.topics.jobs.plan.shop.equipment import PlanEquipment
from halfangle_service.topics.jobs.plan.usual_steps import Stage
from halfangle_service.topics.jobs.routing import masters, times
from halfangle_service.topics.jobs.routing.masters import Master
from halfangle_service.topics.jobs.routing.result import (
    RoutingOperation,
    RoutingTool,
    RoutingValue,
    TimedBy,
)
from halfangle_service.topics.jobs.routing.tools import Tools
from halfangle_service.topics.jobs.routing.values import Figures

#: From one operation to the next, so that a planner finds room for one of his own between.
SEQUENCE_STEP = 10


@dataclass(frozen=True, slots=True)
class _Part:
    """An operation before it has its place.

    `minutes` are those of one time; `timed_with` is the master in whose time they are.
    """

    master: Master
    lines: Iterable[str]
    timed_by: TimedBy
    times_done: int
    minutes: float | None = None
    timed_with: Master | None = None
    cautions: Iterable[str] = ()
    assumptions: Iterable[PlanAssumption] = ()
    tools: Iterable[RoutingTool] = ()
    values: Iterable[RoutingValue] = ()


def operations_of(
    request: JobPlanRequest,
    plan: JobPlanResult,
    way: PlannedWay,
    shop: PlanEquipment,
    advisories: Sequence[Advisory],
) -> list[RoutingOperation]:
    """The operations of one way of a plan, whose `steps` are those of that way."""
    parts = list(_Parts(request, plan, way, shop))
    places = {part.master: SEQUENCE_STEP * place for place, part in enumerate(parts, start=1)}
    stops = [advisory.message for advisory in advisories if advisory.severity == "stop"]
    return [_operation(part, places, stops) for part in parts]


def _operation(part: _Part, places: dict[Master, int], stops: Sequence[str]) -> RoutingOperation:
    """An operation at its place; what says stop of the answer says it of each of them."""
    master, sets_up = part.master, part.master.kind == "set-up"
    seconds = None if part.minutes is None else times.SECONDS_PER_MINUTE * part.minutes
    return RoutingOperation(
        sequence=places[master],
        code=master.code,
        kind=master.kind,
        name=master.name,
        text="\n".join((*(f"STOP: {stop}" for stop in stops), *part.lines)),
        set_up_seconds=seconds if sets_up else None,
        run_seconds=None if sets_up else seconds,
        timed_by=part.timed_by,
        times_done=part.times_done,
        timed_in=None if part.timed_with is None else places[part.timed_with],
        assumptions=list(part.assumptions),
        tools=list(part.tools),
        values=list(part.values),
        cautions=list(dict.fromkeys(part.cautions)),
        stops=list(stops),
    )


class _Parts:
    """The operations of one way, in the order of the plan's steps."""

    def __init__(
        self, request: JobPlanRequest, plan: JobPlanResult, way: PlannedWay, shop: PlanEquipment
    ) -> None:
        self._request, self._plan, self._way, self._shop = request, plan, way, shop
        self._tools = Tools(plan, way, shop, request.units)
        self._figures = Figures(request.units)

    def __iter__(self) -> Iterator[_Part]:
        yield from self._set_up()
        yield self._grinding()
        if self._way.time.dressings:
            yield self._dressing_again()
        yield from self._inspecting()
        yield _Part(
            masters.FINISHING,
            self._lines("finishing"),
            "piece",
            self._request.pieces,
            cautions=self._cautions("finishing"),
        )

    def _set_up(self) -> Iterator[_Part]:
        """Dressing, holding and setting; the plan has one time for all of them.

        It stands with what sets the angle, which is the dresser of a flank.
        """
        way, tools, figures = self._way, self._tools, self._figures
        dressing = masters.dressing(way.way)
        sets = self._has("setting")
        timed = masters.setting(way.way) if sets else dressing
        time = way.time.setup_minutes
        usual = list(times.of_setting_up(self._request, way, self._shop))
        yield _Part(
            dressing,
            self._lines("dressing"),
            "batch",
            1,
            None if sets else time,
            timed if sets else None,
            self._cautions("dressing"),
            () if sets else usual,
            tools.of_dressing(),
            () if sets else figures.of_setting(way),
        )
        yield _Part(
            masters.holding(way.way, self._plan.feature.kind),
            self._lines("holding"),
            "batch",
            1,
            timed_with=timed,
            cautions=self._cautions("holding"),
            tools=tools.of_holding(),
        )
        if sets:
            yield _Part(
                timed,
                self._lines("setting"),
                "batch",
                1,
                time,
                cautions=self._cautions("setting"),
                assumptions=usual,
                tools=tools.of_setting(),
                values=figures.of_setting(way),
            )

    def _grinding(self) -> _Part:
        way = self._way
        return _Part(
            masters.grinding(way.way, self._plan.feature.kind),
            self._lines("grinding"),
            "piece",
            self._request.pieces,
            way.time.loading_minutes + way.time.minutes_per_piece,
            cautions=self._cautions("grinding"),
            assumptions=times.of_a_piece(self._request, way),
            tools=self._tools.of_grinding(),
            values=self._figures.of_grinding(way),
        )

    def _dressing_again(self) -> _Part:
        way = self._way
        return _Part(
            masters.dressing_again(way.way),
            (way.batch.reason,),
            "dress",
            way.time.dressings,
            way.time.dressing_minutes,
            cautions=self._cautions("dressing"),
            assumptions=times.of_dressing_again(self._request),
            tools=self._tools.of_dressing(),
        )

    def _inspecting(self) -> Iterator[_Part]:
        """The runout where it has a limit, then the angle by the best means; one time for both.

        The runout is read first as it was ground, before the work is loosened.
        """
        way, checks, pieces = self._way, self._plan.checks, self._way.time.pieces_inspected
        angle = masters.inspecting(checks.best)
        best = [means for means in checks.inspections if means.means == checks.best]
        lines = [f"{f'{means.of}: ' if means.of else ''}{means.how}" for means in best]
        if not best:
            lines = [_NO_MEANS, *(f"Usual: {each.action}" for each in checks.not_at_hand)]
        if way.runout_budget is not None:
            yield _Part(
                masters.RUNOUT,
                [seat.how for seat in checks.seat_readings],
                "inspected-piece",
                pieces,
                timed_with=angle,
                tools=self._tools.of_runout(),
                values=self._figures.of_runout(way.runout_budget.limit_tir, checks),
            )
        yield _Part(
            angle,
            (*lines, way.batch.reason, self._pieces_to_measure()),
            "inspected-piece",
            pieces,
            way.time.inspection_minutes,
            assumptions=times.of_inspecting(way, self._shop),
            tools=self._tools.of_inspecting(checks),
            values=self._figures.of_inspecting(way, checks),
        )

    def _pieces_to_measure(self) -> str:
        """Which pieces are inspected; of many the plan names the first only."""
        batch = self._way.batch
        numbers = ", ".join(map(str, batch.pieces_to_measure))
        more = batch.pieces_inspected - len(batch.pieces_to_measure)
        return f"Pieces: {numbers}{f' and {more} more by the same rule' if more else ''}."

    def _has(self, stage: Stage) -> bool:
        return any(step.stage == stage for step in self._plan.steps)

    def _lines(self, stage: Stage) -> list[str]:
        """What is done at a stage, a line a step, by the plan's numbers."""
        steps = (step for step in self._plan.steps if step.stage == stage)
        return [f"{step.number}. {step.action}" for step in steps]

    def _cautions(self, stage: Stage) -> list[str]:
        steps = (step for step in self._plan.steps if step.stage == stage)
        return [caution for step in steps for caution in step.cautions]


_NO_MEANS = (
    "No means at hand is known to prove the angle within its tolerance: measure it by one that "
    "does before it is accepted."
)
