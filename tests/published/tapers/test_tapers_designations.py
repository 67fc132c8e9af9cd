"""Every row of both tables of tapers by its designation and by what a toolmaker calls it."""

import math
from typing import Any

import pytest
from litestar.testing import TestClient

from halfangle_service.errors import Disagreement, Unreachable
from halfangle_service.fields.slopes import SlopeFields, slope_of
from halfangle_service.trade.tables.tapers.designations import find_standard, rows_named
from halfangle_service.trade.tables.tapers.rates import standard_rates
from halfangle_service.trade.tables.tapers.standard import standard_tapers
from support import Call

RATES = {
    **{n: t.rate for n, t in standard_tapers().items()},
    **{n: r.rate for n, r in standard_rates().items()},
}
#: What is written in the shop, and what it is.
CALLED = {
    **dict.fromkeys(("MT3", "MT 3", "mt-3", "3MT", "No. 3 Morse", "Morse #3", "MK3"), "morse-3"),
    **dict.fromkeys(("Morse taper No. 3", "MORSE-3", " morse 3 ", "Morse Size 3"), "morse-3"),
    **dict.fromkeys(("MT 4 1/2", "MT4½", "MT4.5", "MT 4-1/2"), "morse-4.5"),
    **dict.fromkeys(("JT33", "JT 33", "drill chuck 33"), "drill-chuck-33"),
    **dict.fromkeys(("JT2S", "JT 2 short"), "drill-chuck-2-short"),
    **dict.fromkeys(("Jarno 6", "Jarno No. 6"), "jarno-6"),
    **dict.fromkeys(("NT40", "NT 40", "7/24 No. 40", "7:24 No. 40", "NMTB 40"), "7-24-40"),
    **dict.fromkeys(("ISO 40", "SK40", "BT40"), "7-24-40-iso"),
    **dict.fromkeys(("1:20", "C=1:20", "1 in 20", "ISO 1:20", "taper 1:20"), "iso-1:20"),
    **dict.fromkeys(("7/24", "7:24"), "iso-7:24"),
    **dict.fromkeys(("metric 80", "ME 80"), "metric-80"),
    **dict.fromkeys(("NPT", "pipe"), "pipe-taper"),
    "morse-2-ISO": "morse-2-iso",
    "1:20.020": "iso-1:20.020",
}


@pytest.mark.parametrize("designation", RATES)
def test_every_row_is_taken_for_a_slope(designation: str) -> None:
    """The designation of a standard taper or rate states the slope that its row has."""
    slope = slope_of(SlopeFields(designation=designation))
    assert slope.rate == pytest.approx(RATES[designation], rel=1e-12)


def test_no_designation_stands_in_both_tables() -> None:
    """A designation is one row's, so that it states one slope."""
    assert len(RATES) == len(standard_tapers()) + len(standard_rates())


@pytest.mark.parametrize("name", CALLED)
def test_a_toolmakers_name_is_read_and_noted(call: Call, name: str) -> None:
    """A name of the shop states the slope of its row, and the answer says which row it was."""
    answer = call("tapers.infeed", units="in", amount=0.001, designation=name)
    half = answer["result"]["half_angle"]["degrees"]
    assert half == pytest.approx(math.degrees(math.atan(RATES[CALLED[name]] / 2)), rel=1e-12)
    notes = [a["message"] for a in answer["advisories"] if a["code"] == "designation-read"]
    assert len(notes) == 1
    assert f"designation {name!r} was read as {CALLED[name]} (" in notes[0]


def test_a_designation_itself_needs_no_note(call: Call) -> None:
    """A designation as the table has it is not noted."""
    answer = call("tapers.infeed", units="in", amount=0.001, designation="morse-3")
    assert "designation-read" not in {a["code"] for a in answer["advisories"]}


@pytest.mark.parametrize("name", ["BS9", "B&S 9", "B & S No. 9", "Brown & Sharpe 9"])
def test_a_number_with_two_lengths_is_one_slope_and_two_sizes(call: Call, name: str) -> None:
    """No. 9 of Brown & Sharpe states a slope; as a shank its length has to be said."""
    answer = call("tapers.infeed", units="in", amount=0.001, designation=name)
    angle = 2.0 * answer["result"]["half_angle"]["degrees"]
    assert angle == pytest.approx(2 * math.degrees(math.atan(0.50085 / 24)), rel=1e-12)
    assert "brown-sharpe-9-4 (" in answer["advisories"][0]["message"]
    assert "brown-sharpe-9-4_25 (" in answer["advisories"][0]["message"]
    with pytest.raises(Disagreement, match="brown-sharpe-9-4 or brown-sharpe-9-4_25") as refused:
        find_standard(name)
    assert refused.value.more["similar"] == ["brown-sharpe-9-4", "brown-sharpe-9-4_25"]


