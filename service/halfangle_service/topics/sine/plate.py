"""What the sine operations share: reading a plate from a request, and the usual advisories."""

from collections.abc import Iterator

from halfangle_service.fields.advisories import Advisory, caution
from halfangle_service.operation import Source
from halfangle_service.trade.wording import plain

SINE_RELATION = Source(
    citation="Derived here: the centers of the rolls are the ends of the hypotenuse, the "
    "difference of their heights is the side opposite to the angle.",
    standing="derived",
)
STEEP_PRACTICE = Source(
    citation="A sine bar is not set past 45 degrees if it can be helped.",
    standing="common-practice-no-source",
)


def bulk(height: float, center_distance: float) -> Iterator[Advisory]:
    """Warn of a stack that falls below nothing, or that is longer than the plate."""
    if height < 0.0:
        yield caution(
            "stack-below-zero",
            f"The high roll's stack would be {plain(-height, 10)} lower than the low roll's: the "
            "plate's "
            "rest is higher than that. Put a stack under the low roll, or turn the work round.",
        )
    elif height > center_distance:
        yield caution(
            "stack-above-center-distance",
            f"The stack of {plain(height)} is longer than the center distance "
            f"{plain(center_distance)}; "
            "check base_step.",
        )
