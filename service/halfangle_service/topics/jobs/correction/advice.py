"""What to mind of a correction."""

from collections.abc import Iterable, Iterator

from halfangle_service.cautions import correct_the_cause, stack_far_off, wrong_block_first
from halfangle_service.fields.advisories import Advisory, caution, note
from halfangle_service.topics.jobs.correction.compound import HingeAtZero
from halfangle_service.topics.jobs.correction.result import CorrectionSetting, JobsCorrectionResult
from halfangle_service.trade.units import Units
from halfangle_service.trade.wording import arcsec, option, small_length

#: Causes that no change of a setting mends: what turns the angle is not the setting.
_NOT_BY_SETTING = {
    "wrong-block",
    "dirt-under-a-roll",
    "wheel-breakdown",
    "diamond-wear",
    "diamond-height",
    "axis-height",
    "wrong-hinge-order",
    "wrong-hand",
    "half-for-included",
    "tangent-for-sine",
    "complement-set",
    "base-step-left-out",
    "seat-of-the-work",
    "temperature",
    "measurement",
}


def of_clocking(result: JobsCorrectionResult) -> Iterator[Advisory]:
    """What to mind of work that was seated again."""
    if result.leave_it:
        yield note(
            "leave-as-it-is",
            "The limit is kept, or no clocking can be told to be better: leave it.",
        )
    if result.leave_it is None:
        yield _uncertainty_missing()


def of_hinges_at_zero(found: Iterable[HingeAtZero], units: Units) -> Iterator[Advisory]:
    """Of plates that are to stand at zero and do not: no stack mends them."""
    for hinge in found:
        yield caution(
            "hinge-not-at-zero",
            f"The {hinge.which} plate is to stand at zero, and the face shows it "
            f"{arcsec(abs(hinge.error_arcsec))} off, its {hinge.side} side "
            f"{small_length(hinge.rise, units)} high at the roll. No stack stands under it to be "
            "changed: clean and stone its rest and close it again; what comes back, shim under the "
            "other side, or have the rest trued.",
        )


def of_settings(result: JobsCorrectionResult, error_arcsec: float | None) -> Iterator[Advisory]:
    """What to mind of an angle that was measured; `error_arcsec` is its error, None if unknown."""
    if error_arcsec is None:
        yield caution(
            "amount-not-told",
            f"The contact says that the half angle came out {result.sense}, not by how much: "
            "measure the gap at the open end, or send the share that a film of known thickness "
            "marks.",
        )
    elif result.leave_it is None:
        yield _uncertainty_missing()
    for setting in result.settings:
        if setting.leave_it:
            yield _left(setting)
    for setting in result.settings:
        yield from _coarse(setting)
        if setting.height is not None and setting.height.stacks:
            yield from stack_far_off(setting.expected_error_arcsec.value or 0.0)
    if error_arcsec is not None and not result.leave_it:
        yield from wrong_block_first(error_arcsec)
        if any(s.height is not None for s in result.settings):
            yield correct_the_cause()
    first = result.causes[0]
    if first.evidence == "for" and first.cause in _NOT_BY_SETTING and not result.leave_it:
        yield caution(
            "mend-the-cause-first",
            f"What was seen speaks for this cause: {option(first.cause)}. {first.mend} A setting "
            "changed for it is wrong once it is gone.",
        )


def _left(setting: CorrectionSetting) -> Advisory:
    found = setting.angle_error_arcsec
    return note(
        "leave-as-it-is",
        f"An error of {arcsec(found.value or 0.0)} is no more than its uncertainty, "
        f"{arcsec(found.expanded_uncertainty or 0.0)}: leave it.",
    )


def _coarse(setting: CorrectionSetting) -> Iterator[Advisory]:
    """Warn of a scale that is set no nearer than it stands."""
    left, found = (
        setting.expected_error_arcsec.value or 0.0,
        setting.angle_error_arcsec.value or 0.0,
    )
    if setting.scale is not None and abs(left) > abs(found) / 2.0:
        yield caution(
            "graduation-coarse",
            f"The nearest graduation leaves {arcsec(left)} of {arcsec(found)}: set it by an "
            "indicator at a known radius, or by blocks, not by the scale.",
        )


def _uncertainty_missing() -> Advisory:
    return caution(
        "uncertainty-not-stated",
        "How well it was measured is not stated, or only in part: what looks like an error may be "
        "the measurement's. State it before anything is changed.",
    )
