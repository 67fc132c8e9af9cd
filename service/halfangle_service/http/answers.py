"""Answers with a whole body in memory, their ETags, and what a request says of media types."""

import gzip
import hashlib
from collections.abc import Mapping, Sequence
from typing import Any

from litestar import Request
from litestar.types import ASGIApp, Receive, Scope, Send
from pydantic_core import from_json

from halfangle_service import __version__
from halfangle_service.http.problems import ProblemError
from halfangle_service.settings import Settings

JSON = "application/json"
TEXT = "text/plain; charset=utf-8"

AnyRequest = Request[Any, Any, Any]
Headers = tuple[tuple[bytes, bytes], ...]

_NOT_MODIFIED = 304
#: Members of an answer, as `operation.py` writes them; within a text their quotes are escaped.
_ADVISORIES, _BASIS = b',"advisories":', b',"basis":{'
_NO_CODING = frozenset({"", "identity"})


def answer_of(
    body: bytes, media_type: str = JSON, headers: Headers = (), status: int = 200
) -> ASGIApp:
    """Answer with a body as it is; to HEAD the hook of what is sent empties it.

    Sent as it is rather than through the framework's response, which would add a second charset to
    the types of text and takes half as long as a calculation.
    """
    described = [*headers]
    if status != _NOT_MODIFIED:
        described.append((b"content-type", media_type.encode()))
        described.append((b"content-length", b"%d" % len(body)))

    async def answer(_: Scope, __: Receive, send: Send) -> None:
        await send({"type": "http.response.start", "status": status, "headers": described})
        await send({"type": "http.response.body", "body": body, "more_body": False})

    return answer


def cached(
    request: AnyRequest,
    content: bytes,
    media_type: str,
    settings: Settings,
    more: Headers = (),
) -> ASGIApp:
    """Answer with a strong ETag, or with 304 where the caller has these bytes already.

    `more` are further headers, which depend on nothing but the request.
    """
    return tagged(request, content, tag_of(content), media_type, settings, more)


def tag_of(content: bytes) -> str:
    """Strong ETag of these bytes."""
    return f'"{hashlib.sha256(content).hexdigest()[:32]}"'


def tag_of_request(request: AnyRequest, media_type: str) -> str:
    """Strong ETag of the answer to a GET, known before it is calculated.

    At one release the address and the form asked for decide it, and nothing else: an upgrade makes
    every tag another one, and until then whoever asks again costs no calculation.
    """
    scope = request.scope
    parts = (
        __version__.encode(),
        media_type.encode(),
        scope["path"].encode(),
        scope["query_string"],
    )
    return tag_of(b"\0".join(parts))


def unchanged(
    request: AnyRequest, tag: str, settings: Settings, more: Headers = ()
) -> ASGIApp | None:
    """304 for who names this very tag, else None; `*` is no tag: what it stands for may be refused.

    Who names it has been given it, so that what he asks for was answered.
    """
    known = header(request, b"if-none-match")
    if known == "*" or not _knows(known, tag):
        return None
    return tagged(request, b"", tag, "", settings, more)


def _knows(known: str, tag: str) -> bool:
    """True where If-None-Match names the tag, by the weak comparison (RFC 9110, 13.1.2)."""
    return known == "*" or tag in {entry.strip().removeprefix("W/") for entry in known.split(",")}


def tagged(
    request: AnyRequest,
    content: bytes,
    tag: str,
    media_type: str,
    settings: Settings,
    more: Headers = (),
    *,
    asked_again: bool = False,
) -> ASGIApp:
    """The same where the ETag is known already; `asked_again` before each use of what is kept."""
    scope = "private" if settings.asks_for_keys else "public"
    kept = f"{scope}, max-age={settings.cache_seconds}, must-revalidate"
    freshness = "no-cache" if asked_again else kept
    headers: Headers = ((b"etag", tag.encode()), (b"cache-control", freshness.encode()), *more)
    if _knows(header(request, b"if-none-match"), tag):
        return answer_of(b"", media_type, headers, _NOT_MODIFIED)
    return answer_of(content, media_type, headers)


class Document:
    """What never changes at this release, as it is and compressed, each with its own ETag.

    It is compressed once: at the best, which takes too long to be done for each request.
    `headers` come with each answer; `asked_again`: whoever keeps it asks before each use.
    """

    def __init__(
        self,
        content: bytes,
        media_type: str,
        headers: Headers = (),
        *,
        asked_again: bool = False,
    ) -> None:
        self._media_type = media_type
        self._headers = headers
        self._asked_again = asked_again
        smaller = gzip.compress(content, 9, mtime=0)
        self._plain = (content, tag_of(content))
        self._compressed = (smaller, tag_of(smaller))

    def answer(self, request: AnyRequest, settings: Settings) -> ASGIApp:
        """Answer with it, compressed where the caller takes that."""
        takes = _takes_gzip(header(request, b"accept-encoding"))
        content, tag = self._compressed if takes else self._plain
        coding: Headers = ((b"content-encoding", b"gzip"),) if takes else ()
        more = (*coding, (b"vary", b"Accept-Encoding"), *self._headers)
        return tagged(
            request,
            content,
            tag,
            self._media_type,
            settings,
            more,
            asked_again=self._asked_again,
        )


