"""What to do next with a part, by what its measurement proves."""

import math
from collections.abc import Iterator
from dataclasses import replace
from typing import Literal

from pydantic import Field

from halfangle_service.fields import ResultModel
from halfangle_service.topics.inspection.verdict.reading import Judged
from halfangle_service.topics.inspection.verdict.request import TEMPERATURES, Party
from halfangle_service.topics.inspection.verdict.wording import Words
from halfangle_service.trade.uncertainty import Verdict

NextStep = Literal[
    "accept",
    "set-apart",
    "hold-back",
    "state-the-uncertainty",
    "measure-better",
    "read-more-often",
    "let-it-soak",
    "bring-within-gauge-limits",
    "say-who-proves",
]
#: Temperature matters where it makes more than so much of the variance, in percent.
_MOST_OF_IT = 50.0


class InspectionNextStep(ResultModel):
    """One thing to do next."""

    step: NextStep = Field(description="What to do, as a token.")
    words: str = Field(description="The same in plain words, with its figures.")


def next_steps(
    judged: Judged, verdict: Verdict, who_proves: Party | None, words: Words
) -> list[InspectionNextStep]:
    """What to do next, the first thing first."""
    return [
        InspectionNextStep(step=step, words=said)
        for step, said in _steps(judged, verdict, who_proves, words)
    ]


def _steps(
    judged: Judged, verdict: Verdict, who_proves: Party | None, words: Words
) -> Iterator[tuple[NextStep, str]]:
    if verdict == "conforming":
        yield "accept", f"Accept it: {words.name} keeps its limits by the rule named."
        return
    if verdict == "not-conforming":
        yield "set-apart", _set_apart(judged, words)
        return
    if who_proves == "supplier":
        yield "hold-back", "Do not deliver it as conforming: that is not proved."
    elif who_proves == "customer":
        yield "accept", "It cannot be rejected: that it is out of its limits is not proved."
    yield from _to_prove(judged, words)
    if who_proves is None:
        yield (
            "say-who-proves",
            "Say who proves: a supplier holds back what is not proved to conform, a customer "
            "cannot reject what is not proved to be out of its limits.",
        )


def _set_apart(judged: Judged, words: Words) -> str:
    case, value = judged.case, judged.value
    over = value > case.upper
    by = value - case.upper if over else case.lower - value
    return (
        f"Mark it and set it apart: {words.name} is {words.small(by)} "
        f"{'over its upper' if over else 'under its lower'} limit."
    )


def _to_prove(judged: Judged, words: Words) -> Iterator[tuple[NextStep, str]]:
    """What would prove the one or the other."""
    case, value = judged.case, judged.value
    needed = case.needed_uncertainty(value)
    wanted = "" if needed is None else f" A standard uncertainty of {words.small(needed)} would do."
    if not case.stated:
        yield "state-the-uncertainty", f"Say how well {words.name} is known.{wanted}"
    elif needed is not None:
        yield "measure-better", f"Measure it with a better instrument.{wanted}"
    if _told_by_more_readings(judged):
        yield (
            "read-more-often",
            "Read it more often: with the same scatter known from many readings it is proved.",
        )
    if _mostly_temperature(judged):
        yield (
            "let-it-soak",
            "Let part and instrument come to 20 °C: most of the uncertainty is temperature's.",
        )
    zone = case.accepted()
    if zone is not None and not zone[0] <= value <= zone[1]:
        corrected = any(c.name in TEMPERATURES for c in case.budget.contributions)
        yield (
            "bring-within-gauge-limits",
            f"Where it can be corrected, bring it within the gauge limits: {_span(zone, words)}, "
            f"{'at 20 °C, ' if corrected else ''}measured as well as this time.",
        )


def _span(zone: tuple[float, float], words: Words) -> str:
    low, high = zone
    if math.isinf(low):
        return f"at most {words.value(high)}"
    if math.isinf(high):
        return f"at least {words.value(low)}"
    return f"from {words.value(low)} to {words.value(high)}"


def _told_by_more_readings(judged: Judged) -> bool:
    """Whether it would be proved were the scatter known from many readings."""
    case = judged.case
    if math.isinf(case.budget.degrees_of_freedom):
        return False
    known = tuple(replace(c, degrees_of_freedom=math.inf) for c in case.budget.contributions)
    surer = replace(case, budget=replace(case.budget, contributions=known))
    return surer.verdict(judged.value) != "not-provable"


def _mostly_temperature(judged: Judged) -> bool:
    budget = judged.case.budget
    shares = zip(budget.contributions, budget.shares(), strict=True)
    return math.fsum(share for c, share in shares if c.name in TEMPERATURES) > _MOST_OF_IT
