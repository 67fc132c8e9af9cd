"""What was measured after grinding, and what is likely to have caused it."""
