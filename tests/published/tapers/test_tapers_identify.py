"""Which standard taper it is, against the printed rows."""

import math
from typing import Any

import pytest

from halfangle_service.trade.tables.tapers.designations import all_rows
from support import Call
from transcribed.reading import number
from transcribed.tapers import listed_rates, listed_tapers


def names_of(candidate: dict[str, Any]) -> list[str]:
    """Designations under which a candidate stands."""
    return [name["designation"] for name in candidate["names"]]


@pytest.mark.outside("tapers.identify", source="ASME B5.10, table of Morse tapers: D, d, depth")
@pytest.mark.parametrize("size", range(7))
def test_a_morse_taper_is_known_by_its_own_figures(call: Call, size: int) -> None:
    """Diameters and depth of a printed Morse row name that taper first, with its other names."""
    row = listed_tapers()[f"morse-{size}"]
    answer = call(
        "tapers.identify",
        units="in",
        large_diameter=number(row["gauge_diameter"]),
        small_diameter=number(row["small_diameter"]),
        length=number(row["small_end_depth"]),
        diameter_error_limit=0.00002,
    )
    best = answer["result"]["candidates"][0]
    assert best["explained_by_errors"] is True
    assert {f"morse-{size}", f"morse-{size}-iso"} <= set(names_of(best))
    assert sum(name.startswith("iso-1:") for name in names_of(best)) == 1
    assert "no-standard-taper" not in {a["code"] for a in answer["advisories"]}


@pytest.mark.outside(
    "tapers.identify",
    source="ISO 1119:1998, table 1, as adopted; table 2, pins and pipe from memory: exact cones",
)
@pytest.mark.parametrize("designation", listed_rates())
def test_an_exact_cone_of_a_standard_rate_is_known(call: Call, designation: str) -> None:
    """A cone that has a standard rate exactly is that rate's, measured without any error."""
    rate, length = listed_rates()[designation]["rate"], 100.0
    assert isinstance(rate, float)
    answer = call(
        "tapers.identify",
        units="mm",
        large_diameter=500.0,
        small_diameter=500.0 - length * rate,
        length=length,
        diameter_error_limit=0,
        length_error_limit=0,
    )
    first = answer["result"]["candidates"][0]
    assert designation in names_of(first)
    assert first["explained_by_errors"] is True
    assert "no-standard-taper" not in {a["code"] for a in answer["advisories"]}


@pytest.mark.parametrize(("large", "length"), [(30, 30), (20.1, 10)])
def test_exact_cones_that_were_not_known(call: Call, large: float, length: float) -> None:
    """Exact cones of 1:3 and 1:100 are no longer told to be of no standard taper."""
    request = {"units": "mm", "diameter_error_limit": 0, "length_error_limit": 0}
    answer = call(
        "tapers.identify", large_diameter=large, small_diameter=20, length=length, **request
    )
    expected = {30: "iso-1:3", 10: "iso-1:100"}[int(length)]
    assert expected in names_of(answer["result"]["candidates"][0])
    assert "no-standard-taper" not in {a["code"] for a in answer["advisories"]}


def test_a_cone_of_no_standard_taper_is_told_so(call: Call) -> None:
    """A rate between the tables' is of no standard taper where the errors stated are small."""
    answer = call(
        "tapers.identify",
        units="mm",
        large_diameter=30,
        small_diameter=20,
        length=43,
        diameter_error_limit=0.001,
        length_error_limit=0.001,
    )
    assert "no-standard-taper" in {a["code"] for a in answer["advisories"]}


def test_names_of_one_taper_stand_together(call: Call) -> None:
    """Every row is in one candidate only; rows of one are within 2″, and only such are together."""
    request = {"units": "in", "large_diameter": 0.7, "small_diameter": 0.6, "length": 2}
    answer = call("tapers.identify", **request, diameter_error_limit=0, length_error_limit=0)
    first = answer["result"]["candidates"][0]
    assert names_of(first) == ["iso-1:20", "jarno-6", "tpf-0.6"]
    notes = {a["code"]: a["message"] for a in answer["advisories"]}
    assert "iso-1:20, jarno-6 and tpf-0.6 have one slope" in notes["names-of-one-taper"]
    assert "taper-not-told-apart" not in notes
    listed = call("tapers.identify", **request, max_candidates=50)["result"]["candidates"]
    seen = [name for candidate in listed for name in names_of(candidate)]
    assert len(seen) == len(set(seen))
    for candidate in listed:
        angles = [2 * math.atan(all_rows()[name].rate / 2) for name in names_of(candidate)]
        assert math.degrees(max(angles) - min(angles)) * 3600 <= 2.0


def test_sizes_tell_tapers_of_one_slope_apart(call: Call) -> None:
    """Jarno 6 and Metric 80 have one slope; a cone of Jarno 6's size is not called Metric 80."""
    request = {"units": "in", "large_diameter": 0.7, "small_diameter": 0.6, "length": 2}
    listed = call("tapers.identify", **request, max_candidates=50)["result"]["candidates"]
    apart = {name: c["sizes_fit"] for c in listed for name in names_of(c)}
    assert apart["jarno-6"] is True
    assert apart.get("metric-80", False) is False


def test_an_answer_stands_on_the_rows_that_it_lists(call: Call) -> None:
    """The basis names each candidate's row under its own source and standing."""
    answer = call("tapers.identify", units="in", large_diameter=0.7, small_diameter=0.6, length=2)
    cited = {(s["citation"], s["standing"]) for s in answer["basis"]["sources"][1:]}
    for candidate in answer["result"]["candidates"]:
        for name in candidate["names"]:
            assert any(
                citation.startswith(name["source"])
                and name["designation"] in citation
                and standing == name["standing"]
                for citation, standing in cited
            )
    assert {standing for _, standing in cited} == {"published", "from-memory", "derived"}


def test_what_errors_not_stated_might_explain_is_left_open(call: Call) -> None:
    """A misfit that the errors stated do not explain is open while another was not stated."""
    cut: dict[str, Any] = {"units": "in", "large_diameter": 0.7, "small_diameter": 0.572}
    request = {**cut, "length": 2.5625, "max_candidates": 50}

    def explained(**errors: float) -> set[bool | None]:
        result = call("tapers.identify", **request, **errors)["result"]
        return {c["explained_by_errors"] for c in result["candidates"]}

    assert explained() == {None}
    assert explained(diameter_error_limit=0.0005) == {True, None}
    assert explained(diameter_error_limit=0.0005, length_error_limit=0) == {True, False}


@pytest.mark.outside("tapers.identify", source="atan of 10 / (2 · 50) and its derivatives, by hand")
def test_the_half_angle_of_a_cut_carries_its_error(call: Call) -> None:
    """Worst case cos² α (2 δD + C δl) / (2 l) of the half angle, by its derivatives."""
    result = call(
        "tapers.identify",
        units="mm",
        large_diameter=30,
        small_diameter=20,
        length=50,
        diameter_error_limit=0.002,
        length_error_limit=0.01,
    )["result"]
    half = math.atan(0.1)
    worst = math.cos(half) ** 2 * (2 * 0.002 + 0.2 * 0.01) / 100
    estimate = result["half_angle"]
    assert estimate["value"]["degrees"] == pytest.approx(math.degrees(half), rel=1e-12)
    assert estimate["worst_case"] == pytest.approx(math.degrees(worst) * 3600, rel=1e-6)
    assert result["rate_of_taper"] == pytest.approx(0.2)
