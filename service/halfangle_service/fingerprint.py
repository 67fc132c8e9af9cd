"""The fingerprint of an answer: a short digest by which a stale one is seen."""

import hashlib

from halfangle_service import __version__

#: Hexadecimal digits of a fingerprint: two answers in a shop's life do not meet in 64 bits.
DIGITS = 16


def fingerprint_of(name: str, asked: bytes, stands_on: tuple[str, ...] = ()) -> str:
    """Digest of what decides an answer: who is asked, what is asked, and by which release.

    `asked` is the request in its one written form: every field in the model's order, defaults
    among them, numbers as they were read, so that neither spelling nor order tells two of them
    apart. `stands_on` are digests of what the answer depends on besides.

    >>> fingerprint_of("sine.angle", b"{}") == fingerprint_of("sine.angle", b"{}", ("shop",))
    False
    """
    parts = (__version__.encode(), name.encode(), asked, *(digest.encode() for digest in stands_on))
    return hashlib.sha256(b"\0".join(parts)).hexdigest()[:DIGITS]
