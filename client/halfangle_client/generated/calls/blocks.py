# Generated from openapi/openapi.json by openapi/generate.py. Do not edit.
"""Calls of the topic `blocks`."""

from collections.abc import Sequence
from typing import Any, Literal

from halfangle_client.endpoint import AsyncSender, Endpoint, Sender
from halfangle_client.generated import models

_GET_SET = Endpoint(
    name="blocks.get_set",
    method="GET",
    path="/v1/blocks/sets/{key}",
    answer=models.BlockSetDetailAnswer,
    accept="application/json",
)
_LIST_SETS = Endpoint(
    name="blocks.list_sets",
    method="GET",
    path="/v1/blocks/sets",
    answer=models.BlockSetListAnswer,
    accept="application/json",
)
_STACK = Endpoint(
    name="blocks.stack",
    method="POST",
    path="/v1/blocks/stack",
    answer=models.BlockStackAnswer,
    accept="application/json",
    sends="application/json",
)

ENDPOINTS: tuple[Endpoint[Any], ...] = (
    _GET_SET,
    _LIST_SETS,
    _STACK,
)


class BlocksCalls:
    """Calls of the topic `blocks`."""

    def __init__(self, sender: Sender) -> None:
        self._sender = sender

    def get_set(
        self,
        key: str,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.BlockSetDetailAnswer:
        """Built-in sets of gauge blocks: one set.

        Sets by count and series, each with its source. No standard fixes the composition of a set:
        check it against your box.

        Args:
            key: The name, such as `inch-81`.

        Example:
            client.blocks.get_set(key="inch-81")
        """
        return self._sender.send(
            _GET_SET,
            {
                "key": key,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def list_sets(
        self,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.BlockSetListAnswer:
        """Built-in sets of gauge blocks.

        Sets by count and series, each with its source. No standard fixes the composition of a set:
        check it against your box.

        Example:
            client.blocks.list_sets()
        """
        return self._sender.send(
            _LIST_SETS,
            {},
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def stack(
        self,
        *,
        units: Literal["in", "mm"],
        height: float,
        set: str | None = None,
        sizes: Sequence[float] | None = None,
        max_blocks: int = 6,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.BlockStackAnswer:
        """Stack of gauge blocks.

        The fewest gauge blocks that build a height, from a built-in set or from the blocks that the
        shop has; proved: no smaller stack exists.

        Largest request: 500 blocks whose sizes share a step of which the highest stack holds at
        most 40 million.

        Args:
            units: Unit of every length here and in the answer.
            height: Height to build, in `units`; it is taken to the nearest 0.1 nm. [length, 1e-06
                to 10000]
            set: Built-in set, as `GET /v1/blocks/sets` lists it. Either this or `sizes`. [1 to 60
                characters]
            sizes: Nominal sizes of the blocks that the shop has, one entry a block, in `units`: a
                size is given as often as there are blocks of it. Either this or `set`. [1 to 500
                entries, each length, 1e-06 to 10000]
            max_blocks: Most blocks to wring in one stack. [count, 1 to 8]

        Example:
            client.blocks.stack(units="in", height=2.5, set="inch-81")
        """
        return self._sender.send(
            _STACK,
            {
                "units": units,
                "height": height,
                "set": set,
                "sizes": sizes,
                "max_blocks": max_blocks,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )


class AsyncBlocksCalls:
    """Calls of the topic `blocks`, to be awaited."""

    def __init__(self, sender: AsyncSender) -> None:
        self._sender = sender

    async def get_set(
        self,
        key: str,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.BlockSetDetailAnswer:
        """Built-in sets of gauge blocks: one set.

        Sets by count and series, each with its source. No standard fixes the composition of a set:
        check it against your box.

        Args:
            key: The name, such as `inch-81`.

        Example:
            client.blocks.get_set(key="inch-81")
        """
        return await self._sender.send(
            _GET_SET,
            {
                "key": key,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def list_sets(
        self,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.BlockSetListAnswer:
        """Built-in sets of gauge blocks.

        Sets by count and series, each with its source. No standard fixes the composition of a set:
        check it against your box.

        Example:
            client.blocks.list_sets()
        """
        return await self._sender.send(
            _LIST_SETS,
            {},
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def stack(
        self,
        *,
        units: Literal["in", "mm"],
        height: float,
        set: str | None = None,
        sizes: Sequence[float] | None = None,
        max_blocks: int = 6,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.BlockStackAnswer:
        """Stack of gauge blocks.

        The fewest gauge blocks that build a height, from a built-in set or from the blocks that the
        shop has; proved: no smaller stack exists.

        Largest request: 500 blocks whose sizes share a step of which the highest stack holds at
        most 40 million.

        Args:
            units: Unit of every length here and in the answer.
            height: Height to build, in `units`; it is taken to the nearest 0.1 nm. [length, 1e-06
                to 10000]
            set: Built-in set, as `GET /v1/blocks/sets` lists it. Either this or `sizes`. [1 to 60
                characters]
            sizes: Nominal sizes of the blocks that the shop has, one entry a block, in `units`: a
                size is given as often as there are blocks of it. Either this or `set`. [1 to 500
                entries, each length, 1e-06 to 10000]
            max_blocks: Most blocks to wring in one stack. [count, 1 to 8]

        Example:
            client.blocks.stack(units="in", height=2.5, set="inch-81")
        """
        return await self._sender.send(
            _STACK,
            {
                "units": units,
                "height": height,
                "set": set,
                "sizes": sizes,
                "max_blocks": max_blocks,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )
