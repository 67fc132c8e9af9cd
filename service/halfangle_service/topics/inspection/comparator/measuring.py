"""The angle of a profile from picked points: lines by least squares, angle, form, and verdict."""

import math
from collections.abc import Iterator

import numpy as np
from pydantic import Field

from halfangle_service.errors import Disagreement
from halfangle_service.fields import (
    ArcsecOut,
    CountOut,
    DegreesOut,
    LengthOut,
    NumberOut,
    ResultModel,
    angle_from_radians,
)
from halfangle_service.fields.advisories import Advisory, caution, note
from halfangle_service.fields.choice import all_or_none, one_of, sent_of
from halfangle_service.fields.estimate import AngleEstimate, estimate
from halfangle_service.operation import Outcome, Source, operation
from halfangle_service.topics.inspection.comparator.request import (
    AGAINST,
    ComparedQuantity,
    InspectionComparatorRequest,
)
from halfangle_service.topics.inspection.overlay import (
    InspectionOverlayResult,
    band_seen,
    drawings,
    read_profile,
)
from halfangle_service.trade.angles import ARCSEC_PER_RADIAN
from halfangle_service.trade.comparator.line import Line, Point, form_shows, line_through
from halfangle_service.trade.comparator.profile import Corner, Instrument, corner_of
from halfangle_service.trade.uncertainty import Budget, Verdict
from halfangle_service.trade.uncertainty.zones import Case
from halfangle_service.trade.wording import small_length

#: Spare points from which on a stray one stands out.
STRAY_NEEDS_SPARE = 2
#: More points than this on one line take more than a millisecond or two.
MANY_POINTS = 100
_ALIKE = 1e-9


class ProfilePlace(ResultModel):
    """A place on the profile, at the part."""

    x: LengthOut = Field(description="Coordinate to the right.")
    y: LengthOut = Field(description="Coordinate upward.")


class ProfileLine(ResultModel):
    """A line through picked points."""

    name: str = Field(description="Field of the request that holds its points.")
    direction: DegreesOut = Field(description="Its direction from the x axis, −90 to 90.")
    straightness: LengthOut = Field(
        description="Highest less lowest of its points square to it, at the part."
    )
    point_scatter: LengthOut | None = Field(
        description="Standard deviation of its points about it; null without a point to spare."
    )
    farthest_point: CountOut = Field(
        description="Place in its list, from 0, of the point that lies farthest off."
    )


class InspectionComparatorResult(ResultModel):
    """The angle, the lines that it lies between, and what it proves."""

    quantity: ComparedQuantity = Field(description="Which angle was measured.")
    estimate: AngleEstimate = Field(description="The angle, with its uncertainty.")
    measured_error_arcsec: ArcsecOut | None = Field(
        description="That angle less the one wanted; null where none is."
    )
    verdict: Verdict | None = Field(
        description="What it proves of its tolerance, by `decision_rule`; with something of its "
        "uncertainty not stated nothing is. Null without a tolerance."
    )
    probability_of_conformance: NumberOut | None = Field(
        description="Probability, 0 to 1, that the true angle keeps its tolerance (JCGM 106:2012, "
        "7). Null without a tolerance, and where something of its uncertainty was not stated."
    )
    apex: ProfilePlace = Field(description="Where the two lines meet, at the part.")
    lines: list[ProfileLine] = Field(description="The two lines, in the order of the request.")
    overlay: InspectionOverlayResult | None = Field(
        description="The overlay; null where none was asked for."
    )


_FIT = Source(
    citation="Derived here: least squares square to the line (its first principal axis); a scatter "
    "σ turns it by σ / √Σt²; checked against orthogonal distance regression and simulation.",
    standing="derived",
)
_JCGM = Source(
    citation="JCGM 100:2008, 5.1.2 and G.4: combination, and Student's distribution where the "
    "scatter is estimated from few points.",
    standing="from-memory",
)


@operation(
    "inspection.comparator",
    relations=(
        "tan 2φ = 2 Σxy / (Σx² − Σy²), x and y from the points' middle: least squares square to it",
        "u(φ) = σ / √Σt², t the places along the line",
        "dφ = −½ sin 2φ × (share by which x is magnified more than y)",
        "angle = direction of the one line less that of the other",
    ),
    sources=(_FIT, _JCGM),
    largest_request="200 points a line, one overlay",
    heavy=lambda request: (
        request.overlay is not None
        or any(len(getattr(request, name) or ()) > MANY_POINTS for name in ("flank", *AGAINST))
    ),
    example={
        "units": "in",
        "flank": [
            {"x": 0.05, "y": 0.0290},
            {"x": 0.10, "y": 0.0577},
            {"x": 0.15, "y": 0.0866},
            {"x": 0.20, "y": 0.1156},
            {"x": 0.25, "y": 0.1443},
        ],
        "other_flank": [
            {"x": 0.05, "y": -0.0288},
            {"x": 0.10, "y": -0.0578},
            {"x": 0.15, "y": -0.0866},
            {"x": 0.20, "y": -0.1154},
            {"x": 0.25, "y": -0.1444},
        ],
        "picking_standard_uncertainty": 0.00005,
        "magnification_difference_limit_percent": 0.02,
        "instrument_angle_error_limit_arcsec": 20,
        "included_angle": 60,
        "included_angle_tolerance_arcsec": 300,
    },
)
def comparator(request: InspectionComparatorRequest) -> Outcome[InspectionComparatorResult]:
    """Angle from picked points.

    The angle between two flanks of a profile, or of a flank to the axis or the base, from points
    picked on a comparator: least squares, uncertainty, straightness, apex, and what it proves.
    """
    against = one_of(request, *AGAINST)
    quantity, wanted = AGAINST[against]
    _require_own(request, wanted)
    corner = corner_of(
        _line(request, "flank"), _line(request, against), flanks=against == "other_flank"
    )
    budget = corner.budget(
        Instrument(
            request.picking_standard_uncertainty,
            request.instrument_angle_error_limit_arcsec,
            request.magnification_difference_limit_percent,
        )
    )
    found = corner.angle_rad * ARCSEC_PER_RADIAN
    case = _case(request, wanted, budget)
    overlay, notes = _overlay(request, corner, against)
    within = None if case is None or budget.not_stated else case.conformance(found)
    result = InspectionComparatorResult(
        quantity=quantity,
        estimate=estimate(AngleEstimate, budget, angle_from_radians(corner.angle_rad)),
        measured_error_arcsec=None if case is None else found - (case.lower + case.upper) / 2.0,
        verdict=None if case is None else _verdict(case, found),
        probability_of_conformance=within,
        apex=ProfilePlace(x=corner.apex[0], y=corner.apex[1]),
        lines=[_described(line) for line in (corner.first, corner.second)],
        overlay=overlay,
    )
    return Outcome(result, (*_advisories(request, corner), *notes))


