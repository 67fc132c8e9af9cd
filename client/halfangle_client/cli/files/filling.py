"""The command `fill`: the rows of a workbook, or of a .csv, filled with answers."""

import sys
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from halfangle_client.cli import screen
from halfangle_client.cli.contract import Field, hint, named
from halfangle_client.cli.helping import Speaking
from halfangle_client.cli.status import DONE, FAILED, INTERRUPTED, REFUSED, STOPPED
from halfangle_client.cli.topics import service_of, service_options
from halfangle_client.cli.words import Word, free_value

if TYPE_CHECKING:
    from halfangle_client import Halfangle
    from halfangle_client.fill import Filled, Filling, FillMap
    from halfangle_client.rows.keeping import Progress

_HELP = f"""Fill each row of a sheet with what an operation answers to it, into another file.

SOURCE is an .xlsx, .xlsm, .ods or .csv with headers; TARGET is of the same kind. A column is known
by its header, which is a field's name or title, its unit in brackets; what headers do not say is
said by options, or by a TOML file beside the source (plates.xlsx: plates.fill.toml), or is asked on
a terminal. Result columns are written right of those used, or into those that have their header
already, and beside them `advisories` and `problem`.

What cannot be kept of the workbook is named before anything is written. A run that broke off goes
on when the same command is run again: what is done stands in TARGET.part.ndjson until then. Exit
status {STOPPED} where a row says stop, else {REFUSED} where one was refused: the column `problem`
says why, and the file is written all the same."""
_ROWS_TRIED = 5
_MOST_QUESTIONS = 8


def fill_command() -> click.Command:
    """The command itself."""
    return Speaking(
        "fill",
        callback=_run,
        params=[
            click.Argument(["source"], metavar="SOURCE"),
            click.Argument(["target"], metavar="TARGET"),
            *_map_options(),
            click.Option(["--dry-run"], is_flag=True, help="Show the map and what the first rows "
                         "come to; write nothing."),
            click.Option(["--overwrite"], is_flag=True, help="Replace TARGET if it is there."),
            click.Option(["--url", "url"], multiple=True, help="Address of the service, again for "
                         "each of several that are alike; else HALFANGLE_URL."),
            *(option for option in service_options() if option.name != "url"),
        ],
        help=_HELP,
        short_help="Fill the rows of a workbook (.xlsx, .xlsm, .ods) or .csv with answers.",
    )  # fmt: skip


def _map_options() -> list[click.Option]:
    """What may be said of a file; an option wins over the map beside it."""
    said = [
        ("--operation", "NAME", False, "Which operation answers, as sine.setting."),
        ("--map", "FILE", False, "Which column is which field, as TOML; else SOURCE's .fill.toml."),
        ("--sheet", "NAME", False, "The sheet to be filled, of several."),
        ("--header-row", "ROW", False, "The row of the headers; else the first that is not blank."),
        ("--rows", "ROWS", False, "Which rows are filled, 4-53; else all below the headers."),
        ("--column", "FIELD=COLUMN", True, "The column of a field, by header or letters."),
        ("--ignore", "COLUMN", True, "A column that is no field, whatever its header."),
        ("--fixed", "FIELD=VALUE", True, "A field that is the same in every row: units=in."),
        ("--result", "[HEADER=]PATH", True, "A value to be written: height, 'As set=angle.dms'."),
        ("--decimal", "SIGN", False, "Decimal sign of numbers that are text, . or ,"),
        ("--delimiter", "SIGN", False, "What stands between the fields of a .csv: , ; or tab"),
    ]
    return [
        click.Option(
            [name, "map_file" if name == "--map" else name.lstrip("-").replace("-", "_")],
            metavar=metavar,
            multiple=many,
            help=text,
            type=click.IntRange(1, 1_048_576) if name == "--header-row" else None,
        )
        for name, metavar, many, text in said
    ]


