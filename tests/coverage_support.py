"""Coverage of a sum of rectangles in closed form, for judging the service's own from outside."""

from itertools import product
from math import factorial

from mpmath import findroot, mp, mpf


def half_width_of_rectangles(*half_widths: float, probability: float = 0.95) -> float:
    """Half-width that covers a probability of the sum of independent rectangles about zero.

    Derived: the convolution of n rectangles ±a is a piecewise polynomial, with the distribution
    F(x) = Σ (Π s) (x + Σ s a)₊ⁿ / (n! Π 2a) over all signs s. Widths of 0 are left out.
    """
    widths = [mpf(width) for width in half_widths if width]
    if not widths:
        return 0.0
    mp.dps = 40
    scale = factorial(len(widths)) * mp.fprod(2 * a for a in widths)

    def below(x: mpf) -> mpf:
        """Probability of lying below x."""
        total = mpf(0)
        for signs in product((1, -1), repeat=len(widths)):
            end = x + mp.fdot(signs, widths)
            if end > 0:
                total += mp.fprod(signs) * end ** len(widths)
        return total / scale

    wanted = (1 + mpf(probability)) / 2
    reach = mp.fsum(widths)
    found = findroot(lambda x: below(x) - wanted, (0, reach), solver="anderson", verify=False)
    return float(found)
