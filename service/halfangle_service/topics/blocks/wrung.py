"""A stack as wrung, read from a request: its blocks, those beside it, and what it should be."""

import math
from dataclasses import dataclass

from halfangle_service.errors import Disagreement, Impossible
from halfangle_service.fields import (
    ARCSEC_PER_RADIAN,
    Angle,
    angle_from_radians,
    to_tenth_nm,
)
from halfangle_service.fields.supply import (
    Supply,
    graded,
    graded_supply,
    read_supply,
)
from halfangle_service.topics.blocks.models_check import BlockCheckRequest
from halfangle_service.trade.stacks.supply import Piece
from halfangle_service.trade.tables.blocks.sets import find_set, foreign_places
from halfangle_service.trade.tables.blocks.tolerances import find_grade
from halfangle_service.trade.wording import plain


@dataclass(frozen=True, slots=True)
class Wrung:
    """A request read: the blocks in the stack, those left beside it, and heights in 0.1 nm."""

    request: BlockCheckRequest
    supply: Supply
    inner: tuple[Piece, ...]
    spare: tuple[Piece, ...]
    wear: tuple[Piece, ...]
    spare_wear: tuple[Piece, ...]
    wanted: float | None
    measured: float | None

    @property
    def pieces(self) -> tuple[Piece, ...]:
        """All blocks of the stack, wear blocks last."""
        return (*self.inner, *self.wear)

    @property
    def total(self) -> int:
        """Nominal height in 0.1 nm."""
        return sum(piece.size for piece in self.pieces)

    @property
    def actual(self) -> int:
        """Height in 0.1 nm, measured deviations included."""
        return sum(piece.actual for piece in self.pieces)

    @property
    def unit(self) -> int:
        """The request's unit in 0.1 nm."""
        return to_tenth_nm(1.0, self.request.units)

    @property
    def limit(self) -> float | None:
        """The limit sent, in 0.1 nm."""
        request = self.request
        if request.measurement_limit is not None:
            return request.measurement_limit * self.unit
        if request.measurement_limit_arcsec is None:
            return None
        length = (request.center_distance or 0.0) * self.unit
        at = math.cos(self.angle_rad(self.actual) or 0.0)
        return length * at * request.measurement_limit_arcsec / ARCSEC_PER_RADIAN

    def rise(self, height: float) -> float:
        """What a stack of this height lifts the high roll by, in `units`."""
        return height / self.unit - self.request.low_stack - self.request.offset

    def angle_rad(self, height: float) -> float | None:
        """Angle that a stack of this height gives; None without a plate, or past its end."""
        length = self.request.center_distance
        if length is None or not -length < self.rise(height) < length:
            return None
        return math.asin(self.rise(height) / length)

    def angle(self, height: float) -> Angle | None:
        """The same as the answer writes it."""
        angle = self.angle_rad(height)
        return None if angle is None else angle_from_radians(angle)

    def error_arcsec(self, height: float | None, reference: float | None) -> float | None:
        """Angle of one height less that of another; None where one of them is not known."""
        if height is None or reference is None:
            return None
        angle, meant = self.angle_rad(height), self.angle_rad(reference)
        return None if angle is None or meant is None else (angle - meant) * ARCSEC_PER_RADIAN


def read_wrung(request: BlockCheckRequest) -> Wrung:
    """Read a request; refuses blocks that are not there, contradictions, heights past the plate."""
    _require_one(request, "height", "angle")
    _require_one(request, "measured_height", "measured_angle")
    _require_one(request, "measurement_limit", "measurement_limit_arcsec")
    for name in ("angle", "measured_angle", "measurement_limit_arcsec"):
        if getattr(request, name) is not None and request.center_distance is None:
            raise Disagreement(
                f"`{name}` needs the plate: send `center_distance`.",
                fields={"center_distance": f"is required with {name}"},
            )
    supply = read_supply(request)
    if request.grade is not None:
        supply = graded_supply(supply, request.grade)
    wear, spare_wear = _wear(request, supply)
    inner, spare = _in_stack(request, supply)
    wanted = _height_of(request, request.height, request.angle)
    measured = _height_of(request, request.measured_height, request.measured_angle)
    bench = Wrung(request, supply, inner, spare, wear, spare_wear, wanted, measured)
    _require_on_plate(bench, "The stack as read", "blocks", bench.actual)
    _require_on_plate(bench, "What is wanted", _sent(request, "height", "angle"), wanted)
    name = _sent(request, "measured_height", "measured_angle")
    _require_on_plate(bench, "What was measured", name, measured)
    return bench


def _sent(request: BlockCheckRequest, first: str, second: str) -> str:
    return second if getattr(request, first) is None else first


