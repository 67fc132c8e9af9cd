# Generated from openapi/openapi.json by openapi/generate.py. Do not edit.
"""The generated part of the client."""
