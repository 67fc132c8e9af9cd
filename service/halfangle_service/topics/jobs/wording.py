"""Figures written for a person, in the request's units, to what can be set or read."""

from dataclasses import dataclass

from halfangle_service.fields import Units, format_dms

_DECIMALS: dict[Units, int] = {"in": 4, "mm": 3}


@dataclass(frozen=True, slots=True)
class Wording:
    """Writes lengths in `units`, angles in degrees and arc-seconds."""

    units: Units

    def length(self, value: float) -> str:
        """A length to the bench step: 0.0001 in or 0.001 mm."""
        return f"{value:.{_DECIMALS[self.units]}f} {self.units}"

    def small_length(self, value: float) -> str:
        """A length to a tenth of the bench step, for runout and steps of feed."""
        return f"{value:.{_DECIMALS[self.units] + 1}f} {self.units}"

    def block(self, value: float) -> str:
        """A block by its nominal size, with no more digits than it has."""
        return f"{value:.{_DECIMALS[self.units] + 2}f}".rstrip("0").rstrip(".")

    def stack(self, blocks: tuple[float, ...]) -> str:
        """Blocks joined by plus signs, with the unit."""
        return f"{' + '.join(self.block(size) for size in blocks)} {self.units}"

    def degrees(self, value: float) -> str:
        """An angle in degrees, minutes and seconds."""
        return format_dms(value)

    def arcsec(self, value: float) -> str:
        """A small angle in seconds of arc, one decimal."""
        return f"{abs(value):.1f}″"
