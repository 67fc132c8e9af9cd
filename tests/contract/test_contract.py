"""What every route promises: the contract, examples, the catalogue and the tables."""

import json
import re
from collections.abc import Iterator
from html import unescape
from typing import Any

import pytest
from openapi_spec_validator import OpenAPIV31SpecValidator

from halfangle_service import __version__
from halfangle_service.app import contract_bytes
from halfangle_service.fields.glossary import glossary
from halfangle_service.http.batches.model import BATCHES_PATH
from halfangle_service.http.cells import VALUE_PATH
from halfangle_service.http.curves.model import CURVES_PATH
from halfangle_service.http.problems import PROBLEM_TYPES
from halfangle_service.http.routings import ROUTING
from halfangle_service.http.tables.model import TABLES_PATH
from halfangle_service.registry import load_registry
from halfangle_service.sheets.made import WITH_SHEET
from http_support import (
    FLAT,
    OPERATIONS,
    SINE,
    SINE_QUERY,
    TABLES,
    Service,
    as_text,
    assert_problem,
    post,
    query_of,
)

#: What has single values at an address of their own: flat operations, then published tables.
NAMED = [*FLAT, *(table.dotted_name for table in TABLES if table.topic)]


# The document ---------------------------------------------------------------------------------
def test_contract_is_valid_openapi() -> None:
    """The contract is an OpenAPI 3.1 document."""
    errors = list(OpenAPIV31SpecValidator(json.loads(contract_bytes())).iter_errors())
    assert not errors


def test_contract_is_served_as_it_is_written(service: Service) -> None:
    """The service serves what is committed, without its blanks, and makes it alike each time."""
    assert contract_bytes() == contract_bytes.__wrapped__()  # the first is kept
    committed = json.loads(contract_bytes())
    served = service.get("/openapi.json").content
    assert served == json.dumps(committed, ensure_ascii=False, separators=(",", ":")).encode()


def test_contract_is_of_a_size_to_load(service: Service) -> None:
    """A front end loads it at its start: 11.5 kB an operation, a fifth of that as it travels."""
    most = 11_500 * len(load_registry().operations)
    plain = service.get("/openapi.json", headers={"Accept-Encoding": "identity"})
    assert "content-encoding" not in plain.headers
    assert int(plain.headers["content-length"]) == len(plain.content) <= most
    travels = service.get("/openapi.json", headers={"Accept-Encoding": "gzip"})
    assert travels.headers["content-encoding"] == "gzip"
    assert int(travels.headers["content-length"]) <= most / 5
    assert travels.content == plain.content


def test_each_coding_of_a_document_has_its_own_tag(service: Service) -> None:
    """A cache tells the compressed bytes from the others, and each is answered by 304."""
    tags = set()
    for coding in ("identity", "gzip"):
        asked = {"Accept-Encoding": coding}
        first = service.get("/openapi.json", headers=asked)
        assert "accept-encoding" in first.headers["vary"].lower()
        tags.add(first.headers["etag"])
        again = service.get(
            "/openapi.json", headers={**asked, "If-None-Match": first.headers["etag"]}
        )
        assert (again.status_code, again.content) == (304, b"")
        assert "accept-encoding" in again.headers["vary"].lower()
    assert len(tags) == 2


@pytest.mark.parametrize(
    ("accepted", "coding"),
    [
        ("", None),
        ("identity", None),
        ("gzip", "gzip"),
        ("x-gzip", "gzip"),
        ("br, GZIP;q=0.5", "gzip"),
        ("*", "gzip"),
        ("gzip;q=0", None),
        ("gzip;q=0, *", None),
        ("identity;q=1, gzip;q=0.5", None),
        ("br", None),
    ],
)
def test_accept_encoding_decides(service: Service, accepted: str, coding: str | None) -> None:
    """A document is compressed for whoever takes gzip, by name or by `*`, and for nobody else."""
    answer = service.get("/openapi.json", headers={"Accept-Encoding": accepted})
    assert answer.headers.get("content-encoding") == coding
    assert answer.json()["info"]["title"] == "Halfangle"


def test_the_glossary_is_served(service: Service) -> None:
    """The document that the contract names gives each field's meaning, and a title for a form."""
    path = service.get("/openapi.json").json()["x-glossary"]
    terms = service.get(path).json()
    assert set(terms) == set(glossary())
    assert terms["center_distance"]["title"] == "Center distance"
    assert terms["adapter_tir"]["title"] == "Adapter TIR"
    assert all(term["title"] and term["meaning"] for term in terms.values())


