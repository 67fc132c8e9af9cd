"""Writes which release of each package the image is built from, with the digests of its files.

    python docker/lock.py              after a change of `pyproject.toml`: pins stay where they may
    python docker/lock.py --upgrade    newest releases that `pyproject.toml` allows

Needs `uv` on the path, and a network. It writes

- `constraints.txt`: what the service needs, on any system and any Python that it supports;
- `constraints-sheets.txt`: what the extra `sheets` needs besides;
- `constraints-build.txt`: what builds the wheel and writes the list of parts.

Each is the whole closure, so it is installed without looking for what else is needed
(`pip install --no-deps --require-hashes --only-binary=:all: -r …`).
"""

import argparse
import re
import subprocess
import sys
import tempfile
import tomllib
from collections.abc import Sequence
from pathlib import Path

FOLDER = Path(__file__).parent
PROJECT = FOLDER.parent / "pyproject.toml"
#: What the web framework asks for and the service never loads: makers of test data, and the
#: framework's own command line. (structlog loads rich where it is there, and rich its pygments.)
LEFT_OUT = (
    *("faker", "polyfactory"),
    *("markdown-it-py", "mdurl", "pygments", "rich", "rich-click"),
)
#: Writes the list of parts (SBOM) of what is installed.
PARTS = "cyclonedx-bom>=7.2,<8"
HEAD = "# Written by docker/lock.py: do not edit. Installed with --no-deps --require-hashes.\n"


def main() -> int:
    """Write the three files."""
    parser = argparse.ArgumentParser(description=__doc__.partition("\n")[0])
    parser.add_argument("--upgrade", action="store_true", help="take the newest releases")
    upgrade = ["--upgrade"] if parser.parse_args().upgrade else []
    base, sheets, build = (FOLDER / f"constraints{kind}.txt" for kind in ("", "-sheets", "-build"))
    lock(base, [str(PROJECT), *upgrade], LEFT_OUT)
    extra = [str(PROJECT), "--extra", "sheets", "--constraint", str(base), *upgrade]
    lock(sheets, extra, [*LEFT_OUT, *names(base)])
    with tempfile.NamedTemporaryFile("w", suffix=".in") as wanted:
        backend = tomllib.loads(PROJECT.read_text("utf-8"))["build-system"]["requires"]
        wanted.write("\n".join([*backend, PARTS]))
        wanted.flush()
        lock(build, [wanted.name, *upgrade], ())
    return 0


def lock(target: Path, arguments: Sequence[str], left_out: Sequence[str]) -> None:
    """Let uv work out one file; the pins that stand in it are kept where they may be."""
    options = ["--universal", "--python-version", "3.11", "--generate-hashes", "--no-annotate"]
    omitted = [word for name in left_out for word in ("--no-emit-package", name)]
    command = ["uv", "pip", "compile", "--quiet", "--no-header", *options, *omitted]
    subprocess.run([*command, "--output-file", str(target), *arguments], check=True)
    target.write_text(HEAD + target.read_text("utf-8").removeprefix(HEAD), "utf-8")
    print(f"{target.name}: {len(names(target))} packages")


def names(constraints: Path) -> list[str]:
    """Names of the packages that such a file pins."""
    return sorted(set(re.findall(r"^([a-z0-9.-]+)==", constraints.read_text("utf-8"), re.M)))


if __name__ == "__main__":
    sys.exit(main())
