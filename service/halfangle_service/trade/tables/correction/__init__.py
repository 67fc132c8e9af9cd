"""Causes of errors found after grinding, each with the check that tells it apart."""
