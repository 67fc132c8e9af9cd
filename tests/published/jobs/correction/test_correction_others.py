"""Corrections of a compound plate, by a gauge and by seating again: the cause simulated."""

import math

import numpy as np
import pytest
from numpy.typing import NDArray

from correction_support import ARCSEC, PARTS, chance, stack_totals
from support import Call

SOURCE = "Brute force: a part made by geometry with a hidden error, corrected as said, made again"


def turn_x(angle: float) -> NDArray[np.float64]:
    """Rotation about the axis to the right that raises the back."""
    c, s = math.cos(angle), math.sin(angle)
    return np.array([[1, 0, 0], [0, c, -s], [0, s, c]])


def turn_y(angle: float) -> NDArray[np.float64]:
    """Rotation about the axis to the back that raises the right."""
    c, s = math.cos(angle), math.sin(angle)
    return np.array([[c, 0, -s], [0, 1, 0], [s, 0, c]])


def views(base: float, upper: float, base_axis: str) -> tuple[float, float]:
    """Angles of the level ground surface in the part's own views, by both hinges, degrees."""
    rotation = turn_x(base) @ turn_y(upper) if base_axis == "x" else turn_y(base) @ turn_x(upper)
    x, y, z = rotation.T @ np.array([0, 0, 1])
    return math.degrees(math.atan2(-x, z)), math.degrees(math.atan2(-y, z))


def hinges(x_view: float, y_view: float, base_axis: str) -> tuple[float, float]:
    """The hinge angles that level a surface, found by Newton's steps on `views`."""

    def seen(angles: NDArray[np.float64]) -> NDArray[np.float64]:
        return np.array(views(float(angles[0]), float(angles[1]), base_axis))

    angles = np.zeros(2)
    for _ in range(30):
        steps = np.eye(2) * 1e-6
        columns = [(seen(angles + step) - seen(angles - step)) / 2e-6 for step in steps]
        off = seen(angles) - np.array([x_view, y_view])
        angles = angles - np.linalg.solve(np.column_stack(columns), off)
    return float(angles[0]), float(angles[1])


