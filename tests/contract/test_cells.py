"""What a cell of a sheet is given: several values, lists, rows, and what is refused as text."""

import json
from typing import Any
from urllib.parse import quote

import pytest

from halfangle_service.http.picks import pick_values
from http_support import SINE_QUERY, Service, assert_problem

STACK = "/v1/values/blocks.stack/{}?units=in&set=inch-81&height=2.621"
OVERSPEED = "/v1/wheels/speed?units=in&wheel_diameter=7&rpm=6000&marked_rpm=3600"
SET = "/v1/blocks/sets/inch-81"


def picked(result: dict[str, Any], paths: str, separator: str | None = None) -> str:
    """What is picked of an invented answer."""
    answer = json.dumps({"result": result, "advisories": []}).encode()
    return pick_values(answer, paths, "pick", separator)[0].decode()


@pytest.mark.parametrize(
    ("paths", "text"),
    [
        ("height,angle.dms", "2.5 | 30°00'"),
        (" height , angle.dms ", "2.5 | 30°00'"),
        ("height,unknown", "2.5 | null"),
        ("blocks", "2.0 + 0.5"),
        ("low_blocks,height", "none | 2.5"),
        ("stations", "1; null; 3"),
        ("ways.*.name", "plate; dresser"),
        ("ways.*.blocks", "2.0 + 0.1; 0.5"),
        ("ways.1.name", "dresser"),
        ("blocks.*", "2.0 + 0.5"),
        ("ways.*.holds", "true; null"),
        ("formula", "=1+1"),
    ],
)
def test_a_list_of_paths_gives_one_text(paths: str, text: str) -> None:
    """Values are parted by ` | `; blocks of a stack by ` + `, entries of other lists by `; `."""
    result = {
        "height": 2.5,
        "angle": {"degrees": 30.0, "dms": "30°00'"},
        "unknown": None,
        "blocks": [2.0, 0.5],
        "low_blocks": [],
        "stations": [1, None, 3],
        "ways": [
            {"name": "plate", "blocks": [2.0, 0.1], "holds": True},
            {"name": "dresser", "blocks": [0.5], "holds": None},
        ],
        "formula": "=1+1",
    }
    assert picked(result, paths) == text


@pytest.mark.parametrize(
    ("paths", "separator", "text"),
    [("a,b", ";\n", "1;\n2 + 3"), ("b", "=", "2=3"), ("a,b", " & ", "1 & 2 + 3"), ("a", "; ", "1")],
)
def test_the_separator_is_the_callers(paths: str, separator: str, text: str) -> None:
    """It stands between several values, or between the entries of the one list picked."""
    assert picked({"a": 1, "blocks": [2, 3], "b": [2, 3]}, paths.replace("b", "blocks"),
                  separator) == text  # fmt: skip


def test_an_answer_gives_several_values_at_both_addresses(service: Service) -> None:
    """The address of values and `pick` give the same bytes, tag and header; HEAD gives the head."""
    own = service.get(STACK.format("blocks,total,marks"))
    assert own.text == "2.0 + 0.5 + 0.121 | 2.621 | none"
    url = "/v1/blocks/stack?units=in&set=inch-81&height=2.621&pick=blocks,total,marks"
    for other in (service.get(url), service.head(url)):
        assert (other.status_code, other.headers["etag"]) == (200, own.headers["etag"])
        assert other.headers["content-length"] == str(len(own.content))
    known = {"If-None-Match": own.headers["etag"]}
    assert service.get(url, headers=known).status_code == 304
    assert service.get(f"{url}&separator=;").headers["etag"] != own.headers["etag"]


@pytest.mark.parametrize("separator", ["; ", "|", " = ", ";\n", "\t|\t", "→", "§§§§§§§§§§"])
def test_a_separator_may_be_any_sign_that_no_number_has(service: Service, separator: str) -> None:
    """It comes as it was sent, line ends and the begin of a formula too."""
    text = service.get(f"{STACK.format('blocks')}&separator={quote(separator)}").text
    assert text == separator.join(("2.0", "0.5", "0.121"))


