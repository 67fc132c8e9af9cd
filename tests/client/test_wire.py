"""The command's own exchange over plain HTTP, beside the one by httpx."""

from collections.abc import Callable

import pytest

from client_support import Act, FaultServer, refusal
from halfangle_client.addresses import Addresses
from halfangle_client.conversation import Conversation, Fault, Manners
from halfangle_client.endpoint import Endpoint, Message, Reply
from halfangle_client.retry import Retries
from halfangle_client.transport import Connection
from halfangle_client.wire import PlainConnection, connection

SETS = Endpoint("blocks.list_sets", "GET", "/v1/blocks/sets", bytes)


def manners(url: str) -> Manners:
    """How to call the service at an address, its answers of 10,000 bytes at most."""
    return Manners(Addresses(url), "key", 5.0, 5.0, Retries(0), 1, 10_000)


def message(url: str) -> Message:
    """A request for the sets."""
    return Conversation(manners(url), SETS, {}).message


def outcome(exchanged: Reply | Fault) -> object:
    """What both ways of exchanging must agree on."""
    if isinstance(exchanged, Reply):
        return exchanged.status, exchanged.body, exchanged.headers.get("retry-after")
    return exchanged.late, exchanged.worth_another_try


@pytest.mark.parametrize(
    "act",
    [
        Act(),
        Act(status=204, body=b""),
        refusal(422),
        refusal(503, Retry_After="7"),
        Act(status=302, headers={"Location": "/elsewhere"}),
        Act(cut=True),
        Act(wait_seconds=2.0),
        Act(drips="head", drip_seconds=0.05),
        Act(drips="body", drip_seconds=0.05),
        Act(endless=True, body=b" " * 1_000),
    ],
)
def test_both_ways_agree(faults: FaultServer, act: Act) -> None:
    """Replies, faults, and whether to try again, are the same by httpx and by itself."""
    faults.acts = [act, act]
    ways: list[Callable[[], Connection | PlainConnection]] = [
        lambda: Connection(manners(faults.url), None),
        lambda: PlainConnection(manners(faults.url)),
    ]
    found = []
    for way in ways:
        link = way()
        found.append(outcome(link.exchange(faults.url, message(faults.url), 0.5)))
        link.close()
    assert found[0] == found[1]
    ours, theirs = faults.seen[1], faults.seen[0]
    for name in ("x-api-key", "accept", "user-agent", "host"):
        assert ours[name] == theirs[name]


@pytest.mark.parametrize(
    "url",
    ["http://127.0.0.1:9", "http://127.0.0.1:x", "http://127.0.0.1:99999", "http://", "http://[::"],
)
def test_an_address_where_nobody_is(url: str) -> None:
    """Nobody listening, and an address that is none, are faults, not crashes."""
    fault = PlainConnection(manners(url)).exchange(url, message("http://127.0.0.1:9"), 1.0)
    assert isinstance(fault, Fault)
    assert fault.worth_another_try == (url == "http://127.0.0.1:9")
    assert not fault.late


@pytest.mark.parametrize(
    ("url", "proxy", "plain"),
    [
        ("http://127.0.0.1:8765", "http://proxy.example:3128", True),
        ("http://[::1]:8765", "http://proxy.example:3128", True),
        ("http://halfangle.example", "http://proxy.example:3128", False),
        ("http://halfangle.example", "", True),
        ("https://127.0.0.1:8765", "", False),
        ("http://[::", "http://proxy.example:3128", True),
    ],
)
def test_tls_and_proxies_are_left_to_httpx(
    monkeypatch: pytest.MonkeyPatch, url: str, proxy: str, plain: bool
) -> None:
    """What plain HTTP cannot do is done by httpx; a proxy is never for this machine."""
    for name in ("http_proxy", "https_proxy", "all_proxy", "no_proxy"):
        monkeypatch.delenv(name, raising=False)
        monkeypatch.delenv(name.upper(), raising=False)
    if proxy:
        monkeypatch.setenv("http_proxy", proxy)
    link = connection(manners(url))
    assert isinstance(link, PlainConnection if plain else Connection)
    link.close()
