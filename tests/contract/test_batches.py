"""Batches: every row comes back once, in order, as its own address answers it."""

import json
import random
from collections.abc import Iterable
from typing import Any

import pytest

from halfangle_service.http.batches.model import BATCHES_PATH, LINES
from halfangle_service.http.batches.rows import Refs
from http_support import OPERATIONS, Service, assert_problem

Row = dict[str, Any]
SETTING = {"units": "in", "center_distance": 5, "angle": 30}
TOO_FAST = {"units": "in", "wheel_diameter": 7, "rpm": 9000, "marked_rpm": 3600}
#: Each a row, what it is refused as, and the pointer to what is wrong.
REFUSED: list[tuple[Any, str, str]] = [
    ({"ref": "x", "operation": "sine.seting", "request": SETTING}, "not-found", "/operation"),
    ({"ref": "x", "operation": "sine.setting", "request": {}}, "invalid-request", "/units"),
    ({"ref": "x", "operation": "sine.setting", "request": SETTING | {"angle": 95}},
     "invalid-request", "/angle"),
    ({"ref": "x", "operation": "sine.angle",
      "request": {"units": "in", "center_distance": 5, "height": 6}}, "impossible", "/height"),
    ({"ref": "x", "operation": "sine.setting", "request": [1]}, "invalid-request", "/request"),
    ({"ref": "x", "operation": 7, "request": {}}, "invalid-request", "/operation"),
    ({"operation": "sine.setting", "request": SETTING}, "invalid-request", "/ref"),
    ({"ref": "", "operation": "sine.setting", "request": SETTING}, "invalid-request", "/ref"),
    ({"ref": "a" * 201, "operation": "sine.setting", "request": SETTING},
     "invalid-request", "/ref"),
    ({"ref": True, "operation": "sine.setting", "request": SETTING}, "invalid-request", "/ref"),
    ({"ref": 1.5, "operation": "sine.setting", "request": SETTING}, "invalid-request", "/ref"),
    ({"ref": "x", "operation": "sine.setting", "request": SETTING, "requst": 1},
     "invalid-request", "/requst"),
    ([], "invalid-request", ""),
    (None, "invalid-request", ""),
]  # fmt: skip


def as_lines(rows: Iterable[Any]) -> bytes:
    """Rows as lines of JSON."""
    return b"".join(json.dumps(row).encode() + b"\n" for row in rows)


def by_lines(service: Service, content: bytes) -> list[dict[str, Any]]:
    """Send lines; give the lines of the answer, each read."""
    answer = service.post(BATCHES_PATH, content=content, headers={"content-type": LINES})
    assert (answer.status_code, answer.headers["content-type"]) == (200, LINES)
    return [json.loads(line) for line in answer.content.splitlines()]


def by_document(service: Service, rows: list[Any]) -> dict[str, Any]:
    """Send rows as one document; give the answer."""
    answer = service.post(BATCHES_PATH, json={"rows": rows})
    assert answer.status_code == 200, answer.text
    found: dict[str, Any] = answer.json()
    return found


def every_example() -> list[Row]:
    """The example of every operation, shuffled from a seed."""
    rows = [
        {"ref": f"ref {name}", "operation": name, "request": dict(operation.example)}
        for name, operation in OPERATIONS.items()
    ]
    random.Random(7).shuffle(rows)  # noqa: S311  reproducible
    return rows


def test_every_operation_is_answered_to_the_byte_as_by_its_own_address(service: Service) -> None:
    """An answer in a row is the bytes of the operation's own, in the order of the rows."""
    rows = every_example()
    sent = service.post(
        BATCHES_PATH, content=as_lines(rows), headers={"content-type": LINES}
    ).content.splitlines()
    for number, (row, line) in enumerate(zip(rows, sent, strict=False), start=1):
        own = service.post(OPERATIONS[row["operation"]].path, json=row["request"]).content
        head = b'{"row":%d,"ref":%b,' % (number, json.dumps(row["ref"]).encode())
        assert line.startswith(head)
        assert line.endswith(b',"answer":%b}' % own)
    counts = json.loads(sent[-1])["counts"]
    assert (counts["rows"], counts["ok"], counts["refused"]) == (len(rows), len(rows), 0)
    assert len(sent) == len(rows) + 1


