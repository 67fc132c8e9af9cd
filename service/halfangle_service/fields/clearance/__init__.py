"""Words of a set-up's clearance that topics share: what stands there, its gaps, what is wrong."""
