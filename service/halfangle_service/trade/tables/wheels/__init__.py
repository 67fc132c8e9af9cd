"""Guide values of dressing; what to check before starting a wheel."""
