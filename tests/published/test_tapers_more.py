"""Rates, grades, notations, identification and set-over against published values."""

import math
from typing import Any

import pytest
from litestar.testing import TestClient
from mpmath import mp

from halfangle_service.errors import Disagreement, Impossible, Unreachable
from halfangle_service.trade.tables.tapers.rates import standard_rates
from halfangle_service.trade.tables.tapers.standard import standard_tapers
from support import Call

# ISO 1119:1998, table 1: cone angle printed for 1:x.
PRINTED = {
    "1:4": (14, 15, 0.1177),
    "1:5": (11, 25, 16.2706),
    "1:6": (9, 31, 38.2202),
    "1:8": (7, 9, 9.6075),
    "1:10": (5, 43, 29.3176),
    "1:12": (4, 46, 18.7970),
    "1:20": (2, 51, 51.0925),
    "1:30": (1, 54, 34.8570),
    "1:50": (1, 8, 45.1586),
    "1:200": (0, 17, 11.3219),
    "1:500": (0, 6, 52.5295),
}


@pytest.mark.outside("tapers.angle", source="ISO 1119:1998, table 1, cone angles as printed")
@pytest.mark.parametrize("text", PRINTED)
def test_printed_cone_angles(call: Call, text: str) -> None:
    """A rate 1:x has the printed cone angle, to its printed digits, and so has its table row."""
    degrees, minutes, seconds = PRINTED[text]
    printed = degrees + minutes / 60 + seconds / 3600
    result = call("tapers.angle", text=text)["result"]
    assert result["included_angle"]["degrees"] == pytest.approx(printed, abs=6e-5 / 3600)
    row = standard_rates()[text.replace(":", "-in-")]
    assert row.cone_angle_degrees == pytest.approx(printed, abs=6e-5 / 3600)


@pytest.mark.outside("tapers.angle", source="mpmath, 30 digits")
@pytest.mark.parametrize(
    ("text", "tangent"),
    [
        ("3/4 per foot", "1/32"),
        ("0.6 in/ft", "1/40"),
        ("0.05 per inch", "1/40"),
        ("7/24", "7/48"),
        ("5 %", "1/40"),
        ("D 20 d 18 L 40", "1/40"),
        ("1 1/2 per foot", "1/16"),
    ],
)
def test_notations_of_a_taper(call: Call, text: str, tangent: str) -> None:
    """Each notation of a taper is on the diameter: its half angle's tangent is half of it."""
    mp.dps = 30
    top, bottom = tangent.split("/")
    exact = float(mp.degrees(mp.atan(mp.mpf(top) / mp.mpf(bottom))))
    result = call("tapers.angle", text=text)["result"]
    assert result["half_angle"]["degrees"] == pytest.approx(exact, rel=1e-14)


@pytest.mark.parametrize(
    ("text", "half"),
    [
        ("60° included", 30),
        ("60 incl.", 30),
        ("30° per side", 30),
        ("8°30' half", 8.5),
        ("75 from face", 15),
    ],
)
def test_notations_of_an_angle(call: Call, text: str, half: float) -> None:
    """An angle says which one it is, in words, and is read so."""
    result = call("tapers.angle", text=text)["result"]
    assert result["half_angle"]["degrees"] == pytest.approx(half)


def test_every_form_reads_back(call: Call) -> None:
    """The forms that an answer echoes give the same half angle when read again."""
    first = call("tapers.angle", text="0.59941 per foot")["result"]
    forms = [f"{first['taper_per_foot']:.10f} in/ft", f"1:{first['one_in_x']:.9f}"]
    forms += [f"{first['percent']:.10f} %", f"{first['included_angle']['degrees']:.11f} included"]
    for text in forms:
        again = call("tapers.angle", text=text)["result"]
        assert again["half_angle_radians"] == pytest.approx(first["half_angle_radians"], rel=1e-8)


def test_notations_that_are_refused(call: Call) -> None:
    """A bare angle, contradictory words, a cylinder, and nonsense are refused."""
    with pytest.raises(Disagreement, match="not said which one"):
        call("tapers.angle", text="60°")
    with pytest.raises(Disagreement, match="says half"):
        call("tapers.angle", text="30 half", bare_angle_is="included")
    with pytest.raises(Impossible, match="above 0°"):
        call("tapers.angle", text="D 20 d 20 L 40")
    with pytest.raises(Impossible, match="denominator of 0"):
        call("tapers.angle", text="1:0")
    with pytest.raises(Disagreement, match="none of the notations"):
        call("tapers.angle", text="steep", bare_angle_is="half")


