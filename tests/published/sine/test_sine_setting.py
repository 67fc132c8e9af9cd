"""The sine relation, its tables and its way back against published values."""

import csv
import io
import math

import mpmath
import pytest

from halfangle_service.errors import Disagreement, Impossible, Refusal, Unreachable
from halfangle_service.trade.sine.geometry import round_to_step
from support import Call

COURSE = "a university engineering course's question bank on metrology"


@pytest.mark.outside("sine.setting", source="Common practice: 30° on a 5 in sine plate is 2.5 in.")
def test_thirty_degrees_on_five_inches_is_half(call: Call) -> None:
    """30° on a 5 in sine plate asks for a stack of 2.5 in."""
    answer = call("sine.setting", units="in", center_distance=5, angle=30)
    assert answer["result"]["height"] == 2.5


@pytest.mark.outside(
    "sine.setting",
    source="Published examples: 18° on 5 in (1.545, by a three-figure sine), 30° on 200 mm (100) "
    f"and on 100 mm (50), {COURSE}.",
)
@pytest.mark.parametrize(
    ("units", "length", "degrees", "printed"),
    [("in", 5, 18, 1.545), ("mm", 200, 30, 100.0), ("mm", 100, 30, 50.0)],
)
def test_published_heights(
    call: Call, units: str, length: float, degrees: float, printed: float
) -> None:
    """Heights agree with printed examples to the digits printed."""
    result = call("sine.setting", units=units, center_distance=length, angle=degrees)["result"]
    assert round(result["height"], 3) == printed


@pytest.mark.outside("sine.table", source="mpmath 1.3, sine to 30 digits, four center distances.")
@pytest.mark.parametrize(("units", "length"), [("in", 5), ("in", 10), ("mm", 100), ("mm", 200)])
def test_constants_for_several_center_distances(call: Call, units: str, length: float) -> None:
    """Every constant by the quarter degree agrees with a reference library to 12 digits."""
    result = call(
        "sine.table",
        units=units,
        center_distance=length,
        first_angle=0,
        last_angle=60,
        angle_step="0°15'",
    )["result"]
    assert result["count"] == 241
    for row in result["rows"]:
        exact = length * mpmath.sin(mpmath.radians(mpmath.mpf(row["angle"]["degrees"])))
        assert row["height"] == pytest.approx(float(exact), rel=1e-12, abs=1e-15)


@pytest.mark.outside(
    "sine.table", source="Five-place natural sines of 1°, 5°, 15°, 22°30′, 45°, from memory."
)
def test_five_place_constants(call: Call) -> None:
    """The table holds the five-place constants that every handbook prints for 5 in."""
    result = call(
        "sine.table", units="in", center_distance=5, first_angle=0, last_angle=45, angle_step=0.5
    )["result"]
    heights = {row["angle"]["degrees"]: row["height"] for row in result["rows"]}
    printed = {1.0: 0.08726, 5.0: 0.43578, 15.0: 1.29410, 22.5: 1.91342, 45.0: 3.53553}
    for degrees, height in printed.items():
        assert heights[degrees] == pytest.approx(height, abs=5.1e-6)


def test_table_counts_minutes_exactly(call: Call) -> None:
    """A table by the minute still stands on whole minutes in its last row."""
    result = call(
        "sine.table", units="mm", center_distance=100, first_angle=0, last_angle="59°59'",
        angle_step="0°01'",
    )["result"]  # fmt: skip
    assert result["count"] == 3600
    assert result["rows"][-1]["angle"]["dms"] == "59°59'00.00\""


def test_csv_says_what_the_rows_say(call: Call) -> None:
    """The CSV reads back to the rows, number by number."""
    result = call(
        "sine.table", units="in", center_distance=5, first_angle=10, last_angle=20, angle_step=2.5
    )["result"]
    lines = list(csv.DictReader(io.StringIO(result["csv"], newline="")))
    assert [float(line["height_in"]) for line in lines] == [r["height"] for r in result["rows"]]
    assert [line["angle_dms"] for line in lines] == [r["angle"]["dms"] for r in result["rows"]]


@pytest.mark.parametrize(
    ("change", "kind", "says"),
    [
        ({"last_angle": 5}, Disagreement, "below its start"),
        ({"angle_step": "0 00 01"}, Refusal, "at most 5400"),
    ],
)
def test_table_bounds(
    call: Call, change: dict[str, object], kind: type[Refusal], says: str
) -> None:
    """A table that ends before it starts, or that is too long, is refused with the reason."""
    request = {
        "units": "in",
        "center_distance": 5,
        "first_angle": 10,
        "last_angle": 60,
        "angle_step": 1,
    }
    with pytest.raises(kind, match=says):
        call("sine.table", **(request | change))


@pytest.mark.outside(
    "sine.angle",
    source="National graduate engineering entrance examination 2012, sine bar of 250 mm, rise of "
    "the roll centers 90 mm: 21.1° (option A; key from memory).",
)
def test_examination_question(call: Call) -> None:
    """A rise of 90 mm on 250 mm is 21.1°."""
    result = call("sine.angle", units="mm", center_distance=250, height=90)["result"]
    assert round(result["angle"]["degrees"], 1) == 21.1


