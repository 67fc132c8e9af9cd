"""Drawings to scale, as SVG text: a sheet that knows its scale, and the few marks that we use.

Lengths are those of the drawing's own unit, x to the right and y up. Text never scales.
"""

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from html import escape

Point = tuple[float, float]

#: A pixel of CSS on paper: 96 of them are an inch.
MM_PER_PX = 25.4 / 96.0

INK, WORK, METAL, PALE, ALERT, WHEEL = (
    "#1b2733",
    "#c9d6e2",
    "#dfe3e6",
    "#f3f4f5",
    "#b3392f",
    "#e8d9b5",
)
_STYLE = (
    f"text{{font-family:sans-serif;font-size:13px;fill:{INK}}}"
    ".t{font-size:16px;font-weight:bold}"
    # A white rim keeps it legible over whatever it has to lie.
    f".a{{fill:{ALERT};font-weight:bold;paint-order:stroke;stroke:#fff;stroke-width:4}}"
    f"path{{stroke:{INK};stroke-width:1.2;stroke-linejoin:round}}"
    ".thin{stroke-width:.7}.dash{stroke-dasharray:6 4}"
    ".axis{stroke-width:.7;stroke-dasharray:14 3 3 3}"
    f".wheel{{fill:{WHEEL};fill-opacity:.55}}"
    f".alert{{stroke:{ALERT};stroke-width:1.8}}"
)
#: Lines of a tenth of a millimetre, on sheets of true size.
_FINE = ".fine{stroke-width:.4}"
_RIM = ' paint-order="stroke" stroke="#fff" stroke-width="3"'


@dataclass
class Sheet:
    """A sheet on which a window of the drawing's plane is shown at one scale.

    With `true_size` it says its size in millimetres, so that a pixel prints as `MM_PER_PX`.
    """

    left: float
    bottom: float
    right: float
    top: float
    width_px: float
    title: str
    header_px: float = 56.0
    margin_px: float = 40.0
    true_size: bool = False
    marks: list[str] = field(default_factory=list)

    @property
    def scale(self) -> float:
        """Pixels for one unit of length, the same in both directions."""
        return (self.width_px - 2.0 * self.margin_px) / (self.right - self.left)

    @property
    def height_px(self) -> float:
        """Height of the sheet, from the window's proportions."""
        return self.header_px + 2.0 * self.margin_px + (self.top - self.bottom) * self.scale

    def place(self, point: Point) -> Point:
        """Pixels of a point of the drawing."""
        x = self.margin_px + (point[0] - self.left) * self.scale
        return x, self.header_px + self.margin_px + (self.top - point[1]) * self.scale

    def path(
        self, points: Iterable[Point], style: str = "", fill: str = "none", *, closed: bool = False
    ) -> None:
        """Draw a chain of straight lines; `style` is one or more class names."""
        steps = " L".join(f"{x:.2f} {y:.2f}" for x, y in map(self.place, points))
        end = "Z" if closed else ""
        self.marks.append(f'<path class="{style}" d="M{steps}{end}" fill="{fill}"/>')

    def polygon(self, points: Iterable[Point], fill: str, style: str = "") -> None:
        """Draw a filled outline."""
        self.path(points, style, fill, closed=True)

    def circle(self, center: Point, radius: float, style: str = "", fill: str = "none") -> None:
        """Draw a full circle."""
        (x, y), r = self.place(center), radius * self.scale
        half = f"a{r:.2f} {r:.2f} 0 1 0"
        d = f"M{x - r:.2f} {y:.2f}{half} {2 * r:.2f} 0{half} {-2 * r:.2f} 0"
        self.marks.append(f'<path class="{style}" d="{d}Z" fill="{fill}"/>')

    def text(
        self,
        point: Point,
        words: str,
        style: str = "",
        dx: float = 0.0,
        dy: float = 0.0,
        anchor: str = "start",
        *,
        rim: bool = False,
    ) -> None:
        """Write words at a point, shifted by pixels (dy downward).

        A white `rim` keeps them legible over lines.
        """
        x, y = self.place(point)
        around = _RIM if rim else ""
        self.marks.append(
            f'<text class="{style}" x="{x + dx:.1f}" y="{y + dy:.1f}" '
            f'text-anchor="{anchor}"{around}>{escape(words)}</text>'
        )

    def dimension(self, start: Point, end: Point, words: str, offset_px: float) -> None:
        """Draw a dimension between two points, off to the left of the way from one to the other."""
        (x1, y1), (x2, y2) = self.place(start), self.place(end)
        length = math.hypot(x2 - x1, y2 - y1) or 1.0
        nx, ny = (y2 - y1) / length * offset_px, -(x2 - x1) / length * offset_px
        self.marks.append(
            f'<path class="thin" fill="none" d="M{x1:.2f} {y1:.2f}L{x1 + nx:.2f} {y1 + ny:.2f}'
            f'L{x2 + nx:.2f} {y2 + ny:.2f}L{x2:.2f} {y2:.2f}"/>'
        )
        middle = ((x1 + x2) / 2 + 1.35 * nx, (y1 + y2) / 2 + 1.35 * ny)
        sideways = abs(nx) > abs(ny)
        anchor = ("start" if nx > 0 else "end") if sideways else "middle"
        self.marks.append(
            f'<text x="{middle[0]:.1f}" y="{middle[1] + 4:.1f}" text-anchor="{anchor}">'
            f"{escape(words)}</text>"
        )

    def render(self, lines: Sequence[str] = ()) -> str:
        """Give the drawing as SVG text; `lines` stand under the title."""
        width, height = f"{self.width_px:.0f}", f"{self.height_px:.0f}"
        style, size = _STYLE, f'width="{width}" height="{height}"'
        if self.true_size:
            width, height = f"{self.width_px:.3f}", f"{self.height_px:.3f}"
            millimetres = (float(pixels) * MM_PER_PX for pixels in (width, height))
            style += _FINE
            size = 'width="{:.6f}mm" height="{:.6f}mm"'.format(*millimetres)
        words = "".join(
            f'<text x="{self.margin_px:.0f}" y="{46 + 18 * i}">{escape(line)}</text>'
            for i, line in enumerate(lines)
        )
        return (
            f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {width} {height}" '
            f'{size} role="img" '
            f'aria-label="{escape(self.title)}">'
            f'<style>{style}</style><rect width="100%" height="100%" fill="white"/>'
            f'<text class="t" x="{self.margin_px:.0f}" y="26">{escape(self.title)}</text>'
            f"{words}{''.join(self.marks)}</svg>"
        )
