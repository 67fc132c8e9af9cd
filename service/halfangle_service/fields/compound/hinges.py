"""The settings of both plates of a compound sine plate, and how the work lies on it."""

import math
from dataclasses import dataclass
from typing import Literal

from pydantic import Field

from halfangle_service.errors import Unreachable
from halfangle_service.fields import Angle, LengthOut, ResultModel, Units, angle_from_radians
from halfangle_service.fields.plates import ArcsecPerStep, arcsec_per_step, to_set
from halfangle_service.trade.sine.compound import BaseAxis, HingedPlate, Side, raised_side
from halfangle_service.trade.sine.compound_layings import Laid, Laying, SideUp, WorkSide
from halfangle_service.trade.wording import figure, plain

Which = Literal["base", "upper"]
WHICH: tuple[Which, Which] = ("base", "upper")
_TURNED: dict[int, str] = {
    0: "not turned in plan",
    1: "turned a quarter in plan, what was at the right to the back",
    2: "turned half round in plan",
    3: "turned a quarter in plan, what was at the right to the front",
}


class SineHingeSetting(ResultModel):
    """The setting of one plate of a compound plate."""

    hinge_axis: BaseAxis = Field(description="Axis along which its hinge lies.")
    angle: Angle = Field(
        description="Hinge angle, signed: positive raises the right (hinge along Y) or the back "
        "(hinge along X)."
    )
    raised_side: Side = Field(description="Side whose roll stands on the stack.")
    raised_work_side: WorkSide = Field(
        description="Side of the work, as drawn, that lies at the raised side."
    )
    height: LengthOut = Field(description="Stack under the raised roll.")
    height_to_set: LengthOut = Field(description="The same, rounded to the resolution.")
    arcsec_per_step: ArcsecPerStep
    action: str = Field(description="What to do, in plain words.")


class SineLaying(ResultModel):
    """How the work lies on the upper plate, from how it was drawn."""

    side_up: SideUp = Field(
        description="Side of the work, as drawn, that faces up: `top` where it is not tipped."
    )
    plan_turn: Angle = Field(
        description="How far it is then turned in plan, by quarter turns, from +X toward +Y."
    )
    action: str = Field(description="What to do, in plain words.")


class SineTurnedSetting(ResultModel):
    """The whole setting for the same surface with the work laid in another way."""

    laying: SineLaying = Field(description="How the work lies.")
    base: SineHingeSetting = Field(description="The base plate.")
    upper: SineHingeSetting = Field(description="The upper plate, riding on the base plate.")


@dataclass(frozen=True, slots=True)
class CompoundPlate:
    """Base and upper plate, the units of their lengths, and the step to which a stack is built."""

    plates: tuple[HingedPlate, HingedPlate]
    units: Units
    resolution: float | None

    def stands(self, way: Laid) -> bool:
        """True where no plate would have to stand lower than without a stack."""
        heights = (
            plate.height(angle) for plate, angle in zip(self.plates, way.hinges, strict=True)
        )
        return all(height >= 0.0 for height in heights)

    def require_standing(self, way: Laid) -> None:
        """Refuse hinge angles below the one at which a plate stands without a stack."""
        for which, plate, angle_rad in zip(WHICH, self.plates, way.hinges, strict=True):
            height = plate.height(angle_rad)
            if height < 0.0:
                rest = math.degrees(plate.angle(0.0, 1.0, f"{which}_step"))
                raise Unreachable(
                    f"Without a stack the {which} plate stands at {plain(rest)}° by its step of "
                    f"{figure(plate.step, self.units)}, and {plain(math.degrees(abs(angle_rad)))}° "
                    "is asked of it: no stack lowers it.",
                    fields={f"{which}_step": "should let the plate stand as low as asked"},
                )

    def settings(self, way: Laid) -> tuple[SineHingeSetting, SineHingeSetting]:
        """Setting of both hinges, the stack under the side to raise."""
        base, upper = (self._setting(which, way) for which in WHICH)
        return base, upper

    def _setting(self, which: Which, way: Laid) -> SineHingeSetting:
        place = WHICH.index(which)
        plate, angle_rad = self.plates[place], way.hinges[place]
        height = plate.height(angle_rad)
        side = raised_side(plate.hinge_axis, angle_rad)
        return SineHingeSetting(
            hinge_axis=plate.hinge_axis,
            angle=angle_from_radians(angle_rad),
            raised_side=side,
            raised_work_side=way.laying.side_at(side),
            height=height,
            height_to_set=to_set(height, self.units, self.resolution),
            arcsec_per_step=arcsec_per_step(plate.center_distance, angle_rad, self.units),
            action=_action(which, side, height, self.units),
        )

    def turned(self, way: Laid) -> SineTurnedSetting:
        """The whole setting of one way to lay the work."""
        base, upper = self.settings(way)
        return SineTurnedSetting(laying=laying_of(way.laying), base=base, upper=upper)


def _action(which: Which, side: Side, height: float, units: Units) -> str:
    if side != "neither":
        return f"Raise the {side} roll of the {which} plate on a stack of {figure(height, units)}."
    if height > 0.0:
        return f"Put {figure(height, units)} under the {which} plate's roll: it stands at zero."
    return f"Leave the {which} plate at zero."


def laying_of(laying: Laying) -> SineLaying:
    """Write how the work lies."""
    return SineLaying(
        side_up=laying.side_up,
        plan_turn=Angle.of(90.0 * laying.turns),
        action=f"Lay the work {in_words(laying)}.",
    )


def in_words(laying: Laying) -> str:
    """How the work lies, as a sentence has it."""
    turned = _TURNED[laying.turns]
    if laying.side_up == "top":
        return "as drawn" if laying.turns == 0 else f"as drawn, {turned}"
    tipped = f"tipped on its side, its {laying.side_up} side up"
    return tipped if laying.turns == 0 else f"{tipped}, then {turned}"


def in_short(turned: SineTurnedSetting, laying: Laying, units: Units) -> str:
    """A whole setting as a sentence has it."""
    plates = (
        f"the {which} plate {plain(abs(setting.angle.degrees), 7)}° on "
        f"{figure(setting.height, units)} under its {setting.raised_side} roll"
        if setting.raised_side != "neither"
        else f"the {which} plate at zero"
        for which, setting in zip(WHICH, (turned.base, turned.upper), strict=True)
    )
    return f"With the work {in_words(laying)}: {' and '.join(plates)}."
