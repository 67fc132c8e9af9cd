"""A taper's angle in every notation, against printed angles and 30 digits."""

import pytest
from mpmath import mp

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
    assert result["rate_of_taper"] == pytest.approx(2 * float(top) / float(bottom), rel=1e-14)


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
    forms += [
        f"{first['taper_percent']:.10f} %",
        f"{first['included_angle']['degrees']:.11f} included",
    ]
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
