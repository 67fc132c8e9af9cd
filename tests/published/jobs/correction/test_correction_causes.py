"""How a correction ranks causes by what was seen, and what it refuses."""

from typing import Any

import pytest

from correction_support import CONTACT, PLATE, example, measured
from halfangle_service.errors import Disagreement, Impossible, Unreachable
from halfangle_service.trade.tables.correction.causes import OBSERVATIONS, causes
from support import Call

ORDER = ["for", "none", "against"]


def causes_of(result: dict[str, Any]) -> dict[str, str]:
    """What speaks for each cause, in their order."""
    return {cause["cause"]: cause["evidence"] for cause in result["causes"]}


# Causes -------------------------------------------------------------------------------------------
@pytest.mark.parametrize(
    ("set_up", "seen", "first"),
    [
        (PLATE, {"repeats_on_second_stack": False}, "wrong-block"),
        (PLATE, {"repeats_on_second_stack": True}, "axis-not-parallel"),
        (PLATE, {"grows_along_batch": True}, "wheel-breakdown"),
        (PLATE, {"changes_on_reseating": True}, "seat-of-the-work"),
        (PLATE, {"follows_temperature": True}, "temperature"),
        (PLATE, {"repeats_when_measured_again": False}, "measurement"),
        ({"kind": "scale-dresser"}, {"surface_form": "crowned"}, "diamond-height"),
        ({"kind": "swivel"}, {"surface_form": "hollow"}, "axis-height"),
        ({"kind": "scale-dresser"}, {"grows_along_batch": True}, "wheel-breakdown"),
    ],
)
def test_what_was_seen_ranks_its_cause_first(
    call: Call, set_up: dict[str, Any], seen: dict[str, Any], first: str
) -> None:
    """Each observation brings the cause that it tells apart to the front, and puts others back."""
    result = call("jobs.correction", **example(set_up=set_up, observations=seen))["result"]
    assert result["causes"][0]["cause"] == first
    assert result["causes"][0]["evidence"] == "for"
    assert set(result["causes"][0]["for_it"]) == set(seen)
    ranks = [ORDER.index(evidence) for evidence in causes_of(result).values()]
    assert ranks == sorted(ranks)
    assert {f"observations/{name}" for name in seen}.isdisjoint(result["not_stated"])


def test_what_was_not_seen_says_nothing(call: Call) -> None:
    """Without observations nothing speaks for or against: the order is how often each is met."""
    request = example(observations={}, measured=measured(-30))
    result = call("jobs.correction", **request)["result"]
    assert set(causes_of(result).values()) == {"none"}
    assert list(causes_of(result))[:3] == ["axis-not-parallel", "wrong-block", "dirt-under-a-roll"]
    assert result["not_stated"] == [
        f"observations/{name}" for name in OBSERVATIONS if name != "surface_form"
    ]
    far_off = example(observations={}, measured=measured(-90))
    assert call("jobs.correction", **far_off)["result"]["causes"][0]["cause"] == "wrong-block"


def test_yaw_cannot_make_an_angle_larger(call: Call) -> None:
    """An angle that came out larger for certain speaks against what only makes it smaller."""
    for arcsec, evidence in ((40, "against"), (-40, "none"), (5, "none")):
        found = measured(arcsec, measurement_error_limit_arcsec=10)
        result = call("jobs.correction", **example(observations={}, measured=found))["result"]
        assert causes_of(result)["axis-yawed"] == evidence
    face = example(
        work={"kind": "angled-face", "face_angle": 30},
        measured={"kind": "angle", "measured_face_angle": "30 00 20"},
        observations={},
    )
    assert "axis-yawed" not in causes_of(call("jobs.correction", **face)["result"])


def test_every_cause_names_its_check_and_its_source() -> None:
    """Each row says what tells it apart, what to do, and that practice has no source."""
    for cause in causes():
        assert cause.check.endswith(".")
        assert cause.mend.endswith(".")
        assert cause.observation in {*OBSERVATIONS, "at_180", "measured"}
        assert set(cause.says) <= set(OBSERVATIONS)
        derived = cause.standing == "derived"
        assert cause.source.startswith("Derived here") if derived else "practice" in cause.source


