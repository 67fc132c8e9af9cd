"""What compares two releases: request corpus, changelog of the contract, differences."""
