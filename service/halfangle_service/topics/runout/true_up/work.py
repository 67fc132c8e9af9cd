"""The work as it was read, and which taps to make of those that can be made."""

import math
from dataclasses import dataclass, replace

import numpy as np

from halfangle_service.errors import Disagreement
from halfangle_service.topics.runout.readings import THREE_READINGS, section_of, to_axis_of
from halfangle_service.topics.runout.true_up.request import RunoutTrueUpRequest, RunoutTrueUpSection
from halfangle_service.trade.runout import true_up
from halfangle_service.trade.runout.harmonics import Floats
from halfangle_service.trade.runout.section import Section
from halfangle_service.trade.runout.true_up import Line, Tap, TapPlace
from halfangle_service.trade.runout.vectors import center_of, difference
from halfangle_service.trade.uncertainty import Budget, Verdict

#: Sections, or a tap and its pivot, closer than this, in either unit, stand at one station.
SAME_STATION = 1e-6
#: Past this a tap is no small movement any more, and most likely a unit was mistaken.
LARGEST_TILT_RAD = math.radians(1.0)


@dataclass(frozen=True, slots=True)
class Work:
    """The work as it was read, and the taps to make of those that can be made."""

    request: RunoutTrueUpRequest
    sections: tuple[Section, Section]
    to_axis: tuple[float, float]
    line: Line
    places: tuple[TapPlace, ...]
    budgets: tuple[Budget, Budget]

    @property
    def sent(self) -> tuple[RunoutTrueUpSection, RunoutTrueUpSection]:
        """Both sections as the request has them."""
        return self.request.near, self.request.far

    @property
    def to_surface(self) -> float:
        """What turns a movement on the dial into one square to the surface: cos(tip)."""
        return math.cos(math.radians(self.request.tip_angle))

    def read(self, end: int) -> Floats:
        """Readings of a section as they stood on the dial."""
        return np.array([r.reading for r in self.sent[end].readings])

    @property
    def form_past_limit(self) -> bool:
        """Whether a section's form passes the limit by itself: no part so runs true, tapped or not.

        Of three readings it is not known.
        """
        limit = self.request.limit_tir
        return limit is not None and any(
            len(sent.readings) > THREE_READINGS and section.left_after_tapping > limit
            for sent, section in zip(self.sent, self.sections, strict=True)
        )

    def budget_at(self, station: float) -> Budget:
        """Budget of the axis at a station, in any direction."""
        return true_up.shares_at(self.line, station).budget(*self.budgets)


def work_of(request: RunoutTrueUpRequest) -> Work:
    """Read both sections; refuses stations and places that tell or move nothing."""
    near, far = request.near, request.far
    if abs(far.station - near.station) < SAME_STATION:
        raise Disagreement(
            "Both sections stand at the same station: no tilt can be told.",
            fields={"far/station": "should differ from near/station"},
        )
    places = tuple(_place(request, place) for place in range(len(request.tap_places)))
    sections = section_of(near, request, path="near/"), section_of(far, request, path="far/")
    e_1, e_2 = (center_of(section.eccentricity, request.surface) for section in sections)
    line = Line(near.station, e_1, far.station, e_2)
    _require_small_tilt(line)
    to_axis = to_axis_of(near, request), to_axis_of(far, request)
    of_near, of_far = (true_up.in_any_direction(*section.budgets()) for section in sections)
    return Work(request, sections, to_axis, line, places, (of_near, of_far))


def _place(request: RunoutTrueUpRequest, number: int) -> TapPlace:
    """A place to tap; refuses a swing without a pivot, or at it, and a slide with one."""
    sent, path = request.tap_places[number], f"tap_places/{number}"
    if sent.kind == "swing" and sent.pivot_station is None:
        raise Disagreement(
            "A swing turns the work about some station, and none was sent.",
            fields={f"{path}/pivot_station": "is needed where kind is swing"},
        )
    if sent.kind == "slide" and sent.pivot_station is not None:
        raise Disagreement(
            "A slide moves the work whole, about no station.",
            fields={f"{path}/pivot_station": "should be left out where kind is slide"},
        )
    if sent.pivot_station is not None and abs(sent.station - sent.pivot_station) < SAME_STATION:
        raise Disagreement(
            "Tapped at its pivot the work does not swing.",
            fields={f"{path}/station": "should differ from pivot_station"},
        )
    return TapPlace(sent.station, sent.pivot_station, path)


def _require_small_tilt(line: Line) -> None:
    """Refuse an axis that no holding tilts so far: stations and readings are of unlike units."""
    tilt = tilt_rad(line)
    if tilt > LARGEST_TILT_RAD:
        raise Disagreement(
            f"By these readings the axis is tilted by {math.degrees(tilt):.2f}°: past "
            f"{math.degrees(LARGEST_TILT_RAD):.0f}° nothing is tapped true.",
            fields={
                "near/station": "should be in `units`, as the readings are",
                "far/station": "should be in `units`, as the readings are",
            },
        )


def tilt_rad(line: Line) -> float:
    """Angle between the axis and the spindle's, in radians."""
    return math.atan(abs(difference(line.e_2, line.e_1)) / abs(line.z_2 - line.z_1))


def taps_of(work: Work) -> tuple[Tap, ...]:
    """The taps in order; none is made where every station keeps the limit as it is."""
    found = true_up.taps_for(work.line, work.places, work.request.stations[0], *work.budgets)
    for tap in found:
        _require_small_swing(work, tap)
    kept = {verdict_at(work, station) for station in work.request.stations} == {"conforming"}
    return tuple(replace(tap, made=False) for tap in found) if kept else found


def _require_small_swing(work: Work, tap: Tap) -> None:
    """Refuse a swing that no holding gives: both places then move the axis almost alike."""
    place, move = tap.place, abs(tap.shares.move(work.line))
    if tap.made and place.pivot is not None:
        swing = math.atan(move / abs(place.station - place.pivot))
        if swing > LARGEST_TILT_RAD:
            raise Disagreement(
                f"Tapped there the work would have to swing by {math.degrees(swing):.2f}°: the "
                "places tapped hardly tell tilt from offset, or the pivot is no pivot.",
                fields={f"{place.path}/pivot_station": "should be where the work is held"},
            )


def verdict_at(work: Work, station: float) -> Verdict | None:
    """Whether a station keeps the limit as it is; None without a limit.

    By eccentricity; nothing is proved where the form that was read passes the limit by itself.
    """
    limit = work.request.limit_tir
    if limit is None:
        return None
    budget = work.budget_at(station)
    found = true_up.verdict_within(work.line.at(station), budget, limit / 2.0)
    unsure = budget.not_stated or work.form_past_limit
    return "not-provable" if found == "conforming" and unsure else found
