"""Descriptors that the system lets a process hold: each connection takes one."""

import sys

#: Kept for what is no connection: sockets that listen, the event loop, the log, files; and for
#: connections that are just being refused.
_OTHERS = 64


def connections_that_fit(wanted: int) -> int:
    """Most connections of a process, so many as are wanted where the system lets it have them.

    The limit that a process may raise by itself is raised. Without a descriptor a connection could
    not even be refused: the server drops it without a word, and without a line in the log.
    """
    if sys.platform == "win32":
        return wanted
    import resource  # noqa: PLC0415  only such systems have it

    soft, hard = resource.getrlimit(resource.RLIMIT_NOFILE)
    infinite = resource.RLIM_INFINITY
    if soft != infinite and soft < wanted + _OTHERS:
        soft = wanted + _OTHERS if hard == infinite else min(wanted + _OTHERS, hard)
        resource.setrlimit(resource.RLIMIT_NOFILE, (soft, hard))
    if soft == infinite:
        return wanted
    return min(wanted, soft - min(_OTHERS, soft // 2))
