"""The overlay of a cone's profile with its tolerance band, drawn to scale for a comparator."""

from collections.abc import Iterator, Sequence
from typing import Annotated, Literal

from pydantic import Field

from halfangle_service.errors import Impossible
from halfangle_service.fields import (
    ARCSEC_PER_RADIAN,
    FINITE,
    Arcsec,
    Length,
    LengthOut,
    NonNegativeLength,
    ResultModel,
    Unit,
    Units,
    UnitsField,
    from_mm,
    to_mm,
)
from halfangle_service.fields.advisories import Advisory, caution
from halfangle_service.fields.slopes import SlopeFields, slope_of
from halfangle_service.operation import Outcome, Source, operation
from halfangle_service.trade.comparator.overlay import Point, Profile
from halfangle_service.trade.comparator.overlay_dxf import overlay_dxf
from halfangle_service.trade.comparator.overlay_svg import overlay_svg
from halfangle_service.trade.cone import require_before_point
from halfangle_service.trade.tapers.tolerance import (
    Cone,
    half_angle_limits,
    largest_angle_band,
    require_size_left,
)
from halfangle_service.trade.wording import figure, of_any_unit, plain

OverlayFormat = Literal["svg", "dxf"]
Magnification = Annotated[float, FINITE, Field(ge=0.1, le=1000), Unit("1")]
#: Largest drawing, in millimetres either way: more than any chart or plotter takes.
LARGEST_MM = 2000.0
#: A band narrower than this on paper is not told from the line, in millimetres.
LEAST_BAND_MM = 0.3


class ProfileOverlay(SlopeFields):
    """A cone's profile with its tolerances, and how to draw it."""

    large_diameter: Length = Field(description="Diameter at the large end.", examples=[0.5])
    length: Length = Field(description="Length of the cone along its axis.", examples=[0.4])
    large_diameter_tolerance: NonNegativeLength = Field(
        description="Tolerance of the large diameter, plus and minus.", examples=[0.002]
    )
    included_angle_tolerance_arcsec: Arcsec = Field(
        description="Tolerance ± of the included angle, in arc-seconds.", examples=[600]
    )
    magnification: Magnification = Field(
        description="How many times the part's size to draw; 1 gives the part's own coordinates.",
        examples=[20],
    )
    formats: Annotated[list[OverlayFormat], Field(min_length=1, max_length=2)] = Field(
        description="Forms wanted: `svg` to print at true size, `dxf` for a screen, a plotter or a "
        "machine's program.",
        examples=[["svg"]],
    )


class InspectionOverlayRequest(ProfileOverlay):
    """A cone's profile to draw with its tolerance band."""

    units: UnitsField


class InspectionOverlayResult(ResultModel):
    """The overlay, and its sizes on paper in the request's `units`."""

    svg: str | None = Field(
        description="The overlay as SVG, its size in millimetres: printed at 100 % it is true, "
        "which the bar on it checks. Null where it was not asked for."
    )
    dxf: str | None = Field(
        description="The overlay as the text of a DXF file (2000) in the request's `units` times "
        "the magnification: closed outlines on the layers NOMINAL, SMALLEST and LARGEST, the large "
        "end at x = 0, the axis along x. Null where it was not asked for."
    )
    drawn_length: LengthOut = Field(description="Length of the profile as drawn.")
    drawn_diameter: LengthOut = Field(description="Large diameter as drawn.")
    drawn_band: LengthOut = Field(
        description="Widest distance of a limit from the nominal line as drawn, square to it."
    )


@operation(
    "inspection.overlay",
    relations=(
        "smallest: (D − δD) / 2 − z tan(α + δα); largest: (D + δD) / 2 − z tan(α − δα)",
        "δα = included angle's tolerance / 2; drawn = magnification × size",
    ),
    sources=(
        Source(
            citation="Derived here: the band holds every cone whose large diameter and angle keep "
            "their tolerances, as `tapers.tolerance` limits its diameters.",
            standing="derived",
        ),
    ),
    largest_request="one profile in two forms",
    heavy=True,
    example={
        "units": "in",
        "included_angle": 60,
        "large_diameter": 0.5,
        "length": 0.4,
        "large_diameter_tolerance": 0.002,
        "included_angle_tolerance_arcsec": 600,
        "magnification": 20,
        "formats": ["svg"],
    },
)
def overlay(request: InspectionOverlayRequest) -> Outcome[InspectionOverlayResult]:
    """Overlay of a profile.

    A cone's nominal profile with its tolerance band at a magnification, as SVG at true size with a
    bar to check the print by, and as DXF.
    """
    profile = read_profile(request, request.units)
    drawn = drawings(profile, request, request.units)
    return Outcome(drawn, tuple(band_seen(profile, request.units)))


def read_profile(request: ProfileOverlay, units: Units, *, path: str = "") -> Profile:
    """The profile of a request; refuses one that is no cone, and a drawing too large.

    `path` is that of the object that holds the fields, such as `overlay/`.
    """
    half = slope_of(request, path=path).half_angle_rad
    require_before_point(request.large_diameter, request.length, half, field=f"{path}length")
    require_size_left(request.large_diameter, request.large_diameter_tolerance)
    band = 2.0 * request.included_angle_tolerance_arcsec / ARCSEC_PER_RADIAN
    if band >= largest_angle_band(half, "symmetric"):
        raise Impossible(
            "This tolerance leaves no cone at its limit, where the half angle would be 0° or 90°.",
            fields={f"{path}included_angle_tolerance_arcsec": "should leave a cone at its limit"},
        )
    cone = Cone(request.large_diameter, half, *half_angle_limits(half, band, "symmetric"))
    size = max(request.length, request.large_diameter)
    most = from_mm(LARGEST_MM, units) / size
    if request.magnification > most:
        raise Impossible(
            f"At {plain(request.magnification)} to 1 the drawing would be "
            f"{of_any_unit(size * request.magnification)} long.",
            fields={f"{path}magnification": f"should be at most {plain(most, 3)} to 1"},
        )
    return Profile(cone, request.length, request.large_diameter_tolerance, request.magnification)


def drawings(
    profile: Profile, request: ProfileOverlay, units: Units, picked: Sequence[Point] = ()
) -> InspectionOverlayResult:
    """The forms asked for; `picked` are measured points as they lie on the profile."""
    tolerance = request.included_angle_tolerance_arcsec
    svg = overlay_svg(profile, units, tolerance, picked) if "svg" in request.formats else None
    times = profile.magnification
    return InspectionOverlayResult(
        svg=svg,
        dxf=overlay_dxf(profile, units, tolerance) if "dxf" in request.formats else None,
        drawn_length=times * profile.length,
        drawn_diameter=times * profile.cone.large_diameter,
        drawn_band=times * profile.widest_band,
    )


def band_seen(profile: Profile, units: Units) -> Iterator[Advisory]:
    """Say so where the band is nowhere wide enough to be seen beside the line."""
    band = profile.widest_band
    least = from_mm(LEAST_BAND_MM, units)
    if to_mm(band * profile.magnification, units) < LEAST_BAND_MM:
        yield caution(
            "band-not-seen",
            f"At this magnification the band is nowhere wider than "
            f"{figure(band * profile.magnification, units)} on paper, and under "
            f"{figure(least, units)} it is not told from the line: draw it at more than "
            f"{plain(least / band, 3)} to 1.",
        )
