"""Reads every way in which a drawing writes the angle of a taper."""

import math
import re
from dataclasses import dataclass
from typing import Literal

from halfangle_service.errors import Disagreement, Impossible
from halfangle_service.trade.tables.tapers.designations import Row, rate_of, rows_named, similar
from halfangle_service.trade.tapers.notation.angles import (
    WrittenAngle,
    read_angle,
    split_tolerance,
)
from halfangle_service.trade.tapers.notation.refusals import ambiguous, unread
from halfangle_service.trade.tapers.notation.senses import (
    ONLY_TAPER,
    Sense,
    one_sense,
    without_senses,
)
from halfangle_service.trade.tapers.notation.spelling import cleaned
from halfangle_service.trade.tapers.notation.tapers import Taper, read_taper
from halfangle_service.trade.wording import plain

Meaning = Literal["included", "half", "complement"]
#: Between these a half angle is a cone's; beyond them it is a cylinder or a face.
LEAST_DEGREES, MOST_DEGREES = 0.00001, 89.999
_BARE_ALPHA = re.compile(r"α ?[=:]")
_MEANING_OF: dict[Sense, Meaning] = {
    Sense.INCLUDED: "included",
    Sense.HALF: "half",
    Sense.SIDE: "half",
    Sense.COMPLEMENT: "complement",
}


@dataclass(frozen=True, slots=True)
class Reading:
    """What a notation says: the half angle in radians, and how it was read.

    `decimal_degrees` is the angle where it was written in decimal degrees; `tolerance_arcsec` the ±
    written beside an angle, on the angle written; `rows` those of the tables that a name means.
    """

    half_angle_rad: float
    read_as: str
    decimal_degrees: float | None = None
    tolerance_arcsec: float | None = None
    rows: tuple[Row, ...] = ()


def read_notation(text: str, meaning: Meaning | None) -> Reading:
    """Read a notation; `meaning` says what a bare angle is. Raises Disagreement or Impossible."""
    said = cleaned(text)
    # D and d are two things; all else is written in either case.
    sizes = read_taper(said, said, frozenset()) if "D" in said else None
    if sizes is not None:
        return Reading(_within(math.atan(float(sizes.rate / 2))), sizes.read_as)
    if _BARE_ALPHA.match(said.lower()):
        raise unread(
            said, "α is the included angle to some and the half angle to others: say which."
        )
    figure, senses = without_senses(said.lower())
    figure, tolerance = split_tolerance(figure, said)
    if tolerance is not None:
        # The word may stand before the tolerance too: 60° included ±30".
        figure, before = without_senses(figure)
        senses |= before
    sense = one_sense(said, senses)
    taper = read_taper(figure, said, senses)
    if taper is not None:
        if tolerance is not None:
            raise unread(said, "A tolerance is read beside an angle only.")
        return _taper(taper, sense, said)
    angle = read_angle(figure, said)
    if angle is not None:
        if senses & ONLY_TAPER and "°" not in said:
            raise unread(said, f"{said!r} is a taper, but does not say for what length.")
        return _angle(angle, sense, meaning, tolerance, said)
    if sense is None and tolerance is None:
        return _standard(said, figure)
    raise unread(said)


def _standard(said: str, figure: str) -> Reading:
    """A standard taper by its designation or by what a toolmaker calls it."""
    name = said if rows_named(said) else figure
    rows = rows_named(name)
    if not rows:
        raise unread(said, similar=similar(said))
    half = math.atan(rate_of(name, field="text") / 2.0)
    names = " and ".join(row.designation for row in rows)
    return Reading(half, f"standard taper {names}", rows=rows)


def _taper(taper: Taper, sense: Sense | None, said: str) -> Reading:
    """A taper on the diameter, or on the radius where the words say so."""
    on_diameter, on_radius = float(taper.rate / 2), float(taper.rate)
    if sense is Sense.HALF:
        figure = without_senses(said.lower())[0]
        raise ambiguous(
            said,
            {f"{figure} per side": math.atan(on_radius), f"{figure}": math.atan(on_diameter)},
        )
    if sense is Sense.COMPLEMENT:
        raise unread(said, "Only an angle has a complement; a taper is on the diameter or a side.")
    if sense is Sense.SIDE:
        return Reading(_within(math.atan(on_radius)), f"{taper.read_as}, on the radius")
    return Reading(_within(math.atan(on_diameter)), f"{taper.read_as}, on the diameter")


def _angle(
    angle: WrittenAngle,
    sense: Sense | None,
    meaning: Meaning | None,
    tolerance_arcsec: float | None,
    said: str,
) -> Reading:
    """An angle, by what the words or else the caller says that it is."""
    if sense is Sense.DIAMETER:
        raise unread(said, "An angle is not on the diameter: say included, half or complement.")
    word = _MEANING_OF[sense] if sense is not None else None
    if word and meaning and word != meaning:
        raise Disagreement(
            f"The notation says {word}, bare_angle_is says {meaning}.",
            fields={"bare_angle_is": "should agree with the notation, or be left out"},
        )
    chosen = word or meaning
    if chosen is None:
        raise Disagreement(
            f"{said} is an angle, but not said which one.",
            fields={"bare_angle_is": "send included, half or complement, or write it in the text"},
        )
    degrees = angle.degrees
    half = {"included": degrees / 2.0, "half": degrees, "complement": 90.0 - degrees}[chosen]
    return Reading(
        _within(math.radians(half)),
        f"{chosen} angle",
        decimal_degrees=degrees if angle.decimal else None,
        tolerance_arcsec=tolerance_arcsec,
    )


def _within(half_rad: float) -> float:
    if not math.radians(LEAST_DEGREES) < half_rad < math.radians(MOST_DEGREES):
        raise Impossible(
            f"This is a half angle of {plain(math.degrees(half_rad))}°; a cone's lies above "
            f"{plain(LEAST_DEGREES)}° and below {plain(MOST_DEGREES)}°.",
            fields={"text": "should be the angle of a cone"},
        )
    return half_rad
