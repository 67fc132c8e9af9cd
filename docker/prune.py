"""Takes out of an environment what the service never opens.

    python3 prune.py ENVIRONMENT [--without-pdf] [--stored openapi/examples]

The service runs, `exercise.py` asks it for everything that it has, and what was opened meanwhile
stays. Of the packages of others go:

- a folder from which nothing was opened, where it is over 50 kB: tests, whole packages;
- a file over 100 kB that was not opened and is no Python: a compiled module, a script's map;
- sources of what is compiled already, types for editors, commands, debug information;
- the metadata of a package of which no file is left, so that a list of parts is true.

Small folders, and Python files within a folder that is used, stay: they cost little, and a way that
nothing took may lead there. Then everything is asked for again, which leaves byte code of what is
loaded and of nothing else.
"""

import argparse
import importlib.metadata
import os
import shutil
import signal
import socket
import subprocess
import sys
import tempfile
import time
from collections import Counter
from collections.abc import Iterator, Sequence
from pathlib import Path

EXERCISE = Path(__file__).with_name("exercise.py")
OURS = "halfangle_service"
COMMANDS = ("python", "halfangle-service")
LEAST_FOLDER, LEAST_FILE = 50_000, 100_000  # bytes
SOURCES = frozenset({".a", ".c", ".cpp", ".h", ".hpp", ".pxd", ".pyi", ".pyx"})

#: The service as it is, and a list of what it opened, listed (a folder) or mapped as a library.
LISTENING = """
import sys
opened = set()
def hear(event, arguments):
    if event in {"open", "os.listdir", "os.scandir"} and isinstance(arguments[0], str):
        opened.add(arguments[0])
sys.addaudithook(hear)
from halfangle_service.cli import main
status = main(sys.argv[2:])
with open("/proc/self/maps") as maps:
    mapped = {line.split(maxsplit=5)[5].strip() for line in maps if "/" in line}
with open(sys.argv[1], "w") as written:
    written.writelines(f"{path}\\n" for path in opened | mapped)
raise SystemExit(status)
"""


def main() -> int:
    """Listen, remove, ask again; status 1 where the service does not answer as it must."""
    parser = argparse.ArgumentParser(description=__doc__.partition("\n")[0])
    parser.add_argument("environment", type=Path)
    options, exercised = parser.parse_known_args()
    environment: Path = options.environment.resolve()
    (packages,) = environment.glob("lib/python*/site-packages")
    for compiled in [*packages.rglob("__pycache__")]:
        shutil.rmtree(compiled)
    before = size_of(environment)
    with tempfile.TemporaryDirectory() as scratch:
        listed = Path(scratch, "opened")
        ask_all(environment, ["-c", LISTENING, str(listed)], exercised, byte_code=False)
        opened = {Path(line) for line in listed.read_text("utf-8").splitlines()}
    for name, size in prune(packages, opened).most_common(25):
        print(f"{size / 1e6:8.2f} MB  {name}")
    for command in (environment / "bin").iterdir():
        if not command.name.startswith(COMMANDS):
            command.unlink()
    strip(packages)
    lean = size_of(environment)
    ask_all(environment, ["-m", "halfangle_service.cli"], exercised, byte_code=True)
    after = size_of(environment)
    print(f"{before / 1e6:.0f} MB, less what is not opened {lean / 1e6:.0f}", end=", ")
    print(f"with byte code of what is loaded {after / 1e6:.0f}")
    return 0


def prune(packages: Path, opened: set[Path]) -> Counter[str]:
    """Remove what the rule at the top names; gives bytes by package or its folder."""
    gone: Counter[str] = Counter()
    for path in [*never_opened(packages, opened)]:
        gone["/".join(path.relative_to(packages).parts[:2])] += size_of(path)
        shutil.rmtree(path) if path.is_dir() else path.unlink()
    for described in packages.glob("*.dist-info"):
        part = importlib.metadata.Distribution.at(described)
        files = [packages / file for file in part.files or [] if file.parts[0] != ".."]
        if not any(file.exists() and described not in file.parents for file in files):
            print(f"   whole     {described.stem}")
            shutil.rmtree(described)
    return gone


def never_opened(folder: Path, opened: set[Path]) -> Iterator[Path]:
    """Files and folders of others' packages that the rule at the top removes."""
    for path in sorted(folder.iterdir()):
        if path.name == OURS or path.suffix == ".dist-info":
            continue
        if path.is_dir():
            if size_of(path) > LEAST_FOLDER and not any(one.is_relative_to(path) for one in opened):
                yield path
            else:
                yield from never_opened(path, opened)
        elif path not in opened and (
            path.suffix in SOURCES or (path.suffix != ".py" and size_of(path) > LEAST_FILE)
        ):
            yield path


def strip(packages: Path) -> None:
    """Take debug information out of compiled modules, where the program for it is at hand."""
    modules = [str(path) for path in packages.rglob("*.so") if not path.parent.suffix]
    if shutil.which("strip"):
        subprocess.run(["strip", "--strip-debug", *modules], check=True)


def ask_all(
    environment: Path, serve: Sequence[str], exercised: Sequence[str], *, byte_code: bool
) -> None:
    """Serve, ask for everything, stop. Raises where one of them fails."""
    with socket.create_server(("127.0.0.1", 0)) as listener:
        port: int = listener.getsockname()[1]
    variables = {k: v for k, v in os.environ.items() if not k.startswith(("HALFANGLE_", "PYTHON"))}
    variables |= {} if byte_code else {"PYTHONDONTWRITEBYTECODE": "1"}
    command = [str(environment / "bin" / "python"), *serve, "serve", "--port", str(port)]
    with subprocess.Popen([*command, "--log-level", "error"], env=variables) as service:
        try:
            wait_for(port, service)
            asked = [sys.executable, str(EXERCISE), f"http://127.0.0.1:{port}", *exercised]
            subprocess.run(asked, check=True, timeout=300)
        finally:
            service.send_signal(signal.SIGTERM)
        if service.wait(60) != 0:
            raise subprocess.CalledProcessError(service.returncode, command)


def wait_for(port: int, service: subprocess.Popen[bytes]) -> None:
    """Wait until the service listens. Raises where it ended or takes over a minute."""
    for _ in range(1_200):
        with socket.socket() as probe:
            if probe.connect_ex(("127.0.0.1", port)) == 0:
                return
        if service.poll() is not None:
            break
        time.sleep(0.05)
    raise TimeoutError("the service did not start")


def size_of(path: Path) -> int:
    """Bytes of a file, or of all files in a folder."""
    if not path.is_dir():
        return path.lstat().st_size
    return sum(file.lstat().st_size for file in path.rglob("*") if not file.is_dir())


if __name__ == "__main__":
    sys.exit(main())
