"""The same call, or any calls, for many rows: many rows a request where the service takes them."""

from halfangle_client.rows.asked import Asked, endpoint_of
from halfangle_client.rows.chunk import Answered, Chunk
from halfangle_client.rows.outcomes import BatchOutcomes, Counts, Interrupted, Outcomes
from halfangle_client.rows.tasks import batch_async, map_async, stream_async
from halfangle_client.rows.threads import batch, map_rows, stream

__all__ = [
    "Answered",
    "Asked",
    "BatchOutcomes",
    "Chunk",
    "Counts",
    "Interrupted",
    "Outcomes",
    "batch",
    "batch_async",
    "endpoint_of",
    "map_async",
    "map_rows",
    "stream",
    "stream_async",
]
