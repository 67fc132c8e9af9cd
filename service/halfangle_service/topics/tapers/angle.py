"""A taper's angle as a drawing writes it, read and given in every form."""

import math
from typing import Annotated

from pydantic import Field

from halfangle_service.fields import Angle, NumberOut, RequestModel, Unit, angle_from_radians
from halfangle_service.fields.slopes import SlopeForms, slope_forms
from halfangle_service.operation import Outcome, operation
from halfangle_service.topics.tapers.sources import ISO_1119
from halfangle_service.trade.cone import rate_from_half_angle
from halfangle_service.trade.tapers.notation import Meaning, read_notation


class TaperAngleRequest(RequestModel):
    """The angle of a taper as a drawing writes it."""

    text: Annotated[str, Field(min_length=1, max_length=60)] = Field(
        description="`60° included`, `8°17'50\" half`, `30 complement`, `1:20`, `7/24`, `5 %`, "
        "`0.6 in/ft`, `3/4 per foot`, `0.05 per inch`, `D 20 d 18 L 40`.",
        examples=["3/4 per foot"],
    )
    bare_angle_is: Meaning | None = Field(
        None,
        description="Which angle it is where the text does not say; `complement` is from the face.",
    )


class TaperAngleResult(SlopeForms):
    """The same angle in every form."""

    read_as: str = Field(description="How the text was read.")
    half_angle: Angle = Field(description="Half angle.")
    complement: Angle = Field(description="Angle between the surface and the face: 90° − half.")
    half_angle_radians: NumberOut = Field(description="Half angle in radians.")
    taper_percent: Annotated[float, Unit("percent")] = Field(
        description="Rate of taper in percent."
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
    return Outcome(
        TaperAngleResult(
            read_as=reading.read_as,
            half_angle=angle_from_radians(half),
            complement=angle_from_radians(math.pi / 2.0 - half),
            half_angle_radians=half,
            taper_percent=100.0 * rate_from_half_angle(half),
            **slope_forms(half),
        )
    )
