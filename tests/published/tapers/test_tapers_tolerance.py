"""Tolerance of a cone, against published grades and drawn limits."""

from typing import Any

import numpy as np
import pytest

from halfangle_service.errors import Disagreement, Impossible, Unreachable
from support import Call


@pytest.mark.outside("tapers.tolerance", source="ISO 1947 AT5, 6 to 10 mm: AT_D 2.0 to 3.2 µm")
def test_grade_as_diameter(call: Call) -> None:
    """AT5 is 315 µrad up to 10 mm, 3.15 µm on the diameter there, printed rounded as 3.2."""
    result = call(
        "tapers.tolerance",
        units="mm",
        one_in_x=20,
        large_diameter=8,
        length=10,
        cone_angle_grade="AT5",
    )["result"]
    assert result["included_angle_band_microradians"] == pytest.approx(315)
    assert result["diameter_band_by_standard"] == pytest.approx(0.0032, abs=5.1e-5)
    assert result["diameter_band_over_length"] == pytest.approx(0.00315, rel=1e-3)


def test_grades_follow_the_preferred_numbers(call: Call) -> None:
    """Each grade is 1.6 times the last and each step of length 1/1.25, to their rounding.

    The largest rounding in the R10 series as the table uses it is 125 / 80 = 1.5625 for 1.6.
    """

    def at(grade: int, length: float) -> float:
        result = call(
            "tapers.tolerance",
            units="mm",
            one_in_x=20,
            large_diameter=50,
            length=length,
            cone_angle_grade=f"AT{grade}",
        )["result"]
        return float(result["included_angle_band_microradians"])

    for grade in range(1, 12):
        assert at(grade + 1, 80) / at(grade, 80) == pytest.approx(1.6, rel=0.025)
    for short, long in ((10, 16), (16, 25), (25, 40), (250, 400), (400, 630)):
        assert at(6, short) / at(6, long) == pytest.approx(1.25, rel=0.025)


def test_tolerance_goes_there_and_back(call: Call) -> None:
    """Arc-seconds to diameter over the length and back are the same tolerance."""
    cone: dict[str, Any] = {"units": "in", "taper_per_foot": 3.5, "large_diameter": 2.75}
    first = call("tapers.tolerance", length=4, included_angle_band_arcsec=20, **cone)
    spans = first["result"]["diameter_band_over_length"]
    back = call("tapers.tolerance", length=4, diameter_band_over_length=spans, **cone)
    assert back["result"]["included_angle_band_arcsec"] == pytest.approx(20, rel=1e-9)
    assert back["result"]["diameter_band_over_length"] == spans
    with pytest.raises(Disagreement, match="One of `cone_angle_grade`"):
        call("tapers.tolerance", length=4, **cone)
    with pytest.raises(Unreachable, match="above 6 mm"):
        call("tapers.tolerance", length=0.1, cone_angle_grade="AT3", **cone)
    with pytest.raises(Impossible, match="past the length"):
        call(
            "tapers.tolerance",
            length=4,
            cone_angle_grade="AT3",
            stations_from_large_end=[5],
            **cone,
        )


@pytest.mark.parametrize(
    ("disposition", "least", "most"),
    [("plus", 19.8, 20.0), ("minus", 20.0, 20.2), ("symmetric", 19.9, 20.1)],
)
def test_limits_of_size_lie_between_the_limits_of_the_angle(
    call: Call, disposition: str, least: float, most: float
) -> None:
    """At the small end the blunter cone is the smaller one; at the large end only size counts."""
    cone: dict[str, Any] = {"units": "mm", "one_in_x": 10, "large_diameter": 40, "length": 200}
    result = call(
        "tapers.tolerance",
        diameter_band_over_length=0.2,
        disposition=disposition,
        large_diameter_tolerance=0.01,
        **cone,
    )["result"]
    large, small = result["at_stations"]
    assert (large["smallest_diameter"], large["largest_diameter"]) == (39.99, 40.01)
    assert small["station_from_large_end"] == 200
    assert small["nominal_diameter"] == pytest.approx(20)
    assert small["smallest_diameter"] == pytest.approx(least - 0.01, abs=1e-3)
    assert small["largest_diameter"] == pytest.approx(most + 0.01, abs=1e-3)
    assert result["not_stated"] == []


