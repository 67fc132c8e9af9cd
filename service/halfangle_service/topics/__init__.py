"""The topics: one folder each, found by the registry."""
