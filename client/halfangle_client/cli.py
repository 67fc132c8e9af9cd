"""The command `halfangle`: plan the built-in job, plan a job of your own, call any operation."""

import argparse
import json
import os
import sys
from collections.abc import Sequence
from pathlib import Path
from typing import Any

from halfangle_client import __version__
from halfangle_client.client import Halfangle
from halfangle_client.demo import built_in_job, running_service
from halfangle_client.errors import HalfangleError, ProblemError
from halfangle_client.plan_text import plan_text

DEFAULT_URL = "http://127.0.0.1:8765"


def main(arguments: Sequence[str] | None = None) -> int:
    """Run the command; give its exit status: 0, 1 for a refusal or a fault, 2 for wrong usage."""
    options = _parser().parse_args(arguments)
    try:
        sys.stdout.write(_run(options))
    except ProblemError as error:
        _complain(str(error))
        for field in error.problem.errors:
            _complain(f"  {field.pointer or 'request'}: {field.message}")
        return 1
    except (HalfangleError, OSError, ValueError) as error:
        _complain(str(error))
        return 1
    return 0


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(prog="halfangle", description=__doc__.partition("\n")[0])
    parser.add_argument("--version", action="version", version=__version__)
    parser.add_argument(
        "--url",
        default=os.environ.get("HALFANGLE_URL", DEFAULT_URL),
        help="address of the service (default: HALFANGLE_URL, or %(default)s)",
    )
    commands = parser.add_subparsers(dest="command", required=True)
    commands.add_parser("demo", help="start a service, plan the built-in job, stop the service")
    plan = commands.add_parser("plan", help="plan a center from a request in a JSON file")
    plan.add_argument("file", help="the file, or - for standard input")
    call = commands.add_parser("call", help="call an operation and print its answer as JSON")
    call.add_argument("operation", help="dotted name, such as sine.setting")
    call.add_argument("fields", nargs="*", help="fields as name=value, values as JSON or text")
    call.add_argument("--json", metavar="FILE", help="take the request from a file, - for stdin")
    commands.add_parser("operations", help="list the operations")
    return parser


def _run(options: argparse.Namespace) -> str:
    """Do what was asked; give the text to print."""
    if options.command == "demo":
        with running_service() as address, Halfangle(address) as client:
            return _plan(client, built_in_job())
    with Halfangle(options.url, api_key=os.environ.get("HALFANGLE_API_KEY")) as client:
        if options.command == "plan":
            return _plan(client, _read_json(options.file))
        if options.command == "operations":
            entries = client.catalogue.list_operations().result.operations
            return "".join(f"{entry.name:26} {entry.title}\n" for entry in entries)
        request = _read_json(options.json) if options.json else {}
        request |= dict(_field(text) for text in options.fields)
        answer = client.call(options.operation, request)
        return json.dumps(answer, indent=2, ensure_ascii=False) + "\n"


def _plan(client: Halfangle, request: dict[str, Any]) -> str:
    return plan_text(client.jobs.center(**request), request["units"])


def _read_json(name: str) -> dict[str, Any]:
    text = sys.stdin.read() if name == "-" else Path(name).read_text("utf-8")
    content = json.loads(text)
    if not isinstance(content, dict):
        raise ValueError(f"{name} holds no JSON object")
    return content


def _field(text: str) -> tuple[str, Any]:
    """Read `name=value`; a value that is no JSON is taken as text."""
    name, equals, value = text.partition("=")
    if not equals:
        raise ValueError(f"{text!r} is not of the form name=value")
    try:
        return name, json.loads(value)
    except ValueError:
        return name, value


def _complain(message: str) -> None:
    sys.stderr.write(f"{message}\n")


if __name__ == "__main__":
    raise SystemExit(main())
