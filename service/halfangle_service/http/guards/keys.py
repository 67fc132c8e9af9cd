"""API keys, where the settings name any: who may call, how often, and what is open to everybody."""

import base64
import binascii
import hmac
import math
from typing import Any

import structlog
from litestar.middleware import DefineMiddleware
from litestar.types import ASGIApp, Receive, Scope, Send

from halfangle_service.http.guards.key_file import (
    SHORTEST_KEY,
    Caller,
    KeysFile,
    Ring,
    digest_of,
    hidden,
    is_over,
    ring_of_environment,
)
from halfangle_service.http.guards.rates import Allowance, Paces
from halfangle_service.http.problems import ProblemError
from halfangle_service.http.watch.hook import KEY
from halfangle_service.http.watch.metrics import (
    BY_KEY,
    KEYS_READ,
    KEYS_UNREADABLE,
    LIMITED,
    Metrics,
)
from halfangle_service.settings import OpenPart, Settings
from halfangle_service.trade.wording import plain

#: Name of a route's option that says of which part it is that may be open.
_PART = "open_as"
#: Name under which a request's own state holds its caller's allowance.
_ALLOWANCE = "allowance"
_LONGEST_SENT = 1_000
_HEADER_CHALLENGE = 'ApiKey header="X-API-Key"'
_BASIC_CHALLENGE = 'Basic realm="Halfangle", charset="UTF-8"'


def open_as(part: OpenPart) -> dict[str, Any]:
    """Options of a route that is answered without a key where the settings say so of its part."""
    return {_PART: part}


def allowance_of(scope: Scope) -> Allowance | None:
    """How often the caller of a request may ask; None: as often as he likes."""
    found: Allowance | None = scope["state"].get(_ALLOWANCE)
    return found


def key_of(scope: Scope) -> str | None:
    """Name of the key that a request came with; None where none was asked for."""
    found: str | None = scope["state"].get(KEY)
    return found


class Door:
    """Knows the keys as they are now; raises KeysError where their file is wrong at the start."""

    def __init__(self, settings: Settings, metrics: Metrics, paces: Paces) -> None:
        self.open_parts = settings.open_paths
        self._settings = settings
        self._metrics = metrics
        self._paces = paces
        self._of_environment = ring_of_environment(settings.api_keys)
        if any(len(key) < SHORTEST_KEY for key in settings.api_keys):
            logger = structlog.get_logger("halfangle.keys")
            logger.warning("short keys in api_keys", shorter_than=SHORTEST_KEY)
        self._file = None if settings.keys_file is None else KeysFile(settings.keys_file)
        self._reads = 0
        self._ring: dict[bytes, tuple[bytes, Caller]] = {}
        self._shown: Ring | None = None
        self._renew()

    def look(self) -> None:
        """Take what the file of keys says now, where it has changed."""
        if self._file is not None and self._file.look():
            self._renew()

    def _renew(self) -> None:
        """Look callers up by what nobody outside can know, so that its time tells nothing."""
        file = self._file
        ring = self._of_environment if file is None else {**self._of_environment, **file.ring}
        if file is not None:
            self._metrics.set(KEYS_UNREADABLE, float(not file.readable))
            self._metrics.add(KEYS_READ, amount=file.reads - self._reads)
            self._reads = file.reads
        if ring == self._shown:
            return
        self._shown = ring
        self._ring = {hidden(digest): (digest, caller) for digest, caller in ring.items()}
        ends = {c.name: c.ends for c in ring.values() if c.ends is not None}
        self._metrics.key_ends = ends

    def admit(self, scope: Scope) -> None:
        """Let a caller with a known key pass, within his pace.

        Raises ProblemError: `unauthorized`, `too-many-requests`.
        """
        self.look()
        caller = self._caller(scope)
        state: Any = scope["state"]
        state[KEY] = caller.name
        allowance = self._allowance(caller)
        wait = 0.0 if allowance is None else allowance.wait()
        if allowance is not None and wait > 0.0:
            self._metrics.add(LIMITED, caller.name)
            raise _too_many(allowance, wait)
        state[_ALLOWANCE] = allowance
        self._metrics.add(BY_KEY, caller.name)

    def _caller(self, scope: Scope) -> Caller:
        name, key = _sent(scope)
        if not 0 < len(key) <= _LONGEST_SENT:
            raise _unauthorized(scope, "Send a valid key")
        digest = digest_of(key)
        found, caller = self._ring.get(hidden(digest), (b"", Caller("")))
        is_known = hmac.compare_digest(digest, found) and len(key) >= caller.shortest
        if not is_known or name not in {"", caller.name}:
            raise _unauthorized(scope, "Send a valid key")
        if is_over(caller):
            raise _unauthorized(scope, f"The key {caller.name} has come to its end; send another")
        return caller

    def _allowance(self, caller: Caller) -> Allowance | None:
        own, settings = caller.rate_per_minute, self._settings
        per_minute = settings.rate_per_minute if own is None else own
        burst = settings.rate_burst if caller.rate_burst is None else caller.rate_burst
        if not per_minute:
            return None
        return Allowance(self._paces, caller.name, per_minute, burst)


