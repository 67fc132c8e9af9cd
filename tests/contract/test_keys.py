"""Keys: digests in a file that changes while it is served, who is let in, and how often."""

import base64
import json
import os
import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from halfangle_service import cli
from halfangle_service.http.guards import key_file
from halfangle_service.http.guards.key_file import KeysError, entry_for, read_keys
from http_support import SINE, SINE_QUERY, Service, assert_problem, service_with
from keys_support import KEY, OTHER, ROW, small_service, status, written

DIGEST = "sha256:" + "a" * 64


@pytest.fixture
def file(tmp_path: Path) -> Path:
    """A file with the key of one caller."""
    return written(tmp_path / "keys.toml", entry_for("erp", KEY))


@pytest.fixture
def at_once(monkeypatch: pytest.MonkeyPatch) -> None:
    """The file is looked at with each request, not once a second."""
    monkeypatch.setattr(key_file, "_LOOK_SECONDS", 0.0)


@pytest.fixture(scope="module")
def locked(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Service]:
    """A service that asks for a key."""
    path = written(tmp_path_factory.mktemp("k") / "keys.toml", entry_for("erp", KEY))
    with service_with(keys_file=path) as service:
        yield service


def basic(credentials: bytes) -> dict[str, str]:
    """The header of HTTP Basic with these credentials."""
    return {"Authorization": f"Basic {base64.b64encode(credentials).decode()}"}


# Who is let in --------------------------------------------------------------------------------
def test_a_key_opens_by_its_header_and_by_basic(locked: Service) -> None:
    """X-API-Key; or the key as password, with its name as user or with none."""
    assert status(locked, KEY) == 200
    assert locked.get(SINE_QUERY, auth=("erp", KEY)).status_code == 200
    assert locked.get(SINE_QUERY, auth=("", KEY)).status_code == 200
    lower = {"Authorization": basic(f"erp:{KEY}".encode())["Authorization"].replace("B", "b", 1)}
    assert locked.get(SINE_QUERY, headers=lower).status_code == 200


NO_KEYS: list[tuple[str, dict[Any, Any]]] = [
    ("none", {}),
    ("wrong", {"X-API-Key": OTHER}),
    ("its digest", {"X-API-Key": entry_for("erp", KEY)[30:94]}),
    ("empty", {"X-API-Key": ""}),
    ("cut", {"X-API-Key": KEY[:-1]}),
    ("longer", {"X-API-Key": f"{KEY} "}),
    ("too long", {"X-API-Key": "k" * 60_000}),
    ("not latin", {b"X-API-Key": "ключ".encode()}),
    ("bytes", {b"X-API-Key": bytes(range(128, 256))}),
    ("another's name", basic(f"mes:{KEY}".encode())),
    ("no colon", basic(KEY.encode())),
    ("not base64", {"Authorization": "Basic %%%"}),
    ("base64 cut", {"Authorization": "Basic abc"}),
    ("empty credentials", {"Authorization": "Basic"}),
    ("not UTF-8", basic(b"\xff\xfe:" + KEY.encode())),
    ("another scheme", {"Authorization": f"Bearer {KEY}"}),
    ("long basic", basic(b"erp:" + b"k" * 40_000)),
]


@pytest.mark.parametrize("sent", [n[1] for n in NO_KEYS], ids=[n[0] for n in NO_KEYS])
def test_whatever_is_no_key_is_refused_alike(locked: Service, sent: dict[Any, Any]) -> None:
    """401 in the same words, whatever part is wrong: nothing tells which came close."""
    refused = locked.get(SINE_QUERY, headers=sent)
    problem = assert_problem(refused, "unauthorized")
    assert problem["detail"].startswith("Send a valid key in the header X-API-Key, or ")
    assert 'ApiKey header="X-API-Key"' in refused.headers["www-authenticate"]


def test_two_keys_in_one_request_are_none(locked: Service) -> None:
    """A header twice leaves open which was meant, and a proxy's may stand beside the caller's."""
    twice = [("X-API-Key", KEY), ("X-API-Key", KEY)]
    assert locked.get(SINE_QUERY, headers=twice).status_code == 401


@pytest.mark.parametrize(
    ("headers", "asks_the_person"),
    [
        ({}, True),
        ({"Sec-Fetch-Mode": "navigate"}, True),
        ({"Sec-Fetch-Mode": "cors"}, False),
        ({"Sec-Fetch-Mode": "same-origin"}, False),
        ({"X-Requested-With": "fetch"}, False),
        ({"X-API-Key": "wrong"}, False),
    ],
)
def test_a_page_that_asks_brings_up_no_dialog(
    locked: Service, headers: dict[str, str], asks_the_person: bool
) -> None:
    """A browser asks its user at the challenge Basic: right for an address, wrong for a script."""
    refused = locked.get(SINE_QUERY, headers=headers)
    assert ("Basic realm=" in refused.headers["www-authenticate"]) == asks_the_person


def test_our_pages_say_that_a_script_asks(locked: Service) -> None:
    """Both ways to try on the pages send the mark, since browsers send theirs over TLS alone."""
    for name in ("page.js", "try.js"):
        assert 'X-Requested-With"' in locked.get(f"/docs/files/{name}").text


def test_a_short_key_is_never_taken(tmp_path: Path) -> None:
    """A digest of what a person chose opens nothing: keys of less than 128 bits are not."""
    short, enough = "summer-2026", "k" * 22
    path = written(tmp_path / "k.toml", entry_for("a", short), entry_for("b", enough))
    with small_service(keys_file=path) as service:
        assert (status(service, short), status(service, enough)) == (401, 200)


@pytest.mark.parametrize(
    ("part", "path"),
    [("documents", "/openapi.json"),  ("health", "/health/ready"),
     ("metrics", "/metrics")],
)  # fmt: skip
def test_what_is_open_is_a_setting(file: Path, part: str, path: str) -> None:
    """Each part is open where it is named, else it wants the key as all else does."""
    others = {"documents", "health", "metrics"} - {part}
    with small_service(keys_file=file, open_paths=others) as service:
        assert service.get(path).status_code == 401
        assert service.get(path, headers={"X-API-Key": KEY}).status_code == 200
    with small_service(keys_file=file, open_paths={part}) as service:
        assert service.get(path).status_code == 200
        assert service.get(SINE_QUERY).status_code == 401


# The file -------------------------------------------------------------------------------------
WRONG_FILES = [
    ("", "keys: is missing"),
    ("[keys", "Expected"),
    ("[kyes.a]\ndigests = []", "kyes: there is no such field; the nearest is keys"),
    ("[keys.a]\ndigest = 'x'", "digest: there is no such field; the nearest is digests"),
    ("[keys.a]\ndigests = []", "should have at least 1 item"),
    ("[keys.a]\ndigests = ['sha256:12']", "should match pattern"),
    (f"[keys.a]\ndigests = ['{DIGEST.upper()}']", "should match pattern"),
    (f"[keys.'two words']\ndigests = ['{DIGEST}']", "should match pattern"),
    (f"[keys.environment]\ndigests = ['{DIGEST}']", "environment"),
    (f"[keys.a]\ndigests = ['{DIGEST}', '{DIGEST}']", "that of a, too"),
    (f"[keys.a]\ndigests = ['{DIGEST}']\nrate_per_minute = -1", "greater than or equal to 0"),
    (f"[keys.a]\ndigests = ['{DIGEST}']\nrate_per_minute = nan", "rate_per_minute"),
    (f"[keys.a]\ndigests = ['{DIGEST}']\nexpires = 'never'", "expires"),
    (f"[keys.a]\ndigests = ['{DIGEST}']\nexpires = 1e9", "should be a date"),
    ("x = " + "[" * 5000, "recursion"),
    ("#" * 300_000, "larger than 200000 bytes"),
]


