"""A service of the release before the client's own: what it lacks is absent, or said plainly."""

import copy
import json
from pathlib import Path
from typing import Any

import pytest

from client_support import Act, FaultServer
from earlier import earlier_release, readable
from halfangle_client import Halfangle
from halfangle_client.errors import InvalidRequest, NotFound, ProblemError, UnexpectedAnswer
from halfangle_service.registry import load_registry
from inlining import inlined
from thinning import thinned

ROOT = Path(__file__).parents[2]
CONTRACT = inlined(json.loads((ROOT / "openapi/openapi.json").read_text("utf-8")))
RESULT = "SineSettingResult"


def without(contract: dict[str, Any], field: str) -> dict[str, Any]:
    """The contract as it was before a field of a result came."""
    older = copy.deepcopy(contract)
    schema = older["components"]["schemas"][RESULT]
    del schema["properties"][field]
    schema["required"] = [name for name in schema["required"] if name != field]
    return older


def test_a_field_that_the_release_before_lacks_may_be_absent() -> None:
    """The client's models are made so that its absence is read, as nothing else's is."""
    before = without(CONTRACT, "bench_step")
    model = thinned(readable(CONTRACT, before), ())["components"]["schemas"][RESULT]
    own = CONTRACT["components"]["schemas"][RESULT]
    assert "bench_step" in own["required"]
    assert set(model["required"]) == set(own["required"]) - {"bench_step"}
    assert "bench_step" in model["properties"]


def test_what_both_releases_have_stays_required() -> None:
    """Beside a contract of the same fields, or none, nothing becomes optional."""
    assert readable(CONTRACT, CONTRACT) == CONTRACT
    assert readable(CONTRACT, None) == CONTRACT
    added = copy.deepcopy(CONTRACT)
    del added["components"]["schemas"][RESULT]
    assert readable(CONTRACT, added) == CONTRACT


def test_the_release_before_is_the_newest_kept_of_another(tmp_path: Path) -> None:
    """The contract that is being released is not its own forerunner; 0.10 comes after 0.9."""
    for release in ("0.2.0", "0.9.0", "0.10.0"):
        (tmp_path / f"{release}.json").write_text(json.dumps({"of": release}), "utf-8")
    assert earlier_release(tmp_path, "0.10.0") == {"of": "0.9.0"}
    assert earlier_release(tmp_path, "0.11.0") == {"of": "0.10.0"}
    (tmp_path / "0.9.0.json").unlink()
    (tmp_path / "0.2.0.json").unlink()
    assert earlier_release(tmp_path, "0.10.0") is None


def test_an_answer_that_lacks_what_was_always_there_is_refused(faults: FaultServer) -> None:
    """It is never read as null: the error names the field, and asks which release answers."""
    operation = load_registry().operations["sine.setting"]
    request = operation.request.model_validate(dict(operation.example))
    answer = json.loads(operation.answer_json(request))
    del answer["result"]["height"]
    faults.acts = [Act(body=json.dumps(answer).encode())]
    with (
        Halfangle(faults.url) as client,
        pytest.raises(UnexpectedAnswer, match=r"(?s)this release.*height"),
    ):
        client.sine.setting(units="in", center_distance=5, angle=30)


@pytest.mark.parametrize(
    ("problem", "error", "said"),
    [
        (
            {"type": "/problems/not-found", "title": "No such address", "status": 404,
             "detail": "There is nothing at /v1/sine/setting.", "errors": []},
            NotFound,
            "nothing at /v1/sine/setting",
        ),
        (
            {"type": "/problems/invalid-request", "title": "The request is wrong", "status": 422,
             "detail": "1 field is wrong.",
             "errors": [{"pointer": "/largest_angle", "message": "is not a field"}]},
            InvalidRequest,
            "largest_angle",
        ),
    ],
    ids=["an operation", "a field of a request"],
)  # fmt: skip
def test_what_an_older_service_does_not_know_is_an_error_of_its_own(
    faults: FaultServer, problem: dict[str, Any], error: type[ProblemError], said: str
) -> None:
    """A new operation is not found there, a new field refused by name: never passed over."""
    faults.acts = [
        Act(
            status=problem["status"],
            headers={"Content-Type": "application/problem+json"},
            body=json.dumps({"instance": "/v1/sine/setting", **problem}).encode(),
        )
    ]
    with Halfangle(faults.url) as client, pytest.raises(error, match=problem["title"]) as raised:
        client.sine.setting(units="in", center_distance=5, angle=30, largest_angle=60)
    assert said in f"{raised.value.detail} {raised.value.fields}"
