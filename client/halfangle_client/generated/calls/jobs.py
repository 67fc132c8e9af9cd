# Generated from openapi/openapi.json by openapi/generate.py. Do not edit.
"""Calls of the topic `jobs`."""

from collections.abc import Sequence
from typing import Any, Literal

from halfangle_client.endpoint import AsyncSender, Endpoint, Sender
from halfangle_client.generated import models

_CENTER = Endpoint(
    name="jobs.center",
    method="POST",
    path="/v1/jobs/center",
    answer=models.CenterJobAnswer,
    accept="application/json",
    sends="application/json",
)

ENDPOINTS: tuple[Endpoint[Any], ...] = (_CENTER,)


class JobsCalls:
    """Calls of the topic `jobs`."""

    def __init__(self, sender: Sender) -> None:
        self._sender = sender

    def center(
        self,
        *,
        job: str,
        units: Literal["in", "mm"],
        included_angle_tolerance_arcsec: float,
        body_diameter: float,
        shank: models.StraightShank | models.TaperShank,
        runout_allowed_tir: float,
        center_distance: float,
        block_grade: str,
        runout: models.RunoutContributions,
        included_angle: float | str | None = None,
        half_angle: float | str | None = None,
        block_set: str | None = None,
        block_sizes: Sequence[float] | None = None,
        blocks_away: Sequence[float] | None = None,
        max_blocks: int = 5,
        angle_errors: models.AngleContributions | None = None,
        downfeed_step: float | None = None,
        grinding_allowance: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.CenterJobAnswer:
        """Plan of a center ground on a sine plate.

        A center planned end to end: the plate's setting and its stack, the angle error and the
        runout to expect against their limits, what a step of downfeed takes off, the steps in
        order, and the checks, with which of them would catch a wrong block.

        Largest request: one stack of up to 8 blocks from up to 200.

        Args:
            job: Name of the job, for the heading of the plan. [1 to 60 characters]
            units: Unit of every length here and in the answer.
            included_angle_tolerance_arcsec: ± tolerance of the included angle. [arcsecond, 1e-06 to
                324000]
            body_diameter: Diameter where the cone meets the body, in `units`. [length, 1e-06 to
                10000]
            shank: The shank that the cone must run true to.
            runout_allowed_tir: Runout of the cone to its shank that the drawing allows, as full
                indicator movement square to the axis, in `units`. [length, 1e-06 to 10000]
            center_distance: Distance between the centers of the sine plate's rolls, in `units`.
                [length, 1e-06 to 10000]
            block_grade: Tolerance grade of the blocks. [1 to 60 characters]
            runout: Runout that the holding adds.
            included_angle: Included angle of the cone, in degrees. [degree, 1 to 178; or text in
                degrees, minutes, seconds]
            half_angle: Half angle of the cone: between axis and surface, in degrees. [degree, 0.5
                to 89; or text in degrees, minutes, seconds]
            block_set: Built-in set, as `GET /v1/blocks/sets` lists it. [1 to 60 characters]
            block_sizes: Sizes of the blocks that the shop has, each once, in `units`. [1 to 200
                entries, each length, 1e-06 to 10000]
            blocks_away: Sizes that are missing or in use elsewhere, one entry a block, in `units`:
                they are not built with. [at most 200 entries, each length, 1e-06 to 10000]
            max_blocks: Most blocks to wring in one stack. [count, 1 to 8]
            angle_errors: Errors of the set-up that turn the angle.
            downfeed_step: One step of downfeed, in `units`; 0.0001 in or 0.001 mm where left out.
                [length, 1e-06 to 10000]
            grinding_allowance: Stock left on the cone, measured square to its surface, in `units`.
                [length, 1e-06 to 10000]

        Example:
            client.jobs.center(job="HL-0412 machine center", units="in", included_angle=60,
                included_angle_tolerance_arcsec=120, body_diameter=0.75,
                shank=models.TaperShank(kind="taper", designation="morse-2"),
                runout_allowed_tir=0.0003, center_distance=5, block_set="inch-81",
                block_grade="ASME 0", runout=models.RunoutContributions(adapter_tir=0.0001,
                fixture_tir=5e-05, indicating_tir=5e-05),
                angle_errors=models.AngleContributions(center_distance_tolerance=0.0001,
                axis_pitch_arcsec=5, axis_yaw_arcsec=300, wheel_face_arcsec=20,
                temperature_celsius=22), grinding_allowance=0.004)
        """
        return self._sender.send(
            _CENTER,
            {
                "job": job,
                "units": units,
                "included_angle": included_angle,
                "half_angle": half_angle,
                "included_angle_tolerance_arcsec": included_angle_tolerance_arcsec,
                "body_diameter": body_diameter,
                "shank": shank,
                "runout_allowed_tir": runout_allowed_tir,
                "center_distance": center_distance,
                "block_set": block_set,
                "block_sizes": block_sizes,
                "blocks_away": blocks_away,
                "block_grade": block_grade,
                "max_blocks": max_blocks,
                "runout": runout,
                "angle_errors": angle_errors,
                "downfeed_step": downfeed_step,
                "grinding_allowance": grinding_allowance,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )


class AsyncJobsCalls:
    """Calls of the topic `jobs`, to be awaited."""

    def __init__(self, sender: AsyncSender) -> None:
        self._sender = sender

    async def center(
        self,
        *,
        job: str,
        units: Literal["in", "mm"],
        included_angle_tolerance_arcsec: float,
        body_diameter: float,
        shank: models.StraightShank | models.TaperShank,
        runout_allowed_tir: float,
        center_distance: float,
        block_grade: str,
        runout: models.RunoutContributions,
        included_angle: float | str | None = None,
        half_angle: float | str | None = None,
        block_set: str | None = None,
        block_sizes: Sequence[float] | None = None,
        blocks_away: Sequence[float] | None = None,
        max_blocks: int = 5,
        angle_errors: models.AngleContributions | None = None,
        downfeed_step: float | None = None,
        grinding_allowance: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.CenterJobAnswer:
        """Plan of a center ground on a sine plate.

        A center planned end to end: the plate's setting and its stack, the angle error and the
        runout to expect against their limits, what a step of downfeed takes off, the steps in
        order, and the checks, with which of them would catch a wrong block.

        Largest request: one stack of up to 8 blocks from up to 200.

        Args:
            job: Name of the job, for the heading of the plan. [1 to 60 characters]
            units: Unit of every length here and in the answer.
            included_angle_tolerance_arcsec: ± tolerance of the included angle. [arcsecond, 1e-06 to
                324000]
            body_diameter: Diameter where the cone meets the body, in `units`. [length, 1e-06 to
                10000]
            shank: The shank that the cone must run true to.
            runout_allowed_tir: Runout of the cone to its shank that the drawing allows, as full
                indicator movement square to the axis, in `units`. [length, 1e-06 to 10000]
            center_distance: Distance between the centers of the sine plate's rolls, in `units`.
                [length, 1e-06 to 10000]
            block_grade: Tolerance grade of the blocks. [1 to 60 characters]
            runout: Runout that the holding adds.
            included_angle: Included angle of the cone, in degrees. [degree, 1 to 178; or text in
                degrees, minutes, seconds]
            half_angle: Half angle of the cone: between axis and surface, in degrees. [degree, 0.5
                to 89; or text in degrees, minutes, seconds]
            block_set: Built-in set, as `GET /v1/blocks/sets` lists it. [1 to 60 characters]
            block_sizes: Sizes of the blocks that the shop has, each once, in `units`. [1 to 200
                entries, each length, 1e-06 to 10000]
            blocks_away: Sizes that are missing or in use elsewhere, one entry a block, in `units`:
                they are not built with. [at most 200 entries, each length, 1e-06 to 10000]
            max_blocks: Most blocks to wring in one stack. [count, 1 to 8]
            angle_errors: Errors of the set-up that turn the angle.
            downfeed_step: One step of downfeed, in `units`; 0.0001 in or 0.001 mm where left out.
                [length, 1e-06 to 10000]
            grinding_allowance: Stock left on the cone, measured square to its surface, in `units`.
                [length, 1e-06 to 10000]

        Example:
            client.jobs.center(job="HL-0412 machine center", units="in", included_angle=60,
                included_angle_tolerance_arcsec=120, body_diameter=0.75,
                shank=models.TaperShank(kind="taper", designation="morse-2"),
                runout_allowed_tir=0.0003, center_distance=5, block_set="inch-81",
                block_grade="ASME 0", runout=models.RunoutContributions(adapter_tir=0.0001,
                fixture_tir=5e-05, indicating_tir=5e-05),
                angle_errors=models.AngleContributions(center_distance_tolerance=0.0001,
                axis_pitch_arcsec=5, axis_yaw_arcsec=300, wheel_face_arcsec=20,
                temperature_celsius=22), grinding_allowance=0.004)
        """
        return await self._sender.send(
            _CENTER,
            {
                "job": job,
                "units": units,
                "included_angle": included_angle,
                "half_angle": half_angle,
                "included_angle_tolerance_arcsec": included_angle_tolerance_arcsec,
                "body_diameter": body_diameter,
                "shank": shank,
                "runout_allowed_tir": runout_allowed_tir,
                "center_distance": center_distance,
                "block_set": block_set,
                "block_sizes": block_sizes,
                "blocks_away": blocks_away,
                "block_grade": block_grade,
                "max_blocks": max_blocks,
                "runout": runout,
                "angle_errors": angle_errors,
                "downfeed_step": downfeed_step,
                "grinding_allowance": grinding_allowance,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )
