"""Answers as people and tables read them: in a terminal, in a notebook, as records."""

import csv
import io
import re
import xml.etree.ElementTree as ET
from base64 import b64decode
from typing import Any

import pytest

from halfangle_client import Halfangle, errors, models
from halfangle_client.answer import Answer
from halfangle_client.rows import Outcomes
from halfangle_client.views import page, records, text
from halfangle_service.registry import load_registry

SETTING: dict[str, Any] = {"units": "in", "center_distance": 5, "angle": 30}
FAST: dict[str, Any] = {
    "units": "in",
    "wheel_diameter": 7,
    "rpm": 3450,
    "marked_rpm": 3000,
}


def answer(**result: Any) -> dict[str, Any]:
    """An answer made up, with one advisory of each kind, the mildest first."""
    advisories = [
        {"code": f"a-{severity}", "severity": severity, "message": f"<{severity}> it."}
        for severity in ("note", "whisper", "caution", "stop")
    ]
    return {"result": result, "advisories": advisories, "basis": {}}


def tree_of(text: str) -> ET.Element:
    """The elements of a well-formed text."""
    return ET.fromstring(text)  # noqa: S314 our own text, not foreign XML


@pytest.fixture(scope="module")
def plan(client: Halfangle) -> models.CenterJobAnswer:
    """The plan of a center."""
    return client.jobs.center(**load_registry().operations["jobs.center"].example)


def test_in_a_terminal_stops_come_first(client: Halfangle) -> None:
    """Printed, an answer says stop before anything else, then each value by its path."""
    fast = client.wheels.speed(**FAST)
    lines = str(fast).splitlines()
    assert lines[0].startswith("STOP: ")
    assert any(re.match(r"surface_speed\S* +\d", line) for line in lines)
    assert repr(fast).startswith("<WheelSpeedAnswer: stop ")
    assert len(repr(fast)) <= 170


def test_lines_say_every_value(plan: models.CenterJobAnswer) -> None:
    """Angles stand in both forms, lists of objects by their number, None as a dash."""
    lines = [re.sub(" {2,}", "  ", line) for line in str(plan).splitlines()]
    assert '''cone.included_angle  60° = 60°00'00.00"''' in lines
    assert "plate_setting.blocks  2, 0.5" in lines
    assert f"steps  {len(plan.result.steps)} entries" in lines
    assert "runout_budget.tir.value  –" in lines
    assert lines[0].startswith("caution: ")


def test_advisories_are_sorted_by_weight() -> None:
    """A stop comes first and a note last; a word of a later release stands before the notes."""
    severities = [each["severity"] for each in records.sorted_advisories(answer())]
    assert severities == ["stop", "caution", "whisper", "note"]
    assert text.line("Any", answer()) == "<Any: stop a-stop, caution a-caution, whisper a-whisper>"


def test_a_notebook_shows_advisories_above_a_small_table() -> None:
    """HTML is well-formed and escaped: advisories, own values, folded parts, the drawing."""
    svg = '<svg xmlns="http://www.w3.org/2000/svg"><text>&lt;1&gt;</text></svg>'
    made = answer(
        name="a<b",
        angle={"degrees": 0.5, "dms": "0°30'"},
        part={"x": 1.0},
        rows=[{"y": 2}],
        svg=svg,
    )
    html = page.answer_as_html(made)
    tree = tree_of(html)
    assert [p.find("b").text for p in tree.findall("p")] == ["STOP", "caution", "whisper", "note"]  # type: ignore[union-attr]
    own = [["".join(cell.itertext()) for cell in row] for row in tree.findall("table/tr")]
    assert own == [["name", "a<b"], ["angle", "0.5° = 0°30'"]]
    assert [s.text for s in tree.findall("details/summary")] == ["part", "rows (1)"]
    source = tree.find("img").attrib["src"]  # type: ignore[union-attr]
    assert b64decode(source.partition("base64,")[2]).decode() == svg


def test_every_answer_can_be_shown(client: Halfangle, plan: models.CenterJobAnswer) -> None:
    """The plan's HTML is well-formed, and its own table short."""
    tree = tree_of(plan._repr_html_())
    assert len(tree.findall("table/tr")) < 15
    assert len(tree.findall("details")) > 5


def test_drawings_are_svg(client: Halfangle) -> None:
    """A result with a drawing gives it as SVG that a notebook shows; one without gives none."""
    flank = client.wheels.flank(
        units="in",
        work=models.ConeWork(
            kind="cone", included_angle=60, large_diameter=0.75, small_diameter=0.05
        ),
        wheel_width=0.75,
        dresser=models.SineBaseDresser(kind="sine-base", center_distance=2),
        depth_per_pass=0.0005,
    )
    (drawing,) = flank.drawings
    assert drawing._repr_svg_() == flank.result.svg
    assert tree_of(drawing).tag.endswith("svg")
    assert client.sine.setting(**SETTING).drawings == []