@pytest.mark.parametrize(
    ("separator", "words"),
    [
        ("", "should have 1 to 10 characters; got 0"),
        ("|" * 11, "got 11"),
        ("|" * 5000, "got 5000"),
        (".", "could make one number of two"),
        (" ", "could make one number of two"),
        ("\n", "could make one number of two"),
        ("e", "could make one number of two"),
        ("/", "could make one number of two"),
        ("|\x00", "printable"),
        ("|\x1b[0m", "printable"),
        ("|\u202e", "printable"),
    ],
)
def test_a_separator_that_could_make_a_number_is_refused(
    service: Service, separator: str, words: str
) -> None:
    """A sheet reads `2 5` as 25 and `2/5` as a day: what joins values must be none of a number."""
    refused = service.get(f"{STACK.format('blocks')}&separator={quote(separator)}")
    problem = assert_problem(refused, "invalid-request")
    assert problem["errors"][0]["pointer"] == "/separator"
    assert words in problem["detail"]


@pytest.mark.parametrize(
    ("query", "pointer", "words"),
    [
        ("&separator=;", "/separator", "needs pick beside it"),
        ("&on_error=text", "/on_error", "needs pick beside it"),
        ("&pick=height&on_error=txt", "/on_error", "should be text, or left out"),
        ("&pick=height&on_error=&on_error=text", "/on_error", "given twice"),
        ("&pick=height&separator=;&separator=;", "/separator", "given twice"),
        ("&pik=height", "/pik", "did you mean pick"),
        ("&pick=height&seperator=;", "/seperator", "did you mean separator"),
        ("&pick=height&onerror=text", "/onerror", "did you mean on_error"),
    ],
)
def test_a_wrong_parameter_of_a_cell_is_named(
    service: Service, query: str, pointer: str, words: str
) -> None:
    """What is misspelt, doubled or without `pick` is refused, the nearest name with it."""
    problem = assert_problem(service.get(SINE_QUERY + query), "invalid-request")
    assert problem["errors"][0]["pointer"] == pointer
    assert words in f"{problem['detail']} {problem['errors'][0]['message']}"


def test_what_is_wrong_with_a_cell_comes_as_text_too(service: Service) -> None:
    """A wrong separator or a second `pick` is told in the cell that asks for texts."""
    text = service.get(f"{SINE_QUERY}&pick=height&on_error=text&separator=.").text
    assert text.startswith("ERROR invalid-request: separator could make one number of two")
    text = service.get(f"{SINE_QUERY}&pick=height&pick=angle&on_error=text").text
    assert text.startswith("ERROR invalid-request: pick is given twice")


@pytest.mark.parametrize(
    ("path", "words"),
    [
        ("heigth", "did you mean height"),
        ("angle", "names several values, not one; there is: degrees, dms"),
        ("height,", "has no ''"),
        (",".join(["height"] * 101), "names 101 values; 100 at most"),
        ("height.*", "has no '*'; there is: a single value"),
        ("x" * 5000, "has no '" + "x" * 60 + "'"),
    ],
)
def test_what_is_not_there_is_told_with_the_nearest(
    service: Service, path: str, words: str
) -> None:
    """A path that leads nowhere is refused with what was near, as a problem or as text."""
    url = f"{SINE_QUERY}&pick={path}"
    assert words in assert_problem(service.get(url), "no-such-value")["detail"]
    told = service.get(f"{url}&on_error=text")
    assert (told.status_code, told.headers["content-type"]) == (200, "text/plain; charset=utf-8")
    assert told.text.startswith("ERROR no-such-value: pick ")
    assert words in told.text
    assert len(told.text) < 1500


def test_a_hundred_values_are_given(service: Service) -> None:
    """As many as one request may name."""
    text = service.get(f"{SINE_QUERY}&pick={','.join(['height'] * 100)}").text
    assert text == " | ".join(["2.5"] * 100)


