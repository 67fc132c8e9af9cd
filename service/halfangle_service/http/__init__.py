"""The adapter from Operation to HTTP. Nothing of the trade is known here."""
