"""What keeps callers from harming one another: bounds of bodies, connections and work, keys."""
