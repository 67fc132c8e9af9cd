"""Reading from a request which blocks there are: a set, plain sizes, or the shop's own box."""

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import Literal

from halfangle_service.errors import BeyondBound, Disagreement, Refusal, Unreachable
from halfangle_service.fields import (
    TENTH_NM_PER_MM,
    Units,
    from_tenth_nm,
    to_tenth_nm,
)
from halfangle_service.fields.advisories import Advisory, caution
from halfangle_service.fields.blocks import (
    MOST_BLOCKS,
    SOURCES,
    Away,
    BlockFinishFields,
    BlockOwned,
    BlockSupplyFields,
    WearEnds,
)
from halfangle_service.fields.choice import one_of
from halfangle_service.trade.stacks.supply import Box, Piece
from halfangle_service.trade.tables.blocks.sets import (
    figures_of_other_unit,
    find_set,
    foreign_places,
    nominal_sizes,
)
from halfangle_service.trade.tables.blocks.tolerances import Grade, find_grade
from halfangle_service.trade.wording import plain

#: Largest gauge block: ISO 3650:1998 ends at 1000 mm; 40 in is the longest of the inch tables.
LARGEST_BLOCK = 1_016 * TENTH_NM_PER_MM
#: Largest deviation that is still one of a gauge block: far beyond any grade.
LARGEST_DEVIATION: dict[Units, float] = {"in": 0.001, "mm": 0.02}
#: Wear blocks of one stack.
ENDS: dict[WearEnds, int] = {"none": 0, "one-end": 1, "both-ends": 2}
#: Where a block is that would help.
Where = Literal[Away, "not-in-the-box", "another-of-this-size"]
_AWAY: tuple[tuple[str, Away], ...] = (("missing", "missing"), ("in_use", "in-use"))
_OTHER: dict[Units, Units] = {"in": "mm", "mm": "in"}
_SYSTEM: dict[Units, str] = {"in": "inch", "mm": "metric"}
_WRITTEN: dict[Units, str] = {"in": "inches", "mm": "millimetres"}


@dataclass(frozen=True, slots=True)
class Supply:
    """Blocks at hand, wear blocks beside them, and the other blocks that are away and why."""

    box: Box
    wear: tuple[Piece, ...]
    away: tuple[tuple[Piece, Away], ...]
    advisories: tuple[Advisory, ...] = ()


def read_supply(request: BlockSupplyFields) -> Supply:
    """Give the blocks of a request; refuses contradictions, unit mix-ups and absurd sizes."""
    source = one_of(request, *SOURCES)
    if request.set is not None:
        supply = _set_supply(request.set, request.units)
    elif request.sizes is not None:
        supply = _sizes_supply(request.sizes, request.units)
    else:
        supply = _box_supply(request.box or [], request.units)
    if request.missing or request.in_use:
        supply = _without(supply, request)
    if not supply.box.pieces:
        raise Unreachable(
            "Only wear blocks are left in the box, which go to the ends of a stack."
            if supply.wear
            else "No block is left in the box.",
            fields={source: "should have a block that is neither missing nor in use"},
        )
    return supply


@lru_cache(maxsize=64)
def _set_supply(name: str, units: Units) -> Supply:
    """Give the blocks of a built-in set, made once."""
    found = find_set(name)
    advisories: tuple[Advisory, ...] = ()
    if found.units != units:
        advisories = (
            caution(
                "set-of-other-units",
                f"{name} is of {_SYSTEM[found.units]} blocks, and the request's unit is {units}: "
                f"the sizes are given in {units}, as no block bears them.",
            ),
        )
    # Wear blocks go to the ends of a stack or nowhere, those of a set too.
    inner = list((Counter(found.sizes) - Counter(found.wear)).elements())
    return Supply(Box.of(map(Piece, inner)), tuple(map(Piece, found.wear)), (), advisories)


