"""How far each part of a sine set-up may be off, as every request that states it does."""

from collections.abc import Iterable
from typing import Annotated

from pydantic import Field

from halfangle_service.fields.base import ERRORS, RequestModel
from halfangle_service.fields.numbers import FINITE, Celsius, Length, NonNegativeLength, Unit
from halfangle_service.trade.sine.angle_error import LARGEST_YAW_ARCSEC
from halfangle_service.trade.sine.angle_model import SetUp, Term, acts
from halfangle_service.trade.tables.materials.expansion import REFERENCE_CELSIUS, MaterialName

Limit = NonNegativeLength | None
Kelvins = Annotated[float, FINITE, Field(ge=0, le=50), Unit("celsius")] | None

#: Terms stated here, which have the names of these fields; those of the stack and the wheel come
#: with the request.
SET_UP_TERMS: tuple[Term, ...] = (
    "center_distance_error_limit",
    "roll_difference",
    "roll_parallelism",
    "face_parallelism",
    "face_flatness",
    "table_flatness",
    "particle",
    "temperature_error_limit_celsius",
    "temperature_difference_celsius",
    "axis_yaw_error_limit_arcsec",
    "axis_pitch_error_limit_arcsec",
)


class SetUpErrorFields(RequestModel):
    """How far each part of a sine set-up may be off, each as ± a limit.

    A limit that is not sent is not stated: nothing counts for it, and the answer names it. 0 says
    that there is no such error.
    """

    group = ERRORS

    center_distance_error_limit: Limit = Field(
        None, description="Largest error ± of the center distance, in `units`.", examples=[0.0001]
    )
    roll_difference: Limit = Field(
        None, description="Limit ± of the difference of the rolls' diameters, in `units`."
    )
    roll_parallelism: Limit = Field(
        None,
        description="Limit ± by which the rolls are out of parallel in height from end to end, in "
        "`units`; a stack under one end rather than the middle sees half of it.",
    )
    face_parallelism: Limit = Field(
        None,
        description="Limit ± by which the plate's face is out of parallel over `face_length`, in "
        "`units`.",
    )
    face_parallelism_on_rolls: bool = Field(
        False,
        description="True where the face's parallelism was measured with the plate resting on its "
        "rolls: it then holds the rolls' difference already, and only the rest of it counts.",
    )
    face_flatness: Limit = Field(
        None, description="Flatness of the plate's face over `face_length`, in `units`."
    )
    face_length: Length | None = Field(
        None,
        description="Length over which parallelism and flatness act: the plate's, or the work's "
        "seat. Absent: the center distance.",
    )
    table_flatness: Limit = Field(
        None,
        description="Limit ± of the difference in height of the surface plate under the two rolls, "
        "in `units`.",
    )
    particle: Limit = Field(
        None, description="Size of a particle under either roll or its stack, in `units`."
    )
    temperature_celsius: Celsius | None = Field(
        None,
        description="Temperature of plate and blocks alike; 20 °C is the reference (ISO 1). Not "
        "stated where absent: unlike materials then turn the angle by an unknown amount, and even "
        "of like ones the coefficients are known only to so much.",
        examples=[22.0],
    )
    temperature_error_limit_celsius: Kelvins = Field(
        None, description="Largest error ± of the temperature of plate and blocks, in kelvins."
    )
    temperature_difference_celsius: Kelvins = Field(
        None, description="Limit ± of the difference of the blocks' temperature to the plate's."
    )
    plate_material: MaterialName = Field("steel", description="Material of the plate.")
    axis_yaw_error_limit_arcsec: (
        Annotated[float, FINITE, Field(ge=0, le=LARGEST_YAW_ARCSEC), Unit("arcsecond")] | None
    ) = Field(
        None,
        description="Largest error ± of the yaw of the work's axis out of the plane in which the "
        "plate tilts; at most 18000, which is 5°. It acts by its square, always toward a smaller "
        "angle.",
        examples=[900.0],
    )
    axis_pitch_error_limit_arcsec: (
        Annotated[float, FINITE, Field(ge=0, le=324_000), Unit("arcsecond")] | None
    ) = Field(
        None,
        description="Largest error ± of the pitch of the work's axis to the plate's face, in the "
        "plane in which the plate tilts; it acts one to one.",
    )


def temperature_offset(request: SetUpErrorFields) -> float | None:
    """Kelvins from 20 °C; None where no temperature was stated."""
    celsius = request.temperature_celsius
    return None if celsius is None else celsius - REFERENCE_CELSIUS


def stated_terms(request: SetUpErrorFields, terms: Iterable[Term]) -> dict[Term, float]:
    """Those of these terms that a request states."""
    sent = {term: getattr(request, term) for term in terms}
    return {term: value for term, value in sent.items() if value is not None}


def not_stated_of(
    request: SetUpErrorFields, terms: Iterable[Term], set_up: SetUp, own: Iterable[str] = ()
) -> tuple[str, ...]:
    """What a request leaves out that would count if it were stated: terms, its `own` fields.

    The temperature always would: where blocks and plate are of one material it does not turn the
    angle, but their coefficients of expansion are not known exactly, and then count.
    """
    acting = (term for term in terms if acts(set_up, term))
    asked = (*acting, *own, "temperature_celsius")
    return tuple(name for name in asked if getattr(request, name) is None)
