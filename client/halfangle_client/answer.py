"""What every model of an answer is made from."""

from pydantic import BaseModel, ConfigDict


class AnswerModel(BaseModel):
    """Part of an answer: its numbers are numbers and finite, as the service promises.

    A text in place of a number, or NaN, is no answer of the service. What a later release adds, a
    field or a word among the options, is no fault.
    """

    model_config = ConfigDict(strict=True, allow_inf_nan=False, defer_build=True)