def _run(
    source: str,
    target: str,
    map_file: str | None,
    dry_run: bool,
    overwrite: bool,
    url: tuple[str, ...],
    seconds: float | None,
    **said: Any,
) -> int:
    from halfangle_client.fill.errors import (  # noqa: PLC0415 -- for this command alone
        FileRefused,
        FillInterrupted,
        MapRefused,
        NotWritten,
    )

    try:
        map_ = _said(Path(source), map_file, said)
        with _client(url, seconds) as client:
            filling = _settled(client, Path(source), Path(target), map_, overwrite)
            screen.complain(f"halfangle: {note}" for note in filling.notes)
            if dry_run:
                return _show(filling)
            with _shown_progress() as progress:
                filled = filling.run(progress)
            screen.complain(f"halfangle: {note}" for note in filled.notes[len(filling.notes) :])
            return _told(filled)
    except (FileRefused, MapRefused) as error:
        raise click.UsageError(str(error)) from error
    except NotWritten as error:
        screen.complain([f"halfangle: {error}"])
        return FAILED
    except FillInterrupted as interrupt:
        screen.complain([f"halfangle: {interrupt}"])
        return INTERRUPTED


@contextmanager
def _client(urls: Sequence[str], seconds: float | None) -> "Iterator[Halfangle]":
    from halfangle_client import Halfangle  # noqa: PLC0415 -- loads HTTP

    services = [service_of(url, seconds) for url in urls or (None,)]
    manners = [service.manners() for service in services]
    with Halfangle(
        [one.addresses.first for one in manners],
        api_key=manners[0].api_key,
        timeout_seconds=manners[0].timeout_seconds,
        heavy_timeout_seconds=manners[0].heavy_timeout_seconds,
    ) as client:
        yield client


def _said(source: Path, map_file: str | None, said: dict[str, Any]) -> "FillMap":
    """What the map says, and the options on top of it."""
    from halfangle_client.fill import FillMap, map_beside, read_map  # noqa: PLC0415

    beside = map_beside(source)
    if map_file is not None:
        map_ = read_map(Path(map_file))
    else:
        map_ = read_map(beside) if beside.is_file() else FillMap()
    operation = said["operation"] or map_.operation
    delimiter = said["delimiter"]
    return map_.with_more(
        operation=operation,
        sheet=said["sheet"],
        header_row=said["header_row"],
        rows=said["rows"],
        columns=_once("--column", [_pair("--column", word) for word in said["column"]]),
        fixed=_once("--fixed", [_fixed(operation, word) for word in said["fixed"]]),
        results=_once("--result", [_result(word) for word in said["result"]]),
        ignored=said["ignore"],
        decimal=said["decimal"],
        delimiter="\t" if delimiter == "tab" else delimiter,
    )


def _once(option: str, pairs: Sequence[tuple[str, Any]]) -> dict[str, Any]:
    """Pairs as a table; a name that stands twice is refused."""
    names = [name for name, _ in pairs]
    twice = next((name for name in names if names.count(name) > 1), None)
    if twice is not None:
        raise click.UsageError(f"{option} says {twice!r} twice")
    return dict(pairs)


def _pair(option: str, word: str) -> tuple[str, str]:
    name, equals, value = word.partition("=")
    if not (name.strip() and equals and value.strip()):
        raise click.UsageError(f"{option} {word!r} is not of the form FIELD=…")
    return name.strip().replace("-", "_"), value.strip()


def _result(word: str) -> tuple[str, str]:
    header, equals, path = word.rpartition("=")
    return (header, path) if equals else (word, word)


def _fixed(operation: str, word: str) -> tuple[str, Any]:
    name, text = _pair("--fixed", word)
    found = named(operation) if operation else None
    fields = {field.name: field for field in found.fields} if found else {}
    if name not in fields:
        if found is None:
            return name, free_value(text)
        raise click.UsageError(f"{found.name} has no field {name!r}{hint(name, list(fields))}")
    return name, _value(fields[name], text)


