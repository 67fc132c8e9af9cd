"""A stack of gauge blocks as it stands, by nominal sizes or by what is known of each block."""

from collections.abc import Sequence

from halfangle_service.errors import BeyondBound, Disagreement
from halfangle_service.fields import Units, to_tenth_nm
from halfangle_service.fields.advisories import Advisory
from halfangle_service.fields.blocks import BlockOwned
from halfangle_service.fields.supply import (
    graded,
    own_units,
    piece_of,
    require_deviations,
    require_sane,
)
from halfangle_service.trade.stacks.supply import Piece
from halfangle_service.trade.tables.blocks.tolerances import Grade, find_grade
from halfangle_service.trade.tables.materials.expansion import MaterialName
from halfangle_service.trade.wording import plain

#: What states the blocks of the stack, of which one is sent.
STACKED = ("blocks", "calibrated_blocks")
#: Most blocks in one stack, counts included.
MOST_IN_STACK = 20


def pieces_of_stack(
    blocks: Sequence[float] | None,
    calibrated: Sequence[BlockOwned] | None,
    material: MaterialName,
    grade: str | None,
    units: Units,
    *,
    error_needed: bool,
) -> tuple[list[Piece], tuple[Advisory, ...]]:
    """The blocks of the stack, and what is to be said of their sizes.

    `blocks` are nominal sizes, of this material. `error_needed`: a block of which neither
    calibration nor grade is known is refused.
    """
    limits = None if grade is None else find_grade(grade)
    if blocks is not None:
        field = STACKED[0]
        entries = [BlockOwned.model_construct(size=size, material=material) for size in blocks]
    else:
        field = STACKED[1]
        entries = list(calibrated or ())
        _require_a_stack(entries, units)
        require_deviations(entries, units, field)
    sizes = [to_tenth_nm(entry.size, units) for entry in entries]
    part = "" if field == STACKED[0] else "/size"
    paths = [f"{field}/{place}{part}" for place in range(len(sizes))]
    require_sane(sizes, paths, units)
    usual = [place for place, entry in enumerate(entries) if not entry.special]
    odd = own_units([sizes[p] for p in usual], [paths[p] for p in usual], units, STACKED[1])
    pieces: list[Piece] = []
    for place, entry in enumerate(entries):
        piece = _graded(entry, units, limits)
        if error_needed and not piece.error_known:
            raise _nothing_known(entry, units, f"{field}/{place}")
        pieces += [piece] * entry.count
    return pieces, odd


def _require_a_stack(entries: Sequence[BlockOwned], units: Units) -> None:
    """Refuse what cannot stand in a stack: too many blocks, or one that is missing."""
    count = sum(entry.count for entry in entries)
    if count > MOST_IN_STACK:
        raise BeyondBound(
            f"The stack has {count} blocks; a budget takes at most {MOST_IN_STACK}.",
            fields={
                "calibrated_blocks": f"should be at most {MOST_IN_STACK} blocks, counts included"
            },
        )
    for place, entry in enumerate(entries):
        if entry.state == "missing":
            raise Disagreement(
                f"The block of {plain(entry.size, 10)} {units} is said to be missing, so it "
                "stands in no stack.",
                fields={f"calibrated_blocks/{place}/state": "should not be missing"},
            )


def _graded(entry: BlockOwned, units: Units, grade: Grade | None) -> Piece:
    """Give a block in 0.1 nm, with its grade's limit where it has no calibration."""
    piece = piece_of(entry, units)
    return piece if grade is None else graded(piece, grade)


def _nothing_known(entry: BlockOwned, units: Units, path: str) -> Disagreement:
    return Disagreement(
        f"Neither a calibration nor a grade is known of the block of {plain(entry.size, 10)} "
        f"{units}.",
        fields={
            "grade": "is required where a block has no expanded_uncertainty",
            path: "should have an expanded_uncertainty, or the request a grade",
        },
    )
