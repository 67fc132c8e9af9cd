"""What a plan says would decide between its ways, proved by stating it and asking again."""

import copy
from typing import Any

import pytest

from plan_support import ANGLE_ERRORS, Json, whole_request
from support import Call

SIDE: Json = {
    "name": "cup wheel",
    "rated_for_side": True,
    "usable_width": 1,
    "swivel_error_limit_arcsec": 30,
    "side_error_limit_arcsec": 10,
    "axis_yaw_error_limit_arcsec": 60,
    "side_wear": 0,
}
WORKHEAD: Json = {
    "name": "workhead",
    "grinder": "cylindrical",
    "graduation": "0 01",
    "wheel_diameter": 7,
    "wheel_breakdown": 0,
}
_LIMIT = "equipment__sine_plates__0__angle_errors__"


def lacking(*names: str, pieces: int = 5, tolerance: float = 150, **changes: Any) -> Json:
    """A job with the wheel's side as another way, some of the plate's errors not stated."""
    left_out = {f"{_LIMIT}{name}": None for name in names}
    stating = {
        "pieces": pieces,
        "minutes_per_piece": 10,
        "feature__included_angle_tolerance_arcsec": tolerance,
        "equipment__wheel_sides": [SIDE],
    }
    return whole_request(**{**stating, **left_out, **changes})


#: Jobs of which one statement that is missing decides, or several together.
JOBS: dict[str, Json] = {
    "wheel-face": lacking("wheel_face_error_limit_arcsec"),
    "pitch": lacking("axis_pitch_error_limit_arcsec"),
    "yaw": lacking("axis_yaw_error_limit_arcsec", tolerance=170),
    "particle": lacking("particle"),
    # A tolerance so fine that no way holds: errors of many times it decide.
    "past-use": lacking("wheel_face_error_limit_arcsec", tolerance=25),
    "dresses": lacking(
        "axis_pitch_error_limit_arcsec",
        pieces=40,
        tolerance=170,
        equipment__wheel__breakdown_per_piece=0.00001,
    ),
    "breakdown": lacking(
        pieces=40,
        tolerance=200,
        equipment__wheel__breakdown_per_piece=None,
        equipment__wheel_sides=[{**SIDE, "setup_minutes": 60}],
    ),
    "first-piece": lacking(
        pieces=1,
        tolerance=200,
        equipment__wheel__breakdown_per_piece=None,
    ),
    "axis-offset": lacking(
        equipment__swivelled_workheads=[{**WORKHEAD, "axis_yaw_error_limit_arcsec": 60}],
        equipment__wheel_sides=[],
        equipment__sine_plates__0__angle_errors__wheel_face_error_limit_arcsec=53,
        tolerance=100,
    ),
}


def stated(request: Json, path: str, value: float) -> Json:
    """The same request with a value at a path of it."""
    changed = copy.deepcopy(request)
    *folders, name = path.split("/")
    place: Any = changed
    for folder in folders:
        place = place[int(folder)] if folder.isdigit() else place[folder]
    place[name] = value
    return changed


def best_of(answer: Json) -> tuple[str, list[str]] | None:
    """The way that is best in an answer, with its equipment."""
    first = answer["result"]["ways"][0]
    return None if answer["result"]["best"] is None else (first["way"], first["equipment"])


def told(answer: Json, best: Json) -> tuple[str, list[str]] | None:
    """The way that a decision names."""
    if best["way_number"] is None:
        assert best["best_way"] is None
        return None
    way = answer["result"]["ways"][best["way_number"] - 1]
    assert best["best_way"] == way["in_words"]
    assert all(item in best["best_way"] for item in way["equipment"])
    return way["way"], way["equipment"]


@pytest.mark.outside("jobs.plan", source="The plan itself, asked again with the value stated")
@pytest.mark.parametrize("job", JOBS)
def test_a_value_stated_on_either_side_of_a_threshold_decides_as_was_told(
    call: Call, job: str
) -> None:
    """At nothing, and just below and above each threshold, the best way is the one told."""
    request = JOBS[job]
    answer = call("jobs.plan", **request)
    names = [way["in_words"] for way in answer["result"]["ways"]]
    assert len(set(names)) == len(names)
    decisions = [d for d in answer["result"]["told_apart_by"] if len(d["statements"]) == 1]
    assert decisions
    for decision in decisions:
        (path,) = decision["statements"]
        before = told(answer, decision["best_at_zero"])
        assert best_of(call("jobs.plan", **stated(request, path, 0))) == before
        for threshold in decision["thresholds"]:
            above = threshold["above"]
            below = call("jobs.plan", **stated(request, path, 0.99 * above))
            beyond = call("jobs.plan", **stated(request, path, 1.02 * above))
            assert best_of(below) == before
            before = told(answer, threshold)
            assert best_of(beyond) == before
            assert best_of(below) != before


