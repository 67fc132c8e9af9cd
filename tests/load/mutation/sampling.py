"""Draws mutants of the whole service by a seed."""

import hashlib
import math
from collections import Counter, defaultdict
from collections.abc import Iterator
from fnmatch import fnmatchcase

from mutation.digits import mutants_of_table
from mutation.mutants import Kind, Mutant
from mutation.sites import mutants_of_module
from mutation.trees import ROOT, SERVICE

#: Share of each kind in a sample: by what a mistake of that kind does to a workpiece or to a
#: person, not by how often the kind occurs (constants and sums are everywhere, severities few).
WEIGHTS: dict[Kind, float] = {
    "operator": 0.15,
    "comparison": 0.15,
    "condition": 0.10,
    "constant": 0.12,
    "dropped": 0.16,
    "function": 0.06,
    "severity": 0.08,
    "bound": 0.05,
    "default": 0.03,
    "digit": 0.10,
}
#: Where the trade is; how it is carried over HTTP is not looked at.
PLACES = ("trade/*.py", "topics/*.py", "fields/*.py", "cautions.py", "trade/tables/*.toml")
#: Drawings are looked at, not reckoned with; the glossary speaks to readers of the contract.
COSMETIC = ("*drawing/*.py", "*/*drawing.py", "*/glossary.py")


def all_mutants(seed: int) -> Iterator[Mutant]:
    """Every mutant that can be made; the seed chooses the digit in a number of a table."""
    for path in sorted((ROOT / SERVICE).rglob("*.*")):
        file = path.relative_to(ROOT).as_posix()
        inside = file.removeprefix(f"{SERVICE}/")
        if not any(fnmatchcase(inside, place) for place in PLACES):
            continue
        if any(fnmatchcase(inside, place) for place in COSMETIC):
            continue
        if path.suffix == ".py":
            yield from mutants_of_module(file, path.read_text("utf-8"))
        else:
            yield from mutants_of_table(file, path.read_bytes(), seed)


def sample(mutants: list[Mutant], seed: int, count: int) -> list[Mutant]:
    """Draw so many, by kind as weighted, each of a kind alike.

    A mutant is drawn by what it is and not by where it stands in a list, so that an edit elsewhere
    leaves the sample as it was. Kinds follow each other by chance, so that a part of a run tells.
    """
    drawn: defaultdict[Kind, list[tuple[bytes, Mutant]]] = defaultdict(list)
    seen: Counter[str] = Counter()
    for mutant in mutants:
        what = f"{mutant.file} {mutant.function} {mutant.kind} "
        what += f"{mutant.shown_before} {mutant.shown_after}"
        seen[what] += 1
        digest = hashlib.sha256(f"{seed} {what} {seen[what]}".encode()).digest()
        drawn[mutant.kind].append((digest, mutant))
    chosen: list[tuple[bytes, Mutant]] = []
    for kind, weight in WEIGHTS.items():
        chosen += sorted(drawn[kind], key=_digest_of)[: math.ceil(weight * count)]
    return [mutant for _, mutant in sorted(chosen, key=_digest_of)[:count]]


def _digest_of(entry: tuple[bytes, Mutant]) -> bytes:
    return entry[0]