def test_contract_names_every_operation_and_table(service: Service) -> None:
    """Each operation, table, sheet and other form of an answer has its path there."""
    expected = {o.path for o in OPERATIONS.values()} | {VALUE_PATH, BATCHES_PATH}
    expected |= {TABLES_PATH, CURVES_PATH, f"{OPERATIONS[ROUTING].path}/csv"}
    expected |= {f"{OPERATIONS[name].path}/sheet" for name in WITH_SHEET}
    expected |= {path for c in TABLES for path in (c.path, c.path + "/{key}")}
    assert set(service.get("/openapi.json").json()["paths"]) == expected


def test_operation_identifiers_are_unique(service: Service) -> None:
    """Each identifier becomes one method of the client, so it is a name and comes once."""
    items = service.get("/openapi.json").json()["paths"].values()
    identifiers = [method["operationId"] for item in items for method in item.values()]
    assert len(identifiers) == len(set(identifiers))
    assert [name for name in identifiers if not name.isidentifier()] == []


@pytest.mark.parametrize("name", PROBLEM_TYPES)
def test_every_problem_type_has_a_page(service: Service, name: str) -> None:
    """The `type` of a problem leads to a page that says what it means."""
    page = service.get(f"/problems/{name}")
    assert page.status_code == 200
    assert PROBLEM_TYPES[name][1] in page.text


def test_reference_page_fetches_nothing(service: Service) -> None:
    """The page works with no internet: it refers to no other host."""
    page = service.get("/docs")
    assert page.headers["content-type"] == "text/html; charset=utf-8"
    assert not re.findall(r"(?:src|href)=[\"']?(?:https?:)?//", page.text)
    assert all(operation.title in unescape(page.text) for operation in OPERATIONS.values())


# Examples -------------------------------------------------------------------------------------
@pytest.mark.parametrize("name", OPERATIONS)
def test_example_runs(service: Service, name: str) -> None:
    """Every example is answered, with formulas, sources and release, the same bytes each time."""
    first, second = (post(service, OPERATIONS[name]) for _ in range(2))
    assert first.status_code == 200, first.text
    assert first.content == second.content
    answer = first.json()
    assert answer["result"]
    assert answer["basis"]["release"] == __version__
    assert answer["basis"]["relations"]
    assert answer["basis"]["sources"]


@pytest.mark.parametrize("name", OPERATIONS)
def test_answer_fits_its_model(service: Service, name: str) -> None:
    """The answer, written piece by piece, is read back whole by the model of the contract."""
    operation = OPERATIONS[name]
    body = post(service, operation).content
    assert json.loads(operation.answer.model_validate_json(body).model_dump_json()) == json.loads(
        body
    )


@pytest.mark.parametrize("name", FLAT)
def test_query_gives_the_same_bytes(service: Service, name: str) -> None:
    """A flat request asked by query string gives the bytes that POST gives."""
    by_query = service.get(query_of(FLAT[name]))
    assert by_query.status_code == 200, by_query.text
    assert by_query.content == post(service, FLAT[name]).content


@pytest.mark.parametrize("name", FLAT)
def test_pick_gives_one_value_as_text(service: Service, name: str) -> None:
    """`pick` gives any single value of the result as plain text that reads back to it."""
    url = query_of(FLAT[name])
    answer = post(service, FLAT[name]).json()
    stopped = {"stop"} & {advisory["severity"] for advisory in answer["advisories"]}
    path, value = next(_leaves(answer["result"]))
    picked = service.get(f"{url}&pick={path}")
    if stopped and path not in {"forecast", "verdict"}:
        assert_problem(picked, "stopped")
        return
    assert picked.status_code == 200, picked.text
    assert picked.headers["content-type"] == "text/plain; charset=utf-8"
    assert picked.text == as_text(value)


@pytest.mark.parametrize("name", FLAT)
def test_one_value_has_an_address_of_its_own(service: Service, name: str) -> None:
    """Operation and field in the path, the request in the query: what `pick` gives, byte by byte.

    The text of a refusal names the part of the address that it is about.
    """
    url = query_of(FLAT[name])
    path, _ = next(_leaves(post(service, FLAT[name]).json()["result"]))
    picked = service.get(f"{url}&pick={path}")
    own = service.get(f"/v1/values/{name}/{path}?{url.partition('?')[2]}")
    assert own.status_code == picked.status_code
    if own.status_code == 200:
        assert own.content == picked.content
        assert own.headers["etag"] == picked.headers["etag"]
    else:
        assert own.json()["detail"] == picked.json()["detail"]
        assert own.json()["errors"][0]["pointer"] == "/field"


@pytest.mark.parametrize("name", [*sorted(set(OPERATIONS) - set(FLAT)), "sine.no-such", "sine"])
def test_a_value_of_what_is_not_asked_by_query_is_not_found(service: Service, name: str) -> None:
    """An operation that takes nested fields, or none at all, has no such address."""
    problem = assert_problem(service.get(f"/v1/values/{name}/height?units=in"), "not-found")
    assert problem["known"] == NAMED


