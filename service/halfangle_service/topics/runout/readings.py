"""Readings round a section, as every request that takes them states them."""

import math
from collections.abc import Iterator
from typing import Annotated

import numpy as np
from pydantic import Field

from halfangle_service.errors import Disagreement
from halfangle_service.fields import (
    AngleInput,
    Count,
    Length,
    NonNegativeLength,
    RequestModel,
    SignedLength,
    UnitsField,
)
from halfangle_service.fields.advisories import Advisory, note
from halfangle_service.fields.runout import HighSpot, SurfaceField
from halfangle_service.fields.slopes import SlopeFields, slope_if_stated
from halfangle_service.operation import Source
from halfangle_service.trade.runout.harmonics import MOST_HARMONICS
from halfangle_service.trade.runout.section import Indicator, Section, read_section
from halfangle_service.trade.wording import plain

#: Spare readings from which on one stray reading stands out.
STRAY_NEEDS_SPARE = 2
#: An eccentricity and a mean fit three readings, whatever the form.
THREE_READINGS = 3
#: More readings than this take more than some milliseconds.
MANY_READINGS = 72
LEVER = Source(
    citation="Cosine correction of a lever indicator: true = reading × cos(tip angle).",
    standing="common-practice-no-source",
)
DOUBT = Source(
    citation="JCGM 100:2008, G.3 and G.4: Student's distribution where readings are few. Derived "
    "here: opposed readings share their rounding; a direction is worth ± asin(U/e).",
    standing="derived",
)


class RunoutReading(RequestModel):
    """One reading of the indicator."""

    angular_position: HighSpot | None = Field(
        None,
        description="Place under the indicator, in degrees, as marked on the part: counted from "
        "one mark, seen from one end, in the same sense at every section. Left out of all "
        "readings, these stand at equal steps of a whole turn, the first at 0°.",
        examples=[90],
    )
    reading: SignedLength = Field(
        description="Indicator reading in `units`; more is metal nearer to the indicator: a high "
        "spot of a shaft, the near wall of a bore.",
        examples=[0.0004],
    )


class RunoutReadingsFields(SlopeFields):
    """Readings round one section.

    The slope is that of a cone indicated square to its surface; without one the indicator is square
    to the axis.
    """

    readings: list[RunoutReading] = Field(
        min_length=3, max_length=720, description="Readings at any angles, each angle once."
    )

    def angular_positions(self, path: str = "") -> list[float]:
        """Angle of each reading, in degrees: as stated, or by equal steps where none states it.

        `path` is that of the object that holds the readings. Raises Disagreement where some do.
        """
        stated = [reading.angular_position for reading in self.readings]
        if all(angle is None for angle in stated):
            return [360.0 * place / len(stated) for place in range(len(stated))]
        missing = [
            f"{path}readings/{place}/angular_position"
            for place, angle in enumerate(stated)
            if angle is None
        ]
        if missing:
            raise Disagreement(
                "Some readings state their angle and some do not: state it of all, or of none "
                "where they stand at equal steps from 0°.",
                fields=dict.fromkeys(missing, "is not stated, as it is of other readings"),
            )
        return [angle for angle in stated if angle is not None]


class RunoutIndicatorFields(RequestModel):
    """The indicator, what it reads, and how many harmonics are fitted to that."""

    units: UnitsField
    surface: SurfaceField
    harmonics: Annotated[int, Count(ge=1, le=MOST_HARMONICS)] = Field(
        1, description="Harmonics to fit: 1 eccentricity, 2 ovality, 3 and more lobes."
    )
    indicator_resolution: Length = Field(
        description="Resolution of the indicator, in `units`.", examples=[0.0001]
    )
    repeatability: NonNegativeLength | None = Field(
        None,
        description="Standard deviation of one reading, by reading one place several times, in "
        "`units`. Not stated, it is judged by what as many harmonics as the readings carry leave "
        "of them; of four readings ovality is then taken for scatter.",
        examples=[0.00003],
    )
    tip_angle: Annotated[float, AngleInput(ge=0, le=75, measured=True)] = Field(
        0.0,
        description="Angle of a lever indicator's tip to the surface, in degrees; 0 for a plunger "
        "or a tip that corrects itself.",
    )


def to_axis_of(at: RunoutReadingsFields, by: RunoutIndicatorFields, *, path: str = "") -> float:
    """What turns a movement on the dial into one square to the axis: cos(tip) / cos α."""
    slope = slope_if_stated(at, path=path)
    half_rad = 0.0 if slope is None else slope.half_angle_rad
    return math.cos(math.radians(by.tip_angle)) / math.cos(half_rad)


def section_of(at: RunoutReadingsFields, by: RunoutIndicatorFields, *, path: str = "") -> Section:
    """The section as it was read; refuses readings that contradict one another, by index.

    `path` is that of the object that holds the readings, such as `near/`.
    """
    return read_section(
        np.radians(at.angular_positions(path)),
        np.array([r.reading for r in at.readings]),
        Indicator(by.indicator_resolution, by.repeatability, to_axis_of(at, by, path=path)),
        by.harmonics,
        path=path,
    )


def steps_taken(at: RunoutReadingsFields, where: str = "") -> Iterator[Advisory]:
    """Say at which angles readings were taken to stand, where none states its own."""
    if all(reading.angular_position is None for reading in at.readings):
        count = len(at.readings)
        yield note(
            "taken-at-equal-steps",
            f"No reading{where} states its angle: the {count} were taken at equal steps of "
            f"{plain(360.0 / count)}° from 0°. One more at the end of the turn, where the first "
            "was read, is not sent.",
        )


def stray_not_told(spare: int, where: str = "") -> Iterator[Advisory]:
    """Note that a stray reading cannot stand out from so few; `where` says of which."""
    if spare < STRAY_NEEDS_SPARE:
        yield note(
            "stray-not-told",
            f"Readings to spare{where}: {spare}. With fewer than {STRAY_NEEDS_SPARE} a stray "
            "reading "
            f"cannot be told from form: read at more angles, {STRAY_NEEDS_SPARE - spare} at least.",
        )
