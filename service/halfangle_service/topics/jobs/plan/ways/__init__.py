"""The ways to make a feature, each with its settings, stacks and budget; `way` is what all are."""