def _require_own(request: InspectionComparatorRequest, wanted: str) -> None:
    """Refuse an angle or a tolerance of another quantity than the points give."""
    others = [
        name
        for _, angle in AGAINST.values()
        if angle != wanted
        for name in (angle, f"{angle}_tolerance_arcsec")
    ]
    sent = sent_of(request, *others)
    if sent:
        listed = "`, `".join(sent)
        raise Disagreement(
            f"The points give `{wanted}`; `{listed}` says nothing of it.",
            fields=dict.fromkeys(sent, f"does not belong to {wanted}"),
        )


def _line(request: InspectionComparatorRequest, name: str) -> Line:
    """The line through points of the request, at the part."""
    size = request.magnification or 1.0
    points = [(point.x / size, point.y / size) for point in getattr(request, name)]
    return line_through(name, points, request.picking_standard_uncertainty or 0.0)


def _case(request: InspectionComparatorRequest, wanted: str, budget: Budget) -> Case | None:
    """The limits by which the angle is judged, in arc-seconds; None without any."""
    tolerance = f"{wanted}_tolerance_arcsec"
    why = "A tolerance is about the angle that is wanted."
    if not all_or_none(request, wanted, tolerance, why=why):
        return None
    nominal, either_way = getattr(request, wanted) * 3600.0, getattr(request, tolerance)
    return Case(nominal - either_way, nominal + either_way, budget, request.decision_rule)


def _verdict(case: Case, found: float) -> Verdict:
    """Judge the angle; with something not stated nothing is proved."""
    return "not-provable" if case.budget.not_stated else case.verdict(found)


def _described(line: Line) -> ProfileLine:
    off = np.abs(line.residuals)
    # Of points alike far off the first, whatever rounding makes of them.
    farthest = np.flatnonzero(off >= off.max() * (1.0 - _ALIKE))[0]
    return ProfileLine(
        name=line.name,
        direction=math.degrees(line.direction_rad),
        straightness=line.straightness,
        point_scatter=line.scatter,
        farthest_point=int(farthest),
    )


def _overlay(
    request: InspectionComparatorRequest, corner: Corner, against: str
) -> tuple[InspectionOverlayResult | None, tuple[Advisory, ...]]:
    """The overlay with the picked points laid on it, and what to mind of it."""
    asked = request.overlay
    if asked is None:
        return None, ()
    if against == "base_line":
        raise Disagreement(
            "An overlay is a cone's profile about its axis, and a base is none.",
            fields={"overlay": "needs other_flank or axis_line in place of base_line"},
        )
    profile = read_profile(asked, request.units, path="overlay/")
    size = request.magnification or 1.0
    names = ("flank", "other_flank") if against == "other_flank" else ("flank",)
    laid = [
        profile.to_profile(corner.apex, corner.axis_rad, (point.x / size, point.y / size))
        for name in names
        for point in getattr(request, name)
    ]
    seen: list[Point] = [(x, y) for x, y in laid if 0.0 <= x <= profile.length]
    return drawings(profile, asked, request.units, seen), tuple(band_seen(profile, request.units))


def _advisories(request: InspectionComparatorRequest, corner: Corner) -> Iterator[Advisory]:
    lines = (corner.first, corner.second)
    spare = min(line.spare for line in lines if line.name in ("flank", "other_flank"))
    if spare < STRAY_NEEDS_SPARE:
        yield note(
            "stray-not-told",
            f"Points to spare: {spare}. With fewer than {STRAY_NEEDS_SPARE} a stray point cannot "
            f"be told from form: pick {STRAY_NEEDS_SPARE - spare} more on each flank, at least.",
        )
    picking = request.picking_standard_uncertainty
    for line in lines:
        if picking is not None and line.scatter is not None and form_shows(line, picking):
            yield caution(
                "flank-not-straight",
                f"The points of `{line.name}` scatter about their line by "
                f"{small_length(line.scatter, request.units)}, picking by "
                f"{small_length(picking, request.units)}: the flank is crowned, hollow or rough, "
                "and its angle is that of the points picked.",
            )
