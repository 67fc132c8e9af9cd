"""Tables: the rows of a CSV come back as they came, each with its result or its problem."""

import io
import random
from collections.abc import Callable
from typing import Any

import polars as pl
import pytest

from csv_support import (
    SAID,
    answered,
    as_csv,
    flat_request,
    flat_result,
    read_csv,
    records,
    send,
)
from halfangle_client.views.records import flat
from halfangle_service.http.tables.cells import Writer
from halfangle_service.http.tables.model import TableForm
from halfangle_service.http.tables.records import Records
from http_support import OPERATIONS, Service, assert_problem

ANGLES = {"units": "in", "center_distance": 5}
JUDGEMENTS = ("forecast", "verdict")


def test_every_example_as_a_row_is_its_answer(service: Service) -> None:
    """Each operation's example as a table of one row gives each value of its JSON answer.

    The client flattens it by the same names.
    """
    for name, operation in OPERATIONS.items():
        example = dict(operation.example)
        answer = service.post(operation.path, json=example).json()
        cells = dict(flat_request(example))
        (row,) = records(answered(service, name, as_csv([cells.keys(), cells.values()])))
        results = {n.removeprefix("result."): c for n, c in [*row.items()][len(cells) :]}
        stops = [a for a in answer["advisories"] if a["severity"] == "stop"]
        values = dict(flat_result(answer["result"]))
        assert dict(flat(answer["result"])) == values
        for path, value in values.items():
            if path not in results and value in (None, []):
                # An object that there is not, or a list of objects without one.
                assert value is None or not any(n.startswith(f"{path}.") for n in results)
                continue
            judges = path.rpartition(".")[2].endswith(JUDGEMENTS)
            kept = not stops or (judges and value not in {"holds", "conforming"})
            assert_cell(results[path], value if kept else None, f"{name} {path}")
        assert all(a["message"] in row["problem"] for a in stops)
        others = [a for a in answer["advisories"] if a["severity"] != "stop"]
        assert row["advisories"].removeprefix("'") == " | ".join(
            f"{a['severity']} {a['code']}: {a['message']}" for a in others
        )


def assert_cell(cell: str, value: Any, where: str) -> None:
    """Check that a cell says a value."""
    if value is None or isinstance(value, str):
        assert cell.removeprefix("'") == (value or "").removeprefix("'"), where
    elif isinstance(value, bool):
        assert cell == str(value).lower(), where
    elif isinstance(value, list):
        adds_up = where.endswith(("blocks", "second_stack", "wringing_order"))
        between = " + " if adds_up else "; "
        entries = cell.removeprefix("'").split(between)
        if all(isinstance(entry, str) for entry in value):
            assert cell.removeprefix("'") == (between.join(value) or "none"), where
        else:
            assert [float(entry) for entry in entries] == value, where
    else:
        assert float(cell) == value, where


def test_a_result_of_an_entry_is_asked_for_by_its_place(service: Service) -> None:
    """A list of objects has no column; one value of it has, by the path that `pick` takes."""
    example = dict(flat_request(dict(OPERATIONS["sine.table"].example)))
    table = as_csv([example.keys(), example.values()])
    answer = service.post("/v1/sine/table", json=dict(OPERATIONS["sine.table"].example)).json()
    chosen = "rows.1.height,rows.999.height,count"
    (row,) = records(answered(service, "sine.table", table, columns=chosen))
    assert float(row["rows.1.height"]) == answer["result"]["rows"][1]["height"]
    assert (row["rows.999.height"], row["count"]) == ("", str(answer["result"]["count"]))


def test_a_list_of_objects_is_stated_by_place_or_by_field(service: Service) -> None:
    """`readings.0.…` and one list for all entries ask the same; so does a list by itself."""
    example = dict(OPERATIONS["runout.indicate"].example)
    whole = [name for name, part in example.items() if isinstance(part, list)]
    by_place = dict(flat_request(example))
    joined = {n: c for n, c in by_place.items() if n.partition(".")[0] not in whole}
    for name in whole:
        entries = example[name]
        if isinstance(entries[0], dict):
            for field in entries[0]:
                joined[f"{name}.{field}"] = ";".join(str(entry[field]) for entry in entries)
        else:
            joined[name] = ";".join(map(str, entries))
    first, second = (
        records(answered(service, "runout.indicate", as_csv([row.keys(), row.values()])))
        for row in (by_place, joined)
    )
    assert [*first[0].values()][len(by_place) :] == [*second[0].values()][len(joined) :]
    assert second[0]["problem"] == ""


