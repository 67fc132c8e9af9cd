"""Refusals of a notation: what it may mean, each written so that it can be read."""

import math
from collections.abc import Sequence

from halfangle_service.errors import Disagreement
from halfangle_service.trade.wording import degrees as degrees_text

HOW_TO_WRITE = (
    "write 60° included, 8°17'50\" half, 1:20, 7/24, 5 %, 0.6 in/ft, 3/4 per foot, 0.05 per inch, "
    "D 20 d 18 L 40, Ø20-Ø18 x 40, MT3, or 7/24 No. 40"
)


def ambiguous(text: str, meanings: dict[str, float]) -> Disagreement:
    """Refuse a text with its meanings: how to write each, and its half angle in radians."""
    each = [f"{written} ({_included(half)} included)" for written, half in meanings.items()]
    return Disagreement(
        f"{text!r} may mean {' or '.join(each)}.",
        fields={"text": f"write {' or '.join(meanings)}"},
        more={
            "meanings": [
                {"text": written, "included_angle_degrees": math.degrees(2.0 * half)}
                for written, half in meanings.items()
            ]
        },
    )


def unread(text: str, why: str | None = None, similar: Sequence[str] = ()) -> Disagreement:
    """Refuse a text that is none of the notations, or for the reason given.

    `similar` are designations of standard tapers that look alike.
    """
    return Disagreement(
        why or f"{text[:40]!r} is none of the notations known.",
        fields={"text": HOW_TO_WRITE},
        more={"similar": list(similar)} if similar else {},
    )


def _included(half_rad: float) -> str:
    return degrees_text(math.degrees(2.0 * half_rad))
