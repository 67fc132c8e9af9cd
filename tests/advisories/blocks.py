"""Advisories of gauge blocks: stacks, checks of a stack, budgets."""

from advisories.row import Request, Row, caution, note, stop

_ANGLE, _BUDGET, _CHECK = "blocks.angle-stack", "blocks.budget", "blocks.check"
_DAY, _STACK, _STACKS = "blocks.day", "blocks.stack", "blocks.stacks"

#: A stack checked by its height, not by an angle.
_BY_HEIGHT: Request = {"angle": None, "center_distance": None, "height": 2.5}
_RIGHT: Request = {"blocks": [2.0, 0.4, 0.1]}
#: Two blocks of 0.1 in, told apart by their marks.
_BOX: Request = {
    "set": None,
    "box": [
        {"size": 0.1, "mark": "A"},
        {"size": 0.1, "mark": "B", "deviation": 0.00002},
        {"size": 2},
        {"size": 0.4},
    ],
}


def _heights(*heights: float) -> list[Request]:
    return [{"name": f"h{place}", "height": height} for place, height in enumerate(heights)]


def _jobs(*heights: float) -> list[Request]:
    """Jobs of one slot."""
    return [
        {"job": f"j{place}", "bench": f"b{place}", "slot": 1, "height": height}
        for place, height in enumerate(heights)
    ]


_NINE = (1.0, 1.1111, 1.2222, 1.3333, 1.4444, 1.5555, 1.6666, 1.7777, 1.8888)
_SEVEN = (2.8901, 2.8696, 0.6414, 0.7122, 2.5887, 2.3399, 2.1743)

_CHECKS: tuple[Row, ...] = (
    stop(
        "wrong-stack",
        _CHECK,
        {},
        _RIGHT,
        "not what is wanted",
        "0.1001 in place of 0.1",
    ),
    stop(
        "wrong-stack",
        _CHECK,
        _BY_HEIGHT | _RIGHT | {"measured_height": 2.50006},
        {"measured_height": 2.50005},
        "not what was read from its blocks",
        "0.1001 in place of 0.1",
    ),
    caution(
        "no-single-mistake",
        _CHECK,
        {"angle": "30 06 00"},
        {"angle": 30},
        "what is wanted",
    ),
    caution(
        "no-single-mistake",
        _CHECK,
        _BY_HEIGHT | _RIGHT | {"measured_height": 2.50005, "measurement_error_limit": 0.00001},
        {"measured_height": 2.5001},
        "what was measured",
    ),
    caution(
        "several-explanations",
        _CHECK,
        _BY_HEIGHT | {"set": "inch-83", "blocks": [2.0, 0.05], "height": 2.2},
        {"blocks": [2.0, 0.1001]},
        "equally well",
    ),
    note(
        "low-stack-not-searched",
        _CHECK,
        {"blocks": [2.0, 0.5, 0.1001], "low_stack": 0.1},
        {"low_stack": 0},
        "low_blocks",
    ),
    note(
        "measurement-too-coarse",
        _CHECK,
        _BY_HEIGHT | _RIGHT | {"measured_height": 2.50005},
        {"measured_height": 2.50004},
        "0.1001 in place of 0.1",
    ),
    note(
        "one-of-several-taken",
        _CHECK,
        _BY_HEIGHT | _BOX | _RIGHT,
        {"box": _BOX["box"][1:]},
        "mark B, deviation 0.00002",
    ),
)

_BUILT: tuple[Row, ...] = (
    caution("many-blocks", _STACK, {"height": 5.4379}, {"height": 5.4}, "5 blocks", "4 wringing"),
    caution(
        "many-angle-blocks", _ANGLE, {"angle": "37 22 00"}, {"angle": "37 21 00"}, "6 angle blocks"
    ),
    note(
        "mixed-materials",
        _STACK,
        {"set": None, "box": [{"size": 2, "material": "ceramic"}, {"size": 0.5}]},
        {"box": [{"size": 2}, {"size": 0.5}]},
    ),
    note(
        "mixed-materials",
        _STACK,
        {
            "set": None,
            "height": 2.55,
            "wear_ends": "one-end",
            "box": [
                {"size": 2},
                {"size": 0.5},
                {"size": 0.05, "wear_block": True, "material": "tungsten-carbide"},
            ],
        },
        {"box": [{"size": 2}, {"size": 0.5}, {"size": 0.05, "wear_block": True}]},
    ),
    caution(
        "no-such-height", _STACKS, {"heights": _heights(1, 99)}, {"heights": _heights(1, 9)}, "h1"
    ),
    caution(
        "no-such-height",
        _DAY,
        {"jobs": _jobs(1, 99)},
        {"jobs": _jobs(1, 9)},
        "In slot 1",
        "j1",
    ),
    caution(
        "not-all-heights",
        _STACKS,
        {"heights": _heights(0.1001, 0.1001)},
        {"heights": _heights(0.1001, 0.1002)},
        "h1",
    ),
    caution(
        "not-all-heights",
        _DAY,
        {"jobs": _jobs(0.1001, 0.1001)},
        {"jobs": _jobs(0.1001, 0.1002)},
        "In slot 1",
        "j1",
    ),
    note(
        "bound-reached",
        _STACK,
        {"height": 3.93701, "aim": "actual", "max_blocks": 7},
        {"max_blocks": 6},
        "Stacks of up to 6 ",
        "up to 7",
    ),
    note(
        "bound-reached",
        _STACKS,
        {"heights": _heights(*_NINE), "max_blocks": 6},
        {"heights": _heights(*_NINE[:-1])},
        "at most",
    ),
    note("bound-reached", _DAY, {"jobs": _jobs(*_SEVEN)}, {"jobs": _jobs(*_SEVEN[:-1])}),
)

