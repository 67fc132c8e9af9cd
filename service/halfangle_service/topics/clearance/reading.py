"""Plate, fixture and wheel of a request, as the maths knows them, or the reason why not."""

from halfangle_service.errors import Impossible
from halfangle_service.topics.clearance.models import (
    ClearanceFixture,
    ClearancePlate,
    ClearanceWheel,
)
from halfangle_service.trade.clearance.assembly import Fixture, Head, Plate, TurningPart
from halfangle_service.trade.wording import plain


def _length(value: float) -> float:
    """A length below the least that a request may hold is none: the geometry would degenerate."""
    return value if value >= LEAST else 0.0


#: The least length that a request may hold where it must be more than nothing.
LEAST = 1e-6


def fixture_of(fixture: ClearanceFixture) -> Fixture:
    """The fixture as the maths knows it; refuses a shank that reaches the plate."""
    if fixture.shank_diameter / 2.0 >= fixture.axis_height:
        raise Impossible(
            f"A shank of {plain(fixture.shank_diameter)} reaches the plate, which is "
            f"{plain(fixture.axis_height)} under the axis.",
            fields={"fixture/shank_diameter": "should be less than twice axis_height"},
        )
    return Fixture(
        axis_height=fixture.axis_height,
        body_length=fixture.body_length,
        body_height=fixture.body_height,
        nose_radius=fixture.nose_diameter / 2.0,
        nose_length=_length(fixture.nose_length),
        stick_out=_length(fixture.stick_out),
        shank_radius=fixture.shank_diameter / 2.0,
        front_to_high_end=fixture.front_to_high_end,
        turning=tuple(
            TurningPart(part.name, part.diameter / 2.0, part.length, part.behind_face)
            for part in fixture.turning_parts
        ),
    )


def plate_of(plate: ClearancePlate) -> Plate:
    """The plate as the maths knows it; refuses figures that cannot belong to one plate."""
    if plate.center_distance > plate.length:
        raise Impossible(
            f"Rolls {plain(plate.center_distance)} apart do not lie under a plate "
            f"{plain(plate.length)} long.",
            fields={"plate/center_distance": "should be no more than the plate's length"},
        )
    if plate.closed_height < plate.thickness + plate.roll_diameter / 2.0:
        raise Impossible(
            f"A plate closed to {plain(plate.closed_height)} has no room for its rolls, whose "
            f"undersides lie {plain(plate.thickness + plate.roll_diameter / 2.0)} under its top.",
            fields={"plate/closed_height": "should be at least thickness + half a roll"},
        )
    spare = plate.length - plate.center_distance
    from_end = spare / 2.0 if plate.low_roll_from_end is None else plate.low_roll_from_end
    if from_end > spare:
        raise Impossible(
            f"With the low roll {plain(from_end)} from the end the high roll lies off the plate.",
            fields={"plate/low_roll_from_end": f"should be no more than {plain(spare)}"},
        )
    return Plate(
        plate.length,
        plate.thickness,
        plate.closed_height,
        plate.center_distance,
        plate.roll_diameter,
        from_end,
    )


def heads_of(wheel: ClearanceWheel) -> dict[str, Head]:
    """The head with the wheel new and, where given, worn."""
    diameters = {"new": wheel.diameter}
    if wheel.worn_diameter is not None:
        diameters["worn"] = wheel.worn_diameter
    for name, diameter in diameters.items():
        _require_head(wheel, "diameter" if name == "new" else "worn_diameter", diameter)
    guard = None
    if wheel.guard is not None:
        below = wheel.guard.lower_edge_below_spindle
        guard = (wheel.guard.length, wheel.guard.width, below)
    return {
        name: Head(
            diameter / 2.0, wheel.width, wheel.flange_diameter / 2.0, wheel.flange_width, guard
        )
        for name, diameter in diameters.items()
    }


def _require_head(wheel: ClearanceWheel, field: str, diameter: float) -> None:
    """Refuse a wheel no larger than its flanges, a grown one, and a guard that hangs below it."""
    if diameter > wheel.diameter:
        raise Impossible(
            f"A wheel of {plain(wheel.diameter)} does not wear to {plain(diameter)}.",
            fields={f"wheel/{field}": "should be no more than diameter"},
        )
    if diameter <= wheel.flange_diameter:
        raise Impossible(
            f"A wheel of {plain(diameter)} does not reach past flanges of "
            f"{plain(wheel.flange_diameter)}.",
            fields={f"wheel/{field}": "should be more than flange_diameter"},
        )
    if wheel.flange_width < wheel.width:
        raise Impossible(
            f"Flanges {plain(wheel.flange_width)} over all do not hold a wheel "
            f"{plain(wheel.width)} wide.",
            fields={"wheel/flange_width": "should be at least the wheel's width"},
        )
    if wheel.guard and wheel.guard.lower_edge_below_spindle >= diameter / 2.0:
        raise Impossible(
            "The guard's lower edge hangs below the wheel, which then reaches nothing.",
            fields={
                "wheel/guard/lower_edge_below_spindle": (
                    f"should be less than {plain(diameter / 2.0)}"
                )
            },
        )
