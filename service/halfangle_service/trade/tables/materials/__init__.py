"""Materials of blocks and plates."""
