"""Sheets by HTTP: their addresses, forms, refusals, and what stands on them."""

import json
import re
from collections.abc import Iterator
from dataclasses import replace
from functools import cache
from typing import Any

import pytest

from halfangle_service.http.sheets import SheetChoice, choice_of
from halfangle_service.sheets import pdf
from halfangle_service.sheets.code import LONGEST_TEXT, code_of
from halfangle_service.sheets.made import PLAN, WITH_SHEET, Choice, page_for
from halfangle_service.sheets.model import Origin, Sheet, Step
from halfangle_service.sheets.page import page_of
from halfangle_service.sheets.plan import plan_sheet
from http_support import FLAT, OPERATIONS, Service, query_of, service_with
from sheets_support import FEATURES, center_job, plan_page, shop_job, visible_text

_PLAN_SHEET = "/v1/jobs/plan/sheet"
_SETTING = "/v1/sine/setting/sheet?units=in&center_distance=5&angle=30"
#: A wheel run at twice the speed marked on it.
_TOO_FAST = {"units": "in", "wheel_diameter": 7, "rpm": 7200, "marked_rpm": 3600}


@pytest.fixture(scope="module")
def service() -> Iterator[Service]:
    """A service."""
    with service_with() as running:
        yield running


@pytest.fixture(scope="module")
def center(service: Service) -> str:
    """The sheet of a center."""
    answer = service.post(_PLAN_SHEET, json=center_job())
    assert answer.status_code == 200
    page: str = answer.text
    return page


def example_of(name: str) -> dict[str, Any]:
    """A request that has a sheet; an overlay must find room on the paper."""
    sent = dict(OPERATIONS[name].example)
    return sent | {"magnification": 8} if name == "inspection.overlay" else sent


@pytest.mark.parametrize("name", WITH_SHEET)
def test_a_sheet_is_the_answer_with_its_fingerprint(service: Service, name: str) -> None:
    """Each operation that has one gives a page that names the answer's own fingerprint."""
    path, sent = OPERATIONS[name].path, example_of(name)
    page = service.post(f"{path}/sheet", json=sent)
    assert page.status_code == 200, page.text
    assert page.headers["content-type"] == "text/html; charset=utf-8"
    answer = service.post(path, json=sent).json()
    assert answer["basis"]["fingerprint"] in visible_text(page.text)
    shown = re.search(r"<pre>(.*?)</pre>", page.text, re.S)
    assert shown is not None
    told = json.loads(shown[1].replace("&#34;", '"').replace("&#39;", "'"))
    again = OPERATIONS[name].request.model_validate(told)
    assert again == OPERATIONS[name].request.model_validate(sent)


def test_what_the_way_has_not_is_not_checked() -> None:
    """Stacks are compared where there is a second one; a path is no word for a hand."""
    shown = {
        name: visible_text(plan_page(shop_job(name, FEATURES[name])).html) for name in FEATURES
    }
    compared = {name for name, text in shown.items() if "A second stack compared" in text}
    assert compared == {name for name, text in shown.items() if "Second stack, to compare" in text}
    assert 0 < len(compared) < len(FEATURES)
    assert [name for name, text in shown.items() if "equipment/" in text] == []


@pytest.mark.parametrize("name", sorted(set(WITH_SHEET) & set(FLAT)))
def test_a_flat_request_has_its_sheet_by_address(service: Service, name: str) -> None:
    """A link is enough: GET answers as POST does, with a tag that is met by 304, HEAD alike."""
    operation = OPERATIONS[name]
    path = query_of(operation).replace("?", "/sheet?")
    if name == "inspection.overlay":
        path = path.replace("magnification=20", "magnification=8")
    page = service.get(path)
    assert page.content == service.post(f"{operation.path}/sheet", json=example_of(name)).content
    tag = page.headers["etag"]
    assert service.get(path, headers={"If-None-Match": tag}).status_code == 304
    if name == "sine.setting":
        assert service.head(path).headers["content-length"] == str(len(page.content))