def _sizes_supply(sizes: Sequence[float], units: Units) -> Supply:
    exact = [to_tenth_nm(size, units) for size in sizes]
    first_at: dict[int, int] = {}
    for place, size in enumerate(exact):
        if first_at.setdefault(size, place) != place:
            raise Disagreement(
                f"{plain(sizes[place], 10)} {units} stands in `sizes` twice. Where there are two "
                "such blocks, send `box` with their count.",
                fields={f"sizes/{place}": f"repeats sizes/{first_at[size]}"},
            )
    paths = [f"sizes/{place}" for place in range(len(sizes))]
    require_sane(exact, paths, units)
    advisories = own_units(exact, paths, units, "box")
    return Supply(Box.of(map(Piece, exact)), (), (), advisories)


def _box_supply(box: Sequence[BlockOwned], units: Units) -> Supply:
    if sum(entry.count for entry in box) > MOST_BLOCKS:
        raise BeyondBound(
            f"The box holds {sum(entry.count for entry in box)} blocks; at most {MOST_BLOCKS} are "
            "taken in one request.",
            fields={"box": f"should hold at most {MOST_BLOCKS} blocks, counts included"},
        )
    exact = [to_tenth_nm(entry.size, units) for entry in box]
    paths = [f"box/{place}/size" for place in range(len(box))]
    require_sane(exact, paths, units)
    require_deviations(box, units, "box")
    _require_no_repeat(box, units)
    usual = [place for place, entry in enumerate(box) if not entry.special]
    advisories = own_units([exact[p] for p in usual], [paths[p] for p in usual], units, "box")
    here: list[Piece] = []
    wear: list[Piece] = []
    away: list[tuple[Piece, Away]] = []
    for entry in box:
        pieces = [piece_of(entry, units)] * entry.count
        if entry.state == "in-the-box":
            (wear if entry.wear_block else here).extend(pieces)
        elif not entry.wear_block:
            away.extend((piece, entry.state) for piece in pieces)
    return Supply(Box.of(here), Box.of(wear).pieces, tuple(away), advisories)


def piece_of(entry: BlockOwned, units: Units) -> Piece:
    """Give a block in 0.1 nm."""
    uncertainty = entry.expanded_uncertainty or 0.0
    return Piece(
        size=to_tenth_nm(entry.size, units),
        deviation=to_tenth_nm(entry.deviation, units),
        standard_uncertainty=to_tenth_nm(1.0, units) * uncertainty / 2.0,
        calibrated=entry.expanded_uncertainty is not None,
        material=entry.material,
        wrung=entry.times_wrung,
        mark=entry.mark,
    )


def require_sane(sizes: Sequence[int], paths: Sequence[str], units: Units) -> None:
    """Refuse a block of no length at all, or longer than any gauge block."""
    for size, path in zip(sizes, paths, strict=True):
        if not 0 < size <= LARGEST_BLOCK:
            limit = from_tenth_nm(LARGEST_BLOCK, units)
            raise Disagreement(
                f"{plain(from_tenth_nm(size, units), 10)} {units} is not the size of a gauge "
                "block.",
                fields={path: f"should be from 0.1 nm to {plain(limit, 10)} {units}"},
            )


def require_deviations(box: Sequence[BlockOwned], units: Units, field: str) -> None:
    """Refuse a deviation, or an uncertainty, that no gauge block has: most likely a unit slip."""
    limit = LARGEST_DEVIATION[units]
    for place, entry in enumerate(box):
        for name in ("deviation", "expanded_uncertainty"):
            value = getattr(entry, name) or 0.0
            if abs(value) > limit:
                raise Disagreement(
                    f"{name} {plain(value, 10)} {units} is not one of a gauge block: it is in "
                    "`units`, as "
                    "are all lengths, not in millionths of an inch or in micrometres.",
                    fields={
                        f"{field}/{place}/{name}": f"should be at most {plain(limit, 10)} {units}"
                    },
                )
        if entry.size + entry.deviation <= 0.0:
            raise Disagreement(
                f"The block would be {plain(entry.size + entry.deviation, 10)} {units} long.",
                fields={f"{field}/{place}/deviation": "should leave the block a length"},
            )


