"""What the storm of `hostile.py` sends: requests broken from a seed, as bytes on the wire."""

import copy
import json
import random
from collections.abc import Callable
from typing import Any
from urllib.parse import quote

from sent.known import Known

#: One body in so many goes to an operation that is worked out in threads.
HEAVY_SHARE = 0.06

EDGES = (
    *(
        "0",
        "-0.0",
        "1e-300",
        "5e-324",
        "1e308",
        "-1e308",
        "1e400",
        "NaN",
        "Infinity",
        "null",
        "true",
    ),
    *("89.99999999999999", "90", "179.99999999999997", "1e-6", "10000", "0.1e-5", "1" * 400),
    *("9" * 5_000, '""', '"x"', '"30 15 20"', "[]", "{}", "[[[[1]]]]", '"\\u0000"', '"\\ud800"'),
)

#: Signs of JSON, and what is none, for changes byte by byte.
MARKS = (b"{", b"}", b"[", b"]", b'"', b":", b",", b"\\", b"\x00", b"\xff", b"e", b"-", b".", b" ")

HEADERS = (
    "Content-Length: -1",
    "Content-Length: ten",
    "Content-Length: 99999999999999999999",
    "Transfer-Encoding: chunked",
    "Transfer-Encoding: gzip, chunked",
    "Content-Encoding: gzip",
    "Accept: application/json;q=0, */*",
    "Accept: " + "a/b," * 2_000,
    "If-None-Match: " + '"x",' * 2_000,
    "X-Request-ID: " + "é" * 100,
    "Origin: null",
    "Host: a b",
    "Expect: 100-continue",
    "Upgrade: websocket",
    "Connection: Upgrade",
    "Cookie: " + "c" * 30_000,
    "Range: bytes=0-1",
    "X-HTTP-Method-Override: DELETE",
    "Forwarded: for=127.0.0.1",
    ": empty",
    "Content-Type: application/json; charset=utf-7",
)

PATHS = ("/", "//", "/v1", "/docs", "/openapi.json", "/metrics", "/v1/operations", "/health/live",
         "/v1/blocks/sets/%00", "/v1/operations/../../etc", "/%FF", "/v1/sine/" + "x" * 3_000,
         "/problems/impossible", "/v1/tapers/standard", "*", "http://other/v1")  # fmt: skip

#: Parameters of a query string that are none, or parts of a list that do not fit.
PARAMETERS = (
    "a/b~=1", "%FF=1", "=", "&" * 50, "x" * 5_000 + "=1", "readings=" + ";" * 5_000, "a.b=1", ".=1",
    "box.size=1;2&box.mark=1", "box=1&box.size=1;2", "height=2,5",
)  # fmt: skip
PICKS = (
    "height", "advisories", "forecast", "a.b.c", "x" * 2_000, "%00", "0.0.0", "", "*",
    "height,angle", "," * 300, "blocks.*.*", "advisories,height",
)  # fmt: skip
OF_CELLS = (
    "on_error=text", "on_error=", "separator=%0A", "separator=;", "separator=", "separator=%F0%9F",
    "separator==",
)  # fmt: skip
METHODS = ("GET", "POST", "HEAD", "PUT", "DELETE", "OPTIONS", "TRACE", "PATCH", "BREW", "x" * 300)


