"""Lengths read off 20 °C: what a part and the instrument that read it have grown (ISO 1)."""

from typing import NamedTuple

from halfangle_service.trade.tables.materials.expansion import REFERENCE_CELSIUS, Material
from halfangle_service.trade.uncertainty import Contribution


class Body(NamedTuple):
    """A part or an instrument at a temperature in °C, and its name in the fields of a request."""

    name: str
    material: Material
    celsius: float

    @property
    def kelvins(self) -> float:
        """How far its temperature is from the reference, in kelvins."""
        return self.celsius - REFERENCE_CELSIUS

    @property
    def growth(self) -> float:
        """Its length over that at the reference."""
        return 1.0 + self.material.coefficient * self.kelvins


def at_reference(reading: float, part: Body, instrument: Body) -> float:
    """Length of a part at 20 °C, read by an instrument that was right at 20 °C.

    A grown instrument reads too little, a grown part is too long; both in the reading's unit.
    """
    return reading * instrument.growth / part.growth


def expansion_contributions(
    reading: float, part: Body, instrument: Body, error_limit_celsius: float
) -> tuple[Contribution, ...]:
    """What coefficients and temperatures, known to so much each, leave in doubt of that length."""
    return tuple(
        contribution
        for body, sign in ((part, -1.0), (instrument, 1.0))
        for contribution in (
            Contribution(
                f"{body.name}_material",
                body.material.spread,
                sensitivity=sign * reading * body.kelvins,
                unit="per_kelvin",
            ),
            Contribution(
                "temperature_error_limit_celsius",
                error_limit_celsius,
                sensitivity=sign * reading * body.material.coefficient,
                unit="celsius",
                of=f"{body.name}_temperature_celsius",
            ),
        )
    )
