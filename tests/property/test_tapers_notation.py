"""The grammar of a taper's notation, generated: what is written is read back, and nothing else."""

import math
from fractions import Fraction

import pytest
from hypothesis import assume, example, given, settings
from hypothesis import strategies as st
from mpmath import mp, mpf

from halfangle_service.errors import Refusal
from halfangle_service.trade.tables.tapers.designations import all_rows, rows_named
from halfangle_service.trade.tapers.notation.reading import Meaning, Reading, read_notation

MEANINGS: list[Meaning | None] = [None, "included", "half", "complement"]
meanings = st.sampled_from(MEANINGS)
#: Units of length in inches, by their spellings.
UNITS = {
    **dict.fromkeys(("in", "inch", "inches", "in."), Fraction(1)),
    **dict.fromkeys(("ft", "foot", "feet"), Fraction(12)),
    **dict.fromkeys(("mm", "millimetres"), Fraction(10, 254)),
    **dict.fromkeys(("cm",), Fraction(100, 254)),
    **dict.fromkeys(("m", "metre"), Fraction(10_000, 254)),
}
SIDES = {"": 2, " on diameter": 2, " included": 2, " per side": 1, " each side": 1, " on radius": 1}
SIGNS = [("½", Fraction(1, 2)), ("1¾", Fraction(7, 4)), ("⅝", Fraction(5, 8))]
decimals = st.decimals("0.001", "5", places=4).map(lambda d: format(d.normalize(), "f"))
lengths = st.decimals("6", "400", places=2).map(lambda d: format(d.normalize(), "f"))
whole = st.integers(1, 59)


@st.composite
def amounts(draw: st.DrawFn) -> tuple[str, Fraction]:
    """A number as a decimal, a fraction or a mixed one, and its value."""
    kind = draw(st.sampled_from(["decimal", "fraction", "mixed", "sign"]))
    if kind == "decimal":
        text = draw(decimals)
        return text, Fraction(text)
    if kind == "sign":
        return draw(st.sampled_from(SIGNS))
    bottom = draw(st.sampled_from([2, 3, 4, 8, 16, 24, 32, 64]))
    top = draw(st.integers(1, bottom - 1))
    if kind == "fraction":
        return f"{top}/{bottom}", Fraction(top, bottom)
    units = draw(st.integers(1, 3))
    return f"{units}{draw(st.sampled_from(' -'))}{top}/{bottom}", units + Fraction(top, bottom)


@st.composite
def tapers(draw: st.DrawFn) -> tuple[str, Fraction]:
    """A taper as written, and the tangent of its half angle."""
    text, rate = draw(st.one_of(per_lengths(), named(), ratios(), percents()))
    side = draw(st.sampled_from(sorted(SIDES)))
    return f"{text}{side}", rate / SIDES[side]


@st.composite
def per_lengths(draw: st.DrawFn) -> tuple[str, Fraction]:
    """An amount for a length, with both units."""
    text, value = draw(amounts())
    of, per = draw(st.sampled_from(sorted(UNITS))), draw(st.sampled_from(sorted(UNITS)))
    length = draw(st.one_of(st.just(""), lengths))
    sign = draw(st.sampled_from([" per ", "/", " / ", " over "]))
    run = UNITS[per] * Fraction(length or 1)
    return f"{text} {of}{sign}{length} {per}".replace("  ", " "), value * UNITS[of] / run


@st.composite
def named(draw: st.DrawFn) -> tuple[str, Fraction]:
    """Taper per foot or per inch by its name, before or after."""
    text, value = draw(amounts())
    name = draw(st.sampled_from(["tpf", "TPF", "taper per foot", "tpi", "taper per inch"]))
    order = draw(st.sampled_from(["{0} {1}", "{1} {0}", "{1}={0}", "{1}: {0}"]))
    per = 12 if "f" in name.lower().removeprefix("taper per in") else 1
    return order.format(text, name), value / per


