"""Each parser with what it may say of bytes that are none of its own: a refusal, nothing else.

A target reads any bytes. What it raises is a fault; so is an answer that breaks what it asserts,
since a wrong reading is worse than a crash. Seeds are texts that are read; words are what the
search puts together.
"""

import json
import tempfile
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager, suppress
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Annotated

from litestar import Request
from pydantic import TypeAdapter, ValidationError

from fuzz.forms import read_cell, read_table
from halfangle_client.fill.errors import MapRefused
from halfangle_client.fill.mapping import read_map
from halfangle_service.errors import Refusal
from halfangle_service.fields.angles import AngleInput
from halfangle_service.http.answers import best_accepted
from halfangle_service.http.batches.lines import Line, Lines, TooLong
from halfangle_service.http.batches.rows import WrongRow, row_of_line, rows_of_body
from halfangle_service.http.guards.key_file import KeysError, read_keys
from halfangle_service.http.picks import pick_values
from halfangle_service.http.problems import ProblemError
from halfangle_service.http.query import query_fields, read_query
from halfangle_service.http.requests import read_request
from halfangle_service.http.watch.traces import trace_of
from halfangle_service.registry import load_registry
from halfangle_service.topics.jobs.plan.shop.profiles import ProfilesError, read_profiles
from halfangle_service.trade.angles import format_dms, parse_dms
from halfangle_service.trade.centers.callout import read_callout
from halfangle_service.trade.tapers.notation.reading import read_notation

ROOT = Path(__file__).parents[3]
_EXAMPLES = ROOT / "openapi" / "examples"


@dataclass(frozen=True)
class Target:
    """A parser, what it is fed with at first, and the words of its language."""

    read: Callable[[bytes], object]
    seeds: tuple[bytes, ...]
    words: tuple[bytes, ...] = ()


_ANGLE: TypeAdapter[float] = TypeAdapter(Annotated[float, AngleInput(gt=-360, lt=360)])


def read_angle(data: bytes) -> None:
    """An angle as text, and as JSON within a request."""
    text = data.decode("utf-8", "ignore")
    degrees = None
    with suppress(ValueError):
        degrees = parse_dms(text)
    if degrees is not None:
        again = parse_dms(format_dms(degrees, 9))
        assert abs(degrees - again) <= 1e-12 * max(1.0, abs(degrees)), (text, degrees, again)
    with suppress(ValidationError):
        assert -360 < _ANGLE.validate_json(data) < 360


def read_drawing_text(data: bytes) -> None:
    """What a drawing says of a taper, whatever a bare angle is."""
    text = data.decode("utf-8", "ignore")
    for meaning in (None, "included", "half", "complement"):
        with suppress(Refusal):
            reading = read_notation(text, meaning)
            assert 0.0 < reading.half_angle_rad < 1.5708, (text, reading)


def read_center_hole(data: bytes) -> None:
    """What a drawing says of a center hole."""
    with suppress(Refusal):
        callout = read_callout(data.decode("utf-8", "ignore"))
        assert callout.pilot is None or callout.pilot > 0.0


def read_query_string(data: bytes) -> None:
    """A query string, for requests of many kinds: what is read is JSON with the names sent."""
    for name in ("sine.setting", "runout.indicate", "blocks.stack", "wheels.speed"):
        operation = load_registry().operations[name]
        fields = query_fields(operation.request)
        if fields is None:
            continue
        with suppress(ProblemError):
            body = read_query(data, fields)
            assert isinstance(json.loads(body), dict)
            read_request(operation, body)


@cache
def _stored(name: str) -> bytes:
    return (_EXAMPLES / f"{name}.json").read_bytes()


def read_picked_path(data: bytes) -> None:
    """The path of a picked value, in answers flat and deep."""
    path = data.decode("utf-8", "ignore")
    for name in ("sine.setting", "blocks.stack", "jobs.center", "runout.true-up"):
        with suppress(ProblemError):
            text, _ = pick_values(_stored(name), path, "pick")
            assert isinstance(text, bytes)


def read_rows(data: bytes) -> None:
    """Rows of a batch: the same lines however the network cuts them, each a row or a refusal."""
    whole = _cut((data,))
    middle = len(data) // 2
    assert whole == _cut((data[:middle], data[middle:])) == _cut(_each_byte(data)), data
    for line in whole:
        with suppress(WrongRow):
            row = row_of_line(line)
            # A row that is read at a glance is read just so by the parser.
            assert not isinstance(line, TooLong)
            sent = json.loads(line)
            assert (row.ref, row.operation) == (sent["ref"], sent["operation"])
            assert json.loads(row.request) == sent["request"] or row.repeated is not None
    with suppress(ProblemError):
        rows_of_body(data)


