"""A sheet as SVG text: every style on its mark, so that it looks the same within any page.

The file's unit is a tenth of a millimetre of paper. No style sheet, marker, gradient or rim, which
printers and browsers draw unlike.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from html import escape
from itertools import groupby

from halfangle_service.trade.drawing.hatching import interrupted
from halfangle_service.trade.drawing.marks import (
    DASHES,
    HEADING,
    INK,
    TEXT,
    TONES,
    WIDTHS,
    Area,
    Box,
    LineKind,
    Stroke,
    Words,
    grown,
    in_file,
)
from halfangle_service.trade.drawing.metrics import cut, text_width, wrapped
from halfangle_service.trade.drawing.notes import LEADING, settle
from halfangle_service.trade.drawing.scales import bar_within, paper_bar, scale_words
from halfangle_service.trade.drawing.sheet import EDGE, Sheet
from halfangle_service.trade.units import Units, to_mm
from halfangle_service.trade.wording import figure as said_length
from halfangle_service.trade.wording import plain

FONT = "DejaVu Sans,Verdana,sans-serif"
NOT_TO_SCALE = "Not to scale."
#: Longest bar on paper, and the half of its ticks.
_BAR_MM, _TICK = 42.0, 1.2
#: Share of a sheet of true size that its bar may take.
_BAR_SHARE = 0.6
#: Hatching ends so far off words.
_CLEAR = 0.7


@dataclass(frozen=True, slots=True)
class Scale:
    """Paper over part, and the unit of the bar that checks it.

    `true_size`: the sheet is to be printed as large as it says, and the bar is round on paper.
    """

    ratio: float
    units: Units
    true_size: bool = False


def svg_of(
    sheet: Sheet,
    title: str,
    lines: Sequence[str] = (),
    *,
    description: str = "",
    scale: Scale | None = None,
    headed: bool = True,
) -> str:
    """Give a sheet as SVG: its heading, its marks, and its scale or that it has none.

    Where it is not `headed`, title and lines are for those who cannot see it, and for a page that
    has them beside it.
    """
    settle(sheet)
    _foot(sheet, scale)
    if headed:
        _head(sheet, title, lines)
    _, top, _, bottom = sheet.extent()
    box = (0.0, top - EDGE, sheet.width, bottom + EDGE)
    return _document(sheet, box, title, description or " ".join((f"{title}.", *lines)))


def _head(sheet: Sheet, title: str, lines: Sequence[str]) -> None:
    """Title and lines above everything."""
    room = sheet.width - 2.0 * EDGE
    under = [part for line in lines for part in wrapped(line, TEXT, room)]
    base = sheet.extent()[1] - 5.0
    for line in reversed(under):
        sheet.write(Words(line, (EDGE, base), TEXT))
        base -= LEADING
    if under:
        base -= 0.6
    sheet.write(Words(cut(title, HEADING, room, bold=True), (EDGE, base), HEADING, bold=True))


def _foot(sheet: Sheet, scale: Scale | None) -> None:
    """Scale and bar below everything; or that the drawing has no scale."""
    base = sheet.extent()[3] + 8.0
    if scale is None:
        sheet.write(Words(NOT_TO_SCALE, (EDGE, base), TEXT))
        return
    long, figure = _bar(sheet, scale)
    level = base - 0.36 * TEXT
    sheet.line([(EDGE, level), (EDGE + long, level)], "outline")
    for share in (0.0, 0.5, 1.0):
        x = EDGE + share * long
        sheet.line([(x, level - _TICK), (x, level + _TICK)], "thin")
    sheet.write(Words(figure, (EDGE + long + 2.0, base), TEXT))
    said = f"Scale {scale_words(scale.ratio)}"
    if not scale.true_size:
        said += f" printed {plain(sheet.width, 4)} mm wide"
    start = sheet.width - EDGE - text_width(said, TEXT)
    if start < EDGE + long + 4.0 + text_width(figure, TEXT):
        start, base = EDGE, base + LEADING
    sheet.write(Words(said, (start, base), TEXT))


def _bar(sheet: Sheet, scale: Scale) -> tuple[float, str]:
    """Length of the bar on paper, and its figure."""
    ratio, units = scale.ratio, scale.units
    if not scale.true_size:
        length = bar_within(_BAR_MM, ratio, units)
        return length * to_mm(ratio, units), f"{plain(length, 4)} {units}"
    length = paper_bar(_BAR_SHARE * sheet.width, units)
    return to_mm(length, units), (
        f"{plain(length)} {units} on paper, {said_length(length / ratio, units)} at the part"
    )


def _document(sheet: Sheet, box: Box, title: str, description: str) -> str:
    left, top, right, bottom = box
    width, height = right - left, bottom - top
    view = f"{in_file(left)} {in_file(top)} {in_file(width)} {in_file(height)}"
    marks = "".join(_group(key, list(them)) for key, them in groupby(_seen(sheet), _style))
    texts = "".join(map(_text, sheet.texts))
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="{view}" width="{width:.3f}mm" '
        f'height="{height:.3f}mm" role="img">'
        f"<title>{escape(title)}</title><desc>{escape(description)}</desc>"
        f'<rect x="{in_file(left)}" y="{in_file(top)}" width="{in_file(width)}" '
        f'height="{in_file(height)}" fill="#fff"/>{marks}'
        f'<g font-family="{FONT}" fill="{INK}">{texts}</g></svg>'
    )


def _seen(sheet: Sheet) -> Iterator[Stroke | Area]:
    """The marks, hatching interrupted where words lie over it."""
    boxes = [grown(box, _CLEAR) for words in sheet.texts for box in words.boxes()]
    for mark in sheet.marks:
        if isinstance(mark, Stroke) and mark.kind == "hatch":
            for part in interrupted((mark.points[0], mark.points[-1]), boxes):
                yield Stroke(part, "hatch")
        else:
            yield mark


def _style(mark: Stroke | Area) -> str:
    return _line_style(mark.kind) if isinstance(mark, Stroke) else f'fill="{TONES[mark.tone]}"'


def _line_style(kind: LineKind) -> str:
    dashes = " ".join(map(in_file, DASHES.get(kind, ())))
    dashed = f' stroke-dasharray="{dashes}"' if dashes else ""
    width = in_file(WIDTHS[kind])
    return f'fill="none" stroke="{INK}" stroke-width="{width}" stroke-linejoin="round"{dashed}'


def _group(style: str, marks: Sequence[Stroke | Area]) -> str:
    """Marks of one style that follow one another: what is drawn later lies over what was before."""
    paths = "".join(f'<path d="{mark.path or _path(mark)}"/>' for mark in marks)
    return f"<g {style}>{paths}</g>"


def _path(mark: Stroke | Area) -> str:
    points, end = mark.points, "Z" if isinstance(mark, Area) else ""
    if points[0] == points[-1]:
        points, end = points[:-1], "Z"
    return "M" + "L".join(f"{in_file(x)} {in_file(y)}" for x, y in points) + end


def _text(words: Words) -> str:
    x, y = in_file(words.at[0]), in_file(words.at[1])
    weight = ' font-weight="bold"' if words.bold else ""
    turned = (
        f' transform="rotate({_angle(-words.turn_degrees)} {x} {y})"' if words.turn_degrees else ""
    )
    return (
        f'<text x="{x}" y="{y}" font-size="{in_file(words.size)}"{weight}{turned}>'
        f"{escape(words.text)}</text>"
    )


def _angle(degrees: float) -> str:
    return f"{degrees + 0.0:.3f}".rstrip("0").rstrip(".")
