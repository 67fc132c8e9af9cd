"""Node.js for tests of the contract: front ends read it with programs of that world."""

import os
import shutil
import subprocess
from pathlib import Path

from support import need_program

#: Folder of packages from npm, as `tests/node/package.json` names them; absent where not installed.
MODULES = Path(__file__).parent / "node" / "node_modules"


def node(script: str, *arguments: str) -> str:
    """Run a script with node; give what it prints."""
    program = shutil.which("node")
    need_program(program, "node is not installed")
    return run(str(program), "--input-type=commonjs", "--eval", script, "--", *arguments)


def package(name: str) -> Path:
    """Folder of an installed package; the test is skipped where there is none."""
    need_program(shutil.which("node"), "node is not installed")
    folder = MODULES / name
    need_program(folder.is_dir(), f"{name} is not installed: `npm ci` in tests/node")
    return folder


def run(*command: str) -> str:
    """Run a command; give what it prints, and fail with what it says where it fails."""
    environment = {**os.environ, "NODE_PATH": str(MODULES), "REDOCLY_TELEMETRY": "off"}
    done = subprocess.run(
        command,
        capture_output=True,
        text=True,
        check=False,
        env=environment,
        stdin=subprocess.DEVNULL,
    )
    assert done.returncode == 0, (done.stdout + done.stderr)[-4000:]
    return done.stdout
