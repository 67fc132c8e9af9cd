"""Where a gauge stands on its cone, where both bear, and what a marking film shows of it."""

import math
from collections.abc import Iterator
from dataclasses import asdict, fields
from typing import Any, Literal

from pydantic import Field

from halfangle_service.cautions import bluing_blind
from halfangle_service.errors import Impossible
from halfangle_service.fields import (
    ARCSEC_PER_RADIAN,
    ArcsecOut,
    Length,
    LengthOut,
    NumberOut,
    ResultModel,
    SharePercent,
    SignedLength,
    UnitsField,
    from_mm,
)
from halfangle_service.fields.advisories import Advisory, caution
from halfangle_service.fields.choice import not_sent
from halfangle_service.fields.estimate import NotStated
from halfangle_service.fields.slopes import SlopeFields, slope_of
from halfangle_service.operation import Outcome, Source, operation
from halfangle_service.topics.tapers.feeding import SmallError
from halfangle_service.trade.tapers.bearing import (
    Bearing,
    Marks,
    Pair,
    bearing,
    smallest_angle_shown,
)
from halfangle_service.trade.tapers.feed import End
from halfangle_service.trade.wording import of_any_unit, small_length

#: Thickness of a thin marking film, in mm: common practice, no source.
_FILM_MM = 0.002
_EDGES = Source(
    citation="Derived here: cones of different angles bear on an edge, the outer one's mouth or "
    "the inner one's small end, on the side of the blunter one; checked against cones slid "
    "together.",
    standing="derived",
)


class TaperStandoffRequest(SlopeFields):
    """A cone and its gauge; the slope is the gauge's."""

    units: UnitsField
    kind: Literal["external", "internal"] = Field(
        description="`external`: a plug or shank in a ring gauge; `internal`: a socket with a plug "
        "gauge in it.",
        examples=["external"],
    )
    contact_length: Length = Field(
        description="Length of contact along the axis, from the gauge plane at the large end to "
        "where the inner cone ends.",
        examples=[2.5],
    )
    diameter_error: SignedLength | None = Field(
        None,
        description="Part's diameter at the gauge plane less the gauge's.",
        examples=[0.0005],
    )
    included_angle_error_arcsec: SmallError | None = Field(
        None, description="Part's included angle less the gauge's."
    )
    blue_film: Length | None = Field(
        None,
        description="Thickness of the marking film; 0.00008 in or 0.002 mm where left out (common "
        "practice, no source).",
    )


class TaperStandoffResult(ResultModel):
    """Where the gauge line stands and where the cones bear.

    What follows from an error is null where that error was not stated; see `not_stated`.
    """

    standoff: LengthOut | None = Field(
        description="How far the inner cone's gauge plane stands out of the outer one's, by the "
        "errors stated: positive out, negative in."
    )
    standoff_from_diameter: LengthOut | None = Field(description="Its share from the diameter.")
    standoff_from_angle: LengthOut | None = Field(description="Its share from the angle.")
    standoff_per_diameter: NumberOut = Field(
        description="Axial shift for one unit of diameter, along the side that bears."
    )
    bears_at: End | None = Field(description="Where the cones bear.")
    open_at: End | None = Field(description="Where they stand apart; null too at both ends.")
    gap_normal: LengthOut | None = Field(
        description="Gap at the open end, square to the gauge's surface."
    )
    gap_on_diameter: LengthOut | None = Field(description="The same on the diameter.")
    marked_share_percent: SharePercent | None = Field(
        description="Share of the length that the film would mark."
    )
    marked_length: LengthOut | None = Field(
        description="Length along the axis that the film would mark."
    )
    bluing_marks: Marks | None = Field(description="What the marking shows.")
    smallest_error_shown_arcsec: ArcsecOut = Field(
        description="Least error of included angle that this film shows over this length: smaller "
        "ones mark all over."
    )
    not_stated: NotStated


