"""Callers that know the right answers, and count what they get."""

import asyncio
import itertools
import json
import math
import time
from collections.abc import Callable, Iterator
from contextlib import suppress
from dataclasses import dataclass, field
from typing import Any

from faulty.finding import Counts

#: A refusal that a service may give that has too much to do, or a caller that is too slow.
REFUSALS = frozenset({408, 413, 429, 503})
LOST_SECONDS = 60.0
Answer = dict[str, Any]


@dataclass(frozen=True)
class Question:
    """A request as sent, and whether an answer to it is right."""

    sent: bytes
    is_right: Callable[[Answer], bool]


def question(
    path: str, body: Answer, is_right: Callable[[Answer], bool], head: str = ""
) -> Question:
    """A question by POST."""
    content = json.dumps(body).encode()
    start = (
        f"POST {path} HTTP/1.1\r\nHost: shop\r\nContent-Type: application/json\r\n{head}"
        f"Content-Length: {len(content)}\r\n\r\n"
    )
    return Question(start.encode() + content, is_right)


def setting(number: int, head: str = "") -> Question:
    """A sine bar of five inches at an angle of its own: the height is its sine times five."""
    angle = 5.0 + number % 397 / 10.0
    height = 5.0 * math.sin(math.radians(angle))
    return question(
        "/v1/sine/setting",
        {"units": "in", "center_distance": 5, "angle": angle},
        lambda answer: math.isclose(answer["result"]["height"], height, rel_tol=1e-12),
        head,
    )


def stack(number: int, head: str = "") -> Question:
    """Blocks for a height of its own: they come to just that."""
    height = round(1.0 + number % 4_999 / 10_000, 4)
    return question(
        "/v1/blocks/stack",
        {"units": "in", "set": "inch-81", "height": height},
        lambda answer: (
            math.isclose(answer["result"]["total"], height, rel_tol=1e-12)
            and math.isclose(sum(answer["result"]["blocks"]), height, rel_tol=1e-12)
        ),
        head,
    )


def questions(head: str = "") -> Iterator[Question]:
    """Without end: each tenth a search for blocks, which is heavy work."""
    for number in itertools.count():
        yield stack(number, head) if number % 10 == 9 else setting(number, head)


async def answer_on(
    reader: asyncio.StreamReader, writer: asyncio.StreamWriter, sent: bytes
) -> tuple[int, bytes, bool]:
    """Ask on a connection; status, body, and whether the connection goes on."""
    writer.write(sent)
    head = (await reader.readuntil(b"\r\n\r\n")).lower()
    length = int(head.partition(b"content-length:")[2].split(b"\r\n")[0])
    body = await reader.readexactly(length)
    return int(head[9:12]), body, b"connection: close" not in head


@dataclass
class Callers:
    """A number of callers at once, each on a connection that it renews now and then.

    `whose`: tells whose a connection is, by its own port; counted are the answers of each.
    """

    port: int
    at_once: int = 8
    pause_seconds: float = 0.004
    per_connection: int = 40
    whose: Callable[[int], str] | None = None
    #: Further lines of the head of each request.
    head: str = ""
    counts: Counts = field(default_factory=Counts)
    by_whom: dict[str, int] = field(default_factory=dict)
    times: list[float] = field(default_factory=list)
    #: Connections that nobody took: nothing was accepted.
    unreached: int = 0
    over: bool = False

    async def ask(self) -> None:
        """Ask until it is over."""
        wanted = questions(self.head)
        await asyncio.gather(*(self._ask_on_and_on(wanted) for _ in range(self.at_once)))

    async def ask_for(self, seconds: float) -> None:
        """Ask for some time."""
        asking = asyncio.ensure_future(self.ask())
        await asyncio.sleep(seconds)
        self.over = True
        await asking
        self.over = False

    async def _ask_on_and_on(self, wanted: Iterator[Question]) -> None:
        while not self.over:
            try:
                reader, writer = await asyncio.open_connection("127.0.0.1", self.port)
            except OSError:
                self.unreached += 1
                await asyncio.sleep(0.05)
                continue
            who = ""
            if self.whose is not None:
                who = self.whose(writer.get_extra_info("sockname")[1])
            goes_on = True
            for _ in range(self.per_connection):
                if self.over or not goes_on:
                    break
                goes_on = await self._ask_once(reader, writer, next(wanted), who)
                await asyncio.sleep(self.pause_seconds)
            writer.close()
            with suppress(OSError):
                await writer.wait_closed()

    async def _ask_once(
        self,
        reader: asyncio.StreamReader,
        writer: asyncio.StreamWriter,
        asked: Question,
        who: str,
    ) -> bool:
        started = time.perf_counter()
        try:
            asking = answer_on(reader, writer, asked.sent)
            status, body, goes_on = await asyncio.wait_for(asking, LOST_SECONDS)
        except TimeoutError:
            self.counts.lost += 1
            return False
        except (OSError, EOFError):
            self.counts.broken += 1
            return False
        self.times.append(time.perf_counter() - started)
        self.note(status, body, asked)
        if status == 200:
            self.by_whom[who] = self.by_whom.get(who, 0) + 1
        return goes_on

    def note(self, status: int, body: bytes, asked: Question) -> None:
        """Count an answer."""
        if status in REFUSALS:
            self.counts.refused += 1
        elif status == 200 and _is_right(body, asked):
            self.counts.answered += 1
        else:
            self.counts.note_wrong(f"{status} {body[:200]!r} to {asked.sent[:300]!r}")

    def slow(self, share: float = 0.99) -> float:
        """Milliseconds that so many of the answers took at most."""
        return sorted(self.times)[int(len(self.times) * share)] * 1e3 if self.times else 0.0


def _is_right(body: bytes, asked: Question) -> bool:
    try:
        return asked.is_right(json.loads(body))
    except (ValueError, KeyError, TypeError):
        return False
