"""Advisories of a tilted plate under the wheel."""

from advisories.row import Request, Row, caution, note, stop

_PLATE = "clearance.tilted-plate"


def _dog(diameter: float) -> list[Request]:
    return [{"name": "dog", "diameter": diameter, "length": 0.5}]


ROWS: tuple[Row, ...] = (
    stop(
        "fouling",
        _PLATE,
        {"fixture__stick_out": 0.394},
        {"fixture__stick_out": 0.395},
        "foul by 0.0003 in",
        "new wheel: wheel and nose",
    ),
    stop(
        "fouling",
        _PLATE,
        {"fixture__stick_out": 0.394, "fixture__limit_stick_out": 0.5},
        {"fixture__stick_out": 0.395},
        "foul by 0.0003 in",
        "0.5603 in",
        "may stand out 0.5000 in",
    ),
    caution(
        "gap-too-small",
        _PLATE,
        {"gap_wanted": 0.2202},
        {"gap_wanted": 0.2201},
        "gap is 0.2202 in",
        "0.2202 in is wanted",
    ),
    stop(
        "turning-part-fouls",
        _PLATE,
        {"fixture__turning_parts": _dog(3.001)},
        {"fixture__turning_parts": _dog(3)},
        "its dog would meet",
    ),
    stop(
        "no-room-under-the-wheel",
        _PLATE,
        {"room_under_wheel": 6.72},
        {"room_under_wheel": 6.73},
        "0.0033 in too high",
    ),
    stop(
        "stick-out-past-its-limit",
        _PLATE,
        {"fixture__limit_stick_out": 0.749},
        {"fixture__limit_stick_out": 0.75},
        "0.7500 in",
        "0.7490 in",
    ),
    caution(
        "guard-left-out",
        _PLATE,
        {"wheel__guard": None},
        {"wheel__guard": {"length": 8, "width": 2.5, "lower_edge_below_spindle": 1}},
    ),
    note("wear-left-out", _PLATE, {"wheel__worn_diameter": None}, {"wheel__worn_diameter": 5.5}),
    note("prove-by-hand", _PLATE, {}, None, "full turn of the work"),
    caution("magnetic-holding", _PLATE, {}, None, "contact area"),
    caution("wheel-safety", _PLATE, {}, None, "1910.215"),
)
