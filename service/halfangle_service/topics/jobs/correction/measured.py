"""What was measured, as the deviation of one angle from the one wanted."""

import math
from dataclasses import dataclass

from halfangle_service.errors import Disagreement, Impossible
from halfangle_service.fields import ARCSEC_PER_RADIAN
from halfangle_service.fields.choice import at_most_one_of, needs, one_of
from halfangle_service.fields.slopes import slope_of
from halfangle_service.topics.jobs.correction.request import (
    GAPS,
    MEASURED,
    UNCERTAINTIES,
    CorrectionAngle,
    CorrectionCone,
    CorrectionContact,
    CorrectionFace,
    CorrectionUncertainty,
)
from halfangle_service.trade.correction.contact import Contact, gap_of_mark
from halfangle_service.trade.decimals import tidy
from halfangle_service.trade.uncertainty import Budget, Contribution, Distribution
from halfangle_service.trade.uncertainty.coverage import half_width
from halfangle_service.trade.wording import plain

_DISTRIBUTIONS: dict[str, Distribution] = {
    "standard_uncertainty_arcsec": "normal",
    "measurement_error_limit_arcsec": "rectangular",
}
_OF_CONE = {name for name in MEASURED if "included" in name or "half" in name}
_PATH = "measured/"


@dataclass(frozen=True, slots=True)
class Deviation:
    """The half angle, or the face's, as measured and wanted, in degrees; their difference.

    `error_arcsec` is None where only its sense is known: 1 larger, -1 smaller, 0 alike. `counted`
    is how often it counts in the angle that has the tolerance: twice in an included angle.
    """

    wanted_degrees: float
    measured_degrees: float
    error_arcsec: float | None
    sense: int
    budget: Budget
    counted: float
    tolerance_arcsec: float | None

    @property
    def wanted_rad(self) -> float:
        """The angle wanted, in radians."""
        return math.radians(self.wanted_degrees)

    @property
    def measured_rad(self) -> float:
        """The angle as measured, in radians; as wanted where only its sense is known."""
        return math.radians(self.measured_degrees)


def within_uncertainty(error: float, budget: Budget) -> bool | None:
    """Whether an error is no more than its uncertainty, in the budget's unit.

    None where nothing is known of that, or where the error passes what is known of it and what was
    not stated may be as large.
    """
    if not budget.contributions:
        return None
    if abs(error) <= half_width(budget):
        return True
    return None if budget.not_stated else False


def deviation_of(
    work: CorrectionCone | CorrectionFace, measured: CorrectionAngle | CorrectionContact
) -> Deviation:
    """The deviation that was measured; refuses what is no measurement of this work."""
    if isinstance(work, CorrectionCone):
        wanted = slope_of(work, path="work/").half_angle_degrees
        counted, tolerance = 2.0, work.included_angle_tolerance_arcsec
    else:
        wanted, counted, tolerance = work.face_angle, 1.0, work.tolerance_arcsec
    if isinstance(measured, CorrectionContact):
        if isinstance(work, CorrectionFace):
            raise Disagreement(
                "A gauge touches a cone at one end or the other; a face has no such gauge.",
                fields={f"{_PATH}kind": "should be angle for a face"},
            )
        return _by_contact(measured, wanted, tolerance)
    read = _as_measured(measured, wanted, turned=isinstance(work, CorrectionCone))
    error = tidy((read - wanted) * 3600.0, wanted * 3600.0)
    budget = budget_as_measured(measured, 2.0 if _is_included(measured) else 1.0)
    sense = (error > 0.0) - (error < 0.0)
    return Deviation(wanted, read, error, sense, budget, counted, tolerance)


def budget_as_measured(measured: CorrectionUncertainty, counted: float = 1.0) -> Budget:
    """Uncertainty of an angle as it was measured, divided by how often it counts in it."""
    name = at_most_one_of(measured, *UNCERTAINTIES, path=_PATH)
    if name is None:
        return Budget((), not_stated=(f"{_PATH}{UNCERTAINTIES[0]}",))
    value = float(getattr(measured, name))
    return Budget((Contribution(f"{_PATH}{name}", value, _DISTRIBUTIONS[name], 1.0 / counted),))


def _is_included(measured: CorrectionAngle) -> bool:
    return "included" in one_of(measured, *MEASURED, path=_PATH)


