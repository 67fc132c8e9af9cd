"""The commands that are no operation: call, plan, demo, operations, glossary, completion."""

import signal
from collections.abc import Iterator
from contextlib import contextmanager
from typing import TYPE_CHECKING

import click

from halfangle_client.cli import answers, screen
from halfangle_client.cli.contract import (
    Operation,
    dotted_names,
    hint,
    named,
    operation,
    topics,
)
from halfangle_client.cli.files.filling import fill_command
from halfangle_client.cli.files.sheets import sheet_command
from halfangle_client.cli.helping import Speaking
from halfangle_client.cli.picks import stops_of
from halfangle_client.cli.status import DONE
from halfangle_client.cli.topics import (
    answer_options,
    ask,
    require_pick,
    service_of,
    service_options,
)
from halfangle_client.cli.words import from_file, from_words, put

if TYPE_CHECKING:
    from halfangle_client import Halfangle

SHELLS = ("bash", "zsh", "fish")
_CALL_HELP = """Make any call by its dotted name and print its answer as JSON.

Fields are name=value: a value is read as JSON, or as a number (.375, +5), else as text; a dot
reaches into an object (shank.kind=taper). Text that looks like a number goes in JSON's quotes:
name='"2"'"""


def commands() -> list[click.Command]:
    """All of them, in the order of the help."""
    return [
        _call(), _plan(), sheet_command(), fill_command(), _demo(), _operations(), _glossary(),
        _completion(),
    ]  # fmt: skip


def _call() -> click.Command:
    return Speaking(
        "call",
        callback=_run_call,
        params=[
            click.Argument(["name"], metavar="NAME"),
            click.Argument(["words"], nargs=-1, metavar="[FIELD=VALUE]..."),
            *answer_options(),
            *service_options(),
        ],
        help=_CALL_HELP,
        short_help="Make any call by its dotted name, fields as name=value; JSON is printed.",
    )


def _run_call(
    name: str,
    words: tuple[str, ...],
    input_file: str | None,
    as_json: bool,  # noqa: ARG001 -- JSON it is, said or not
    pick: str | None,
    separator: str | None,
    url: str | None,
    seconds: float | None,
) -> int:
    require_pick(pick, separator)
    called = _named(name)
    request = put(from_file(input_file), from_words(words))
    answer = ask(called, request, url, seconds)
    return answers.give(called, request, answer, as_json=True, pick=pick, separator=separator)


def _named(name: str) -> Operation:
    found = named(name)
    if found is None:
        raise click.UsageError(
            f"no operation {name!r}{hint(name.replace('_', '-'), dotted_names())} "
            "`halfangle operations` lists them"
        )
    return found


def _plan() -> click.Command:
    return Speaking(
        "plan",
        callback=_run_plan,
        params=[click.Argument(["file"], metavar="FILE"), *service_options()],
        help="Print the whole plan of a job; FILE is a request of jobs.plan, - standard input.",
        short_help="Print the whole plan of a job, given as JSON in a file.",
    )


def _run_plan(file: str, url: str | None, seconds: float | None) -> int:
    request = from_file(file)
    answer = ask(operation("jobs", "plan"), request, url, seconds)
    from halfangle_client.generated import models  # noqa: PLC0415 -- loads every model
    from halfangle_client.plan import plan_text  # noqa: PLC0415

    screen.say(plan_text(models.JobPlanAnswer.model_validate(answer), request, screen.shown))
    return answers.told_of_stops(stops_of(answer))


def _demo() -> click.Command:
    return Speaking(
        "demo",
        callback=_run_demo,
        params=[
            click.Option(["--service"], metavar="COMMAND", help="Command that starts the service.")
        ],
        help="Start a service, plan an invented job of an invented shop, stop the service.",
    )


def _run_demo(service: str | None) -> int:
    from halfangle_client.demo import running_service  # noqa: PLC0415 -- loads every model

    with _interrupted_by_sigterm(), running_service(service) as client:
        plan = demo_text(client)
    screen.say(plan)
    return DONE


def demo_text(client: "Halfangle") -> str:
    """The plan of the built-in job, and that it is invented."""
    from halfangle_client.demo import built_in_job  # noqa: PLC0415
    from halfangle_client.plan import plan_text  # noqa: PLC0415

    job = built_in_job()
    plan = plan_text(client.jobs.plan(**job), job, screen.shown)
    return f"{plan}\nThe shop, the job and its figures are invented.\n"


@contextmanager
def _interrupted_by_sigterm() -> Iterator[None]:
    """Let SIGTERM end the demo as Ctrl-C does, so that its service is not left behind."""
    before = signal.signal(signal.SIGTERM, signal.default_int_handler)
    try:
        yield
    finally:
        signal.signal(signal.SIGTERM, before)


def _operations() -> click.Command:
    return Speaking(
        "operations",
        callback=_run_operations,
        params=[
            click.Option(
                ["--topic"], type=click.Choice(list(topics())), help="Those of one topic."
            ),
            click.Option(
                ["--search"],
                metavar="WORDS",
                help="Those that have every word in name, title, description or fields.",
            ),
        ],
        help="List the operations, one a line; no service is needed.",
    )


def _run_operations(topic: str | None, search: str | None) -> int:
    titles = {
        f"{name}.{verb}": title
        for name, verbs in topics().items()
        for verb, title in verbs.items()
        if topic in {None, name}
    }
    words = (search or "").lower().split()
    found = {n: t for n, t in titles.items() if not words or _speaks_of(n, words)}
    if not found:
        raise click.UsageError(f"no operation speaks of {search!r}")
    width = max(map(len, found)) + 2
    screen.say("\n".join(f"{name:<{width}}{title}" for name, title in found.items()))
    return DONE


def _speaks_of(name: str, words: list[str]) -> bool:
    topic, _, verb = name.partition(".")
    called = operation(topic, verb)
    fields = [part for field in called.fields for part in (field.name, field.help)]
    text = " ".join([name, called.title, called.description, *fields]).lower().replace("_", " ")
    return all(word.replace("_", " ") in text for word in words)


def _glossary() -> click.Command:
    return Speaking(
        "glossary",
        callback=_run_glossary,
        params=[click.Argument(["word"], metavar="WORD"), *service_options()],
        help="Say what a field means: its symbol, unit and datum. WORD is a name, or part of one.",
        short_help="Say what a field means, its symbol, unit and datum.",
    )


def _run_glossary(word: str, url: str | None, seconds: float | None) -> int:
    from halfangle_client.cli.asking import glossary_of  # noqa: PLC0415 -- loads HTTP

    entries = glossary_of(service_of(url, seconds))
    name = word.strip("-").replace("-", "_").lower()
    found = [name] if name in entries else [entry for entry in entries if name in entry]
    if not found:
        raise click.UsageError(f"the glossary has no {word!r}{hint(name, list(entries))}")
    screen.say("\n".join(_entry(entry, entries[entry]) for entry in found))
    return DONE


def _entry(name: str, entry: dict[str, str]) -> str:
    facts = [entry.get("symbol"), entry.get("unit"), entry.get("datum")]
    said = ", ".join(fact for fact in facts if fact)
    text = f"{entry['meaning']} [{said}]" if said else entry["meaning"]
    return f"{name}\n{click.wrap_text(text, 80, '  ', '  ')}"


def _completion() -> click.Command:
    return Speaking(
        "completion",
        callback=_run_completion,
        params=[click.Argument(["shell"], type=click.Choice(SHELLS))],
        help="Print the completion of a shell: bash, zsh or fish. It starts no Python at a Tab.\n\n"
        "\b\n"
        "bash  halfangle completion bash > ~/.local/share/bash-completion/completions/halfangle\n"
        "zsh   halfangle completion zsh > a folder of $fpath, as _halfangle\n"
        "fish  halfangle completion fish > ~/.config/fish/completions/halfangle.fish",
        short_help="Print the completion of a shell: bash, zsh or fish.",
    )


def _run_completion(shell: str) -> int:
    from halfangle_client.cli.completion import script  # noqa: PLC0415 -- makes every command

    root = click.get_current_context().find_root().command
    screen.say(script(shell, root))
    return DONE
