"""The call itself: which service, how long, and what came back."""

import json
import os
import time
from collections.abc import Collection, Mapping
from dataclasses import dataclass
from typing import Any

import click

from halfangle_client.addresses import Addresses
from halfangle_client.cli.contract import Operation, SheetPlace
from halfangle_client.cli.status import DEFAULT_URL, Refused
from halfangle_client.conversation import Conversation, Manners
from halfangle_client.endpoint import Endpoint, Reply, made_up_document
from halfangle_client.errors import UnexpectedAnswer
from halfangle_client.retry import Retries
from halfangle_client.sheet import Sheet, advisories_in
from halfangle_client.wire import connection

_SECONDS, _HEAVY_SECONDS = 10.0, 60.0
_LARGEST_ANSWER = 64 * 1024 * 1024
_GLOSSARY = Endpoint("glossary", "GET", "/glossary.json", bytes)


@dataclass(frozen=True, slots=True)
class Service:
    """Which service is asked, and how long a call may take; None: what is usual."""

    url: str | None = None
    seconds: float | None = None

    def manners(self) -> Manners:
        """How to call it, with what the environment says. Raises UsageError."""
        url = self.url or os.environ.get("HALFANGLE_URL") or DEFAULT_URL
        if not url.startswith(("http://", "https://")):
            raise click.UsageError(
                f"{url!r} is no address of a service: it begins with http:// or https://"
            )
        key = os.environ.get("HALFANGLE_API_KEY") or None
        usual, heavy = self.seconds or _SECONDS, self.seconds or _HEAVY_SECONDS
        try:
            return Manners(Addresses(url), key, usual, heavy, Retries(), 1, _LARGEST_ANSWER)
        except ValueError as error:
            raise click.UsageError(f"HALFANGLE_API_KEY: {error}") from error


def answer_to(service: Service, operation: Operation, request: Mapping[str, Any]) -> Any:
    """Give the answer as JSON data, what has another form as it came.

    Raises Refused or a HalfangleError.
    """
    in_path = {f.name for f in operation.fields if f.place != "body"}
    fields = {name: value for name, value in request.items() if name in in_path}
    body = {name: value for name, value in request.items() if name not in in_path}
    content = json.dumps(body, ensure_ascii=False) if operation.sends else None
    reply = _replied(service, operation.endpoint, fields, content)
    if "json" not in operation.accept:
        return _sheet(reply)
    wanted = {"result", "advisories"} if operation.has_result else {"advisories"}
    return _data(operation.name, reply.body, wanted)


def glossary_of(service: Service) -> dict[str, dict[str, str]]:
    """Give every field's meaning by its name; raises Refused or a HalfangleError."""
    found: dict[str, dict[str, str]] = _data(_GLOSSARY.name, _replied(service, _GLOSSARY, {}).body)
    return found


def sheet_of(service: Service, place: SheetPlace, chosen: Mapping[str, str], content: str) -> Sheet:
    """Give the sheet of a request; raises Refused or a HalfangleError."""
    return _sheet(_replied(service, place.endpoint, chosen, content))


def _sheet(reply: Reply) -> Sheet:
    """What came in a form of its own, with what its header says that it advises."""
    told = advisories_in(reply.headers.get("advisories", ""))
    return Sheet(reply.body, reply.headers.get("content-type", ""), told)


def _replied(
    service: Service,
    endpoint: Endpoint[bytes],
    fields: Mapping[str, Any],
    content: str | None = None,
) -> Reply:
    """Send a request, again where that may help; give what comes back."""
    manners = service.manners()
    call = Conversation(manners, endpoint, fields, content)
    link = connection(manners)
    while True:
        outcome = link.exchange(call.address, call.message, call.seconds_left)
        pause = call.pause_after(outcome)
        if pause is None:
            break
        time.sleep(pause)
    link.close()
    if not isinstance(outcome, Reply):
        raise call.failure(outcome) from outcome.error
    if outcome.status >= 300:
        raise Refused(outcome.status, _document(outcome, endpoint.path))
    return outcome


def _data(name: str, body: bytes, wanted: Collection[str] = ()) -> Any:
    """Read a JSON object that holds what is wanted; raises UnexpectedAnswer."""
    try:
        answer = json.loads(body)
        if isinstance(answer, dict) and answer.keys() >= set(wanted):
            return answer
        reason = "it holds no result"
    except ValueError as error:
        reason = str(error)
    raise UnexpectedAnswer(
        f"{name}: what came back is no answer ({reason}). Is this the service, and of this release?"
    )


def _document(reply: Reply, path: str) -> dict[str, Any]:
    """The problem document of a refusal; one made up where it came without."""
    try:
        document = json.loads(reply.body)
    except ValueError:
        document = None
    if isinstance(document, dict) and {"title", "detail", "errors"} <= document.keys():
        return document
    return made_up_document(reply, path)
