"""What a node of a syntax tree is changed to, by kind: each change is one mutant."""

import ast
import copy
from collections.abc import Iterator

from mutation.mutants import Kind

#: A change: its kind, the node that is replaced, and what is put in its place.
Change = tuple[Kind, ast.AST, ast.AST]

_OPERATORS: dict[type[ast.operator], type[ast.operator]] = {
    ast.Add: ast.Sub,
    ast.Sub: ast.Add,
    ast.Mult: ast.Div,
    ast.Div: ast.Mult,
    ast.FloorDiv: ast.Mult,
    ast.Mod: ast.Mult,
    ast.Pow: ast.Mult,
    ast.LShift: ast.RShift,
    ast.RShift: ast.LShift,
    ast.BitAnd: ast.BitOr,
    ast.BitOr: ast.BitAnd,
    ast.BitXor: ast.BitOr,
    ast.MatMult: ast.Mult,
}
_COMPARISONS: dict[type[ast.cmpop], type[ast.cmpop]] = {
    ast.Lt: ast.LtE,
    ast.LtE: ast.Lt,
    ast.Gt: ast.GtE,
    ast.GtE: ast.Gt,
    ast.Eq: ast.NotEq,
    ast.NotEq: ast.Eq,
    ast.Is: ast.IsNot,
    ast.IsNot: ast.Is,
    ast.In: ast.NotIn,
    ast.NotIn: ast.In,
}
_TWINS = (
    ("sin", "cos"),
    ("asin", "acos"),
    ("arcsin", "arccos"),
    ("tan", "sin"),
    ("atan", "asin"),
    ("arctan", "arcsin"),
    ("min", "max"),
    ("minimum", "maximum"),
    ("floor", "ceil"),
    ("radians", "degrees"),
    ("deg2rad", "rad2deg"),
    ("any", "all"),
    ("to_mm", "from_mm"),
    ("to_tenth_nm", "from_tenth_nm"),
    ("argmin", "argmax"),
    ("nanmin", "nanmax"),
)
#: Functions by what they are taken for; those with one twin only in that direction come first.
_SWAPPED = {b: a for a, b in _TWINS if a not in {"tan", "atan", "arctan"}} | dict(_TWINS)
#: Names that the module need not have imported.
_BUILTIN = {"min", "max", "any", "all"}
#: Functions of one argument that are left out.
_LEFT_OUT = {"abs", "sqrt", "round", "sorted", "cumsum", "reversed"}
#: Functions of several values alike, of which one may be forgotten.
_OF_SEVERAL = {"hypot", "min", "max", "minimum", "maximum"}
#: Where severities are made; a module has imported those that it needs.
ADVISORIES = "__import__('halfangle_service.fields.advisories', fromlist='_')."
_SEVERITIES = {"stop": "caution", "caution": "note", "note": "caution"}
#: Dropped where a number is as small as the rounding of another: 5 % of it is nothing.
_SLACK = 1e-5


def changes_of(node: ast.AST, known: frozenset[str]) -> Iterator[Change]:
    """Changes of an expression or statement itself; `known` are the names that the module has."""
    match node:
        case ast.If() | ast.While() | ast.IfExp():
            if not _is_turned_already(node.test):
                yield "condition", node.test, ast.UnaryOp(ast.Not(), node.test)
        case ast.comprehension():
            yield from (("dropped", test, ast.Constant(True)) for test in node.ifs)
        case ast.stmt():
            yield from ((kind, node, changed) for kind, changed in _of_statement(node))
        case ast.expr():
            yield from ((kind, node, changed) for kind, changed in _of_expression(node, known))


def _of_statement(node: ast.stmt) -> Iterator[tuple[Kind, ast.AST]]:
    match node:
        case ast.AugAssign():
            changed = copy.copy(node)
            changed.op = _OPERATORS[type(node.op)]()
            yield "operator", changed
        case ast.Expr(value=ast.Yield() | ast.YieldFrom()):
            yield "dropped", ast.parse("yield from ()").body[0]
        case ast.Expr(value=ast.Call()) | ast.Raise() | ast.Continue() | ast.Break():
            yield "dropped", ast.Pass()


def _of_expression(node: ast.expr, known: frozenset[str]) -> Iterator[tuple[Kind, ast.AST]]:
    match node:
        case ast.BinOp():
            yield from _of_binary(node)
        case ast.UnaryOp(op=ast.USub(), operand=operand):
            yield "operator", operand
        case ast.UnaryOp(op=ast.Not(), operand=operand):
            yield "condition", operand
        case ast.Compare():
            yield from _of_comparison(node)
        case ast.BoolOp():
            changed = copy.copy(node)
            changed.op = ast.Or() if isinstance(node.op, ast.And) else ast.And()
            yield "condition", changed
            yield from (("dropped", kept) for kept in _without_one(node, "values"))
        case ast.Constant(value=bool() | int() | float() as value):
            yield from (("constant", ast.Constant(other)) for other in other_values(value))
        case ast.Call(func=ast.Name() | ast.Attribute()):
            yield from _of_call(node, known)
        case ast.List(ctx=ast.Load()) | ast.Set():
            yield from (("dropped", kept) for kept in _without_one(node, "elts"))


