"""What is seen from outside: metrics of all that happens, traces, slow requests by their shape."""

import json
import re
from collections.abc import Iterator
from typing import Any

import pytest
from litestar.testing import TestClient
from prometheus_client.parser import text_string_to_metric_families

from halfangle_service import __version__
from halfangle_service.app import create_app
from halfangle_service.http.problems import PROBLEM_TYPES
from halfangle_service.http.watch.cells import Cells
from halfangle_service.http.watch.metrics import BUCKETS, FAMILIES, REQUESTS, SECONDS, Metrics
from halfangle_service.http.watch.shapes import shape_of
from halfangle_service.http.watch.traces import NoTracing, Tracing, require_tracing, trace_of
from halfangle_service.logs import configure_logging
from halfangle_service.settings import Settings
from http_support import OPERATIONS, SINE, SINE_QUERY, Service

GOOD = {"units": "in", "center_distance": 5, "angle": 30}
TRACE, SPAN = "0af7651916cd43dd8448eb211c80319c", "b7ad6b7169203331"
WHEEL = "/v1/wheels/speed"


@pytest.fixture(scope="module")
def spans() -> Any:
    """Where the spans of `traced` go."""
    pytest.importorskip("opentelemetry.sdk")
    from opentelemetry.sdk.trace.export.in_memory_span_exporter import (  # noqa: PLC0415
        InMemorySpanExporter,
    )

    return InMemorySpanExporter()


