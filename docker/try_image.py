"""Builds the image and runs it as it is meant to be run; without an engine, runs its steps.

    python docker/try_image.py            needs no engine, but uses buildah, podman and runc
    python docker/try_image.py --steps    the steps alone
    python docker/try_image.py --seconds 300    in so long, as `.ci/run` asks

With an engine (and root, and mmdebstrap for a base): the image is built, runs read-only, without
root and without a capability, is healthy, answers everything that `exercise.py` asks, and loses no
request that it has accepted when it is stopped. Without one it says so and runs what the build
stage of the Dockerfile runs, in a folder of its own. All that it makes is removed.

On a machine with much else to do the engine takes many times as long. With `--seconds` it is broken
off in time for the steps, which is said; so are the steps where they are late, which is a failure.
"""

import argparse
import json
import os
import re
import shutil
import signal
import socket
import subprocess
import sys
import tempfile
import time
import urllib.request
from collections.abc import Sequence
from concurrent.futures import ThreadPoolExecutor
from contextlib import suppress
from pathlib import Path
from typing import Any

ROOT = Path(__file__).resolve().parent.parent
DOCKERFILE = ROOT / "docker" / "Dockerfile"
PROGRAMS = ("buildah", "podman", "runc", "mmdebstrap")
BASE = "localhost/python-base:latest"
IMAGE = "localhost/halfangle-service:tried"
#: What the base holds: that of the Dockerfile comes from where a machine may not reach.
BASE_PACKAGES = (
    *("binutils", "ca-certificates", "python3", "python3-venv"),
    *("fonts-dejavu-core", "fonts-liberation", "libharfbuzz-subset0"),
    *("libpango-1.0-0", "libpangoft2-1.0-0"),
)
CERTIFICATES = "/etc/ssl/certs/ca-certificates.crt"
IN_FLIGHT = 28
#: So long the steps take on a busy machine: what is kept for them of the whole time.
STEPS_SECONDS = 240.0
#: So long a program that is told to end may clean up.
_CLEAN_UP_SECONDS = 20.0


def main() -> int:
    """Try the image, or its steps."""
    parser = argparse.ArgumentParser(description=__doc__.partition("\n")[0])
    parser.add_argument("--steps", action="store_true", help="the steps alone, without an engine")
    parser.add_argument("--seconds", type=float, default=float("inf"), help="the longest")
    options = parser.parse_args()
    ends = time.monotonic() + options.seconds
    # Told to end it cleans up as after a failure.
    signal.signal(signal.SIGTERM, lambda *_: sys.exit(143))
    with tempfile.TemporaryDirectory(prefix="image-") as name:
        scratch = Path(name)
        parts = None if options.steps else by_engine(scratch, ends - STEPS_SECONDS)
        if parts is None:
            parts = run_steps(scratch, ends)
    return report(json.loads(parts))


def report(parts: dict[str, Any]) -> int:
    """Say what the list of parts holds; status 1 where a part has no licence."""
    without = [part["name"] for part in parts["components"] if not part.get("licenses")]
    print(f"{len(parts['components'])} parts, without a licence: {', '.join(without) or 'none'}")
    return 1 if without else 0


def by_engine(scratch: Path, ends: float) -> bytes | None:
    """The list of parts by an engine; None, having said why, without one or where it is late."""
    engine = None
    try:
        engine = Engine.found(scratch, ends)
        return None if engine is None else engine.try_image()
    except subprocess.TimeoutExpired as late:
        command = " ".join(map(str, late.cmd))[-80:]
        print(f"the engine is broken off, its time is over at: {command}", flush=True)
        return None
    finally:
        if engine is not None:
            engine.remove()


def run_within(command: Sequence[str], ends: float, **how: Any) -> subprocess.CompletedProcess[str]:
    """Run a program until a moment; then it, and all that it began, is told to end."""
    left = ends - time.monotonic()
    with subprocess.Popen(command, text=True, start_new_session=True, **how) as process:
        try:
            out, said = process.communicate(
                timeout=None if left == float("inf") else max(0.0, left)
            )
        except BaseException:
            end_all(process)
            raise
    return subprocess.CompletedProcess(command, process.returncode, out, said)


def end_all(process: subprocess.Popen[str]) -> None:
    """End a program and all that it began: first they may take back what they mounted."""
    for number in (signal.SIGTERM, signal.SIGKILL):
        with suppress(ProcessLookupError):
            os.killpg(process.pid, number)
        with suppress(subprocess.TimeoutExpired):
            process.communicate(timeout=_CLEAN_UP_SECONDS)


