"""Which master operation a part of a plan is: its code, its kind and its name.

A code is made of tokens that the contract holds stable, those of ways and means, and of nothing of
the job, so that two jobs meet in one operation. A code never gets another meaning.
"""

from dataclasses import dataclass

from halfangle_service.fields.glossary import option_labels
from halfangle_service.topics.jobs.plan.features import FeatureKind
from halfangle_service.topics.jobs.plan.result import PlanWayName
from halfangle_service.topics.jobs.routing.result import OperationKind
from halfangle_service.trade.inspection.means import MeansName

_UPRIGHT: PlanWayName = "quarter-turn"
_FACES = ("angled-face", "compound-face")
#: What a wheel is called, by the way that it grinds; flat in all others.
_WHEELS: dict[PlanWayName, str] = {"dressed-wheel": "flank", "wheel-side": "wheel-side"}
_DRESSED = {
    "flat-wheel": "Inspect the wheel and dress it flat",
    "flank": "Inspect the wheel, set the dresser and dress the flank",
    "wheel-side": "Inspect the wheel and dress its side",
}
_BY = {
    "flat-wheel": "with a flat wheel",
    "flank": "with a dressed flank",
    "wheel-side": "with the wheel's side",
    "internal-wheel": "with an internal wheel",
}


@dataclass(frozen=True, slots=True)
class Master:
    """A master operation: what is alike for every job that has it."""

    code: str
    kind: OperationKind
    name: str


def _coded(verb: str, *means: str) -> str:
    return "-".join(("HA", verb, *means)).upper()


def dressing(way: PlanWayName) -> Master:
    """The wheel looked at and dressed before the first piece."""
    wheel = _WHEELS.get(way, "flat-wheel")
    return Master(_coded("dress", wheel), "set-up", _DRESSED[wheel])


def holding(way: PlanWayName, kind: FeatureKind) -> Master:
    """The work, or what turns it, held and brought true."""
    work, name = "turned-work", "Hold what turns the work and bring its seat true"
    if kind in _FACES:
        work, name = "face-work", "Seat the work by its base and true its edge"
    if way != _UPRIGHT:
        return Master(_coded("hold", work), "set-up", name)
    return Master(_coded("hold", work, "upright"), "set-up", f"{name}, turned a quarter")


def setting(way: PlanWayName) -> Master:
    """The angle set, by the way's own means."""
    label = option_labels()[way]
    return Master(_coded("set", way), "set-up", f"Set the angle: {label[0].lower()}{label[1:]}")


def grinding(way: PlanWayName, kind: FeatureKind) -> Master:
    """The surface ground."""
    wheel, surface = _WHEELS.get(way, "flat-wheel"), "cone"
    if kind in _FACES:
        surface = "face"
    elif kind == "taper-socket":
        wheel, surface = "internal-wheel", "socket"
    return Master(_coded("grind", surface, wheel), "run", f"Grind a {surface} {_BY[wheel]}")


def dressing_again(way: PlanWayName) -> Master:
    """The wheel dressed again between pieces."""
    wheel = _WHEELS.get(way, "flat-wheel")
    return Master(_coded("dress-again", wheel), "run", "Dress the wheel again between pieces")


def inspecting(means: MeansName | None) -> Master:
    """The ground angle inspected by a means; None where none at hand proves it."""
    if means is None:
        name = "Inspect the angle by a means that proves it"
        return Master(_coded("inspect", "angle"), "inspect", name)
    label = option_labels()[means]
    name = f"Inspect the angle: {label[0].lower()}{label[1:]}"
    return Master(_coded("inspect", means), "inspect", name)


RUNOUT = Master(_coded("inspect", "runout"), "inspect", "Inspect the runout, the work seated again")
FINISHING = Master(_coded("finish"), "run", "Check, demagnetise and break edges")