def _value(field: Field, text: str) -> Any:
    return Word(field).convert(text, None, None)


def _settled(
    client: "Halfangle", source: Path, target: Path, said: "FillMap", overwrite: bool
) -> "Filling":
    """Settle what can be; on a terminal ask for what is not said, and offer to keep it."""
    from halfangle_client.fill import Filling, MapRefused, map_beside, written_map  # noqa: PLC0415

    asked = 0
    while True:
        try:
            filling = Filling(client, source, target, said, overwrite=overwrite)
        except MapRefused as error:
            asked += 1
            if not (sys.stdin.isatty() and error.wants and asked <= _MOST_QUESTIONS):
                raise
            said = _answered(error, said)
            continue
        beside = map_beside(source)
        if asked and click.confirm(f"Keep these answers in {beside.name}?", err=True):
            beside.write_text(written_map(said), "utf-8")
        return filling


def _answered(error: Any, said: "FillMap") -> "FillMap":
    """What a person answers to what was not settled."""
    screen.complain([str(error)])
    if error.wants == "operation":
        return said.with_more(operation=click.prompt("Operation", err=True).strip())
    if error.wants == "sheet":
        return said.with_more(sheet=click.prompt("Sheet", err=True).strip())
    found = named(said.operation)
    fields = {field.name: field for field in found.fields} if found else {}
    for name in error.lacking:
        question = f"{name}: its column (letters or header), or =VALUE for all rows"
        text = click.prompt(question, err=True).strip()
        if text.startswith("="):
            said = said.with_more(fixed={name: _value(fields[name], text[1:].strip())})
        else:
            said = said.with_more(columns={name: text})
    if not error.lacking:
        pair = click.prompt("FIELD=COLUMN", err=True)
        said = said.with_more(columns=dict([_pair("", pair)]))
    return said


@contextmanager
def _shown_progress() -> "Iterator[Progress | None]":
    """A bar on standard error, where that is a terminal."""
    if not sys.stderr.isatty():
        yield None
        return
    from rich.console import Console  # noqa: PLC0415 -- for terminals alone
    from rich.progress import BarColumn, MofNCompleteColumn, Progress, TimeRemainingColumn  # noqa: PLC0415

    console = Console(stderr=True, no_color=screen.wants_colour() is False)
    columns = ("rows", BarColumn(), MofNCompleteColumn(), TimeRemainingColumn())
    with Progress(*columns, console=console, transient=True) as bar:
        task = bar.add_task("rows", total=None)
        yield lambda done, total: bar.update(task, completed=done, total=total)


def _show(filling: "Filling") -> int:
    """The map, and what the first rows come to."""
    settled = filling.settled
    lines = settled.described()
    for tried in filling.tried(_ROWS_TRIED):
        lines.append(f"row {tried.row}:")
        headers = [one.header for one in settled.written]
        done = tried.outcome
        values = [*done.values, done.advisories, done.problem]
        shown = [(h, v) for h, v in zip(headers, values, strict=True) if v not in (None, "")]
        lines += [f"  {header}: {value}" for header, value in shown]
    screen.say(screen.shown("\n".join(lines)))
    return DONE


def _told(filled: "Filled") -> int:
    """Say what came of the file; give the exit status."""
    resumed = f", {filled.resumed} of them by an earlier run" if filled.resumed else ""
    screen.complain(
        [
            f"{filled.path}: {filled.rows} rows filled{resumed}: {filled.answered} answered "
            f"({filled.cautioned} with a caution, {filled.stopped} say stop), {filled.refused} "
            "refused"
        ]
    )
    if filled.stopped:
        said = f"stop: {filled.stopped} rows: do not run these; the column problem says why"
        screen.complain([f"halfangle: {said}"], "red")
        return STOPPED
    return REFUSED if filled.refused else DONE