def test_the_names_of_a_choice_are_no_fields_of_a_request() -> None:
    """Beside a request in one query string, paper and form are told from its fields."""
    for name in WITH_SHEET:
        chosen = set(choice_of(OPERATIONS[name]).model_fields)
        assert not chosen & set(OPERATIONS[name].request.model_fields)
    assert set(SheetChoice.model_fields) < set(choice_of(OPERATIONS[PLAN]).model_fields)


@pytest.mark.parametrize(
    ("query", "accept", "wanted"),
    [
        ("", "text/html", "text/html"),
        ("", "text/html;q=0.5, application/xhtml+xml, */*;q=0.1", "text/html"),
        ("&format=html", "*/*", "text/html"),
    ],
)
def test_the_form_is_what_is_asked_for(
    service: Service, query: str, accept: str, wanted: str
) -> None:
    """Accept decides, and `format` where it is said."""
    answer = service.get(_SETTING + query, headers={"Accept": accept})
    assert answer.status_code == 200
    assert answer.headers["content-type"].startswith(wanted)
    assert answer.headers["vary"] == "Accept"


@pytest.mark.parametrize(
    ("query", "accept", "status", "pointer"),
    [
        ("", "image/png", 406, None),
        ("&format=html", "application/pdf", 406, None),
        ("&format=png", "*/*", 422, "/format"),
        ("&paper=a3", "*/*", 422, "/paper"),
        ("&paper=a4&paper=letter", "*/*", 422, "/paper"),
        ("&papr=a4", "*/*", 422, "/papr"),
        ("&way=2", "*/*", 422, "/way"),
    ],
)
def test_what_is_asked_wrongly_is_named(
    service: Service, query: str, accept: str, status: int, pointer: str | None
) -> None:
    """A form, a paper or a name that there is not is refused by its name."""
    answer = service.get(_SETTING + query, headers={"Accept": accept})
    assert answer.status_code == status
    assert [one["pointer"] for one in answer.json()["errors"]] == ([pointer] if pointer else [])


def test_no_pdf_says_what_is_missing(service: Service, monkeypatch: pytest.MonkeyPatch) -> None:
    """An installation without the extra answers 501 and names it; pages it makes all the same."""

    def absent() -> Any:
        raise pdf.NoPdf(pdf.MISSING)

    monkeypatch.setattr(pdf, "_engine", absent)
    refused = service.get(_SETTING + "&format=pdf")
    assert refused.status_code == 501
    assert refused.json()["type"] == "/problems/not-installed"
    assert "halfangle-service[sheets]" in refused.json()["detail"]
    assert service.get(_SETTING).status_code == 200


def test_a_refused_plan_has_no_sheet(service: Service) -> None:
    """What cannot be planned gives its refusal, the plan's own, never an empty page."""
    sent = center_job()
    sent["equipment"]["sine_plates"][0]["largest_angle"] = 10
    refused = service.post(_PLAN_SHEET, json=sent)
    assert refused.status_code == 422
    told, own = refused.json(), service.post("/v1/jobs/plan", json=sent).json()
    assert told | {"instance": ""} == own | {"instance": ""}
    outside = service.get(_SETTING.replace("angle=30", "angle=95"))
    assert outside.json()["errors"][0]["pointer"] == "/angle"
    in_query = service.post(f"{_PLAN_SHEET}?units=in", json=center_job())
    assert in_query.json()["errors"][0]["pointer"] == "/units"


def test_a_stop_is_large_and_first(service: Service) -> None:
    """A sheet that must not be run says so before all else, and in the header."""
    answer = service.post("/v1/wheels/speed/sheet", json=_TOO_FAST)
    assert answer.headers["advisories"].startswith("over-marked-speed;severity=stop")
    text = visible_text(answer.text)
    assert text.index("Stop: do not run this") < text.index("Surface speed")
    assert "will hold" not in text
    calm = service.post("/v1/wheels/speed/sheet", json=_TOO_FAST | {"rpm": 3000})
    assert "Stop" not in visible_text(calm.text)