def test_the_address_of_a_value_takes_no_pick_besides(service: Service) -> None:
    """Two answers to the question which value would be one too many."""
    url = f"/v1/values/sine.setting/height?{SINE_QUERY.partition('?')[2]}"
    assert service.get(url).text == "2.5"
    problem = assert_problem(service.get(f"{url}&pick=height"), "invalid-request")
    assert problem["errors"][0]["pointer"] == "/pick"


def test_the_address_of_a_value_is_declared_for_each_flat_operation_and_table() -> None:
    """The contract lists their names; a GET with JSON is declared as JSON alone."""
    paths = json.loads(contract_bytes())["paths"]
    asked = paths[VALUE_PATH]["get"]
    assert asked["parameters"][0]["schema"]["enum"] == NAMED
    assert set(asked["responses"]["200"]["content"]) == {"text/plain"}
    answers = {tuple(i["get"]["responses"]["200"]["content"]) for p, i in paths.items()
               if "get" in i and p != VALUE_PATH and not p.endswith("/sheet")}  # fmt: skip
    assert answers == {("application/json",)}


def _leaves(value: Any, path: str = "") -> Iterator[tuple[str, Any]]:
    """Every single value of a result with its dotted path, numbers first."""
    entries = enumerate(value) if isinstance(value, list) else value.items()
    nested = []
    for name, part in entries:
        if isinstance(part, dict | list):
            nested.append((f"{path}{name}.", part))
        else:
            yield f"{path}{name}", part
    for prefix, part in nested:
        yield from _leaves(part, prefix)


@pytest.mark.parametrize(
    ("path", "words"),
    [
        ("", "has no ''; there is: "),
        ("no_such_field", "has no 'no_such_field'; there is: "),
        ("angle", "names several values, not one"),
        ("angle.degrees.x", "has no 'x'; there is: a single value"),
        ("x" * 5000, "has no '" + "x" * 60 + "'"),
    ],
)
def test_pick_of_what_is_not_there_is_refused(service: Service, path: str, words: str) -> None:
    """A path that leads nowhere, or to several values, is refused with what there is."""
    problem = assert_problem(service.get(f"{SINE_QUERY}&pick={path}"), "no-such-value")
    assert words in problem["detail"]
    assert problem["errors"][0]["pointer"] == "/pick"
    assert len(problem["detail"]) < 1000


def test_pick_keeps_full_precision(service: Service) -> None:
    """The text reads back to the very number of the JSON answer."""
    url = f"{SINE}?units=in&center_distance=5&angle=8.3"
    picked = service.get(f"{url}&pick=height").text
    assert float(picked) == service.get(url).json()["result"]["height"]


# Catalogue and tables -------------------------------------------------------------------------
def test_catalogue_lists_every_operation(service: Service) -> None:
    """The catalogue has one line for each operation, in the registry's order."""
    listed = service.get("/v1/operations").json()["result"]["operations"]
    assert [entry["name"] for entry in listed] == list(OPERATIONS)
    assert [entry["query"] for entry in listed] == [name in FLAT for name in OPERATIONS]


@pytest.mark.parametrize("name", OPERATIONS)
def test_catalogue_is_enough_for_a_form(service: Service, name: str) -> None:
    """One entry holds schemas, formulas, sources and the example, as the operation declares."""
    entry = service.get(f"/v1/operations/{name}").json()["result"]
    operation = OPERATIONS[name]
    assert entry["path"] == operation.path
    assert entry["title"]
    assert entry["summary"]
    assert entry["largest_request"]
    assert entry["relations"] == list(operation.relations)
    assert len(entry["sources"]) == len(operation.sources)
    assert entry["example"] == json.loads(json.dumps(dict(operation.example)))
    assert set(entry["example"]) <= set(entry["request_schema"]["properties"])
    assert entry["result_schema"]["properties"]


@pytest.mark.parametrize("collection", TABLES, ids=lambda c: c.path)
def test_every_row_of_a_table_is_found_by_its_key(service: Service, collection: Any) -> None:
    """Each key that a table knows gives its row, with sources; another one is not found."""
    assert service.get(collection.path).status_code == 200
    assert collection.keys()
    for key in collection.keys():  # noqa: SIM118 - a method of a collection, not of a mapping
        answer = service.get(f"{collection.path}/{key}").json()
        assert answer["result"]
        assert answer["basis"]["release"] == __version__
    problem = assert_problem(service.get(f"{collection.path}/no-such-key"), "not-found")
    assert problem["known"] == list(collection.keys())
