"""Profiles of a shop's equipment: read at the start, named by a request, never written."""

from pathlib import Path
from typing import Any

import pytest

from halfangle_service import cli
from halfangle_service.errors import Disagreement, Unreachable
from halfangle_service.registry import load_registry
from halfangle_service.topics.jobs.plan.shop.profiles import ProfilesError, read_profiles
from http_support import service_with
from source_support import ROOT

HARROW_LANE = ROOT / "docker/profiles/harrow_lane.toml"
CENTER: dict[str, Any] = {
    "units": "in",
    "job": "HL-0412 machine center",
    "shop_profile": "Harrow Lane",
    "feature": load_registry().operations["jobs.plan"].example["feature"],
}


def written(tmp_path: Path, changes: dict[str, str]) -> Path:
    """The example's file with words changed."""
    text = HARROW_LANE.read_text("utf-8")
    for old, new in changes.items():
        assert old in text
        text = text.replace(old, new, 1)
    path = tmp_path / "shop.toml"
    path.write_text(text, "utf-8")
    return path


def test_a_request_names_a_profile_of_the_service() -> None:
    """A service started with a file plans with the profile that a request names."""
    before = HARROW_LANE.read_bytes()
    with service_with(profiles=HARROW_LANE) as service:
        answer = service.post("/v1/jobs/plan", json=CENTER)
        assert answer.status_code == 200, answer.text
        result = answer.json()["result"]
    assert result["shop_profile"] == "Harrow Lane"
    assert result["adapter"] == "Morse 2 adapter"
    assert result["best"] == "sine-plate"
    ways = {way["way"] for way in result["ways"]}
    assert ways == {
        "sine-plate",
        "quarter-turn",
        "dressed-wheel",
        "wheel-side",
        "swivelled-workhead",
    }
    assert HARROW_LANE.read_bytes() == before


def test_a_profile_is_its_equipment(tmp_path: Path) -> None:
    """A plan by a profile is that by the same equipment sent; its digest names what it holds."""
    profile = read_profiles(HARROW_LANE)["Harrow Lane"]
    operation = load_registry().operations["jobs.plan"]
    by_profile = operation.in_shop({"Harrow Lane": profile}).calculate(
        operation.request.model_validate(CENTER)
    )
    sent = {**CENTER, "equipment": profile.equipment.model_dump(exclude_none=True)}
    sent.pop("shop_profile")
    by_itself = operation.calculate(operation.request.model_validate(sent))
    assert by_profile.result.ways == by_itself.result.ways
    assert by_itself.result.shop_profile_digest is None
    assert by_profile.result.shop_profile_digest == profile.digest
    other = read_profiles(written(tmp_path, {"largest_angle = 60": "largest_angle = 50"}))
    assert other["Harrow Lane"].digest != profile.digest
    blanks = read_profiles(written(tmp_path, {"largest_angle = 60": "largest_angle  =  60.0 # so"}))
    assert blanks["Harrow Lane"].digest == profile.digest


def test_an_unknown_profile_is_refused_with_those_there_are() -> None:
    """A name that the service was not started with is refused; so is another unit."""
    operation = load_registry().operations["jobs.plan"].in_shop(read_profiles(HARROW_LANE))
    unknown = operation.request.model_validate({**CENTER, "shop_profile": "Elm Street"})
    with pytest.raises(Unreachable, match="it knows: Harrow Lane") as refused:
        operation.calculate(unknown)
    assert set(refused.value.fields) == {"shop_profile"}
    metric = operation.request.model_validate({**CENTER, "units": "mm"})
    with pytest.raises(Disagreement, match="are 'in', not 'mm'") as refused_units:
        operation.calculate(metric)
    assert refused_units.value.fields == {"units": "should be in"}


@pytest.mark.parametrize(
    ("changes", "said"),
    [
        ({"name = ": "nam = "}, "profile/0/nam: there is no such field; the nearest is name"),
        ({"center_distance = 5": "center_distance = -5"}, "sine_plates/0/center_distance"),
        ({"center_distance = 5": 'center_distance = "5"'}, "sine_plates/0/center_distance"),
        ({"center_distance = 5\n": "center_distance = 500\n"}, "sine_plates/0/center_distance"),
        ({"compound plate": "5 in plate"}, "compound_plates/0/name: repeats equipment/sine_plates"),
        ({'set = "inch-81"': 'set = "inch-81"\nmissing = [0.77]'}, "block_sets/0/missing/0"),
        ({'set = "inch-81"': 'set = "inch-18"'}, "block_sets/0/set"),
        ({'base_raised_side = "back"': 'base_raised_side = "left"'}, "base_raised_side"),
        ({'designation = "morse-2"': 'designation = "morse-22"'}, "adapters/0/shank/designation"),
        ({"[profile.equipment]": "[profile.equipment"}, "Expected"),
        ({'units = "in"': 'units = "in"\nwriten = 1'}, "profile/0/writen"),
    ],
)
def test_a_wrong_file_is_refused_at_the_start(
    tmp_path: Path, changes: dict[str, str], said: str
) -> None:
    """The service does not start with a file that is wrong, and says in which field."""
    path = written(tmp_path, changes)
    with pytest.raises(ProfilesError, match=said) as refused:
        read_profiles(path)
    assert str(path) in str(refused.value)


def test_two_profiles_of_one_name_are_refused(tmp_path: Path) -> None:
    """A request could not say which of two it means."""
    text = HARROW_LANE.read_text("utf-8")
    path = tmp_path / "shop.toml"
    path.write_text(text + text, "utf-8")
    with pytest.raises(ProfilesError, match="profile/1/name: 'Harrow Lane' is there twice"):
        read_profiles(path)


def test_the_command_says_what_is_wrong_with_the_file(
    tmp_path: Path, capfd: pytest.CaptureFixture[str]
) -> None:
    """`halfangle-service serve --profiles` of a file that is not there ends before it serves."""
    with pytest.raises(SystemExit, match="2"):
        cli.main(["serve", "--profiles", str(tmp_path / "none.toml")])
    assert "none.toml" in capfd.readouterr().err
