"""Advisories of how a request was read, which are the same for every operation."""

from advisories.row import Row, note

_TEXT, _SETTING, _SOLVE = "tapers.angle", "sine.setting", "tapers.solve"
_DECIMAL, _NAME = "decimal-degrees-read", "designation-read"

ROWS: tuple[Row, ...] = (
    note(_DECIMAL, _SETTING, {"angle": 8.01}, {"angle": 8}, "angle 8.01", "8°01'", '"8 01"'),
    note(_DECIMAL, _SETTING, {"angle": 8.59}, {"angle": 8.6}, "8°35'24", '"8 59"'),
    note(_DECIMAL, _SETTING, {"angle": 8.26}, {"angle": 8.25}, '"8 26"'),
    note(_DECIMAL, _SETTING, {"angle": 8.18}, {"angle": 8.181}, '"8 18"'),
    note(_DECIMAL, _SETTING, {"angle": 8.18}, {"angle": "8 18"}, '"8 18"'),
    note(_DECIMAL, _TEXT, {"text": "8.18° included"}, {"text": "8.25° included"}, '"8 18"'),
    note(
        _NAME,
        _SOLVE,
        {"taper_per_foot": None, "designation": "MT2"},
        {"designation": "morse-2"},
        "'MT2' was read as morse-2",
    ),
    note(_NAME, _TEXT, {"text": "MT2"}, {"text": "morse-2"}, "'MT2' was read as morse-2"),
)
