"""Ways to inspect a ground cone, by the least errors that they show."""

from collections.abc import Sequence
from typing import Annotated

from pydantic import Field

from halfangle_service.fields import (
    NonNegativeArcsec,
    NonNegativeLength,
    RequestModel,
    Units,
    from_mm,
)


class WheelInspection(RequestModel):
    """A way to inspect the ground cone, by the least errors that it shows."""

    name: Annotated[str, Field(min_length=1, max_length=60)] = Field(
        description="What it is called in the answer.", examples=["optical projector"]
    )
    smallest_half_angle_error_arcsec: NonNegativeArcsec | None = Field(
        None,
        description="Least error of the half angle that it shows, in arc-seconds. Absent: it shows "
        "no angle.",
    )
    smallest_straightness: NonNegativeLength | None = Field(
        None,
        description="Least departure from straight that it shows, in `units`. Absent: it shows no "
        "form.",
    )


def usual_inspections(units: Units) -> list[WheelInspection]:
    """The inspections of a usual shop, where a request names none."""
    usual = {
        "optical projector": (60.0, 0.01),
        "indicator along the cone on a sine bar": (10.0, 0.001),
    }
    return [
        WheelInspection(
            name=name,
            smallest_half_angle_error_arcsec=arcseconds,
            smallest_straightness=from_mm(millimetres, units),
        )
        for name, (arcseconds, millimetres) in usual.items()
    ]


def seen_by(
    inspections: Sequence[WheelInspection], arcseconds: float, straightness: float
) -> list[str]:
    """Names of the inspections that show a half angle out by so much, or such a form."""
    return [i.name for i in inspections if _sees(i, abs(arcseconds), straightness)]


def _sees(inspection: WheelInspection, arcseconds: float, straightness: float) -> bool:
    """True where angle or form is out by at least the least that the inspection shows."""
    angle, form = inspection.smallest_half_angle_error_arcsec, inspection.smallest_straightness
    by_angle = angle is not None and arcseconds >= angle > 0.0
    return by_angle or (form is not None and straightness >= form > 0.0)
