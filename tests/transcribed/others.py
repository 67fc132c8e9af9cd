"""Materials, dressing, checks before starting and terms of runout against their transcriptions."""

import math
import re
from collections.abc import Mapping, Sequence

from halfangle_service.trade.tables.correction.causes import Cause
from halfangle_service.trade.tables.materials.expansion import Material
from halfangle_service.trade.tables.runout.terms import Term
from halfangle_service.trade.tables.wheels.guides import Guide, Purpose
from halfangle_service.trade.tables.wheels.start_checks import StartCheck
from transcribed.reading import Cells, differences, number, printed

_FIGURES = re.compile(r"[0-9]+(?:\.[0-9]+)?|one third|one minute")


def material_differences(materials: Mapping[str, Material]) -> list[str]:
    """What expansions differ in; the spread is half of the range given, to the tenth above."""
    found: dict[str, Cells] = {
        key: {"coefficient": row.coefficient * 1e6, "spread": row.spread * 1e6}
        for key, row in materials.items()
    }
    listed: dict[str, Cells] = {
        row["material"]: {"coefficient": number(row["coefficient"]), "spread": _spread(row)}
        for row in printed("others/expansion.csv")
    }
    return differences(found, listed)


def _spread(row: Mapping[str, str]) -> float:
    """Half of the range; of materials that hardly expand it is as stated, not to a tenth."""
    if number(row["coefficient"]) < 1.0:
        return round(0.5 * (number(row["high"]) - number(row["low"])), 6)
    return math.ceil(round(5.0 * (number(row["high"]) - number(row["low"])), 6)) / 10.0


def guide_differences(guides: Mapping[Purpose, Guide]) -> list[str]:
    """What guide values of dressing differ in."""
    names = {
        "overlap_low": "overlap_low",
        "overlap_high": "overlap_high",
        "depth_low": "depth_low_mm",
        "depth_high": "depth_high_mm",
    }
    found: dict[str, Cells] = {
        key: {column: getattr(guide, name) for column, name in names.items()}
        for key, guide in guides.items()
    }
    listed: dict[str, Cells] = {
        row["purpose"]: {column: number(row[column]) for column in names}
        for row in printed("others/dressing.csv")
    }
    return differences(found, listed)


def start_check_differences(checks: Sequence[StartCheck]) -> list[str]:
    """What the figures in the checks before starting differ in, check by check."""
    found = {
        str(place): {"figures": " ".join(_FIGURES.findall(check.action))}
        for place, check in enumerate(checks)
    }
    listed = {
        str(place): {"figures": row["figures"]}
        for place, row in enumerate(printed("others/before_starting.csv"))
    }
    return differences(found, listed)


def term_differences(terms: Mapping[str, Term]) -> list[str]:
    """What terms of runout differ in: the edition named, what one value speaks of, its kind."""
    found = {
        key: {
            "figures": " ".join(re.findall(r"[0-9.-]*[0-9]", f"{term.name} {term.definition}")),
            "scope": term.scope,
            "family": term.family,
        }
        for key, term in terms.items()
    }
    listed = {
        row["term"]: {
            "figures": " ".join(re.findall(r"[0-9.-]*[0-9]", row["edition_in_name"])),
            "scope": row["scope"],
            "family": row["family"],
        }
        for row in printed("others/runout_terms.csv")
    }
    return differences(found, listed)


_WAYS = {
    "sine-plate": "p",
    "compound-plate": "c",
    "sine-dresser": "d",
    "scale-dresser": "s",
    "swivel": "w",
    "seat": "e",
}
_SEEN = {
    "repeats_on_second_stack": "2",
    "grows_along_batch": "g",
    "surface_form": "f",
    "changes_on_reseating": "r",
    "follows_temperature": "t",
    "repeats_when_measured_again": "m",
}
_SIGNS = {"yes": "+", "no": "-"}


def cause_differences(causes: Sequence[Cause]) -> list[str]:
    """What causes of an error differ in: their order, ways and signs, and the figures named."""
    found: dict[str, Cells] = {
        cause.name: {
            "order": str(cause.order),
            "ways": "".join(sign for way, sign in _WAYS.items() if way in cause.set_ups),
            "seen": " ".join(
                f"{_SEEN[name]}{_SIGNS.get(value, value)}" for name, value in cause.says.items()
            ),
            "figures": " ".join(
                re.findall(
                    "[0-9]+", f"{cause.observation} {cause.check} {cause.mend} {cause.source}"
                )
            ),
        }
        for cause in causes
    }
    listed: dict[str, Cells] = {
        row["cause"]: {name: row[name] for name in ("order", "ways", "seen", "figures")}
        for row in printed("others/causes.csv")
    }
    return differences(found, listed)
