"""A tapered shank in its socket: seat match, and the runout that both and the seat make."""

from typing import Literal

from pydantic import Field

from halfangle_service.errors import Impossible
from halfangle_service.fields import (
    ARCSEC_PER_RADIAN,
    Angle,
    ArcsecOut,
    Length,
    LengthOut,
    NonNegativeLength,
    RequestModel,
    ResultModel,
    SignedLength,
    UnitsField,
)
from halfangle_service.fields.advisories import Advisory, caution, note
from halfangle_service.fields.runout import TirEstimate, tir_estimate
from halfangle_service.fields.slopes import SlopeFields, slope_of
from halfangle_service.operation import Outcome, Source, operation
from halfangle_service.trade.centers import adapter as shank
from halfangle_service.trade.cone import Slope
from halfangle_service.trade.runout.budget import Contributor, RunoutBudget, tilt_at_distance
from halfangle_service.trade.tables.tapers.designations import one_standard
from halfangle_service.trade.uncertainty import Forecast
from halfangle_service.trade.units import in_units
from halfangle_service.trade.wording import of_any_unit

_SEAT = Source(
    citation="Derived here: two coaxial tapers of unlike rate touch on one circle; the free end "
    "may rock by its radial gap.",
    standing="derived",
)
_HOLDING = Source(
    citation="A steel taper holds by itself up to about 7° included, and releases above 16°.",
    standing="common-practice-no-source",
)


class CenterAdapterRequest(RequestModel):
    """An adapter's or a center's shank in a socket."""

    units: UnitsField
    shank: SlopeFields = Field(description="The shank's taper.", examples=[{"one_in_x": 19.96}])
    socket: SlopeFields = Field(
        description="The socket's taper.", examples=[{"designation": "morse-2"}]
    )
    engagement: Length = Field(
        description="Length of the seat along the axis, in from the socket's mouth, in `units`.",
        examples=[2.5],
    )
    projection: NonNegativeLength = Field(
        description="Distance of the station from the socket's mouth, in `units`.", examples=[3.0]
    )
    diameter_difference: SignedLength | None = Field(
        None,
        description="Shank's less socket's diameter at the same gauge plane, in `units`; it moves "
        "the shank along the axis. The gauge diameters of two standard tapers count by themselves.",
    )
    socket_tir: NonNegativeLength | None = Field(
        None, description="TIR of the socket's bore at its mouth, in `units`."
    )
    socket_tilt_tir: NonNegativeLength | None = Field(
        None, description="Change of the socket's TIR over `engagement`, by tilt, in `units`."
    )
    adapter_tir: NonNegativeLength | None = Field(
        None,
        description="The adapter's own TIR, shank to what it carries, at the nose, in `units`.",
    )
    adapter_tilt_tir: NonNegativeLength | None = Field(
        None, description="Change of the adapter's own TIR over `engagement`, by tilt, in `units`."
    )
    limit_tir: Length | None = Field(None, description="TIR wanted at the station, in `units`.")


class CenterAdapterResult(ResultModel):
    """Seat match and runout."""

    shank_half_angle: Angle = Field(description="Half angle of the shank.")
    socket_half_angle: Angle = Field(description="Half angle of the socket.")
    half_angle_difference_arcsec: ArcsecOut = Field(description="Shank's less socket's.")
    bearing: shank.SeatBearing = Field(description="Where the shank bears.")
    gap_at_other_end: LengthOut = Field(description="Radial gap at the end that does not bear.")
    rock_arcsec: ArcsecOut = Field(description="Tilt to one side that the gap allows.")
    standoff: LengthOut | None = Field(
        description="How far the shank stands out of the socket, by its diameter and its angle, as "
        "`tapers.standoff` has it: positive out, negative in; null where the diameter is not "
        "stated."
    )
    standoff_from_diameter: LengthOut | None = Field(
        description="Its share by `diameter_difference` and the gauge diameters of two standard "
        "tapers; null where neither is stated."
    )
    standoff_from_angle: LengthOut = Field(
        description="Its share by the angles: nothing where the shank bears at the mouth."
    )
    tir: TirEstimate
    tir_at_nose: TirEstimate = Field(description="The same at the nose, the socket's mouth.")
    mend_first: Literal["socket_runout", "adapter_runout", "rocking_in_the_seat"] | None = Field(
        description="The largest at the station; null where nothing runs out."
    )
    forecast: Forecast | None = Field(
        description="Whether `tir` will keep `limit_tir`: `holds` where 95 of 100 assemblies are "
        "within it, `does-not-hold` where not even 5 of 100 are, else `may-not-hold`; with a cause "
        "not stated it is never said to hold. Null where no limit was sent."
    )
    not_stated: list[str] = Field(
        description="`diameter_difference` where it was not sent; the estimates name their own."
    )


