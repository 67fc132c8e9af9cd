"""What is around the service: descriptors, disk, reader of the log, clock, rights."""

import asyncio
import json
import os
import resource
import subprocess
import time
from collections import Counter
from collections.abc import Callable
from pathlib import Path

from faulty.asking import Callers, answer_on, question, setting
from faulty.finding import Finding
from faulty.started import Service, memory_of, service, warmed, watched
from halfangle_service.http.guards.key_file import entry_for, new_key
from halfangle_service.registry import load_registry

IS_ROOT = os.geteuid() == 0
_FAKETIME = (
    "/usr/lib/*-linux-gnu/faketime/libfaketimeMT.so.1",
    "/usr/lib*/faketime/libfaketimeMT.so.1",
)
NOBODY = 65_534


# Descriptors ----------------------------------------------------------------------------------
_DESCRIPTORS = 80


def no_descriptors(folder: Path, seconds: float) -> Finding:
    """More connections than the system lets the service hold descriptors."""
    few = lambda: resource.setrlimit(resource.RLIMIT_NOFILE, (_DESCRIPTORS, _DESCRIPTORS))  # noqa: E731
    with service(folder, "--header-seconds=6", preexec_fn=few) as served:
        finding = asyncio.run(_no_descriptors(served))
        finding.must["the service ended as told"] = served.stop() == 0
    said = [one for one in served.events() if "descriptors" in one or "refused" in one]
    finding.must["the log tells of it at the start and then"] = len(said) >= 2
    finding.must["the log is not full of it"] = len(said) < 100
    finding.seen["lines of the log about it"] = str(len(said))
    return finding


async def _no_descriptors(served: Service) -> Finding:
    idle = await warmed(served, at_once=4)
    held = [
        await asyncio.wait_for(asyncio.open_connection("127.0.0.1", served.port), 10)
        for _ in range(_DESCRIPTORS * 2)
    ]
    await asyncio.sleep(1.0)
    refused = Counter[str]()
    for reader, _ in held:
        try:
            start = await asyncio.wait_for(reader.read(12), 0.005)
        except TimeoutError:
            refused["held"] += 1
        except OSError:
            refused["reset"] += 1
        else:
            refused[start[9:12].decode() or "closed"] += 1
    spent, began = served.processor_seconds(), time.monotonic()
    await asyncio.sleep(2.0)
    spinning = (served.processor_seconds() - spent) / (time.monotonic() - began)
    most = served.descriptors()
    for _, writer in held:
        writer.close()
    after = Callers(served.port, 4)
    await after.ask_for(2.0)
    return Finding(
        f"{_DESCRIPTORS} descriptors, {_DESCRIPTORS * 2} connections held",
        after.counts,
        must={
            "it does not spin": spinning < 0.1,
            "after it all is as before": after.unreached == 0,
            "who was not taken was told so": refused["reset"] + refused["closed"] == 0,
        },
        seen={
            "processor meanwhile": f"{spinning:.0%}",
            "most descriptors": str(most),
            "those held": ", ".join(f"{n} × {how}" for how, n in refused.most_common()),
        },
        memory=await memory_of(served, idle),
    )


# Logs -----------------------------------------------------------------------------------------
def full_disk(folder: Path, seconds: float) -> Finding:
    """The log's file has no room left, and later has again."""
    done = "log on a full disk of 100 kB under load, then room made"
    if not _can_mount():
        return Finding(done, untried="a small disk cannot be mounted here")
    place = folder / "disk"
    place.mkdir()
    script = 'mount -t tmpfs -o size=100k none "$0" && exec "$@" 2>> "$0/log"'
    before = ("unshare", "-m", "sh", "-c", script, str(place))
    with service(folder, before=before) as served:
        inside = Path(f"/proc/{served.process.pid}/root{place}/log")
        finding = asyncio.run(_full_disk(served, inside, seconds))
        finding.done = done
    return finding


async def _full_disk(served: Service, log: Path, seconds: float) -> Finding:
    idle = await warmed(served)
    callers = Callers(served.port)
    watching = asyncio.ensure_future(watched(served, callers))
    await callers.ask_for(max(2.0, seconds / 3))
    most = log.stat().st_size
    os.truncate(log, 0)
    callers.over = True
    await watching
    later = Callers(served.port, 2, 0.03)
    await later.ask_for(2.0)
    await asyncio.sleep(0.5)
    found, torn = [], 0
    for line in log.read_bytes().splitlines():
        try:
            found.append(json.loads(line)["event"])
        except ValueError:
            torn += bool(line.strip(b"\0"))
    return Finding(
        "",
        callers.counts,
        must={
            "it answers as before": later.counts.answered > 0 and later.counts.broken == 0,
            "the disk was full": most > 98_000,
            "it logs again once there is room": found.count("answered") > 10,
            "it says how many lines were dropped": "lines dropped" in found,
            "no line after that is torn": torn == 0,
        },
        seen={"lines once there is room": str(len(found))},
        memory=await memory_of(served, idle),
    )


def no_room_at_all(folder: Path, seconds: float) -> Finding:
    """Every line of the log finds the disk full."""
    with Path("/dev/full").open("wb") as full, service(folder, log=full) as served:

        async def ask() -> Finding:
            idle = await warmed(served)
            callers = Callers(served.port)
            await callers.ask_for(max(2.0, seconds / 4))
            used = served.processor_seconds()
            await asyncio.sleep(1.0)
            used = served.processor_seconds() - used
            memory = await memory_of(served, idle)
            must = {"it does not spin": used < 0.1}
            return Finding("log to /dev/full under load", callers.counts, must=must, memory=memory)

        finding = asyncio.run(ask())
        finding.must["the service ended as told"] = served.stop() == 0
    return finding


def log_unread(folder: Path, seconds: float) -> Finding:
    """The log goes to a pipe that nobody reads, and then somebody does."""
    reading, writing = os.pipe()
    try:
        with service(folder, log=writing) as served:
            os.close(writing)
            finding = asyncio.run(_log_unread(served, seconds))
            with os.fdopen(reading, "rb", closefd=False) as file:
                served.process.terminate()
                lines = [json.loads(line) for line in file]
            finding.must["the service ended as told"] = served.process.wait(60) == 0
    finally:
        os.close(reading)
    events = [line["event"] for line in lines]
    dropped = sum(line["count"] for line in lines if line["event"] == "lines dropped")
    told = events.count("answered") + dropped
    counts = finding.counts
    # The callers that warmed it up are logged, too.
    finding.must["each answer was logged or counted as dropped"] = told >= counts.answered
    finding.seen["lines"] = f"{events.count('answered'):,} kept for the reader, {dropped:,} dropped"
    return finding


async def _log_unread(served: Service, seconds: float) -> Finding:
    idle = await warmed(served)
    callers = Callers(served.port, 16, 0.0)
    await callers.ask_for(max(3.0, seconds / 2))
    return Finding(
        "log to a pipe that nobody reads, then read",
        callers.counts,
        seen={"p99": f"{callers.slow():.0f} ms"},
        memory=await memory_of(served, idle),
    )


#: So often the paced caller may ask.
_TURN_SECONDS = 6.0


# Clock ----------------------------------------------------------------------------------------
def clock_jumps(folder: Path, seconds: float) -> Finding:
    """The clock of the day jumps by a day either way, as when it is set right."""
    done = "the clock set a day on, then two days back, under load (libfaketime)"
    found = [path for one in _FAKETIME for path in Path("/").glob(one.lstrip("/"))]
    if not found:
        return Finding(done, untried="libfaketime is not installed")
    clock, keys, key = folder / "clock", folder / "keys.toml", new_key()
    clock.write_text("+0")
    keys.write_text(
        entry_for("slow", key) + f"rate_per_minute = {60.0 / _TURN_SECONDS:g}\nrate_burst = 3\n"
    )
    keys.chmod(0o600)
    variables = {
        "LD_PRELOAD": str(found[0]),
        "FAKETIME_TIMESTAMP_FILE": str(clock),
        "FAKETIME_NO_CACHE": "1",
        # As when a clock is set: what only goes forward is left alone.
        "FAKETIME_DONT_FAKE_MONOTONIC": "1",
        "HALFANGLE_KEYS_FILE": str(keys),
        "HALFANGLE_API_KEYS": '["open-all-day"]',
    }
    with service(folder, "--header-seconds=2", variables=variables) as served:
        finding = asyncio.run(_clock_jumps(served, clock, key, seconds))
        finding.done = done
    lines = [one for one in served.lines() if one["event"] == "answered"]
    days = {one["timestamp"][:10] for one in lines}
    finding.must["the jumps were seen in the log"] = len(days) >= 3
    times = [one["milliseconds"] for one in lines if one["milliseconds"] is not None]
    finding.must["no time of an answer jumped"] = min(times) >= 0.0 and max(times) < 60_000
    finding.seen["days in the log"] = str(len(days))
    return finding


