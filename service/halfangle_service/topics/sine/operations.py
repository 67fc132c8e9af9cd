"""The sine topic's operations, in the order of the bench."""

from halfangle_service.topics.sine.operations_compound import COMPOUND, COMPOUND_ANGLES
from halfangle_service.topics.sine.operations_setting import ANGLE, SETTING, TABLE
from halfangle_service.topics.sine.operations_stacks import CORRECTION, LOW_STACK
from halfangle_service.topics.sine.operations_taper import TAPER_ANGLE, TAPER_SETTING
from halfangle_service.topics.sine.operations_uncertainty import REQUIREMENTS, UNCERTAINTY

OPERATIONS = (
    SETTING,
    ANGLE,
    TABLE,
    LOW_STACK,
    CORRECTION,
    TAPER_SETTING,
    TAPER_ANGLE,
    COMPOUND,
    COMPOUND_ANGLES,
    UNCERTAINTY,
    REQUIREMENTS,
)