@pytest.mark.parametrize(("content", "words"), WRONG_FILES, ids=[w[1][:20] for w in WRONG_FILES])
def test_a_wrong_file_is_refused(tmp_path: Path, content: str, words: str) -> None:
    """The start ends with the file, the entry and what is wrong with it."""
    with pytest.raises(KeysError, match=r"k\.toml") as refused:
        read_keys(written(tmp_path / "k.toml", content))
    assert words in str(refused.value)


def test_what_is_no_plain_file_is_not_waited_for(tmp_path: Path) -> None:
    """A pipe would hold up every request; a folder is none either; an end beyond time is told."""
    os.mkfifo(tmp_path / "k.toml")
    for path in (tmp_path / "k.toml", tmp_path):
        with pytest.raises(KeysError, match="is no plain file"):
            read_keys(path)
    for far in ("0001-01-01T00:00:00+14:00", "9999-12-31T23:59:59-14:00", "0001-01-01"):
        entry = entry_for("a", KEY) + f"expires = {far}\n"
        ring = read_keys(written(tmp_path / "far.toml", entry))
        assert len(ring) == 1


def test_a_file_that_everybody_writes_is_refused(file: Path) -> None:
    """Whoever can write the file can let himself in."""
    file.chmod(0o646)
    with pytest.raises(KeysError, match="everybody may write it"):
        read_keys(file)


