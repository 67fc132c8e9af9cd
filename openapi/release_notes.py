"""Prints what a release changes for its callers, as Markdown made from its changelog.

    python openapi/release_notes.py 0.2 > notes.md

The changelog (`openapi/changelog/`) is checked against both releases, so these notes are too. What
only words a sentence otherwise is counted, not told.
"""

import argparse
import sys
import tomllib
from collections.abc import Callable, Iterator, Mapping
from pathlib import Path
from typing import Any

CHANGELOG = Path(__file__).parent / "changelog"
#: Sections in the order of who must act first; `all` is what holds everywhere.
EVERYWHERE = "all"
Entry = Mapping[str, Any]


def main() -> int:
    """Print the notes; status 1 where there is no such release."""
    parser = argparse.ArgumentParser(description=__doc__.partition("\n")[0])
    parser.add_argument("release", help="as its folder in openapi/changelog/ is called")
    release = parser.parse_args().release
    kept = sorted(path.name for path in CHANGELOG.iterdir() if path.is_dir())
    if release not in kept:
        print(f"There is no changelog of {release!r}; there is: {', '.join(kept)}", file=sys.stderr)
        return 1
    sys.stdout.write(notes_of(release, changes_of(CHANGELOG / release)))
    return 0


def changes_of(folder: Path) -> dict[str, dict[str, list[Entry]]]:
    """The entries of a release's changelog by topic and kind, what holds everywhere first."""
    files = sorted(folder.glob("*.toml"), key=lambda path: (path.stem != EVERYWHERE, path.stem))
    return {path.stem: tomllib.loads(path.read_text("utf-8")) for path in files}


def notes_of(release: str, changes: Mapping[str, Mapping[str, list[Entry]]]) -> str:
    """The notes as Markdown: a section a topic, in it what is asked and what is answered."""
    lines = [f"# Release {release}", "", "In paths `**` is any depth, `[]` each entry.", ""]
    for topic, kinds in changes.items():
        lines += [f"## {'Everywhere' if topic == EVERYWHERE else topic}", ""]
        for kind, (title, told) in KINDS.items():
            sentences = [*dict.fromkeys(_sentences(kinds.get(kind, []), told))]
            if sentences:
                lines += [f"### {title}", "", *(f"- {one}" for one in sentences), ""]
        reworded = sum(bool(one.get("reworded")) for part in kinds.values() for one in part)
        if reworded:
            lines += [f"Sentences say it in other words in {reworded} places.", ""]
    return "\n".join(lines)


def _sentences(entries: list[Entry], told: Callable[[Entry], str]) -> Iterator[str]:
    """Each entry as a sentence, with the operations that it is about, and the reason."""
    for entry in entries:
        what = told(entry)
        if what:
            # A text of one line in the changelog may be wrapped; here it is one line.
            why = " ".join(str(entry.get("reason", "")).split())
            yield f"{_about(entry)}{what}{f' ({why})' if why else ''}{_where(entry)}"


def _about(entry: Entry) -> str:
    names = entry.get("operation", [])
    listed = [names] if isinstance(names, str) else names
    return f"{', '.join(f'`{name}`' for name in listed)}: " if listed else ""


def _where(entry: Entry) -> str:
    """The condition under which an entry holds, in the changelog's own words."""
    parts = [
        f"{key.replace('_', ' ')} {_shown(value)}" for key, value in entry.get("when", {}).items()
    ]
    return f" — where {', '.join(parts)}" if parts else ""


def _shown(value: Any) -> str:
    if isinstance(value, Mapping):
        return ", ".join(f"`{name}` is {_shown(one)}" for name, one in value.items())
    if isinstance(value, list):
        return " or ".join(map(_shown, value))
    return f"`{value}`"


def _operation(entry: Entry) -> str:
    name = f"`{entry['name']}`"
    return f"{name} is gone" if entry.get("gone") else f"{name} is now `{entry['to']}`"


def _request(entry: Entry) -> str:
    path = f"`{entry['path']}`"
    if "new" in entry:
        return f"{path} must now be sent; {_shown(entry['new'])} asks for what it was without"
    if entry.get("dropped"):
        return f"{path} is no longer taken"
    return _moved(path, entry)


def _result(entry: Entry) -> str:
    path = "the whole result" if entry["path"] == "*" else f"`{entry['path']}`"
    path += f" about `{entry['field']}`" if "field" in entry else ""
    if entry.get("new"):
        return f"{path} is new"
    if entry.get("gone"):
        return f"{path} is gone"
    moved = _moved(path, entry)
    if entry.get("changed"):
        return f"{moved or path}{' and' if moved else ''} is another one"
    return moved


def _moved(path: str, entry: Entry) -> str:
    """Another name or place, another unit, other options; empty where it is none of these."""
    parts = []
    if "to" in entry:
        parts.append(f"is now `{entry['to']}`")
    if "factor" in entry:
        parts.append(f"is what it was times {entry['factor']}")
    for old, new in {**entry.get("values", {}), **entry.get("words", {})}.items():
        parts.append(f"says {_shown(new)} where it said `{old}`")
    return f"{path} {', '.join(parts)}" if parts else ""


def _advisory(entry: Entry) -> str:
    code = f"`{entry['code']}`"
    if entry.get("new"):
        return f"{code} is new"
    if entry.get("gone"):
        return f"{code} is gone"
    parts = [f"is now `{entry['to']}`"] if "to" in entry else []
    if "severity" in entry:
        parts.append(f"is now a {entry['severity']}")
    return f"{code} {', '.join(parts)}" if parts else ""


def _refusal(entry: Entry) -> str:
    detail = f" with “{entry['detail']}”" if "detail" in entry else ""
    return f"what was `{entry['before']}` is now `{entry['after']}`{detail}"


#: What is told of a change, by its kind in the changelog.
KINDS: dict[str, tuple[str, Callable[[Entry], str]]] = {
    "operation": ("Operations", _operation),
    "request": ("What is asked", _request),
    "result": ("What is answered", _result),
    "advisory": ("Advisories", _advisory),
    "refusal": ("Refusals", _refusal),
    "problem": ("Problem documents", _result),
    "basis": ("What an answer stands on", _result),
}


if __name__ == "__main__":
    sys.exit(main())
