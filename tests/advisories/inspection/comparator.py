"""Advisories of `inspection.comparator`."""

from advisories.row import Row

ROWS: tuple[Row, ...] = ()
