"""Whose request it is in a trace over several services: `traceparent` (W3C), and OpenTelemetry.

The caller's trace is named in the log line and in `traceresponse`, with an id of this piece of the
work, whether spans are sent anywhere or not. OpenTelemetry is the extra `tracing`; it is loaded
only where it is wanted.
"""

import os
import re
from collections.abc import Iterable
from dataclasses import dataclass
from importlib import import_module
from typing import Any

from litestar.types import Scope

from halfangle_service import __version__
from halfangle_service.errors import HalfangleError
from halfangle_service.settings import Settings

_TRACEPARENT = re.compile(rb"([0-9a-f]{2})-([0-9a-f]{32})-([0-9a-f]{16})-([0-9a-f]{2})(-.*)?")
_ENDPOINTS = ("OTEL_EXPORTER_OTLP_ENDPOINT", "OTEL_EXPORTER_OTLP_TRACES_ENDPOINT")
_NEEDED = ("opentelemetry.sdk.trace", "opentelemetry.exporter.otlp.proto.http.trace_exporter")


class NoTracing(HalfangleError):
    """Spans are wanted, and what makes them is not installed."""


@dataclass(frozen=True, slots=True)
class Trace:
    """A trace that a request belongs to: its id, the caller's span, and its flags, as hex."""

    trace: str
    span: str
    flags: str


def trace_of(headers: Iterable[tuple[bytes, bytes]]) -> Trace | None:
    """The trace that a caller names; None where it names none, several, or none that can be.

    >>> trace_of([(b"traceparent", b"00-" + b"a" * 32 + b"-" + b"b" * 16 + b"-01")]).span
    'bbbbbbbbbbbbbbbb'
    >>> trace_of([(b"traceparent", b"00-" + b"0" * 32 + b"-" + b"b" * 16 + b"-01")])
    """
    sent = [value for name, value in headers if name == b"traceparent"]
    found = _TRACEPARENT.fullmatch(sent[0]) if len(sent) == 1 else None
    if found is None:
        return None
    version, trace, span, flags, more = found.groups()
    # Of a later version the parts known here are taken; 00 has no more, ff is none.
    impossible = version == b"ff" or (version == b"00" and more) or not trace.strip(b"0")
    if impossible or not span.strip(b"0"):
        return None
    return Trace(trace.decode(), span.decode(), flags.decode())


def is_traced(settings: Settings) -> bool:
    """Whether spans are to be sent."""
    if settings.tracing != "auto":
        return settings.tracing == "on"
    told = any(os.environ.get(name) for name in _ENDPOINTS)
    disabled = os.environ.get("OTEL_SDK_DISABLED", "").strip().lower() == "true"
    return told and not disabled and os.environ.get("OTEL_TRACES_EXPORTER", "otlp") != "none"


def require_tracing(settings: Settings) -> None:
    """Raise NoTracing where spans are wanted and cannot be made."""
    if not is_traced(settings):
        return
    try:
        for module in _NEEDED:
            import_module(module)
    except ImportError:
        raise NoTracing(
            'tracing: spans need the extra: pip install "halfangle-service[tracing]"; '
            "HALFANGLE_TRACING=off goes without"
        ) from None


class Tracing:
    """Spans of requests, one each, with route and status and no value of the request."""

    def __init__(self, exporter: Any = None) -> None:
        """Start; `exporter` takes spans as they end, in place of the one by the environment."""
        sdk: Any = import_module("opentelemetry.sdk.trace")
        export: Any = import_module("opentelemetry.sdk.trace.export")
        resources: Any = import_module("opentelemetry.sdk.resources")
        self._api: Any = import_module("opentelemetry.trace")
        about = {"service.name": "halfangle", "service.version": __version__}
        # What the environment says (OTEL_SERVICE_NAME, OTEL_RESOURCE_ATTRIBUTES) stands over it.
        resource = resources.Resource(about).merge(resources.OTELResourceDetector().detect())
        self._provider = sdk.TracerProvider(resource=resource)
        if exporter is None:
            otlp: Any = import_module(_NEEDED[1])
            processor = export.BatchSpanProcessor(otlp.OTLPSpanExporter())
        else:
            processor = export.SimpleSpanProcessor(exporter)
        self._provider.add_span_processor(processor)
        self._tracer = self._provider.get_tracer("halfangle-service", __version__)

    def begin(self, scope: Scope, trace: Trace | None) -> Any:
        """Begin the span of a request."""
        context = None
        if trace is not None:
            parent = self._api.SpanContext(
                int(trace.trace, 16),
                int(trace.span, 16),
                is_remote=True,
                trace_flags=self._api.TraceFlags(int(trace.flags, 16)),
            )
            context = self._api.set_span_in_context(self._api.NonRecordingSpan(parent))
        asked: Any = scope
        method, route = asked.get("method", ""), asked["path_template"]
        return self._tracer.start_span(
            f"{method} {route}",
            context=context,
            kind=self._api.SpanKind.SERVER,
            attributes={"http.request.method": method, "http.route": route},
        )

    def end(self, span: Any, status: int, request_id: str) -> None:
        """End it with what came of the request."""
        span.set_attribute("http.response.status_code", status)
        span.set_attribute("halfangle.request_id", request_id)
        if status >= 500:
            span.set_status(self._api.StatusCode.ERROR)
        span.end()

    def stop(self) -> None:
        """Send what waits to be sent."""
        self._provider.shutdown()


def span_id(span: Any) -> str:
    """Id of a piece of work in a trace: its span's, else one made here."""
    return os.urandom(8).hex() if span is None else f"{span.get_span_context().span_id:016x}"