def _as_measured(measured: CorrectionAngle, wanted: float, *, turned: bool) -> float:
    """Half angle, or the face's, as measured, in degrees; `wanted` is the one wanted."""
    field = one_of(measured, *MEASURED, path=_PATH)
    if field in _OF_CONE and not turned:
        raise Disagreement(
            f"{field} is of a cone, and a face was to be ground.",
            fields={f"{_PATH}{field}": "should be measured_face_angle or measured_error_arcsec"},
        )
    if field == "measured_face_angle" and turned:
        raise Disagreement(
            "measured_face_angle is of a face, and a cone was to be ground.",
            fields={f"{_PATH}{field}": "should be the included or the half angle as measured"},
        )
    counted = 2.0 if "included" in field else 1.0
    value = float(getattr(measured, field)) / counted
    if not field.endswith("_arcsec"):
        return value
    read = wanted + value / 3600.0
    if not 0.0 < read < 90.0:
        raise Impossible(
            f"The error would make the angle {plain(read)}°.",
            fields={f"{_PATH}{field}": "should leave the angle between 0° and 90°"},
        )
    return read


# By contact ---------------------------------------------------------------------------------------
def _by_contact(measured: CorrectionContact, wanted: float, tolerance: float | None) -> Deviation:
    """The deviation that a contact at one end tells, and how well; `wanted` in degrees."""
    wanted_rad = math.radians(wanted)
    gap_field = at_most_one_of(measured, *GAPS, path=_PATH)
    why = "A share is marked by a film of some thickness."
    needs(measured, "marked_share_percent", "blue_film", why=why, path=_PATH)
    contact = Contact(measured.surface, measured.touches, measured.contact_length, wanted_rad)
    if measured.touches == "both-ends":
        budget = _all_over(measured, wanted_rad)
        return Deviation(wanted, wanted, 0.0, 0, budget, 2.0, tolerance)
    if gap_field is None:
        names = tuple(f"{_PATH}{name}" for name in GAPS)
        unknown = Budget((), not_stated=names)
        return Deviation(wanted, wanted, None, contact.sense, unknown, 2.0, tolerance)
    gap = _gap(measured, wanted_rad)
    error, per_gap = contact.error_arcsec(gap), contact.arcsec_per_gap(gap)
    read = wanted + error / 3600.0
    if not 0.0 < read < 90.0:
        raise Impossible(
            "A gap as wide as that over this length leaves no cone.",
            fields={f"{_PATH}{gap_field}": "should be smaller, or contact_length longer"},
        )
    budget = _gap_budget(measured, gap, contact.sense * per_gap)
    return Deviation(wanted, read, error, contact.sense, budget, 2.0, tolerance)


def _gap(measured: CorrectionContact, gauge_rad: float) -> float:
    """Radial gap at the open end, as found or by what a film marked."""
    if measured.gap_at_other_end is not None:
        return measured.gap_at_other_end
    share = (measured.marked_share_percent or 0.0) / 100.0
    return gap_of_mark(share, measured.blue_film or 0.0, gauge_rad)


def _gap_budget(measured: CorrectionContact, gap: float, per_gap: float) -> Budget:
    """What the gap's own errors, or the film's, leave open, in arc-seconds of the half angle."""
    if measured.gap_at_other_end is not None:
        terms = {"gap_error_limit": per_gap}
    else:
        share, film = measured.marked_share_percent or 1.0, measured.blue_film or 1.0
        terms = {
            "marked_share_error_limit_percent": -per_gap * gap / share,
            "blue_film_error_limit": per_gap * gap / film,
        }
    return _stated(measured, {**terms, "gauge_angle_error_limit_arcsec": 0.5})


def _all_over(measured: CorrectionContact, gauge_rad: float) -> Budget:
    """What contact all over leaves open: what the film still marks all over."""
    film = measured.blue_film
    per_film = math.cos(gauge_rad) / measured.contact_length * ARCSEC_PER_RADIAN
    gauge = _stated(measured, {"gauge_angle_error_limit_arcsec": 0.5})
    if film is None:
        return Budget(gauge.contributions, 0.0, (f"{_PATH}blue_film", *gauge.not_stated))
    shown = Contribution(f"{_PATH}blue_film", film, "rectangular", per_film, unit="length")
    return Budget((shown, *gauge.contributions), 0.0, gauge.not_stated)


_UNITS = {
    "gap_error_limit": "length",
    "blue_film_error_limit": "length",
    "marked_share_error_limit_percent": "percent",
    "gauge_angle_error_limit_arcsec": "",
}


def _stated(measured: CorrectionContact, terms: dict[str, float]) -> Budget:
    """Budget of those limits that were stated, by what each acts with; the others named."""
    sent = {name: getattr(measured, name) for name in terms}
    return Budget(
        tuple(
            Contribution(f"{_PATH}{name}", value, "rectangular", terms[name], unit=_UNITS[name])
            for name, value in sent.items()
            if value is not None
        ),
        not_stated=tuple(f"{_PATH}{name}" for name, value in sent.items() if value is None),
    )
