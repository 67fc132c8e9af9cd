"""Sends distinct requests made from the contract's schemas and checks each answer. Not collected.

    .venv/bin/python tests/load/generated_requests.py --count 100000 --seed 1

Each starts from a request of its operation that is answered (the known ones, and those found on
the way) and is changed by chance: numbers near the one sent, at their bounds and anywhere between,
every option, nulls, fields more and fewer, angles as text in every spelling, lists of few entries;
some are made from the schema alone. All that fit the request's schema count, each body once. They
go to the application as HTTP would bring them, in process, spread over all operations alike and
over `--processes`.

What must not come: a 5xx, an answer that does not fit its schema, a refusal of no registered type
or that names no field, `invalid-request` where the request fits its schema, an answer where it does
not, NaN or an infinity, an exponent in a message, a judgement that says yes beside a stop. Each
found is printed with its request as it comes (standard error); then the status is 1.
"""

import argparse
import asyncio
import copy
import json
import random
import sys
from collections import Counter
from collections.abc import Iterator
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass, field
from hashlib import blake2b
from multiprocessing import get_context
from typing import Any

from generated.checking import Answered, Checks
from generated.values import Values
from halfangle_service.app import contract_bytes, create_app
from halfangle_service.settings import Settings
from releases.mutations import Mutator
from releases.paths import Json
from releases.runner import exchange, running
from releases.schemas import Node, path_of
from sent.known import Known

#: Share of requests that are made from the schema alone, and of changes that know other requests.
FROM_SCHEMA, BY_MUTATION = 0.05, 0.5
#: Share of an operation's requests that should be answered, else changes are fewer and smaller.
ANSWERED, BY_MUTATION_ELSE = 0.4, 0.85
#: Answered requests that further ones are made of.
MOST_STARTING = 400
#: Most characters of a body, and tries for a body that is new.
LONGEST, TRIES = 6_000, 5_000
#: Failures kept of an operation.
KEPT = 5


@dataclass
class Tally:
    """What came of the requests of one operation; `wrong` are those that do not fit its schema."""

    sent: int = 0
    answered: int = 0
    wrong: int = 0
    refused: Counter[str] = field(default_factory=Counter)
    failures: list[tuple[str, str]] = field(default_factory=list)
    failed: int = 0

    def add(self, other: "Tally") -> None:
        """Count another process's requests too."""
        self.sent += other.sent
        self.answered += other.answered
        self.wrong += other.wrong
        self.failed += other.failed
        self.refused += other.refused
        self.failures += other.failures


class Requests:
    """Distinct requests of one operation, and what came of them."""

    def __init__(self, name: str, known: Known, checks: Checks, chance: random.Random) -> None:
        self.tally = Tally()
        self._name, self._checks, self._chance = name, checks, chance
        self._node: Node = known.nodes[name]
        self._known = known.requests[name]
        self._starting: list[Json] = []
        self._mutator = Mutator(name, self._node, known.pools, chance)
        self._values = Values(chance)

    def bodies(self, count: int, process: int, processes: int) -> Iterator[Json]:
        """Give bodies until so many that fit the schema are among them: the known ones first.

        A process takes those whose digest falls to it, so that no two processes send one body.
        """
        seen: set[bytes] = set()
        known, tries = iter(self._known), 0
        while self.tally.sent < count:
            body = next(known, None) or self._made()
            text = json.dumps(body, sort_keys=True)
            digest = blake2b(text.encode(), digest_size=12).digest()
            tries += 1
            if digest in seen or digest[0] % processes != process or len(text) > LONGEST:
                if tries > TRIES:
                    return
                continue
            tries = 0
            seen.add(digest)
            yield body

    def _made(self) -> Json:
        if not self._starting or self._chance.random() < FROM_SCHEMA:
            return self._values.value(self._node)
        body = copy.deepcopy(self._chance.choice(self._starting))
        often = self.tally.answered >= ANSWERED * self.tally.sent
        for _ in range(self._chance.choice((1, 1, 1, 2, 2, 3)) if often else 1):
            if self._chance.random() < (BY_MUTATION if often else BY_MUTATION_ELSE):
                body = self._mutator.changed(body)
            else:
                body = self._values.changed(body, self._node)
        return body

    def learn(self, body: Json, answered: Answered) -> None:
        """Count an answer, check it, and keep a request that is answered to start from."""
        fits = self._checks.fits(self._name, body)
        problem = self._checks.wrong(self._name, self._node, body, answered, fits=fits)
        if problem:
            self.tally.failed += 1
            if len(self.tally.failures) < KEPT:
                self.tally.failures.append((problem, json.dumps(body, ensure_ascii=False)))
        if not fits:
            self.tally.wrong += 1
            return
        self.tally.sent += 1
        if answered.status == 200:
            self.tally.answered += 1
            if len(self._starting) < MOST_STARTING:
                self._starting.append(body)
            else:
                self._starting[self._chance.randrange(MOST_STARTING)] = body
        elif answered.status == 422:
            self.tally.refused[answered.document["type"].removeprefix("/problems/")] += 1


