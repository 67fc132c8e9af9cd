"""A sheet as one page of HTML that prints as it looks, whatever prints it."""

import re
from base64 import b64encode
from functools import cache

from jinja2 import Environment, PackageLoader, StrictUndefined, Template
from markupsafe import Markup

from halfangle_service.sheets.fit import LINE, in_two, size_for
from halfangle_service.sheets.model import Origin, Paper, Sheet

#: What CSS calls the paper.
PAPER_NAMES: dict[Paper, str] = {"a4": "A4", "letter": "letter"}


def page_of(sheet: Sheet, origin: Origin, paper: Paper) -> str:
    """Write a sheet for a paper.

    The code and the drawing are SVG of our own; every other text is escaped.
    """
    parted = in_two(sheet.steps)
    numbered = list(enumerate(sheet.steps, start=1))
    return template("sheet.html.jinja").render(
        sheet=sheet,
        columns=(numbered[:parted], numbered[parted:]),
        origin=origin,
        code=Markup(origin.code.svg),  # noqa: S704 -- made here of modules, no text
        drawing=shown(sheet.drawing.svg) if sheet.drawing else None,
        # A log has its own columns to write in; without one there is a column at least.
        pieces=() if sheet.log else sheet.pieces or (0,),
        paper=paper,
        paper_name=PAPER_NAMES[paper],
        size=size_for(sheet, paper),
        line=LINE,
    )


def shown(svg: str) -> Markup:
    """A drawing within the page; one that has a style sheet, which would style the page, as image.

    Drawings are ours, and their texts escaped.
    """
    if "<style" not in svg:
        return Markup(svg)  # noqa: S704
    data = b64encode(svg.encode()).decode()
    return Markup('<img alt="" src="data:image/svg+xml;base64,{}">').format(data)


#: Longest run of signs without a blank that is left whole, and after how many a longer one may
#: break.
_LONGEST_WORD, _PART = 24, 8
#: Stands for such a place until the text is escaped.
_HERE = "\0"
_LONG_WORD = re.compile(rf"\S{{{_LONGEST_WORD + 1},}}")


#: Signs that are no text: no page may hold them.
_NO_TEXT = re.compile(r"[\x00-\x08\x0b\x0c\x0e-\x1f\x7f]")


def tidy(text: str) -> str:
    r"""A text without what is none.

    >>> tidy("a\x00b")
    'ab'
    """
    return _NO_TEXT.sub("", text)


def breakable(text: str) -> Markup:
    """Escape a text and let its long words break, so that none runs out of its room.

    Said in the text, not by a style: where every word may break, the page takes twice the time.
    """

    def parted(word: re.Match[str]) -> str:
        run = word[0]
        return _HERE.join(run[place : place + _PART] for place in range(0, len(run), _PART))

    return Markup("<wbr>").join(_LONG_WORD.sub(parted, tidy(text)).split(_HERE))


@cache
def template(name: str) -> Template:
    """A template by its name; whatever it writes that is not ours is escaped."""
    environment = Environment(
        loader=PackageLoader("halfangle_service.sheets"),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
    )
    environment.filters.update(breakable=breakable, tidy=tidy)
    return environment.get_template(name)
