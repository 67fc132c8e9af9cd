"""One angle as it was measured, of a cone or a face, and the setting that it was ground by."""

from typing import Any

from halfangle_service.errors import Disagreement
from halfangle_service.fields.estimate import ArcsecEstimate, estimate
from halfangle_service.fields.supply import Supply
from halfangle_service.topics.jobs.correction.causes import answer_of, observed
from halfangle_service.topics.jobs.correction.measured import (
    Deviation,
    deviation_of,
    within_uncertainty,
)
from halfangle_service.topics.jobs.correction.request import (
    CorrectionAngle,
    CorrectionCompoundFace,
    CorrectionCompoundPlate,
    CorrectionCone,
    CorrectionContact,
    CorrectionScaleDresser,
    CorrectionSineDresser,
    CorrectionSinePlate,
    CorrectionSwivel,
    JobsCorrectionRequest,
)
from halfangle_service.topics.jobs.correction.result import (
    CorrectionSetting,
    JobsCorrectionResult,
    Sense,
    SettingOf,
)
from halfangle_service.topics.jobs.correction.settings import (
    Shown,
    Stacks,
    expected_of,
    height_setting,
    scale_setting,
)
from halfangle_service.topics.jobs.correction.slips import (
    OneAngle,
    Slips,
    known_within,
    slips_of_angle,
)
from halfangle_service.trade.correction.causes import Seen
from halfangle_service.trade.uncertainty import Budget, forecast_of
from halfangle_service.trade.unit_slips import require_center_distance
from halfangle_service.trade.wheel.dresser import dresser_angle

_SENSES: dict[int, Sense] = {1: "larger", -1: "smaller", 0: "alike"}
_SETTINGS: dict[str, SettingOf] = {
    "sine-plate": "plate",
    "sine-dresser": "dresser",
    "scale-dresser": "dresser",
    "swivel": "swivel",
}
_OneAngle = CorrectionSinePlate | CorrectionSineDresser | CorrectionScaleDresser | CorrectionSwivel


def of_angle(
    request: JobsCorrectionRequest,
    measured: CorrectionAngle | CorrectionContact,
    supply: Supply | None,
) -> tuple[JobsCorrectionResult, float | None]:
    """One setting, of a cone or a face, and the error in arc-seconds; None where it is unknown."""
    work, set_up = request.work, request.set_up
    if work is None or isinstance(work, CorrectionCompoundFace):
        raise Disagreement(
            "An angle is measured of a cone or a face; of a face in two views a surface is.",
            fields={"work": "should be of kind cone or angled-face"},
        )
    if isinstance(set_up, CorrectionCompoundPlate):
        raise Disagreement(
            "A compound plate sets a face that slopes in both views.",
            fields={"set_up": "should be of another kind, or the work a compound-face"},
        )
    found = deviation_of(work, measured)
    leave = None
    if found.error_arcsec is not None:
        leave = within_uncertainty(found.error_arcsec, found.budget)
    setting, slips = None, Slips()
    if set_up is not None and found.error_arcsec is not None:
        slips = _slips(request, set_up, found, supply)
        if not slips.of_the_whole:
            setting = _setting(request, set_up, found, supply)
    expected = None
    if setting is not None and set_up is not None:
        expected = _expected(request, set_up, found, setting)
    forecast = None
    if expected is not None and found.tolerance_arcsec is not None:
        forecast = forecast_of(expected, -found.tolerance_arcsec, found.tolerance_arcsec)
    seen = Seen(
        None if set_up is None else set_up.kind,
        turned=isinstance(work, CorrectionCone),
        observed=observed(request.observations),
        error_arcsec=found.error_arcsec,
        sense=found.sense if leave is False or found.error_arcsec is None else 0,
        found=slips.evidence,
    )
    shown = _shown(found, setting, expected) | {"slips": slips.listed, "slips_found": slips.count}
    result = answer_of(seen, leave, forecast=forecast, **shown)
    return result, found.error_arcsec


