"""What each way has beside its angle and its stacks, and what would decide between the ways."""
