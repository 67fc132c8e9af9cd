"""Settings: each a flag, a variable of the environment (`HALFANGLE_PORT=8080`) or a line of a file.

Where a value comes from is found by `reading`, what there is to set is told by `told`.
"""

from pathlib import Path
from typing import Annotated, Literal

from pydantic import Field, StringConstraints
from pydantic_settings import BaseSettings, SettingsConfigDict

ENVIRONMENT_PREFIX = "HALFANGLE_"

#: An empty key would be what a caller without one sends.
ApiKey = Annotated[str, StringConstraints(strip_whitespace=True, min_length=1)]
#: What may be read without a key: what tells how to call, and what whoever watches asks for.
OpenPart = Literal["documents", "health", "metrics"]


class Settings(BaseSettings):
    """How the service runs. Only `profiles` can bear on a result, which then names the profile."""

    model_config = SettingsConfigDict(env_prefix=ENVIRONMENT_PREFIX, frozen=True, extra="ignore")

    host: Annotated[str, Field(min_length=1)] = Field(
        "127.0.0.1", description="Address to listen on; 0.0.0.0 or ::, every address."
    )
    port: Annotated[int, Field(ge=0, le=65535)] = Field(
        8765, description="Port to listen on; 0: any that is free."
    )
    workers: Annotated[int, Field(ge=1, le=64)] = Field(
        1,
        description="Processes that serve the one port; one a core is as many as gain anything. "
        "One that dies is started again.",
    )
    connection_limit: Annotated[int, Field(ge=10, le=100_000)] = Field(
        1_000,
        description="Most connections of a worker that are open at once; past it the answer is "
        "503.",
    )
    cors_origins: tuple[str, ...] = Field(
        (),
        description="JSON list of origins whose pages may call the service; `*` in one stands for "
        "any text.",
    )
    cache_seconds: Annotated[int, Field(ge=0)] = Field(
        60,
        description="How long an answer to GET may be kept before it is asked for again; so long "
        "at most is one of the release before seen after an upgrade.",
    )
    stop_seconds: Annotated[int, Field(ge=0)] = Field(
        30, description="How long accepted requests may take to finish at a stop."
    )
    body_limit_bytes: Annotated[int, Field(ge=1_000)] = Field(
        1_048_576, description="Largest request body; a larger one is refused with 413."
    )
    bodies_limit_bytes: Annotated[int, Field(ge=1_000_000)] = Field(
        33_554_432,
        description="Most bytes of all bodies together that a worker reads or works on, the first "
        "65536 of each not counted; past it the answer is 503.",
    )
    header_seconds: Annotated[float, Field(gt=0, le=3_600)] = Field(
        10.0, description="How long the head of a request may take to arrive; then 408."
    )
    body_seconds: Annotated[float, Field(gt=0, le=3_600)] = Field(
        30.0, description="How long the body of a request may take to arrive; then 408."
    )
    answer_seconds: Annotated[float, Field(gt=0, le=3_600)] = Field(
        60.0, description="How long a caller may take to read an answer; then it is cut off."
    )
    heavy_workers: Annotated[int, Field(ge=1, le=64)] = Field(
        2,
        description="Heavy requests that a worker works on at once. More gain little: Python "
        "computes in one thread at a time, so cores are used by `workers`.",
    )
    heavy_queue: Annotated[int, Field(ge=0, le=10_000)] = Field(
        32, description="Heavy requests that may wait in a worker; past it the answer is 503."
    )
    keys_file: Path | None = Field(
        None,
        description="TOML file of the digests of API keys, as `halfangle-service key` writes "
        "them; read again when it changes. Neither it nor `api_keys`: no key is asked for.",
    )
    api_keys: frozenset[ApiKey] = Field(
        frozenset(),
        description="JSON list of API keys as they are, for a trial; they count as one caller, "
        "`environment`. A variable only.",
    )
    open_paths: frozenset[OpenPart] = Field(
        frozenset({"documents", "health", "metrics"}),
        description="JSON list of what is answered without a key: `documents` (pages, contract, "
        "glossary, stored answers), `health`, `metrics`.",
    )
    rate_per_minute: Annotated[float, Field(ge=0, le=1_000_000)] = Field(
        0,
        description="Requests, and rows of batches and tables, a minute that each key may ask on "
        "average, unless the file says otherwise; past it the answer is 429. A curve counts by its "
        "points, the largest as 100 requests. 0: without limit.",
    )
    rate_burst: Annotated[int, Field(ge=1, le=1_000_000)] = Field(
        60, description="Requests that a key may ask at once after a pause, where it has a rate."
    )
    profiles: Path | None = Field(
        None, description="TOML file of named profiles of a shop's equipment; it is only read."
    )
    log_level: Literal["debug", "info", "warning", "error"] = Field(
        "info", description="Least severity that is logged."
    )
    slow_milliseconds: Annotated[float, Field(ge=0, le=3_600_000)] = Field(
        1_000,
        description="A request whose answer takes longer is logged with its shape (counts and "
        "lengths, never values). 0: none is.",
    )
    tracing: Literal["auto", "on", "off"] = Field(
        "auto",
        description="Spans by OpenTelemetry (the extra `tracing`), told where to go by the "
        "standard's variables OTEL_…. `auto`: where OTEL_EXPORTER_OTLP_ENDPOINT is set.",
    )

    @property
    def asks_for_keys(self) -> bool:
        """True where a key is needed."""
        return bool(self.api_keys) or self.keys_file is not None


#: Settings by what they are about, in the order in which they are told.
GROUPS: dict[str, tuple[str, ...]] = {
    "Where it serves": ("host", "port", "workers", "connection_limit", "stop_seconds"),
    "Who may call": (
        "keys_file",
        "api_keys",
        "open_paths",
        "rate_per_minute",
        "rate_burst",
        "cors_origins",
    ),
    "How much is taken at once": (
        "body_limit_bytes",
        "bodies_limit_bytes",
        "header_seconds",
        "body_seconds",
        "answer_seconds",
        "heavy_workers",
        "heavy_queue",
    ),
    "What it answers with": ("profiles", "cache_seconds"),
    "What is seen of it": ("log_level", "slow_milliseconds", "tracing"),
}
