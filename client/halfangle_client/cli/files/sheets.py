"""The command `sheet`: the sheet of an answer, written into a file."""

import json
import sys
from pathlib import Path

import click

from halfangle_client.cli import screen
from halfangle_client.cli.answers import told_of_stops
from halfangle_client.cli.contract import SheetPlace, hint, hyphens, sheets
from halfangle_client.cli.helping import Speaking
from halfangle_client.cli.topics import service_of, service_options
from halfangle_client.cli.words import from_file
from halfangle_client.sheet import Sheet

_FORMS = {".html": "html", ".htm": "html", ".pdf": "pdf"}
_HELP = """Write the sheet of an answer: a set-up sheet for the machine, or an inspection sheet.

FILE is the request as JSON, - standard input: a job of jobs.plan, or of the operation named. The
form is that of the file written, .html or .pdf."""


def sheet_command() -> click.Command:
    """The command itself."""
    return Speaking(
        "sheet",
        callback=_run,
        params=[
            click.Argument(["file"], metavar="FILE"),
            click.Option(
                ["-o", "--output", "output"],
                required=True,
                metavar="FILE",
                help="Where to write it, - for standard output.",
            ),
            click.Option(
                ["--operation", "name"],
                default="jobs.plan",
                metavar="NAME",
                help="Whose sheet it is; else jobs.plan.",
            ),
            click.Option(["--paper"], type=click.Choice(["a4", "letter"]), help="Paper; else a4."),
            click.Option(
                ["--way"],
                metavar="WAY",
                help="Of a plan: which way, by name or by its place from 1; else the first.",
            ),
            click.Option(
                ["--kind"],
                type=click.Choice(["set-up", "inspection"]),
                help="Of a plan: for the machine or for the inspection; else set-up.",
            ),
            click.Option(
                ["--format", "form"],
                type=click.Choice(["html", "pdf"]),
                help="Its form; else by the ending of the file.",
            ),
            *service_options(),
        ],
        help=_HELP,
        short_help="Write the sheet of a plan, or of another answer, as PDF or HTML.",
    )


def _run(
    file: str,
    output: str,
    name: str,
    paper: str | None,
    way: str | None,
    kind: str | None,
    form: str | None,
    url: str | None,
    seconds: float | None,
) -> int:
    place = _place(name)
    form = form or _FORMS.get(Path(output).suffix.lower())
    if form is None:
        raise click.UsageError(f"{output!r} ends in neither .pdf nor .html; say --format")
    asked = {"paper": paper, "way": way, "kind": kind, "format": form}
    chosen = {name: value for name, value in asked.items() if value is not None}
    unknown = [f"--{option}" for option in chosen if option not in place.query]
    if unknown:
        raise click.UsageError(f"the sheet of {name} takes no {', '.join(unknown)}")
    request = json.dumps(from_file(file), ensure_ascii=False)
    from halfangle_client.cli.asking import sheet_of  # noqa: PLC0415 -- loads HTTP

    sheet = sheet_of(service_of(url, seconds), place, chosen, request)
    _write(sheet, output)
    return told_of_stops([f"{code}: do not run this; the sheet says why" for code in sheet.stops])


def _place(name: str) -> SheetPlace:
    known = sheets()
    found = known.get(hyphens(name))
    if found is None:
        raise click.UsageError(f"{name!r} has no sheet{hint(hyphens(name), list(known))}")
    return found


def _write(sheet: Sheet, output: str) -> None:
    """Write whole: what is there already is replaced only when all of the new is there."""
    if output == "-":
        sys.stdout.buffer.write(sheet.content)
        sys.stdout.flush()
        return
    target = Path(output)
    half = target.with_name(f"{target.name}.part")
    try:
        sheet.save(half).replace(target)
    except OSError as error:
        half.unlink(missing_ok=True)
        raise click.UsageError(f"{output}: {error.strerror}") from error
    screen.complain([f"{output} ({len(sheet.content)} bytes)"])