def test_a_file_that_everybody_reads_is_warned_of(
    file: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Digests tell no key, and are nobody's business all the same."""
    file.chmod(0o644)
    with small_service(keys_file=file, log_level="warning") as service:
        assert status(service, KEY) == 200
    assert "keys file readable by everybody" in capsys.readouterr().err


@pytest.mark.usefixtures("at_once")
def test_keys_change_without_a_new_start(file: Path) -> None:
    """A key is added, both hold, the old one goes: nobody is refused meanwhile."""
    with small_service(keys_file=file) as service:
        assert (status(service, KEY), status(service, OTHER)) == (200, 401)
        digests = [entry_for("erp", key).partition('["')[2][:71] for key in (KEY, OTHER)]
        written(file, f"[keys.erp]\ndigests = {digests}\n")
        assert (status(service, KEY), status(service, OTHER)) == (200, 200)
        written(file, entry_for("erp", OTHER))
        assert (status(service, KEY), status(service, OTHER)) == (401, 200)
        # Nobody: a table without entries is said on purpose, unlike a file cut short.
        written(file, "[keys]\n")
        assert status(service, OTHER) == 401


@pytest.mark.usefixtures("at_once")
@pytest.mark.parametrize("broken", [b"", b"[keys.erp]\ndig", b"\xff\xfe", None])
def test_a_broken_file_keeps_the_keys(
    file: Path, capsys: pytest.CaptureFixture[str], broken: bytes | None
) -> None:
    """Cut short, not text, gone: callers are let in as before, and one error is logged."""
    with small_service(keys_file=file) as service:
        assert status(service, KEY) == 200
        if broken is None:
            file.unlink()
        else:
            file.write_bytes(broken)
        for _ in range(3):
            assert status(service, KEY) == 200
        assert "halfangle_keys_file_unreadable 1.0" in service.get("/metrics").text
        logged = [json.loads(line) for line in capsys.readouterr().err.splitlines()]
        assert [line["event"] for line in logged] == ["keys file unreadable"]
        written(file, entry_for("erp", OTHER))
        assert (status(service, KEY), status(service, OTHER)) == (401, 200)
        assert "halfangle_keys_file_unreadable 0.0" in service.get("/metrics").text


@pytest.mark.usefixtures("at_once")
def test_a_link_that_is_swapped_is_followed(tmp_path: Path) -> None:
    """As an orchestrator mounts secrets: a link to a folder, swapped for one to the next."""
    for name, key in (("one", KEY), ("two", OTHER)):
        (tmp_path / name).mkdir()
        written(tmp_path / name / "keys.toml", entry_for("erp", key))
        # Settled long ago, of one size and one time: the folder alone tells them apart.
        os.utime(tmp_path / name / "keys.toml", (1e9, 1e9))
    (tmp_path / "data").symlink_to("one")
    (tmp_path / "keys.toml").symlink_to("data/keys.toml")
    with small_service(keys_file=tmp_path / "keys.toml") as service:
        assert (status(service, KEY), status(service, OTHER)) == (200, 401)
        (tmp_path / "next").symlink_to("two")
        (tmp_path / "next").replace(tmp_path / "data")
        assert (status(service, KEY), status(service, OTHER)) == (401, 200)


def test_the_file_is_looked_at_once_a_second(file: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A thousand requests a second ask the file system once."""
    looks: list[object] = []
    original = key_file.KeysFile._looked_at

    def counted(file: key_file.KeysFile) -> object:
        looks.append(file)
        return original(file)

    monkeypatch.setattr(key_file.KeysFile, "_looked_at", counted)
    with small_service(keys_file=file) as service:
        for _ in range(20):
            status(service, KEY)
    assert len(looks) <= 2


def test_a_key_ends_at_its_date(file: Path) -> None:
    """From the day on that `expires` names the key is refused, and its end is in the metrics."""
    for expires, expected in (("2001-01-01", 401), ("2999-01-01T00:00:00+02:00", 200)):
        written(file, entry_for("erp", KEY), f"expires = {expires}\n")
        with small_service(keys_file=file) as service:
            answer = service.get(SINE_QUERY, headers={"X-API-Key": KEY})
            assert answer.status_code == expected
            if expected == 401:
                assert "come to its end" in answer.json()["detail"]
            text = service.get("/metrics").text
            assert re.search(r'halfangle_key_ends_timestamp_seconds\{key="erp"\} [\d.e+]+', text)


def test_a_key_is_made_and_told_once(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    """The key on standard output, its line for the file beside it; it opens, and has 256 bits."""
    assert cli.main(["key", "erp-2"]) == 0
    told = capsys.readouterr()
    key = told.out.strip()
    assert re.fullmatch(r"[A-Za-z0-9_-]{43}", key)
    assert key not in told.err
    with small_service(keys_file=written(tmp_path / "k.toml", told.err)) as service:
        assert status(service, key) == 200
    for name in ("", "two words", "x" * 41, "environment"):
        with pytest.raises(SystemExit, match="2"):
            cli.main(["key", name])


# What is seen of it ---------------------------------------------------------------------------
def test_no_key_is_in_a_log(file: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """The log names the caller; the key itself is nowhere, however it was sent."""
    with small_service(keys_file=file, log_level="info") as service:
        for key in (KEY, KEY[1:]):
            status(service, key)
        service.get(SINE_QUERY, auth=("erp", KEY))
    written_out = capsys.readouterr()
    answered = [json.loads(line) for line in written_out.err.splitlines()]
    assert [(line["status"], line.get("key")) for line in answered] == [
        (200, "erp"), (401, None), (200, "erp"),
    ]  # fmt: skip
    assert KEY[1:] not in written_out.err + written_out.out
    assert base64.b64encode(f"erp:{KEY}".encode()).decode() not in written_out.err


def test_keys_of_the_variable_are_one_caller() -> None:
    """They stay valid, by both ways, and are seen under one name."""
    with small_service(api_keys={"one", "two"}, rate_per_minute=1, rate_burst=2) as service:
        assert status(service, "one") == 200
        assert service.post(SINE, auth=("environment", "two"), json=ROW["request"]).is_success
        assert status(service, "one") == 429
        assert 'halfangle_key_requests_total{key="environment"} 2.0' in service.get("/metrics").text
