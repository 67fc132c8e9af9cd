"""Values and uncertainties of a measurement in sentences, whatever was measured."""

from dataclasses import dataclass

from halfangle_service.fields import Units
from halfangle_service.topics.inspection.verdict.request import Measurand
from halfangle_service.trade.wording import arcsec, degrees, figure, plain

_NAMES = {
    "included-angle": "the included angle",
    "half-angle": "the half angle",
    "diameter": "the diameter",
    "gauge-depth": "the gauge's depth",
    "tir": "the TIR",
}


@dataclass(frozen=True, slots=True)
class Words:
    """How what was measured is written in sentences."""

    measurand: Measurand
    units: Units

    @property
    def name(self) -> str:
        """What was measured, as a sentence has it."""
        return _NAMES[self.measurand.quantity]

    def value(self, value: float) -> str:
        """A value of it: an angle in degrees, minutes and seconds, else a length."""
        if self.measurand.is_angle:
            return degrees(value / 3600.0)
        return figure(value, self.units)

    def small(self, value: float) -> str:
        """A difference of two values, or an uncertainty."""
        if self.measurand.is_angle:
            return arcsec(value, 2) if value >= 0.01 else f"{plain(value, 2)}″"
        return f"{plain(value, 3)} {self.units}"


def probability_words(probability: float) -> str:
    """A probability in percent, never rounded to sure where it is not.

    >>> probability_words(0.6634), probability_words(0.99999), probability_words(1e-7)
    ('66.3 %', 'more than 99.9 %', 'less than 0.1 %')
    """
    percent = 100.0 * probability
    if 99.9 < percent < 100.0:
        return "more than 99.9 %"
    if 0.0 < percent < 0.1:
        return "less than 0.1 %"
    return f"{percent:.1f} %"