@st.composite
def ratios(draw: st.DrawFn) -> tuple[str, Fraction]:
    """1:x in its spellings, and a ratio whose first part no angle has."""
    bottom = draw(lengths)
    top = draw(st.sampled_from(["1", "0.5", "1.25"]))
    sign = draw(st.sampled_from([":", " : ", "∶", " in "]))
    word = draw(st.sampled_from(["", "C=", "C ", "taper ", "conicity "]))
    return f"{word}{top}{sign}{bottom}", Fraction(top) / Fraction(bottom)


@st.composite
def percents(draw: st.DrawFn) -> tuple[str, Fraction]:
    """A taper in percent or per mille."""
    text, value = draw(amounts())
    sign, parts = draw(st.sampled_from([("%", 100), (" %", 100), (" percent", 100), (" ‰", 1000)]))
    return f"{text}{sign}", value / parts


def half_angle_of(tangent: Fraction) -> float:
    """Half angle in radians by 30 digits."""
    mp.dps = 30
    return float(mp.atan(mpf(tangent.numerator) / tangent.denominator))


@given(written=tapers(), meaning=meanings)
@settings(max_examples=600)
def test_a_taper_is_read_as_it_was_written(
    written: tuple[str, Fraction], meaning: Meaning | None
) -> None:
    """A taper in any spelling is read exactly, whatever `bare_angle_is` says of angles."""
    text, tangent = written
    assume(len(text) <= 60)
    assume(1e-6 < tangent < 1e4)
    reading = read_notation(text, meaning)
    assert reading.half_angle_rad == pytest.approx(half_angle_of(tangent), rel=1e-14)


@st.composite
def sizes(draw: st.DrawFn) -> tuple[str, Fraction]:
    """Two diameters and a length in any order, and the tangent of the half angle."""
    large, length = draw(st.integers(100, 9_000)), draw(st.integers(50, 9_000))
    figures = {"D": large, "d": draw(st.integers(1, large - 1)), "L": length}
    sign = draw(st.sampled_from([" ", "=", " = ", "", " Ø"]))
    between = draw(st.sampled_from([" ", ", ", "; "]))
    order = draw(st.permutations("DdL"))
    text = between.join(f"{name}{sign}{figures[name] / 100:.2f}" for name in order)
    unit = draw(st.sampled_from(["", " mm", " in"]))
    return f"{text}{unit}", Fraction(figures["D"] - figures["d"], 2 * length)


@given(written=sizes())
def test_sizes_are_read_in_any_order(written: tuple[str, Fraction]) -> None:
    """Two diameters and a length are read in any order, D from d by its case alone."""
    text, tangent = written
    exact = half_angle_of(tangent)
    assert read_notation(text, None).half_angle_rad == pytest.approx(exact, rel=1e-14)


ANGLE_WORDS = {
    "included": ["{} included", "{} incl.", "included angle {}", "{} (included)", "cone angle: {}"],
    "half": ["{} half", "half angle {}", "{} per side", "{}/side", "{} each side"],
    "complement": ["{} complement", "{} from face", "complement {}"],
}


@given(
    degrees=st.integers(1, 88),
    minutes=st.integers(0, 59),
    seconds=st.integers(0, 59),
    spelling=st.sampled_from(
        ["{0}°{1}'{2}\"", "{0}º {1}′ {2}″", "{0} {1} {2}", "{0}:{1}:{2}", "{0} deg {1} min {2} sec"]
    ),
    meaning=st.sampled_from(["included", "half", "complement"]),
    word=st.integers(0, 4),
)
@settings(max_examples=300)
def test_an_angle_is_read_as_it_was_written(
    degrees: int, minutes: int, seconds: int, spelling: str, meaning: str, word: int
) -> None:
    """Degrees, minutes and seconds with the word that says which angle it is are read as that."""
    words = ANGLE_WORDS[meaning]
    text = words[word % len(words)].format(spelling.format(degrees, minutes, seconds))
    angle = degrees + minutes / 60 + seconds / 3600
    half = {"included": angle / 2, "half": angle, "complement": 90 - angle}[meaning]
    reading = read_notation(text, None)
    assert math.degrees(reading.half_angle_rad) == pytest.approx(half, rel=1e-12)
    assert reading.read_as == f"{meaning} angle"
    assert reading.decimal_degrees is None


