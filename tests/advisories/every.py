"""The whole table of advisories."""

from advisories import (
    blocks,
    centers,
    clearance,
    corrections,
    inspection,
    job_parts,
    jobs,
    measuring,
    plan,
    reading,
    runout,
    sine,
    tapers,
    wheel_tools,
    wheels,
)
from advisories.row import Row

ROWS: tuple[Row, ...] = (
    *blocks.ROWS,
    *centers.ROWS,
    *clearance.ROWS,
    *corrections.ROWS,
    *inspection.ROWS,
    *job_parts.ROWS,
    *jobs.ROWS,
    *measuring.ROWS,
    *plan.ROWS,
    *reading.ROWS,
    *runout.ROWS,
    *sine.ROWS,
    *tapers.ROWS,
    *wheel_tools.ROWS,
    *wheels.ROWS,
)