def tallies(
    count: int, seed: int, process: int = 0, processes: int = 1, only: str = ""
) -> dict[str, Tally]:
    """Send this process's share of so many requests; gives what came of each operation's."""
    known, checks = Known(), Checks(json.loads(contract_bytes()))
    names = [name for name in known.requests if name.startswith(only)]
    share = -(-count // (len(names) * processes))

    async def send_all() -> dict[str, Tally]:
        app: Any = create_app(Settings(log_level="error"))
        made = {}
        async with running(app):
            for name in names:
                chance = random.Random(f"{seed} {process} {name}")  # noqa: S311  reproducible
                requests = Requests(name, known, checks, chance)
                for body in requests.bodies(share, process, processes):
                    sent = json.dumps(body, ensure_ascii=False).encode()
                    status, content = await exchange(app, path_of(name), sent)
                    requests.learn(body, Answered(status, content))
                made[name] = requests.tally
                for problem, body in requests.tally.failures:
                    print(f"{name}: {problem}\n    {body}", file=sys.stderr, flush=True)
        return made

    return asyncio.run(send_all())


def report(made: dict[str, Tally]) -> bool:
    """Print what came of the requests; True where nothing came that must not."""
    print(f"{'operation':<32}{'sent':>7}{'answered':>10}{'':>7}  refused; not fitting")
    for name, one in made.items():
        refused = ", ".join(f"{kind} {times}" for kind, times in one.refused.most_common())
        share = f"{100 * one.answered / max(one.sent, 1):.0f} %"
        print(f"{name:<32}{one.sent:>7,}{one.answered:>10,}{share:>7}  {refused}; {one.wrong}")
    failed = sum(one.failed for one in made.values())
    sent, answered = (sum(getattr(o, n) for o in made.values()) for n in ("sent", "answered"))
    wrong = sum(one.wrong for one in made.values())
    print(
        f"\n{sent:,} distinct requests that fit, {answered:,} answered; {wrong:,} that do not fit"
    )
    few = [name for name, one in made.items() if one.sent < max(o.sent for o in made.values())]
    print(f"failures: {failed:,}; no more distinct requests found: {', '.join(few) or 'nowhere'}")
    return not failed


def main() -> None:
    """Send the requests from several processes and report."""
    parser = argparse.ArgumentParser(
        description=__doc__, formatter_class=argparse.RawTextHelpFormatter
    )
    parser.add_argument("--count", type=int, default=100_000)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--processes", type=int, default=2)
    parser.add_argument("--only", default="", help="operations whose names begin so")
    wanted = parser.parse_args()
    made: dict[str, Tally] = {}
    with ProcessPoolExecutor(wanted.processes, mp_context=get_context("spawn")) as pool:
        shares = [
            pool.submit(tallies, wanted.count, wanted.seed, process, wanted.processes, wanted.only)
            for process in range(wanted.processes)
        ]
        for share in shares:
            for name, one in share.result().items():
                made.setdefault(name, Tally()).add(one)
    sys.exit(0 if report(made) else 1)


if __name__ == "__main__":
    main()
