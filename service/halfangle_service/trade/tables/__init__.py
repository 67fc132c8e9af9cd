"""Published tables, each row with its source, and the readers that refuse a row without one."""
