"""Advisories of `inspection.verdict`."""

from advisories.row import Row

ROWS: tuple[Row, ...] = ()
