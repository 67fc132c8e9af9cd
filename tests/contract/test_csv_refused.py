"""Tables that cannot be read: what is wrong is said at once, by the column or the parameter."""

from typing import Any

import pytest

from csv_support import send
from halfangle_service.http.tables.model import MOST_COLUMNS
from http_support import Service, assert_problem

ANGLES = {"units": "in", "center_distance": 5}
#: Each a query string, a table, the kind of problem, where, and what is said.
REFUSED: list[tuple[dict[str, Any], bytes, str, str, str]] = [
    ({}, b"", "invalid-request", "", "The table is empty"),
    ({}, b"\n1,2\n", "invalid-request", "/columns", "is empty"),
    ({}, b"angel\n", "invalid-request", "/columns/angel", "did you mean angle?"),
    ({}, b"angle,note\n", "invalid-request", "/columns/note", "`keep` carries a column along"),
    ({}, b"angle,\n", "invalid-request", "/columns/2", "has no name"),
    ({}, b"angle,angle [deg]\n", "invalid-request", "/columns/angle", "stands twice"),
    ({}, b"angle [mm]\n", "invalid-request", "/columns/angle", "is in °, not in mm"),
    ({"keep": "*"}, b"angle,steep_angel\n", "invalid-request", "/columns/steep_angel",
     "is nearly steep_angle"),
    ({"keep": "nots"}, b"angle,notes\n", "invalid-request", "/columns/notes",
     "did you mean notes?"),
    ({"angle": 5}, b"angle\n", "invalid-request", "/columns/angle",
     "is stated in the address, too"),
    ({"center_distnce": 5}, b"angle\n", "invalid-request", "/center_distnce",
     "did you mean center_distance?"),
    ({"decimals": ","}, b"angle\n", "invalid-request", "/decimals", "the parameter decimal?"),
    ({"delimiter": ":"}, b"angle\n", "invalid-request", "/delimiter", "should be ','"),
    ({"base_step": "1,5"}, b"angle\n", "invalid-request", "/base_step", "has a comma"),
    ({"columns": "heigth"}, b"angle\n", "invalid-request", "/columns", "did you mean height"),
    ({}, b"angle;base_step\n", "invalid-request", "/columns", "`delimiter=;` declares that"),
    ({"delimiter": ";"}, b"angle\tbase_step\n", "invalid-request", "/columns", "`delimiter=tab`"),
    ({"decimal": ","}, b"angle\n30,5\n", "invalid-request", "/delimiter", "`delimiter=;`"),
    ({}, b"\xff\xfea\0\n\0", "invalid-request", "/columns", "UTF-16"),
    ({}, b"ang\xe9le\n", "invalid-request", "/columns", "byte 4 cannot be read"),
    ({}, b"an\0gle\n", "invalid-request", "/columns", "holds a NUL"),
    ({}, b"angle\r30\r40\r", "invalid-request", "/columns", "a carriage return alone"),
    ({}, b'"angle\n', "invalid-request", "/columns", "a quote opens a cell and none closes it"),
    ({}, b"a," * 400_000 + b"\n", "invalid-request", "/columns",
     f"columns; a table has at most {MOST_COLUMNS}"),
    ({}, b"a" * 1_048_500 + b"\n", "invalid-request", "/columns/", "is not a field"),
    ({"angle": [1, 2]}, b"base_step\n", "invalid-request", "/angle", "is given twice"),
]  # fmt: skip


@pytest.mark.parametrize(("query", "table", "kind", "pointer", "says"), REFUSED)
def test_a_table_that_cannot_be_read_is_refused(
    service: Service, query: dict[str, Any], table: bytes, kind: str, pointer: str, says: str
) -> None:
    """What is wrong with the address or the header is said before any row, by its place."""
    problem = assert_problem(send(service, "sine.setting", table, **{**ANGLES, **query}), kind)
    if pointer:
        assert problem["errors"][0]["pointer"].startswith(pointer)
    told = " ".join([problem["detail"], *(e["message"] for e in problem["errors"])])
    assert says in told
    assert len(told) < 3_000


@pytest.mark.parametrize(
    ("content_type", "name"),
    [
        ("text/csv; charset=iso-8859-1", "unsupported-media-type"),
        ("text/csv; header=absent", "unsupported-media-type"),
        ("text/plain", "unsupported-media-type"),
        ("application/json", "unsupported-media-type"),
    ],
)
def test_other_types_and_charsets_are_refused(
    service: Service, content_type: str, name: str
) -> None:
    """A table is text/csv in UTF-8 whose first line names its columns."""
    path = "/v1/tables/sine.setting"
    refused = service.post(path, content=b"angle\n", headers={"content-type": content_type})
    assert_problem(refused, name)
    assert refused.headers["accept"] == "text/csv"


def test_types_are_read_as_http_has_them(service: Service) -> None:
    """Charset and header may be said, in any order and case; an encoded body may not come."""
    path = "/v1/tables/sine.setting?units=in&center_distance=5"
    for said in ("text/csv; header=present; charset=utf-8", 'Text/CSV;charset="UTF-8"'):
        assert service.post(path, content=b"angle\n", headers={"content-type": said}).is_success
    coded = {"content-type": "text/csv", "content-encoding": "gzip"}
    assert_problem(service.post(path, content=b"x", headers=coded), "unsupported-coding")
    json_only = {"content-type": "text/csv", "accept": "application/json"}
    assert_problem(service.post(path, content=b"angle\n", headers=json_only), "not-acceptable")


def test_an_unknown_operation_is_named_by_the_nearest(service: Service) -> None:
    """The address of a table ends with an operation's name."""
    problem = assert_problem(send(service, "sine.seting", b"angle\n"), "not-found")
    assert "did you mean sine.setting" in problem["detail"]
