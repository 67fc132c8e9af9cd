"""The rate of any standard taper by its designation, sizes and rates alike."""

from difflib import get_close_matches

from halfangle_service.errors import Unreachable
from halfangle_service.trade.tables.tapers.rates import standard_rates
from halfangle_service.trade.tables.tapers.standard import standard_tapers


def rate_of(designation: str, *, field: str = "designation") -> float:
    """Rate of taper C, a pure number on the diameter, of a standard taper or rate.

    Raises Unreachable, naming `field` and the designations that look alike.
    """
    taper = standard_tapers().get(designation)
    if taper is not None:
        return taper.rate
    rate = standard_rates().get(designation)
    if rate is not None:
        return rate.rate
    known = [*standard_tapers(), *standard_rates()]
    raise Unreachable(
        f"There is no standard taper or rate {designation[:60]!r}.",
        fields={field: "should be one that GET /v1/tapers/standard or GET /v1/tapers/rates lists"},
        more={"similar": get_close_matches(designation.lower(), known, n=5, cutoff=0.5)},
    )
