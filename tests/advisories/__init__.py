"""Every advisory: a request that raises it, and the same request just short of it."""
