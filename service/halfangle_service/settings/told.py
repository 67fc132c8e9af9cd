"""What there is to set, and what is in force, for a person and for a program to read."""

import json
from collections.abc import Iterable, Iterator
from pathlib import Path
from typing import Any, Literal, get_args, get_origin

from annotated_types import Ge, Gt, Le
from pydantic.fields import FieldInfo

from halfangle_service import __version__
from halfangle_service.settings import GROUPS, Settings
from halfangle_service.settings.reading import SECRET, InForce, is_list, variable_of
from halfangle_service.trade.wording import plain

_MASK = "***"


def help_of(setting: str) -> str:
    """Variable, bound and default of a setting, then what it is about."""
    field = Settings.model_fields[setting]
    bound = _bound(setting, field)
    return f"{variable_of(setting)}; {bound}; default {_default(field)}. {field.description}"


def _bound(setting: str, field: FieldInfo) -> str:
    """What a setting may be.

    >>> [_bound(name, Settings.model_fields[name]) for name in ("port", "header_seconds")]
    ['0 to 65535', 'above 0, at most 3600']
    >>> _bound("log_level", Settings.model_fields["log_level"])
    'debug, info, warning or error'
    """
    if get_origin(field.annotation) is Literal:
        *first, last = map(str, get_args(field.annotation))
        return f"{', '.join(first)} or {last}"
    if is_list(setting):
        return "a JSON list"
    if field.annotation is str:
        return "a text"
    if Path in get_args(field.annotation):
        return "a file"
    bounds: dict[type, Any] = {type(mark): mark for mark in field.metadata}
    most = plain(bounds[Le].le) if Le in bounds else None
    if Gt in bounds:
        return f"above {plain(bounds[Gt].gt)}" + (f", at most {most}" if most else "")
    least = plain(bounds[Ge].ge)
    return f"{least} to {most}" if most else f"{least} or more"


def _default(field: FieldInfo) -> str:
    if field.default is None:
        return "none"
    return str(field.default) if isinstance(field.default, str) else _written(field.default)


def as_toml(in_force: InForce, remarks: Iterable[str] = ()) -> str:
    """Settings as a file of settings, with where each comes from; what has no value is a remark."""
    lines = [f"# Settings in force, halfangle-service {__version__}"]
    for group, names in GROUPS.items():
        lines += ["", f"# {group}"]
        for name in names:
            origin = in_force.origins[name]
            whence = origin.whence if origin.whence == "default" else f"by {origin.name}"
            value = getattr(in_force.settings, name)
            if name == SECRET:
                lines.append(f"# {name}: {len(value)} of them  # {whence}")
            elif value is None:
                lines.append(f"# {name} is not set")
            else:
                lines.append(f"{name} = {_written(value)}  # {whence}")
    return "\n".join([*lines, *(f"# {remark}" for remark in remarks), ""])


def as_json(in_force: InForce, more: dict[str, object]) -> str:
    """The same for a program: each setting with its value and where that comes from."""
    told = {
        name: {
            "value": _shown(name, value),
            "from": in_force.origins[name].whence,
            "name": in_force.origins[name].name,
        }
        for name, value in in_force.settings
    }
    whole = {"release": __version__, "settings": told, **more}
    return json.dumps(whole, indent=2, ensure_ascii=False, default=_plain) + "\n"


def not_default(in_force: InForce) -> dict[str, object]:
    """Settings that somebody chose, as the first line of the log tells them; keys are masked."""
    return {
        name: _shown(name, value)
        for name, value in in_force.settings
        if in_force.origins[name].whence != "default"
    }


def _shown(name: str, value: object) -> object:
    if name == SECRET:
        return [_MASK for _ in _entries(value)]
    return _plain(value)


def _entries(value: Any) -> Iterator[object]:
    yield from value


def _plain(value: object) -> object:
    """A value as JSON and TOML have it; what has no order is sorted."""
    if isinstance(value, frozenset):
        return sorted(value)
    if isinstance(value, tuple):
        return [*value]
    return str(value) if isinstance(value, Path) else value


def _written(value: object) -> str:
    """A value as TOML writes it, which for texts, numbers and lists of texts is as JSON does."""
    return json.dumps(_plain(value), ensure_ascii=False)
