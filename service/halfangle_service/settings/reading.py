"""Which settings are in force, and where each comes from: a flag, a variable, a file, the default.

A flag wins over a variable of the environment, a variable over a line of the file, a line over the
default. Whatever names no setting is refused with the nearest name: misspelt, it might leave the
door open.
"""

import json
import os
import tomllib
from collections.abc import Iterable, Mapping
from contextlib import suppress
from dataclasses import dataclass
from difflib import get_close_matches
from pathlib import Path
from typing import Any, Literal, get_origin

from pydantic import ValidationError
from pydantic_settings import SettingsError

from halfangle_service.errors import HalfangleError
from halfangle_service.settings import ENVIRONMENT_PREFIX, Settings

#: The flag, and the variable, that names a file of settings: no setting, since no file holds it.
FILE = "config"
#: Keys as they are: never a flag, which every user of the machine sees, nor in a file of settings.
SECRET = "api_keys"  # noqa: S105  the name of a setting
#: More than any file of settings holds.
_LARGEST_BYTES = 100_000

Whence = Literal["flag", "environment", "file", "default"]


class WrongSettings(HalfangleError):
    """Settings that are refused, a sentence each; none repeats a value, which may be a key."""

    def __init__(self, found: Iterable[str]) -> None:
        self.found = tuple(found)
        super().__init__("; ".join(self.found))


@dataclass(frozen=True, slots=True)
class Origin:
    """Where the value of a setting comes from, and the name that it has there."""

    whence: Whence
    name: str


@dataclass(frozen=True, slots=True)
class InForce:
    """Settings, and where the value of each comes from."""

    settings: Settings
    origins: Mapping[str, Origin]


def variable_of(setting: str) -> str:
    """Name of the environment variable of a setting.

    >>> variable_of("log_level")
    'HALFANGLE_LOG_LEVEL'
    """
    return ENVIRONMENT_PREFIX + setting.upper()


def flag_of(setting: str) -> str:
    """Flag of a setting.

    >>> flag_of("log_level")
    '--log-level'
    """
    return f"--{setting.replace('_', '-')}"


def nearest(name: str, known: Iterable[str]) -> str:
    """What is said of the name that a wrong one may have meant; nothing where none is near.

    >>> nearest("prot", ["port", "host"]), nearest("zebra", ["port", "host"])
    ('; the nearest is port', '')
    """
    near = get_close_matches(name, [*known], n=1)
    return f"; the nearest is {near[0]}" if near else ""


def read_settings(flags: Mapping[str, str]) -> InForce:
    """Settings by flags (the file of settings is `config`), by the environment, and by the file.

    A list is written as JSON in a flag as it is in the environment. Raises WrongSettings.
    """
    variables = _variables()
    path = flags.get(FILE) or variables.get(FILE, (None, None))[1]
    lines = {} if path is None else _of_file(Path(path))
    given = {name: text for name, text in flags.items() if name != FILE}
    values: dict[str, object] = {k: v for k, v in lines.items() if k not in variables}
    values |= {name: _value(name, text) for name, text in given.items()}
    origins = {}
    for name in Settings.model_fields:
        if name in given:
            origins[name] = Origin("flag", flag_of(name))
        elif name in variables:
            origins[name] = Origin("environment", variables[name][0])
        elif name in lines:
            origins[name] = Origin("file", f"{path}: {name}")
        else:
            origins[name] = Origin("default", name)
    try:
        return InForce(Settings(**values), origins)  # type: ignore[arg-type]
    except ValidationError as error:
        raise WrongSettings(_wrong(found, origins) for found in error.errors()) from None
    except SettingsError as error:
        # Of a list in the environment that is no JSON; its words name the setting alone.
        raise WrongSettings([f"{error}: should be a list written as JSON"]) from None


def _wrong(found: Any, origins: Mapping[str, Origin]) -> str:
    """Say what is wrong with a setting, and where it stands."""
    name, *within = map(str, found["loc"])
    origin = origins[name]
    place = "".join(f", entry {int(part) + 1}" for part in within if part.isdigit())
    return f"{name} ({origin.name}{place}): {found['msg'].replace('Input should be', 'should be')}"


def _variables() -> dict[str, tuple[str, str]]:
    """Variables of settings in the environment, by the setting: the name there, and the text.

    Raises WrongSettings for one of no setting.
    """
    known = {variable_of(name): name for name in (*Settings.model_fields, FILE)}
    found: dict[str, tuple[str, str]] = {}
    unknown: list[str] = []
    for name, text in sorted(os.environ.items()):
        if not name.upper().startswith(ENVIRONMENT_PREFIX):
            continue
        setting = known.get(name.upper())
        if setting is not None:
            found[setting] = (name, text)
        else:
            unknown.append(f"{name}: no such setting{_meant(name, text, known)}")
    if unknown:
        raise WrongSettings(unknown)
    return found


def _meant(name: str, text: str, known: Iterable[str]) -> str:
    """What a variable of no setting may have meant."""
    if text.startswith("tcp://"):
        return "; an orchestrator sets it for a service of that name (enableServiceLinks: false)"
    return nearest(name.upper(), known)


def _of_file(path: Path) -> dict[str, object]:
    """Lines of a file of settings; raises WrongSettings."""
    try:
        # By what is read, not by its size, which a device or a pipe has none of.
        with path.open("rb") as file:
            content = file.read(_LARGEST_BYTES + 1)
        if len(content) > _LARGEST_BYTES:
            raise WrongSettings([f"{path}: larger than {_LARGEST_BYTES} bytes"])
        lines = tomllib.loads(content.decode("utf-8-sig"))
    except (OSError, ValueError, RecursionError) as error:
        raise WrongSettings([f"{path}: {error}"]) from None
    if SECRET in lines:
        instead = f"set {variable_of(SECRET)}, or name a file of digests by keys_file"
        raise WrongSettings([f"{path}: {SECRET}: keys as they are stand in no file; {instead}"])
    known = [name for name in Settings.model_fields if name != SECRET]
    wrong = [f"{path}: {n}: no such setting{nearest(n, known)}" for n in lines if n not in known]
    wrong += [
        f"{path}: {name}: is true or false, which no setting is"
        for name, value in lines.items()
        if isinstance(value, bool)
    ]
    if wrong:
        raise WrongSettings(wrong)
    return lines


def _value(setting: str, text: str) -> object:
    """Value of a flag; what is no JSON stays text, which is no list: the message then names it."""
    if is_list(setting):
        with suppress(ValueError):
            return json.loads(text)
    return text


def is_list(setting: str) -> bool:
    """True for a setting that holds several values."""
    return get_origin(Settings.model_fields[setting].annotation) in {frozenset, tuple}
