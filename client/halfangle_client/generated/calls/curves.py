# Generated from openapi/openapi.json by openapi/generate.py. Do not edit.
"""Calls of the topic `curves`."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import TYPE_CHECKING, Any, Literal

from halfangle_client.endpoint import AsyncSender, Endpoint, Sender

if TYPE_CHECKING:
    from halfangle_client.generated import models

_OF: Endpoint[models.CurveAnswer] = Endpoint(
    name="curves.of",
    method="POST",
    path="/v1/curves/{operation}",
    answer="CurveAnswer",
    accept="application/json",
    sends="application/json",
    heavy=True,
)

ENDPOINTS: tuple[Endpoint[Any], ...] = (_OF,)


class CurvesCalls:
    """Calls of the topic `curves`."""

    def __init__(self, sender: Sender) -> None:
        self._sender = sender

    def of(
        self,
        operation: Literal[
            "centers.hole",
            "centers.limits",
            "centers.regrind",
            "centers.standing-offset",
            "measuring.lever-tip",
            "measuring.small-angle",
            "measuring.square",
            "runout.convert",
            "sine.angle",
            "sine.setting",
            "sine.taper-angle",
            "sine.taper-setting",
            "tapers.dovetail-over-rolls",
            "tapers.infeed",
            "tapers.one-ball",
            "tapers.over-balls-nominal",
            "tapers.over-rolls-nominal",
            "tapers.plug-depth",
            "tapers.plug-depth-nominal",
            "tapers.set-over",
            "tapers.solve",
            "tapers.standoff",
            "tapers.tolerance",
            "tapers.vee-over-rolls-nominal",
            "wheels.diamond",
            "wheels.dressing",
            "wheels.radius",
            "wheels.speed",
        ],
        *,
        over: Mapping[str, models.CurveRange | Sequence[float]],
        columns: Sequence[str],
        request: Mapping[str, Any] | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.CurveAnswer:
        """An operation over a range of its numbers.

        For sliders, plots and heat maps: the operation at every number of a range or a list of one
        field, or at every pair of two, with the values asked for as arrays. Each is what the
        operation's own address answers. Where a point is refused its values are null and the
        problem says where; where its answer says stop they are null too, and the stop is among the
        advisories. What is wrong of the request whatever runs is refused as a whole. Operations
        that have curves are marked `x-columns`.

        Args:
            operation: Name of the operation.
            over: One or two of its fields that are numbers, each with its range or its list. Of two
                every pair is a point; at most 10000 points, 1000 of a result with an estimate.
            columns: Values of the result by their paths: `height`, `angle.degrees`. [1 to 40
                entries, each at most 200 characters]
            request: All other fields of the operation's request, as it takes them.
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `heavy_timeout_seconds`. [second, over 0, at most
                86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.CurveAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.curves.of(operation="sine.setting", request={"units": "in",
                "center_distance": 5}, over={"angle": {"from": 1, "to": 60, "count": 60}},
                columns=["height", "arcsec_per_step"])
        """
        return self._sender.send(
            _OF,
            {
                "operation": operation,
                "request": request,
                "over": over,
                "columns": columns,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )


class AsyncCurvesCalls:
    """Calls of the topic `curves`, to be awaited."""

    def __init__(self, sender: AsyncSender) -> None:
        self._sender = sender

    async def of(
        self,
        operation: Literal[
            "centers.hole",
            "centers.limits",
            "centers.regrind",
            "centers.standing-offset",
            "measuring.lever-tip",
            "measuring.small-angle",
            "measuring.square",
            "runout.convert",
            "sine.angle",
            "sine.setting",
            "sine.taper-angle",
            "sine.taper-setting",
            "tapers.dovetail-over-rolls",
            "tapers.infeed",
            "tapers.one-ball",
            "tapers.over-balls-nominal",
            "tapers.over-rolls-nominal",
            "tapers.plug-depth",
            "tapers.plug-depth-nominal",
            "tapers.set-over",
            "tapers.solve",
            "tapers.standoff",
            "tapers.tolerance",
            "tapers.vee-over-rolls-nominal",
            "wheels.diamond",
            "wheels.dressing",
            "wheels.radius",
            "wheels.speed",
        ],
        *,
        over: Mapping[str, models.CurveRange | Sequence[float]],
        columns: Sequence[str],
        request: Mapping[str, Any] | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.CurveAnswer:
        """An operation over a range of its numbers. As `Halfangle.curves.of`, to be awaited."""
        return await self._sender.send(
            _OF,
            {
                "operation": operation,
                "request": request,
                "over": over,
                "columns": columns,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )
