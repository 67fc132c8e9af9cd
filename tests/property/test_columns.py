"""Columns of an operation's answers are those of the rows, to the last bit, refusals included."""

import math
from collections.abc import Callable
from dataclasses import replace
from fractions import Fraction
from typing import Any

import numpy as np
import pytest
from hypothesis import example, given
from hypothesis import strategies as st
from pydantic import ValidationError
from pydantic_core import to_json

from columns_support import said_by_row, same_for_all, some_rows
from halfangle_service.columns import (
    AnsweredColumns,
    AskedColumns,
    advised_in_words,
    columns_of,
    run,
)
from halfangle_service.fields import ResultModel
from halfangle_service.operation import Outcome
from halfangle_service.registry import load_registry
from halfangle_service.trade import elementary
from halfangle_service.trade.angles import all_dm, all_dms, format_dm, format_dms, parse_dms
from halfangle_service.trade.columns import Column, Parting, Tape
from halfangle_service.trade.decimals import all_without_noise, certain, tidy, without_noise
from halfangle_service.trade.wording import block, percent

OPERATIONS = {n: o for n, o in load_registry().operations.items() if o.columns}
ROWS = 70
SETTING = OPERATIONS["sine.setting"]


def column(*values: float) -> Any:
    """A column of these numbers."""
    return Column(np.array(values, dtype=np.float64), Tape([]))


def value_of(answered: AnsweredColumns, row: int) -> dict[str, Any]:
    """Values of a row, None where its answer says null."""
    values = {name: column[row] for name, column in answered.columns.items()}
    return {name: None if value != value else value for name, value in values.items()}  # noqa: PLR0124


def setting(**fields: Any) -> AnsweredColumns:
    """Columns of `sine.setting` on a bar of 5 in."""
    asked = AskedColumns(SETTING.request, {"units": "in", "center_distance": 5, **fields})
    return columns_of(SETTING, asked)


@pytest.mark.parametrize("name", sorted(OPERATIONS))
def test_columns_are_what_the_rows_say(name: str, monkeypatch: pytest.MonkeyPatch) -> None:
    """Every value and word of a column is the row's own; refused rows are left, few others."""
    # So few rows take a path each that most would be left for the time it takes.
    monkeypatch.setattr(run, "_FEWEST_ROWS", 2)
    operation = OPERATIONS[name]
    asked = AskedColumns(
        operation.request, {**some_rows(operation, ROWS, 7), **same_for_all(operation)}
    )
    answered = columns_of(operation, asked)
    assert answered.words is not None
    left = refused = 0
    for row in range(ROWS):
        said = said_by_row(operation, asked.request_of(row))
        refused += said is None
        if answered.left[row]:
            left += said is not None
            continue
        assert said is not None, asked.request_of(row)
        values, advised = said
        assert value_of(answered, row) == values, asked.request_of(row)
        assert answered.advised[answered.advised_of[row]] == tuple(a[:2] for a in advised)
        assert answered.words[row] == advised_in_words(advised), asked.request_of(row)
    assert left <= 0.2 * (ROWS - refused)


def test_at_least_twenty_operations_have_columns() -> None:
    """The closed forms that shops tabulate are declared, and none that is always heavy."""
    assert len(OPERATIONS) >= 20
    assert not [name for name, operation in OPERATIONS.items() if operation.heavy is True]


def test_rows_beyond_a_bound_are_left() -> None:
    """A number out of the schema's bounds, no angle, infinity or true: the row form refuses it."""
    angles = [30.0] * 8 + [0.0, 90.0, -1.0, math.inf, "30:70", "no", True, 1e300]
    assert setting(angle=angles).left.tolist() == [False] * 8 + [True] * 8