@pytest.mark.outside(
    "sine.angle",
    source="A textbook question with stacks 47.667 and 37.667 mm on 112 mm; angle by mpmath.",
)
def test_two_stacks_give_their_difference(call: Call) -> None:
    """Only the difference of two stacks counts: 47.667 over 37.667 on 112 mm is 5.1225°."""
    result = call(
        "sine.angle", units="mm", center_distance=112, high_stack=47.667, low_stack=37.667
    )["result"]
    exact = mpmath.degrees(mpmath.asin(mpmath.mpf(10) / 112))
    assert result["angle"]["degrees"] == pytest.approx(float(exact), abs=1e-10)


@pytest.mark.outside(
    "sine.setting",
    source="Published worked error: 0.0001 in of height on 5 in at 30° is 0.00132°.",
)
def test_published_sensitivity(call: Call) -> None:
    """One ten-thousandth at 30° on 5 in turns the plate 0.00132°."""
    result = call("sine.setting", units="in", center_distance=5, angle=30)["result"]
    assert round(result["arcsec_per_step"] / 3600, 5) == 0.00132


def test_steep_angle_offers_the_complement(call: Call) -> None:
    """Past the stated angle the complement comes with both error figures: 15.9″ against 4.3″."""
    answer = call("sine.setting", units="in", center_distance=5, angle=75)
    complement = answer["result"]["complement_setting"]
    assert complement["angle"]["degrees"] == pytest.approx(15.0)
    # 206264.806″ × 0.0001 / (5 cos θ), by hand.
    assert answer["result"]["arcsec_per_step"] == pytest.approx(15.939, abs=1e-3)
    assert complement["arcsec_per_step"] == pytest.approx(4.271, abs=1e-3)
    assert [a["code"] for a in answer["advisories"]] == ["steep-angle"]
    mild = call("sine.setting", units="in", center_distance=5, angle=75, steep_angle=80)
    assert mild["result"]["complement_setting"] is None
    assert mild["advisories"] == []


def test_rounding_says_what_it_costs(call: Call) -> None:
    """The rounded height's own angle error is given, and is that of the way back."""
    result = call("sine.setting", units="in", center_distance=5, angle=18)["result"]
    assert result["height_to_set"] == 1.5451
    back = call("sine.angle", units="in", center_distance=5, height=1.5451)["result"]
    assert result["angle_as_set"] == back["angle"]
    off = (back["angle"]["degrees"] - 18) * 3600
    assert result["deviation_arcsec"] == pytest.approx(off, abs=1e-8)


def test_unequal_rolls_by_coordinates(call: Call) -> None:
    """With unequal rolls the stack is what puts their centers at L sin θ, by coordinates."""
    high, low, length, degrees, step = 1.002, 1.0, 5.0, 20.0, 0.1
    result = call(
        "sine.setting", units="in", center_distance=length, angle=degrees,
        high_roll_diameter=high, low_roll_diameter=low, base_step=step,
    )["result"]  # fmt: skip
    high_center = result["height"] + high / 2
    low_center = step + low / 2
    assert (high_center - low_center) / length == pytest.approx(math.sin(math.radians(degrees)))


@pytest.mark.parametrize(
    ("name", "request_", "kind", "says"),
    [
        ("sine.angle", {"height": 5}, Impossible, "not below the center distance 5"),
        ("sine.angle", {"high_stack": 6, "low_stack": 0.5}, Impossible, "upright or beyond"),
        (
            "sine.angle",
            {},
            Disagreement,
            "`height` and `high_stack` is needed; they are all missing",
        ),
        ("sine.angle", {"height": 1, "high_stack": 1}, Disagreement, "sent together"),
        ("sine.setting", {"angle": 46, "largest_angle": 45}, Unreachable, "reaches 45°"),
        ("sine.setting", {"angle": 30, "low_roll_diameter": 1}, Disagreement, "or none of them"),
    ],
)
def test_refusals(
    call: Call, name: str, request_: dict[str, object], kind: type[Refusal], says: str
) -> None:
    """What no plate can do, and what contradicts itself, is refused with the reason."""
    with pytest.raises(kind, match=says):
        call(name, units="in", center_distance=5, **request_)


def test_rounding_to_a_step_that_is_no_fraction() -> None:
    """A step that is no whole fraction of one is taken as it is."""
    assert round_to_step(1.0, 0.3) == pytest.approx(0.9)


@pytest.mark.parametrize(
    ("operation", "units", "resolution"),
    [("sine.setting", "in", 2.5), ("sine.setting", "mm", 2.6), ("sine.uncertainty", "in", 0.11)],
)
def test_a_height_sent_as_the_step_is_refused(
    call: Call, operation: str, units: str, resolution: float
) -> None:
    """No blocks step by more than a tenth of an inch: such a resolution is a slip, and named so."""
    plate = {"units": units, "center_distance": {"in": 5, "mm": 100}[units], "angle": 30}
    coarsest = {"in": 0.1, "mm": 2.5}[units]
    with pytest.raises(Disagreement, match=f"built in steps of {resolution} {units}") as refused:
        call(operation, **plate, resolution=resolution)
    assert refused.value.fields == {"resolution": f"should be at most {coarsest} {units}"}
    assert call(operation, **plate, resolution=coarsest)["result"]
