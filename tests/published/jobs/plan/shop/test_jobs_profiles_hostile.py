"""Profiles and observed pieces as nobody should send them: each is refused by field and limit."""

import math
from pathlib import Path
from typing import Any

import numpy as np
import pytest

from halfangle_service.errors import Disagreement, Unreachable
from halfangle_service.registry import load_registry
from halfangle_service.topics.jobs.plan.shop.profiles import ProfilesError, read_profiles
from plan_support import whole_request
from support import Call

Json = dict[str, Any]
HEAD = '[[profile]]\nname = "Harrow Lane"\nunits = "in"\n[profile.equipment]\n'
PLATE = '[[profile.equipment.sine_plates]]\nname = "5 in plate"\ncenter_distance = 5\n'
FIXTURE = (
    "[profile.equipment.spin_fixture]\naxis_height = 1\nbody_length = 3\nbody_height = 2\n"
    "nose_diameter = 1\nnose_length = 1\nstick_out = 1\nfront_to_high_end = 1\n"
)
WHEEL = "[profile.equipment.wheel]\ndiameter = 7\nwidth = 0.5\n"
ABOUT = "[profile.equipment.wheel.head]\nflange_width = 1\n"


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("", "profile: Field required"),
        ("[[profile", "Expected"),
        ('[profile]\nname = "A"', "profile: Input should be a valid array"),
        (HEAD.replace('units = "in"\n', ""), "profile/0/units: Field required"),
        (
            HEAD + "sine_plate = []\n",
            "sine_plate: there is no such field; the nearest is sine_plates",
        ),
        (HEAD + PLATE + "centre_distance = 5\n", "the nearest is center_distance"),
        (HEAD + PLATE.replace("= 5\n", "= nan\n"), "center_distance: Input should be a finite"),
        (HEAD + PLATE.replace("= 5\n", "= -inf\n"), "center_distance: Input should be a finite"),
        (HEAD + PLATE.replace("= 5\n", "= 1e300\n"), "less than or equal to 10000"),
        (
            HEAD + PLATE.replace("= 5\n", '= "5"\n'),
            "distance: Input should be a valid number",
        ),
        (
            HEAD + PLATE.replace("= 5\n", "= true\n"),
            "distance: Input should be a valid number",
        ),
        (HEAD + PLATE.replace('"5 in plate"', "2026-11-26"), "name: 2026-11-26 is a date"),
        (HEAD + PLATE + "center_distance = 4\n", "Cannot overwrite a value"),
        (HEAD + PLATE + PLATE.replace("5 in", "5  IN"), "sine_plates/1/name: repeats"),
        (HEAD + PLATE.replace("5 in plate", "  "), "sine_plates/0/name: should be printed signs"),
        (HEAD + HEAD.replace("Harrow Lane", " harrow  lane"), "profile/1/name: .* is there twice"),
        (HEAD.replace('"Harrow Lane"', '"a\\u0007"'), "profile/0/name: should be printed signs"),
        (HEAD + PLATE * 5, "at most 4 items"),
        ((HEAD + PLATE).replace('"in"', '"mm"'), "should be from 25.4 to 1250 mm"),
        (HEAD + FIXTURE + "shank_diameter = 3\n", "spin_fixture/shank_diameter: .*3 in"),
        (
            f"{HEAD}{PLATE}[profile.equipment.sine_plates.plate_body]\nlength = 4\n"
            "thickness = 0.75\nclosed_height = 2.2\nroll_diameter = 0.5\n",
            "sine_plates/0/center_distance: should be no more than the plate's length",
        ),
        (f"{HEAD}{WHEEL}{ABOUT}flange_diameter = 8\n", "equipment/wheel/diameter: .* 8 in"),
        (
            f"{HEAD}{WHEEL}{ABOUT}flange_diameter = 3\nworn_diameter = 8\n",
            "equipment/wheel/head/worn_diameter: should be no more than diameter",
        ),
        (
            HEAD + "[profile.equipment.internal_spindle]\nwheel_diameter = 5000\nreach = 3\n",
            "internal_spindle/wheel_diameter: should be from 0.02 to 80 in",
        ),
        (
            HEAD + "[profile.equipment.measuring.bluing]\nblue_film = 0.0001\n"
            "blue_film_error_limit = 0.1\n",
            "bluing/blue_film_error_limit: should be below 0.0001 in",
        ),
        (
            HEAD + '[[profile.equipment.block_sets]]\nname = "b"\nset = "inch-81"\ngrade = "0"\n',
            "block_sets/0/grade: should be one of",
        ),
        ("a = " + "[" * 5000 + "]" * 5000, "too deep"),
        ("# " + "x" * 1_000_001, "larger than 1000000 bytes"),
    ],
)
def test_a_hostile_profile_is_refused_by_its_field(tmp_path: Path, text: str, says: str) -> None:
    """Wrong types, slips, twins and contradictions end the start, each with field and limit."""
    path = tmp_path / "shop.toml"
    path.write_text(text, "utf-8")
    with pytest.raises(ProfilesError, match=says) as refused:
        read_profiles(path)
    assert str(refused.value).startswith(str(path))


def test_a_file_with_a_mark_of_its_coding_is_read(tmp_path: Path) -> None:
    """Editors that write a byte order mark write profiles too."""
    path = tmp_path / "shop.toml"
    path.write_text(HEAD + PLATE, "utf-8-sig")
    assert list(read_profiles(path)) == ["Harrow Lane"]


