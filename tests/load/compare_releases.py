"""Compares the answers of two releases to the same seeded requests. Not collected.

    .venv/bin/python tests/load/compare_releases.py --before REV --cache DIR

Makes requests from the contract of the release before (`seeded_requests.py`), answers them in
process there (in a temporary worktree) and here, and compares answers and refusals value by value,
numbers exactly. What may differ is written down in `openapi/changelog/<release>/`: one TOML file a
topic, and `all.toml` for what holds everywhere. All else is a difference, and the exit status 1;
so is an entry of the changelog that never applied.

While renaming, run one operation or one topic at a time:

    … --operation sine.setting --only-differences --show 2
    … --operation 'sine.*'

The form of the changelog is described in `openapi/changelog/README.md`.
"""

import argparse
import sys
from collections.abc import Iterable, Sequence
from fnmatch import fnmatchcase
from pathlib import Path

from releases.changelog import Changelog, ChangelogError, load_changelog
from releases.comparing import Comparison
from releases.coverage import coverage_lines
from releases.paths import Json
from releases.report import Compared, Report, stale_lines
from releases.schemas import path_of, request_schemas
from releases.sides import ROOT, answers_before, answers_of, contract_of
from releases.translation import Answer, translated_request
from seeded_requests import seeded_requests

Asked = tuple[str, Json]


def newest(folder: Path) -> Path:
    """Give the folder of the newest release in the changelog."""
    releases = [entry for entry in folder.iterdir() if entry.is_dir()] if folder.is_dir() else []
    if not releases:
        return folder
    return max(releases, key=lambda entry: [int(part) for part in entry.name.split(".")])


def compared(
    requests: Sequence[Asked], before: Sequence[Answer], after_tree: Path, changelog: Changelog
) -> Report:
    """Answer the requests at the tree after, and compare."""
    names = {entry.name: entry for entry in changelog.operation}
    kept = [
        (operation, body, answer)
        for (operation, body), answer in zip(requests, before, strict=True)
        if not (operation in names and names[operation].gone)
    ]
    now = {name: names[name].to or name if name in names else name for name, _, _ in kept}
    of = {name: changelog.of(name) for name in now}
    sent = [(now[name], translated_request(body, of[name])) for name, body, _ in kept]
    after = [answer for answer, _ in answers_of(after_tree, sent)]
    comparisons = {name: Comparison(name, path_of(now[name]), of[name]) for name in now}
    for entry in changelog.operation:
        entry.use()
    report = Report()
    for (name, body, answer), (name_now, body_now), came in zip(kept, sent, after, strict=True):
        uses = comparisons[name].renames
        findings = comparisons[name].compare(body, answer, came)
        renamed = name != name_now or body != body_now or comparisons[name].renames > uses
        report.compared.append(Compared(name, body, body_now, renamed, findings))
    return report


def ran(operations: Iterable[str], all_operations: Iterable[str]) -> set[str]:
    """Give operations, whole topics (`sine.*`) and `*` as far as they were run whole."""
    run, known = set(operations), set(all_operations)
    for topic in {name.partition(".")[0] for name in known}:
        if {name for name in known if name.startswith(f"{topic}.")} <= run:
            run.add(f"{topic}.*")
    return run | {"*"} if known <= run else run


def arguments() -> argparse.Namespace:
    """Read the command line."""
    parser = argparse.ArgumentParser(
        description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter
    )
    parser.add_argument("--before", required=True, help="revision of the release before")
    parser.add_argument("--after", type=Path, default=ROOT, help="tree after; default: this one")
    parser.add_argument("--changelog", type=Path, help="folder; default: the newest of the tree's")
    parser.add_argument("--count", type=int, default=8_000, help="requests over all operations")
    parser.add_argument("--seed", type=int, default=11)
    parser.add_argument("--cache", type=Path, help="folder to keep the answers before in")
    parser.add_argument("--operation", default="*", help="only these, by their names before")
    parser.add_argument("--only-differences", action="store_true", help="leave out what is listed")
    parser.add_argument("--show", type=int, default=1, help="of each difference, so many in full")
    parser.add_argument("--coverage", action="store_true", help="only say what is reached")
    parser.add_argument("--changelog-only", action="store_true", help="only check the changelog")
    return parser.parse_args()


def main() -> int:
    """Compare, and print what was found."""
    wanted = arguments()
    contract = contract_of(wanted.before)
    operations = list(request_schemas(contract))
    folder = wanted.changelog or newest(wanted.after / "openapi" / "changelog")
    try:
        changelog = load_changelog(folder, operations)
    except ChangelogError as error:
        print(f"changelog: {error}", file=sys.stderr)
        return 2
    if wanted.changelog_only:
        return 0
    requests = list(seeded_requests(contract, wanted.count, wanted.seed))
    before = [answer for answer, _ in answers_before(wanted.before, requests, wanted.cache)]
    if wanted.coverage:
        rows = [(*asked, answer) for asked, answer in zip(requests, before, strict=True)]
        print("\n".join(coverage_lines(contract, rows)))
        return 0
    chosen = [i for i, (name, _) in enumerate(requests) if fnmatchcase(name, wanted.operation)]
    if not chosen:
        raise SystemExit(f"no operation is called {wanted.operation}")
    requests, before = [requests[i] for i in chosen], [before[i] for i in chosen]
    report = compared(requests, before, wanted.after, changelog)
    stale = list(changelog.stale(ran((name for name, _ in requests), operations)))
    if not wanted.only_differences:
        print("\n".join(["What the changelog lists", *report.listed(), ""]))
    print("\n".join(["Differences", *report.differences(wanted.show), ""]))
    print("\n".join(["Entries of the changelog that never applied", *stale_lines(stale), ""]))
    print("\n".join(report.table(wanted.only_differences)))
    return 1 if report.failed or stale else 0


if __name__ == "__main__":
    raise SystemExit(main())
