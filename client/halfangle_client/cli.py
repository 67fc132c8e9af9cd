"""The command `halfangle`."""

import argparse
import io
import json
import os
import re
import signal
import sys
from collections.abc import Iterator, Mapping, Sequence
from contextlib import contextmanager
from difflib import get_close_matches
from pathlib import Path
from typing import Any

from halfangle_client import __version__
from halfangle_client.demo import built_in_job, running_service
from halfangle_client.errors import HalfangleError, ProblemError
from halfangle_client.generated import models
from halfangle_client.generated.calls import ENDPOINTS
from halfangle_client.generated.client import Halfangle
from halfangle_client.plan import plan_text

DEFAULT_URL = "http://127.0.0.1:8765"
_DONE, _REFUSED, _USAGE, _FAILED, _STOPPED, _INTERRUPTED = 0, 1, 2, 3, 4, 130
_EPILOG = f"""\
Exit status: {_DONE} done; {_REFUSED} the service refused the request, and said why; {_USAGE} wrong
usage; {_FAILED} no service, or a failing one; {_STOPPED} answered and printed, but the answer says
stop: do not run this.
HALFANGLE_URL names the service, HALFANGLE_API_KEY a key for it."""
_FIELD_HELP = (
    "fields as name=value: a value is read as JSON, or as a number (.375, +5), else as text; a dot "
    "reaches into an object (shank.kind=taper). Text that looks like a number goes in JSON's "
    "quotes: name='\"2\"'"
)


#: Numbers that are none in JSON: `.375`, `5.`, `+5`.
_NUMBER = re.compile(r"[+-]?(?:(?:0|[1-9][0-9]*)(?:\.[0-9]*)?|\.[0-9]+)(?:[eE][+-]?[0-9]+)?")


class UsageError(Exception):
    """The command line, or the file that it names, is not what the command takes."""


def main(arguments: Sequence[str] | None = None) -> int:
    """Run the command; give its exit status."""
    options = _parsed(arguments)
    try:
        text, stops = _run(options)
        _print(text)
    except UsageError as error:
        return _complain(_USAGE, f"halfangle: {error}")
    except ProblemError as error:
        status = _REFUSED if error.status < 500 else _FAILED
        return _complain(status, *_refusal(error))
    except HalfangleError as error:
        return _complain(_FAILED, f"halfangle: {error}")
    except KeyboardInterrupt:
        return _INTERRUPTED
    return _complain(_STOPPED, *stops) if stops else _DONE


