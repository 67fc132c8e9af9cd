"""Runs the command as `python -m halfangle_client.cli`."""

from halfangle_client.cli.root import main

if __name__ == "__main__":
    raise SystemExit(main())
