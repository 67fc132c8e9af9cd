"""Bodies and answers that may have no end: what batches and tables have alike."""
