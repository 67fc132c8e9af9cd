"""Counters, times and levels of the service, of all its workers together.

Labels are bounded: routes, problem types and codes are those that the service has, names of keys
those of the file, and whatever else a caller sends counts as `other`.
"""

import platform
import sys
from bisect import bisect_left
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import accumulate
from typing import Literal

from prometheus_client import CollectorRegistry
from prometheus_client.core import (
    CounterMetricFamily,
    GaugeMetricFamily,
    HistogramMetricFamily,
    Metric,
)

from halfangle_service import __version__
from halfangle_service.http.problems import PROBLEM_TYPES
from halfangle_service.http.watch.cells import Cells
from halfangle_service.http.watch.processes import process_metrics

#: Limits of classes of times, in seconds: half of the answers take less than a millisecond.
BUCKETS = (0.0001, 0.00025, 0.0005, 0.001, 0.0025, 0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1.0,
           2.5, 5.0, 10.0, 30.0)  # fmt: skip
_KNOWN_METHODS = frozenset({"GET", "HEAD", "POST", "OPTIONS"})
ROW_STATUSES = ("ok", "refused")


@dataclass(frozen=True, slots=True)
class Family:
    """Numbers of one kind, told apart by labels."""

    name: str
    kind: Literal["counter", "gauge", "histogram"]
    meaning: str
    labels: tuple[str, ...] = ()


REQUESTS = Family(
    "halfangle_requests", "counter", "Requests answered.", ("method", "route", "status")
)
SECONDS = Family(
    "halfangle_request_seconds",
    "histogram",
    "Time from finding the route of a request to the begin of its answer.",
    ("route",),
)
IN_FLIGHT = Family(
    "halfangle_requests_in_flight", "gauge", "Requests that came and are not answered."
)
HEAVY_WAITING = Family("halfangle_heavy_waiting", "gauge", "Heavy work that waits for its turn.")
HEAVY_RUNNING = Family("halfangle_heavy_running", "gauge", "Heavy work that is being done.")
HEAVY_WAIT = Family(
    "halfangle_heavy_wait_seconds", "histogram", "Time that heavy work waited for its turn."
)
REFUSALS = Family(
    "halfangle_refusals",
    "counter",
    "Requests and rows refused, by the type of their problem.",
    ("type",),
)
ADVISORIES = Family(
    "halfangle_advisories", "counter", "Stops and cautions in answers.", ("severity", "code")
)
ROWS = Family("halfangle_batch_rows", "counter", "Rows of batches and tables.", ("status",))
RECEIVED = Family("halfangle_received_bytes", "counter", "Bytes that came over connections.")
SENT = Family("halfangle_sent_bytes", "counter", "Bytes of bodies of answers.")
CONNECTIONS = Family("halfangle_connections", "gauge", "Connections that are open.")
DROPPED = Family("halfangle_log_lines_dropped", "counter", "Lines of the log that found no room.")
SLOW = Family(
    "halfangle_slow_requests", "counter", "Answers that took longer than slow_milliseconds."
)
STARTS = Family(
    "halfangle_worker_starts",
    "counter",
    "Starts of workers; more than there are workers: some died.",
)
BY_KEY = Family("halfangle_key_requests", "counter", "Requests that came with a key.", ("key",))
ROWS_BY_KEY = Family(
    "halfangle_key_rows", "counter", "Rows of batches and tables that came with a key.", ("key",)
)
LIMITED = Family(
    "halfangle_key_limited", "counter", "Requests refused since their key asks too often.", ("key",)
)
KEYS_UNREADABLE = Family(
    "halfangle_keys_file_unreadable",
    "gauge",
    "Workers that go on with the keys they had, since the file of keys cannot be read.",
)
KEYS_READ = Family(
    "halfangle_keys_file_reads", "counter", "Times that the file of keys was read anew."
)
GC_RUNS = Family("halfangle_gc_runs", "counter", "Collections of garbage.", ("generation",))
GC_SECONDS = Family("halfangle_gc_seconds", "counter", "Time that collections of garbage took.")
FAMILIES = (
    REQUESTS, SECONDS, IN_FLIGHT, HEAVY_WAITING, HEAVY_RUNNING, HEAVY_WAIT, REFUSALS, ADVISORIES,
    ROWS, RECEIVED, SENT, CONNECTIONS, DROPPED, SLOW, STARTS, BY_KEY, ROWS_BY_KEY, LIMITED,
    KEYS_UNREADABLE, KEYS_READ, GC_RUNS, GC_SECONDS,
)  # fmt: skip
#: What is told as 0 from the start, so that its first rise is seen as one.
_FROM_THE_START: tuple[tuple[Family, tuple[str, ...]], ...] = (
    *((family, ()) for family in FAMILIES if not family.labels),
    *((REFUSALS, (name,)) for name in PROBLEM_TYPES),
    *((ROWS, (status,)) for status in ROW_STATUSES),
    *((GC_RUNS, (generation,)) for generation in "012"),
)


