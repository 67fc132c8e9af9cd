"""What the service is deployed with: locked packages, the image's files, Kubernetes, compose."""

import re
import shutil
import subprocess
import tomllib
from pathlib import Path
from typing import Any

import pytest
import yaml
from litestar.testing import TestClient
from packaging.requirements import Requirement

from halfangle_service import __version__
from halfangle_service.app import create_app
from halfangle_service.settings import ENVIRONMENT_PREFIX, Settings
from prune import never_opened
from support import need_program
from try_image import build_stage

ROOT = Path(__file__).parents[2]
DOCKER = ROOT / "docker"
MANIFESTS = sorted((DOCKER / "kubernetes").glob("*.yaml"))
PROJECT = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))["project"]
LOCKED = {
    "constraints.txt": PROJECT["dependencies"],
    "constraints-sheets.txt": PROJECT["optional-dependencies"]["sheets"],
    "constraints-build.txt": ["hatchling>=1.27"],
}


def pins(text: str) -> dict[str, list[Requirement]]:
    """What a file of constraints pins, by name; of some packages one release a Python."""
    found: dict[str, list[Requirement]] = {}
    for line in re.findall(r"^([a-z0-9].*?) \\$", text, re.M):
        pinned = Requirement(line)
        found.setdefault(pinned.name, []).append(pinned)
    return found


def unlocked(wanted: list[str], text: str) -> list[str]:
    """Which of the packages wanted are not pinned, or not within the range wanted."""
    pinned = pins(text)
    return [
        one.name
        for one in map(Requirement, wanted)
        if not pinned.get(one.name)
        or not all(
            one.specifier.contains(str(pin.specifier).removeprefix("=="))
            for pin in pinned[one.name]
        )
    ]


@pytest.mark.parametrize("name", LOCKED)
def test_every_dependency_is_locked_within_its_range(name: str) -> None:
    """Each package of `pyproject.toml` is pinned within its range, its files by digests."""
    text = (DOCKER / name).read_text("utf-8")
    assert unlocked(LOCKED[name], text) == [], "run docker/lock.py"
    blocks = re.split(r"^(?=[a-z0-9])", text, flags=re.M)[1:]
    assert [block for block in blocks if not re.search(r"--hash=sha256:[0-9a-f]{64}", block)] == []
    assert "://" not in text


def test_what_is_not_locked_is_found() -> None:
    """A package that is missing, or pinned outside of its range, is named."""
    text = "numpy==2.4.6 ; python_full_version < '3.12' \\\nnumpy==3.0.0 \\\nanyio==4.16.0 \\\n"
    wanted = ["anyio>=4.9,<5", "numpy>=2.2,<3", "scipy>=1.15"]
    assert unlocked(wanted, text) == ["numpy", "scipy"]


def test_only_what_nothing_opened_is_removed(tmp_path: Path) -> None:
    """Large folders and files that nothing opened go; Python beside what is used stays."""
    large = b"0" * 120_000
    written = {
        "used/module.py": b"",
        "used/seldom.py": large,
        "used/unused.so": large,
        "used/source.c": b"",
        "used/tests/test_it.py": large,
        "used/small/one.py": b"",
        "unused/module.py": large,
        "unused-1.0.dist-info/LICENSE": large,
        "halfangle_service/data.bin": large,
    }
    for name, content in written.items():
        (tmp_path / name).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / name).write_bytes(content)
    gone = never_opened(tmp_path, {tmp_path / "used/module.py", tmp_path / "used"})
    names = {str(path.relative_to(tmp_path)) for path in gone}
    assert names == {"used/unused.so", "used/source.c", "used/tests", "unused"}


def test_the_image_is_of_this_release() -> None:
    """Label, manifest and compose file name the release that the package has."""
    assert f'image.version="{__version__}"' in (DOCKER / "Dockerfile").read_text("utf-8")
    for path in (DOCKER / "kubernetes/deployment.yaml", DOCKER / "compose.yaml"):
        assert f"image: halfangle-service:{__version__}\n" in path.read_text("utf-8"), path


def test_the_steps_without_an_engine_are_those_of_the_dockerfile() -> None:
    """The build stage is read from the Dockerfile itself, each instruction on one line."""
    steps = build_stage((DOCKER / "Dockerfile").read_text("utf-8"))
    assert [name for name, _ in steps].count("RUN") == 3
    assert any("--require-hashes" in words and "constraints.txt" in words for _, words in steps)
    assert ("COPY", "service ./service") in steps


