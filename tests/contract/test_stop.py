"""A stop reaches whoever picks one value: the value is refused, or the header and text say so."""

import re
from collections.abc import Iterator
from typing import Any

import pytest
from litestar.testing import TestClient

from halfangle_service.app import application
from halfangle_service.fields import RequestModel, ResultModel
from halfangle_service.fields.advisories import Advisory, caution, note, stop
from halfangle_service.fields.glossary import advisory_meanings
from halfangle_service.http.calculating import Calculator
from halfangle_service.http.picks import ADVISORIES
from halfangle_service.http.routes import operation_routes
from halfangle_service.http.watch.metrics import Metrics
from halfangle_service.operation import Operation, Outcome
from halfangle_service.registry import load_registry
from halfangle_service.settings import Settings

Service = TestClient[Any]

OVERSPEED = "/v1/wheels/speed?units=in&wheel_diameter=7&rpm=6000&marked_rpm=3600"


class Asked(RequestModel):
    """What the invented operation takes."""

    advised: int


class Judged(ResultModel):
    """What the invented operation gives."""

    speed: float = 2.5
    forecast: str = "does-not-hold"
    verdict: str = "not-conforming"
    tir_forecast: str = "may-not-hold"
    checks: tuple[dict[str, str], ...] = (
        {"verdict": "not-provable", "what": "runout"},
        {"speed_forecast": "holds", "verdict": "conforming"},
    )


WHEEL = stop("over-marked-speed", "Do not run this wheel: its rim is faster than marked.")
ROOM = stop("no-room", "The plate does not clear the wheel.")
ADVISED: tuple[tuple[Advisory, ...], ...] = (
    (),
    (caution("wheel-safety", "Ring the wheel."), note("steep-angle", "Set the complement.")),
    (caution("wheel-safety", "Ring the wheel."), WHEEL, ROOM),
    tuple(note(f"note-{k}", "…") for k in range(200)),
)


def calculate(request: Asked) -> Outcome[Judged]:
    """Advise what is asked for."""
    return Outcome(Judged(), ADVISED[request.advised])


@pytest.fixture(scope="module")
def shop() -> Iterator[Service]:
    """A service of one operation, which advises what its request says."""
    operation = Operation(
        topic="shop",
        verb="advise",
        title="Advise",
        summary="",
        request=Asked,
        result=Judged,
        calculate=calculate,
        relations=(),
        sources=(),
        example={"advised": 0},
    )
    settings = Settings(log_level="error")
    calculator = Calculator.within(settings, Metrics())
    routes = operation_routes({operation.name: operation}, calculator, settings)
    with TestClient(application(routes, settings), raise_server_exceptions=False) as client:
        yield client


def pick(shop: Service, advised: int, path: str) -> Any:
    """Ask for one value."""
    return shop.get(f"/v1/shop/advise?advised={advised}&pick={path}")


@pytest.mark.parametrize("path", ["speed", "checks.0.what"])
def test_a_value_is_refused_where_the_answer_says_stop(shop: Service, path: str) -> None:
    """A bare number does not say that it must not be used: each stop's text stands in its place."""
    refused = pick(shop, 2, path)
    assert refused.status_code == 422
    assert refused.headers["content-type"] == "application/problem+json"
    problem = refused.json()
    assert problem["type"] == "/problems/stopped"
    assert problem["detail"] == f"{WHEEL.message} {ROOM.message}"
    assert problem["errors"][0]["pointer"] == "/pick"
    assert [a["code"] for a in problem["advisories"]] == [
        "wheel-safety",
        "over-marked-speed",
        "no-room",
    ]


@pytest.mark.parametrize(
    ("path", "text"),
    [
        ("forecast", "does-not-hold"),
        ("verdict", "not-conforming"),
        ("tir_forecast", "may-not-hold"),
        ("checks.0.verdict", "not-provable"),
    ],
)
def test_a_judgement_is_given_though_the_answer_says_stop(
    shop: Service, path: str, text: str
) -> None:
    """A forecast and a verdict say themselves what is wrong; the header names the stop."""
    picked = pick(shop, 2, path)
    assert (picked.status_code, picked.text) == (200, text)
    assert picked.headers["advisories"] == (
        "wheel-safety;severity=caution, over-marked-speed;severity=stop, no-room;severity=stop"
    )


