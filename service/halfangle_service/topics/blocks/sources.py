"""Sources that several operations on gauge blocks stand on."""

from halfangle_service.operation import Source

SETS = Source(
    citation="Compositions of sets by count and series; each set names its own source.",
    standing="from-memory",
)
GRADES = Source(
    citation="ISO 3650:1998, table 5, ASME B89.1.9-2002, DIN 861; each grade names its standing.",
    standing="from-memory",
)
ANGLE_SETS = Source(
    citation="Sets of angle gauge blocks; each names its own source.", standing="from-memory"
)
SEVERAL_STACKS = Source(
    citation="Derived here: a search that raises the number of blocks in all by one at a time, "
    "bounded from below by each height alone and by every pair; checked against an independent "
    "exact solver.",
    standing="derived",
)
