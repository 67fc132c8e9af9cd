"""An angle measured on an optical comparator's screen, or under a toolmaker's microscope."""

import math

from halfangle_service.trade.angles import ARCSEC_PER_RADIAN
from halfangle_service.trade.inspection.means import (
    Inspected,
    InspectedCone,
    OutOfReach,
    proof_of,
    reading_of,
)
from halfangle_service.trade.inspection.sine_plate import InspectedFace
from halfangle_service.trade.uncertainty import Budget, Contribution, DecisionRule

#: What a request calls the error of an angle on the screen, in arc-seconds.
ERROR = "instrument_angle_error_limit_arcsec"


def inspected_on_screen(
    part: InspectedCone | InspectedFace, error_arcsec: float | None, rule: DecisionRule
) -> Inspected | OutOfReach:
    """What angle to expect on the screen, and what it proves; a socket shows no outline."""
    cone = part if isinstance(part, InspectedCone) else None
    if cone is not None and cone.internal:
        return OutOfReach(
            "comparator",
            "A socket shows no outline: its surface lies inside.",
            "comparator",
            "A cast of the socket, shown as an outer cone.",
        )
    proof = proof_of("angle", part.angle, on_screen_budget(error_arcsec), rule)
    nominal = part.angle_rad if isinstance(part, InspectedFace) else 2.0 * part.cone.half_rad
    return Inspected(
        "comparator",
        "Clean edges, the outline in focus, the axis square to the light; turn the screen's line "
        "from one side to the other and read the angle between.",
        (),
        (
            reading_of(
                "measured_angle" if cone is None else "measured_included_angle",
                lambda error: math.degrees(nominal + error),
                proof,
                "degree",
            ),
        ),
        (proof,),
        ("size", "edges-out-of-focus") + (() if cone is None else ("runout",)),
    )


def on_screen_budget(error_arcsec: float | None) -> Budget:
    """Budget of an angle read on a screen, in radians; None where its error was not stated."""
    if error_arcsec is None:
        return Budget((), not_stated=(ERROR,))
    slope = 1.0 / ARCSEC_PER_RADIAN
    return Budget((Contribution(ERROR, error_arcsec, sensitivity=slope, unit="arcsecond"),))
