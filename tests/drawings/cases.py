"""Every drawing of every example, and drawings at the ends of what they may be asked."""

import math
from collections.abc import Callable, Iterator
from copy import deepcopy
from functools import cache, partial
from typing import Any

from halfangle_service.registry import load_registry
from halfangle_service.trade.set_up_drawing.plate import PlateOnStacks
from halfangle_service.trade.set_up_drawing.setting import SetUpView, set_up_svg
from halfangle_service.trade.set_up_drawing.work import ConeOnPlate, FaceOnPlate, Work
from halfangle_service.trade.units import Units

OPERATIONS = load_registry().operations
_LONG = "a name that is longer than any plate, work or wheel on which it might be written"


def drawings_in(value: Any) -> Iterator[str]:
    """Every drawing within a result."""
    if isinstance(value, str) and value.startswith("<svg"):
        yield value
    elif isinstance(value, dict):
        for part in value.values():
            yield from drawings_in(part)
    elif isinstance(value, list):
        for part in value:
            yield from drawings_in(part)


def answered(name: str, **changes: Any) -> str:
    """The drawing of an operation's answer to its example with changes."""
    operation = OPERATIONS[name]
    example = deepcopy(dict(operation.example))
    for key, value in changes.items():
        within = isinstance(value, dict) and isinstance(example.get(key), dict)
        example[key] = {**example[key], **value} if within else value
    outcome = operation.calculate(operation.request.model_validate(example))
    (drawing,) = drawings_in(outcome.result.model_dump(mode="json"))
    return drawing


def _examples() -> dict[str, Callable[[], str]]:
    """The drawing of each operation and of each example's answer."""
    found: dict[str, Callable[[], str]] = {}
    for name, operation in OPERATIONS.items():
        if operation.drawing:
            found[f"{name}, its own"] = partial(str, operation.drawing)
        if "svg" in operation.result.model_fields:
            found[name] = partial(answered, name)
    return found


def _set_up(
    angle: float,
    high: tuple[float, ...],
    work: Work | None = None,
    units: Units = "in",
    distance: float = 5.0,
    **plate: Any,
) -> Callable[[], str]:
    stands = PlateOnStacks(distance, math.radians(angle), high, **plate)
    return lambda: set_up_svg([SetUpView(stands, work)], units)


def _compound() -> str:
    base = PlateOnStacks(5.0, math.radians(15.0), (1.0, 0.2941), raised="back", hinged=True)
    upper = PlateOnStacks(5.0, math.radians(18.0), (1.0, 0.5, 0.0451), raised="left", hinged=True)
    work = FaceOnPlate(mark="mark at the front")
    views = [SetUpView(base, None, "Base plate, seen from the right")]
    views.append(SetUpView(upper, work, "Upper plate, seen from the front"))
    return set_up_svg(views, "in", width=180.0, headed=False)


_CENTER = ConeOnPlate(math.radians(30.0), 0.75, 0.05, name="60° center", mark="mark up")
_TEN = (0.1, 0.0501, 0.0502, 0.0503, 0.0504, 0.1, 0.0505, 0.0506, 0.0507, 0.0508)
_EXTREMES: dict[str, Callable[[], str]] = {
    "one stack": _set_up(30.0, (2.0, 0.5), _CENTER, raised="right"),
    "two stacks": _set_up(30.0, (2.0, 0.85), FaceOnPlate(), low=(0.25, 0.1), raised="left"),
    "ten blocks of 0.6 in": _set_up(7.0, _TEN, ConeOnPlate(math.radians(7.0), 1.5, 0.5)),
    "half a degree": _set_up(0.5, (0.0436,), FaceOnPlate(), raised="front"),
    "89 degrees": _set_up(89.0, (4.9992,), FaceOnPlate(quarter=True), raised="right"),
    "tiny work": _set_up(5.0, (26.1,), ConeOnPlate(math.radians(5.0), 2.0, 1.0), "mm", 300.0),
    "a quarter turned": _set_up(
        30.0, (2.0, 0.5), ConeOnPlate(math.radians(60.0), 1.5, 0.1, quarter=True)
    ),
    "long words": _set_up(20.0, (1.7101,), FaceOnPlate(name=_LONG, mark=_LONG), raised="right"),
    "other scripts": _set_up(20.0, (1.7101,), FaceOnPlate(name="<script>שלום 測定</script>")),
    "a compound plate": _compound,
    "a worn wheel of 300 mm": lambda: answered(
        "clearance.tilted-plate",
        wheel={"diameter": 11.811, "worn_diameter": 9.0, "flange_diameter": 4.0},
    ),
    "across the travel": lambda: answered("clearance.tilted-plate", tilt_direction="across-travel"),
    "parts of long names": lambda: answered(
        "clearance.tilted-plate",
        fixture={"turning_parts": [{"name": _LONG[:40], "diameter": 3, "length": 0.5}]},
    ),
    "a steep cone": lambda: answered(
        "clearance.tilted-plate", included_angle=75, plate={"low_roll_from_end": 0.2}
    ),
    "a small magnification": lambda: answered("inspection.overlay", magnification=0.5),
    "a large bore": lambda: answered(
        "runout.indicate", units="mm", surface="internal", indicator_resolution=0.001
    ),
    "an inch hole": lambda: answered(
        "centers.hole", units="in", type="bell", mouth_diameter=0.2, ball_diameter=0.18
    ),
    "a wide hole": lambda: answered("centers.contact", hole_included_angle=75),
    "a blunt cone over rolls": lambda: answered(
        "tapers.over-rolls-nominal",
        taper_per_foot=None,
        half_angle=30,
        large_diameter=1.5,
        length=1,
        stack_rise=0.4,
        standing_on="large-end",
    ),
    "unequal arms": lambda: answered("measuring.chord", first_center_distance=10, angle=40),
    "over both rolls": lambda: answered("measuring.chord", angle=150, measure_is="over-both-rolls"),
    "a stop at the high end": lambda: answered(
        "sine.over-pin", stop_at="high-end", point_over_face=12, angle=20
    ),
    "a diamond that digs in": lambda: answered("wheels.diamond", diamond_height=-0.8, nib_lean=-8),
    "two flanks": lambda: answered(
        "wheels.flank",
        other_side={"kind": "face", "face_angle": 15, "rise": 0.05},
        wheel_width=1.25,
        edge_flat=0.1,
    ),
}


_EXAMPLES = _examples()
_DRAWN = {**_EXAMPLES, **_EXTREMES}
NAMES = list(_DRAWN)
#: What is rendered: every drawing of every example, and set-ups, which no example has.
RENDERED = [*_EXAMPLES, *list(_EXTREMES)[: list(_EXTREMES).index("a worn wheel of 300 mm")]]


@cache
def drawing(name: str) -> str:
    """A drawing by its name."""
    return _DRAWN[name]()
