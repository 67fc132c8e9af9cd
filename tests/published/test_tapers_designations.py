"""Every row of both tables of tapers: by its designation, by HTTP, as a slope."""

import math
from typing import Any

import pytest
from litestar.testing import TestClient

from halfangle_service.errors import Disagreement, Unreachable
from halfangle_service.fields.slopes import SlopeFields, slope_of
from halfangle_service.trade.tables.tapers.rates import standard_rates
from halfangle_service.trade.tables.tapers.standard import standard_tapers
from support import Call

RATES = {
    **{n: t.rate for n, t in standard_tapers().items()},
    **{n: r.rate for n, r in standard_rates().items()},
}


@pytest.mark.parametrize("designation", RATES)
def test_every_row_is_taken_for_a_slope(designation: str) -> None:
    """The designation of a standard taper or rate states the slope that its row has."""
    slope = slope_of(SlopeFields(designation=designation))
    assert slope.rate == pytest.approx(RATES[designation], rel=1e-12)


def test_no_designation_stands_in_both_tables() -> None:
    """A designation is one row's, so that it states one slope."""
    assert len(RATES) == len(standard_tapers()) + len(standard_rates())


@pytest.mark.outside("tapers.solve", source="handbook table of drill chuck tapers, D, d, length")
def test_further_series_hold_their_arithmetic() -> None:
    """Rates follow from D, d and length to 0.1 %; counts and Jarno's rule are the table's."""
    tapers = standard_tapers()
    for taper in tapers.values():
        if taper.small_end_depth and taper.small_diameter:
            rate = (taper.gauge_diameter - taper.small_diameter) / taper.small_end_depth
            assert rate == pytest.approx(taper.rate, rel=1e-3)
    counts = {
        s: sum(n.startswith(s) for n in tapers) for s in ("metric", "jarno", "drill", "brown")
    }
    assert counts == {"metric": 7, "jarno": 20, "drill": 9, "brown": 22}
    assert len(standard_rates()) == 36


@pytest.mark.parametrize("designation", standard_rates())
def test_a_rate_is_served_by_its_designation(service: TestClient[Any], designation: str) -> None:
    """Each rate is a resource of its own, those of ISO 1119 named as the standard writes them."""
    row = service.get(f"/v1/tapers/rates/{designation}").json()["result"]
    assert row["designation"] == designation
    if "iso-1:" in designation:
        assert row["one_in_x"] == pytest.approx(float(designation.partition(":")[2]), rel=1e-4)
        assert "ISO 1119" in row["source"]


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
    by_name = call("tapers.solve", designation="morse-2", **request)["result"]
    by_rate = call("tapers.solve", taper_per_foot=0.59941, **request)["result"]
    assert by_name["small_diameter"] == pytest.approx(by_rate["small_diameter"], rel=1e-12)
    depth = {**request, "gauge_diameter": 0.69}
    named = call("tapers.plug-depth-nominal", designation="morse-2", **depth)["result"]
    assert named["one_in_x"] == pytest.approx(12 / 0.59941, rel=1e-12)


def test_a_designation_must_be_known_and_agree(call: Call) -> None:
    """An unknown designation is refused with those that look alike; so is one that disagrees."""
    request = {"units": "in", "amount": 0.001}
    with pytest.raises(Unreachable, match="no standard taper or rate") as refused:
        call("tapers.infeed", designation="morse2", **request)
    assert "morse-2" in str(refused.value.more["similar"])
    with pytest.raises(Disagreement, match="designation disagrees with half_angle"):
        call("tapers.infeed", designation="iso-1:20", half_angle=1.5, **request)
    agreeing = math.degrees(math.atan(1 / 40))
    answer = call("tapers.infeed", designation="iso-1:20", half_angle=agreeing, **request)
    assert answer["result"]["half_angle"]["degrees"] == agreeing
