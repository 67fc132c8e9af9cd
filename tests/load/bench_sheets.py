"""What sheets cost: the page beyond its plan, the PDF, and memory over many of them.

    python tests/load/bench_sheets.py           100 sheets; processor time, so that a busy machine does not count
"""

import argparse
import resource
import statistics
import time
from collections.abc import Callable
from typing import Any

from halfangle_service.registry import load_registry
from halfangle_service.sheets.made import PLAN, Choice, Page, page_for
from halfangle_service.sheets.pdf import pdf_of


def main() -> None:
    """Run the benchmark."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--count", type=int, default=100, help="sheets to make")
    count = parser.parse_args().count
    operation = load_registry().operations[PLAN].in_shop({})
    request = operation.request.model_validate(dict(operation.example))
    page = page_for(operation, request, Choice())
    pdf_of(page.html, page.request_json)  # loads what makes it
    before = peak_mb()
    plans, pages, files = [], [], []
    for place in range(count):
        named = request.model_copy(update={"job": f"HL-{place:04d}"})
        plans.append(milliseconds(lambda job=named: operation.outcome(job)))
        made: list[Page] = []
        pages.append(milliseconds(lambda job=named: made.append(page_for(operation, job, Choice()))))
        files.append(milliseconds(lambda: pdf_of(made[0].html, made[0].request_json)))
        if place == count // 4:
            quarter = peak_mb()
    beyond = [page - plan for page, plan in zip(pages, plans, strict=True)]
    print(f"plan {statistics.median(plans):.1f} ms, its page {statistics.median(beyond):.1f} ms more")
    print(f"PDF {statistics.median(files):.0f} ms, 9 of 10 under {sorted(files)[-count // 10]:.0f} ms")
    print(f"memory {before:.0f} MB after one, {quarter:.0f} after {count // 4}, {peak_mb():.0f} at the end")


def milliseconds(work: Callable[[], Any]) -> float:
    """Processor time of a piece of work."""
    start = time.process_time()
    work()
    return (time.process_time() - start) * 1000.0


def peak_mb() -> float:
    """Most memory that the process has had, in megabytes."""
    return resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024.0


if __name__ == "__main__":
    main()
