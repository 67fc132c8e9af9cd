# Generated from openapi/openapi.json by openapi/generate.py. Do not edit.
"""Calls of the topic `centers`."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Any, Literal

from halfangle_client.endpoint import AsyncSender, Endpoint, Sender

if TYPE_CHECKING:
    from halfangle_client.generated import models

_ADAPTER: Endpoint[models.CenterAdapterAnswer] = Endpoint(
    name="centers.adapter",
    method="POST",
    path="/v1/centers/adapter",
    answer="CenterAdapterAnswer",
    accept="application/json",
    sends="application/json",
    heavy=True,
)
_BALLS: Endpoint[models.CenterBallsAnswer] = Endpoint(
    name="centers.balls",
    method="POST",
    path="/v1/centers/balls",
    answer="CenterBallsAnswer",
    accept="application/json",
    sends="application/json",
)
_CALLOUT: Endpoint[models.CenterCalloutAnswer] = Endpoint(
    name="centers.callout",
    method="POST",
    path="/v1/centers/callout",
    answer="CenterCalloutAnswer",
    accept="application/json",
    sends="application/json",
)
_CONTACT: Endpoint[models.CenterContactAnswer] = Endpoint(
    name="centers.contact",
    method="POST",
    path="/v1/centers/contact",
    answer="CenterContactAnswer",
    accept="application/json",
    sends="application/json",
    heavy=True,
)
_EFFECT: Endpoint[models.CenterEffectAnswer] = Endpoint(
    name="centers.effect",
    method="POST",
    path="/v1/centers/effect",
    answer="CenterEffectAnswer",
    accept="application/json",
    sends="application/json",
    heavy=True,
)
_GET_HOLE: Endpoint[models.CenterHoleRowAnswer] = Endpoint(
    name="centers.get_hole",
    method="GET",
    path="/v1/centers/holes/{key}",
    answer="CenterHoleRowAnswer",
    accept="application/json",
)
_GET_POINT: Endpoint[models.CenterPointEntryAnswer] = Endpoint(
    name="centers.get_point",
    method="GET",
    path="/v1/centers/points/{key}",
    answer="CenterPointEntryAnswer",
    accept="application/json",
)
_GET_SHAFT_RANGE: Endpoint[models.CenterHoleByShaftAnswer] = Endpoint(
    name="centers.get_shaft_range",
    method="GET",
    path="/v1/centers/by-shaft/{key}",
    answer="CenterHoleByShaftAnswer",
    accept="application/json",
)
_GET_TAPPED_HOLE: Endpoint[models.TappedHoleEntryAnswer] = Endpoint(
    name="centers.get_tapped_hole",
    method="GET",
    path="/v1/centers/tapped-holes/{key}",
    answer="TappedHoleEntryAnswer",
    accept="application/json",
)
_HOLE: Endpoint[models.CenterHoleAnswer] = Endpoint(
    name="centers.hole",
    method="POST",
    path="/v1/centers/hole",
    answer="CenterHoleAnswer",
    accept="application/json",
    sends="application/json",
    heavy=True,
)
_LIMITS: Endpoint[models.CenterLimitsAnswer] = Endpoint(
    name="centers.limits",
    method="POST",
    path="/v1/centers/limits",
    answer="CenterLimitsAnswer",
    accept="application/json",
    sends="application/json",
)
_LIST_BY_SHAFT: Endpoint[models.CenterHoleByShaftListAnswer] = Endpoint(
    name="centers.list_by_shaft",
    method="GET",
    path="/v1/centers/by-shaft",
    answer="CenterHoleByShaftListAnswer",
    accept="application/json",
)
_LIST_HOLES: Endpoint[models.CenterHoleListAnswer] = Endpoint(
    name="centers.list_holes",
    method="GET",
    path="/v1/centers/holes",
    answer="CenterHoleListAnswer",
    accept="application/json",
)
_LIST_POINTS: Endpoint[models.CenterPointListAnswer] = Endpoint(
    name="centers.list_points",
    method="GET",
    path="/v1/centers/points",
    answer="CenterPointListAnswer",
    accept="application/json",
)
_LIST_TAPPED_HOLES: Endpoint[models.TappedHoleListAnswer] = Endpoint(
    name="centers.list_tapped_holes",
    method="GET",
    path="/v1/centers/tapped-holes",
    answer="TappedHoleListAnswer",
    accept="application/json",
)
_OUT_OF_ROUND: Endpoint[models.CenterOutOfRoundAnswer] = Endpoint(
    name="centers.out_of_round",
    method="POST",
    path="/v1/centers/out-of-round",
    answer="CenterOutOfRoundAnswer",
    accept="application/json",
    sends="application/json",
)
_REGRIND: Endpoint[models.CenterRegrindAnswer] = Endpoint(
    name="centers.regrind",
    method="POST",
    path="/v1/centers/regrind",
    answer="CenterRegrindAnswer",
    accept="application/json",
    sends="application/json",
)
_STANDING_OFFSET: Endpoint[models.StandingOffsetAnswer] = Endpoint(
    name="centers.standing_offset",
    method="POST",
    path="/v1/centers/standing-offset",
    answer="StandingOffsetAnswer",
    accept="application/json",
    sends="application/json",
)

ENDPOINTS: tuple[Endpoint[Any], ...] = (
    _ADAPTER,
    _BALLS,
    _CALLOUT,
    _CONTACT,
    _EFFECT,
    _GET_HOLE,
    _GET_POINT,
    _GET_SHAFT_RANGE,
    _GET_TAPPED_HOLE,
    _HOLE,
    _LIMITS,
    _LIST_BY_SHAFT,
    _LIST_HOLES,
    _LIST_POINTS,
    _LIST_TAPPED_HOLES,
    _OUT_OF_ROUND,
    _REGRIND,
    _STANDING_OFFSET,
)


class CentersCalls:
    """Calls of the topic `centers`."""

    def __init__(self, sender: Sender) -> None:
        self._sender = sender

    def adapter(
        self,
        *,
        units: Literal["in", "mm"],
        shank: models.SlopeFields,
        socket: models.SlopeFields,
        engagement: float,
        projection: float,
        diameter_difference: float | None = None,
        socket_tir: float | None = None,
        socket_tilt_tir: float | None = None,
        adapter_tir: float | None = None,
        adapter_tilt_tir: float | None = None,
        limit_tir: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.CenterAdapterAnswer:
        """A tapered shank in its socket.

        Seat match of shank and socket, where it bears and how far it may rock, and the runout of
        socket, adapter and seat at the nose and at a projection.

        Args:
            units: Unit of every length here and in the answer.
            shank: The shank's taper.
            socket: The socket's taper.
            engagement: Length of the seat along the axis, in from the socket's mouth, in `units`.
                [length, 1e-06 to 10000]
            projection: Distance of the station from the socket's mouth, in `units`. [length, 0 to
                10000]
            diameter_difference: Shank's less socket's diameter at the same gauge plane, in `units`;
                it moves the shank along the axis. The gauge diameters of two standard tapers count
                by themselves. [length, -10000 to 10000]
            socket_tir: TIR of the socket's bore at its mouth, in `units`. [length, 0 to 10000]
            socket_tilt_tir: Change of the socket's TIR over `engagement`, by tilt, in `units`.
                [length, 0 to 10000]
            adapter_tir: The adapter's own TIR, shank to what it carries, at the nose, in `units`.
                [length, 0 to 10000]
            adapter_tilt_tir: Change of the adapter's own TIR over `engagement`, by tilt, in
                `units`. [length, 0 to 10000]
            limit_tir: TIR wanted at the station, in `units`. [length, 1e-06 to 10000]
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `heavy_timeout_seconds`. [second, over 0, at most
                86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.CenterAdapterAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.centers.adapter(units="in", shank=models.SlopeFields(rate_of_taper=0.0501),
                socket=models.SlopeFields(designation="morse-2"), engagement=2.5, projection=3,
                socket_tir=0.0001, adapter_tir=0.0002, limit_tir=0.0005)
        """
        return self._sender.send(
            _ADAPTER,
            {
                "units": units,
                "shank": shank,
                "socket": socket,
                "engagement": engagement,
                "projection": projection,
                "diameter_difference": diameter_difference,
                "socket_tir": socket_tir,
                "socket_tilt_tir": socket_tilt_tir,
                "adapter_tir": adapter_tir,
                "adapter_tilt_tir": adapter_tilt_tir,
                "limit_tir": limit_tir,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def balls(
        self,
        *,
        units: Literal["in", "mm"],
        mouth_diameter: float,
        pilot_diameter: float,
        included_angle: float | str | None = None,
        half_angle: float | str | None = None,
        taper_per_foot: float | None = None,
        one_in_x: float | None = None,
        rate_of_taper: float | None = None,
        designation: str | None = None,
        chamfer_diameter: float | None = None,
        mouth_diameter_tolerance: float | None = None,
        included_angle_tolerance_arcsec: float | None = None,
        balls_in: Sequence[Literal["in", "mm"]] | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.CenterBallsAnswer:
        """Stock balls for a center hole.

        The bearing balls that touch a center hole's cone, and the height over the face that each
        reads at the nominal size and at the limits of diameter and angle.

        Largest request: the stock balls of two series.

        Args:
            units: Unit of every length here and in the answer.
            mouth_diameter: Diameter at the mouth of the cone. [length, 1e-06 to 10000]
            pilot_diameter: Diameter of the pilot. [length, 1e-06 to 10000]
            included_angle: Angle between opposite surfaces of the cone, in degrees. [degree, over
                0.01, under 179; or text in degrees, minutes, seconds]
            half_angle: Angle between the cone's axis and its surface, in degrees. [degree, over
                0.005, under 89.5; or text in degrees, minutes, seconds]
            taper_per_foot: Inches of diameter a foot of length, whatever `units` are. [inch per
                foot, 0.003 to 2000]
            one_in_x: The x of a taper written 1:x, on the diameter (ISO 1119). [0.005 to 5000]
            rate_of_taper: Change of diameter for one unit of length, C = 1/x (ISO 3040). [length
                per length, 0.0002 to 200]
            designation: Designation of a standard taper or rate, as `GET /v1/tapers/standard` and
                `GET /v1/tapers/rates` list them, or what a toolmaker calls it: `MT3`, `B&S 9`,
                `JT33`, `NT40`, `1:20`. The answer says what it was read as. [1 to 60 characters]
            chamfer_diameter: Diameter of the 120° protecting chamfer at the face, where there is
                one. [length, 1e-06 to 10000]
            mouth_diameter_tolerance: Tolerance ± of the mouth's diameter. [length, 0 to 10000]
            included_angle_tolerance_arcsec: Tolerance ± of the cone's included angle. [arcsecond,
                1e-06 to 324000]
            balls_in: Series of balls that the shop has. [1 to 2 entries]
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `timeout_seconds`. [second, over 0, at most 86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.CenterBallsAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.centers.balls(units="mm", mouth_diameter=8.5, pilot_diameter=4,
                mouth_diameter_tolerance=0.1, included_angle_tolerance_arcsec=900)
        """
        return self._sender.send(
            _BALLS,
            {
                "included_angle": included_angle,
                "half_angle": half_angle,
                "taper_per_foot": taper_per_foot,
                "one_in_x": one_in_x,
                "rate_of_taper": rate_of_taper,
                "designation": designation,
                "units": units,
                "mouth_diameter": mouth_diameter,
                "pilot_diameter": pilot_diameter,
                "chamfer_diameter": chamfer_diameter,
                "mouth_diameter_tolerance": mouth_diameter_tolerance,
                "included_angle_tolerance_arcsec": included_angle_tolerance_arcsec,
                "balls_in": balls_in,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def callout(
        self,
        *,
        text: str | None = None,
        key: str | None = None,
        remains: Literal["is-required", "may-remain", "must-not-remain"] = "may-remain",
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.CenterCalloutAnswer:
        """Callout of a center hole.

        Reads what a drawing calls out (ISO 6411, DIN 332, tapped holes) and writes the callout of a
        row of the tables, with pilot, cone and chamfer.

        Args:
            text: Callout as the drawing writes it; decimal comma or point. [1 to 60 characters]
            key: Row to call out: of `GET /v1/centers/holes` (metric) or of `tapped-holes`. [3 to 12
                characters]
            remains: Whether the hole stays in the finished part.
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `timeout_seconds`. [second, over 0, at most 86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.CenterCalloutAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.centers.callout(text="ISO 6411 - A 4/8,5", remains="is-required")
        """
        return self._sender.send(
            _CALLOUT,
            {
                "text": text,
                "key": key,
                "remains": remains,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def contact(
        self,
        *,
        units: Literal["in", "mm"],
        center_included_angle: float | str,
        hole_included_angle: float | str,
        mouth_diameter: float,
        pilot_diameter: float,
        formats: Sequence[Literal["svg"]] | None = None,
        diameter_error_limit: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.CenterContactAnswer:
        """Where a center bears in its hole.

        A center of one angle in a hole of another: where it bears, the gap at the other end, and
        the axial shift of the work for an error of diameter.

        Args:
            units: Unit of every length here and in the answer.
            center_included_angle: Included angle of the center, in degrees. [degree, 20 to 140; or
                text in degrees, minutes, seconds]
            hole_included_angle: Included angle of the hole's cone, in degrees. [degree, 20 to 140;
                or text in degrees, minutes, seconds]
            mouth_diameter: Large diameter of the hole's cone, in `units`. [length, 1e-06 to 10000]
            pilot_diameter: Diameter of the pilot, in `units`. [length, 1e-06 to 10000]
            formats: `svg` for a drawing. Absent: none. [1 to 2 entries]
            diameter_error_limit: Largest error ± of the bearing diameter, to turn into an axial
                shift, in `units`. [length, 0 to 10000]
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `heavy_timeout_seconds`. [second, over 0, at most
                86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.CenterContactAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.centers.contact(units="mm", center_included_angle=60, hole_included_angle=59,
                mouth_diameter=8.5, pilot_diameter=4, diameter_error_limit=0.1, formats=["svg"])
        """
        return self._sender.send(
            _CONTACT,
            {
                "formats": formats,
                "units": units,
                "center_included_angle": center_included_angle,
                "hole_included_angle": hole_included_angle,
                "mouth_diameter": mouth_diameter,
                "pilot_diameter": pilot_diameter,
                "diameter_error_limit": diameter_error_limit,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def effect(
        self,
        *,
        units: Literal["in", "mm"],
        surface: Literal["external", "internal"],
        first: models.CenterError,
        second: models.CenterError,
        distance_between_centers: float,
        stations_from_first: Sequence[float],
        part_at_first: models.RunoutVector | None = None,
        part_at_second: models.RunoutVector | None = None,
        second_height: float | None = None,
        second_line: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.CenterEffectAnswer:
        """What eccentric centers do to the work.

        Runout, standing offset and tilt of a part between two centers, one or both of which turn.

        Args:
            units: Unit of every length here and in the answer.
            surface: Surface that the indicator reads: `external`, a shaft or cone from outside;
                `internal`, a bore or socket. Highest is where metal comes nearest to the indicator:
                on a shaft toward its center's offset, in a bore opposite to it.
            first: Center at station 0.
            second: Center at the other end.
            distance_between_centers: Distance between the centers. [length, 1e-06 to 10000]
            stations_from_first: Distances from the first center, in `units`. [1 to 100 entries,
                each length, 0 to 10000]
            part_at_first: The part's own runout about its center holes at station 0, as first put
                in, read on `surface`; not stated where absent.
            part_at_second: The same at the other end; not stated where absent.
            second_height: How much higher the second center stands than the first, in `units`; not
                stated where absent. [length, -10000 to 10000]
            second_line: How far the second center stands beside the line of the ways through the
                first, in `units`; not stated where absent. [length, -10000 to 10000]
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `heavy_timeout_seconds`. [second, over 0, at most
                86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.CenterEffectAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.centers.effect(units="in", surface="external",
                first=models.CenterError(eccentricity=0.0002, high_spot=0, turns=True),
                second=models.CenterError(eccentricity=0.0002, high_spot=180, turns=True),
                distance_between_centers=6, stations_from_first=[0, 3, 6])
        """
        return self._sender.send(
            _EFFECT,
            {
                "units": units,
                "surface": surface,
                "first": first,
                "second": second,
                "distance_between_centers": distance_between_centers,
                "stations_from_first": stations_from_first,
                "part_at_first": part_at_first,
                "part_at_second": part_at_second,
                "second_height": second_height,
                "second_line": second_line,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def get_hole(
        self,
        key: str,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.CenterHoleRowAnswer:
        """Center holes: one hole.

        Published tables of center holes, types A, B and R (metric), and of combined drills, plain
        and bell (inch); each row with its source and standing.

        Args:
            key: The key, such as `a-0.5`.
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `timeout_seconds`. [second, over 0, at most 86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.CenterHoleRowAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.centers.get_hole(key="a-0.5")
        """
        return self._sender.send(
            _GET_HOLE,
            {
                "key": key,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def get_point(
        self,
        key: str,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.CenterPointEntryAnswer:
        """Points of lathe centers: one point.

        Included angle of points and holes for general and for heavy work.

        Args:
            key: The key, such as `general`.
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `timeout_seconds`. [second, over 0, at most 86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.CenterPointEntryAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.centers.get_point(key="general")
        """
        return self._sender.send(
            _GET_POINT,
            {
                "key": key,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def get_shaft_range(
        self,
        key: str,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.CenterHoleByShaftAnswer:
        """Center holes by shaft diameter: one shaft-range.

        A workshop handbook's guide to the size of center hole; for heavy work see `GET
        /v1/centers/points`.

        Args:
            key: The key, such as `to-8`.
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `timeout_seconds`. [second, over 0, at most 86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.CenterHoleByShaftAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.centers.get_shaft_range(key="to-8")
        """
        return self._sender.send(
            _GET_SHAFT_RANGE,
            {
                "key": key,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def get_tapped_hole(
        self,
        key: str,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.TappedHoleEntryAnswer:
        """Tapped center holes: one tapped-hole.

        Forms D and DS of DIN 332-2, DS under a protecting chamfer, which GB/T 145 calls C: a 60°
        cone over a thread, from memory.

        Args:
            key: The key, such as `d-m3`.
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `timeout_seconds`. [second, over 0, at most 86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.TappedHoleEntryAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.centers.get_tapped_hole(key="d-m3")
        """
        return self._sender.send(
            _GET_TAPPED_HOLE,
            {
                "key": key,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def hole(
        self,
        *,
        units: Literal["in", "mm"],
        formats: Sequence[Literal["svg"]] | None = None,
        included_angle: float | str | None = None,
        half_angle: float | str | None = None,
        taper_per_foot: float | None = None,
        one_in_x: float | None = None,
        rate_of_taper: float | None = None,
        designation: str | None = None,
        type: Literal["A", "B", "R", "plain", "bell", "C", "D"] | None = None,
        key: str | None = None,
        mouth_diameter: float | None = None,
        chamfer_diameter: float | None = None,
        ball_diameter: float | None = None,
        height_over_face: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.CenterHoleAnswer:
        """Center hole by the published tables.

        Pilot, countersink, depth for a wanted diameter and the check over a ball, types A, B and R
        in metric, plain and bell in inches.

        Args:
            units: Unit of every length here and in the answer.
            formats: `svg` for a drawing. Absent: none. [1 to 2 entries]
            included_angle: Angle between opposite surfaces of the cone, in degrees. [degree, over
                0.01, under 179; or text in degrees, minutes, seconds]
            half_angle: Angle between the cone's axis and its surface, in degrees. [degree, over
                0.005, under 89.5; or text in degrees, minutes, seconds]
            taper_per_foot: Inches of diameter a foot of length, whatever `units` are. [inch per
                foot, 0.003 to 2000]
            one_in_x: The x of a taper written 1:x, on the diameter (ISO 1119). [0.005 to 5000]
            rate_of_taper: Change of diameter for one unit of length, C = 1/x (ISO 3040). [length
                per length, 0.0002 to 200]
            designation: Designation of a standard taper or rate, as `GET /v1/tapers/standard` and
                `GET /v1/tapers/rates` list them, or what a toolmaker calls it: `MT3`, `B&S 9`,
                `JT33`, `NT40`, `1:20`. The answer says what it was read as. [1 to 60 characters]
            type: Type: A, B or R (metric), plain or bell (inch). Send this for the smallest size
                that reaches the diameter, or `key` for one size. C and D are known and not in the
                tables: the refusal says what to take.
            key: One size, as `GET /v1/centers/holes` lists it. [3 to 12 characters]
            mouth_diameter: Diameter wanted at the mouth of the 60° cone, in `units`; the table's
                largest where it is not sent. [length, 1e-06 to 10000]
            chamfer_diameter: Diameter of the 120° protecting chamfer at the face, in `units`, for
                types B and bell; type B has the table's where it is not sent. [length, 1e-06 to
                10000]
            ball_diameter: Ball for the check, in `units`; one that touches halfway if not sent.
                [length, 1e-06 to 10000]
            height_over_face: Measured height of the ball's top over the face, in `units`; negative
                below it. Needs `ball_diameter`. [length, -10000 to 10000]
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `heavy_timeout_seconds`. [second, over 0, at most
                86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.CenterHoleAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.centers.hole(units="mm", type="A", mouth_diameter=5.0, ball_diameter=4.5,
                formats=["svg"])
        """
        return self._sender.send(
            _HOLE,
            {
                "formats": formats,
                "included_angle": included_angle,
                "half_angle": half_angle,
                "taper_per_foot": taper_per_foot,
                "one_in_x": one_in_x,
                "rate_of_taper": rate_of_taper,
                "designation": designation,
                "units": units,
                "type": type,
                "key": key,
                "mouth_diameter": mouth_diameter,
                "chamfer_diameter": chamfer_diameter,
                "ball_diameter": ball_diameter,
                "height_over_face": height_over_face,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def limits(
        self,
        *,
        units: Literal["in", "mm"],
        distance_between_centers: float,
        station_from_center: float,
        included_angle: float | str | None = None,
        half_angle: float | str | None = None,
        taper_per_foot: float | None = None,
        one_in_x: float | None = None,
        rate_of_taper: float | None = None,
        designation: str | None = None,
        limit_tir: float | None = None,
        limit_position: float | None = None,
        share_percent: float = 100.0,
        other_eccentricity: float | None = None,
        both_alike: bool = False,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.CenterLimitsAnswer:
        """How true a center must be.

        From the runout or the position error that the work may see at a station between two
        centers: the limit of the center as eccentricity, as TIR and as a coaxiality zone.

        Args:
            units: Unit of every length here and in the answer.
            distance_between_centers: Distance between the two centers, in `units`. [length, 1e-06
                to 10000]
            station_from_center: Distance of the station from this center, in `units`. [length, 0 to
                10000]
            included_angle: Angle between opposite surfaces of the cone, in degrees. [degree, over
                0.01, under 179; or text in degrees, minutes, seconds]
            half_angle: Angle between the cone's axis and its surface, in degrees. [degree, over
                0.005, under 89.5; or text in degrees, minutes, seconds]
            taper_per_foot: Inches of diameter a foot of length, whatever `units` are. [inch per
                foot, 0.003 to 2000]
            one_in_x: The x of a taper written 1:x, on the diameter (ISO 1119). [0.005 to 5000]
            rate_of_taper: Change of diameter for one unit of length, C = 1/x (ISO 3040). [length
                per length, 0.0002 to 200]
            designation: Designation of a standard taper or rate, as `GET /v1/tapers/standard` and
                `GET /v1/tapers/rates` list them, or what a toolmaker calls it: `MT3`, `B&S 9`,
                `JT33`, `NT40`, `1:20`. The answer says what it was read as. [1 to 60 characters]
            limit_tir: Runout that the work may show at the station, as full indicator movement, in
                `units`. [length, 1e-06 to 10000]
            limit_position: How far the work's axis may be off its place at the station, in `units`.
                [length, 1e-06 to 10000]
            share_percent: Share of what is allowed that the center may take, in percent, such as 10
                or 25. [percent, over 0, at most 100]
            other_eccentricity: Eccentricity of the other center, in `units`, 0 for a true one; it
                counts in the worst way. Needed unless `both_alike` is true. [length, 0 to 10000]
            both_alike: Hold both centers to one limit, in place of `other_eccentricity`.
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `timeout_seconds`. [second, over 0, at most 86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.CenterLimitsAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.centers.limits(units="in", limit_tir=0.0005, limit_position=0.0002,
                share_percent=25, distance_between_centers=6, station_from_center=1,
                both_alike=True)
        """
        return self._sender.send(
            _LIMITS,
            {
                "included_angle": included_angle,
                "half_angle": half_angle,
                "taper_per_foot": taper_per_foot,
                "one_in_x": one_in_x,
                "rate_of_taper": rate_of_taper,
                "designation": designation,
                "units": units,
                "limit_tir": limit_tir,
                "limit_position": limit_position,
                "share_percent": share_percent,
                "distance_between_centers": distance_between_centers,
                "station_from_center": station_from_center,
                "other_eccentricity": other_eccentricity,
                "both_alike": both_alike,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def list_by_shaft(
        self,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.CenterHoleByShaftListAnswer:
        """Center holes by shaft diameter.

        A workshop handbook's guide to the size of center hole; for heavy work see `GET
        /v1/centers/points`.

        Args:
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `timeout_seconds`. [second, over 0, at most 86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.CenterHoleByShaftListAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.centers.list_by_shaft()
        """
        return self._sender.send(
            _LIST_BY_SHAFT,
            {},
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def list_holes(
        self,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.CenterHoleListAnswer:
        """Center holes.

        Published tables of center holes, types A, B and R (metric), and of combined drills, plain
        and bell (inch); each row with its source and standing.

        Args:
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `timeout_seconds`. [second, over 0, at most 86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.CenterHoleListAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.centers.list_holes()
        """
        return self._sender.send(
            _LIST_HOLES,
            {},
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def list_points(
        self,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.CenterPointListAnswer:
        """Points of lathe centers.

        Included angle of points and holes for general and for heavy work.

        Args:
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `timeout_seconds`. [second, over 0, at most 86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.CenterPointListAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.centers.list_points()
        """
        return self._sender.send(
            _LIST_POINTS,
            {},
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def list_tapped_holes(
        self,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.TappedHoleListAnswer:
        """Tapped center holes.

        Forms D and DS of DIN 332-2, DS under a protecting chamfer, which GB/T 145 calls C: a 60°
        cone over a thread, from memory.

        Args:
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `timeout_seconds`. [second, over 0, at most 86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.TappedHoleListAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.centers.list_tapped_holes()
        """
        return self._sender.send(
            _LIST_TAPPED_HOLES,
            {},
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def out_of_round(
        self,
        *,
        units: Literal["in", "mm"],
        out_of_round: Literal["hole", "center"],
        center_turns: bool,
        lobes: int,
        out_of_roundness: float,
        included_angle: float | str | None = None,
        half_angle: float | str | None = None,
        taper_per_foot: float | None = None,
        one_in_x: float | None = None,
        rate_of_taper: float | None = None,
        designation: str | None = None,
        axial_force: float | None = None,
        side_force: float | None = None,
        wheel_from_force: float | str = 0.0,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.CenterOutOfRoundAnswer:
        """Center or hole out of round.

        What of the lobes of a center or a center hole reaches the work, on a dead and on a live
        center, by the forces on the seat.

        Args:
            units: Unit of every length here and in the answer.
            out_of_round: What is out of round; the other one is taken as round.
            center_turns: True for a live center, which turns with the work; false for a dead one.
            lobes: Lobes a turn: 2 oval, 3 from a three-jaw chuck. [count, 2 to 50]
            out_of_roundness: Out-of-roundness of the cone, square to its axis, peak to valley.
                [length, 0 to 10000]
            included_angle: Angle between opposite surfaces of the cone, in degrees. [degree, over
                0.01, under 179; or text in degrees, minutes, seconds]
            half_angle: Angle between the cone's axis and its surface, in degrees. [degree, over
                0.005, under 89.5; or text in degrees, minutes, seconds]
            taper_per_foot: Inches of diameter a foot of length, whatever `units` are. [inch per
                foot, 0.003 to 2000]
            one_in_x: The x of a taper written 1:x, on the diameter (ISO 1119). [0.005 to 5000]
            rate_of_taper: Change of diameter for one unit of length, C = 1/x (ISO 3040). [length
                per length, 0.0002 to 200]
            designation: Designation of a standard taper or rate, as `GET /v1/tapers/standard` and
                `GET /v1/tapers/rates` list them, or what a toolmaker calls it: `MT3`, `B&S 9`,
                `JT33`, `NT40`, `1:20`. The answer says what it was read as. [1 to 60 characters]
            axial_force: Force along the axis at this center, in newtons. [newton, 0 to 1000000]
            side_force: Force square to the axis at this center, grinding and weight together, in
                newtons. [newton, 0 to 1000000]
            wheel_from_force: Angle round the work from the side force to the place that is ground
                or indicated, in degrees. [degree, -180 to 180; or text in degrees, minutes,
                seconds]
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `timeout_seconds`. [second, over 0, at most 86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.CenterOutOfRoundAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.centers.out_of_round(units="mm", out_of_round="hole", center_turns=False,
                lobes=2, out_of_roundness=0.002, axial_force=300, side_force=60)
        """
        return self._sender.send(
            _OUT_OF_ROUND,
            {
                "included_angle": included_angle,
                "half_angle": half_angle,
                "taper_per_foot": taper_per_foot,
                "one_in_x": one_in_x,
                "rate_of_taper": rate_of_taper,
                "designation": designation,
                "units": units,
                "out_of_round": out_of_round,
                "center_turns": center_turns,
                "lobes": lobes,
                "out_of_roundness": out_of_roundness,
                "axial_force": axial_force,
                "side_force": side_force,
                "wheel_from_force": wheel_from_force,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def regrind(
        self,
        *,
        units: Literal["in", "mm"],
        large_diameter: float,
        length: float,
        included_angle: float | str | None = None,
        half_angle: float | str | None = None,
        taper_per_foot: float | None = None,
        one_in_x: float | None = None,
        rate_of_taper: float | None = None,
        designation: str | None = None,
        wear: float | None = None,
        tir: float | None = None,
        allowance: float = 0.0,
        point_stick_out: float | None = None,
        smallest_point_stick_out: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.CenterRegrindAnswer:
        """Grinding a worn center again.

        How much to take off a worn or untrue center so that all of it is clean, how much shorter it
        stands out then, how far the work moves with it, and how often that can be done.

        Args:
            units: Unit of every length here and in the answer.
            large_diameter: Diameter at the large end of the cone. [length, 1e-06 to 10000]
            length: Length of the cone to clean up, at most to the point. [length, 1e-06 to 10000]
            included_angle: Angle between opposite surfaces of the cone, in degrees. [degree, over
                0.01, under 179; or text in degrees, minutes, seconds]
            half_angle: Angle between the cone's axis and its surface, in degrees. [degree, over
                0.005, under 89.5; or text in degrees, minutes, seconds]
            taper_per_foot: Inches of diameter a foot of length, whatever `units` are. [inch per
                foot, 0.003 to 2000]
            one_in_x: The x of a taper written 1:x, on the diameter (ISO 1119). [0.005 to 5000]
            rate_of_taper: Change of diameter for one unit of length, C = 1/x (ISO 3040). [length
                per length, 0.0002 to 200]
            designation: Designation of a standard taper or rate, as `GET /v1/tapers/standard` and
                `GET /v1/tapers/rates` list them, or what a toolmaker calls it: `MT3`, `B&S 9`,
                `JT33`, `NT40`, `1:20`. The answer says what it was read as. [1 to 60 characters]
            wear: Deepest groove or score below the surface, square to it. [length, 0 to 10000]
            tir: Runout of the cone in its socket, indicated square to its surface. [length, 0 to
                10000]
            allowance: Further stock to be sure that all is clean, square to the surface. [length, 0
                to 10000]
            point_stick_out: Nose of the spindle or sleeve to the point, as it is. [length, 1e-06 to
                10000]
            smallest_point_stick_out: Least of that with which wheel and dog still pass. [length, 0
                to 10000]
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `timeout_seconds`. [second, over 0, at most 86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.CenterRegrindAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.centers.regrind(units="in", large_diameter=0.7, length=0.6, wear=0.003,
                tir=0.0008, allowance=0.0005, point_stick_out=2.5,
                smallest_point_stick_out=2.45)
        """
        return self._sender.send(
            _REGRIND,
            {
                "included_angle": included_angle,
                "half_angle": half_angle,
                "taper_per_foot": taper_per_foot,
                "one_in_x": one_in_x,
                "rate_of_taper": rate_of_taper,
                "designation": designation,
                "units": units,
                "large_diameter": large_diameter,
                "length": length,
                "wear": wear,
                "tir": tir,
                "allowance": allowance,
                "point_stick_out": point_stick_out,
                "smallest_point_stick_out": smallest_point_stick_out,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def standing_offset(
        self,
        *,
        units: Literal["in", "mm"],
        ground_by: Literal["round-wheel", "point", "plane"],
        work_diameter: float,
        distance_between_centers: float,
        offset_toward_wheel: float,
        offset_across: float,
        stations_from_first: Sequence[float],
        wheel_diameter: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.StandingOffsetAnswer:
        """Center that stands off the line.

        Taper of work between a true center and one that is off: towards the wheel by the offset,
        upward only by its square, exactly, station by station.

        Args:
            units: Unit of every length here and in the answer.
            ground_by: `round-wheel`: a cylindrical grinder's; `point`: a tool's or an indicator's
                tip; `plane`: a wheel that is traversed flat over the work, as on a surface grinder.
            work_diameter: Diameter that is ground where the axis is true. [length, 1e-06 to 10000]
            distance_between_centers: Distance between the two centers. [length, 1e-06 to 10000]
            offset_toward_wheel: Offset of the second center from the line of the ways, towards the
                wheel or the point; negative away from it. [length, -10000 to 10000]
            offset_across: Its offset square to that: up or down where the wheel stands beside the
                work. [length, -10000 to 10000]
            stations_from_first: Distances from the first, true center. [1 to 100 entries, each
                length, 0 to 10000]
            wheel_diameter: Diameter of the round wheel. [length, 1e-06 to 10000]
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `timeout_seconds`. [second, over 0, at most 86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.StandingOffsetAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.centers.standing_offset(units="mm", ground_by="round-wheel",
                wheel_diameter=300, work_diameter=20, distance_between_centers=150,
                offset_toward_wheel=0.01, offset_across=0.1, stations_from_first=[0, 75, 150])
        """
        return self._sender.send(
            _STANDING_OFFSET,
            {
                "units": units,
                "ground_by": ground_by,
                "wheel_diameter": wheel_diameter,
                "work_diameter": work_diameter,
                "distance_between_centers": distance_between_centers,
                "offset_toward_wheel": offset_toward_wheel,
                "offset_across": offset_across,
                "stations_from_first": stations_from_first,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )


class AsyncCentersCalls:
    """Calls of the topic `centers`, to be awaited."""

    def __init__(self, sender: AsyncSender) -> None:
        self._sender = sender

    async def adapter(
        self,
        *,
        units: Literal["in", "mm"],
        shank: models.SlopeFields,
        socket: models.SlopeFields,
        engagement: float,
        projection: float,
        diameter_difference: float | None = None,
        socket_tir: float | None = None,
        socket_tilt_tir: float | None = None,
        adapter_tir: float | None = None,
        adapter_tilt_tir: float | None = None,
        limit_tir: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.CenterAdapterAnswer:
        """A tapered shank in its socket. As `Halfangle.centers.adapter`, to be awaited."""
        return await self._sender.send(
            _ADAPTER,
            {
                "units": units,
                "shank": shank,
                "socket": socket,
                "engagement": engagement,
                "projection": projection,
                "diameter_difference": diameter_difference,
                "socket_tir": socket_tir,
                "socket_tilt_tir": socket_tilt_tir,
                "adapter_tir": adapter_tir,
                "adapter_tilt_tir": adapter_tilt_tir,
                "limit_tir": limit_tir,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def balls(
        self,
        *,
        units: Literal["in", "mm"],
        mouth_diameter: float,
        pilot_diameter: float,
        included_angle: float | str | None = None,
        half_angle: float | str | None = None,
        taper_per_foot: float | None = None,
        one_in_x: float | None = None,
        rate_of_taper: float | None = None,
        designation: str | None = None,
        chamfer_diameter: float | None = None,
        mouth_diameter_tolerance: float | None = None,
        included_angle_tolerance_arcsec: float | None = None,
        balls_in: Sequence[Literal["in", "mm"]] | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.CenterBallsAnswer:
        """Stock balls for a center hole. As `Halfangle.centers.balls`, to be awaited."""
        return await self._sender.send(
            _BALLS,
            {
                "included_angle": included_angle,
                "half_angle": half_angle,
                "taper_per_foot": taper_per_foot,
                "one_in_x": one_in_x,
                "rate_of_taper": rate_of_taper,
                "designation": designation,
                "units": units,
                "mouth_diameter": mouth_diameter,
                "pilot_diameter": pilot_diameter,
                "chamfer_diameter": chamfer_diameter,
                "mouth_diameter_tolerance": mouth_diameter_tolerance,
                "included_angle_tolerance_arcsec": included_angle_tolerance_arcsec,
                "balls_in": balls_in,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def callout(
        self,
        *,
        text: str | None = None,
        key: str | None = None,
        remains: Literal["is-required", "may-remain", "must-not-remain"] = "may-remain",
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.CenterCalloutAnswer:
        """Callout of a center hole. As `Halfangle.centers.callout`, to be awaited."""
        return await self._sender.send(
            _CALLOUT,
            {
                "text": text,
                "key": key,
                "remains": remains,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def contact(
        self,
        *,
        units: Literal["in", "mm"],
        center_included_angle: float | str,
        hole_included_angle: float | str,
        mouth_diameter: float,
        pilot_diameter: float,
        formats: Sequence[Literal["svg"]] | None = None,
        diameter_error_limit: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.CenterContactAnswer:
        """Where a center bears in its hole. As `Halfangle.centers.contact`, to be awaited."""
        return await self._sender.send(
            _CONTACT,
            {
                "formats": formats,
                "units": units,
                "center_included_angle": center_included_angle,
                "hole_included_angle": hole_included_angle,
                "mouth_diameter": mouth_diameter,
                "pilot_diameter": pilot_diameter,
                "diameter_error_limit": diameter_error_limit,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def effect(
        self,
        *,
        units: Literal["in", "mm"],
        surface: Literal["external", "internal"],
        first: models.CenterError,
        second: models.CenterError,
        distance_between_centers: float,
        stations_from_first: Sequence[float],
        part_at_first: models.RunoutVector | None = None,
        part_at_second: models.RunoutVector | None = None,
        second_height: float | None = None,
        second_line: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.CenterEffectAnswer:
        """What eccentric centers do to the work. As `Halfangle.centers.effect`, to be awaited."""
        return await self._sender.send(
            _EFFECT,
            {
                "units": units,
                "surface": surface,
                "first": first,
                "second": second,
                "distance_between_centers": distance_between_centers,
                "stations_from_first": stations_from_first,
                "part_at_first": part_at_first,
                "part_at_second": part_at_second,
                "second_height": second_height,
                "second_line": second_line,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def get_hole(
        self,
        key: str,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.CenterHoleRowAnswer:
        """Center holes: one hole. As `Halfangle.centers.get_hole`, to be awaited."""
        return await self._sender.send(
            _GET_HOLE,
            {
                "key": key,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def get_point(
        self,
        key: str,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.CenterPointEntryAnswer:
        """Points of lathe centers: one point. As `Halfangle.centers.get_point`, to be awaited."""
        return await self._sender.send(
            _GET_POINT,
            {
                "key": key,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def get_shaft_range(
        self,
        key: str,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.CenterHoleByShaftAnswer:
        """As `Halfangle.centers.get_shaft_range`, to be awaited."""
        return await self._sender.send(
            _GET_SHAFT_RANGE,
            {
                "key": key,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def get_tapped_hole(
        self,
        key: str,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.TappedHoleEntryAnswer:
        """As `Halfangle.centers.get_tapped_hole`, to be awaited."""
        return await self._sender.send(
            _GET_TAPPED_HOLE,
            {
                "key": key,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def hole(
        self,
        *,
        units: Literal["in", "mm"],
        formats: Sequence[Literal["svg"]] | None = None,
        included_angle: float | str | None = None,
        half_angle: float | str | None = None,
        taper_per_foot: float | None = None,
        one_in_x: float | None = None,
        rate_of_taper: float | None = None,
        designation: str | None = None,
        type: Literal["A", "B", "R", "plain", "bell", "C", "D"] | None = None,
        key: str | None = None,
        mouth_diameter: float | None = None,
        chamfer_diameter: float | None = None,
        ball_diameter: float | None = None,
        height_over_face: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.CenterHoleAnswer:
        """Center hole by the published tables. As `Halfangle.centers.hole`, to be awaited."""
        return await self._sender.send(
            _HOLE,
            {
                "formats": formats,
                "included_angle": included_angle,
                "half_angle": half_angle,
                "taper_per_foot": taper_per_foot,
                "one_in_x": one_in_x,
                "rate_of_taper": rate_of_taper,
                "designation": designation,
                "units": units,
                "type": type,
                "key": key,
                "mouth_diameter": mouth_diameter,
                "chamfer_diameter": chamfer_diameter,
                "ball_diameter": ball_diameter,
                "height_over_face": height_over_face,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def limits(
        self,
        *,
        units: Literal["in", "mm"],
        distance_between_centers: float,
        station_from_center: float,
        included_angle: float | str | None = None,
        half_angle: float | str | None = None,
        taper_per_foot: float | None = None,
        one_in_x: float | None = None,
        rate_of_taper: float | None = None,
        designation: str | None = None,
        limit_tir: float | None = None,
        limit_position: float | None = None,
        share_percent: float = 100.0,
        other_eccentricity: float | None = None,
        both_alike: bool = False,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.CenterLimitsAnswer:
        """How true a center must be. As `Halfangle.centers.limits`, to be awaited."""
        return await self._sender.send(
            _LIMITS,
            {
                "included_angle": included_angle,
                "half_angle": half_angle,
                "taper_per_foot": taper_per_foot,
                "one_in_x": one_in_x,
                "rate_of_taper": rate_of_taper,
                "designation": designation,
                "units": units,
                "limit_tir": limit_tir,
                "limit_position": limit_position,
                "share_percent": share_percent,
                "distance_between_centers": distance_between_centers,
                "station_from_center": station_from_center,
                "other_eccentricity": other_eccentricity,
                "both_alike": both_alike,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def list_by_shaft(
        self,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.CenterHoleByShaftListAnswer:
        """Center holes by shaft diameter. As `Halfangle.centers.list_by_shaft`, to be awaited."""
        return await self._sender.send(
            _LIST_BY_SHAFT,
            {},
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def list_holes(
        self,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.CenterHoleListAnswer:
        """Center holes. As `Halfangle.centers.list_holes`, to be awaited."""
        return await self._sender.send(
            _LIST_HOLES,
            {},
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def list_points(
        self,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.CenterPointListAnswer:
        """Points of lathe centers. As `Halfangle.centers.list_points`, to be awaited."""
        return await self._sender.send(
            _LIST_POINTS,
            {},
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def list_tapped_holes(
        self,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.TappedHoleListAnswer:
        """Tapped center holes. As `Halfangle.centers.list_tapped_holes`, to be awaited."""
        return await self._sender.send(
            _LIST_TAPPED_HOLES,
            {},
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def out_of_round(
        self,
        *,
        units: Literal["in", "mm"],
        out_of_round: Literal["hole", "center"],
        center_turns: bool,
        lobes: int,
        out_of_roundness: float,
        included_angle: float | str | None = None,
        half_angle: float | str | None = None,
        taper_per_foot: float | None = None,
        one_in_x: float | None = None,
        rate_of_taper: float | None = None,
        designation: str | None = None,
        axial_force: float | None = None,
        side_force: float | None = None,
        wheel_from_force: float | str = 0.0,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.CenterOutOfRoundAnswer:
        """Center or hole out of round. As `Halfangle.centers.out_of_round`, to be awaited."""
        return await self._sender.send(
            _OUT_OF_ROUND,
            {
                "included_angle": included_angle,
                "half_angle": half_angle,
                "taper_per_foot": taper_per_foot,
                "one_in_x": one_in_x,
                "rate_of_taper": rate_of_taper,
                "designation": designation,
                "units": units,
                "out_of_round": out_of_round,
                "center_turns": center_turns,
                "lobes": lobes,
                "out_of_roundness": out_of_roundness,
                "axial_force": axial_force,
                "side_force": side_force,
                "wheel_from_force": wheel_from_force,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def regrind(
        self,
        *,
        units: Literal["in", "mm"],
        large_diameter: float,
        length: float,
        included_angle: float | str | None = None,
        half_angle: float | str | None = None,
        taper_per_foot: float | None = None,
        one_in_x: float | None = None,
        rate_of_taper: float | None = None,
        designation: str | None = None,
        wear: float | None = None,
        tir: float | None = None,
        allowance: float = 0.0,
        point_stick_out: float | None = None,
        smallest_point_stick_out: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.CenterRegrindAnswer:
        """Grinding a worn center again. As `Halfangle.centers.regrind`, to be awaited."""
        return await self._sender.send(
            _REGRIND,
            {
                "included_angle": included_angle,
                "half_angle": half_angle,
                "taper_per_foot": taper_per_foot,
                "one_in_x": one_in_x,
                "rate_of_taper": rate_of_taper,
                "designation": designation,
                "units": units,
                "large_diameter": large_diameter,
                "length": length,
                "wear": wear,
                "tir": tir,
                "allowance": allowance,
                "point_stick_out": point_stick_out,
                "smallest_point_stick_out": smallest_point_stick_out,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def standing_offset(
        self,
        *,
        units: Literal["in", "mm"],
        ground_by: Literal["round-wheel", "point", "plane"],
        work_diameter: float,
        distance_between_centers: float,
        offset_toward_wheel: float,
        offset_across: float,
        stations_from_first: Sequence[float],
        wheel_diameter: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.StandingOffsetAnswer:
        """As `Halfangle.centers.standing_offset`, to be awaited."""
        return await self._sender.send(
            _STANDING_OFFSET,
            {
                "units": units,
                "ground_by": ground_by,
                "wheel_diameter": wheel_diameter,
                "work_diameter": work_diameter,
                "distance_between_centers": distance_between_centers,
                "offset_toward_wheel": offset_toward_wheel,
                "offset_across": offset_across,
                "stations_from_first": stations_from_first,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )
