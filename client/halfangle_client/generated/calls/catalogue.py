# Generated from openapi/openapi.json by openapi/generate.py. Do not edit.
"""Calls of the topic `catalogue`."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from halfangle_client.endpoint import AsyncSender, Endpoint, Sender

if TYPE_CHECKING:
    from halfangle_client.generated import models

_GET_OPERATION: Endpoint[models.OperationDetailAnswer] = Endpoint(
    name="catalogue.get_operation",
    method="GET",
    path="/v1/operations/{key}",
    answer="OperationDetailAnswer",
    accept="application/json",
)
_LIST_OPERATIONS: Endpoint[models.OperationListAnswer] = Endpoint(
    name="catalogue.list_operations",
    method="GET",
    path="/v1/operations",
    answer="OperationListAnswer",
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
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `timeout_seconds`. [second, over 0, at most 86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.OperationDetailAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

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

        Args:
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `timeout_seconds`. [second, over 0, at most 86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.OperationListAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

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
        """As `Halfangle.catalogue.get_operation`, to be awaited."""
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
        """Operation catalogue. As `Halfangle.catalogue.list_operations`, to be awaited."""
        return await self._sender.send(
            _LIST_OPERATIONS,
            {},
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )
