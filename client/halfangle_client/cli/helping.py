"""The help of an operation: its fields in groups, each with unit, bounds, default and choices."""

import json
import shlex
import textwrap
from collections.abc import Iterator, Mapping, Sequence
from decimal import Decimal
from typing import Any

import click

from halfangle_client.cli import screen
from halfangle_client.cli.contract import Field, Operation, hyphens
from halfangle_client.cli.words import number_of

_LONGEST_METAVAR = 20
_WIDEST_NAME = 26
Rows = Sequence[tuple[str, str]]


class Speaking(click.Command):
    """A command whose help is shown in the characters that the terminal has."""

    def get_help(self, ctx: click.Context) -> str:
        """Give the help."""
        return screen.shown(super().get_help(ctx))


def write_fields(operation: Operation, formatter: click.HelpFormatter) -> None:
    """Write the fields: arguments, those that must be given, the others, then parts of objects."""
    arguments = [field for field in operation.fields if field.place == "path"]
    write_section(formatter, "Arguments", [(f.name.upper(), _about(f)) for f in arguments])
    options = [field for field in operation.fields if field.place != "path"]
    top = [field for field in options if "." not in field.name]
    inside = [field for field in options if "." in field.name]
    write_section(formatter, "Must be given", [_row(f) for f in top if f.required])
    write_section(formatter, "May be given", [_row(f) for f in top if not f.required])
    for name in dict.fromkeys(field.name.partition(".")[0] for field in inside):
        rows = [_row(f) for f in inside if f.name.startswith(f"{name}.")]
        write_section(formatter, f"Parts of --{hyphens(name)}", rows)


def write_section(formatter: click.HelpFormatter, title: str, rows: Rows) -> None:
    """Write one group under its heading, in two columns. Names are never broken at a hyphen."""
    if not rows:
        return
    width = min(_WIDEST_NAME, max(len(name) for name, _ in rows)) + 2
    with formatter.section(click.style(title, bold=True)):
        indent = " " * formatter.current_indent
        for name, text in rows:
            lines = filled(text, formatter.width - len(indent) - width) or [""]
            if len(name) + 2 > width:
                for line in filled(name, formatter.width - len(indent)):
                    formatter.write(f"{indent}{line}\n")
            else:
                first = lines.pop(0)
                formatter.write(f"{indent}{name:<{width}}{first}".rstrip() + "\n")
            formatter.write("".join(f"{indent}{'':<{width}}{line}\n" for line in lines))


def filled(text: str, width: int) -> list[str]:
    """Lines of a text; a name with hyphens stays whole."""
    return textwrap.wrap(text, max(width, 20), break_on_hyphens=False, break_long_words=False)


def metavar_of(field: Field) -> str:
    """What stands for a field's value."""
    if field.kind == "switch":
        return ""
    if field.kind == "choice":
        tokens = "|".join(field.choices)
        return tokens if len(tokens) <= _LONGEST_METAVAR else "CHOICE"
    usual = {"json": "JSON", "text": "TEXT", "angle": "ANGLE", "integer": "COUNT"}
    return field.metavar or usual.get(field.kind, "NUMBER")


def write_example(operation: Operation, formatter: click.HelpFormatter) -> None:
    """Write the contract's example as it is typed."""
    if not operation.example:
        return
    with formatter.section(click.style("Example", bold=True)):
        indent = " " * formatter.current_indent
        words = [*operation.command.split(), *words_of(operation, operation.example)]
        lines = _typed_lines(words, formatter.width - len(indent) - 4)
        formatter.write(f"{indent}" + f" \\\n{indent}    ".join(lines) + "\n")


def _typed_lines(words: Sequence[str], width: int) -> list[str]:
    """Words as they are typed, broken between options only: a shell takes the lines as one."""
    lines = [""]
    for i, word in enumerate(words):
        quoted = shlex.quote(word)
        pair = len(quoted) + (len(shlex.quote(words[i + 1])) if word != words[-1] else 0)
        if word.startswith("--") and len(lines[-1]) + pair + 2 > width:
            lines.append(quoted)
        else:
            lines[-1] = f"{lines[-1]} {quoted}".lstrip()
    return lines


def words_of(operation: Operation, request: Mapping[str, Any]) -> list[str]:
    """The words of the command line that make a request."""
    known = {field.name: field for field in operation.fields}
    return [word for name, value in request.items() for word in _words(known, name, value)]


def _words(known: Mapping[str, Field], name: str, value: Any) -> Iterator[str]:
    field = known[name]
    if field.place == "path":
        yield _plain(value)
    elif isinstance(value, bool):
        yield field.option if value else f"--no-{hyphens(name)}"
    elif isinstance(value, dict) and value and all(f"{name}.{part}" in known for part in value):
        for part, inner in value.items():
            yield from _words(known, f"{name}.{part}", inner)
    elif field.many and _are_words(field, value):
        yield from (field.option, " ".join(map(_plain, value)))
    elif isinstance(value, dict | list) or value is None:
        yield from (field.option, json.dumps(value, ensure_ascii=False))
    else:
        yield from (field.option, _plain(value))


def _plain(value: Any) -> str:
    """A value as it is typed: a number with all its digits and no exponent."""
    return f"{Decimal(repr(value)):f}" if isinstance(value, float) else str(value)


def _are_words(field: Field, values: Any) -> bool:
    """Whether a list can be written with spaces between its entries."""
    if not isinstance(values, list) or field.kind in {"json", "text", "angle"}:
        return False
    return all(isinstance(v, str) or number_of(str(v)) is not None for v in values)


def _row(field: Field) -> tuple[str, str]:
    if field.kind == "switch":
        return f"{field.option} / --no-{hyphens(field.name)}", _about(field)
    return f"{field.option} {metavar_of(field)}", _about(field)


def _about(field: Field) -> str:
    """Meaning with unit and bounds, then choices and default."""
    parts = [field.help]
    if field.choices and metavar_of(field) == "CHOICE":
        parts.append("One of: " + ", ".join(map(_choice, field.choices.items())) + ".")
    if field.many:
        several = "Several with spaces between, or given again."
        parts.append("A JSON list, or entry by entry." if field.kind == "json" else several)
    # An empty text is what stands for none: the meaning says what then holds.
    if field.default not in {None, ""}:
        default = field.default
        said = ("yes" if default else "no") if isinstance(default, bool) else default
        parts.append(f"Default: {said:g}." if isinstance(said, float) else f"Default: {said}.")
    return " ".join(part for part in parts if part)


def _choice(choice: tuple[str, str]) -> str:
    """A token, with its label where that says more."""
    token, label = choice
    return token if hyphens(label.lower().replace(" ", "-")) == token else f"{token} ({label})"
