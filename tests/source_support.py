"""The source as the structure tests read it: files, syntax trees, imports."""

import ast
import subprocess
from collections.abc import Iterable, Iterator
from functools import cache
from pathlib import Path

ROOT = Path(__file__).parents[1]
SERVICE = ROOT / "service/halfangle_service"
TRADE = SERVICE / "trade"
TOPICS = sorted(path.parent for path in (SERVICE / "topics").glob("*/__init__.py"))
ALL_FILES = sorted(SERVICE.rglob("*.py"))
TRADE_FILES = sorted(TRADE.rglob("*.py"))
TOPIC_FILES = [path for topic in TOPICS for path in sorted(topic.rglob("*.py"))]


@cache
def tree_of(path: Path) -> ast.Module:
    """Syntax tree of a file."""
    return ast.parse(path.read_text("utf-8"), str(path))


def imports_of(path: Path) -> Iterator[str]:
    """Every module that a file imports, anywhere in it."""
    for node in ast.walk(tree_of(path)):
        if isinstance(node, ast.Import):
            yield from (alias.name for alias in node.names)
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, f"{path} imports relatively"
            yield node.module or ""


def relative(path: Path) -> str:
    """Path from the root of the project, as a test's name."""
    return path.relative_to(ROOT).as_posix()


@cache
def tracked() -> tuple[Path, ...]:
    """Files under version control; those there are, where there is no version control."""
    listed = subprocess.run(["git", "ls-files", "-z"], cwd=ROOT, capture_output=True, check=False)
    if listed.returncode == 0:
        names: Iterable[str] = listed.stdout.decode().split("\0")
        return tuple(ROOT / name for name in names if name and (ROOT / name).is_file())
    return tuple(p for p in ROOT.rglob("*") if p.is_file() and not _is_left_over(p))


def _is_left_over(path: Path) -> bool:
    parts = path.relative_to(ROOT).parts
    return any(part.startswith(".venv") or part.endswith("cache__") for part in parts)


def advisory_codes() -> Iterator[tuple[str, str]]:
    """Code and severity of each advisory written in the service."""
    for path in ALL_FILES:
        for node in ast.walk(tree_of(path)):
            if (
                isinstance(node, ast.Call)
                and isinstance(node.func, ast.Name)
                and node.func.id in {"note", "caution", "stop"}
                and node.args
                and isinstance(node.args[0], ast.Constant)
            ):
                yield str(node.args[0].value), node.func.id
