"""Measures the processor time of the command `halfangle`: help, a table, JSON, a refusal.

    python tests/load/command_cost.py [--rounds N]

Each round starts every command once, so that the machine's pace is the same for all; medians are
printed, in milliseconds, the children's own time by `getrusage`.
"""

import argparse
import os
import resource
import statistics
import subprocess
import sys
from pathlib import Path

from halfangle_client.demo import running_service

ROOT = Path(__file__).resolve().parents[2]
SETTING = ("sine", "setting", "--units", "in", "--center-distance", "5", "--angle")
COMMANDS: dict[str, tuple[str, ...]] = {
    "python that does nothing": ("-c", "pass"),
    "python that imports the typed client": ("-c", "from halfangle_client import Halfangle"),
    "halfangle --help": ("--help",),
    "halfangle sine setting --help": ("sine", "setting", "--help"),
    "halfangle jobs center --help": ("jobs", "center", "--help"),
    "halfangle sine setting …": (*SETTING, "30"),
    "halfangle sine setting … --json": (*SETTING, "30", "--json"),
    "halfangle sine setting …, refused": (*SETTING, "130"),
    "halfangle call sine.setting …": (
        "call",
        "sine.setting",
        "units=in",
        "center_distance=5",
        "angle=30",
    ),
    "halfangle operations --search roll": ("operations", "--search", "roll"),
    "halfangle completion bash": ("completion", "bash"),
}


def main() -> None:
    """Start a service, and measure."""
    parser = argparse.ArgumentParser(description="Processor time of the command.")
    parser.add_argument("--rounds", type=int, default=9)
    rounds = parser.parse_args().rounds
    os.environ["PYTHONPATH"] = f"{ROOT / 'client'}:{ROOT / 'service'}"
    with running_service(f"{sys.executable} -m halfangle_service.cli") as client:
        os.environ["HALFANGLE_URL"] = client._manners.base_url
        found: dict[str, list[float]] = {name: [] for name in COMMANDS}
        for _ in range(rounds):
            for name, words in COMMANDS.items():
                found[name].append(milliseconds(words))
    for name, times in found.items():
        print(f"{statistics.median(times):6.0f} ms  {name}")


def milliseconds(words: tuple[str, ...]) -> float:
    """Processor time of one start."""
    module = () if words[0] == "-c" else ("-m", "halfangle_client.cli")
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    subprocess.run([sys.executable, *module, *words], check=False, capture_output=True)
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    return 1e3 * (after.ru_utime - before.ru_utime + after.ru_stime - before.ru_stime)


if __name__ == "__main__":
    main()
