"""The packed file of a workbook: read with bounds, written with all other parts as they were."""

import io
import shutil
import zipfile
from collections.abc import Iterator, Mapping
from typing import BinaryIO

from halfangle_client.fill.errors import FileRefused

#: A part that is read whole; about a million rows of three columns.
_LARGEST_PART = 256 * 1024 * 1024
_LARGEST_WHOLE = 2 * 1024 * 1024 * 1024
_MOST_PARTS = 20_000
_COMPOUND_FILE = bytes.fromhex("d0cf11e0a1b11ae1")
_ENCRYPTED = "EncryptedPackage".encode("utf-16-le")
_PIECE = 1024 * 1024
_BROKEN = (zipfile.BadZipFile, zipfile.LargeZipFile, EOFError, NotImplementedError, OSError)


class Archive:
    """A packed file in memory."""

    def __init__(self, name: str, content: bytes) -> None:
        self.name = name
        if content.startswith(_COMPOUND_FILE):
            why = (
                "it is encrypted: take the password off first"
                if _ENCRYPTED in content
                else "it is of the old binary form, whatever its name says; save it as .xlsx"
            )
            raise FileRefused(f"{name}: {why}.")
        try:
            self._packed = zipfile.ZipFile(io.BytesIO(content))
        except (*_BROKEN, ValueError) as error:
            raise FileRefused(f"{name}: no workbook, or a broken one ({error}).") from error
        self._parts = {info.filename: info for info in self._packed.infolist()}
        self._require_sound()

    def _require_sound(self) -> None:
        infos = self._packed.infolist()
        if len(infos) > _MOST_PARTS or sum(i.file_size for i in infos) > _LARGEST_WHOLE:
            raise FileRefused(
                f"{self.name}: it unpacks to more than {_LARGEST_WHOLE >> 30} GB, or to more than "
                f"{_MOST_PARTS} parts: no workbook that is filled."
            )
        if len({info.filename.lower() for info in infos}) < len(infos):
            raise FileRefused(f"{self.name}: a part stands in it twice; save it anew first.")
        if any(info.flag_bits & 1 for info in infos):
            raise FileRefused(f"{self.name}: it is encrypted: take the password off first.")

    def __contains__(self, part: str) -> bool:
        return part in self._parts

    def __iter__(self) -> Iterator[str]:
        return iter(self._parts)

    def named(self, part: str) -> str | None:
        """The part of a name, whose case does not count."""
        if part in self._parts:
            return part
        return next((name for name in self._parts if name.lower() == part.lower()), None)

    def read(self, part: str) -> bytes:
        """All of a part. Raises FileRefused."""
        info = self._parts.get(part)
        if info is None:
            raise FileRefused(f"{self.name}: the part {part} is missing.")
        if info.file_size > _LARGEST_PART:
            raise FileRefused(
                f"{self.name}: the part {part} unpacks to more than {_LARGEST_PART >> 20} MB; "
                "divide the workbook, or fill it as .csv."
            )
        try:
            return self._packed.read(info)
        except (*_BROKEN, ValueError) as error:
            raise FileRefused(f"{self.name}: the part {part} is broken ({error}).") from error

    def holds(self, part: str, words: tuple[bytes, ...]) -> bool:
        """Whether any of some bytes is in a part, which is not kept whole."""
        longest = max(map(len, words))
        try:
            with self._packed.open(self._parts[part]) as stream:
                end = b""
                while piece := stream.read(_PIECE):
                    if any(word in end + piece for word in words):
                        return True
                    end = piece[-longest:]
        except (*_BROKEN, ValueError) as error:
            raise FileRefused(f"{self.name}: the part {part} is broken ({error}).") from error
        return False

    def save(self, target: BinaryIO, changed: Mapping[str, bytes]) -> None:
        """Write all parts in their order, those changed anew and every other byte for byte."""
        with zipfile.ZipFile(target, "w", zipfile.ZIP_DEFLATED) as packed:
            for name, info in self._parts.items():
                copy = zipfile.ZipInfo(name, info.date_time)
                copy.compress_type = info.compress_type
                copy.external_attr = info.external_attr
                copy.create_system = info.create_system
                if name in changed:
                    packed.writestr(copy, changed[name])
                    continue
                copy.file_size = info.file_size
                with self._packed.open(info) as source, packed.open(copy, "w") as sink:
                    shutil.copyfileobj(source, sink, _PIECE)
