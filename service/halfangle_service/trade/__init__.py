"""The trade's own maths, on floats and arrays: no pydantic, no framework, usable by itself."""
