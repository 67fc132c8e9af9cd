"""Finds every operation and collection: each folder of `topics` declares its own."""

from dataclasses import dataclass
from functools import cache
from importlib import import_module
from importlib.util import find_spec
from pkgutil import iter_modules
from typing import Any

from halfangle_service import topics
from halfangle_service.operation import Collection, Operation

AnyOperation = Operation[Any, Any]
AnyCollection = Collection[Any]


@dataclass(frozen=True)
class Registry:
    """All operations by dotted name and all collections, each in a stable order."""

    operations: dict[str, AnyOperation]
    collections: tuple[AnyCollection, ...]


@cache
def load_registry() -> Registry:
    """Import each topic's `operations` module and gather what it declares.

    Raises ValueError where two operations share a name.
    """
    names = (
        f"{topics.__name__}.{name}.operations"
        for name in sorted(entry.name for entry in iter_modules(topics.__path__) if entry.ispkg)
    )
    modules = [import_module(name) for name in names if find_spec(name)]
    operations: dict[str, AnyOperation] = {}
    for operation in (o for module in modules for o in getattr(module, "OPERATIONS", ())):
        if operation.name in operations:
            raise ValueError(f"two operations are called {operation.name}")
        operations[operation.name] = operation
    collections = tuple(c for module in modules for c in getattr(module, "COLLECTIONS", ()))
    return Registry(operations, collections)
