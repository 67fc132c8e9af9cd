"""Dressing with a single-point diamond, and the guide values for it."""

from collections.abc import Iterator
from typing import Annotated

from pydantic import Field

from halfangle_service.cautions import DRESSING_SAFETY
from halfangle_service.errors import refused_at
from halfangle_service.fields import (
    FINITE,
    Count,
    Length,
    LengthOut,
    NonNegativeLength,
    NumberOut,
    RequestModel,
    ResultModel,
    Rpm,
    SecondsOut,
    Unit,
    UnitsField,
)
from halfangle_service.fields.advisories import Advisory, caution, note
from halfangle_service.fields.base import Rule
from halfangle_service.fields.choice import all_or_none, one_of
from halfangle_service.fields.wheel.passes import unusual_passes
from halfangle_service.operation import Outcome, Source, operation, published_table
from halfangle_service.topics.wheels.sizes import unusual_sizes
from halfangle_service.trade.tables.loader import Standing
from halfangle_service.trade.tables.wheels.guides import Guide, Purpose, guides
from halfangle_service.trade.wheel.dressing import (
    RULE_OVERLAPS,
    active_width,
    cusp_height,
    lead_for,
    roughness_by_cusps,
    roughness_by_power_rule,
    within_rule,
)
from halfangle_service.trade.wording import figure, plain

#: Past this the dress closes the wheel more than it cleans it.
GLAZING_OVERLAP = 10.0

Traverse = Annotated[float, FINITE, Field(ge=1e-6, le=1e5), Unit("length_per_minute")]
TraverseOut = Annotated[float, Unit("length_per_minute")]
_Roughness = Annotated[float, Unit("micrometre")]

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
_BY_CUSPS = Source(
    citation="Theoretical cusp height f²/(8 ρ); roughness (Ra) of ground parts follows it at 1 to "
    "6 overlays: moderngrindingtechnology.com, Dresser Overlays.",
    standing="published",
)
_POWER_RULE = Source(
    citation="Ra ∝ s_d^½ a_d^¼ for single-point dressing: S. Malkin, Grinding Technology, surface "
    "roughness.",
    standing="from-memory",
)


#: What states how wide the diamond touches, of which one is sent.
DIAMOND = ("nose_radius", "active_width")
#: What states how fast it traverses, of which one is sent.
TRAVERSE = ("overlap_ratio", "traverse", "purpose")
#: An earlier dress and the roughness ground after it, sent together.
KNOWN = ("known_lead", "known_depth_per_pass", "known_roughness_micrometre")


class WheelDressingRequest(RequestModel):
    """A diamond, its depth of cut, and an overlap ratio, a traverse or a purpose."""

    rules = (
        Rule("one-of", DIAMOND),
        Rule("one-of", TRAVERSE),
        Rule("all-or-none", KNOWN),
    )

    units: UnitsField
    rpm: Rpm = Field(
        description="Spindle speed of the wheel while it is dressed, per minute.", examples=[1410.0]
    )
    nose_radius: Length | None = Field(
        None,
        description="Radius of the diamond's nose, in `units`. Either this or `active_width`.",
        examples=[0.38],
    )
    active_width: Length | None = Field(
        None,
        description="Width over which the diamond touches the wheel, in `units`, where it is known "
        "by itself (a flat or worn diamond, a blade).",
    )
    depth_per_pass: Length = Field(
        description="Depth dressed away by one pass, in `units`.", examples=[0.025]
    )
    overlap_ratio: Annotated[float, FINITE, Field(ge=0.01, le=1000), Unit("1")] | None = Field(
        None,
        description="Overlap ratio wanted. One of this, `traverse` and `purpose`.",
        examples=[2.0],
    )
    traverse: Traverse | None = Field(
        None, description="Traverse of the diamond, in `units` per minute."
    )
    purpose: Purpose | None = Field(
        None, description="Purpose: the middle of the guide's overlap ratio for it is taken."
    )
    width_to_dress: Length = Field(
        description="Width of the wheel, or length of its flank, to dress, in `units`.",
        examples=[25.0],
    )
    overrun: NonNegativeLength = Field(
        0.0, description="How far the diamond runs past each end of that width, in `units`."
    )
    passes: Annotated[int, Count(ge=1, le=100_000)] = Field(
        1, description="How many passes of this depth."
    )
    known_lead: Length | None = Field(
        None,
        description="Lead of an earlier dress with this diamond and wheel, in `units`; together "
        "with its depth and the roughness that was ground after it, on like work.",
    )
    known_depth_per_pass: Length | None = Field(
        None, description="Depth of the last pass of that dress, in `units`."
    )
    known_roughness_micrometre: (
        Annotated[float, FINITE, Field(ge=0.001, le=100), Unit("micrometre")] | None
    ) = Field(None, description="Roughness Ra measured after it, in micrometres.")