def _shown(
    found: Deviation, setting: CorrectionSetting | None, expected: Budget | None
) -> dict[str, Any]:
    """What an answer shows of one angle, of a cone's included angle too."""
    shown: dict[str, Any] = {"sense": _SENSES[found.sense]}
    if found.error_arcsec is not None:
        shown["angle_error_arcsec"] = estimate(ArcsecEstimate, found.budget, found.error_arcsec)
    if found.counted != 1.0 and found.error_arcsec is not None:
        shown["included_angle_error_arcsec"] = estimate(
            ArcsecEstimate,
            found.budget,
            found.counted * found.error_arcsec,
            per_unit=found.counted,
        )
    if found.counted != 1.0 and expected is not None:
        shown["expected_included_angle_error_arcsec"] = estimate(ArcsecEstimate, expected)
    if setting is not None:
        shown["settings"] = [setting]
    return shown


def _setting(
    request: JobsCorrectionRequest, set_up: _OneAngle, found: Deviation, supply: Supply | None
) -> CorrectionSetting:
    """The change of the setting that this angle was ground by."""
    own = request.setting_error_limit_arcsec
    error = found.error_arcsec or 0.0
    complement = _has_complement(set_up)
    wanted, measured = (
        dresser_angle(angle, from_side=complement)
        for angle in (found.wanted_rad, found.measured_rad)
    )
    turned = -error if complement else error
    shown = Shown(_SETTINGS[set_up.kind], wanted, measured, turned, found.budget, own)
    if isinstance(set_up, CorrectionScaleDresser | CorrectionSwivel):
        return scale_setting(shown, set_up)
    return height_setting(shown, _stacks(request, set_up, supply))


def _has_complement(set_up: _OneAngle) -> bool:
    """Whether what is set has 90° less the work's angle, so that it errs the other way."""
    if isinstance(set_up, CorrectionSinePlate):
        return set_up.turned_quarter
    return not isinstance(set_up, CorrectionSwivel) and set_up.zero == "wheel-side"


def _slips(
    request: JobsCorrectionRequest, set_up: _OneAngle, found: Deviation, supply: Supply | None
) -> Slips:
    """The mistakes in setting that explain what was measured."""
    stacks = None
    if isinstance(set_up, CorrectionSinePlate | CorrectionSineDresser):
        stacks = _stacks(request, set_up, supply)
    plate, scale = isinstance(set_up, CorrectionSinePlate), isinstance(set_up, CorrectionSwivel)
    angle = OneAngle(
        found.wanted_rad,
        found.counted != 1.0,
        "plate" if plate else "swivel" if scale else "dresser",
        stacks,
        _has_complement(set_up),
        request.units,
    )
    return slips_of_angle(angle, found.error_arcsec or 0.0, known_within(found.budget), supply)


def _stacks(
    request: JobsCorrectionRequest,
    set_up: CorrectionSinePlate | CorrectionSineDresser,
    supply: Supply | None,
) -> Stacks:
    """The sine setting of a plate or a dresser; refuses a center distance that none has."""
    require_center_distance(set_up.center_distance, request.units, "set_up/center_distance")
    plate = isinstance(set_up, CorrectionSinePlate)
    return Stacks(
        units=request.units,
        center_distance=set_up.center_distance,
        offset=set_up.base_step if isinstance(set_up, CorrectionSinePlate) else 0.0,
        high=set_up.blocks,
        low=set_up.low_blocks,
        supply=supply,
        max_blocks=request.max_blocks,
        path="set_up/",
        low_can_stand=not (plate and getattr(set_up, "low_roll_hinged", False)),
    )


def _expected(
    request: JobsCorrectionRequest, set_up: _OneAngle, found: Deviation, setting: CorrectionSetting
) -> Budget:
    """Budget of the angle that has the tolerance, to expect of the next part, in arc-seconds."""
    off = setting.expected_error_arcsec.value or 0.0
    if _has_complement(set_up):
        off = -off
    limit = request.setting_error_limit_arcsec
    own = expected_of(found.budget, off, limit, left=setting.leave_it)
    return Budget(
        tuple(c.times(found.counted) for c in own.contributions),
        own.offset * found.counted,
        own.not_stated,
    )
