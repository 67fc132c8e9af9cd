"""The wheels topic's operations, one module a subject."""

from halfangle_service.topics.wheels import (
    operations_choose,
    operations_dressing,
    operations_errors,
    operations_flank,
    operations_setup,
    operations_speed,
)

OPERATIONS = (
    operations_flank.OPERATION,
    operations_dressing.OPERATION,
    operations_speed.OPERATION,
    operations_errors.OPERATION,
    operations_setup.OPERATION,
    operations_choose.OPERATION,
)