def _each_byte(data: bytes) -> tuple[bytes, ...]:
    return tuple(data[at : at + 1] for at in range(len(data)))


def _cut(chunks: tuple[bytes, ...]) -> list[Line]:
    lines = Lines(most_bytes=200)
    found = [line for chunk in chunks for line in lines.of(chunk)]
    return [*found, *lines.end()]


def read_body(data: bytes) -> None:
    """A JSON body, of operations flat and nested."""
    for name in ("sine.setting", "blocks.stack", "jobs.plan", "runout.indicate"):
        operation = load_registry().operations[name]
        with suppress(ProblemError):
            read_request(operation, data)


def read_profile_file(data: bytes) -> None:
    """The file of a shop's profiles."""
    with _file_of(data) as path, suppress(ProfilesError):
        read_profiles(path)


def read_key_file(data: bytes) -> None:
    """The file of keys."""
    with _file_of(data) as path, suppress(KeysError):
        read_keys(path)


def read_fill_map(data: bytes) -> None:
    """The file that says how a workbook is filled."""
    with _file_of(data) as path, suppress(MapRefused):
        read_map(path)


def read_trace(data: bytes) -> None:
    """The header that names the trace which a request is part of."""
    trace = trace_of([(b"traceparent", data)])
    assert trace is None or len(data) >= 55, data


@contextmanager
def _file_of(data: bytes) -> Iterator[Path]:
    with tempfile.NamedTemporaryFile(suffix=".toml") as file:
        file.write(data)
        file.flush()
        yield Path(file.name)


def read_accept(data: bytes) -> None:
    """The header that says which media types an answer may have."""
    request = _request_with({b"accept": data.replace(b"\n", b"").replace(b"\r", b"")})
    types = ("text/html; charset=utf-8", "application/pdf")
    with suppress(ProblemError):
        assert best_accepted(request, types) in types


def _request_with(headers: Mapping[bytes, bytes]) -> Request:  # type: ignore[type-arg]
    return Request({"type": "http", "headers": [*headers.items()], "state": {}})  # type: ignore[arg-type]


def _examples_of(*names: str) -> tuple[bytes, ...]:
    operations = load_registry().operations
    return tuple(json.dumps(dict(operations[name].example)).encode() for name in names)


def _rows_of(*names: str) -> tuple[bytes, ...]:
    requests = zip(names, _examples_of(*names), strict=True)
    return tuple(
        b'{"ref": "T-%d", "operation": "%b", "request": %b}\n' % (number, name.encode(), request)
        for number, (name, request) in enumerate(requests)
    )


_MARKS_OF_JSON = (b"{", b"}", b"[", b"]", b'"', b",", b":", b"\\u0000", b"1e400", b"null", b"true")

