"""What eccentric centers do to the work between them."""

from pydantic import Field

from halfangle_service.errors import Impossible
from halfangle_service.fields import (
    ARCSEC_PER_RADIAN,
    ArcsecOut,
    Direction,
    Length,
    LengthOut,
    NonNegativeLength,
    RequestModel,
    ResultModel,
    SignedLength,
    UnitsField,
)
from halfangle_service.fields.advisories import Advisory, caution, note
from halfangle_service.fields.choice import sent_of
from halfangle_service.fields.runout import HighSpot, RunoutVector, SurfaceField
from halfangle_service.operation import Outcome, operation
from halfangle_service.topics.centers.sources import STRAIGHT_AXIS
from halfangle_service.trade import elementary
from halfangle_service.trade.centers.effect import (
    Ends,
    turned_end_for_end,
    worst_offset,
    worst_tilt,
)
from halfangle_service.trade.runout.vectors import (
    Surface,
    center_of,
    difference,
    direction,
    vector,
)
from halfangle_service.trade.wording import of_any_unit

#: Fields of a request of which nothing counts where they are not sent.
STATED_OR_NOT = ("part_at_first", "part_at_second", "second_height", "second_line")


#: More stations than this may take more than some milliseconds.
MANY_STATIONS = 20


class CenterError(RequestModel):
    """How far a center's cone is off the axis of rotation."""

    eccentricity: NonNegativeLength = Field(description="Its eccentricity, half its TIR.")
    high_spot: HighSpot | None = Field(
        None,
        description="Direction in which its cone lies off, in degrees on the spindle; not stated "
        "where absent: of an eccentric center without it only the worst clocking is told.",
        examples=[0],
    )
    turns: bool = Field(description="True for a center that turns with the work.")

    @property
    def directed(self) -> bool:
        """True where its eccentricity is none, or known with its direction."""
        return self.high_spot is not None or self.eccentricity == 0.0

    @property
    def offset(self) -> complex:
        """Its eccentricity as a vector."""
        return vector(self.eccentricity, self.high_spot or 0.0)


class CenterEffectRequest(RequestModel):
    """A part between two centers that are off."""

    units: UnitsField
    surface: SurfaceField
    first: CenterError = Field(description="Center at station 0.")
    second: CenterError = Field(description="Center at the other end.")
    distance_between_centers: Length = Field(description="Distance between the centers.")
    stations_from_first: list[NonNegativeLength] = Field(
        min_length=1, max_length=100, description="Distances from the first center, in `units`."
    )
    part_at_first: RunoutVector | None = Field(
        None,
        description="The part's own runout about its center holes at station 0, as first put in, "
        "read on `surface`; not stated where absent.",
    )
    part_at_second: RunoutVector | None = Field(
        None, description="The same at the other end; not stated where absent."
    )
    second_height: SignedLength | None = Field(
        None,
        description="How much higher the second center stands than the first, in `units`; not "
        "stated where absent.",
    )
    second_line: SignedLength | None = Field(
        None,
        description="How far the second center stands beside the line of the ways through the "
        "first, in `units`; not stated where absent.",
    )


class CenterEffectAt(ResultModel):
    """What is seen at one station; directions are null where nothing runs out.

    What needs the direction of an eccentric center is null where that was not stated.
    """

    station_from_first: LengthOut = Field(description="The station, from the first center.")
    apparent_tir: LengthOut | None = Field(description="Runout made by the centers that turn.")
    high_spot: Direction | None = Field(
        description="Angle at which an indicator on `surface` reads highest by that runout."
    )
    standing_offset: LengthOut | None = Field(
        description="Offset made by centers that stand still: taper or place, no runout."
    )
    worst_clocking_tir: LengthOut = Field(
        description="Runout at the worst clocking of the same centers."
    )
    part_tir: LengthOut | None = Field(
        description="The part's own runout at this section, on the line through both ends; with "
        "one end stated it is known at that end alone, and else null, as is what follows from it."
    )
    seen_tir: LengthOut | None = Field(
        description="What an indicator shows: centers and part together."
    )
    seen_high_spot: Direction | None = Field(
        description="Angle at which an indicator on `surface` reads highest."
    )
    seen_tir_end_for_end: LengthOut | None = Field(
        description="The same section of the part after it is turned end for end, its mark kept up."
    )
    height_offset: LengthOut | None = Field(
        description="Height of the axis here over the first center, by `second_height`; null "
        "without it."
    )
    line_offset: LengthOut | None = Field(
        description="Distance of the axis here from the line of the ways, by `second_line`: the "
        "miss of an indicator set on the crest at the first center; null without it."
    )


class CenterEffectResult(ResultModel):
    """What both centers do."""

    at_stations: list[CenterEffectAt] = Field(description="In the order sent.")
    tilt_arcsec: ArcsecOut | None = Field(
        description="Tilt of the axis with the directions sent; null where one was not stated."
    )
    worst_tilt_arcsec: ArcsecOut = Field(description="Tilt with the centers opposed.")
    bench_height_tilt_arcsec: ArcsecOut | None = Field(
        description="Slope of the bench centers' axis in height: taken for taper by an indicator "
        "that runs along the top; signed as `second_height`, null without it."
    )
    bench_line_tilt_arcsec: ArcsecOut | None = Field(
        description="Slope of their axis in plan: taken for taper by an indicator that runs along "
        "the side; signed as `second_line`, null without it."
    )
    not_stated: list[str] = Field(
        description="Of the centers' `high_spot`, `part_at_first`, `part_at_second`, "
        "`second_height` and `second_line` those not sent: nothing is known of them, and nothing "
        "follows from them."
    )


