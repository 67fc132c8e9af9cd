"""Center holes: models to maths and back."""

import math
from dataclasses import fields

from halfangle_service.errors import Disagreement, Impossible
from halfangle_service.fields import from_mm, to_mm
from halfangle_service.fields.advisories import Advisory, caution, note
from halfangle_service.operation import Operation, Outcome, Source, published_table
from halfangle_service.topics.centers.models_hole import (
    CenterHoleBall,
    CenterHoleRequest,
    CenterHoleResult,
    CenterHoleRow,
)
from halfangle_service.trade.centers import hole as depths
from halfangle_service.trade.tables.centers.holes import (
    TableHole,
    center_holes,
    find_hole,
    smallest_hole,
)
from halfangle_service.trade.wording import plain

#: The protecting chamfer of type B and of the bell drill is 120° included.
CHAMFER_HALF_RAD = math.radians(60.0)
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


def hole(request: CenterHoleRequest) -> Outcome[CenterHoleResult]:
    """Pilot, countersink, depth and check of a center hole."""
    row = _row(request)
    scale = _scale(row, request)
    mouth = request.wanted_diameter or row.cone_diameter * scale
    _require_reach(mouth, row, scale)
    chamfer = _chamfer_diameter(request, row, scale, mouth)
    half_rad = math.radians(request.included_angle) / 2.0
    pilot = row.pilot_diameter * scale
    straight = row.type != "R"
    cone = depths.cone_depth(mouth, pilot, half_rad) if straight else None
    chamfer_depth = depths.cone_depth(chamfer, mouth, CHAMFER_HALF_RAD) if chamfer else 0.0
    edge = None if cone is None else cone + chamfer_depth
    ball = _ball(request, mouth, pilot, half_rad, chamfer_depth) if straight else None
    result = CenterHoleResult(
        key=row.key,
        type=row.type,
        pilot_diameter=pilot,
        mouth_diameter=mouth,
        largest_mouth_diameter=row.cone_diameter * scale,
        cone_depth=cone,
        chamfer_diameter=chamfer,
        chamfer_depth=chamfer_depth,
        depth_to_pilot_edge=edge,
        tool_depth_min=_sum(edge, row.pilot_length_min, scale),
        tool_depth_max=_sum(edge, row.pilot_length_max, scale),
        table_minimum_depth=_sum(0.0, row.minimum_depth, scale),
        table_cut_off=_sum(0.0, row.cut_off, scale),
        ball=ball,
        standing=row.standing,
        drill_standing=row.drill_standing,
    )
    return Outcome(result, _advice(request, row, mouth, scale))


def _row(request: CenterHoleRequest) -> TableHole:
    """The row asked for by key, or the smallest of a type that reaches the diameter."""
    if (request.key is None) == (request.type is None):
        raise Disagreement(
            "Send `key` for one size or `type` for the smallest that fits: one of them.",
            fields={"key": "send this or type", "type": "send this or key"},
        )
    if request.type is None:
        return find_hole(request.key or "")
    if request.wanted_diameter is None:
        raise Disagreement(
            "With `type` the diameter wanted has to be sent too.",
            fields={"wanted_diameter": "should be sent with type"},
        )
    metric = request.type in ("A", "B", "R")
    per_unit = from_mm(to_mm(1.0, "mm" if metric else "in"), request.units)
    return smallest_hole(request.type, request.wanted_diameter, per_unit)


def _scale(row: TableHole, request: CenterHoleRequest) -> float:
    return from_mm(to_mm(1.0, row.units), request.units)


def _require_reach(mouth: float, row: TableHole, scale: float) -> None:
    """Refuse a mouth that this size does not make."""
    pilot, largest = row.pilot_diameter * scale, row.cone_diameter * scale
    if pilot < mouth <= largest * (1.0 + 1e-9):
        return
    raise Impossible(
        f"Size {row.key} countersinks from its pilot, {plain(pilot, 5)}, to {plain(largest, 5)}; "
        f"{plain(mouth, 5)} was wanted.",
        fields={
            "wanted_diameter": f"should be over {plain(pilot, 5)} and up to {plain(largest, 5)}"
        },
    )


