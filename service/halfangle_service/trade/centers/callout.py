"""Center holes as a drawing calls them out (ISO 6411), read and written. Lengths in mm."""

import re
from dataclasses import dataclass
from typing import Literal

from halfangle_service.errors import Disagreement, Unreachable
from halfangle_service.trade.tables.centers.guides import TappedHole, tapped_holes
from halfangle_service.trade.tables.centers.holes import TableHole, center_holes
from halfangle_service.trade.wording import plain

CalledType = Literal["A", "B", "C", "D", "R"]
#: What the second figure was read as: the cone's mouth, the protecting chamfer, or there is none.
SecondFigure = Literal["cone-diameter", "chamfer-diameter", "not-sent"]
#: Form of a tapped hole: a bare cone, an arc in its place, or a cone under a protecting chamfer.
TappedForm = Literal["D", "DR", "DS"]
_FORMS: dict[str, TappedForm] = {"": "D", "R": "DR", "S": "DS"}
#: Tolerance grade IT12 in mm by the largest size that it is for: ISO 286-1, from memory.
_IT12_MM = ((3.0, 0.10), (6.0, 0.12), (10.0, 0.15), (18.0, 0.18))
#: Pilots are no larger, by far, in any table of center holes.
_LARGEST_MM = 100.0
#: Figures that agree within this part of them are one size.
_SAME = 0.002
_NUMBER = r"\d+(?:[.,]\d+)?"
_NAME = r"(?P<name>(?:ISO|DIN|GB\s*/?\s*T|JIS\s*B?|IS|EN)[\s\d.:/-]*?\d)?"
_PLAIN = re.compile(
    rf"^{_NAME}\s*[-–]?\s*(?P<type>[A-DR])[A-Z]?\s*(?P<first>{_NUMBER})"
    rf"(?:\s*[/x×*]\s*(?:Ø|⌀)?\s*(?P<second>{_NUMBER}))?$",
    re.IGNORECASE | re.ASCII,
)
_TAPPED = re.compile(
    rf"^{_NAME}\s*[-–]?\s*(?P<type>[CD])(?P<wall>[RS]?)\s*-?\s*M\s*(?P<thread>\d+(?:[.,]\d+)?)"
    rf"(?:\s*L\s*(?P<length>{_NUMBER}))?(?:\s*/\s*(?P<second>{_NUMBER}))?$",
    re.IGNORECASE | re.ASCII,
)


@dataclass(frozen=True, slots=True)
class Callout:
    """A center hole as called out; lengths in mm, None where it says nothing of them.

    `row` and `tapped` are the tables' rows that it names, where they hold it; `form` is that of a
    tapped hole, of which DS alone has a protecting chamfer.
    """

    type: CalledType
    pilot: float | None
    second: float | None
    thread: str | None
    standard: str
    row: TableHole | None
    tapped: TappedHole | None
    form: TappedForm | None = None

    @property
    def second_is(self) -> SecondFigure:
        """What the second figure is, by the table's row that has it.

        ISO 6411 writes d1 and d3 of type B, DIN 332 writes d1 and d2; of type D it is the chamfer.
        """
        if self.second is None:
            return "not-sent"
        if self.thread is not None:
            return "chamfer-diameter"
        if self.type != "B":
            return "cone-diameter"
        cone = None if self.row is None else self.row.cone_diameter
        return "cone-diameter" if cone and _alike(self.second, cone) else "chamfer-diameter"

    @property
    def agrees(self) -> bool | None:
        """Whether the second figure is that of the table's row; None where one is missing."""
        expected: float | None = None
        if self.tapped is not None:
            expected = self.tapped.chamfer_diameter_mm
        elif self.row is not None:
            chamfer = self.second_is == "chamfer-diameter"
            expected = self.row.chamfer_diameter if chamfer else self.row.cone_diameter
        if self.second is None or expected is None:
            return None
        return _alike(self.second, expected)


