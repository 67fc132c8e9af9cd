"""The words beside a figure that say what it is measured on, taken off the text."""

import re
from enum import Enum

from halfangle_service.errors import Disagreement


class Sense(Enum):
    """What a word says of the figure beside it."""

    INCLUDED = "included"  # of an angle: between opposite sides; of a taper: on the diameter
    HALF = "half"  # of an angle: to the axis; of a taper: not clear
    SIDE = "per side"  # of an angle: to the axis; of a taper: on the radius
    DIAMETER = "on the diameter"  # of a taper only
    COMPLEMENT = "complement"  # of an angle only: from the face
    TAPER = "taper"  # a taper, not an angle
    RATE = "rate of taper"  # a taper as ISO 3040 writes it: C, the change of diameter for a length


#: Words that say no more than that a figure is a taper.
ONLY_TAPER = frozenset({Sense.TAPER, Sense.RATE})


_PHRASES: dict[str, Sense | None] = {
    **dict.fromkeys(
        ("included angle", "incl. angle", "incl angle", "cone angle", "apex angle", "point angle"),
        Sense.INCLUDED,
    ),
    **dict.fromkeys(("included", "incl.", "incl", "inc.", "inc", "total"), Sense.INCLUDED),
    **dict.fromkeys(("half angle", "half-angle", "half", "setting angle"), Sense.HALF),
    **dict.fromkeys(("to axis", "to the axis", "from axis", "from the axis"), Sense.HALF),
    **dict.fromkeys(("per side", "each side", "a side", "/side", "/ side"), Sense.SIDE),
    **dict.fromkeys(("on radius", "on the radius"), Sense.SIDE),
    **dict.fromkeys(("on diameter", "on the diameter", "on dia.", "on dia"), Sense.DIAMETER),
    **dict.fromkeys(("complement", "from face", "from the face"), Sense.COMPLEMENT),
    **dict.fromkeys(("taper of", "taper"), Sense.TAPER),
    **dict.fromkeys(("conicity", "rate of taper"), Sense.RATE),
    **dict.fromkeys(("angle", "cone"), None),
}
#: Only before the figure: C = 1:20, 2α = 60°.
_BEFORE_ONLY: dict[str, Sense | None] = {
    "c": Sense.RATE,
    **dict.fromkeys(("2α", "2 α"), Sense.INCLUDED),
    **dict.fromkeys(("α/2", "α / 2"), Sense.HALF),
}


def _any_of(phrases: dict[str, Sense | None]) -> str:
    return "|".join(re.escape(phrase) for phrase in sorted(phrases, key=len, reverse=True))


_BEFORE = re.compile(rf"\(?({_any_of({**_PHRASES, **_BEFORE_ONLY})})(?! per)(?![a-z])\)?[ :=,]*")
_AFTER = re.compile(rf"[ ,;]*(?<![a-z])\(?({_any_of(_PHRASES)})\)?")


def without_senses(text: str) -> tuple[str, frozenset[Sense]]:
    """The figure alone, and what the words before and after it say; text in small letters.

    >>> without_senses("half angle 30°")[0], without_senses("0.3 in/ft (per side)")[0]
    ('30°', '0.3 in/ft')
    """
    senses: set[Sense] = set()
    while found := _BEFORE.match(text):
        text = text[found.end() :]
        senses |= _sense_of(found[1])
    while found := _trailing(text):
        text = text[: found.start()]
        senses |= _sense_of(found[1])
    return text.strip(), frozenset(senses)


def one_sense(text: str, senses: frozenset[Sense]) -> Sense | None:
    """The one thing that the words say beside 'taper'; raises Disagreement where they differ."""
    said = sorted(senses - ONLY_TAPER, key=lambda sense: sense.value)
    if len(said) > 1:
        raise Disagreement(
            f"{text!r} says both {said[0].value} and {said[1].value}.",
            fields={"text": "should say one of them"},
        )
    return said[0] if said else None


def _sense_of(phrase: str) -> set[Sense]:
    sense = {**_PHRASES, **_BEFORE_ONLY}[phrase]
    return set() if sense is None else {sense}


def _trailing(text: str) -> re.Match[str] | None:
    """The phrase that ends the text."""
    found = [m for m in _AFTER.finditer(text) if m.end() == len(text)]
    return found[0] if found else None
