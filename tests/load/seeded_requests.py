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
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any

from releases.mutations import Mutator, Pools, wrong
from releases.paths import Json
from releases.schemas import Node, request_schemas

ROOT = Path(__file__).parents[2]
STARTING = Path(__file__).parent / "releases" / "starting_requests.jsonl"
#: Share of the requests that are made wrong on purpose.
WRONG = 0.15
#: Most characters of a body: larger ones say little more and take long.
LONGEST = 6_000
BODIES_THAT_ARE_NO_OBJECT: tuple[Json, ...] = ([], None, "units", 5, True)


def starting_requests(contract: Mapping[str, Any]) -> dict[str, list[Json]]:
    """Give known requests of each operation of the contract, its example first."""
    made = {name: [example] for name, (_, example) in request_schemas(contract).items()}
    for line in STARTING.read_text(encoding="utf-8").splitlines():
        known = json.loads(line)
        if known["operation"] in made:
            made[known["operation"]].append(known["request"])
    return made


def seeded_requests(
    contract: Mapping[str, Any], count: int, seed: int
) -> Iterator[tuple[str, Json]]:
    """Give so many distinct requests, as operation and body, spread over all operations alike."""
    schemas = request_schemas(contract)
    starting = starting_requests(contract)
    pools = Pools()
    for name, requests in starting.items():
        for request in requests:
            pools.learn(name, schemas[name][0], request)
    for place, (name, (node, _)) in enumerate(schemas.items()):
        share = count // len(schemas) + (place < count % len(schemas))
        chance = random.Random(f"{seed} {name}")  # noqa: S311  reproducible, not secret
        yield from _of_operation(name, node, starting[name], pools, share, chance)


def _of_operation(
    name: str,
    node: Node,
    starting: list[Json],
    pools: Pools,
    count: int,
    chance: random.Random,
) -> Iterator[tuple[str, Json]]:
    """Give so many distinct requests of one operation: the known ones first."""
    mutator = Mutator(name, node, pools, chance)
    known = _known_fields(starting)
    wrong_ones = round(count * WRONG)
    seen: set[str] = set()

    def is_new(body: Json) -> bool:
        text = json.dumps(body, sort_keys=True)
        if text in seen or len(text) > LONGEST:
            return False
        seen.add(text)
        return True

    plain = [copy.deepcopy(request) for request in starting if is_new(request)]
    plain = plain[: count - wrong_ones]
    for body in plain:
        yield name, body
    for made in range(count - wrong_ones - len(plain)):
        yield name, _until_new(lambda: _changed(mutator, starting, chance), is_new)
    for made in range(wrong_ones):
        if made == 0:
            yield name, chance.choice(BODIES_THAT_ARE_NO_OBJECT)
            continue
        yield name, _until_new(lambda: wrong(chance.choice(starting), node, known, chance), is_new)


def _changed(mutator: Mutator, starting: list[Json], chance: random.Random) -> Json:
    body = copy.deepcopy(chance.choice(starting))
    for _ in range(chance.choice((1, 1, 1, 2, 2, 3, 4))):
        body = mutator.changed(body)
    return body


def _until_new(make: Any, is_new: Any) -> Json:
    """Make bodies until one is new."""
    for _ in range(2_000):
        body = make()
        if is_new(body):
            return body
    raise SystemExit("no more distinct requests can be made: ask for fewer")


def _known_fields(starting: list[Json]) -> dict[str, Json]:
    """Give a value of each field at the top of known requests."""
    return {name: value for request in starting for name, value in request.items()}


def main() -> None:
    """Write the requests."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawTextHelpFormatter)
    parser.add_argument("--count", type=int, default=8_000)
    parser.add_argument("--seed", type=int, default=11)
    wanted = parser.parse_args()
    contract = json.loads((ROOT / "openapi" / "openapi.json").read_text(encoding="utf-8"))
    for operation, body in seeded_requests(contract, wanted.count, wanted.seed):
        print(json.dumps({"operation": operation, "body": body}, ensure_ascii=False))


if __name__ == "__main__":
    main()
