# Generated from openapi/openapi.json by openapi/generate.py. Do not edit.
"""Calls of the topic `catalogue`."""

from typing import Any

from halfangle_client.endpoint import AsyncSender, Endpoint, Sender
from halfangle_client.generated import models

_GET_OPERATION = Endpoint(
    name="catalogue.get_operation",
    method="GET",
    path="/v1/operations/{key}",
    answer=models.OperationDetailAnswer,
    accept="application/json",
)
_LIST_OPERATIONS = Endpoint(
    name="catalogue.list_operations",
    method="GET",
    path="/v1/operations",
    answer=models.OperationListAnswer,
    accept="application/json",
)

ENDPOINTS: tuple[Endpoint[Any], ...] = (
    _GET_OPERATION,
    _LIST_OPERATIONS,
)


class CatalogueCalls:
    """Calls of the topic `catalogue`."""

    def __init__(self, sender: Sender) -> None:
        self._sender = sender

    def get_operation(
        self,
        key: str,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.OperationDetailAnswer:
        """Operation catalogue: one operation.

        Every calculation, with its schemas, formulas, sources and an example.

        Args:
            key: The name, such as `blocks.angle-stack`.

        Example:
            client.catalogue.get_operation(key="blocks.angle-stack")
        """
        return self._sender.send(
            _GET_OPERATION,
            {
                "key": key,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def list_operations(
        self,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.OperationListAnswer:
        """Operation catalogue.

        Every calculation, with its schemas, formulas, sources and an example.

        Example:
            client.catalogue.list_operations()
        """
        return self._sender.send(
            _LIST_OPERATIONS,
            {},
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )


class AsyncCatalogueCalls:
    """Calls of the topic `catalogue`, to be awaited."""

    def __init__(self, sender: AsyncSender) -> None:
        self._sender = sender

    async def get_operation(
        self,
        key: str,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.OperationDetailAnswer:
        """Operation catalogue: one operation.

        Every calculation, with its schemas, formulas, sources and an example.

        Args:
            key: The name, such as `blocks.angle-stack`.

        Example:
            client.catalogue.get_operation(key="blocks.angle-stack")
        """
        return await self._sender.send(
            _GET_OPERATION,
            {
                "key": key,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def list_operations(
        self,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.OperationListAnswer:
        """Operation catalogue.

        Every calculation, with its schemas, formulas, sources and an example.

        Example:
            client.catalogue.list_operations()
        """
        return await self._sender.send(
            _LIST_OPERATIONS,
            {},
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )
