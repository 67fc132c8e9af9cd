"""Writes the output whole or not at all, and never over the input."""

import os
import shutil
import tempfile
from collections.abc import Callable
from pathlib import Path
from typing import BinaryIO

from halfangle_client.fill.errors import FileRefused, NotWritten


def side_file_of(target: Path) -> Path:
    """Where the rows that are done stand until the output is whole."""
    return target.with_name(f"{target.name}.part.ndjson")


def require_apart(source: Path, target: Path, *, overwrite: bool) -> None:
    """Refuse an output that is the input by any name, or stands already. Raises FileRefused."""
    for written in (target, side_file_of(target)):
        if written.exists() and source.exists() and os.path.samefile(source, written):
            raise FileRefused(f"{written} is the input itself: name another output.")
    if target.is_dir():
        raise FileRefused(f"{target} is a folder.")
    if not target.parent.is_dir():
        raise FileRefused(f"{target}: there is no folder {target.parent}.")
    if (target.exists() or target.is_symlink()) and not overwrite:
        raise FileRefused(f"{target} exists already; --overwrite replaces it.")


def save_whole(
    source: Path, target: Path, write: Callable[[BinaryIO], None], *, overwrite: bool
) -> None:
    """Write a file beside its place, onto the disk itself, then put it there. Raises NotWritten."""
    half: Path | None = None
    try:
        with tempfile.NamedTemporaryFile(
            dir=target.parent, prefix=f".{target.name}.", suffix=".part", delete=False
        ) as file:
            half = Path(file.name)
            write(file)  # type: ignore[arg-type]
            file.flush()
            os.fsync(file.fileno())
        shutil.copymode(source, half)
        _put_in_place(half, target, overwrite=overwrite)
        _settle(target.parent)
    except OSError as error:
        raise NotWritten(f"{target}: {error.strerror or error}.") from error
    finally:
        if half is not None:
            half.unlink(missing_ok=True)


def _put_in_place(half: Path, target: Path, *, overwrite: bool) -> None:
    """Give a file its name; one that came there meanwhile is replaced only where that is wanted."""
    if not overwrite:
        try:
            os.link(half, target)
        except FileExistsError:
            raise
        except OSError:  # a file system without hard links
            if target.exists():
                raise FileExistsError(None, "it was made meanwhile", str(target)) from None
        else:
            return
    half.replace(target)


def _settle(folder: Path) -> None:
    """Have the folder's new entry on the disk, where the system lets folders be opened."""
    try:
        descriptor = os.open(folder, os.O_RDONLY)
    except OSError:
        return
    try:
        os.fsync(descriptor)
    finally:
        os.close(descriptor)
