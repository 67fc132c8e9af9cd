"""Centers: what an eccentric one does to the work, and how true it must be."""
