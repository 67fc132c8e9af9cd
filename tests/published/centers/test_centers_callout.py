"""Callouts of center holes read and written, and the stock balls that check them."""

import math
from itertools import product
from typing import Any

import pytest

from halfangle_service.errors import Disagreement, Impossible, Unreachable
from halfangle_service.trade.centers.callout import callout_of, read_callout, written
from halfangle_service.trade.tables.centers.guides import stock_balls, tapped_holes
from halfangle_service.trade.tables.centers.holes import center_holes
from support import Call
from transcribed.reading import printed

CALLOUT = "ISO 6411 - A 2.5/5.3 (a textbook) and R 4 × 8.5 (a scan of DIN 332-1)"
#: Keys of every metric hole and every tapped one.
KEYS = [key for key, hole in center_holes().items() if hole.units == "mm"] + [*tapped_holes()]


@pytest.mark.outside("centers.callout", source=CALLOUT)
@pytest.mark.parametrize(
    ("text", "key", "kind", "pilot", "cone"),
    [
        ("ISO 6411 - A 2.5/5.3", "a-2.5", "A", 2.5, 5.3),
        ("ISO 6411 - A 4/8,5", "a-4", "A", 4.0, 8.5),
        ("R 4x8.5", "r-4", "R", 4.0, 8.5),
        ("DIN 332-R 4 × 8,5", "r-4", "R", 4.0, 8.5),
        ("iso6411-a4/8.5", "a-4", "A", 4.0, 8.5),
        ("A3,15", "a-3.15", "A", 3.15, 6.7),
    ],
)
def test_a_callout_is_read(
    call: Call, text: str, key: str, kind: str, pilot: float, cone: float
) -> None:
    """Type, pilot and cone, with decimal comma or point, the standard named or not."""
    result = call("centers.callout", text=text)["result"]
    assert (result["hole_key"], result["type"]) == (key, kind)
    assert (result["pilot_diameter_mm"], result["cone_diameter_mm"]) == (pilot, cone)
    assert result["chamfer_diameter_mm"] is None
    assert result["second_figure_is"] == ("not-sent" if text == "A3,15" else "cone-diameter")


@pytest.mark.outside(
    "centers.callout", source="ISO 6411 writes d1/d3 of type B, DIN 332 d1 × d2; from memory"
)
def test_type_b_is_read_by_what_its_second_figure_is(call: Call) -> None:
    """B 2.5/8 has its chamfer, B 2.5 × 5.3 its cone; both are the same hole, written by ISO."""
    iso = call("centers.callout", text="ISO 6411 - B 2,5/8")["result"]
    din = call("centers.callout", text="DIN 332-1 - B 2.5x5.3")["result"]
    assert iso["second_figure_is"] == "chamfer-diameter"
    assert din["second_figure_is"] == "cone-diameter"
    for result in (iso, din):
        assert result["hole_key"] == "b-2.5"
        assert result["cone_diameter_mm"] == 5.3
        assert result["chamfer_diameter_mm"] == 8.0
        assert result["callout"] == "ISO 6411 - B 2,5/8"
        assert result["callout_with_point"] == "ISO 6411 - B 2.5/8"


@pytest.mark.outside("centers.callout", source="ISO 286-1, IT12; k12 of ISO 866: from memory")
@pytest.mark.parametrize(
    ("pilot", "largest"), [(0.5, 0.6), (3.15, 3.27), (6.3, 6.45), (10.0, 10.15)]
)
def test_limits_of_the_pilot(call: Call, pilot: float, largest: float) -> None:
    """A k12 pilot is never under its size, and over it by IT12 at most: 0.10, 0.12, 0.15 mm."""
    result = call("centers.callout", text=f"A {pilot}")["result"]
    assert result["smallest_pilot_diameter_mm"] == pilot
    assert result["largest_pilot_diameter_mm"] == pytest.approx(largest)
    assert result["included_angle"]["degrees"] == 60.0