@pytest.fixture(scope="module")
def seen(spans: Any) -> Iterator[Service]:
    """A service that logs every answer, finds every heavy one slow, and makes spans."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr("halfangle_service.app.Tracing", lambda: Tracing(spans))
        app = create_app(Settings(log_level="error", tracing="on", slow_milliseconds=0.001))
        with TestClient(app, raise_server_exceptions=False) as client:
            yield client


def told(service: Service) -> dict[str, float]:
    """Every number of the metrics, by its name and labels."""
    return {
        f"{sample.name}{json.dumps(sample.labels, sort_keys=True)}": sample.value
        for family in text_string_to_metric_families(service.get("/metrics").text)
        for sample in family.samples
    }


def risen(service: Service, *requests: dict[str, Any]) -> dict[str, float]:
    """What rises in the metrics by these requests."""
    before = told(service)
    for request in requests:
        service.request(**request)
    after = told(service)
    return {name: after[name] - before.get(name, 0.0) for name in after}


def labelled(name: str, **labels: str) -> str:
    """Name of a number as `told` has it."""
    return name + json.dumps(labels, sort_keys=True)


# Metrics --------------------------------------------------------------------------------------
def test_what_is_asked_is_counted_by_route_and_problem(seen: Service) -> None:
    """Requests by route and status, refusals by the type of their problem, bytes, times."""
    rows = [{"ref": 1, "operation": "sine.setting", "request": GOOD},
            {"ref": 2, "operation": "sine.setting", "request": {}}]  # fmt: skip
    grew = risen(
        seen,
        {"method": "POST", "url": SINE, "json": GOOD},
        {"method": "POST", "url": SINE, "json": {}},
        {"method": "GET", "url": "/nowhere/at/all"},
        {"method": "BREW", "url": SINE},
        {"method": "POST", "url": "/v1/batches", "json": {"rows": rows}},
    )
    requests = "halfangle_requests_total"
    assert grew[labelled(requests, method="POST", route=SINE, status="200")] == 1.0
    assert grew[labelled(requests, method="POST", route=SINE, status="422")] == 1.0
    assert grew[labelled(requests, method="GET", route="other", status="404")] == 1.0
    assert grew[labelled(requests, method="other", route="other", status="405")] == 1.0
    refusals = {
        name: grew[labelled("halfangle_refusals_total", type=name)] for name in PROBLEM_TYPES
    }
    assert {name: n for name, n in refusals.items() if n} == {
        "invalid-request": 2.0, "not-found": 1.0, "method-not-allowed": 1.0
    }  # fmt: skip
    assert grew[labelled("halfangle_batch_rows_total", status="ok")] == 1.0
    assert grew[labelled("halfangle_batch_rows_total", status="refused")] == 1.0
    assert grew[labelled("halfangle_request_seconds_count", route=SINE)] == 2.0
    assert grew["halfangle_sent_bytes_total{}"] > 2_000
    assert grew["halfangle_slow_requests_total{}"] >= 3.0


def test_stops_and_cautions_are_counted_by_code(seen: Service) -> None:
    """What the service warned of is known where nobody reads the answers; notes are not counted."""
    too_fast = {"units": "in", "wheel_diameter": 7, "rpm": 3700, "marked_rpm": 3600}
    answer = seen.post(WHEEL, json=too_fast)
    assert answer.is_success, answer.text
    advised = {(a["severity"], a["code"]) for a in answer.json()["advisories"]}
    assert "stop" in {severity for severity, _ in advised}
    grew = risen(seen, {"method": "POST", "url": WHEEL, "json": too_fast})
    counted = {
        tuple(json.loads(name.removeprefix("halfangle_advisories_total")).values())[::-1]
        for name, more in grew.items()
        if name.startswith("halfangle_advisories_total") and more
    }
    assert counted == {one for one in advised if one[0] != "note"}


def test_the_least_times_are_told_apart(seen: Service) -> None:
    """Classes of times begin at 0.1 ms, since half of the answers take less than one."""
    text = seen.get("/metrics").text
    limits = re.findall(r'halfangle_heavy_wait_seconds_bucket\{le="([^"]+)"\}', text)
    assert limits == [*map(str, BUCKETS), "+Inf"]
    assert BUCKETS[0] == 0.0001
    assert "_created" not in text


def test_the_build_and_the_process_are_told(seen: Service) -> None:
    """Release and Python; memory, processor time, descriptors, threads and garbage."""
    numbers = told(seen)
    assert any(name.startswith("halfangle_build_info") and __version__ in name for name in numbers)
    for name in ("resident_memory_bytes", "cpu_seconds_total", "open_fds", "max_fds", "threads",
                 "start_time_seconds"):  # fmt: skip
        assert numbers[labelled(f"process_{name}", worker="1")] > 0.0
    assert labelled("halfangle_gc_runs_total", generation="2") in numbers


def test_every_family_is_told_from_the_start() -> None:
    """What has no labels is there as 0 before anything happens, so that a first rise is seen."""
    with TestClient(create_app(Settings(log_level="error"))) as service:
        text = service.get("/metrics").text
    for family in FAMILIES:
        assert f"# TYPE {family.name}" in text
        if not family.labels:
            assert re.search(rf"^{family.name}\S* \d", text, re.MULTILINE), family.name


# Of several workers ---------------------------------------------------------------------------
def test_workers_are_added_and_what_one_counted_stays() -> None:
    """Each counts in a part; who follows one that ended goes on from its counts, not levels."""
    metrics = Metrics(workers=2)
    metrics.observe("GET", "/a", 200, 0.0002)
    metrics.cells.numbers[metrics.in_flight] += 5.0
    metrics.begin(1)
    for _ in range(2):
        metrics.observe("GET", "/a", 200, 40.0)
    metrics.begin(0)
    metrics.observe("GET", "/a", 200, 0.0002)
    both = metrics.cells.together()
    assert both[REQUESTS.name, "GET", "/a", "200"] == [4.0]
    *counts, seconds = both[SECONDS.name, "/a"]
    assert (counts[1], counts[-1]) == (2.0, 2.0)
    assert seconds == pytest.approx(80.0004)
    assert both["halfangle_requests_in_flight",] == [0.0]


def test_numbers_without_room_harm_nobody() -> None:
    """A part that is full takes no further name; those it has go on."""
    cells = Cells()
    first = cells.first_of(("a", "b"))
    for number in range(200_000):
        place = cells.first_of(("a", str(number)), 3)
        if place == 0:
            break
    assert place == 0
    cells.numbers[first] += 1.0
    assert cells.together()["a", "b"] == [1.0]


# Traces ---------------------------------------------------------------------------------------
GOOD_TRACE = f"00-{TRACE}-{SPAN}-01"


@pytest.mark.parametrize(
    "sent",
    [
        "", "00", f"ff-{TRACE}-{SPAN}-01", f"00-{TRACE}-{SPAN}-01-more", f"00-{'0' * 32}-{SPAN}-01",
        f"00-{TRACE}-{'0' * 16}-01", f"00-{TRACE.upper()}-{SPAN}-01", f"00-{TRACE}-{SPAN}",
        f"00_{TRACE}_{SPAN}_01", f"00-{TRACE}-{SPAN}-01\u00e9", "x" * 60_000,
    ],
)  # fmt: skip
def test_what_is_no_trace_is_passed_over(seen: Service, sent: str) -> None:
    """A wrong `traceparent` is as none (W3C Trace Context, 3.2.2): the request is answered."""
    answer = seen.get(SINE_QUERY, headers={b"traceparent": sent.encode("latin-1")})
    assert (answer.status_code, "traceresponse" in answer.headers) == (200, False)


def test_a_later_version_of_a_trace_is_read_as_far_as_it_is_known() -> None:
    """Of version 01 the parts of 00 are taken, whatever follows; two headers are none."""
    header = (b"traceparent", f"01-{TRACE}-{SPAN}-01-more".encode())
    found = trace_of([header])
    assert found is not None
    assert (found.trace, found.span, found.flags) == (TRACE, SPAN, "01")
    assert trace_of([header, header]) is None


def test_a_request_is_a_span_of_its_callers_trace(seen: Service, spans: Any) -> None:
    """One span a request with route and status; its id is told to the caller, no value is in it."""
    spans.clear()
    answer = seen.get(SINE_QUERY, headers={"traceparent": GOOD_TRACE, "X-Request-ID": "bench-7"})
    seen.post(SINE, json={})
    first, second = spans.get_finished_spans()
    assert first.name == f"GET {SINE}"
    assert f"{first.context.trace_id:032x}" == TRACE
    assert f"{first.parent.span_id:016x}" == SPAN
    assert answer.headers["traceresponse"] == f"00-{TRACE}-{first.context.span_id:016x}-01"
    assert dict(first.attributes) == {
        "http.request.method": "GET",
        "http.route": SINE,
        "http.response.status_code": 200,
        "halfangle.request_id": "bench-7",
    }
    assert second.attributes["http.response.status_code"] == 422
    assert second.parent is None
    assert first.resource.attributes["service.name"] == "halfangle"


def test_a_trace_is_in_the_log_without_spans(capsys: pytest.CaptureFixture[str]) -> None:
    """Log line and answer name the caller's trace where no span is sent anywhere."""
    with TestClient(create_app(Settings(log_level="info"))) as service:
        answer = service.get("/health/live", headers={"traceparent": GOOD_TRACE})
    [line] = [json.loads(text) for text in capsys.readouterr().err.splitlines()]
    assert line["trace_id"] == TRACE
    assert answer.headers["traceresponse"] == f"00-{TRACE}-{line['span_id']}-01"
    assert line["span_id"] != SPAN


