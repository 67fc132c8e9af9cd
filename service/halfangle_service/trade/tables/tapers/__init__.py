"""Standard tapers, rates of taper, shanks, tolerances of cone angles."""
