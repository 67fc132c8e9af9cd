"""Which single mistake in setting explains what was measured, within its uncertainty."""

import math
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, field
from functools import cached_property, partial

from halfangle_service.fields import ARCSEC_PER_RADIAN, from_tenth_nm, to_tenth_nm
from halfangle_service.fields.glossary import option_labels
from halfangle_service.fields.supply import Supply
from halfangle_service.topics.jobs.correction.result import CorrectionSlip, SettingOf
from halfangle_service.topics.jobs.correction.settings import Stacks
from halfangle_service.trade.correction.causes import Evidence
from halfangle_service.trade.correction.slips import (
    CAUSE_OF,
    BlockSlip,
    WholeSlipName,
    WrongHinges,
    block_slips,
    wrong_angles,
    wrong_heights,
)
from halfangle_service.trade.sine.compound import HingedPlate
from halfangle_service.trade.sine.correction import Roll
from halfangle_service.trade.sine.geometry import height_for_angle
from halfangle_service.trade.stacks.supply import Piece
from halfangle_service.trade.tables.correction.causes import CauseName
from halfangle_service.trade.uncertainty import Budget
from halfangle_service.trade.uncertainty.coverage import half_width
from halfangle_service.trade.units import Units
from halfangle_service.trade.wheel.dresser import dresser_angle
from halfangle_service.trade.wording import block

#: So many mistakes are listed; of more the count is told.
MOST_LISTED = 8
_ROLLS: tuple[Roll, Roll] = ("high-roll", "low-roll")
_HINGES: tuple[SettingOf, SettingOf] = ("base", "upper")
#: Errors in arc-seconds that a mistake makes: of the angle, or in both views.
Errors = tuple[float, ...]


@dataclass(frozen=True)
class Slips:
    """The mistakes that explain it, the most plausible first; None where nothing can be said.

    `evidence` is what the reading says of each cause that is a mistake in the whole setting.
    """

    listed: list[CorrectionSlip] | None = None
    count: int | None = None
    evidence: dict[CauseName, Evidence] = field(default_factory=dict)

    @property
    def of_the_whole(self) -> bool:
        """Whether a mistake in the whole setting explains it."""
        return "for" in self.evidence.values()


@dataclass(frozen=True, slots=True)
class Explained:
    """What was measured, as errors in arc-seconds, each with its expanded uncertainty.

    `rights` are the heights of the stacks that set what is wanted.
    """

    errors: Errors
    within: Errors
    units: Units
    rights: tuple[float, ...]

    def by(self, made: Errors) -> bool:
        """True where errors that a mistake makes are those measured."""
        pairs = zip(self.errors, made, self.within, strict=True)
        return all(abs(error - by) <= limit for error, by, limit in pairs)

    def missed(self, made: Errors) -> float:
        """How far they are from those measured."""
        return max(abs(error - by) for error, by in zip(self.errors, made, strict=True))

    def whole(self, name: WholeSlipName, made: Errors) -> CorrectionSlip:
        """A mistake in the whole setting."""
        return self._written(name, CAUSE_OF[name], made, option_labels()[name])

    def of_block(
        self, slip: BlockSlip, made: Errors, setting: SettingOf, roll: Roll | None
    ) -> CorrectionSlip:
        """A mistake with a block."""
        meant, wrung = (
            None if piece is None else from_tenth_nm(piece.size, self.units)
            for piece in (slip.meant, slip.wrung)
        )
        written = self._written(slip.name, "wrong-block", made, self._words(slip, meant, wrung))
        told = {"setting": setting, "roll": roll, "meant": meant, "wrung": wrung}
        return written.model_copy(update={**told, "likeness": slip.likeness})

    def _words(self, slip: BlockSlip, meant: float | None, wrung: float | None) -> str:
        first, second = (None if x is None else block(x, self.units) for x in (meant, wrung))
        unit = self.units
        if slip.name == "wrong-block":
            return f"{second} {unit} wrung for {first} {unit}"
        if slip.name == "blocks-exchanged":
            return f"{first} {unit} and {second} {unit} each in the other's stack"
        if slip.name == "block-left-out":
            return f"{first} {unit} left out"
        return f"{second} {unit} too many"

    def _written(self, name: str, cause: CauseName, made: Errors, words: str) -> CorrectionSlip:
        return CorrectionSlip.model_validate(
            {
                "slip": name,
                "cause": cause,
                "words": words,
                **dict.fromkeys(("setting", "roll", "meant", "wrung", "likeness")),
                "slip_errors_arcsec": list(made),
                "unexplained_arcsec": [
                    error - by for error, by in zip(self.errors, made, strict=True)
                ],
                "right_heights": list(self.rights),
            }
        )