def _chamfer_diameter(
    request: CenterHoleRequest, row: TableHole, scale: float, mouth: float
) -> float | None:
    """Protecting chamfer at the face; refuses one on a type that has none or out of its range."""
    wanted = request.chamfer_diameter
    if row.type not in ("B", "bell"):
        if wanted is not None:
            raise Disagreement(
                f"Type {row.type} has no protecting chamfer.",
                fields={"chamfer_diameter": "should be sent for types B and bell only"},
            )
        return None
    full = mouth >= row.cone_diameter * scale * (1.0 - 1e-9)
    if wanted is None:
        return row.chamfer_diameter * scale if row.chamfer_diameter and full else None
    body = row.body_diameter * scale
    if not full or not mouth < wanted <= body:
        largest = row.cone_diameter * scale
        raise Impossible(
            f"Size {row.key} cuts its chamfer from {plain(largest, 5)} up to its body, "
            f"{plain(body, 5)}, once "
            f"the cone is at its full {plain(largest, 5)}.",
            fields={
                "chamfer_diameter": f"should be over {plain(largest, 5)} and up to {plain(body, 5)}"
            },
        )
    return wanted


def _sum(start: float | None, length: float | None, scale: float) -> float | None:
    return None if start is None or length is None else start + length * scale


def _ball(
    request: CenterHoleRequest, mouth: float, pilot: float, half_rad: float, chamfer_depth: float
) -> CenterHoleBall:
    """The check over a ball, chosen or given."""
    if request.height_over_ball is not None and request.ball_diameter is None:
        raise Disagreement(
            "A measured height over a ball needs the ball's diameter.",
            fields={"ball_diameter": "should be sent with height_over_ball"},
        )
    ball = request.ball_diameter or depths.best_ball(mouth, pilot, half_rad)
    depths.require_on_cone(ball, mouth, pilot, half_rad)
    measured, found = request.height_over_ball, None
    if measured is not None:
        found = depths.mouth_from_ball(measured + chamfer_depth, ball, half_rad)
        depths.require_on_cone(ball, found, pilot, half_rad)
    return CenterHoleBall(
        ball_diameter=ball,
        contact_diameter=depths.ball_contact_diameter(ball, half_rad),
        height_over_face=depths.over_ball(mouth, ball, half_rad) - chamfer_depth,
        height_per_diameter=-1.0 / (2.0 * math.tan(half_rad)),
        found_diameter=found,
        found_less_wanted=None if found is None else found - mouth,
    )


def _advice(
    request: CenterHoleRequest, row: TableHole, mouth: float, scale: float
) -> tuple[Advisory, ...]:
    given: list[Advisory] = []
    if row.standing != "published":
        given.append(
            note("table-from-memory", "This row is from memory: check it against the standard.")
        )
    if row.type in ("A", "plain"):
        given.append(
            note(
                "mouth-unprotected",
                "The mouth of this type is open to knocks; for work that goes between centers "
                "again, types B and bell protect it.",
            )
        )
    full = row.cone_diameter * scale * (1.0 - 1e-9)
    if row.type in ("B", "bell") and mouth < full:
        given.append(
            note(
                "chamfer-not-reached",
                f"The protecting chamfer begins once the cone is at its full {plain(full, 5)}: at "
                "this diameter the mouth stays unprotected.",
            )
        )
    if request.included_angle != 60.0:
        given.append(
            caution("not-60-degrees", "The tables are of 60° cones; the depth is by your angle.")
        )
    if row.type == "plain" and mouth > 0.9 * row.cone_diameter * scale:
        given.append(
            caution(
                "near-the-body",
                "The countersink comes near the drill's body, which rubs: take the next size.",
            )
        )
    return tuple(given)


def _listed(row: TableHole) -> CenterHoleRow:
    values = {f.name: getattr(row, f.name) for f in fields(row)}
    return CenterHoleRow(
        **values,
    )


@published_table("centers.holes", singular="hole", key="key", sources=(_METRIC, _INCH))
def holes() -> dict[str, CenterHoleRow]:
    """Center holes.

    Published tables of center holes, types A, B and R (metric), and of combined drills, plain and
    bell (inch); each row with its source and standing.
    """
    return {key: _listed(row) for key, row in center_holes().items()}


HOLE = Operation(
    topic="centers",
    verb="hole",
    title="Center hole by the published tables",
    summary="Pilot, countersink, depth for a wanted diameter and the check over a ball, types A, B "
    "and R in metric, plain and bell in inches.",
    request=CenterHoleRequest,
    result=CenterHoleResult,
    calculate=hole,
    relations=(
        "cone depth = (D - d)/(2 tan α)",
        "height over ball = d_b/(2 sin α) + d_b/2 - D/(2 tan α)",
        "contact diameter = d_b cos α",
    ),
    sources=(_METRIC, _INCH, _BALL),
    example={"units": "mm", "type": "A", "wanted_diameter": 5.0, "ball_diameter": 4.5},
)
