"""Center holes by the published tables: pilot, countersink, depth and the check over a ball."""

from collections.abc import Iterator
from dataclasses import asdict
from typing import Annotated, Literal

from pydantic import Field

from halfangle_service.errors import Disagreement, Impossible
from halfangle_service.fields import (
    Length,
    LengthOut,
    ResultModel,
    SignedLength,
    Unit,
    Units,
    UnitsField,
)
from halfangle_service.fields.advisories import Advisory, caution, note
from halfangle_service.fields.base import Rule
from halfangle_service.fields.choice import needs, one_of
from halfangle_service.fields.drawings.asked import DrawnFields, DrawnResult, is_drawn
from halfangle_service.fields.slopes import SlopeFields, slope_if_stated
from halfangle_service.operation import Outcome, Source, operation, published_table
from halfangle_service.trade import elementary
from halfangle_service.trade.centers import hole as depths
from halfangle_service.trade.centers.drawing import BallInHole, HoleDrawn, hole_svg
from halfangle_service.trade.cone import Slope
from halfangle_service.trade.tables.centers.holes import (
    HoleType,
    TableHole,
    UntabledType,
    center_holes,
    find_hole,
    reaching,
    smallest_hole,
)
from halfangle_service.trade.tables.loader import Standing
from halfangle_service.trade.wording import figure, of_any_unit

#: The cone of every table served here.
TABLE_SLOPE = Slope(30.0)
#: Types that have a protecting chamfer.
CHAMFERED = ("B", "bell")
#: Past this part of its full diameter a plain countersink comes near the drill's body.
NEAR_THE_BODY = 0.9
#: A diameter off by no more than this part of it is rounding of the arithmetic.
ROUNDING = 1e-9
#: The protecting chamfer of type B and of the bell drill is 120° included.
CHAMFER_HALF_RAD = elementary.radians(60.0)
_METRIC = Source(
    citation="DIN 332-1:1986, center holes 60°, types A, B and R; drills by ISO 866, ISO 2540 and "
    "ISO 2541. Each row says which of it was read and which is from memory.",
    standing="from-memory",
)
_INCH = Source(
    citation="ANSI/ASME B94.11M-1993, combined drills and countersinks, plain and bell types.",
    standing="from-memory",
)
_BALL = Source(
    citation="Derived here: a ball in a cone of half angle α stands with its center d/(2 sin α) "
    "from the apex.",
    standing="derived",
)


#: What names the hole, of which one is sent.
HOLE = ("key", "type")


class CenterHoleRequest(SlopeFields, DrawnFields):
    """A center hole by its type or its key, and the diameter wanted at its mouth.

    The slope is that of its cone; 60° included, as in every table served here, where none is
    stated.
    """

    rules = (
        Rule("one-of", HOLE),
        Rule("needs", ("type",), "mouth_diameter"),
    )

    units: UnitsField
    type: Literal[HoleType, UntabledType] | None = Field(
        None,
        description="Type: A, B or R (metric), plain or bell (inch). Send this for the smallest "
        "size that reaches the diameter, or `key` for one size. C and D are known and not in the "
        "tables: the refusal says what to take.",
        examples=["A"],
    )
    key: str | None = Field(
        None,
        min_length=3,
        max_length=12,
        description="One size, as `GET /v1/centers/holes` lists it.",
        examples=["a-2.5"],
    )
    mouth_diameter: Length | None = Field(
        None,
        description="Diameter wanted at the mouth of the 60° cone, in `units`; the table's largest "
        "where it is not sent.",
        examples=[5.0],
    )
    chamfer_diameter: Length | None = Field(
        None,
        description="Diameter of the 120° protecting chamfer at the face, in `units`, for types B "
        "and bell; type B has the table's where it is not sent.",
    )
    ball_diameter: Length | None = Field(
        None, description="Ball for the check, in `units`; one that touches halfway if not sent."
    )
    height_over_face: SignedLength | None = Field(
        None,
        description="Measured height of the ball's top over the face, in `units`; negative below "
        "it. Needs `ball_diameter`.",
    )


class CenterHoleBall(ResultModel):
    """The check over a ball."""

    ball_diameter: LengthOut = Field(description="Diameter of the ball.")
    contact_diameter: LengthOut = Field(description="Circle on which it touches the cone: d cos α.")
    height_over_face: LengthOut = Field(
        description="Height of its top over the face, chamfer counted; negative below the face."
    )
    height_per_diameter: Annotated[float, Unit("length_per_length")] = Field(
        description="Change of that height for a unit of mouth diameter."
    )
    found_diameter: LengthOut | None = Field(
        description="Mouth diameter by the measured height; null where none was sent."
    )
    diameter_error: LengthOut | None = Field(
        description="Found less wanted diameter; null where no height was sent."
    )


class CenterHoleResult(DrawnResult):
    """Pilot, countersink and depth."""

    key: str = Field(description="Key of the size used.")
    type: HoleType = Field(description="Its type.")
    pilot_diameter: LengthOut = Field(description="Diameter of the pilot.")
    mouth_diameter: LengthOut = Field(description="Diameter at the mouth of the cone.")
    cone_diameter: LengthOut = Field(description="Largest that the table gives this size.")
    cone_depth: LengthOut | None = Field(
        description="Depth of the cone, pilot's edge to mouth; null for type R, whose wall is an "
        "arc."
    )
    chamfer_diameter: LengthOut | None = Field(description="Protecting chamfer at the face.")
    chamfer_depth: LengthOut = Field(description="Depth of the protecting chamfer; 0 without one.")
    depth_to_pilot_edge: LengthOut | None = Field(
        description="Face to the edge of the pilot; null for type R."
    )
    tool_depth_min: LengthOut | None = Field(
        description="Face to the drill's tip with the shortest pilot of the table."
    )
    tool_depth_max: LengthOut | None = Field(
        description="Face to the drill's tip with the longest pilot of the table."
    )
    depth_min: LengthOut | None = Field(
        description="Least depth of the whole hole by the table, at its full mouth; null where it "
        "gives none."
    )
    cut_off: LengthOut | None = Field(
        description="Length to cut off where the hole may not stay; null where the table gives "
        "none."
    )
    ball: CenterHoleBall | None = Field(description="The check over a ball; null for type R.")
    standing: Standing = Field(description="How the hole's dimensions are had.")
    drill_standing: Standing = Field(
        description="How the pilot's length is had, on which the tool depths stand."
    )


class CenterHoleRow(ResultModel):
    """One row of the table, in its own units."""

    key: str = Field(description="Key to send as `key`.", examples=["a-2.5"])
    type: HoleType = Field(description="A, B, R, plain or bell.")
    units: Units = Field(description="Unit of its lengths.")
    pilot_diameter: LengthOut = Field(description="Diameter of the pilot.")
    cone_diameter: LengthOut = Field(
        description="Largest diameter of the 60° cone (of the arc, for type R)."
    )
    chamfer_diameter: LengthOut | None = Field(description="Protecting chamfer, 120°; type B.")
    chamfer_depth: LengthOut | None = Field(description="Its depth by the table; type B.")
    depth_min: LengthOut | None = Field(description="Least depth of the whole hole.")
    cut_off: LengthOut | None = Field(description="Length to cut off where the hole may not stay.")
    pilot_length_min: LengthOut | None = Field(description="Shortest pilot of the drill.")
    pilot_length_max: LengthOut | None = Field(description="Longest pilot of the drill.")
    body_diameter: LengthOut = Field(description="Body of the drill.")
    arc_radius_min: LengthOut | None = Field(description="Smallest radius of the arc; type R.")
    arc_radius_max: LengthOut | None = Field(description="Largest radius of the arc; type R.")
    source: str = Field(description="Where the row comes from.")
    standing: Standing = Field(description="How the hole's dimensions are had.")
    drill_standing: Standing = Field(description="How pilot lengths and body are had.")


