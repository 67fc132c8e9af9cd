"""The likely causes as an answer gives them, and the frame of every answer."""

from collections.abc import Mapping, Sequence
from typing import Any

from halfangle_service.topics.jobs.correction.request import CorrectionObservations
from halfangle_service.topics.jobs.correction.result import CorrectionCause, JobsCorrectionResult
from halfangle_service.trade.correction.causes import Ranked, Seen, ranked, telling

#: What an answer shows only where it was asked of.
_SHOWN = (
    "sense",
    "slips",
    "slips_found",
    "angle_error_arcsec",
    "included_angle_error_arcsec",
    "seats",
    "expected_included_angle_error_arcsec",
    "forecast",
)


def observed(observations: CorrectionObservations) -> dict[str, str]:
    """What was seen, by its field: yes, no, or the form; what was not stated is left out."""
    seen: dict[str, Any] = {
        name: getattr(observations, name) for name in type(observations).model_fields
    }
    words = {True: "yes", False: "no"}
    return {n: words.get(value, value) for n, value in seen.items() if value is not None}


def answer_of(seen: Seen, leave_it: bool | None, **shown: Any) -> JobsCorrectionResult:
    """The answer: what was worked out, with the causes ranked by what was seen."""
    found = ranked(seen)
    not_stated = [n for n in telling(found) if n not in seen.observed]
    values: Mapping[str, Any] = {
        **dict.fromkeys(_SHOWN),
        "settings": [],
        **shown,
        "leave_it": leave_it,
        "causes": _written(found),
        "not_stated": [f"observations/{name}" for name in not_stated],
    }
    return JobsCorrectionResult(**values)


def _written(found: Sequence[Ranked]) -> list[CorrectionCause]:
    return [
        CorrectionCause(
            cause=one.cause.name,
            evidence=one.evidence,
            for_it=list(one.for_it),
            against_it=list(one.against_it),
            observation=one.cause.observation,
            check=one.cause.check,
            mend=one.cause.mend,
            source=one.cause.source,
            standing=one.cause.standing,
        )
        for one in found
    ]