@operation(
    "centers.effect",
    relations=(
        "e(z) = e1 (1 - z/L) + e2 z/L",
        "TIR = 2 |e| of the centers that turn",
        "seen = 2 |e(z) + part(z)|; end for end 2 |e(L - z) + conjugate of part(z)|",
        "in a bore the center lies opposite to the high spot",
    ),
    sources=(STRAIGHT_AXIS,),
    example={
        "units": "in",
        "surface": "external",
        "first": {"eccentricity": 0.0002, "high_spot": 0, "turns": True},
        "second": {"eccentricity": 0.0002, "high_spot": 180, "turns": True},
        "distance_between_centers": 6,
        "stations_from_first": [0, 3, 6],
    },
    heavy=lambda request: len(request.stations_from_first) > MANY_STATIONS,
)
def effect(request: CenterEffectRequest) -> Outcome[CenterEffectResult]:
    """What eccentric centers do to the work.

    Runout, standing offset and tilt of a part between two centers, one or both of which turn.
    """
    length = request.distance_between_centers
    for place, station in enumerate(request.stations_from_first):
        if station > length:
            raise Impossible(
                f"Station {of_any_unit(station)} is outside the part, which ends at "
                f"{of_any_unit(length)}.",
                fields={
                    f"stations_from_first/{place}": "should be distance_between_centers or less"
                },
            )
    both = _centers(request)
    worst = worst_tilt(request.first.eccentricity, request.second.eccentricity, length)
    part = _part_ends(request)
    result = CenterEffectResult(
        at_stations=[
            _effect_at(request, _part_at(part, length, z), z) for z in request.stations_from_first
        ],
        tilt_arcsec=None if both is None else both.tilt_rad * ARCSEC_PER_RADIAN,
        worst_tilt_arcsec=worst * ARCSEC_PER_RADIAN,
        bench_height_tilt_arcsec=_bench_tilt(request.second_height, length),
        bench_line_tilt_arcsec=_bench_tilt(request.second_line, length),
        not_stated=_not_stated(request),
    )
    return Outcome(result, _advice(request))


def _not_stated(request: CenterEffectRequest) -> list[str]:
    centers = {"first": request.first, "second": request.second}
    stated = sent_of(request, *STATED_OR_NOT)
    return [
        *(f"{name}/high_spot" for name, center in centers.items() if not center.directed),
        *(name for name in STATED_OR_NOT if name not in stated),
    ]


def _centers(request: CenterEffectRequest, *, turns: bool | None = None) -> Ends | None:
    """Both centers, or only what turns or stands still of them; None without a direction."""
    ends = [
        center if turns in (None, center.turns) else None
        for center in (request.first, request.second)
    ]
    if not all(end is None or end.directed for end in ends):
        return None
    first, second = (0j if end is None else end.offset for end in ends)
    return Ends(first, second, request.distance_between_centers)


def _part_ends(request: CenterEffectRequest) -> tuple[complex | None, complex | None]:
    """The part's own eccentricity at both ends, as vectors; None where it was not stated."""
    first, second = (
        None if end is None else end.center(request.surface, path=f"{name}/")
        for name, end in (
            ("part_at_first", request.part_at_first),
            ("part_at_second", request.part_at_second),
        )
    )
    return first, second


def _part_at(
    ends: tuple[complex | None, complex | None], length: float, station: float
) -> complex | None:
    """The part's own vector at a station; None where it takes an end that was not stated."""
    first, second = ends
    if first is not None and second is not None:
        return Ends(first, second, length).at(station)
    if station == 0.0:
        return first
    return second if station == length else None


def _bench_tilt(off: float | None, length: float) -> float | None:
    return None if off is None else elementary.atan(off / length) * ARCSEC_PER_RADIAN


def _bench_offset(off: float | None, station: float, length: float) -> float | None:
    return None if off is None else off * station / length


def _effect_at(
    request: CenterEffectRequest, part: complex | None, station: float
) -> CenterEffectAt:
    length, surface = request.distance_between_centers, request.surface
    turning, standing = (_centers(request, turns=turns) for turns in (True, False))
    centers = None if turning is None else turning.at(station)
    swung = [c.eccentricity if c.turns else 0.0 for c in (request.first, request.second)]
    shown = turned = None
    if turning is not None and centers is not None and part is not None:
        shown = difference(centers, -part)
        turned = difference(turning.at(length - station), -turned_end_for_end(part))
    return CenterEffectAt(
        station_from_first=station,
        apparent_tir=_tir(centers),
        high_spot=_reads_highest(centers, surface),
        standing_offset=None if standing is None else abs(standing.at(station)),
        worst_clocking_tir=2.0 * worst_offset(swung[0], swung[1], length, station),
        part_tir=_tir(part),
        seen_tir=_tir(shown),
        seen_high_spot=_reads_highest(shown, surface),
        seen_tir_end_for_end=_tir(turned),
        height_offset=_bench_offset(request.second_height, station, length),
        line_offset=_bench_offset(request.second_line, station, length),
    )


def _tir(offset: complex | None) -> float | None:
    return None if offset is None else 2.0 * abs(offset)


def _reads_highest(offset: complex | None, surface: Surface) -> Direction | None:
    return None if offset is None else Direction.of(direction(center_of(offset, surface)))


def _advice(request: CenterEffectRequest) -> tuple[Advisory, ...]:
    given: list[Advisory] = []
    if request.part_at_first is not None or request.part_at_second is not None:
        message = (
            "Turning end for end leaves part of both errors mixed. To tell them apart turn the "
            "part by 180° on the centers and send both readings to runout.reversal."
        )
        given.append(note("told-apart-by-clocking", message))
    if request.second_height or request.second_line:
        message = (
            "Bench centers off in height or line read as taper of a straight part: turn the part "
            "end for end and take half the difference of the two tapers read."
        )
        given.append(caution("bench-centers-off", message))
    return tuple(given)
