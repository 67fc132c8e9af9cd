"""What the operating system tells of the workers' processes, and Python of its garbage."""

import gc
import os
import time
from collections.abc import Callable, Iterator, Mapping
from pathlib import Path

from prometheus_client.core import CounterMetricFamily, GaugeMetricFamily, Metric

_PROC = Path("/proc")
_LABELS = ["worker"]


def process_metrics(processes: Mapping[int, int]) -> Iterator[Metric]:
    """Memory, processor time, descriptors, threads and start of each worker, counted from 1.

    One that is gone, and every one where the system has no `/proc`, is left out.
    """
    resident = GaugeMetricFamily(
        "process_resident_memory_bytes", "Memory in use.", labels=_LABELS, unit="bytes"
    )
    used = CounterMetricFamily(
        "process_cpu_seconds", "Processor time used.", labels=_LABELS, unit="seconds"
    )
    files = GaugeMetricFamily("process_open_fds", "Descriptors that are open.", labels=_LABELS)
    most = GaugeMetricFamily("process_max_fds", "Descriptors that may be open.", labels=_LABELS)
    threads = GaugeMetricFamily("process_threads", "Threads.", labels=_LABELS)
    began = GaugeMetricFamily(
        "process_start_time_seconds", "Start, since 1970.", labels=_LABELS, unit="seconds"
    )
    for part, process in processes.items():
        try:
            stat = (_PROC / str(process) / "stat").read_text()
            limits = (_PROC / str(process) / "limits").read_text()
            opened = len(os.listdir(_PROC / str(process) / "fd"))
        except OSError:
            continue
        # After the name in brackets, which may hold blanks (proc(5): fields 14, 15, 20, 22, 24).
        field = stat.rpartition(")")[2].split()
        worker = [str(part + 1)]
        ticks = os.sysconf("SC_CLK_TCK")
        used.add_metric(worker, (int(field[11]) + int(field[12])) / ticks)
        resident.add_metric(worker, int(field[21]) * os.sysconf("SC_PAGE_SIZE"))
        threads.add_metric(worker, int(field[17]))
        began.add_metric(worker, _booted() + int(field[19]) / ticks)
        files.add_metric(worker, opened)
        most.add_metric(worker, _most_files(limits))
    yield from (resident, used, files, most, threads, began)


def _booted() -> float:
    """When the machine was started, in seconds since 1970."""
    return time.time() - time.clock_gettime(time.CLOCK_BOOTTIME)


def _most_files(limits: str) -> float:
    line = next(line for line in limits.splitlines() if line.startswith("Max open files"))
    soft = line.split()[3]
    return float("inf") if soft == "unlimited" else float(soft)


class GarbageTimes:
    """Tells each collection of garbage, while it is entered: its generation, and its seconds."""

    def __init__(self, tell: Callable[[int, float], None]) -> None:
        self._tell = tell
        self._started = 0.0

    def __enter__(self) -> None:
        gc.callbacks.append(self._note)

    def __exit__(self, *_: object) -> None:
        gc.callbacks.remove(self._note)

    def _note(self, phase: str, about: dict[str, int]) -> None:
        if phase == "start":
            self._started = time.perf_counter()
        else:
            self._tell(about["generation"], time.perf_counter() - self._started)
