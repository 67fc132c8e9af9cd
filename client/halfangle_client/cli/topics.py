"""A command for each topic and operation, made from the contract's data when it is asked for."""

from collections.abc import Iterable, Mapping
from typing import TYPE_CHECKING, Any

import click

from halfangle_client.cli.answers import give
from halfangle_client.cli.contract import Operation, hint, hyphens, operation, topics
from halfangle_client.cli.helping import (
    Speaking,
    metavar_of,
    write_example,
    write_fields,
    write_section,
)
from halfangle_client.cli.picks import BETWEEN_VALUES
from halfangle_client.cli.words import Word, from_file, put

if TYPE_CHECKING:
    from halfangle_client.cli.asking import Service

#: Parameters of every operation that are no field of it; a field's is called by its position.
_OWN = ("input_file", "as_json", "pick", "separator", "url", "seconds")


class Seconds(click.ParamType[float]):
    """A time that a call may take."""

    name = "seconds"

    def convert(
        self, value: Any, param: click.Parameter | None, ctx: click.Context | None
    ) -> float:
        """Read the time."""
        try:
            seconds = float(value)
        except ValueError:
            seconds = 0.0
        if not 0.0 < seconds <= 3600.0:
            self.fail(f"{value} is not above 0 and up to 3600 seconds", param, ctx)
        return seconds


def service_options() -> list[click.Option]:
    """Options that say which service is asked."""
    return [
        click.Option(["--url", "url"], help="Address of the service; else HALFANGLE_URL."),
        click.Option(
            ["--timeout", "seconds"],
            type=Seconds(),
            metavar="SECONDS",
            help="How long a call may take.",
        ),
    ]


def answer_options() -> list[click.Option]:
    """Options that say what is read and what is printed."""
    return [
        click.Option(
            ["--input", "input_file"],
            metavar="FILE",
            help="The request as JSON in a file, or - for standard input; options win over it.",
        ),
        click.Option(["--json", "as_json"], is_flag=True, help="Print the whole answer as JSON."),
        click.Option(
            ["--pick", "pick"],
            metavar="PATH",
            help="Print values of the result in full precision: height, angle.dms, blocks.0, "
            "ways.*.name, or several parted by commas; refused where the answer says stop.",
        ),
        click.Option(
            ["--separator", "separator"],
            metavar="TEXT",
            help="What stands between the values picked, or the entries of the one list; else "
            f"'{BETWEEN_VALUES}', and in lists ' + ' for a stack, '; ' for others.",
        ),
    ]


def require_pick(pick: str | None, separator: str | None) -> None:
    """Refuse a separator where nothing is picked; raises UsageError."""
    if separator is not None and pick is None:
        raise click.UsageError("--separator needs --pick beside it")


class Topic(Speaking, click.Group):
    """The operations of one topic; one of them is made when it is called."""

    def __init__(self, topic: str) -> None:
        self.verbs: dict[str, str] = topics()[topic]
        help_text = f"Operations of the topic {topic}; each has its own --help."
        super().__init__(topic, help=help_text, short_help=", ".join(calculations(self.verbs)))

    def list_commands(self, ctx: click.Context) -> list[str]:  # noqa: ARG002
        """Calculations first, then published tables."""
        return sorted(self.verbs, key=lambda verb: (_is_table(verb), verb))

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:
        """Make the command of an operation."""
        verb = hyphens(cmd_name)
        if verb not in self.verbs:
            ctx.fail(f"{self.name} has no operation {cmd_name!r}{hint(verb, list(self.verbs))}")
        return OperationCommand(verb, operation(str(self.name), verb))

    def format_options(self, ctx: click.Context, formatter: click.HelpFormatter) -> None:
        """List the operations without making them."""
        for title, is_table in (("Calculations", False), ("Published tables", True)):
            verbs = [verb for verb in self.list_commands(ctx) if _is_table(verb) == is_table]
            write_section(formatter, title, [(verb, self.verbs[verb]) for verb in verbs])


class OperationCommand(Speaking):
    """One operation: its fields are options."""

    def __init__(self, verb: str, made_from: Operation) -> None:
        self.operation = made_from
        params: list[click.Parameter] = []
        for i, field in enumerate(made_from.fields):
            if field.place == "path":
                params.append(click.Argument([f"f{i}"], metavar=field.name.upper()))
            elif field.kind == "switch":
                names = f"{field.option}/--no-{hyphens(field.name)}"
                params.append(click.Option([names, f"f{i}"], default=None))
            else:
                params.append(
                    click.Option(
                        [field.option, f"f{i}"],
                        type=Word(field),
                        multiple=field.many,
                        metavar=metavar_of(field),
                    )
                )
        super().__init__(
            verb,
            params=[*params, *answer_options(), *service_options()],
            callback=self.run,
            help=f"{made_from.title}.\n\n{made_from.description}",
        )

    def format_options(self, ctx: click.Context, formatter: click.HelpFormatter) -> None:
        """Write the fields in groups, then what every operation takes."""
        write_fields(self.operation, formatter)
        records = [param.get_help_record(ctx) for param in self.get_params(ctx)]
        own = [
            record
            for param, record in zip(self.get_params(ctx), records, strict=True)
            if record and not _is_field(param)
        ]
        write_section(formatter, "Asking and answer", own)

    def format_epilog(self, ctx: click.Context, formatter: click.HelpFormatter) -> None:  # noqa: ARG002
        """Write the contract's example as it is typed."""
        write_example(self.operation, formatter)

    def run(
        self,
        input_file: str | None,
        as_json: bool,
        pick: str | None,
        separator: str | None,
        url: str | None,
        seconds: float | None,
        **fields: Any,
    ) -> int:
        """Ask the service, and print what it answers; give the exit status."""
        require_pick(pick, separator)
        request = put(from_file(input_file), self._given(fields))
        missing = [f.option for f in self.operation.fields if f.required and f.name not in request]
        if missing:
            raise click.UsageError(f"missing: {', '.join(missing)} (or --input FILE)")
        answer = ask(self.operation, request, url, seconds)
        return give(
            self.operation, request, answer, as_json=as_json, pick=pick, separator=separator
        )

    def _given(self, values: dict[str, Any]) -> list[tuple[str, Any]]:
        """Fields that were given: whole objects first, then what is put into them."""
        given: list[tuple[str, Any]] = []
        for i, field in enumerate(self.operation.fields):
            value = values[f"f{i}"]
            if field.many:
                value = [entry for word in value for entry in word] if value else None
            if value is not None:
                given.append((field.name, value))
        return sorted(given, key=lambda pair: pair[0].count("."))


def ask(
    called: Operation, request: Mapping[str, Any], url: str | None, seconds: float | None
) -> Any:
    """Ask the service named here, or before the topic."""
    # Help and completion ask nobody, and go without the modules of HTTP.
    from halfangle_client.cli.asking import answer_to  # noqa: PLC0415

    return answer_to(service_of(url, seconds), called, request)


def service_of(url: str | None, seconds: float | None) -> "Service":
    """The service named here, or before the topic."""
    from halfangle_client.cli.asking import Service  # noqa: PLC0415

    before = click.get_current_context().find_root().params
    return Service(url or before.get("url"), seconds or before.get("seconds"))


def calculations(verbs: Iterable[str]) -> list[str]:
    """Those operations that calculate; where there is none, all."""
    return [verb for verb in verbs if not _is_table(verb)] or list(verbs)


def _is_table(verb: str) -> bool:
    return verb.startswith(("get-", "list-"))


def _is_field(param: click.Parameter) -> bool:
    return param.name not in {*_OWN, "help"}