def _takes_gzip(accepted: str) -> bool:
    """True where Accept-Encoding takes gzip (RFC 9110, 12.5.3): by name, else by `*`."""
    weights = {}
    for entry in accepted.split(","):
        coding, *parameters = entry.replace(" ", "").lower().split(";")
        weights[coding] = _weight(parameters)
    by_name = weights.get("gzip", weights.get("x-gzip", weights.get("*", 0.0)))
    return by_name > 0.0 and by_name >= weights.get("identity", 0.0)


def severities(answer: bytes) -> list[str]:
    """Severity of each advisory of an answer that was written here.

    >>> severities(b'{"result":{},"advisories":[{"severity":"stop"}],"basis":{"release":"1"}}')
    ['stop']
    """
    found = advisories_of(answer)
    if found == b"[]":
        return []
    return [advisory["severity"] for advisory in from_json(found)]


def advisories_of(answer: bytes) -> bytes:
    """The advisories of an answer that was written here, as they stand in it."""
    begin = answer.rindex(_ADVISORIES) + len(_ADVISORIES)
    return answer[begin : answer.rindex(_BASIS)]


def header(request: AnyRequest, name: bytes) -> str:
    """Value of a header, its repetitions joined by commas (RFC 9110, 5.2); empty if absent."""
    sent = [value for key, value in request.scope["headers"] if key == name]
    return b", ".join(sent).decode("latin-1")


def require_json_body(request: AnyRequest) -> None:
    """Refuse a body that is not declared as JSON in UTF-8 (RFC 8259, 8.1), or is encoded."""
    if header(request, b"content-type") != JSON or header(request, b"content-encoding"):
        require_body_of(request, JSON)


def require_body_of(
    request: AnyRequest, *media_types: str, parameters: Mapping[str, str] | None = None
) -> str:
    """Give the media type of a body in UTF-8; refuse one of another type, or that is encoded.

    `parameters` are those that the type may have besides its charset, each with its one value.
    """
    declared = header(request, b"content-type")
    media_type, *further = (part.strip().lower() for part in declared.split(";"))
    taken = {"charset=utf-8", "charset=utf8", *(f"{k}={v}" for k, v in (parameters or {}).items())}
    unknown = [part for part in further if part.replace('"', "") not in {*taken, ""}]
    if media_type not in media_types or unknown:
        raise ProblemError(
            "unsupported-media-type",
            f"Send the body as Content-Type: {' or '.join(media_types)}; "
            f"got {declared[:80] or 'none'}.",
            headers={"Accept": ", ".join(media_types)},
        )
    coding = header(request, b"content-encoding")
    if coding.strip().lower() not in _NO_CODING:
        raise ProblemError(
            "unsupported-coding",
            f"Send the body as it is, without Content-Encoding; got {coding[:80]}.",
            headers={"Accept-Encoding": "identity"},
        )
    return media_type


def require_accepts(request: AnyRequest, media_type: str) -> None:
    """Refuse a request whose Accept header rules this media type out (RFC 9110, 12.5.1)."""
    best_accepted(request, (media_type,))


def best_accepted(request: AnyRequest, media_types: Sequence[str]) -> str:
    """Of media types the one that the Accept header weighs most, of several the first.

    Raises ProblemError (`not-acceptable`) where it rules out all of them. Of the ranges that hold
    a type the narrowest decides, whatever their order.
    """
    accepted = header(request, b"accept")
    if accepted in {"", "*/*"}:
        return media_types[0]
    weights: dict[str, float] = {}
    for entry in accepted.split(","):
        wanted, *parameters = entry.replace(" ", "").lower().split(";")
        weights[wanted] = max(weights.get(wanted, 0.0), _weight(parameters))
    best = max(media_types, key=lambda media_type: _weight_of(media_type, weights))
    if _weight_of(best, weights) > 0.0:
        return best
    names = " or ".join(media_type.partition(";")[0] for media_type in media_types)
    raise ProblemError(
        "not-acceptable", f"The answer is {names}; the request accepts {accepted[:80]}."
    )


def _weight_of(media_type: str, weights: Mapping[str, float]) -> float:
    """Weight of a media type by the narrowest of these ranges that holds it."""
    name = media_type.partition(";")[0]
    ranges = (name, name.partition("/")[0] + "/*", "*/*")
    return next((weights[one] for one in ranges if one in weights), 0.0)


def _weight(parameters: list[str]) -> float:
    """Weight of a media range; one that cannot be read is as none."""
    for parameter in parameters:
        if parameter.startswith("q="):
            try:
                return float(parameter[2:])
            except ValueError:
                return 1.0
    return 1.0
