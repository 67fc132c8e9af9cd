"""What the operations on eccentricity as a vector stand on."""

from halfangle_service.operation import Source

VECTORS = Source(
    citation="Derived here: eccentricity is a vector; a round section off by e shows e cos(φ - φ0) "
    "round a turn; an axis is a straight line.",
    standing="derived",
)
