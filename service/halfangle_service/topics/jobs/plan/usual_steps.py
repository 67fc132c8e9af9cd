"""The steps that most ways have, with the cautions of the trade.

Whatever throws grit comes before the blocks are out of their box. What the work must run true to is
indicated, not the unground work, which is nothing yet.

The order and the wording are common practice, no source, but for the wheel: inspection, ring test
and marked speed follow 29 CFR 1910.215(d)(1). Whatever the wheel or the machine is marked with, and
whatever local codes or qualified people say, comes before this list.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Literal

from pydantic import Field

from halfangle_service.fields import CountOut, ResultModel

#: What a step is part of. A dressed flank is set by its dresser, so its setting is of the dressing;
#: putting a piece in is of the grinding, since each piece asks for it.
Stage = Literal["dressing", "holding", "setting", "grinding", "finishing"]


class PlanStep(ResultModel):
    """One step of the work, in order."""

    number: CountOut = Field(description="Its place in the order.")
    stage: Stage = Field(description="Which part of the work it belongs to.")
    action: str = Field(description="What to do.")
    cautions: list[str] = Field(description="What to be careful of.")


@dataclass(frozen=True, slots=True)
class Step:
    """One step: what to do, and what to be careful of."""

    action: str
    cautions: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class StepFacts:
    """The figures that the steps quote, already written for a person, with their unit."""

    held_in: str
    test_bar: str
    true_up: str
    limit: str
    slant: str
    step: str
    off_diameter: str


def numbered(stages: Iterable[tuple[Stage, Iterable[Step]]]) -> list[PlanStep]:
    """Write the steps of each stage in their order."""
    staged = ((stage, step) for stage, steps in stages for step in steps)
    return [
        PlanStep(number=number, stage=stage, action=step.action, cautions=list(step.cautions))
        for number, (stage, step) in enumerate(staged, start=1)
    ]


def wheel_steps() -> tuple[Step, ...]:
    """Inspecting the wheel, and dressing it flat."""
    return (
        Step(
            "Inspect the wheel, ring-test it where its bond allows, and read the speed marked on "
            "it.",
            (
                "The spindle's speed must not exceed the speed marked on the wheel. No marking: do "
                "not run it.",
                "Guard closed, stand aside while the wheel runs up, eye protection on. The "
                "machine's own rules and qualified people come first.",
            ),
        ),
        Step(
            "Dress the wheel flat, before any block is out of its box: dressing throws grit.",
            (
                "The diamond points past the center line, trailing; guard closed, coolant or dust "
                "extraction on: do not breathe the dust.",
                "To dress again later, cover stack, rolls and fixture first.",
            ),
        ),
    )


def holding_steps(facts: StepFacts) -> tuple[Step, ...]:
    """The fixture on the closed plate, and what holds the shank brought true."""
    return (
        Step(
            "Wheel stopped. Clean the table, the plate, its rolls and the blocks; let plate and "
            "blocks come to one temperature.",
            ("A chip or a burr under a roll is an error of angle like a wrong block.",),
        ),
        Step(
            "With the plate closed, mount the spin fixture with its axis square to the rolls. "
            "Indicate a test bar in it along its top, against the plate, and along its side.",
            (
                "A magnet alone does not hold a tall fixture on a tilted plate: stop it against a "
                "rail or clamp it, and try it by hand before the wheel comes near.",
            ),
        ),
        Step(
            f"Seat {facts.test_bar} in {facts.held_in}, both wiped clean, and indicate it where "
            f"the cone will be, square to the axis. {facts.true_up}, and go on only below "
            f"{facts.limit}.",
            (
                "Whatever it runs out here is ground into the cone. The unground cone itself says "
                "nothing of its shank. Without a test bar, indicate the shank itself where it can "
                "be reached.",
            ),
        ),
    )


def grinding_steps(facts: StepFacts, fed: str) -> tuple[Step, ...]:
    """Clearance tried by hand, the passes, the checks before the last of them.

    `fed` is what the feed dial moves, in words.
    """
    return (
        Step(
            "With the wheel stopped and raised, turn the work through a full turn and run the "
            f"table through its whole stroke; the slant is {facts.slant} long.",
            (
                "Wheel, flange and guard must clear plate, fixture, stack and work everywhere, and "
                "still do when the wheel has come down to size.",
            ),
        ),
        Step(
            f"Touch off, then feed {fed}. {facts.step} square to the surface takes "
            f"{facts.off_diameter} off the diameter.",
            (
                "Turn the work slowly and evenly, over the whole slant each pass; too deep a cut "
                "burns a hardened point.",
            ),
        ),
        Step(
            "With a few passes still to go, make the checks below: first the one on the same "
            "setting, then those with the work taken out. Mend the setting if the angle is off.",
            (
                "Wheel stopped and clear. A part taken out seldom goes back as true as it was: put "
                "it back to its mark.",
            ),
        ),
        Step("Take the last passes and spark out: no feed until no sparks show."),
    )


def last_steps() -> tuple[Step, ...]:
    """What is left when the sparks are out."""
    return (
        Step(
            "Check angle and runout once more, and write down what was read.",
            ("Wheel stopped and clear.",),
        ),
        Step("Demagnetise, break the edge where the drawing allows it, protect the point."),
    )
