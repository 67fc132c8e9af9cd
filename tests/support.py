"""Types shared by the tests."""

from collections.abc import Callable
from typing import Any

#: `call("sine.setting", units="in", center_distance=5, angle=30)` gives the answer as JSON data.
Call = Callable[..., dict[str, Any]]
