"""The two sides of a comparison: a tree each, and the answers of its service, kept where asked."""

import hashlib
import json
import os
import subprocess
import sys
import tempfile
from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

from releases.paths import Json
from releases.schemas import path_of
from releases.translation import Answer

ROOT = Path(__file__).parents[3]
RUNNER = Path(__file__).parent / "runner.py"


def git(*arguments: str) -> str:
    """Run git in this repository; gives what it prints."""
    return subprocess.run(
        ["git", *arguments],
        cwd=ROOT,
        check=True,
        capture_output=True,
        text=True,
    ).stdout


@contextmanager
def tree_of(revision: str) -> Iterator[Path]:
    """Check a revision out in a temporary worktree."""
    with tempfile.TemporaryDirectory() as folder:
        tree = Path(folder) / "tree"
        git("worktree", "add", "--quiet", "--detach", str(tree), revision)
        try:
            yield tree
        finally:
            git("worktree", "remove", "--force", str(tree))


def contract_of(revision: str) -> dict[str, Any]:
    """Give the committed contract of a revision."""
    contract: dict[str, Any] = json.loads(git("show", f"{revision}:openapi/openapi.json"))
    return contract


def answers_of(tree: Path, requests: Iterable[tuple[str, Json]]) -> list[tuple[Answer, float]]:
    """Ask the service of a tree, in a process of its own; gives answers and seconds."""
    asked = "".join(
        json.dumps({"path": path_of(operation), "body": json.dumps(body, ensure_ascii=False)})
        + "\n"
        for operation, body in requests
    )
    environment = {k: v for k, v in os.environ.items() if not k.startswith("HALFANGLE_")}
    environment |= {"PYTHONPATH": str(tree / "service"), "PYTHONDONTWRITEBYTECODE": "1"}
    done = subprocess.run(
        [sys.executable, str(RUNNER), str(tree / "service")],
        input=asked,
        stdout=subprocess.PIPE,
        env=environment,
        text=True,
        check=False,
        cwd=tree,
    )
    if done.returncode != 0:
        raise SystemExit(f"the service of {tree} did not answer all requests")
    told = [json.loads(line) for line in done.stdout.splitlines()]
    return [(Answer(row["status"], row["document"]), row["seconds"]) for row in told]


def answers_before(
    revision: str, requests: list[tuple[str, Json]], cache: Path | None
) -> list[tuple[Answer, float]]:
    """Give the answers of a revision, from the cache where they are there already."""
    if cache is None:
        with tree_of(revision) as tree:
            return answers_of(tree, requests)
    text = json.dumps([git("rev-parse", f"{revision}^{{commit}}").strip(), requests])
    kept = cache / f"{hashlib.sha256(text.encode()).hexdigest()[:20]}.jsonl"
    if not kept.exists():
        with tree_of(revision) as tree:
            answers = answers_of(tree, requests)
        cache.mkdir(parents=True, exist_ok=True)
        rows = ([answer.status, answer.document, seconds] for answer, seconds in answers)
        part = kept.with_suffix(f".{os.getpid()}")
        part.write_text("".join(json.dumps(row) + "\n" for row in rows), encoding="utf-8")
        part.rename(kept)
    lines = kept.read_text(encoding="utf-8").splitlines()
    return [(Answer(s, d), seconds) for s, d, seconds in map(json.loads, lines)]
