"""The formulas that README and pages print, in LibreOffice Calc, as a person types them."""

import json
import re
import shutil
import subprocess
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from halfangle_service.errors import Unreachable
from halfangle_service.http.contract.samples import sample_answer
from halfangle_service.http.page.documents import FORMULAS_OF_CELLS
from halfangle_service.http.page.samples import ORIGIN, samples_of
from halfangle_service.registry import load_registry
from serving_support import free_port, serving
from support import need_program

pytestmark = pytest.mark.program

README = Path(__file__).parents[2] / "README.md"
CALC = Path(__file__).with_name("calc.py")
PYTHON = "/usr/bin/python3"
LOCALES = ("en-US", "de-DE")
OPERATIONS = load_registry().operations
ROWS = 50
#: Rows past the good ones: an angle that cannot be set, one that is none, no reading in a cell.
TOO_STEEP, NO_ANGLE, NO_READING = ROWS, ROWS + 1, ROWS + 2
ALL_ROWS = ROWS + 3

Cells = dict[str, list[tuple[int, float, str]]]


def angle_of(row: int) -> float | str:
    """Angles as a shop writes them: decimal degrees, and degrees and minutes, in turn."""
    degrees, minutes = 1 + row, (7 * row) % 60
    if row == TOO_STEEP:
        return 95.0
    if row == NO_ANGLE:
        return "see drawing"
    return f"{degrees}°{minutes:02}'" if row % 2 else round(degrees + minutes / 60, 3)


def readings_of(row: int) -> list[float]:
    """Four readings at equal steps round a turn."""
    return [0.0, round(0.0003 + row / 1e5, 5), 0.001, -0.0004]


def printed_in_readme() -> list[str]:
    """The formulas of the README, in their order."""
    return re.findall(r"^=.*$", README.read_text("utf-8"), re.MULTILINE)


def sample(name: str) -> str:
    """The formula on the page of an operation."""
    return samples_of(OPERATIONS[name], json.loads(sample_answer(OPERATIONS[name]))).formula


@pytest.fixture(scope="module")
def origin() -> Iterator[str]:
    """Where a running service is, for a program that is there."""
    need_program(shutil.which("soffice"), "LibreOffice Calc is not installed")
    has_uno = subprocess.run([PYTHON, "-c", "import uno"], capture_output=True, check=False)
    need_program(has_uno.returncode == 0, "python3-uno is not installed")
    port = free_port()
    command = ["-m", "halfangle_service.cli", "serve", "--port", str(port)]
    with serving([*command, "--log-level", "error"], port):
        yield f"http://127.0.0.1:{port}"


@pytest.fixture(scope="module", params=LOCALES)
def cells(request: pytest.FixtureRequest, origin: str) -> Cells:
    """What a sheet of this locale shows, each formula typed once and pulled down."""
    given: dict[str, Any] = {f"A{row + 1}": angle_of(row) for row in range(ALL_ROWS)}
    for row in range(ALL_ROWS):
        given |= {f"{c}{row + 1}": r for c, r in zip("FGHI", readings_of(row), strict=True)}
    given[f"G{NO_READING + 1}"] = ""
    typed = {name: text.replace(ORIGIN, origin) for name, text in formulas().items()}
    asked = {"locale": request.param, "cells": given, "typed": typed, "rows": ALL_ROWS}
    done = subprocess.run(
        [PYTHON, str(CALC)],
        input=json.dumps({**asked, "read": [*typed]}),
        capture_output=True,
        text=True,
        timeout=120,
        check=False,
    )
    assert done.returncode == 0, done.stderr[-2000:]
    shown = json.loads(done.stdout)["cells"]
    return {name: [tuple(cell) for cell in column] for name, column in shown.items()}


def formulas() -> dict[str, str]:
    """What is typed into the first row."""
    speed = f"{ORIGIN}/v1/wheels/speed?units=in&wheel_diameter=7&marked_rpm=3600&rpm=6000&pick=rpm"
    return {
        **dict(zip(("B1", "C1", "D1", "E1"), printed_in_readme(), strict=True)),
        "K1": f'=WEBSERVICE("{speed}")',
        "L1": f'=WEBSERVICE("{speed}&on_error=text")',
        "M1": '=NUMBERVALUE(D1;".")',
        "N1": '=LEFT(D1;6)="ERROR "',
        "O1": sample("sine.setting"),
        "P1": sample("runout.indicate"),
        **dict(zip(("Q1", "R1", "S1"), FORMULAS_OF_CELLS, strict=True)),
        "T1": f'=WEBSERVICE("{ORIGIN}/v1/blocks/sets/inch-81?pick=sizes.0")',
    }