def _require_no_repeat(box: Sequence[BlockOwned], units: Units) -> None:
    """Refuse an entry given twice alike, which is what `count` is for, or a mark of two blocks."""
    seen: dict[BlockOwned, int] = {}
    marked: dict[str, int] = {}
    for place, entry in enumerate(box):
        first = seen.setdefault(entry, place)
        if first != place:
            raise Disagreement(
                f"The block of {plain(entry.size, 10)} {units} stands in `box` twice, with the "
                "same data.",
                fields={f"box/{place}": f"repeats box/{first}: give one entry its count"},
            )
        if entry.mark is None:
            continue
        if entry.count > 1:
            raise Disagreement(
                f"The mark {entry.mark!r} is one block's, and the entry counts {entry.count}.",
                fields={f"box/{place}/count": "should be 1 where a mark is given"},
            )
        first = marked.setdefault(entry.mark, place)
        if first != place:
            raise Disagreement(
                f"The mark {entry.mark!r} is given to two blocks.",
                fields={f"box/{place}/mark": f"repeats box/{first}/mark"},
            )


def own_units(
    sizes: Sequence[int], paths: Sequence[str], units: Units, field: str
) -> tuple[Advisory, ...]:
    """Refuse sizes (0.1 nm) of the other unit system; one that may be odd is only called out.

    `paths` names each of them in the request, and `field` where a block is marked as special.
    """
    own, other = _SYSTEM[units], _SYSTEM[_OTHER[units]]
    if figures_of_other_unit(sizes, units):
        raise Disagreement(
            f"These are sizes of {own} sets written in {_WRITTEN[_OTHER[units]]}, the first "
            f"being {plain(from_tenth_nm(sizes[0], units), 7)} {units}; all lengths are in "
            "`units`.",
            fields={"units": f"should be the unit of the sizes: {_OTHER[units]}, not {units}"},
        )
    foreign = foreign_places(sizes, units)
    if not foreign:
        return ()
    words = ", ".join(plain(from_tenth_nm(sizes[place], units), 10) for place in foreign[:5])
    if len(foreign) == 1 and sizes[foreign[0]] % (to_tenth_nm(1.0, units) // 2) == 0:
        odd = caution(
            "size-of-other-units",
            f"{words} is a size of {other} sets, not of {own} ones; it was taken as {words} "
            f"{units}.",
        )
        return (odd,)
    raise Disagreement(
        f"Among the {own} blocks there are sizes of {other} sets: {words} {units}. Send them in "
        "one unit, "
        f"or mark an odd block as special in `{field}`.",
        fields={
            paths[place]: f"is a size of {other} sets, not of {own} ones" for place in foreign[:20]
        },
    )


def _without(supply: Supply, request: BlockSupplyFields) -> Supply:
    """Take the blocks that are missing or in use out of the box."""
    here, wear, away = list(supply.box.pieces), list(supply.wear), list(supply.away)
    for name, state in _AWAY:
        for place, length in enumerate(getattr(request, name) or ()):
            size = to_tenth_nm(length, request.units)
            piece = next((p for p in (*here, *wear) if p.size == size), None)
            if piece is None:
                raise _not_there(request, f"{name}/{place}", length)
            if piece in here:
                here.remove(piece)
                away.append((piece, state))
            else:
                wear.remove(piece)
    return replace(supply, box=Box.of(here), wear=tuple(wear), away=tuple(away))


def _not_there(request: BlockSupplyFields, path: str, length: float) -> Refusal:
    return Disagreement(
        f"A block of {plain(length, 10)} {request.units} is said to be away, but the box has none, "
        "or no more of that size.",
        fields={path: "should be a block of the box, as often as it is there"},
    )


def graded_supply(supply: Supply, name: str) -> Supply:
    """Give blocks without a calibration the standard uncertainty of their grade's limits."""
    grade = find_grade(name)
    return replace(
        supply,
        box=Box.of(graded(piece, grade) for piece in supply.box.pieces),
        wear=tuple(graded(piece, grade) for piece in supply.wear),
    )


def graded(piece: Piece, grade: Grade) -> Piece:
    """Give a block its grade's limit, rectangular, in 0.1 nm; a calibrated one as it is."""
    if piece.calibrated:
        return piece
    limit = grade.limit_deviation(piece.size) * TENTH_NM_PER_MM
    return replace(piece, standard_uncertainty=limit / 3.0**0.5, limit=limit)


def take_stack_out(left: "Counter[int]", blocks: Sequence[int], units: Units, path: str) -> None:
    """Take a stack's blocks (0.1 nm) out of those left; refuses one that is not there (any more).

    `path` is that of the stack in the request.
    """
    for place, block in enumerate(blocks):
        if left[block] == 0:
            raise Disagreement(
                f"A block of {plain(from_tenth_nm(block, units), 10)} {units} stands in the stack, "
                "but the set has none, or no more of that size.",
                fields={f"{path}/{place}": "should be a block of the set, as often as it is in"},
            )
        left[block] -= 1


def where_else(supply: Supply, units: Units) -> dict[int, Where]:
    """Give the sizes (0.1 nm) of blocks that may help, and where each is, those away first.

    They are the blocks that are away, and the nominal sizes of the built-in sets.
    """
    away: dict[int, Where] = {piece.size: state for piece, state in reversed(supply.away)}
    owned = set(supply.box.sizes)
    others: dict[int, Where] = {
        size: "another-of-this-size" if size in owned else "not-in-the-box"
        for size in nominal_sizes(units)
        if size not in away
    }
    return away | others


def finished_supply(request: BlockFinishFields, stacks: int = 1) -> Supply:
    """Give the blocks of a request, and as its `wear` the wear blocks that its stacks take.

    They are of one size, `ENDS` of them for each of up to so many stacks, and fewer stacks where
    there are not as many. Blocks without a calibration have their grade's limits. Raises
    Disagreement where a wear block has a size and no end to go to, or none is known, and
    Unreachable where there are too few for one stack.
    """
    supply = read_supply(request)
    size, ends = request.wear_block_size, ENDS[request.wear_ends]
    if ends == 0 and size is not None:
        raise Disagreement(
            "A wear block's size is given, but no end to put one on.",
            fields={"wear_ends": "should be one-end or both-ends where wear_block_size is sent"},
        )
    exact = None if size is None else to_tenth_nm(size, request.units)
    if ends:
        supply = replace(supply, wear=_wear_for(supply, exact, ends, stacks, request.units))
    elif supply.wear:
        supply = replace(supply, wear=())
    return supply if request.grade is None else graded_supply(supply, request.grade)


def _wear_for(
    supply: Supply, size: int | None, ends: int, stacks: int, units: Units
) -> tuple[Piece, ...]:
    """Give the wear blocks of one size that go on so many stacks, all that there are of it.

    Without a size it is the one of which there are most, and of equally many the first. A size that
    no wear block of the supply has is taken as pairs that the shop keeps beside its set.
    """
    known = Counter(piece.size for piece in supply.wear)
    if size is None and not known:
        raise Disagreement(
            "These blocks have no wear blocks of their own: say which size to use.",
            fields={
                "wear_block_size": "is required where the blocks have no wear blocks of their own"
            },
        )
    chosen = known.most_common(1)[0][0] if size is None else size
    if chosen not in known:
        return (Piece(chosen),) * (ends * stacks)
    if known[chosen] < ends:
        raise Unreachable(
            f"There is only 1 wear block of {plain(from_tenth_nm(chosen, units), 10)} {units}, and "
            "both ends take two.",
            fields={"wear_ends": "should be one-end with so few wear blocks"},
        )
    return tuple(piece for piece in supply.wear if piece.size == chosen)
