"""A part tapped true: readings at two sections, the taps in order, and what they leave.

What is asked stands in `request`, what is answered in `result`; `work` reads the sections and
decides which taps to make, `expected` writes what follows, `taps` declares the operation.
"""
