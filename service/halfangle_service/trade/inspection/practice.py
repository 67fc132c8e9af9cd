"""What the usual means of measuring tell apart, and the rolls that a shop has.

Common practice, no source, throughout: what a shop states of its own means comes before it.
"""

from halfangle_service.trade.units import Units

#: An optical projector or toolmaker's microscope tells angles apart to about one minute of arc.
OPTICAL_ARCSEC = 60.0
#: A micrometer, or a comparison with an indicator, tells lengths apart to about two bench steps
#: and one bench step.
MICROMETER_STEPS = 2.0
COMPARATOR_STEPS = 1.0
#: Blocks under the rolls come in round sizes, and rolls in a few.
ROUND_RISE: dict[Units, float] = {"in": 0.05, "mm": 1.0}
ROLLS: dict[Units, tuple[float, ...]] = {
    "in": (0.0625, 0.125, 0.25, 0.5, 1.0),
    "mm": (2.0, 3.0, 5.0, 10.0, 20.0),
}
#: Thickness of a thin marking film, in mm.
FILM_MM = 0.002
