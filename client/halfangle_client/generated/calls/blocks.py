# Generated from openapi/openapi.json by openapi/generate.py. Do not edit.
"""Calls of the topic `blocks`."""

from collections.abc import Sequence
from typing import Any, Literal

from halfangle_client.endpoint import AsyncSender, Endpoint, Sender
from halfangle_client.generated import models

_GET_ANGLE_SET = Endpoint(
    name="blocks.get_angle_set",
    method="GET",
    path="/v1/blocks/angle-sets/{key}",
    answer=models.BlockAngleSetEntryAnswer,
    accept="application/json",
)
_GET_GRADE = Endpoint(
    name="blocks.get_grade",
    method="GET",
    path="/v1/blocks/grades/{key}",
    answer=models.BlockGradeEntryAnswer,
    accept="application/json",
)
_GET_SET = Endpoint(
    name="blocks.get_set",
    method="GET",
    path="/v1/blocks/sets/{key}",
    answer=models.BlockSetDetailAnswer,
    accept="application/json",
)
_LIST_ANGLE_SETS = Endpoint(
    name="blocks.list_angle_sets",
    method="GET",
    path="/v1/blocks/angle-sets",
    answer=models.BlockAngleSetListAnswer,
    accept="application/json",
)
_LIST_GRADES = Endpoint(
    name="blocks.list_grades",
    method="GET",
    path="/v1/blocks/grades",
    answer=models.BlockGradeListAnswer,
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
    heavy=True,
)

ENDPOINTS: tuple[Endpoint[Any], ...] = (
    _GET_ANGLE_SET,
    _GET_GRADE,
    _GET_SET,
    _LIST_ANGLE_SETS,
    _LIST_GRADES,
    _LIST_SETS,
    _STACK,
)


class BlocksCalls:
    """Calls of the topic `blocks`."""

    def __init__(self, sender: Sender) -> None:
        self._sender = sender

    def get_angle_set(
        self,
        key: str,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.BlockAngleSetEntryAnswer:
        """Built-in sets of angle gauge blocks: one angle-set.

        Sets and grades of angle gauge blocks, each with its source.

        Args:
            key: The name, such as `angle-16`.

        Example:
            client.blocks.get_angle_set(key="angle-16")
        """
        return self._sender.send(
            _GET_ANGLE_SET,
            {
                "key": key,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def get_grade(
        self,
        key: str,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.BlockGradeEntryAnswer:
        """Tolerance grades of gauge blocks: one grade.

        Limit deviation and variation in length of each grade, by range of sizes.

        Args:
            key: The name, such as `ISO K`.

        Example:
            client.blocks.get_grade(key="ISO K")
        """
        return self._sender.send(
            _GET_GRADE,
            {
                "key": key,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

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

    def list_angle_sets(
        self,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.BlockAngleSetListAnswer:
        """Built-in sets of angle gauge blocks.

        Sets and grades of angle gauge blocks, each with its source.

        Example:
            client.blocks.list_angle_sets()
        """
        return self._sender.send(
            _LIST_ANGLE_SETS,
            {},
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def list_grades(
        self,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.BlockGradeListAnswer:
        """Tolerance grades of gauge blocks.

        Limit deviation and variation in length of each grade, by range of sizes.

        Example:
            client.blocks.list_grades()
        """
        return self._sender.send(
            _LIST_GRADES,
            {},
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
        box: Sequence[models.BlockOwned] | None = None,
        missing: Sequence[float] | None = None,
        in_use: Sequence[float] | None = None,
        max_blocks: int = 6,
        tolerance: float | None = None,
        aim: Literal["nominal", "actual"] = "nominal",
        prefer: Literal[
            "large blocks", "fewer small blocks", "least wear", "least uncertainty"
        ] = "large blocks",
        wear_blocks: Literal["none", "one end", "both ends"] = "none",
        wear_block_size: float | None = None,
        alternatives: int = 0,
        grade: str | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.BlockStackAnswer:
        """Stack of gauge blocks.

        The fewest gauge blocks that build a height, from a built-in set or from the blocks that the
        shop has, proved: no smaller stack exists; or the stack whose measured height comes nearest.

        Largest request: 500 blocks; a table of 12 million heights and 600 million heights times
        blocks, or else every pair or triple of the blocks; 60 million partial stacks times blocks
        for preference and alternatives.

        Args:
            units: Unit of every length here and in the answer.
            height: Height to build, in `units`; it is taken to the nearest 0.1 nm. [length, 1e-06
                to 10000]
            set: Built-in set, as `GET /v1/blocks/sets` lists it. One of `set`, `sizes`, `box` is
                needed. [1 to 60 characters]
            sizes: Nominal sizes of the blocks that the shop has, each once, in `units`. Where there
                are several of a size, send `box` with its `count`. [1 to 500 entries, each length,
                1e-06 to 10000]
            box: The shop's own blocks with what is known of them. [1 to 500 entries]
            missing: Sizes that are missing from the set, one entry a block, in `units`. [at most
                500 entries, each length, 1e-06 to 10000]
            in_use: Sizes that are in use elsewhere, one entry a block, in `units`. [at most 500
                entries, each length, 1e-06 to 10000]
            max_blocks: Most blocks to wring in one stack, wear blocks included. [count, 1 to 8]
            tolerance: Heights within ± this will do, in `units`: the fewest blocks that come within
                it, and of these the nearest. Absent: the height itself by nominal sizes, or the
                nearest by measured ones. [length, 0 to 10000]
            aim: `nominal`: the nominal sizes sum up to the height. `actual`: the stack whose actual
                height, measured deviations included, comes nearest; exact for up to 6 blocks out of
                200, and for up to 4 out of more.
            prefer: Which of several stacks of as few blocks: `large blocks`, the largest block as
                large as can be, then the next; `fewer small blocks`, the thinnest block as thick as
                can be, then the next; `least wear`, blocks wrung least often; `least uncertainty`.
                With `aim` `actual` the nearest comes first, whatever is preferred.
            wear_blocks: At which ends of the stack wear blocks go.
            wear_block_size: Nominal size of a wear block, in `units`. Absent: that of the set's or
                box's own wear blocks. [length, 1e-06 to 10000]
            alternatives: How many further stacks to give, the next best ones, all different.
                [count, 0 to 20]
            grade: Tolerance grade of blocks without a calibration, as `GET /v1/blocks/grades` lists
                it, for the height's uncertainty. [1 to 60 characters]

        Example:
            client.blocks.stack(units="in", height=2.5, set="inch-81")
        """
        return self._sender.send(
            _STACK,
            {
                "units": units,
                "set": set,
                "sizes": sizes,
                "box": box,
                "missing": missing,
                "in_use": in_use,
                "height": height,
                "max_blocks": max_blocks,
                "tolerance": tolerance,
                "aim": aim,
                "prefer": prefer,
                "wear_blocks": wear_blocks,
                "wear_block_size": wear_block_size,
                "alternatives": alternatives,
                "grade": grade,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )


class AsyncBlocksCalls:
    """Calls of the topic `blocks`, to be awaited."""

    def __init__(self, sender: AsyncSender) -> None:
        self._sender = sender

    async def get_angle_set(
        self,
        key: str,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.BlockAngleSetEntryAnswer:
        """Built-in sets of angle gauge blocks: one angle-set.

        Sets and grades of angle gauge blocks, each with its source.

        Args:
            key: The name, such as `angle-16`.

        Example:
            client.blocks.get_angle_set(key="angle-16")
        """
        return await self._sender.send(
            _GET_ANGLE_SET,
            {
                "key": key,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def get_grade(
        self,
        key: str,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.BlockGradeEntryAnswer:
        """Tolerance grades of gauge blocks: one grade.

        Limit deviation and variation in length of each grade, by range of sizes.

        Args:
            key: The name, such as `ISO K`.

        Example:
            client.blocks.get_grade(key="ISO K")
        """
        return await self._sender.send(
            _GET_GRADE,
            {
                "key": key,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

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

    async def list_angle_sets(
        self,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.BlockAngleSetListAnswer:
        """Built-in sets of angle gauge blocks.

        Sets and grades of angle gauge blocks, each with its source.

        Example:
            client.blocks.list_angle_sets()
        """
        return await self._sender.send(
            _LIST_ANGLE_SETS,
            {},
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def list_grades(
        self,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.BlockGradeListAnswer:
        """Tolerance grades of gauge blocks.

        Limit deviation and variation in length of each grade, by range of sizes.

        Example:
            client.blocks.list_grades()
        """
        return await self._sender.send(
            _LIST_GRADES,
            {},
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
        box: Sequence[models.BlockOwned] | None = None,
        missing: Sequence[float] | None = None,
        in_use: Sequence[float] | None = None,
        max_blocks: int = 6,
        tolerance: float | None = None,
        aim: Literal["nominal", "actual"] = "nominal",
        prefer: Literal[
            "large blocks", "fewer small blocks", "least wear", "least uncertainty"
        ] = "large blocks",
        wear_blocks: Literal["none", "one end", "both ends"] = "none",
        wear_block_size: float | None = None,
        alternatives: int = 0,
        grade: str | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.BlockStackAnswer:
        """Stack of gauge blocks.

        The fewest gauge blocks that build a height, from a built-in set or from the blocks that the
        shop has, proved: no smaller stack exists; or the stack whose measured height comes nearest.

        Largest request: 500 blocks; a table of 12 million heights and 600 million heights times
        blocks, or else every pair or triple of the blocks; 60 million partial stacks times blocks
        for preference and alternatives.

        Args:
            units: Unit of every length here and in the answer.
            height: Height to build, in `units`; it is taken to the nearest 0.1 nm. [length, 1e-06
                to 10000]
            set: Built-in set, as `GET /v1/blocks/sets` lists it. One of `set`, `sizes`, `box` is
                needed. [1 to 60 characters]
            sizes: Nominal sizes of the blocks that the shop has, each once, in `units`. Where there
                are several of a size, send `box` with its `count`. [1 to 500 entries, each length,
                1e-06 to 10000]
            box: The shop's own blocks with what is known of them. [1 to 500 entries]
            missing: Sizes that are missing from the set, one entry a block, in `units`. [at most
                500 entries, each length, 1e-06 to 10000]
            in_use: Sizes that are in use elsewhere, one entry a block, in `units`. [at most 500
                entries, each length, 1e-06 to 10000]
            max_blocks: Most blocks to wring in one stack, wear blocks included. [count, 1 to 8]
            tolerance: Heights within ± this will do, in `units`: the fewest blocks that come within
                it, and of these the nearest. Absent: the height itself by nominal sizes, or the
                nearest by measured ones. [length, 0 to 10000]
            aim: `nominal`: the nominal sizes sum up to the height. `actual`: the stack whose actual
                height, measured deviations included, comes nearest; exact for up to 6 blocks out of
                200, and for up to 4 out of more.
            prefer: Which of several stacks of as few blocks: `large blocks`, the largest block as
                large as can be, then the next; `fewer small blocks`, the thinnest block as thick as
                can be, then the next; `least wear`, blocks wrung least often; `least uncertainty`.
                With `aim` `actual` the nearest comes first, whatever is preferred.
            wear_blocks: At which ends of the stack wear blocks go.
            wear_block_size: Nominal size of a wear block, in `units`. Absent: that of the set's or
                box's own wear blocks. [length, 1e-06 to 10000]
            alternatives: How many further stacks to give, the next best ones, all different.
                [count, 0 to 20]
            grade: Tolerance grade of blocks without a calibration, as `GET /v1/blocks/grades` lists
                it, for the height's uncertainty. [1 to 60 characters]

        Example:
            client.blocks.stack(units="in", height=2.5, set="inch-81")
        """
        return await self._sender.send(
            _STACK,
            {
                "units": units,
                "set": set,
                "sizes": sizes,
                "box": box,
                "missing": missing,
                "in_use": in_use,
                "height": height,
                "max_blocks": max_blocks,
                "tolerance": tolerance,
                "aim": aim,
                "prefer": prefer,
                "wear_blocks": wear_blocks,
                "wear_block_size": wear_block_size,
                "alternatives": alternatives,
                "grade": grade,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )
