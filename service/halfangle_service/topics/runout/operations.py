"""The runout topic's operations: models to maths and back."""

import cmath
import math
from typing import Literal

import numpy as np

from halfangle_service.errors import Disagreement
from halfangle_service.fields import ARCSEC_PER_RADIAN, Angle
from halfangle_service.fields.advisories import Advisory, caution, note
from halfangle_service.operation import Operation, Outcome, Source
from halfangle_service.topics.runout import models as m
from halfangle_service.topics.runout.operations_form import OFF_CREST, V_BLOCK
from halfangle_service.topics.runout.operations_terms import CONVERT
from halfangle_service.trade.runout import budget as chain
from halfangle_service.trade.runout import harmonics, reversal

#: Spare readings from which on one stray reading stands out.
STRAY_NEEDS_SPARE = 2
_DERIVED = Source(
    citation="Derived here: eccentricity is a vector; a round section off by e shows e cos(φ - φ0) "
    "round a turn; an axis is a straight line.",
    standing="derived",
)
_LEVER = Source(
    citation="Cosine correction of a lever indicator: true = reading × cos(tip angle).",
    standing="common-practice-no-source",
)


def _clock(vector: complex) -> Angle:
    return Angle.of(math.degrees(cmath.phase(vector)) % 360.0)


def _vector(tir: float, high_spot: float) -> complex:
    return cmath.rect(tir / 2.0, math.radians(high_spot))


def indicate(request: m.RunoutIndicateRequest) -> Outcome[m.RunoutIndicateResult]:
    """Eccentricity and form from readings round a section."""
    tip_rad, half_rad = math.radians(request.tip_angle), math.radians(request.cone_half_angle)
    to_tip, to_axis = math.cos(tip_rad), math.cos(tip_rad) / math.cos(half_rad)
    angles = np.radians([r.angle for r in request.readings])
    read = np.array([r.reading for r in request.readings])
    noise = to_axis * request.resolution / math.sqrt(12.0)
    fit = harmonics.fit_harmonics(angles, read * to_axis, request.harmonics)
    harmonics.require_no_stray(angles, read * to_axis, fit, noise)
    e = fit.eccentricity
    left = read * to_axis - (e.real * np.cos(angles) + e.imag * np.sin(angles))
    z, scatter = request.station_from_apex, harmonics.reading_scatter(fit)
    by_step = harmonics.first_harmonic_uncertainty(fit, noise)
    by_scatter = None if scatter is None else harmonics.first_harmonic_uncertainty(fit, scatter)
    result = m.RunoutIndicateResult(
        eccentricity=abs(e),
        tir_from_eccentricity=2.0 * abs(e),
        high_spot=_clock(e),
        tap_from=_clock(e),
        tap_distance=abs(e),
        eccentricity_uncertainty=max(by_step, by_scatter or 0.0),
        uncertainty_by_resolution=by_step,
        uncertainty_by_scatter=by_scatter,
        tir_of_readings=float(np.ptp(read)) * to_tip,
        lobes=[_lobe(k, v) for k, v in enumerate(fit.amplitudes[1:], start=2)],
        residual_rms=float(np.sqrt(np.mean(fit.residuals**2))),
        tir_left_after_tapping=float(np.ptp(left)),
        sensed_station_from_apex=None if z is None else harmonics.sensed_station(z, half_rad),
    )
    return Outcome(result, _indicate_advice(result, harmonics.spare_readings(fit)))


def _indicate_advice(result: m.RunoutIndicateResult, spare: int) -> tuple[Advisory, ...]:
    given: list[Advisory] = []
    if result.eccentricity < 2.0 * result.eccentricity_uncertainty:
        message = "The eccentricity is within twice its uncertainty: its direction means little."
        given.append(caution("eccentricity-below-resolution", message))
    if spare < STRAY_NEEDS_SPARE:
        message = (
            f"With {spare} reading(s) to spare a stray reading cannot be told from form: read "
            f"at {STRAY_NEEDS_SPARE - spare} more angle(s)."
        )
        given.append(note("stray-not-told", message))
    return tuple(given)


