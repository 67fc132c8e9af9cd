"""Requests to every operation, made from a seed and the contract: the same at every run.

    .venv/bin/python tests/load/seeded_requests.py --count 8000 --seed 11

Each starts from an operation's example, or from a request that a test made (those are kept in
`releases/starting_requests.jsonl`), and is changed by chance within its schema: numbers near the
ones known, fields more or fewer, other options, units, orders of lists. About one in seven is made
wrong on purpose. Written as JSON lines `{"operation", "body"}`.
"""

import argparse
import copy
import json
import random
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from releases.mistakes import Mistakes
from releases.mutations import Mutator, Pools
from releases.paths import Json
from releases.schemas import Node, request_schemas

ROOT = Path(__file__).parents[2]
STARTING = Path(__file__).parent / "releases" / "starting_requests.jsonl"
#: Share of the requests that are made wrong on purpose.
WRONG = 0.15
#: Most characters of a body: larger ones say little more and take long.
LONGEST = 6_000
BODIES_THAT_ARE_NO_OBJECT: tuple[Json, ...] = ([], None, "units", 5, True)


@dataclass
class Starting:
    """Known requests of one operation: those that are answered, and those that are refused."""

    node: Node
    answered: list[Json]
    refused: list[Json] = field(default_factory=list)


def starting_requests(contract: Mapping[str, Any]) -> dict[str, Starting]:
    """Give the known requests of each operation of the contract, its example first."""
    schemas = request_schemas(contract)
    made = {name: Starting(node, [example]) for name, (node, example) in schemas.items()}
    for line in STARTING.read_text(encoding="utf-8").splitlines():
        known = json.loads(line)
        of = made.get(known["operation"])
        if of is not None and "request" in known:
            of.answered.append(known["request"])
        elif of is not None:
            of.refused.append(known["refused"])
    return made


def seeded_requests(
    contract: Mapping[str, Any], count: int, seed: int
) -> Iterator[tuple[str, Json]]:
    """Give so many distinct requests, as operation and body, spread over all operations alike."""
    starting = starting_requests(contract)
    pools = Pools()
    for name, known in starting.items():
        for request in known.answered:
            pools.learn(name, known.node, request)
    for place, (name, known) in enumerate(starting.items()):
        share = count // len(starting) + (place < count % len(starting))
        chance = random.Random(f"{seed} {name}")  # noqa: S311  reproducible, not secret
        mutator = Mutator(name, known.node, pools, chance)
        yield from ((name, body) for body in _of_operation(known, mutator, share, chance))


def _of_operation(
    known: Starting, mutator: Mutator, count: int, chance: random.Random
) -> Iterator[Json]:
    """Give so many distinct requests of one operation: the known ones first."""
    seen: set[str] = set()

    def is_new(body: Json) -> bool:
        text = json.dumps(body, sort_keys=True)
        if text in seen or len(text) > LONGEST:
            return False
        seen.add(text)
        return True

    def until_new(make: Callable[[], Json]) -> Json:
        for _ in range(2_000):
            if is_new(body := make()):
                return body
        raise SystemExit("no more distinct requests can be made: ask for fewer")

    as_known = [body for body in (*known.answered, *known.refused) if is_new(body)][:count]
    made_wrong = min(round(count * WRONG), count - len(as_known))
    fields = {name: value for request in known.answered for name, value in request.items()}
    mistakes = Mistakes(known.node, fields, chance)
    yield from as_known
    for _ in range(count - len(as_known) - made_wrong):
        yield until_new(lambda: _changed(mutator, known.answered, chance))
    if made_wrong:
        yield chance.choice(BODIES_THAT_ARE_NO_OBJECT)
    for _ in range(made_wrong - 1):
        yield until_new(lambda: mistakes.wrong(chance.choice(known.answered)))


def _changed(mutator: Mutator, starting: list[Json], chance: random.Random) -> Json:
    body = copy.deepcopy(chance.choice(starting))
    for _ in range(chance.choice((1, 1, 1, 2, 2, 3, 4))):
        body = mutator.changed(body)
    return body


def main() -> None:
    """Write the requests."""
    parser = argparse.ArgumentParser(
        description=__doc__, formatter_class=argparse.RawTextHelpFormatter
    )
    parser.add_argument("--count", type=int, default=8_000)
    parser.add_argument("--seed", type=int, default=11)
    wanted = parser.parse_args()
    contract = json.loads((ROOT / "openapi" / "openapi.json").read_text(encoding="utf-8"))
    for operation, body in seeded_requests(contract, wanted.count, wanted.seed):
        print(json.dumps({"operation": operation, "body": body}, ensure_ascii=False))


if __name__ == "__main__":
    main()
