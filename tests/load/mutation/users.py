"""Which tests look at a mutant: those that execute its line, or use what holds it."""

import ast
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from mutation.mutants import Mutant
from mutation.recording import Coverage
from mutation.trees import ROOT, SERVICE


@dataclass(frozen=True)
class _Part:
    """One statement of a module's top level: what it makes, and the names that it mentions."""

    file: str
    makes: frozenset[str]
    mentions: frozenset[str]
    first: int
    last: int
    runs: bool
    operation: str


class Users:
    """Follows names through the modules of the service to the tests that use them."""

    def __init__(self, recorded: Coverage) -> None:
        self._recorded = recorded
        self._parts = [
            part
            for path in sorted((ROOT / SERVICE).rglob("*.py"))
            for part in _parts_of(path.relative_to(ROOT).as_posix(), path)
        ]
        self._imports = {
            path.relative_to(ROOT).as_posix(): _imported(path)
            for path in sorted((ROOT / SERVICE).rglob("*.py"))
        }

    def tests_of(self, mutant: Mutant) -> list[str]:
        """Tests that may notice a mutant, the fastest first."""
        found: set[str] = set()
        names = mutant.made_at_import
        if not names:
            found = self._recorded.of_lines(mutant.file, mutant.first_line, mutant.last_line)
            names = (mutant.function,)
        if not found:
            found = self._tests_of_names(mutant.file, names)
        return sorted(found, key=lambda name: (self._recorded.tests[name].seconds, name))

    def _tests_of_names(self, file: str, names: tuple[str, ...]) -> set[str]:
        """Tests that execute a function, or ask an operation, which uses what bears these names."""
        waiting, seen = [(file, name) for name in names], set[tuple[str, str]]()
        tests: set[str] = set()
        while waiting:
            at = waiting.pop()
            if at in seen:
                continue
            seen.add(at)
            for part in self._using(*at):
                if part.runs:
                    tests |= self._recorded.of_lines(part.file, part.first, part.last)
                    if part.operation:
                        tests |= self._recorded.of_operation(part.operation)
                if not part.runs or part.first == part.last:
                    waiting += [(part.file, name) for name in part.makes]
        return tests

    def _using(self, file: str, name: str) -> Iterator[_Part]:
        """Parts that mention a name of a file, or make it, where the name reaches them."""
        for part in self._parts:
            reaches = part.file == file or name in self._imports[part.file]
            if reaches and (name in part.mentions or (part.file == file and name in part.makes)):
                yield part


def _parts_of(file: str, path: Path) -> Iterator[_Part]:
    for node in ast.parse(path.read_text("utf-8")).body:
        if isinstance(node, ast.Import | ast.ImportFrom):
            continue
        function = isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef)
        runs = function or isinstance(node, ast.ClassDef)
        first = node.body[0].lineno if isinstance(node, ast.FunctionDef) else node.lineno
        yield _Part(
            file,
            frozenset(_made_by(node)),
            frozenset(_mentioned(node)),
            first,
            node.end_lineno or first,
            runs,
            _operation_of(node) if isinstance(node, ast.FunctionDef) else "",
        )
        if isinstance(node, ast.ClassDef):
            # A class is used where its name is, besides where its methods run.
            makes = frozenset({node.name})
            yield _Part(file, makes, frozenset(_mentioned(node)), first, first, False, "")


def _made_by(node: ast.stmt) -> Iterator[str]:
    match node:
        case ast.FunctionDef() | ast.AsyncFunctionDef() | ast.ClassDef():
            yield node.name
        case _:
            for part in ast.walk(node):
                if isinstance(part, ast.Name) and isinstance(part.ctx, ast.Store):
                    yield part.id


def _mentioned(node: ast.AST) -> Iterator[str]:
    """Names that a statement reads, and files of tables that it names."""
    for part in ast.walk(node):
        match part:
            case ast.Name(id=name) | ast.Attribute(attr=name):
                yield name
            case ast.Constant(value=str() as text) if text.endswith(".toml"):
                yield text


def _imported(path: Path) -> frozenset[str]:
    """Names that a module has from others; tables lie beside the module that reads them."""
    found = {table.name for table in path.parent.glob("*.toml")}
    for node in ast.walk(ast.parse(path.read_text("utf-8"))):
        if isinstance(node, ast.ImportFrom):
            found |= {alias.name for alias in node.names}
    return frozenset(found)


def _operation_of(node: ast.FunctionDef) -> str:
    """Dotted name of the operation that a function is declared as."""
    for decorator in node.decorator_list:
        match decorator:
            case ast.Call(
                func=ast.Name(id="operation"), args=[ast.Constant(value=str() as name), *_]
            ):
                return name
    return ""
