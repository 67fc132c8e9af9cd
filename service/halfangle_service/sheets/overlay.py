"""The overlay on a page of paper, at its own size: what is printed at 100 % is true."""

import re
from collections.abc import Sequence

from markupsafe import Markup

from halfangle_service.errors import Unreachable
from halfangle_service.fields.advisories import Advisory
from halfangle_service.sheets.model import Origin, Paper
from halfangle_service.sheets.page import PAPER_NAMES, shown, template
from halfangle_service.sheets.parts import by_severity
from halfangle_service.topics.inspection.overlay import (
    InspectionOverlayRequest,
    InspectionOverlayResult,
)
from halfangle_service.trade.wording import plain

#: Width and height of the papers, the margin about the drawing, and what stands under it.
_PAPERS: dict[Paper, tuple[float, float]] = {"a4": (210.0, 297.0), "letter": (215.9, 279.4)}
_MARGIN, _FOOT = 6.0, 30.0
_SIZE = re.compile(r'width="([0-9.]+)mm" height="([0-9.]+)mm"')


def overlay_page(
    request: InspectionOverlayRequest,
    result: InspectionOverlayResult,
    advisories: Sequence[Advisory],
    origin: Origin,
    paper: Paper,
) -> str:
    """The overlay upright or lying, whichever it fits; Unreachable where it fits neither."""
    svg = result.svg or ""
    across = _lying(svg, request.magnification, paper)
    stops, cautions, notes = by_severity(advisories)
    return template("overlay.html.jinja").render(
        drawing=shown(svg),
        origin=origin,
        code=Markup(origin.code.svg),  # noqa: S704 -- made here of modules, no text
        lines=(*stops, *cautions, *notes),
        page=f"{PAPER_NAMES[paper]} {'landscape' if across else 'portrait'}",
        margin=_MARGIN,
    )


def _lying(svg: str, magnification: float, paper: Paper) -> bool:
    """Whether the drawing needs the paper lying."""
    found = _SIZE.search(svg)
    width, height = (float(found[1]), float(found[2])) if found else (0.0, 0.0)
    short, long = _PAPERS[paper]
    shares = []
    for across, down in ((short, long), (long, short)):
        room = (across - 2.0 * _MARGIN, down - 2.0 * _MARGIN - _FOOT)
        if width <= room[0] and height <= room[1]:
            return across > down
        shares.append(min(room[0] / width, room[1] / height))
    # Titles and margins of the drawing do not shrink with it, so that rather less is named.
    fits = 0.95 * max(shares) * magnification
    raise Unreachable(
        f"At {plain(magnification)} to 1 the overlay is {plain(width, 3)} mm × "
        f"{plain(height, 3)} mm, more than a page of {PAPER_NAMES[paper]} holds. "
        "As SVG or DXF it has any size.",
        fields={"magnification": f"should be at most about {plain(fits, 2)} to 1 on this paper"},
    )