def _lobe(order: int, vector: complex) -> m.RunoutLobe:
    turn = math.degrees(cmath.phase(vector)) % 360.0
    return m.RunoutLobe(order=order, amplitude=abs(vector), direction=Angle.of(turn / order))


def budget(request: m.RunoutBudgetRequest) -> Outcome[m.RunoutBudgetResult]:
    """Chain of contributors against a limit."""
    sent = request.contributors
    tirs = [chain.tir_at_distance(c.tir, c.tilt_tir, c.tilt_span, c.distance) for c in sent]
    whole = chain.RunoutBudget(
        tuple(chain.Contributor(c.name, tir) for c, tir in zip(sent, tirs, strict=True))
    )
    worst = whole.worst_case
    p50, p95, p99 = (whole.percentiles[percent] for percent in (50, 95, 99))
    mendable = [(tir, -i) for i, tir in enumerate(tirs) if sent[i].can_be_mended and tir > 0]
    fixed = [tir for tir, c in zip(tirs, sent, strict=True) if not c.can_be_mended]
    limit = request.limit_tir
    result = m.RunoutBudgetResult(
        shares=[
            m.RunoutShare(
                name=c.name,
                tir_at_station=tirs[i],
                rss_without_it=chain.root_sum_of_squares(tirs[:i] + tirs[i + 1 :]),
            )
            for i, c in enumerate(sent)
        ],
        worst_case_tir=worst,
        rss_tir=chain.root_sum_of_squares(tirs),
        best_clocking_tir=whole.best_case,
        percentile_50_tir=p50,
        percentile_95_tir=p95,
        percentile_99_tir=p99,
        mend_first=sent[-max(mendable)[1]].name if mendable else None,
        reachable=chain.worst_case(fixed) <= limit,
        verdict="holds in the worst case"
        if worst <= limit
        else "holds in 95 of 100"
        if p95 <= limit
        else "does not hold",
    )
    return Outcome(result)


def reverse(request: m.RunoutReversalRequest) -> Outcome[m.RunoutReversalResult]:
    """Socket and part told apart."""
    a, b = request.at_0, request.at_180
    socket, part = reversal.split(_vector(a.tir, a.high_spot), _vector(b.tir, b.high_spot))
    turn = math.degrees(cmath.phase(-socket) - cmath.phase(part)) % 360.0
    return Outcome(
        m.RunoutReversalResult(
            socket_tir=2.0 * abs(socket),
            socket_high_spot=_clock(socket),
            part_tir=2.0 * abs(part),
            part_high_spot=_clock(part),
            best_clocking=Angle.of(turn if socket and part else 0.0),
            best_tir=2.0 * abs(abs(socket) - abs(part)),
            worst_tir=2.0 * (abs(socket) + abs(part)),
        )
    )


def axis(request: m.RunoutAxisRequest) -> Outcome[m.RunoutAxisResult]:
    """Line of an axis from two sections."""
    near, far = request.near, request.far
    if abs(far.station - near.station) < 1e-6:
        raise Disagreement(
            "Both sections stand at the same station: no tilt can be told.",
            fields={"far/station": "should differ from near/station"},
        )
    e_1, e_2 = _vector(near.tir, near.high_spot), _vector(far.tir, far.high_spot)
    slope = (e_2 - e_1) / (far.station - near.station)
    at_pivot = reversal.along(e_1, near.station, e_2, far.station, request.pivot_station)
    found = [(z, reversal.along(e_1, near.station, e_2, far.station, z)) for z in request.stations]
    swing_near = slope * (near.station - request.pivot_station)
    swing_far = slope * (far.station - request.pivot_station)
    result = m.RunoutAxisResult(
        tilt_arcsec=math.atan(abs(slope)) * ARCSEC_PER_RADIAN,
        at_stations=[
            m.RunoutAtStation(
                station=z,
                tir=2.0 * abs(e),
                high_spot=_clock(e),
                tir_uncertainty=2.0
                * reversal.uncertainty_along(
                    near.eccentricity_uncertainty,
                    near.station,
                    far.eccentricity_uncertainty,
                    far.station,
                    z,
                ),
            )
            for z, e in found
        ],
        corrections=[
            _correction("swing", swing_near, swing_far),
            _correction("slide", at_pivot, at_pivot),
        ],
    )
    return Outcome(result)


