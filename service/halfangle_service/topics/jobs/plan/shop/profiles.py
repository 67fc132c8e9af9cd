"""Named profiles of a shop's equipment, read from one TOML file when the service starts.

Each entry `[[profile]]` has a `name`, its `units` and its `equipment`, which is what a request may
send in its place. Nothing writes the file.
"""

import hashlib
import json
import re
import tomllib
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from difflib import get_close_matches
from functools import cache
from pathlib import Path
from typing import Annotated, Any

from pydantic import Field, ValidationError

from halfangle_service.errors import HalfangleError, Refusal
from halfangle_service.fields import RequestModel, UnitsField
from halfangle_service.topics.jobs.plan.shop.equipment import EquipmentName, PlanEquipment
from halfangle_service.topics.jobs.plan.shop.reading import (
    EQUIPMENT,
    plain_name,
    read_boxes,
    require_consistent,
    require_name,
)
from halfangle_service.trade.units import Units
from halfangle_service.trade.wording import said_in

_PROFILE = re.compile(r"\s*\[\[\s*profile\s*\]\]")
#: More than any shop writes, and less than would hold up the start.
_LARGEST_BYTES = 1_000_000


class ProfilesError(HalfangleError):
    """The file of profiles cannot be read, or an entry of it is wrong."""


class _Entry(RequestModel):
    name: EquipmentName
    units: UnitsField
    equipment: PlanEquipment


class _File(RequestModel):
    profile: Annotated[list[_Entry], Field(min_length=1)]


@dataclass(frozen=True, slots=True)
class ShopProfile:
    """One profile: its equipment, the unit of its lengths, and a digest of what it holds."""

    name: str
    units: Units
    equipment: PlanEquipment
    digest: str


def read_profiles(path: Path | None) -> Mapping[str, ShopProfile]:
    """The profiles of a file by their names, none without one.

    Raises ProfilesError, which names the file and the field, where it is wrong.
    """
    if path is None:
        return {}
    entries = _entries(path, _table(path))
    found: dict[str, ShopProfile] = {}
    for place, entry in enumerate(entries):
        if plain_name(entry.name) in map(plain_name, found):
            raise ProfilesError(f"{path}: profile/{place}/name: {entry.name!r} is there twice")
        try:
            require_name(entry.name, "name")
            require_consistent(entry.equipment, entry.units)
            read_boxes(entry.equipment, entry.units)
        except Refusal as refusal:
            field, message = next(iter(refusal.fields.items()))
            said = said_in(f"{message} ({refusal.detail})", entry.units)
            raise ProfilesError(f"{path}: profile/{place}/{field}: {said}") from None
        found[entry.name] = ShopProfile(entry.name, entry.units, entry.equipment, _digest(entry))
    return found


def in_profile(refusal: Refusal, name: str) -> Refusal:
    """A refusal of what a profile holds, named by the field of the request that names it."""
    own = {field: said for field, said in refusal.fields.items() if not _of_shop(field)}
    held = [f"{field} {said}" for field, said in refusal.fields.items() if _of_shop(field)]
    if held:
        own["shop_profile"] = f"in {name!r}: {'; '.join(held)}"
    return type(refusal)(refusal.detail, fields=own, more=refusal.more)


def _of_shop(field: str) -> bool:
    return field.startswith(f"{EQUIPMENT}/")


def _table(path: Path) -> dict[str, Any]:
    """What a file holds, whatever it is; a mark of its coding at its beginning is passed over."""
    try:
        # By what is read, not by its size, which a device or a pipe has none of.
        with path.open("rb") as file:
            content = file.read(_LARGEST_BYTES + 1)
        if len(content) > _LARGEST_BYTES:
            raise ProfilesError(f"{path}: larger than {_LARGEST_BYTES} bytes")
        return tomllib.loads(content.decode("utf-8-sig"))
    except (OSError, ValueError) as error:
        raise ProfilesError(f"{path}: {error}") from None
    except RecursionError:
        raise ProfilesError(f"{path}: lists or tables within one another too deep") from None


def _entries(path: Path, table: dict[str, Any]) -> list[_Entry]:
    """The profiles of a file; refuses what is none, by its field."""
    for field, value in _leaves(table):
        if not isinstance(value, str | int | float):
            raise ProfilesError(f"{path}: {field}: {value} is a date or a time, which no field is")
    try:
        return _File.model_validate_json(json.dumps(table)).profile
    except ValidationError as error:
        # A misspelt field first: the one that is missing is the same one.
        first = min(error.errors(), key=lambda one: one["type"] != "extra_forbidden")
        field = "/".join(map(str, first["loc"]))
        line = _line_of(path, first["loc"])
        raise ProfilesError(f"{path}: {line}{field}: {_said(first)}") from None


def _line_of(path: Path, location: tuple[int | str, ...]) -> str:
    """The line of a file on which a field stands, where that is certain; else nothing.

    TOML's reader tells no lines. The field's name is looked for in its profile; where it stands
    there once, that is the line.
    """
    lines = path.read_text("utf-8-sig").splitlines()
    begun = [number for number, line in enumerate(lines) if _PROFILE.match(line)] + [len(lines)]
    names = [part for part in location if isinstance(part, str)]
    places = [part for part in location if isinstance(part, int)]
    first, last = (begun[places[0]], begun[places[0] + 1]) if places else (0, len(lines))
    field = re.compile(rf"""(^|[\s,{{."'\[]){re.escape(names[-1])}["']?\s*[=\].]""")
    found = [n for n in range(first, last) if field.search(lines[n].partition("#")[0])]
    return f"line {found[0] + 1}: " if len(found) == 1 else ""


def _leaves(value: Any, path: str = "") -> Iterator[tuple[str, Any]]:
    """Every value of a table that holds no others, with its path."""
    if isinstance(value, dict | list):
        pairs = value.items() if isinstance(value, dict) else enumerate(value)
        for name, within in pairs:
            yield from _leaves(within, f"{path}/{name}" if path else str(name))
    else:
        yield path, value


def _said(error: Any) -> str:
    """What is wrong, with the nearest name there is for a field that there is not."""
    if error["type"] != "extra_forbidden":
        return str(error["msg"])
    near = get_close_matches(str(error["loc"][-1]), _names(), n=1)
    return f"there is no such field{f'; the nearest is {near[0]}' if near else ''}"


@cache
def _names() -> frozenset[str]:
    """Every name of a field of a profile."""
    schema = _File.model_json_schema()
    shapes = (schema, *schema["$defs"].values())
    return frozenset(name for shape in shapes for name in shape.get("properties", ()))


def _digest(entry: _Entry) -> str:
    """SHA-256 of what an entry holds, whatever its order, blanks and remarks in the file."""
    written = json.dumps(entry.model_dump(mode="json"), sort_keys=True, separators=(",", ":"))
    return f"sha256:{hashlib.sha256(written.encode()).hexdigest()}"
