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
_CONTACT: Endpoint[models.CenterContactAnswer] = Endpoint(
    name="centers.contact",
    method="POST",
    path="/v1/centers/contact",
    answer="CenterContactAnswer",
    accept="application/json",
    sends="application/json",
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
_HOLE: Endpoint[models.CenterHoleAnswer] = Endpoint(
    name="centers.hole",
    method="POST",
    path="/v1/centers/hole",
    answer="CenterHoleAnswer",
    accept="application/json",
    sends="application/json",
)
_LIMITS: Endpoint[models.CenterLimitsAnswer] = Endpoint(
    name="centers.limits",
    method="POST",
    path="/v1/centers/limits",
    answer="CenterLimitsAnswer",
    accept="application/json",
    sends="application/json",
)
_LIST_HOLES: Endpoint[models.CenterHoleListAnswer] = Endpoint(
    name="centers.list_holes",
    method="GET",
    path="/v1/centers/holes",
    answer="CenterHoleListAnswer",
    accept="application/json",
)

ENDPOINTS: tuple[Endpoint[Any], ...] = (
    _ADAPTER,
    _CONTACT,
    _EFFECT,
    _GET_HOLE,
    _HOLE,
    _LIMITS,
    _LIST_HOLES,
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

    def contact(
        self,
        *,
        units: Literal["in", "mm"],
        center_included_angle: float | str,
        hole_included_angle: float | str,
        mouth_diameter: float,
        pilot_diameter: float,
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
            diameter_error_limit: Largest error ± of the bearing diameter, to turn into an axial
                shift, in `units`. [length, 0 to 10000]
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `timeout_seconds`. [second, over 0, at most 86400]
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
                mouth_diameter=8.5, pilot_diameter=4, diameter_error_limit=0.1)
        """
        return self._sender.send(
            _CONTACT,
            {
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

    def hole(
        self,
        *,
        units: Literal["in", "mm"],
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
                included. Absent: the client's `timeout_seconds`. [second, over 0, at most 86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.CenterHoleAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.centers.hole(units="mm", type="A", mouth_diameter=5.0, ball_diameter=4.5)
        """
        return self._sender.send(
            _HOLE,
            {
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

    async def contact(
        self,
        *,
        units: Literal["in", "mm"],
        center_included_angle: float | str,
        hole_included_angle: float | str,
        mouth_diameter: float,
        pilot_diameter: float,
        diameter_error_limit: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.CenterContactAnswer:
        """Where a center bears in its hole. As `Halfangle.centers.contact`, to be awaited."""
        return await self._sender.send(
            _CONTACT,
            {
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

    async def hole(
        self,
        *,
        units: Literal["in", "mm"],
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
