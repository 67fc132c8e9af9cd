"""Quantities there and back: angles as text, exact lengths, units, and what strict fields take."""

import math
import re
from fractions import Fraction
from typing import Annotated, Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pydantic import Field, ValidationError

from halfangle_service.fields import (
    Angle,
    AngleInput,
    Count,
    Length,
    RequestModel,
    Sexagesimal,
    Units,
    angle_from_radians,
    bench_step,
    format_dms,
    from_mm,
    from_tenth_nm,
    parse_dms,
    to_mm,
    to_tenth_nm,
)
from halfangle_service.trade.angles import DMS_PATTERN

units = st.sampled_from(["in", "mm"])
degrees = st.floats(-999.0, 999.0)
whole = st.integers(0, 359)
sixtieths = st.integers(0, 59)
#: Half of the last digit written, 0.01 second, in degrees; a little more for the arithmetic.
HALF_A_HUNDREDTH = 0.005 / 3600.0 * (1.0 + 1e-9)


# Angles ---------------------------------------------------------------------------------------
@given(degrees)
def test_degrees_to_text_and_back(value: float) -> None:
    """Reading what was written gives the angle back to half a hundredth of a second."""
    assert parse_dms(format_dms(value)) == pytest.approx(value, abs=HALF_A_HUNDREDTH + 1e-12)


@given(degrees)
def test_text_to_degrees_and_back_is_stable(value: float) -> None:
    """What was written once is written the same again."""
    text = format_dms(value)
    assert format_dms(parse_dms(text)) == text


@given(whole, sixtieths, sixtieths, st.integers(0, 99))
def test_text_means_the_exact_sum_of_its_parts(d: int, m: int, s: int, hundredths: int) -> None:
    """Degrees, minutes and seconds mean d + m/60 + s/3600, to the last bit but a few."""
    exact = Fraction(d) + Fraction(m, 60) + Fraction(100 * s + hundredths, 360_000)
    value = parse_dms(f"{d}°{m:02d}'{s:02d}.{hundredths:02d}\"")
    assert value == pytest.approx(float(exact), rel=4e-16, abs=1e-18)


@given(whole, sixtieths, sixtieths)
def test_every_spelling_means_the_same(d: int, m: int, s: int) -> None:
    """Signs, blanks and colons are spellings of one angle; a minus sign turns all of it."""
    spellings = [
        f"{d}°{m}'{s}\"",
        f"{d}° {m}′ {s}″",
        f"{d} {m} {s}",
        f"{d}:{m:02d}:{s:02d}",
        f"+{d} {m} {s}",
    ]
    assert len({parse_dms(text) for text in spellings}) == 1
    assert parse_dms(f"-{spellings[0]}") == -parse_dms(spellings[0])


def test_a_minus_sign_counts_where_degrees_are_zero() -> None:
    """-0°05' is five minutes below zero."""
    assert parse_dms("-0°05'") == -5.0 / 60.0
    assert format_dms(-5.0 / 60.0) == "-0°05'00.00\""


@given(st.floats(0.0, 359.9999))
def test_text_never_shows_sixty(value: float) -> None:
    """Rounding carries over: neither minutes nor seconds ever read 60."""
    minutes, seconds = format_dms(value).partition("°")[2].rstrip('"').split("'")
    assert 0 <= int(minutes) < 60
    assert 0.0 <= float(seconds) < 60.0


@given(st.one_of(st.text(max_size=20), st.from_regex(DMS_PATTERN)))
def test_other_text_is_refused_and_never_misread(text: str) -> None:
    """Text is an angle or it is refused; there is no third thing."""
    if re.fullmatch(DMS_PATTERN, text):
        assert math.isfinite(parse_dms(text))
    else:
        with pytest.raises(ValueError, match="is not an angle"):
            parse_dms(text)


@pytest.mark.parametrize(
    "text",
    ["30°60'", "30 15 60", "30.5 15", "30°15.5'20\"", "30'", "30 15\n", " 30 15", "1000 00", "٣ 0"],
)
def test_what_only_looks_like_an_angle_is_refused(text: str) -> None:
    """Sixty minutes, decimals before the last part, other digits and loose ends are refused."""
    with pytest.raises(ValueError, match="is not an angle in degrees, minutes and seconds"):
        parse_dms(text)


@given(st.floats(-math.pi, math.pi))
def test_both_forms_of_an_angle_agree(angle_rad: float) -> None:
    """The two forms in an answer are one value."""
    angle = angle_from_radians(angle_rad)
    assert angle.degrees == math.degrees(angle_rad)
    assert angle == Angle.of(angle.degrees)
    assert parse_dms(angle.dms) == pytest.approx(angle.degrees, abs=HALF_A_HUNDREDTH)