@pytest.mark.parametrize("delimiter", [";", "tab", ","])
def test_both_decimal_signs_say_the_same(service: Service, delimiter: str) -> None:
    """Sent and answered in decimal commas each number is that of the table in points."""
    sign = {"tab": "\t"}.get(delimiter, delimiter)
    points = [["no", "angle"], ["a,b;c", "10.5"], ["d", "8°18'20.5\""], ["e", ".5"], ["f", "+7."]]
    commas = [[row[0], row[1].replace(".", ",")] for row in points]
    query = {**ANGLES, "keep": "no", "delimiter": delimiter}
    one = answered(service, "sine.setting", as_csv(points, delimiter=sign), **query)
    other = answered(service, "sine.setting", as_csv(commas, delimiter=sign), decimal=",", **query)
    in_points = read_csv(one, delimiter=sign)
    assert [row[-1] for row in in_points[1:]] == [""] * 4
    said = len(SAID)
    for pointed, with_commas in zip(in_points, read_csv(other, delimiter=sign), strict=True):
        for left, right in zip(pointed[:-said], with_commas[:-said], strict=True):
            is_number = left.replace(".", "").replace("-", "").replace("e", "").isdigit()
            assert right == (left.replace(".", ",") if is_number else right)
            assert right.replace(",", ".") == left.replace(",", ".")


def test_a_columnar_library_writes_and_reads_it(service: Service) -> None:
    """What polars writes with decimal commas is taken, and what comes back it reads as numbers."""
    angles = [0.5 + 0.25 * n for n in range(100)]
    sent = pl.DataFrame({"part": [f"T-{n}" for n in range(100)], "angle": angles})
    written = sent.write_csv(separator=";", decimal_comma=True).encode()
    query = {**ANGLES, "delimiter": ";", "decimal": ",", "keep": "*", "columns": "height,angle"}
    content = answered(service, "sine.setting", written, **query)
    frame = pl.read_csv(io.BytesIO(content), separator=";", decimal_comma=True)
    assert frame.columns[:3] == ["part", "angle", "height [in]"]
    assert frame["angle"].to_list() == angles
    assert frame["angle.degrees [°]"].to_list() == angles
    own = service.post("/v1/sine/setting", json={**ANGLES, "angle": angles[7]}).json()["result"]
    assert frame["height [in]"][7] == own["height"]


def test_a_row_comes_back_as_it_came(service: Service) -> None:
    """Mark at the start, line ends, quotes and blanks are the caller's; blank lines are no rows."""
    rows = (
        b'\xef\xbb\xbf"no"; angle ;"note"\r\n'
        b'  1;30,0;"says ""=A1"""\n'
        b'"=2+3";"30";"two\r\nlines"\r\n\r\n'
        b"007; 30 ;-5"
    )
    content = answered(
        service, "sine.setting", rows, delimiter=";", decimal=",", keep="no,note",
        columns="height", **ANGLES,
    )  # fmt: skip
    assert content == (
        b'\xef\xbb\xbf"no"; angle ;"note";height [in];advisories;problem\r\n'
        b'  1;30,0;"says ""=A1""";2,5;;\n'
        b'"=2+3";"30";"two\r\nlines";2,5;;\r\n\r\n'
        b"007; 30 ;-5;2,5;;\r\n"
    )


#: Each a row of the columns part, angle, center_distance, and what its problem says.
BAD_ROWS: list[tuple[bytes, str]] = [
    (b"x,95,5", "angle: should be less than 90°; got 95"),
    (b"x,,5", "angle: is required and was not sent"),
    (b"x,3o,5", "angle: should be decimal degrees as a number"),
    (b'x,"30,5",5', "angle: '30,5' has a comma, and the decimal sign is a point; `decimal=,`"),
    (b"x,30,true", 'center_distance: should be a valid number; got "true"'),
    (b"x,30,NaN", "center_distance: should be a valid number"),
    (b"x,30,1e999", "center_distance: should be a finite number"),
    (b"x,30," + b"9" * 500, "center_distance: should be"),
    (b"x,30", "the row has 2 cells, the header 3"),
    (b"x,30,5,6,7", "the row has 5 cells, the header 3; past them stands: 6,7"),
    (b"x,3\x000,5", "the row holds a NUL"),
    (b"x\xe9,30,5", "the row is not UTF-8: its byte 2 cannot be read"),
    (b'x,30,"5"6', "text stands after the quote that closes a cell"),
    (b"x\r,30,5", "a carriage return stands within a cell that is not quoted"),
    (b"x,89.99999,5", "angle: The rolls would differ in height by 5 in"),
    (b"x" * 1_100_000 + b",30,5", "the row is longer than one may be"),
]


