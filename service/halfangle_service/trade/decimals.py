"""Numbers without the noise of their last bits: 0.12, not 0.12000000000000001.

A float holds 15 significant decimal digits for certain; what a sum or a product of short decimals
leaves beyond them says nothing. Any other number stays as it was calculated.
"""

#: What is this near to a decimal of so many digits, as a share of itself, is that decimal.
_DIGITS, _NEAR = 10, 4e-15


def tidy(value: float, scale: float = 0.0) -> float:
    """Give a number of any unit as the short decimal that it is but for its last bits, or itself.

    A difference is noisy in more digits than a product: `scale`, in the same unit, is the largest
    number that it was made from.

    >>> tidy(3 * 0.04), tidy(1 / 3), 10 - 9.9999, tidy(10 - 9.9999, 10.0)
    (0.12, 0.3333333333333333, 9.999999999976694e-05, 0.0001)
    """
    short = float(format(value, f".{_DIGITS}g"))
    return short if abs(value - short) <= _NEAR * max(abs(value), scale) else value