def test_a_sheet_needs_a_key_where_the_service_has_keys() -> None:
    """It is an answer as any other."""
    with service_with(api_keys=frozenset({"k-0123456789abcdef"})) as guarded:
        assert guarded.get(_SETTING).status_code == 401
        given = guarded.get(_SETTING, headers={"X-API-Key": "k-0123456789abcdef"})
        assert given.status_code == 200
        assert given.headers["cache-control"].startswith("private")


def test_a_sheet_runs_and_fetches_nothing(center: str) -> None:
    """It holds no script, no address to load from, and a policy that allows none."""
    assert "<script" not in center
    assert "url(" not in center
    loaded = re.findall(r'(?:src|href|data)="([^"]*)"', center)
    assert [address for address in loaded if not address.startswith("data:")] == []


def test_the_policy_of_a_sheet(service: Service) -> None:
    """A browser is told that nothing runs in it and nothing is fetched for it."""
    policy = service.get(_SETTING).headers["content-security-policy"]
    assert "default-src 'none'" in policy
    assert "script-src" not in policy


def test_all_that_the_hand_needs_is_on_the_sheet(service: Service, center: str) -> None:
    """Steps with their cautions, stacks, limits, readings, blanks: all that the plan says."""
    answer = service.post("/v1/jobs/plan", json=center_job()).json()
    result, text = answer["result"], visible_text(center)
    for step in result["steps"]:
        for sentence in (step["action"], *step["cautions"]):
            assert " ".join(sentence.split()) in text.replace("&#39;", "'").replace("&#34;", '"')
    assert "= 2.5000 in" in text
    assert "30°00′00″" in text
    assert "±120″" in text
    assert "0.2202 in, wheel to nose" in text
    told = text.replace("&#39;", "'")
    for message in (advisory["message"] for advisory in answer["advisories"]):
        for sentence in re.split(r"(?<=[.]) (?=[A-Z])", message):
            assert sentence in told
    # Each sentence of the cautions once: what they have alike is not said four times.
    assert told.count("local codes and qualified people come first.") == 1
    # The reading to expect to the second that matters, as its limits are.
    assert "60°00′00″ 59°58′00″ … 60°02′00″" in text
    for blank in ("as measured", "TIR before re-seating", "TIR after re-seating", "Temperature",
                  "Indicator", "Rolls, balls", "Date", "Initials", "Piece 1", "Piece 5",
                  "Not stated"):  # fmt: skip
        assert blank in text


def test_limits_are_never_wider_than_they_are(center: str) -> None:
    """What is read to the digits shown within the limits shown is within the limits."""
    checks = OPERATIONS[PLAN].outcome(OPERATIONS[PLAN].request.model_validate(center_job())).result
    reading = checks.checks.inspections[0].readings[-1]
    shown = re.search(r"(−[\d.]+) … (−[\d.]+) in</td>", center)
    assert shown is not None
    low, high = (float(figure.replace("−", "-")) for figure in shown.groups())
    assert reading.smallest_reading <= low < reading.smallest_reading + 1.1e-5
    assert reading.largest_reading - 1.1e-5 < high <= reading.largest_reading


def test_each_way_has_its_own_sheet() -> None:
    """By its place or its name; the steps are those of that way."""
    first, second = plan_page(center_job()), plan_page(center_job(), way="2")
    assert "turned a quarter" in visible_text(second.html)
    assert first.html != second.html
    assert plan_page(center_job(), way="quarter-turn").html == second.html
    assert plan_page(center_job(), way="1").html == first.html


def test_a_way_that_is_not_there_is_refused(service: Service) -> None:
    """The refusal names those that are."""
    for way in ("0", "9", "by-hand", "²"):
        refused = service.post(f"{_PLAN_SHEET}?way={way}", json=center_job())
        assert refused.status_code == 422
        assert refused.json()["errors"][0]["pointer"] == "/way"
        assert "1 sine-plate, 2 quarter-turn" in refused.json()["detail"]


