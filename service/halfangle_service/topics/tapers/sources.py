"""Sources that several subjects of tapers stand on."""

from halfangle_service.operation import Source

ISO_1119 = Source(
    citation="ISO 1119:1998, definition of the rate of taper: C = (D − d) / L = 2 tan(α / 2), α "
    "the cone angle.",
    standing="published",
)
TANGENT_CIRCLES = Source(
    citation="Derived here: a circle tangent to a side at α to the axis has its center r / cos α "
    "from it across the axis and touches it r sin α along the axis; checked against tangent "
    "circles.",
    standing="derived",
)
LAYER = Source(
    citation="Derived here: a layer h square to a cone's surface is 2 h / cos α on the diameter "
    "and h / sin α along the axis; checked against cut geometry.",
    standing="derived",
)
