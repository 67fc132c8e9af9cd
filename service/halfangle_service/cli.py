"""The command `halfangle-service`: serve, or print the contract."""

import argparse
import sys
from collections.abc import Sequence

import uvicorn

from halfangle_service import __version__
from halfangle_service.app import contract_bytes, create_app
from halfangle_service.settings import Settings


def main(arguments: Sequence[str] | None = None) -> int:
    """Run the command; give its exit status."""
    parser = argparse.ArgumentParser(
        prog="halfangle-service",
        description="Toolroom calculations over HTTP. Every setting is a flag or an environment "
        "variable HALFANGLE_<NAME>.",
    )
    parser.add_argument("--version", action="version", version=__version__)
    commands = parser.add_subparsers(dest="command", required=True)
    serve = commands.add_parser("serve", help="serve until stopped by SIGINT or SIGTERM")
    for name, field in Settings.model_fields.items():
        serve.add_argument(f"--{name.replace('_', '-')}", help=field.description)
    commands.add_parser("contract", help="print the OpenAPI contract")
    options = parser.parse_args(arguments)
    if options.command == "contract":
        sys.stdout.buffer.write(contract_bytes())
        return 0
    given = {k: v for k, v in vars(options).items() if v is not None and k != "command"}
    return _serve(Settings(**given))


def _serve(settings: Settings) -> int:
    """Serve until told to stop; accepted requests are answered first."""
    uvicorn.run(
        create_app(settings),
        host=settings.host,
        port=settings.port,
        access_log=False,
        log_level=settings.log_level,
        timeout_graceful_shutdown=settings.stop_seconds,
        server_header=False,
    )
    return 0


if __name__ == "__main__":
    raise SystemExit(main())
