"""The steps of the best way, in an order in which they can be done, with the cautions of the trade.

Order and wording are common practice, no source. Blocks are out of their box only after the wheel
is dressed, or, where they set the dresser, back in it before.
"""

from collections.abc import Iterator

from halfangle_service.topics.jobs.plan.features import Wanted
from halfangle_service.topics.jobs.plan.parts.feed import PlanFeed
from halfangle_service.topics.jobs.plan.parts.size import PlanSize
from halfangle_service.topics.jobs.plan.shank import PlannedShank, true_up
from halfangle_service.topics.jobs.plan.usual_steps import (
    PlanStep,
    Step,
    StepFacts,
    grinding_steps,
    holding_steps,
    last_steps,
    numbered,
    wheel_steps,
)
from halfangle_service.topics.jobs.plan.ways.way import Way
from halfangle_service.trade.planning.feed import ReadingName
from halfangle_service.trade.tapers.feed import off_diameter
from halfangle_service.trade.units import Units, bench_step
from halfangle_service.trade.wording import length, small_length, stack

#: How a setting begins, and ends, with what is done to the work.
_LAY, _QUARTER = "Lay the work", " Turn the work a quarter"
#: What is read to stop by, as a sentence has it.
_READ: dict[ReadingName, str] = {
    "diameter": "the diameter at the gauge line",
    "axial-position": "what the gauge stands off its place",
    "height": "the face's distance",
    "feed-dial": "the feed dial, counted from the first touch,",
}
_ON_PLATES = (
    "sine-plate",
    "stacks-under-both-rolls",
    "quarter-turn",
    "sine-plate-turned-in-plan",
    "compound-sine-plate",
)


def steps_of(
    way: Way, wanted: Wanted, shank: PlannedShank | None, feed: PlanFeed, size: PlanSize | None
) -> list[PlanStep]:
    """The steps of one way, fed as its feed plan has it and stopped as its size asks."""
    facts = _facts(wanted, shank)
    inspect, dress = wheel_steps()
    if way.name == "dressed-wheel":
        begin = (inspect, *_by_blocks(way), _dress_the_flank())
    elif way.name == "wheel-side":
        begin = (inspect, _dress_the_side())
    else:
        begin = (inspect, dress)
    fed = _fed(feed, facts.step, wanted.units)
    return numbered(
        (
            ("dressing", begin),
            ("holding", _holding(way, wanted, shank, facts)),
            ("setting", _setting(way, wanted)),
            ("grinding", _put_in(wanted, facts)),
            ("grinding", _grinding(wanted, facts, fed)),
            ("grinding", _stopping(size, wanted.units)),
            ("finishing", _last(wanted)),
        )
    )


def _facts(wanted: Wanted, shank: PlannedShank | None) -> StepFacts:
    units, step = wanted.units, bench_step(wanted.units)
    held_in = "the fixture" if shank is None else shank.held_in
    test_bar = "a test bar" if shank is None else shank.test_bar
    limit = "the drawing's limit of runout, which was not stated"
    if wanted.limit_tir is not None:
        limit = f"{small_length(wanted.limit_tir, units)} TIR"
    return StepFacts(
        held_in=held_in,
        test_bar=test_bar,
        true_up="Turn or tap it true" if wanted.shank is None else true_up(wanted.shank),
        limit=limit,
        slant=length(wanted.slant, units),
        step=small_length(step, units),
        off_diameter=small_length(off_diameter(step, wanted.angle_rad), units),
    )


def _by_blocks(way: Way) -> Iterator[Step]:
    """The dresser's stack, which is out of the way before any grit flies."""
    if not way.stacks:
        yield Step(f"Wheel stopped. {way.settings[0].action}")
        return
    yield Step(
        f"Wheel stopped. Wring the dresser's blocks and measure them. {way.settings[0].action} "
        "Lock the dresser, then put the blocks back in their box, before the wheel runs.",
        ("Check that the lock did not move the dresser off its blocks.",),
    )


