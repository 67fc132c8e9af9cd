"""The command of curves: an answer whose values stand beside what is said of them."""

import json

import pytest

from client_support import run
from halfangle_client import Halfangle

OVER = {"angle": [1, 30, 95]}
ASKED = ["--request", '{"units": "in", "center_distance": 5}', "--over", json.dumps(OVER)]
CURVE = ["curves", "of", "sine.setting", *ASKED, "--columns", "height", "--columns", "angle.dms"]


@pytest.mark.usefixtures("at_live")
def test_a_curve_as_over_http(capsys: pytest.CaptureFixture[str], live: Halfangle) -> None:
    """The JSON is that of the call; in a table stand values, refusals and notes."""
    status, out, err = run(capsys, *CURVE, "--json")
    assert (status, err) == (0, "")
    fields = {"operation": "sine.setting", "request": {"units": "in", "center_distance": 5}}
    columns = ["height", "angle.dms"]
    assert json.loads(out) == live.call("curves.of", {**fields, "over": OVER, "columns": columns})
    status, out, err = run(capsys, *CURVE)
    assert (status, err) == (0, "")
    assert "0.087262, 2.5, –" in out
    assert "should be less than 90°; got 95" in out
    assert out.count("NOTE") == 1


@pytest.mark.usefixtures("at_live")
def test_a_value_of_a_curve(capsys: pytest.CaptureFixture[str]) -> None:
    """Its values are picked as any answer's, a gap where a point was refused."""
    status, out, err = run(capsys, *CURVE, "--pick", "columns.0.values,counts.refused")
    assert (status, err) == (0, "")
    assert out == "0.0872620321864176; 2.5; null | 1\n"


@pytest.mark.usefixtures("at_live")
def test_an_unknown_operation(capsys: pytest.CaptureFixture[str]) -> None:
    """What has no curve is refused with what was meant; without a name the argument is missed."""
    status, out, err = run(capsys, "curves", "of", "sine.settin", *ASKED, "--columns", "height")
    assert (status, out) == (1, "")
    assert "did you mean sine.setting" in err
    status, out, err = run(capsys, "curves", "of", *ASKED, "--columns", "height")
    assert (status, out) == (2, "")
    assert "missing argument 'OPERATION'" in err


def test_help_names_what_has_curves(capsys: pytest.CaptureFixture[str]) -> None:
    """Help lists the operations, and says of a list of texts how it is written."""
    _, out, _ = run(capsys, "curves", "of", "--help")
    spoken = " ".join(out.split())
    assert "OPERATION Name of the operation. One of: centers.hole, centers.limits" in spoken
    assert "each at most 200 characters] A JSON list, or entry by entry." in spoken
    assert "with spaces between" not in spoken
