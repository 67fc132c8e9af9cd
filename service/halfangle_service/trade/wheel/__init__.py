"""The wheel: dressing, its errors, its speed, ways to grind an angle."""