@published_table("centers.holes", singular="hole", key="key")
def holes() -> dict[str, CenterHoleRow]:
    """Center holes.

    Published tables of center holes, types A, B and R (metric), and of combined drills, plain and
    bell (inch); each row with its source and standing.
    """
    return {key: CenterHoleRow(**asdict(row)) for key, row in center_holes().items()}


@operation(
    "centers.hole",
    relations=(
        "cone depth = (D - d)/(2 tan α)",
        "height over face = d_b/(2 sin α) + d_b/2 - D/(2 tan α)",
        "contact diameter = d_b cos α",
    ),
    sources=(_METRIC, _INCH, _BALL),
    heavy=is_drawn,
    example={
        "units": "mm",
        "type": "A",
        "mouth_diameter": 5.0,
        "ball_diameter": 4.5,
        "formats": ["svg"],
    },
    columns=True,
)
def hole(request: CenterHoleRequest) -> Outcome[CenterHoleResult]:
    """Center hole by the published tables.

    Pilot, countersink, depth for a wanted diameter and the check over a ball, types A, B and R in
    metric, plain and bell in inches.
    """
    row = _row(request)
    mouth = request.mouth_diameter or row.cone_diameter
    _require_reach(mouth, row, request.units)
    chamfer = _chamfer_diameter(request.chamfer_diameter, row, mouth)
    half_rad = (slope_if_stated(request) or TABLE_SLOPE).half_angle_rad
    chamfer_depth = depths.cone_depth(chamfer, mouth, CHAMFER_HALF_RAD) if chamfer else 0.0
    cone = edge = ball = svg = None
    if row.type != "R":
        cone = depths.cone_depth(mouth, row.pilot_diameter, half_rad)
        edge = cone + chamfer_depth
        ball = _ball(request, mouth, row.pilot_diameter, half_rad, chamfer_depth)
        if is_drawn(request):
            sides = chamfer, chamfer_depth, row.pilot_length_min
            drawn = HoleDrawn(mouth, row.pilot_diameter, cone, half_rad, *sides)
            checked = ball.ball_diameter, ball.contact_diameter, ball.height_over_face
            svg = hole_svg(drawn, BallInHole(*checked), request.units)
    result = CenterHoleResult(
        key=row.key,
        type=row.type,
        pilot_diameter=row.pilot_diameter,
        mouth_diameter=mouth,
        cone_diameter=row.cone_diameter,
        cone_depth=cone,
        chamfer_diameter=chamfer,
        chamfer_depth=chamfer_depth,
        depth_to_pilot_edge=edge,
        tool_depth_min=_sum(edge, row.pilot_length_min),
        tool_depth_max=_sum(edge, row.pilot_length_max),
        depth_min=row.depth_min,
        cut_off=row.cut_off,
        ball=ball,
        standing=row.standing,
        drill_standing=row.drill_standing,
        svg=svg,
    )
    return Outcome(result, tuple(_advice(row, mouth, half_rad, request.units)))


def _row(request: CenterHoleRequest) -> TableHole:
    """The row asked for by key, or the smallest of a type that reaches the diameter; in `units`."""
    one_of(request, *HOLE)
    if request.type is None:
        return find_hole(request.key or "").in_units(request.units)
    needs(request, "type", "mouth_diameter", why="The size of a type goes by the diameter wanted.")
    return smallest_hole(request.type, request.mouth_diameter or 0.0, request.units)


