"""Fills the rows of a workbook or a .csv with what the service answers.

One call does it; what a file's headers do not say, a map says:

    from halfangle_client.fill import FillMap, fill

    with Halfangle() as client:
        filled = fill(client, "in.xlsx", "out.xlsx", FillMap("sine.setting", fixed={"units": "in"}))
        print(filled.answered, filled.refused, filled.notes)

    errors    what keeps a file from being filled
    mapping   which column is which field, as TOML
    headers   that found by the headers
    units     units in headers
    results   which values are written, in which unit
    settled   all that is known before the first row is asked
    asked     a row's cells as a request
    filling   the rows asked for, and the file written
    journal   the side file, by which a run goes on
    saving    the output, whole or not at all
    _books    files of each kind
"""

from pathlib import Path
from typing import TYPE_CHECKING

from halfangle_client.fill.errors import (
    FileRefused,
    FillError,
    FillInterrupted,
    MapRefused,
    NotFinished,
    NotWritten,
)
from halfangle_client.fill.filling import Filled, Filling, Tried
from halfangle_client.fill.mapping import FillMap, read_map, written_map
from halfangle_client.rows.keeping import Progress

if TYPE_CHECKING:
    from halfangle_client import Halfangle

__all__ = [
    "FileRefused",
    "FillError",
    "FillInterrupted",
    "FillMap",
    "Filled",
    "Filling",
    "MapRefused",
    "NotFinished",
    "NotWritten",
    "Tried",
    "fill",
    "read_map",
    "written_map",
]


def fill(
    client: "Halfangle",
    source: str | Path,
    target: str | Path,
    said: FillMap | None = None,
    *,
    overwrite: bool = False,
    progress: Progress | None = None,
) -> Filled:
    """Fill each row of a sheet with what the service answers to it, into another file.

    `said` names the operation, and what the headers do not say; where it is left out, it is read
    from the .fill.toml beside the source. Result columns are written right of those used, or into
    those that have their header already; `advisories` and `problem` beside them. The source is
    never written to. A run that broke off goes on when it is called again.

    Raises:
        FileRefused: the file cannot be read, or not be filled without harm.
        MapRefused: which column is which field is not settled.
        NotFinished: some rows got no answer; what is done is kept for the next run.
        NotWritten: a file could not be written; what is done is kept.
        FillInterrupted: Ctrl-C came; what is done is kept.
    """
    source, target = Path(source), Path(target)
    map_ = said if said is not None else read_map(map_beside(source))
    return Filling(client, source, target, map_, overwrite=overwrite).run(progress)


def map_beside(source: Path) -> Path:
    """Where the map of a file is looked for: `in.xlsx` has `in.fill.toml`."""
    return source.with_name(f"{source.stem}.fill.toml") if source.name else source