def _sent(scope: Scope) -> tuple[str, bytes]:
    """Name and key that a request sends: no name by X-API-Key, and none need be by Basic."""
    keys = [value for name, value in scope["headers"] if name == b"x-api-key"]
    if keys:
        return "", keys[0] if len(keys) == 1 else b""
    basic = [value for name, value in scope["headers"] if name == b"authorization"]
    scheme, _, encoded = (basic[0] if len(basic) == 1 else b"").partition(b" ")
    if scheme.lower() != b"basic" or len(encoded) > 2 * _LONGEST_SENT:
        return "", b""
    try:
        name, _, key = base64.b64decode(encoded.strip(), validate=True).partition(b":")
        return name.decode(), key
    except (binascii.Error, UnicodeDecodeError):
        return "", b""


def _unauthorized(scope: Scope, detail: str) -> ProblemError:
    """Refuse; to a page's own call without the challenge at which a browser asks its user.

    Such a page asks for the key itself, and a dialog of the browser would come before it. Marks of
    such a call: what browsers say of it over TLS, what our pages say of themselves, and a key sent
    by the other way.
    """
    sent = dict(scope["headers"])
    by_script = (
        sent.get(b"sec-fetch-mode", b"navigate") != b"navigate"
        or b"x-requested-with" in sent
        or b"x-api-key" in sent
    )
    challenges = _HEADER_CHALLENGE if by_script else f"{_HEADER_CHALLENGE}, {_BASIC_CHALLENGE}"
    ways = "in the header X-API-Key, or as the password of HTTP Basic with the key's name as user"
    return ProblemError(
        "unauthorized", f"{detail} {ways}.", headers={"WWW-Authenticate": challenges}
    )


def _too_many(allowance: Allowance, wait: float) -> ProblemError:
    seconds = math.ceil(wait)
    return ProblemError(
        "too-many-requests",
        f"The key {allowance.name} may ask {plain(allowance.per_minute)} times a minute, "
        f"{allowance.burst} at once; rows of batches and tables count as requests, curves by their "
        "points. "
        f"Try again in {seconds} s.",
        headers={"Retry-After": str(seconds)},
        more={"per_minute": allowance.per_minute, "burst": allowance.burst},
    )


class KeyCheck:
    """Middleware that asks for a known key."""

    def __init__(self, app: ASGIApp, door: Door) -> None:
        self._app = app
        self._door = door

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Let pass what is open, and who has a key; OPTIONS tells nothing that is not public."""
        asked: Any = scope
        if asked["type"] == "http" and asked["method"] != "OPTIONS":
            part = asked["route_handler"].opt.get(_PART)
            if part not in self._door.open_parts:
                self._door.admit(scope)
        await self._app(scope, receive, send)


def key_check(door: Door) -> DefineMiddleware:
    """Middleware that asks for a key."""
    return DefineMiddleware(KeyCheck, door=door)
