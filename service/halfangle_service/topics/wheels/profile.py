"""The dressed profile, as the answer writes it."""

from typing import Literal

from pydantic import Field

from halfangle_service.fields import LengthOut, ResultModel, Units
from halfangle_service.trade.wheel.profile import Blend, Point, Profile
from halfangle_service.trade.wording import plain


class ProfilePoint(ResultModel):
    """A point of the dressed profile."""

    x: LengthOut = Field(description="Along the wheel's axis, from one side of the wheel.")
    radial_depth: LengthOut = Field(description="Below the periphery, radially.")


class ProfileBlend(ResultModel):
    """A radius that blends a corner, with its tangent points."""

    corner: Literal["edge", "root", "apex", "other-edge", "other-root"] = Field(
        description="Which corner: of flank and periphery, of flank and land, or of two flanks."
    )
    radius: LengthOut = Field(description="Radius.")
    center: ProfilePoint = Field(description="Center of the arc.")
    first_tangent: ProfilePoint = Field(description="Where the arc begins.")
    second_tangent: ProfilePoint = Field(description="Where the arc ends.")
    convex: bool = Field(description="True where the wheel is rounded, false in a root.")


def point_of(at: Point) -> ProfilePoint:
    """A point of the profile, its y turned into a depth."""
    return ProfilePoint(x=at[0], radial_depth=-at[1] if at[1] else 0.0)


def blend_of(blend: Blend) -> ProfileBlend:
    """A blended corner by its token, with its arc."""
    return ProfileBlend(
        corner=blend.name.replace(" ", "-"),
        radius=blend.radius,
        center=point_of(blend.center),
        first_tangent=point_of(blend.before),
        second_tangent=point_of(blend.after),
        # The center of a rounded edge lies in the wheel, below the arc.
        convex=blend.center[1] < blend.before[1],
    )


def profile_csv(profile: Profile, units: Units) -> str:
    """The profile's points as CSV (RFC 4180), lengths in `units`, which its header names."""
    rows = [
        f"x_{units},depth_{units}",
        *(f"{plain(x, 9)},{plain(abs(y), 9)}" for x, y in profile.points()),
    ]
    return "\r\n".join(rows) + "\r\n"
