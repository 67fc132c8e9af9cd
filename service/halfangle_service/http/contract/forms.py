"""How a form may be laid out, as data: what stands together, what is advanced, decimals to show."""

import re
from collections.abc import Iterable
from typing import Any

from halfangle_service.fields.base import ERRORS, Group, RequestModel
from halfangle_service.trade.wording import BENCH_DECIMALS

Json = dict[str, Any]

#: Names that say how wrong something may be.
_ERROR = re.compile(r"_error_limit(_|$)|_uncertainty(_|$)")


def form_hints(requests: Iterable[type[RequestModel]]) -> Json:
    """Groups by the names of their fields, once for all requests, and decimals by unit."""
    requests = tuple(requests)
    titled: dict[str, Group] = {}
    fields: dict[str, dict[str, None]] = {}
    for request in requests:
        for group, names in request.groups():
            titled.setdefault(group.title, group)
            fields.setdefault(group.title, {}).update(dict.fromkeys(names))
    grouped = {name for names in fields.values() for name in names}
    stated = (name for request in requests for name in request.model_fields)
    fields[ERRORS.title] |= dict.fromkeys(
        name for name in stated if _ERROR.search(name) and name not in grouped
    )
    groups = [_written(titled[title], tuple(names)) for title, names in fields.items()]
    return {"groups": groups, "decimals": BENCH_DECIMALS}


def _written(group: Group, names: tuple[str, ...]) -> Json:
    advanced = {"advanced": True} if group.advanced else {}
    return {"title": group.title, **advanced, "fields": list(names)}
