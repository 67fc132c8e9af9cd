"""Several processes that serve one port: begun as copies of a ready one, kept at their number.

The application is made once, before: a copy begins in a few milliseconds and shares what never
changes. One that ends unasked is begun again in its place, where its callers wait for it; what it
counted stands.
"""

import gc
import os
import selectors
import signal
import socket
import sys
import threading
import time
from collections.abc import Callable, Iterable
from contextlib import suppress
from dataclasses import dataclass
from types import FrameType

from halfangle_service.logs import announce
from halfangle_service.settings import Settings

#: Work of a worker, by its place; gives its exit status.
Work = Callable[[int], int]

#: A worker that lived shorter is begun again only after a pause, twice as long each time.
_SHORT_LIFE_SECONDS = 5.0
_FIRST_PAUSE_SECONDS, _LONGEST_PAUSE_SECONDS = 0.1, 5.0
#: Exit status of the server where it could not start at all: it would not the next time.
CANNOT_START = 3
#: So long past their own time for a stop workers are waited for.
_GRACE_SECONDS = 5.0


@dataclass(slots=True)
class _Worker:
    """A place, the process that fills it (0: none yet), and when it is to be, or was, begun."""

    place: int
    process: int = 0
    begun: float = 0.0
    pause: float = 0.0


class Workers:
    """Keeps a number of copies of this process at work until it is told to stop."""

    def __init__(self, work: Work, sockets: Iterable[socket.socket], settings: Settings) -> None:
        self._workers = [_Worker(place) for place in range(settings.workers)]
        self._work = work
        self._sockets = [*sockets]
        self._stop_seconds = settings.stop_seconds
        self._log_level = settings.log_level
        self._told_to_stop = False
        self._failed = False

    def run(self) -> int:
        """Begin them, and wait for their end; gives the exit status."""
        # What is there now is shared by all as long as nobody touches it.
        gc.collect()
        gc.freeze()
        woken, waking = os.pipe()
        os.set_blocking(waking, False)
        self._alive, self._mine = os.pipe()
        self._waking, self._woken = waking, woken
        for number in (signal.SIGTERM, signal.SIGINT):
            signal.signal(number, self._stop)
        signal.signal(signal.SIGCHLD, lambda *_: None)
        signal.set_wakeup_fd(waking, warn_on_full_buffer=False)
        with selectors.DefaultSelector() as selector:
            selector.register(woken, selectors.EVENT_READ)
            while not self._told_to_stop and not self._failed:
                pause = self._begin_due()
                if selector.select(pause):
                    os.read(woken, 4096)
                self._bury()
            return self._end(selector)

    def _stop(self, _: int, __: FrameType | None) -> None:
        self._told_to_stop = True

    def _begin_due(self) -> float | None:
        """Begin each worker whose time has come; seconds until the next one's."""
        now = time.monotonic()
        for worker in self._workers:
            if not worker.process and worker.begun <= now:
                self._begin(worker)
        due = [worker.begun - now for worker in self._workers if not worker.process]
        return max(0.0, min(due)) if due else None

    def _begin(self, worker: _Worker) -> None:
        worker.begun = time.monotonic()
        try:
            process = os.fork()
        except OSError as error:
            self._say("worker not begun", "error", worker=worker.place + 1, detail=str(error))
            self._pause(worker)
            return
        if process == 0:
            self._be(worker.place)
        worker.process = process
        self._say("worker begun", worker=worker.place + 1, process=process)

    def _be(self, place: int) -> None:
        """Be a worker, in the copy of this process; never returns."""
        status = 1
        try:
            signal.set_wakeup_fd(-1)
            for number in (signal.SIGTERM, signal.SIGINT, signal.SIGCHLD):
                signal.signal(number, signal.SIG_DFL)
            # Else Ctrl-C would reach it, too, and a second signal means: at once.
            os.setpgrp()
            for descriptor in (self._mine, self._waking, self._woken):
                os.close(descriptor)
            threading.Thread(target=self._end_with_parent, name="parent", daemon=True).start()
            status = self._work(place)
        except SystemExit as error:
            status = error.code if isinstance(error.code, int) else 1
        except KeyboardInterrupt:
            status = 0
        except BaseException:
            sys.excepthook(*sys.exc_info())
        finally:
            os._exit(status)

    def _end_with_parent(self) -> None:
        """Stop this worker when the process that began it is gone: nobody else would."""
        os.read(self._alive, 1)
        os.kill(os.getpid(), signal.SIGTERM)

    def _bury(self) -> None:
        """Note which workers have ended."""
        while True:
            try:
                process, status = os.waitpid(-1, os.WNOHANG)
            except ChildProcessError:
                return
            if process == 0:
                return
            for worker in self._workers:
                if worker.process == process:
                    self._ended(worker, os.waitstatus_to_exitcode(status))

    def _ended(self, worker: _Worker, status: int) -> None:
        process, worker.process = worker.process, 0
        if self._told_to_stop or self._failed:
            return
        how = {"signal": -status} if status < 0 else {"status": status}
        self._say("worker ended", "error", worker=worker.place + 1, process=process, **how)
        if status == CANNOT_START:
            self._failed = True
        self._pause(worker)

    def _pause(self, worker: _Worker) -> None:
        """Say when a worker is to be begun again: at once where it lived for a while."""
        now = time.monotonic()
        short = now - worker.begun < _SHORT_LIFE_SECONDS
        longer = min(2.0 * worker.pause or _FIRST_PAUSE_SECONDS, _LONGEST_PAUSE_SECONDS)
        worker.pause = longer if short else 0.0
        worker.begun = now + worker.pause

    def _end(self, selector: selectors.BaseSelector) -> int:
        """Take no more connections, and wait until what was accepted is answered."""
        for listening in self._sockets:
            listening.close()
        self._tell(signal.SIGTERM)
        last = time.monotonic() + self._stop_seconds + _GRACE_SECONDS
        while any(worker.process for worker in self._workers):
            if selector.select(max(0.0, last - time.monotonic())):
                os.read(self._woken, 4096)
            elif time.monotonic() >= last:
                self._say("workers killed", "error")
                self._tell(signal.SIGKILL)
                last = float("inf")
            self._bury()
        self._say("stopped")
        return 1 if self._failed else 0

    def _tell(self, number: signal.Signals) -> None:
        for worker in self._workers:
            if worker.process:
                with suppress(ProcessLookupError):
                    os.kill(worker.process, number)

    def _say(self, event: str, level: str = "info", **more: object) -> None:
        announce(self._log_level, level, event, **more)
