"""Total run-out of a surface, from readings along it with the indicator set once."""

from collections.abc import Iterator
from typing import Annotated

from pydantic import Field

from halfangle_service.errors import Disagreement
from halfangle_service.fields import (
    ARCSEC_PER_RADIAN,
    ArcsecOut,
    Length,
    LengthOut,
    RequestModel,
    ResultModel,
    SignedLength,
    UnitsField,
)
from halfangle_service.fields.advisories import Advisory, note
from halfangle_service.operation import Outcome, Source, operation
from halfangle_service.trade import elementary
from halfangle_service.trade.decimals import tidy
from halfangle_service.trade.runout.total import SurfaceRunout, surface_runout
from halfangle_service.trade.wording import of_any_unit, percent

_TOTAL = Source(
    citation="ISO 1101:2017 and ASME Y14.5-2018, circular and total run-out, as summarised in "
    "teaching texts.",
    standing="published",
)
_CONE = Source(
    citation="Derived here: the means of the sections rise along the axis by the taper's half "
    "angle and bend with the surface line.",
    standing="derived",
)
#: Part of the total run-out from which on the taper of the surface makes most of it.
_MOST = 0.5


class RunoutSurfaceSection(RequestModel):
    """One section of the surface."""

    station: SignedLength = Field(description="Its station along the axis.", examples=[0.0])
    section_readings: Annotated[list[SignedLength], Field(min_length=2, max_length=120)] = Field(
        description="Readings round it; its highest and lowest will do. More is metal nearer to "
        "the indicator.",
        examples=[[0.0, 0.02]],
    )


class RunoutTotalRequest(RequestModel):
    """Sections of one surface, read with one setting of the indicator."""

    units: UnitsField
    sections: Annotated[list[RunoutSurfaceSection], Field(min_length=2, max_length=60)] = Field(
        description="The sections, in any order; the indicator is moved parallel to the datum "
        "axis between them and not set anew."
    )
    limit_total_runout: Length | None = Field(None, description="What the drawing allows.")


class RunoutSectionFound(ResultModel):
    """One section."""

    station: LengthOut = Field(description="Its station.")
    circular_runout: LengthOut = Field(description="Highest less lowest reading of the section.")
    mean_reading: LengthOut = Field(description="Mean of its readings.")
    smallest_section_reading: LengthOut = Field(description="Its lowest reading.")
    largest_section_reading: LengthOut = Field(description="Its highest reading.")


class RunoutTotalResult(ResultModel):
    """Total run-out, and what makes it."""

    total_runout: LengthOut = Field(description="Highest less lowest reading of the whole surface.")
    circular_runout: LengthOut = Field(description="The greatest of the sections.")
    circular_at: RunoutSectionFound = Field(description="That section.")
    half_taper_arcsec: ArcsecOut = Field(
        description="Rise of the mean reading along the axis as an angle: half of the taper; "
        "positive where the surface rises with the station."
    )
    taper_over_length: LengthOut = Field(
        description="That rise between the outermost sections, on the radius."
    )
    left_by_taper: LengthOut = Field(
        description="Range of the means about that line: the surface line's bend."
    )
    margin: LengthOut | None = Field(
        description="Limit less total run-out; null without a limit. No verdict: see "
        "inspection.verdict for that."
    )
    sections: list[RunoutSectionFound] = Field(description="Each section, in the order sent.")


@operation(
    "runout.total",
    relations=(
        "total run-out = highest − lowest reading of all, the indicator set once",
        "circular run-out = greatest of highest − lowest of each section",
        "circular run-out ≤ total run-out",
    ),
    sources=(_TOTAL, _CONE),
    example={
        "units": "mm",
        "sections": [
            {"station": 0, "section_readings": [-0.09, -0.07]},
            {"station": 20, "section_readings": [-0.05, -0.02]},
            {"station": 40, "section_readings": [0.0, 0.02]},
        ],
        "limit_total_runout": 0.1,
    },
    largest_request="60 sections of 120 readings",
    heavy=lambda request: sum(len(s.section_readings) for s in request.sections) > _MANY,
)
def total(request: RunoutTotalRequest) -> Outcome[RunoutTotalResult]:
    """Total run-out of a surface.

    Total run-out of a shaft or bore from readings along it with one setting of the indicator, the
    greatest circular run-out, and how much of it is taper.
    """
    stations = [section.station for section in request.sections]
    _require_apart(stations)
    found = surface_runout(stations, [s.section_readings for s in request.sections])
    result = _result(request, stations, found)
    return Outcome(result, tuple(_advisories(result)))


#: More readings than this take more than some milliseconds.
_MANY = 1000


def _require_apart(stations: list[float]) -> None:
    for place, station in enumerate(stations):
        if station in stations[:place]:
            raise Disagreement(
                f"Two sections have the station {of_any_unit(station)}.",
                fields={f"sections/{place}/station": "should be another than those before"},
            )


def _result(
    request: RunoutTotalRequest, stations: list[float], found: SurfaceRunout
) -> RunoutTotalResult:
    worst = found.circular.index(max(found.circular))
    limit = request.limit_total_runout
    sections = [
        RunoutSectionFound(
            station=section.station,
            circular_runout=found.circular[place],
            mean_reading=found.means[place],
            smallest_section_reading=min(section.section_readings),
            largest_section_reading=max(section.section_readings),
        )
        for place, section in enumerate(request.sections)
    ]
    total = tidy(found.total, max(abs(mean) for mean in found.means))
    return RunoutTotalResult(
        total_runout=total,
        circular_runout=found.circular[worst],
        circular_at=sections[worst],
        half_taper_arcsec=elementary.atan(found.slope) * ARCSEC_PER_RADIAN,
        taper_over_length=found.slope * (max(stations) - min(stations)),
        left_by_taper=found.left,
        margin=None if limit is None else tidy(limit - total, limit),
        sections=sections,
    )


def _advisories(result: RunoutTotalResult) -> Iterator[Advisory]:
    rise = abs(result.taper_over_length)
    if result.total_runout and rise > _MOST * result.total_runout:
        yield note(
            "taper-makes-the-runout",
            "The taper of the surface makes "
            f"{percent(min(100.0, 100.0 * rise / result.total_runout))} of the total run-out: "
            "mend the angle, or see that the indicator is moved parallel to the axis.",
        )