# Lengths --------------------------------------------------------------------------------------
@given(st.integers(0, 10**12), units)
def test_whole_tenth_nanometres_there_and_back(length: int, unit: Units) -> None:
    """Every length of up to 100 m that is a whole number of 0.1 nm comes back as it was."""
    assert to_tenth_nm(from_tenth_nm(length, unit), unit) == length


@given(st.integers(1, 2_000_000))
def test_decimal_sizes_are_exact(ten_thousandths: int) -> None:
    """0.0001 in is 25,400 and 0.0001 mm 1,000 times 0.1 nm, for any number of them (ISO 31-1)."""
    assert to_tenth_nm(ten_thousandths / 10_000, "in") == 25_400 * ten_thousandths
    assert to_tenth_nm(ten_thousandths / 10_000, "mm") == 1_000 * ten_thousandths


@given(st.lists(st.integers(1, 40_000), min_size=1, max_size=8))
def test_a_stack_sums_to_its_decimal_sum(sizes: list[int]) -> None:
    """Blocks given as decimals sum exactly, where floats would not."""
    total = sum(to_tenth_nm(size / 10_000, "in") for size in sizes)
    assert from_tenth_nm(total, "in") == sum(sizes) / 10_000


@given(st.floats(1e-6, 1e4), units)
def test_millimetres_there_and_back(length: float, unit: Units) -> None:
    """A length comes back from millimetres to within rounding of one bit or two."""
    assert from_mm(to_mm(length, unit), unit) == pytest.approx(length, rel=4e-16)


def test_the_inch_is_exact() -> None:
    """One inch is 25.4 mm (international yard and pound agreement, 1959)."""
    assert to_mm(1.0, "in") == 25.4
    assert to_tenth_nm(1.0, "in") == to_tenth_nm(25.4, "mm") == 254_000_000
    assert (bench_step("in"), bench_step("mm")) == (0.0001, 0.001)


# Strict fields --------------------------------------------------------------------------------
class Probe(RequestModel):
    """A request with one field of each kind."""

    length: Length = 1.0
    angle: Annotated[float, AngleInput(gt=0, lt=90)] = 30.0
    count: Annotated[int, Count(ge=1, le=12)] = 1
    slope: Annotated[float, AngleInput(ge=-45, le=45)] | None = Field(None)


def read(**fields: Any) -> Probe:
    """Read a request as Python values in strict mode."""
    return Probe.model_validate(fields)


@given(st.floats(1e-6, 1e4))
def test_a_length_within_bounds_is_taken_as_it_is(length: float) -> None:
    """No length within its bounds is changed."""
    assert read(length=length).length == length


@given(
    st.one_of(
        st.floats(max_value=0.0),
        st.floats(min_value=1e4, exclude_min=True),
        st.booleans(),
        st.text(),
    )
)
def test_anything_else_is_no_length(value: Any) -> None:
    """Zero, negative, absurd, infinite, NaN, booleans and text are no lengths."""
    with pytest.raises(ValidationError, match="length"):
        read(length=value)


@given(st.integers(-1000, 1000), st.booleans())
def test_a_count_is_taken_within_its_bounds_only(count: int, as_float: bool) -> None:
    """Whole numbers within the bounds are taken, 3.0 as 3; others are refused with the bound."""
    value: float = float(count) if as_float else count
    if 1 <= count <= 12:
        assert read(count=value).count == count
    else:
        with pytest.raises(ValidationError, match=r"than or equal to (?:1|12)\b"):
            read(count=value)


@pytest.mark.parametrize("value", [1.5, True, "1", math.inf, math.nan, 10**400, None, [1]])
def test_what_is_no_whole_number_is_no_count(value: Any) -> None:
    """A count is a whole number and nothing that could be taken for one."""
    with pytest.raises(ValidationError, match="count"):
        read(count=value)


@given(st.floats(0.0, 90.0, exclude_min=True, exclude_max=True))
def test_an_angle_as_number_or_text_is_the_same_angle(value: float) -> None:
    """Both forms pass the same bounds and give the same angle; the text is known as such."""
    text = format_dms(value)
    assert read(angle=value).angle == value
    if 0.0 < parse_dms(text) < 90.0:
        read_back = read(angle=text).angle
        assert read_back == pytest.approx(value, abs=HALF_A_HUNDREDTH)
        assert isinstance(read_back, Sexagesimal)


@given(st.one_of(st.floats(max_value=0.0), st.floats(min_value=90.0)))
def test_an_angle_past_its_bounds_is_refused(value: float) -> None:
    """Both bounds are excluded where they are said to be; NaN is no angle."""
    with pytest.raises(ValidationError, match="angle"):
        read(angle=value)


def test_an_optional_angle_keeps_its_bounds() -> None:
    """Inside a union with nothing, bounds and text hold as before."""
    assert read(slope=None).slope is None
    assert read(slope="-45 00").slope == -45.0
    with pytest.raises(ValidationError, match="greater than or equal to -45"):
        read(slope="-45 00 01")
