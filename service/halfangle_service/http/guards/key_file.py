"""Names of callers and digests of their keys, from a file that may change while it is served.

A digest is the plain SHA-256 of a key: keys are made at random with 128 bits at least, so that
nobody finds one by trying; what makes a hash slow is for passwords, which people choose. Shorter
keys are never taken, whatever a digest is of.
"""

import hashlib
import os
import secrets
import time
import tomllib
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import UTC, date, datetime
from pathlib import Path
from stat import S_IROTH, S_ISREG, S_IWOTH
from typing import Annotated

import structlog
from pydantic import (
    BaseModel,
    BeforeValidator,
    ConfigDict,
    Field,
    StringConstraints,
    ValidationError,
)

from halfangle_service.errors import HalfangleError
from halfangle_service.settings.reading import nearest

#: Name under which the keys of the environment's variable are seen together.
ENVIRONMENT = "environment"
_RESERVED = f"{ENVIRONMENT}: is the name of the keys of the environment's variable"
#: Characters of the shortest key that is taken from a file: 128 bits, six a character.
SHORTEST_KEY = 22
_KEY_BYTES = 32
_MOST_KEYS = 200
_LARGEST_BYTES = 200_000
#: So often the file is looked at, and so long after a change it may change unseen: times of files
#: are coarser than the clock.
_LOOK_SECONDS = 1.0
_UNSETTLED_SECONDS = 2.0

KeyName = Annotated[str, StringConstraints(pattern=r"^[A-Za-z0-9][A-Za-z0-9._-]{0,39}$")]
Digest = Annotated[str, StringConstraints(pattern=r"^sha256:[0-9a-f]{64}$")]


class KeysError(HalfangleError):
    """The file of keys cannot be read, or an entry of it is wrong."""


def _from_date(value: object) -> object:
    """Refuse a number, which would be taken for seconds since 1970."""
    if isinstance(value, int | float):
        raise ValueError("should be a date")
    return value


class _Entry(BaseModel):
    model_config = ConfigDict(extra="forbid")

    digests: Annotated[list[Digest], Field(min_length=1, max_length=5)]
    expires: Annotated[datetime | date | None, BeforeValidator(_from_date)] = None
    rate_per_minute: Annotated[float, Field(ge=0, le=1_000_000)] | None = None
    rate_burst: Annotated[int, Field(ge=1, le=1_000_000)] | None = None


class _File(BaseModel):
    model_config = ConfigDict(extra="forbid")

    keys: Annotated[dict[KeyName, _Entry], Field(max_length=_MOST_KEYS)]


@dataclass(frozen=True, slots=True)
class Caller:
    """Whose key it is: when it ends (seconds since 1970), and how often he may ask.

    None: never, and as the settings say.
    """

    name: str
    ends: float | None = None
    rate_per_minute: float | None = None
    rate_burst: int | None = None
    shortest: int = 1


#: Callers by the digests of their keys.
Ring = Mapping[bytes, Caller]


def new_key() -> str:
    """Make a key: 256 bits, of characters that a header, a cell and a shell take as they are."""
    return secrets.token_urlsafe(_KEY_BYTES)


def digest_of(key: bytes) -> bytes:
    """Digest of a key."""
    return hashlib.sha256(key).digest()


def entry_for(name: str, key: str) -> str:
    """What the file of keys holds for a key; raises KeysError for a name that it cannot have."""
    written = f"sha256:{digest_of(key.encode()).hex()}"
    try:
        _File.model_validate({"keys": {name: {"digests": [written]}}})
    except ValidationError as error:
        raise KeysError(f"{name[:60]!r}: {_said(error.errors()[0])}") from None
    if name == ENVIRONMENT:
        raise KeysError(_RESERVED)
    return f'[keys."{name}"]\ndigests = ["{written}"]\n'


def ring_of_environment(keys: Iterable[str]) -> Ring:
    """Keys of the environment's variable, which count as one caller."""
    return {digest_of(key.encode()): Caller(ENVIRONMENT) for key in keys}


