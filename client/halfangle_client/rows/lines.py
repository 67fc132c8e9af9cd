"""The model of a line of a batch. Loaded with the first rows, since pydantic is slow to load."""

from functools import cache
from typing import Any

from pydantic import create_model

from halfangle_client.answer import AnswerModel
from halfangle_client.endpoint import Endpoint, model_of


@cache
def line_model_of(endpoint: Endpoint[Any]) -> Any:
    """Give the model of a line that answers this call, or that ends the batch."""
    answer: Any = endpoint.answer_type
    problem: Any = model_of("Problem")
    return create_model(
        "BatchLine",
        __base__=AnswerModel,
        ref=(int | None, None),
        answer=(answer | None, None),
        problem=(problem | None, None),
        counts=(dict[str, int] | None, None),
    )
