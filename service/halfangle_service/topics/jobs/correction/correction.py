"""The operation: from what was measured after grinding to the change, and what to expect then."""

from typing import Any

from halfangle_service.errors import Disagreement
from halfangle_service.fields.blocks import SOURCES
from halfangle_service.fields.choice import sent_of
from halfangle_service.fields.supply import Supply, read_supply
from halfangle_service.operation import Outcome, Source, operation
from halfangle_service.topics.jobs.correction.advice import (
    of_clocking,
    of_hinges_at_zero,
    of_settings,
)
from halfangle_service.topics.jobs.correction.causes import answer_of, observed
from halfangle_service.topics.jobs.correction.compound import (
    HingeAtZero,
    compound_settings,
    compound_slips,
)
from halfangle_service.topics.jobs.correction.one_angle import of_angle
from halfangle_service.topics.jobs.correction.request import (
    CorrectionCompoundFace,
    CorrectionCompoundPlate,
    CorrectionReseating,
    CorrectionSurface,
    JobsCorrectionRequest,
)
from halfangle_service.topics.jobs.correction.result import JobsCorrectionResult
from halfangle_service.topics.jobs.correction.seats import reseated
from halfangle_service.topics.jobs.correction.slips import Slips
from halfangle_service.trade.correction.causes import Seen

_DERIVED = Source(
    citation="Derived here: the error of a setting is taken as a constant offset, and the same "
    "setting changed by what it was off comes out right to the second order.",
    standing="derived",
)
_CONTACT = Source(
    citation="Derived here: two cones that touch at one end gape at the other by "
    "l (tan α_outer − tan α_inner); the blunter touches first.",
    standing="derived",
)
_CAUSES = Source(
    citation="Toolroom practice: which causes are met oftenest, and what tells them apart.",
    standing="common-practice-no-source",
)


@operation(
    "jobs.correction",
    relations=(
        "Δh = center_distance × (sin(angle wanted) − sin(angle measured)); of work turned a "
        "quarter both are 90° less its own",
        "expected: sin α = sin(wanted) + (height built − new_height) / center_distance",
        "scale: new reading = reading now + angle wanted − angle measured",
        "contact: tan α = tan α_gauge ± gap / length; marked share = film / (gap × cos α)",
        "socket = (m_0 + m_180)/2, part = (m_0 − m_180)/2",
        "leave it where |error| ≤ its expanded uncertainty",
        "a mistake explains it where |error − what it makes| ≤ that uncertainty",
    ),
    sources=(_DERIVED, _CONTACT, _CAUSES),
    example={
        "units": "in",
        "set": "inch-81",
        "work": {"kind": "cone", "included_angle": 60, "included_angle_tolerance_arcsec": 60},
        "measured": {
            "kind": "angle",
            "measured_included_angle": "59°58'",
            "measurement_error_limit_arcsec": 20,
        },
        "set_up": {"kind": "sine-plate", "center_distance": 5, "blocks": [2, 0.5]},
        "observations": {"repeats_on_second_stack": True, "grows_along_batch": False},
        "setting_error_limit_arcsec": 3,
    },
    largest_request="both stacks from a box of 500 blocks, 8 blocks each; the search is bounded",
    heavy=True,
)
def correction(request: JobsCorrectionRequest) -> Outcome[JobsCorrectionResult]:
    """Correction after a measurement.

    From a measured angle, a contact at one end or a runout read twice: the new stacks, dresser
    setting, swivel or clocking, what to expect then, when to leave it, and the likely causes with
    the check that tells each apart.
    """
    if isinstance(request.measured, CorrectionReseating):
        return _of_seats(request, request.measured)
    supply = _supply(request)
    error: float | None
    at_zero: tuple[HingeAtZero, ...] = ()
    if isinstance(request.measured, CorrectionSurface):
        result, error, at_zero = _of_surface(request, request.measured, supply)
    else:
        result, error = of_angle(request, request.measured, supply)
    advisories = () if supply is None else supply.advisories
    on_plates = of_hinges_at_zero(at_zero, request.units)
    return Outcome(result, (*advisories, *of_settings(result, error), *on_plates))


def _supply(request: JobsCorrectionRequest) -> Supply | None:
    """The blocks to build with; needed where the blocks that stand are named."""
    stacks = ("blocks", "low_blocks", "base_blocks", "upper_blocks")
    named = any(getattr(request.set_up, name, None) for name in stacks)
    return read_supply(request) if named or sent_of(request, *SOURCES) else None


# A runout -----------------------------------------------------------------------------------------
def _of_seats(
    request: JobsCorrectionRequest, measured: CorrectionReseating
) -> Outcome[JobsCorrectionResult]:
    """Socket told from part, and the clocking to take."""
    found = reseated(measured)
    seen = Seen("seat", turned=True, observed=observed(request.observations), found=found.found)
    result = answer_of(seen, found.leave_it, seats=found.seats, forecast=found.forecast)
    return Outcome(result, tuple(of_clocking(result)))


# A compound face ----------------------------------------------------------------------------------
def _of_surface(
    request: JobsCorrectionRequest, measured: CorrectionSurface, supply: Supply | None
) -> tuple[JobsCorrectionResult, float, tuple[HingeAtZero, ...]]:
    """Both stacks of a compound plate, and the larger of both errors in arc-seconds.

    With the plates that are to stand at zero and do not.
    """
    work, plate = request.work, request.set_up
    if not isinstance(work, CorrectionCompoundFace):
        raise Disagreement(
            "A surface in two views was measured; the work should be such a face.",
            fields={"work": "should be of kind compound-face"},
        )
    if not isinstance(plate, CorrectionCompoundPlate):
        raise Disagreement(
            "A face that slopes in both views is set on a compound plate.",
            fields={"set_up": "should be of kind compound-plate"},
        )
    slips = compound_slips(plate, work, measured, request.units, supply)
    told: dict[str, Any] = {"slips": slips.listed, "slips_found": slips.count}
    if slips.of_the_whole and slips.listed:
        largest = max(slips.listed[0].slip_errors_arcsec, key=abs)
        return answer_of(_seen(request, slips, largest), leave_it=False, **told), largest, ()
    change = compound_settings(
        plate,
        work,
        measured,
        request.units,
        supply,
        request.setting_error_limit_arcsec,
        request.max_blocks,
    )
    largest = max((s.angle_error_arcsec.value or 0.0 for s in change.settings), key=abs)
    leave = _together(tuple(setting.leave_it for setting in change.settings))
    shown: dict[str, Any] = {"settings": list(change.settings), "forecast": change.forecast}
    result = answer_of(_seen(request, slips, largest), leave, **told, **shown)
    return result, largest, change.at_zero


def _seen(request: JobsCorrectionRequest, slips: Slips, error_arcsec: float) -> Seen:
    """What is known of the error of a compound face."""
    return Seen(
        "compound-plate",
        turned=False,
        observed=observed(request.observations),
        error_arcsec=error_arcsec,
        found=slips.evidence,
    )


def _together(leave: tuple[bool | None, ...]) -> bool | None:
    """Whether all is to be left: not where one is to be changed, unknown where one is."""
    return False if False in leave else None if None in leave else True
