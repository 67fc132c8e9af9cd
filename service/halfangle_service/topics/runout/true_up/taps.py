"""The operation: a part tapped true from raw readings, and what to mind."""

from collections.abc import Iterator
from typing import Literal

from halfangle_service.fields.advisories import Advisory, caution, note
from halfangle_service.operation import Outcome, Source, operation
from halfangle_service.topics.runout.readings import DOUBT, LEVER, steps_taken, stray_not_told
from halfangle_service.topics.runout.sources import VECTORS
from halfangle_service.topics.runout.true_up.expected import true_up_of
from halfangle_service.topics.runout.true_up.request import RunoutTrueUpRequest
from halfangle_service.topics.runout.true_up.result import RunoutTrueUpResult
from halfangle_service.topics.runout.true_up.work import Work, taps_of, work_of
from halfangle_service.trade.wording import figure, small_length

#: Full movement of the form, in steps of the indicator, that is more than rounding of readings.
FORM_STEPS = 2.0
#: And in standard deviations of one reading: what some tens of readings of nothing span.
FORM_DEVIATIONS = 6.0
_SECTIONS: tuple[Literal["near", "far"], ...] = ("near", "far")
_RICE = Source(
    citation="Derived here: two unlike taps, each a line along the axis, end tilt and offset; the "
    "length of a vector whose components err alike follows Rice's law.",
    standing="derived",
)


@operation(
    "runout.true-up",
    relations=(
        "reading(φ) = mean + Σ (a_k cos kφ + b_k sin kφ), least squares",
        "e(z) = e1 + (e2 - e1)(z - z1)/(z2 - z1) = Σ move_i × share_i(z)",
        "share(z) = (z - pivot)/(tapped - pivot) of a swing, 1 of a slide",
        "P(TIR ≤ limit) = Rice's law of |left|, u",
        "in a bore the center lies opposite to the high spot",
    ),
    sources=(VECTORS, LEVER, DOUBT, _RICE),
    largest_request="2 sections of 180 readings, 15 harmonics, 100 stations",
    heavy=True,
    example={
        "units": "in",
        "surface": "external",
        "indicator_resolution": 0.00005,
        "repeatability": 0.00002,
        "tap_error_limit": 0.00005,
        "limit_tir": 0.0003,
        "near": {
            "station": 1,
            "readings": [
                {"angular_position": 0, "reading": 0.0003},
                {"angular_position": 90, "reading": 0.0004},
                {"angular_position": 180, "reading": -0.0003},
                {"angular_position": 270, "reading": -0.0004},
            ],
        },
        "far": {
            "station": 4,
            "readings": [
                {"angular_position": 0, "reading": -0.0005},
                {"angular_position": 90, "reading": 0.0008},
                {"angular_position": 180, "reading": 0.0005},
                {"angular_position": 270, "reading": -0.0008},
            ],
        },
        "tap_places": [
            {"kind": "swing", "station": 4, "pivot_station": 0},
            {"kind": "slide", "station": 0},
        ],
        "stations": [5.5],
        "formats": ["svg"],
    },
)
def true_up(request: RunoutTrueUpRequest) -> Outcome[RunoutTrueUpResult]:
    """True up a part by taps.

    Raw readings round two sections of a shaft or a bore: the taps in order, from which side, how
    far and with which reading to expect after each, when to leave it, and the runout to expect at
    other stations.
    """
    work = work_of(request)
    result = true_up_of(work, taps_of(work))
    return Outcome(result, tuple(_advice(work, result)))


# What to mind -------------------------------------------------------------------------------------
def _advice(work: Work, result: RunoutTrueUpResult) -> Iterator[Advisory]:
    yield from _of_taps(work, result)
    for name, sent, section, shown in zip(
        _SECTIONS, work.sent, work.sections, (result.near, result.far), strict=True
    ):
        yield from steps_taken(sent, f" at the {name} section")
        yield from stray_not_told(section.fit.spare, f" at the {name} section")
        yield from _of_form(work, name, shown.tir_left_after_tapping)


def _of_taps(work: Work, result: RunoutTrueUpResult) -> Iterator[Advisory]:
    """Say which taps to leave, and what one tap alone leaves."""
    units = work.request.units
    if result.leave_it and {at.verdict for at in result.at_stations} == {"conforming"}:
        yield note("limit-kept-already", "Every station keeps the limit as it is: leave it.")
        return
    for tap in result.taps:
        if tap.leave_it:
            yield note(
                "tap-within-uncertainty",
                f"A {tap.kind} of {small_length(tap.tap_distance.value or 0.0, units)} is no more "
                "than its uncertainty, "
                f"{small_length(tap.tap_distance.expanded_uncertainty or 0.0, units)}: leave it.",
            )
    if sum(not tap.leave_it for tap in result.taps) == 1:
        last = result.taps[-1]
        yield note(
            "one-station-true",
            f"One tap brings the station at {figure(work.request.stations[0], units)} true and no "
            f"other: it leaves TIR {small_length(last.near.tir, units)} at the near section and "
            f"{small_length(last.far.tir, units)} at the far one.",
        )


def _of_form(work: Work, name: str, left: float | None) -> Iterator[Advisory]:
    """Say what form no tap removes, and where it passes the limit by itself."""
    request = work.request
    if left is None:
        return
    words = f"Form leaves {small_length(left, request.units)} full movement at the {name} section"
    if request.limit_tir is not None and left > request.limit_tir:
        yield caution(
            "form-past-limit",
            f"{words}, past the limit of TIR: no tapping mends that, only grinding or lapping the "
            "part round.",
        )
    elif left > FORM_STEPS * request.indicator_resolution and left > FORM_DEVIATIONS * (
        request.repeatability or 0.0
    ):
        yield note(
            "form-not-tapped-out",
            f"{words}: ovality and lobes stay whatever is tapped. Stop at the eccentricity, not at "
            "a still hand of the indicator.",
        )
