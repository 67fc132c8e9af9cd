"""Sine settings of a table that is larger than one machine's memory: Dask spreads its parts.

    pip install "dask[dataframe]" distributed
    python client/examples/dask_settings.py angles/ settings/

Both are folders of Parquet files. The cluster here is of two workers on this machine; of one of
yours, name the scheduler: Client("tcp://…"). Each part is answered by its worker by itself, since
no row depends on another: what comes is what polars_settings.py gives for the whole table at once.
"""

import sys

import pandas as pd
from dask import dataframe
from dask.distributed import Client, LocalCluster

from halfangle_service.arrays import answer_arrays

BAR = {"units": "in", "center_distance": 5}
RESULTS = ["height_to_set", "angle_as_set.dms", "deviation_arcsec", "advisories"]
TEXTS = ["angle_as_set.dms", "advisories", "problem"]


def settings(angles: pd.DataFrame) -> pd.DataFrame:
    """Give the rows of one part with the stack that sets each angle, and what to mind of it."""
    fields = {**BAR, "angle": angles["angle"].to_numpy(dtype=object, na_value=None)}
    answered = pd.DataFrame(answer_arrays("sine.setting", fields, RESULTS), index=angles.index)
    # What no row of a part has to say is text all the same: every part has the same columns.
    return angles.join(answered.astype(dict.fromkeys(TEXTS, "string[pyarrow]")))


def main() -> None:
    """Read a folder of Parquet files, write another, on a cluster of two workers."""
    came, goes = sys.argv[1:]
    cluster = LocalCluster(n_workers=2, threads_per_worker=1, dashboard_address=None)
    with cluster, Client(cluster):
        angles = dataframe.read_parquet(came)
        like = settings(angles.head(1)).head(0)
        angles.map_partitions(settings, meta=like).to_parquet(goes, write_index=False)


if __name__ == "__main__":
    main()