def documents() -> dict[str, dict[str, Any]]:
    """Every object of the manifests, by its kind."""
    texts = [path.read_text("utf-8") for path in MANIFESTS]
    return {one["kind"]: one for text in texts for one in yaml.safe_load_all(text)}


def test_the_manifests_fit_the_service() -> None:
    """Settings, port, probes and times of the manifests are those that the service has."""
    found = documents()
    pod = found["Deployment"]["spec"]["template"]["spec"]
    (container,) = pod["containers"]
    assert container["ports"] == [{"name": "http", "containerPort": Settings().port}]
    # Those that wait to be uncommented too.
    text = (DOCKER / "kubernetes/deployment.yaml").read_text("utf-8")
    set_there = re.findall(rf"name: {ENVIRONMENT_PREFIX}(\w+)", text)
    assert {name.lower() for name in set_there} <= set(Settings.model_fields)
    probes = ("startupProbe", "livenessProbe", "readinessProbe")
    with TestClient(create_app(Settings())) as client:
        for probe in probes:
            assert client.get(container[probe]["httpGet"]["path"]).status_code == 200
    (before,) = re.findall(r"\d+", container["lifecycle"]["preStop"]["exec"]["command"][1])
    assert pod["terminationGracePeriodSeconds"] > int(before) + Settings().stop_seconds
    compose = yaml.safe_load((DOCKER / "compose.yaml").read_text("utf-8"))["services"]["halfangle"]
    assert int(compose["stop_grace_period"].removesuffix("s")) > Settings().stop_seconds


def test_every_object_is_about_the_same_pods() -> None:
    """Service, policy and budget select the pods that the Deployment makes; the scaler names it."""
    found = documents()
    labels = found["Deployment"]["spec"]["template"]["metadata"]["labels"]
    assert found["Deployment"]["spec"]["selector"]["matchLabels"] == labels
    assert found["Service"]["spec"]["selector"] == labels
    assert found["NetworkPolicy"]["spec"]["podSelector"]["matchLabels"] == labels
    assert found["PodDisruptionBudget"]["spec"]["selector"]["matchLabels"] == labels
    scaled = found["HorizontalPodAutoscaler"]["spec"]["scaleTargetRef"]
    assert scaled["name"] == found["Deployment"]["metadata"]["name"]
    assert "replicas" not in found["Deployment"]["spec"]


def checked(*command: str) -> tuple[bool, str]:
    """Whether a checker passes without a warning, and what it says."""
    need_program(shutil.which(command[0]), f"{command[0]} is not installed")
    ran = subprocess.run(command, capture_output=True, text=True, check=False, timeout=60)
    said = ran.stdout + ran.stderr
    return ran.returncode == 0 and "WARN" not in said, said


KUBERNETES = ("kubernetes-validate", "--strict")
COMPOSE = ("docker-compose", "--file")


@pytest.mark.program
def test_kubernetes_takes_the_manifests(tmp_path: Path) -> None:
    """Each is valid against the schemas of Kubernetes; misspelt, or of an unknown kind, none is."""
    passed, said = checked(*KUBERNETES, *map(str, MANIFESTS))
    assert passed, said
    text = (DOCKER / "kubernetes/deployment.yaml").read_text("utf-8")
    for good, bad in {
        "minReadySeconds": "minReadySecond",
        "kind: Deployment": "kind: Deploiment",
        "failureThreshold: 60": "failureThreshold: sixty",
    }.items():
        broken = tmp_path / "broken.yaml"
        broken.write_text(text.replace(good, bad), "utf-8")
        assert not checked(*KUBERNETES, str(broken))[0], bad


@pytest.mark.program
def test_compose_takes_its_file(tmp_path: Path) -> None:
    """A parser of compose files takes it, and refuses it with a word misspelt."""
    passed, said = checked(*COMPOSE, str(DOCKER / "compose.yaml"), "config", "--quiet")
    assert passed, said
    broken = tmp_path / "broken.yaml"
    text = (DOCKER / "compose.yaml").read_text("utf-8")
    broken.write_text(text.replace("read_only", "readonly"), "utf-8")
    assert not checked(*COMPOSE, str(broken), "config", "--quiet")[0]


@pytest.mark.program
def test_the_dockerfile_is_linted(tmp_path: Path) -> None:
    """A linter of Dockerfiles finds nothing, and finds what is planted."""
    passed, said = checked("hadolint", str(DOCKER / "Dockerfile"))
    assert passed, said
    broken = tmp_path / "Dockerfile"
    text = (DOCKER / "Dockerfile").read_text("utf-8")
    broken.write_text(text.replace("USER 10001:10001", "USER root"), "utf-8")
    assert not checked("hadolint", str(broken))[0]
