"""What the pages show, and the headers that they come with."""

import base64
import gzip
import hashlib
import re
from html import unescape
from importlib.metadata import requires
from typing import Any

import pytest
from litestar.testing import TestClient

from halfangle_service.fields.glossary import glossary
from halfangle_service.http.page.fields import grouped, rows_of, rules_of
from halfangle_service.http.page.files import PACKAGED, read_file, static_files
from http_support import OPERATIONS, service_with

FILES = [f"/docs/files/{name}" for name, _ in static_files()]
PAGES = ["/docs", "/docs/try", *(f"/docs/{name}" for name in OPERATIONS)]

Service = TestClient[Any]


# Words ----------------------------------------------------------------------------------------
def test_names_in_texts_are_set_as_code(service: Service) -> None:
    """What stands between backticks in a description is code on the page, not its marks as text."""
    page = service.get("/docs").text
    assert "Inches of diameter a foot of length, whatever <code>units</code> are." in page
    for path in PAGES:
        shown = re.sub(r"(?s)<pre>.*?</pre>", "", service.get(path).text)
        assert "&lt;code&gt;" not in shown
        assert "`" not in shown


@pytest.mark.parametrize("name", OPERATIONS)
def test_a_page_tells_all_of_its_operation(service: Service, name: str) -> None:
    """Each field with its meaning, each formula and source, and what bounds the work is there."""
    operation = OPERATIONS[name]
    page = unescape(re.sub(r"<[^>]+>", "", service.get(f"/docs/{name}").text))
    plain = re.sub(r"\s+", " ", page)
    for schema in (operation.request.model_json_schema(), operation.result.model_json_schema()):
        for field, part in schema["properties"].items():
            assert field in plain
            assert re.sub(r"\s+", " ", part.get("description", "").replace("`", "")) in plain
    for text in (operation.title, *operation.relations, *(s.citation for s in operation.sources)):
        assert re.sub(r"\s+", " ", text) in plain


def test_a_field_shows_its_bounds_unit_default_and_rules() -> None:
    """A row says what a field takes; objects are written out once; rules are sentences."""
    schema = {
        "properties": {
            "length": {"type": "number", "minimum": 0, "maximum": 10, "x-unit": "length"},
            "kind": {"enum": ["a", "b"], "default": "a", "x-labels": {"a": "First", "b": "b"}},
            "first": {"$ref": "#/$defs/Part"},
            "others": {"type": "array", "items": {"$ref": "#/$defs/Part"}, "maxItems": 8},
        },
        "required": ["first"],
        "x-rules": [{"kind": "at-most-one-of", "fields": ["length", "kind"]}],
        "$defs": {
            "Part": {
                "properties": {"size": {"type": "integer", "exclusiveMinimum": 0}},
                "x-rules": [{"kind": "needs", "fields": ["size"], "needs": "length"}],
            }
        },
    }
    rows = {row.path: row for row in rows_of(schema)}
    assert list(rows) == ["first", "first.size", "length", "kind", "others"]
    assert (rows["length"].form, rows["length"].unit, rows["length"].bounds) == (
        "number",
        "length",
        "0 to 10",
    )
    assert (rows["kind"].default, rows["kind"].options) == ("a", (("a", "First"), ("b", "")))
    assert rows["first"].required
    assert (rows["first.size"].form, rows["first.size"].bounds) == ("whole number", "over 0")
    assert rows["others"].form == "list of object (fields as of first)"
    assert rules_of(schema) == [
        "At most one of `length`, `kind`.",
        "In Part: `size`: only together with `length`.",
    ]


def test_fields_stand_in_their_groups() -> None:
    """The operation's own fields come first, an object's stay with it, what is advanced is last."""
    schema = {
        "properties": {
            "error": {"type": "number"},
            "part": {"$ref": "#/$defs/Part"},
            "plate": {"type": "number"},
            "angle": {"type": "number"},
        },
        "$defs": {"Part": {"properties": {"plate": {"type": "number"}}}},
    }
    groups: list[dict[str, Any]] = [
        {"title": "Errors", "advanced": True, "fields": ["error"]},
        {"title": "Plate", "fields": ["plate"]},
    ]
    shown = [
        (section.title, [row.path for row in section.rows])
        for section in grouped(rows_of(schema), groups)
    ]
    assert shown == [
        ("", ["part", "part.plate", "angle"]),
        ("Plate", ["plate"]),
        ("Errors", ["error"]),
    ]


def test_the_overview_lists_everything(service: Service) -> None:
    """Each operation has its entry with a link, each name of the glossary its anchor."""
    page = service.get("/docs").text
    for name, operation in OPERATIONS.items():
        assert f'<li id="{name}"' in page
        assert f'<a href="/docs/{name}">' in page
        assert operation.title in unescape(page)
    assert all(f'id="glossary-{term}"' in page for term in glossary())
    assert 'id="spreadsheet"' in page
    assert "=NUMBERVALUE(WEBSERVICE(" in unescape(page)


