"""Changes the service in one small place at a time, and tells which changes no test notices.

    .venv/bin/python tests/load/mutants.py --seed 13 --count 300 --jobs 2
    .venv/bin/python tests/load/mutants.py --only trade/cone.py:40

Not collected. The first run records which test executes which line (minutes, kept in `--cache`; a
changed test file is recorded again by itself, a changed service as a whole). Then each mutant is
put into a copy of the tree and the tests that execute its line are run, the fastest first, until
one fails. Mutants: operators, comparisons, conditions, constants, dropped terms and statements,
functions taken for their twins, severities, bounds, defaults, one digit of a table. Weights by kind
are those of `mutation/sampling.py`. Tests that hold the contract's or the source's form do not
count (`mutation/recording.py`).

A survivor that changes nothing, or nothing but words, is written in `mutation/accepted.toml` with
its reason. Ends with status 1 where fewer than 95 % of the others are noticed, or a survivor is not
explained.
"""

import argparse
import json
import os
import shutil
import sys
import tempfile
import time
from collections.abc import Callable
from functools import partial
from pathlib import Path

from mutation import forks
from mutation.exchanging import try_exchanged
from mutation.mutants import KINDS, Mutant
from mutation.recording import Coverage, record, test_files
from mutation.report import Report, load_accepted
from mutation.running import compile_tests, run_tests, try_afresh
from mutation.sampling import all_mutants, sample
from mutation.trees import ROOT, SERVICE, copy_tree
from mutation.trials import Finding, planned
from mutation.users import Users

AIM = 0.95
#: Tests of one mutant that take longer than this together are not all run.
MOST_SECONDS = 120.0


def main() -> int:
    """Run the command."""
    options = _options()
    chosen = _chosen(options)
    if options.list:
        print("\n".join(map(str, chosen)))
        return 0
    os.environ["OMP_NUM_THREADS"] = "1"
    forks.load_libraries()
    with tempfile.TemporaryDirectory(prefix="mutants-") as scratch:
        copies = _copies(Path(scratch), options.jobs)
        recorded = record(copies, options.cache, test_files(ROOT))
        if recorded.failed:
            print("failing as it is, not counted:", *recorded.failed, sep="\n    ")
        started = time.monotonic()
        findings = _run(chosen, copies, recorded)
    _keep(findings, options.cache / f"findings-{options.seed}.json")
    report = Report(findings, load_accepted())
    print("\n".join(report.lines()))
    print(f"{(time.monotonic() - started) / 60:.1f} minutes")
    return int(report.share < AIM or bool(report.unexplained()))


def _options() -> argparse.Namespace:
    parser = argparse.ArgumentParser(description=(__doc__ or "").partition("\n")[0])
    parser.add_argument("--seed", type=int, default=13)
    parser.add_argument("--count", type=int, default=300)
    parser.add_argument("--jobs", type=int, default=1)
    parser.add_argument("--only", default="", metavar="FILE[:LINE]", help="every mutant there")
    parser.add_argument("--kind", choices=KINDS, help="of this kind only")
    parser.add_argument("--again", action="store_true", help="those that survived the last time")
    parser.add_argument("--list", action="store_true", help="show the mutants, run nothing")
    parser.add_argument("--cache", type=Path, default=ROOT / ".mutants")
    return parser.parse_args()


def _chosen(options: argparse.Namespace) -> list[Mutant]:
    """Mutants as asked for: all of one place, else a sample."""
    mutants = list(all_mutants(options.seed))
    if options.only:
        file, _, line = options.only.partition(":")
        name = f"{SERVICE}/{file.removeprefix(f'{SERVICE}/')}"
        mutants = [m for m in mutants if m.file == name and line in {"", str(m.line)}]
    else:
        mutants = sample(mutants, options.seed, options.count)
    if options.again:
        kept = json.loads((options.cache / f"findings-{options.seed}.json").read_text("utf-8"))
        lived = {entry["mutant"] for entry in kept if not entry["dead"]}
        mutants = [mutant for mutant in mutants if str(mutant) in lived]
    return [mutant for mutant in mutants if options.kind in {None, mutant.kind}]


def _copies(scratch: Path, count: int) -> list[Path]:
    """Copies of the tree, compiled, which takes longer than most tests."""
    copies = [scratch / str(place) for place in range(count)]
    copy_tree(ROOT, copies[0])
    compiling = forks.start(compile_tests, copies[0], seconds=1800)
    forks.await_any([compiling])[0].answer()
    for copy in copies[1:]:
        shutil.copytree(copies[0], copy)
    return copies


def _run(chosen: list[Mutant], copies: list[Path], recorded: Coverage) -> list[Finding]:
    """Try all mutants, within functions by exchanging their code, the rest and survivors afresh."""
    users = Users(recorded)
    trials = [planned(m, users.tests_of(m), recorded, MOST_SECONDS) for m in chosen]
    findings = {t.mutant: t.found("not-covered") for t in trials if not t.tests}
    within = [t for t in trials if t.tests and not t.mutant.made_at_import]
    tell = partial(_tell, os.dup(sys.stdout.fileno()))
    if within:
        exchanged = try_exchanged(within, copies[0], len(copies), tell)
        findings |= {finding.mutant: finding for finding in exchanged}
    dead = {mutant for mutant, finding in findings.items() if finding.dead}
    afresh = [trial for trial in trials if trial.tests and trial.mutant not in dead]
    for place, finding in enumerate(try_afresh(afresh, copies), start=1):
        tell(f"{place}/{len(afresh)} {finding}")
        findings[finding.mutant] = finding
    _require_sound(list(findings.values()), copies[0], tell)
    return [findings[mutant] for mutant in chosen]


def _require_sound(findings: list[Finding], root: Path, tell: Callable[[str], None]) -> None:
    """Say which of the tests that failed do so on the service as it is, alone as they were run."""
    killers = sorted({f.by for f in findings if f.fate == "killed"})
    checking = forks.start(run_tests, root, killers, seconds=3600)
    answer = forks.await_any([checking])[0].answer()
    for name in answer[1] if answer else ["the tests that failed, which did not end"]:
        tell(f"fails without any mutant: {name}")


def _tell(descriptor: int, line: str) -> None:
    """Print a line from whatever process."""
    os.write(descriptor, f"{line}\n".encode())


def _keep(findings: list[Finding], path: Path) -> None:
    """Write down what became of each mutant, for a next run with `--again`."""
    kept = [{"mutant": str(f.mutant), "dead": f.dead, "fate": f.fate, "by": f.by} for f in findings]
    path.write_text(json.dumps(kept, indent=1, ensure_ascii=False), encoding="utf-8")


if __name__ == "__main__":
    sys.exit(main())
