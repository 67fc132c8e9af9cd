"""The largest requests that blocks take stay within the memory that one request may use."""

import random
import tracemalloc
from typing import Any

import pytest

from halfangle_service.errors import Refusal, Unreachable
from halfangle_service.trade.stacks import angle_blocks
from support import Call

#: Most memory of one request beside what the service holds anyway, in bytes.
MOST_MEMORY = 200_000_000
CHANCE = random.Random(5)  # noqa: S311  reproducible sizes, not secrets

DENSE = [round(1 + 0.0005 * k, 4) for k in range(500)]
MEASURED = [
    {"size": round(1 + 0.01 * k, 2), "deviation": round(CHANCE.uniform(-1e-3, 1e-3), 7)}
    for k in range(200)
]
MANY = [{"name": str(k), "height": round(CHANCE.uniform(5, 400), 4)} for k in range(12)]

LARGEST: dict[str, tuple[str, dict[str, Any]]] = {
    "every stack listed and put in order": (
        "blocks.stack",
        {"sizes": DENSE, "height": 5.55, "max_blocks": 8, "prefer": "fewer-small-blocks"},
    ),
    "a table of millions of heights": (
        "blocks.stack",
        {"sizes": [*DENSE[:400], *range(100, 200)], "height": 555.5555, "max_blocks": 8},
    ),
    "every triple of measured blocks": (
        "blocks.stack",
        {"box": MEASURED, "height": 9.777, "aim": "actual", "max_alternatives": 20},
    ),
    "many stacks from many blocks": (
        "blocks.stacks",
        {"sizes": [*DENSE[:400], *range(100, 200)], "heights": MANY, "max_blocks": 8},
    ),
    "many stacks of blocks alike": (
        "blocks.stacks",
        {
            "box": [{"size": round(1 + 0.01 * k, 2), "count": 5} for k in range(100)],
            "heights": [
                {"name": entry["name"], "height": 5 + k / 7} for k, entry in enumerate(MANY)
            ],
            "max_blocks": 8,
        },
    ),
}

#: Angle blocks: most memory of one request, and of all that is kept from one to the next, in bytes.
MOST_FOR_ANGLES, MOST_KEPT_FOR_ANGLES = 80_000_000, 30_000_000
DIFFERENT: list[dict[str, Any]] = [{"angle": d} for d in (41, 27, 9, 3, 1, 20, 15, 30, 45)]
DIFFERENT += [{"angle": f"0 {m}"} for m in (27, 9, 3, 1, 5, 20, 30)]
DIFFERENT += [{"angle": f"0 0 {s}"} for s in (30, 18, 9, 6, 3, 1)]
SIMILAR = [{"angle": 10 + k * k / 720 + k / 7} for k in range(22)]
ALIKE = [{"angle": k, "count": 4} for k in range(1, 6)] + [{"angle": 6, "count": 2}]

LARGEST_ANGLES: dict[str, dict[str, Any]] = {
    "different blocks": {"box": DIFFERENT, "angle": 37.405, "tolerance_arcsec": 43},
    "an angle not reached": {"box": DIFFERENT, "angle": "37 24 18.5"},
    "similar blocks, an angle not reached": {"box": SIMILAR, "angle": 70.123},
    "similar blocks, any angle": {"box": SIMILAR, "angle": 110, "tolerance_arcsec": 3e5},
    "similar blocks, half of them": {
        "box": [{"angle": 10 + k / 3600} for k in range(22)],
        "angle": 110.01,
        "tolerance_arcsec": 3_600,
    },
    "blocks alike": {"box": ALIKE, "angle": 37},
    "blocks alike, each measured": {
        "box": [{"angle": 1, "deviation_arcsec": k / 100} for k in range(22)],
        "angle": 11,
    },
}


@pytest.mark.parametrize("what", LARGEST)
def test_the_largest_requests_stay_within_their_memory(call: Call, what: str) -> None:
    """What Python and numpy allocate at most for one request, a refusal included, is bounded."""
    name, request = LARGEST[what]
    tracemalloc.start()
    try:
        call(name, units="mm", **request)
    except Refusal as refusal:
        assert refusal.fields  # noqa: PT017  a refusal is an answer too: it names what is wrong
    finally:
        _, peak = tracemalloc.get_traced_memory()
        tracemalloc.stop()
    assert 0 < peak < MOST_MEMORY


@pytest.mark.parametrize("what", LARGEST_ANGLES)
def test_the_largest_boxes_of_angle_blocks_stay_within_their_memory(call: Call, what: str) -> None:
    """Whatever angle is asked of the largest boxes, it is answered within bounded memory."""
    tracemalloc.start()
    try:
        call("blocks.angle-stack", **LARGEST_ANGLES[what], max_alternatives=20)
    except Unreachable as refusal:
        assert "nearest" in refusal.more  # noqa: PT017  a refusal is an answer too
    finally:
        _, peak = tracemalloc.get_traced_memory()
        tracemalloc.stop()
    assert 0 < peak < MOST_FOR_ANGLES


def test_what_is_kept_of_angle_blocks_is_bounded_in_bytes(call: Call) -> None:
    """After many large and many small boxes what is kept of them stays within its bytes."""
    tracemalloc.start()
    try:
        for count in (22, 16):
            for box in range(40 if count == 16 else 8):
                pieces = [{"angle": round(1 + k / 7 + box / 100, 3)} for k in range(count)]
                call("blocks.angle-stack", box=pieces, angle=5, tolerance_arcsec=3_600)
        kept, _ = tracemalloc.get_traced_memory()
    finally:
        tracemalloc.stop()
    assert kept < MOST_KEPT_FOR_ANGLES


def test_no_box_of_angle_blocks_takes_more_rows_than_are_allowed_for() -> None:
    """The largest halves are those of 22 different blocks: blocks alike never take more rows.

    With one more kind of several blocks alike at any place among different ones.
    """
    most = 2 * 3**11
    for count in range(1, 23):
        alone = angle_blocks.MOST_PIECES - count
        for place in range(alone + 1):
            kinds = [(1, 1)] * place + [(1, count)] + [(1, 1)] * (alone - place)
            cut = angle_blocks._middle([2 * copies + 1 for _, copies in kinds])
            assert angle_blocks._rows(kinds, cut) <= most
