"""Round trips and invariants of the sine topic's maths."""

import math
from collections import Counter

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from halfangle_service.trade.sine.block_swap import fewest_swaps
from halfangle_service.trade.sine.compound import (
    BaseAxis,
    Frame,
    angle_between,
    hinge_angles,
    normal_from_hinges,
    normal_from_slopes,
    normal_from_tilt,
    slopes_of_normal,
    tilt_of_normal,
)
from halfangle_service.trade.sine.geometry import angle_for_height, height_for_angle
from halfangle_service.trade.sine.low_stack import Conditions, difference_table, fewest_pair
from halfangle_service.trade.sine.setting_table import angle_range
from halfangle_service.trade.sine.taper_holding import (
    Holding,
    half_angle_from_plate,
    half_angle_sensitivity,
    plate_angle,
)
from halfangle_service.trade.tables.blocks.sets import find_set

lengths = st.floats(0.5, 2_000)
angles = st.floats(math.radians(0.01), math.radians(85))
slopes = st.floats(math.radians(-75), math.radians(75))
frames = st.sampled_from(["part", "machine"])
axes = st.sampled_from(["x", "y"])
holdings = st.sampled_from(["between-centers", "on-its-generator", "in-a-vee"])


@given(lengths, angles, st.floats(-0.4, 0.4))
def test_height_and_angle_return(length: float, angle: float, offset: float) -> None:
    """From an angle to a height and back is the same angle, whatever the offset."""
    height = height_for_angle(length, angle, offset)
    assert angle_for_height(length, height, offset) == pytest.approx(angle, abs=1e-10)


@given(st.floats(math.radians(0.05), math.radians(40)), holdings, st.floats(60, 180))
def test_taper_and_plate_return(half: float, holding: Holding, vee: float) -> None:
    """From a half angle to the plate and back is the same taper, however it is held."""
    vee_half = math.radians(vee) / 2
    if holding == "in-a-vee" and half >= 0.45 * vee_half:
        half *= 0.3
    plate = plate_angle(half, holding, vee_half)
    assert half_angle_from_plate(plate, holding, vee_half) == pytest.approx(half, abs=1e-12)


@given(st.floats(0.02, 1.2), holdings, st.floats(60, 180))
def test_taper_sensitivity_is_the_numeric_derivative(
    plate: float, holding: Holding, vee: float
) -> None:
    """dα/dθ is the slope of the way back, by central differences."""
    vee_half, step = math.radians(vee) / 2, 1e-6
    ahead = half_angle_from_plate(plate + step, holding, vee_half)
    behind = half_angle_from_plate(plate - step, holding, vee_half)
    slope = half_angle_sensitivity(plate, holding, vee_half)
    assert slope == pytest.approx((ahead - behind) / (2 * step), abs=1e-8)


@given(slopes, slopes, frames, axes)
def test_surface_and_hinges_return(x: float, y: float, frame: Frame, axis: BaseAxis) -> None:
    """From a surface to two hinge angles and back is the same surface."""
    normal = normal_from_slopes(x, y)
    back = normal_from_hinges(*hinge_angles(normal, frame, axis), frame, axis)
    assert angle_between(normal, back) < 1e-12


@given(slopes, slopes)
def test_projected_angles_and_true_tilt(x: float, y: float) -> None:
    """tan² of the true tilt is the sum of both views' tan², and every form returns."""
    normal = normal_from_slopes(x, y)
    tilt, direction = tilt_of_normal(normal)
    assert math.tan(tilt) ** 2 == pytest.approx(math.tan(x) ** 2 + math.tan(y) ** 2, abs=1e-12)
    np.testing.assert_allclose(normal_from_tilt(tilt, direction), normal, atol=1e-12)
    assert slopes_of_normal(normal) == pytest.approx((x, y), abs=1e-12)


@given(slopes, slopes, frames)
def test_swapping_axes_swaps_views(x: float, y: float, frame: Frame) -> None:
    """A base hinge along Y is the base hinge along X with the two views exchanged."""
    along_x = hinge_angles(normal_from_slopes(x, y), frame, "x")
    along_y = hinge_angles(normal_from_slopes(y, x), frame, "y")
    assert along_x == pytest.approx(along_y, abs=1e-15)


@settings(max_examples=40, deadline=None)
@given(st.integers(1, 30_000), st.booleans())
def test_pairs_stand_on_their_difference(steps: int, low: bool) -> None:
    """Both stacks differ by what was asked, use no block twice, no fewer than the table says."""
    sizes = find_set("inch-81").sizes
    table = difference_table(sizes, 6)
    difference = steps * table.step
    pair, finished = fewest_pair(table, [difference], Conditions(low_needed=low))
    assert pair is not None
    assert finished
    assert pair.difference == difference
    assert not Counter([*pair.high, *pair.low]) - Counter(sizes)
    assert pair.count >= table.count(difference)
    assert pair.low or not low


@settings(max_examples=40, deadline=None)
@given(st.sets(st.integers(0, 80), min_size=1, max_size=4), st.integers(-3_000, 3_000))
def test_swaps_land_on_the_height(positions: set[int], steps: int) -> None:
    """A swap takes out what is in, puts in what is spare, and lands on the height."""
    sizes = find_set("inch-81").sizes
    current = [sizes[position] for position in positions]
    height = sum(current) + steps * 25_400
    swap = fewest_swaps(current, sizes, [height], 6) if height > 0 else None
    if swap is not None:
        assert sum(swap.stack) == height
        stays = Counter(current) - Counter(swap.remove)
        assert Counter(swap.stack) == stays + Counter(swap.add)
        assert not Counter(swap.stack) - Counter(sizes)


@given(st.integers(0, 80), st.integers(1, 3_000), st.integers(1, 500))
def test_table_steps_are_even(first: int, step_arcsec: int, rows: int) -> None:
    """Angles of a table stand one step apart, from the first to the last."""
    step = step_arcsec / 3600
    last = first + (rows - 1) * step
    column = angle_range(first, last, step)
    assert len(column) == rows
    np.testing.assert_allclose(np.diff(column), step, atol=1e-10)
