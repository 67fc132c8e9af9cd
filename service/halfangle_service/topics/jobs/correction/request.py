"""What is asked: the work, the set-up by which it was ground, what was measured, what was seen."""

from dataclasses import replace
from typing import Annotated, Literal

from pydantic import Field

from halfangle_service.fields import (
    FINITE,
    AngleInput,
    Arcsec,
    Count,
    Length,
    NonNegativeArcsec,
    NonNegativeLength,
    RequestModel,
    SignedArcsec,
    SignedLength,
    Unit,
)
from halfangle_service.fields.base import Rule
from halfangle_service.fields.blocks import BlockSupplyFields
from halfangle_service.fields.compound.plates import CompoundSizes
from halfangle_service.fields.compound.surfaces import Surface
from halfangle_service.fields.plates import CenterDistance
from halfangle_service.fields.runout import RunoutFound, SurfaceField
from halfangle_service.fields.slopes import SlopeFields
from halfangle_service.fields.wheel.dresser import DresserZero
from halfangle_service.trade.tapers.feed import End

_Blocks = Annotated[list[Length], Field(min_length=1, max_length=8)]
_FaceAngle = AngleInput(gt=0, lt=90)
_ScaleReading = Annotated[float, AngleInput(ge=-90, le=180, measured=True)]
#: Ways to state the angle that was measured, of which one is sent.
MEASURED = (
    "measured_included_angle",
    "measured_half_angle",
    "measured_face_angle",
    "measured_included_angle_error_arcsec",
    "measured_error_arcsec",
)
#: Ways to state how well it is known.
UNCERTAINTIES = ("standard_uncertainty_arcsec", "measurement_error_limit_arcsec")
#: Ways to state how far a gauge and its cone gape.
GAPS = ("gap_at_other_end", "marked_share_percent")


# The work ----------------------------------------------------------------------------------------
class CorrectionCone(SlopeFields):
    """A cone or taper, by its slope."""

    kind: Literal["cone"]
    included_angle_tolerance_arcsec: Arcsec | None = Field(
        None, description="± tolerance of the included angle; absent, nothing is judged."
    )


class CorrectionFace(RequestModel):
    """A plane face at an angle to its base."""

    kind: Literal["angled-face"]
    face_angle: Annotated[float, _FaceAngle] = Field(
        description="Angle between the face and the base, in degrees.", examples=[15.0]
    )
    tolerance_arcsec: Arcsec | None = Field(
        None, description="± tolerance of that angle; absent, nothing is judged."
    )


class CorrectionCompoundFace(RequestModel):
    """A plane face that slopes in both views of its drawing, in the part's own views."""

    kind: Literal["compound-face"]
    orientation: Surface
    tolerance_arcsec: Arcsec | None = Field(
        None, description="± tolerance of the angle in each view; absent, nothing is judged."
    )


CorrectionWork = Annotated[
    CorrectionCone | CorrectionFace | CorrectionCompoundFace,
    Field(discriminator="kind", description="What was to be ground."),
]


# What was measured --------------------------------------------------------------------------------
class CorrectionUncertainty(RequestModel):
    """How well an angle is known as measured; neither sent, nothing is said of it."""

    rules = (Rule("at-most-one-of", UNCERTAINTIES),)

    standard_uncertainty_arcsec: NonNegativeArcsec | None = Field(
        None, description="Standard uncertainty of the angle as it was measured."
    )
    measurement_error_limit_arcsec: Arcsec | None = Field(
        None, description="Largest error ± of the angle as it was measured.", examples=[10.0]
    )