@pytest.mark.outside("tapers.set-over", source="Jones, Turning and Boring, and a published course")
@pytest.mark.parametrize(
    ("length", "per_foot", "printed"),
    [(9, 1, 0.375), (8, 1.5, 0.5), (12, 1, 0.5), (6, 1, 0.25), (15, 0.75, 0.46875)],
)
def test_set_over_of_the_handbooks(
    call: Call, length: float, per_foot: float, printed: float
) -> None:
    """The shop rule gives the printed set-over; the exact one is that times cos α."""
    result = call(
        "tapers.set-over",
        units="in",
        taper_per_foot=per_foot,
        work_length=length,
        scale_radius=6,
        scale_reading_error=0.005,
        set_over_error=0.002,
        attachment_length=12,
        attachment_error=0.005,
    )["result"]
    assert result["set_over_by_rule"] == pytest.approx(printed, rel=1e-12)
    half = math.radians(result["half_angle"]["degrees"])
    assert result["set_over"] == pytest.approx(printed * math.cos(half))
    errors = [way["half_angle_error_arcsec"] for way in result["ways"]]
    assert errors == sorted(errors)


@pytest.mark.outside("tapers.tolerance", source="ISO 1947 AT5, 6 to 10 mm: AT_D 2.0 to 3.2 µm")
def test_grade_as_diameter(call: Call) -> None:
    """AT5 is 315 µrad up to 10 mm, 3.15 µm on the diameter there, printed rounded as 3.2."""
    result = call(
        "tapers.tolerance", units="mm", one_in_x=20, large_diameter=8, length=10, grade="AT5"
    )["result"]
    assert result["tolerance_microradians"] == pytest.approx(315)
    assert result["diameter_tolerance_by_standard"] == pytest.approx(0.0032, abs=5.1e-5)
    assert result["diameter_tolerance_over_length"] == pytest.approx(0.00315, rel=1e-3)


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
            grade=f"AT{grade}",
        )["result"]
        return float(result["tolerance_microradians"])

    for grade in range(1, 12):
        assert at(grade + 1, 80) / at(grade, 80) == pytest.approx(1.6, rel=0.025)
    for short, long in ((10, 16), (16, 25), (25, 40), (250, 400), (400, 630)):
        assert at(6, short) / at(6, long) == pytest.approx(1.25, rel=0.025)


def test_tolerance_goes_there_and_back(call: Call) -> None:
    """Arc-seconds to diameter over the length and back are the same tolerance."""
    cone: dict[str, Any] = {"units": "in", "taper_per_foot": 3.5, "large_diameter": 2.75}
    first = call("tapers.tolerance", length=4, included_angle_tolerance_arcsec=20, **cone)
    spans = first["result"]["diameter_tolerance_over_length"]
    back = call("tapers.tolerance", length=4, diameter_tolerance_over_length=spans, **cone)
    assert back["result"]["tolerance_arcsec"] == pytest.approx(20, rel=1e-9)
    with pytest.raises(Disagreement, match="One statement"):
        call("tapers.tolerance", length=4, **cone)
    with pytest.raises(Unreachable, match="above 6 mm"):
        call("tapers.tolerance", length=0.1, grade="AT3", **cone)
    with pytest.raises(Impossible, match="past the length"):
        call("tapers.tolerance", length=4, grade="AT3", stations=[5], **cone)


@pytest.mark.outside("tapers.identify", source="ASME B5.10, table of Morse tapers: D, d, depth")
@pytest.mark.parametrize("number", range(7))
def test_a_morse_taper_is_known_by_its_own_figures(call: Call, number: int) -> None:
    """Diameters and depth of a printed Morse row name that taper, or its twin in ISO 296."""
    row = standard_tapers()[f"morse-{number}"]
    result = call(
        "tapers.identify",
        units="in",
        large_diameter=row.gauge_diameter,
        small_diameter=row.small_diameter,
        distance=row.depth,
        diameter_error=0.00002,
    )["result"]
    best = result["candidates"][:5]
    assert f"morse-{number}" in {c["designation"] for c in best if c["explained"]}


@pytest.mark.outside("tapers.solve", source="handbook table of drill chuck tapers, D, d, length")
def test_further_series_hold_their_arithmetic() -> None:
    """Rates follow from D, d and length to 0.1 %; counts and Jarno's rule are the table's."""
    tapers = standard_tapers()
    for taper in tapers.values():
        if taper.depth and taper.small_diameter:
            rate = (taper.gauge_diameter - taper.small_diameter) / taper.depth
            assert rate == pytest.approx(taper.rate, rel=1e-3)
    counts = {
        s: sum(n.startswith(s) for n in tapers) for s in ("metric", "jarno", "drill", "brown")
    }
    assert counts == {"metric": 7, "jarno": 20, "drill": 9, "brown": 22}
    assert len(standard_rates()) == 36


def test_tapers_by_http(service: TestClient[Any]) -> None:
    """Rows are found by designation over HTTP, and a refusal names the field."""
    assert service.get("/v1/tapers/rates/1-in-20").status_code == 200
    assert service.get("/v1/tapers/standard/jarno-6").status_code == 200
    assert service.get("/v1/tapers/standard/jarno-99").status_code == 404
    wrong = service.post("/v1/tapers/angle", json={"text": "60"})
    assert wrong.status_code == 422
    assert wrong.json()["errors"][0]["pointer"] == "/bare_angle_is"
