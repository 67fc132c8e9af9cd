"""The zero from which a dresser's sine base stands less steep."""

from collections.abc import Iterator

from halfangle_service.cautions import STEEP_DEGREES
from halfangle_service.fields.advisories import Advisory, note
from halfangle_service.fields.wheel.dresser import DresserSetting, ScaleDresser, SineBaseDresser
from halfangle_service.trade import elementary
from halfangle_service.trade.wording import arcsec, option, plain


def better_zero(
    dresser: SineBaseDresser | ScaleDresser, setting: DresserSetting
) -> Iterator[Advisory]:
    """Name the complement where a sine base would stand steep: it is set from the other zero."""
    angle = setting.dresser_angle.degrees
    if setting.arcsec_per_step is None or angle <= STEEP_DEGREES:
        return
    other = {"wheel-axis": "wheel-side", "wheel-side": "wheel-axis"}[dresser.zero]
    there = setting.arcsec_per_step / elementary.tan(elementary.radians(angle))
    yield note(
        "other-zero",
        f"At {plain(angle)}° one bench step of the dresser's stack turns the flank "
        f"{arcsec(setting.arcsec_per_step)}. From its zero at the {option(other)} the same flank "
        f"takes {plain(90.0 - angle)}°, where a step turns it {arcsec(there)}.",
    )
