"""Whether an answer judges and stops against itself."""

from collections.abc import Iterator, Mapping
from typing import Any

from halfangle_service.trade.uncertainty.decision import YES
from releases.paths import Json


def stops(answer: Mapping[str, Any]) -> list[str]:
    """Codes of the stops in an answer."""
    return [a["code"] for a in answer["advisories"] if a["severity"] == "stop"]


def judgements(value: Json, name: str = "") -> Iterator[str]:
    """Every forecast and verdict in a result, at any depth."""
    if isinstance(value, dict):
        for field, inner in value.items():
            yield from judgements(inner, field)
    elif isinstance(value, list):
        for inner in value:
            yield from judgements(inner, name)
    elif isinstance(value, str) and name.endswith(("forecast", "verdict")):
        yield value


def contradicts(answer: Mapping[str, Any]) -> bool:
    """True where an answer has a stop, and what it judges as a whole says yes.

    That is its result's own forecast or verdict; of a result without one, all those inside it.
    """
    result = answer["result"]
    own = [result[name] for name in ("forecast", "verdict") if result.get(name) is not None]
    judged = own or list(judgements(result))
    says_yes = any(word in YES for word in own) if own else bool(judged) and set(judged) <= YES
    return bool(stops(answer)) and says_yes