def other_values(value: bool | int | float) -> Iterator[bool | int | float]:
    """Values near a constant that it might have been by mistake."""
    if isinstance(value, bool):
        yield not value
    elif isinstance(value, int):
        yield value + 1
    elif abs(value) < _SLACK and value:
        yield 0.0
    else:
        yield value * 1.05 if value else 1.0


def bound_changes(keyword: ast.keyword) -> Iterator[tuple[Kind, ast.AST]]:
    """Changes of one bound of a field: another number, and the limit itself out or in."""
    limits = {"ge": "gt", "gt": "ge", "le": "lt", "lt": "le"}
    if keyword.arg in limits:
        yield "bound", ast.keyword(limits[keyword.arg], keyword.value)
    if isinstance(keyword.value, ast.Constant) and isinstance(keyword.value.value, int | float):
        for value in other_values(keyword.value.value):
            yield "bound", ast.keyword(keyword.arg, ast.Constant(value))


def _of_binary(node: ast.BinOp) -> Iterator[tuple[Kind, ast.AST]]:
    if any(_is_text(side) for side in (node.left, node.right)):
        return
    if isinstance(node.op, ast.BitOr | ast.BitAnd) and _is_type(node):
        return
    changed = copy.copy(node)
    changed.op = _OPERATORS[type(node.op)]()
    yield "operator", changed
    if isinstance(node.op, ast.Add | ast.Sub | ast.Mult | ast.Div):
        yield "dropped", node.left
    if isinstance(node.op, ast.Add | ast.Mult):
        yield "dropped", node.right


def _of_comparison(node: ast.Compare) -> Iterator[tuple[Kind, ast.AST]]:
    for place, operator in enumerate(node.ops):
        changed = copy.copy(node)
        other = _COMPARISONS[type(operator)]()
        changed.ops = [*node.ops[:place], other, *node.ops[place + 1 :]]
        yield "comparison", changed


def _of_call(node: ast.Call, known: frozenset[str]) -> Iterator[tuple[Kind, ast.AST]]:
    name = node.func.id if isinstance(node.func, ast.Name) else getattr(node.func, "attr", "")
    if name in _SEVERITIES and isinstance(node.func, ast.Name):
        other = ast.parse(ADVISORIES + _SEVERITIES[name], mode="eval").body
        yield "severity", _called(node, other)
    if name in _SWAPPED:
        twin = _SWAPPED[name]
        if isinstance(node.func, ast.Attribute):
            yield "function", _called(node, ast.Attribute(node.func.value, twin, ast.Load()))
        elif twin in known or twin in _BUILTIN:
            yield "function", _called(node, ast.Name(twin, ast.Load()))
    if name in _LEFT_OUT and node.args and not isinstance(node.args[0], ast.Starred):
        yield "function", node.args[0]
    if name in _OF_SEVERAL and len(node.args) > 1:
        yield from (("dropped", kept) for kept in _without_one(node, "args"))


def _called(node: ast.Call, function: ast.expr) -> ast.Call:
    return ast.Call(function, node.args, node.keywords)


def _without_one(node: ast.AST, name: str) -> Iterator[ast.AST]:
    """Give a node without each of its entries in turn, where it has more than one."""
    entries = getattr(node, name)
    for place in range(len(entries) if len(entries) > 1 else 0):
        kept = [*entries[:place], *entries[place + 1 :]]
        if isinstance(node, ast.BoolOp | ast.Call) and len(kept) == 1:
            yield kept[0]
        else:
            changed = copy.copy(node)
            setattr(changed, name, kept)
            yield changed


def _is_turned_already(test: ast.expr) -> bool:
    """True for a condition whose own change is its opposite."""
    turned = ast.Eq | ast.NotEq | ast.Is | ast.IsNot | ast.In | ast.NotIn
    match test:
        case ast.UnaryOp(op=ast.Not()) | ast.Constant():
            return True
        case ast.Compare(ops=[operator]):
            return isinstance(operator, turned)
    return False


def _is_text(node: ast.AST) -> bool:
    match node:
        case ast.JoinedStr() | ast.Constant(value=str() | bytes()):
            return True
        case ast.BinOp(left=left, right=right):
            return _is_text(left) or _is_text(right)
    return False


def _is_type(node: ast.AST) -> bool:
    """True for a union of types, such as `float | None`."""
    match node:
        case ast.BinOp(left=left, right=right):
            return _is_type(left) or _is_type(right)
        case ast.Constant(value=None):
            return True
        case ast.Name(id=name):
            return name[:1].isupper() or name in {"int", "float", "str", "bool"}
    return False
