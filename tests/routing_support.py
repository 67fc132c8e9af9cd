"""Named jobs, their plans and the routings of their ways, for the tests of routings."""

import json
from functools import cache
from typing import Any

from fields_support import watched_answer
from halfangle_service.registry import load_registry
from sheets_support import FEATURES, center_job, plan_operation, shop_job

Json = dict[str, Any]

CENTER = "HL-0412 machine center"
JOBS = (CENTER, *FEATURES)


def sent(job: str) -> Json:
    """The request of a named job."""
    return center_job() if job == CENTER else shop_job(job, FEATURES[job])


def answered(name: str, request: Json) -> Json:
    """An answer of an operation that knows the shop's profile."""
    operation = load_registry().operations[name].in_shop(plan_operation().profiles)
    body = operation.answer_json(operation.request.model_validate(request))
    return watched_answer(name, json.loads(body))


@cache
def plan(job: str) -> Json:
    """The plan of a named job."""
    return answered("jobs.plan", sent(job))


@cache
def routings(job: str) -> list[Json]:
    """The routing of each of its ways."""
    count = len(plan(job)["result"]["ways"])
    return [answered("jobs.routing", sent(job) | {"way": str(n + 1)}) for n in range(count)]
