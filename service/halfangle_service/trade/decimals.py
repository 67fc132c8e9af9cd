"""Numbers without the noise of their last bits.

A float holds 15 significant decimal digits for certain; what sums and products leave beyond them,
0.12000000000000001 for 0.12, says nothing.
"""

import math

_DIGITS = 15


def tidy(value: float, scale: float = 0.0) -> float:
    """Give a number to 15 digits of itself, or of `scale`, the largest number it was made from.

    A difference of nearly equal numbers is noisy in more digits than a product: name its scale.

    >>> tidy(3 * 0.04), 10 - 9.9999, tidy(10 - 9.9999, 10.0)
    (0.12, 9.999999999976694e-05, 0.0001)
    """
    if abs(value) >= scale:
        return float(f"{value:.{_DIGITS}g}")
    return round(value, _DIGITS - 1 - math.floor(math.log10(scale)))
