"""A taper's angle in every notation, against printed angles and 30 digits."""

from fractions import Fraction
from typing import Any

import pytest
from mpmath import mp, mpf

from halfangle_service.errors import Disagreement, Impossible
from halfangle_service.trade.tables.tapers.rates import standard_rates
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

#: Rate on the diameter of each notation of a taper, as a fraction.
TAPERS = {
    "3/4 per foot": "1/16",
    "0.6 in/ft": "1/20",
    "1 1/2 per foot": "1/8",
    "½ per foot": "1/24",
    "1½ per foot": "1/8",
    "5/8 in./ft": "5/96",
    '0.6"/ft': "1/20",
    "0.6''/ft": "1/20",
    "0.602 TPF": "301/6000",
    "tpf 0.6": "1/20",
    "taper per foot 0.6": "1/20",
    ".602 tpf": "301/6000",
    "0.05 tpi": "1/20",
    "0.05 per inch": "1/20",
    "15 mm/ft": "25/508",
    "0.05 mm/mm": "1/20",
    "10 mm/m": "1/100",
    "1 cm/m": "1/100",
    "0.05 in/in": "1/20",
    "5 mm in 100 mm": "1/20",
    "5 per 100 mm": "1/20",
    "1 in in 20 in": "1/20",
    "1:20": "1/20",
    "C=1:20": "1/20",
    "C 1:20": "1/20",
    "taper 1:20": "1/20",
    "⌲1:20": "1/20",
    "1∶20": "1/20",
    "1 in 20": "1/20",
    "conicity 1:20": "1/20",
    "1:20 included": "1/20",
    "1:50 included": "1/50",
    "1:20 on the diameter": "1/20",
    "included taper 1:20": "1/20",
    "7/24": "7/24",
    "7:24": "7/24",
    "1/20": "1/20",
    "6:100": "3/50",
    "3.5 in 12": "7/24",
    "0.6246:12": "3123/60000",
    "1:19.002": "500/9501",
    "taper 8:30": "4/15",
    "1:0.5": "2",
    "C=0.05": "1/20",
    "C=3/4": "3/4",
    "rate of taper 0.05": "1/20",
    "5 %": "1/20",
    "15 percent": "3/20",
    "5% included": "1/20",
    "50‰": "1/20",
    "D 20 d 18 L 40": "1/20",
    "d 18 D 20 L 40": "1/20",
    "D=20, d=18, l=40": "1/20",
    "D20d18L40": "1/20",
    "Ø20-Ø18 x 40": "1/20",
    "ø 20 mm to ø 18 mm × 40 mm": "1/20",
    "Ø18/Ø20x40": "1/20",
    "50 per mille": "1/20",
    "L 40 mm D Ø20 mm d Ø18 mm": "1/20",
    "D 1.25 d 1 L 5 in": "1/20",
    # On the radius: half of the rate on the diameter.
    "1:20 per side": "1/10",
    "1:40 on radius": "1/20",
    "0.3 in/ft per side": "1/20",
    "2.5 % per side": "1/20",
    "0.3 per foot (each side)": "1/20",
    "1 in 40 / side": "1/20",
}
#: Half angle in degrees of each notation of an angle.
ANGLES = {
    "60° included": 30,
    "60 incl.": 30,
    "60º included": 30,
    "∠60° included": 30,
    "60°(incl)": 30,
    "included angle 60°": 30,
    "angle 60° included": 30,
    "60 degrees included": 30,
    "30° per side": 30,
    "30°/side": 30,
    "half angle 30°": 30,
    "half-angle: 30°": 30,
    "8°30' half": 8.5,
    "8 30 half": 8.5,
    "8:30:00 half": 8.5,
    "8 deg 30 min half": 8.5,
    "75 from face": 15,
    "complement 75°": 15,
    "90°±5' included": 45,
    "cone angle 60°": 30,
    "8°17’50” half": 8 + 17 / 60 + 50 / 3600,
    "8.25 included": 4.125,
    "45° to axis": 45,
    '60° included ±30"': 30,
    "60° included +/- 0.1°": 30,
    "8° 30 half": 8.5,
    "8°30 half": 8.5,
    "8°30'20 half": 8 + 30 / 60 + 20 / 3600,
    "2α = 60°": 30,
    "2α=8° 30": 4.25,
    "α/2 = 30°": 30,
}


@pytest.mark.outside("tapers.angle", source="ISO 1119:1998, table 1, cone angles as printed")
@pytest.mark.parametrize("text", PRINTED)
def test_printed_cone_angles(call: Call, text: str) -> None:
    """A rate 1:x has the printed cone angle, to its printed digits, and so has its table row."""
    degrees, minutes, seconds = PRINTED[text]
    printed = degrees + minutes / 60 + seconds / 3600
    result = call("tapers.angle", text=text)["result"]
    assert result["included_angle"]["degrees"] == pytest.approx(printed, abs=6e-5 / 3600)
    row = standard_rates()[f"iso-{text}"]
    assert row.cone_angle_degrees == pytest.approx(printed, abs=6e-5 / 3600)


