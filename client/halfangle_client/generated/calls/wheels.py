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
    heavy=True,
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
        dresser: models.SineBaseDresser | models.ScaleDresser,
        depth_per_pass: float,
        other_side: models.ConeWork | models.FaceWork | None = None,
        wheel_diameter: float | None = None,
        flange_diameter: float = 0.0,
        edge_flat: float = 0.0,
        spare_width: Literal["stays flat", "flank runs on", "land below flank"] = "stays flat",
        edge_radius: float = 0.0,
        root_radius: float = 0.0,
        overrun: float = 0.0,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.WheelFlankAnswer:
        """Angle to dress on the wheel.

        The flank to dress on one or both sides of the wheel for a cone or an angled face: angle,
        dresser's setting with its block stack or scale reading, widths, blended radii with their
        tangent points, passes, volume, and the profile as coordinates and as a drawing.

        Largest request: two flanks, and blocks as blocks/stack takes them.

        Args:
            units: Unit of every length here and in the answer.
            work: What is to be ground by the flank.
            wheel_width: Width of the wheel, in `units`. [length, 1e-06 to 10000]
            dresser: How the dresser is set.
            depth_per_pass: Depth dressed away by one pass, radially, in `units`. [length, 1e-06 to
                10000]
            other_side: What is to be ground by a flank on the wheel's other side; absent for a
                wheel dressed on one side.
            wheel_diameter: Diameter of the wheel, in `units`; without it, no volume is given and
                the depth is not held against the flange. [length, 1e-06 to 10000]
            flange_diameter: Diameter of the flanges, in `units`; the flank must not reach them.
                [length, 0 to 10000]
            edge_flat: Width of periphery to be left beside or between the flanks, in `units`.
                [length, 0 to 10000]
            spare_width: What becomes of the wheel's width beyond flanks and `edge_flat`: it stays
                as periphery; the flanks run on to the wheel's sides, deeper; or a straight land is
                dressed below the flanks. Two flanks share it equally.
            edge_radius: Radius that blends flank and periphery (or two flanks), in `units`.
                [length, 0 to 10000]
            root_radius: Radius that blends flank and land, in `units`; needs a land below the
                flank. [length, 0 to 10000]
            overrun: How far the flank reaches past the surface at each end, along the slope, in
                `units`. [length, 0 to 10000]

        Example:
            client.wheels.flank(units="in", work=models.ConeWork(kind="cone", included_angle=60,
                large_diameter=0.75, small_diameter=0.05), wheel_width=0.75, wheel_diameter=7,
                overrun=0.02, dresser=models.SineBaseDresser(kind="sine-base",
                center_distance=2, set="inch-81"), depth_per_pass=0.0005)
        """
        return self._sender.send(
            _FLANK,
            {
                "units": units,
                "work": work,
                "other_side": other_side,
                "wheel_width": wheel_width,
                "wheel_diameter": wheel_diameter,
                "flange_diameter": flange_diameter,
                "edge_flat": edge_flat,
                "spare_width": spare_width,
                "edge_radius": edge_radius,
                "root_radius": root_radius,
                "overrun": overrun,
                "dresser": dresser,
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
        dresser: models.SineBaseDresser | models.ScaleDresser,
        depth_per_pass: float,
        other_side: models.ConeWork | models.FaceWork | None = None,
        wheel_diameter: float | None = None,
        flange_diameter: float = 0.0,
        edge_flat: float = 0.0,
        spare_width: Literal["stays flat", "flank runs on", "land below flank"] = "stays flat",
        edge_radius: float = 0.0,
        root_radius: float = 0.0,
        overrun: float = 0.0,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.WheelFlankAnswer:
        """Angle to dress on the wheel.

        The flank to dress on one or both sides of the wheel for a cone or an angled face: angle,
        dresser's setting with its block stack or scale reading, widths, blended radii with their
        tangent points, passes, volume, and the profile as coordinates and as a drawing.

        Largest request: two flanks, and blocks as blocks/stack takes them.

        Args:
            units: Unit of every length here and in the answer.
            work: What is to be ground by the flank.
            wheel_width: Width of the wheel, in `units`. [length, 1e-06 to 10000]
            dresser: How the dresser is set.
            depth_per_pass: Depth dressed away by one pass, radially, in `units`. [length, 1e-06 to
                10000]
            other_side: What is to be ground by a flank on the wheel's other side; absent for a
                wheel dressed on one side.
            wheel_diameter: Diameter of the wheel, in `units`; without it, no volume is given and
                the depth is not held against the flange. [length, 1e-06 to 10000]
            flange_diameter: Diameter of the flanges, in `units`; the flank must not reach them.
                [length, 0 to 10000]
            edge_flat: Width of periphery to be left beside or between the flanks, in `units`.
                [length, 0 to 10000]
            spare_width: What becomes of the wheel's width beyond flanks and `edge_flat`: it stays
                as periphery; the flanks run on to the wheel's sides, deeper; or a straight land is
                dressed below the flanks. Two flanks share it equally.
            edge_radius: Radius that blends flank and periphery (or two flanks), in `units`.
                [length, 0 to 10000]
            root_radius: Radius that blends flank and land, in `units`; needs a land below the
                flank. [length, 0 to 10000]
            overrun: How far the flank reaches past the surface at each end, along the slope, in
                `units`. [length, 0 to 10000]

        Example:
            client.wheels.flank(units="in", work=models.ConeWork(kind="cone", included_angle=60,
                large_diameter=0.75, small_diameter=0.05), wheel_width=0.75, wheel_diameter=7,
                overrun=0.02, dresser=models.SineBaseDresser(kind="sine-base",
                center_distance=2, set="inch-81"), depth_per_pass=0.0005)
        """
        return await self._sender.send(
            _FLANK,
            {
                "units": units,
                "work": work,
                "other_side": other_side,
                "wheel_width": wheel_width,
                "wheel_diameter": wheel_diameter,
                "flange_diameter": flange_diameter,
                "edge_flat": edge_flat,
                "spare_width": spare_width,
                "edge_radius": edge_radius,
                "root_radius": root_radius,
                "overrun": overrun,
                "dresser": dresser,
                "depth_per_pass": depth_per_pass,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )
