"""The side file: what came of each row so far, so that a run that broke off goes on."""

import contextlib
import hashlib
import json
import os
from collections.abc import Mapping
from dataclasses import asdict, dataclass, field
from pathlib import Path
from typing import Any, BinaryIO

from halfangle_client.fill._books.cells import Value
from halfangle_client.fill.errors import NotWritten

_MARK = "halfangle fill"
_MARKED = b'{"about":"halfangle fill","of":'
_LARGEST_HEAD = 4096


@dataclass(frozen=True, slots=True)
class Done:
    """What came of one row: values, what is advised, why there are none; `kind` counts it."""

    values: tuple[Value, ...]
    advisories: str
    problem: str
    kind: str


@dataclass
class Journal:
    """The side file of one output, open for this run alone."""

    path: Path
    #: Of what the rows are: input, map and release.
    key: str
    done: dict[int, Done] = field(default_factory=dict, init=False)
    #: Whether a side file of another input, map or release stood there, and was begun anew.
    was_stale: bool = field(default=False, init=False)
    _file: BinaryIO | None = field(default=None, init=False)

    def open(self) -> None:
        """Read what stands there, drop what is torn, and be ready to go on. Raises NotWritten."""
        try:
            flags = os.O_RDWR | os.O_CREAT | getattr(os, "O_BINARY", 0)
            descriptor = os.open(self.path, flags, 0o666)
            self._file = os.fdopen(descriptor, "r+b")
            _lock(self._file, self.path)
            end = self._read(self._file)
            self._file.seek(end)
            self._file.truncate()
            if end == 0:
                self._write([{"about": _MARK, "of": self.key}])
        except NotWritten:
            self.close()
            raise
        except OSError as error:
            self.close()
            raise NotWritten(f"{self.path}: {error.strerror or error}.") from error

    def _read(self, file: BinaryIO) -> int:
        """Keep the rows that stand whole in it; give where they end."""
        first = file.readline(_LARGEST_HEAD)
        if _MARKED.startswith(first[: len(_MARKED)]) and not first.endswith(b"\n"):
            return 0  # empty, or broken off in its first line
        head = _object(first)
        if head is None or head.get("about") != _MARK:
            raise NotWritten(f"{self.path} is no side file of this command: move it away.")
        if head.get("of") != self.key:
            self.was_stale = True
            return 0
        end = file.tell()
        for line in file:
            row = _object(line) if line.endswith(b"\n") else None
            if row is None or not _keep(self.done, row):
                break
            end += len(line)
        return end

    def keep(self, done: Mapping[int, Done]) -> None:
        """Write what came of some rows, onto the disk itself. Raises NotWritten."""
        self.done.update(done)
        try:
            self._write([{"row": number, **asdict(each)} for number, each in done.items()])
        except OSError as error:
            raise NotWritten(
                f"{self.path}: {error.strerror or error}. Rows written before stand in it; make "
                "room, and run the same command again."
            ) from error

    def _write(self, entries: list[dict[str, Any]]) -> None:
        if self._file is None or not entries:
            return
        lines = [json.dumps(entry, ensure_ascii=False, separators=(",", ":")) for entry in entries]
        self._file.write("".join(f"{line}\n" for line in lines).encode("utf-8", "replace"))
        self._file.flush()
        os.fsync(self._file.fileno())

    def close(self) -> None:
        """Leave the side file for the next run."""
        if self._file is not None:
            # What could not be written, of a full disk, was told already.
            with contextlib.suppress(OSError):
                self._file.close()
            self._file = None

    def remove(self) -> None:
        """Take the side file away: the output holds all of it."""
        self.close()
        self.path.unlink(missing_ok=True)


def key_of(content: bytes, *rest: str) -> str:
    """A digest of the input's bytes and of all else that a row's outcome depends on."""
    digest = hashlib.sha256(content)
    for part in rest:
        digest.update(b"\0" + part.encode("utf-8", "replace"))
    return digest.hexdigest()


def _object(line: bytes) -> dict[str, Any] | None:
    try:
        found = json.loads(line)
    except (ValueError, RecursionError):
        return None
    return found if isinstance(found, dict) else None


def _keep(done: dict[int, Done], row: dict[str, Any]) -> bool:
    number, values = row.get("row"), row.get("values")
    texts = [row.get(name) for name in ("advisories", "problem", "kind")]
    if not isinstance(number, int) or not isinstance(values, list):
        return False
    if not all(isinstance(text, str) for text in texts):
        return False
    done[number] = Done(tuple(values), *map(str, texts))
    return True


def _lock(file: BinaryIO, path: Path) -> None:
    """Let one run at a time fill an output, where the system has such locks."""
    try:
        import fcntl  # noqa: PLC0415 -- not on every system
    except ImportError:
        return
    try:
        fcntl.flock(file.fileno(), fcntl.LOCK_EX | fcntl.LOCK_NB)
    except BlockingIOError as error:
        raise NotWritten(f"{path}: another run is filling this output.") from error
