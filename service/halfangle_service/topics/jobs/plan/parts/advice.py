"""What an experienced hand would add of the feed and the clearance of the best way."""

from collections.abc import Iterator, Sequence

from halfangle_service.cautions import PROVE_BY_HAND
from halfangle_service.fields.advisories import Advisory, caution
from halfangle_service.fields.clearance.gaps import ClearanceGap
from halfangle_service.topics.jobs.plan.parts.clearance.answer import PlanClearance, PlanRoom
from halfangle_service.topics.jobs.plan.parts.feed import Feeding, PlanFeed, cutting_passes
from halfangle_service.topics.jobs.plan.ways.way import RuledOut
from halfangle_service.trade.planning.batch import Growth
from halfangle_service.trade.uncertainty import Budget, Contribution
from halfangle_service.trade.uncertainty.coverage import half_width
from halfangle_service.trade.units import Units
from halfangle_service.trade.wording import arcsec, length, option, small_length

#: A pass deeper than this burns hardened steel under a flat wheel; common practice, no source.
DEEP_PASS: dict[Units, float] = {"in": 0.001, "mm": 0.03}
#: More stock than this on a side is turned or rough-ground first; common practice, no source.
MUCH_STOCK: dict[Units, float] = {"in": 0.02, "mm": 0.5}


def of_parts(
    feeding: Feeding, feed: PlanFeed, clearance: PlanClearance, room: PlanRoom
) -> Iterator[Advisory]:
    """Of a feed that is too deep or takes much, and of a clearance of which nothing is known."""
    phases = [phase for phase in (feed.rough, feed.finish) if phase is not None]
    deepest = max((phase.downfeed_per_pass for phase in phases), default=0.0)
    allowance = feeding.stated.grinding_allowance
    yield from of_feed(deepest, allowance, cutting_passes(feed), feeding.units)
    if clearance.not_stated:
        yield _unknown(f"not stated: {', '.join(clearance.not_stated)}")
    gap, wanted = clearance.smallest_gap, room.gap_wanted
    if gap is not None and wanted is not None and clearance.forecast == "may-not-hold":
        yield from _narrow(gap, wanted, clearance, feeding.units)
    yield PROVE_BY_HAND


def of_feed(
    downfeed: float, allowance: float | None, passes: int, units: Units
) -> Iterator[Advisory]:
    """Of a pass that is too deep, and of more stock than is ground off in so many passes."""
    if downfeed > DEEP_PASS[units]:
        yield caution(
            "heavy-pass",
            f"A pass of {small_length(downfeed, units)} is deep: a hardened point burns "
            f"and the wheel loses its shape. Up to {small_length(DEEP_PASS[units], units)} is "
            "common.",
        )
    if allowance is not None and allowance > MUCH_STOCK[units]:
        yield caution(
            "much-stock",
            f"{small_length(allowance, units)} on a side, in {passes} passes, is "
            "much to grind: is it in the unit meant, and measured square to the surface? Turn or "
            "rough it first.",
        )


def _narrow(
    gap: ClearanceGap, wanted: float, clearance: PlanClearance, units: Units
) -> Iterator[Advisory]:
    """Of a best way with less room than is wanted, and what would open it."""
    if gap.gap < wanted:
        helps = [change.action for change in clearance.changes if change.keeps_gap_wanted]
        yield caution(
            "gap-too-small",
            f"The best way's least gap is {length(gap.gap, units)} ({gap.part} and {gap.body}); "
            f"{length(wanted, units)} is wanted. {' '.join(helps[:1])}".rstrip(),
        )


def of_fouled(ways: Sequence[RuledOut]) -> Iterator[Advisory]:
    """Of ways that are ruled out because they foul or are not safe: what would mend them."""
    for way in ways:
        yield caution(
            "way-ruled-out",
            f"{option(way.name).capitalize()} ({', '.join(way.equipment)}) is ruled out: "
            f"{way.reason} {way.instead or ''}".rstrip(),
        )


def of_observed(growth: Growth | None, observed: bool) -> Iterator[Advisory]:
    """Of pieces that grow so unevenly that their growth is hardly told from none."""
    if growth is None or not observed or not growth.spread_arcsec:
        return
    own = Contribution(
        "growth_per_piece_arcsec",
        growth.spread_arcsec,
        "normal",
        degrees_of_freedom=growth.degrees_of_freedom,
    )
    doubt, found = half_width(Budget((own,))), growth.error_arcsec(1)
    if doubt >= found:
        yield caution(
            "wear-not-steady",
            f"The observed pieces grow by {arcsec(found)} each, known to ±{arcsec(doubt)} only: "
            "was the wheel dressed between them and the count carried on, or one of them seated or "
            "measured otherwise? Measure more pieces of one dress.",
        )


def _unknown(why: str) -> Advisory:
    return caution(
        "clearance-not-known",
        f"Nothing is said of the best way's clearance ({why}): what is not said to clear may foul.",
    )
