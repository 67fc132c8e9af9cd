"""Advisories of sine settings: the plate's angle, its stack, what is known of its errors."""

from advisories.row import Request, Row, caution, note

_ANGLE, _SETTING, _TABLE = "sine.angle", "sine.setting", "sine.table"
_TAPER_SETTING, _TAPER_ANGLE, _LOW = "sine.taper-setting", "sine.taper-angle", "sine.low-stack"
_CORRECTION, _COMPOUND = "sine.correction", "sine.compound"
_REQUIREMENTS, _UNCERTAINTY = "sine.requirements", "sine.uncertainty"

#: One block that is 2.5 in long, half the center distance: exact at 30°, and nowhere else.
_ONE_BLOCK: Request = {"set": None, "sizes": [2.5]}


def _slopes(x_angle: float, y_angle: float) -> Request:
    return {"kind": "projected-angles", "x_angle": x_angle, "y_angle": y_angle}


_STEEP: tuple[Row, ...] = (
    caution("steep-angle", _SETTING, {"angle": 45.2}, {"angle": 45}, "Past 45°", "44.8000°"),
    caution("steep-angle", _SETTING, {"steep_angle": 29.9}, {"steep_angle": 30}, "Past 29.9°"),
    caution("steep-angle", _ANGLE, {"height": 3.536}, {"height": 3.535}, "Past 45°"),
    caution(
        "steep-angle",
        _TABLE,
        {"first_angle": 44, "last_angle": 45.4, "angle_step": 0.2},
        {"last_angle": 45},
        "Past 45°",
    ),
    caution("steep-angle", _TAPER_SETTING, {"taper_per_foot": 24.1}, {"taper_per_foot": 24}),
    caution("steep-angle", _TAPER_ANGLE, {"height": 3.536}, {"height": 3.535}),
    caution("steep-angle", _LOW, {"angle": 45.2}, {"angle": 45}),
    caution("steep-angle", _UNCERTAINTY, {"angle": 45.2}, {"angle": 45}),
    caution("steep-angle", _COMPOUND, {"orientation__x_angle": 45.2}, {"orientation__x_angle": 45}),
    caution("steep-angle", _COMPOUND, {"orientation__y_angle": 49.2}, {"orientation__y_angle": 49}),
)

_BELOW_ZERO: tuple[Row, ...] = (
    caution("stack-below-zero", _SETTING, {"base_step": -2.501}, {"base_step": -2.5}, "be 0.001 "),
    caution("stack-below-zero", _TABLE, {"last_angle": 40, "base_step": -0.0001}, {"base_step": 0}),
    caution("stack-below-zero", _TAPER_SETTING, {"base_step": -0.722}, {"base_step": -0.7215}),
    caution("stack-below-zero", _REQUIREMENTS, {"base_step": -2.501}, {"base_step": -2.5}),
    caution("stack-below-zero", _UNCERTAINTY, {"base_step": -2.501}, {"base_step": -2.5}),
    caution(
        "stack-below-zero",
        _CORRECTION,
        {"blocks": None, "set": None, "base_step": -2.4999},
        {"base_step": -2.4997},
    ),
)

_ABOVE: tuple[Row, ...] = (
    caution(
        "stack-above-center-distance",
        _SETTING,
        {"base_step": 2.501},
        {"base_step": 2.5},
        "5.001",
        "distance 5 in;",
    ),
    caution(
        "stack-above-center-distance",
        _TABLE,
        {"last_angle": 40, "base_step": 1.787},
        {"base_step": 1.786},
    ),
    caution(
        "stack-above-center-distance", _TAPER_SETTING, {"base_step": 4.279}, {"base_step": 4.278}
    ),
    caution(
        "stack-above-center-distance", _LOW, {"angle": 30, "base_step": 2.5001}, {"base_step": 2.5}
    ),
    caution("stack-above-center-distance", _REQUIREMENTS, {"base_step": 2.501}, {"base_step": 2.5}),
    caution("stack-above-center-distance", _UNCERTAINTY, {"base_step": 2.501}, {"base_step": 2.5}),
    caution(
        "stack-above-center-distance",
        _CORRECTION,
        {"blocks": None, "set": None, "base_step": 2.5003},
        {"base_step": 2.5002},
    ),
    caution("stack-above-center-distance", _COMPOUND, {"base_step": 2.765}, {"base_step": 2.763}),
    caution("stack-above-center-distance", _COMPOUND, {"upper_step": 2.501}, {"upper_step": 2.5}),
)

