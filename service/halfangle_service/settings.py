"""Settings, each from a flag or from the environment (`HALFANGLE_PORT=8080`)."""

from typing import Annotated, Literal

from pydantic import Field, StringConstraints
from pydantic_settings import BaseSettings, SettingsConfigDict

ENVIRONMENT_PREFIX = "HALFANGLE_"

#: An empty key would be what a caller without one sends.
ApiKey = Annotated[str, StringConstraints(strip_whitespace=True, min_length=1)]


class Settings(BaseSettings):
    """How the service runs. Nothing here changes a result."""

    model_config = SettingsConfigDict(env_prefix=ENVIRONMENT_PREFIX, frozen=True, extra="ignore")

    host: str = Field("127.0.0.1", description="Address to listen on.")
    port: Annotated[int, Field(ge=0, le=65535)] = Field(8765, description="Port to listen on.")
    body_limit_bytes: Annotated[int, Field(ge=1_000)] = Field(
        1_048_576, description="Largest request body; a larger one is refused with 413."
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
        3600, description="How long an answer to GET may be kept."
    )
    stop_seconds: Annotated[int, Field(ge=0)] = Field(
        30, description="How long accepted requests may take to finish at a stop."
    )
    log_level: Literal["debug", "info", "warning", "error"] = Field(
        "info", description="Least severity that is logged."
    )