def result(name: str, **request: Any) -> dict[str, Any]:
    """An operation's result as JSON data."""
    operation = OPERATIONS[name]
    answer = operation.answer_json(operation.request.model_validate_json(json.dumps(request)))
    found: dict[str, Any] = json.loads(answer)["result"]
    return found


def number(cell: tuple[int, float, str]) -> float:
    """What a cell calculates with; it shows no error."""
    error, value, shown = cell
    assert error == 0, shown
    return value


def stack_of(height: float) -> str:
    """The blocks of a height, or why there are none."""
    try:
        blocks = result("blocks.stack", units="in", set="inch-81", height=height)["blocks"]
    except Unreachable as refusal:
        return f"ERROR unreachable: {refusal.detail}"
    return " + ".join(map(json.dumps, blocks))


def test_the_height_is_a_number_in_every_row(cells: Cells) -> None:
    """Fifty of fifty rows, decimal degrees and `8°18'` alike, show the service's own number."""
    for row in range(ROWS):
        expected = result("sine.setting", units="in", center_distance=5, angle=angle_of(row))
        assert number(cells["B1"][row]) == pytest.approx(expected["height_to_set"], abs=1e-14), row


def test_the_stack_is_a_sum_with_decimal_points(cells: Cells) -> None:
    """The height of one cell, whatever its decimal sign, gives the blocks in the next.

    A height that the set does not build, as low ones are, gives the reason.
    """
    for row in range(ROWS):
        assert cells["C1"][row][2] == stack_of(round(cells["B1"][row][1], 4)), row
    refused = [text for _, _, text in cells["C1"][:ROWS] if text.startswith("ERROR unreachable")]
    assert 1 <= len(refused) < ROWS / 5


def test_several_values_stand_in_one_cell(cells: Cells) -> None:
    """Angle and deviation as one text, which no sheet reads as a number."""
    for row in range(ROWS):
        expected = result("sine.setting", units="in", center_distance=5, angle=angle_of(row))
        parts = expected["angle_as_set"]["dms"], json.dumps(expected["deviation_arcsec"])
        assert cells["D1"][row][2] == " | ".join(parts), row
        assert cells["M1"][row][0] != 0


def test_readings_go_in_as_a_list(cells: Cells) -> None:
    """Four cells joined by semicolons are four readings at equal steps."""
    for row in range(ROWS):
        steps = zip((0, 90, 180, 270), readings_of(row), strict=True)
        indicated = result(
            "runout.indicate",
            units="in",
            surface="external",
            indicator_resolution=0.0001,
            readings=[{"angular_position": a, "reading": r} for a, r in steps],
        )
        parts = json.dumps(indicated["tap_distance"]), indicated["tap_from"]["dms"]
        assert cells["E1"][row][2] == " | ".join(parts), row
        assert cells["S1"][row][2] == parts[0], row


def test_what_is_refused_is_an_error_or_a_text(cells: Cells) -> None:
    """Without `on_error` the cell shows an error; with it a text that a formula tells from all."""
    for row in (TOO_STEEP, NO_ANGLE):
        assert cells["B1"][row][0] != 0
        assert cells["C1"][row][0] != 0
        assert cells["D1"][row][2].startswith("ERROR invalid-request: /angle: should be ")
        assert cells["M1"][row][0] != 0
        assert cells["R1"][row][2].startswith("ERROR ")
    assert [value for _, value, _ in cells["N1"]] == [0] * ROWS + [1, 1, 0]
    empty = cells["E1"][NO_READING][2]
    assert empty.startswith("ERROR invalid-request: /readings/1/reading: is required"), empty


def test_a_stop_is_an_error_or_its_own_text(cells: Cells) -> None:
    """No number stands beside a stop: an error, or the stop's words with `STOP` first."""
    assert {error for error, _, _ in cells["K1"]} != {0}
    assert {text for _, _, text in cells["L1"]} == {
        "STOP 6000 per minute is over marked_rpm (3600 per minute). Do not run this wheel at this "
        "speed."
    }


def test_the_formulas_of_the_pages_show_what_they_say(cells: Cells) -> None:
    """Each shows a number or a text of the answer, in every row."""
    first = {name: cells[name][0] for name in ("O1", "P1", "T1")}
    assert number(first["O1"]) == 2.5
    stored = json.loads(sample_answer(OPERATIONS["runout.indicate"]))["result"]
    assert number(first["P1"]) == pytest.approx(stored["eccentricity"]["value"], rel=1e-12)
    assert first["T1"][2] == "0.05"
    for row in range(ROWS):
        expected = result("sine.setting", units="mm", center_distance=100, angle=angle_of(row))
        assert number(cells["Q1"][row]) == pytest.approx(expected["height"], abs=1e-12), row
        both = f"{json.dumps(expected['height'])} | {expected['angle']['dms']}"
        assert cells["R1"][row][2] == both, row
