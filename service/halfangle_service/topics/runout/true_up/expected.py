"""What to expect after each tap, and at other stations."""

from collections.abc import Sequence

import numpy as np

from halfangle_service.fields import ARCSEC_PER_RADIAN, Direction
from halfangle_service.fields.drawings.asked import is_drawn
from halfangle_service.fields.runout import direction_estimate, left_estimate, length_estimate
from halfangle_service.topics.runout.indicate import form_of
from halfangle_service.topics.runout.readings import THREE_READINGS
from halfangle_service.topics.runout.true_up.request import RunoutTapPlace
from halfangle_service.topics.runout.true_up.result import (
    RunoutAfterTap,
    RunoutSectionRead,
    RunoutTap,
    RunoutTrueUpAtStation,
    RunoutTrueUpResult,
)
from halfangle_service.topics.runout.true_up.work import Work, tilt_rad, verdict_at
from halfangle_service.trade.runout.drawing import SectionRead, runout_svg
from halfangle_service.trade.runout.true_up import (
    Line,
    Tap,
    by_tapping,
    tapped,
    verdict_within,
)
from halfangle_service.trade.runout.vectors import ROUNDING, center_of, direction
from halfangle_service.trade.uncertainty import Budget, Forecast, forecast_by


def true_up_of(work: Work, found: Sequence[Tap]) -> RunoutTrueUpResult:
    """Write each tap with what is left after it, in turn."""
    request, line = work.request, work.line
    near, far = (_section_read(work, end) for end in (0, 1))
    written: list[RunoutTap] = []
    for number, tap in enumerate(found):
        move = tap.shares.move(work.line)
        before, line = line, tapped(line, tap.place, move) if tap.made else line
        written.append(_tap(work, request.tap_places[number], tap, (before, line)))
    return RunoutTrueUpResult(
        near=near,
        far=far,
        tilt_arcsec=tilt_rad(work.line) * ARCSEC_PER_RADIAN,
        leave_it=all(tap.leave_it for tap in written),
        taps=written,
        at_stations=[_at_station(work, found, line, station) for station in request.stations],
        svg=_drawing(work, written) if is_drawn(request) else None,
    )


def _drawing(work: Work, taps: Sequence[RunoutTap]) -> str:
    """Both sections, each with the taps that are made nearer to it than to the other."""
    near, far = (sent.station for sent in work.sent)
    shown: tuple[list[tuple[str, float]], list[tuple[str, float]]] = ([], [])
    for number, tap in enumerate(taps, start=1):
        if tap.tap_from is not None and not tap.leave_it:
            end = int(abs(tap.station - far) < abs(tap.station - near))
            shown[end].append((f"tap {number}: {tap.kind}", tap.tap_from.degrees))
    sections = [
        SectionRead(
            name,
            sent.angular_positions(),
            section.from_mean,
            section.eccentricity,
            work.request.surface,
            here,
        )
        for name, sent, section, here in zip(
            ("Near section", "Far section"), work.sent, work.sections, shown, strict=True
        )
    ]
    return runout_svg(sections, work.request.units)


def _section_read(work: Work, end: int) -> RunoutSectionRead:
    section, sent = work.sections[end], work.sent[end]
    along, across = section.budgets()
    return RunoutSectionRead(
        station=sent.station,
        eccentricity=length_estimate(section.eccentricity, along),
        tir_from_eccentricity=2.0 * abs(section.eccentricity),
        high_spot=direction_estimate(section.eccentricity, across),
        tir_of_readings=float(np.ptp(work.read(end))) * work.to_surface,
        form=form_of(section.fit),
        tir_left_after_tapping=section.left_after_tapping
        if len(sent.readings) > THREE_READINGS
        else None,
    )


def _tap(work: Work, sent: RunoutTapPlace, tap: Tap, lines: tuple[Line, Line]) -> RunoutTap:
    """One tap as an answer gives it; `lines` are the axis before and after it."""
    move = tap.shares.move(work.line)
    near, far = (_after(work, end, tap, lines) for end in (0, 1))
    return RunoutTap(
        kind=sent.kind,
        station=sent.station,
        pivot_station=sent.pivot_station,
        leave_it=not tap.made,
        tap_from=Direction.of(direction(move)),
        tap_distance=length_estimate(move, tap.shares.budget(*work.budgets)),
        near=near,
        far=far,
    )


def _after(work: Work, end: int, tap: Tap, lines: tuple[Line, Line]) -> RunoutAfterTap:
    """What a section should read after a tap."""
    before, after = (line.vectors[end] for line in lines)
    surface = work.request.surface
    # What the section shows by all taps so far, on the dial.
    shown = center_of(after - work.line.vectors[end], surface) / work.to_axis[end]
    angles = work.sections[end].known.angles_rad
    read = work.read(end)
    readings = read + (shown * np.exp(-1j * angles)).real
    readings[np.abs(readings) < ROUNDING * np.max(np.abs(read))] = 0.0
    moved = center_of(after - before, surface) / work.to_axis[end]
    toward = tap.shares.move(work.line)
    from_side = toward / abs(toward) if toward else 1.0
    return RunoutAfterTap(
        tir=2.0 * abs(after),
        high_spot=Direction.of(direction(center_of(after, surface))),
        indicator_change=(moved * from_side.conjugate()).real,
        expected_readings=[float(reading) for reading in readings],
        tir_of_readings=float(np.ptp(readings)) * work.to_surface,
    )


def _at_station(
    work: Work, found: Sequence[Tap], line: Line, station: float
) -> RunoutTrueUpAtStation:
    """Runout at a station, before the taps and after them; `line` is the axis after them."""
    now, budget = work.line.at(station), work.budget_at(station)
    after, left = line.at(station), _left_budget(work, found, station)
    return RunoutTrueUpAtStation(
        station=station,
        tir=length_estimate(now, budget, per_eccentricity=2.0),
        high_spot=direction_estimate(now, budget, work.request.surface),
        verdict=verdict_at(work, station),
        tir_after=left_estimate(after, left, per_eccentricity=2.0),
        forecast=_forecast(work, after, left),
    )


def _left_budget(work: Work, found: Sequence[Tap], station: float) -> Budget:
    """Budget of what is left at a station: how well it was known, and how far the taps may miss."""
    known = work.budget_at(station)
    tapping = by_tapping(
        work.request.tap_error_limit,
        [(tap.place.share(station), tap.place.path) for tap in found if tap.made],
    )
    return Budget(
        (*known.contributions, *tapping.contributions),
        not_stated=(*known.not_stated, *tapping.not_stated),
    )


def _forecast(work: Work, left: complex, budget: Budget) -> Forecast | None:
    """Whether the taps keep the limit; None without a limit."""
    limit = work.request.limit_tir
    if limit is None:
        return None
    found = forecast_by(verdict_within(left, budget, limit / 2.0), budget)
    return "may-not-hold" if found == "holds" and work.form_past_limit else found
