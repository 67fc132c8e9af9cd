# Generated from openapi/openapi.json by openapi/generate.py. Do not edit.
"""Calls of the topic `tapers`."""

from typing import Any, Literal

from halfangle_client.endpoint import AsyncSender, Endpoint, Sender
from halfangle_client.generated import models

_GET_STANDARD = Endpoint(
    name="tapers.get_standard",
    method="GET",
    path="/v1/tapers/standard/{key}",
    answer=models.StandardTaperEntryAnswer,
    accept="application/json",
)
_LIST_STANDARD = Endpoint(
    name="tapers.list_standard",
    method="GET",
    path="/v1/tapers/standard",
    answer=models.StandardTaperListAnswer,
    accept="application/json",
)
_SOLVE = Endpoint(
    name="tapers.solve",
    method="POST",
    path="/v1/tapers/solve",
    answer=models.TaperSolveAnswer,
    accept="application/json",
    sends="application/json",
)

ENDPOINTS: tuple[Endpoint[Any], ...] = (
    _GET_STANDARD,
    _LIST_STANDARD,
    _SOLVE,
)


class TapersCalls:
    """Calls of the topic `tapers`."""

    def __init__(self, sender: Sender) -> None:
        self._sender = sender

    def get_standard(
        self,
        key: str,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.StandardTaperEntryAnswer:
        """Standard tapers: one standard.

        Standard tapers from published tables, each row with its source.

        Args:
            key: The designation, such as `morse-0`.

        Example:
            client.tapers.get_standard(key="morse-0")
        """
        return self._sender.send(
            _GET_STANDARD,
            {
                "key": key,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def list_standard(
        self,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.StandardTaperListAnswer:
        """Standard tapers.

        Standard tapers from published tables, each row with its source.

        Example:
            client.tapers.list_standard()
        """
        return self._sender.send(
            _LIST_STANDARD,
            {},
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def solve(
        self,
        *,
        units: Literal["in", "mm"],
        large_diameter: float | None = None,
        small_diameter: float | None = None,
        length: float | None = None,
        included_angle: float | str | None = None,
        half_angle: float | str | None = None,
        taper_per_foot: float | None = None,
        one_in_x: float | None = None,
        agree_within: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.TaperSolveAnswer:
        """Taper from three of its quantities.

        Large diameter, small diameter, length and slope from any three of them; more than three
        must agree.

        Largest request: one calculation of fixed size.

        Args:
            units: Unit of every length here and in the answer.
            large_diameter: Diameter of the large end, in `units`. [length, 1e-06 to 10000]
            small_diameter: Diameter of the small end, in `units`. [length, 1e-06 to 10000]
            length: Distance between the two diameters along the axis, in `units`. [length, 1e-06 to
                10000]
            included_angle: Angle between opposite surfaces of the cone, in degrees. [degree, over
                0, under 180; or text in degrees, minutes, seconds]
            half_angle: Angle between axis and surface, in degrees. [degree, over 0, under 90; or
                text in degrees, minutes, seconds]
            taper_per_foot: Inches of diameter a foot of length, whatever `units` are. [inch per
                foot, 1e-06 to 10000]
            one_in_x: The x of a taper written 1:x, on the diameter. [0.001 to 1000000]
            agree_within: How far diameters that follow from redundant values may differ, in
                `units`; 0.0001 in or 0.001 mm where left out. [length, 1e-06 to 10000]

        Example:
            client.tapers.solve(units="in", large_diameter=0.7, length=2.5625,
                taper_per_foot=0.59941)
        """
        return self._sender.send(
            _SOLVE,
            {
                "units": units,
                "large_diameter": large_diameter,
                "small_diameter": small_diameter,
                "length": length,
                "included_angle": included_angle,
                "half_angle": half_angle,
                "taper_per_foot": taper_per_foot,
                "one_in_x": one_in_x,
                "agree_within": agree_within,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )


class AsyncTapersCalls:
    """Calls of the topic `tapers`, to be awaited."""

    def __init__(self, sender: AsyncSender) -> None:
        self._sender = sender

    async def get_standard(
        self,
        key: str,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.StandardTaperEntryAnswer:
        """Standard tapers: one standard.

        Standard tapers from published tables, each row with its source.

        Args:
            key: The designation, such as `morse-0`.

        Example:
            client.tapers.get_standard(key="morse-0")
        """
        return await self._sender.send(
            _GET_STANDARD,
            {
                "key": key,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def list_standard(
        self,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.StandardTaperListAnswer:
        """Standard tapers.

        Standard tapers from published tables, each row with its source.

        Example:
            client.tapers.list_standard()
        """
        return await self._sender.send(
            _LIST_STANDARD,
            {},
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def solve(
        self,
        *,
        units: Literal["in", "mm"],
        large_diameter: float | None = None,
        small_diameter: float | None = None,
        length: float | None = None,
        included_angle: float | str | None = None,
        half_angle: float | str | None = None,
        taper_per_foot: float | None = None,
        one_in_x: float | None = None,
        agree_within: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.TaperSolveAnswer:
        """Taper from three of its quantities.

        Large diameter, small diameter, length and slope from any three of them; more than three
        must agree.

        Largest request: one calculation of fixed size.

        Args:
            units: Unit of every length here and in the answer.
            large_diameter: Diameter of the large end, in `units`. [length, 1e-06 to 10000]
            small_diameter: Diameter of the small end, in `units`. [length, 1e-06 to 10000]
            length: Distance between the two diameters along the axis, in `units`. [length, 1e-06 to
                10000]
            included_angle: Angle between opposite surfaces of the cone, in degrees. [degree, over
                0, under 180; or text in degrees, minutes, seconds]
            half_angle: Angle between axis and surface, in degrees. [degree, over 0, under 90; or
                text in degrees, minutes, seconds]
            taper_per_foot: Inches of diameter a foot of length, whatever `units` are. [inch per
                foot, 1e-06 to 10000]
            one_in_x: The x of a taper written 1:x, on the diameter. [0.001 to 1000000]
            agree_within: How far diameters that follow from redundant values may differ, in
                `units`; 0.0001 in or 0.001 mm where left out. [length, 1e-06 to 10000]

        Example:
            client.tapers.solve(units="in", large_diameter=0.7, length=2.5625,
                taper_per_foot=0.59941)
        """
        return await self._sender.send(
            _SOLVE,
            {
                "units": units,
                "large_diameter": large_diameter,
                "small_diameter": small_diameter,
                "length": length,
                "included_angle": included_angle,
                "half_angle": half_angle,
                "taper_per_foot": taper_per_foot,
                "one_in_x": one_in_x,
                "agree_within": agree_within,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )
