"""The published tables, each a TOML file beside the module that reads it.

This module imports nothing of the project, so that the maths may read its tables with it.
"""

import tomllib
from importlib.resources import files
from typing import Any


def read_table(module: str, name: str) -> dict[str, Any]:
    """Read the table of this file name beside a module, which gives its own `__name__`.

    What a row must hold, and in which unit, is for the module to check. Nothing is kept: the module
    keeps what it makes of the rows.
    """
    package, _, _ = module.rpartition(".")
    return tomllib.loads(files(package).joinpath(name).read_text("utf-8"))
