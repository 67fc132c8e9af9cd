"""The steps of the work, in order, with the cautions of the trade.

The order and the wording are common practice, no source, but for the wheel: inspection, ring test
and marked speed follow 29 CFR 1910.215(d)(1). Whatever the wheel or the machine is marked with, and
whatever local codes or qualified people say, comes before this list.
"""

from dataclasses import dataclass

from pydantic import Field

from halfangle_service.fields import CountOut, ResultModel


class PlanStep(ResultModel):
    """One step of the work, in order."""

    number: CountOut = Field(description="Its place in the order.")
    action: str = Field(description="What to do.")
    cautions: list[str] = Field(description="What to mind.")


@dataclass(frozen=True, slots=True)
class _Step:
    """One step: what to do, and what to mind."""

    action: str
    cautions: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class StepFacts:
    """The figures that the steps quote, already written for a person, with their unit."""

    stack: str
    plate_angle: str
    stack_height: str
    holding: str
    cone_limit: str
    slant: str
    step: str
    off_diameter: str
    rounds: str


def planned_steps(facts: StepFacts) -> list[PlanStep]:
    """Give the steps for a center on a sine plate with a spin fixture and a flat wheel."""
    steps = (_wheel(), *_setting_steps(facts), *_holding_steps(facts), *_grinding_steps(facts))
    return [
        PlanStep(number=number, action=step.action, cautions=list(step.cautions))
        for number, step in enumerate(steps, start=1)
    ]


def _wheel() -> _Step:
    return _Step(
        "Inspect the wheel, ring-test it where its bond allows, and read the speed marked on it.",
        (
            "The spindle's speed must not exceed the speed marked on the wheel. No marking: do not "
            "run it.",
            "Guard closed, stand aside while the wheel runs up, eye protection on. The machine's "
            "own rules and qualified people come first.",
        ),
    )


def _setting_steps(facts: StepFacts) -> tuple[_Step, ...]:
    return (
        _Step(
            "Clean the table, the plate, its rolls and the blocks; let plate and blocks come to "
            "one temperature.",
            ("A chip or a burr under a roll is an error of angle like a wrong block.",),
        ),
        _Step(
            f"Wring the stack {facts.stack} and measure it: {facts.stack_height}.",
            (
                "Read the size on each block aloud as you wring it. This is where a wrong block "
                "is cheapest to find.",
            ),
        ),
        _Step(
            f"Set the plate to {facts.plate_angle} on the stack and lock it.",
            (
                "Both ends of each roll must bear: try to rock the plate before locking it.",
                "Check that the lock did not lift the roll off the stack.",
            ),
        ),
    )


def _holding_steps(facts: StepFacts) -> tuple[_Step, ...]:
    return (
        _Step(
            "Mount the spin fixture with its axis in the tilt plane; indicate a test bar along its "
            "top and its side.",
            (
                "A magnet alone does not hold a tall fixture on a tilted plate: stop it against a "
                "rail or clamp it, and try it by hand before the wheel comes near.",
            ),
        ),
        _Step(
            f"{facts.holding} Indicate the shank, tap it true.",
            (),
        ),
        _Step(
            f"Indicate the cone square to its surface; go on only below {facts.cone_limit} TIR.",
            ("Turn the work by the fixture's own handle, with the wheel stopped and clear.",),
        ),
        _Step(
            "With the wheel stopped and raised, turn the work through a full turn and run the "
            f"table through its whole stroke; the slant is {facts.slant} long.",
            (
                "Wheel, flange and guard must clear plate, fixture, stack and work everywhere, and "
                "still do when the wheel has come down to size.",
            ),
        ),
    )


def _grinding_steps(facts: StepFacts) -> tuple[_Step, ...]:
    return (
        _Step(
            "Dress the wheel flat.",
            (
                "The diamond points past the center line, trailing; guard closed, coolant or dust "
                "extraction on: do not breathe the dust.",
            ),
        ),
        _Step(
            f"Touch off, then feed down {facts.step} a pass: each takes {facts.off_diameter} off "
            f"the diameter. {facts.rounds}",
            (
                "Turn the work slowly and evenly, over the whole slant each pass; too deep a cut "
                "burns a hardened point.",
            ),
        ),
        _Step(
            "Spark out: passes without feed until no sparks show.",
            (),
        ),
        _Step(
            "Measure as the checks below say before taking the work out of the fixture.",
            ("Wheel stopped. A part taken out seldom goes back as true as it was.",),
        ),
        _Step(
            "Demagnetise, break the edge where the drawing allows it, protect the point.",
            (),
        ),
    )
