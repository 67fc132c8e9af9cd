"""The blocks topic's operations and tables."""

from halfangle_service.topics.blocks.operations_angle import ANGLE_STACK
from halfangle_service.topics.blocks.operations_budget import BUDGET
from halfangle_service.topics.blocks.operations_check import CHECK
from halfangle_service.topics.blocks.operations_day import DAY
from halfangle_service.topics.blocks.operations_stack import STACK
from halfangle_service.topics.blocks.operations_stacks import STACKS

__all__ = ["OPERATIONS"]

OPERATIONS = (STACK, STACKS, DAY, CHECK, BUDGET, ANGLE_STACK)
