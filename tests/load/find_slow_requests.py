"""Searches the slowest of the largest requests of every operation. Not collected.

    .venv/bin/python tests/load/find_slow_requests.py --seconds 6

Whatever can take longer than a few milliseconds must be declared heavy: a light operation is worked
out between two reads of the sockets, and every other caller waits. From the known requests of an
operation (those of `seeded_requests.py`) larger ones are made, within what the schema admits: lists
to their most entries, counts to their bounds, fields that were left out; then the slowest found are
changed further, by chance from a seed. Processor time is counted, so that what else the machine
does matters little. A request that is refused counts as one that is answered: it took its time.

Ends with status 1 where a light operation passes the limit. What it finds it prints, slowest first,
and with `--show` as requests.
"""

import argparse
import copy
import json
import random
import sys
import time
from collections.abc import Iterator
from dataclasses import dataclass

from halfangle_service.errors import Refusal
from halfangle_service.http.calculating import answer
from halfangle_service.http.problems import ProblemError
from releases.mutations import Mutator, with_value
from releases.paths import Json
from releases.schemas import FieldAt, Node
from sent.known import Known

#: Processor time that a light request may take.
LIMIT_MILLISECONDS = 5.0
#: Requests from which the search goes on.
KEPT = 6
#: Times that a request is run before its time counts: the least of them is its own.
RUNS = 3
SEED = 25


@dataclass(frozen=True)
class Found:
    """A request, how long it took at least, and how it ended."""

    milliseconds: float
    outcome: str
    body: bytes


class Search:
    """The slowest requests of one operation."""

    def __init__(self, name: str, known: Known) -> None:
        self._operation = known.operations[name]
        self._node = known.nodes[name]
        self._starting = known.requests[name]
        self._chance = random.Random(f"{SEED} {name}")  # noqa: S311  not secret
        self._mutator = Mutator(name, self._node, known.pools, self._chance)
        self.tried = 0
        self.light: Found | None = None
        self.heavy: Found | None = None

    def run(self, seconds: float) -> None:
        """Search for so long, in processor time."""
        ends = time.process_time() + seconds
        slowest: list[tuple[float, Json]] = []
        for request in self._candidates(slowest):
            found = self._timed(request)
            self.tried += 1
            if found.outcome != "invalid-request" or not slowest:
                slowest.append((found.milliseconds, request))
                slowest.sort(key=lambda entry: -entry[0])
                del slowest[KEPT:]
            if time.process_time() > ends:
                return

    def _candidates(self, slowest: list[tuple[float, Json]]) -> Iterator[Json]:
        """Known requests as they are and made large, then changes of the slowest, without end."""
        for request in self._starting:
            yield request
        for request in self._starting:
            yield self._large(request)
            yield self._large(self._with_more(request))
        while True:
            request = copy.deepcopy(self._chance.choice(slowest)[1])
            for _ in range(self._chance.choice((1, 1, 2, 3))):
                request = self._mutator.changed(request)
            if self._chance.random() < 0.4:
                request = self._large(request)
            yield request

    def _with_more(self, request: Json) -> Json:
        """Send some of the lists, objects and counts that were left out."""
        for place, node in list(self._node.absent(request)):
            if node.kind in {"list", "object", "integer"} and self._chance.random() < 0.3:
                value = self._mutator.value_for(place, node, request)
                if value is not None:
                    request = with_value(request, place, value)
        return request

    def _large(self, request: Json) -> Json:
        """Make most lists as long and most counts as large as the schema admits."""
        for sent in [s for s in self._node.sent(request) if s.schema.kind == "list" and s.value]:
            inside_a_list = any(isinstance(part, int) for part in sent.place)
            if not inside_a_list and self._chance.random() < 0.8:
                request = with_value(request, sent.place, list(self._entries(sent)))
        for sent in [s for s in self._node.sent(request) if s.schema.kind == "integer"]:
            if self._chance.random() < 0.5:
                request = with_value(request, sent.place, int(sent.schema.bounds[1]))
        return request

    def _entries(self, sent: FieldAt) -> Iterator[Json]:
        """As many entries as a list may hold: drawn out between its own, or added to them."""
        known, node, most = sent.value, sent.schema.items, sent.schema.lengths[1]
        if len(known) > 1 and self._chance.random() < 0.6:
            for count in range(most):
                place = (len(known) - 1) * count / max(1, most - 1)
                low, part = int(place), place - int(place)
                higher = known[min(low + 1, len(known) - 1)]
                yield _between(known[low], higher, node, part, count)
            return
        step = self._chance.choice((0.0, 0.0005, 0.013))
        yield from known
        for count in range(len(known), most):
            entry = known[count % len(known)]
            yield _between(entry, _scaled(entry, node, 1 + step * count), node, 1.0, count)

    def _timed(self, request: Json) -> Found:
        """Run a request, again where it is the slowest so far; remember it then."""
        body = json.dumps(request).encode()
        is_heavy = self._is_heavy(body)
        best = self.heavy if is_heavy else self.light
        found = Found(*self._once(body), body)
        if best is not None and found.milliseconds <= best.milliseconds:
            return found
        for _ in range(RUNS - 1):
            again = Found(*self._once(body), body)
            found = min(found, again, key=lambda each: each.milliseconds)
        if best is None or found.milliseconds > best.milliseconds:
            if is_heavy:
                self.heavy = found
            else:
                self.light = found
        return found

    def _is_heavy(self, body: bytes) -> bool:
        """Whether the service would work this out in a thread."""
        if isinstance(self._operation.heavy, bool):
            return self._operation.heavy
        try:
            return self._operation.heavy(self._operation.request.model_validate_json(body))
        except ValueError:
            return False

    def _once(self, body: bytes) -> tuple[float, str]:
        started = time.process_time()
        try:
            answer(self._operation, body)
            outcome = "answered"
        except ProblemError as error:
            outcome = error.name
        except Refusal as refusal:
            outcome = refusal.kind
        except Exception as error:
            outcome = f"FAULT {type(error).__name__}"
        return (time.process_time() - started) * 1e3, outcome


