"""An angle from points picked on a profile."""
