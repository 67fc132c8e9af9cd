"""What sheets cost: the page beyond its plan, the PDF, and memory over many of them.

    python tests/load/bench_sheets.py --count 100

In processor time, so that others on the machine count little.
"""

import argparse
import resource
import statistics
import time
from collections.abc import Callable
from functools import partial
from typing import Any, TypeVar

from halfangle_service.registry import load_registry
from halfangle_service.sheets.made import PLAN, Choice, page_for
from halfangle_service.sheets.pdf import pdf_of

MadeT = TypeVar("MadeT")


def main() -> None:
    """Run the benchmark."""
    parser = argparse.ArgumentParser(description="What sheets cost.")
    parser.add_argument("--count", type=int, default=100, help="sheets to make")
    count = parser.parse_args().count
    operation = load_registry().operations[PLAN].in_shop({})
    request = operation.request.model_validate(dict(operation.example))
    sheet_of(operation, request)  # loads what makes it
    peaks = [peak_mb()]
    costs = []
    for place in range(count):
        job = request.model_copy(update={"job": f"HL-{place:04d}"})
        costs.append(sheet_of(operation, job))
        peaks.append(peak_mb())
    plans, pages, files = (sorted(column) for column in zip(*costs, strict=True))
    plan, page, file = (statistics.median(column) for column in (plans, pages, files))
    print(f"plan {plan:.1f} ms, its page {page - plan:.1f} ms more")
    print(f"PDF {file:.0f} ms, 9 of 10 under {files[count * 9 // 10]:.0f} ms")
    print(f"memory {peaks[0]:.0f} MB, {peaks[count // 4]:.0f} at a quarter, {peaks[-1]:.0f} MB")


def sheet_of(operation: Any, request: Any) -> tuple[float, float, float]:
    """Milliseconds of a plan, of its page with the plan, and of the PDF."""
    _, plan = timed(partial(operation.outcome, request))
    made, page = timed(partial(page_for, operation, request, Choice()))
    _, file = timed(partial(pdf_of, made.html, made.request_json))
    return plan, page, file


def timed(work: Callable[[], MadeT]) -> tuple[MadeT, float]:
    """What a piece of work gives, and its processor time in milliseconds."""
    start = time.process_time()
    made = work()
    return made, (time.process_time() - start) * 1000.0


def peak_mb() -> float:
    """Most memory that the process has had, in megabytes."""
    return resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024.0


if __name__ == "__main__":
    main()