class Metrics:
    """What one worker counts; what it tells is that of all of them."""

    def __init__(self, workers: int = 1) -> None:
        self.cells = Cells(workers)
        self.registry = CollectorRegistry()
        self.registry.register(self)
        #: When keys of the file end, in seconds since 1970: told, not counted.
        self.key_ends: dict[str, float] = {}
        self._places: dict[tuple[str, str, int], tuple[int, int]] = {}
        self.begin(0)

    def begin(self, part: int) -> None:
        """Count as this worker: its counters go on, its levels begin at nothing."""
        self.cells.take(part)
        self._places.clear()
        for family, labels in _FROM_THE_START:
            place = self._place(family, *labels)
            if family.kind == "gauge":
                self.cells.numbers[place] = 0.0
        self.in_flight = self._place(IN_FLIGHT)
        self.sent = self._place(SENT)
        self.received = self._place(RECEIVED)
        self.connections = self._place(CONNECTIONS)

    def _place(self, family: Family, *labels: str) -> int:
        count = len(BUCKETS) + 2 if family.kind == "histogram" else 1
        return self.cells.first_of((family.name, *labels), count)

    def add(self, family: Family, *labels: str, amount: float = 1.0) -> None:
        """Count, or raise a level."""
        self.cells.numbers[self._place(family, *labels)] += amount

    def count_dropped(self) -> None:
        """Count a line of the log that found no room."""
        self.add(DROPPED)

    def set(self, family: Family, value: float) -> None:
        """Set a level."""
        self.cells.numbers[self._place(family)] = value

    def time(self, family: Family, seconds: float) -> None:
        """Note a time."""
        self._note_time(self._place(family), seconds)

    def _note_time(self, place: int, seconds: float) -> None:
        numbers = self.cells.numbers
        numbers[place + bisect_left(BUCKETS, seconds)] += 1.0
        numbers[place + len(BUCKETS) + 1] += seconds

    def observe(self, method: str, route: str, status: int, seconds: float | None) -> None:
        """Count one answer, and its time where a route was asked at all."""
        # Looking names up costs more than counting.
        key = (method, route, status)
        found = self._places.get(key)
        if found is None:
            known = method if method in _KNOWN_METHODS else "other"
            counter = self._place(REQUESTS, known, route, str(status))
            found = (counter, self._place(SECONDS, route))
            if known == method:
                self._places[key] = found
        self.cells.numbers[found[0]] += 1.0
        if seconds is not None:
            self._note_time(found[1], seconds)

    def collect(self) -> Iterator[Metric]:
        """Every number, as the library that writes them takes it."""
        by_family: dict[str, list[tuple[tuple[str, ...], list[float]]]] = {}
        for (name, *labels), numbers in sorted(self.cells.together().items()):
            by_family.setdefault(name, []).append((tuple(labels), numbers))
        for family in FAMILIES:
            yield _written(family, by_family.get(family.name, []))
        yield _build()
        ends = GaugeMetricFamily(
            "halfangle_key_ends_timestamp_seconds", "When a key of the file ends.", labels=["key"]
        )
        for name, seconds in sorted(self.key_ends.items()):
            ends.add_metric([name], seconds)
        yield ends
        yield from process_metrics(self.cells.processes())


def _written(family: Family, found: list[tuple[tuple[str, ...], list[float]]]) -> Metric:
    if family.kind == "histogram":
        histogram = HistogramMetricFamily(family.name, family.meaning, labels=family.labels)
        limits = [*map(str, BUCKETS), "+Inf"]
        for labels, (*counts, seconds) in found:
            within = zip(limits, accumulate(counts), strict=True)
            histogram.add_metric(labels, buckets=[*within], sum_value=seconds)
        return histogram
    kind = CounterMetricFamily if family.kind == "counter" else GaugeMetricFamily
    metric = kind(family.name, family.meaning, labels=family.labels)
    for labels, (value,) in found:
        metric.add_metric(labels, value)
    return metric


def _build() -> Metric:
    build = GaugeMetricFamily(
        "halfangle_build_info",
        "Release of the service, and the Python that runs it.",
        labels=["release", "python", "implementation"],
    )
    build.add_metric([__version__, platform.python_version(), sys.implementation.name], 1.0)
    return build