def test_a_record_is_flat(client: Halfangle) -> None:
    """An angle is its degrees, and its text beside them; nothing is an object."""
    (record,) = client.sine.setting(**SETTING).to_records()
    assert record["angle.degrees"] == pytest.approx(30, rel=1e-15)
    assert record["angle.dms"] == "30°00'00.00\""
    assert record["height"] == pytest.approx(2.5, rel=1e-15)
    assert record["stop"] is False
    assert not any(isinstance(value, dict) for value in record.values())


def test_rows_of_an_answer_are_records(client: Halfangle, plan: models.CenterJobAnswer) -> None:
    """A table gives a record a row, a published table too; another list when it is named."""
    table = client.sine.table(
        units="in", center_distance=5, first_angle=0, last_angle=60, angle_step=5
    )
    found = table.to_records()
    assert [record["angle.degrees"] for record in found] == [5.0 * n for n in range(13)]
    assert all("angle.dms" in record for record in found)
    assert len(client.blocks.list_sets().to_records()) > 3
    assert len(plan.to_records()) == 1
    named = plan.to_records("angle_budget.included_angle_error_arcsec.contributions")
    assert {"roll_difference", "particle"} <= {record["name"] for record in named}
    assert named[0]["job"] == plan.result.job
    with pytest.raises(KeyError, match="cone: no list of objects"):
        plan.to_records("cone")


def test_a_stop_is_in_every_record(client: Halfangle) -> None:
    """A record of an answer that says stop says so."""
    (record,) = client.wheels.speed(**FAST).to_records()
    assert record["stop"] is True
    assert record["advisories"].startswith("stop ")
    outcomes = client.map(client.wheels.speed, [FAST, {**FAST, "rpm": 1000}])
    assert repr(outcomes) == "<2 rows: 2 answers, 1 of them STOP, 0 errors>"


@pytest.fixture(scope="module")
def outcomes(client: Halfangle) -> Outcomes[models.SineSettingAnswer]:
    """Settings of three angles, one of them steep, and of one that is none."""
    rows = [{**SETTING, "angle": angle} for angle in (30, 60, 100, 45)]
    return client.map(client.sine.setting, rows)


def test_outcomes_have_one_set_of_columns(outcomes: Outcomes[models.SineSettingAnswer]) -> None:
    """A refused row says why, and columns are the same for all; a null object is none of them."""
    found = outcomes.to_records()
    assert [record["row"] for record in found] == [0, 1, 2, 3]
    assert {tuple(record) for record in found} == {tuple(found[0])}
    assert [record["problem"] is None for record in found] == [True, True, False, True]
    assert found[2]["problem"].startswith("InvalidRequest: ")
    assert "complement_setting" not in found[0]
    assert found[1]["complement_setting.angle.dms"] == "30°00'00.00\""
    assert isinstance(outcomes.errors[2], errors.InvalidRequest)
    rows = tree_of(f"<div>{outcomes._repr_html_()}</div>").findall("table/tr")
    assert len(rows) == 1 + 4


def test_as_csv(outcomes: Outcomes[models.SineSettingAnswer]) -> None:
    """The records are lines of a CSV file, as they are."""
    found = outcomes.to_records()
    file = io.StringIO()
    writer = csv.DictWriter(file, list(found[0]))
    writer.writeheader()
    writer.writerows(found)
    read = list(csv.DictReader(io.StringIO(file.getvalue())))
    assert [row["height"] for row in read] == [str(r["height"] or "") for r in found]


def test_in_pandas(outcomes: Outcomes[models.SineSettingAnswer]) -> None:
    """Pandas makes a table of the records, numbers as numbers."""
    pandas = pytest.importorskip("pandas", reason="pandas is not installed")
    frame = pandas.DataFrame(outcomes.to_records())
    assert str(frame["height"].dtype) == "float64"
    assert frame["height"].dropna().tolist() == pytest.approx([2.5, 5 * 0.75**0.5, 5 * 0.5**0.5])


def test_in_polars(outcomes: Outcomes[models.SineSettingAnswer]) -> None:
    """So does polars."""
    polars = pytest.importorskip("polars", reason="polars is not installed")
    frame = polars.DataFrame(outcomes.to_records())
    assert frame["height"].dtype == polars.Float64
    assert frame["height"].drop_nulls().to_list() == pytest.approx(
        [2.5, 5 * 0.75**0.5, 5 * 0.5**0.5]
    )
    assert frame["angle.dms"].to_list()[2] is None


def test_every_whole_answer_can_be_shown() -> None:
    """Each model with a result and advisories is an Answer."""
    whole = [
        model
        for name in models.__all__
        if "advisories" in getattr(model := getattr(models, name), "model_fields", ())
        and "result" in model.model_fields
    ]
    assert len(whole) > 50
    assert all(issubclass(model, Answer) for model in whole)