def test_every_link_leads_somewhere(service: Service) -> None:
    """Each link of each page, within a page too, leads to what there is."""
    pages = {path: service.get(path).text for path in PAGES}
    links = {
        (path, unescape(link))
        for path, text in pages.items()
        for link in re.findall(r'(?:href|src)="([^"]+)"', text)
        if not link.startswith("data:")
    }
    for path, link in sorted(links):
        target, _, fragment = link.partition("#")
        if fragment and not fragment.startswith("/"):
            assert f'id="{fragment}"' in pages[target or path], (path, link)
    for target in {link.partition("#")[0] for _, link in links} - {"", *pages}:
        assert service.get(target).status_code == 200, target


def test_every_page_leads_to_its_form(service: Service) -> None:
    """The links of each operation's page name forms as the packaged page does: topic, id."""
    paths = service.get("/openapi.json").json()["paths"].values()
    known = {f"#/{o['tags'][0]}/{o['operationId']}" for item in paths for o in item.values()}
    for name in OPERATIONS:
        page = service.get(f"/docs/{name}").text
        links = set(re.findall(r'href="/docs/try(#[^"]+)"', page))
        assert links
        assert links <= known


def test_identifiers_of_a_page_are_unique(service: Service) -> None:
    """No two parts of a page have one name."""
    for path in PAGES:
        names = re.findall(r'\sid="([^"]+)"', service.get(path).text)
        assert len(names) == len(set(names)), path


# Headers --------------------------------------------------------------------------------------
def test_the_root_leads_to_the_pages(service: Service) -> None:
    """Who types the address alone comes to the overview."""
    answer = service.get("/", follow_redirects=False)
    assert (answer.status_code, answer.headers["location"]) == (307, "/docs")
    assert service.get("/").url.path == "/docs"


@pytest.mark.parametrize("path", [*PAGES[:3], *FILES])
def test_pages_let_nothing_in(service: Service, path: str) -> None:
    """Scripts and styles come from this service alone, none stands within a page, no frame."""
    answer = service.get(path)
    assert answer.status_code == 200
    policy = dict(
        rule.strip().split(" ", 1) for rule in answer.headers["content-security-policy"].split(";")
    )
    assert policy["default-src"] == policy["frame-ancestors"] == policy["base-uri"] == "'none'"
    assert policy["script-src"] == policy["style-src"] == policy["connect-src"] == "'self'"
    assert "unsafe" not in answer.headers["content-security-policy"]
    assert answer.headers["x-content-type-options"] == "nosniff"
    assert answer.headers["x-frame-options"] == "DENY"
    assert answer.headers["referrer-policy"] == "no-referrer"


def test_no_page_holds_a_script_or_a_style(service: Service) -> None:
    """Nothing on a page would need a weaker policy."""
    for path in PAGES:
        page = service.get(path).text
        assert not re.findall(r"<style|<script(?![^>]* src=)|\son[a-z]+=\"|\sstyle=", page), path


@pytest.mark.parametrize("path", [*PAGES[:3], *FILES])
def test_an_upgrade_is_seen_at_once(service: Service, path: str) -> None:
    """What a browser keeps it asks about before each use, and is told in short that it has it."""
    first = service.get(path)
    assert first.headers["cache-control"] == "no-cache"
    again = service.get(path, headers={"If-None-Match": first.headers["etag"]})
    assert (again.status_code, again.content) == (304, b"")
    assert again.headers["content-security-policy"] == first.headers["content-security-policy"]


def test_pages_are_read_without_a_key() -> None:
    """Where keys are asked for, a browser still shows how to call; calculations want the key."""
    with service_with(api_keys=["a-key-of-a-test"]) as locked:
        for path in (*PAGES[:3], *FILES, "/openapi.json", "/glossary.json", "/problems/impossible"):
            assert locked.get(path).status_code == 200, path
        assert locked.post("/v1/sine/setting", json={}).status_code == 401
        assert locked.get("/v1/operations").status_code == 401


# Files ----------------------------------------------------------------------------------------
@pytest.mark.parametrize("name", PACKAGED)
def test_the_packaged_page_is_its_makers(name: str) -> None:
    """The bytes are those of the maker's own package, whose digest the page tells the browser."""
    digest = base64.b64encode(hashlib.sha384(read_file(name)).digest()).decode()
    assert PACKAGED[name] == f"sha384-{digest}"


def test_the_packaged_page_is_pinned() -> None:
    """Another release of it would have other bytes, which a browser would refuse."""
    needed = [line for line in requires("halfangle-service") or () if "swagger" in line]
    assert [line for line in needed if "==" in line] == needed


def test_pages_stay_light(service: Service) -> None:
    """The overview is at most 120 kB on the way, a page of an operation 60 kB."""
    sizes = {path: len(gzip.compress(service.get(path).content, 9)) for path in PAGES}
    assert sizes.pop("/docs") <= 120_000
    assert max(sizes.values()) <= 60_000
