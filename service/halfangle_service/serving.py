"""The service as a process that listens: one, or several that share the port."""

import os
import signal
import socket
import sys
from collections.abc import Iterable
from contextlib import suppress

import uvicorn
from litestar import Litestar

from halfangle_service import __version__
from halfangle_service.app import create_app
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
    settings = in_force.settings
    metrics = Metrics(settings.workers)
    log = LogWriter(sys.stderr.fileno(), dropped=metrics.count_dropped)
    # First what may be refused; then what takes an address from others.
    application = create_app(settings, log, metrics)
    try:
        sockets = listening(settings.host, settings.port)
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
        addresses=[_address(one) for one in sockets],
        process=os.getpid(),
        settings=not_default(in_force),
    )

    def work(place: int) -> int:
        metrics.begin(place)
        metrics.add(STARTS)
        return _serve_here(application, sockets, log, settings, metrics)

    if settings.workers == 1:
        return work(0)
    return Workers(work, sockets, settings).run()


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


def listening(host: str, port: int) -> list[socket.socket]:
    """Listen on every address of a host, on one port of it; raises OSError where that fails."""
    found = socket.getaddrinfo(host or None, port, type=socket.SOCK_STREAM, flags=socket.AI_PASSIVE)
    sockets: list[socket.socket] = []
    try:
        for family, _, _, _, address in dict.fromkeys(found):
            place = (address[0], port or (sockets[0].getsockname()[1] if sockets else 0))
            sockets.append(_bound(family, (*place, *address[2:])))
    except OSError:
        for one in sockets:
            one.close()
        raise
    return sockets


def _bound(family: int, address: tuple[object, ...]) -> socket.socket:
    made = socket.socket(family, socket.SOCK_STREAM)
    try:
        made.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
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
