"""Advisories of `inspection.plan`."""

from advisories.row import Row

ROWS: tuple[Row, ...] = ()
