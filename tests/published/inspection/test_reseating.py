"""The reading that proves a runout by seating again, against the verdict on a runout."""

import pytest

from halfangle_service.trade.inspection.reseating import runout_proof
from support import Call

UNITS = {"units": "in", "limit_tir": 0.0003}


@pytest.mark.parametrize("error", [0.0001, 0.0003, 0.0005])
def test_a_reading_proves_the_runout_just_where_its_verdict_conforms(
    call: Call, error: float
) -> None:
    """Half of the reading, with half of its error, conforms just below that and not just above."""
    read = runout_proof(0.0003, error, "iso-14253-1-2017")
    assert read is not None
    own = {"measurement_error_limit": error / 2}
    for share, verdict in ((0.999, "conforming"), (1.001, "not-provable")):
        judged = call("inspection.verdict", **UNITS, **own, measured_tir=share * read / 2)
        assert judged["result"]["verdict"] == verdict
    accepted = call("inspection.verdict", **UNITS, **own, measured_tir=read / 2)["result"]
    assert accepted["length_judged"]["largest_accepted"] == pytest.approx(read / 2, rel=1e-6)


def test_a_reading_no_finer_than_the_limit_proves_nothing() -> None:
    """From nothing read on, 95 % of a rectangular error lie within 0.95 of its half width."""
    just = 2 * 0.0003 / 0.95
    assert runout_proof(0.0003, 0.999 * just, "iso-14253-1-2017") is not None
    assert runout_proof(0.0003, 1.001 * just, "iso-14253-1-2017") is None
