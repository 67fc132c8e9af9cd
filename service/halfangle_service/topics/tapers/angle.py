"""A taper's angle as a drawing writes it, read and given in every form."""

import math
from collections.abc import Iterator
from typing import Annotated

from pydantic import Field

from halfangle_service.fields import (
    Angle,
    ArcsecOut,
    NumberOut,
    RequestModel,
    Unit,
    angle_from_radians,
)
from halfangle_service.fields.advisories import Advisory, decimal_note, designation_note
from halfangle_service.fields.slopes import SlopeForms, slope_forms
from halfangle_service.operation import Outcome, operation
from halfangle_service.topics.tapers.sources import ISO_1119
from halfangle_service.trade.cone import rate_from_half_angle
from halfangle_service.trade.tapers.notation.reading import Meaning, Reading, read_notation


class TaperAngleRequest(RequestModel):
    """The angle of a taper as a drawing writes it."""

    text: Annotated[str, Field(min_length=1, max_length=60)] = Field(
        description="`60° included`, `8°17'50\" half`, `30 complement`, `45°±5' included`, `1:20`, "
        "`1:20 per side`, `C=1:20`, `7/24`, `5 %`, `0.6 in/ft`, `3/4 per foot`, `0.602 TPF`, "
        "`10 mm/m`, `0.05 per inch`, `D 20 d 18 L 40`, `Ø20-Ø18 x 40`, or a standard taper: `MT3`, "
        "`7/24 No. 40`. "
        "What has two meanings is refused with both.",
        examples=["3/4 per foot"],
    )
    bare_angle_is: Meaning | None = Field(
        None,
        description="Which angle it is where the text does not say; `complement` is from the face.",
    )


class TaperAngleResult(SlopeForms):
    """The same angle in every form."""

    read_as: str = Field(description="How the text was read.")
    designations: list[str] = Field(
        description="Standard tapers that the text names; empty where it names none."
    )
    half_angle: Angle = Field(description="Half angle.")
    complement: Angle = Field(description="Angle between the surface and the face: 90° − half.")
    half_angle_radians: NumberOut = Field(description="Half angle in radians.")
    taper_percent: Annotated[float, Unit("percent")] = Field(
        description="Rate of taper in percent."
    )
    tolerance_arcsec: ArcsecOut | None = Field(
        description="Plus or minus written beside the angle, on the angle as it is written; null "
        "where none is."
    )


@operation(
    "tapers.angle",
    relations=("C = 2 tan α", "1:x with x = 1 / C", "taper per foot = 12 C"),
    sources=(ISO_1119,),
    example={"text": "3/4 per foot"},
)
def angle(request: TaperAngleRequest) -> Outcome[TaperAngleResult]:
    """A taper's angle in every notation.

    Reads an angle as a drawing writes it and gives it in every form.
    """
    reading = read_notation(request.text, request.bare_angle_is)
    half = reading.half_angle_rad
    result = TaperAngleResult(
        read_as=reading.read_as,
        designations=[row.designation for row in reading.rows],
        half_angle=angle_from_radians(half),
        complement=angle_from_radians(math.pi / 2.0 - half),
        half_angle_radians=half,
        taper_percent=100.0 * rate_from_half_angle(half),
        tolerance_arcsec=reading.tolerance_arcsec,
        **slope_forms(half),
    )
    return Outcome(result, tuple(_advisories(request.text, reading)), reading.rows)


def _advisories(text: str, reading: Reading) -> Iterator[Advisory]:
    decimal = reading.decimal_degrees
    if decimal is not None and (found := decimal_note("text", decimal)):
        yield found
    if reading.rows and text not in {row.designation for row in reading.rows}:
        yield designation_note("text", text, reading.rows)
