"""Finds every operation and published table: each file of `topics` declares its own."""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from importlib import import_module
from pkgutil import walk_packages
from typing import Any, TypeVar

from halfangle_service import topics
from halfangle_service.operation import Operation, PublishedTable

AnyOperation = Operation[Any, Any]
AnyTable = PublishedTable[Any]
Declared = TypeVar("Declared")


@dataclass(frozen=True)
class Registry:
    """All operations by dotted name and all published tables, each in the order of their names."""

    operations: dict[str, AnyOperation]
    tables: tuple[AnyTable, ...]


@cache
def load_registry() -> Registry:
    """Import every module of `topics` and gather what they declare.

    Raises ValueError where two operations, or two tables, share a name.
    """
    modules = [
        vars(import_module(entry.name))
        for entry in walk_packages(topics.__path__, f"{topics.__name__}.")
    ]
    operations = {o.name: o for o in sorted(_declared(modules, Operation), key=_name_of)}
    tables = sorted(_declared(modules, PublishedTable), key=lambda table: table.path)
    return Registry(operations, tuple(tables))


def _declared(modules: list[dict[str, Any]], kind: type[Declared]) -> Iterator[Declared]:
    """Values of this kind that the modules hold, each once however often it is imported."""
    found = [value for module in modules for value in module.values() if isinstance(value, kind)]
    paths: set[str] = set()
    for value in {id(value): value for value in found}.values():
        path: str = getattr(value, "path")  # noqa: B009  both kinds have one
        if path in paths:
            raise ValueError(f"{path} is declared twice")
        paths.add(path)
        yield value


def _name_of(operation: AnyOperation) -> str:
    return operation.name
