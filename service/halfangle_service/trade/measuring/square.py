"""A square told from what it is compared with, by reversal. Angles in radians, lengths in one unit.

An indicator runs up a column by a height and reads a face. The square's face leans out of square by
s, toward the indicator where positive (more than 90° within the square); the column leans by c,
toward the square in its first place. The first reading rises by h tan-wise (s + c), the second,
with the square on the other side of the column, by (s − c). Derived here; lean and travel are
small, so that tangents add as angles do.
"""

from halfangle_service.trade import elementary


def square_error(first: float, second: float, height: float) -> float:
    """Lean of the square's face out of square."""
    return elementary.atan((first + second) / (2.0 * height))


def reference_error(first: float, second: float, height: float) -> float:
    """Lean of the column, toward the square in its first place."""
    return elementary.atan((first - second) / (2.0 * height))
