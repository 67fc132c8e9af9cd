"""Answers that a cache keeps: none outlives a release, and who asks again costs no calculation."""

from dataclasses import replace
from typing import Any

import pytest

from halfangle_service.operation import Outcome
from halfangle_service.registry import load_registry
from http_support import FLAT, OPERATIONS, SINE_QUERY, service_with

SHEET = SINE_QUERY.replace("/setting?", "/setting/sheet?")
VALUE = SINE_QUERY.replace("/v1/sine/setting?", "/v1/values/sine.setting/height?")
#: What says its advisories itself; one value alone needs the header for that, a 304 of it too.
WHOLE = (SINE_QUERY, SHEET)


@pytest.fixture
def calculated(monkeypatch: pytest.MonkeyPatch) -> list[Any]:
    """Each request of `sine.setting` that is calculated from now on."""
    sine = load_registry().operations["sine.setting"]
    asked: list[Any] = []

    def calculate(request: Any) -> Outcome[Any]:
        asked.append(request)
        return sine.calculate(request)

    counting = replace(sine, calculate=calculate)
    monkeypatch.setitem(load_registry().operations, "sine.setting", counting)
    return asked


@pytest.mark.parametrize("path", WHOLE)
def test_who_asks_again_costs_no_calculation(path: str, calculated: list[Any]) -> None:
    """304 comes by the tag alone, with the headers that a cache goes by."""
    with service_with() as service:
        first = service.get(path)
        before = len(calculated)
        assert before == 1
        again = service.get(path, headers={"If-None-Match": first.headers["etag"]})
    assert (again.status_code, again.content, len(calculated)) == (304, b"", before)
    for name in ("etag", "cache-control", "vary"):
        assert again.headers.get(name) == first.headers.get(name), name


def test_what_profiles_decide_is_never_kept() -> None:
    """A tag is made of release and address: no answer to GET may depend on the file of profiles."""
    in_a_shop = {name for name, one in OPERATIONS.items() if one.in_a_shop is not None}
    assert in_a_shop >= {"jobs.plan", "jobs.routing"}
    assert in_a_shop.isdisjoint(FLAT)


@pytest.mark.parametrize("path", WHOLE)
def test_no_kept_answer_outlives_a_release(path: str, monkeypatch: pytest.MonkeyPatch) -> None:
    """A cache asks again after a minute, and at another release it is given the new answer."""
    with service_with() as service:
        old = service.get(path).headers
        assert old["cache-control"] == "public, max-age=60, must-revalidate"
        monkeypatch.setattr("halfangle_service.http.answers.__version__", "0.3.0")
        upgraded = service.get(path, headers={"If-None-Match": old["etag"]})
    assert upgraded.status_code == 200
    assert upgraded.headers["etag"] != old["etag"]


def test_the_form_asked_for_tells_two_tags_apart() -> None:
    """At one address a page and a PDF have tags of their own, as two values have."""
    with service_with() as service:
        page = service.get(SHEET, headers={"Accept": "text/html"}).headers["etag"]
        known = {"If-None-Match": page, "Accept": "application/pdf"}
        assert service.get(SHEET, headers=known).status_code != 304
        other = service.get(VALUE.replace("/height?", "/bench_step?")).headers["etag"]
        assert other != service.get(VALUE).headers["etag"]


@pytest.mark.parametrize("path", [VALUE, f"{SINE_QUERY}&pick=height"])
def test_one_value_is_calculated_each_time(path: str, calculated: list[Any]) -> None:
    """Its 304 must bring the cautions of the answer that it is of."""
    with service_with() as service:
        tag = service.get(path).headers["etag"]
        assert service.get(path, headers={"If-None-Match": tag}).status_code == 304
    assert len(calculated) == 2


@pytest.mark.parametrize("known", ["*", '"', "W/", '"0123456789abcdef0123456789abcdef"', ",,,"])
def test_a_refusal_is_never_taken_for_known(known: str) -> None:
    """What is refused is refused, whatever the caller says that he has."""
    with service_with() as service:
        for path in (SINE_QUERY.replace("angle=30", "angle=91"), f"{SINE_QUERY}&pick=nothing"):
            refused = service.get(path, headers={"If-None-Match": known})
            assert refused.status_code == 422, (path, refused.text)


def test_what_is_tagged_by_its_address_depends_on_nothing_else() -> None:
    """No operation asked by query string takes a shop's profiles, on which its answer would stand.

    With one the tag would have to name the profiles that the service was started with.
    """
    assert [name for name in FLAT if OPERATIONS[name].in_a_shop is not None] == []
