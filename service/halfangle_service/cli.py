"""The command `halfangle-service`: serve, or print the contract."""

import argparse
import json
import os
import signal
import sys

# Said before numpy is loaded. The calculations are small: threads of the linear algebra would only
# take the processors from other requests. What the environment says already stands.
for _library in ("OPENBLAS", "MKL", "OMP", "BLIS", "VECLIB_MAXIMUM"):
    os.environ.setdefault(f"{_library}_NUM_THREADS", "1")

from collections.abc import Mapping, Sequence
from contextlib import suppress
from typing import get_origin

import uvicorn
from pydantic import ValidationError
from pydantic_settings import SettingsError

from halfangle_service import __version__
from halfangle_service.app import contract_bytes, create_app
from halfangle_service.http.guards.connections import connections_within
from halfangle_service.logs import LogWriter, log_the_server_too
from halfangle_service.settings import ENVIRONMENT_PREFIX, Settings
from halfangle_service.topics.jobs.plan.shop.profiles import ProfilesError, read_profiles

#: Not a flag: the list of processes shows flags to every user of the machine.
_NO_FLAG = "api_keys"


def main(arguments: Sequence[str] | None = None) -> int:
    """Run the command; give its exit status."""
    parser = argparse.ArgumentParser(
        prog="halfangle-service",
        description="Toolroom calculations over HTTP. Every setting is a flag or an environment "
        f"variable {ENVIRONMENT_PREFIX}<NAME>; API keys are a variable only.",
    )
    parser.add_argument("--version", action="version", version=__version__)
    commands = parser.add_subparsers(dest="command", required=True)
    serve = commands.add_parser("serve", help="serve until stopped by SIGINT or SIGTERM")
    for name, field in Settings.model_fields.items():
        told = argparse.SUPPRESS if name == _NO_FLAG else field.description
        serve.add_argument(f"--{name.replace('_', '-')}", help=told)
    commands.add_parser("contract", help="print the OpenAPI contract")
    options = parser.parse_args(arguments)
    if options.command == "contract":
        sys.stdout.buffer.write(contract_bytes())
        return 0
    given = {k: v for k, v in vars(options).items() if v is not None and k != "command"}
    if _NO_FLAG in given:
        serve.error(f"{_NO_FLAG}: set {_variable(_NO_FLAG)}; a flag can be read by every user")
    try:
        settings = read_settings(given)
        read_profiles(settings.profiles)
    except (ValidationError, SettingsError, ProfilesError) as error:
        serve.error(_wrong_settings(error))
    return _serve(settings)


def read_settings(flags: Mapping[str, str]) -> Settings:
    """Settings from flags, and from the environment for what no flag says.

    A list is written as JSON in a flag as it is in the environment. Raises ValidationError or
    SettingsError where one is wrong.
    """
    _refuse_unknown_variables()
    values: dict[str, object] = dict(flags)
    for name, text in flags.items():
        if get_origin(Settings.model_fields[name].annotation) in {frozenset, tuple}:
            # What is no JSON stays text, which is no list: the message then names the setting.
            with suppress(ValueError):
                values[name] = json.loads(text)
    return Settings(**values)  # type: ignore[arg-type]


def _variable(setting: str) -> str:
    """Name of the environment variable of a setting."""
    return ENVIRONMENT_PREFIX + setting.upper()


def _refuse_unknown_variables() -> None:
    """Raise SettingsError for a variable of no setting: misspelt, it might leave the door open."""
    known = set(map(_variable, Settings.model_fields))
    ours = (name for name in os.environ if name.upper().startswith(ENVIRONMENT_PREFIX))
    unknown = sorted(name for name in ours if name.upper() not in known)
    if unknown:
        raise SettingsError(f"{', '.join(unknown)}: no such setting")


def _wrong_settings(error: ValidationError | SettingsError | ProfilesError) -> str:
    """Say which settings are wrong, without what was given: it may be a key."""
    if not isinstance(error, ValidationError):
        return str(error)
    return "; ".join(f"{'.'.join(map(str, e['loc']))}: {e['msg']}" for e in error.errors())


def _serve(settings: Settings) -> int:
    """Serve until told to stop; accepted requests are answered first."""
    # The server repeats the signal once all is answered; its default would end the process before
    # the last lines of the log are written.
    signal.signal(signal.SIGTERM, signal.default_int_handler)
    with LogWriter(sys.stderr.fileno()) as log:
        log_the_server_too(settings.log_level, log)
        uvicorn.run(
            create_app(settings, log),
            host=settings.host,
            port=settings.port,
            http=connections_within(settings),
            access_log=False,
            log_config=None,
            log_level=settings.log_level,
            timeout_graceful_shutdown=settings.stop_seconds,
            server_header=False,
            # A handshake is then an ordinary request, refused or answered in our own words.
            ws="none",
        )
    return 0


if __name__ == "__main__":
    raise SystemExit(main())