@pytest.mark.outside("tapers.tolerance", source="numpy: limit cones drawn from the answered angles")
@pytest.mark.parametrize("disposition", ["plus", "minus", "symmetric"])
@pytest.mark.parametrize("half_degrees", [1.43, 8.297, 30, 60])
@pytest.mark.parametrize("spans", [0.002, 0.1, 0.5])
def test_the_limit_cones_span_the_tolerance(
    call: Call, disposition: str, half_degrees: float, spans: float
) -> None:
    """Cones at the limits differ over the length by the band, and either statement gives both."""
    length, large = 20.0, 80.0
    cone: dict[str, Any] = {"units": "mm", "half_angle": half_degrees, "length": length}
    cone |= {"large_diameter": large, "disposition": disposition, "large_diameter_tolerance": 0}
    by_diameter = call("tapers.tolerance", diameter_band_over_length=spans, **cone)["result"]
    limits = [by_diameter[f"{end}_included_angle"]["degrees"] for end in ("smallest", "largest")]
    ends = large - 2 * length * np.tan(np.radians(limits) / 2)
    assert ends[0] - ends[1] == pytest.approx(spans, rel=1e-9)
    small = by_diameter["at_stations"][1]
    assert small["largest_diameter"] == pytest.approx(ends[0], rel=1e-12)
    assert small["smallest_diameter"] == pytest.approx(ends[1], rel=1e-12)
    assert by_diameter["diameter_band_over_length"] == spans
    nominal = {"plus": 0, "minus": 1, "symmetric": None}[disposition]
    assert nominal is None or limits[nominal] == 2 * half_degrees
    from_nominal = np.array(limits) - 2 * half_degrees
    expected = {"plus": (0, 1), "minus": (-1, 0), "symmetric": (-0.5, 0.5)}[disposition]
    whole = by_diameter["included_angle_band_arcsec"] / 3600
    assert from_nominal == pytest.approx(whole * np.array(expected), abs=1e-12)
    by_angle = call(
        "tapers.tolerance",
        included_angle_band_arcsec=by_diameter["included_angle_band_arcsec"],
        **cone,
    )["result"]
    assert by_angle["diameter_band_over_length"] == pytest.approx(spans, rel=1e-9)
    assert by_angle["at_stations"][1] == pytest.approx(small, rel=1e-12)


@pytest.mark.parametrize(
    ("field", "stated", "disposition", "limit"),
    [
        ("included_angle_band_arcsec", 721, "minus", "720″ of included angle"),
        ("included_angle_band_arcsec", 1441, "symmetric", "1440″ of included angle"),
        ("diameter_band_over_length", 0.035, "minus", "0.0349 mm"),
        ("diameter_band_over_length", 0.07, "symmetric", "0.0698 mm"),
        ("cone_angle_grade", "AT12", "minus", "720″ of included angle"),
    ],
)
def test_a_tolerance_that_leaves_no_cone_is_refused_by_its_name(
    call: Call, field: str, stated: float | str, disposition: str, limit: str
) -> None:
    """A limit without a cone is refused at the field that states it, with what it should be below.

    Half angle 0.1°: 720″ included; 20 mm × tan 0.1° = 0.0349066 mm, × tan 0.2° = 0.0698135 mm.
    """
    cone = {"units": "mm", "half_angle": 0.1, "large_diameter": 8, "length": 10}
    with pytest.raises(Impossible, match="leaves no cone at its limit") as refused:
        call("tapers.tolerance", disposition=disposition, **{field: stated}, **cone)
    assert refused.value.fields == {field: f"should be below {limit}"}


@pytest.mark.parametrize("verb", ["tolerance", "plug-depth-nominal"])
def test_a_tolerance_leaves_something_of_the_diameter(call: Call, verb: str) -> None:
    """A tolerance as large as the diameter that it is of is refused, not turned into 0."""
    more: dict[str, Any] = {"tolerance": {"cone_angle_grade": "AT5"}}
    more["plug-depth-nominal"] = {"gauge_diameter": 7.9}
    cone = {"units": "mm", "one_in_x": 20, "large_diameter": 8, "length": 10}
    with pytest.raises(Impossible, match="leaves nothing of 8") as refused:
        call(f"tapers.{verb}", large_diameter_tolerance=8, **cone, **more[verb])
    assert set(refused.value.fields) == {"large_diameter_tolerance"}


def test_limits_of_size_need_the_tolerance_of_the_diameter(call: Call) -> None:
    """Where it was not stated there is no limit of size, and the answer names what is missing."""
    cone = {"units": "mm", "one_in_x": 10, "large_diameter": 40, "length": 80}
    result = call("tapers.tolerance", cone_angle_grade="AT5", **cone)["result"]
    assert result["not_stated"] == ["large_diameter_tolerance"]
    sizes = [(s["smallest_diameter"], s["largest_diameter"]) for s in result["at_stations"]]
    assert sizes == [(None, None), (None, None)]


def test_one_statement_of_the_tolerance_is_taken(call: Call) -> None:
    """Two statements of the tolerance are refused together, by their names."""
    cone = {"units": "mm", "one_in_x": 10, "large_diameter": 40, "length": 80}
    with pytest.raises(Disagreement, match="sent together") as refused:
        call("tapers.tolerance", cone_angle_grade="AT5", included_angle_band_arcsec=20, **cone)
    assert set(refused.value.fields) == {"cone_angle_grade", "included_angle_band_arcsec"}
