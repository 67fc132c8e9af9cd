"""Where the service makes its advisories, and which of these places made those of an answer.

A place is a call of `note`, `caution` or `stop` inside a function; or, in a function, what it takes
of another module that makes advisories, or of its own module's constants. They are read from the
source, so that a new advisory is a new place.
"""

import ast
import json
import sys
from collections import defaultdict
from collections.abc import Iterator, Sequence
from functools import cache
from importlib import import_module
from pathlib import Path
from types import FrameType
from typing import Any, NamedTuple

import pytest

from advisories.row import Request, Row
from halfangle_service.fields import advisories, supply
from halfangle_service.fields.advisories import Advisory
from halfangle_service.registry import load_registry
from source_support import ALL_FILES, SERVICE, tree_of

#: What carries answers as they are and makes no advisory: above `topics`, and what declares them; a
#: routing has those of its plan.
_CARRIERS = (
    "http/", "sheets/", "topics/jobs/routing/", "app.py", "cli.py", "operation.py", "registry.py",
)  # fmt: skip
FILES = [p for p in ALL_FILES if not str(p.relative_to(SERVICE)).startswith(_CARRIERS)]

KINDS = ("note", "caution", "stop")
#: First and last line of a piece of source.
Lines = tuple[int, int]
#: Codes by module, and by the name of the function or the constant there that gives them.
Makers = dict[str, dict[str, set[str]]]


class Place(NamedTuple):
    """Where an advisory of a code is made.

    `name` is a kind (`note`, `caution`, `stop`), or what the function takes of another place.
    """

    module: str
    function: str
    name: str
    code: str
    lines: Lines

    def __str__(self) -> str:
        """As a reader finds it."""
        return f"{self.module}:{self.lines[0]} {self.function}, {self.name}, {self.code}"


def places() -> set[Place]:
    """Every place in the service."""
    makers = _makers()
    return {p for path in FILES for f in _functions(path) for p in _places_in(path, f, makers)}


def places_hit(row: Row, every: set[Place]) -> set[Place]:
    """Places that made the advisory of a row."""
    hit: set[Place] = set()

    def made(**fields: Any) -> Advisory:
        """Make the advisory, and note the places that its maker was called from."""
        frames = list(_frames())
        hit.update(p for p in every if p.code == fields["code"] and _made_at(p, frames))
        return Advisory(**fields)

    with pytest.MonkeyPatch.context() as patch:
        # What is made once and kept, for the next request or by an import, is made anew.
        if row.code == "set-of-other-units":
            supply._set_supply.cache_clear()
        patch.setattr(advisories, "Advisory", made)
        for place in every:
            module = import_module(place.module)
            if isinstance(constant := getattr(module, place.name, None), Advisory):
                signed = constant.model_copy(update={"message": str(place)})
                patch.setattr(module, place.name, signed)
        said = {a["message"] for a in answer(row.operation, row.raising)["advisories"]}
    signed_by = {place for place in every if str(place) in said}
    return {place for place in hit | signed_by if place.code == row.code}


def answer(operation: str, request: Request) -> dict[str, Any]:
    """Answer of an operation as JSON data."""
    calculated = load_registry().operations[operation]
    asked = calculated.request.model_validate_json(json.dumps(request))
    whole: dict[str, Any] = json.loads(calculated.answer_json(asked))
    return whole


def _frames() -> Iterator[FrameType]:
    """Frames that the maker of an advisory was called from, its own first."""
    frame: FrameType | None = sys._getframe(2)
    while frame is not None:
        yield frame
        frame = frame.f_back


def _made_at(place: Place, frames: Sequence[FrameType]) -> bool:
    """True where these frames passed through a place."""
    called = [f.f_code.co_name for f in frames]
    if place.name not in called:
        return False
    callers = frames[called.index(place.name) + 1 :]
    here = [f for f in callers if f.f_globals.get("__name__") == place.module]
    if place.name in KINDS:
        first, last = place.lines
        return any(first <= f.f_lineno <= last for f in here)
    return any(f.f_code.co_name == place.function for f in here)


def _places_in(path: Path, function: ast.FunctionDef, makers: Makers) -> Iterator[Place]:
    module, where = _module(path), function.name
    for call in _made_in(function):
        yield Place(module, where, _name(call), _code(call), _lines(call))
    taken = _imported_makers(path, makers)
    taken |= {name: codes for name, codes in makers[module].items() if name.isupper()}
    for node in _nodes(function):
        for code in taken.pop(_name(node), ()):
            assert isinstance(node, ast.expr)
            yield Place(module, where, _name(node), code, _lines(node))


def _makers() -> Makers:
    """Functions and constants of each module that give advisories, by themselves or by others."""
    makers: Makers = defaultdict(lambda: defaultdict(set))
    for path in FILES:
        for node in tree_of(path).body:
            if isinstance(node, ast.Assign) and isinstance(target := node.targets[0], ast.Name):
                makers[_module(path)][target.id] |= _codes_of(node)
    before = -1
    while before < (before := _count(makers)):
        for path in FILES:
            _learn(path, makers)
    return makers


def _learn(path: Path, makers: Makers) -> None:
    """Add what the functions of a module give, by what is known of the others so far."""
    own = makers[_module(path)]
    for function in _functions(path):
        known = own | _imported_makers(path, makers)
        names = {_name(node) for node in _nodes(function)} - {function.name}
        own[function.name] |= _codes_of(function).union(*(known.get(name, ()) for name in names))


def _imported_makers(path: Path, makers: Makers) -> dict[str, set[str]]:
    """Makers that a module takes of others, by their names."""
    return {
        alias.name: codes
        for node in _imports(path)
        for alias in node.names
        if (codes := makers.get(node.module or "", {}).get(alias.name))
    }


@cache
def _imports(path: Path) -> tuple[ast.ImportFrom, ...]:
    return tuple(node for node in _nodes(tree_of(path)) if isinstance(node, ast.ImportFrom))


@cache
def _nodes(tree: ast.AST) -> tuple[ast.AST, ...]:
    """Every node of a piece of source: kept, since each is gone over many times."""
    return tuple(ast.walk(tree))


def _count(makers: Makers) -> int:
    return sum(len(codes) for names in makers.values() for codes in names.values())


def _codes_of(node: ast.AST) -> set[str]:
    """Codes of the advisories that are made in a piece of source."""
    return {_code(call) for call in _made_in(node)}


def _made_in(node: ast.AST) -> Iterator[ast.Call]:
    """Calls of `note`, `caution` and `stop` in a piece of source, each with its code."""
    for call in _nodes(node):
        if (
            isinstance(call, ast.Call)
            and _name(call) in KINDS
            and call.args
            and isinstance(call.args[0], ast.Constant)
        ):
            yield call


def _functions(path: Path) -> Iterator[ast.FunctionDef]:
    return (node for node in _nodes(tree_of(path)) if isinstance(node, ast.FunctionDef))


def _name(node: ast.AST) -> str:
    """Name that a node calls or reads; empty for any other node."""
    named = node.func if isinstance(node, ast.Call) else node
    return named.id if isinstance(named, ast.Name) else ""


def _code(call: ast.Call) -> str:
    code = call.args[0]
    assert isinstance(code, ast.Constant)
    return str(code.value)


def _lines(node: ast.expr) -> Lines:
    return node.lineno, node.end_lineno or node.lineno


def _module(path: Path) -> str:
    parts = path.relative_to(SERVICE.parent).with_suffix("").parts
    return ".".join(parts[:-1] if parts[-1] == "__init__" else parts)
