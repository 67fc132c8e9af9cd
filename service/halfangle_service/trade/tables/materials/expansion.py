"""Thermal expansion of the materials of gauge blocks and plates, near 20 °C (ISO 1)."""

from dataclasses import dataclass
from functools import cache
from typing import Literal

from halfangle_service.trade.tables.loader import Standing, citation, read_rows, standing

REFERENCE_CELSIUS = 20.0

MaterialName = Literal[
    "steel", "tungsten-carbide", "chromium-carbide", "ceramic", "glass-ceramic", "fused-quartz"
]


@dataclass(frozen=True, slots=True)
class Material:
    """A material: `coefficient` and the half-width of its spread, both per kelvin."""

    name: MaterialName
    coefficient: float
    spread: float
    source: str
    standing: Standing


@cache
def materials() -> dict[str, Material]:
    """Give every material by its name, from the published table beside this module."""
    return {
        row["name"]: Material(
            row["name"],
            row["coefficient"] * 1e-6,
            row["spread"] * 1e-6,
            citation(row),
            standing(row),
        )
        for row in read_rows(__name__, "expansion.toml", "material")
    }
