"""One measurement against its limits: what is asked. `reading` reads it into a case to judge."""

from typing import Annotated, Literal, NamedTuple

from pydantic import Field

from halfangle_service.fields import (
    FINITE,
    AngleInput,
    Arcsec,
    Celsius,
    Length,
    NonNegativeArcsec,
    NonNegativeLength,
    RequestModel,
    SignedLength,
    Unit,
    UnitsField,
)
from halfangle_service.fields.base import Rule
from halfangle_service.fields.estimate import DECISION_RULE
from halfangle_service.trade.tables.materials.expansion import MaterialName
from halfangle_service.trade.uncertainty import VerdictRule

Quantity = Literal["included-angle", "half-angle", "diameter", "gauge-depth", "tir"]
Party = Literal["supplier", "customer"]

MeasuredIncluded = Annotated[float, AngleInput(gt=0, lt=180, measured=True)]
MeasuredHalf = Annotated[float, AngleInput(gt=0, lt=90, measured=True)]
IncludedLimit = Annotated[float, AngleInput(gt=0.01, lt=179)]
HalfLimit = Annotated[float, AngleInput(gt=0.005, lt=89.5)]


class Measurand(NamedTuple):
    """What can be measured: the fields that state it and its limits."""

    quantity: Quantity
    measured: str
    lower: str
    upper: str
    nominal: str = ""
    tolerance: str = ""

    @property
    def is_angle(self) -> bool:
        """Whether it is judged in arc-seconds; else in the request's `units`."""
        return bool(self.nominal)

    @property
    def limits(self) -> tuple[str, ...]:
        """Fields that state its limits."""
        return tuple(filter(None, (self.lower, self.upper, self.nominal, self.tolerance)))

    @property
    def uncertainties(self) -> tuple[str, ...]:
        """Fields of which one states how well it is known."""
        return ANGLE_UNCERTAINTIES if self.is_angle else LENGTH_UNCERTAINTIES


MEASURANDS = (
    Measurand(
        "included-angle",
        "measured_included_angle",
        "smallest_included_angle",
        "largest_included_angle",
        "included_angle",
        "included_angle_tolerance_arcsec",
    ),
    Measurand(
        "half-angle",
        "measured_half_angle",
        "smallest_half_angle",
        "largest_half_angle",
        "half_angle",
        "half_angle_tolerance_arcsec",
    ),
    Measurand("diameter", "measured_diameter", "smallest_diameter", "largest_diameter"),
    Measurand("gauge-depth", "measured_gauge_depth", "smallest_gauge_depth", "largest_gauge_depth"),
    Measurand("tir", "measured_tir", "", "limit_tir"),
)
MEASURED = tuple(m.measured for m in MEASURANDS)
LENGTH_UNCERTAINTIES = ("standard_uncertainty", "expanded_uncertainty", "measurement_error_limit")
ANGLE_UNCERTAINTIES = tuple(f"{name}_arcsec" for name in LENGTH_UNCERTAINTIES)
TEMPERATURES = (
    "part_temperature_celsius",
    "part_material",
    "instrument_temperature_celsius",
    "instrument_material",
    "temperature_error_limit_celsius",
)
_NOMINALS = (
    ("included_angle", "included_angle_tolerance_arcsec"),
    ("half_angle", "half_angle_tolerance_arcsec"),
)
_LIMIT = "Absent: no limit to that side."


