"""Each caution of the trade that several answers carry: one code, one severity, one wording.

Safety cautions defer to markings, local codes and qualified people; none may soften. Regulation
cited: 29 CFR 1910.215 (abrasive wheel machinery), read in public reprints; ANSI B7.1 and EN 12413
are recalled from memory. What only one subject says stands in that subject's own file.
"""

from collections.abc import Iterator

from halfangle_service.fields.advisories import Advisory, caution, note, stop
from halfangle_service.trade.sine.correction import WRONG_BLOCK_ARCSEC
from halfangle_service.trade.tapers.tolerance import STANDARD_RATE
from halfangle_service.trade.units import Units, to_mm
from halfangle_service.trade.wording import arcsec, figure, length, plain

DEFERENCE = (
    "The wheel's and the machine's own markings, local codes and qualified people come first."
)

WHEEL_SAFETY = caution(
    "wheel-safety",
    "Run the wheel at or below the speed marked on it, after inspection and ring test (29 CFR "
    "1910.215(d)(1)), guard closed, eye protection on. This answer sees only the figures sent. "
    f"{DEFERENCE}",
)
DRESSING_SAFETY = caution(
    "dressing-safety",
    "Guard closed, eye protection on, coolant or dust extraction running. Stay at or below the "
    f"speed marked on the wheel. {DEFERENCE}",
)
MAGNETIC_HOLDING = caution(
    "magnetic-holding",
    "A plate or fixture on a magnetic chuck holds by its contact area: clean, burr-free, blocked "
    f"against the wheel's push, and proved by hand before the wheel is started. {DEFERENCE}",
)
GRINDING_DUST = caution(
    "grinding-dust",
    "Grind with coolant or with dust extraction running, and do not breathe dust or mist; that of "
    "carbide (cobalt) or beryllium copper harms in amounts that nobody sees. "
    f"{DEFERENCE}",
)
ON_AN_UPRIGHT = caution(
    "clamped-on-an-upright",
    "Work or fixture on an upright is clamped to it, and the upright to the plate: a magnet under "
    "a tall foot does not withstand the wheel's push. Try it by hand before the wheel is started.",
)
DRIVEN_WORK = caution(
    "driven-work",
    "A workhead that a motor turns catches sleeves, gloves and rags: dog and chuck guarded, key "
    "out, wheel and work stopped before anything is measured.",
)
DRESSED_ANGLE_UNPROVED = caution(
    "dressed-angle-unproved",
    "The stack proves the dresser's setting, not the wheel: diamond height, diamond wear and "
    "wheel wear all turn the flank. Check the ground angle by itself, optically or over rolls.",
)


def side_not_rated(rated: bool | None) -> Advisory:
    """Stop a wheel's side from grinding that is stated not to be rated for it, or not known to."""
    what = "not known" if rated is None else "stated not"
    return stop(
        "side-not-rated",
        f"This wheel is {what} to be rated for grinding with its side; only a wheel stated to be "
        "is used so. Do not grind with its side.",
    )


def by_grade(rate_of_taper: float) -> Iterator[Advisory]:
    """What to mind of a cone's tolerance that was stated as a grade AT."""
    if rate_of_taper > STANDARD_RATE:
        yield caution(
            "steeper-than-the-grades",
            "The standard's AT_D = AT × length holds for tapers up to 1:3; this cone is steeper: "
            "hold the exact figure.",
        )
    yield note("grades-from-memory", "The table of grades is rebuilt from its rule.")


def bluing_blind(smallest_arcsec: float) -> Advisory:
    """Note how much of the included angle a part may be off that is marked all over."""
    return note(
        "bluing-blind",
        "Marking all over proves the angle only to within the film over the length: "
        f"{plain(smallest_arcsec, 3)}″ of included angle.",
    )


#: Sizes of rolls and balls in mm past which a slip of the unit is likelier than the job: common
#: practice, no source.
_SMALLEST_MM, _LARGEST_MM = 0.5, 100.0


def odd_sizes(units: Units, what: str, *diameters: float) -> tuple[Advisory, ...]:
    """A caution where rolls or balls, `what` they are called, are of no size that is measured with.

    The diameters are in `units`.
    """
    odd = [d for d in diameters if not _SMALLEST_MM <= to_mm(d, units) <= _LARGEST_MM]
    if not odd:
        return ()
    sizes = ", ".join(plain(diameter) for diameter in odd)
    return (
        caution(
            "odd-size",
            f"Hardly anybody measures with {what} of {sizes} {units} (common practice, no source): "
            "is the unit the one meant?",
        ),
    )


#: Past this angle one step of height turns the plate 1.4 times as far as it does near zero.
STEEP_DEGREES = 45.0


def steep_angle(
    angle_degrees: float, per_step_arcsec: float, steep: float, *, instead: str | None = None
) -> Iterator[Advisory]:
    """Warn where an angle is steep, and say what one bench step does there.

    `instead` is a sentence on what to do instead, where that is not the complement on one axis.
    """
    if abs(angle_degrees) > steep:
        complement = (
            f"Where the work can be turned by 90°, set the complement, "
            f"{90.0 - abs(angle_degrees):.4f}°."
        )
        said = (
            f"Past {plain(steep)}° a sine setting loses its edge: here one bench step of height "
            f"turns the plate {per_step_arcsec:.1f}″. {complement if instead is None else instead}"
        )
        yield caution("steep-angle", said.rstrip())