def test_spans_that_cannot_be_made_end_the_start(monkeypatch: pytest.MonkeyPatch) -> None:
    """Wanted and not installed: the start says which extra is missing, and how to go without."""
    monkeypatch.setattr("halfangle_service.http.watch.traces._NEEDED", ("no_such_module",))
    monkeypatch.setenv("OTEL_EXPORTER_OTLP_ENDPOINT", "http://127.0.0.1:4318")
    with pytest.raises(NoTracing, match=r"halfangle-service\[tracing\]"):
        require_tracing(Settings())
    require_tracing(Settings(tracing="off"))
    monkeypatch.setenv("OTEL_SDK_DISABLED", "true")
    require_tracing(Settings())


# Slow requests --------------------------------------------------------------------------------
def test_a_slow_request_is_logged_by_its_shape(capsys: pytest.CaptureFixture[str]) -> None:
    """Operation, time, counts and lengths; never a value, nor a name of the caller's own."""
    app = create_app(Settings(log_level="warning", slow_milliseconds=0.001))
    with TestClient(app) as service:
        sent = {**GOOD, "angle": "30°00'00\"", "secret-name": "secret-value"}
        service.post(SINE, json=sent, headers={"X-Request-ID": "bench-7"})
    [line] = [json.loads(text) for text in capsys.readouterr().err.splitlines()]
    assert (line["event"], line["operation"], line["request_id"]) == (
        "slow",
        "sine.setting",
        "bench-7",
    )
    assert line["milliseconds"] > 0
    assert line["shape"]["names"] == 4
    assert "secret" not in json.dumps(line)
    assert "30" not in json.dumps(line["shape"])


@pytest.mark.parametrize(
    ("path", "sent"),
    [
        ("/v1/sine/setting/sheet", GOOD),
        (
            "/v1/curves/sine.setting",
            {
                "request": {"units": "in", "center_distance": 5},
                "over": {"angle": [30, 31]},
                "columns": ["height"],
            },
        ),
        ("/v1/jobs/routing/csv", dict(OPERATIONS["jobs.routing"].example)),
    ],
)
def test_other_forms_of_an_answer_are_slow_too(
    capsys: pytest.CaptureFixture[str], seen: Service, path: str, sent: dict[str, Any]
) -> None:
    """A sheet, a curve and a routing's lines take the longest of all, and are noted as such."""
    configure_logging("warning")
    slow = labelled("halfangle_slow_requests_total")
    assert risen(seen, {"method": "POST", "url": path, "json": sent})[slow] == 1
    [line] = [json.loads(text) for text in capsys.readouterr().err.splitlines()]
    assert (line["event"], line["row"]) == ("slow", False)


def test_a_shape_tells_the_longest_lists_by_their_path() -> None:
    """Lists within lists, most of them short: the five longest are told, each path once."""
    body = {"blocks": [{"sizes": [1] * n} for n in range(7)], "x": {"y": "long text"}}
    shape = shape_of(json.dumps(body).encode())
    assert shape["lists"] == {"blocks": 7, "blocks.sizes": 6}
    assert shape["longest_text"] == 9