def _dress_the_flank() -> Step:
    return Step(
        "Dress the flank in passes, the diamond at the height of the wheel's axis.",
        (
            "A diamond off that height dresses a hyperbola, which grinds a crowned surface.",
            "Guard closed, coolant or dust extraction on: do not breathe the dust.",
        ),
    )


def _dress_the_side() -> Step:
    return Step(
        "See that the wheel is stated to be rated for grinding with its side, and dress that side.",
        ("A wheel that is not rated for it breaks under a push against its side.",),
    )


def _holding(
    way: Way, wanted: Wanted, shank: PlannedShank | None, facts: StepFacts
) -> Iterator[Step]:
    """How the work is held before anything is set."""
    if not wanted.turned:
        yield Step(
            "Wheel stopped. Clean table, plate, rolls, blocks and the work's base, and let them "
            "come to one temperature.",
            ("A chip or a burr under a roll or the work is an error of angle like a wrong block.",),
        )
        yield _seated(way)
        return
    clean, mount, seat = holding_steps(facts)
    yield clean
    if way.name in _ON_PLATES:
        yield mount if way.name != "quarter-turn" else _squared(mount)
    else:
        yield Step(
            "Mount what turns the work and indicate a test bar in it, along its top and its side: "
            "its axis must lie as the way asks before it is swivelled.",
            mount.cautions,
        )
    if shank is not None:
        yield seat
    else:
        yield Step(
            "Hold the work by the surface that it must run true to, and indicate that surface "
            f"below {facts.limit}.",
        )


def _seated(way: Way) -> Step:
    """How a face's work stands on the plate before the plate is tilted."""
    how = "Seat the work by its base"
    if way.name == "quarter-turn":
        how = (
            "With the plate closed, hold the work by its base on an angle plate on its low side, "
            "its base square to the plate's top"
        )
    elif way.name == "compound-sine-plate":
        how = f"{_laid_and_set(way.settings[0].action)[0]} Seat it by its base"
    return Step(
        f"{how}, stop it against a rail or clamp it, and try it by hand. Indicate its edge so that "
        "the slope lies in the plane in which it is set.",
        ("A magnet alone does not hold tall work on a tilted plate.",),
    )


def _laid_and_set(action: str) -> tuple[str, str]:
    """What of a setting is done to the work before anything is tilted, and what to the plate."""
    if action.startswith(_LAY):
        laid, _, rest = action.partition(". ")
        return f"{laid}.", rest
    return "", action.partition(_QUARTER)[0]


def _squared(mount: Step) -> Step:
    return Step(
        "With the plate closed, mount the spin fixture with its axis square to the plate's top, on "
        "an angle plate on its low side, and indicate a test bar in it along two sides a quarter "
        "apart.",
        mount.cautions,
    )


def _setting(way: Way, wanted: Wanted) -> Iterator[Step]:
    """What is set once the wheel is dressed."""
    if way.name in _ON_PLATES:
        for made in way.stacks:
            if made.role != "check":
                yield Step(
                    f"Wring the stack {stack(tuple(made.blocks), wanted.units)} and measure it: "
                    f"{length(made.total, wanted.units)}.",
                    (
                        "Read the size on each block aloud as you wring it. This is where a wrong "
                        "block is cheapest to find.",
                    ),
                )
        for setting in way.settings:
            yield Step(
                f"{_laid_and_set(setting.action)[1]} Lock it.",
                (
                    "Both ends of each roll must bear: try to rock the plate before locking it.",
                    "Check that the lock did not lift the roll off the stack.",
                ),
            )
    elif way.name != "dressed-wheel":
        for setting in way.settings:
            yield Step(setting.action)