def _parsed(arguments: Sequence[str] | None) -> argparse.Namespace:
    """Read the command line. argparse alone takes no fields after `--json FILE`."""
    parser = _parser()
    options, rest = parser.parse_known_args(arguments)
    strangers = [text for text in rest if options.command != "call" or text.startswith("-")]
    if strangers:
        parser.error(f"unrecognized arguments: {' '.join(strangers)}")
    if options.command == "call":
        options.fields += rest
    return options


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(
        prog="halfangle",
        description="Toolroom calculations, asked of a Halfangle service.",
        epilog=_EPILOG,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    parser.add_argument("--version", action="version", version=__version__)
    parser.add_argument("--url", help=f"address of the service; else HALFANGLE_URL, {DEFAULT_URL}")
    parser.add_argument(
        "--timeout", type=_seconds, metavar="SECONDS", help="how long a call may take"
    )
    commands = parser.add_subparsers(dest="command", required=True, metavar="command")
    demo = commands.add_parser(
        "demo", help="start a service, plan an invented job of an invented shop, stop the service"
    )
    demo.add_argument("--service", metavar="COMMAND", help="command that starts the service")
    plan = commands.add_parser("plan", help="print the plan of a center, its job given as JSON")
    plan.add_argument("file", help="a request of jobs.center in a file, or - for standard input")
    call = commands.add_parser("call", help="make any call and print its answer as JSON")
    call.add_argument("operation", help="dotted name, such as sine.setting or blocks.get_set")
    call.add_argument("fields", nargs="*", metavar="name=value", help=_FIELD_HELP)
    call.add_argument("--json", metavar="FILE", help="the request as JSON, or - for standard input")
    commands.add_parser("operations", help="list every operation")
    return parser


def _seconds(text: str) -> float:
    seconds = float(text)
    if not 0.0 < seconds <= 3600.0:
        raise argparse.ArgumentTypeError(f"{text} is not above 0 and up to 3600 seconds")
    return seconds


def _run(options: argparse.Namespace) -> tuple[str, list[str]]:
    """Do what was asked; give the text to print, and what says stop."""
    if options.command == "demo":
        with _interrupted_by_sigterm(), running_service(options.service) as client:
            return _demo(client), []
    if options.command == "plan":
        request = _json_object(options.file)
        with _client(options) as client:
            return _plan(client, request)
    if options.command == "call":
        name = _operation(options.operation)
        request = _request(options.json, options.fields)
        with _client(options) as client:
            return _call(client, name, request)
    with _client(options) as client:
        return _operations(client), []


def _client(options: argparse.Namespace) -> Halfangle:
    url = options.url or os.environ.get("HALFANGLE_URL") or DEFAULT_URL
    if not url.startswith(("http://", "https://")):
        raise UsageError(f"{url!r} is no address of a service: it begins with http:// or https://")
    times = {"timeout_seconds": options.timeout, "heavy_timeout_seconds": options.timeout}
    try:
        return Halfangle(
            url,
            api_key=os.environ.get("HALFANGLE_API_KEY") or None,
            **(times if options.timeout is not None else {}),
        )
    except ValueError as error:
        raise UsageError(f"HALFANGLE_API_KEY: {error}") from error


@contextmanager
def _interrupted_by_sigterm() -> Iterator[None]:
    """Let SIGTERM end the demo as Ctrl-C does, so that its service is not left behind."""
    before = signal.signal(signal.SIGTERM, signal.default_int_handler)
    try:
        yield
    finally:
        signal.signal(signal.SIGTERM, before)


def _demo(client: Halfangle) -> str:
    job = built_in_job()
    plan = plan_text(client.jobs.center(**job), job["units"])
    return f"{plan}\nThe shop, the job and its figures are invented.\n"


def _plan(client: Halfangle, request: dict[str, Any]) -> tuple[str, list[str]]:
    answer = client.call("jobs.center", request)
    plan = plan_text(models.CenterJobAnswer.model_validate(answer), request["units"])
    return f"{plan}\n", _stops(answer)


def _call(client: Halfangle, name: str, request: dict[str, Any]) -> tuple[str, list[str]]:
    answer = client.call(name, request)
    if isinstance(answer, str):
        return answer, []
    return json.dumps(answer, indent=2, ensure_ascii=False), _stops(answer)


def _stops(answer: Mapping[str, Any]) -> list[str]:
    """What an answer says of severity stop, for a person who reads no JSON."""
    advisories = answer.get("advisories", [])
    return [f"halfangle: stop: {a['message']}" for a in advisories if a["severity"] == "stop"]


def _operations(client: Halfangle) -> str:
    entries = client.catalogue.list_operations().result.operations
    width = max((len(entry.name) for entry in entries), default=0) + 2
    return "\n".join(f"{entry.name:<{width}}{entry.title}" for entry in entries)


def _operation(text: str) -> str:
    name = text.replace("-", "_")
    if name not in ENDPOINTS:
        near = get_close_matches(name, ENDPOINTS, n=3)
        hint = f"; did you mean {' or '.join(near)}?" if near else ""
        raise UsageError(f"no operation {text!r}{hint} `halfangle operations` lists them")
    return name


def _request(file: str | None, fields: Sequence[str]) -> dict[str, Any]:
    """The request from a file, from fields, or from both: a field overrides the file."""
    request = _json_object(file) if file else {}
    for field in fields:
        name, equals, text = field.partition("=")
        if not equals or not _is_text(field):
            raise UsageError(f"{field!a} is not of the form name=value, in UTF-8")
        *outer, last = name.split(".")
        target = request
        for part in outer:
            target = target.setdefault(part, {})
            if not isinstance(target, dict):
                raise UsageError(f"{name}: {part} is a value already, not an object")
        target[last] = _value(text)
    return request


def _value(text: str) -> Any:
    """Read a value as JSON, or as a number as people write it; else it is text."""
    try:
        return json.loads(text)
    except ValueError:
        return float(text) if _NUMBER.fullmatch(text) else text


def _is_text(argument: str) -> bool:
    """False where the shell handed over bytes that are no UTF-8."""
    try:
        argument.encode()
    except UnicodeEncodeError:
        return False
    return True


def _json_object(file: str) -> dict[str, Any]:
    shown = "standard input" if file == "-" else file
    try:
        text = sys.stdin.read() if file == "-" else Path(file).read_text("utf-8")
        content = json.loads(text)
    except OSError as error:
        raise UsageError(f"{shown}: {error.strerror}") from error
    except (ValueError, RecursionError) as error:
        raise UsageError(f"{shown} holds no JSON: {error}") from error
    if not isinstance(content, dict):
        raise UsageError(f"{shown} holds JSON, but no object")
    return content


def _refusal(error: ProblemError) -> list[str]:
    """What a person needs of a problem document: the reason, the fields, the further facts."""
    lines = [f"halfangle: {error}"]
    lines += [f"  {field.pointer or 'request'}: {field.message}" for field in error.fields]
    for name, value in error.more.items():
        lines.append(f"  {name}: {json.dumps(value, ensure_ascii=False)}")
    return lines


def _print(text: str) -> None:
    """Print; a terminal that lacks a character gets `?` in its place, a closed pipe is no fault."""
    if isinstance(sys.stdout, io.TextIOWrapper):
        sys.stdout.reconfigure(errors="replace")
    try:
        print(text, flush=True)
    except BrokenPipeError:
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())


def _complain(status: int, *lines: str) -> int:
    if isinstance(sys.stderr, io.TextIOWrapper):
        sys.stderr.reconfigure(errors="replace")
    print(*lines, sep="\n", file=sys.stderr)
    return status


if __name__ == "__main__":
    raise SystemExit(main())