def test_a_gap_is_a_field_left_out() -> None:
    """NaN and None leave an optional field out of their rows; a required one is refused."""
    answered = setting(angle=[30.0] * 8 + [None] * 8, resolution=[math.nan, 0.01] * 8)
    assert answered.left[8:].all()
    assert setting(angle=[30.0] * 8 + [None] * 8).left.tolist() == [False] * 8 + [True] * 8
    resolved = setting(angle=np.full(16, 22.0), resolution=[math.nan, 0.01] * 8)
    heights = resolved.columns["height_to_set"]
    assert set(heights[::2].tolist()) == {1.873}
    assert set(heights[1::2].tolist()) == {1.87}


def test_units_may_differ_from_row_to_row() -> None:
    """What is no number may be a column too: rows are sorted by it."""
    answered = setting(
        angle=np.full(20, 30.0), center_distance=[5.0, 100.0] * 10, units=["in", "mm"] * 10
    )
    assert answered.columns["bench_step"].tolist() == [0.0001, 0.001] * 10


def test_angles_as_text_raise_no_reading_note() -> None:
    """8.18 is noted as perhaps 8°18', the text 8°18' is not, in one column."""
    answered = setting(angle=[8.18, "8°18'"] * 10)
    codes = [dict(reversed(a) for a in answered.advised[i]) for i in answered.advised_of]
    assert ["decimal-degrees-read" in each for each in codes] == [True, False] * 10


def test_unlike_lengths_are_an_error() -> None:
    """Columns of unlike lengths are refused, as is a request that has none."""
    with pytest.raises(ValueError, match=r"one length are needed.*center_distance 3, angle 2"):
        setting(angle=[1.0, 2.0], center_distance=[5.0, 5.0, 5.0])
    with pytest.raises(ValueError, match="at least; got none"):
        setting(angle=30)


def test_only_what_is_wanted_is_given() -> None:
    """Of a result only the names asked for; one that it has not is an error."""
    asked = AskedColumns(SETTING.request, {"units": "in", "center_distance": 5, "angle": [1.0, 2]})
    assert list(columns_of(SETTING, asked, ["height"]).columns) == ["height"]
    with pytest.raises(KeyError, match="hight"):
        columns_of(SETTING, asked, ["hight"])


# The words of columns ---------------------------------------------------------------------------
def test_each_row_says_its_own_figures() -> None:
    """Advice with figures of each row is written out for each, and only where asked for."""
    angles = np.linspace(46.0317, 79.9173, 20)
    fields = {"units": "in", "center_distance": 5, "angle": angles}
    answered = columns_of(SETTING, AskedColumns(SETTING.request, fields))
    assert answered.words is not None
    assert not answered.left.any()
    for angle, words in zip(angles.tolist(), answered.words.tolist(), strict=True):
        assert f"set the complement, {90.0 - angle:.4f}°." in words
    silent = columns_of(SETTING, AskedColumns(SETTING.request, fields), [], in_words=False)
    assert silent.words is None


def test_figures_are_written_as_rows_write_them() -> None:
    """Formats, wording functions, whole numbers and percent signs are the row form's own."""
    values, rows = column(8.25, -0.0, 1e-7), np.array([2, 0, 1])
    whole = round(values) + 1
    said = (
        f"100 % of {values:z.2f}, {values}, {block(values, 'in')}, {percent(values)}, {whole:02d}"
    )
    expected = [
        f"100 % of {x:z.2f}, {x}, {block(x, 'in')}, {percent(x)}, {round(x) + 1:02d}"
        for x in (1e-7, 8.25, -0.0)
    ]
    assert values.tape.sentences(said, rows) == expected
    assert values.tape.sentences("the same of all", rows) is None


def test_no_request_can_bring_a_mark() -> None:
    """A text that looks like a figure's mark is no text of any request: its rows are left."""
    answered = setting(angle=np.full(10, 50.0), units="\udc000\udfff")
    assert answered.left.all()
    with pytest.raises(UnicodeEncodeError, match="surrogates not allowed"):
        f"{column(1.0)}".encode()


