"""Advisories: what an experienced hand would add to an answer."""

from typing import Annotated, Literal

from pydantic import Field

from halfangle_service.fields.base import ResultModel

Severity = Literal["note", "caution", "stop"]


class Advisory(ResultModel):
    """The voice of an experienced hand."""

    code: Annotated[str, Field(pattern=r"^[a-z0-9]+(-[a-z0-9]+)*$")] = Field(
        description="Stable code of the advisory.", examples=["steep-angle"]
    )
    severity: Severity = Field(
        description="`note`: a better way exists; `caution`: mind this; `stop`: do not run this."
    )
    message: str = Field(description="What to mind, in plain words.")


def note(code: str, message: str) -> Advisory:
    """Make an advisory of severity `note`."""
    return Advisory(code=code, severity="note", message=message)


def caution(code: str, message: str) -> Advisory:
    """Make an advisory of severity `caution`."""
    return Advisory(code=code, severity="caution", message=message)


def stop(code: str, message: str) -> Advisory:
    """Make an advisory of severity `stop`."""
    return Advisory(code=code, severity="stop", message=message)
