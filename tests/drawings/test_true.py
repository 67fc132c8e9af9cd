"""Drawings are drawn where they are asked for, and are true: sizes by scale, places, directions."""

import math
from typing import Any

import pytest

from drawings.cases import OPERATIONS, answered, drawing
from drawings.reading import Drawn, read
from halfangle_service.trade.set_up_drawing.plate import PlateOnStacks, standing
from support import Call

ASKED = [
    name
    for name, operation in OPERATIONS.items()
    if {"formats", "svg"} <= {*operation.request.model_fields, *operation.result.model_fields}
    and not operation.request.model_fields["formats"].is_required()
]


def without_drawing(call: Call, name: str) -> tuple[dict[str, Any], dict[str, Any]]:
    """The example's answer as it is, and without `formats`."""
    example = dict(OPERATIONS[name].example)
    drawn = call(name, **example)["result"]
    del example["formats"]
    return drawn, call(name, **example)["result"]


@pytest.mark.parametrize("name", ASKED)
def test_only_what_is_asked_for_is_drawn(call: Call, name: str) -> None:
    """Without `formats` the answer is the same but for its drawing, which is null."""
    drawn, plain = without_drawing(call, name)
    assert drawn.pop("svg").startswith("<svg ")
    assert plain.pop("svg") is None
    assert drawn == plain


def words(drawn: Drawn) -> set[str]:
    """The texts of a drawing."""
    return {text.words for text in drawn.texts}


def scale_of(drawn: Drawn, unit: float) -> float:
    """Millimetres of paper for one unit, by the scale that a drawing says."""
    (said,) = (text.split() for text in words(drawn) if text.startswith("Scale "))
    return unit * float(said[1]) / float(said[3])


def test_a_taper_over_rolls_is_to_scale() -> None:
    """Rolls of 12 mm, their measures and the rise of the blocks, each by the scale said."""
    drawn = read(drawing("tapers.over-rolls"))
    scale = scale_of(drawn, 1.0)
    rolls = [line for line in drawn.lines if line.is_closed and len(line.coords) > 50]
    assert len(rolls) == 4
    for roll in rolls:
        assert roll.bounds[2] - roll.bounds[0] == pytest.approx(12.0 * scale, rel=1e-4)
    for measure, level in ((60.21, max), (67.695, min)):
        row = level(roll.centroid.y for roll in rolls)
        pair = [roll for roll in rolls if roll.centroid.y == pytest.approx(row)]
        across = max(r.bounds[2] for r in pair) - min(r.bounds[0] for r in pair)
        assert across == pytest.approx(measure * scale, rel=1e-4)
    heights = {round(roll.centroid.y, 3) for roll in rolls}
    assert max(heights) - min(heights) == pytest.approx(75.0 * scale, rel=1e-4)
    assert {"M1 = 60.210 mm", "M2 = 67.695 mm", "H = 75.000 mm"} <= words(drawn)


@pytest.mark.parametrize(("hole", "diameter"), [(59, 8.5), (75, 4.0)])
def test_a_center_bears_where_it_is_drawn(hole: float, diameter: float) -> None:
    """Dots stand on the circle of contact: at the mouth, or at the small end."""
    drawn = read(answered("centers.contact", hole_included_angle=hole))
    dots = sorted(ink.centroid.x for ink in drawn.inks if len(ink.exterior.coords) > 20)
    assert max(dots) - min(dots) >= diameter * scale_of(drawn, 1.0) - 1e-3
    apart = {round(b - a, 2) for a in dots for b in dots}
    assert round(diameter * scale_of(drawn, 1.0), 2) in apart


@pytest.mark.parametrize(("surface", "tapped"), [("external", 53.13), ("internal", 233.13)])
def test_the_tap_comes_from_its_side(surface: str, tapped: float) -> None:
    """Its arrow stands on the side to tap from, and points at the axis."""
    drawn = read(answered("runout.indicate", surface=surface))
    rings = [line for line in drawn.lines if line.is_closed and len(line.coords) > 50]
    center = rings[0].centroid
    arrows = [ink for ink in drawn.inks if len(ink.exterior.coords) == 4]
    far = max(arrows, key=lambda ink: ink.centroid.distance(center))
    tip = far.exterior.coords[0]
    side = math.degrees(math.atan2(center.y - far.centroid.y, far.centroid.x - center.x)) % 360.0
    assert side == pytest.approx(tapped, abs=0.1)
    assert center.distance(far.centroid) > math.hypot(tip[0] - center.x, tip[1] - center.y)


def test_a_set_up_is_drawn_as_it_stands() -> None:
    """The plate stands at the angle of its stacks, and a raised left is seen at the left."""
    plate = PlateOnStacks(5.0, math.radians(30.0), (2.0, 0.85), low=(0.25, 0.1), raised="left")
    assert math.degrees(standing(plate).turn) == pytest.approx(30.0)
    drawn = read(drawing("two stacks"))
    places = {text.words: text.shape.centroid for text in drawn.texts}
    assert places["High stack 2.85"].x < places["Low stack 0.35"].x
    assert {"2", "0.85", "0.25", "0.1", "raised: left"} <= set(places)
    sizes = [line.bounds for line in drawn.lines if len(line.coords) == 5]
    scale = scale_of(drawn, 25.4)
    heights = {round((bottom - top) / scale, 4) for _, top, _, bottom in sizes}
    assert {2.0, 0.85, 0.25, 0.1} <= heights


def test_a_wheel_is_drawn_over_its_least_gap() -> None:
    """The heavy line is as long as the gap that it names."""
    result = OPERATIONS["clearance.tilted-plate"]
    outcome = result.calculate(result.request.model_validate(dict(result.example)))
    gap = outcome.result.smallest_gap.gap
    drawn = read(drawing("clearance.tilted-plate"))
    assert f"least gap {gap:.4f} in" in words(drawn)
    lengths = [line.length for line in drawn.lines if len(line.coords) == 2]
    assert any(length == pytest.approx(gap * scale_of(drawn, 25.4), abs=0.01) for length in lengths)