class CorrectionAngle(CorrectionUncertainty):
    """An angle as measured: a cone's included or half angle, or a face's; or its error."""

    rules = (Rule("one-of", MEASURED),)

    kind: Literal["angle"]
    measured_included_angle: Annotated[float, AngleInput(gt=0, lt=180, measured=True)] | None = (
        Field(
            None,
            description="Included angle of the cone as measured, in degrees; its uncertainty is "
            "then that of the included angle.",
            examples=["59°58'"],
        )
    )
    measured_half_angle: Annotated[float, AngleInput(gt=0, lt=90, measured=True)] | None = Field(
        None, description="Half angle of the cone as measured, in degrees."
    )
    measured_face_angle: Annotated[float, replace(_FaceAngle, measured=True)] | None = Field(
        None, description="Angle of the face to its base as measured, in degrees."
    )
    measured_included_angle_error_arcsec: SignedArcsec | None = Field(
        None, description="Included angle as measured less the one wanted."
    )
    measured_error_arcsec: SignedArcsec | None = Field(
        None, description="Half angle, or the face's angle, as measured less the one wanted."
    )


class CorrectionSurface(CorrectionUncertainty):
    """A compound face as measured, in the part's own views."""

    kind: Literal["surface"]
    orientation: Surface


class CorrectionContact(RequestModel):
    """Where the cone touches its gauge, and how far the two gape at the other end."""

    rules = (Rule("at-most-one-of", GAPS), Rule("needs", ("marked_share_percent",), "blue_film"))

    kind: Literal["contact"]
    surface: SurfaceField
    touches: End = Field(
        description="Where gauge and cone touch: at the large or the small end, or `both-ends`, "
        "all over."
    )
    contact_length: Length = Field(
        description="Length along the axis from the end that touches to the open end, in `units`."
    )
    gap_at_other_end: NonNegativeLength | None = Field(
        None, description="Radial gap at the open end, in `units`, such as by a feeler or shake."
    )
    gap_error_limit: NonNegativeLength | None = Field(
        None, description="Largest error ± of that gap, in `units`."
    )
    marked_share_percent: Annotated[float, FINITE, Field(ge=1, le=100), Unit("percent")] | None = (
        Field(None, description="Share of that length that the film marked, from the touching end.")
    )
    marked_share_error_limit_percent: (
        Annotated[float, FINITE, Field(ge=0, le=100), Unit("percent")] | None
    ) = Field(None, description="Largest error ± of that share, as judged by eye.")
    blue_film: Length | None = Field(
        None, description="Thickness of the marking film, in `units`.", examples=[0.0001]
    )
    blue_film_error_limit: NonNegativeLength | None = Field(
        None, description="Largest error ± of that thickness, in `units`."
    )
    gauge_angle_error_limit_arcsec: NonNegativeArcsec | None = Field(
        None, description="Largest error ± of the gauge's own included angle."
    )


class CorrectionReseating(RequestModel):
    """The same station read twice, the work turned half a turn in its socket between."""

    kind: Literal["reseating"]
    surface: SurfaceField
    at_0: RunoutFound = Field(description="Work at its first clocking; angles on the spindle.")
    at_180: RunoutFound = Field(description="Work turned by 180°; angles on the spindle.")
    limit_tir: Length | None = Field(
        None, description="TIR allowed, in `units`; absent, nothing is judged."
    )


CorrectionMeasured = Annotated[
    CorrectionAngle | CorrectionSurface | CorrectionContact | CorrectionReseating,
    Field(discriminator="kind", description="What was measured."),
]


# The set-up ---------------------------------------------------------------------------------------
class CorrectionSinePlate(RequestModel):
    """A sine plate or bar, at the half angle or the face's, or, turned a quarter, 90° less it."""

    kind: Literal["sine-plate"]
    center_distance: CenterDistance
    base_step: SignedLength = Field(
        0.0,
        description="Height of the low roll's seat over the high roll's, in `units`: the stack at "
        "which the plate stands at zero.",
    )
    low_roll_hinged: bool = Field(
        False, description="True where the low roll is a hinge, so that no stack goes under it."
    )
    blocks: _Blocks | None = Field(
        None,
        description="Blocks under the high roll now, in `units`. Absent: the height that the angle "
        "asks for.",
        examples=[[2.0, 0.5]],
    )
    low_blocks: _Blocks | None = Field(
        None, description="Blocks under the low roll now, in `units`; with `blocks`."
    )
    turned_quarter: bool = Field(
        False,
        description="True where the work stood turned a quarter, its axis or base square to the "
        "plate's top: the plate then has 90° less its angle.",
    )


