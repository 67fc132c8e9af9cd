"""Every parser of the service, fed with what a search guided by coverage makes up."""
