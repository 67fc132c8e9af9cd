"""A search, guided by coverage, for bytes that a parser stumbles over. Not collected.

    pip install -e ".[fuzz]"
    python tests/load/fuzz_parsers.py --seconds 600              each parser, one after another
    python tests/load/fuzz_parsers.py --seconds 60 angles rows   some of them

What a parser may raise is a refusal (`fuzz/targets.py` says which); any other exception, an
assertion of the target, or an input that takes longer than a minute is a find: it is kept in
`.fuzz/` and printed, and the command ends with status 1. Inputs that reached something new are kept
in `tests/load/fuzz/corpus/`, the fewest that reach all of it; every run starts from them, and a
test reads each of them again (`tests/property/test_fuzz_corpus.py`).
"""

import argparse
import re
import shlex
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

HERE = Path(__file__).parent
# Run by itself it finds the tests' own support no other way.
sys.path.append(str(HERE.parent))

CORPUS = HERE / "fuzz" / "corpus"
FINDS = HERE.parents[1] / ".fuzz"
#: Longer inputs reach nothing new in these parsers, and are slower.
LONGEST_BYTES = 4_096
SLOWEST_SECONDS = 60
_DONE = re.compile(r"#(\d+)\s+DONE\s+cov: (\d+) ft: (\d+)")


def search(name: str, options: list[str]) -> None:
    """Run the search within this process, as the engine wants it; it ends the process."""
    import atheris  # noqa: PLC0415  only this process of the command needs it

    with atheris.instrument_imports(include=["halfangle_service", "halfangle_client"]):
        from fuzz.targets import TARGETS  # noqa: PLC0415

        target = TARGETS[name]()

    def read(data: bytes) -> None:
        target.read(data)

    # The engine's first argument is what it starts again by itself to look for the fewest inputs.
    atheris.Setup(options, read)
    atheris.Fuzz()


def _run(itself: Path, *options: str) -> subprocess.CompletedProcess[str]:
    command = [str(itself), *options]
    return subprocess.run(command, capture_output=True, text=True, errors="replace", check=False)


def _command_of(name: str, scratch: Path) -> Path:
    """A program of its own for the search of a parser, since the engine starts itself again."""
    itself = scratch / f"search-{name}"
    command = shlex.join([sys.executable, __file__, "--within", name, str(itself)])
    itself.write_text(f'#!/bin/sh\nexec {command} "$@"\n')
    itself.chmod(0o700)
    return itself


def fuzz(name: str, seconds: int, scratch: Path) -> bool:
    """Search one parser, keep the fewest inputs that reach all; True where nothing was found."""
    from fuzz.targets import TARGETS  # noqa: PLC0415  the process that searches loads it its own way

    target, kept, work = TARGETS[name](), CORPUS / name, scratch / name
    for folder in (kept, work, FINDS):
        folder.mkdir(parents=True, exist_ok=True)
    for number, seed in enumerate(target.seeds):
        (work / f"seed-{number}").write_bytes(seed)
    words = scratch / f"{name}.dict"
    words.write_text("".join(f'"{_escaped(word)}"\n' for word in target.words))
    finds = FINDS / f"{name}-"
    for old in FINDS.glob(f"{name}-*"):
        old.unlink()
    itself = _command_of(name, scratch)
    ran = _run(
        itself,
        *(str(work), str(kept), f"-max_total_time={seconds}", f"-max_len={LONGEST_BYTES}"),
        *(f"-timeout={SLOWEST_SECONDS}", f"-dict={words}", f"-artifact_prefix={finds}"),
        "-print_final_stats=1",
    )
    found = sorted(FINDS.glob(f"{name}-*"))
    done = _DONE.search(ran.stderr)
    said = f"{done[1]} inputs, coverage {done[2]}, features {done[3]}" if done else "ended early"
    fewest = scratch / f"{name}-fewest"
    fewest.mkdir()
    if not found and done:
        _run(itself, "-merge=1", f"-max_len={LONGEST_BYTES}", str(fewest), str(work), str(kept))
        _keep(fewest, kept)
    print(f"{name:>14}: {said}, {len(list(kept.iterdir()))} kept, {len(found)} found", flush=True)
    if found or not done:
        print(f"status {ran.returncode}", ran.stdout[-3_000:], ran.stderr[-3_000:])
    for one in found:
        print(f"  {one.name}: {one.read_bytes()[:300]!r}")
    return bool(done) and not found


def _escaped(word: bytes) -> str:
    return "".join(f"\\x{byte:02x}" for byte in word)


def _keep(fewest: Path, kept: Path) -> None:
    """Keep these inputs in place of those that were kept, under their own names."""
    if not any(fewest.iterdir()):
        return
    for old in kept.iterdir():
        old.unlink()
    for one in fewest.iterdir():
        shutil.copyfile(one, kept / one.name[:16])


def main() -> int:
    """Run the command; its status is 1 where anything was found."""
    parser = argparse.ArgumentParser(description=(__doc__ or "").partition(".")[0])
    parser.add_argument("--seconds", type=int, default=600, help="for each parser")
    parser.add_argument("parsers", nargs="*", help="names of parsers; all where none is given")
    wanted = parser.parse_args()
    from fuzz.targets import TARGETS  # noqa: PLC0415  not before the process that searches

    unknown = [name for name in wanted.parsers if name not in TARGETS]
    if unknown:
        parser.error(f"{', '.join(unknown)}: no such parser; there are {', '.join(TARGETS)}")
    with tempfile.TemporaryDirectory() as scratch:
        names = wanted.parsers or list(TARGETS)
        well = [fuzz(name, wanted.seconds, Path(scratch)) for name in names]
    return 0 if all(well) else 1


if __name__ == "__main__":
    if "--within" in sys.argv[1:2]:
        search(sys.argv[2], sys.argv[3:])
    raise SystemExit(main())
