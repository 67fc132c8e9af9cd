"""Copies of the working copy, in which a file can be changed without anyone noticing."""

import hashlib
import os
import shutil
import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

ROOT = Path(__file__).resolve().parents[3]
SERVICE = "service/halfangle_service"


def files_of(root: Path) -> list[str]:
    """Paths of the files that make the working copy, new ones too, relative to it."""
    command = ["git", "ls-files", "-z", "--cached", "--others", "--exclude-standard"]
    listed = subprocess.run(command, cwd=root, capture_output=True, check=True).stdout
    names = listed.decode().split("\0")
    return sorted({name for name in names if name and (root / name).is_file()})


def copy_tree(root: Path, to: Path) -> None:
    """Copy a working copy without its history."""
    for name in files_of(root):
        place = to / name
        place.parent.mkdir(parents=True, exist_ok=True)
        shutil.copy2(root / name, place)


def digest_of(root: Path, names: list[str]) -> str:
    """Short digest of files by name and content."""
    digest = hashlib.sha256(sys.version.encode())
    for name in sorted(names):
        digest.update(f"{name}\0".encode() + (root / name).read_bytes())
    return digest.hexdigest()[:16]


@contextmanager
def changed_file(path: Path, content: bytes) -> Iterator[None]:
    """Give a file another content for a while.

    Its time goes with it: Python tells by time and length whether compiled code is stale, and a
    mutant often has the length of what it replaces.
    """
    kept, times = path.read_bytes(), path.stat()
    path.write_bytes(content)
    os.utime(path, (1, 1))
    try:
        yield
    finally:
        path.write_bytes(kept)
        os.utime(path, ns=(times.st_atime_ns, times.st_mtime_ns))
