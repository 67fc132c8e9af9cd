"""Changelogs of a few lines, and what they make of two answers."""

from pathlib import Path

from releases.changelog import Changelog, load_changelog
from releases.comparing import Comparison, Finding
from releases.paths import Json
from releases.translation import Answer, translated_request

OPERATIONS = ("sine.setting", "sine.angle", "wheels.choose")
CONTRACT = Path(__file__).parents[1] / "openapi" / "openapi.json"


def changelog_of(folder: Path, text: str, file: str = "sine.toml") -> Changelog:
    """A changelog of one file."""
    (folder / file).write_text(text, encoding="utf-8")
    return load_changelog(folder, OPERATIONS)


def sent(folder: Path, text: str, request: Json) -> Json:
    """A request to `sine.setting` as it is sent after."""
    return translated_request(request, changelog_of(folder, text).of("sine.setting"))


def answer(result: Json, advisories: Json = (), relations: Json = ()) -> Answer:
    """What a service answers."""
    basis = {"relations": list(relations), "sources": [], "release": "0.1.0"}
    return Answer(200, {"result": result, "advisories": list(advisories), "basis": basis})


def problem(kind: str, detail: str, **errors: str) -> Answer:
    """What a service answers to a request that it refuses; `errors` are messages by field."""
    document = {
        "type": f"/problems/{kind}",
        "title": kind,
        "status": 422,
        "detail": detail,
        "instance": "/v1/sine/setting",
        "errors": [{"pointer": f"/{name}", "message": text} for name, text in errors.items()],
    }
    return Answer(422, document)


def findings(
    folder: Path, text: str, before: Answer, after: Answer, request: Json = None
) -> list[Finding]:
    """What is found between two answers of `sine.setting`."""
    comparison = Comparison("sine.setting", "/v1/sine/setting", changelog_of(folder, text))
    return comparison.compare(request or {}, before, after)


def differences(found: list[Finding]) -> list[str]:
    """Places of the findings that no entry excuses."""
    return [one.group for one in found if one.entry is None]
