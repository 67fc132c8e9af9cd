"""What a column of answers costs beside answers one by one, and beside NumPy alone. Not collected.

    python tests/load/bench_tables.py [--rows 100000] [--rounds 7]

Processor time of this process, the least of some rounds side by side, for `sine.setting` and a few
others: the column form of all numbers of the result, of its texts too, of the words of advisories
too, the row form (of fewer rows, times their share), and the least that NumPy needs for the same
formulas without limits, notes or tidying. Ratios count, not milliseconds.
"""

import argparse
import json
import time
from collections.abc import Callable
from typing import Any

import numpy as np
from numpy.typing import NDArray

from halfangle_service.columns import AskedColumns, columns_of, flat_fields
from halfangle_service.registry import load_registry

Floats = NDArray[np.float64]
OPERATIONS = load_registry().operations
#: Operation, the field that runs, and from where to where.
SHOWN = (
    ("sine.setting", "angle", 1.0, 44.0),
    ("sine.setting", "angle", 1.0, 60.0),
    ("sine.setting", "angle", 1.0, 89.0),
    ("sine.angle", "height", 0.1, 4.9),
    ("tapers.solve", "length", 1.0, 9.0),
    ("tapers.plug-depth", "depth", 0.1, 0.9),
    ("wheels.dressing", "wheel_rpm", 1000.0, 3000.0),
)
_ONE_BY_ONE = 1_000


def main() -> None:
    """Print a line for each."""
    parser = argparse.ArgumentParser(description="Columns of answers, rows, and NumPy alone.")
    parser.add_argument("--rows", type=int, default=100_000)
    parser.add_argument("--rounds", type=int, default=7)
    options = parser.parse_args()
    print(f"{options.rows} rows; ms of processor time, and times the column of numbers")
    floor = _least(lambda: _by_numpy(_running("sine.setting", 1.0, 44.0, options.rows)), options)
    print(f"NumPy alone, the formulas of sine.setting: {floor:.1f} ms")
    for name, field, first, last in SHOWN:
        if field in OPERATIONS[name].request.model_fields:
            _show(name, field, (first, last), options)


def _show(name: str, field: str, ends: tuple[float, float], options: argparse.Namespace) -> None:
    operation = OPERATIONS[name]
    same = {n: v for n, v in operation.example.items() if n not in {field, "formats"}}
    running = _running(name, *ends, options.rows)
    fields = flat_fields(operation.result).values()
    numbers = [one.name for one in fields if one.kind == "number"]
    shown = [*numbers, *(one.name for one in fields if one.name.endswith(".dms"))]

    def columns(wanted: list[str], *, in_words: bool = False) -> Callable[[], Any]:
        return lambda: columns_of(
            operation,
            AskedColumns(operation.request, {**same, field: running}),
            wanted,
            in_words=in_words,
        )

    bodies = [json.dumps({**same, field: x}).encode() for x in running[:_ONE_BY_ONE].tolist()]

    def one_by_one() -> None:
        for body in bodies:
            operation.answer_json(operation.request.model_validate_json(body))

    try:
        rows = _least(one_by_one, options) * options.rows / len(bodies)
    except Exception as error:  # a range that this operation refuses
        print(f"{name:20} {field} {ends}: {error}")
        return
    bare, whole = _least(columns(numbers), options), _least(columns(shown), options)
    words = _least(columns(numbers, in_words=True), options)
    left = columns(numbers)().left.sum()
    print(
        f"{name:20} {field} {ends}: numbers {bare:.1f}, texts too {whole:.1f} "
        f"({whole / bare:.1f}), words too {words:.1f} ({words / bare:.1f}), "
        f"one by one {rows:.0f} ({rows / bare:.0f}), left {left}"
    )


def _running(name: str, first: float, last: float, rows: int) -> Floats:
    return np.round(np.random.default_rng(len(name)).uniform(first, last, rows), 4)


def _by_numpy(degrees: Floats, center_distance: float = 5.0) -> list[Floats]:
    """The formulas of `sine.setting`, and nothing else of it."""
    angle = np.radians(degrees)
    height = center_distance * np.sin(angle)
    built = np.round(height * 10_000.0) / 10_000.0
    as_set = np.arcsin(built / center_distance)
    per_unit = np.degrees(1.0) * 3600.0 / (center_distance * np.cos(angle))
    return [height, built, np.degrees(as_set), (as_set - angle) * 206_264.806, per_unit]


def _least(work: Callable[[], Any], options: argparse.Namespace) -> float:
    """Least processor time of some rounds, in milliseconds."""
    times = []
    for _ in range(options.rounds):
        begun = time.process_time()
        work()
        times.append(time.process_time() - begun)
    return min(times) * 1e3


if __name__ == "__main__":
    main()
