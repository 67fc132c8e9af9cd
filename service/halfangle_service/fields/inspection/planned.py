"""What a means of measuring comes to: how it is done, what to read, what it proves; or why not."""

from typing import Annotated, Any

from pydantic import Field

from halfangle_service.fields import ARCSEC_PER_RADIAN, ArcsecOut, LengthOut, ResultModel, Unit
from halfangle_service.fields.estimate import ArcsecEstimate, LengthEstimate, estimate
from halfangle_service.trade.inspection.means import (
    Inspected,
    InspectedAngle,
    MeansName,
    OutOfReach,
    Proof,
    Quantity,
    Reading,
    Unseen,
)

_Stated = Annotated[float, Unit("stated")]


class InspectionSetting(ResultModel):
    """What a means is set up with."""

    name: str = Field(
        description="What it is, by the name of the field that states it where it is asked for."
    )
    unit: str = Field(
        description="Unit of `set_to`, as `x-unit` names units; `length` is the request's."
    )
    set_to: _Stated = Field(description="What it is.")


class InspectionReading(ResultModel):
    """One figure to read, with its limits."""

    name: str = Field(
        description="What is read, by the name of the field that takes or gives it elsewhere."
    )
    unit: str = Field(
        description="Unit of the figures, as `x-unit` names units; `length` is the request's."
    )
    expected_reading: _Stated = Field(description="What a nominal part reads.")
    smallest_reading: _Stated | None = Field(
        description="Least that a part within its tolerances reads; null where a tolerance that "
        "it depends on was not stated."
    )
    largest_reading: _Stated | None = Field(description="Most that such a part reads.")
    smallest_accepted_reading: _Stated | None = Field(
        description="Least reading that proves the tolerance, by `decision_rule`; null where none "
        "does, and where the reading speaks of angle and size at once."
    )
    largest_accepted_reading: _Stated | None = Field(
        description="Largest reading that proves the tolerance."
    )


class InspectionAngleProof(ResultModel):
    """What a means proves of the angle: a cone's included angle, a face's to its base."""

    angle_error_arcsec: ArcsecEstimate = Field(
        description="The error that it finds of a nominal part, 0, with its own uncertainty."
    )
    proves_tolerance: bool | None = Field(
        description="Whether a reading of it can prove the tolerance, by `decision_rule`; null "
        "where what was not stated of it decides."
    )
    smallest_accepted_error_arcsec: ArcsecOut | None = Field(
        description="Smallest error found, measured less nominal, that proves the tolerance; null "
        "where none does."
    )
    largest_accepted_error_arcsec: ArcsecOut | None = Field(
        description="Largest error found that proves the tolerance."
    )


class InspectionSizeProof(ResultModel):
    """What a means proves of the large diameter."""

    large_diameter_error: LengthEstimate = Field(
        description="The error that it finds of a nominal part, 0, with its own uncertainty."
    )
    proves_tolerance: bool | None = Field(
        description="Whether it can prove the tolerance, by `decision_rule`; null where what was "
        "not stated of it decides."
    )
    smallest_accepted_error: LengthOut | None = Field(
        description="Smallest error found, measured less nominal, that proves the tolerance; null "
        "where none does."
    )
    largest_accepted_error: LengthOut | None = Field(
        description="Largest error found that proves the tolerance."
    )


class PlannedMeans(ResultModel):
    """One means that reaches the part: how it is done, what to read, what it proves."""

    means: MeansName = Field(description="Which means.")
    of: InspectedAngle | None = Field(
        description="Which angle of a face with two it measures; null where the part has one, and "
        "where it speaks of both."
    )
    how: str = Field(description="How it is done.")
    settings: list[InspectionSetting] = Field(description="What it is set up with.")
    readings: list[InspectionReading] = Field(description="What to read, in order.")
    angle_proof: InspectionAngleProof | None = Field(
        description="What it proves of the angle; null where it sees none."
    )
    cannot_see: list[Unseen] = Field(description="What it cannot see, however finely it is read.")


