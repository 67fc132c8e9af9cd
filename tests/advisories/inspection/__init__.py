"""Advisories of inspections."""

from advisories.inspection import comparator, overlay, plan, verdict
from advisories.row import Row

ROWS: tuple[Row, ...] = (*comparator.ROWS, *overlay.ROWS, *plan.ROWS, *verdict.ROWS)
