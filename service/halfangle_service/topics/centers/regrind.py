"""Grinding a worn center again: how much comes off, and what becomes of its length."""

import math
from collections.abc import Iterator

from pydantic import Field

from halfangle_service.cautions import WHEEL_SAFETY
from halfangle_service.errors import Disagreement, Impossible
from halfangle_service.fields import (
    CountOut,
    Length,
    LengthOut,
    NonNegativeLength,
    ResultModel,
    UnitsField,
)
from halfangle_service.fields.advisories import Advisory, caution, stop
from halfangle_service.fields.choice import not_sent
from halfangle_service.fields.estimate import NotStated
from halfangle_service.fields.slopes import SlopeFields, slope_if_stated
from halfangle_service.operation import Outcome, Source, operation
from halfangle_service.trade import elementary
from halfangle_service.trade.cone import Slope
from halfangle_service.trade.tapers.feed import Worn, clean_up
from halfangle_service.trade.wording import figure, of_any_unit

_LAYER = Source(
    citation="Derived here: a layer h square to a cone takes 2 h/cos α off its diameter, h/sin α "
    "off its length; a hole of any size that bears on the cone follows by the same.",
    standing="derived",
)
_USUAL = Slope(30.0)
_MARGIN = 1e-9
#: Regrinds that are counted at most: more is no count that means anything.
_MOST_REGRINDS = 1000


class CenterRegrindRequest(SlopeFields):
    """A worn center as it stands in its socket; 60° included where no slope is stated."""

    units: UnitsField
    large_diameter: Length = Field(
        description="Diameter at the large end of the cone.", examples=[0.7]
    )
    length: Length = Field(
        description="Length of the cone to clean up, at most to the point.", examples=[0.6]
    )
    wear: NonNegativeLength | None = Field(
        None, description="Deepest groove or score below the surface, square to it."
    )
    tir: NonNegativeLength | None = Field(
        None, description="Runout of the cone in its socket, indicated square to its surface."
    )
    allowance: NonNegativeLength = Field(
        0.0, description="Further stock to be sure that all is clean, square to the surface."
    )
    point_stick_out: Length | None = Field(
        None, description="Nose of the spindle or sleeve to the point, as it is.", examples=[2.5]
    )
    smallest_point_stick_out: NonNegativeLength | None = Field(
        None, description="Least of that with which wheel and dog still pass."
    )


class CenterRegrindResult(ResultModel):
    """What comes off, and what becomes of the length; null where nothing was stated of the wear."""

    needed_normal: LengthOut | None = Field(
        description="Layer below the mean surface that cleans it up, square to the surface."
    )
    downfeed_from_first_touch: LengthOut | None = Field(
        description="Downfeed from the first spark to clean."
    )
    off_diameter: LengthOut | None = Field(description="What the cone's diameters lose.")
    point_loss: LengthOut | None = Field(
        description="How far the point comes back, and work of any hole with it."
    )
    point_stick_out_after: LengthOut | None = Field(
        description="Nose to point afterwards; null without `point_stick_out`."
    )
    regrinds_left: CountOut | None = Field(
        description="How many such regrinds the least stick-out leaves, this one counted; null "
        "where it was not stated, or nothing comes off."
    )
    not_stated: NotStated


@operation(
    "centers.regrind",
    relations=(
        "needed = TIR / 2 + wear + allowance; from first touch = TIR + wear + allowance",
        "off diameter = 2 needed / cos α, point loss = needed / sin α",
        "the work's hole moves by the point loss, whatever its size",
    ),
    sources=(_LAYER,),
    example={
        "units": "in",
        "large_diameter": 0.7,
        "length": 0.6,
        "wear": 0.003,
        "tir": 0.0008,
        "allowance": 0.0005,
        "point_stick_out": 2.5,
        "smallest_point_stick_out": 2.45,
    },
    columns=True,
)
def regrind(request: CenterRegrindRequest) -> Outcome[CenterRegrindResult]:
    """Grinding a worn center again.

    How much to take off a worn or untrue center so that all of it is clean, how much shorter it
    stands out then, how far the work moves with it, and how often that can be done.
    """
    half = (slope_if_stated(request) or _USUAL).half_angle_rad
    stands, least = request.point_stick_out, request.smallest_point_stick_out
    if stands is not None and least is not None and least >= stands:
        raise Disagreement(
            f"The center stands out {of_any_unit(stands)}, no more than the least, "
            f"{of_any_unit(least)}.",
            fields={"smallest_point_stick_out": "should be less than point_stick_out"},
        )
    not_stated = not_sent(request, "wear", "tir", "point_stick_out")
    if request.wear is None and request.tir is None:
        return Outcome(_nothing(not_stated), (WHEEL_SAFETY,))
    swing = None if request.tir is None else request.tir / 2.0
    found = clean_up(
        Worn(
            half_rad=half,
            large_diameter=request.large_diameter,
            length=request.length,
            large_swing=swing,
            small_swing=swing,
            half_angle_error_arcsec=None,
            depth=(request.wear or 0.0) + request.allowance,
        )
    )
    loss = found.needed_at_large_end / elementary.sin(half)
    if stands is not None and loss >= stands:
        raise Impossible(
            f"Cleaning up would bring the point back {of_any_unit(loss)}, and it stands out "
            f"{of_any_unit(stands)}: no center would be left.",
            fields={"point_stick_out": f"should be over {of_any_unit(loss)}"},
        )
    result = CenterRegrindResult(
        needed_normal=found.needed_at_large_end,
        downfeed_from_first_touch=found.downfeed_from_first_touch,
        off_diameter=found.off_diameter,
        point_loss=loss,
        point_stick_out_after=None if stands is None else stands - loss,
        regrinds_left=_left(stands, least, loss),
        not_stated=not_stated,
    )
    return Outcome(result, (*_advisories(request, result), WHEEL_SAFETY))


def _nothing(not_stated: list[str]) -> CenterRegrindResult:
    return CenterRegrindResult(
        needed_normal=None,
        downfeed_from_first_touch=None,
        off_diameter=None,
        point_loss=None,
        point_stick_out_after=None,
        regrinds_left=None,
        not_stated=not_stated,
    )


def _left(stands: float | None, least: float | None, loss: float) -> int | None:
    if stands is None or least is None or not loss:
        return None
    return min(_MOST_REGRINDS, math.floor((stands - least) / loss + _MARGIN))


def _advisories(request: CenterRegrindRequest, result: CenterRegrindResult) -> Iterator[Advisory]:
    after, least = result.point_stick_out_after, request.smallest_point_stick_out
    if after is not None and least is not None and result.regrinds_left == 0:
        yield stop(
            "center-too-short",
            f"Clean, the center would stand out {figure(after, request.units)}, and "
            f"{figure(least, request.units)} is the least: do not grind it again.",
        )
    if request.tir is None:
        yield caution(
            "runout-asks-for-more",
            "The runout of the cone was not stated: half of it comes off besides.",
        )
