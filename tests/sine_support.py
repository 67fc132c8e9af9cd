"""One sine set-up with every error of it stated, which several files of tests ask about."""

from typing import Any

#: Arc-seconds a radian.
ARCSEC = 206264.80624709636
#: A plate at 40° with every error stated.
FULL: dict[str, Any] = {
    "units": "in",
    "center_distance": 5,
    "angle": 40,
    "center_distance_error_limit": 0.0002,
    "roll_difference": 0.00005,
    "roll_parallelism": 0.00004,
    "face_parallelism": 0.00008,
    "face_flatness": 0.00003,
    "face_length": 4,
    "stack_error_limit": 0.00002,
    "resolution": 0.0001,
    "table_flatness": 0.00005,
    "particle": 0.00003,
    "temperature_celsius": 26,
    "temperature_error_limit_celsius": 1,
    "temperature_difference_celsius": 0.5,
    "block_material": "tungsten-carbide",
    "plate_material": "steel",
    "axis_yaw_error_limit_arcsec": 0,
    "axis_pitch_error_limit_arcsec": 3,
    "wheel_breakdown": 0.00001,
    "wheel_contact_length": 0.5,
}