_SMALL: tuple[Row, ...] = (
    note(
        "small-stack", _SETTING, {"angle": 1.145}, {"angle": 1.147}, "0.0999 in", "sine.low-stack"
    ),
    note(
        "small-stack",
        _SETTING,
        {"units": "mm", "center_distance": 100, "angle": 0.572},
        {"angle": 0.573},
        "mm",
    ),
    note("small-stack", _TABLE, {"last_angle": 40, "angle_step": 1}, {"first_angle": 2}),
    note("small-stack", _TABLE, {"last_angle": 40, "first_angle": 1.145}, {"first_angle": 1.147}),
    note("small-stack", _TAPER_SETTING, {"base_step": -0.622}, {"base_step": -0.621}),
    note("small-stack", _REQUIREMENTS, {"angle": 1.145}, {"angle": 1.147}),
    note("small-stack", _UNCERTAINTY, {"angle": 1.145}, {"angle": 1.147}),
    note(
        "small-stack",
        _CORRECTION,
        {"blocks": None, "set": None, "base_step": -2.4},
        {"base_step": -2.399},
    ),
    note(
        "small-stack",
        _COMPOUND,
        {"set": None, "orientation__x_angle": 1.145},
        {"orientation__x_angle": 1.147},
    ),
)

_NOTHING: tuple[Row, ...] = (
    caution("rounds-to-nothing", _SETTING, {"angle": 0.000572}, {"angle": 0.000574}, "0.00005 in"),
    caution(
        "rounds-to-nothing",
        _TABLE,
        {"first_angle": 0.000572, "last_angle": 20},
        {"first_angle": 0.000574},
    ),
    caution("rounds-to-nothing", _TAPER_SETTING, {"base_step": -0.7215}, {"base_step": -0.72147}),
    caution("rounds-to-nothing", _LOW, {"angle": 0.000572}, {"angle": 0.000574}),
    caution(
        "rounds-to-nothing",
        _COMPOUND,
        {"set": None, "orientation__x_angle": 0.000572},
        {"orientation__x_angle": 0.000574},
    ),
)

_FAR_OFF: tuple[Row, ...] = (
    caution("stack-far-off", _LOW, _ONE_BLOCK | {"angle": "30 01 00.1"}, {"angle": "30 00 59.9"}),
    caution("stack-far-off", _LOW, _ONE_BLOCK | {"angle": "29 58 59.9"}, {"angle": "29 59 00.1"}),
    caution(
        "stack-far-off",
        _LOW,
        _ONE_BLOCK | {"angle": "30 02 00"},
        {"tolerance_arcsec": 180},
        "120″",
    ),
    caution(
        "stack-far-off",
        _COMPOUND,
        _ONE_BLOCK | {"orientation": _slopes(30.0167, 0)},
        {"orientation": _slopes(30.0166, 0)},
        "60″",
    ),
    caution(
        "stack-far-off",
        _REQUIREMENTS,
        {"resolution": None, "height": 2.5013},
        {"height": 2.5012},
        "62″",
    ),
    caution(
        "stack-far-off",
        _UNCERTAINTY,
        {"resolution": None, "height": 2.4987},
        {"height": 2.4988},
        "-62″",
    ),
    caution(
        "stack-far-off",
        _CORRECTION,
        {"set": None, "sizes": [2, 0.5], "measured_error_arcsec": 60.1},
        {"measured_error_arcsec": 59.9},
        "60″",
    ),
    caution(
        "stack-far-off",
        _CORRECTION,
        {"set": None, "sizes": [2, 0.5], "measured_error_arcsec": 60.1},
        {"tolerance_arcsec": 90},
    ),
)

_OF_ERRORS: tuple[Row, ...] = (
    caution(
        "let-it-soak",
        _REQUIREMENTS,
        {"block_material": "tungsten-carbide", "temperature_celsius": 32},
        {"temperature_celsius": 31.9},
        "32 °C",
    ),
    caution(
        "let-it-soak",
        _REQUIREMENTS,
        {"block_material": "tungsten-carbide", "temperature_celsius": 8},
        {"temperature_celsius": 8.01},
        "8 °C",
    ),
    caution(
        "one-term-dominates",
        _UNCERTAINTY,
        {"particle": 0.0001936},
        {"particle": 0.0001934},
        "`particle` makes 50 %",
    ),
    caution(
        "budget-bends",
        _UNCERTAINTY,
        {"angle": 85, "stack_error_limit": 0.0136},
        {"stack_error_limit": 0.0135},
        "5.1 %",
    ),
    caution(
        "look-for-a-wrong-block",
        _CORRECTION,
        {"measured_error_arcsec": 60.1},
        {"measured_error_arcsec": 60},
        "60″",
    ),
    caution(
        "look-for-a-wrong-block",
        _CORRECTION,
        {"measured_error_arcsec": -60.1},
        {"measured_error_arcsec": -60},
    ),
    note("correct-the-cause", _CORRECTION, {}, None),
)

