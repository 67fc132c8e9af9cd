"""What an answer says, and what a refusal does: the other half of `endpoint`."""

from typing import Any

from pydantic_core import ValidationError, from_json

from halfangle_client.endpoint import AnswerT, Endpoint, Reply, made_up_document, model_of
from halfangle_client.errors import ProblemError, UnexpectedAnswer, error_of
from halfangle_client.sheet import Sheet, advisories_in


def answer_of(endpoint: Endpoint[AnswerT], reply: Reply, request_id: str) -> AnswerT:
    """Read an answer; raises ProblemError for a refusal, UnexpectedAnswer for what it is not."""
    if reply.status >= 300:
        raise problem_of(reply, endpoint.path, request_id)
    wanted: Any = endpoint.answer_type
    if wanted is bytes:
        return reply.body  # type: ignore[return-value]
    if wanted is Sheet:
        return _sheet_of(reply)  # type: ignore[return-value]
    try:
        if wanted is str:
            return reply.body.decode()  # type: ignore[return-value]
        answer: AnswerT = wanted.model_validate_json(reply.body)
    except (ValidationError, UnicodeDecodeError) as error:
        came = reply.headers.get("content-type", "no media type")
        raise UnexpectedAnswer(
            f"{endpoint.name}: what came back ({came}) is no {wanted.__name__}. Is this the "
            f"service, and of this release? {error}"
        ) from error
    return answer


def _sheet_of(reply: Reply) -> Sheet:
    """A sheet, with what its header says that it advises."""
    media_type = reply.headers.get("content-type", "")
    return Sheet(reply.body, media_type, advisories_in(reply.headers.get("advisories", "")))


def data_of(endpoint: Endpoint[Any], body: bytes) -> Any:
    """Read an answer as data: JSON where the endpoint gives JSON, else text or bytes."""
    if endpoint.answer in {bytes, Sheet}:
        return body
    if endpoint.answer is str:
        return body.decode()
    try:
        return from_json(body, allow_inf_nan=False)
    except ValueError as error:
        raise UnexpectedAnswer(f"{endpoint.name}: what came back is no JSON: {error}") from error


def problem_of(reply: Reply, path: str, request_id: str) -> ProblemError:
    """Give the error of a refusal, whether or not it came with a problem document."""
    model = model_of("Problem")
    try:
        problem = model.model_validate_json(reply.body)
    except ValidationError:
        problem = model(**made_up_document(reply, path))
    return error_of(problem, request_id=reply.headers.get("x-request-id", request_id))