def test_a_document_and_lines_are_answered_alike(service: Service) -> None:
    """Rows in one document meet what they meet as lines."""
    rows = [*every_example()[:20], *(row for row, _, _ in REFUSED)]
    *answered, last = by_lines(service, as_lines(rows))
    assert by_document(service, rows) == {"rows": answered, **last}


@pytest.mark.parametrize(("row", "kind", "pointer"), REFUSED)
def test_a_bad_row_is_refused_by_itself(
    service: Service, row: Any, kind: str, pointer: str
) -> None:
    """It names what is wrong; the rows before and after it are answered."""
    good = [{"ref": n, "operation": "sine.setting", "request": SETTING} for n in (1, 2)]
    before, refused, after = by_document(service, [good[0], row, good[1]])["rows"]
    assert (before["status"], after["status"]) == ("ok", "ok")
    assert refused["status"] == "refused"
    assert refused["problem"]["type"] == f"/problems/{kind}"
    assert refused["problem"]["errors"][0]["pointer"] == pointer
    readable = isinstance(row, dict) and row.get("ref") == "x"
    assert refused["ref"] == ("x" if readable else None)


def test_a_refusal_is_the_operation_s_own(service: Service) -> None:
    """A row is refused by the problem document that its operation's address gives."""
    request = {"units": "in", "center_distance": 5, "height": 6}
    own = service.post(OPERATIONS["sine.angle"].path, json=request).json()
    row = {"ref": 1, "operation": "sine.angle", "request": request}
    assert by_document(service, [row])["rows"][0]["problem"] == own


@pytest.mark.parametrize(
    ("line", "says"),
    [
        (b'{"ref": 1,', "line 1 column 12"),
        (b'{"ref":"\xe9","operation":"sine.setting","request":{}}', "Not UTF-8: byte 9"),
        (b'{"ref":1,"operation":"sine.setting","request":{}} {}', "Extra data"),
        (b'{"ref":1,"operation":"sine.setting","request":{"a":' + b"[" * 900 + b"}}", "Not "),
        (b"\x00", "Not one JSON value"),
    ],
)
def test_a_broken_line_is_refused_by_itself(service: Service, line: bytes, says: str) -> None:
    """What is no JSON is told by its place in the line, and the next line is answered."""
    good = as_lines([{"ref": 2, "operation": "sine.setting", "request": SETTING}])
    broken, answered, _ = by_lines(service, line + b"\r\n\n \n" + good)
    assert broken["problem"]["type"] == "/problems/not-json"
    assert says in broken["problem"]["detail"]
    assert (answered["ref"], answered["row"], answered["status"]) == (2, 2, "ok")


def test_members_may_come_in_any_order_and_names_twice_are_refused(service: Service) -> None:
    """A row is an object: its order means nothing, and a name twice is told from a good one."""
    turned = b'{"request":{"units":"in","center_distance":5,"angle":30},' + (
        b'"operation":"sine.setting","ref":"\\u0061"}\n'
    )
    twice = turned.replace(b'{"units":"in"', b'{"units":"in","units":"mm"').replace(b"61", b"62")
    both = b'{"ref":"c","operation":"sine.setting","request":{},"ref":"d"}\n'
    first, second, third, _ = by_lines(service, turned + twice + both)
    assert (first["ref"], first["status"]) == ("a", "ok")
    assert second["problem"]["errors"][0]["pointer"] == "/units"
    assert third["problem"]["errors"][0]["pointer"] == "/ref"


