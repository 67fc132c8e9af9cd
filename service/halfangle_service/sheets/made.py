"""A sheet made of an operation's request: the one way in for whoever serves sheets."""

from collections.abc import Callable
from dataclasses import dataclass, replace
from functools import partial
from typing import Any, Literal

from halfangle_service import __version__
from halfangle_service.fields import ResultModel
from halfangle_service.fields.advisories import Advisory
from halfangle_service.operation import Operation, Outcome
from halfangle_service.sheets.code import code_of
from halfangle_service.sheets.inspection import batch_sheet, inspection_sheet
from halfangle_service.sheets.model import Origin, Paper, Sheet
from halfangle_service.sheets.overlay import overlay_page
from halfangle_service.sheets.page import page_of
from halfangle_service.sheets.plan import plan_sheet
from halfangle_service.sheets.single import single_sheet
from halfangle_service.topics.inspection.overlay import InspectionOverlayResult
from halfangle_service.topics.jobs.plan.plan import planned, shop_of
from halfangle_service.topics.jobs.plan.ranking import place_of_way
from halfangle_service.topics.jobs.plan.result import JobPlanResult

AnyOperation = Operation[Any, Any]
SheetKind = Literal["set-up", "inspection"]

#: The plan: the one operation whose sheet has a way, and kinds.
PLAN, INSPECTION, OVERLAY = "jobs.plan", "inspection.plan", "inspection.overlay"
#: Operations that have a sheet, in the order of the catalogue.
WITH_SHEET = (
    INSPECTION,
    OVERLAY,
    "jobs.center",
    PLAN,
    "runout.indicate",
    "runout.true-up",
    "sine.compound",
    "sine.low-stack",
    "sine.setting",
    "sine.taper-setting",
    "wheels.dressing",
    "wheels.flank",
    "wheels.speed",
)


@dataclass(frozen=True, slots=True)
class Choice:
    """What may be chosen of a sheet: its paper; of a plan the way and the kind of sheet.

    `way`: a name of `ways`, or the place of one from 1; empty for the first.
    """

    paper: Paper = "a4"
    way: str = ""
    kind: SheetKind = "set-up"


@dataclass(frozen=True, slots=True)
class Page:
    """A page of HTML, the request that it answers as JSON, and what the answer advises."""

    html: str
    request_json: str
    advisories: tuple[Advisory, ...]


def page_for(operation: AnyOperation, request: Any, choice: Choice) -> Page:
    """The page of an operation's answer to a request.

    Raises Refusal where the request cannot be fulfilled, UnknownWay for a way that is not there.
    """
    outcome, place = _outcome(operation, request, choice)
    fingerprint = operation.fingerprint(request, outcome)
    # As it can be sent again; without defaults, so that one request is written in one way.
    sent = request.model_dump_json(exclude_defaults=True, indent=1)
    title = getattr(request, "job", operation.title)
    code = code_of(operation.path, request, fingerprint, title)
    origin = Origin(operation.name, __version__, fingerprint, sent, code)
    if isinstance(outcome.result, InspectionOverlayResult):
        html = overlay_page(request, outcome.result, outcome.advisories, origin, choice.paper)
    else:
        html = page_of(_sheet(operation, request, outcome, choice, place), origin, choice.paper)
    return Page(html, sent, outcome.advisories)


def _outcome(
    operation: AnyOperation, request: Any, choice: Choice
) -> tuple[Outcome[ResultModel], int]:
    """The outcome that the sheet shows, and the place of the way that was chosen, from 0."""
    if operation.name == OVERLAY:
        drawn: Outcome[ResultModel] = operation.outcome(
            request.model_copy(update={"formats": ["svg"]})
        )
        return drawn, 0
    if operation.name != PLAN:
        return operation.outcome(request), 0
    by_this_way = partial(planned, profiles=operation.profiles, shown=choice.way)
    outcome: Outcome[ResultModel] = replace(operation, calculate=by_this_way).outcome(request)
    return outcome, place_of_way([way.way for way in _plan_of(outcome).ways], choice.way)


def _sheet(
    operation: AnyOperation,
    request: Any,
    outcome: Outcome[ResultModel],
    choice: Choice,
    place: int,
) -> Sheet:
    if operation.name == PLAN:
        plan = _plan_of(outcome)
        if choice.kind == "inspection":
            return batch_sheet(request, plan, outcome.advisories, plan.ways[place])
        return plan_sheet(
            request, plan, outcome.advisories, shop_of(request, operation.profiles), place
        )
    made: Callable[..., Sheet] = partial(single_sheet, operation)
    if operation.name == INSPECTION:
        made = inspection_sheet
    return made(request, outcome.result, outcome.advisories)


def _plan_of(outcome: Outcome[ResultModel]) -> JobPlanResult:
    result = outcome.result
    if not isinstance(result, JobPlanResult):
        raise TypeError(f"{type(result).__name__} is no plan")
    return result