class PlannedInspection(PlannedMeans):
    """One means that reaches the part, with the size that it proves and its plate's stack."""

    size_proof: InspectionSizeProof | None = Field(
        description="What it proves of the large diameter; null where it sees none, or no "
        "tolerance was stated."
    )
    blocks: list[LengthOut] = Field(
        description="Blocks of the plate's stack, by their nominal sizes, largest first; empty "
        "where no blocks were sent or none are taken."
    )


class RuledOutInspection(ResultModel):
    """A means that finds no room or cannot reach."""

    means: MeansName = Field(description="Which means.")
    reason: str = Field(description="Why it cannot.")
    field: str = Field(description="The field of the request that stands in its way, as a path.")
    instead: str | None = Field(
        description="The nearest that works, in plain words; null where nothing is near."
    )


def means_out(found: Inspected) -> PlannedMeans:
    """Write a means that reaches the part."""
    return PlannedMeans(**_facts(found))


def inspection_out(found: Inspected, blocks: tuple[float, ...]) -> PlannedInspection:
    """The same with what it proves of the size; `blocks` are those of its plate's stack."""
    size = _proof(found, "large-diameter")
    return PlannedInspection(
        **_facts(found),
        size_proof=None if size is None else _size(size),
        blocks=list(blocks),
    )


def _facts(found: Inspected) -> dict[str, Any]:
    """Values of the fields of `PlannedMeans`."""
    angle = _proof(found, "angle")
    return {
        "means": found.means,
        "of": found.of,
        "how": found.how,
        "settings": [
            InspectionSetting(name=one.name, unit=one.unit, set_to=one.value)
            for one in found.settings
        ],
        "readings": [_reading(one) for one in found.readings],
        "angle_proof": None if angle is None else _angle(angle),
        "cannot_see": list(found.cannot_see),
    }


def _proof(found: Inspected, quantity: Quantity) -> Proof | None:
    return next((proof for proof in found.proofs if proof.quantity == quantity), None)


def _reading(reading: Reading) -> InspectionReading:
    limits, accepted = reading.at_limits, reading.accepted
    return InspectionReading(
        name=reading.name,
        unit=reading.unit,
        expected_reading=reading.expected,
        smallest_reading=None if limits is None else limits[0],
        largest_reading=None if limits is None else limits[1],
        smallest_accepted_reading=None if accepted is None else accepted[0],
        largest_accepted_reading=None if accepted is None else accepted[1],
    )


def _angle(proof: Proof) -> InspectionAngleProof:
    low, high = proof.zone or (None, None)
    return InspectionAngleProof(
        angle_error_arcsec=estimate(
            ArcsecEstimate, proof.budget, _nothing(proof), per_unit=ARCSEC_PER_RADIAN
        ),
        proves_tolerance=proof.proves,
        smallest_accepted_error_arcsec=None if low is None else low * ARCSEC_PER_RADIAN,
        largest_accepted_error_arcsec=None if high is None else high * ARCSEC_PER_RADIAN,
    )


def _size(proof: Proof) -> InspectionSizeProof:
    low, high = proof.zone or (None, None)
    return InspectionSizeProof(
        large_diameter_error=estimate(LengthEstimate, proof.budget, _nothing(proof)),
        proves_tolerance=proof.proves,
        smallest_accepted_error=low,
        largest_accepted_error=high,
    )


def _nothing(proof: Proof) -> Any:
    """What is found of a nominal part: no error; None where nothing was stated of the means."""
    return 0.0 if proof.budget.contributions else None


def ruled_out(found: OutOfReach, *, path: str = "") -> RuledOutInspection:
    """Write a means that does not reach; `path` is that of the object that holds the means."""
    field = found.field if found.field.startswith("feature/") else f"{path}{found.field}"
    return RuledOutInspection(
        means=found.means, reason=found.reason, field=field, instead=found.instead
    )