async def _clock_jumps(served: Service, clock: Path, key: str, seconds: float) -> Finding:
    head = "X-API-Key: open-all-day\r\n"
    callers = Callers(served.port, 4, head=head)
    await callers.ask_for(1.5)
    idle = served.megabytes()
    statuses: list[int] = []

    async def paced() -> int:
        reader, writer = await asyncio.open_connection("127.0.0.1", served.port)
        status, _, _ = await answer_on(reader, writer, setting(0, f"X-API-Key: {key}\r\n").sent)
        writer.close()
        return status

    async def held() -> float:
        began = time.monotonic()
        reader, writer = await asyncio.open_connection("127.0.0.1", served.port)
        writer.write(b"POST /v1/sine/setting HTTP/1.1\r\nHost:")
        await reader.read()
        writer.close()
        return time.monotonic() - began

    asking = asyncio.ensure_future(callers.ask())
    spent = [await paced() for _ in range(4)]
    spent_at = time.monotonic()
    ends: list[float] = []
    for jump in ("+86400", "-86400"):
        waiting = asyncio.ensure_future(held())
        await asyncio.sleep(0.3)
        clock.write_text(jump)
        await asyncio.sleep(0.3)
        if statuses:
            await asyncio.sleep(max(0.0, spent_at + _TURN_SECONDS + 0.5 - time.monotonic()))
        statuses.append(await paced())
        ends.append(await waiting)
        await asyncio.sleep(max(0.0, seconds / 6))
    callers.over = True
    await asking
    clock.write_text("+0")
    return Finding(
        "",
        callers.counts,
        must={
            "the pace was spent before": spent == [200, 200, 200, 429],
            "a day on gives no turn": statuses[0] == 429,
            "a day back takes none": statuses[1] == 200,
            "a held head ends in its own time": all(1.5 < end < 8.0 for end in ends),
        },
        seen={"held heads ended after": " and ".join(f"{end:.1f} s" for end in ends)},
        memory=await memory_of(served, idle),
    )


# Rights ---------------------------------------------------------------------------------------
def read_only(folder: Path, seconds: float) -> Finding:
    """Nobody's rights, and a file system that takes no byte: every operation, page and document."""
    done = "uid 65534, every file system read-only, no home: every operation and page"
    if not _can_mount():
        return Finding(done, untried="needs root, to give rights up and to mount")
    script = (
        "awk '{print $2}' /proc/mounts | while read -r at; do"
        ' mount -o remount,bind,ro "$at" 2> /dev/null; done;'
        ' for at in /tmp /dev/shm /var/tmp "$0"; do'
        ' touch "$at/written" 2> /dev/null && echo \'{"event": "written", "level": "error"}\' >&2;'
        " done; unset TMPDIR; export HOME=/nonexistent;"
        ' exec setpriv --reuid 65534 --regid 65534 --clear-groups --no-new-privs "$@"'
    )
    before = ("unshare", "-m", "sh", "-c", script, str(folder))
    variables = {"PYTHONDONTWRITEBYTECODE": ""}
    with service(folder, before=before, variables=variables) as served:
        status = Path(f"/proc/{served.process.pid}/status").read_text()
        is_nobody = f"Uid:\t{NOBODY}\t{NOBODY}" in status
        finding = asyncio.run(_everything(served))
        finding.done = done
        finding.must["it ran as nobody"] = is_nobody
        finding.must["the service ended as told"] = served.stop() == 0
    finding.must["nothing could be written"] = "written" not in served.events()
    finding.must["the log tells no fault"] = not served.faults()
    return finding


async def _everything(served: Service) -> Finding:
    callers = Callers(served.port, 4)
    reader, writer = await asyncio.open_connection("127.0.0.1", served.port)

    async def get(path: str, right: Callable[[int], bool] = lambda status: status == 200) -> None:
        asked = f"GET {path} HTTP/1.1\r\nHost: shop\r\n\r\n".encode()
        status, *_ = await asyncio.wait_for(answer_on(reader, writer, asked), 60)
        callers.counts.answered += right(status)
        if not right(status):
            callers.counts.note_wrong(f"{status} to {path}")

    operations = load_registry().operations
    for name, operation in operations.items():
        asked = question(operation.path, dict(operation.example), lambda answer: "result" in answer)
        status, body, _ = await asyncio.wait_for(answer_on(reader, writer, asked.sent), 60)
        callers.note(status, body, asked)
        await get(f"/docs/{name}")
    pages = ("/docs", "/docs/try", "/openapi.json", "/health/live", "/health/ready", "/metrics")
    for path in pages:
        await get(path)
    writer.close()
    idle = served.megabytes()
    await callers.ask_for(2.0)
    return Finding(
        "",
        callers.counts,
        seen={"asked": f"{len(operations)} operations, {len(operations) + len(pages)} pages"},
        memory=await memory_of(served, idle),
    )


def _can_mount() -> bool:
    """Whether a file system can be mounted for a process alone."""
    if not IS_ROOT:
        return False
    ran = subprocess.run(["unshare", "-m", "true"], capture_output=True, check=False)
    return ran.returncode == 0
