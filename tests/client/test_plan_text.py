"""The plan of a job as it is printed: in its order, in 100 columns, to what can be set or read."""

import copy
import re
from collections.abc import Callable
from typing import Any

import pytest

from halfangle_client import Halfangle, models
from halfangle_client.cli import screen
from halfangle_client.demo import built_in_job
from halfangle_client.plan import WIDTH, plan_text, words

#: What the built-in shop is asked for beside its center: kinds, units, errors that lack.
OTHERS: dict[str, dict[str, Any]] = {
    "taper-plug": {
        "kind": "taper-plug",
        "designation": "morse-3",
        "included_angle_tolerance_arcsec": 60,
    },
    "angled-face": {"kind": "angled-face", "face_angle": 72, "rise": 0.5, "tolerance_arcsec": 60},
    "both stacks": {
        "kind": "cone",
        "included_angle": 2,
        "included_angle_tolerance_arcsec": 120,
        "large_diameter": 0.75,
        "small_diameter": 0.7,
    },
    "compound-face": {
        "kind": "compound-face",
        "orientation": {"kind": "projected-angles", "x_angle": 20, "y_angle": 10},
        "rise": 0.4,
        "tolerance_arcsec": 60,
    },
}
#: Of a shop that states no error at all, in millimetres.
BARE: dict[str, Any] = {
    "units": "mm",
    "job": "HL-0633",
    "feature": {
        "kind": "cone",
        "included_angle": 20,
        "included_angle_tolerance_arcsec": 60,
        "large_diameter": 30,
        "small_diameter": 20,
    },
    "equipment": {
        "sine_plates": [{"name": "plate", "center_distance": 100}],
        "block_sets": [{"name": "set", "set": "metric-112"}],
    },
}


def ascii_shown(text: str) -> str:
    """A text as a terminal without Unicode shows it."""
    screen.prepare()
    return text.encode("ascii", screen._PLAIN_ERRORS).decode("ascii")


def planned(client: Halfangle, job: dict[str, Any]) -> models.JobPlanAnswer:
    """The plan of a job."""
    return client.jobs.plan(**job)


@pytest.fixture(scope="module")
def answer(client: Halfangle) -> models.JobPlanAnswer:
    """The plan of the built-in job."""
    return planned(client, built_in_job())


@pytest.fixture(scope="module")
def text(answer: models.JobPlanAnswer) -> str:
    """It as it is printed."""
    return plan_text(answer, built_in_job())


def section(text: str, title: str) -> str:
    """What stands under a title, up to the next."""
    found = re.search(rf"^{re.escape(title)}\n-+\n(.*?)(?=\n\n|\Z)", text, re.MULTILINE | re.DOTALL)
    assert found is not None, title
    return found.group(1)


def test_sections_come_as_they_are_needed_at_the_machine(text: str) -> None:
    """What stops comes first, then the ways, what is set, the work in order, and the proof."""
    titles = re.findall(r"^(.+)\n-+$", text, re.MULTILINE)
    assert titles == [
        "Mind first",
        "Ways, the best first",
        "What would change the order",
        "Ruled out",
        "Set",
        "Steps",
        "Feed",
        "When to stop",
        "Clearance",
        "Checks of the set-up",
        "Proof of the ground feature",
        "Smallest wrong block that leaves the tolerance",
        "Error of the included angle to expect",
        "Runout to expect, full indicator movement square to the axis",
        "Batch and time",
        "What this stands on",
    ]


def test_nothing_is_said_twice(text: str) -> None:
    """No line but the shortest stands there again."""
    lines = [line.strip() for line in text.splitlines() if len(line.strip()) > 45]
    assert len(lines) > 100
    assert [line for line in lines if lines.count(line) > 1] == []


def test_every_way_is_there(text: str, answer: models.JobPlanAnswer) -> None:
    """Each that can has its forecast, error and time in a row, each that cannot its reason."""
    plan = answer.result
    rows = section(text, "Ways, the best first").splitlines()
    for place, way in enumerate(plan.ways, start=1):
        (row,) = (row for row in rows if row.startswith(f"{place}  "))
        assert words.said(way.forecast) in row
        assert words.error(way.angles[0].error_arcsec) in row
        assert words.minutes(way.total_minutes) in row
    lacking = [row.strip() for row in rows if row.startswith("   4: ")]
    assert lacking == ["4: not stated, so not counted: yaw of the work's axis."]
    out = " ".join(section(text, "Ruled out").split())
    assert len(plan.ruled_out) == out.count("- ") > 3
    assert all(" ".join(way.reason.split()) in out for way in plan.ruled_out)
    told = " ".join(section(text, "What would change the order").split())
    assert plan.told_apart_by[0].sentence in told


def test_the_best_way_holds(answer: models.JobPlanAnswer) -> None:
    """The built-in job is one that its shop can make, and prove."""
    best = answer.result.ways[0]
    assert best.forecast == "holds"
    assert best.clearance is not None
    assert best.clearance.forecast == "holds"
    assert answer.result.checks.best == "over-rolls"
    assert {a.severity for a in answer.advisories} == {"caution", "note"}


