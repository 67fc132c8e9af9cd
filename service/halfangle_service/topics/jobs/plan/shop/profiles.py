"""Named profiles of a shop's equipment, read from one TOML file when the service starts.

Each entry `[[profile]]` has a `name`, its `units` and its `equipment`, which is what a request may
send in its place. Nothing writes the file.
"""

import hashlib
import json
import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Annotated

from pydantic import Field, ValidationError

from halfangle_service.errors import HalfangleError, Refusal
from halfangle_service.fields import RequestModel, UnitsField
from halfangle_service.topics.jobs.plan.shop.equipment import EquipmentName, PlanEquipment
from halfangle_service.topics.jobs.plan.shop.reading import read_boxes, require_consistent
from halfangle_service.trade.units import Units


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
    try:
        table = tomllib.loads(path.read_text("utf-8"))
    except (OSError, ValueError) as error:
        raise ProfilesError(f"{path}: {error}") from None
    try:
        entries = _File.model_validate_json(json.dumps(table, default=str)).profile
    except ValidationError as error:
        first = error.errors()[0]
        raise ProfilesError(f"{path}: {'/'.join(map(str, first['loc']))}: {first['msg']}") from None
    found: dict[str, ShopProfile] = {}
    for place, entry in enumerate(entries):
        if entry.name in found:
            raise ProfilesError(f"{path}: profile/{place}/name: {entry.name!r} is there twice")
        try:
            require_consistent(entry.equipment, entry.units)
            read_boxes(entry.equipment, entry.units)
        except Refusal as refusal:
            field, message = next(iter(refusal.fields.items()))
            raise ProfilesError(
                f"{path}: profile/{place}/{field}: {message} ({refusal.detail})"
            ) from None
        found[entry.name] = ShopProfile(entry.name, entry.units, entry.equipment, _digest(entry))
    return found


def _digest(entry: _Entry) -> str:
    """SHA-256 of what an entry holds, whatever its order, blanks and remarks in the file."""
    written = json.dumps(entry.model_dump(mode="json"), sort_keys=True, separators=(",", ":"))
    return f"sha256:{hashlib.sha256(written.encode()).hexdigest()}"
