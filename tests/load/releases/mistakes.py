"""Makes requests that are malformed, or likely to be refused."""

import random
from collections.abc import Callable, Mapping
from dataclasses import dataclass

from releases.mutations import with_value, without
from releases.paths import Json
from releases.schemas import FieldAt, Node

#: Values of types that a field may not have.
STRAY: tuple[Json, ...] = (None, "x", True, [], {}, "12")


@dataclass(frozen=True)
class Mistakes:
    """Ways to get a request wrong; `known` has a value of each field at the top of requests."""

    node: Node
    known: Mapping[str, Json]
    chance: random.Random

    def wrong(self, request: dict[str, Json]) -> Json:
        """Give the request with one mistake."""
        ways: tuple[Callable[[dict[str, Json]], Json], ...] = (
            self._missing,
            self._unknown,
            self._stray,
            self._beyond,
            self._beyond,
            self._list_too_long,
            self._too_much,
            self._too_much,
        )
        return self.chance.choice(ways)(request)

    def _sent(self, request: Json) -> list[FieldAt]:
        return list(self.node.sent(request))

    def _missing(self, request: dict[str, Json]) -> Json:
        sent = self._sent(request)
        return without(request, self.chance.choice([s for s in sent if s.required] or sent).place)

    def _unknown(self, request: dict[str, Json]) -> Json:
        name = self.chance.choice(sorted(request))
        return {**request, self.chance.choice((name + "s", name[:-1] or "x", "colour")): 1}

    def _stray(self, request: dict[str, Json]) -> Json:
        """Send a value of another type."""
        place = self.chance.choice(self._sent(request)).place
        return with_value(request, place, self.chance.choice(STRAY))

    def _beyond(self, request: dict[str, Json]) -> Json:
        """Send a number at or past its bound."""
        kinds = {"number", "integer", "angle"}
        numeric = [s for s in self._sent(request) if s.schema.kind in kinds]
        if not numeric:
            return self._stray(request)
        one = self.chance.choice(numeric)
        low, high = one.schema.bounds
        beyond = (low - 1, high + 1, low, high, 1e300, low - 1e-9, *one.schema.exclusive)
        return with_value(request, one.place, self.chance.choice(beyond))

    def _list_too_long(self, request: dict[str, Json]) -> Json:
        """Send an empty list, or one entry more than are taken."""
        lists = [s for s in self._sent(request) if isinstance(s.value, list)]
        if not lists:
            return self._stray(request)
        one = self.chance.choice(lists)
        most = one.schema.lengths[1] + 1
        entries = (one.value * most)[:most]
        return with_value(request, one.place, self.chance.choice(([], entries)))

    def _too_much(self, request: dict[str, Json]) -> Json:
        """Send fields that exclude one another: some more of those known."""
        more = [name for name in self.known if name not in request]
        chosen = self.chance.sample(more, min(len(more), self.chance.randint(1, 4)))
        return {**request, **{name: self.known[name] for name in chosen}}
