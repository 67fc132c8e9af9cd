"""The command `halfangle-service`: serve, tell what is set, check files, make keys."""

import argparse
import os
import sys

# Said before numpy is loaded. The calculations are small: threads of the linear algebra would only
# take the processors from other requests. What the environment says already stands.
for _library in ("OPENBLAS", "MKL", "OMP", "BLIS", "VECLIB_MAXIMUM"):
    os.environ.setdefault(f"{_library}_NUM_THREADS", "1")

from collections.abc import Callable, Sequence
from functools import partial
from pathlib import Path
from typing import NoReturn

from halfangle_service import __version__
from halfangle_service.app import contract_bytes
from halfangle_service.errors import HalfangleError
from halfangle_service.http.guards.key_file import Caller, entry_for, new_key, read_keys
from halfangle_service.http.watch.traces import require_tracing
from halfangle_service.logs import announce
from halfangle_service.serving import serve
from halfangle_service.settings import GROUPS, Settings
from halfangle_service.settings.reading import (
    FILE,
    SECRET,
    InForce,
    WrongSettings,
    flag_of,
    nearest,
    read_settings,
    variable_of,
)
from halfangle_service.settings.told import as_json, as_toml, help_of
from halfangle_service.topics.jobs.plan.shop.profiles import read_profiles

_WIDTH = 79
_WRONG = 2


def main(arguments: Sequence[str] | None = None) -> int:
    """Run the command; give its exit status."""
    options, rest = _parser().parse_known_args(arguments)
    refuse: Callable[[str], NoReturn] = options.refuse
    try:
        if rest:
            raise WrongSettings([_unknown(rest[0], options.command)])
        run: Callable[[argparse.Namespace], int] = options.run
        return run(options)
    except HalfangleError as error:
        refuse(str(error))


def _parser() -> argparse.ArgumentParser:
    shape = partial(argparse.HelpFormatter, width=_WIDTH, max_help_position=4)
    parser = argparse.ArgumentParser(
        prog="halfangle-service",
        description="Toolroom calculations over HTTP.",
        formatter_class=shape,
    )
    parser.add_argument("--version", action="version", version=__version__)
    commands = parser.add_subparsers(dest="command", required=True)

    def command(
        name: str, told: str, run: Callable[[argparse.Namespace], int], more: str = ""
    ) -> argparse.ArgumentParser:
        made = commands.add_parser(
            name,
            help=told,
            description=f"{told[0].upper()}{told[1:]}. {more}".strip(),
            formatter_class=shape,
            allow_abbrev=False,
        )
        made.set_defaults(run=run, refuse=made.error)
        return made

    serving = command("serve", "serve until stopped by SIGINT or SIGTERM", _serve, _SETTINGS)
    # What is refused at a start is read where the log is read, so it is a line of it.
    serving.error = _refused  # type: ignore[method-assign]
    serving.set_defaults(refuse=_refused)
    _add_settings(serving)
    told = command(
        "config",
        "print the settings in force, and where each comes from",
        _config,
        "As TOML they are a file for --config. Ends with status 2 where one is wrong, or a file "
        f"that one names. {_SETTINGS}",
    )
    told.add_argument("--json", action="store_true", help="Print JSON.")
    _add_settings(told)
    checked = command("check-profiles", "check a file of a shop's profiles", _check_profiles)
    checked.add_argument("file", type=Path)
    key = command(
        "key",
        "make an API key",
        _key,
        "The key is printed once, on standard output; what the file of keys (keys_file) holds of "
        "it, on standard error. It is made at random with 256 bits, so its digest needs no more "
        "than SHA-256; keys of people's choice are not taken.",
    )
    key.add_argument("name", help="Name of the caller, seen in logs and metrics.")
    command("contract", "print the OpenAPI contract", _contract)
    return parser


_SETTINGS = (
    "Each setting is a flag, else a variable of the environment, else a line of the file that "
    "--config names (port = 8080), else its default."
)


def _add_settings(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        f"--{FILE}", metavar="FILE", help=f"{variable_of(FILE)}; a TOML file of settings."
    )
    for title, names in GROUPS.items():
        secret = SECRET in names
        group = parser.add_argument_group(title, help_of(SECRET) if secret else None)
        for name in names:
            told = argparse.SUPPRESS if name == SECRET else help_of(name)
            group.add_argument(flag_of(name), help=told, metavar=name.upper().rpartition("_")[2])


def _unknown(argument: str, command: str) -> str:
    """What is said of an argument that is none."""
    flags = [flag_of(name) for name in (*Settings.model_fields, FILE) if name != SECRET]
    known = flags if command in {"serve", "config"} else []
    name = argument.partition("=")[0]
    return f"{name[:60]}: no such argument{nearest(name, known)}"


def _refused(message: str) -> NoReturn:
    """Log why the service does not start, and end."""
    announce("error", "error", "settings refused", detail=message)
    raise SystemExit(_WRONG)


def _read(options: argparse.Namespace) -> InForce:
    """Settings by the flags of a command; raises WrongSettings."""
    names = (*Settings.model_fields, FILE)
    given = {name: value for name in names if (value := getattr(options, name)) is not None}
    if SECRET in given:
        raise WrongSettings(
            [f"{SECRET}: set {variable_of(SECRET)}; a flag can be read by every user"]
        )
    return read_settings(given)


def _serve(options: argparse.Namespace) -> int:
    return serve(_read(options))


def _config(options: argparse.Namespace) -> int:
    """Print settings, then what is wrong with the files that they name."""
    in_force = _read(options)
    wrong: list[str] = []
    profiles: list[str] = []
    callers: list[Caller] = []
    try:
        profiles = [*read_profiles(in_force.settings.profiles)]
    except HalfangleError as error:
        wrong.append(str(error))
    try:
        if in_force.settings.keys_file is not None:
            callers = [*dict.fromkeys(read_keys(in_force.settings.keys_file).values())]
    except HalfangleError as error:
        wrong.append(str(error))
    try:
        require_tracing(in_force.settings)
    except HalfangleError as error:
        wrong.append(str(error))
    names = [caller.name for caller in callers]
    if options.json:
        sys.stdout.write(as_json(in_force, {"profiles": profiles, "keys": names, "wrong": wrong}))
    else:
        remarks = [f"profile: {name}" for name in profiles] + [f"key: {name}" for name in names]
        sys.stdout.write(as_toml(in_force, remarks))
    for line in wrong:
        print(line, file=sys.stderr)
    return _WRONG if wrong else 0


def _check_profiles(options: argparse.Namespace) -> int:
    profiles = read_profiles(options.file)
    for profile in profiles.values():
        print(f"{profile.name}: {profile.units}, {profile.digest}")
    return 0


def _key(options: argparse.Namespace) -> int:
    key = new_key()
    entry = entry_for(options.name, key)
    print(key)
    print(entry, file=sys.stderr, end="")
    return 0


def _contract(_: argparse.Namespace) -> int:
    sys.stdout.buffer.write(contract_bytes())
    return 0


if __name__ == "__main__":
    raise SystemExit(main())
