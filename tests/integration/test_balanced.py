"""More than one service: behind a load balancer, and under the client's own spreading of rows."""

import asyncio
import http.client
import threading
import time
from collections.abc import Iterator
from contextlib import closing
from typing import Any

import pytest

from balancer_support import Balanced, Replica, balanced, replicas
from faulty.asking import Callers
from halfangle_client import Halfangle, HalfangleError

pytestmark = pytest.mark.program
ROWS: list[dict[str, Any]] = [
    {"units": "in", "set": "inch-81", "height": round(1 + n / 10_000, 4)} for n in range(2_000)
]
LINES = b"".join(
    b'{"ref":%d,"operation":"blocks.stack","request":{"units":"in","set":"inch-81",'
    b'"height":%.4f}}\n' % (n, row["height"])
    for n, row in enumerate(ROWS[:400])
)


@pytest.fixture(scope="module")
def behind(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Balanced]:
    """Two services behind a load balancer."""
    with balanced(tmp_path_factory.mktemp("balancer")) as found:
        yield found


def batch(port: int, *, chunked: bool) -> bytes:
    """The answer to a batch, whole."""
    body = iter([LINES[:20_000], LINES[20_000:]]) if chunked else LINES
    headers = {"Content-Type": "application/x-ndjson"}
    with closing(http.client.HTTPConnection("127.0.0.1", port, timeout=60)) as connection:
        connection.request("POST", "/v1/batches", body, headers, encode_chunked=chunked)
        response = connection.getresponse()
        assert response.status == 200
        return response.read()


@pytest.mark.parametrize("chunked", [False, True])
def test_a_batch_through_the_balancer_is_the_same(behind: Balanced, chunked: bool) -> None:
    """Through the load balancer, and from either service, a batch has the same bytes."""
    found = {batch(replica.port, chunked=chunked) for replica in behind.replicas}
    found |= {batch(behind.port, chunked=chunked) for _ in range(4)}
    assert len(found) == 1
    assert found.pop().count(b'"status":"ok"') == 400


def heights(outcomes: Any) -> list[float]:
    """The heights that were built, none of them lost."""
    lost = [outcome for outcome in outcomes if isinstance(outcome, HalfangleError)]
    assert lost == []
    return [outcome.result.total for outcome in outcomes]


def mapped(urls: Any, dying: Replica) -> Any:
    """What `map` gives while one of the services is killed in the middle."""
    with Halfangle(urls) as client:
        killer: list[threading.Thread] = []

        def progress(done: int, total: int) -> None:
            if done >= total // 4 and not killer:
                killer.append(threading.Thread(target=dying.kill))
                killer[0].start()

        outcomes = client.map(client.blocks.stack, ROWS, progress=progress)
    killer[0].join()
    return outcomes


WANTED = pytest.approx([row["height"] for row in ROWS], rel=1e-12)


def test_a_service_killed_in_the_middle_costs_no_row(behind: Balanced) -> None:
    """Of two addresses one dies: each row is answered all the same, and rightly, at its place."""
    with replicas(1) as (dying,):
        outcomes = mapped([dying.url, behind.url], dying)
    assert heights(outcomes) == WANTED
    with Halfangle(behind.url) as client:
        assert list(outcomes)[::40] == list(client.map(client.blocks.stack, ROWS[::40]))


def test_a_service_killed_behind_the_balancer_costs_no_row(behind: Balanced) -> None:
    """The same through the load balancer, by one address."""
    assert heights(mapped(behind.url, behind.replicas[0])) == WANTED


def test_services_restarted_in_turn_cost_no_request(behind: Balanced) -> None:
    """Each is stopped and started again under load: every caller is answered, and rightly."""
    if behind.replicas[0].process.poll() is not None:
        behind.replicas[0].start()
    callers = Callers(behind.port, at_once=4)

    def roll() -> list[int]:
        statuses = []
        for replica in behind.replicas:
            # The balancer looks once a second whether the other is back.
            time.sleep(2.0)
            statuses.append(replica.stop())
            replica.start()
        return statuses

    async def under_load() -> list[int]:
        asking = asyncio.ensure_future(callers.ask())
        statuses = await asyncio.to_thread(roll)
        callers.over = True
        await asking
        return statuses

    assert asyncio.run(under_load()) == [0, 0]
    counts = callers.counts
    assert (counts.wrong, counts.lost, counts.broken, counts.refused) == (0, 0, 0, 0), counts
    assert counts.answered > 50
    assert callers.unreached == 0