@pytest.mark.parametrize(
    ("url", "text"),
    [
        (f"{SINE_QUERY}&pick=height&centre=1&", "ERROR invalid-request: /centre: is not a field"),
        ("/v1/sine/setting?units=in&center_distance=5&angle=89.99999&base_step=4&pick=height&",
         "ERROR "),
        ("/v1/blocks/stack?units=in&height=0.01&set=inch-81&pick=total&", "ERROR unreachable: No"),
        ("/v1/values/sine.seting/height?", "ERROR not-found: No operation that is asked by query "
         "string, and no table, has this name; did you mean sine.setting"),
        ("/v1/values/jobs.plan/ways?", "ERROR not-found: "),
        ("/v1/blocks/sets/inch-18?pick=sizes&", "ERROR not-found: Built-in sets of gauge blocks"),
    ],
)  # fmt: skip
def test_every_refusal_comes_as_text_where_that_is_asked(
    service: Service, url: str, text: str
) -> None:
    """With status 200, one line, the same bytes each time; no number begins as it does."""
    told = service.get(f"{url}on_error=text")
    assert (told.status_code, told.headers["content-type"]) == (200, "text/plain; charset=utf-8")
    assert told.text.startswith(text)
    assert "\n" not in told.text
    known = {"If-None-Match": told.headers["etag"]}
    assert service.get(f"{url}on_error=text", headers=known).status_code == 304
    assert 400 <= service.get(url).status_code < 500


def test_a_stop_comes_as_text_that_says_so_first(service: Service) -> None:
    """Among several values one that may not stand beside a stop is enough; the header names it."""
    for paths in ("surface_speed_ft_per_min", "forecast,rpm", "advisories,rpm"):
        told = service.get(f"{OVERSPEED}&pick={paths}&on_error=text")
        assert told.status_code == 200
        assert told.text.startswith("STOP 6000 per minute is over marked_rpm (3600 per minute).")
        assert "over-marked-speed;severity=stop" in told.headers["advisories"]
        assert_problem(service.get(f"{OVERSPEED}&pick={paths}"), "stopped")
    both = service.get(f"{OVERSPEED}&pick=forecast,advisories")
    assert both.text.startswith("does-not-hold | stop over-marked-speed: ")


@pytest.mark.parametrize(
    ("query", "pointer"),
    [("", "/key"), ("?key=a&key=b", "/key"), ("?key=inch-81&colour=red", "/colour")],
)
def test_a_row_is_asked_by_its_key_alone(service: Service, query: str, pointer: str) -> None:
    """A row without a key, with two, or with what no row takes, is refused."""
    refused = service.get(f"/v1/values/blocks.sets/sizes{query}")
    assert assert_problem(refused, "invalid-request")["errors"][0]["pointer"] == pointer


def test_a_row_of_a_table_has_values(service: Service) -> None:
    """Its own address with `pick`, and the address of values by its key, give the same bytes."""
    picked_row = service.get(f"{SET}?pick=sizes.0,sizes.1&separator=;")
    assert picked_row.text == "0.05;0.1"
    own = service.get("/v1/values/blocks.sets/sizes.0,sizes.1?key=inch-81&separator=;")
    assert (own.content, own.headers["etag"]) == (picked_row.content, picked_row.headers["etag"])
    problem = assert_problem(service.get(f"{SET}?colour=red"), "invalid-request")
    assert problem["errors"][0]["pointer"] == "/colour"
    assert service.get(SET).json()["result"]["name"] == "inch-81"
    listing = service.get("/v1/blocks/sets?pick=name")
    assert assert_problem(listing, "invalid-request")["errors"][0]["pointer"] == "/pick"


def test_too_much_to_do_is_no_text(service: Service, monkeypatch: pytest.MonkeyPatch) -> None:
    """What the service itself fails at keeps its status: nobody keeps it as an answer."""
    monkeypatch.setattr("halfangle_service.http.cells._SERVER_FAULTS", 404)
    url = "/v1/values/sine.seting/height?on_error=text"
    assert_problem(service.get(url), "not-found")
