"""Scripts that complete the command in a shell without starting Python.

Each script holds the same three tables, made by walking the commands: what may follow (`words`),
which options take no value (`flags`), and which values an option has (`values`).
"""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field
from typing import Any

import click

from halfangle_client.cli.contract import dotted_names
from halfangle_client.cli.words import Word

_FILE = "@file"
_LONGEST = 60


@dataclass
class Tables:
    """What may follow each command; a command is named by its words joined by spaces."""

    words: dict[str, list[tuple[str, str]]] = field(default_factory=dict)
    flags: dict[str, list[str]] = field(default_factory=dict)
    values: dict[str, list[str]] = field(default_factory=dict)


def script(shell: str, root: click.Command) -> str:
    """Give the script of a shell."""
    tables = Tables()
    with click.Context(root, info_name="") as context:
        _walk(root, "", context, tables)
    tables.words["call"] += [(name, "") for name in dotted_names()]
    shells: dict[str, Callable[[Tables], str]] = {"bash": _bash, "zsh": _zsh, "fish": _fish}
    return shells[shell](tables)


def _walk(command: click.Command, path: str, context: click.Context, tables: Tables) -> None:
    words = tables.words.setdefault(path, [])
    if isinstance(command, click.Group):
        for name in command.list_commands(context):
            inner = command.get_command(context, name)
            if inner is not None:
                words.append((name, _short(inner.get_short_help_str(_LONGEST))))
                _walk(inner, f"{path} {name}".strip(), context, tables)
    for param in command.get_params(context):
        names = [*param.opts, *param.secondary_opts] if isinstance(param, click.Option) else []
        words += [(name, _about(param)) for name in names]
        if isinstance(param, click.Option) and param.is_flag:
            tables.flags.setdefault(path, []).extend(names)
        values = _values(param)
        for name in names if values else ():
            tables.values[f"{path} {name}".strip()] = values
        if not names and values:
            words += [(value, "") for value in values if value != _FILE]


def _values(param: click.Parameter) -> list[str]:
    if isinstance(param.type, Word):
        return list(param.type.field.choices)
    if isinstance(param.type, click.Choice):
        return [str(choice) for choice in param.type.choices]
    return [_FILE] if param.make_metavar(click.Context(click.Command(""))) == "FILE" else []


def _about(param: click.Parameter) -> str:
    if isinstance(param.type, Word):
        return _short(param.type.field.help)
    return _short(getattr(param, "help", None) or "")


def _short(text: str) -> str:
    """The first sentence, cut where it is long, without a character that a shell would read."""
    first = text.partition(". ")[0].partition(" [")[0].rstrip(".")
    plain = "".join(c for c in first.replace("'", "’") if c not in '"`\\$\n')
    return plain if len(plain) <= _LONGEST else plain[:_LONGEST].rpartition(" ")[0] + " …"


def _bash(tables: Tables) -> str:
    return f"""\
# Completion of halfangle for bash; printed by `halfangle completion bash`.
_halfangle() {{
    local current=${{COMP_WORDS[COMP_CWORD]}} before=${{COMP_WORDS[COMP_CWORD-1]}}
    local at='' words='' flags='' values='' word index IFS=$' \\t\\n'
    for ((index = 1; index < COMP_CWORD; index++)); do
        word="${{at:+$at }}${{COMP_WORDS[index]}}"
        case $word in
            {_paths(tables, "|")}) at=$word ;;
        esac
    done
    case $at in
{_cases(tables.words, lambda words: f"words={_quoted(' '.join(name for name, _ in words))}")}
    esac
{_flags_and_values(tables)}
    if [[ $values == {_FILE} || ( $at == plan && $current != -* ) ]]; then
        IFS=$'\\n'
        COMPREPLY=($(compgen -f -- "$current"))
        compopt -o filenames 2> /dev/null
    elif [[ -n $values ]]; then
        COMPREPLY=($(compgen -W "$values" -- "$current"))
    elif [[ $before == --* && " $flags " != *" $before "* ]]; then
        COMPREPLY=()
    else
        COMPREPLY=($(compgen -W "$words" -- "$current"))
    fi
}}
complete -F _halfangle halfangle
"""


