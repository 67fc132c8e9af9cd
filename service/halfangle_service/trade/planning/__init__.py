"""What a plan of a whole job is made of: feed, times, batch, clearance, what would decide it."""
