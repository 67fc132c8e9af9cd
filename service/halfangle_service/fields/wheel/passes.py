"""Passes of a single-point diamond: one that is too deep, and a dress of too many."""

from collections.abc import Iterator

from halfangle_service.fields import Units, from_mm, to_mm
from halfangle_service.fields.advisories import Advisory, caution
from halfangle_service.trade.tables.wheels.guides import guides
from halfangle_service.trade.wording import figure, plain

#: Past either of them a dress is roughed by other means (common practice, no source).
MOST_PASSES, DEEPEST_DRESS_MM = 100, 2.5


def unusual_passes(
    depth_per_pass: float, passes: int, depth: float, units: Units
) -> Iterator[Advisory]:
    """Warn of a pass deeper than the guides give, and of a dress that takes the diamond too far.

    `depth` is what all passes take off the wheel, in `units`.
    """
    deepest = max(guide.depth_high_mm for guide in guides().values())
    if to_mm(depth_per_pass, units) > deepest * (1.0 + 1e-9):
        yield caution(
            "deep-pass",
            f"A pass of {plain(depth_per_pass)} {units} is deeper than the guides give "
            f"({plain(from_mm(deepest, units), 4)} {units}): it heats and shocks the diamond.",
        )
    if passes > MOST_PASSES or to_mm(depth, units) > DEEPEST_DRESS_MM * (1.0 + 1e-9):
        much = from_mm(DEEPEST_DRESS_MM, units)
        yield caution(
            "long-dress",
            f"{passes} passes take {figure(depth, units)} off the wheel. Past {MOST_PASSES} passes "
            f"or {plain(much, 2)} {units} the diamond itself wears out of shape, and a deep flank "
            "weakens the wheel: rough it away by other means (a dressing stick, another diamond), "
            "or take another way to grind; keep this diamond for the last passes (common practice, "
            "no source).",
        )
