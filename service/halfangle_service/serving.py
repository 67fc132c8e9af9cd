"""The service as a process that listens: one, or several that share the port."""

import os
import signal
import socket
import sys
from collections.abc import Iterable
from contextlib import suppress
from itertools import chain
from typing import Any

import uvicorn
from litestar import Litestar

from halfangle_service import __version__
from halfangle_service.app import create_app
from halfangle_service.descriptors import connections_that_fit
from halfangle_service.http.guards.connections import connections_within
from halfangle_service.http.watch.metrics import STARTS, Metrics
from halfangle_service.logs import LogWriter, announce, log_the_server_too
from halfangle_service.settings import Settings
from halfangle_service.settings.reading import InForce
from halfangle_service.settings.told import not_default
from halfangle_service.workers import Workers

#: Connections that wait to be taken.
_BACKLOG = 2_048
_CANNOT_LISTEN = 1


def serve(in_force: InForce) -> int:
    """Serve until told to stop; accepted requests are answered first. Gives the exit status.

    Raises ProfilesError, KeysError, NoTracing.
    """
    settings = _within_descriptors(in_force.settings)
    metrics = Metrics(settings.workers)
    log = LogWriter(sys.stderr.fileno(), dropped=metrics.count_dropped)
    # First what may be refused; then what takes an address from others.
    application = create_app(settings, log, metrics)
    try:
        sockets = listening(settings.host, settings.port, settings.workers)
    except OSError as error:
        where = {"host": settings.host, "port": settings.port}
        announce(settings.log_level, "error", "cannot listen", **where, detail=str(error))
        return _CANNOT_LISTEN
    announce(
        settings.log_level,
        "info",
        "serving",
        release=__version__,
        python=sys.version.split()[0],
        addresses=[_address(one) for one in sockets[0]],
        process=os.getpid(),
        settings=not_default(in_force),
    )

    def work(place: int) -> int:
        metrics.begin(place)
        metrics.add(STARTS)
        own = sockets[place]
        for one in chain.from_iterable(sockets):
            if one not in own:
                one.close()
        return _serve_here(application, own, log, settings, metrics)

    if settings.workers == 1:
        return work(0)
    return Workers(work, chain.from_iterable(sockets), settings).run()


def _within_descriptors(settings: Settings) -> Settings:
    """The settings, with no more connections than there are descriptors for."""
    fit = connections_that_fit(settings.connection_limit)
    if fit < settings.connection_limit:
        wanted = {"connection_limit": settings.connection_limit}
        announce(settings.log_level, "warning", "too few descriptors", **wanted, connections=fit)
    return settings.model_copy(update={"connection_limit": fit})


def _serve_here(
    application: Litestar,
    sockets: Iterable[socket.socket],
    log: LogWriter,
    settings: Settings,
    metrics: Metrics,
) -> int:
    """Serve in this process."""
    # The server repeats the signal once all is answered; its default would end the process before
    # the last lines of the log are written.
    signal.signal(signal.SIGTERM, signal.default_int_handler)
    with log:
        log_the_server_too(settings.log_level, log)
        server = uvicorn.Server(
            uvicorn.Config(
                application,
                http=connections_within(settings, metrics),
                access_log=False,
                log_config=None,
                log_level=settings.log_level,
                timeout_graceful_shutdown=settings.stop_seconds,
                server_header=False,
                backlog=_BACKLOG,
                # A handshake is then an ordinary request, refused or answered in our own words.
                ws="none",
            )
        )
        with suppress(KeyboardInterrupt):
            server.run([*sockets])
    return 0


def listening(host: str, port: int, workers: int) -> list[list[socket.socket]]:
    """Listen on every address of a host, on one port of it; gives the sockets of each worker.

    On Linux each has sockets of its own, among which the system shares connections out: of one
    that all take from, the first that wakes takes whatever waits, and the others idle. This process
    holds them too, so that what waits for a worker that died is answered by the next in its place.

    Raises OSError where an address is taken.
    """
    found = socket.getaddrinfo(host or None, port, type=socket.SOCK_STREAM, flags=socket.AI_PASSIVE)
    apart = workers > 1 and sys.platform == "linux"
    made: list[list[socket.socket]] = [[] for _ in range(workers)]
    try:
        for family, _, _, _, address in dict.fromkeys(found):
            if apart:
                # Sockets that share a port would share it with another service of this user, too.
                _bound(family, address, shared=False).close()
            for place, sockets in enumerate(made):
                if place and not apart:
                    sockets.append(made[0][-1])
                    continue
                first = made[0][0].getsockname()[1] if made[0] else port
                at = (address[0], first, *address[2:])
                sockets.append(_bound(family, at, shared=apart))
    except OSError:
        for one in chain.from_iterable(made):
            one.close()
        raise
    return made


def _bound(family: int, address: tuple[Any, ...], *, shared: bool) -> socket.socket:
    made = socket.socket(family, socket.SOCK_STREAM)
    try:
        made.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        if shared:
            made.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEPORT, 1)
        if family == socket.AF_INET6:
            made.setsockopt(socket.IPPROTO_IPV6, socket.IPV6_V6ONLY, 1)
        made.bind(address)
        # Now, not when the first worker is ready: a port that is said to be served takes callers.
        made.listen(_BACKLOG)
        made.setblocking(False)
    except BaseException:
        made.close()
        raise
    return made


def _address(one: socket.socket) -> str:
    host, port = one.getsockname()[:2]
    return f"http://[{host}]:{port}" if ":" in host else f"http://{host}:{port}"
