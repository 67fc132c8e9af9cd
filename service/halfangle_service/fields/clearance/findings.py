"""What is wrong with a set-up under the wheel, and whether it holds, in one wording."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from halfangle_service.fields.advisories import Advisory, caution, stop
from halfangle_service.trade.clearance.bodies import Gap
from halfangle_service.trade.clearance.case import Case
from halfangle_service.trade.clearance.stand import Stand, WheelState
from halfangle_service.trade.uncertainty import Forecast
from halfangle_service.trade.units import Units
from halfangle_service.trade.wording import length


@dataclass(frozen=True, slots=True)
class SetUpUnderWheel:
    """A case with its least gap, lengths in `units`.

    `stick_out_needed` is the smallest with which the fixture clears, None where none does;
    `limit_stick_out` and `room_left` under the raised wheel None where nothing is known of them.
    """

    case: Case
    least: tuple[WheelState, Gap]
    stick_out_needed: float | None
    limit_stick_out: float | None
    room_left: float | None
    units: Units

    def findings(self) -> Iterator[Advisory]:
        """What is wrong with it, the least gap first."""
        units, state, gap = self.units, self.least[0], self.least[1]
        stick_out, limit = self.case.assembly.fixture.stick_out, self.limit_stick_out
        if not self.case.keeps(gap.gap):
            yield self._too_near(gap.gap, f"{state} wheel: {gap.part} and {gap.body}")
        for part in self.case.fouling_parts():
            yield stop(
                "turning-part-fouls",
                f"In a turn of the work its {part.name} would meet the plate, the stack or the "
                "base. Do not turn the work with this set-up.",
            )
        yield from _no_room(self.room_left, units)
        if limit is not None and stick_out > limit:
            yield stop("stick-out-past-its-limit", stands_out_too_far(stick_out, limit, units))

    def forecast(self, findings: Iterable[Advisory]) -> Forecast:
        """Whether it holds, by its findings; never `holds` where the guard was left out."""
        if any(advisory.severity == "stop" for advisory in findings):
            return "does-not-hold"
        guarded = self.case.heads["new"].guard is not None
        return "holds" if guarded and self.case.keeps(self.least[1].gap) else "may-not-hold"

    def _too_near(self, gap: float, words: str) -> Advisory:
        no_other = self._no_other_stick_out()
        return _too_near(gap, words, self.case.margin, self.units, no_other)

    def _no_other_stick_out(self) -> str:
        """Sentence that says where no other stick-out would do; empty where one would."""
        needed, limit = self.stick_out_needed, self.limit_stick_out
        if needed is None:
            return (
                " The work's shank is thicker than the cone and stands in the way of the wheel "
                "whatever the stick-out."
            )
        if limit is not None and needed > limit:
            return (
                f" The fixture clears only with a stick-out of {length(needed, self.units)}; the "
                f"work may stand out {length(limit, self.units)}."
            )
        return ""


@dataclass(frozen=True, slots=True)
class StandUnderWheel:
    """What stands under a wheel whatever holds it, lengths in `units`.

    `room_left` under the raised wheel is None where nothing is known of it.
    """

    stand: Stand
    room_left: float | None
    units: Units

    def findings(self) -> Iterator[Advisory]:
        """What is wrong with it, the least gap first."""
        state, gap = self.stand.least
        if not self.stand.keeps(gap.gap):
            words = f"{state} wheel: {gap.part} and {gap.body}"
            yield _too_near(gap.gap, words, self.stand.margin, self.units)
        yield from _no_room(self.room_left, self.units)

    def forecast(self, findings: Iterable[Advisory]) -> Forecast:
        """Whether it holds, by its findings; never `holds` where the guard was left out."""
        if any(advisory.severity == "stop" for advisory in findings):
            return "does-not-hold"
        kept = self.stand.keeps(self.stand.least[1].gap)
        return "holds" if self.stand.guarded and kept else "may-not-hold"


def stands_out_too_far(stick_out: float, limit: float, units: Units) -> str:
    """Sentence that says so, lengths in `units`."""
    return (
        f"The work stands out {length(stick_out, units)} and may stand out {length(limit, units)}."
    )


def _too_near(gap: float, words: str, wanted: float, units: Units, more: str = "") -> Advisory:
    """A gap less than the one wanted; `more` is a sentence to add."""
    if gap < 0.0:
        return stop(
            "fouling",
            f"They foul by {length(-gap, units)} ({words}). Do not start the table with this "
            f"set-up.{more}",
        )
    return caution(
        "gap-too-small",
        f"The least gap is {length(gap, units)} ({words}); {length(wanted, units)} is wanted."
        f"{more}",
    )


def _no_room(room_left: float | None, units: Units) -> Iterator[Advisory]:
    if room_left is not None and room_left < 0.0:
        yield stop(
            "no-room-under-the-wheel",
            f"The set-up is {length(-room_left, units)} too high for the room under the wheel.",
        )
