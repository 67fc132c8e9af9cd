"""What the chain that holds and turns the work adds up to, against a limit."""

from collections.abc import Sequence

from pydantic import Field

from halfangle_service.fields import (
    Length,
    LengthOut,
    NonNegativeLength,
    RequestModel,
    ResultModel,
    SharePercent,
    UnitsField,
)
from halfangle_service.fields.choice import all_or_none, needs
from halfangle_service.fields.runout import TirEstimate, tir_estimate
from halfangle_service.operation import Outcome, Source, operation
from halfangle_service.trade.runout.budget import Contributor, RunoutBudget, tilt_at_distance
from halfangle_service.trade.uncertainty import Forecast

_DERIVED = Source(
    citation="Derived here: eccentricity is a vector; of vectors of unknown, independent phases "
    "the mean square of the sum is the sum of their squares.",
    standing="derived",
)


class RunoutContributor(RequestModel):
    """One part of the chain that holds and turns the work."""

    name: str = Field(min_length=1, max_length=60, description="Name of the contributor.")
    tir: NonNegativeLength = Field(
        description="TIR that it makes at the station of the budget; where `projection` is sent, "
        "TIR at its own seat. In `units`."
    )
    tilt_tir: NonNegativeLength | None = Field(
        None,
        description="Change of its TIR over `tilt_span`, by tilt, in `units`; it acts by "
        "`projection`, and is named as not stated where only that was sent.",
    )
    tilt_span: Length | None = Field(
        None, description="Length over which `tilt_tir` was found, in `units`."
    )
    projection: NonNegativeLength | None = Field(
        None, description="Distance from its seat to the station of the budget, in `units`."
    )
    can_be_mended: bool = Field(True, description="False for what has to be lived with.")


class RunoutBudgetRequest(RequestModel):
    """The chain, and the limit wanted."""

    units: UnitsField
    contributors: list[RunoutContributor] = Field(
        min_length=1, max_length=20, description="The chain, each of unknown phase."
    )
    limit_tir: Length = Field(description="TIR wanted at the station.", examples=[0.0003])


class RunoutBudgetResult(ResultModel):
    """The budget against the limit."""

    tir: TirEstimate
    best_clocking_tir: LengthOut = Field(description="Least that clocking alone can reach.")
    share_within_limit_percent: SharePercent = Field(
        description="Share of assemblies, in percent, whose TIR is within `limit_tir`."
    )
    percentile_50_tir: LengthOut = Field(description="Not passed in half of assemblies.")
    percentile_99_tir: LengthOut = Field(description="Not passed in 99 of 100 assemblies.")
    mend_first: str | None = Field(
        description="Largest that can be mended, by its own name; null if none can."
    )
    forecast: Forecast = Field(
        description="The chain as it is against the limit: `holds` where 95 of 100 assemblies are "
        "within it, `does-not-hold` where not even 5 of 100 are, else `may-not-hold`; with a tilt "
        "not stated it is never said to hold."
    )
    mended_forecast: Forecast = Field(
        description="The same once all that can be mended is perfect: what cannot be mended alone."
    )


@operation(
    "runout.budget",
    relations=(
        "worst = Σ TIR",
        "RSS = √Σ TIR², the root mean square of all assemblies",
        "best = max(0, 2 max TIR - Σ TIR)",
        "at the station TIR = TIR at the seat + tilt TIR × projection/span",
    ),
    sources=(_DERIVED,),
    largest_request="20 contributors",
    heavy=True,
    example={
        "units": "in",
        "limit_tir": 0.0003,
        "contributors": [
            {"name": "adapter", "tir": 0.0001},
            {"name": "spin fixture", "tir": 0.00005},
            {"name": "indicating", "tir": 0.00005},
        ],
    },
)
def budget(request: RunoutBudgetRequest) -> Outcome[RunoutBudgetResult]:
    """Runout budget of a chain.

    Adapter, socket, fixture and indicating, of unknown phases: worst case, root sum of squares,
    how many of 100 assemblies keep each, and what to mend first.
    """
    parts = list(enumerate(request.contributors))
    for place, part in parts:
        _require_whole_tilt(part, f"contributors/{place}/")
    lived_with = [(place, part) for place, part in parts if not part.can_be_mended]
    whole, limit = _chain(parts), request.limit_tir
    half, nearly_all = whole.not_passed(50, 99)
    return Outcome(
        RunoutBudgetResult(
            tir=tir_estimate(whole),
            best_clocking_tir=whole.best_case,
            share_within_limit_percent=whole.percent_within(limit),
            percentile_50_tir=half,
            percentile_99_tir=nearly_all,
            mend_first=_mend_first(request.contributors, whole.tirs),
            forecast=whole.forecast(limit),
            mended_forecast=_chain(lived_with).forecast(limit) if lived_with else "holds",
        )
    )


def _chain(parts: Sequence[tuple[int, RunoutContributor]]) -> RunoutBudget:
    """Parts of the chain, each with its place in the request, at the station."""
    return RunoutBudget(
        tuple(
            Contributor(f"contributors/{place}", _tir_at_station(part), part.name)
            for place, part in parts
        ),
        not_stated=tuple(
            f"contributors/{place}/tilt_tir"
            for place, part in parts
            if part.tilt_tir is None and part.projection
        ),
    )


def _require_whole_tilt(part: RunoutContributor, path: str) -> None:
    """Refuse a tilt without the length that it was found over, or the one that it acts by."""
    all_or_none(part, "tilt_tir", "tilt_span", why="A tilt is a change over a length.", path=path)
    why = "A tilt acts by the distance from the seat to the station, 0 where that is at the seat."
    needs(part, "tilt_tir", "projection", why=why, path=path)


def _tir_at_station(part: RunoutContributor) -> float:
    return part.tir + tilt_at_distance(part.tilt_tir, part.tilt_span, part.projection)


def _mend_first(sent: Sequence[RunoutContributor], tirs: Sequence[float]) -> str | None:
    """Name of the largest that can be mended, the first of equal ones."""
    mendable = [(tir, part) for tir, part in zip(tirs, sent, strict=True) if part.can_be_mended]
    tir, largest = max(mendable, key=lambda pair: pair[0], default=(0.0, None))
    return largest.name if largest is not None and tir > 0.0 else None
