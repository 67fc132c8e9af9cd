"""The shop of a job: what it has, as stated or by a profile, and reading of it."""