def _correction(kind: Literal["swing", "slide"], near: complex, far: complex) -> m.RunoutCorrection:
    return m.RunoutCorrection(
        kind=kind, near_move=abs(near), far_move=abs(far), tap_from=_clock(far)
    )


OPERATIONS = (
    Operation(
        topic="runout",
        verb="indicate",
        title="Indicate a section true",
        summary="Readings round one section: eccentricity, high spot, how far to tap, from which "
        "side, and the ovality and lobes that no tapping removes.",
        request=m.RunoutIndicateRequest,
        result=m.RunoutIndicateResult,
        calculate=indicate,
        relations=(
            "reading(φ) = mean + Σ (a_k cos kφ + b_k sin kφ), least squares",
            "eccentricity = √(a_1² + b_1²); true = reading × cos(tip angle)",
            "square to a cone: eccentricity = amplitude / cos α, sensed at z / cos² α",
        ),
        sources=(_DERIVED, _LEVER),
        largest_request="720 readings, 15 harmonics",
        example={
            "units": "in",
            "resolution": 0.0001,
            "readings": [
                {"angle": 0, "reading": 0.0003},
                {"angle": 90, "reading": 0.0004},
                {"angle": 180, "reading": -0.0003},
                {"angle": 270, "reading": -0.0004},
            ],
        },
    ),
    Operation(
        topic="runout",
        verb="budget",
        title="Runout budget of a chain",
        summary="Adapter, socket, fixture and indicating, of unknown phases: worst case, root sum "
        "of squares, Monte Carlo percentiles, and what to mend first.",
        request=m.RunoutBudgetRequest,
        result=m.RunoutBudgetResult,
        calculate=budget,
        relations=("worst = Σ TIR", "RSS = √Σ TIR²", "best = max(0, 2 max TIR - Σ TIR)"),
        sources=(_DERIVED,),
        largest_request="20 contributors, 100,000 trials",
        heavy=True,
        example={
            "units": "in",
            "limit_tir": 0.0003,
            "contributors": [
                {"name": "adapter", "tir": 0.0001},
                {"name": "spin fixture", "tir": 0.00005},
                {"name": "indicating", "tir": 0.00005},
            ],
        },
    ),
    Operation(
        topic="runout",
        verb="reversal",
        title="Socket's error or the part's",
        summary="Two readings with the part turned half a turn in its socket: the runout of each, "
        "the best and the worst clocking.",
        request=m.RunoutReversalRequest,
        result=m.RunoutReversalResult,
        calculate=reverse,
        relations=("socket = (m_0 + m_180)/2", "part = (m_0 - m_180)/2"),
        sources=(_DERIVED,),
        example={
            "units": "mm",
            "at_0": {"tir": 0.01, "high_spot": 30},
            "at_180": {"tir": 0.004, "high_spot": 200},
        },
    ),
    Operation(
        topic="runout",
        verb="axis",
        title="Line of an axis from two sections",
        summary="Runout at two sections: tilt, runout at other stations, and the two corrections "
        "in the order in which to make them.",
        request=m.RunoutAxisRequest,
        result=m.RunoutAxisResult,
        calculate=axis,
        relations=(
            "e(z) = e1 + (e2 - e1)(z - z1)/(z2 - z1)",
            "tan(tilt) = |e2 - e1|/|z2 - z1|",
            "u(e) = √(((1 - t) u1)² + (t u2)²), t = (z - z1)/(z2 - z1)",
        ),
        sources=(_DERIVED,),
        example={
            "units": "in",
            "near": {"station": 1, "tir": 0.0006, "high_spot": 20},
            "far": {"station": 4, "tir": 0.001, "high_spot": 140},
            "stations": [5.5],
            "pivot_station": 0,
        },
    ),
    CONVERT,
    V_BLOCK,
    OFF_CREST,
)
