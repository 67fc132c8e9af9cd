"""Requests made from the contract alone, and what every answer to them must be."""
