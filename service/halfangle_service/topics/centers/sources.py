"""What several operations on centers stand on."""

from halfangle_service.operation import Source

STRAIGHT_AXIS = Source(
    citation="Derived here: the work's axis is the straight line through the two centers.",
    standing="derived",
)
