"""Types shared by the tests."""

import copy
import re
from collections.abc import Callable, Mapping
from typing import Any

import pytest

#: `call("sine.setting", units="in", center_distance=5, angle=30)` gives the answer as JSON data.
Call = Callable[..., dict[str, Any]]


def stacks_request(*heights: float, **more: Any) -> dict[str, Any]:
    """A request for several stacks from the 81-piece set."""
    named = [{"name": f"h{place}", "height": height} for place, height in enumerate(heights)]
    return {"units": "in", "set": "inch-81", "heights": named, **more}


def changed(request: dict[str, Any], **changes: Any) -> dict[str, Any]:
    """A request with fields changed; `fixture__stick_out` reaches into the fixture."""
    result = copy.deepcopy(request)
    for path, value in changes.items():
        *folders, name = path.split("__")
        place = result
        for folder in folders:
            place = place[folder]
        place[name] = value
    return result


def value_at(result: dict[str, Any], path: str) -> Any:
    """The value of a result at a path such as `limits[0].rpm`."""
    value: Any = result
    for part in re.findall(r"\w+", path):
        value = value[int(part)] if part.isdigit() else value[part]
    return value


def assert_values(result: dict[str, Any], expected: Mapping[str, float], rel: float = 1e-9) -> None:
    """Each number at the paths named is the one expected, to `rel` of it."""
    for path, number in expected.items():
        found = value_at(result, path)
        assert found == pytest.approx(number, rel=rel), f"{path}: {found}, {number}"
