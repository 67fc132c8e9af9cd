"""Sizes that no such thing has, which are most likely meant in the other unit."""

from collections.abc import Mapping

from halfangle_service.errors import Disagreement
from halfangle_service.trade.units import MM_PER_INCH, Units, bench_step
from halfangle_service.trade.wording import figure, plain

#: Center distances of sine bars and plates, and diameters of flat grinding wheels. A common one, 1
#: to 24 in or 50 to 1000 mm, taken in the other unit lies outside of them.
CENTER_DISTANCES: Mapping[Units, tuple[float, float]] = {"in": (1.0, 48.0), "mm": (25.4, 1250.0)}
WHEEL_DIAMETERS = CENTER_DISTANCES
#: From the smallest mounted point to the largest wheel.
ANY_WHEEL_DIAMETERS: Mapping[Units, tuple[float, float]] = {"in": (0.02, 80.0), "mm": (0.5, 2000.0)}
#: The coarsest step that heights are built in: blocks of whole tenths of an inch, none finer.
COARSEST_STEP: Mapping[Units, float] = {"in": 0.1, "mm": 2.5}
_OTHER: dict[Units, Units] = {"in": "mm", "mm": "in"}


def require_center_distance(
    center_distance: float, units: Units, field: str = "center_distance"
) -> None:
    """Refuse a center distance that no sine bar or plate has; raises Disagreement."""
    what = "sine bar or plate has a center distance"
    _require(center_distance, units, CENTER_DISTANCES[units], what, field)


def require_wheel_diameter(diameter: float, units: Units, field: str) -> None:
    """Refuse a diameter that no flat grinding wheel has; raises Disagreement."""
    what = "flat grinding wheel has a diameter"
    _require(diameter, units, WHEEL_DIAMETERS[units], what, field)


def require_any_wheel_diameter(diameter: float, units: Units, field: str) -> None:
    """Refuse a diameter that not even a mounted point or the largest wheel has; raises as above."""
    _require(diameter, units, ANY_WHEEL_DIAMETERS[units], "grinding wheel has a diameter", field)


def require_resolution(resolution: float | None, units: Units, field: str = "resolution") -> None:
    """Refuse a step of height that no blocks are built in; raises Disagreement."""
    coarsest = COARSEST_STEP[units]
    if resolution is not None and resolution > coarsest:
        raise Disagreement(
            f"No stack is built in steps of {figure(resolution, units)}: `resolution` is the step "
            f"of the blocks, such as {figure(bench_step(units), units)}, not their height.",
            fields={field: f"should be at most {figure(coarsest, units)}"},
        )


def _require(size: float, units: Units, bounds: tuple[float, float], what: str, field: str) -> None:
    least, most = bounds
    if least <= size <= most:
        return
    meant = size / MM_PER_INCH if units == "in" else size * MM_PER_INCH
    slip = f" {plain(size)} {_OTHER[units]} would be {plain(meant, 4)} {units}."
    raise Disagreement(
        f"No {what} of {plain(size)} {units}: it is in `units`, as are all lengths."
        f"{slip if least <= meant <= most else ''}",
        fields={field: f"should be from {plain(least)} to {plain(most)} {units}"},
    )