class DressingGuideRange(ResultModel):
    """What the guide values for one purpose mean for this diamond and wheel."""

    purpose: Purpose = Field(description="Purpose.")
    overlap_low: NumberOut = Field(description="Overlap ratio, from.")
    overlap_high: NumberOut = Field(description="Overlap ratio, to.")
    largest_traverse: TraverseOut = Field(description="Traverse at the lower overlap ratio.")
    smallest_traverse: TraverseOut = Field(description="Traverse at the higher overlap ratio.")
    within_guide: bool = Field(
        description="True where the overlap ratio of this dress lies within."
    )
    source: str = Field(description="Where the guide values come from.")
    standing: Standing = Field(description="How they are had.")


class WheelDressingResult(ResultModel):
    """Lead, traverse and time of a dress, and the thread that it leaves on the wheel."""

    active_width: LengthOut = Field(description="Width over which the diamond touches the wheel.")
    lead: LengthOut = Field(description="Way of the diamond along the wheel in one turn of it.")
    overlap_ratio: NumberOut = Field(
        description="Active width over lead: how many times each place is dressed in one pass."
    )
    traverse: TraverseOut = Field(description="Traverse of the diamond, in `units` per minute.")
    cusp_height: LengthOut | None = Field(
        description="Height of the cusps that a round nose leaves, in theory; null for an active "
        "width given by itself, and below an overlap ratio of 1, where the rule does not hold."
    )
    roughness_by_cusps_micrometre: _Roughness | None = Field(
        description="Ra to expect after this dress, in proportion to the cusps; null without a "
        "known dress and a nose radius, and outside overlap ratios of 1 to 6 of either dress."
    )
    roughness_by_power_rule_micrometre: _Roughness | None = Field(
        description="The same as √lead · depth^¼, which changes it far less: expect it between."
    )
    pass_seconds: SecondsOut = Field(
        description="Time of one pass over the width and both overruns, its return not counted."
    )
    total_seconds: SecondsOut = Field(description="Time of all passes, returns not counted.")
    total_depth: LengthOut = Field(description="Depth dressed away by all passes.")
    guides: list[DressingGuideRange] = Field(description="The guide values, coarse to fine.")


class DressingGuideEntry(ResultModel):
    """Guide values for one purpose."""

    purpose: Purpose = Field(description="Purpose.")
    overlap_low: NumberOut = Field(description="Overlap ratio, from.")
    overlap_high: NumberOut = Field(description="Overlap ratio, to.")
    depth_low_mm: Annotated[float, Unit("millimetre")] = Field(
        description="Depth of one pass, from."
    )
    depth_high_mm: Annotated[float, Unit("millimetre")] = Field(
        description="Depth of one pass, to."
    )
    note: str = Field(description="What it does.")
    source: str = Field(description="Where the values come from.")
    standing: Standing = Field(description="How they are had.")


@operation(
    "wheels.dressing",
    relations=(
        "active width = 2 √(2 ρ a − a²)",
        "lead = active width / overlap ratio",
        "traverse = lead × rpm",
        "cusp height = ρ − √(ρ² − lead² / 4), for an overlap ratio of 1 or more",
        "Ra / Ra_known = cusp height / cusp height_known; or (lead / lead_known)^½ "
        "(depth / depth_known)^¼",
    ),
    sources=(_DERIVED, _OVERLAP, _GUIDES, _BY_CUSPS, _POWER_RULE),
    example={
        "units": "mm",
        "rpm": 1410,
        "nose_radius": 0.38,
        "depth_per_pass": 0.025,
        "overlap_ratio": 2,
        "width_to_dress": 25,
        "known_lead": 0.09,
        "known_depth_per_pass": 0.015,
        "known_roughness_micrometre": 0.5,
    },
    columns=True,
)
def dressing(request: WheelDressingRequest) -> Outcome[WheelDressingResult]:
    """Dressing: overlap, lead and traverse.

    Lead and traverse of a single-point diamond for a wanted overlap ratio, or back; the cusps that
    it leaves, the roughness to expect by a dress that is known, the time it takes, and guide values
    from coarse to fine.
    """
    one_of(request, *DIAMOND)
    width = request.active_width or active_width(request.nose_radius or 0.0, request.depth_per_pass)
    overlap = _overlap(request, width)
    lead = lead_for(width, overlap)
    seconds = 60.0 * (request.width_to_dress + 2.0 * request.overrun) / (lead * request.rpm)
    result = WheelDressingResult(
        active_width=width,
        lead=lead,
        overlap_ratio=overlap,
        traverse=lead * request.rpm,
        cusp_height=_cusps(request, lead, overlap),
        **_roughness(request, lead, overlap),
        pass_seconds=seconds,
        total_seconds=seconds * request.passes,
        total_depth=request.depth_per_pass * request.passes,
        guides=[_guide_range(guide, width, request.rpm, overlap) for guide in guides().values()],
    )
    return Outcome(result, tuple(_advisories(request, result)))


def _overlap(request: WheelDressingRequest, width: float) -> float:
    """Overlap ratio from the one of three that the request gives."""
    one_of(request, *TRAVERSE)
    if request.purpose is not None:
        guide = guides()[request.purpose]
        return (guide.overlap_low + guide.overlap_high) / 2.0
    if request.traverse is not None:
        return width * request.rpm / request.traverse
    return request.overlap_ratio or 0.0


