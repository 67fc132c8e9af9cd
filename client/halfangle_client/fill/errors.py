"""What keeps a workbook from being filled."""

from collections.abc import Sequence

from halfangle_client.errors import HalfangleError


class FillError(HalfangleError):
    """Nothing was filled; the message says why, with sheet, row and column where known."""


class FileRefused(FillError):
    """The file cannot be read, or not be filled without harm to it."""


class MapRefused(FillError):
    """Which column is which field is not settled.

    `wants` is what a person may be asked for: `operation`, `sheet` or `columns`; `lacking` names
    the required fields that have none.
    """

    def __init__(self, message: str, wants: str = "", lacking: Sequence[str] = ()) -> None:
        super().__init__(message)
        self.wants: str = wants
        self.lacking: tuple[str, ...] = tuple(lacking)


class NotWritten(FillError):
    """A file could not be written; the rows that were answered stand in the side file."""


class NotFinished(FillError):
    """Some rows got no answer; those that did stand in the side file, for the next run."""


class FillInterrupted(KeyboardInterrupt):
    """Ctrl-C came; the rows that were answered stand in the side file, for the next run."""