def _between(first: Json, second: Json, node: Node, part: float, count: int) -> Json:
    """A value so far on the way from one entry of a list to another; names are told apart."""
    if node.kind == "object" and isinstance(first, dict) and isinstance(second, dict):
        fields = node.fields(first)
        return {
            name: _between(value, second.get(name, value), fields[name][0], part, count)
            for name, value in first.items()
            if name in fields
        }
    if node.kind == "text":
        return f"{str(first)[:20]} {count}"
    both = (first, second)
    numbers = all(isinstance(each, int | float) and not isinstance(each, bool) for each in both)
    if numbers and node.kind in {"number", "integer", "angle"}:
        low, high = node.bounds
        made = min(max(first + (second - first) * part, low), high)
        return int(made) if node.kind == "integer" else round(made, 4)
    return first


def _scaled(value: Json, node: Node, factor: float) -> Json:
    """A value with every number in it multiplied."""
    if node.kind == "object" and isinstance(value, dict):
        fields = node.fields(value)
        return {n: _scaled(v, fields[n][0], factor) for n, v in value.items() if n in fields}
    is_number = isinstance(value, int | float) and not isinstance(value, bool)
    return value * factor if is_number and node.kind in {"number", "angle"} else value


def main() -> int:
    """Search; give the exit status."""
    parser = argparse.ArgumentParser(description=(__doc__ or "").partition("\n")[0])
    parser.add_argument("--seconds", type=float, default=6.0, help="processor time an operation")
    parser.add_argument("--operation", action="append", help="search these only")
    parser.add_argument("--show", action="store_true", help="print the slowest requests too")
    options = parser.parse_args()
    known = Known()
    names = options.operation or list(known.operations)
    searches: dict[str, Search] = {}
    for name in names:
        search = Search(name, known)
        search.run(options.seconds)
        searches[name] = search
        print(f"\r{len(searches)} of {len(names)} searched", end="", file=sys.stderr)
    print(file=sys.stderr)
    return report(searches, show=options.show)


def report(searches: dict[str, Search], *, show: bool) -> int:
    """Print the table; give 1 where a light operation is too slow or anything failed."""
    print(
        f"{'operation':32} {'light ms':>9} {'heavy ms':>9} {'bytes':>7} {'tried':>6}  slowest was"
    )
    bad = False
    for name, search in sorted(searches.items(), key=lambda entry: -_worst(entry[1])):
        light, heavy = search.light, search.heavy
        shown = heavy if heavy and not light else light
        assert shown is not None
        slow = light is not None and light.milliseconds > LIMIT_MILLISECONDS
        failed = any("FAULT" in found.outcome for found in (light, heavy) if found)
        bad = bad or slow or failed
        print(
            f"{name:32} {_figure(light):>9} {_figure(heavy):>9} {len(shown.body):7} "
            f"{search.tried:6}  {shown.outcome}{'  <- must be heavy' if slow else ''}"
        )
        if show:
            print(f"    {shown.body[:2000].decode()}")
    return int(bad)


def _worst(search: Search) -> float:
    return search.light.milliseconds if search.light else 0.0


def _figure(found: Found | None) -> str:
    return f"{found.milliseconds:.2f}" if found else "-"


if __name__ == "__main__":
    raise SystemExit(main())