def read_keys(path: Path) -> Ring:
    """Callers of a file; raises KeysError, which names the file and the entry."""
    try:
        mode = path.stat().st_mode
        if not S_ISREG(mode):
            # A pipe would be waited for, and everybody with it.
            raise KeysError(f"{path}: is no plain file")
        if mode & S_IWOTH:
            raise KeysError(f"{path}: everybody may write it, and so let himself in")
        with path.open("rb") as file:
            content = file.read(_LARGEST_BYTES + 1)
        if len(content) > _LARGEST_BYTES:
            raise KeysError(f"{path}: larger than {_LARGEST_BYTES} bytes")
        entries = _File.model_validate(tomllib.loads(content.decode("utf-8-sig"))).keys
    except ValidationError as error:
        # A misspelt field first: the one that is missing is the same one.
        first = min(error.errors(), key=lambda one: one["type"] != "extra_forbidden")
        raise KeysError(f"{path}: {'/'.join(map(str, first['loc']))}: {_said(first)}") from None
    except (OSError, ValueError, ArithmeticError, RecursionError) as error:
        raise KeysError(f"{path}: {error}") from None
    ring: dict[bytes, Caller] = {}
    for name, entry in entries.items():
        if name == ENVIRONMENT:
            raise KeysError(f"{path}: {_RESERVED}")
        caller = Caller(
            name, _seconds(entry.expires), entry.rate_per_minute, entry.rate_burst, SHORTEST_KEY
        )
        for written in entry.digests:
            digest = bytes.fromhex(written.removeprefix("sha256:"))
            if digest in ring:
                twice = f"the digest is that of {ring[digest].name}, too"
                raise KeysError(f"{path}: keys/{name}/digests: {twice}")
            ring[digest] = caller
    return ring


def _said(error: object) -> str:
    """What is wrong with an entry, without what it holds."""
    found: dict[str, str] = error  # type: ignore[assignment]
    if found["type"] == "extra_forbidden":
        known = [*_File.model_fields, *_Entry.model_fields]
        return f"there is no such field{nearest(str(found['loc'][-1]), known)}"
    if found["type"] == "missing":
        return "is missing"
    return found["msg"].replace("Input should", "should").replace("String should", "should")


def _seconds(ends: datetime | date | None) -> float | None:
    """Seconds since 1970 at which a key ends; a day ends it as it begins, in UTC as all here."""
    if ends is None:
        return None
    if not isinstance(ends, datetime):
        ends = datetime(ends.year, ends.month, ends.day)
    try:
        return (ends if ends.tzinfo else ends.replace(tzinfo=UTC)).timestamp()
    except ArithmeticError:
        raise KeysError(f"expires: {ends} is beyond all calendars") from None


class KeysFile:
    """The callers of a file as it is now, looked at once a second at most.

    A file that is gone or wrong leaves the callers as they were; that is logged once a change.
    Raises KeysError where it is so at the start.
    """

    def __init__(self, path: Path) -> None:
        self._path = path
        self._said = ""
        self._signature = self._looked_at()
        self.ring = read_keys(path)
        self.readable = True
        self.reads = 0
        self._next = time.monotonic() + _LOOK_SECONDS
        if path.stat().st_mode & S_IROTH:
            _log().warning("keys file readable by everybody", path=str(path))

    def look(self) -> bool:
        """Look at the file where it is time to; True where that was done."""
        now = time.monotonic()
        if now < self._next:
            return False
        self._next = now + _LOOK_SECONDS
        signature = self._looked_at()
        # One that may change unseen is read again the next time.
        if signature is None or signature != self._signature:
            self._signature = signature
            self._read_again()
        return True

    def _looked_at(self) -> object:
        """What tells one state of the file from another; None where it is not certain."""
        try:
            found = self._path.stat()
        except OSError as error:
            return error.errno
        if abs(time.time() - found.st_mtime) < _UNSETTLED_SECONDS:
            return None
        return (found.st_dev, found.st_ino, found.st_mtime_ns, found.st_size, found.st_mode)

    def _read_again(self) -> None:
        try:
            ring = read_keys(self._path)
        except KeysError as error:
            self.readable = False
            if str(error) != self._said:
                self._said = str(error)
                _log().error("keys file unreadable", detail=self._said, kept=len(self.ring))
            return
        if ring != self.ring or not self.readable:
            before, now = _names(self.ring), _names(ring)
            _log().info("keys read", added=sorted(now - before), gone=sorted(before - now))
            self.reads += 1
        self.ring, self.readable, self._said = ring, True, ""


def _names(ring: Ring) -> set[str]:
    return {caller.name for caller in ring.values()}


def _log() -> structlog.typing.FilteringBoundLogger:
    logger: structlog.typing.FilteringBoundLogger = structlog.get_logger("halfangle.keys")
    return logger


def is_over(caller: Caller) -> bool:
    """True where a key has come to its end; by the wall clock, since its end is a date."""
    return caller.ends is not None and time.time() >= caller.ends


#: What a process alone knows, so that no time of a comparison tells anything of a digest.
_SECRET = os.urandom(32)


def hidden(digest: bytes) -> bytes:
    """A digest by which callers are looked up: nobody outside can know where it lies."""
    return hashlib.blake2b(digest, key=_SECRET, digest_size=32).digest()
