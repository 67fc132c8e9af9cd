"""A lobed hole on a round center, or the other way round, under a force to one side.

Derived here, without friction, of rigid bodies: the clearance round the seat is a (1 + cos n φ), a
half of the out-of-roundness. A seat pressed along its axis moves sideways by δ where
K max(δ·u − clearance) − F·δ is least, u the direction round the seat and K the axial force over
tan α: so δ is the slope, at p = F / K, of the convex envelope of the clearance over the unit
circle. Between the n places that touch it is 0; past the side of their polygon it is
a (1 + T_n(x)), x the part of p towards the valley between two of them, T_n Chebyshev's polynomial:
δ = a n U_{n-1}(x). Of two lobes the polygon is a line, and an oval moves under the least force.
Angles in radians, lengths in one unit, forces as a ratio.
"""

import math

import numpy as np
from numpy.typing import NDArray

#: Lobes of an oval.
OVAL = 2
#: Directions of the seat to the force that are gone through in the period of one lobe.
_DIRECTIONS = 721

Floats = NDArray[np.float64]


def side_over_seat(side_force_ratio: float, half_angle_rad: float) -> float:
    """Side force over what the seat takes at most, p: F tan α / axial force; 1 lifts it out."""
    return side_force_ratio * math.tan(half_angle_rad)


def steady_share(lobes: int) -> float:
    """Largest p at which the seat rests on all its lobes and stands: cos(π/n); 0 of an oval."""
    return 0.0 if lobes == OVAL else math.cos(math.pi / lobes)


def movement(half_form: float, lobes: int, towards_valley: Floats) -> Floats:
    """δ along a valley's direction for the part x of p towards it, in the unit of the form.

    a n U_{n-1}(x) past the polygon's side, else 0.
    """
    x = np.clip(towards_valley, -1.0, 1.0)
    if lobes == OVAL:
        return half_form * 4.0 * x
    turn = np.arccos(x)
    sine = np.maximum(np.sin(turn), 1e-300)
    slope = np.where(turn < 1e-9, float(lobes * lobes), lobes * np.sin(lobes * turn) / sine)
    steady = steady_share(lobes)
    return np.where(x > steady, half_form * slope, 0.0)


def axis_movement(
    half_form: float, lobes: int, share: float, wheel_from_force_rad: float
) -> Floats:
    """How far the axis stands towards the wheel as the lobed part turns through one lobe.

    `share` is p. The wheel stands at an angle to the side force. In the unit of the form.
    """
    turn = np.linspace(-math.pi / lobes, math.pi / lobes, _DIRECTIONS)
    moved = movement(half_form, lobes, share * np.cos(turn))
    return moved * np.cos(turn - wheel_from_force_rad)


def largest_movement(half_form: float, lobes: int, share: float) -> float:
    """Largest movement of the axis over all directions of the seat, in the unit of the form."""
    return float(movement(half_form, lobes, np.array([share]))[0])
