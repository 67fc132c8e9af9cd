"""A taper socket on a sine plate, ground by a wheel on a quill that goes into it."""

from collections.abc import Iterator

from halfangle_service.topics.jobs.plan.parts.clearance.answer import (
    Fouled,
    PlanClearance,
    answered,
    not_known,
)
from halfangle_service.topics.jobs.plan.parts.clearance.faces import plate_under, upright_of
from halfangle_service.topics.jobs.plan.parts.clearance.under import (
    EQUIPMENT,
    FIXTURE,
    Asked,
    turns_into,
)
from halfangle_service.topics.jobs.plan.shop.equipment import PlanInternalSpindle, PlanSinePlate
from halfangle_service.trade.clearance.assembly import ROUNDING
from halfangle_service.trade.clearance.bodies import HeadPart
from halfangle_service.trade.clearance.on_end import standing_socket
from halfangle_service.trade.clearance.socket import Quill, Socket
from halfangle_service.trade.clearance.stand import Stand, View, WheelState, gaps_in
from halfangle_service.trade.wording import figure

SPINDLE = f"{EQUIPMENT}internal_spindle"
#: What of the spindle counts for the clearance alone.
_OWN = ("wheel_width", "quill_diameter", "spindle_diameter")


def socket_on_plate(
    asked: Asked,
    spindle: PlanInternalSpindle | None,
    plate: PlanSinePlate,
    path: str,
    low_stack: float,
    *,
    quarter: bool,
) -> PlanClearance | Fouled:
    """Wheel, quill and spindle against bore, fixture and plate through the whole stroke.

    `quarter`: the axis stands square to the plate, its fixture on an angle plate.
    """
    wanted, fixture, under = asked.wanted, asked.turning(), plate_under(plate)
    cannot = None if spindle is None else _against_the_quill(asked, spindle)
    if cannot is not None:
        return cannot
    missing = list(_lacks(asked, spindle, plate, path, quarter=quarter))
    upright = plate.angle_plate if quarter else None
    quill = None if spindle is None else _quill(spindle)
    relief = wanted.relief_length
    if missing or fixture is None or under is None or quill is None or relief is None:
        return not_known(missing)
    socket, units = Socket(asked.cone, relief, fixture), wanted.units
    if upright is None:
        bodies, tilted = socket.on(under, low_stack)
    else:
        bodies, tilted = standing_socket(socket, upright_of(upright), under, low_stack)
    fouled = asked.past_its_limit() or turns_into(bodies, under.length, FIXTURE)
    if fouled is not None:
        return fouled
    if tilted.into_base > ROUNDING * under.length:
        depth = figure(tilted.into_base, units)
        return Fouled(
            f"Tilted so far, the plate's low end would go {depth} into its base.",
            f"{path}plate_body/low_roll_from_end",
            None,
        )
    # A worn wheel only leaves more room in the bore; the quill comes nearer to the wall it grinds.
    parts: dict[WheelState, tuple[HeadPart, ...]] = {"new": quill.parts(asked.stroke, wanted.slant)}
    stand = Stand(
        gaps_in(View(tuple(bodies), parts)),
        asked.margin,
        under.length,
        # The room is that under the flat wheel.
        height=None,
        guarded=True,
    )
    return answered(
        stand,
        asked.room,
        units,
        SPINDLE,
        instead="A smaller wheel on a longer or thinner quill, or less travel past the ends.",
    )


def _quill(spindle: PlanInternalSpindle) -> Quill | None:
    """The spindle as the maths knows it; None where something of it was not stated."""
    width, quill, body = spindle.wheel_width, spindle.quill_diameter, spindle.spindle_diameter
    if width is None or quill is None or body is None:
        return None
    return Quill(spindle.wheel_diameter / 2.0, width, quill / 2.0, spindle.reach, body / 2.0)


def _against_the_quill(asked: Asked, spindle: PlanInternalSpindle) -> Fouled | None:
    """Why the quill cannot grind the whole bore, by what was stated; None where nothing says so."""
    units, slant, relief = asked.wanted.units, asked.wanted.slant, asked.wanted.relief_length
    quill, past = spindle.quill_diameter, asked.feeding.past_small_end
    if quill is not None and quill >= spindle.wheel_diameter:
        return Fouled(
            f"A quill of {figure(quill, units)} rubs the bore: its wheel is "
            f"{figure(spindle.wheel_diameter, units)}.",
            f"{SPINDLE}/quill_diameter",
            "A quill thinner than its wheel.",
        )
    if past is not None and relief is not None and past > relief * (1.0 + 1e-9):
        return Fouled(
            f"The wheel goes {figure(past, units)} past the small end, where the bore is open over "
            f"{figure(relief, units)}: it would run into the bottom.",
            "feeding/past_small_end",
            "Stop the stroke within the relief, or relieve the bore farther.",
        )
    if past is not None and spindle.reach < slant + past:
        needed = figure(slant + past, units)
        return Fouled(
            f"The quill goes in {figure(spindle.reach, units)}; through the small end it has to go "
            f"{needed}.",
            f"{SPINDLE}/reach",
            f"A quill that goes in more than {needed}.",
        )
    return None


def _lacks(
    asked: Asked,
    spindle: PlanInternalSpindle | None,
    plate: PlanSinePlate,
    path: str,
    *,
    quarter: bool,
) -> Iterator[str]:
    if asked.wanted.relief_length is None:
        yield "feature/relief_length"
    if plate.plate_body is None:
        yield f"{path}plate_body"
    if quarter and plate.angle_plate is None:
        yield f"{path}angle_plate"
    if asked.fixture is None:
        yield FIXTURE
    if spindle is None:
        yield SPINDLE
    else:
        for name in _OWN:
            if getattr(spindle, name) is None:
                yield f"{SPINDLE}/{name}"
    yield from asked.missing()