@pytest.mark.outside("jobs.correction", source=SOURCE)
@pytest.mark.parametrize("base_axis", ["x", "y"])
@pytest.mark.parametrize("hand", [1, -1])
def test_a_compound_face_lands_after_both_stacks_are_changed(
    call: Call, base_axis: str, hand: int
) -> None:
    """Either order of the hinges, both hands: hidden errors of both hinges are taken out."""
    dice = chance(4)
    for _ in range(PARTS // 2):
        x_view, y_view = hand * (10 + 20 * dice.random()), 10 + 20 * dice.random()
        wanted = hinges(x_view, y_view, base_axis)
        off = [200 * (2 * dice.random() - 1) / ARCSEC for _ in range(2)]
        found = views(wanted[0] + off[0], wanted[1] + off[1], base_axis)
        result = call(
            "jobs.correction",
            units="in",
            set="inch-81",
            work={
                "kind": "compound-face",
                "orientation": {"kind": "projected-angles", "x_angle": x_view, "y_angle": y_view},
                "tolerance_arcsec": 15,
            },
            measured={
                "kind": "surface",
                "orientation": {
                    "kind": "projected-angles",
                    "x_angle": found[0],
                    "y_angle": found[1],
                },
                "measurement_error_limit_arcsec": 1,
            },
            set_up={
                "kind": "compound-plate",
                "base_center_distance": 5,
                "upper_center_distance": 5,
                "base_axis": base_axis,
            },
            setting_error_limit_arcsec=1,
        )["result"]
        after = []
        for place, setting in enumerate(result["settings"]):
            assert setting["setting"] == ("base", "upper")[place]
            shown = setting["angle_error_arcsec"]["value"]
            assert shown == pytest.approx(off[place] * ARCSEC, abs=1e-4)
            if setting["leave_it"]:
                after.append(wanted[place] + off[place])
                continue
            total = stack_totals(setting)["high-roll"]
            side = math.copysign(1, wanted[place])
            # The error stays with the hinge; the stack gives its angle by the sine.
            after.append(side * math.asin(total / 5) + off[place])
            left = (after[-1] - wanted[place]) * ARCSEC
            assert side * left == pytest.approx(
                side * setting["expected_error_arcsec"]["value"], abs=0.3
            )
        landed = views(after[0], after[1], base_axis)
        assert max(abs(landed[0] - x_view), abs(landed[1] - y_view)) * 3600 < 8
        assert result["forecast"] == "holds"


# Contact and runout -------------------------------------------------------------------------------
@pytest.mark.outside("jobs.correction", source=SOURCE)
@pytest.mark.parametrize("surface", ["external", "internal"])
@pytest.mark.parametrize("by", ["gap", "film"])
def test_a_cone_lands_after_what_its_gauge_showed(call: Call, surface: str, by: str) -> None:
    """Where it touches and how far it gapes, or what a film marks, gives the stack that mends it.

    Part and gauge are laid against one another on a grid of stations: where their radii first meet
    they touch, and where the gap square to the gauge is within the film, it marks.
    """
    dice = chance(5)
    stations = np.linspace(0, 2, 4001)  # from the large end
    for _ in range(PARTS):
        gauge, off = 10 + 10 * dice.random(), 300 * (2 * dice.random() - 1)
        part = gauge + off / 3600
        inner, outer = (part, gauge) if surface == "external" else (gauge, part)
        air = stations * (math.tan(math.radians(inner)) - math.tan(math.radians(outer)))
        air = air - air.min()
        touches = "large-end" if air[0] == 0 else "small-end"
        film = 0.0002
        marked = float(np.mean(air * math.cos(math.radians(gauge)) <= film))
        told = (
            {"gap_at_other_end": float(air.max())}
            if by == "gap"
            else {"marked_share_percent": 100 * marked, "blue_film": film}
        )
        if by == "film" and marked > 0.9:
            continue
        result = call(
            "jobs.correction",
            units="in",
            work={"kind": "cone", "half_angle": gauge},
            measured={
                "kind": "contact",
                "surface": surface,
                "touches": touches,
                "contact_length": 2,
                **told,
            },
            set_up={"kind": "sine-plate", "center_distance": 5},
        )["result"]
        assert result["sense"] == ("larger" if off > 0 else "smaller")
        found = result["angle_error_arcsec"]["value"]
        assert found == pytest.approx(off, rel=1e-9 if by == "gap" else 3e-3)
        assert result["leave_it"] is None  # how well it was told was not stated
        height = result["settings"][0]["height"]
        assert height["height_now"] == pytest.approx(5 * math.sin(math.radians(gauge)))
        hidden = 5 * (math.sin(math.radians(part)) - math.sin(math.radians(gauge)))
        assert height["height_change"] == pytest.approx(-hidden, rel=1e-9 if by == "gap" else 4e-3)
        assert height["new_height"] == pytest.approx(height["height_now"] + height["height_change"])
        after = math.asin((height["new_height"] + hidden) / 5)
        assert (math.degrees(after) - gauge) * 3600 == pytest.approx(
            0, abs=1e-6 if by == "gap" else 1
        )


@pytest.mark.outside("jobs.correction", source="Brute force: vectors turned at every clocking")
def test_work_clocked_as_said_runs_as_said(call: Call) -> None:
    """Of all clockings the one said leaves the least runout, and it is the one said."""
    dice = chance(6)
    turns = np.exp(2j * math.pi * np.arange(3600) / 3600)
    for _ in range(PARTS):
        socket, part = (0.002 * dice.random() * np.exp(2j * math.pi * dice.random()) for _ in "ab")
        reads = {"at_0": socket + part, "at_180": socket - part}
        result = call(
            "jobs.correction",
            units="mm",
            measured={
                "kind": "reseating",
                "surface": "external",
                **{
                    name: {
                        "tir": 2 * abs(v),
                        "high_spot": math.degrees(np.angle(v)),
                        "eccentricity_standard_uncertainty": 1e-6,
                    }
                    for name, v in reads.items()
                },
            },
        )["result"]
        seats = result["seats"]
        assert seats["socket_tir"]["value"] == pytest.approx(2 * abs(socket))
        assert seats["part_tir"]["value"] == pytest.approx(2 * abs(part))
        clocked = 2 * np.abs(socket + part * turns)
        best = math.radians(seats["best_clocking"]["degrees"])
        assert 2 * abs(socket + part * np.exp(1j * best)) == pytest.approx(
            seats["best_clocking_tir"], abs=1e-9
        )
        assert seats["best_clocking_tir"] <= clocked.min() + 1e-9
        for name, vector in (("socket_off_toward", socket), ("part_off_toward", part)):
            assert seats[name]["degrees"] == pytest.approx(math.degrees(np.angle(vector)) % 360)
        larger = "runout-of-the-socket" if abs(socket) >= abs(part) else "runout-of-the-part"
        assert result["causes"][0]["cause"] == larger