class Engine:
    """buildah, podman and runc, with a storage of their own, until a moment."""

    def __init__(self, scratch: Path, ends: float) -> None:
        self._scratch = scratch
        self._ends = ends
        places = ("--root", f"{scratch}/store", "--runroot", f"{scratch}/run")
        self._storage = (*places, "--storage-driver", "vfs")
        own = scratch / "unfinished"
        own.mkdir()
        self._variables = {**os.environ, "TMPDIR": str(own)}

    @classmethod
    def found(cls, scratch: Path, ends: float) -> "Engine | None":
        """An engine with a base to build from; None, having said why, where there is none."""
        absent = [name for name in PROGRAMS if shutil.which(name) is None]
        if absent or os.geteuid() != 0:
            print(f"no engine: {', '.join(absent) or 'root'} is lacking")
            return None
        engine = cls(scratch, ends)
        try:
            engine._make_base()
            engine.podman("run", *engine.bare(), "--rm", BASE, "true")
        except subprocess.CalledProcessError as error:
            print(f"no engine: {error.cmd[0]} ended with {error.returncode}: {error.stderr[-300:]}")
            engine.remove()
            return None
        except BaseException:
            engine.remove()
            raise
        return engine

    def _make_base(self) -> None:
        """A base of Debian's own packages."""
        target = self._scratch / "base.tar"
        packages = ",".join(BASE_PACKAGES)
        quiet = ("mmdebstrap", "--quiet", "--variant=minbase", f"--include={packages}")
        self.run(*quiet, "trixie", str(target))
        self.podman("import", "--quiet", str(target), BASE)
        target.unlink()

    def try_image(self) -> bytes:
        """Build, run, ask, stop; gives the list of parts."""
        started = time.monotonic()
        self.build()
        print(f"built in {time.monotonic() - started:.0f} s")
        port = free_port()
        locked = ("--read-only", "--cap-drop", "all", "--security-opt", "no-new-privileges")
        setting = ("--env", f"HALFANGLE_PORT={port}")
        self.podman("run", "-d", *self.bare(), *locked, *setting, "--name", "tried", IMAGE)
        self.must_become_healthy()
        self.must_hold_nothing()
        address = f"http://127.0.0.1:{port}"
        exercise = [sys.executable, str(ROOT / "docker" / "exercise.py"), address]
        exercise += ["--stored", str(ROOT / "openapi" / "examples")]
        run_within(exercise, self._ends).check_returncode()
        print("environment:", self.inside("du", "-sm", "/opt/halfangle").split()[0], "MB")
        parts = self.inside("cat", "/opt/halfangle/parts.cdx.json")
        self.must_lose_nothing(address)
        return parts.encode()

    def build(self) -> None:
        """Build the image from the working copy."""
        revision = subprocess.run(
            ["git", "-C", str(ROOT), "rev-parse", "HEAD"],
            capture_output=True,
            text=True,
            check=False,
        ).stdout.strip()
        arguments = {"BASE": BASE, "REVISION": revision or "unknown"}
        words = [w for k, v in arguments.items() for w in ("--build-arg", f"{k}={v}")]
        # The machine's own certificates, for whatever stands between it and the registry.
        trusted = ("-v", f"{CERTIFICATES}:{CERTIFICATES}:ro") if Path(CERTIFICATES).exists() else ()
        how = ("--isolation", "chroot", "--network", "host", "--pull=never", "--format", "docker")
        target = ("-t", IMAGE, "-f", str(DOCKERFILE), str(ROOT))
        self.run("buildah", *self._storage, "build", *how, *words, *trusted, *target)

    def must_become_healthy(self) -> None:
        """By the image's own check, within half a minute."""
        for _ in range(60):
            healthy = self.podman("healthcheck", "run", "tried", check=False)
            if healthy.returncode == 0:
                return
            time.sleep(0.5)
        raise SystemExit(f"not healthy: {self.podman('logs', 'tried', check=False).stderr}")

    def must_hold_nothing(self) -> None:
        """Neither root, nor a capability, nor a file that it could write; labelled."""
        status = self.inside("cat", "/proc/1/status")
        for line in ("Uid:\t10001\t10001\t10001\t10001", "CapEff:\t0000000000000000"):
            if line not in status:
                raise SystemExit(f"not {line!r}: {status}")
        written = self.podman("exec", "tried", "touch", "/opt/halfangle/file", check=False)
        if written.returncode == 0:
            raise SystemExit("a file could be written")
        (described,) = json.loads(self.podman("image", "inspect", IMAGE).stdout)
        labels = described["Labels"]
        print(f"image {described['Size'] / 1e6:.0f} MB with its base; labels", json.dumps(labels))

    def must_lose_nothing(self, address: str) -> None:
        """Each request that was sent before the stop is answered, and the end is an orderly one."""
        example = get_json(f"{address}/v1/operations/jobs.plan")["result"]["example"]
        body = json.dumps(example).encode()
        with ThreadPoolExecutor(IN_FLIGHT) as callers:
            asked = [
                callers.submit(status_of, f"{address}/v1/jobs/plan", body) for _ in range(IN_FLIGHT)
            ]
            time.sleep(0.15)
            self.podman("stop", "-t", "40", "tried")
            statuses = [one.result() for one in asked]
        lost = [status for status in statuses if status != 200]
        code = self.podman("inspect", "--format", "{{.State.ExitCode}}", "tried").stdout.strip()
        print(f"stopped with {len(statuses)} in flight: {len(lost)} lost, status {code}")
        if lost or code != "0":
            raise SystemExit(f"lost: {lost}, status {code}")

    def inside(self, *command: str) -> str:
        """What a command within the running container prints."""
        return self.podman("exec", "tried", *command).stdout

    @staticmethod
    def bare() -> tuple[str, ...]:
        """Options for a container on the machine's own network, within the machine's limits."""
        return ("--network", "host", "--ulimit", "nofile=1024:1024", "--ulimit", "nproc=1024:1024")

    def podman(self, *words: str, check: bool = True) -> subprocess.CompletedProcess[str]:
        """Run podman."""
        runtime = ("--runtime", "runc", "--cgroup-manager", "cgroupfs")
        return self.run("podman", *self._storage, *runtime, *words, check=check)

    def run(self, *command: str, check: bool = True) -> subprocess.CompletedProcess[str]:
        """Run a program; where it fails its own words come first."""
        pipes = {"stdout": subprocess.PIPE, "stderr": subprocess.PIPE}
        ran = run_within(command, self._ends, env=self._variables, **pipes)
        if check and ran.returncode != 0:
            print((ran.stdout + ran.stderr)[-3_000:])
            ran.check_returncode()
        return ran

    def remove(self) -> None:
        """Remove containers, images and what is mounted of them, with a time of its own."""
        self._ends = time.monotonic() + 2.0 * _CLEAN_UP_SECONDS
        with suppress(subprocess.TimeoutExpired):
            self._remove()

    def _remove(self) -> None:
        self.podman("rm", "--all", "--force", "--time", "0", check=False)
        self.podman("rmi", "--all", "--force", check=False)