# The arithmetic of columns ---------------------------------------------------------------------
def test_a_column_is_no_float() -> None:
    """What is not made for columns raises, and never takes a part of the rows for the whole."""
    with pytest.raises(TypeError, match="real number"):
        math.sin(column(1.0, 2.0))
    with pytest.raises(TypeError, match="unhashable"):
        hash(column(1.0))


def test_a_column_in_a_text_says_so() -> None:
    """However a column comes into a text, each row has its own figure there."""
    one, rows = column(1.0, 2.5), np.arange(2)
    said = one.tape.sentences(f"{one} {one:.3f} " + str(one) + " %s" % one, rows)  # noqa: UP031
    assert said == ["1.0 1.000 1.0 1.0", "2.5 2.500 2.5 2.5"]


def test_comparisons_compare_as_truths() -> None:
    """Two comparisons are alike where they say the same; where the rows differ, they part."""
    low, high = column(1.0, 2.0), column(5.0, 6.0)
    assert (low > 0.0) == (high > 0.0)
    assert (low > 3.0) != (high > 3.0)
    assert ((low > 0.0) == True, (low > 3.0) == True) == (True, False)  # noqa: E712
    with pytest.raises(Parting, match="1 of 2 rows"):
        assert (low > 1.5) == (high > 0.0)
    with pytest.raises(TypeError, match="unhashable"):
        hash(low > 0.0)


@pytest.mark.parametrize("whole", [round, math.floor, math.ceil])
def test_what_is_not_finite_is_no_whole_number(whole: Callable[[Any], Any]) -> None:
    """As a float does, a column raises where it would be made whole; just those rows part."""
    assert whole(column(-0.25, 2.0)).values.tolist() == [whole(-0.25), 2]
    with pytest.raises(Parting, match="1 of 2 rows"):
        whole(column(1.0, math.inf))
    with pytest.raises(OverflowError, match="not finite"):
        whole(column(math.inf, math.nan))


class ColumnsInAList(ResultModel):
    """A result whose list holds words."""

    height: float
    low: bool = False
    reasons: list[str]
    not_stated: list[str]


def test_a_list_of_words_holds_a_figure_of_each_row() -> None:
    """Words of a list are each row's own where they hold a figure of its own."""

    def calculate(request: Any) -> Outcome[ColumnsInAList]:
        steep = request.angle > 45.0
        reasons = [f"steep: {request.angle}°"] if steep else ["flat", "low"]
        low: bool = request.angle < 12.0
        return Outcome(
            ColumnsInAList(height=request.angle, low=low, reasons=reasons, not_stated=[])
        )

    invented = replace(SETTING, result=ColumnsInAList, calculate=calculate)
    angles = [10.0] * 4 + [20.0] * 4 + [50.0] * 8
    asked = AskedColumns(SETTING.request, {"units": "in", "center_distance": 5, "angle": angles})
    answered = columns_of(invented, asked)
    assert not answered.left.any()
    assert answered.columns["reasons"].tolist()[8:] == ["steep: 50.0°"] * 8
    assert answered.columns["low"].tolist()[:8] == [True] * 4 + [False] * 4
    lists = {name: answered.columns[name][0] for name in ("reasons", "not_stated")}
    assert lists == {"reasons": "flat; low", "not_stated": "none"}


def test_a_result_with_columns_is_checked_beside_them() -> None:
    """A field at fault for more than being a column is refused as it would be for one row."""
    made = ColumnsInAList(height=column(1.0), reasons=["a"], not_stated=[])
    assert made.height.values.tolist() == [1.0]  # type: ignore[attr-defined]
    with pytest.raises(ValidationError, match="not_stated"):
        ColumnsInAList(height=column(1.0), reasons=["a"])  # type: ignore[call-arg]
    with pytest.raises(ValidationError, match="valid string"):
        ColumnsInAList(height=column(1.0), reasons=["a"], not_stated=[None])


