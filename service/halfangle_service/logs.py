"""Logs: one JSON object a line on standard error, written so that a slow reader stops nobody."""

import errno
import json
import logging
import os
import select
import sys
import threading
import time
from collections.abc import Callable, Iterable, Iterator
from contextlib import suppress
from types import TracebackType
from typing import Protocol, Self

import structlog
from pydantic_core import to_json

#: Most bytes of lines that wait for a reader; further lines are dropped and counted.
_MOST_WAITING = 4_000_000
#: Lines are gathered for so long before they are written together.
_GATHER_SECONDS = 0.02
#: How long a line of `announce` waits for room.
_ROOM_MILLISECONDS = 200
#: How long the last lines wait for a reader at the end.
_LAST_SECONDS = 1.0
#: Until the next lines are tried after some found no room, as on a full disk.
_AGAIN_SECONDS = 0.5
#: What a write says when nobody will ever read what is written.
_GONE = frozenset({errno.EPIPE, errno.EBADF})


class LogFile(Protocol):
    """What logs are written to."""

    def write(self, line: bytes, /) -> object:
        """Take a line, its end included."""

    def flush(self) -> object:
        """Hand over what was taken."""


class LogWriter:
    """A file whose `write` never waits: a thread hands the lines on.

    Who reads the log may stall, and a pipe then takes nothing more; written directly, the next
    line would stop the service. The lines are bounded in bytes; what finds no room, here or on a
    disk that is full, is dropped, and a line says how many were, once there is room again.
    `dropped` is called for each.
    """

    def __init__(
        self,
        descriptor: int,
        most_bytes: int = _MOST_WAITING,
        dropped: Callable[[], object] = lambda: None,
    ) -> None:
        self._tell_dropped = dropped
        self._descriptor = descriptor
        self._most = most_bytes
        self._lines: list[bytes] = []
        self._waiting = 0
        self._dropped = 0
        #: True where a line was begun and found no room for its end.
        self._is_torn = False
        self._lock = threading.Lock()
        self._something = threading.Event()
        self._ended = threading.Event()
        # A daemon: a reader that never comes back must not keep the process from ending.
        self._thread = threading.Thread(target=self._hand_on, name="log", daemon=True)

    def __enter__(self) -> Self:
        self._thread.start()
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        traceback: TracebackType | None,
    ) -> None:
        self._ended.set()
        self._something.set()
        self._thread.join(_LAST_SECONDS)

    def write(self, line: bytes, /) -> None:
        """Take a line, or drop it where too much waits."""
        with self._lock:
            if self._waiting + len(line) > self._most:
                self._dropped += 1
                self._tell_dropped()
                return
            self._waiting += len(line)
            self._lines.append(line)
        if not self._something.is_set():
            self._something.set()

    def flush(self) -> None:
        """Nothing to do: lines are handed on by themselves, soon."""

    def _hand_on(self) -> None:
        while not self._ended.is_set() or self._lines:
            self._something.wait()
            self._something.clear()
            self._ended.wait(_GATHER_SECONDS)
            lines, told = self._taken()
            left = self._write_out(lines)
            if left:
                self._drop(left, told)
                self._ended.wait(_AGAIN_SECONDS)

    def _taken(self) -> tuple[list[bytes], int]:
        """All that waits, last what is to be said of lines dropped; and how many those are."""
        with self._lock:
            lines, dropped = self._lines, self._dropped
            self._lines, self._waiting, self._dropped = [], 0, 0
        if dropped:
            lines.append(_line({"event": "lines dropped", "count": dropped, "level": "warning"}))
        return lines, dropped

    def _drop(self, left: int, told: int) -> None:
        """Count lines that found no room; the last of them was to tell of so many before."""
        new = left - 1 if told else left
        for _ in range(new):
            self._tell_dropped()
        with self._lock:
            self._dropped += new + told

    def _write_out(self, lines: list[bytes]) -> int:
        """Write lines, so many together as a pipe takes whole: others may write to it, too.

        Gives how many found no room.
        """
        left = len(lines)
        try:
            if self._is_torn:
                self._write_some(b"\n")
                self._is_torn = False
            for content in _pieces(lines):
                rest = memoryview(content)
                while rest:
                    count = self._write_some(rest)
                    left -= bytes(rest[:count]).count(b"\n")
                    self._is_torn = rest[count - 1] != ord("\n")
                    rest = rest[count:]
        except OSError as error:
            if error.errno in _GONE:
                # The service works on without a log.
                with suppress(OSError):
                    self._descriptor = os.open(os.devnull, os.O_WRONLY)
                return 0
        return left

    def _write_some(self, content: bytes | memoryview) -> int:
        """Write what there is room for, waiting for a reader; gives how much that was."""
        while True:
            try:
                return os.write(self._descriptor, content)
            except BlockingIOError:
                # Another program may have told the pipe not to wait.
                select.select([], [self._descriptor], [])


def _pieces(lines: Iterable[bytes]) -> Iterator[bytes]:
    """Whole lines joined, no piece longer than a pipe takes at once, unless a line alone is.

    >>> [len(piece) for piece in _pieces([b"x" * 3000, b"y" * 1000, b"z" * 9000])]
    [4000, 9000]
    """
    piece = bytearray()
    for line in lines:
        if piece and len(piece) + len(line) > select.PIPE_BUF:
            yield bytes(piece)
            piece.clear()
        piece += line
    if piece:
        yield bytes(piece)


class ServerLog(logging.Handler):
    """Writes what the server and the libraries log, in the form of the other lines."""

    def __init__(self, file: LogFile) -> None:
        super().__init__()
        self._file = file

    def emit(self, record: logging.LogRecord) -> None:
        """Write one record."""
        line = {
            "event": record.getMessage(),
            "logger": record.name,
            "level": record.levelname.lower(),
            "timestamp": f"{time.strftime('%Y-%m-%dT%H:%M:%SZ', time.gmtime(record.created))}",
        }
        if record.exc_info:
            line["exception"] = logging.Formatter().formatException(record.exc_info)
        self._file.write(_line(line))


def configure_logging(level: str, file: LogFile | None = None) -> None:
    """Log what the service itself has to say; on standard error where no file is given."""
    structlog.configure(
        processors=[
            structlog.processors.add_log_level,
            structlog.processors.TimeStamper(fmt="iso", utc=True),
            structlog.processors.format_exc_info,
            structlog.processors.JSONRenderer(serializer=_json),
        ],
        wrapper_class=structlog.make_filtering_bound_logger(
            logging.getLevelNamesMapping()[level.upper()]
        ),
        logger_factory=structlog.BytesLoggerFactory(file=file or sys.stderr.buffer),  # type: ignore[arg-type]
        cache_logger_on_first_use=False,
    )


def log_the_server_too(level: str, file: LogFile) -> None:
    """Log what the server, the libraries and Python itself have to say."""
    logging.basicConfig(level=level.upper(), handlers=[ServerLog(file)], force=True)
    logging.captureWarnings(capture=True)
    # Python would write a trace over many lines.
    log = logging.getLogger("python")
    sys.excepthook = lambda *error: log.critical("uncaught", exc_info=error)
    threading.excepthook = lambda about: log.critical("uncaught", exc_info=_of_thread(about))
    sys.unraisablehook = lambda about: log.error(
        "uncaught: %s", about.err_msg or "", exc_info=about.exc_value
    )


def _of_thread(about: threading.ExceptHookArgs) -> BaseException | None:
    return about.exc_value


def announce(least: str, level: str, event: str, **more: object) -> None:
    """Log on standard error at once, for what is said before or after all else runs.

    Nothing is said below the least severity. A line that finds no room is dropped: who begins the
    workers anew must not wait for a reader.
    """
    severities = logging.getLevelNamesMapping()
    if severities[level.upper()] < severities[least.upper()]:
        return
    timestamp = time.strftime("%Y-%m-%dT%H:%M:%SZ", time.gmtime())
    with suppress(OSError, ValueError):
        line = _line({"event": event, **more, "level": level, "timestamp": timestamp})
        descriptor = sys.stderr.fileno()
        room = select.poll()
        room.register(descriptor, select.POLLOUT)
        if room.poll(_ROOM_MILLISECONDS):
            os.write(descriptor, line)


def _json(event: object, **_: object) -> bytes:
    """Write one log entry; the standard library's encoder takes four times as long."""
    try:
        return to_json(event, fallback=repr)
    except ValueError:
        # A sign that UTF-8 has none for, as of a path that is no text.
        return json.dumps(event, default=repr).encode()


def _line(event: object) -> bytes:
    return _json(event) + b"\n"