#: Below this few sets build a single stack to the bench step: the smallest fine blocks are 0.1 in
#: and 1 mm long.
SMALL_STACK: dict[Units, float] = {"in": 0.1, "mm": 1.0}


def unusual_stack(
    height: float, center_distance: float, units: Units, height_to_set: float | None = None
) -> Iterator[Advisory]:
    """Warn of a sine stack that is below nothing, longer than the plate, or too small to build.

    Lengths in `units`; `height_to_set` is the height rounded to what can be built.
    """
    if height < 0.0:
        yield caution(
            "stack-below-zero",
            f"The high roll's stack would be {figure(-height, units)} lower than the low roll's: "
            "the "
            "plate's rest is higher than that. Put a stack under the low roll, or turn the work "
            "round.",
        )
    elif height > center_distance:
        yield caution(
            "stack-above-center-distance",
            f"The stack of {figure(height, units)} is longer than the center distance "
            f"{figure(center_distance, units)}; check base_step.",
        )
    elif height_to_set == 0.0 and height:
        yield caution(
            "rounds-to-nothing",
            f"The stack of {figure(height, units)} rounds to none at all: the plate would stand as "
            "without a stack. Stacks under both rolls that differ by so little are what sets such "
            "an angle, if anything does.",
        )
    elif 0.0 < height < SMALL_STACK[units]:
        yield note(
            "small-stack",
            f"Few sets build a single stack of {length(height, units)}. Where the low roll can "
            "stand on blocks too, stacks under both rolls set the angle by their difference: "
            "sine.low-stack gives them.",
        )


#: Past this a stack as built is not the one that the angle asks for, to any usual step.
FAR_OFF_ARCSEC = 60.0


def stack_far_off(off_arcsec: float) -> Iterator[Advisory]:
    """Warn where what was built sets another angle than the one wanted, by so many arc-seconds."""
    if abs(off_arcsec) > FAR_OFF_ARCSEC:
        yield caution(
            "stack-far-off",
            f"What is built sets the plate {arcsec(off_arcsec, 0)} off the angle wanted, more than "
            "rounding does: check height, blocks, angle, and what offset the plate has.",
        )


PROVE_BY_HAND = note(
    "prove-by-hand",
    "Prove the clearance by hand with the wheel standing: the whole stroke, a full turn of the "
    "work, stops and dogs set.",
)


def correct_the_cause() -> Advisory:
    """Note that a change of blocks is no calibration."""
    return note(
        "correct-the-cause",
        "A correction by blocks holds for this angle only; where the center distance is the cause "
        "another angle needs another change.",
    )


def wrong_block_first(error_arcsec: float) -> Iterator[Advisory]:
    """Warn of an error, in arc-seconds, that is rarely a plate's own."""
    if abs(error_arcsec) > WRONG_BLOCK_ARCSEC:
        yield caution(
            "look-for-a-wrong-block",
            f"An error of {arcsec(abs(error_arcsec), 0)} is rarely the plate's own: look for a "
            "wrong, forgotten or doubled block, or dirt, before correcting by blocks.",
        )


#: Tilt past which work begins to slide off clean, oiled steel of its own weight: friction 0.15 to
#: 0.2 (common practice, no source).
SLIDING_DEGREES = 8.5


def sliding_work(tilt_degrees: float) -> Iterator[Advisory]:
    """Warn of work on its base on a plate so steep that nothing but a stop holds it."""
    if tilt_degrees > SLIDING_DEGREES:
        yield caution(
            "work-may-slide",
            f"At {plain(tilt_degrees)}° work slides off a plate of its own weight once the magnet "
            "lets go, and side forces lift it at its high end: set it against a rail across the "
            "slope or clamp it, whatever the magnet. Carbide, aluminium, brass and most stainless "
            "steel are not held by a magnet at all.",
        )


#: Overhang of a quill, in diameters, past which it bends and rings: common practice, no source.
LONG_QUILL = 5.0


def internal_wheel(
    overhang: float, quill_diameter: float | None, marked_rpm: float | None, units: Units
) -> Iterator[Advisory]:
    """Warn of a small wheel's speed, and of a quill that stands out far; lengths in `units`."""
    marked = (
        "The largest speed marked on it was not stated: read it before the spindle is started."
        if marked_rpm is None
        else f"It is marked for at most {plain(marked_rpm)} per minute."
    )
    yield caution(
        "internal-wheel-speed",
        "The speed that a wheel on a quill or mandrel stands falls as it stands out farther: hold "
        f"the spindle to what its maker states for an overhang of {figure(overhang, units)}. "
        f"{marked} Bring it into the bore before it is brought to speed, stop it before it is "
        f"drawn out. {DEFERENCE}",
    )
    if quill_diameter is not None and overhang > LONG_QUILL * quill_diameter:
        yield caution(
            "long-quill",
            f"The quill of {figure(quill_diameter, units)} stands out {figure(overhang, units)}: "
            "it bends under the cut, so that the bore is tapered by it, and it may ring. Take a "
            "thicker or shorter one, feed little and spark out long.",
        )
