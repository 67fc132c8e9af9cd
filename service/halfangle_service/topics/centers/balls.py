"""Stock balls in a center hole: which touch its cone, and what each reads."""

import math
from collections.abc import Iterator, Sequence
from fractions import Fraction
from typing import Annotated

from pydantic import Field

from halfangle_service.errors import Disagreement, Impossible
from halfangle_service.fields import (
    ARCSEC_PER_RADIAN,
    Arcsec,
    Length,
    LengthOut,
    NonNegativeLength,
    ResultModel,
    Unit,
    Units,
    UnitsField,
    from_mm,
    to_mm,
)
from halfangle_service.fields.advisories import Advisory, note
from halfangle_service.fields.choice import not_sent
from halfangle_service.fields.estimate import NotStated
from halfangle_service.fields.slopes import SlopeFields, slope_if_stated
from halfangle_service.operation import Outcome, Source, operation
from halfangle_service.trade import elementary
from halfangle_service.trade.centers import hole as depths
from halfangle_service.trade.cone import Slope
from halfangle_service.trade.tables.centers.guides import stock_balls
from halfangle_service.trade.wording import of_any_unit, plain

_BALL = Source(
    citation="Derived here: a ball in a cone of half angle α stands with its center d/(2 sin α) "
    "from the apex.",
    standing="derived",
)
_STOCK = Source(
    citation="ISO 3290-1, preferred diameters of bearing balls, metric and inch.",
    standing="from-memory",
)
_USUAL = Slope(30.0)
_CHAMFER_HALF_RAD = elementary.radians(60.0)
_LIMITS = ("mouth_diameter_tolerance", "included_angle_tolerance_arcsec")


class CenterBallsRequest(SlopeFields):
    """A center hole; 60° included where no slope is stated."""

    units: UnitsField
    mouth_diameter: Length = Field(description="Diameter at the mouth of the cone.", examples=[8.5])
    pilot_diameter: Length = Field(description="Diameter of the pilot.", examples=[4.0])
    chamfer_diameter: Length | None = Field(
        None, description="Diameter of the 120° protecting chamfer at the face, where there is one."
    )
    mouth_diameter_tolerance: NonNegativeLength | None = Field(
        None, description="Tolerance ± of the mouth's diameter."
    )
    included_angle_tolerance_arcsec: Arcsec | None = Field(
        None, description="Tolerance ± of the cone's included angle."
    )
    balls_in: Annotated[list[Units], Field(min_length=1, max_length=2)] = Field(
        ["mm", "in"], description="Series of balls that the shop has."
    )


class CenterBallReading(ResultModel):
    """One stock ball in the hole."""

    ball_diameter: LengthOut = Field(description="Diameter of the ball, in `units`.")
    ball_named: str = Field(description="Its size as it is sold.", examples=["7 mm"])
    contact_diameter: LengthOut = Field(description="Circle on which it touches the cone.")
    height_over_face: LengthOut = Field(
        description="Height of its top over the face; negative below it."
    )
    smallest_height_over_face: LengthOut | None = Field(
        description="Lowest reading within the tolerances stated; null where none was."
    )
    largest_height_over_face: LengthOut | None = Field(description="Highest reading within them.")
    height_per_diameter: Annotated[float, Unit("length_per_length")] = Field(
        description="Change of the reading for a unit of mouth diameter, the chamfer's as it is."
    )


class CenterBallsResult(ResultModel):
    """Every stock ball that touches the cone, ascending."""

    balls: list[CenterBallReading] = Field(description="The balls, smallest first.")
    middle_ball_diameter: LengthOut = Field(
        description="The ball of these that touches nearest to the cone's middle."
    )
    not_stated: NotStated


@operation(
    "centers.balls",
    relations=(
        "contact diameter = d_b cos α, between pilot and mouth",
        "height over face = d_b/(2 sin α) + d_b/2 − D/(2 tan α) − chamfer depth",
    ),
    sources=(_BALL, _STOCK),
    example={
        "units": "mm",
        "mouth_diameter": 8.5,
        "pilot_diameter": 4,
        "mouth_diameter_tolerance": 0.1,
        "included_angle_tolerance_arcsec": 900,
    },
    largest_request="the stock balls of two series",
)
def balls(request: CenterBallsRequest) -> Outcome[CenterBallsResult]:
    """Stock balls for a center hole.

    The bearing balls that touch a center hole's cone, and the height over the face that each reads
    at the nominal size and at the limits of diameter and angle.
    """
    mouth, pilot = request.mouth_diameter, request.pilot_diameter
    half = (slope_if_stated(request) or _USUAL).half_angle_rad
    _require_cone(request, half)
    found = [_reading(request, *ball, half) for ball in _touching(request, half)]
    if not found:
        least, most = (of_any_unit(d / elementary.cos(half)) for d in (pilot, mouth))
        raise Impossible(
            f"No stock ball lies between {least} and {most}, which alone touch this cone.",
            fields={"mouth_diameter": "should leave a cone that a stock ball touches"},
        )
    middle = (mouth + pilot) / 2.0
    result = CenterBallsResult(
        balls=found,
        middle_ball_diameter=min(
            found, key=lambda b: abs(b.contact_diameter - middle)
        ).ball_diameter,
        not_stated=not_sent(request, *_LIMITS),
    )
    return Outcome(result, tuple(_advisories(found)))


