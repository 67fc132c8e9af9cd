"""Faults that a service meets in years of use, each tried on one of its own. Not collected.

    python tests/load/faults.py                       all of them, some three minutes
    python tests/load/faults.py --only killed-worker --seconds 30
    python tests/load/faults.py --list

Callers know the right answers (the sine of each angle, blocks that come to their height). Prints a
table: what was done, what became of the requests, what else was seen, memory at rest, at its most
and after. Ends with status 1 where anything that was accepted is lost or wrong, where the service
did not come back to what it was, or where a fault left no trace in the log. Some faults need root
(mounts, another user), haproxy or libfaketime; what is not there is said, and is no pass.
"""

import argparse
import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path

_TESTS = Path(__file__).parents[1]
sys.path[:0] = [str(_TESTS), *(str(_TESTS.parent / part) for part in ("service", "client"))]

from faulty import ending, holding, surroundings  # noqa: E402
from faulty.finding import Finding, report, status  # noqa: E402

Fault = Callable[[Path, float], Finding]

FAULTS: dict[str, Fault] = {
    "killed-worker": ending.killed_worker,
    "rolling-restart": ending.rolling_restart,
    "batch-at-stop": ending.batch_at_stop,
    "table-at-stop": ending.table_at_stop,
    "slow-callers": holding.slow_callers,
    "bodies-held-back": holding.bodies_held_back,
    "idle-connections": holding.idle_connections,
    "no-descriptors": surroundings.no_descriptors,
    "full-disk": surroundings.full_disk,
    "no-room-at-all": surroundings.no_room_at_all,
    "log-unread": surroundings.log_unread,
    "clock-jumps": surroundings.clock_jumps,
    "read-only": surroundings.read_only,
}


def tried(fault: Fault, seconds: float) -> Finding:
    """Try a fault; one whose trial itself fails is a finding that fails."""
    with tempfile.TemporaryDirectory(prefix="halfangle-fault-") as folder:
        try:
            return fault(Path(folder), seconds)
        except Exception as error:
            sentence = f"the trial ran to its end: {type(error).__name__}: {error}"
            return Finding((fault.__doc__ or "").strip(), must={sentence: False})


def main() -> int:
    """Try what is asked for; give the exit status."""
    parser = argparse.ArgumentParser(description=(__doc__ or "").partition("\n")[0])
    parser.add_argument("--only", choices=FAULTS, action="append", help="this one; may be repeated")
    parser.add_argument("--seconds", type=float, default=9.0, help="under load, of each fault")
    parser.add_argument("--list", action="store_true", help="what there is to try")
    options = parser.parse_args()
    if options.list:
        for name, fault in FAULTS.items():
            print(f"{name:17} {(fault.__doc__ or '').strip()}")
        return 0
    findings: dict[str, Finding] = {}
    for name in options.only or FAULTS:
        began = time.monotonic()
        findings[name] = tried(FAULTS[name], options.seconds)
        verdict = "; ".join(findings[name].failures()) or findings[name].untried or "well"
        print(f"{name}: {time.monotonic() - began:.0f} s, {verdict}", file=sys.stderr, flush=True)
    print("\n".join(report(findings)))
    return status(findings)


if __name__ == "__main__":
    raise SystemExit(main())