_BUDGETS: tuple[Row, ...] = (
    caution(
        "temperature-out-of-range",
        _BUDGET,
        {"temperature_celsius": 30.1},
        {"temperature_celsius": 30},
        "10 to 30 °C",
        "30.1 °C",
    ),
    caution(
        "temperature-out-of-range",
        _BUDGET,
        {"temperature_celsius": 9.9},
        {"temperature_celsius": 10},
        "9.9 °C",
    ),
    note(
        "materials-grow-apart", _BUDGET, {"temperature_celsius": 20.1}, {"temperature_celsius": 20}
    ),
    note("materials-grow-apart", _BUDGET, {}, {"plate_material": "tungsten-carbide"}),
    note("materials-grow-apart", _BUDGET, {}, {"plate_material": None}),
    note(
        "difference-not-counted",
        _BUDGET,
        {"plate_material": None, "temperature_difference_celsius": 0.1},
        {"plate_material": "steel"},
    ),
    note(
        "difference-not-counted",
        _BUDGET,
        {"plate_material": None, "temperature_difference_celsius": 0.1},
        {"temperature_difference_celsius": 0},
    ),
    note(
        "block-in-use",
        _BUDGET,
        {
            "blocks": None,
            "calibrated_blocks": [{"size": 50, "expanded_uncertainty": 0.0001, "state": "in-use"}],
        },
        {"calibrated_blocks": [{"size": 50, "expanded_uncertainty": 0.0001}]},
    ),
    note("stands-not-wrung", _BUDGET, {"wrung_to_base": False}, {"wrung_to_base": True}),
)

_OTHER_UNITS: tuple[Row, ...] = (
    caution(
        "set-of-other-units",
        _STACK,
        {"set": "metric-88", "height": 1},
        {"set": "inch-81"},
        "metric blocks",
        "is in",
    ),
    caution(
        "set-of-other-units",
        _STACKS,
        {"set": "metric-88", "heights": _heights(1)},
        {"set": "inch-81"},
        "metric blocks",
    ),
    caution(
        "set-of-other-units",
        _DAY,
        {"set": "metric-88", "jobs": _jobs(1)},
        {"set": "inch-81"},
    ),
    caution(
        "set-of-other-units",
        _CHECK,
        _BY_HEIGHT | {"units": "mm", "height": 1.27, "blocks": [1.27]},
        {"set": "metric-88"},
    ),
    caution(
        "size-of-other-units",
        _STACK,
        {"set": None, "sizes": [1, 1.5]},
        {"sizes": [2, 0.5]},
        "1.5 is a size of metric sets",
    ),
    caution(
        "size-of-other-units",
        _STACKS,
        {"set": None, "sizes": [1, 7.5], "heights": _heights(1)},
        {"sizes": [1, 0.5]},
    ),
    caution(
        "size-of-other-units",
        _DAY,
        {"set": None, "sizes": [1, 7.5], "jobs": _jobs(1)},
        {"sizes": [1, 0.5]},
    ),
    caution(
        "size-of-other-units",
        _CHECK,
        _BY_HEIGHT | {"set": None, "sizes": [1, 7.5], "height": 1, "blocks": [1]},
        {"sizes": [1, 0.5]},
    ),
    caution(
        "size-of-other-units",
        _BUDGET,
        {"units": "in", "grade": "asme-0", "blocks": [7.5, 1]},
        {"blocks": [0.5, 1]},
    ),
)

_CALIBRATED = (
    caution(
        "budget-bends",
        "blocks.calibration",
        {
            "standard_degrees_of_freedom": None,
            "comparator_random_degrees_of_freedom": None,
            "temperature_difference_inexact_percent": 0,
            "temperature_cycle_celsius": 0.35,
        },
        {"temperature_cycle_celsius": 0.3465},
        "Monte Carlo",
    ),
    caution("calibration-old", "blocks.since", {"years_since": 4.01}, {"years_since": 4}),
)
ROWS = (*_CHECKS, *_BUILT, *_BUDGETS, *_OTHER_UNITS, *_CALIBRATED)