@pytest.mark.outside("tapers.angle", source="mpmath, 30 digits, of the exact fraction")
@pytest.mark.parametrize("text", TAPERS)
def test_notations_of_a_taper(call: Call, text: str) -> None:
    """Each notation of a taper has its rate: its half angle's tangent is half of that."""
    mp.dps = 30
    rate = Fraction(TAPERS[text])
    exact = float(mp.degrees(mp.atan(mpf(rate.numerator) / (2 * rate.denominator))))
    result = call("tapers.angle", text=text)["result"]
    assert result["half_angle"]["degrees"] == pytest.approx(exact, rel=1e-14)
    assert result["rate_of_taper"] == pytest.approx(float(rate), rel=1e-14)
    assert result["tolerance_arcsec"] is None
    shouted = call("tapers.angle", text=text if "D" in text else text.upper())["result"]
    assert shouted["half_angle"] == result["half_angle"]


@pytest.mark.parametrize("text", ANGLES)
def test_notations_of_an_angle(call: Call, text: str) -> None:
    """An angle says which one it is, in words, and is read so."""
    result = call("tapers.angle", text=text)["result"]
    assert result["half_angle"]["degrees"] == pytest.approx(ANGLES[text], rel=1e-12)


@pytest.mark.parametrize(
    ("text", "arcsec"),
    [
        ("45°±5' included", 300),
        ("45° +/- 5' included", 300),
        ('45°±30" half', 30),
        ("included 60° ± 0.5°", 1800),
        ("60°±0°05' incl", 300),
        ("60° included", None),
        ('60° included ±30"', 30),
    ],
)
def test_a_tolerance_beside_an_angle_is_read(call: Call, text: str, arcsec: float | None) -> None:
    """A ± beside an angle is given in seconds of arc, on the angle as written; null where none."""
    assert call("tapers.angle", text=text)["result"]["tolerance_arcsec"] == arcsec


#: What a text may mean: the rate on the diameter of a taper, or the included angle in degrees.
MEANINGS: dict[str, dict[str, str | float]] = {
    "3/4": {"3/4 per foot": "1/16", "3 in 4": "3/4"},
    "1/4": {"1/4 per foot": "1/48", "1 in 4": "1/4"},
    '3/4"': {"3/4 per foot": "1/16", "3 in 4": "3/4"},
    "1 1/2": {"1 1/2 per foot": "1/8", "1:0.666666666667": "3/2"},
    "3/4 per side": {"3/4 per foot per side": "1/8", "3 in 4 per side": "3/2"},
    "20:1": {"1 in 20": "1/20", "1:0.05": "20"},
    "7/3": {"3 in 7": "3/7", "1:0.428571428571": "7/3"},
    "1:10 half": {"1:10 per side": "1/5", "1:10": "1/10"},
    "8:30": {"8 in 30": "4/15", "8°30' included": 8.5, "8°30' half": 17.0},
    "8:30 included": {"8 in 30": "4/15", "8°30' included": 8.5},
    "8:30 half": {"8 in 30": "4/15", "8°30' half": 17.0},
    "2x30°": {"30° per side": 60.0, "30° included": 30.0},
    "2 × 45°": {"45° per side": 90.0, "45° included": 45.0},
}


def included_degrees(meaning: str | float) -> float:
    """Included angle of a rate on the diameter, by 30 digits, or the angle itself."""
    mp.dps = 30
    if isinstance(meaning, float):
        return meaning
    rate = Fraction(meaning)
    return float(2 * mp.degrees(mp.atan(mpf(rate.numerator) / (2 * rate.denominator))))


@pytest.mark.outside("tapers.angle", source="mpmath, 30 digits, of each meaning's exact fraction")
@pytest.mark.parametrize("text", MEANINGS)
def test_what_has_two_meanings_is_refused_with_both(call: Call, text: str) -> None:
    """The refusal names every meaning with its angle; each, sent as named, is read as that."""
    meanings = {written: included_degrees(meaning) for written, meaning in MEANINGS[text].items()}
    with pytest.raises(Disagreement, match="may mean") as refused:
        call("tapers.angle", text=text)
    named: Any = refused.value.more["meanings"]
    found = {meaning["text"]: meaning["included_angle_degrees"] for meaning in named}
    assert found == pytest.approx(meanings, rel=1e-14)
    assert refused.value.fields == {"text": f"write {' or '.join(meanings)}"}
    for written, angle in meanings.items():
        again = call("tapers.angle", text=written)["result"]["included_angle"]["degrees"]
        assert again == pytest.approx(angle, rel=1e-11)


