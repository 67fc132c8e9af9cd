"""Finds the places of a module where a mutant can be made.

Left out, since only the wording changes: docstrings, descriptions, the texts of refusals and
advisories, figures within them, examples, relations and sources; and types.
"""

import ast
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from itertools import accumulate

from mutation.changes import ADVISORIES, bound_changes, changes_of, other_values
from mutation.mutants import Kind, Mutant

BOUNDS = {"ge", "gt", "le", "lt", "multiple_of", "min_length", "max_length"}
#: Calls whose arguments are said, not reckoned with.
_WORDED = {"note", "caution", "stop", "plain", "length", "small_length", "arcsec", "Source"}
_SAID_NAMES = {"__all__", "model_config", "EXAMPLE"}
_DECLARATIONS = {"operation", "published_table"}
#: Longest text of a change that is shown whole.
_SHOWN = 100


@dataclass(frozen=True)
class _Place:
    """Where the finder is: the statement around, and what of it runs when the module is loaded."""

    first: int = 1
    last: int = 1
    owners: tuple[str, ...] = ()
    function: str = ""

    def within(self, node: ast.stmt | ast.expr) -> "_Place":
        return replace(self, first=node.lineno, last=node.end_lineno or node.lineno)


class _Finder:
    """Walks the syntax tree of one file."""

    def __init__(self, file: str, source: str) -> None:
        self._file = file
        self._tree = ast.parse(source)
        lines = source.encode().splitlines(keepends=True)
        self._starts = [0, *accumulate(len(line) for line in lines)]
        names = {node.id for node in ast.walk(self._tree) if isinstance(node, ast.Name)}
        self._known = frozenset(names | _imported(self._tree))

    def run(self) -> Iterator[Mutant]:
        """Every mutant of the file."""
        yield from self._body(self._tree.body, _Place())

    def _body(self, body: Iterable[ast.stmt], place: _Place) -> Iterator[Mutant]:
        for statement in body:
            if not _is_docstring(statement):
                yield from self._statement(statement, place)

    def _statement(self, node: ast.stmt, place: _Place) -> Iterator[Mutant]:
        match node:
            case ast.FunctionDef() | ast.AsyncFunctionDef():
                yield from self._function(node, place)
            case ast.ClassDef(name=name):
                inside = place if place.owners else replace(place, owners=(name,))
                yield from self._body(node.body, inside)
            case ast.Import() | ast.ImportFrom() | ast.Global() | ast.Nonlocal():
                return
            case ast.Raise():
                yield from self._changes(node, place.within(node))
            case ast.Assign() | ast.AnnAssign():
                yield from self._assignment(node, place.within(node))
            case ast.If() | ast.While() | ast.For() | ast.With() | ast.Try() | ast.Match():
                yield from self._compound(node, place)
            case _:
                yield from self._node(node, place.within(node))

    def _compound(self, node: ast.stmt, place: _Place) -> Iterator[Mutant]:
        """A statement with statements within: its head is a statement of its own."""
        if isinstance(node, ast.If) and ast.unparse(node.test) == "TYPE_CHECKING":
            return
        yield from self._changes(node, place.within(getattr(node, "test", node)))
        for child in ast.iter_child_nodes(node):
            match child:
                case ast.stmt():
                    yield from self._statement(child, place)
                case ast.expr():
                    yield from self._node(child, place.within(child))
                case ast.ExceptHandler():
                    yield from self._body(child.body, place)
                case ast.match_case():
                    yield from self._body(child.body, place)
                case ast.withitem():
                    head = place.within(child.context_expr)
                    yield from self._node(child.context_expr, head)

    def _function(
        self, node: ast.FunctionDef | ast.AsyncFunctionDef, place: _Place
    ) -> Iterator[Mutant]:
        at_import = not place.function
        owners = place.owners or ((node.name,) if at_import else ())
        head = replace(place.within(node), owners=owners)
        for default in (*node.args.defaults, *node.args.kw_defaults):
            yield from self._default(default, head)
        name = place.function or (place.owners[0] if place.owners else node.name)
        yield from self._body(node.body, _Place(function=name))

    def _assignment(self, node: ast.Assign | ast.AnnAssign, place: _Place) -> Iterator[Mutant]:
        targets = node.targets if isinstance(node, ast.Assign) else [node.target]
        names = tuple(
            t.id for target in targets for t in ast.walk(target) if isinstance(t, ast.Name)
        )
        if _SAID_NAMES & set(names):
            return
        if not place.function and not place.owners:
            place = replace(place, owners=names)
        if isinstance(node, ast.AnnAssign):
            for part in ast.walk(node.annotation):
                if isinstance(part, ast.Call):
                    yield from self._field(part, place)
        if node.value is None:
            return
        if isinstance(node, ast.AnnAssign) and place.owners and not place.function:
            yield from self._default(node.value, place)
        yield from self._node(node.value, place)

    def _default(self, node: ast.expr | None, place: _Place) -> Iterator[Mutant]:
        if isinstance(node, ast.Constant) and isinstance(node.value, bool | int | float):
            for value in other_values(node.value):
                yield from self._made("default", node, ast.Constant(value), place)

    def _field(self, node: ast.Call, place: _Place) -> Iterator[Mutant]:
        """Bounds and default of a field; the rest of it is said to the reader."""
        for default in node.args[:1]:
            yield from self._default(default, place)
        for keyword in node.keywords:
            if keyword.arg == "default":
                yield from self._default(keyword.value, place)
            elif keyword.arg in BOUNDS:
                for kind, changed in bound_changes(keyword):
                    yield from self._made(kind, keyword, changed, place)

    def _node(self, node: ast.AST, place: _Place) -> Iterator[Mutant]:
        match node:
            case ast.JoinedStr() | ast.Lambda(body=ast.Constant()) | ast.keyword(arg="strict"):
                return
            case ast.Call(func=ast.Name(id="Field" | "Query" | "StringConstraints")):
                yield from self._field(node, place)
                return
            case ast.Call(func=ast.Name(id=name)) if name in _WORDED | _DECLARATIONS:
                yield from self._changes(node, place)
                return
            case ast.Call(func=ast.Attribute(attr=name)) if name in _WORDED:
                return
            case ast.Subscript(value=ast.Name(id="Literal")):
                return
            case ast.Subscript(value=ast.Name(id="Annotated")):
                for part in ast.walk(node.slice):
                    if isinstance(part, ast.Call):
                        yield from self._field(part, place)
                return
        yield from self._changes(node, place)
        for child in ast.iter_child_nodes(node):
            yield from self._node(child, place)

    def _changes(self, node: ast.AST, place: _Place) -> Iterator[Mutant]:
        for kind, target, changed in changes_of(node, self._known):
            yield from self._made(kind, target, changed, place)

    def _made(self, kind: Kind, node: ast.AST, changed: ast.AST, place: _Place) -> Iterator[Mutant]:
        located = node
        assert isinstance(located, ast.expr | ast.stmt | ast.keyword)
        start = self._starts[located.lineno - 1] + located.col_offset
        end = self._starts[(located.end_lineno or 0) - 1] + (located.end_col_offset or 0)
        after = ast.unparse(ast.fix_missing_locations(changed))
        in_parentheses = isinstance(changed, ast.expr) and not isinstance(changed, ast.Constant)
        yield Mutant(
            self._file,
            located.lineno,
            kind,
            start,
            end,
            f"({after})" if in_parentheses else after,
            _short(ast.unparse(node)),
            _short(after.replace(ADVISORIES, "")),
            place.first,
            place.last,
            () if place.function else place.owners,
            place.function,
        )


def mutants_of_module(file: str, source: str) -> list[Mutant]:
    """Every mutant of a module, in the order of its text."""
    return sorted(_Finder(file, source).run(), key=lambda m: (m.start, m.end, m.kind, m.after))


def _imported(tree: ast.Module) -> set[str]:
    found = (node for node in ast.walk(tree) if isinstance(node, ast.Import | ast.ImportFrom))
    return {alias.asname or alias.name for node in found for alias in node.names}


def _is_docstring(node: ast.stmt) -> bool:
    return isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant)


def _short(text: str) -> str:
    """Text on one line, its middle left out where it is long."""
    text = " ".join(text.split())
    return text if len(text) <= _SHOWN else f"{text[: _SHOWN // 2]} … {text[-_SHOWN // 2 :]}"
