"""Asks a running service for everything that it has, and says what did not come as it must.

    python exercise.py http://127.0.0.1:8765 [--stored openapi/examples] [--without-pdf]

Every operation's example by body, and by query string where it is flat; every drawing, sheet, page,
document and table; rows; and requests that must be refused. `--stored` holds each answer to the
stored one, to nine digits. Standard library alone, so that it runs with what an image has.
"""

import argparse
import http.client
import json
import math
import re
import sys
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any
from urllib.parse import urlencode, urlsplit

SINE = "/v1/sine/setting"
JSON_BODY = {"content-type": "application/json"}
#: What sheets and DXF begin with.
BEGINNINGS = {"html": "<!doctype html", "pdf": "%PDF-", "dxf": "  0\nSECTION", "svg": "<svg"}
#: An overlay is drawn at true size, and its example's is larger than a page.
_ON_A_PAGE = {"/v1/inspection/overlay/sheet": {"magnification": 8}}
#: Digits to which least-squares fits agree from one processor to another.
_DIGITS = 1e-9


@dataclass(frozen=True)
class Reply:
    """What came back."""

    status: int
    headers: http.client.HTTPMessage
    body: bytes

    @property
    def data(self) -> Any:
        """The body, read as JSON."""
        return json.loads(self.body)


class Service:
    """One service, asked over one connection; what is wrong is kept as lines."""

    def __init__(self, address: str) -> None:
        parts = urlsplit(address)
        self._connection = http.client.HTTPConnection(parts.hostname or "", parts.port, timeout=60)
        self.asked = 0
        self.wrong: list[str] = []

    def ask(
        self,
        method: str,
        path: str,
        body: Any = None,
        headers: Mapping[str, str] | None = None,
        status: int = 200,
    ) -> Reply:
        """Ask; the status must be this one."""
        self.asked += 1
        sent = body if body is None or isinstance(body, bytes) else json.dumps(body).encode()
        named = dict(JSON_BODY if headers is None and sent is not None else headers or {})
        self._connection.request(method, path, sent, named)
        response = self._connection.getresponse()
        reply = Reply(response.status, response.headers, response.read())
        short = path if len(path) < 80 else f"{path[:80]}…"
        said = reply.body[:200].decode("utf-8", "replace")
        self.must(reply.status == status, f"{method} {short}: {reply.status}, not {status}: {said}")
        return reply

    def must(self, holds: bool, otherwise: str) -> None:
        """Keep what is wrong."""
        if not holds:
            self.wrong.append(otherwise)


def operations_of(service: Service) -> Iterator[dict[str, Any]]:
    """Every operation as the catalogue describes it, with its example."""
    for listed in service.ask("GET", "/v1/operations").data["result"]["operations"]:
        yield service.ask("GET", f"/v1/operations/{listed['name']}").data["result"]


def answer_each(service: Service, operation: Mapping[str, Any], stored: Path | None) -> None:
    """An operation's example by body, drawn, and by query string; its page and stored answer."""
    name, path, example = operation["name"], operation["path"], operation["example"]
    if example is None or not operation.get("request_schema"):
        service.ask("GET", path)
        return
    plain = service.ask("POST", path, example)
    if stored is not None and plain.status == 200:
        kept = json.loads((stored / f"{name}.json").read_text("utf-8"))
        for place in differing(kept["result"], plain.data["result"]):
            service.must(False, f"{name}: another answer than the stored one at {place}")
    service.ask("GET", f"/examples/{name}")
    service.ask("GET", f"/docs/{name}")
    formats = operation["request_schema"]["properties"].get("formats")
    if formats is not None:
        kinds = re.findall(r'"(svg|dxf)"', json.dumps(formats))
        drawn = service.ask("POST", path, {**example, "formats": sorted(set(kinds))}).data
        for kind in set(kinds):
            text = drawn.get("result", {}).get(kind) or ""
            service.must(text.startswith(BEGINNINGS[kind]), f"{name}: no {kind} in {text[:40]!r}")
    if operation["query"]:
        service.ask("GET", f"{path}?{urlencode(flat(example))}")


def flat(example: Mapping[str, Any]) -> list[tuple[str, str]]:
    """A request as a query string: a dot into an object, `;` between the values of a column."""
    pairs = []
    for name, value in example.items():
        if isinstance(value, dict):
            pairs += [
                (f"{name}.{part}", one) for part, inner in value.items() for one in many(inner)
            ]
        elif any(isinstance(row, dict) for row in many(value)):
            for part in dict.fromkeys(part for row in value for part in row):
                column = ";".join(text_of(row.get(part)) for row in value)
                pairs.append((f"{name}.{part}", column))
        else:
            pairs += [(name, one) for one in many(value)]
    return [(name, text_of(value)) for name, value in pairs]


def many(value: Any) -> list[Any]:
    """Entries of a list, or the one value that it is."""
    return value if isinstance(value, list) else [value]


def text_of(value: Any) -> str:
    """A value as a query string has it; what is not stated is an empty text."""
    return "" if value is None else value if isinstance(value, str) else json.dumps(value)


