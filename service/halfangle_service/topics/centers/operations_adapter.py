"""A tapered shank in a socket: models to maths and back."""

import math

from halfangle_service.errors import Disagreement, Impossible
from halfangle_service.fields import ARCSEC_PER_RADIAN, angle_from_radians, from_mm, to_mm
from halfangle_service.fields.advisories import Advisory, caution, note
from halfangle_service.operation import Operation, Outcome, Source
from halfangle_service.topics.centers.models_adapter import (
    CenterAdapterRequest,
    CenterAdapterResult,
    CenterAdapterShare,
    CenterTaper,
)
from halfangle_service.trade.centers import adapter as shank
from halfangle_service.trade.tables.tapers.standard import find_standard
from halfangle_service.trade.wording import plain

_SEAT = Source(
    citation="Derived here: two coaxial tapers of unlike rate touch on one circle; the free end "
    "may rock by its radial gap.",
    standing="derived",
)
_HOLDING = Source(
    citation="A steel taper holds by itself up to about 7° included, and releases above 16°.",
    standing="common-practice-no-source",
)


def adapter(request: CenterAdapterRequest) -> Outcome[CenterAdapterResult]:
    """Seat match of a shank in its socket, and the runout at the nose and at a station."""
    ours, theirs = _rate(request.shank, "shank"), _rate(request.socket, "socket")
    shift = shank.axial_stand_off(_difference(request), theirs)
    _require_seated(request, shift)
    found = shank.seat(ours, theirs, request.engagement)
    shares = _shares(request, found)
    at_station = [share.tir_at_station for share in shares]
    worst = math.fsum(at_station)
    first = max(shares, key=lambda share: share.tir_at_station)
    turned = shank.half_angle(ours) - shank.half_angle(theirs)
    result = CenterAdapterResult(
        shank_half_angle=angle_from_radians(shank.half_angle(ours)),
        socket_half_angle=angle_from_radians(shank.half_angle(theirs)),
        half_angle_difference_arcsec=turned * ARCSEC_PER_RADIAN,
        bearing=found.bearing,
        gap_at_other_end=found.gap,
        rock_arcsec=found.rock_rad * ARCSEC_PER_RADIAN,
        axial_shift=shift,
        shares=shares,
        worst_tir_at_nose=math.fsum(share.tir_at_nose for share in shares),
        worst_tir_at_station=worst,
        rss_tir_at_station=math.sqrt(math.fsum(tir * tir for tir in at_station)),
        mend_first=first.name if first.tir_at_station > 0.0 else None,
        within_limit=None if request.limit_tir is None else worst <= request.limit_tir,
    )
    return Outcome(result, _advice(result, theirs))


def _rate(taper: CenterTaper, field: str) -> float:
    """Rate on the diameter, by the standard or as found; refuses both, or neither."""
    if (taper.standard is None) == (taper.taper_on_diameter is None):
        message = "send this or the other"
        raise Disagreement(
            f"The {field}'s taper is either a standard one or a rate: one of them.",
            fields={f"{field}/standard": message, f"{field}/taper_on_diameter": message},
        )
    if taper.standard is not None:
        return find_standard(taper.standard, field=f"{field}/standard").rate
    return float(taper.taper_on_diameter or 0.0)


def _difference(request: CenterAdapterRequest) -> float:
    """Shank's less socket's diameter at the gauge plane; of unlike standard tapers, theirs too."""
    ours, theirs = request.shank.standard, request.socket.standard
    if ours is None or theirs is None:
        return request.diameter_difference
    gauges = [
        from_mm(to_mm(taper.gauge_diameter, taper.units), request.units)
        for taper in (find_standard(ours), find_standard(theirs))
    ]
    return request.diameter_difference + gauges[0] - gauges[1]


def _require_seated(request: CenterAdapterRequest, shift: float) -> None:
    """Refuse a shank that its diameter puts past the whole seat."""
    if abs(shift) < request.engagement:
        return
    way = "stands out" if shift > 0.0 else "goes in"
    sizes = "should be a size that fits the other"
    both = request.shank.standard is not None and request.socket.standard is not None
    raise Impossible(
        f"By its diameter the shank {way} {plain(abs(shift), 5)}, more than the seat's "
        f"{plain(request.engagement, 5)}: it does not seat in this socket.",
        fields={"shank/standard": sizes, "socket/standard": sizes}
        if both
        else {"diameter_difference": "moves the shank by the whole seat or more"},
    )


def _shares(request: CenterAdapterRequest, found: shank.Seat) -> list[CenterAdapterShare]:
    """Each cause at the nose and at the station, in the worst phase of its own tilt."""
    out = request.projection / request.engagement
    return [
        CenterAdapterShare(
            name="socket",
            tir_at_nose=request.socket_tir,
            tir_at_station=request.socket_tir + request.socket_tilt_tir * out,
        ),
        CenterAdapterShare(
            name="adapter",
            tir_at_nose=request.adapter_tir,
            tir_at_station=request.adapter_tir + request.adapter_tilt_tir * out,
        ),
        CenterAdapterShare(
            name="rocking in the seat",
            tir_at_nose=shank.rock_tir(found, 0.0),
            tir_at_station=shank.rock_tir(found, request.projection),
        ),
    ]


def _advice(result: CenterAdapterResult, socket_taper: float) -> tuple[Advisory, ...]:
    given: list[Advisory] = []
    if result.bearing == "small end":
        given.append(
            caution(
                "bears-at-small-end",
                "The shank bears at the small end only: it rocks at the nose, where the work is. "
                "Blue it in, and do not run it on this seat.",
            )
        )
    elif result.bearing == "large end":
        given.append(
            note(
                "bears-at-large-end",
                "The shank bears at the nose, which guides it best, but has nothing to hold it "
                "straight at the small end: blue it in.",
            )
        )
    if 2.0 * math.degrees(shank.half_angle(socket_taper)) > shank.SELF_HOLDING_INCLUDED_DEG:
        given.append(
            caution("not-self-holding", "This taper does not hold by itself: it needs a drawbar.")
        )
    return tuple(given)


ADAPTER = Operation(
    topic="centers",
    verb="adapter",
    title="A tapered shank in its socket",
    summary="Seat match of shank and socket, where it bears and how far it may rock, and the "
    "runout of socket, adapter and seat at the nose and at a projection.",
    request=CenterAdapterRequest,
    result=CenterAdapterResult,
    calculate=adapter,
    relations=(
        "gap = l |taper difference|/2",
        "TIR by rocking = 2 (gap/l) × lever to the circle that bears",
        "TIR at projection = TIR at nose + change over l × projection/l",
        "axial shift = ΔD/taper",
    ),
    sources=(_SEAT, _HOLDING),
    example={
        "units": "in",
        "shank": {"taper_on_diameter": 0.0501},
        "socket": {"standard": "morse-2"},
        "engagement": 2.5,
        "projection": 3,
        "socket_tir": 0.0001,
        "adapter_tir": 0.0002,
        "limit_tir": 0.0005,
    },
)
