"""The overlay of a profile as DXF, for a screen, a plotter or a machine's program.

Closed outlines in the part's unit times the magnification, with full precision, a layer each:
NOMINAL, SMALLEST, LARGEST, and AXIS and TEXT. The text is ASCII, with DXF's own marks for ° and ±,
so that no reader has to guess its coding; the same profile gives the same bytes.
"""

import io
import math
from typing import TYPE_CHECKING

from halfangle_service.trade.angles import format_dms
from halfangle_service.trade.comparator.overlay import Profile, Side
from halfangle_service.trade.units import Units
from halfangle_service.trade.wording import plain

if TYPE_CHECKING:
    from ezdxf.layouts.layout import Modelspace

#: DXF's own numbers: of its units, of a colour drawn black on white and white on black.
_INSUNITS: dict[Units, int] = {"in": 1, "mm": 4}
_INK = 7
#: Height of the text as a share of the profile's length, and how far below the profile it lies.
_TEXT_SHARE, _TEXT_BELOW = 0.03, 0.08


def overlay_dxf(profile: Profile, units: Units, tolerance_arcsec: float) -> str:
    """Write the overlay as a DXF document of 2000; `tolerance_arcsec` of the included angle."""
    # Imported here: it takes 0.2 s, and few answers draw.
    from ezdxf._options import options  # noqa: PLC0415
    from ezdxf.filemanagement import new  # noqa: PLC0415

    # Else each document has its own time and numbers, and no two are alike.
    options.write_fixed_meta_data_for_testing = True
    document = new("R2000", units=_INSUNITS[units])
    document.linetypes.add("DASHED", [6.0, 4.0, -2.0], description="__ __")
    document.linetypes.add("CENTER", [12.0, 8.0, -1.5, 1.0, -1.5], description="__ . __")
    for name, linetype in (
        ("NOMINAL", "CONTINUOUS"),
        ("SMALLEST", "DASHED"),
        ("LARGEST", "DASHED"),
        ("AXIS", "CENTER"),
        ("TEXT", "CONTINUOUS"),
    ):
        document.layers.add(name, color=_INK, linetype=linetype)
    space = document.modelspace()
    _outline(space, profile.nominal, profile.magnification, "NOMINAL")
    _outline(space, profile.smallest, profile.magnification, "SMALLEST")
    _outline(space, profile.largest, profile.magnification, "LARGEST")
    end = profile.largest[1][0] * profile.magnification
    space.add_line((0.0, 0.0), (end, 0.0), dxfattribs={"layer": "AXIS"})
    _write_text(space, profile, tolerance_arcsec, end)
    written = io.StringIO()
    document.write(written)
    return written.getvalue()


def _outline(space: "Modelspace", side: Side, magnification: float, layer: str) -> None:
    """The closed outline of a cone by its upper side; a point on the axis once."""
    upper = [(x * magnification, y * magnification) for x, y in side]
    lower = [(x, -y) for x, y in reversed(upper) if y > 0.0]
    space.add_lwpolyline([*upper, *lower], close=True, dxfattribs={"layer": layer})


def _write_text(
    space: "Modelspace", profile: Profile, tolerance_arcsec: float, length: float
) -> None:
    words = (
        f"{_degrees(math.degrees(2.0 * profile.cone.half_rad))} "
        f'%%p{plain(tolerance_arcsec, 4)}" AT {plain(profile.magnification)}:1'
    )
    height = _TEXT_SHARE * length
    below = -profile.largest[0][1] * profile.magnification - _TEXT_BELOW * length
    space.add_text(words, height=height, dxfattribs={"layer": "TEXT", "insert": (0.0, below)})


def _degrees(angle_degrees: float) -> str:
    r"""An angle in degrees, minutes and seconds in DXF's own marks.

    >>> _degrees(60.0)
    '60%%d00\'00.00"'
    """
    return format_dms(angle_degrees).replace("°", "%%d")
