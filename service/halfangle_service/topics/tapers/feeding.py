"""What feed on a cone and its clean-up share: an angle error as it stands, and spark-out."""

from typing import Annotated

from pydantic import Field

from halfangle_service.fields import FINITE, Count, Unit

#: Signed, and far below any angle: a slip of the unit is refused.
SmallError = Annotated[float, FINITE, Field(ge=-36_000, le=36_000), Unit("arcsecond")]
HalfAngleError = Annotated[
    SmallError | None,
    Field(
        description="Half angle of the part as it stands less the right one: positive where it is "
        "too blunt."
    ),
]
SparkOutPasses = Annotated[
    Annotated[int, Count(ge=0, le=100)], Field(description="Passes without feed at the end.")
]
