"""What the shop states of errors: of a set-up on a plate, and of what holds the work."""

from typing import Annotated

from pydantic import Field

from halfangle_service.fields import NonNegativeArcsec, NonNegativeLength, RequestModel
from halfangle_service.fields.set_up_errors import SetUpErrorFields

WheelFaceError = Annotated[
    NonNegativeArcsec | None,
    Field(
        description="Largest slope ± of the wheel's face along the slant, from breakdown "
        "since dressing.",
        examples=[20.0],
    ),
]


class PlateErrorFields(SetUpErrorFields):
    """Errors of a set-up on a plate under a flat wheel, each as ± a limit.

    A limit that is not sent is not stated: nothing counts for it, and the plan names it. 0 says
    that there is no such error. The blocks' own errors come with `grade` or `box`, and the stack's
    deviation from the height is known.
    """

    wheel_face_error_limit_arcsec: WheelFaceError = None


AdapterTir = Annotated[
    NonNegativeLength | None,
    Field(
        description="TIR of the adapter or collet at the cone, in `units`.",
        examples=[0.0001],
    ),
]


class RunoutContributions(RequestModel):
    """What each part of the holding adds to the runout of the cone, as full indicator movement.

    Each is the TIR that it causes where the cone is ground, all else being true. One left out is
    not guessed: the plan says that it is missing from the budget.
    """

    adapter_tir: AdapterTir = None
    fixture_tir: NonNegativeLength | None = Field(
        None,
        description="TIR of the spin fixture's own axis at the cone, in `units`.",
        examples=[0.00005],
    )
    indicating_tir: NonNegativeLength | None = Field(
        None,
        description="TIR left after indicating true: resolution and reading, in `units`.",
        examples=[0.00005],
    )
