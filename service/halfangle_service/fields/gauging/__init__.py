"""Words of the subjects that gauge: measured inputs, and a stack as it stands."""
