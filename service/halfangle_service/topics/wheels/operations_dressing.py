"""Dressing with a single-point diamond: models to maths and back."""

from collections.abc import Iterator
from typing import cast

from halfangle_service.cautions import DRESSING_SAFETY
from halfangle_service.errors import Disagreement
from halfangle_service.fields import from_mm, to_mm
from halfangle_service.fields.advisories import Advisory, caution, note
from halfangle_service.operation import Operation, Outcome, Source, published_table
from halfangle_service.topics.wheels.models_dressing import (
    DressingGuideEntry,
    DressingGuideRange,
    Purpose,
    WheelDressingRequest,
    WheelDressingResult,
)
from halfangle_service.trade.tables.wheels.guides import Guide, guides
from halfangle_service.trade.wheel.dressing import active_width, cusp_height, lead_for
from halfangle_service.trade.wording import plain

#: Past this the dress closes the wheel more than it cleans it.
GLAZING_OVERLAP = 10.0

_DERIVED = Source(
    citation="Derived here: the diamond's nose touches the wheel over a chord of its circle.",
    standing="derived",
)
_OVERLAP = Source(
    citation="Overlap ratio as active width over feed in one turn of the wheel: Klocke, "
    "Manufacturing Processes 2: Grinding, Honing, Lapping, as a public excerpt prints it (6.26).",
    standing="published",
)
_GUIDES = Source(
    citation="Guide values of overlap ratio and depth, from grinding textbooks and shop texts; "
    "each row names its own.",
    standing="from-memory",
)


def dressing(request: WheelDressingRequest) -> Outcome[WheelDressingResult]:
    """Lead, traverse and time of a dress."""
    width = _active_width(request)
    overlap = _overlap(request, width)
    lead = lead_for(width, overlap)
    cusp = cusp_height(request.nose_radius, lead) if request.nose_radius is not None else None
    way = request.wheel_width + 2.0 * request.overrun
    pass_time = 60.0 * way / (lead * request.rpm)
    result = WheelDressingResult(
        active_width=width,
        lead=lead,
        overlap_ratio=overlap,
        traverse=lead * request.rpm,
        cusp_height=cusp,
        cusp_height_um=None if cusp is None else 1000.0 * to_mm(cusp, request.units),
        pass_time=pass_time,
        total_time=pass_time * request.passes,
        total_depth=request.depth * request.passes,
        guides=[_guide_range(guide, width, request.rpm, overlap) for guide in guides().values()],
    )
    return Outcome(result, tuple(_advisories(request, result)))


def _active_width(request: WheelDressingRequest) -> float:
    """Width over which the diamond touches, as given or from its nose."""
    if (request.nose_radius is None) == (request.active_width is None):
        what = "are both missing" if request.nose_radius is None else "were both sent"
        raise Disagreement(
            f"`nose_radius` and `active_width` {what}; send one of them.",
            fields={
                "nose_radius": "send either this or active_width",
                "active_width": "send either this or nose_radius",
            },
        )
    if request.active_width is not None:
        return request.active_width
    return active_width(request.nose_radius or 0.0, request.depth)


def _overlap(request: WheelDressingRequest, width: float) -> float:
    """Overlap ratio from the one of three that the request gives."""
    names = ("overlap_ratio", "traverse", "purpose")
    given = [name for name in names if getattr(request, name) is not None]
    if len(given) != 1:
        what = "are all missing" if not given else "were sent together"
        raise Disagreement(
            f"{', '.join(given or names)} {what}: send one of {', '.join(names)}.",
            fields={name: f"send one of {', '.join(names)}" for name in given or names},
        )
    if request.purpose is not None:
        guide = guides()[request.purpose]
        return (guide.overlap_low + guide.overlap_high) / 2.0
    if request.traverse is not None:
        return width * request.rpm / request.traverse
    return request.overlap_ratio or 0.0


def _guide_range(guide: Guide, width: float, rpm: float, overlap: float) -> DressingGuideRange:
    return DressingGuideRange(
        purpose=cast("Purpose", guide.purpose),
        overlap_low=guide.overlap_low,
        overlap_high=guide.overlap_high,
        traverse_fastest=width * rpm / guide.overlap_low,
        traverse_slowest=width * rpm / guide.overlap_high,
        meets=guide.overlap_low <= overlap <= guide.overlap_high,
        source=guide.source,
        standing=guide.standing,
    )


def _advisories(request: WheelDressingRequest, result: WheelDressingResult) -> Iterator[Advisory]:
    if result.overlap_ratio < 1.0:
        yield caution(
            "thread-left",
            f"The diamond moves {plain(result.lead)} in one turn and touches only "
            f"{plain(result.active_width)}: it cuts a thread and leaves part of the wheel "
            "undressed.",
        )
    if result.overlap_ratio > GLAZING_OVERLAP:
        yield caution(
            "glazing",
            f"At an overlap ratio of {plain(result.overlap_ratio, 4)} the diamond rubs rather "
            "than cuts: "
            "the wheel comes out closed and burns (common practice, no source).",
        )
    deepest = max(guide.depth_high_mm for guide in guides().values())
    if to_mm(request.depth, request.units) > deepest * (1.0 + 1e-9):
        yield caution(
            "deep-pass",
            f"A pass of {plain(request.depth)} is deeper than the guides give "
            f"({plain(from_mm(deepest, request.units), 4)} {request.units}): it heats and shocks "
            "the diamond.",
        )
    yield note(
        "diamond-drag",
        "Incline a single-point diamond by 10° to 15° so that the wheel drags it, and turn it in "
        "its holder now and then (from memory of shop texts). Traverse without dwelling.",
    )
    yield DRESSING_SAFETY


def _entry(guide: Guide) -> DressingGuideEntry:
    return DressingGuideEntry(
        purpose=cast("Purpose", guide.purpose),
        overlap_low=guide.overlap_low,
        overlap_high=guide.overlap_high,
        depth_low_mm=guide.depth_low_mm,
        depth_high_mm=guide.depth_high_mm,
        note=guide.note,
        source=guide.source,
        standing=guide.standing,
    )


@published_table("wheels.guides", singular="guide", key="purpose", sources=(_GUIDES,))
def guide_values() -> dict[str, DressingGuideEntry]:
    """Guide values for dressing.

    Overlap ratio and depth of a pass for single-point dressing, coarse to fine.
    """
    return {purpose: _entry(guide) for purpose, guide in guides().items()}


OPERATION = Operation(
    topic="wheels",
    verb="dressing",
    title="Dressing: overlap, lead and traverse",
    summary="Lead and traverse of a single-point diamond for a wanted overlap ratio, or back; the "
    "cusps that it leaves, the time it takes, and guide values from coarse to fine.",
    request=WheelDressingRequest,
    result=WheelDressingResult,
    calculate=dressing,
    relations=(
        "active width = 2 √(2 ρ a − a²)",
        "lead = active width / overlap ratio",
        "traverse = lead × rpm",
        "cusp height = ρ − √(ρ² − lead² / 4)",
    ),
    sources=(_DERIVED, _OVERLAP, _GUIDES),
    example={
        "units": "mm",
        "rpm": 1410,
        "nose_radius": 0.38,
        "depth": 0.025,
        "overlap_ratio": 2,
        "wheel_width": 25,
    },
)
