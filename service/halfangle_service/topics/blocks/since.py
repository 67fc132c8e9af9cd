"""A calibrated block today: its certificate, what time did since, and the temperature."""

from collections.abc import Iterator
from typing import Annotated

from pydantic import Field

from halfangle_service.errors import Impossible
from halfangle_service.fields import (
    FINITE,
    Celsius,
    Length,
    LengthOut,
    NonNegativeLength,
    RequestModel,
    ResultModel,
    SignedLength,
    Unit,
    UnitsField,
    from_mm,
    to_mm,
)
from halfangle_service.fields.advisories import Advisory, caution
from halfangle_service.fields.base import Rule
from halfangle_service.fields.choice import at_most_one_of
from halfangle_service.fields.estimate import LengthEstimate, estimate
from halfangle_service.fields.supply import LARGEST_DEVIATION
from halfangle_service.operation import Outcome, Source, operation
from halfangle_service.trade.calibration.since import Stability, largest_change_a_year_mm
from halfangle_service.trade.tables.materials.expansion import (
    REFERENCE_CELSIUS,
    Material,
    MaterialName,
    materials,
)
from halfangle_service.trade.uncertainty import Budget, Contribution
from halfangle_service.trade.wording import of_any_unit, plain

_BUDGET = Source(
    citation="JCGM 100:2008 (GUM), 5.1.2: independent contributions by root sum of squares; ISO 1 "
    "for 20 °C.",
    standing="published",
)
_STABILITY = Source(
    citation="ISO 3650:1998, dimensional stability: ±(0.02 µm + 0.25 µm a metre) a year of grades "
    "K and 0, ±(0.05 µm + 0.5 µm a metre) of grades 1 and 2.",
    standing="from-memory",
)
#: Certificates older than this are commonly renewed; common practice, no source.
_OLD_YEARS = 4.0
#: What bounds a change that was not measured, of which one is sent.
DRIFT = ("drift_error_limit_per_year", "stability")
#: What of a gauge block is no larger than its largest deviation.
_SMALL = ("deviation", "expanded_uncertainty", "drift_per_year", "drift_error_limit_per_year")
Kelvins = Annotated[float, FINITE, Field(ge=0, le=50), Unit("celsius")]
Years = Annotated[float, FINITE, Field(ge=0, le=100), Unit("year")]


class BlockSinceRequest(RequestModel):
    """A block's certificate, the years since, and where it lies now."""

    rules = (Rule("at-most-one-of", DRIFT),)

    units: UnitsField
    size: Length = Field(description="Nominal size of the block.", examples=[100.0])
    deviation: SignedLength = Field(
        description="Deviation by the certificate: actual less nominal, at 20 °C.",
        examples=[0.00012],
    )
    expanded_uncertainty: NonNegativeLength | None = Field(
        None, description="Expanded uncertainty (k = 2) of that.", examples=[0.00006]
    )
    years_since: Years = Field(description="Years since it was calibrated.", examples=[2.0])
    drift_per_year: SignedLength = Field(
        0.0, description="Change a year as earlier certificates show it; 0 where they show none."
    )
    drift_error_limit_per_year: NonNegativeLength | None = Field(
        None, description="Largest error ± of that change a year."
    )
    stability: Stability | None = Field(
        None, description="In its place: what its standard allows the block to change."
    )
    material: MaterialName = Field("steel", description="Material of the block.")
    temperature_celsius: Celsius | None = Field(
        None, description="Temperature of the block; absent, its length at 20 °C is not known."
    )
    temperature_error_limit_celsius: Kelvins | None = Field(
        None, description="Largest error ± of that, in kelvins."
    )


class BlockSinceResult(ResultModel):
    """The block's length as it lies, and at 20 °C."""

    length: LengthEstimate = Field(
        description="Length as it lies, at its temperature; at 20 °C where none was stated."
    )
    deviation_today: LengthOut = Field(
        description="Deviation at 20 °C today: the certificate's and the drift since."
    )
    drift_since: LengthOut = Field(description="Change since the calibration, by the drift.")
    expansion: LengthOut | None = Field(
        description="Growth from 20 °C; null where no temperature was stated."
    )