def test_rows_part_where_they_differ() -> None:
    """A decision on which the rows differ parts them; one on which they agree does not."""
    assert column(1.0, 2.0) > 0.5
    assert not column(1.0, 2.0) > 3.0
    with pytest.raises(Parting, match="1 of 2 rows") as parting:
        bool(column(1.0, 2.0) > 1.5)
    assert parting.value.where.tolist() == [False, True]


def test_rows_that_divide_by_nothing_part() -> None:
    """A quotient raises as Python's does, for just those rows that divide by 0."""
    with pytest.raises(Parting, match="1 of 2 rows") as parting:
        1.0 / column(1.0, 0.0)
    assert parting.value.where.tolist() == [False, True]
    with pytest.raises(ZeroDivisionError, match="zero"):
        1.0 / column(0.0, 0.0)
    with pytest.raises(Parting, match="1 of 2 rows"):
        elementary.asin(column(0.5, 1.5))
    with pytest.raises(Parting, match="1 of 2 rows"):
        elementary.sqrt(column(0.5, -1.5))


@given(st.lists(st.floats(-1e9, 1e9), min_size=1, max_size=30))
def test_arithmetic_is_pythons_own(numbers: list[float]) -> None:
    """Sums, products, rounding and sines of a column are Python's, to the last bit."""
    values = column(*numbers)
    of_rows = {
        "sum": (values + 0.1, [x + 0.1 for x in numbers]),
        "less": (1.0 - values, [1.0 - x for x in numbers]),
        "product": (3.3 * values * values, [3.3 * x * x for x in numbers]),
        "quotient": (values / 7.0, [x / 7.0 for x in numbers]),
        "rest": (values % 7.0, [x % 7.0 for x in numbers]),
        "whole": (values // 7.0, [x // 7.0 for x in numbers]),
        "power": (values**2, [x**2 for x in numbers]),
        "rounded": (round(values), [float(round(x)) for x in numbers]),
        "sine": (elementary.sin(values), [math.sin(x) for x in numbers]),
        "degrees": (elementary.degrees(values), [math.degrees(x) for x in numbers]),
        "radians": (elementary.radians(values), [math.radians(x) for x in numbers]),
        "length": (elementary.hypot(values, 2.0, 3.0), [math.hypot(x, 2, 3) for x in numbers]),
        "exactly": (elementary.fsum([values, 0.1]), [math.fsum((x, 0.1)) for x in numbers]),
        "certain": (certain(values), [float(f"{x:.15g}") for x in numbers]),
        "tidy": (tidy(values, 90.0), [tidy(x, 90.0) for x in numbers]),
    }
    for name, (found, expected) in of_rows.items():
        assert found.values.tolist() == expected, name


@given(st.integers(-(10**9), 10**9), st.integers(0, 12), st.sampled_from([1, 3, 7, 11, 0.1, 1.1]))
def test_columns_are_tidied_as_answers_are(digits: int, places: int, by: float) -> None:
    """A number is settled as in an answer, or is among those that are settled one by one."""
    value = float(Fraction(digits, 10**places)) * by / by
    [settled], doubtful = all_without_noise(np.array([value]))
    assert len(doubtful) or settled == float(without_noise(to_json(value)))
    if 0 < abs(digits) < 1_000_000 and places < 6:
        assert not len(doubtful)


#: Halves of a hundredth of a second: half of an angle as it is typed.
HALVES = st.integers(-(10**8), 10**8).map(lambda halves: halves / 720_000)


@given(st.lists(st.floats(-400.0, 400.0) | HALVES, min_size=1, max_size=20))
@example([parse_dms("61°44'15.37\"") / 2.0])
def test_angles_are_written_alike(degrees: list[float]) -> None:
    """An array's texts in degrees, minutes and seconds are those that each has alone."""
    assert all_dms(np.array(degrees)).tolist() == [format_dms(angle) for angle in degrees]
    assert all_dm(np.array(degrees)).tolist() == [format_dm(angle) for angle in degrees]