def test_a_name_of_two_slopes_is_refused_with_both(call: Call) -> None:
    """A taper pin is 1:48 in inches and 1:50 metric: nothing is guessed."""
    with pytest.raises(Disagreement, match="taper-pin-inch or taper-pin-metric"):
        call("tapers.infeed", units="in", amount=0.001, designation="taper pin")


@pytest.mark.parametrize(
    ("name", "similar"),
    [
        ("MT9", "morse-7"),
        ("MT3.5", "morse-4.5"),
        ("BS99", "brown-sharpe-9-4"),
        ("JT7", "drill-chuck-6"),
        ("1:19", "iso-1:19.212"),
        ("jarnno-6", "jarno-6"),
        ("NT41", "7-24-40"),
    ],
)
def test_an_unknown_name_is_refused_with_those_alike(call: Call, name: str, similar: str) -> None:
    """What is not in the tables is refused, naming rows of the same series or spelled alike."""
    with pytest.raises(Unreachable, match="no standard taper or rate") as refused:
        call("tapers.infeed", units="in", amount=0.001, designation=name)
    names = refused.value.more["similar"]
    assert isinstance(names, list)
    assert similar in names
    assert list(refused.value.fields) == ["designation"]


@pytest.mark.parametrize("name", ["1/4", "3/4", "3", "60", "", "MT", "taper", "0.6"])
def test_what_names_no_row_names_none(name: str) -> None:
    """A fraction or a number alone is no name of a taper, however near one looks."""
    assert rows_named(name) == ()


def test_a_rate_has_no_sizes() -> None:
    """Where a shank is wanted, a mere rate is refused."""
    with pytest.raises(Unreachable, match="has no sizes of its own"):
        find_standard("1:20")


def test_an_answer_stands_on_the_row_that_it_used(call: Call) -> None:
    """The basis names the row, its source and its own standing, wherever the request names it."""
    for name, standing in (("morse-3", "published"), ("ME 80", "from-memory")):
        answer = call("tapers.infeed", units="in", amount=0.001, designation=name)
        row = rows_named(name)[0]
        cited = {"citation": f"{row.source}: {row.designation}", "standing": standing}
        assert cited in answer["basis"]["sources"]
    nested = call(
        "centers.adapter",
        units="in",
        shank={"designation": "MT2"},
        socket={"designation": "morse-2"},
        engagement=2.5,
        projection=3,
    )
    assert sum("morse-2" in s["citation"] for s in nested["basis"]["sources"]) == 1


def test_tapers_by_http(service: TestClient[Any]) -> None:
    """Rows are found by designation over HTTP, and a refusal names the field."""
    assert service.get("/v1/tapers/rates/iso-1:20").status_code == 200
    assert service.get("/v1/tapers/standard/jarno-6").status_code == 200
    assert service.get("/v1/tapers/standard/jarno-99").status_code == 404
    wrong = service.post("/v1/tapers/angle", json={"text": "60"})
    assert wrong.status_code == 422
    assert wrong.json()["errors"][0]["pointer"] == "/bare_angle_is"


def test_a_designation_is_taken_where_a_slope_is(call: Call) -> None:
    """A Morse 2 socket asked for by its name is the one asked for by its taper per foot."""
    request = {"units": "in", "large_diameter": 0.7, "length": 2.5625}
    by_name = call("tapers.solve", designation="MT2", **request)["result"]
    by_rate = call("tapers.solve", taper_per_foot=0.59941, **request)["result"]
    assert by_name["small_diameter"] == pytest.approx(by_rate["small_diameter"], rel=1e-12)
    depth = {**request, "gauge_diameter": 0.69}
    named = call("tapers.plug-depth-nominal", designation="morse-2", **depth)["result"]
    assert named["one_in_x"] == pytest.approx(12 / 0.59941, rel=1e-12)


def test_a_designation_must_agree(call: Call) -> None:
    """A designation that disagrees with another statement of the slope is refused."""
    request = {"units": "in", "amount": 0.001}
    with pytest.raises(Disagreement, match="designation disagrees with half_angle"):
        call("tapers.infeed", designation="iso-1:20", half_angle=1.5, **request)
    agreeing = math.degrees(math.atan(1 / 40))
    answer = call("tapers.infeed", designation="iso-1:20", half_angle=agreeing, **request)
    assert answer["result"]["half_angle"]["degrees"] == agreeing
