"""Where the relations of several sine operations come from, and what bounds their searches."""

from halfangle_service.operation import Source
from halfangle_service.trade.sine.low_stack import MOST_ENTRIES

SINE_RELATION = Source(
    citation="Derived here: the centers of the rolls are the ends of the hypotenuse, the "
    "difference of their heights is the side opposite to the angle.",
    standing="derived",
)
STEEP_PRACTICE = Source(
    citation="A sine bar is not set past 45 degrees if it can be helped.",
    standing="common-practice-no-source",
)
SIGNED_SUMS = Source(
    citation="Derived here: dynamic programming over signed sums considers every block under "
    "either roll or in the box; checked against an independent exact solver.",
    standing="derived",
)
#: What bounds a search for stacks under either roll.
LARGEST_SEARCH = (
    f"500 blocks of which the largest 8 make at most {MOST_ENTRIES // 2} steps of the sizes' "
    "common step"
)
ROTATION = Source(
    citation="Derived here: the part's surface normal is carried through the rotations of the "
    "upper and the base hinge and set upright (part's frame), or the upper plate's normal is set "
    "to the one wanted (machine's frame); each answer is checked by rotating it back.",
    standing="derived",
)