def differing(kept: Any, given: Any, place: str = "") -> Iterator[str]:
    """Where two answers differ by more than the last digits."""
    if isinstance(kept, dict) and isinstance(given, dict):
        for name in kept.keys() | given.keys():
            yield from differing(kept.get(name), given.get(name), f"{place}/{name}")
    elif isinstance(kept, list) and isinstance(given, list) and len(kept) == len(given):
        for number, (one, other) in enumerate(zip(kept, given, strict=True)):
            yield from differing(one, other, f"{place}/{number}")
    elif isinstance(kept, float) and isinstance(given, float | int):
        if not math.isclose(kept, given, rel_tol=_DIGITS, abs_tol=_DIGITS):
            yield place
    elif kept != given:
        yield place


def read_documents(service: Service, contract: Mapping[str, Any]) -> None:
    """Every document, page, file and table, and what watches the service."""
    for path in ("/health/live", "/health/ready", "/metrics", "/glossary.json", "/docs/try"):
        service.ask("GET", path)
    service.ask("GET", "/openapi.json", headers={"accept-encoding": "gzip"})
    service.ask("GET", "/", status=307)
    page = service.ask("GET", "/docs").body.decode()
    tried = service.ask("GET", "/docs/try").body.decode()
    for file in sorted(set(re.findall(r'(?:src|href)="(/docs/files/[^"]+)"', page + tried))):
        service.ask("GET", file)
    for path in contract["paths"]:
        if path.endswith("/{key}") and not path.startswith("/v1/operations"):
            listing = service.ask("GET", path.removesuffix("/{key}"))
            service.must(b'"result"' in listing.body, f"{path}: no table")


def draw_sheets(
    service: Service,
    contract: Mapping[str, Any],
    examples: Mapping[str, Any],
    *,
    pdf: bool,
) -> None:
    """Every sheet, as a page and as PDF (without the extra: refused as not installed)."""
    for path in (path for path in contract["paths"] if path.endswith("/sheet")):
        example = examples[path.removesuffix("/sheet")] | _ON_A_PAGE.get(path, {})
        for form in ("html", "pdf"):
            status = 501 if form == "pdf" and not pdf else 200
            sheet = service.ask("POST", f"{path}?format={form}", example, status=status)
            begins = sheet.body[:40].decode("latin-1").lower()
            whole = status == 501 or begins.startswith(BEGINNINGS[form].lower())
            service.must(whole, f"{path}: no {form} in {sheet.body[:40]!r}")


def refused(service: Service) -> None:
    """Requests that must be refused, each in its own way, as a problem document."""
    example = {"units": "in", "center_distance": 5, "angle": 30}
    gone: list[tuple[str, str, Any, Mapping[str, str] | None, int]] = [
        ("GET", "/nowhere", None, None, 404),
        ("DELETE", SINE, None, None, 405),
        ("POST", SINE, b"{", None, 400),
        ("POST", SINE, {**example, "angel": 30}, None, 422),
        ("POST", SINE, {**example, "angle": "8°61'"}, None, 422),
        ("POST", SINE, example, {"content-type": "text/csv"}, 415),
        ("POST", SINE, example, {**JSON_BODY, "accept": "image/png"}, 406),
        ("GET", f"{SINE}?units=in&center_distance=5&angle=x", None, None, 422),
        ("POST", SINE, b" " * 2_000_000, None, 413),
    ]
    for method, path, body, headers, status in gone:
        problem = service.ask(method, path, body, headers, status)
        kind = problem.headers.get_content_type()
        service.must(kind == "application/problem+json", f"{method} {path} {status}: {kind}")


def rows(service: Service, examples: Mapping[str, tuple[str, Any]]) -> None:
    """All examples as rows of one batch: each answered, and the end said."""
    lines = [
        json.dumps({"ref": f"R-{number}", "operation": name, "request": example})
        for number, (name, example) in enumerate(examples.values())
    ]
    sent = "\n".join(lines).encode() + b"\n"
    given = service.ask("POST", "/v1/batches", sent, {"content-type": "application/x-ndjson"})
    counts = json.loads(given.body.splitlines()[-1]).get("counts", {})
    service.must(counts.get("ok") == len(lines), f"of {len(lines)} rows: {counts}")


def main() -> int:
    """Ask for everything; status 1 where anything is wrong."""
    parser = argparse.ArgumentParser(description=__doc__.partition("\n")[0])
    parser.add_argument("address")
    parser.add_argument("--stored", type=Path, help="folder of stored answers to compare with")
    parser.add_argument("--without-pdf", action="store_true", help="the extra `sheets` is absent")
    options = parser.parse_args()
    service = Service(options.address)
    contract = service.ask("GET", "/openapi.json").data
    described = list(operations_of(service))
    for operation in described:
        answer_each(service, operation, options.stored)
    examples = {o["path"]: (o["name"], o["example"]) for o in described if o["example"]}
    read_documents(service, contract)
    plain = {path: example for path, (_, example) in examples.items()}
    draw_sheets(service, contract, plain, pdf=not options.without_pdf)
    rows(service, examples)
    refused(service)
    for line in service.wrong:
        print(line)
    print(f"{len(described)} operations, {service.asked} requests, {len(service.wrong)} wrong")
    return 1 if service.wrong else 0


if __name__ == "__main__":
    sys.exit(main())
