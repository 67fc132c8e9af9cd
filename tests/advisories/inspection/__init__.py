"""Advisories of inspections."""

from advisories.inspection import comparator, overlay, plan, readings, verdict
from advisories.row import Row

ROWS: tuple[Row, ...] = (*comparator.ROWS, *overlay.ROWS, *plan.ROWS, *readings.ROWS, *verdict.ROWS)
