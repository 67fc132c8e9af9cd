"""Built-in sets of gauge blocks, by count and series, from the table beside this module."""

from bisect import bisect_left
from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from functools import cache
from typing import Any

from halfangle_service.errors import Unreachable
from halfangle_service.trade.tables.loader import Standing, citation, read_rows, standing
from halfangle_service.trade.units import Units, to_tenth_nm

#: A length of half of 0.00001 in, in 0.1 nm.
_ROUNDED = 1_270


@dataclass(frozen=True, slots=True)
class BlockSet:
    """A set: `sizes` in 0.1 nm, ascending, one entry a block; `units` are those of its nominals.

    `wear` are the sizes, among `sizes`, of the set's own wear blocks.
    """

    name: str
    units: Units
    sizes: tuple[int, ...]
    wear: tuple[int, ...]
    series: tuple[str, ...]
    source: str
    standing: Standing
    note: str


@cache
def nominal_sizes(units: Units) -> tuple[int, ...]:
    """Every size, ascending, that some built-in set of these units has."""
    return tuple(
        sorted({size for s in built_in_sets().values() if s.units == units for size in s.sizes})
    )


def foreign_places(sizes: Sequence[int], units: Units) -> list[int]:
    """Places of sizes (0.1 nm) whose figures are a nominal of the other unit system only.

    1.49 among inch sizes is one, as is 0.1001 among metric ones. Round metric figures below
    1 mm are not: thin metric blocks have them.
    """
    own = set(nominal_sizes(units))
    other = _figures("mm" if units == "in" else "in")
    unit = thin = to_tenth_nm(1.0, units)
    places = []
    for place, size in enumerate(sizes):
        round_and_thin = units == "mm" and size < thin and size % (unit // 100) == 0
        if size not in own and Fraction(size, unit) in other and not round_and_thin:
            places.append(place)
    return places


def figures_of_other_unit(sizes: Sequence[int], units: Units) -> bool:
    """True where every size (0.1 nm) is a nominal of its system written in the other unit.

    12.7 and 25.4 as inches are half an inch and an inch in millimetres; 0.03937 mm is 1 mm in
    inches. One size alone may be an odd block.
    """
    own = nominal_sizes(units)
    to_other = Fraction(to_tenth_nm(1.0, "mm" if units == "in" else "in"), to_tenth_nm(1.0, units))
    return len(sizes) > 1 and all(
        size not in own and _near(round(size * to_other), own) for size in sizes
    )


def _near(size: int, ascending: Sequence[int]) -> bool:
    """True where one of the sizes is this one, to a figure rounded at the fifth decimal."""
    place = bisect_left(ascending, size - _ROUNDED)
    return place < len(ascending) and ascending[place] <= size + _ROUNDED


@cache
def _figures(units: Units) -> frozenset[Fraction]:
    """The nominal sizes of one system as bare figures."""
    return frozenset(Fraction(size, to_tenth_nm(1.0, units)) for size in nominal_sizes(units))


@cache
def built_in_sets() -> dict[str, BlockSet]:
    """Give every built-in set by its name.

    Raises ValueError where a row of the table lacks its source or its count of blocks is wrong.
    """
    return {row["name"]: _read(row) for row in read_rows(__name__, "sets.toml", "set")}


def find_set(name: str, *, field: str = "set") -> BlockSet:
    """Give a built-in set; raises Unreachable, with the names there are, where there is none.

    `field` is the request's field that named it.
    """
    sets = built_in_sets()
    if name not in sets:
        raise Unreachable(
            f"There is no built-in set {name!r}.",
            fields={field: f"should be one of {', '.join(sets)}"},
            more={"known_sets": list(sets)},
        )
    return sets[name]


def _read(row: dict[str, Any]) -> BlockSet:
    """Read one set, and refuse it where its count does not come out."""
    sizes = [size for entry in row["series"] for size in _series(entry, row["units"])]
    wear = [entry for entry in row["series"] if entry.get("wear")]
    if len(sizes) != row["pieces"]:
        raise ValueError(f"{row['name']}: {len(sizes)} blocks")
    return BlockSet(
        name=row["name"],
        units=row["units"],
        sizes=tuple(sorted(sizes)),
        wear=tuple(size for entry in wear for size in _series(entry, row["units"])),
        series=tuple(_describe(entry) for entry in row["series"]),
        source=citation(row),
        standing=standing(row),
        note=row.get("note", ""),
    )


def _series(entry: dict[str, Any], units: Units) -> list[int]:
    """Sizes of one series, or its one size, in 0.1 nm.

    Decimal arithmetic, since 0.1001 is not exact in binary.
    """
    if "size" in entry:
        return [int(Decimal(entry["size"]) * to_tenth_nm(1.0, units))]
    first, step = Decimal(entry["first"]), Decimal(entry["step"])
    sizes = [first + step * position for position in range(entry["count"])]
    if sizes[-1] != Decimal(entry["last"]):
        raise ValueError(f"series {entry} does not end where it says")
    return [int(size * to_tenth_nm(1.0, units)) for size in sizes]


def _describe(entry: dict[str, Any]) -> str:
    """Write one series for a person."""
    if "size" in entry:
        return f"{entry['size']} wear block" if entry.get("wear") else str(entry["size"])
    return f"{entry['first']} to {entry['last']} by {entry['step']} ({entry['count']})"