def _cusps(request: WheelDressingRequest, lead: float, overlap: float) -> float | None:
    """Height of the cusps; below an overlap of 1 the nose leaves lands that no turn has touched."""
    if request.nose_radius is None or overlap < 1.0:
        return None
    return cusp_height(request.nose_radius, lead)


def _known_overlap(request: WheelDressingRequest) -> float | None:
    """Overlap ratio of the known dress; None where none was stated, or no nose radius."""
    if not all_or_none(request, *KNOWN, why="A known dress is lead, depth and roughness."):
        return None
    if request.nose_radius is None:
        return None
    with refused_at("", depth_per_pass="known_depth_per_pass"):  # noqa: S106  a field's name
        width = active_width(request.nose_radius, request.known_depth_per_pass or 0.0)
    return width / (request.known_lead or 1.0)


def _roughness(
    request: WheelDressingRequest, lead: float, overlap: float
) -> dict[str, float | None]:
    """Roughness to expect by either rule, null outside the overlap ratios that they hold for."""
    before = _known_overlap(request)
    if before is None or not (within_rule(before) and within_rule(overlap)):
        return {"roughness_by_cusps_micrometre": None, "roughness_by_power_rule_micrometre": None}
    known, known_lead = request.known_roughness_micrometre or 0.0, request.known_lead or 1.0
    deeper = request.depth_per_pass / (request.known_depth_per_pass or 1.0)
    nose = request.nose_radius or 0.0
    return {
        "roughness_by_cusps_micrometre": roughness_by_cusps(known, nose, known_lead, lead),
        "roughness_by_power_rule_micrometre": roughness_by_power_rule(
            known, lead / known_lead, deeper
        ),
    }


def _guide_range(guide: Guide, width: float, rpm: float, overlap: float) -> DressingGuideRange:
    return DressingGuideRange(
        purpose=guide.purpose,
        overlap_low=guide.overlap_low,
        overlap_high=guide.overlap_high,
        largest_traverse=width * rpm / guide.overlap_low,
        smallest_traverse=width * rpm / guide.overlap_high,
        within_guide=guide.overlap_low <= overlap <= guide.overlap_high,
        source=guide.source,
        standing=guide.standing,
    )


def _advisories(request: WheelDressingRequest, result: WheelDressingResult) -> Iterator[Advisory]:
    if result.overlap_ratio < 1.0:
        yield caution(
            "thread-left",
            f"In one turn of the wheel the diamond moves {figure(result.lead, request.units)} and "
            f"touches only {figure(result.active_width, request.units)}: it cuts a thread and "
            "leaves part of the wheel undressed.",
        )
    if result.overlap_ratio > GLAZING_OVERLAP:
        yield caution(
            "glazing",
            f"At an overlap ratio of {plain(result.overlap_ratio, 4)} the diamond rubs rather "
            "than cuts: the wheel comes out closed and burns (common practice, no source).",
        )
    yield from _outside_the_rule(request, result)
    yield from unusual_passes(
        request.depth_per_pass, request.passes, result.total_depth, request.units
    )
    yield from unusual_sizes(request, request.units)
    yield note(
        "diamond-drag",
        "Incline a single-point diamond by 10° to 15° so that the wheel drags it, and turn it in "
        "its holder now and then (from memory of shop texts; `wheels.diamond` tells the drag). "
        "Traverse without dwelling.",
    )
    yield DRESSING_SAFETY


def _outside_the_rule(
    request: WheelDressingRequest, result: WheelDressingResult
) -> Iterator[Advisory]:
    if request.known_lead is None or result.roughness_by_cusps_micrometre is not None:
        return
    before, (low, high) = _known_overlap(request), RULE_OVERLAPS
    if before is None:
        yield note(
            "roughness-not-told",
            "The rules of roughness are of a round nose: send `nose_radius` in place of "
            "`active_width`.",
        )
        return
    yield caution(
        "outside-the-rule",
        f"Roughness follows the dress by these rules at overlap ratios of {plain(low)} to "
        f"{plain(high)}; the known dress has {plain(before, 4)}, this one "
        f"{plain(result.overlap_ratio, 4)}.",
    )


@published_table("wheels.guides", singular="guide", key="purpose")
def guide_values() -> dict[str, DressingGuideEntry]:
    """Guide values for dressing.

    Overlap ratio and depth of a pass for single-point dressing, coarse to fine.
    """
    return {guide.purpose: _entry(guide) for guide in guides().values()}


def _entry(guide: Guide) -> DressingGuideEntry:
    return DressingGuideEntry(
        purpose=guide.purpose,
        overlap_low=guide.overlap_low,
        overlap_high=guide.overlap_high,
        depth_low_mm=guide.depth_low_mm,
        depth_high_mm=guide.depth_high_mm,
        note=guide.note,
        source=guide.source,
        standing=guide.standing,
    )