@pytest.mark.parametrize("job", JOBS)
def test_a_statement_that_is_not_told_changes_nothing(call: Call, job: str) -> None:
    """Every other error that the plate lacks, stated as nothing or as much, changes no first."""
    request = JOBS[job]
    answer = call("jobs.plan", **request)
    told_of = {path for d in answer["result"]["told_apart_by"] for path in d["statements"]}
    plate = "equipment/sine_plates/0/"
    paths = {f"{plate}angle_errors/{name}" for name in ANGLE_ERRORS}
    errors = request["equipment"]["sine_plates"][0]["angle_errors"]
    missing = {path for path in paths if path.rpartition("/")[2] not in errors}
    missing.add(f"{plate}squareness_error_limit_arcsec")
    for path in missing - told_of:
        for value in (0, 20, 90):
            assert best_of(call("jobs.plan", **stated(request, path, value))) == best_of(answer)


def test_what_wins_is_told_with_the_value_up_to_which_it_does(call: Call) -> None:
    """An error of any size does not win: how large it may be is told, past the tolerance too."""
    [decision] = call("jobs.plan", **JOBS["past-use"])["result"]["told_apart_by"]
    assert decision["sentence"].count("up to") == 1
    assert decision["thresholds"][0]["above"] > 25


def test_the_sentence_says_what_to_state_and_what_wins(call: Call) -> None:
    """The plate wins by a small slope of its wheel's face, the wheel's side by a large one."""
    answer = call("jobs.plan", **JOBS["wheel-face"])
    (decision,) = answer["result"]["told_apart_by"]
    path = "equipment/sine_plates/0/angle_errors/wheel_face_error_limit_arcsec"
    assert decision["statements"] == [path]
    assert [each["input_unit"] for each in decision["thresholds"]] == ["arcsecond"]
    assert decision["sentence"].startswith("State wheel face error limit of 5 in plate: up to 35.")
    assert decision["sentence"].endswith("wheel's side (cup wheel) is best.")


def test_breakdown_is_told_as_length_and_as_angle(call: Call) -> None:
    """'State the breakdown of the wheel': above so much a piece the wheel's side wins."""
    answer = call("jobs.plan", **JOBS["breakdown"])
    (decision,) = answer["result"]["told_apart_by"]
    assert decision["statements"] == ["equipment/wheel/breakdown_per_piece"]
    assert [each["input_unit"] for each in decision["thresholds"]] == ["length"]
    assert decision["sentence"].startswith("State the breakdown of the wheel a piece: above 0.000")
    assert "″ a piece) wheel's side (cup wheel) is best" in decision["sentence"]


def test_what_only_all_together_would_change_is_told_together(call: Call) -> None:
    """A plate that lacks two errors wins over the wheel's side only with both of them stated."""
    request = lacking("wheel_face_error_limit_arcsec", "axis_pitch_error_limit_arcsec")
    answer = call("jobs.plan", **request)
    assert best_of(answer) == ("wheel-side", ["cup wheel"])
    found = {told(answer, d["best_at_zero"])[0]: d for d in answer["result"]["told_apart_by"]}  # type: ignore[index]
    assert set(found) == {"sine-plate", "quarter-turn"}
    for name, decision in found.items():
        assert len(decision["statements"]) == 2
        assert decision["thresholds"] == []
        again = request
        for path in decision["statements"]:
            assert best_of(call("jobs.plan", **stated(request, path, 0))) == best_of(answer)
            again = stated(again, path, 0)
        assert best_of(call("jobs.plan", **again)) == (name, ["5 in plate", "toolroom set"])


def test_nothing_is_told_where_all_is_stated(call: Call) -> None:
    """With every error of every way stated no statement is missing."""
    request = lacking()
    request["equipment"]["sine_plates"][0]["squareness_error_limit_arcsec"] = 20
    assert call("jobs.plan", **request)["result"]["told_apart_by"] == []
