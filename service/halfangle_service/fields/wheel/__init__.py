"""Words of the wheel that topics share: dresser, grinder, the ways that grind with it."""
