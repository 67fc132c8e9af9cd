"""Advisories of the measuring tools of the bench."""

from advisories.row import Row, caution, note

_BORE, _CHORD, _SMALL = "measuring.bore", "measuring.chord", "measuring.small-angle"
_SQUARE, _LEVER = "measuring.square", "measuring.lever-tip"

ROWS: tuple[Row, ...] = (
    caution(
        "ill-conditioned",
        _BORE,
        {"lower_ball_depth": 53.86},
        {"lower_ball_depth": 53.84},
        "29.98°",
        "counts by 173 %",
    ),
    caution("odd-size", _BORE, {"lower_ball_diameter": 100.1}, {"lower_ball_diameter": 100}),
    caution("ill-conditioned", _CHORD, {"angle": 120.1}, {"angle": 119.9}, "29.95° off it", "8.3″"),
    note(
        "sine-bar-surer",
        _CHORD,
        {"first_center_distance": 10, "angle": 32.5},
        {"angle": 32.6},
        "4.9″",
    ),
    note("zero-not-told", _SMALL, {}, {"turned_tilt_reading": -2.0}),
    caution(
        "error-within-uncertainty",
        _SQUARE,
        {"second_rise": -0.000523},
        {"second_rise": -0.000522},
        "1.3″",
    ),
    caution(
        "cosine-error",
        _LEVER,
        {"lever_length": None, "tip_angle": 8.12},
        {"tip_angle": 8.1},
        "1.0 %",
    ),
    note(
        "pear-tip-trusted",
        _LEVER,
        {"tip_form": "pear", "tip_angle": 20},
        {"tip_form": "ball"},
        "30°",
    ),
)
