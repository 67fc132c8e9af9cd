"""The maths of measuring tools of the bench."""
