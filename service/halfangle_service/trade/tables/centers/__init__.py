"""Center holes."""
