"""Jobs planned, loaded as routings and flagged when stale, in a real ERP that runs in memory."""

import json
import os
import subprocess
from pathlib import Path
from typing import Any

import pytest

from serving_support import free_port, serving
from sheets_support import center_job
from support import need_program

ROOT = Path(__file__).parents[2]
#: The Python that has the ERP, which is no dependency of ours, not of the tests either.
ERP = Path(os.environ.get("ERP_PYTHON", ROOT / ".venv-erp/bin/python"))
CONNECTOR = ROOT / "client/examples/erp"
CENTER = "HL-0412 machine center"
FACE = "HL-0413 face of 22°30′"
_SERVICE = "from halfangle_service.cli import main; raise SystemExit(main())"
_LATER = f"import halfangle_service; halfangle_service.__version__ = '0.99.0'; {_SERVICE}"
_FACE = {"kind": "angled-face", "face_angle": 22.5, "tolerance_arcsec": 60, "rise": 0.5}

Json = dict[str, Any]


def jobs() -> Json:
    """Two jobs, and one whose tolerance no way keeps."""
    center = center_job()
    feature = {**center["feature"], "included_angle_tolerance_arcsec": 1}
    return {
        "jobs": [center, center_job(job=FACE, feature=_FACE)],
        "stopped": center_job(job="HL-0414 too close", feature=feature),
    }


@pytest.fixture(scope="module")
def told(pytestconfig: pytest.Config) -> Json:
    """What the ERP holds after each of the driver's steps."""
    need_program(ERP.exists(), "the ERP is not installed: `bash .ci/erp .venv-erp` does it")
    # The database as it is after its modules were activated, which takes some 20 s, is kept.
    kept = pytestconfig.cache.mkdir("erp") if pytestconfig.cache else ROOT / ".pytest_cache"
    environment = {
        "PATH": os.environ["PATH"],
        "PYTHONPATH": os.pathsep.join(map(str, (ROOT / "client", CONNECTOR))),
        "TRYTOND_DATABASE_URI": "sqlite://",
        "DB_NAME": ":memory:",
        "DB_CACHE": str(kept),
    }
    ports = free_port(), free_port()
    now, later = (
        serving(["-c", code, "serve", "--port", str(port), "--log-level", "error"], port)
        for code, port in zip((_SERVICE, _LATER), ports, strict=True)
    )
    with now, later:
        urls = [f"http://127.0.0.1:{port}" for port in ports]
        done = subprocess.run(
            [str(ERP), "-W", "ignore", str(CONNECTOR / "in_memory.py"), *urls],
            input=json.dumps(jobs()),
            env=environment,
            capture_output=True,
            text=True,
            check=False,
        )
    assert done.returncode == 0, done.stderr
    printed: Json = json.loads(done.stdout)
    return printed


@pytest.mark.program
def test_two_jobs_share_their_master_operations(told: Json) -> None:
    """What was made for the first job is found for the second; no code is there twice."""
    first, second = told["loaded"]
    assert first["reused"] == []
    assert "HA-SET-SINE-PLATE" in first["made"]
    assert second["reused"] == ["HA-DRESS-FLAT-WHEEL", "HA-SET-SINE-PLATE", "HA-FINISH"]
    codes = [name.partition(" ")[0] for name in told["operations"]]
    assert sorted(codes) == sorted({*first["made"], *second["made"]})
    assert len(codes) == len(first["made"]) + len(second["made"])


@pytest.mark.program
def test_an_order_has_a_work_for_each_operation_at_its_place(told: Json) -> None:
    """A production made from the routing has its operations in order, each at its work center."""
    center, _ = told["works"]
    assert [name.partition(" ")[0] for name, _ in center] == told["loaded"][0]["made"]
    places = {name.partition(" ")[0]: place for name, place in center}
    assert places["HA-SET-SINE-PLATE"] == "Surface grinding 1"
    assert places["HA-INSPECT-OVER-ROLLS"] == "Inspection 1"


@pytest.mark.program
def test_what_is_of_the_job_stands_with_its_own_step(told: Json) -> None:
    """Two jobs on one master operation have each its own stack, time and cautions."""
    (center,), (face,) = (notes[2] for notes in told["notes"])
    assert "Set 5 in plate to 30°00'00\"" in center
    assert "VALUE high/total = 2.5 inch" in center
    assert "TIME to set up: 2040 s, 1 × batch" in center
    assert "CAUTION Read the size on each block aloud" in center
    assert "Set 5 in plate to 22°30'00\"" in face
    assert "VALUE high/total = 1.9134 inch" in face


@pytest.mark.program
def test_what_stops_is_not_loaded(told: Json) -> None:
    """A job that no way keeps is told with its reason, and leaves nothing in the ERP."""
    assert "No way of the shop keeps every limit" in told["stopped"]
    assert told["fresh"] == []


@pytest.mark.program
def test_the_same_plan_is_loaded_once(told: Json) -> None:
    """A job loaded again with the same fingerprint changes nothing."""
    assert told["again"] == told["loaded"][0] | {"made": [], "unchanged": True}


@pytest.mark.program
def test_a_changed_request_is_stale_until_its_orders_are_done(told: Json) -> None:
    """One piece more is another plan: its order is listed, also after the job was planned again."""
    center, face = told["orders"]
    reason = "the request, or the shop's profile, has changed"
    assert told["changed"] == [{"job": FACE, "reason": reason, "productions": [face]}]
    assert told["replanned"]["fingerprint"] != told["loaded"][1]["fingerprint"]
    assert told["replanned"]["made"] == []
    assert told["after"] == told["changed"]
    assert center != face


@pytest.mark.program
def test_a_changed_release_makes_every_plan_stale(told: Json) -> None:
    """By a later release each job is listed with both releases, and its open orders."""
    center, face = told["orders"]
    assert {one["job"] for one in told["later"]} == {CENTER, FACE}
    assert all("now 0.99.0" in one["reason"] for one in told["later"])
    assert {number for one in told["later"] for number in one["productions"]} == {center, face}