class CorrectionCompoundPlate(CompoundSizes):
    """A compound plate, the face level on it under a flat wheel."""

    kind: Literal["compound-plate"]
    base_blocks: _Blocks | None = Field(
        None, description="Blocks under the base plate's roll now, in `units`; absent as above."
    )
    upper_blocks: _Blocks | None = Field(
        None, description="Blocks under the upper plate's roll now, in `units`."
    )


class CorrectionSineDresser(RequestModel):
    """A wheel dressed to the angle by a dresser on blocks, the work's axis parallel to its own."""

    kind: Literal["sine-dresser"]
    center_distance: CenterDistance
    zero: DresserZero = "wheel-axis"
    blocks: _Blocks | None = Field(
        None, description="Blocks under the dresser's high roll now, in `units`."
    )
    low_blocks: _Blocks | None = Field(
        None, description="Blocks under its low roll now, in `units`; with `blocks`."
    )


class CorrectionScaleDresser(RequestModel):
    """A wheel dressed to the angle by a dresser with a scale."""

    kind: Literal["scale-dresser"]
    zero: DresserZero = "wheel-axis"
    graduation: Annotated[float, AngleInput(gt=0, le=5)] | None = Field(
        None, description="Smallest step that the scale shows, in degrees.", examples=["0 05"]
    )
    scale_reading_now: _ScaleReading | None = Field(
        None, description="Reading of the scale now, in degrees. Absent: what the angle asks for."
    )


class CorrectionSwivel(RequestModel):
    """A workhead or table swivelled by the half angle under a flat wheel."""

    kind: Literal["swivel"]
    graduation: Annotated[float, AngleInput(gt=0, le=5)] | None = Field(
        None, description="Smallest step that the scale shows, in degrees."
    )
    scale_reading_now: _ScaleReading | None = Field(
        None, description="Reading of the scale now, in degrees. Absent: the half angle."
    )
    scale_radius: Length | None = Field(
        None, description="Radius at which an indicator reads the swivel, in `units`."
    )


CorrectionSetUp = Annotated[
    CorrectionSinePlate
    | CorrectionCompoundPlate
    | CorrectionSineDresser
    | CorrectionScaleDresser
    | CorrectionSwivel,
    Field(discriminator="kind", description="The set-up by which it was ground."),
]


# What was seen ------------------------------------------------------------------------------------
class CorrectionObservations(RequestModel):
    """What was seen of the error. One left out is not stated: nothing is concluded from it."""

    repeats_on_second_stack: bool | None = Field(
        None, description="Whether the same error comes back on a second stack of that height."
    )
    grows_along_batch: bool | None = Field(
        None, description="Whether it grows from piece to piece, and falls back at a dress."
    )
    surface_form: Literal["straight", "crowned", "hollow"] | None = Field(
        None, description="How the ground surface runs from end to end under a knife edge."
    )
    changes_on_reseating: bool | None = Field(
        None, description="Whether it changes when the work is seated again."
    )
    follows_temperature: bool | None = Field(
        None, description="Whether it goes with the temperature of room, coolant or work."
    )
    repeats_when_measured_again: bool | None = Field(
        None, description="Whether the same is measured again, by a second means where there is."
    )


class JobsCorrectionRequest(BlockSupplyFields):
    """What was measured after grinding, the set-up, and the blocks to change it with."""

    measured: CorrectionMeasured
    work: CorrectionWork | None = Field(
        None, description="What was to be ground; needed unless a runout was measured."
    )
    set_up: CorrectionSetUp | None = Field(
        None, description="The set-up by which it was ground; absent, no setting is worked out."
    )
    observations: CorrectionObservations = Field(
        CorrectionObservations(), description="What was seen of the error."
    )
    max_blocks: Annotated[int, Count(ge=1, le=8)] = Field(
        6, description="Most blocks in the new stack, in both together where both are new."
    )
    setting_error_limit_arcsec: NonNegativeArcsec | None = Field(
        None,
        description="How far a setting changed so may be off by itself, ±, of the half angle or "
        "the face: films, seating, the scale; not stated where absent.",
        examples=[2.0],
    )
