"""The whole table of advisories."""

from advisories import (
    blocks,
    centers,
    clearance,
    inspection,
    jobs,
    reading,
    runout,
    sine,
    tapers,
    wheels,
)
from advisories.row import Row

ROWS: tuple[Row, ...] = (
    *blocks.ROWS,
    *centers.ROWS,
    *clearance.ROWS,
    *inspection.ROWS,
    *jobs.ROWS,
    *reading.ROWS,
    *runout.ROWS,
    *sine.ROWS,
    *tapers.ROWS,
    *wheels.ROWS,
)
