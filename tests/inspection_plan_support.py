"""An inspection's plan as its tests ask for it."""

from typing import Any

from support import Call

Json = dict[str, Any]

#: A Morse 3 plug and its socket, by their designation, in inches.
MORSE_3: Json = {
    "designation": "morse-3",
    "included_angle_tolerance_arcsec": 40,
    "large_diameter_tolerance": 0.0005,
}
PLUG: Json = {"kind": "taper-plug", **MORSE_3}
SOCKET: Json = {"kind": "taper-socket", **MORSE_3}
FACE: Json = {"kind": "angled-face", "face_angle": 15, "rise": 0.5, "tolerance_arcsec": 60}
#: Means with every error stated that counts.
ROLLS: Json = {
    "roll_diameters": [0.125, 0.25, 0.5],
    "measure_error_limit": 0.0001,
    "roll_error_limit": 0.00002,
    "stack_rise_error_limit": 0.00003,
}
BALLS: Json = {
    "ball_diameters": [0.8125, 0.875, 0.9375],
    "measure_error_limit": 0.0001,
    "roll_error_limit": 0.00002,
}
GAUGES: Json = {"gauge_diameter": 0.93, "depth_error_limit": 0.001, "gauge_error_limit": 0.00005}
PLATE: Json = {
    "center_distance": 5,
    "center_distance_error_limit": 0.0001,
    "roll_difference": 0.00005,
    "roll_parallelism": 0,
    "face_parallelism": 0.0001,
    "face_flatness": 0,
    "stack_error_limit": 0.00002,
    "table_flatness": 0.00005,
    "particle": 0,
    "temperature_celsius": 20,
    "temperature_error_limit_celsius": 0,
    "temperature_difference_celsius": 0,
    "axis_pitch_error_limit_arcsec": 3,
    "axis_yaw_error_limit_arcsec": 0,
    "indicating_error_limit": 0.00005,
}
BLUING: Json = {
    "blue_film": 0.00008,
    "blue_film_error_limit": 0.00004,
    "marked_share_error_limit_percent": 10,
    "gauge_angle_error_limit_arcsec": 3,
}


def planned(call: Call, feature: Json, **means: Any) -> Json:
    """The plan of a part with these means, in inches unless said."""
    result: Json = call("inspection.plan", **{"units": "in", "feature": feature, **means})["result"]
    return result


def by(plan: Json, means: str) -> Json:
    """One means of a plan that reaches the part."""
    found: Json = next(one for one in plan["inspections"] if one["means"] == means)
    return found


def only(call: Call, feature: Json, **means: Any) -> Json:
    """The one means that a plan with one has."""
    plan = planned(call, feature, **means)
    (found,) = plan["inspections"]
    result: Json = found
    return result


def reading(found: Json, name: str) -> Json:
    """One figure to read of a means."""
    result: Json = next(one for one in found["readings"] if one["name"] == name)
    return result


def setting(found: Json, name: str) -> float:
    """What a means is set up with."""
    return float(next(one["set_to"] for one in found["settings"] if one["name"] == name))
