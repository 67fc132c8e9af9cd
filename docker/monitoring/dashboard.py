"""Writes `dashboard.json` beside it: what a dashboard shows of the service, panel by panel.

    python docker/monitoring/dashboard.py

The file is committed; a test holds it to this one, and each expression to a real server's answer.
"""

import json
from dataclasses import dataclass
from pathlib import Path
from typing import Any

FILE = Path(__file__).with_name("dashboard.json")
_SOURCE = {"type": "prometheus", "uid": "${source}"}
_WIDTH, _HEIGHT, _COLUMNS = 8, 7, 3
_RATE = "[$__rate_interval]"


@dataclass(frozen=True)
class Panel:
    """One graph: its title, its unit, and each expression with what its lines are called."""

    title: str
    unit: str
    lines: dict[str, str]
    meaning: str = ""


def _rate(metric: str, by: str) -> str:
    return f"sum by ({by}) (rate({metric}{_RATE}))"


def _share(quantile: float, metric: str, by: str = "le") -> str:
    return f"histogram_quantile({quantile}, {_rate(f'{metric}_bucket', by)})"


_TIMES = "halfangle_request_seconds"
PANELS = (
    Panel("Requests", "reqps", {_rate("halfangle_requests_total", "status"): "{{status}}"}),
    Panel(
        "Time to answer",
        "s",
        {_share(q, _TIMES): f"{q:.0%}" for q in (0.5, 0.9, 0.99)},
        "Documents and checks of health included.",
    ),
    Panel("In flight", "short", {"sum(halfangle_requests_in_flight)": "requests",
                                 "sum(halfangle_connections)": "connections"}),
    Panel("Busiest routes", "reqps",
          {"topk(8, " + _rate("halfangle_requests_total", "route") + ")": "{{route}}"}),
    Panel("Slowest routes, 90 %", "s",
          {"topk(8, " + _share(0.9, _TIMES, "le, route") + ")": "{{route}}"}),
    Panel("Heavy work", "short", {"sum(halfangle_heavy_running)": "running",
                                  "sum(halfangle_heavy_waiting)": "waiting"}),
    Panel("Wait for a turn", "s",
          {_share(q, "halfangle_heavy_wait_seconds"): f"{q:.0%}" for q in (0.5, 0.99)}),
    Panel("Refusals", "reqps", {_rate("halfangle_refusals_total", "type"): "{{type}}"},
          "A rise of invalid-request after a release: a caller was not moved with it."),
    Panel("Stops", "reqps",
          {_rate('halfangle_advisories_total{severity="stop"}', "code"): "{{code}}"},
          "What was asked for and must not be run: who asks may want help."),
    Panel("Rows of batches", "reqps",
          {_rate("halfangle_batch_rows_total", "status"): "{{status}}"}),
    Panel("Requests and rows by key", "reqps",
          {_rate("halfangle_key_requests_total", "key"): "{{key}}",
           _rate("halfangle_key_rows_total", "key"): "{{key}}, rows"}),
    Panel("Refused for their pace", "reqps",
          {_rate("halfangle_key_limited_total", "key"): "{{key}}"}),
    Panel("Memory of a worker", "bytes",
          {"process_resident_memory_bytes": "{{instance}} {{worker}}"}),
    Panel("Processor of a worker", "percentunit",
          {f"rate(process_cpu_seconds_total{_RATE})": "{{instance}} {{worker}}"}),
    Panel("Descriptors", "percentunit",
          {"process_open_fds / process_max_fds": "{{instance}} {{worker}}"}),
    Panel("Collections of garbage, share of time", "percentunit",
          {f"rate(halfangle_gc_seconds_total{_RATE})": "{{instance}}"}),
    Panel("Bytes", "Bps", {f"sum(rate(halfangle_received_bytes_total{_RATE}))": "in",
                           f"sum(rate(halfangle_sent_bytes_total{_RATE}))": "out"}),
    Panel("What should stay level", "short",
          {"sum(halfangle_worker_starts_total)": "starts of workers",
           "sum(halfangle_log_lines_dropped_total)": "lines of the log dropped",
           "sum(halfangle_slow_requests_total)": "slow requests",
           "sum(halfangle_keys_file_unreadable)": "keys unreadable"}),
    Panel("Releases", "short",
          {"count by (release, python) (halfangle_build_info)": "{{release}}, Python {{python}}"}),
    Panel("Days until a key ends", "d",
          {"(min by (key) (halfangle_key_ends_timestamp_seconds) - time()) / 86400": "{{key}}"}),
)  # fmt: skip


def dashboard() -> dict[str, Any]:
    """The whole as the program that shows it reads it."""
    return {
        "title": "Halfangle",
        "uid": "halfangle",
        "schemaVersion": 39,
        "editable": True,
        "refresh": "30s",
        "time": {"from": "now-3h", "to": "now"},
        "templating": {
            "list": [
                {"name": "source", "type": "datasource", "query": "prometheus", "label": "Source"}
            ]
        },
        "panels": [_written(number, panel) for number, panel in enumerate(PANELS)],
    }


def _written(number: int, panel: Panel) -> dict[str, Any]:
    row, column = divmod(number, _COLUMNS)
    targets = [
        {"refId": chr(ord("A") + place), "datasource": _SOURCE, "expr": e, "legendFormat": legend}
        for place, (e, legend) in enumerate(panel.lines.items())
    ]
    return {
        "id": number + 1,
        "type": "timeseries",
        "title": panel.title,
        **({"description": panel.meaning} if panel.meaning else {}),
        "datasource": _SOURCE,
        "gridPos": {"x": column * _WIDTH, "y": row * _HEIGHT, "w": _WIDTH, "h": _HEIGHT},
        "fieldConfig": {"defaults": {"unit": panel.unit, "min": 0}, "overrides": []},
        "targets": targets,
    }


def dashboard_json() -> str:
    """The file's text."""
    return json.dumps(dashboard(), indent=2, ensure_ascii=False) + "\n"


if __name__ == "__main__":
    FILE.write_text(dashboard_json())
