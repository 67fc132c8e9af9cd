"""Measures a column of cells that each ask the service, as LibreOffice Calc calculates it.

    python tests/load/spreadsheet_column.py [--cells 2000] [--locale de-DE]

Each cell is the README's first formula. Printed are the seconds to fill the column, to calculate it
again after every angle changed, and again with nothing changed; a cell's share, and the processor
time and the requests of the service. Needs `libreoffice-calc` and `python3-uno`.
"""

import argparse
import json
import re
import resource
import subprocess
import sys
from pathlib import Path
from urllib.request import urlopen

TESTS = Path(__file__).resolve().parents[1]
sys.path[:0] = [str(TESTS), str(TESTS.parent / "service")]

from serving_support import free_port, serving  # noqa: E402

PRINTED_AT = "http://127.0.0.1:8765"
CALC = TESTS / "spreadsheet" / "calc.py"
_COUNTED = re.compile(r'^halfangle_requests_total\{method="(\w+)".*values.*status="(\d+)"\} (\S+)$')


def main() -> None:
    """Start a service, let Calc ask it, print what that took."""
    parser = argparse.ArgumentParser(description=(__doc__ or "").partition("\n")[0])
    parser.add_argument("--cells", type=int, default=2_000)
    parser.add_argument("--locale", default="en-US")
    options = parser.parse_args()
    cells: int = options.cells
    port = free_port()
    origin = f"http://127.0.0.1:{port}"
    readme = (TESTS.parent / "README.md").read_text("utf-8")
    formula = next(line for line in readme.splitlines() if line.startswith("="))
    asked = {
        "locale": options.locale,
        "cells": {f"A{k + 1}": 1.0 + 80.0 * k / cells for k in range(cells)},
        "typed": {"B1": formula.replace(PRINTED_AT, origin)},
        "rows": cells,
        "read": ["B1"],
        "changed": {"A1": 0.001},
    }
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    command = ["-m", "halfangle_service.cli", "serve", "--port", str(port), "--log-level", "error"]
    with serving(command, port):
        done = subprocess.run(
            ["/usr/bin/python3", str(CALC)],
            input=json.dumps(asked),
            capture_output=True,
            text=True,
            check=True,
        )
        between = resource.getrusage(resource.RUSAGE_CHILDREN)
        with urlopen(f"{origin}/metrics") as metrics:
            lines = metrics.read().decode().splitlines()
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    found = json.loads(done.stdout)
    wrong = sum(1 for error, _, _ in found["cells"]["B1"] if error)
    print(f"{cells} cells in {options.locale}, {wrong} of them in error")
    for name, seconds in found["seconds"].items():
        print(f"{name:>10}: {seconds:7.3f} s, {1e3 * seconds / cells:6.2f} ms a cell")
    print(f"processor time of Calc {_cpu(between) - _cpu(before):.2f} s")
    print(f"processor time of the service, start included, {_cpu(after) - _cpu(between):.2f} s")
    for counted in filter(None, map(_COUNTED.match, lines)):
        print(f"{counted[1]:>8} answered {counted[2]}: {float(counted[3]) / cells:.2f} a cell")


def _cpu(usage: resource.struct_rusage) -> float:
    return usage.ru_utime + usage.ru_stime


if __name__ == "__main__":
    main()
