"""Terms of runout, from the table beside this module, and how far one tells another."""

from dataclasses import dataclass
from functools import cache
from typing import Literal

from halfangle_service.trade.runout import convert as c
from halfangle_service.trade.tables.loader import read_table

TermKey = Literal[
    "tir",
    "eccentricity",
    "concentricity_zone_diameter",
    "coaxiality_zone_diameter",
    "circular_runout",
    "total_runout",
]
Family = Literal["movement", "offset", "median", "total"]


@dataclass(frozen=True, slots=True)
class Term:
    """One term: its definition, and whether one value speaks of a section or the whole feature."""

    key: TermKey
    name: str
    definition: str
    scope: Literal["section", "feature"]
    family: Family
    source: str
    standing: Literal["published", "from-memory"]

    @property
    def per_eccentricity(self) -> float:
        """Value of an offset term for an eccentricity of 1: a zone is a diameter."""
        return 1.0 if self.key == "eccentricity" else 2.0


@cache
def terms() -> dict[str, Term]:
    """Give every term by its key; a row that lacks anything is refused."""
    return {row["key"]: Term(**row) for row in read_table(__name__, "terms.toml")["term"]}


@dataclass(frozen=True)
class Conversion:
    """Bounds of the value wanted, and why they are no closer."""

    bounds: c.Bounds
    reasons: tuple[str, ...]


def convert(
    value: float, given: Term, wanted: Term, form: float | None, *, every_section_alike: bool
) -> Conversion:
    """What `value` of one term says of another; `form` None where the roundness is not known."""
    if given.key == wanted.key:
        return Conversion(c.Bounds(value, value), ())
    bounds, reasons = c.Bounds(value, value), []
    if given.scope == "section" and wanted.scope == "feature" and not every_section_alike:
        reasons.append(
            "One section was read; the term wanted speaks of the whole feature, and another "
            "section may be worse: no upper bound."
        )
        bounds = c.Bounds(value, None)
    if given.family == "total":
        bounds = c.Bounds(0.0, bounds.most)
        reasons.append(
            "Total run-out also holds the taper and the shape along the axis: it only bounds the "
            "others from above."
        )
    bounds = _across(bounds, given, wanted, form)
    reasons += _why(given, wanted, form)
    if wanted.family == "total":
        bounds = c.Bounds(bounds.least, None)
        reasons.append("Taper and shape along the axis add to total run-out: no upper bound.")
    return Conversion(bounds, tuple(reasons))


def _across(bounds: c.Bounds, given: Term, wanted: Term, form: float | None) -> c.Bounds:
    """From family to family, by way of the eccentricity where they differ."""
    moves = ("movement", "total")
    if given.family in moves and wanted.family in moves:
        return bounds
    if given.family in moves:
        offset = c.eccentricity_from_movement(bounds, form)
    elif given.family == "median":
        offset = c.eccentricity_from_median_zone(bounds, form)
    else:
        offset = bounds.scaled(1.0 / given.per_eccentricity)
    if wanted.family in moves:
        return c.movement_from_eccentricity(offset, form)
    if wanted.family == "median":
        return c.median_zone(offset, form)
    return offset.scaled(wanted.per_eccentricity)


def _why(given: Term, wanted: Term, form: float | None) -> list[str]:
    """Why form keeps two terms apart."""
    if form == 0.0:
        return []
    families = {given.family, wanted.family}
    if "median" in families and families != {"median"}:
        return [
            "Median points of opposed elements wander with odd lobes even where the axis is true: "
            "without the roundness nothing follows from one to the other."
        ]
    if families & {"movement", "total"} and "offset" in families:
        return [
            "An indicator shows form together with eccentricity: a full movement is twice the "
            "eccentricity only of a round section."
        ]
    return []