def _put_in(wanted: Wanted, facts: StepFacts) -> Iterator[Step]:
    """How work that turns takes the place of the test bar."""
    if wanted.turned:
        once_more = (
            ""
            if wanted.shank is None
            else (f" Where the shank can be reached, indicate it once more: below {facts.limit}.")
        )
        yield Step(
            "Put the work in place of the test bar, both seats wiped clean, and mark work and seat "
            f"with one line, so that it goes back as it was.{once_more}",
            ("Turn the work by the fixture's own handle, with the wheel stopped and clear.",),
        )


def _fed(feed: PlanFeed, step: str, units: Units) -> str:
    """What the feed dial moves, pass by pass; a step a pass where the allowance is not known."""
    told = [
        f"{phase.cutting_passes} times {small_length(phase.dial_per_pass, units)}"
        for phase in (feed.rough, feed.finish)
        if phase is not None
    ]
    return " and then ".join(told) if told else f"{step} a pass"


def _grinding(wanted: Wanted, facts: StepFacts, fed: str) -> Iterator[Step]:
    """The passes, and the checks before the last of them."""
    if wanted.turned:
        clear, passes, *rest = grinding_steps(facts, fed)
        if wanted.internal:
            clear, passes = _in_the_bore(facts, fed)
        yield from (clear, passes, *rest)
        return
    yield Step(
        "With the wheel stopped and raised, run the table through its whole stroke and the "
        f"cross-feed over the whole face; the slope is {facts.slant} long.",
        (
            "Wheel, flange and guard must clear plate, stack and work everywhere, and still do "
            "when the wheel has come down to size.",
        ),
    )
    yield Step(
        f"Touch off at the highest place, then feed down {fed}, each pass over the whole face.",
        ("Too deep a cut burns hardened steel, and lifts work that is held by its base alone.",),
    )
    yield Step(
        "With a few passes still to go, measure the angle by another means than its setting, and "
        "mend the setting if it is off.",
        ("Wheel stopped and clear. Seat the work again as clean as before.",),
    )
    yield Step("Take the last passes and spark out: no feed until no sparks show.")


def _in_the_bore(facts: StepFacts, fed: str) -> tuple[Step, Step]:
    """Clearance tried by hand and the passes, of a wheel that goes into the work."""
    return (
        Step(
            "The mouth lies up the slope, its lower wall level. With the wheel stopped, bring it "
            "into the bore over the whole stroke, its quill over the bore's axis, and turn the "
            f"work through a full turn; the slant is {facts.slant} long.",
            (
                "Wheel and quill must clear the bore's mouth and bottom, fixture and plate.",
                "A quill that lies sideways of the bore's axis grinds it hollow and opens it.",
            ),
        ),
        Step(
            f"Touch off on the bore's wall, then feed {fed}. {facts.step} square to the surface "
            f"opens the diameter by {facts.off_diameter}.",
            (
                "A quill bends: feed little, and let it spark out before each reading.",
                "Draw the wheel out and stop it before the bore is measured.",
            ),
        ),
    )


def _stopping(size: PlanSize | None, units: Units) -> Iterator[Step]:
    """By which reading the size is held, where one says so."""
    if size is None or size.smallest_stop is None or size.largest_stop is None:
        return
    ends = (small_length(end, units) for end in (size.smallest_stop, size.largest_stop))
    yield Step(
        f"Stop where {_READ[size.read_off]} reads from {' to '.join(ends)}: spark out, and "
        "read again with the work cold.",
        ("Past that no pass brings it back: take the last ones one step at a time.",),
    )


def _last(wanted: Wanted) -> tuple[Step, ...]:
    """What is left when the sparks are out, of a point, of another cone or of a face."""
    if wanted.turned and not wanted.small_diameter:
        return last_steps()
    what = "angle and runout" if wanted.turned else "the angle"
    return (
        Step(
            f"Check {what} once more, and write down what was read.", ("Wheel stopped and clear.",)
        ),
        Step("Demagnetise, and break the edges where the drawing allows it."),
    )