def test_an_inspection_sheet_has_a_line_for_each_piece() -> None:
    """Of a batch the pieces to measure by number, the limits over the blanks, and what to do."""
    text = visible_text(plan_page(center_job(), kind="inspection").html)
    assert "5, of which 2 are measured" in text
    assert "−0.63537 … −0.63480 in" in text
    assert "Past the limits: stop." in text


def test_a_batch_without_means_has_lines_all_the_same() -> None:
    """Where no means of measuring was stated, the sheet says so and leaves room for each piece."""
    sent = shop_job("HL-0303 Morse 3 plug", FEATURES["HL-0303 Morse 3 plug"])
    text = visible_text(plan_page(sent, kind="inspection").html)
    assert "no means of measuring was stated" in text
    assert "Part Included angle Good, not proved, bad Remark, initials ±40″ 1 3 " in text


def test_what_is_not_drawn_or_worked_out_is_said() -> None:
    """A way without a drawing, and without a gap, says so in words."""
    sent = shop_job("HL-0072 work of 72°", FEATURES["HL-0072 work of 72°"])
    dressed = visible_text(plan_page(sent, way="3").html)
    assert "Drawing none: it shows work on a plate on its stacks" in dressed
    assert "Clearance not worked out: prove it by hand" in dressed


@pytest.mark.parametrize(
    "job",
    [
        "<script>alert(1)</script>",
        "\"'><img src=x onerror=alert(1)>",
        "{{ 7 * 7 }} {% raw %}",
        "שלום עולם מחט",
        "👩‍🏭🔧" * 12,
        "e\u0301\u0302\u0303" * 15,
        "x" * 60,
        "a\u202eb\u0000c",
        "y" * 10_000,
    ],
)
def test_a_name_of_any_script_is_a_name(job: str) -> None:
    """It is escaped, may break, and changes nothing else on the page."""
    plain, origin = center_sheet()
    named = page_of(replace(plain, title=job, about=job, steps=(Step(job, (job,)),)), origin, "a4")
    assert "<script" not in named
    assert "<img" not in named
    assert "49" not in re.findall(r"<h1[^>]*>(.*?)</h1>", named)[0]
    bare = page_of(replace(plain, title="", about="", steps=(Step(""),)), origin, "a4")
    assert named.count("<tr") == bare.count("<tr")
    assert "\0" not in named


@cache
def center_sheet() -> tuple[Sheet, Origin]:
    """The sheet of a center before it is a page."""
    operation = OPERATIONS[PLAN]
    request = operation.request.model_validate(center_job())
    outcome = operation.outcome(request)
    sheet = plan_sheet(request, outcome.result, outcome.advisories, request.equipment)
    code = code_of(operation.path, request, "0" * 16, "")
    return sheet, Origin(operation.name, "0", "0" * 16, "{}", code)


@pytest.mark.parametrize("name", [*FEATURES][:2])
def test_the_code_is_short_and_says_whose_answer_it_is(name: str) -> None:
    """Release, fingerprint and address, within what is read back from a page."""
    page = plan_page(shop_job(name, FEATURES[name]))
    text = re.search(r'<footer><p dir="auto">(.*?)</p>', page.html)
    assert text is not None
    said = text[1].replace("<wbr>", "")
    assert len(said) <= LONGEST_TEXT
    assert re.fullmatch(r"Halfangle [\d.]+ [0-9a-f]{16} /v1/jobs/plan .*", said)


def test_the_code_of_a_flat_request_asks_it_again(service: Service) -> None:
    """The query string in it is the request: asked, it gives the same answer."""
    operation = OPERATIONS["sine.setting"]
    request = operation.request.model_validate(dict(operation.example))
    page = page_for(operation, request, Choice())
    said = re.search(r"Halfangle [\d.]+ ([0-9a-f]{16}) (/v1/[^<]+)", page.html)
    assert said is not None
    again = service.get(said[2].replace("&amp;", "&"))
    assert again.json()["basis"]["fingerprint"] == said[1]