@pytest.mark.parametrize(
    ("text", "form"),
    [
        ("D M10", "D"),
        ("DIN 332-D M10", "D"),
        ("DIN 332 - DR M10", "DR"),
        ("CM10L30/16.3", "DS"),
        ("DS M10", "DS"),
        ("C M 10", "DS"),
    ],
)
def test_a_tapped_hole_is_read(call: Call, text: str, form: str) -> None:
    """A 60° cone of 10.5 to 14.9 mm, under a chamfer in DIN's form DS alone, which GB calls C."""
    result = call("centers.callout", text=text)["result"]
    assert (result["type"], result["thread"], result["hole_key"]) == ("D", "M10", "d-m10")
    assert result["pilot_diameter_mm"] == 10.5
    assert result["cone_diameter_mm"] == 14.9
    assert result["chamfer_diameter_mm"] == (16.3 if form == "DS" else None)
    assert result["smallest_pilot_diameter_mm"] is None
    assert result["callout"] == f"DIN 332-2 - {form} M10"


@pytest.mark.parametrize("key", KEYS)
def test_every_row_is_called_out_and_read_back(key: str) -> None:
    """What is written of a row of the tables is read as that row, with comma and with point."""
    called = callout_of(key)
    for comma in (True, False):
        back = read_callout(written(called, comma=comma))
        assert (back.type, back.row, back.tapped) == (called.type, called.row, called.tapped)
        assert back.agrees is not False


def test_what_the_drawing_shows_with_it(call: Call) -> None:
    """Each of the three symbols of ISO 6411 has its words."""
    words = {
        remains: call("centers.callout", key="a-4", remains=remains)["result"]["drawing_symbol"]
        for remains in ("is-required", "may-remain", "must-not-remain")
    }
    assert len(set(words.values())) == 3
    assert "must not remain" in words["must-not-remain"]


@pytest.mark.parametrize("text", ["ISO 6411", "E 4/8.5", "A", "D 10", "4/8,5", "A -4/8.5"])
def test_what_is_no_callout_is_refused(call: Call, text: str) -> None:
    """A text without type and size is refused, with examples of what is one."""
    with pytest.raises(Disagreement, match="is no callout of a center hole"):
        call("centers.callout", text=text)


@pytest.mark.parametrize("text", ["A 0/0", "A 8,5/4", "B 4/4", "A 1000", "R 99999/999999"])
def test_figures_that_no_center_hole_has_are_refused(call: Call, text: str) -> None:
    """Without a pilot, with one as wide as its cone or as a shaft, there is no center hole."""
    with pytest.raises(Disagreement, match="its first figure is the pilot"):
        call("centers.callout", text=text)


def test_a_row_that_has_no_callout_is_refused(call: Call) -> None:
    """Inch drills have no callout of ISO 6411, nor has what is in no table."""
    for key in ("plain-3", "a-99"):
        with pytest.raises(Unreachable, match="no metric center hole"):
            call("centers.callout", key=key)


# Balls ----------------------------------------------------------------------------------------
def seated(ball: float, mouth: float, half: float) -> float:
    """Height of a ball's top over the mouth, by lowering it until a sampled cone stops it."""
    radius, gaps = ball / 2.0, []
    for step in range(20_001):
        # A point of the cone at this radius, and how high over it the ball's center must stand.
        r = radius * step / 20_000
        gaps.append((r - mouth / 2.0) / math.tan(half) + math.sqrt(radius**2 - r**2))
    return max(gaps) + radius


@pytest.mark.outside("centers.balls", source="Brute force: a ball lowered into a sampled cone")
def test_each_stock_ball_reads_what_it_stands_at(call: Call) -> None:
    """The height of each ball over the face is that at which a sampled cone stops it."""
    result = call(
        "centers.balls", units="mm", mouth_diameter=8.5, pilot_diameter=4, chamfer_diameter=12.5
    )["result"]
    depth = (12.5 - 8.5) / (2 * math.tan(math.pi / 3))
    for row in result["balls"]:
        height = seated(row["ball_diameter"], 8.5, math.pi / 6) - depth
        assert row["height_over_face"] == pytest.approx(height, abs=1e-6)
        assert row["contact_diameter"] == pytest.approx(row["ball_diameter"] * math.sqrt(0.75))
        assert 4 < row["contact_diameter"] < 8.5
        # A wider mouth makes the chamfer over it shallower, by 1 / (2 tan 60°).
        assert row["height_per_diameter"] == pytest.approx(-math.sqrt(0.75) + math.sqrt(1 / 12))
        assert row["smallest_height_over_face"] is None
    expected = [
        *(d for d in stock_balls()["mm"].diameters),
        *(25.4 * d for d in stock_balls()["in"].diameters),
    ]
    touching = sorted(d for d in expected if 4 < d * math.sqrt(0.75) < 8.5)
    assert [row["ball_diameter"] for row in result["balls"]] == pytest.approx(touching)
    # 7.14375 mm, 9/32 in, touches at 6.19 mm; the cone's middle is 6.25.
    assert result["middle_ball_diameter"] == pytest.approx(7.14375)
    assert result["not_stated"] == ["mouth_diameter_tolerance", "included_angle_tolerance_arcsec"]


