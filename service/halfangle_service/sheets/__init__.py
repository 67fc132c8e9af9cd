"""Sheets of paper made of answers: set-up sheets, inspection sheets, overlays.

An answer becomes a typed sheet (`model`), the sheet a page of HTML that prints as it looks
(`page`), the page a PDF where the extra `sheets` is installed (`pdf`).
"""
