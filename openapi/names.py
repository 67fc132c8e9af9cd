"""Prints the names that the contract gives to the world, as code that mentions each.

    python openapi/names.py > names.py && vulture service client names.py

Fields of answers and calls of the client are used by whoever holds the contract, not by this
project: a check for dead code needs to be told so, or it would find hundreds of them.
"""

import json
from collections.abc import Iterator
from typing import Any

from generate import CONTRACT, ROOT
from inlining import inlined
from signatures import read_topics
from thinning import reachable, responses


def names(contract: dict[str, Any]) -> Iterator[str]:
    """Every field that can come back, and the client's method for each operation.

    Not the fields of a request: one that the service never reads is dead indeed.
    """
    schemas = contract["components"]["schemas"]
    for name in reachable(schemas, responses(contract)):
        yield from schemas[name].get("properties", {})
    for calls in read_topics(contract).values():
        yield from (call.method for call in calls)


if __name__ == "__main__":
    document = inlined(json.loads((ROOT / CONTRACT).read_text("utf-8")))
    for name in sorted(set(names(document))):
        print(f"_.{name}")
