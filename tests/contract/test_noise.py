"""Answers hold no noise of binary arithmetic: 0.12 is not written 0.12000000000000001."""

import json
import re
from decimal import Decimal
from fractions import Fraction
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from halfangle_service.registry import load_registry
from halfangle_service.trade.decimals import without_noise
from support import Call

OPERATIONS = load_registry().operations
#: Differences of nearly equal numbers, whose noise is no matter of a last bit.
DIFFERENCES = {"sine.compound-angles", "tapers.identify", "tapers.plug-depth-nominal"}
#: A number that is a short decimal but for its last digits.
NOISY = re.compile(r"[:,\[]-?\d+\.\d*(?:0{8}|9{8})\d{1,3}(?=[,\]}])")


@pytest.mark.parametrize("name", sorted(set(OPERATIONS) - DIFFERENCES))
def test_examples_are_answered_without_noise(name: str) -> None:
    """No number of the answer to an operation's example is a short decimal and a bit."""
    operation = OPERATIONS[name]
    request = operation.request.model_validate_json(json.dumps(dict(operation.example)))
    written = operation.answer_json(request).decode()
    assert NOISY.findall(written) == []


@given(st.integers(1, 10**9), st.integers(0, 9), st.sampled_from([3, 7, 11, 0.1, 1.1]))
def test_a_short_decimal_comes_back_from_its_noise(digits: int, places: int, by: float) -> None:
    """Multiplied and divided again, a short decimal is written as it was."""
    value = float(Decimal(digits).scaleb(-places))
    noisy = value * by / by
    assert json.loads(without_noise(b'{"a":%a,"b":1}' % noisy)) == {"a": value, "b": 1}


@given(st.floats(1e-6, 1e6))
def test_any_other_number_keeps_its_last_bit(value: float) -> None:
    """A number that is no short decimal comes back to the bit; none moves past its noise."""
    [back] = json.loads(without_noise(json.dumps([value]).encode()))
    assert abs(Fraction(back) - Fraction(value)) <= Fraction(2e-15) * Fraction(value)
    if back != value:
        assert len(repr(back)) < len(repr(value)) - 3


@given(st.recursive(st.none() | st.booleans() | st.integers() | st.text(max_size=12), st.lists))
def test_what_is_no_number_is_left_alone(value: Any) -> None:
    """Texts, whole numbers and all else are the same after as before."""
    assert json.loads(without_noise(json.dumps([value]).encode())) == [value]


def test_sums_of_the_bench_read_as_a_person_writes_them(call: Call) -> None:
    """Three causes of 0.04 make a worst case of 0.12, half of 5 by sin 30° a stack of 2.5."""
    causes = [{"name": f"part {place}", "tir": 0.04} for place in range(3)]
    budget = call("runout.budget", units="mm", limit_tir=0.1, contributors=causes)["result"]
    assert repr(budget["tir"]["worst_case"]) == "0.12"
    setting = call("sine.setting", units="in", center_distance=5, angle=30)["result"]
    assert repr(setting["height"]) == "2.5"