@pytest.mark.parametrize("path", ["checks.1.speed_forecast", "checks.1.verdict"])
def test_a_judgement_that_says_yes_is_refused_where_the_answer_says_stop(
    shop: Service, path: str
) -> None:
    """A part may hold where the whole must not run: alone in a cell it would read as leave to."""
    assert pick(shop, 2, path).json()["type"] == "/problems/stopped"
    assert pick(shop, 1, path).status_code == 200


def test_advisories_can_be_picked(shop: Service) -> None:
    """They come one a line, stops too, and `none` where there are none."""
    assert pick(shop, 2, "advisories").text.splitlines() == [
        "caution wheel-safety: Ring the wheel.",
        f"stop over-marked-speed: {WHEEL.message}",
        f"stop no-room: {ROOM.message}",
    ]
    assert pick(shop, 0, "advisories").text == "none"


def test_cautions_come_with_a_picked_value(shop: Service) -> None:
    """The header names every advisory with its severity; without any there is no header."""
    picked = pick(shop, 1, "speed")
    assert (picked.status_code, picked.text) == (200, "2.5")
    assert picked.headers["advisories"] == (
        "wheel-safety;severity=caution, steep-angle;severity=note"
    )
    assert "advisories" not in pick(shop, 0, "speed").headers
    known = {"If-None-Match": picked.headers["etag"]}
    again = shop.get("/v1/shop/advise?advised=1&pick=speed", headers=known)
    assert again.status_code == 304
    assert again.headers["advisories"] == picked.headers["advisories"]


def test_the_header_is_bounded(shop: Service) -> None:
    """Two hundred notes do not make a header that a server before us refuses."""
    assert len(pick(shop, 3, "speed").headers["advisories"].split(", ")) == 20


def test_a_wheel_over_its_marked_speed_gives_no_plain_number(service: Service) -> None:
    """A spreadsheet that asks for the surface speed reads why the wheel must not run."""
    refused = service.get(f"{OVERSPEED}&pick=surface_speed_ft_per_min")
    assert (refused.status_code, refused.json()["type"]) == (422, "/problems/stopped")
    assert service.get(f"{OVERSPEED}&pick=forecast").text == "does-not-hold"
    assert "severity=stop" in service.get(f"{OVERSPEED}&pick=forecast").headers["advisories"]
    assert "\nstop " in "\n" + service.get(f"{OVERSPEED}&pick=advisories").text


def test_a_wheel_between_small_flanges_has_no_speed_that_holds(service: Service) -> None:
    """The speed keeps every mark, and still nobody may read that the wheel can run."""
    small = "/v1/wheels/speed?units=in&wheel_diameter=7&rpm=3450&marked_rpm=3600&flange_diameter=1"
    refused = service.get(f"{small}&wheel_type=1-straight&pick=speed_forecast")
    assert (refused.status_code, refused.json()["type"]) == (422, "/problems/stopped")
    assert "The flanges measure 1 in;" in refused.json()["detail"]


def test_a_whole_answer_is_given_though_it_says_stop(shop: Service) -> None:
    """JSON carries the stop itself, so nothing is refused."""
    answered = shop.get("/v1/shop/advise?advised=2")
    assert answered.status_code == 200
    assert [a["severity"] for a in answered.json()["advisories"]] == ["caution", "stop", "stop"]


def test_no_result_has_a_field_where_the_advisories_are_picked() -> None:
    """`pick=advisories` can mean one thing only."""
    operations = load_registry().operations
    assert [n for n, o in operations.items() if ADVISORIES in o.result.model_fields] == []


def test_codes_are_tokens() -> None:
    """Every code can stand in the header: it begins with a letter. The list is the sources' own."""
    codes = advisory_meanings()
    assert len(codes) > 50
    assert [code for code in codes if not re.fullmatch(r"[a-z][a-z0-9-]*", code)] == []