def _require_cone(request: CenterBallsRequest, half: float) -> None:
    mouth, pilot, chamfer = (
        request.mouth_diameter,
        request.pilot_diameter,
        request.chamfer_diameter,
    )
    if pilot >= mouth:
        raise Disagreement(
            f"A pilot of {of_any_unit(pilot)} leaves no cone in a mouth of {of_any_unit(mouth)}.",
            fields={"pilot_diameter": "should be less than mouth_diameter"},
        )
    if chamfer is not None and chamfer <= mouth:
        raise Disagreement(
            f"A chamfer of {of_any_unit(chamfer)} does not go round a mouth of "
            f"{of_any_unit(mouth)}.",
            fields={"chamfer_diameter": "should be more than mouth_diameter"},
        )
    if mouth - (request.mouth_diameter_tolerance or 0.0) <= pilot:
        raise Impossible(
            "At its smallest the mouth is no wider than the pilot: no cone is left.",
            fields={"mouth_diameter_tolerance": f"should be below {of_any_unit(mouth - pilot)}"},
        )
    if chamfer is not None and mouth + (request.mouth_diameter_tolerance or 0.0) > chamfer:
        raise Impossible(
            f"At its largest the mouth is wider than its chamfer of {of_any_unit(chamfer)}.",
            fields={
                "mouth_diameter_tolerance": f"should be at most {of_any_unit(chamfer - mouth)}"
            },
        )
    off = (request.included_angle_tolerance_arcsec or 0.0) / ARCSEC_PER_RADIAN / 2.0
    if not 0.0 < half - off <= half + off < math.pi / 2.0:
        raise Impossible(
            "At a limit of this tolerance there is no cone: its half angle would be 0° or 90°.",
            fields={"included_angle_tolerance_arcsec": "should leave a cone at both limits"},
        )


def _touching(request: CenterBallsRequest, half: float) -> Sequence[tuple[float, str]]:
    """Diameter in `units` and name of each stock ball that touches the cone itself, ascending."""
    rows = [
        (from_mm(to_mm(d, series), request.units), _as_sold(d, series))
        for series in dict.fromkeys(request.balls_in)
        for d in stock_balls()[series].diameters
    ]
    return sorted(
        ball
        for ball in rows
        if request.pilot_diameter
        < depths.ball_contact_diameter(ball[0], half)
        < request.mouth_diameter
    )


def _as_sold(diameter: float, series: Units) -> str:
    """Size of a ball as it is sold: 7 mm, 9/32 in."""
    whole, part = divmod(Fraction(diameter), 1)
    if series == "mm" or not part:
        return f"{plain(diameter)} {series}"
    return f"{whole} {part} {series}" if whole else f"{part} {series}"


def _reading(request: CenterBallsRequest, ball: float, name: str, half: float) -> CenterBallReading:
    mouth, chamfer = request.mouth_diameter, request.chamfer_diameter
    limits = _limits(request, ball, half)
    shallower = 1.0 / (2.0 * elementary.tan(_CHAMFER_HALF_RAD)) if chamfer else 0.0
    return CenterBallReading(
        ball_diameter=ball,
        ball_named=name,
        contact_diameter=depths.ball_contact_diameter(ball, half),
        height_over_face=_over_face(mouth, chamfer, ball, half),
        smallest_height_over_face=None if limits is None else limits[0],
        largest_height_over_face=None if limits is None else limits[1],
        height_per_diameter=shallower - 1.0 / (2.0 * elementary.tan(half)),
    )


def _over_face(mouth: float, chamfer: float | None, ball: float, half: float) -> float:
    """Height of a ball's top over the face, which a chamfer puts above the mouth."""
    depth = depths.cone_depth(chamfer, mouth, _CHAMFER_HALF_RAD) if chamfer else 0.0
    return depths.over_ball(mouth, ball, half) - depth


def _limits(request: CenterBallsRequest, ball: float, half: float) -> tuple[float, float] | None:
    """Lowest and highest reading over the face at the corners of the tolerances stated.

    It changes in proportion to the mouth's diameter, the chamfer's being as it is; with the angle
    it turns where cos α = D/d_b (derived here), which is then a corner too.
    """
    size = request.mouth_diameter_tolerance
    angle = request.included_angle_tolerance_arcsec
    if size is None and angle is None:
        return None
    off = (angle or 0.0) / ARCSEC_PER_RADIAN / 2.0
    heights: list[float] = []
    for sign in (-1.0, 1.0):
        mouth = request.mouth_diameter + sign * (size or 0.0)
        halves = [half - off, half + off]
        turn = elementary.acos(mouth / ball) if mouth < ball else None
        if turn is not None and halves[0] < turn < halves[1]:
            halves.append(turn)
        heights += [_over_face(mouth, request.chamfer_diameter, ball, h) for h in halves]
    return min(heights), max(heights)


def _advisories(found: Sequence[CenterBallReading]) -> Iterator[Advisory]:
    if all(ball.height_over_face < 0.0 for ball in found):
        yield note(
            "balls-below-the-face",
            "Every ball that touches the cone lies below the face: measure down to it by a depth "
            "gauge.",
        )
