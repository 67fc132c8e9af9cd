"""Requests and results about center holes and their table."""

from typing import Annotated, Literal

from pydantic import Field

from halfangle_service.fields import (
    AngleInput,
    Length,
    LengthOut,
    RequestModel,
    ResultModel,
    SignedLength,
    Unit,
    Units,
)

HoleTypeName = Literal["A", "B", "R", "plain", "bell"]
HoleStanding = Literal["published", "from-memory"]


class CenterHoleRequest(RequestModel):
    """A center hole by its type or its key, and the diameter wanted at its mouth."""

    units: Units = Field(description="Unit of every length here and in the answer.")
    type: HoleTypeName | None = Field(
        None,
        description="Type: A, B or R (metric), plain or bell (inch). Send this for the smallest "
        "size that reaches the diameter, or `key` for one size.",
        examples=["A"],
    )
    key: str | None = Field(
        None,
        min_length=3,
        max_length=12,
        description="One size, as `GET /v1/centers/holes` lists it.",
        examples=["a-2.5"],
    )
    wanted_diameter: Length | None = Field(
        None,
        description="Diameter wanted at the mouth of the 60° cone, in `units`; the table's largest "
        "where it is not sent.",
        examples=[5.0],
    )
    included_angle: Annotated[float, AngleInput(ge=20, le=140)] = Field(
        60.0, description="Included angle of the cone, in degrees; 60 by every table served here."
    )
    chamfer_diameter: Length | None = Field(
        None,
        description="Diameter of the 120° protecting chamfer at the face, in `units`, for types B "
        "and bell; type B has the table's where it is not sent.",
    )
    ball_diameter: Length | None = Field(
        None, description="Ball for the check, in `units`; one that touches halfway if not sent."
    )
    height_over_ball: SignedLength | None = Field(
        None,
        description="Measured height of the ball's top over the face, in `units`; negative below "
        "it. Needs `ball_diameter`.",
    )


class CenterHoleBall(ResultModel):
    """The check over a ball."""

    ball_diameter: LengthOut = Field(description="Diameter of the ball.")
    contact_diameter: LengthOut = Field(description="Circle on which it touches the cone: d cos α.")
    height_over_face: LengthOut = Field(
        description="Height of its top over the face, chamfer counted; negative below the face."
    )
    height_per_diameter: Annotated[float, Unit("length_per_length")] = Field(
        description="Change of that height for a unit of mouth diameter."
    )
    found_diameter: LengthOut | None = Field(
        description="Mouth diameter by the measured height; None where none was sent."
    )
    found_less_wanted: LengthOut | None = Field(
        description="Found less wanted diameter; None where no height was sent."
    )


class CenterHoleResult(ResultModel):
    """Pilot, countersink and depth."""

    key: str = Field(description="Key of the size used.")
    type: HoleTypeName = Field(description="Its type.")
    pilot_diameter: LengthOut = Field(description="Diameter of the pilot.")
    mouth_diameter: LengthOut = Field(description="Diameter at the mouth of the cone.")
    largest_mouth_diameter: LengthOut = Field(description="Largest that the table gives this size.")
    cone_depth: LengthOut | None = Field(
        description="Depth of the cone, pilot's edge to mouth; None for type R, whose wall is an "
        "arc."
    )
    chamfer_diameter: LengthOut | None = Field(description="Protecting chamfer at the face.")
    chamfer_depth: LengthOut = Field(description="Depth of the protecting chamfer; 0 without one.")
    depth_to_pilot_edge: LengthOut | None = Field(
        description="Face to the edge of the pilot; None for type R."
    )
    tool_depth_min: LengthOut | None = Field(
        description="Face to the drill's tip with the shortest pilot of the table."
    )
    tool_depth_max: LengthOut | None = Field(
        description="Face to the drill's tip with the longest pilot of the table."
    )
    table_minimum_depth: LengthOut | None = Field(
        description="Least depth of the whole hole by the table, at its full mouth; None where it "
        "gives none."
    )
    table_cut_off: LengthOut | None = Field(
        description="Length to cut off where the hole may not stay; None where it gives none."
    )
    ball: CenterHoleBall | None = Field(description="The check over a ball; None for type R.")
    standing: HoleStanding = Field(description="How the hole's dimensions are had.")
    drill_standing: HoleStanding = Field(
        description="How the pilot's length is had, on which the tool depths stand."
    )


class CenterHoleRow(ResultModel):
    """One row of the table, in its own units."""

    key: str = Field(description="Key to send as `key`.", examples=["a-2.5"])
    type: HoleTypeName = Field(description="A, B, R, plain or bell.")
    units: Units = Field(description="Unit of its lengths.")
    pilot_diameter: LengthOut = Field(description="Diameter of the pilot.")
    cone_diameter: LengthOut = Field(
        description="Largest diameter of the 60° cone (of the arc, for type R)."
    )
    chamfer_diameter: LengthOut | None = Field(description="Protecting chamfer, 120°; type B.")
    chamfer_depth: LengthOut | None = Field(description="Its depth by the table; type B.")
    minimum_depth: LengthOut | None = Field(description="Least depth of the whole hole.")
    cut_off: LengthOut | None = Field(description="Length to cut off where the hole may not stay.")
    pilot_length_min: LengthOut | None = Field(description="Shortest pilot of the drill.")
    pilot_length_max: LengthOut | None = Field(description="Longest pilot of the drill.")
    body_diameter: LengthOut = Field(description="Body of the drill.")
    arc_radius_min: LengthOut | None = Field(description="Smallest radius of the arc; type R.")
    arc_radius_max: LengthOut | None = Field(description="Largest radius of the arc; type R.")
    source: str = Field(description="Where the row comes from.")
    standing: HoleStanding = Field(description="How the hole's dimensions are had.")
    drill_standing: HoleStanding = Field(description="How pilot lengths and body are had.")


class CenterHoleList(ResultModel):
    """All center holes, by type and size."""

    holes: list[CenterHoleRow] = Field(description="The rows.")
