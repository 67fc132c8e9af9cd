"""Most memory that one process of the service has taken, after each kind of work in turn.

    python tests/load/peaks.py [--python /opt/halfangle/bin/python]

The limits in `docker/kubernetes/` must hold these; each kind stays in what comes after it.
"""

import argparse
import json
import re
import subprocess
import sys
import time
import urllib.request
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from functools import partial
from pathlib import Path

# Run by itself it finds the tests' own support no other way.
sys.path.append(str(Path(__file__).parents[1]))

from serving_support import environment, free_port, listens

PLAN = "/v1/jobs/plan"


def main() -> None:
    """Start a service, load it, print its peaks."""
    parser = argparse.ArgumentParser(description=__doc__.partition("\n")[0])
    parser.add_argument("--python", default=sys.executable)
    options = parser.parse_args()
    port = free_port()
    command = [options.python, "-m", "halfangle_service.cli", "serve", "--port", str(port)]
    variables = environment() if options.python == sys.executable else {}
    silent = subprocess.DEVNULL
    with subprocess.Popen(command, env=variables, stderr=silent) as service:
        try:
            while not listens(port):
                time.sleep(0.05)
            print(f"{'at rest':34} {memory(service.pid, 'VmHWM'):4.0f} MB")
            for name, work in kinds(f"http://127.0.0.1:{port}").items():
                work()
                peak, now = (memory(service.pid, field) for field in ("VmHWM", "VmRSS"))
                print(f"{name:34} {peak:4.0f} MB, {now:.0f} after")
        finally:
            service.terminate()


def kinds(address: str) -> dict[str, Callable[[], object]]:
    """Each kind of work, by what it is called."""
    plan = json.dumps(example(address, "jobs.plan")).encode()
    sine = example(address, "sine.setting")
    row = json.dumps({"operation": "sine.setting", "request": sine}).encode() + b"\n"
    ask = partial(send, address)
    exercise = Path(__file__).parents[2] / "docker" / "exercise.py"
    return {
        "everything once": partial(
            subprocess.run, [sys.executable, str(exercise), address], stdout=subprocess.DEVNULL
        ),
        "50,000 rows in a batch": partial(ask, "/v1/batches", row * 50_000, "x-ndjson"),
        "200 plans, 16 at once": partial(at_once, 200, partial(ask, PLAN, plan)),
        "100 sheets as PDF, 16 at once": partial(
            at_once, 100, partial(ask, f"{PLAN}/sheet?format=pdf", plan)
        ),
        "32 bodies of a megabyte at once": partial(
            at_once, 64, partial(ask, PLAN, plan[:-1] + b" " * 1_040_000 + b"}")
        ),
    }


def at_once(count: int, work: Callable[[], object]) -> None:
    """Do it so many times, 16 at once."""
    with ThreadPoolExecutor(16) as callers:
        for done in [callers.submit(work) for _ in range(count)]:
            done.result()


def example(address: str, name: str) -> dict[str, object]:
    """The example of an operation."""
    with urllib.request.urlopen(f"{address}/v1/operations/{name}") as answer:
        found: dict[str, object] = json.load(answer)["result"]["example"]
        return found


def send(address: str, path: str, body: bytes, kind: str = "json") -> int:
    """Send a body, take the answer; gives its length."""
    headers = {"Content-Type": f"application/{kind}"}
    asked = urllib.request.Request(address + path, body, headers)
    with urllib.request.urlopen(asked, timeout=600) as answer:
        return len(answer.read())


def memory(process: int, field: str) -> float:
    """Megabytes that a process takes: now (VmRSS) or at most so far (VmHWM)."""
    status = Path(f"/proc/{process}/status").read_text()
    found = re.search(rf"{field}:\s+(\d+) kB", status)
    assert found is not None, status
    return int(found[1]) * 1_024 / 1e6


if __name__ == "__main__":
    main()
