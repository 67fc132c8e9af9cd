"""Parts of sheets that several kinds have: stacks, readings, blanks, what was not stated."""

import re
from collections.abc import Iterable, Iterator, Sequence

from halfangle_service.fields import Units
from halfangle_service.fields.advisories import Advisory
from halfangle_service.fields.inspection.planned import InspectionReading, PlannedMeans
from halfangle_service.sheets.model import Block, Check, Reading, Stack, Text, Tone
from halfangle_service.sheets.wording import angle, between, length, named, quantity
from halfangle_service.trade.wording import block

FORECASTS = {
    "holds": "Every limit will hold",
    "may-not-hold": "A limit may not hold",
    "does-not-hold": "A limit will not hold",
    "not-stated": "Whether it holds cannot be told: not all was stated",
}
#: Between a sentence and the next, which begins with a capital.
#: Paths of what was not stated: the sheet lists it in words.
_PATHS = re.compile(r" \(not stated: [^)]*\)")
_SENTENCE_END = re.compile(r"(?<=[.]) (?=[A-Z])")
_TONES: dict[str, Tone] = {"holds": "yes", "does-not-hold": "no"}


def tone_of(forecast: str, stops: Sequence[str]) -> Tone:
    """How a judgement bodes; nothing bodes well beside a stop."""
    return "no" if stops else _TONES.get(forecast, "perhaps")


def by_severity(
    advisories: Iterable[Advisory],
) -> tuple[tuple[str, ...], tuple[str, ...], tuple[str, ...]]:
    """Messages of the stops, the cautions and the notes."""
    told = tuple(advisories)
    stops, cautions, notes = (
        tuple(_PATHS.sub("", one.message) for one in told if one.severity == severity)
        for severity in ("stop", "caution", "note")
    )
    return stops, cautions, notes


def said_once(texts: Iterable[str]) -> tuple[str, ...]:
    """Texts without the sentences that one before them has said: a page says each once.

    >>> said_once(["Guard closed. Try it by hand.", "Stand aside. Try it by hand."])
    ('Guard closed. Try it by hand.', 'Stand aside.')
    """
    said: set[str] = set()
    left = []
    for text in texts:
        sentences = _SENTENCE_END.split(text)
        left.append(" ".join(one for one in sentences if one not in said))
        said.update(sentences)
    return tuple(text for text in left if text)


def stack_of(
    place: str,
    sizes: Sequence[float],
    marks: Sequence[str | None],
    total: float,
    units: Units,
    *,
    spare: bool = False,
) -> Stack:
    """A stack to tick, block by block."""
    marked = [*marks, *[None] * (len(sizes) - len(marks))]
    blocks = tuple(
        Block(block(size, units), mark or "") for size, mark in zip(sizes, marked, strict=True)
    )
    return Stack(place, blocks, length(total, units), spare=spare)


def means_check(means: PlannedMeans, units: Units, tolerance_arcsec: float, *, best: bool) -> Check:
    """A means of measuring: how it is done, and what to read."""
    name = named(means.means)
    readings = tuple(_read_off(reading, units, tolerance_arcsec) for reading in means.readings)
    return Check(f"{name} (best)" if best else name, readings, means.how, each_piece=True)


def _read_off(reading: InspectionReading, units: Units, tolerance_arcsec: float) -> Reading:
    """A figure to read, with its limits."""
    unit = reading.unit
    limits, proved = (
        between(low, high, unit, units, tolerance_arcsec)
        for low, high in (
            (reading.smallest_reading, reading.largest_reading),
            (reading.smallest_accepted_reading, reading.largest_accepted_reading),
        )
    )
    # An angle to the second that matters, as its limits are.
    wanted = reading.expected_reading
    expected = (
        angle(wanted, tolerance_arcsec) if unit == "degree" else quantity(wanted, unit, units)
    )
    return Reading(named(reading.name), expected, limits, proved)


def measured_blanks(*, turned: bool) -> Iterator[str]:
    """What the hand at the machine writes down, beside the stacks and the checks."""
    yield "Angle, as measured"
    if turned:
        yield "TIR before re-seating"
        yield "TIR after re-seating"
    yield from ("Temperature", "Indicator", "Rolls, balls", "Date", "Initials")


def unstated(paths: Iterable[str]) -> Text:
    """What was not stated, each once; nothing was judged to hold by it."""
    names = dict.fromkeys(named(path) for path in paths)
    return Text("Not stated", ("; ".join(names) + ".",))
