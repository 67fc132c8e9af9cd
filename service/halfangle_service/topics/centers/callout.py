"""The callout of a center hole on a drawing, read and written."""

from collections.abc import Iterator
from typing import Annotated, Literal

from pydantic import Field

from halfangle_service.fields import Angle, RequestModel, ResultModel, Unit
from halfangle_service.fields.advisories import Advisory, caution, note
from halfangle_service.fields.base import Rule
from halfangle_service.fields.choice import one_of
from halfangle_service.operation import Outcome, Source, operation
from halfangle_service.trade.centers.callout import (
    CalledType,
    Callout,
    SecondFigure,
    callout_of,
    pilot_limits_mm,
    read_callout,
    written,
)
from halfangle_service.trade.wording import plain

_CALLOUT = Source(
    citation="ISO 6411:1982, simplified representation of center holes; DIN 332-1:1986 and DIN "
    "332-2 for d1 × d2 and threads; GB/T 145 calls the tapped form DS type C.",
    standing="from-memory",
)
_EXAMPLE = Source(
    citation="ISO 6411 - A 2,5/5,3 and R 4 × 8,5: designations printed in a textbook and in a scan "
    "of DIN 332-1.",
    standing="published",
)
_DRILL = Source(
    citation="ISO 866: pilot of a center drill k12, of ISO 286-1.", standing="from-memory"
)
Remains = Literal["is-required", "may-remain", "must-not-remain"]
_SYMBOLS: dict[Remains, str] = {
    "is-required": "Open arrowhead at the face, its point on the axis: the hole is required in the "
    "finished part.",
    "may-remain": "Plain leader to the face: the hole may remain in the finished part.",
    "must-not-remain": "Arrowhead closed by a line across, like a K: the hole must not remain in "
    "the finished part.",
}
CALLED = ("text", "key")
_Millimetres = Annotated[float, Unit("millimetre")]


class CenterCalloutRequest(RequestModel):
    """A callout to read, or a row of the tables to write as one."""

    rules = (Rule("one-of", CALLED),)

    text: Annotated[str, Field(min_length=1, max_length=60)] | None = Field(
        None,
        description="Callout as the drawing writes it; decimal comma or point.",
        examples=["ISO 6411 - A 4/8,5"],
    )
    key: str | None = Field(
        None,
        min_length=3,
        max_length=12,
        description="Row to call out: of `GET /v1/centers/holes` (metric) or of `tapped-holes`.",
        examples=["b-2.5"],
    )
    remains: Remains = Field(
        "may-remain", description="Whether the hole stays in the finished part."
    )


class CenterCalloutResult(ResultModel):
    """The hole called out, in millimetres, and how it is written."""

    type: CalledType = Field(description="Its type; D where it is tapped.")
    hole_key: str | None = Field(description="Row of the tables; null where none has this size.")
    standard_name: str = Field(description="Standard that the text names; empty where none.")
    thread: str | None = Field(description="Its thread; null but for type D.")
    second_figure_is: SecondFigure = Field(
        description="What the second figure was read as: ISO 6411 writes the chamfer of type B, "
        "DIN 332 its cone."
    )
    pilot_diameter_mm: _Millimetres | None = Field(description="Pilot, or bore over a thread.")
    smallest_pilot_diameter_mm: _Millimetres | None = Field(
        description="Smallest pilot by the drill's tolerance k12; null of type D."
    )
    largest_pilot_diameter_mm: _Millimetres | None = Field(description="Largest by the same.")
    cone_diameter_mm: _Millimetres | None = Field(
        description="Largest diameter of the cone: a limit, since the drill's body rubs beyond."
    )
    chamfer_diameter_mm: _Millimetres | None = Field(
        description="Protecting chamfer at the face; null where the type has none."
    )
    included_angle: Angle = Field(description="The cone's; of R and DR about, at its middle.")
    callout: str = Field(description="As ISO 6411 writes it, with a decimal comma.")
    callout_with_point: str = Field(description="The same with a decimal point.")
    drawing_symbol: str = Field(description="Symbol that the drawing shows with it, in words.")


@operation(
    "centers.callout",
    relations=(
        "type A, R: d1 / d2; type B: d1 / d3",
        "d1 k12: 0 below, IT12 above",
    ),
    sources=(_CALLOUT, _EXAMPLE, _DRILL),
    example={"text": "ISO 6411 - A 4/8,5", "remains": "is-required"},
)
def callout(request: CenterCalloutRequest) -> Outcome[CenterCalloutResult]:
    """Callout of a center hole.

    Reads what a drawing calls out (ISO 6411, DIN 332, tapped holes) and writes the callout of a row
    of the tables, with pilot, cone and chamfer.
    """
    one_of(request, *CALLED)
    read = callout_of(request.key or "") if request.text is None else read_callout(request.text)
    limits = None if read.pilot is None else pilot_limits_mm(read.pilot)
    result = CenterCalloutResult(
        type=read.type,
        hole_key=_key(read),
        standard_name=read.standard,
        thread=read.thread,
        second_figure_is=read.second_is,
        pilot_diameter_mm=read.tapped.pilot_diameter_mm if read.tapped else read.pilot,
        smallest_pilot_diameter_mm=None if limits is None else limits[0],
        largest_pilot_diameter_mm=None if limits is None else limits[1],
        cone_diameter_mm=_cone(read),
        chamfer_diameter_mm=_chamfer(read),
        included_angle=Angle.of(60.0),
        callout=written(read, comma=True),
        callout_with_point=written(read, comma=False),
        drawing_symbol=_SYMBOLS[request.remains],
    )
    return Outcome(result, tuple(_advisories(read)))


def _key(read: Callout) -> str | None:
    if read.tapped is not None:
        return read.tapped.key
    return None if read.row is None or read.type == "C" else read.row.key


def _cone(read: Callout) -> float | None:
    if read.tapped is not None:
        return read.tapped.cone_diameter_mm
    if read.second_is == "cone-diameter":
        return read.second
    return None if read.row is None else read.row.cone_diameter


def _chamfer(read: Callout) -> float | None:
    if read.second_is == "chamfer-diameter":
        return read.second
    if read.tapped is not None:
        return read.tapped.chamfer_diameter_mm if read.form == "DS" else None
    return None if read.row is None else read.row.chamfer_diameter


def _advisories(read: Callout) -> Iterator[Advisory]:
    if read.row is None and read.tapped is None:
        yield caution(
            "callout-not-in-table",
            "No table here has a hole of this type and size: is the first figure the pilot?",
        )
    if read.agrees is False:
        yield caution(
            "callout-not-in-table",
            f"The second figure, {plain(read.second or 0.0)} mm, is not that of the table's row: "
            "ask which one is meant.",
        )
    if read.type == "B" and read.second_is == "cone-diameter":
        yield note(
            "second-figure-is-the-cone",
            "The second figure is the cone's, as DIN 332 writes type B; ISO 6411 writes the "
            "chamfer's.",
        )
    if read.type == "C":
        yield caution(
            "type-c-by-standard",
            "Type C is a truncated recess in DIN 332-1, whose size is not in these tables, and a "
            "tapped hole in GB/T 145, which DIN 332-2 calls D: ask which one is meant.",
        )