@pytest.mark.parametrize(
    ("text", "match"),
    [
        ("60°", "not said which one"),
        ("60", "not said which one"),
        ("45°±5'", "not said which one"),
        ("steep", "none of the notations"),
        ("MT9", "none of the notations"),
        ("0,602 TPF", "comma"),
        ("1:20,047", "comma"),
        ("taper 0.6", "does not say for what length"),
        ("5/100 mm", "does not say for what length"),
        ("10 per m", "unit of the diameter"),
        ("1 per 2 ft", "unit of the diameter"),
        ("5 mm / 100", "unit of the length"),
        ("half included 30", "both half and included"),
        ("1:20 complement", "Only an angle has a complement"),
        ("60° on diameter", "not on the diameter"),
        ("D 20 D 18 L 40", "One each of D, d and L"),
        ("D 20 mm d 18 in L 40", "One each of D, d and L"),
        ("4x30°", "places"),
        ("1:20 ±5'", "beside an angle only"),
        ("MT3 ±5'", "none of the notations"),
        ("60°+5'/-0' included", "two unequal limits"),
        ("60°±5 included", "± one angle"),
        ("taper pin", "taper-pin-inch or taper-pin-metric"),
        ("1/2/3", "none of the notations"),
        ("α = 30°", "included angle to some"),
        ("8° 3 half", "none of the notations"),
        ("CAT40", "none of the notations"),
        ("3 cm", "none of the notations"),
        ("Ø20 mm - Ø1 in x 40", "in one unit"),
    ],
)
def test_notations_that_are_refused(call: Call, text: str, match: str) -> None:
    """What does not say enough, or too much, is refused, with how to write it."""
    with pytest.raises(Disagreement, match=match) as refused:
        call("tapers.angle", text=text)
    assert refused.value.fields


def test_the_caller_may_say_which_angle_it_is(call: Call) -> None:
    """`bare_angle_is` holds where the text does not say; where they differ it is refused."""
    for meaning, half in (("included", 15), ("half", 30), ("complement", 60)):
        result = call("tapers.angle", text="30°", bare_angle_is=meaning)["result"]
        assert result["half_angle"]["degrees"] == pytest.approx(half)
    with pytest.raises(Disagreement, match="says half") as refused:
        call("tapers.angle", text="30 half", bare_angle_is="included")
    assert list(refused.value.fields) == ["bare_angle_is"]


@pytest.mark.parametrize("text", ["D 20 d 20 L 40", "D 18 d 20 L 40", "0:5", "180° included"])
def test_what_is_no_cone_is_refused(call: Call, text: str) -> None:
    """A cylinder, a cone upside down and a flat face are no cones."""
    with pytest.raises(Impossible, match=r"above 0\.00001° and below 89\.999°"):
        call("tapers.angle", text=text)


@pytest.mark.parametrize("text", ["1:0", "3/0 per foot", "D 20 d 18 L 0", "1 per 0 mm"])
def test_a_length_of_nothing_is_refused(call: Call, text: str) -> None:
    """Nothing is divided by 0."""
    with pytest.raises(Impossible, match="denominator of 0"):
        call("tapers.angle", text=text)


@pytest.mark.parametrize(
    ("text", "noted"),
    [("8.18 included", True), ("8.18° half", True), ("8 18 half", False), ("8.25 half", False)],
)
def test_a_decimal_that_looks_like_minutes_is_noted(call: Call, text: str, noted: bool) -> None:
    """8.18 is read as decimal degrees, and the answer says so, as it does of every angle."""
    answer = call("tapers.angle", text=text)
    notes = [a["message"] for a in answer["advisories"] if a["code"] == "decimal-degrees-read"]
    assert bool(notes) is noted
    if noted:
        assert "8°10'48.00\"" in notes[0]


@pytest.mark.parametrize(
    ("text", "designations"),
    [
        ("MT3", ["morse-3"]),
        ("morse-2", ["morse-2"]),
        ("B&S 9", ["brown-sharpe-9-4", "brown-sharpe-9-4_25"]),
        ("JT33", ["drill-chuck-33"]),
        ("7/24 No. 40", ["7-24-40"]),
        ("MT3 taper", ["morse-3"]),
        ("CM3", ["morse-3"]),
        ("1:20", []),
    ],
)
def test_a_standard_taper_is_read_by_its_name(
    call: Call, text: str, designations: list[str]
) -> None:
    """A standard taper's name gives its row's slope; the basis cites the row, a note names it."""
    answer = call("tapers.angle", text=text)
    assert answer["result"]["designations"] == designations
    cited = " ".join(source["citation"] for source in answer["basis"]["sources"])
    assert all(name in cited for name in designations)
    noted = "designation-read" in {a["code"] for a in answer["advisories"]}
    assert noted is (bool(designations) and text not in designations)


def test_a_taper_per_mille_is_called_that(call: Call) -> None:
    """50‰ is read as per mille, 5 % as percent: the same rate."""
    for text, words in (("50‰", "per mille of taper"), ("5 %", "percent of taper")):
        result = call("tapers.angle", text=text)["result"]
        assert words in result["read_as"]
        assert result["rate_of_taper"] == pytest.approx(0.05)


def test_every_form_reads_back(call: Call) -> None:
    """The forms that an answer echoes give the same half angle when read again."""
    first = call("tapers.angle", text="0.59941 per foot")["result"]
    forms = [f"{first['taper_per_foot']:.10f} in/ft", f"1:{first['one_in_x']:.9f}"]
    forms += [
        f"{first['taper_percent']:.10f} %",
        f"{first['included_angle']['degrees']:.11f} included",
    ]
    for text in forms:
        again = call("tapers.angle", text=text)["result"]
        assert again["half_angle_radians"] == pytest.approx(first["half_angle_radians"], rel=1e-8)
