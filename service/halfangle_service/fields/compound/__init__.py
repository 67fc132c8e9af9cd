"""Words of compound sine plates that topics share: the plate, the surface, settings, stacks."""
