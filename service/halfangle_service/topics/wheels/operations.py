"""The wheels topic's operations, one module a subject."""

from halfangle_service.topics.wheels import operations_flank

OPERATIONS = (operations_flank.OPERATION,)
