"""Jobs: whole set-ups, composed of the other topics."""