@pytest.mark.parametrize("many", [False, True])
@pytest.mark.parametrize(("bad", "says"), BAD_ROWS)
def test_a_bad_row_spoils_no_other(service: Service, bad: bytes, says: str, many: bool) -> None:
    """It comes back in its place with its problem alone, among rows that have their results."""
    before = b"".join(b"a%d,%d,5\n" % (n, n + 10) for n in range(40 if many else 1))
    table = b"part,angle,center_distance\n" + before + bad + b"\nz,30,5\n"
    content = answered(service, "sine.setting", table, units="in", keep="part", columns="height")
    rows = records(content)
    assert len(rows) == len(before.splitlines()) + 2
    assert says in rows[-2]["problem"]
    assert (rows[-2]["height"], rows[-2]["advisories"]) == ("", "")
    assert [row["problem"] for row in rows[:-2]] == [""] * (len(rows) - 2)
    assert (rows[-1]["part"], rows[-1]["height"], rows[-1]["problem"]) == ("z", "2.5", "")


def test_a_quote_left_open_spoils_its_own_line_alone(service: Service) -> None:
    """The rows after it are answered, though another quote further on would close it."""
    table = b'part,angle\nA,10\n"5 plate,20\nC,30\n"D, last",40\n'
    content = answered(service, "sine.setting", table, keep="part", columns="height", **ANGLES)
    rows = records(content)
    assert [row["part"] for row in rows] == ["A", '"5 plate,20', "C", "D, last"]
    assert "a quote opens a cell and none closes it" in rows[1]["problem"]
    assert [row["height"] != "" for row in rows] == [True, False, True, True]


def test_a_stop_stands_in_the_problem(service: Service) -> None:
    """A row whose answer says stop has no value to read by itself, and all of the stop's words."""
    request = {"units": "in", "wheel_diameter": 7, "rpm": 9000, "marked_rpm": 3600}
    answer = service.post("/v1/wheels/speed", json=request).json()
    (row,) = records(answered(service, "wheels.speed", as_csv([request, request.values()])))
    (stop,) = (a for a in answer["advisories"] if a["severity"] == "stop")
    assert row["problem"] == f"stop {stop['code']}: {stop['message']}"
    assert row["advisories"].startswith("caution ")
    assert "stop" not in row["advisories"].split()
    values = {n: c for n, c in [*row.items()][len(request) : -len(SAID)] if c}
    assert values == {"forecast": "does-not-hold", "speed_forecast": "does-not-hold"}


def test_a_header_alone_is_a_table_of_no_rows(service: Service) -> None:
    """It comes back with the columns that its rows would have had."""
    for end in (b"", b"\n"):
        content = answered(service, "sine.setting", b"angle" + end, columns="height", **ANGLES)
        assert (
            content.split() == b"angle,height [in],advisories,problem".replace(b" ", b" ").split()
        )


def test_units_that_each_row_states_stand_so_in_the_header(service: Service) -> None:
    """Where `units` is a column a length is in the row's own, and no other may be written."""
    table = b"units,center_distance [units],angle\nin,5,30\nmm,100,30\n"
    content = answered(service, "sine.setting", table, columns="height")
    head, *rows = read_csv(content)
    assert head[3:] == ["height [units]", *SAID]
    assert [row[3] for row in rows] == ["2.5", "50.0"]
    wrong = table.replace(b"[units]", b"[mm]")
    problem = assert_problem(send(service, "sine.setting", wrong), "invalid-request")
    assert "state `units` in the address" in problem["detail"]


def test_a_result_of_a_name_that_stands_there_is_told_apart(service: Service) -> None:
    """An answered table can be sent again: its own columns are kept, and each name comes once."""
    first = answered(service, "sine.setting", b"angle\n30\n", columns="height", **ANGLES)
    second = answered(service, "sine.setting", first, columns="height", keep="*", **ANGLES)
    head, row = read_csv(second)
    assert head == [
        "angle", "height [in]", "advisories", "problem",
        "result.height [in]", "result.advisories", "result.problem",
    ]  # fmt: skip
    assert row == ["30", "2.5", "", "", "2.5", "", ""]


