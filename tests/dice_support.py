"""Sine set-ups made by dice, for tests: every error drawn within its limits, turned in 3-D."""

import math
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

Json = dict[str, Any]
Values = NDArray[np.float64]
ARCSEC = math.degrees(1) * 3600
PIECES = 20_000
STEEL, STEEL_SPREAD = 11.5e-6, 1.0e-6
ERRORS: Json = {
    "center_distance_error_limit": 0.0001,
    "roll_difference": 0.00005,
    "roll_parallelism": 0.00005,
    "face_parallelism": 0.0001,
    "face_flatness": 0.00005,
    "face_length": 4.5,
    "table_flatness": 0.00005,
    "particle": 0.00002,
    "temperature_celsius": 22,
    "temperature_error_limit_celsius": 1,
    "temperature_difference_celsius": 0.5,
    "axis_pitch_error_limit_arcsec": 5,
    "axis_yaw_error_limit_arcsec": 600,
}
WHEEL_FACE = 10.0
#: A plate of two axes of which everything is stated.
COMPOUND_PLATE: Json = {
    "name": "compound plate",
    "base_center_distance": 5,
    "upper_center_distance": 4,
    "base_axis": "x",
    "base_errors": ERRORS,
    "upper_errors": ERRORS,
    "wheel_face_error_limit_arcsec": WHEEL_FACE,
}


def lot(rng: np.random.Generator, limit: float) -> Values:
    """An error of each piece, as likely anywhere within ± its limit."""
    return rng.uniform(-limit, limit, PIECES)


def turned_about(axis: str, angles: Values | float) -> Values:
    """Right-handed rotation matrices about a coordinate axis, one for each angle in radians."""
    angle = np.broadcast_to(np.asarray(angles, dtype=float), (PIECES,))
    c, s, one, none = np.cos(angle), np.sin(angle), np.ones(PIECES), np.zeros(PIECES)
    rows = {
        "x": [[one, none, none], [none, c, -s], [none, s, c]],
        "y": [[c, none, s], [none, one, none], [-s, none, c]],
        "z": [[c, -s, none], [s, c, none], [none, none, one]],
    }
    return np.moveaxis(np.array(rows[axis]), 2, 0)


@dataclass(frozen=True)
class Made:
    """How the pieces of a lot were set up."""

    rng: np.random.Generator
    errors: Json
    length: float
    high: Json
    low: Json | None = None
    step: float = 0.0

    def stack(self, stack: Json | None, warm: Values, coefficient: Values) -> Values:
        """Heights of a stack, each block off within its grade, all as warm as they are."""
        if stack is None:
            return np.zeros(PIECES)
        limits = [part["input_value"] for part in stack["actual_height"]["contributions"]]
        assert len(limits) == len(stack["blocks"])
        blocks = zip(stack["blocks"], limits, strict=True)
        cold = sum(size + lot(self.rng, limit) for size, limit in blocks)
        return np.asarray(cold * (1.0 + coefficient * warm))

    def plates(self) -> Values:
        """The plates' angles: their rolls on stacks on a table, and the face on the rolls."""
        rng, errors = self.rng, self.errors
        warm = errors["temperature_celsius"] - 20.0
        warm = warm + lot(rng, errors["temperature_error_limit_celsius"])
        blocks_warm = warm + lot(rng, errors["temperature_difference_celsius"])
        of_blocks = STEEL + lot(rng, STEEL_SPREAD)
        plate = 1.0 + (STEEL + lot(rng, STEEL_SPREAD)) * warm
        radius = 0.5
        larger = radius + lot(rng, errors["roll_difference"]) / 2.0
        high = larger + self.stack(self.high, blocks_warm, of_blocks) - self.step * plate
        low = radius + self.stack(self.low, blocks_warm, of_blocks)
        high = high + lot(rng, errors["table_flatness"]) + lot(rng, errors["particle"])
        # A stack under one end of a roll that is higher there than in its middle.
        high = high + lot(rng, errors["roll_parallelism"]) / 2.0
        apart = (self.length + lot(rng, errors["center_distance_error_limit"])) * plate
        # The line of centers, then the face: two points of it, each off its place over the line.
        centers = np.arctan2(high - low, np.sqrt(apart**2 - (high - low) ** 2))
        ends = lot(rng, errors["face_parallelism"]) + lot(rng, errors["face_flatness"])
        return np.asarray(centers + np.arctan2(ends, errors["face_length"]))

    def seats(self, *, quarter: bool = False) -> tuple[Values, Values]:
        """Rotations of plate and work from lying level, and the wheel's plane by its normals.

        The plate's high end is at +x: a turn about y toward it is negative. The work's axis, or its
        base, lies along the plate's face; turned a quarter it stands square to it.
        """
        plate = turned_about("y", -self.plates())
        yaw = lot(self.rng, self.errors["axis_yaw_error_limit_arcsec"]) / ARCSEC
        pitch = lot(self.rng, self.errors["axis_pitch_error_limit_arcsec"]) / ARCSEC
        if quarter:
            leaning = turned_about("x", yaw) @ turned_about("y", -pitch)
        else:
            leaning = turned_about("z", yaw) @ turned_about("y", -pitch)
        wheel = turned_about("y", lot(self.rng, WHEEL_FACE) / ARCSEC) @ np.array([0.0, 0.0, 1.0])
        return plate @ leaning, wheel