class Storm:
    """Makes hostile requests by chance from a seed."""

    def __init__(self, seed: int) -> None:
        self._chance = random.Random(seed)  # noqa: S311  reproducible, not secret
        known = Known()
        self._heavy, self._light = (
            [
                (operation.path, request)
                for name, operation in known.operations.items()
                for request in known.requests[name]
                if bool(operation.heavy) is heavy
            ]
            for heavy in (True, False)
        )
        self._ways: list[tuple[Callable[[], bytes], int]] = [
            (self.edges, 40),
            (self.broken_bytes, 20),
            (self.query, 12),
            (self.odd_headers, 10),
            (self.odd_path, 8),
            (self.much, 2),
            (self.noise, 3),
            (self.twice, 5),
        ]

    def request(self) -> tuple[str, bytes]:
        """Give a kind and the bytes on the wire."""
        way = self._chance.choices([w for w, _ in self._ways], [n for _, n in self._ways])[0]
        return way.__name__, way()

    def _known(self) -> tuple[str, dict[str, Any]]:
        pool = self._heavy if self._chance.random() < HEAVY_SHARE else self._light
        return self._chance.choice(pool)

    def edges(self) -> bytes:
        """A known request with some values at the edge of what there is."""
        path, request = self._known()
        made = copy.deepcopy(request)
        put = []
        for _ in range(self._chance.choice((1, 1, 1, 2, 3))):
            holder, name = self._place_in(made)
            if holder is not None:
                put.append(self._chance.choice(EDGES))
                holder[name] = f"\0{len(put) - 1}\0"
        text = json.dumps(made)
        for count, edge in enumerate(put):
            text = text.replace(f'"\\u0000{count}\\u0000"', edge)
        return wire("POST", path, text.encode(errors="replace"))

    def _place_in(self, value: Any) -> tuple[Any, Any]:
        """A place in a request, as what holds it and its name there."""
        holder, name = None, None
        while isinstance(value, dict | list) and value:
            holder = value
            name = self._chance.choice([*value] if isinstance(value, dict) else range(len(value)))
            value = value[name]
        return holder, name

    def broken_bytes(self) -> bytes:
        """A known request with bytes changed, cut out, put in, or its end cut off."""
        path, request = self._known()
        body = bytearray(json.dumps(request).encode())
        for _ in range(self._chance.choice((1, 1, 2, 5, 20))):
            at = self._chance.randrange(len(body) + 1)
            way = self._chance.randrange(4)
            if way == 0:
                body[at : at + 1] = self._chance.choice(MARKS)
            elif way == 1:
                del body[at : at + self._chance.randrange(8)]
            elif way == 2:
                body[at:at] = self._chance.choice(MARKS) * self._chance.choice((1, 1, 3, 300))
            else:
                del body[at:]
        return wire("POST", path, bytes(body))

    def twice(self) -> bytes:
        """A known request with one of its names given again, at the top or inside."""
        path, request = self._known()
        text = json.dumps(request)
        places = [at for at, sign in enumerate(text) if sign == "{"]
        at = self._chance.choice(places) if places else 0
        name = self._chance.choice([*request, "size"] if isinstance(request, dict) else ["size"])
        return wire("POST", path, f'{text[: at + 1]}"{name}": 1, {text[at + 1 :]}'.encode())

    def much(self) -> bytes:
        """Up to a megabyte, or more, of parts that no request holds."""
        path, _ = self._known()
        part = self._chance.choice(
            (b"[],", b"{},", b'"a":1,', b"1,", b'"x",', b"[", b'{"a":', b" ", b"9", b"\\u0041")
        )
        count = self._chance.choice((1_000, 30_000, 900_000, 1_100_000)) // len(part)
        opened = self._chance.choice((b'{"units":[', b'{"box":[', b"{", b"[", b'"', b"0."))
        return wire("POST", path, opened + part * count + self._chance.choice((b"1]}", b'"', b"")))

    def query(self) -> bytes:
        """A query string, known or odd, with an odd pick, or at the address of an odd value."""
        path, request = self._known()
        pairs = []
        for name, value in request.items() if isinstance(request, dict) else ():
            text = value if isinstance(value, str) else json.dumps(value)
            if self._chance.random() < 0.2:
                text = self._chance.choice(EDGES)
            pairs.append(f"{quote(name)}={quote(text, errors='replace')}")
        if self._chance.random() < 0.3:
            pairs.append(self._chance.choice(PARAMETERS))
        if self._chance.random() < 0.6:
            pick = self._chance.choice(PICKS)
            if self._chance.random() < 0.5:
                path = f"/v1/values/{path.removeprefix('/v1/').replace('/', '.')}/{pick}"
            else:
                pairs.append(f"pick={pick}")
            if self._chance.random() < 0.5:
                pairs.append(self._chance.choice(OF_CELLS))
        return wire("GET", f"{path}?{'&'.join(pairs)}", b"")

    def odd_headers(self) -> bytes:
        """A known request with headers that are odd or false."""
        path, request = self._known()
        headers = self._chance.sample(HEADERS, self._chance.choice((1, 1, 2, 4)))
        return wire("POST", path, json.dumps(request).encode(), *headers)

    def odd_path(self) -> bytes:
        """An address and a method that may be none."""
        return wire(self._chance.choice(METHODS), self._chance.choice(PATHS), b"")

    def noise(self) -> bytes:
        """Bytes that are no HTTP."""
        made = self._chance.randbytes(self._chance.choice((1, 20, 500, 70_000)))
        return self._chance.choice((b"", b"GET / HTTP/1.1\r\n", b"POST ")) + made + b"\r\n\r\n"


def wire(method: str, path: str, body: bytes, *headers: str) -> bytes:
    """A request as bytes; headers given take the place of those that belong to it."""
    own = {
        "host": "Host: shop",
        "content-type": "Content-Type: application/json",
        "content-length": f"Content-Length: {len(body)}",
        "connection": "Connection: close",
    }
    for header in headers:
        own.pop(header.partition(":")[0].lower(), None)
    lines = [f"{method} {path} HTTP/1.1", *own.values(), *headers]
    return "\r\n".join(lines).encode("latin-1", errors="replace") + b"\r\n\r\n" + body
