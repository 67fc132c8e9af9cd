"""The blocks topic's operations and tables."""

from halfangle_service.topics.blocks.operations_stack import STACK
from halfangle_service.topics.blocks.operations_tables import COLLECTIONS

__all__ = ["COLLECTIONS", "OPERATIONS"]

OPERATIONS = (STACK,)