# Refusals -----------------------------------------------------------------------------------------
VIEWS = {"kind": "projected-angles", "x_angle": 15, "y_angle": 20}
REFUSED: list[tuple[dict[str, Any], str, str]] = [
    ({"measured": {"kind": "angle"}}, "measured/measured_half_angle", "all missing"),
    (
        {"measured": {"kind": "angle", "measured_face_angle": 30}},
        "measured/measured_face_angle",
        "is of a face",
    ),
    (
        {"measured": measured(5, standard_uncertainty_arcsec=1, measurement_error_limit_arcsec=1)},
        "measured/standard_uncertainty_arcsec",
        "sent together",
    ),
    ({"measured": measured(-120_000)}, "measured/measured_error_arcsec", "would make the angle"),
    ({"work": None}, "work", "cone or a face"),
    ({"set": None}, "set", "all missing"),
    ({"set_up": {**PLATE, "blocks": [2, 0.5555]}}, "set_up/blocks/1", "the set has none"),
    ({"set_up": {**PLATE, "blocks": [2, 0.5, 4]}}, "set_up/blocks", "lift the high roll"),
    # Blocks of the complement without saying so, and those of a face laid otherwise.
    (
        {
            "work": {"kind": "angled-face", "face_angle": 72},
            "measured": {"kind": "angle", "measured_face_angle": "72 01"},
            "set_up": {**PLATE, "blocks": [1, 0.3, 0.145, 0.1001]},
        },
        "set_up/blocks",
        "set 18.0002°; 72° is wanted",
    ),
    (
        {
            "work": {"kind": "compound-face", "orientation": VIEWS},
            "measured": {"kind": "surface", "orientation": {**VIEWS, "x_angle": 15.02}},
            "set_up": {
                "kind": "compound-plate",
                "base_center_distance": 5,
                "upper_center_distance": 5,
                "base_axis": "x",
                "base_blocks": [1, 0.12, 0.1008],
                "upper_blocks": [0.95, 0.55, 0.11, 0.1001],
            },
        },
        "set_up/base_blocks",
        "set 14.1322°; 19.3701° is wanted",
    ),
    ({"set_up": {**PLATE, "center_distance": 0.1}}, "set_up/center_distance", "center distance"),
    (
        {"set_up": {"kind": "sine-plate", "center_distance": 5, "low_blocks": [1]}},
        "set_up/blocks",
        "says nothing without",
    ),
    (
        {
            "set": None,
            "sizes": [2, 0.5],
            "work": {"kind": "cone", "included_angle": 160},
            "measured": measured(10),
            "set_up": {"kind": "sine-plate", "center_distance": 5},
        },
        "max_blocks",
        "No stacks of up to 6",
    ),
    (
        {"measured": {**CONTACT, "marked_share_percent": 50}},
        "measured/blue_film",
        "film of some thickness",
    ),
    (
        {"measured": {**CONTACT, "touches": "small-end", "gap_at_other_end": 2}},
        "measured/gap_at_other_end",
        "leaves no cone",
    ),
    (
        {"work": {"kind": "angled-face", "face_angle": 30}, "measured": CONTACT},
        "measured/kind",
        "no such gauge",
    ),
    (
        {
            "set_up": {
                "kind": "compound-plate",
                "base_center_distance": 5,
                "upper_center_distance": 5,
                "base_axis": "x",
            }
        },
        "set_up",
        "slopes in both views",
    ),
    (
        {
            "measured": {
                "kind": "surface",
                "orientation": {"kind": "projected-angles", "x_angle": 3, "y_angle": 2},
            }
        },
        "work",
        "should be such a face",
    ),
]


@pytest.mark.parametrize(("changes", "field", "match"), REFUSED)
def test_what_does_not_go_together_is_refused(
    call: Call, changes: dict[str, Any], field: str, match: str
) -> None:
    """A measurement of other work, blocks that are not there, a gap that leaves no cone."""
    with pytest.raises((Disagreement, Impossible, Unreachable), match=match) as refused:
        call("jobs.correction", **example(**changes))
    assert field in refused.value.fields