@pytest.mark.outside("centers.balls", source="Brute force: the height over a grid of both limits")
def test_limits_of_a_reading_hold_the_whole_tolerance(call: Call) -> None:
    """No cone within the tolerances reads outside the limits, and some read just at them."""
    result = call(
        "centers.balls",
        units="mm",
        mouth_diameter=8.5,
        pilot_diameter=4,
        mouth_diameter_tolerance=0.1,
        included_angle_tolerance_arcsec=3600,
        balls_in=["mm"],
    )["result"]
    grid = list(
        product(
            [8.4 + 0.02 * k for k in range(11)], [math.radians(29.5 + 0.05 * k) for k in range(21)]
        )
    )
    for row in result["balls"]:
        d = row["ball_diameter"]
        heights = [d / (2 * math.sin(h)) + d / 2 - m / (2 * math.tan(h)) for m, h in grid]
        low, high = row["smallest_height_over_face"], row["largest_height_over_face"]
        assert low == pytest.approx(min(heights), abs=2e-4)
        assert low <= min(heights) + 1e-12
        assert high == pytest.approx(max(heights), abs=2e-4)
        assert high >= max(heights) - 1e-12


def test_limits_under_a_chamfer_are_those_of_the_hole_asked_for_again(call: Call) -> None:
    """A mouth at its tolerance, under the same chamfer, reads the limit that was said of it."""
    hole = {"units": "mm", "pilot_diameter": 4, "chamfer_diameter": 12.5, "balls_in": ["mm"]}
    found = call("centers.balls", **hole, mouth_diameter=8.5, mouth_diameter_tolerance=0.1)
    low, high = (
        call("centers.balls", **hole, mouth_diameter=mouth)["result"]["balls"]
        for mouth in (8.6, 8.4)
    )
    for place, row in enumerate(found["result"]["balls"]):
        limits = row["smallest_height_over_face"], row["largest_height_over_face"]
        heights = low[place]["height_over_face"], high[place]["height_over_face"]
        assert limits == pytest.approx(heights)
        assert row["height_per_diameter"] == pytest.approx((heights[0] - heights[1]) / 0.2)


def test_balls_are_named_as_they_are_sold(call: Call) -> None:
    """In an inch hole: fractions of an inch and millimetres, ascending by size."""
    result = call("centers.balls", units="in", mouth_diameter=0.3, pilot_diameter=0.2)["result"]
    names = [row["ball_named"] for row in result["balls"]]
    assert names == ["6 mm", "1/4 in", "6.5 mm", "7 mm", "9/32 in", "7.5 mm", "5/16 in", "8 mm",
                     "8.5 mm", "11/32 in"]  # fmt: skip


def test_the_published_holes_have_a_ball() -> None:
    """Every metric hole with a cone of the tables has a stock ball that touches it."""
    for row in printed("centers/holes_metric.csv"):
        low, high = (float(row[d]) / math.sqrt(0.75) for d in ("d1", "d2"))
        every = [*stock_balls()["mm"].diameters, *(25.4 * d for d in stock_balls()["in"].diameters)]
        assert any(low < ball < high for ball in every), row["d1"]


@pytest.mark.parametrize(
    ("change", "error", "words"),
    [
        ({"pilot_diameter": 8.5}, Disagreement, "leaves no cone in a mouth of"),
        ({"chamfer_diameter": 8.5}, Disagreement, "does not go round a mouth of"),
        ({"mouth_diameter_tolerance": 4.5}, Impossible, "no wider than the pilot"),
        ({"included_angle_tolerance_arcsec": 216_000}, Impossible, "there is no cone"),
        ({"pilot_diameter": 8.49, "balls_in": ["mm"]}, Impossible, "No stock ball lies between"),
    ],
)
def test_holes_that_take_no_ball_are_refused(
    call: Call, change: dict[str, Any], error: type[Exception], words: str
) -> None:
    """No cone, none at a limit, or none that a stock ball touches."""
    with pytest.raises(error, match=words):
        call(
            "centers.balls", **{"units": "mm", "mouth_diameter": 8.5, "pilot_diameter": 4, **change}
        )
