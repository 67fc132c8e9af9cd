"""A drawing where `formats` asks for it: answers do not grow by themselves."""

from typing import Annotated, Literal

from pydantic import Field

from halfangle_service.fields.base import RequestModel, ResultModel

DrawingFormat = Literal["svg"]
Formats = Annotated[list[DrawingFormat], Field(min_length=1, max_length=2)]


class DrawnFields(RequestModel):
    """Whether a drawing is wanted."""

    formats: Formats | None = Field(
        None, description="`svg` for a drawing. Absent: none.", examples=[["svg"]]
    )


class DrawnResult(ResultModel):
    """The drawing asked for."""

    svg: str | None = Field(
        description="The drawing, as SVG; null where `formats` did not ask for it."
    )


def is_drawn(request: DrawnFields) -> bool:
    """True where a drawing is asked for: that takes more than some milliseconds."""
    return request.formats is not None
