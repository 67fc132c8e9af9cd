"""Corrections proved by simulating the cause: what the simulated parts have in common."""

import math
from typing import Any

import numpy as np
import pytest
from numpy.random import Generator

from halfangle_service.registry import load_registry
from support import changed

ARCSEC = math.degrees(1) * 3600
PARTS = 40


def chance(seed: int) -> Generator:
    """Reproducible dice."""
    return np.random.default_rng(seed)


def stack_totals(setting: dict[str, Any]) -> dict[str, float]:
    """Height of the stack under each roll; the blocks of both are one box's."""
    stacks = setting["height"]["stacks"]
    for stack in stacks:
        assert stack["total"] == pytest.approx(sum(stack["blocks"]))
    return {stack["roll"]: stack["total"] for stack in stacks}


PLATE: dict[str, Any] = {"kind": "sine-plate", "center_distance": 5, "blocks": [2, 0.5]}
CONTACT: dict[str, Any] = {
    "kind": "contact",
    "surface": "external",
    "touches": "large-end",
    "contact_length": 2,
}


def example(**changes: Any) -> dict[str, Any]:
    """The example of the operation with fields changed."""
    return changed(dict(load_registry().operations["jobs.correction"].example), **changes)


def measured(arcsec: float, **more: float) -> dict[str, Any]:
    """A half angle measured with so much error."""
    return {"kind": "angle", "measured_error_arcsec": arcsec, **more}
