"""What the sine operations share: reading a plate from a request, and the usual advisories."""

from collections.abc import Iterator

from halfangle_service.errors import Disagreement
from halfangle_service.fields import Units, bench_step
from halfangle_service.operation import Advisory, Source, caution
from halfangle_service.topics.sine.models import SinePlateFields
from halfangle_service.trade.sine.geometry import arcsec_per_height, round_to_step, stack_offset
from halfangle_service.trade.wording import plain

#: Past this angle one step of height turns the plate 1.4 times as far as it does near zero.
STEEP_DEGREES = 45.0

SINE_RELATION = Source(
    citation="Derived here: the centers of the rolls are the ends of the hypotenuse, the "
    "difference of their heights is the side opposite to the angle.",
    standing="derived",
)
STEEP_PRACTICE = Source(
    citation="A sine bar is not set past 45 degrees if it can be helped.",
    standing="common-practice-no-source",
)


def offset_of(plate: SinePlateFields) -> float:
    """Difference of the stacks at zero; refuses one roll's diameter without the other's."""
    high, low = plate.high_roll_diameter, plate.low_roll_diameter
    if (high is None) != (low is None):
        missing = "high_roll_diameter" if high is None else "low_roll_diameter"
        raise Disagreement(
            "One roll's diameter alone says nothing of their difference: send both, or neither "
            "where the rolls are equal.",
            fields={missing: "should be sent with the other roll's diameter"},
        )
    return stack_offset(plate.base_step, high or 0.0, low or 0.0)


def to_set(height: float, units: Units, resolution: float | None = None) -> float:
    """Round a height to what can be built: the resolution, or the bench step."""
    return round_to_step(height, bench_step(units) if resolution is None else resolution)


def arcsec_per_step(center_distance: float, angle_rad: float, units: Units) -> float:
    """Change of angle in arc-seconds for one bench step of height."""
    return arcsec_per_height(center_distance, angle_rad) * bench_step(units)


def steepness(angle_degrees: float, per_step_arcsec: float, steep: float) -> Iterator[Advisory]:
    """Warn where an angle is steep, and say what one bench step does there."""
    if abs(angle_degrees) > steep:
        yield caution(
            "steep-angle",
            f"Past {plain(steep)}° a sine setting loses its edge: here one bench step of height "
            f"turns the plate {per_step_arcsec:.1f}″. Where the work can be turned by 90°, set the "
            f"complement, {90.0 - abs(angle_degrees):.4f}°.",
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
