# Generated from openapi/openapi.json by openapi/generate.py. Do not edit.
"""Calls of the topic `wheels`."""

from typing import Any, Literal

from halfangle_client.endpoint import AsyncSender, Endpoint, Sender
from halfangle_client.generated import models

_FLANK = Endpoint(
    name="wheels.flank",
    method="POST",
    path="/v1/wheels/flank",
    answer=models.WheelFlankAnswer,
    accept="application/json",
    sends="application/json",
)

ENDPOINTS: tuple[Endpoint[Any], ...] = (_FLANK,)


class WheelsCalls:
    """Calls of the topic `wheels`."""

    def __init__(self, sender: Sender) -> None:
        self._sender = sender

    def flank(
        self,
        *,
        units: Literal["in", "mm"],
        work: models.ConeWork | models.FaceWork,
        wheel_width: float,
        dresser_center_distance: float,
        depth_per_pass: float,
        edge_flat: float = 0.0,
        overrun: float = 0.0,
        dresser_zero: Literal["wheel axis", "wheel side"] = "wheel axis",
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.WheelFlankAnswer:
        """Angle to dress on the wheel.

        The flank to dress on the wheel for a cone or an angled face: its angle, the dresser's sine
        setting, its width on the wheel and the depth to dress away.

        Largest request: one calculation of fixed size.

        Args:
            units: Unit of every length here and in the answer.
            work: What is to be ground.
            wheel_width: Width of the wheel, in `units`. [length, 1e-06 to 10000]
            dresser_center_distance: Center distance of the dresser's sine base, in `units`.
                [length, 1e-06 to 10000]
            depth_per_pass: Depth dressed away by one pass, radially, in `units`. [length, 1e-06 to
                10000]
            edge_flat: Width of periphery to be left beside the flank, in `units`. [length, 0 to
                10000]
            overrun: How far the flank reaches past the surface at each end, along the slope, in
                `units`. [length, 0 to 10000]
            dresser_zero: Direction of the diamond's path with the dresser at zero: along the
                wheel's axis (it dresses flat), or along its side.

        Example:
            client.wheels.flank(units="in", work=models.ConeWork(kind="cone", included_angle=60,
                large_diameter=0.75, small_diameter=0.05), wheel_width=0.75, overrun=0.02,
                dresser_center_distance=2, depth_per_pass=0.0005)
        """
        return self._sender.send(
            _FLANK,
            {
                "units": units,
                "work": work,
                "wheel_width": wheel_width,
                "edge_flat": edge_flat,
                "overrun": overrun,
                "dresser_center_distance": dresser_center_distance,
                "dresser_zero": dresser_zero,
                "depth_per_pass": depth_per_pass,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )


class AsyncWheelsCalls:
    """Calls of the topic `wheels`, to be awaited."""

    def __init__(self, sender: AsyncSender) -> None:
        self._sender = sender

    async def flank(
        self,
        *,
        units: Literal["in", "mm"],
        work: models.ConeWork | models.FaceWork,
        wheel_width: float,
        dresser_center_distance: float,
        depth_per_pass: float,
        edge_flat: float = 0.0,
        overrun: float = 0.0,
        dresser_zero: Literal["wheel axis", "wheel side"] = "wheel axis",
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.WheelFlankAnswer:
        """Angle to dress on the wheel.

        The flank to dress on the wheel for a cone or an angled face: its angle, the dresser's sine
        setting, its width on the wheel and the depth to dress away.

        Largest request: one calculation of fixed size.

        Args:
            units: Unit of every length here and in the answer.
            work: What is to be ground.
            wheel_width: Width of the wheel, in `units`. [length, 1e-06 to 10000]
            dresser_center_distance: Center distance of the dresser's sine base, in `units`.
                [length, 1e-06 to 10000]
            depth_per_pass: Depth dressed away by one pass, radially, in `units`. [length, 1e-06 to
                10000]
            edge_flat: Width of periphery to be left beside the flank, in `units`. [length, 0 to
                10000]
            overrun: How far the flank reaches past the surface at each end, along the slope, in
                `units`. [length, 0 to 10000]
            dresser_zero: Direction of the diamond's path with the dresser at zero: along the
                wheel's axis (it dresses flat), or along its side.

        Example:
            client.wheels.flank(units="in", work=models.ConeWork(kind="cone", included_angle=60,
                large_diameter=0.75, small_diameter=0.05), wheel_width=0.75, overrun=0.02,
                dresser_center_distance=2, depth_per_pass=0.0005)
        """
        return await self._sender.send(
            _FLANK,
            {
                "units": units,
                "work": work,
                "wheel_width": wheel_width,
                "edge_flat": edge_flat,
                "overrun": overrun,
                "dresser_center_distance": dresser_center_distance,
                "dresser_zero": dresser_zero,
                "depth_per_pass": depth_per_pass,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )
