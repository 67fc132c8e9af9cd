"""Widths of text: how much room words take on a sheet, without a font at hand.

Advances of DejaVu Sans in thousandths of the size, measured here from the font itself, and never
less; the fonts that browsers put in its place are as wide (Verdana) or narrower.
"""

from functools import lru_cache

#: Over and under the base line, as parts of the size: capitals, parentheses and descenders.
ABOVE, BELOW = 0.76, 0.24
#: Of a character that is in no table: as wide as any, so that it never takes more than was kept.
_WIDEST = 1.0

_REGULAR = {
    227: "′",
    278: "ijl'",
    295: "IJ",
    318: " ,.·‘’",
    337: "/:;\\|",
    352: "f",
    361: "-",
    374: "″",
    390: "()[]",
    401: "t!²³",
    411: "r",
    460: '"',
    500: "*_`°–",
    518: "„“”",
    525: "sz",
    550: "c?",
    557: "L",
    580: "kF",
    592: "vxyγ",
    603: "P⌀",
    612: "oTYδö»«",
    616: "aeèéàä",
    639: "bdghnpquSEüñß0123456789${}µβ√",
    660: "Kαφ",
    686: "ABVXZΔÄ",
    698: "CR",
    732: "UÜ",
    752: "HN",
    787: "DGOQ&ØÖ",
    838: "w#+<=>^~±×÷≤≥−→←↑↓",
    863: "M",
    974: "m%½¼¾",
    1000: "W@—…",
}
_BOLD = {
    264: "′",
    343: "ijl'",
    380: " ,.·‘’/\\|",
    415: ":;-IJ",
    447: "f″²³",
    478: "()[]!t",
    500: "r_`°–",
    523: '*"',
    603: "csz?⌀",
    652: "vxyL»«",
    687: "γaeoàäèéöTEFkαδ√",
    725: "0123456789bdghnpquüñSYß${}",
    775: "ABCKPRVXZΔÄµ",
    850: "DGHNOQU#+<=>^~±×÷≤≥−→←↑↓ØÖÜφ",
    924: "w&",
    1042: "mM@%—…½¼¾",
    1104: "W",
}


def _by_character(widths: dict[int, str]) -> dict[str, float]:
    return {character: width / 1000.0 for width, them in widths.items() for character in them}


_ADVANCES = {False: _by_character(_REGULAR), True: _by_character(_BOLD)}


@lru_cache(maxsize=4096)
def text_width(words: str, size: float, *, bold: bool = False) -> float:
    """Width of words set in a size, in the unit of the size; never too little.

    >>> round(text_width("R 0.5", 10.0), 2)
    26.12
    """
    advances = _ADVANCES[bold]
    return size * sum(advances.get(character, _WIDEST) for character in words)


def cut(words: str, size: float, room: float, *, bold: bool = False) -> str:
    """Words, cut with an ellipsis where they are wider than their room, in the size's unit.

    >>> cut("a plate of a very long name", 4.0, 30.0)
    'a plate of a …'
    """
    if text_width(words, size, bold=bold) <= room:
        return words
    while words and text_width(f"{words}…", size, bold=bold) > room:
        words = words[:-1]
    return f"{words}…"


def wrapped(words: str, size: float, room: float, *, bold: bool = False) -> list[str]:
    """Words in lines no wider than their room, in the size's unit; a word wider alone is cut.

    >>> wrapped("Wheel, flange and guard at the ends", 4.0, 40.0)
    ['Wheel, flange and', 'guard at the ends']
    """
    lines: list[str] = []
    for word in words.split():
        longer = f"{lines[-1]} {word}" if lines else word
        if lines and text_width(longer, size, bold=bold) <= room:
            lines[-1] = longer
        else:
            lines.append(cut(word, size, room, bold=bold))
    return lines
