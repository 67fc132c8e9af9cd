"""Types shared by the tests."""

import copy
import os
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


def single_values(result: Any, path: str = "") -> dict[str, Any]:
    """Every single value of a result, by the path that picks it."""
    if isinstance(result, dict):
        inner = [(str(name), value) for name, value in result.items()]
    elif isinstance(result, list):
        inner = [(str(place), value) for place, value in enumerate(result)]
    else:
        return {path: result}
    found: dict[str, Any] = {}
    for name, value in inner:
        found |= single_values(value, f"{path}.{name}" if path else name)
    return found


def need(condition: object, reason: str) -> None:
    """Skip the test where something is lacking; with CI=true nothing may lack."""
    if condition:
        return
    if os.environ.get("CI") == "true":
        pytest.fail(f"{reason}; CI has it")
    pytest.skip(reason)


class _Driving:
    """Whether the test that runs says that it drives a program."""

    allowed = False


DRIVING = _Driving()


def need_program(found: object, reason: str) -> None:
    """Skip the test where a program is absent that it drives; with CI=true none may be.

    Such tests are marked `program`, so that what needs Python alone can be run apart.
    """
    assert DRIVING.allowed, "the test drives a program: mark it `program`"
    need(found, reason)