@operation(
    "tapers.standoff",
    relations=(
        "ΔZ = ΔD / (2 tan α), α of the blunter cone: its side bears on the other one's edge",
        "ΔZ = l (tan α_outer − tan α_inner) / tan α_outer where the outer one is blunter",
        "gap on the diameter = 2 (l − ΔZ) |tan α_outer − tan α_inner|",
        "marked share = film / gap",
    ),
    sources=(_EDGES,),
    example={
        "units": "in",
        "taper_per_foot": 3.5,
        "kind": "external",
        "contact_length": 2.5,
        "diameter_error": 0.0005,
        "included_angle_error_arcsec": 20,
    },
    columns=True,
)
def standoff(request: TaperStandoffRequest) -> Outcome[TaperStandoffResult]:
    """Stand-off of a taper gauge.

    How far a gauge stands off for an error of diameter, where cones of different angles bear and by
    how much they gape, and what bluing will show.
    """
    gauge = slope_of(request).half_angle_rad
    part = _part_half_angle(gauge, request.included_angle_error_arcsec or 0.0)
    external = request.kind == "external"
    pair = Pair(*((gauge, part) if external else (part, gauge)), request.contact_length)
    film = request.blue_film or from_mm(_FILM_MM, request.units)
    from_diameter = _from_diameter(request, pair)
    by_angle: dict[str, Any] = dict.fromkeys(field.name for field in fields(Bearing))
    if request.included_angle_error_arcsec is not None:
        by_angle = asdict(bearing(pair, gauge, film, by_diameter=from_diameter or 0.0))
    parts = [p for p in (from_diameter, by_angle["standoff_from_angle"]) if p is not None]
    shown = smallest_angle_shown(request.contact_length, gauge, film)
    result = TaperStandoffResult(
        standoff=sum(parts) if parts else None,
        standoff_from_diameter=from_diameter,
        standoff_per_diameter=pair.standoff_per_diameter,
        smallest_error_shown_arcsec=shown * ARCSEC_PER_RADIAN,
        not_stated=not_sent(request, "diameter_error", "included_angle_error_arcsec"),
        **by_angle,
    )
    return Outcome(result, tuple(_advisories(request, result)))


def _part_half_angle(gauge: float, included_error_arcsec: float) -> float:
    """Half angle of the part in radians; refuses one that is no cone's."""
    part = gauge + included_error_arcsec / 2.0 / ARCSEC_PER_RADIAN
    if not 0.0 < part < math.pi / 2:
        raise Impossible(
            "With this error the part would be no cone.",
            fields={"included_angle_error_arcsec": "should leave a half angle of 0° to 90°"},
        )
    return part


def _from_diameter(request: TaperStandoffRequest, pair: Pair) -> float | None:
    """Stand-out by the diameter: a large plug stands out of its ring, a large socket lets in.

    Refuses a part that does not go into its gauge, or lets it in.
    """
    if request.diameter_error is None:
        return None
    external = request.kind == "external"
    excess = request.diameter_error if external else -request.diameter_error
    if excess >= pair.room:
        limit = (
            f"less than {of_any_unit(pair.room)}"
            if external
            else f"more than {of_any_unit(-pair.room)}"
        )
        raise Impossible(
            "The inner cone does not enter the outer one: its small end is larger than the outer "
            "one's mouth.",
            fields={"diameter_error": f"should be {limit}"},
        )
    return excess * pair.standoff_per_diameter


def _advisories(request: TaperStandoffRequest, result: TaperStandoffResult) -> Iterator[Advisory]:
    if (result.standoff or 0.0) < -request.contact_length:
        yield caution(
            "sinks-past-contact",
            f"The inner cone goes in by {small_length(-(result.standoff or 0.0), request.units)}, "
            "further than the length of contact: is the error of the diameter the one meant?",
        )
    if result.bluing_marks == "at-small-end-only":
        yield caution(
            "bears-at-small-end",
            "Bearing at the small end lets the large end rock and run out; a taper should rather "
            "bear at the large end (common practice, no source).",
        )
    if result.bluing_marks in ("all-over", None):
        yield bluing_blind(result.smallest_error_shown_arcsec)