def test_figures_are_those_of_the_answer(text: str, answer: models.JobPlanAnswer) -> None:
    """Stacks, passes, readings, mistakes and times are the plan's, to what is set or read."""
    best = answer.result.ways[0]
    stacks = section(text, "Set")
    assert all(words.blocks_to_tick(stack.blocks) in stacks for stack in best.stacks)
    rough = best.feed_plan.rough
    assert rough is not None
    assert re.search(rf"rough +{rough.cutting_passes} +0\.00050 in", section(text, "Feed"))
    stop = section(text, "When to stop")
    assert re.search(r"^> diameter +0\.7512 in +0\.7500 in", stop, re.MULTILINE)
    mistake = best.mistakes[0]
    wrong = section(text, "Smallest wrong block that leaves the tolerance")
    assert f"{mistake.wrung:g} for {mistake.meant:g}" in wrong
    assert "seen by: stack measured, second stack" in wrong
    batch = " ".join(section(text, "Batch and time").split())
    assert f"Of 12, measure {', '.join(map(str, best.batch.pieces_to_measure))}." in batch
    share = max(part.share_percent for part in best.angles[0].error_arcsec.contributions)
    assert f"{share:.0f} %" in section(text, "Error of the included angle to expect")


def test_limits_are_rounded_to_the_safe_side(text: str, answer: models.JobPlanAnswer) -> None:
    """Whoever keeps a limit as it is printed keeps the limit as it is."""
    means = answer.result.checks.inspections[0]
    reading = means.readings[-1]
    low, high = reading.smallest_accepted_reading, reading.largest_accepted_reading
    assert low is not None
    assert high is not None
    shown = words.within(low, high, "in", "length")
    assert shown in text
    least, most = (float(part.removesuffix(" in")) for part in shown.split(" to "))
    assert low <= least < low + 0.0001
    assert high - 0.0001 < most <= high
    assert words.within(-1.00004, 2.00009, "in", "length") == "-1.0000 in to 2.0000 in"
    assert words.within(59.98167, 60.01833, "in", "degree") == "59°58'55\" to 60°01'05\""
    assert words.within(None, 1.0, "in", "length") == "–"
    assert words.at_most(0.000519, "in") == "0.00051 in"


@pytest.mark.parametrize("kind", OTHERS)
@pytest.mark.parametrize("shown", [str, ascii_shown])
def test_every_kind_of_plan_keeps_to_its_columns(
    client: Halfangle, kind: str, shown: Callable[[str], str]
) -> None:
    """Whatever is planned, and whatever the terminal lacks, no line is longer than 100."""
    job = copy.deepcopy(built_in_job()) | {"feature": OTHERS[kind]}
    job["equipment"]["compound_plates"] = [
        {
            "name": "compound plate",
            "base_axis": "x",
            "base_center_distance": 5,
            "upper_center_distance": 5,
        }
    ]
    lines = plan_text(planned(client, job), job, shown).splitlines()
    assert len(lines) > 100
    assert max(map(len, lines)) <= WIDTH
    assert "None" not in " ".join(lines)


def test_a_size_with_a_tolerance_says_when_to_stop(client: Halfangle) -> None:
    """Where the large diameter has one, between which readings to stop, to the safe side."""
    job = copy.deepcopy(built_in_job())
    job["feature"]["large_diameter_tolerance"] = 0.002
    job["feeding"] |= {
        "diameter_error_limit": 0.0002,
        "dial_step": 0.0001,
        "size_wear_per_piece": 0.0001,
        "work_temperature_difference_celsius": 1,
    }
    answer = planned(client, job)
    size = answer.result.ways[0].size_plan
    assert size is not None
    assert size.smallest_stop is not None
    assert size.largest_stop is not None
    said = " ".join(section(plan_text(answer, job), "Size").split())
    low, high = re.findall(r"from ([\d.]+) in to ([\d.]+) in\.", said)[0]
    assert size.smallest_stop <= float(low) < float(high) <= size.largest_stop
    assert f"0.7500 in ± 0.00200 in: {words.said(size.forecast)}." in said


def test_what_was_not_stated_is_said_so(client: Halfangle) -> None:
    """Without any error stated no way is said to be fit, and nothing is made up."""
    text = plan_text(planned(client, BARE), BARE)
    assert "The first of the ways, none of which is fit: sine plate (plate, set)." in text
    assert "0.8 ± ?, ± 60″ allowed: not stated." in section(
        text, "Error of the included angle to expect"
    )
    assert "No means at hand measures it." in text
    assert "Forecast: not stated." in section(text, "Clearance")
    assert "± 0.0" not in text


@pytest.mark.parametrize(
    ("words_of", "expected"),
    [
        (words.angle(59.99999), "60°00'00\""),
        (words.angle(-0.5, 4), "-0°30'00.00\""),
        (words.arcsec(-0.04), "0.0″"),
        (words.large_angle(-4747.8), "-1°19'08\""),
        (words.large_angle(63.6), "+63.6″"),
        (words.minutes(59.6), "1 h 00 min"),
        (words.minutes(None), "–"),
        (words.stated(0.00005, "length", "in"), "0.00005 in"),
        (words.stated(40.0, "per_minute", "in"), "40 a minute"),
        (words.fine(0.817322, "in"), "0.817322 in"),
        (words.fine(2.5, "in"), "2.5000 in"),
        (words.field_words("feeding/dial_error_limit"), "error of the dial"),
    ],
)
def test_figures_as_a_hand_reads_them(words_of: str, expected: str) -> None:
    """Angles carry, nothing has no sign, small lengths no exponent."""
    assert words_of == expected
