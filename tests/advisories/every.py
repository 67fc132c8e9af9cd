"""The whole table of advisories."""

from advisories import (
    blocks,
    centers,
    clearance,
    corrections,
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
    *corrections.ROWS,
    *inspection.ROWS,
    *jobs.ROWS,
    *reading.ROWS,
    *runout.ROWS,
    *sine.ROWS,
    *tapers.ROWS,
    *wheels.ROWS,
)
