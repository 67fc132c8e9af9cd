"""Standard shanks row by row, and the complete series of standard tapers."""

from typing import Any

import pytest
from litestar.testing import TestClient

from halfangle_service.trade.tables.tapers.shanks import shank_dimensions
from halfangle_service.trade.tables.tapers.standard import standard_tapers

# ISO 296:1991, table 2: D1, d and l1 of each shank. d and l1 of Morse as in the text of QJ 417-78,
# the rest from memory.
SHANKS = {
    "metric-4": (4.1, 2.9, 23),
    "metric-6": (6.2, 4.4, 32),
    "morse-0-iso": (9.2, 6.4, 50),
    "morse-1-iso": (12.2, 9.4, 53.5),
    "morse-2-iso": (18, 14.6, 64),
    "morse-3-iso": (24.1, 19.8, 81),
    "morse-4-iso": (31.6, 25.9, 102.5),
    "morse-5-iso": (44.7, 37.6, 129.5),
    "morse-6-iso": (63.8, 53.9, 182),
    "metric-80": (80.4, 70.2, 196),
    "metric-100": (100.5, 88.4, 232),
    "metric-120": (120.6, 106.6, 268),
    "metric-160": (160.8, 143, 340),
    "metric-200": (201, 179.4, 412),
}
# ISO 297:1988 and ASME B5.10: gauge diameters of 7/24 in mm; 40 is 44.45 and 55 is 88.9.
STEEP = {
    10: 15.875,
    15: 19.05,
    20: 22.225,
    25: 25.4,
    30: 31.75,
    35: 38.1,
    40: 44.45,
    45: 57.15,
    50: 69.85,
    55: 88.9,
    60: 107.95,
}


@pytest.mark.outside("tapers.solve", source="ISO 296:1991, table 2, with the text of QJ 417-78")
@pytest.mark.parametrize("designation", SHANKS)
def test_a_shank_is_served_as_the_table_has_it(service: TestClient[Any], designation: str) -> None:
    """D1, d and l1 of a row are the table's, and follow from D and the rate to its rounding."""
    row = service.get(f"/v1/tapers/standard/{designation}").json()
    entry = row.get("result", row)
    shank, gauge, rate = entry["dimensions"], entry["gauge_diameter"], 1 / entry["one_in_x"]
    columns = ("end_diameter", "small_end_diameter", "small_end_depth")
    assert tuple(shank[name] for name in columns) == pytest.approx(SHANKS[designation])
    # Printed to 0.1 mm, some of them rounded to the safe side.
    by_rate = gauge + rate * shank["gauge_plane_to_end"]
    assert shank["end_diameter"] == pytest.approx(by_rate, abs=0.06)
    small = gauge - rate * shank["small_end_depth"]
    assert shank["small_end_diameter"] == pytest.approx(small, abs=0.06)
    assert shank["units"] == "mm"


@pytest.mark.parametrize("designation", SHANKS)
def test_depths_of_a_shank_are_in_order(designation: str) -> None:
    """Cone, plain shank, tang's shoulder and tang's end follow one another down the axis."""
    row = shank_dimensions()[designation]
    depths = [row["small_end_depth"], row["plain_shank_depth"]]
    depths += [d for d in (row["tang_shoulder_depth"], row["tang_end_depth"]) if d is not None]
    assert depths == sorted(set(depths))
    assert row["socket_depth"] > row["slot_depth"] > 0
    assert row["socket_bore"] > row["small_end_diameter"]
    if row["tang_thickness"] is not None:
        assert row["tang_thickness"] == row["slot_width"]


def test_only_two_metric_shanks_lack_a_tang() -> None:
    """Every row names its standing; 4 and 6 have no tang, and columns seen in print are named."""
    rows = shank_dimensions()
    assert list(rows) == list(SHANKS)
    without = [name for name, row in rows.items() if row["tang_thickness"] is None]
    assert without == ["metric-4", "metric-6"]
    for name, row in rows.items():
        assert bool(row["published"]) is name.startswith("morse")
        assert "ISO 296" in row["source"]


@pytest.mark.outside("tapers.solve", source="ISO 297:1988 and ASME B5.10, 7/24 gauge diameters")
@pytest.mark.parametrize("number", STEEP)
def test_the_steep_series_is_complete(number: int) -> None:
    """Each number of 7/24 has its gauge diameter; both standards agree."""
    tapers = standard_tapers()
    assert tapers[f"7-24-{number}"].gauge_diameter * 25.4 == pytest.approx(STEEP[number])
    if metric := tapers.get(f"7-24-{number}-iso"):
        assert metric.gauge_diameter == pytest.approx(STEEP[number])


@pytest.mark.parametrize("number", range(1, 21))
def test_jarno_follows_its_rule(number: int) -> None:
    """Jarno n is n/8 in at the large end, n/10 at the small end and n/2 long."""
    row = standard_tapers()[f"jarno-{number}"]
    found = (row.gauge_diameter, row.small_diameter, row.small_end_depth)
    assert found == pytest.approx((number / 8, number / 10, number / 2), abs=1e-9)


@pytest.mark.parametrize("number", range(1, 19))
def test_every_number_of_brown_and_sharpe_is_there(number: int) -> None:
    """Each number has at least one length, and all lengths of a number share small end and rate."""
    rows = [t for n, t in standard_tapers().items() if n.startswith(f"brown-sharpe-{number}-")]
    assert rows
    assert len({(row.small_diameter, row.rate) for row in rows}) == 1
