"""Sets and grades of gauge blocks and of angle gauge blocks."""
