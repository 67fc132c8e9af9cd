"""The OpenAPI contract, made from the registry: nothing of it is written by hand twice."""
