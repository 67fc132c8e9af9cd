"""What a call sends, without the sending: nothing here knows of sockets."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cache
from threading import Lock
from typing import Any, Generic, Protocol, TypeVar
from urllib.parse import quote

AnswerT = TypeVar("AnswerT")
#: pydantic finishes a model when it is first used, and not for several threads at once.
_ONE_AT_A_TIME = Lock()
_PROBLEM = "application/problem+json"


@dataclass(frozen=True, slots=True)
class Endpoint(Generic[AnswerT]):
    """One route of the contract.

    `answer` is the type of the answer: `str`, `bytes`, or the name of a model, which is loaded when
    the first answer is read. `query` names the fields that go into
    the query string, `nulls` those of which None is a value and not the same as left out. `heavy`
    marks what may take longer than the usual timeout.
    """

    name: str
    method: str
    path: str
    answer: type[AnswerT] | str
    accept: str = "application/json"
    sends: str = ""
    query: tuple[str, ...] = ()
    nulls: tuple[str, ...] = ()
    heavy: bool = False

    def untyped(self) -> "Endpoint[bytes]":
        """The same route, its answer left as it comes."""
        return replace(self, answer=bytes)  # type: ignore[arg-type, return-value]

    @property
    def operation(self) -> str | None:
        """Name of the operation of which a row of a batch asks the same; None where none does."""
        if self.method != "POST" or self.query or not isinstance(self.answer, str):
            return None
        topic, _, verb = self.path.removeprefix("/v1/").partition("/")
        return None if "/" in verb or "{" in verb else f"{topic}.{verb}"

    @property
    def answer_type(self) -> type[AnswerT]:
        """The type of the answer, a model made ready to read one."""
        return model_of(self.answer) if isinstance(self.answer, str) else self.answer


@cache
def model_of(name: str) -> Any:
    """Give a model by its name, loaded when it is first asked for."""
    from halfangle_client.generated import models  # noqa: PLC0415 -- slow to load

    model = getattr(models, name)
    with _ONE_AT_A_TIME:
        model.model_rebuild()
    return model


class Sender(Protocol):
    """Whatever sends a call and waits for its answer."""

    def send(
        self,
        endpoint: Endpoint[AnswerT],
        fields: Mapping[str, Any],
        *,
        content: str | bytes | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> AnswerT:
        """Send a call; give its answer, or raise a HalfangleError."""
        ...


class AsyncSender(Protocol):
    """Whatever sends a call and awaits its answer."""

    async def send(
        self,
        endpoint: Endpoint[AnswerT],
        fields: Mapping[str, Any],
        *,
        content: str | bytes | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> AnswerT:
        """Send a call; give its answer, or raise a HalfangleError."""
        ...


@dataclass(frozen=True, slots=True)
class Message:
    """A request as HTTP sends it, less the address of the service."""

    method: str
    path: str
    query: Mapping[str, str]
    headers: Mapping[str, str]
    body: bytes | None


@dataclass(frozen=True, slots=True)
class Reply:
    """An answer as HTTP brings it."""

    status: int
    headers: Mapping[str, str]
    body: bytes


def message_of(
    endpoint: Endpoint[Any],
    fields: Mapping[str, Any],
    *,
    content: str | bytes | None = None,
    request_id: str,
) -> Message:
    """Write a call as an HTTP request. The service alone judges the values."""
    given = _given(endpoint, fields)
    path = endpoint.path
    for name in [name for name in given if f"{{{name}}}" in path]:
        path = path.replace(f"{{{name}}}", quote(str(given.pop(name)), safe=""))
    query = {name: _query_text(given.pop(name)) for name in endpoint.query if name in given}
    body = None
    if endpoint.sends:
        body = _json(given) if content is None else _bytes(content)
    headers = {"Accept": f"{endpoint.accept}, {_PROBLEM}", "X-Request-ID": request_id}
    if endpoint.sends:
        headers["Content-Type"] = endpoint.sends
    return Message(endpoint.method, path, query, headers, body)


def line_of(endpoint: Endpoint[Any], ref: int, fields: Mapping[str, Any]) -> bytes:
    """Write a call as a row of a batch. Raises what `message_of` raises."""
    request = _json(_given(endpoint, fields))
    name = str(endpoint.operation).encode()
    return b'{"ref":%d,"operation":"%b","request":%b}\n' % (ref, name, request)


def _given(endpoint: Endpoint[Any], fields: Mapping[str, Any]) -> dict[str, Any]:
    """What of the fields is stated, as JSON data."""
    return {k: plain(v) for k, v in fields.items() if v is not None or k in endpoint.nulls}


def plain(value: Any) -> Any:
    """Turn models into JSON data: what was set in them, so that defaults stay the service's.

    NumPy's numbers and arrays become Python's.
    """
    if hasattr(value, "model_dump"):
        return value.model_dump(mode="json", exclude_unset=True)
    if isinstance(value, Mapping):
        return {key: plain(part) for key, part in value.items()}
    if isinstance(value, Sequence) and not isinstance(value, str | bytes):
        return [plain(part) for part in value]
    return value.tolist() if hasattr(value, "tolist") else value


def made_up_document(reply: Reply, path: str) -> dict[str, Any]:
    """Give the problem document of a refusal that came without one."""
    said = reply.body[:200].decode(errors="replace").strip()
    return {
        "type": "about:blank",
        "title": f"HTTP {reply.status}",
        "status": reply.status,
        "detail": f"HTTP {reply.status} without a problem document{f': {said}' if said else ''}",
        "instance": path,
        "errors": [],
    }


def _query_text(value: Any) -> str:
    """Write a value as a query string holds it: JSON, save that text stands bare."""
    return value if isinstance(value, str) else _json(value).decode()


def _bytes(content: str | bytes) -> bytes:
    return content.encode() if isinstance(content, str) else content


def _json(value: Any) -> bytes:
    """Write JSON. NaN travels as it is, so that the service can name the field that holds it."""
    # The command brings its own body and goes without pydantic, which takes time to load.
    from pydantic_core import to_json  # noqa: PLC0415

    return to_json(value, inf_nan_mode="constants")
