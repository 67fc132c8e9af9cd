# Generated from openapi/openapi.json by openapi/generate.py. Do not edit.
"""Calls of the topic `clearance`."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, Literal

from halfangle_client.endpoint import AsyncSender, Endpoint, Sender

if TYPE_CHECKING:
    from halfangle_client.generated import models

_TILTED_PLATE: Endpoint[models.TiltedPlateAnswer] = Endpoint(
    name="clearance.tilted_plate",
    method="POST",
    path="/v1/clearance/tilted-plate",
    answer="TiltedPlateAnswer",
    accept="application/json",
    sends="application/json",
    heavy=True,
)

ENDPOINTS: tuple[Endpoint[Any], ...] = (_TILTED_PLATE,)


class ClearanceCalls:
    """Calls of the topic `clearance`."""

    def __init__(self, sender: Sender) -> None:
        self._sender = sender

    def tilted_plate(
        self,
        *,
        large_diameter: float,
        small_diameter: float,
        units: Literal["in", "mm"],
        tilt_direction: Literal["along-travel", "across-travel"],
        plate: models.ClearancePlate,
        fixture: models.ClearanceFixture,
        wheel: models.ClearanceWheel,
        past_large_end: float,
        past_small_end: float,
        gap_wanted: float,
        included_angle: float | str | None = None,
        half_angle: float | str | None = None,
        taper_per_foot: float | None = None,
        one_in_x: float | None = None,
        rate_of_taper: float | None = None,
        designation: str | None = None,
        room_under_wheel: float | None = None,
        loading_height: float = 0.0,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.TiltedPlateAnswer:
        """Clearance over a tilted plate.

        Least gaps of wheel, flange and guard from plate, fixture, work and stack through the whole
        stroke and a full turn of the work, new and worn; the stick-out that is needed; the height
        against the room under the wheel; the change that would clear it; drawn to scale.

        Largest request: eight turning parts, two wheels.

        Args:
            large_diameter: Larger diameter to grind, in `units`. [length, 1e-06 to 10000]
            small_diameter: Smaller diameter to grind, in `units`; 0 for a sharp point. [length, 0
                to 10000]
            units: Unit of every length here and in the answer.
            tilt_direction: Whether the plate tilts along the table's travel (the wheel is seen as a
                circle) or across it (the wheel is seen on edge).
            plate: The sine plate.
            fixture: The fixture.
            wheel: The wheel's head.
            past_large_end: How far the wheel goes past the large end of the ground line, in
                `units`. [length, 0 to 10000]
            past_small_end: How far it goes past the small end. [length, 0 to 10000]
            gap_wanted: Least gap wanted everywhere, in `units`. [length, 0 to 10000]
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
            room_under_wheel: Greatest height from the table to the wheel's lowest line with the
                head raised, in `units`. Absent: the height is told, not judged. [length, 1e-06 to
                10000]
            loading_height: Room wanted above the work to load it, in `units`. [length, 0 to 10000]
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `heavy_timeout_seconds`. [second, over 0, at most
                86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.TiltedPlateAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.clearance.tilted_plate(units="in", included_angle=60, large_diameter=0.75,
                small_diameter=0.05, tilt_direction="along-travel",
                plate=models.ClearancePlate(length=6, thickness=0.75, closed_height=2.2,
                center_distance=5, roll_diameter=0.5),
                fixture=models.ClearanceFixture(axis_height=1.5, body_length=3, body_height=2.6,
                nose_diameter=1.25, nose_length=0.75, stick_out=0.75, shank_diameter=0.75,
                front_to_high_end=1), wheel=models.ClearanceWheel(diameter=7, width=0.5,
                worn_diameter=5.5, flange_diameter=3, flange_width=1.25,
                guard=models.ClearanceGuard(length=8, width=2.5, lower_edge_below_spindle=1)),
                past_large_end=0.1, past_small_end=0.25, gap_wanted=0.1, room_under_wheel=12)
        """
        return self._sender.send(
            _TILTED_PLATE,
            {
                "included_angle": included_angle,
                "half_angle": half_angle,
                "taper_per_foot": taper_per_foot,
                "one_in_x": one_in_x,
                "rate_of_taper": rate_of_taper,
                "designation": designation,
                "large_diameter": large_diameter,
                "small_diameter": small_diameter,
                "units": units,
                "tilt_direction": tilt_direction,
                "plate": plate,
                "fixture": fixture,
                "wheel": wheel,
                "past_large_end": past_large_end,
                "past_small_end": past_small_end,
                "gap_wanted": gap_wanted,
                "room_under_wheel": room_under_wheel,
                "loading_height": loading_height,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )


class AsyncClearanceCalls:
    """Calls of the topic `clearance`, to be awaited."""

    def __init__(self, sender: AsyncSender) -> None:
        self._sender = sender

    async def tilted_plate(
        self,
        *,
        large_diameter: float,
        small_diameter: float,
        units: Literal["in", "mm"],
        tilt_direction: Literal["along-travel", "across-travel"],
        plate: models.ClearancePlate,
        fixture: models.ClearanceFixture,
        wheel: models.ClearanceWheel,
        past_large_end: float,
        past_small_end: float,
        gap_wanted: float,
        included_angle: float | str | None = None,
        half_angle: float | str | None = None,
        taper_per_foot: float | None = None,
        one_in_x: float | None = None,
        rate_of_taper: float | None = None,
        designation: str | None = None,
        room_under_wheel: float | None = None,
        loading_height: float = 0.0,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.TiltedPlateAnswer:
        """Clearance over a tilted plate. As `Halfangle.clearance.tilted_plate`, to be awaited."""
        return await self._sender.send(
            _TILTED_PLATE,
            {
                "included_angle": included_angle,
                "half_angle": half_angle,
                "taper_per_foot": taper_per_foot,
                "one_in_x": one_in_x,
                "rate_of_taper": rate_of_taper,
                "designation": designation,
                "large_diameter": large_diameter,
                "small_diameter": small_diameter,
                "units": units,
                "tilt_direction": tilt_direction,
                "plate": plate,
                "fixture": fixture,
                "wheel": wheel,
                "past_large_end": past_large_end,
                "past_small_end": past_small_end,
                "gap_wanted": gap_wanted,
                "room_under_wheel": room_under_wheel,
                "loading_height": loading_height,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )
