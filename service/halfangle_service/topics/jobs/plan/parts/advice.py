"""What an experienced hand would add of the feed and the clearance of the best way."""

from collections.abc import Iterator

from halfangle_service.cautions import PROVE_BY_HAND
from halfangle_service.fields.advisories import Advisory, caution
from halfangle_service.topics.jobs.center import advice
from halfangle_service.topics.jobs.plan.parts.clearance.answer import PlanClearance
from halfangle_service.topics.jobs.plan.parts.feed import Feeding, PlanFeed


def of_parts(feeding: Feeding, feed: PlanFeed, clearance: PlanClearance) -> Iterator[Advisory]:
    """Of a feed that is too deep or takes much, and of a clearance of which nothing is known."""
    phases = [phase for phase in (feed.rough, feed.finish) if phase is not None]
    deepest = max((phase.downfeed_per_pass for phase in phases), default=0.0)
    cutting = sum(phase.cutting_passes for phase in phases)
    yield from advice.of_feed(deepest, feeding.stated.grinding_allowance, cutting, feeding.units)
    if clearance.not_stated:
        yield _unknown(f"not stated: {', '.join(clearance.not_stated)}")
    yield PROVE_BY_HAND


def _unknown(why: str) -> Advisory:
    return caution(
        "clearance-not-known",
        f"Nothing is said of the best way's clearance ({why}): what is not said to clear may foul.",
    )
