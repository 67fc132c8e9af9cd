"""Sine settings of a whole table where it lies: a polars data frame in, the same rows out.

    python client/examples/polars_settings.py angles.parquet settings.parquet

The table has a column `angle`, in degrees (numbers, or texts such as 8°18'); the shop's bar,
5 in between its rolls, is the same for all rows. No service runs: halfangle-service is imported,
and polars is installed beside it (`pip install polars`).
What comes beside each row is what POST /v1/tables/sine.setting writes there.
"""

import sys

import polars as pl

from halfangle_service.arrays import answer_arrays

BAR = {"units": "in", "center_distance": 5}
RESULTS = ["height_to_set", "angle_as_set.dms", "deviation_arcsec", "advisories"]


def settings(angles: pl.DataFrame) -> pl.DataFrame:
    """Give the same rows with the stack that sets each angle, what it gives, and what to mind."""
    answered = answer_arrays("sine.setting", {**BAR, "angle": angles["angle"]}, RESULTS)
    # What no row has to say is text all the same: every part of a table has the same columns.
    columns = [
        pl.Series(name, values, nan_to_null=True)
        if values.dtype == float
        else pl.Series(name, values.tolist(), dtype=pl.String)
        for name, values in answered.items()
    ]
    return angles.with_columns(columns)


def main() -> None:
    """Read one Parquet file, write another."""
    came, goes = sys.argv[1:]
    found = settings(pl.read_parquet(came))
    found.write_parquet(goes)
    refused = found.filter(pl.col("problem").is_not_null())
    print(f"{len(found)} rows, {len(refused)} refused")


if __name__ == "__main__":
    main()