def profiled(tmp_path: Path, text: str, **changes: Any) -> Any:
    """A plan with the equipment of a profile of this text."""
    path = tmp_path / "shop.toml"
    path.write_text(text, "utf-8")
    operation = load_registry().operations["jobs.plan"]
    request = {
        "units": "in",
        "job": "HL-0412",
        "shop_profile": "Harrow Lane",
        "feature": operation.example["feature"],
        **changes,
    }
    in_shop = operation.in_shop(read_profiles(path))
    return in_shop.calculate(operation.request.model_validate(request))


def test_what_a_profile_and_a_request_both_state_is_refused_by_fields_that_were_sent(
    tmp_path: Path,
) -> None:
    """Equipment beside a profile, a breakdown of its wheel beside observed pieces: both named.

    A request by a profile holds no equipment: what the profile holds is named by `shop_profile`.
    """
    blocks = '[[profile.equipment.block_sets]]\nname = "set"\nset = "inch-81"\n'
    text = f"{HEAD}{PLATE}{blocks}{WHEEL}breakdown_per_piece = 0.00001\n"
    with pytest.raises(Disagreement, match="shop_profile") as both:
        profiled(tmp_path, text, equipment={})
    assert set(both.value.fields) == {"equipment", "shop_profile"}
    seen = [{"piece_since_dress": n, "measured_error_arcsec": 5.0 * n} for n in (1, 4, 9)]
    with pytest.raises(Disagreement, match="stated and observed too") as twice:
        profiled(tmp_path, text, observed_pieces=seen)
    assert set(twice.value.fields) == {"observed_pieces", "shop_profile"}
    assert "equipment/wheel/breakdown_per_piece" in twice.value.fields["shop_profile"]
    with pytest.raises(Unreachable, match="No way of the shop") as none:
        profiled(tmp_path, f"{HEAD}{PLATE}largest_angle = 20\n{blocks}")
    assert set(none.value.fields) == {"shop_profile"}
    assert "largest_angle" in none.value.fields["shop_profile"]


def observed(call: Call, errors: list[tuple[int, float]]) -> tuple[Json, list[str]]:
    """The batch of the first way by observed pieces, and the codes that come with the answer."""
    seen = [{"piece_since_dress": n, "measured_error_arcsec": e} for n, e in errors]
    request = whole_request(equipment__wheel__breakdown_per_piece=None, observed_pieces=seen)
    answer = call("jobs.plan", **request)
    batch: Json = answer["result"]["ways"][0]["batch"]
    return batch, [advisory["code"] for advisory in answer["advisories"]]


@pytest.mark.outside("jobs.plan", source="numpy.polyfit through the observed pieces")
def test_wear_that_turns_the_angle_sharper_asks_for_the_same_dress(call: Call) -> None:
    """Errors that fall are a wheel that wears the other way: the growth is that of a line."""
    rng = np.random.default_rng(7)
    pieces = np.arange(1, 13)
    errors = 4.0 - 3.0 * pieces + rng.normal(0, 1.0, 12)
    pairs = list(zip(pieces.tolist(), errors.tolist(), strict=True))
    falling, _ = observed(call, pairs)
    rising, codes = observed(call, [(n, -e) for n, e in pairs])
    slope = abs(float(np.polyfit(pieces, errors, 1)[0]))
    assert falling["growth_per_piece_arcsec"] == pytest.approx(slope, rel=1e-6)
    assert rising["pieces_per_dress"] == falling["pieces_per_dress"]
    assert "wear-not-steady" not in codes


def test_a_dress_between_observed_pieces_is_noticed(call: Call) -> None:
    """A saw's tooth, counted on over a dress, has a growth that is hardly told from none."""
    tooth = [(n, 6.0 * ((n - 1) % 8)) for n in (1, 4, 8, 9, 12, 16)]
    batch, codes = observed(call, tooth)
    assert "wear-not-steady" in codes
    # What is taken is far from the 6″ a piece that each dress shows, and is said to be doubtful.
    assert batch["growth_per_piece_arcsec"] < 3
    rightly = [((n - 1) % 8 + 1, error) for n, error in tooth]
    batch, codes = observed(call, rightly)
    assert batch["growth_per_piece_arcsec"] == pytest.approx(6)
    assert "wear-not-steady" not in codes


@pytest.mark.parametrize(
    "pieces", [[(1, 0.0)], [(1, 0.0), (9, 40.0)], [(5, 0.0), (5, 3.0), (5, 9.0)]]
)
def test_pieces_that_show_no_growth_are_refused_by_their_field(
    call: Call, pieces: list[tuple[int, float]]
) -> None:
    """One piece, two, or three at one place: how many it takes is named."""
    with pytest.raises(Disagreement, match="No growth can be told") as refused:
        observed(call, pieces)
    assert refused.value.fields == {"observed_pieces": "should be 3 at least, not all of one place"}


def test_a_jump_at_the_last_of_many_pieces_is_no_range_error(call: Call) -> None:
    """The largest pieces and errors that are taken give finite figures, and are doubted."""
    batch, codes = observed(call, [(1, 0.0), (999_999, 0.0), (1_000_000, 36_000.0)])
    assert math.isfinite(batch["growth_per_piece_arcsec"])
    assert "wear-not-steady" in codes
