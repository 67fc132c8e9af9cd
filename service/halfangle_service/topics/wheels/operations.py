"""The wheels topic's operations, one module a subject."""

from halfangle_service.topics.wheels import (
    operations_dressing,
    operations_flank,
    operations_speed,
)

OPERATIONS = (
    operations_flank.OPERATION,
    operations_dressing.OPERATION,
    operations_speed.OPERATION,
)
COLLECTIONS = (operations_dressing.COLLECTION,)
