"""Advisories of inspections."""

from advisories.inspection import comparator, plan, verdict
from advisories.row import Row

ROWS: tuple[Row, ...] = (*comparator.ROWS, *plan.ROWS, *verdict.ROWS)
