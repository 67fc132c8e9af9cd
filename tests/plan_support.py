"""A whole job with everything stated, for the tests of its plan."""

import copy
from typing import Any

from halfangle_service.registry import load_registry

Json = dict[str, Any]

ANGLE_ERRORS: Json = {
    "center_distance_error_limit": 0.0001,
    "roll_difference": 0.00005,
    "roll_parallelism": 0.00005,
    "face_parallelism": 0.0001,
    "face_flatness": 0.00005,
    "table_flatness": 0.00005,
    "particle": 0.00002,
    "temperature_error_limit_celsius": 1,
    "temperature_difference_celsius": 0.5,
    "axis_pitch_error_limit_arcsec": 5,
    "axis_yaw_error_limit_arcsec": 300,
    "temperature_celsius": 22,
    "wheel_face_error_limit_arcsec": 10,
}


def clearance_example() -> Json:
    """The request of the operation that looks at clearance alone."""
    return copy.deepcopy(dict(load_registry().operations["clearance.tilted-plate"].example))


def whole_request(**changes: Any) -> Json:
    """A 60° center with everything stated; `feature__…` and the like reach within."""
    request = copy.deepcopy(dict(load_registry().operations["jobs.plan"].example))
    stands, shop = clearance_example(), request["equipment"]
    plate, wheel = dict(stands["plate"]), dict(stands["wheel"])
    plate.pop("center_distance")
    shop["sine_plates"][0] |= {
        "angle_errors": dict(ANGLE_ERRORS),
        "plate_body": plate,
        "tilt_direction": stands["tilt_direction"],
    }
    shop["spin_fixture"] = stands["fixture"]
    size = {"diameter": wheel.pop("diameter"), "width": wheel.pop("width"), "rpm": 3450}
    shop["wheel"] = {**size, "head": wheel, "breakdown_per_piece": 0.000002}
    ends = {name: stands[name] for name in ("past_large_end", "past_small_end")}
    request["feeding"] = {"grinding_allowance": 0.004, **ends}
    request["room"] = {name: stands[name] for name in ("gap_wanted", "room_under_wheel")}
    request["pieces"] = 40
    for path, value in changes.items():
        *folders, name = path.split("__")
        place: Any = request
        for folder in folders:
            place = place[int(folder)] if folder.isdigit() else place[folder]
        if value is None:
            place.pop(name, None)
        else:
            place[name] = value
    return request
