"""The steps of the work, in order, with the cautions of the trade.

The order and the wording are common practice, no source, but for the wheel: inspection, ring test
and marked speed follow 29 CFR 1910.215(d)(1). Whatever the wheel or the machine is marked with, and
whatever local codes or qualified people say, comes before this list.
"""

from collections.abc import Iterable
from dataclasses import dataclass

from pydantic import Field

from halfangle_service.fields import CountOut, ResultModel


class PlanStep(ResultModel):
    """One step of the work, in order."""

    number: CountOut = Field(description="Its place in the order.")
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

    stack: str
    plate_angle: str
    stack_height: str
    held_in: str
    test_bar: str
    true_up: str
    limit: str
    slant: str
    step: str
    off_diameter: str
    rounds: str


def planned_steps(facts: StepFacts) -> list[PlanStep]:
    """Give the steps for a center on a sine plate with a spin fixture and a flat wheel.

    Whatever throws grit comes before the blocks are out of their box. What the cone must run true
    to is indicated, not the cone, which is nothing yet.
    """
    return numbered(
        (
            *wheel_steps(),
            *holding_steps(facts),
            *setting_steps(facts),
            *grinding_steps(facts),
            *last_steps(),
        )
    )


def numbered(steps: Iterable[Step]) -> list[PlanStep]:
    """Write steps in their order."""
    return [
        PlanStep(number=number, action=step.action, cautions=list(step.cautions))
        for number, step in enumerate(steps, start=1)
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


def setting_steps(facts: StepFacts) -> tuple[Step, ...]:
    """The stack, the plate on it, the work in its seat."""
    return (
        Step(
            f"Wring the stack {facts.stack} and measure it: {facts.stack_height}.",
            (
                "Read the size on each block aloud as you wring it. This is where a wrong block "
                "is cheapest to find.",
            ),
        ),
        Step(
            f"Set the plate to {facts.plate_angle} on the stack and lock it.",
            (
                "Both ends of each roll must bear: try to rock the plate before locking it.",
                "Check that the lock did not lift the roll off the stack.",
            ),
        ),
        Step(
            "Put the work in place of the test bar, both seats wiped clean, and mark shank and "
            "seat with one line, so that it goes back as it was. Where the shank can be reached, "
            f"indicate it once more: below {facts.limit}.",
            ("Turn the work by the fixture's own handle, with the wheel stopped and clear.",),
        ),
    )


def grinding_steps(facts: StepFacts) -> tuple[Step, ...]:
    """Clearance tried by hand, the passes, the checks before the last of them."""
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
            f"Touch off, then feed down {facts.step} a pass: each takes {facts.off_diameter} off "
            f"the diameter.{facts.rounds}",
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
