"""What feed on a cone and its clean-up share: an angle error as it stands, passes and spark-out."""

from collections.abc import Iterator
from typing import Annotated

from pydantic import Field

from halfangle_service.fields import FINITE, Unit, Units, to_mm
from halfangle_service.fields.advisories import Advisory, caution
from halfangle_service.trade.wording import figure

#: Signed, and far below any angle: a slip of the unit is refused.
SmallError = Annotated[float, FINITE, Field(ge=-36_000, le=36_000), Unit("arcsecond")]
HalfAngleError = Annotated[
    SmallError | None,
    Field(
        description="Half angle of the part as it stands less the right one: positive where it is "
        "too blunt."
    ),
]
#: Past these a slip of unit or decimal point is likelier than the job: stock and downfeed a pass
#: in mm, and cutting passes. Common practice, no source.
_DEEPEST_STOCK_MM = 2.5
_HEAVIEST_PASS_MM = 0.1
_MOST_PASSES = 200


def feed_cautions(
    units: Units, stock: float | None, per_pass: float | None, passes: int | None
) -> Iterator[Advisory]:
    """What to mind of a stock and a downfeed a pass, both in `units`, and of the cutting passes."""
    if stock is not None and to_mm(stock, units) > _DEEPEST_STOCK_MM:
        yield caution(
            "deep-stock",
            f"{figure(stock, units)} square to the surface is more than is left to grind off a "
            "cone (common practice, no source): is the unit the one meant?",
        )
    if per_pass is not None and to_mm(per_pass, units) > _HEAVIEST_PASS_MM:
        yield caution(
            "heavy-pass",
            f"{figure(per_pass, units)} a pass is more than a wheel takes off a cone in the "
            "toolroom (common practice, no source): is the unit the one meant?",
        )
    if passes is not None and passes > _MOST_PASSES:
        yield caution(
            "many-passes",
            f"{passes} passes are more than anybody grinds (common practice, no source): are stock "
            "and downfeed a pass stated in their unit, with their decimal points?",
        )