def _flags_and_values(tables: Tables) -> str:
    """What bash and zsh set alike: flags of the command at hand, values of the option before."""
    return f"""\
    case $at in
{_cases(tables.flags, lambda names: f"flags={_quoted(' '.join(names))}")}
    esac
    case "${{at:+$at }}$before" in
{_cases(tables.values, lambda values: f"values={_quoted(' '.join(values))}")}
    esac"""


def _zsh(tables: Tables) -> str:
    def described(words: list[tuple[str, str]]) -> str:
        return f"offered=({' '.join(_quoted(f'{n}:{a}' if a else n) for n, a in words)})"

    return f"""\
#compdef halfangle
# Completion of halfangle for zsh; printed by `halfangle completion zsh`.
_halfangle() {{
    local at='' word before=$words[CURRENT-1] flags='' values=''
    local -a offered
    integer index
    for ((index = 2; index < CURRENT; index++)); do
        word="${{at:+$at }}$words[index]"
        case $word in
            {_paths(tables, "|")}) at=$word ;;
        esac
    done
    case $at in
{_cases(tables.words, described)}
    esac
{_flags_and_values(tables)}
    if [[ $values == {_FILE} || ( $at == plan && $PREFIX != -* ) ]]; then
        _files
    elif [[ -n $values ]]; then
        compadd -- ${{=values}}
    elif [[ $before == --* && " $flags " != *" $before "* ]]; then
        _message 'value'
    else
        _describe 'halfangle' offered
    fi
}}
if [[ $funcstack[1] == _halfangle ]]; then
    _halfangle "$@"
else
    compdef _halfangle halfangle
fi
"""


def _fish(tables: Tables) -> str:
    def described(words: list[tuple[str, str]]) -> str:
        pairs = " ".join(f"{_quoted(name)} {_quoted(about)}" for name, about in words)
        return f"printf '%s\\t%s\\n' {pairs}"

    return f"""\
# Completion of halfangle for fish; printed by `halfangle completion fish`.
function __halfangle_offer
    set -l before
    set -l at ''
    set -l flags ''
    set -l values ''
    for word in (commandline -opc)[2..-1]
        set before $word
        set -l longer (string trim -- "$at $word")
        switch $longer
            case {_paths(tables, " ")}
                set at $longer
        end
    end
    switch $at
{_fish_cases(tables.flags, lambda names: f"set flags {' '.join(map(_quoted, names))}")}
    end
    switch (string trim -- "$at $before")
{_fish_cases(tables.values, lambda values: f"set values {' '.join(map(_quoted, values))}")}
    end
    if test "$values" = {_FILE}; or test "$at" = plan
        __fish_complete_path (commandline -ct)
    else if test -n "$values"
        printf '%s\\n' $values
    else if string match -q -- '--*' "$before"; and not contains -- $before $flags
        return
    else
        switch $at
{_fish_cases(tables.words, described)}
        end
    end
end
complete -c halfangle -f -a '(__halfangle_offer)'
"""


def _paths(tables: Tables, between: str) -> str:
    """Every command but the whole, as alternatives of a case."""
    return between.join(_quoted(path) for path in tables.words if path)


def _cases(table: Mapping[str, Any], does: Callable[[Any], str]) -> str:
    return "\n".join(f"        {keys}) {said} ;;" for keys, said in _alike(table, does, "|"))


def _fish_cases(table: Mapping[str, Any], does: Callable[[Any], str]) -> str:
    pairs = _alike(table, does, " ")
    return "\n".join(f"        case {keys}\n            {said}" for keys, said in pairs)


def _alike(
    table: Mapping[str, Any], does: Callable[[Any], str], between: str
) -> Iterator[tuple[str, str]]:
    """Cases that do the same, together."""
    together: dict[str, list[str]] = {}
    for key, value in table.items():
        together.setdefault(does(value), []).append(_quoted(key))
    return ((between.join(keys), said) for said, keys in together.items())


def _quoted(text: str) -> str:
    return f"'{text}'"