def test_a_reference_comes_back_once(service: Service) -> None:
    """A reference that came before is refused; 1 and "1" are two."""
    refs = ["a", 1, "1", "a", 1]
    rows = [{"ref": ref, "operation": "sine.setting", "request": SETTING} for ref in refs]
    answered = by_document(service, rows)["rows"]
    assert [row["ref"] for row in answered] == refs
    assert [row["status"] for row in answered] == ["ok", "ok", "ok", "refused", "refused"]
    assert "came with an earlier row" in answered[3]["problem"]["detail"]


def test_so_many_references_are_kept_and_no_more() -> None:
    """Memory for references does not grow with the rows: the oldest are let go."""
    refs = Refs(most=3)
    for ref in range(1000):
        refs.note(ref)
    assert [ref for ref in range(1000) if ref in refs] == [997, 998, 999]


def test_stops_and_cautions_are_counted(service: Service) -> None:
    """Each row says how many its answer holds, and the end in how many rows there are some."""
    rows = [
        {"ref": 1, "operation": "wheels.speed", "request": TOO_FAST},
        {"ref": 2, "operation": "sine.setting", "request": SETTING},
    ]
    found = by_document(service, rows)
    fast, plain = found["rows"]
    severities = [a["severity"] for a in fast["answer"]["advisories"]]
    assert fast["stops"] == severities.count("stop") > 0
    assert fast["cautions"] == severities.count("caution") > 0
    assert (plain["stops"], plain["cautions"]) == (0, 0)
    assert (found["counts"]["with_stop"], found["counts"]["with_caution"]) == (1, 1)


def test_a_line_that_is_too_long_is_passed_over(service: Service) -> None:
    """It is refused as a body of that length would be; the next one is answered."""
    long = {"ref": "long", "operation": "sine.setting", "request": {"units": "x" * 1_100_000}}
    rows = [long, {"ref": 2, "operation": "sine.setting", "request": SETTING}]
    refused, answered, last = by_lines(service, as_lines(rows))
    assert refused["problem"]["type"] == "/problems/content-too-large"
    assert answered["status"] == "ok"
    assert last["counts"]["rows"] == 2


def test_a_document_that_is_too_large_is_refused(service: Service) -> None:
    """Many rows are sent as lines: a document is held to the limit of a body."""
    rows = [{"ref": 1, "operation": "sine.setting", "request": {"units": "x" * 1_100_000}}]
    refused = service.post(BATCHES_PATH, json={"rows": rows})
    assert_problem(refused, "content-too-large")
    assert refused.json()["limit_bytes"] == 1_048_576


@pytest.mark.parametrize("body", [b"[]", b"{}", b'{"rows":{}}', b'{"rows":[],"row":1}', b"3"])
def test_a_document_of_another_shape_is_refused(service: Service, body: bytes) -> None:
    """It is an object with the one member `rows`, a list."""
    refused = service.post(BATCHES_PATH, content=body, headers={"content-type": "application/json"})
    assert_problem(refused, "invalid-request")


def test_nothing_is_a_batch_of_no_rows(service: Service) -> None:
    """No line and no row are answered by the counts alone."""
    none = {"rows": 0, "ok": 0, "refused": 0, "with_stop": 0, "with_caution": 0}
    assert by_lines(service, b"\n \n") == [{"counts": none}]
    assert by_document(service, []) == {"rows": [], "counts": none}


def test_other_types_are_refused(service: Service) -> None:
    """The body is JSON or lines of JSON, and the answer is of the same type."""
    csv = service.post(BATCHES_PATH, content=b"a", headers={"content-type": "text/csv"})
    assert_problem(csv, "unsupported-media-type")
    assert csv.headers["accept"] == f"application/json, {LINES}"
    headers = {"content-type": LINES, "accept": "application/json"}
    assert_problem(service.post(BATCHES_PATH, content=b"", headers=headers), "not-acceptable")
