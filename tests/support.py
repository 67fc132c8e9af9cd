"""Types shared by the tests."""

from collections.abc import Callable
from typing import Any

#: `call("sine.setting", units="in", center_distance=5, angle=30)` gives the answer as JSON data.
Call = Callable[..., dict[str, Any]]


def stacks_request(*heights: float, **more: Any) -> dict[str, Any]:
    """A request for several stacks from the 81-piece set."""
    named = [{"name": f"h{place}", "height": height} for place, height in enumerate(heights)]
    return {"units": "in", "set": "inch-81", "heights": named, **more}
