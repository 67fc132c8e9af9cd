"""Settings, each from a flag or from the environment (`HALFANGLE_PORT=8080`)."""

from pathlib import Path
from typing import Annotated, Literal

from pydantic import Field, StringConstraints
from pydantic_settings import BaseSettings, SettingsConfigDict

ENVIRONMENT_PREFIX = "HALFANGLE_"

#: An empty key would be what a caller without one sends.
ApiKey = Annotated[str, StringConstraints(strip_whitespace=True, min_length=1)]


class Settings(BaseSettings):
    """How the service runs. Only `profiles` can bear on a result, which then names the profile."""

    model_config = SettingsConfigDict(env_prefix=ENVIRONMENT_PREFIX, frozen=True, extra="ignore")

    host: str = Field("127.0.0.1", description="Address to listen on.")
    port: Annotated[int, Field(ge=0, le=65535)] = Field(8765, description="Port to listen on.")
    body_limit_bytes: Annotated[int, Field(ge=1_000)] = Field(
        1_048_576, description="Largest request body; a larger one is refused with 413."
    )
    bodies_limit_bytes: Annotated[int, Field(ge=1_000_000)] = Field(
        33_554_432,
        description="Most bytes of all bodies together that are being read or worked on, the first "
        "65536 of each not counted; past it the answer is 503.",
    )
    connection_limit: Annotated[int, Field(ge=10, le=100_000)] = Field(
        1_000, description="Most connections that are open at once; past it the answer is 503."
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
        2, description="Heavy requests that run at once."
    )
    heavy_queue: Annotated[int, Field(ge=0, le=10_000)] = Field(
        32, description="Heavy requests that may wait; past it the answer is 503."
    )
    api_keys: frozenset[ApiKey] = Field(
        frozenset(), description="JSON list of accepted API keys; empty: none is asked for."
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
    profiles: Path | None = Field(
        None, description="TOML file of named profiles of a shop's equipment; it is only read."
    )
    log_level: Literal["debug", "info", "warning", "error"] = Field(
        "info", description="Least severity that is logged."
    )
