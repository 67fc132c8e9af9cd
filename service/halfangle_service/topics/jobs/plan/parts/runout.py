"""The runout of the cone to expect from its holding, against the drawing's limit."""

from pydantic import Field

from halfangle_service.fields import LengthOut, ResultModel
from halfangle_service.fields.runout import TirEstimate, tir_estimate
from halfangle_service.topics.jobs.plan.shank import Shank
from halfangle_service.topics.jobs.plan.shop.errors import RunoutContributions
from halfangle_service.trade.centers.limits import tir_on_cone
from halfangle_service.trade.runout.budget import Contributor, RunoutBudget
from halfangle_service.trade.uncertainty import Forecast


class PlannedRunout(ResultModel):
    """The runout budget of the cone against the limit. Square to the axis, at the cone."""

    tir: TirEstimate
    limit_tir: LengthOut = Field(description="Limit as full indicator movement.")
    limit_eccentricity: LengthOut = Field(description="The same limit as eccentricity: half of it.")
    limit_zone_diameter: LengthOut = Field(
        description="The same limit as the diameter of a coaxiality zone."
    )
    limit_tir_on_cone: LengthOut = Field(
        description="The limit as an indicator square to the cone's surface reads it."
    )
    forecast: Forecast = Field(
        description="Whether the limit will be kept: it holds where 95 of 100 assemblies keep it, "
        "and does not where 95 of 100 pass it, whatever `decision_rule`; never `holds` with "
        "something not stated."
    )
    mend_first: str | None = Field(
        description="The largest contribution, by its name: the first one to mend; null where none "
        "was stated."
    )


def part_words(name: str, shank: Shank) -> str:
    """A part of the holding as a sentence has it, by the field that states it."""
    return {
        "adapter_tir": "collet or bushing" if shank.kind == "straight" else "adapter",
        "fixture_tir": "spin fixture",
        "indicating_tir": "indicating",
    }[name]


def planned_runout(
    stated: RunoutContributions, limit_tir: float, half_angle_rad: float
) -> PlannedRunout:
    """Give the runout budget of the cone against the limit."""
    tirs = {field: getattr(stated, field) for field in RunoutContributions.model_fields}
    budget = RunoutBudget(
        tuple(Contributor(field, tir) for field, tir in tirs.items() if tir is not None),
        tuple(field for field, tir in tirs.items() if tir is None),
    )
    largest = max(budget.contributors, key=lambda part: part.tir, default=None)
    return PlannedRunout(
        tir=tir_estimate(budget),
        limit_tir=limit_tir,
        limit_eccentricity=limit_tir / 2.0,
        limit_zone_diameter=limit_tir,
        limit_tir_on_cone=tir_on_cone(limit_tir / 2.0, half_angle_rad),
        forecast=budget.forecast(limit_tir),
        mend_first=None if largest is None else largest.name,
    )