class InspectionVerdictRequest(RequestModel):
    """One measured quantity, its limits, how well it is known, and the rule to judge by."""

    rules = (
        Rule("one-of", MEASURED),
        Rule("at-most-one-of", (*LENGTH_UNCERTAINTIES, *ANGLE_UNCERTAINTIES)),
        *(Rule("all-or-none", pair) for pair in _NOMINALS),
        Rule("all-or-none", TEMPERATURES),
    )

    units: UnitsField
    measured_included_angle: MeasuredIncluded | None = Field(
        None, description="Included angle of a cone as measured, in degrees.", examples=[60.001]
    )
    included_angle: IncludedLimit | None = Field(
        None, description="Included angle wanted, with its tolerance ±.", examples=[60]
    )
    included_angle_tolerance_arcsec: Arcsec | None = Field(
        None, description="Tolerance ± of the included angle, in arc-seconds.", examples=[10]
    )
    smallest_included_angle: IncludedLimit | None = Field(
        None, description=f"Smallest included angle allowed, in degrees. {_LIMIT}"
    )
    largest_included_angle: IncludedLimit | None = Field(
        None, description=f"Largest included angle allowed, in degrees. {_LIMIT}"
    )
    measured_half_angle: MeasuredHalf | None = Field(
        None, description="Half angle of a cone as measured, in degrees."
    )
    half_angle: HalfLimit | None = Field(
        None, description="Half angle wanted, with its tolerance ±.", examples=[30]
    )
    half_angle_tolerance_arcsec: Arcsec | None = Field(
        None, description="Tolerance ± of the half angle, in arc-seconds.", examples=[5]
    )
    smallest_half_angle: HalfLimit | None = Field(
        None, description=f"Smallest half angle allowed, in degrees. {_LIMIT}"
    )
    largest_half_angle: HalfLimit | None = Field(
        None, description=f"Largest half angle allowed, in degrees. {_LIMIT}"
    )
    measured_diameter: Length | None = Field(None, description="Diameter as measured.")
    smallest_diameter: Length | None = Field(
        None, description=f"Smallest diameter allowed. {_LIMIT}"
    )
    largest_diameter: Length | None = Field(None, description=f"Largest diameter allowed. {_LIMIT}")
    measured_gauge_depth: SignedLength | None = Field(
        None,
        description="Depth of a gauge as measured, or any distance of that kind; negative where it "
        "stands out.",
    )
    smallest_gauge_depth: SignedLength | None = Field(
        None, description=f"Smallest depth of the gauge allowed: the shallow limit. {_LIMIT}"
    )
    largest_gauge_depth: SignedLength | None = Field(
        None, description=f"Largest depth of the gauge allowed: the deep limit. {_LIMIT}"
    )
    measured_tir: NonNegativeLength | None = Field(
        None,
        description="TIR as measured: of the eccentricity, as `runout.indicate` gives it, or as "
        "read. Its true value is taken as the length of a vector, which is never below nothing.",
    )
    limit_tir: Length | None = Field(None, description="Limit of the TIR.", examples=[0.0003])
    standard_uncertainty: NonNegativeLength | None = Field(
        None, description="Standard uncertainty of a diameter, depth or TIR, in `units`."
    )
    expanded_uncertainty: NonNegativeLength | None = Field(
        None,
        description="Expanded uncertainty of a diameter, depth or TIR, in `units`, with its "
        "`coverage_factor`.",
    )
    measurement_error_limit: Length | None = Field(
        None,
        description="Largest error ± of a diameter, depth or TIR, in `units`: no error is larger, "
        "and all within are alike likely.",
    )
    standard_uncertainty_arcsec: NonNegativeArcsec | None = Field(
        None, description="Standard uncertainty of the angle measured, in arc-seconds."
    )
    expanded_uncertainty_arcsec: NonNegativeArcsec | None = Field(
        None,
        description="Expanded uncertainty of the angle measured, in arc-seconds, with its "
        "`coverage_factor`.",
        examples=[4],
    )
    measurement_error_limit_arcsec: Arcsec | None = Field(
        None,
        description="Largest error ± of the angle measured, in arc-seconds: no error is larger, "
        "and all within are alike likely.",
    )
    coverage_factor: Annotated[float, FINITE, Field(ge=1, le=100), Unit("1")] | None = Field(
        None,
        description="Coverage factor k of the expanded uncertainty, as the certificate states it.",
        examples=[2],
    )
    degrees_of_freedom: Annotated[float, FINITE, Field(ge=1, le=1e9), Unit("1")] | None = Field(
        None,
        description="Effective degrees of freedom of the standard or expanded uncertainty; "
        "not limited where absent.",
    )
    decision_rule: VerdictRule = Field(
        DECISION_RULE,
        description="Rule by which limits are judged. `iso-14253-1-2017`: proved with a "
        "probability of at least 95 %. `iso-14253-1-2013`: with a guard band of two standard "
        "uncertainties at either limit. `guard-band`: with the guard band agreed on, `guard_band` "
        "or `guard_band_arcsec`. `simple-acceptance`: by the measured value alone, supplier and "
        "customer sharing the risk; `smallest_capability_index` says how coarse the measurement "
        "may be.",
    )
    guard_band: NonNegativeLength | None = Field(
        None, description="Guard band agreed on, in `units`, at either limit."
    )
    guard_band_arcsec: NonNegativeArcsec | None = Field(
        None, description="Guard band agreed on, in arc-seconds, at either limit."
    )
    smallest_capability_index: (
        Annotated[float, FINITE, Field(ge=0.1, le=1000), Unit("1")] | None
    ) = Field(
        None,
        description="Smallest measurement capability index with which simple acceptance was agreed "
        "on: tolerance over four standard uncertainties, the N of a rule N:1. Without it a value "
        "is judged however coarse the measurement is.",
        examples=[4],
    )
    who_proves: Party | None = Field(
        None,
        description="Who has to prove it. `supplier`: that the part conforms, so it is accepted "
        "only where that is proved; `customer`: that it does not, so it is rejected only then. "
        "The uncertainty is always at the cost of who proves.",
    )
    part_temperature_celsius: Celsius | None = Field(
        None,
        description="Temperature of the part when its diameter or depth was measured. Absent: the "
        "value is that at 20 °C (ISO 1), and its uncertainty holds what temperature does.",
    )
    part_material: MaterialName | None = Field(None, description="Material of the part.")
    instrument_temperature_celsius: Celsius | None = Field(
        None,
        description="Temperature of the instrument then; 20 where it corrects its reading to "
        "20 °C by itself.",
    )
    instrument_material: MaterialName | None = Field(
        None, description="Material of the instrument's measuring length, such as steel."
    )
    temperature_error_limit_celsius: (
        Annotated[float, FINITE, Field(ge=0, le=50), Unit("celsius")] | None
    ) = Field(None, description="Largest error ± of each of the two temperatures, in kelvins.")
