"""The largest requests that blocks take stay within the memory that one request may use."""

import random
import tracemalloc
from typing import Any

import pytest

from halfangle_service.errors import Refusal
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
        {"sizes": DENSE, "height": 5.55, "max_blocks": 8, "prefer": "fewer small blocks"},
    ),
    "a table of millions of heights": (
        "blocks.stack",
        {"sizes": [*DENSE[:400], *range(100, 200)], "height": 555.5555, "max_blocks": 8},
    ),
    "every triple of measured blocks": (
        "blocks.stack",
        {"box": MEASURED, "height": 9.777, "aim": "actual", "alternatives": 20},
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