_HOW_IT_STANDS: tuple[Row, ...] = (
    caution(
        "vee-along-the-plate",
        _TAPER_SETTING,
        {"holding": "in-a-vee"},
        {"holding": "between-centers"},
    ),
    note("two-stacks", _LOW, {"angle": 0.572}, {"angle": 0.573}),
    caution(
        "turn-the-work",
        _COMPOUND,
        {"base_raised_side": "back", "upper_raised_side": "left"},
        {"base_raised_side": "front"},
    ),
    caution(
        "edge-turns",
        _COMPOUND,
        {"set": None, "orientation": _slopes(30, 0.0201)},
        {"orientation": _slopes(30, 0.02)},
        "along X",
        "0.0100",
    ),
    note(
        "which-side-is-hinged", _COMPOUND, {}, {"base_raised_side": "front"}, "front and the left"
    ),
    note("two-stacks-at-once", _COMPOUND, {"set": None}, {"set": "inch-81"}),
    note("two-stacks-at-once", _COMPOUND, {"set": None}, {"orientation": _slopes(30, 0)}),
    note(
        "already-level",
        _COMPOUND,
        {"set": None, "orientation": _slopes(0, 0)},
        {"orientation": _slopes(0, 0.001)},
    ),
)

_BLOCKS: tuple[Row, ...] = (
    caution("set-of-other-units", _LOW, {"set": "metric-88"}, {"set": "inch-81"}, "metric blocks"),
    caution("set-of-other-units", _COMPOUND, {"set": "metric-88"}, {"set": "inch-81"}),
    caution(
        "set-of-other-units",
        _CORRECTION,
        {"units": "mm", "center_distance": 127, "blocks": [50.8, 12.7]},
        {"blocks": None},
    ),
    caution(
        "size-of-other-units",
        _LOW,
        {"angle": 30, "set": None, "sizes": [2, 0.5, 7.5]},
        {"sizes": [2, 0.5, 0.1]},
        "7.5",
    ),
    caution(
        "size-of-other-units",
        _COMPOUND,
        {"set": None, "sizes": [2, 0.5, 7.5], "orientation": _slopes(30, 0)},
        {"sizes": [2, 0.5, 0.1]},
    ),
    caution(
        "size-of-other-units",
        _CORRECTION,
        {"set": None, "sizes": [2, 0.5, 7.5]},
        {"sizes": [2, 0.5, 0.1]},
    ),
)

_MEASURED, _CALIBRATED, _PIN = "sine.measured-angle", "sine.center-distance", "sine.over-pin"
_AT_14 = {"angle": 14.9, "height": 1.2857}
_AT_15 = {"angle": 15.1, "height": 1.3025}

_MEASURING: tuple[Row, ...] = (
    caution(
        "steep-angle",
        _MEASURED,
        {"blocks": [3.5356]},
        {"blocks": [3.5355]},
        "the angle's complement",
    ),
    caution(
        "far-from-level",
        _MEASURED,
        {"indicator_rise": 0.00117},
        {"indicator_rise": 0.00116},
        "120.7″",
    ),
    note("along-the-plate", _MEASURED, {}, {"holding": "between-centers"}),
    caution("size-of-other-units", _MEASURED, {"blocks": [1.5, 1]}, {"blocks": [0.5, 1]}),
    caution(
        "ill-conditioned",
        _CALIBRATED,
        {"settings": [_AT_14]},
        {"settings": [_AT_15]},
        "At 14.9°",
        "0.00009 in",
    ),
    caution(
        "ill-conditioned",
        _CALIBRATED,
        {"settings": [_AT_15, {"angle": 25, "height": 2.1132}]},
        {"settings": [_AT_15, {"angle": 25.2, "height": 2.12904}]},
        "within 9.9° of one another",
    ),
    note("face-lean-not-told", _CALIBRATED, {"settings": [_AT_15]}, {"settings": [_AT_15, _AT_14]}),
    caution("odd-size", _PIN, {"pin_diameter": 100.1, "pin_from_stop": 60}, {"pin_diameter": 100}),
)

ROWS = (
    *_STEEP,
    *_BELOW_ZERO,
    *_ABOVE,
    *_SMALL,
    *_NOTHING,
    *_FAR_OFF,
    *_OF_ERRORS,
    *_HOW_IT_STANDS,
    *_BLOCKS,
    *_MEASURING,
)