TARGETS: Mapping[str, Callable[[], Target]] = {
    "angles": lambda: Target(
        read_angle,
        ("30°15'20\"".encode(), b"-0 05", b"8:18:00", b"30.25", b'"22 30"', "8°18′".encode()),
        ("°".encode(), "′".encode(), "″".encode(), b"'", b'"', b":", b" ", b"59", b"60", b"-"),
    ),
    "drawing-text": lambda: Target(
        read_drawing_text,
        (
            '60° included ±30"'.encode(),
            b"1:20",
            "⊳ 1:10".encode(),
            b"0.602 TPF",
            b"Morse 3",
            b"1/4 in per ft",
            "α/2 = 8°18'".encode(),
            b"D25 d20 L50",
            b"7/24",
            b"4 % per side",
        ),
        (
            *(b"included", b"half", b"per side", b"TPF", b"in/ft", b"Morse", b"Jarno", b"1:", b"%"),
            *("±".encode(), "°".encode(), "α".encode(), "⌀".encode(), b"D", b"d", b"L", b"/"),
        ),
    ),
    "center-holes": lambda: Target(
        read_center_hole,
        (b"ISO 6411 - A 4/8.5", b"DIN 332 - DR M12", b"R 3.15/6.7", b"B2.5/8", b"C M10 L22/16.3"),
        (b"ISO 6411", b"DIN 332", b"M", b"L", b"/", b"x", b"A", b"B", b"C", b"D", b"R", b"DS"),
    ),
    "query": lambda: Target(
        read_query_string,
        (
            b"units=in&center_distance=5&angle=30&pick=height",
            b"units=mm&readings=0&readings=0.01&readings=-.02",
            b"units=in&height=.5005&set=inch-81",
            "angle=8°18'".encode(),
            b"angle=8%C2%B018%27&units=in",
        ),
        (b"units=in", b"&", b"=", b"%", b"%00", b"%C2%B0", b"pick=", b"+5", b"1e400", b"true"),
    ),
    "picked-paths": lambda: Target(
        read_picked_path,
        (b"height", b"angle.dms", b"stack.0", b"advisories", b"forecast"),
        (b".", b"0", b"-1", b"height", b"stack", b"blocks", b"advisories", b"verdict", b"9" * 20),
    ),
    "rows": lambda: Target(
        read_rows,
        _rows_of("sine.setting", "blocks.stack", "tapers.angle"),
        (b'"ref"', b'"operation"', b'"request"', b"\n", b"\r\n", *_MARKS_OF_JSON),
    ),
    "bodies": lambda: Target(
        read_body,
        _examples_of("sine.setting", "blocks.stack", "runout.indicate", "jobs.plan"),
        (b'"units"', b'"in"', b'"angle"', b'"equipment"', *_MARKS_OF_JSON),
    ),
    "profiles": lambda: Target(
        read_profile_file,
        ((ROOT / "docker/profiles/harrow_lane.toml").read_bytes(),),
        (b"[[profile]]", b"[", b"]", b"=", b'"""', b"1979-05-27", b"nan", b"inf", b"0x", b"\n"),
    ),
    "tables": lambda: Target(
        read_table,
        (
            b'\x00note,angle\r\nT-1,30\r\nT-2,8\xc2\xb018\'\r\n"T,3",95\r\n',
            b'\x01note;angle\nT-1;8,3\nT-2;"8\xc2\xb018\'20"""\n\nT-3;x\n',
            b"\x02units\tcenter_distance\tangle\nin\t5\t30\n",
            b"\x03\xef\xbb\xbfunits,center_distance [in],angle\nin,5,30\nmm,5\n",
            b"\x00angle\n" + b"22.5\n" * 40,
        ),
        (
            b"\r\n",
            b'"',
            b'""',
            b",",
            b";",
            b"\t",
            b"angle",
            b"units",
            b"\xef\xbb\xbf",
            b"\x00",
            b"=1",
        ),
    ),
    "cells": lambda: Target(
        read_cell,
        (
            b"tap_distance,tap_from.dms?units=in&surface=external&indicator_resolution=0.0001"
            b"&readings=0;0.0006;0.001;0.0004",
            b"tir?units=in&readings=0;1&separator=%20/%20&on_error=text",
            b"advisories,*?pick=tir&units=mm",
        ),
        (
            b",",
            b".",
            b"*",
            b"?",
            b"&",
            b"=",
            b";",
            b"separator=",
            b"on_error=text",
            b"pick=",
            b"%0A",
        ),
    ),
    "keys": lambda: Target(
        read_key_file,
        (
            b'[keys."erp"]\ndigests = ["sha256:' + b"0" * 64 + b'"]\nexpires = 2027-06-01\n'
            b"rate_per_minute = 600\nrate_burst = 60\n",
            b"[keys]\n",
        ),
        (b"[keys.", b"digests", b"sha256:", b"expires", b"9999-12-31T23:59:60Z", b"nan", b"inf"),
    ),
    "fill-maps": lambda: Target(
        read_fill_map,
        (
            b'operation = "sine.setting"\nsheet = "Plates"\nheader_row = 2\nrows = "3-51"\n'
            b'decimal = ","\n[columns]\nangle = "Winkel"\n[fixed]\nunits = "in"\n'
            b'[results]\nHeight = "height"\n',
        ),
        (b"operation", b"columns", b"fixed", b"results", b"ignored", b"rows", b"[", b"]", b"="),
    ),
    "traces": lambda: Target(
        read_trace,
        (b"00-4bf92f3577b34da6a3ce929d0e0e4736-00f067aa0ba902b7-01",),
        (b"-", b"00", b"ff", b"0" * 32, b"0" * 16),
    ),
    "accept": lambda: Target(
        read_accept,
        (b"text/html,application/pdf;q=0.9,*/*;q=0.8", b"*/*", b"application/*;q=0"),
        (b"text/", b"html", b"*/*", b";q=", b"nan", b"inf", b","),
    ),
}