@given(top=st.integers(2, 60), bottom=whole, word=st.sampled_from(["", " included", " half"]))
def test_two_whole_numbers_are_never_guessed(top: int, bottom: int, word: str) -> None:
    """a:b of whole numbers that could be degrees and minutes is refused, but for 7:24."""
    text = f"{top}:{bottom}{word}"
    if (top, bottom) == (7, 24) and word != " half":
        assert read_notation(text, None).half_angle_rad == pytest.approx(math.atan(7 / 48))
    else:
        with pytest.raises(Refusal, match="may mean"):
            read_notation(text, None)


@given(bottom=st.sampled_from([2, 4, 8, 16, 32, 64]), top=st.integers(1, 63))
def test_a_fraction_of_the_inch_rule_is_never_guessed(bottom: int, top: int) -> None:
    """A fraction in halves to sixty-fourths alone is inches a foot as often as a ratio: refused."""
    with pytest.raises(Refusal, match="per foot"):
        read_notation(f"{top}/{bottom}", None)


PIECES = st.sampled_from(
    [
        *(
            "1",
            "20",
            "0.6",
            "3/4",
            "0",
            "½",
            ":",
            "/",
            " in ",
            " per ",
            " ",
            ",",
            ".",
            "-",
            "+",
            "x",
        ),
        *("°", "º", "'", '"', "%", "±", "5'", "(", ")", "#", "No.", "D", "d", "L", "C=", "MT", "x"),
        *("half", "included", "per side", "complement", "taper", "ft", "mm", "m", "tpf"),
        *("1e5", "nan", "٣", "\n"),
    ]
)
pieced = st.lists(PIECES, max_size=9).map("".join)


def outcome(text: str, meaning: Meaning | None = None) -> Reading | Refusal:
    """What comes of a text: a reading, or its refusal."""
    try:
        return read_notation(text, meaning)
    except Refusal as refusal:
        return refusal


@given(text=st.one_of(pieced, st.text(max_size=60)), meaning=meanings)
@settings(max_examples=1500)
@example(text="1:20\n", meaning=None)
@example(text="()", meaning="half")
@example(text="٣°", meaning="half")
def test_anything_is_read_as_a_cone_or_refused(text: str, meaning: Meaning | None) -> None:
    """Any text at all is read as a cone's angle or refused by its field: nothing else happens."""
    found = outcome(text, meaning)
    if isinstance(found, Refusal):
        assert set(found.fields) <= {"text", "bare_angle_is"}
        assert found.fields
    else:
        assert 0 < found.half_angle_rad < math.pi / 2
        assert found.read_as


@given(text=pieced, spaces=st.integers(1, 3))
@settings(max_examples=400)
def test_spaces_around_a_text_mean_nothing(text: str, spaces: int) -> None:
    """A text is read the same, or refused the same, with spaces around it."""
    plain, spaced = outcome(text), outcome(f"{' ' * spaces}{text}\t")
    if isinstance(plain, Refusal):
        assert isinstance(spaced, Refusal)
        assert spaced.detail == plain.detail
    else:
        assert spaced == plain


@given(designation=st.sampled_from(sorted(all_rows())))
@settings(max_examples=200)
def test_a_designation_is_read_as_its_row(designation: str) -> None:
    """Every designation of the tables is read in either case, here as in a field of its own."""
    for written in (designation, designation.upper(), f" {designation} "):
        assert [row.designation for row in rows_named(written)] == [designation]
        reading = read_notation(written, None)
        exact = math.atan(all_rows()[designation].rate / 2)
        assert reading.half_angle_rad == pytest.approx(exact, rel=1e-14)