@operation(
    "blocks.since",
    relations=(
        "length = size + deviation + drift × years + size α (t − 20 °C)",
        "u² = (U / 2)² + (years × drift error limit)² / 3 + (size (t − 20 °C) Δα)² / 3 + (size α "
        "Δt)² / 3",
    ),
    sources=(_BUDGET, _STABILITY),
    example={
        "units": "mm",
        "size": 100,
        "deviation": 0.00012,
        "expanded_uncertainty": 0.00006,
        "years_since": 2,
        "stability": "grades-k-and-0",
        "temperature_celsius": 20.5,
        "temperature_error_limit_celsius": 0.2,
    },
)
def since(request: BlockSinceRequest) -> Outcome[BlockSinceResult]:
    """A calibrated block today.

    A block's length from its certificate, the drift since and its temperature, with all three in
    one budget.
    """
    at_most_one_of(request, *DRIFT)
    _require_sane(request)
    material, celsius = materials()[request.material], request.temperature_celsius
    kelvins = None if celsius is None else celsius - REFERENCE_CELSIUS
    growth = None if kelvins is None else request.size * material.coefficient * kelvins
    drifted = request.drift_per_year * request.years_since
    today = request.deviation + drifted
    budget = _budget(request, material, kelvins)
    result = BlockSinceResult(
        length=estimate(LengthEstimate, budget, request.size + today + (growth or 0.0)),
        deviation_today=today,
        drift_since=drifted,
        expansion=growth,
    )
    return Outcome(result, tuple(_advisories(request)))


def _require_sane(request: BlockSinceRequest) -> None:
    """Refuse a deviation or a drift that no gauge block has: most likely a slip of the unit."""
    most = LARGEST_DEVIATION[request.units]
    for name in _SMALL:
        value = getattr(request, name) or 0.0
        if abs(value) > most:
            raise Impossible(
                f"{of_any_unit(value)} is no deviation of a gauge block, nor an error of one; was "
                "it typed in micrometres or microinches?",
                fields={name: f"should be within {of_any_unit(most)} of 0"},
            )
    today = request.deviation + request.drift_per_year * request.years_since
    if abs(today) > most:
        raise Impossible(
            f"By this drift the block would deviate by {of_any_unit(today)} today: it would be no "
            "gauge block any more.",
            fields={
                "drift_per_year": f"should leave the deviation within {of_any_unit(most)} of 0"
            },
        )
    if request.size <= most:
        raise Impossible(
            f"A block of {of_any_unit(request.size)} is none.",
            fields={"size": f"should be over {of_any_unit(most)}"},
        )


def _budget(request: BlockSinceRequest, material: Material, kelvins: float | None) -> Budget:
    parts: list[Contribution] = []
    missing: list[str] = []
    if request.expanded_uncertainty is None:
        missing.append("expanded_uncertainty")
    else:
        parts.append(
            Contribution("expanded_uncertainty", request.expanded_uncertainty, "normal", 0.5)
        )
    name, change = _a_year(request)
    if change is not None:
        parts.append(Contribution(name, change, sensitivity=request.years_since))
    elif request.years_since:
        missing.append(name)
    if kelvins is None:
        return Budget(tuple(parts), not_stated=(*missing, "temperature_celsius"))
    if kelvins:
        parts.append(
            Contribution(
                "material",
                material.spread,
                sensitivity=request.size * kelvins,
                unit="per_kelvin",
            )
        )
    limit = request.temperature_error_limit_celsius
    if limit is not None:
        by = request.size * material.coefficient
        parts.append(
            Contribution("temperature_error_limit_celsius", limit, sensitivity=by, unit="celsius")
        )
    elif material.coefficient:
        missing.append("temperature_error_limit_celsius")
    return Budget(tuple(parts), not_stated=tuple(missing))


def _a_year(request: BlockSinceRequest) -> tuple[str, float | None]:
    """What bounds the change a year: the field that states it, and its value in `units`."""
    if request.stability is None:
        return "drift_error_limit_per_year", request.drift_error_limit_per_year
    most = largest_change_a_year_mm(request.stability, to_mm(request.size, request.units))
    return "stability", from_mm(most, request.units)


def _advisories(request: BlockSinceRequest) -> Iterator[Advisory]:
    if request.years_since > _OLD_YEARS:
        yield caution(
            "calibration-old",
            f"The certificate is {plain(request.years_since)} years old; blocks are commonly "
            f"calibrated again within {plain(_OLD_YEARS)} years (common practice, no source), used "
            "ones sooner.",
        )