def _require_one(request: BlockCheckRequest, first: str, second: str) -> None:
    if getattr(request, first) is not None and getattr(request, second) is not None:
        raise Disagreement(
            f"`{first}` and `{second}` were both sent; one of them is taken.",
            fields={first: f"send either this or {second}", second: f"send either this or {first}"},
        )


def _require_on_plate(bench: Wrung, what: str, field: str, height: float | None) -> None:
    length = bench.request.center_distance
    if height is None or length is None or bench.angle_rad(height) is not None:
        return
    raise Impossible(
        f"{what} lifts the high roll by {plain(bench.rise(height), 10)} {bench.request.units}, "
        f"which is not below the center distance {plain(length, 10)}.",
        fields={field: "should lift the plate by less than its center distance"},
    )


def _height_of(
    request: BlockCheckRequest, height: float | None, angle: float | None
) -> float | None:
    """Height in 0.1 nm from itself or from an angle on the plate."""
    if height is not None:
        return float(to_tenth_nm(height, request.units))
    if angle is None:
        return None
    rise = (request.center_distance or 0.0) * math.sin(math.radians(angle))
    # To 0.1 pm: sin 30° falls short of a half by the last bit, which would show as an error.
    return round((rise + request.low_stack + request.offset) * to_tenth_nm(1.0, request.units), 3)


def _in_stack(
    request: BlockCheckRequest, supply: Supply
) -> tuple[tuple[Piece, ...], tuple[Piece, ...]]:
    """The blocks of the stack, and those left then; refuses one that the box does not hold."""
    left, pieces = list(supply.box.pieces), []
    for place, length in enumerate(request.blocks):
        size = to_tenth_nm(length, request.units)
        piece = next((entry for entry in left if entry.size == size), None)
        if piece is None:
            raise _not_in_box(request, supply, place, size)
        left.remove(piece)
        pieces.append(piece)
    return tuple(pieces), tuple(left)


def _not_in_box(request: BlockCheckRequest, supply: Supply, place: int, size: int) -> Disagreement:
    length, units = request.blocks[place], request.units
    there = sum(piece.size == size for piece in supply.box.pieces)
    away = next((state for piece, state in supply.away if piece.size == size), None)
    wear = any(piece.size == size for piece in supply.wear)
    reasons = []
    if there:
        reasons.append(f"the box holds {there} of it, and the stack names it more often")
    if away:
        reasons.append(f"{'another one' if there else 'it'} is said to be {away}")
    if wear:
        reasons.append("the box has it as a wear block, which goes into `wear_blocks`")
    if not reasons and foreign_places([size], units):
        reasons.append(f"it is a size of {'metric' if units == 'in' else 'inch'} sets")
    return Disagreement(
        f"{plain(length, 10)} {units} is not a block of this box: "
        f"{'; '.join(reasons) or 'the box has no such block'}.",
        fields={f"blocks/{place}": "should be a block of the box, as often as it is there"},
    )


def _wear(
    request: BlockCheckRequest, supply: Supply
) -> tuple[tuple[Piece, ...], tuple[Piece, ...]]:
    """The wear blocks on the stack, and those left beside it.

    A size of which set or box have wear blocks is one of these; another is taken as a pair that the
    shop keeps beside them.
    """
    left, taken = list(supply.wear), []
    owned = _own_wear(request)
    for place, length in enumerate(request.wear_blocks or ()):
        size = to_tenth_nm(length, request.units)
        piece = next((entry for entry in left if entry.size == size), None)
        if piece is not None:
            left.remove(piece)
        elif size in owned:
            raise _no_such_wear(request, supply, place, owned.count(size))
        taken.append(piece or _beside(request, size))
    return tuple(taken), tuple(left)


def _own_wear(request: BlockCheckRequest) -> list[int]:
    """Sizes of the wear blocks that the set or the box has, those away included."""
    if request.set is not None:
        return list(find_set(request.set).wear)
    return [
        to_tenth_nm(entry.size, request.units)
        for entry in request.box or ()
        if entry.wear
        for _ in range(entry.count)
    ]


def _no_such_wear(
    request: BlockCheckRequest, supply: Supply, place: int, owned: int
) -> Disagreement:
    length = (request.wear_blocks or [])[place]
    size = to_tenth_nm(length, request.units)
    away = owned - sum(piece.size == size for piece in supply.wear)
    gone = f", {away} of them missing or in use" if away else ""
    return Disagreement(
        f"There is no wear block of {plain(length, 10)} {request.units} left for the stack: the "
        f"box has {owned} in all{gone}.",
        fields={
            f"wear_blocks/{place}": "should be a wear block of the box, as often as it is there"
        },
    )


def _beside(request: BlockCheckRequest, size: int) -> Piece:
    """A wear block that the shop keeps beside its set."""
    piece = Piece(size)
    return piece if request.grade is None else graded(piece, find_grade(request.grade))
