"""Sizes of wheels and diamonds that are so unusual that the unit may be wrong.

Limits in mm, common practice without a source. They are no limits of the trade: they are there so
that 5 in sent as 127, or 180 mm sent as inches, does not pass in silence.
"""

from collections.abc import Iterator

from halfangle_service.fields import RequestModel, Units, from_mm, to_mm
from halfangle_service.fields.advisories import Advisory, caution
from halfangle_service.trade.wording import figure, plain

#: What a toolroom's wheels and diamonds usually measure, by the request's field.
USUAL_MM = {
    "wheel_diameter": (20.0, 1000.0),
    "new_diameter": (20.0, 1000.0),
    "worn_diameter": (20.0, 1000.0),
    "wheel_width": (1.0, 300.0),
    "width_to_dress": (0.5, 300.0),
    "nose_radius": (0.02, 5.0),
    "active_width": (0.02, 10.0),
}


def unusual_sizes(request: RequestModel, units: Units) -> Iterator[Advisory]:
    """Ask whether `units` is right where a size of wheel or diamond is unusual."""
    found = [
        f"{name} is {figure(size, units)}, usual are {plain(from_mm(least, units), 3)} to "
        f"{plain(from_mm(most, units), 3)} {units}"
        for name, (least, most) in USUAL_MM.items()
        if (size := getattr(request, name, None)) and not least <= to_mm(size, units) <= most
    ]
    if found:
        yield caution(
            "unusual-size",
            f"{'; '.join(found)} (common practice, no source). Is `units` right?",
        )