def rows_of_all_kinds(count: int) -> list[list[str]]:
    """Rows of part, angle and center_distance from a seed: good ones, odd ones and wrong ones."""
    dice = random.Random(18)  # noqa: S311  reproducible
    angles: list[Callable[[], str]] = [
        lambda: f"{dice.uniform(0.5, 44):.4f}",
        lambda: f"{dice.uniform(46, 89):.2f}",
        lambda: f"{dice.randrange(1, 60)}°{dice.randrange(60)}'",
        lambda: dice.choice(["", "95", "abc", "-3", ".5", "+7", "007", "1e1", "30 15"]),
    ]
    weights = [20, 3, 4, 1]
    rows = []
    for n in range(count):
        (angle,) = dice.choices(angles, weights)
        distance = dice.choices(["5", "10.00012", "", "x"], [20, 20, 1, 1])[0]
        rows.append([f"T-{n}", angle(), distance])
    return rows


@pytest.mark.parametrize("quoted", [False, True])
@pytest.mark.parametrize(
    ("delimiter", "decimal", "line_end"), [(",", ".", "\n"), (";", ",", "\r\n")]
)
def test_rows_at_once_are_answered_as_each_by_itself(
    service: Service, quoted: bool, delimiter: str, decimal: str, line_end: str
) -> None:
    """Worked out as columns or row by row, written plainly or quoted: the same bytes."""
    rows = [[cell.replace(".", decimal) for cell in row] for row in rows_of_all_kinds(150)]
    if quoted:
        rows[::7] = [[f"{row[0]}{delimiter} again", *row[1:]] for row in rows[::7]]
    rows[20] = rows[20][:2]
    rows[40] = [*rows[40], "7"]
    head = ["part", "angle", "center_distance"]
    query = {"units": "in", "keep": "part", "delimiter": delimiter, "decimal": decimal}

    def ask(some: list[list[str]]) -> list[bytes]:
        table = as_csv([head, *some], delimiter=delimiter, line_end=line_end)
        content = answered(service, "sine.setting", table, **query)
        return content.splitlines(keepends=True)

    together = ask(rows)
    assert together[1:] == [ask([row])[1] for row in rows]
    assert sum(b"should be" in line or b"required" in line for line in together) > 5


def test_a_table_is_cut_alike_however_it_arrives() -> None:
    """Records, too long ones and open quotes among them, are the same for pieces of any size."""
    dice = random.Random(7)  # noqa: S311  reproducible
    parts = [b"a,b\n", b'"x\ny",2\r\n', b'c,"d""\n"\n', b"\n", b'e"f,g\n', b"h" * 70 + b"\n",
             b'"open,1\n', b'i,"j"k\n', b"last"]  # fmt: skip
    for _ in range(200):
        table = b"".join(dice.choices(parts, k=12))
        whole = cut(table, [len(table)])
        assert cut(table, [dice.randrange(1, 9) for _ in table]) == whole
        if b"h" not in table:
            assert b"".join(whole) == table


def cut(table: bytes, sizes: list[int]) -> list[Any]:
    """Records of a table that arrives in pieces of these sizes, blank pieces left out."""
    records_ = Records(",", most_bytes=60)
    found: list[Any] = []
    at = 0
    for size in sizes:
        for rows in records_.of(table[at : at + size]):
            found += rows.records()
        at += size
    for rows in records_.end():
        found += rows.records()
    return found


@pytest.mark.parametrize(
    ("text", "cell"),
    [
        ("=1+2", "'=1+2"),
        ("+cmd|' /C calc'!A0", "'+cmd|' /C calc'!A0"),
        ("-A1", "'-A1"),
        ("@SUM(1)", "'@SUM(1)"),
        ("\t=1", "'\t=1"),
        ("-0.5 + 0.1", "'-0.5 + 0.1"),
        ("-0°05'00.00\"", '"-0°05\'00.00"""'),
        ("-5", "-5"),
        ("a=1", "a=1"),
    ],
)
def test_no_text_of_ours_is_run_as_a_formula(text: str, cell: str) -> None:
    """What a spreadsheet would take for one has an apostrophe before it; an angle may be signed."""
    assert Writer(TableForm()).text(text) == cell


def test_no_parameter_of_a_table_has_the_name_of_a_field() -> None:
    """What the address declares of the table is told from what it states for all rows."""
    for operation in OPERATIONS.values():
        assert not set(TableForm.model_fields) & set(operation.request.model_fields)
