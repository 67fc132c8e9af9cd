"""Published tapers, balls and rolls, row by row; each source with its own figure."""

import math
from typing import Any

import pytest

from support import Call

#: Included angle in degrees, and its taper per inch and per foot as a table of 1902 prints them.
_OLD_TABLE: dict[int, tuple[float, float | None]] = {
    2: (0.0349, 0.4188),
    3: (0.05236, 0.62832),
    5: (0.08732, None),
    20: (0.35266, None),
    25: (0.44338, None),
    30: (0.5359, None),
    40: (0.72794, None),
    45: (0.82842, None),
    50: (0.93262, None),
}


@pytest.mark.outside(
    "tapers.solve",
    source="Turning and Boring Tapers (Derry Collard, 1902), table of degrees, taper per inch and "
    "per foot, as afripics.com reproduces it; its last place is rounded or cut",
)
@pytest.mark.parametrize(("included", "printed"), _OLD_TABLE.items())
def test_tapers_of_an_old_table(
    call: Call, included: int, printed: tuple[float, float | None]
) -> None:
    """Taper per inch and per foot of an included angle, to what the old table's places leave."""
    sent = {"units": "in", "included_angle": included, "large_diameter": 2, "length": 1}
    result = call("tapers.solve", **sent)["result"]
    per_inch, per_foot = printed
    assert result["rate_of_taper"] == pytest.approx(per_inch, abs=1.6e-5)
    if per_foot is not None:
        assert result["taper_per_foot"] == pytest.approx(per_foot, abs=1.5e-4)


@pytest.mark.outside(
    "tapers.solve",
    source="madmechanics.com, ball joint taper: 1 in to 0.75 in over 1 in is 7.125° half, 14.25° "
    "included; student's notes: 40 to 30 mm over 100 mm is 2°51'45\" half, 5°43'30\" included",
)
@pytest.mark.parametrize(
    ("large", "small", "length", "half", "within"),
    [(1.0, 0.75, 1.0, 7.125, 6e-4), (40.0, 30.0, 100.0, 2.8625, 2e-4)],
)
def test_printed_angles_from_diameters(
    call: Call, large: float, small: float, length: float, half: float, within: float
) -> None:
    """Half and included angle from both diameters and the length, to what was printed."""
    sizes = {"large_diameter": large, "small_diameter": small, "length": length}
    result = call("tapers.solve", units="mm", **sizes)["result"]
    assert result["half_angle"]["degrees"] == pytest.approx(half, abs=within)
    assert result["included_angle"]["degrees"] == pytest.approx(2 * half, abs=2 * within)


@pytest.mark.outside(
    "tapers.over-rolls",
    source="Textbook method tan α = (M2 − M1)/(2 H), d = M1 − r-terms (from memory); numbers made "
    "up and worked out: 1.432096° half, 1.237344 in at the base; 2.856690°, 35.596269 mm",
)
@pytest.mark.parametrize(
    ("units", "roll", "rise", "measures", "half", "base"),
    [
        ("in", 0.5, 2, (2.25, 2.35), 1.432096, 1.237344),
        ("mm", 12, 75, (60.21, 67.695), 2.856690, 35.596269),
    ],
)
def test_rolls_by_the_textbook(
    call: Call,
    units: str,
    roll: float,
    rise: float,
    measures: tuple[float, float],
    half: float,
    base: float,
) -> None:
    """Half angle and diameter at the base from two measures over rolls."""
    sent = {"roll_diameter": roll, "stack_rise": rise, "length": rise + roll}
    lower, upper = measures
    result = call(
        "tapers.over-rolls", units=units, lower_measure=lower, upper_measure=upper, **sent
    )["result"]
    assert result["half_angle"]["value"]["degrees"] == pytest.approx(half, abs=6e-7)
    assert result["small_diameter"]["value"] == pytest.approx(base, abs=6e-7)


@pytest.mark.outside(
    "tapers.dovetail-over-rolls",
    source="Machinery's Handbook's constant 1 + cot(θ/2), as zpag.net and toolmonger.com quote it; "
    "hobby-machinist.com: base 20, height 4, 60° is 24.6188 wide",
)
@pytest.mark.parametrize(("angle", "constant"), [(60, 2.7320508), (45, 3.4142136), (55, 2.9209821)])
def test_constants_of_dovetails(call: Call, angle: float, constant: float) -> None:
    """The rolls' share of the measure for one unit of their diameter."""
    dovetail: dict[str, Any] = {"kind": "male", "flank_height": 4, "corner_width": 20}
    sent = dovetail | {"flank_angle": angle, "roll_diameter": 1}
    result = call("tapers.dovetail-over-rolls", units="mm", **sent)["result"]
    assert result["rolls_constant"] == pytest.approx(constant, abs=6e-8)
    if angle == 60:
        assert result["edge_width"]["value"] == pytest.approx(24.6188, abs=5e-5)
        assert (result["edge_width"]["value"] - 20) / 2 == pytest.approx(2.3094, abs=5e-5)


@pytest.mark.outside(
    "tapers.over-balls",
    source="Jones, Turning and Boring: center distance C = (D − d)/(2 sin α) of a disk gauge, 20° "
    "with disks of 3 and 1 in is 5.75877; careerride.com 5024: sin φ = 2/8 is 14.47°, 28.95°",
)
@pytest.mark.parametrize(
    ("large", "small", "apart", "half", "within"),
    [(3.0, 1.0, 5.75877, 10.0, 1e-4), (12.0, 8.0, 8.0, 14.4775, 5e-5)],
)
def test_center_distances_of_balls_and_disks(
    call: Call, large: float, small: float, apart: float, half: float, within: float
) -> None:
    """Two circles whose centers lie so far apart touch sides of the printed half angle."""
    depth = apart + large / 2 - small / 2
    sent = {"large_ball_diameter": large, "small_ball_diameter": small}
    depths = {"large_ball_depth": 0.0, "small_ball_depth": depth, "length": depth + small}
    result = call("tapers.over-balls", units="in", **sent, **depths)["result"]
    assert result["half_angle"]["value"]["degrees"] == pytest.approx(half, abs=within)
    assert math.sin(math.radians(half)) == pytest.approx((large - small) / 2 / apart, rel=1e-4)


@pytest.mark.outside("wheels.speed", source="Arithmetic: π D n, 8 in at 3450, 200 mm at 2850")
@pytest.mark.parametrize(
    ("units", "diameter", "rpm", "field", "speed"),
    [
        ("in", 8, 3450, "surface_speed_ft_per_min", 7225.663),
        ("mm", 200, 2850, "surface_speed_m_per_s", 29.845),
    ],
)
def test_surface_speeds_by_arithmetic(
    call: Call, units: str, diameter: float, rpm: float, field: str, speed: float
) -> None:
    """Speeds of two usual wheels."""
    result = call("wheels.speed", units=units, wheel_diameter=diameter, rpm=rpm)["result"]
    assert result[field] == pytest.approx(speed, abs=6e-4)