def _require_reach(mouth: float, row: TableHole, units: Units) -> None:
    """Refuse a mouth that this size does not make, and name the size of its type that does."""
    if row.pilot_diameter < mouth <= row.cone_diameter * (1.0 + ROUNDING):
        return
    pilot, largest = of_any_unit(row.pilot_diameter), of_any_unit(row.cone_diameter)
    fits = reaching(row.type, mouth, units)
    way = f" Size {fits.key} makes it." if fits and fits.pilot_diameter < mouth else ""
    raise Impossible(
        f"Size {row.key} countersinks from its pilot, {pilot}, to {largest}; {of_any_unit(mouth)} "
        "was "
        f"wanted.{way}",
        fields={"mouth_diameter": f"should be over {pilot} and up to {largest}"},
    )


def _is_full(mouth: float, row: TableHole) -> bool:
    return mouth >= row.cone_diameter * (1.0 - ROUNDING)


def _chamfer_diameter(wanted: float | None, row: TableHole, mouth: float) -> float | None:
    """Protecting chamfer at the face; refuses one on a type that has none or out of its range."""
    if row.type not in CHAMFERED:
        if wanted is not None:
            raise Disagreement(
                f"Type {row.type} has no protecting chamfer.",
                fields={"chamfer_diameter": "should be sent for types B and bell only"},
            )
        return None
    if wanted is None:
        return row.chamfer_diameter if _is_full(mouth, row) else None
    if not _is_full(mouth, row) or not mouth < wanted <= row.body_diameter:
        largest, body = of_any_unit(row.cone_diameter), of_any_unit(row.body_diameter)
        raise Impossible(
            f"Size {row.key} cuts its chamfer from {largest} up to its body, {body}, once the cone "
            f"is at its full {largest}.",
            fields={"chamfer_diameter": f"should be over {largest} and up to {body}"},
        )
    return wanted


def _sum(start: float | None, length: float | None) -> float | None:
    return None if start is None or length is None else start + length


def _ball(
    request: CenterHoleRequest, mouth: float, pilot: float, half_rad: float, chamfer_depth: float
) -> CenterHoleBall:
    """The check over a ball, chosen or given."""
    why = "What a height over a ball means depends on the ball."
    needs(request, "height_over_face", "ball_diameter", why=why)
    measured, found = request.height_over_face, None
    ball = request.ball_diameter or depths.best_ball(mouth, pilot, half_rad)
    depths.require_on_cone(ball, mouth, pilot, half_rad)
    if measured is not None:
        found = depths.mouth_from_ball(measured + chamfer_depth, ball, half_rad)
        depths.require_on_cone(ball, found, pilot, half_rad)
    return CenterHoleBall(
        ball_diameter=ball,
        contact_diameter=depths.ball_contact_diameter(ball, half_rad),
        height_over_face=depths.over_ball(mouth, ball, half_rad) - chamfer_depth,
        height_per_diameter=-1.0 / (2.0 * elementary.tan(half_rad)),
        found_diameter=found,
        diameter_error=None if found is None else found - mouth,
    )


def _advice(row: TableHole, mouth: float, half_rad: float, units: Units) -> Iterator[Advisory]:
    if row.standing != "published":
        yield note("table-from-memory", "This row is from memory: check it against the standard.")
    if row.type in ("A", "plain"):
        yield note(
            "mouth-unprotected",
            "The mouth of this type is open to knocks; for work that goes between centers again, "
            "types B and bell protect it.",
        )
    if row.type in CHAMFERED and not _is_full(mouth, row):
        yield note(
            "chamfer-not-reached",
            "The protecting chamfer begins once the cone is at its full "
            f"{figure(row.cone_diameter, units)}: at this diameter the mouth stays unprotected.",
        )
    if not elementary.isclose(half_rad, TABLE_SLOPE.half_angle_rad, rel_tol=1e-12):
        yield caution("not-60-degrees", "The tables are of 60° cones; the depth is by your angle.")
    if row.type == "plain" and mouth > NEAR_THE_BODY * row.cone_diameter:
        yield caution(
            "near-the-body",
            "The countersink comes near the drill's body, which rubs: take the next size.",
        )
