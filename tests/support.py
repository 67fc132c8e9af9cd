"""Types shared by the tests."""

import copy
from collections.abc import Callable
from typing import Any

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