def run_steps(scratch: Path, ends: float) -> bytes:
    """Run what the build stage runs, in a folder of its own; gives the list of parts."""
    source = scratch / "src"
    installed = scratch / "opt"
    variables = {k: v for k, v in os.environ.items() if not k.startswith("HALFANGLE_")}
    for instruction, words in build_stage(DOCKERFILE.read_text("utf-8")):
        if instruction == "COPY":
            *parts, target = words.split()
            copy_into(source, parts, target)
        elif instruction == "RUN" and "apt-get" not in words:
            command = words.replace("/opt/", f"{installed}/").replace("python3 ", "python ")
            python = Path(sys.executable).resolve().parent
            path = {"PATH": f"{python}:{os.environ['PATH']}", "EXTRAS": "sheets"}
            how = {"cwd": source, "env": {**variables, **path}}
            run_within(["sh", "-ec", command], ends, **how).check_returncode()
    return (installed / "halfangle" / "parts.cdx.json").read_bytes()


def build_stage(text: str) -> list[tuple[str, str]]:
    """Instructions of the stage `build`, each on one line."""
    joined = re.sub(r"\\\n", " ", re.sub(r"^#.*\n", "", text, flags=re.M))
    stage = re.search(r"^FROM \S+ AS build\n(.*?)^FROM ", joined, re.M | re.S)
    if stage is None:
        raise ValueError("the Dockerfile has no stage `build`")
    lines = [line.partition(" ") for line in stage[1].splitlines() if line]
    return [(name, words.strip()) for name, _, words in lines]


def copy_into(source: Path, parts: Sequence[str], target: str) -> None:
    """Do as COPY does within the folder of the build."""
    for part in parts:
        for found in ROOT.glob(part):
            folder = source / target
            if found.is_dir():
                shutil.copytree(found, folder, ignore=shutil.ignore_patterns("__pycache__"))
            else:
                folder.mkdir(parents=True, exist_ok=True)
                shutil.copy(found, folder)


def get_json(address: str) -> Any:
    """What an address gives."""
    with urllib.request.urlopen(address, timeout=30) as answer:
        return json.load(answer)


def status_of(address: str, body: bytes) -> int | str:
    """Status of an answer that came whole, or what broke it off."""
    request = urllib.request.Request(address, body, {"Content-Type": "application/json"})
    try:
        with urllib.request.urlopen(request, timeout=60) as answer:
            json.load(answer)
            status: int = answer.status
            return status
    except (OSError, ValueError) as error:
        return str(error)


def free_port() -> int:
    """A port of loopback that nobody listens on."""
    with socket.create_server(("127.0.0.1", 0)) as listener:
        port: int = listener.getsockname()[1]
        return port


if __name__ == "__main__":
    sys.exit(main())
