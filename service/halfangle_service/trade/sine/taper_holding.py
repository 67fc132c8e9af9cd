"""Sine plates under tapers: the plate's angle that levels a cone's top generator, and back.

Angles in radians. α is the cone's half angle, θ the plate's, ν half the included angle of a vee.
The same relations hold for a bar laid over the taper, its top made parallel to the surface plate.

Derived here. Axis parallel to the plate (between centers on the bar): the top generator leans by
α. On its own generator on a flat: by 2α. In a vee: both faces touch, so their normals
(0, ±cos ν, sin ν) make the angle 90° − α with the axis (cos t, 0, sin t); hence
sin t sin ν = sin α, and the top generator leans by t + α. A vee opened to 180° is the flat.
"""

import math
from typing import Literal

from halfangle_service.errors import Impossible
from halfangle_service.trade import elementary
from halfangle_service.trade.wording import plain

Holding = Literal["between-centers", "on-its-generator", "in-a-vee"]


def axis_tilt(half_angle_rad: float, vee_half_angle_rad: float) -> float:
    """Tilt t of a cone's axis along a vee: sin t = sin α / sin ν.

    Raises Impossible where the cone is as blunt as the vee or blunter: it would touch at no two
    generators.
    """
    ratio = elementary.sin(half_angle_rad) / elementary.sin(vee_half_angle_rad)
    if ratio >= 1.0:
        raise Impossible(
            f"A cone of half angle {plain(elementary.degrees(half_angle_rad))}° does not lie in a "
            f"vee of {plain(2 * elementary.degrees(vee_half_angle_rad))}° included: it is as blunt "
            "or blunter.",
            fields={"vee_angle": "should be larger than the cone's included angle"},
        )
    return elementary.asin(ratio)


def plate_angle(half_angle_rad: float, holding: Holding, vee_half_angle_rad: float) -> float:
    """Plate's angle θ that brings the top generator parallel to the surface plate.

    `vee_half_angle_rad` counts for a vee only. Raises Impossible at 90° and beyond.
    """
    angle = half_angle_rad
    if holding == "on-its-generator":
        angle = 2.0 * half_angle_rad
    elif holding == "in-a-vee":
        angle = half_angle_rad + axis_tilt(half_angle_rad, vee_half_angle_rad)
    if angle >= math.pi / 2:
        raise Impossible(
            f"Held {holding.replace('-', ' ')}, this cone asks for a plate angle of "
            f"{plain(elementary.degrees(angle))}°; a sine setting stays below 90°. Hold it between "
            "centers.",
            fields={"holding": "should leave the plate's angle below 90°"},
        )
    return angle


def half_angle_from_plate(
    plate_angle_rad: float, holding: Holding, vee_half_angle_rad: float
) -> float:
    """Cone's half angle α from the plate's angle; the way back of `plate_angle`.

    In a vee tan α = sin θ / (cos θ + 1/sin ν), from sin(θ − α) = sin α / sin ν.
    """
    if holding == "between-centers":
        return plate_angle_rad
    k = _vee_constant(holding, vee_half_angle_rad)
    return elementary.atan2(elementary.sin(plate_angle_rad), elementary.cos(plate_angle_rad) + k)


def half_angle_sensitivity(
    plate_angle_rad: float, holding: Holding, vee_half_angle_rad: float
) -> float:
    """dα/dθ: 1 between centers, ½ on the generator, (1 + k cos θ)/(1 + 2 k cos θ + k²) in a vee."""
    if holding == "between-centers":
        return 1.0
    k = _vee_constant(holding, vee_half_angle_rad)
    cosine = elementary.cos(plate_angle_rad)
    return (1.0 + k * cosine) / (1.0 + 2.0 * k * cosine + k * k)


def _vee_constant(holding: Holding, vee_half_angle_rad: float) -> float:
    """1/sin ν; the flat under a generator is a vee of ν = 90°."""
    return 1.0 if holding == "on-its-generator" else 1.0 / elementary.sin(vee_half_angle_rad)


def usual_mistakes(half_angle_rad: float, holding: Holding) -> dict[str, float]:
    """Plate angles (radians) that the usual mistakes give, each by its description.

    Held between centers the half angle is due, on the generator the included angle; in a vee
    neither, and the half angle is what is set instead. One that has no angle (a sine above 1) is
    left out.
    """
    half_taper = elementary.tan(half_angle_rad)
    for_included = {"the half angle set where the included angle was due": half_angle_rad}
    if holding == "in-a-vee":
        return for_included
    if holding == "between-centers":
        mistakes = {
            "the included angle set where the half angle was due": 2.0 * half_angle_rad,
            "half the taper (the half angle's tangent) taken for its sine": _asin_or_nan(
                half_taper
            ),
            "half of atan(taper) taken for atan(taper / 2)": elementary.atan(2.0 * half_taper)
            / 2.0,
        }
    else:
        mistakes = for_included | {
            "the taper (a tangent of two halves) taken for the sine of the angle": _asin_or_nan(
                2.0 * half_taper
            ),
            "atan(taper) taken for 2 atan(taper / 2)": elementary.atan(2.0 * half_taper),
        }
    return {name: angle for name, angle in mistakes.items() if angle < math.pi / 2}


def _asin_or_nan(sine: float) -> float:
    return elementary.asin(sine) if sine < 1.0 else math.nan