@operation(
    "centers.adapter",
    relations=(
        "gap = l |taper difference|/2",
        "TIR by rocking = 2 (gap/l) × lever to the circle that bears",
        "TIR at projection = TIR at nose + change over l × projection/l",
        "stand-out = ΔD/(2 tan α where it bears); at the small end + l (1 - tan α_shank/"
        "tan α_socket)",
    ),
    sources=(_SEAT, _HOLDING),
    heavy=True,
    example={
        "units": "in",
        "shank": {"rate_of_taper": 0.0501},
        "socket": {"designation": "morse-2"},
        "engagement": 2.5,
        "projection": 3,
        "socket_tir": 0.0001,
        "adapter_tir": 0.0002,
        "limit_tir": 0.0005,
    },
)
def adapter(request: CenterAdapterRequest) -> Outcome[CenterAdapterResult]:
    """A tapered shank in its socket.

    Seat match of shank and socket, where it bears and how far it may rock, and the runout of
    socket, adapter and seat at the nose and at a projection.
    """
    ours = slope_of(request.shank, path="shank/")
    theirs = slope_of(request.socket, path="socket/")
    by_diameter = _standoff_from_diameter(request, ours, theirs)
    by_angle = shank.standoff_from_angle(request.engagement, ours, theirs)
    found = shank.seat(ours.rate, theirs.rate, request.engagement)
    at_nose, at_station = (_chain(request, found, z) for z in (0.0, request.projection))
    turned = ours.half_angle_rad - theirs.half_angle_rad
    result = CenterAdapterResult(
        shank_half_angle=Angle.of(ours.half_angle_degrees),
        socket_half_angle=Angle.of(theirs.half_angle_degrees),
        half_angle_difference_arcsec=turned * ARCSEC_PER_RADIAN,
        bearing=found.bearing,
        gap_at_other_end=found.gap,
        rock_arcsec=found.rock_rad * ARCSEC_PER_RADIAN,
        standoff=None if by_diameter is None else by_diameter + by_angle,
        standoff_from_diameter=by_diameter,
        standoff_from_angle=by_angle,
        tir=tir_estimate(at_station),
        tir_at_nose=tir_estimate(at_nose),
        mend_first=_mend_first(at_station),
        forecast=None if request.limit_tir is None else at_station.forecast(request.limit_tir),
        not_stated=["diameter_difference"] if request.diameter_difference is None else [],
    )
    return Outcome(result, _advice(result, theirs))


def _standoff_from_diameter(
    request: CenterAdapterRequest, ours: Slope, theirs: Slope
) -> float | None:
    """How far the shank stands out by its diameter; refuses one past the whole seat."""
    gauges = _gauge_diameters(request)
    if request.diameter_difference is None and gauges is None:
        return None
    own, others = gauges or (0.0, 0.0)
    difference = (request.diameter_difference or 0.0) + own - others
    standoff = shank.standoff_from_diameter(difference, ours, theirs)
    if abs(standoff) < request.engagement:
        return standoff
    way = "stands out" if standoff > 0.0 else "goes in"
    most = of_any_unit(abs(difference / standoff) * request.engagement)
    sizes = "should be a size that fits the other"
    raise Impossible(
        f"By its diameter the shank {way} {of_any_unit(abs(standoff))}, more than the seat's "
        f"{of_any_unit(request.engagement)}: it does not seat in this socket.",
        fields={"diameter_difference": f"should be between -{most} and {most} on this seat"}
        if gauges is None
        else {"shank/designation": sizes, "socket/designation": sizes},
    )


def _gauge_diameters(request: CenterAdapterRequest) -> tuple[float, float] | None:
    """Gauge diameters of shank and socket in `units`; None unless both are standard tapers."""
    tapers = [one_standard(taper.designation) for taper in (request.shank, request.socket)]
    ours, theirs = (
        None if taper is None else in_units(taper.gauge_diameter, taper.units, request.units)
        for taper in tapers
    )
    return None if ours is None or theirs is None else (ours, theirs)


def _chain(request: CenterAdapterRequest, seat: shank.Seat, distance: float) -> RunoutBudget:
    """The causes at a distance from the nose, each in the worst phase of its own tilt."""
    errors = (
        ("socket", request.socket_tir, request.socket_tilt_tir),
        ("adapter", request.adapter_tir, request.adapter_tilt_tir),
    )
    causes = [
        Contributor(
            f"{name}_runout", (tir or 0.0) + tilt_at_distance(tilt, request.engagement, distance)
        )
        for name, tir, tilt in errors
        if tir is not None or (tilt is not None and distance > 0.0)
    ]
    not_stated = [f"{name}_tir" for name, tir, _ in errors if tir is None]
    if distance > 0.0:
        not_stated += [f"{name}_tilt_tir" for name, _, tilt in errors if tilt is None]
    rocking = Contributor("rocking_in_the_seat", shank.rock_tir(seat, distance))
    if not causes and not rocking.tir:
        # A seat that does not rock says nothing of a socket and an adapter not stated.
        return RunoutBudget((), tuple(not_stated))
    return RunoutBudget((*causes, rocking), tuple(not_stated))


def _mend_first(chain: RunoutBudget) -> str | None:
    largest = max(chain.contributors, key=lambda cause: cause.tir, default=None)
    return largest.name if largest is not None and largest.tir > 0.0 else None


def _advice(result: CenterAdapterResult, socket: Slope) -> tuple[Advisory, ...]:
    given: list[Advisory] = []
    if result.bearing == "small-end":
        message = (
            "The shank bears at the small end only: it rocks at the nose, where the work is. Blue "
            "it in, and do not run it on this seat."
        )
        given.append(caution("bears-at-small-end", message))
    elif result.bearing == "large-end":
        message = (
            "The shank bears at the nose, which guides it best, but has nothing to hold it "
            "straight at the small end: blue it in."
        )
        given.append(note("bears-at-large-end", message))
    if socket.included_angle_degrees > shank.SELF_HOLDING_INCLUDED_DEG:
        given.append(
            caution("not-self-holding", "This taper does not hold by itself: it needs a drawbar.")
        )
    return tuple(given)
