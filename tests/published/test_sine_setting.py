"""The sine relation against published values."""

import pytest

from support import Call


@pytest.mark.outside("sine.setting", source="Common practice: 30° on a 5 in sine plate is 2.5 in.")
def test_thirty_degrees_on_five_inches_is_half(call: Call) -> None:
    """30° on a 5 in sine plate asks for a stack of 2.5 in."""
    answer = call("sine.setting", units="in", center_distance=5, angle=30)
    assert answer["result"]["height"] == pytest.approx(2.5, abs=1e-12)
