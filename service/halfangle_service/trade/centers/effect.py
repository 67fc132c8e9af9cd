"""What eccentric centers do to a part between them; vectors complex, lengths in one unit."""


def axis_offset(e_1: complex, e_2: complex, length: float, station: float) -> complex:
    """Offset of the line through both centers at a station: e1 (1 - z/L) + e2 z/L."""
    return e_1 + (e_2 - e_1) * station / length


def worst_offset(e_1: float, e_2: float, length: float, station: float) -> float:
    """Largest offset at a station over all clockings of both centers."""
    return e_1 * (1.0 - station / length) + e_2 * station / length


def worst_tilt(e_1: float, e_2: float, length: float) -> float:
    """Largest tangent of the axis tilt: the centers opposed."""
    return (e_1 + e_2) / length


def turned_end_for_end(part: complex) -> complex:
    """The part's own vector at one section after it is turned end for end, its mark kept up.

    Seen from the first center, angles on the part then run the other way: the complex conjugate.
    """
    return part.conjugate()
