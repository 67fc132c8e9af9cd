"""API keys, where the settings name any."""

import hmac
from collections.abc import Iterable
from typing import Any

from litestar.connection import ASGIConnection
from litestar.middleware import (
    AbstractAuthenticationMiddleware,
    AuthenticationResult,
    DefineMiddleware,
)
from litestar.types import ASGIApp

from halfangle_service.http.problems import ProblemError

#: Marks what is answered without a key: whoever watches the service is not its user.
WITHOUT_KEY = {"exclude_from_auth": True}


class KeyCheck(AbstractAuthenticationMiddleware):
    """Asks for a known key in the header X-API-Key."""

    def __init__(self, app: ASGIApp, keys: Iterable[str]) -> None:
        super().__init__(app)
        self._keys = [key.encode() for key in sorted(keys)]

    async def authenticate_request(
        self, connection: ASGIConnection[Any, Any, Any, Any]
    ) -> AuthenticationResult:
        """Let a caller with a known key pass; raises ProblemError (`unauthorized`) for another."""
        sent = connection.headers.get("x-api-key", "").encode("latin-1")
        # No early exit: the time must not tell which key came close.
        if sum(hmac.compare_digest(sent, key) for key in self._keys) == 0:
            raise ProblemError(
                "unauthorized",
                "Send a valid key in the header X-API-Key.",
                headers={"WWW-Authenticate": 'ApiKey header="X-API-Key"'},
            )
        return AuthenticationResult(user=None, auth=None)


def key_check(keys: Iterable[str]) -> list[DefineMiddleware]:
    """Middleware that asks for one of these keys; none where there are none."""
    keys = tuple(keys)
    return [DefineMiddleware(KeyCheck, keys=keys)] if keys else []