def known_within(budget: Budget) -> float | None:
    """± how far what was measured may be off; None where that is not stated, or only in part."""
    return half_width(budget) if budget.contributions and not budget.not_stated else None


# One angle ----------------------------------------------------------------------------------------
@dataclass(frozen=True)
class OneAngle:
    """One angle wanted, in radians, and how it was set.

    `stacks` are None of a scale. `complement`: what is set has 90° less it, as a dresser from the
    wheel's side, or a plate with the work turned a quarter.
    """

    wanted_rad: float
    turned: bool
    setting: SettingOf
    stacks: Stacks | None
    complement: bool
    units: Units

    @property
    def set_rad(self) -> float:
        """What is set for it."""
        return dresser_angle(self.wanted_rad, from_side=self.complement)

    @property
    def rights(self) -> tuple[float, ...]:
        """The height that sets it; none of a scale."""
        if self.stacks is None:
            return ()
        return (height_for_angle(self.stacks.center_distance, self.set_rad, self.stacks.offset),)

    @cached_property
    def _lift_now(self) -> float:
        """How much higher the high roll stands by the stacks as named; 0 of a scale."""
        stacks = self.stacks
        return 0.0 if stacks is None else stacks.height_now(self.set_rad) - stacks.offset

    def made_by(self, set_rad: float) -> Errors:
        """The error of the angle with the setting at so much."""
        made = dresser_angle(set_rad, from_side=self.complement)
        return ((made - self.wanted_rad) * ARCSEC_PER_RADIAN,)

    def wholes(self) -> Iterator[tuple[WholeSlipName, Errors]]:
        """Mistakes in the whole setting, each with the error that it makes."""
        for name, made in wrong_angles(self.wanted_rad, turned=self.turned):
            if 0.0 < made < math.pi / 2.0:
                yield name, ((made - self.wanted_rad) * ARCSEC_PER_RADIAN,)
        if self.stacks is not None:
            centers, offset = self.stacks.center_distance, self.stacks.offset
            for name, set_rad in wrong_heights(centers, self.set_rad, offset):
                yield name, self.made_by(set_rad)

    def on_stacks(self, changes: Sequence[int]) -> Errors | None:
        """The error with so much too much in each stack; None where nothing stands on them."""
        stacks = self.stacks
        if stacks is None:
            return None
        lift = changes[0] - (changes[1] if len(changes) > 1 else 0)
        share = (self._lift_now + from_tenth_nm(lift, self.units)) / stacks.center_distance
        return self.made_by(math.asin(share)) if 0.0 <= share < 1.0 else None


def slips_of_angle(
    angle: OneAngle, error_arcsec: float, within: float | None, supply: Supply | None
) -> Slips:
    """The mistakes that explain the error of one angle, where it is more than its uncertainty."""
    if within is None:
        return Slips()
    explained = Explained((error_arcsec,), (within,), angle.units, angle.rights)
    stacks = angle.stacks
    named: tuple[list[int], ...] = ()
    if stacks is not None and stacks.high is not None:
        named = tuple(stacks.tenths(each) for each in (stacks.high, stacks.low) if each)

    def stands(place: int) -> tuple[SettingOf, Roll | None]:
        return angle.setting, _ROLLS[place]

    return _slips(explained, angle.wholes(), named, supply, angle.on_stacks, stands)


# A compound face ----------------------------------------------------------------------------------
@dataclass(frozen=True, slots=True)
class BothHinges:
    """A compound face on its plates, and the heights of the stacks as named, in 0.1 nm."""

    wrong: WrongHinges
    views: tuple[float, float]
    heights: tuple[int, int]
    units: Units

    def made_by(self, views: tuple[float, float]) -> Errors:
        """The error in each view."""
        pairs = zip(views, self.views, strict=True)
        return tuple((made - wanted) * ARCSEC_PER_RADIAN for made, wanted in pairs)

    def wholes(self) -> Iterator[tuple[WholeSlipName, Errors]]:
        """Mistakes in the whole setting, each with the errors that it makes."""
        for name, views in self.wrong.mistakes():
            yield name, self.made_by(views)

    def on_stacks(self, changes: Sequence[int]) -> Errors | None:
        """The errors with so much too much in each stack; None where a plate stands on none."""
        angles = []
        rows = zip(self.wrong.plates, self.heights, changes, self.wrong.hinges, strict=True)
        for plate, height, change, like in rows:
            found = self._angle(plate, height + change, like)
            if found is None:
                return None
            angles.append(found)
        return self.made_by(self.wrong.views((angles[0], angles[1])))

    def _angle(self, plate: HingedPlate, height: int, like: float) -> float | None:
        share = (from_tenth_nm(height, self.units) - plate.step) / plate.center_distance
        return math.copysign(math.asin(share), like) if 0.0 <= share < 1.0 else None


def slips_of_surface(
    both: BothHinges,
    measured: tuple[float, float],
    within: float | None,
    named: Sequence[Sequence[int]],
    supply: Supply | None,
) -> Slips:
    """The mistakes that explain both views of a compound face."""
    if within is None:
        return Slips()
    rights = tuple(
        plate.height(hinge)
        for plate, hinge in zip(both.wrong.plates, both.wrong.hinges, strict=True)
    )
    explained = Explained(both.made_by(measured), (within, within), both.units, rights)

    def stands(place: int) -> tuple[SettingOf, Roll | None]:
        return _HINGES[place], None

    return _slips(explained, both.wholes(), named, supply, both.on_stacks, stands)


# Both ---------------------------------------------------------------------------------------------
def _slips(
    explained: Explained,
    wholes: Iterator[tuple[WholeSlipName, Errors]],
    named: Sequence[Sequence[int]],
    supply: Supply | None,
    on_stacks: Callable[[Sequence[int]], Errors | None],
    stands: Callable[[int], tuple[SettingOf, Roll | None]],
) -> Slips:
    """The mistakes that explain it: none where it is no more than its uncertainty."""
    nothing = tuple(0.0 for _ in explained.errors)
    evidence: dict[CauseName, Evidence] = {}
    found: list[tuple[tuple[float, ...], Callable[[], CorrectionSlip]]] = []
    for name, made in wholes:
        explains = explained.by(made) and not explained.by(nothing)
        if explains:
            missed = explained.missed(made)
            found.append(((-1.0, 0.0, missed), partial(explained.whole, name, made)))
        if explains or CAUSE_OF[name] not in evidence:
            evidence[CAUSE_OF[name]] = "for" if explains else "against"
    if supply is not None and not explained.by(nothing) and all(named) and named:
        pieces, spare = _taken(supply, named)
        unit = to_tenth_nm(1.0, explained.units)
        for slip in block_slips(pieces, spare, unit):
            errors = on_stacks(slip.changes)
            if errors is not None and explained.by(errors):
                row = partial(explained.of_block, slip, errors, *stands(slip.place))
                found.append(((*slip.order, explained.missed(errors)), row))
    found.sort(key=lambda one: one[0])
    return Slips([row() for _, row in found[:MOST_LISTED]], len(found), evidence)


def _taken(supply: Supply, named: Sequence[Sequence[int]]) -> tuple[list[list[Piece]], list[Piece]]:
    """The blocks of the stacks named, and those left in the box.

    A stack whose blocks are not all in the box is refused where its change is worked out.
    """
    left = list(supply.box.pieces)
    stacks: list[list[Piece]] = []
    for sizes in named:
        stack = []
        for size in sizes:
            piece = next((each for each in left if each.size == size), None)
            if piece is not None:
                left.remove(piece)
                stack.append(piece)
        stacks.append(stack)
    return stacks, left
