"""The command as a whole."""

from collections.abc import Sequence

import click

from halfangle_client import __version__
from halfangle_client.cli import screen
from halfangle_client.cli.contract import hint, topics
from halfangle_client.cli.helping import Speaking, write_section
from halfangle_client.cli.others import commands
from halfangle_client.cli.status import (
    DEFAULT_URL,
    DONE,
    FAILED,
    INTERRUPTED,
    MEANING,
    REFUSED,
    USAGE,
    Refused,
)
from halfangle_client.cli.topics import Topic, calculations, service_options
from halfangle_client.errors import ConnectionFailed, HalfangleError, TimedOut

_NAME = "halfangle"
_EPILOG = f"""{MEANING}

HALFANGLE_URL names the service (else {DEFAULT_URL}), HALFANGLE_API_KEY a key for it; NO_COLOR turns
colour off."""
_HINT = "Start one by `halfangle-service serve`, or name one by --url or HALFANGLE_URL."


class Root(Speaking, click.Group):
    """All topics, each read when it is called, and the commands that are no operation."""

    def __init__(self) -> None:
        self.others: dict[str, click.Command] = {
            str(command.name): command for command in commands()
        }
        super().__init__(
            _NAME,
            params=[*service_options(), _version_option()],
            help="Toolroom calculations, asked of a Halfangle service.",
            epilog=_EPILOG,
        )

    def list_commands(self, ctx: click.Context) -> list[str]:  # noqa: ARG002
        """Topics first."""
        return [*topics(), *self.others]

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command:
        """Make the command of a topic, or give another."""
        if cmd_name in self.others:
            return self.others[cmd_name]
        if cmd_name not in topics():
            known = self.list_commands(ctx)
            ctx.fail(f"no command {cmd_name!r}{hint(cmd_name, known)}")
        return Topic(cmd_name)

    def format_options(self, ctx: click.Context, formatter: click.HelpFormatter) -> None:
        """List topics by what they hold, then the other commands, then the options."""
        rows = [(name, ", ".join(calculations(verbs))) for name, verbs in topics().items()]
        write_section(formatter, "Topics and their operations", rows)
        others = [(name, command.get_short_help_str(80)) for name, command in self.others.items()]
        write_section(formatter, "Other commands", others)
        records = [param.get_help_record(ctx) for param in self.get_params(ctx)]
        write_section(formatter, "Options", [record for record in records if record])


def main(arguments: Sequence[str] | None = None) -> int:
    """Run the command; give its exit status."""
    screen.prepare()
    words = None if arguments is None else list(arguments)
    try:
        status = Root().main(
            words, prog_name=_NAME, standalone_mode=False, color=screen.wants_colour()
        )
    except click.exceptions.NoArgsIsHelpError as error:
        return _complain(USAGE, str(error.format_message()))
    except click.ClickException as error:
        return _complain(USAGE, *_usage(error))
    except Refused as error:
        return _complain(REFUSED if error.status < 500 else FAILED, *error.lines)
    except HalfangleError as error:
        more = isinstance(error, ConnectionFailed) and not isinstance(error, TimedOut)
        return _complain(FAILED, f"halfangle: {error}{f' {_HINT}' if more else ''}")
    except (click.Abort, KeyboardInterrupt):
        return INTERRUPTED
    return int(status or DONE)


def _usage(error: click.ClickException) -> list[str]:
    message = error.format_message()
    if message[1:2].islower():
        message = message[:1].lower() + message[1:]
    lines = [f"halfangle: {message.rstrip('.')}"]
    context = getattr(error, "ctx", None)
    return [*lines, f"Help: {context.command_path if context else _NAME} --help"]


def _complain(status: int, *lines: str) -> int:
    screen.complain(lines)
    return status


def _version_option() -> click.Option:
    def show(context: click.Context, _: click.Parameter, wanted: bool) -> None:
        if wanted and not context.resilient_parsing:
            screen.say(__version__)
            context.exit()

    return click.Option(
        ["--version"],
        is_flag=True,
        expose_value=False,
        is_eager=True,
        callback=show,
        help="Print the release.",
    )