def read_callout(text: str) -> Callout:
    """Read a callout such as `ISO 6411 - A 4/8,5`, `B 2.5/8`, `DIN 332 - R 4 x 8.5`, `D M10`.

    Raises Disagreement where it is none.
    """
    squeezed = re.sub(r"\s+", " ", text.strip().translate(str.maketrans("–—−×", "---x")))
    if found := _TAPPED.match(squeezed):
        thread = f"M{found['thread'].replace(',', '.')}"
        return Callout(
            "D",
            None,
            _value(found["second"]),
            thread,
            _named(found["name"]),
            None,
            tapped_holes().get(f"d-{thread.lower()}"),
            # GB/T 145 calls the one with a chamfer C.
            "DS" if found["type"].upper() == "C" else _FORMS[found["wall"].upper()],
        )
    found = _PLAIN.match(squeezed)
    if found is None or found["type"].upper() == "D":
        raise Disagreement(
            f"{text!r} is no callout of a center hole.",
            fields={"text": "should be like ISO 6411 - A 4/8,5, B 2,5/8, R 3,15/6,7 or D M10"},
        )
    kind = found["type"].upper()
    pilot, second = _value(found["first"]) or 0.0, _value(found["second"])
    _require_hole(text, pilot, second)
    return Callout(
        "A" if kind == "A" else "B" if kind == "B" else "C" if kind == "C" else "R",
        pilot,
        second,
        None,
        _named(found["name"]),
        _row_of("A" if kind == "C" else kind, pilot),
        None,
    )


def _require_hole(text: str, pilot: float, second: float | None) -> None:
    """Refuse figures in mm that no center hole has: no pilot, or one as wide as its cone."""
    if not 0.0 < pilot <= _LARGEST_MM or not pilot < (pilot + 1.0 if second is None else second):
        raise Disagreement(
            f"{text!r} is no center hole: its first figure is the pilot, the second the cone or "
            "the chamfer, in mm.",
            fields={
                "text": f"should name a pilot up to {plain(_LARGEST_MM)} mm and a wider second"
            },
        )


def callout_of(key: str) -> Callout:
    """The callout of a row of the tables, such as `a-4`, `b-2.5` or `d-m10`; raises Unreachable."""
    if key in tapped_holes():
        tapped = tapped_holes()[key]
        return Callout("D", None, None, tapped.thread, "DIN 332-2", None, tapped, "D")
    row = center_holes().get(key)
    if row is None or row.type not in ("A", "B", "R"):
        raise Unreachable(
            f"There is no metric center hole {key!r} to call out.",
            fields={"key": "should be a metric row of GET /v1/centers/holes, or of tapped-holes"},
        )
    second = row.chamfer_diameter if row.type == "B" else row.cone_diameter
    return Callout(row.type, row.pilot_diameter, second, None, "ISO 6411", row, None)


def written(callout: Callout, *, comma: bool) -> str:
    """The callout as ISO 6411 writes it, `ISO 6411 - A 4/8,5`; of a thread as DIN 332-2 does.

    Of a type B the chamfer is written, whichever figure was read.
    """
    if callout.thread is not None:
        return f"DIN 332-2 - {callout.form or 'D'} {callout.thread}"
    row, second = callout.row, callout.second
    if callout.type == "B" and callout.second_is == "cone-diameter":
        second = None if row is None else row.chamfer_diameter
    if second is None and row is not None:
        second = row.chamfer_diameter if callout.type == "B" else row.cone_diameter
    figures = "/".join(plain(f) for f in (callout.pilot, second) if f is not None)
    name = "DIN 332-1" if callout.type == "C" else "ISO 6411"
    return f"{name} - {callout.type} {figures.replace('.', ',') if comma else figures}"


def pilot_limits_mm(pilot_mm: float) -> tuple[float, float] | None:
    """Smallest and largest pilot in mm by the drill's k12; None past the grades held here.

    From memory of ISO 866: 0 below, IT12 above.

    >>> pilot_limits_mm(4.0)
    (4.0, 4.12)
    """
    above = next((grade for up_to, grade in _IT12_MM if pilot_mm <= up_to), None)
    return None if above is None else (pilot_mm, round(pilot_mm + above, 6))


def _row_of(kind: str, pilot: float) -> TableHole | None:
    rows = (r for r in center_holes().values() if r.type == kind and r.units == "mm")
    return next((row for row in rows if _alike(row.pilot_diameter, pilot)), None)


def _alike(one: float, other: float) -> bool:
    return abs(one - other) <= _SAME * other


def _value(text: str | None) -> float | None:
    return None if text is None else float(text.replace(",", "."))


def _named(name: str | None) -> str:
    return "" if name is None else re.sub(r"\s+", " ", name.upper()).strip(" -")
