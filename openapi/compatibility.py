"""Refuses a contract that breaks the callers of the last release.

    python openapi/compatibility.py            compares with the newest of openapi/released/
    python openapi/compatibility.py --keep     keeps this contract as the one that is released

Compared is what a caller's program stands on, field by field, wherever the schema of a field is
written; words for people may change. Of requests anything is breaking that refuses, or reads
otherwise, what was taken; of answers, what an older reader does not expect. Answers may get fields,
and words among their options, but for those of a judgement, which callers decide by.
"""

import argparse
import json
import re
import sys
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from inlining import inlined
from wording import REFERENCE, Schema, branches

ROOT = Path(__file__).resolve().parent.parent
CONTRACT = ROOT / "openapi" / "openapi.json"
RELEASED = ROOT / "openapi" / "released"
_METHODS = ("get", "post")
_WORDS = frozenset({"description", "title", "summary", "example", "examples", "x-labels"})
_OF_AN_OPERATION = ("operationId", "parameters", "requestBody")
#: Bounds of a request: which way each may move without refusing what was taken.
_LOWER = ("minimum", "exclusiveMinimum", "minLength", "minItems")
_UPPER = ("maximum", "exclusiveMaximum", "maxLength", "maxItems")
_SAME = ("pattern", "format", "x-unit")
#: Answers' options that callers decide by: a new word there is one that they do not expect.
_JUDGEMENT = re.compile(r"(severity|forecast|verdict)$")


def main(arguments: Sequence[str] | None = None) -> int:
    """Run the command; give its exit status."""
    parser = argparse.ArgumentParser(prog="python openapi/compatibility.py", description=__doc__)
    parser.add_argument("--keep", action="store_true", help="keep this contract as released")
    options = parser.parse_args(arguments)
    contract = json.loads(CONTRACT.read_text("utf-8"))
    if options.keep:
        kept = RELEASED / f"{contract['info']['version']}.json"
        kept.parent.mkdir(exist_ok=True)
        kept.write_text(written(essence(contract)), "utf-8")
        print(f"Kept as {kept.relative_to(ROOT)}.")
        return 0
    found = list(breaking(last_released(), essence(contract)))
    for line in found:
        print(line, file=sys.stderr)
    return 1 if found else 0


def last_released() -> dict[str, Any]:
    """The contract of the newest release that is kept."""
    newest = max(RELEASED.glob("*.json"), key=lambda p: [int(n) for n in p.stem.split(".")])
    document: dict[str, Any] = json.loads(newest.read_text("utf-8"))
    return document


def essence(contract: dict[str, Any]) -> dict[str, Any]:
    """What a program stands on: addresses and schemas, less the words for people."""
    paths = {
        path: {m: _asked_and_answered(item[m]) for m in _METHODS if m in item}
        for path, item in contract["paths"].items()
    }
    components = {
        kind: {name: _without_words(part) for name, part in contract["components"][kind].items()}
        for kind in ("schemas", "parameters")
        if kind in contract["components"]
    }
    return {"paths": paths, "components": components}


def _asked_and_answered(operation: dict[str, Any]) -> dict[str, Any]:
    answer = operation["responses"]["200"]
    kept = {
        **{key: operation[key] for key in _OF_AN_OPERATION if key in operation},
        "responses": {"200": {"content": answer.get("content", {})}},
    }
    made: dict[str, Any] = _without_words(kept)
    return made


def _without_words(value: Any, fields: bool = False) -> Any:
    """Leave words for people out; `fields`: the names are those of fields, whatever they are."""
    if isinstance(value, list):
        return [_without_words(part) for part in value]
    if not isinstance(value, dict):
        return value
    return {
        name: _without_words(part, name == "properties" and not fields)
        for name, part in value.items()
        if fields or name not in _WORDS
    }


def written(document: dict[str, Any]) -> str:
    """A line for each address and each component, so that a later difference can be read."""
    components = document["components"]
    lines = ",\n".join(f'"{kind}": {_lines(part)}' for kind, part in sorted(components.items()))
    return f'{{"paths": {_lines(document["paths"])},\n"components": {{\n{lines}\n}}}}\n'


def _lines(parts: dict[str, Any]) -> str:
    lines = (f"{json.dumps(name)}: {_compact(part)}" for name, part in sorted(parts.items()))
    return "{\n" + ",\n".join(lines) + "\n}"


def _compact(value: Any) -> str:
    return json.dumps(value, ensure_ascii=False, separators=(",", ":"), sort_keys=True)


# Addresses ------------------------------------------------------------------------------------
def breaking(old: dict[str, Any], new: dict[str, Any]) -> Iterator[str]:
    """Say each change that breaks a caller of the old contract; both are essences."""
    old, new = inlined(old), inlined(new)
    for path, item in old["paths"].items():
        if path not in new["paths"]:
            yield f"{path}: removed"
            continue
        for method in (m for m in _METHODS if m in item):
            if method not in new["paths"][path]:
                yield f"{method.upper()} {path}: removed"
                continue
            yield from _operation(
                f"{method.upper()} {path}",
                Side(old, item[method]),
                Side(new, new["paths"][path][method]),
            )


@dataclass(frozen=True)
class Side:
    """An operation of one of the two contracts."""

    document: dict[str, Any]
    operation: dict[str, Any]

    @property
    def parameters(self) -> Schema:
        """The parameters as an object's fields."""
        listed = self.operation.get("parameters", ())
        return {
            "type": "object",
            "properties": {p["name"]: p["schema"] for p in listed},
            "required": [p["name"] for p in listed if p.get("required")],
        }

    @property
    def body(self) -> Schema | None:
        """Schema of the body, if it takes one."""
        content = self.operation.get("requestBody", {}).get("content", {})
        found: Schema | None = content.get("application/json", {}).get("schema")
        return found

    @property
    def answers(self) -> dict[str, Schema]:
        """Schema of the answer by its media type."""
        content = self.operation["responses"]["200"].get("content", {})
        return {media_type: part["schema"] for media_type, part in content.items()}


def _operation(name: str, old: Side, new: Side) -> Iterator[str]:
    was, now = old.operation["operationId"], new.operation["operationId"]
    if was != now:
        yield f"{name}: its operationId was {was} and is {now}"
    asked = Comparison(old.document, new.document, asked=True)
    answered = Comparison(old.document, new.document, asked=False)
    yield from asked.changes(f"{name} ?", old.parameters, new.parameters)
    if old.body and new.body:
        yield from asked.changes(f"{name} request", old.body, new.body)
    for media_type, schema in old.answers.items():
        if media_type not in new.answers:
            yield f"{name}: no answer as {media_type} any more"
        else:
            yield from answered.changes(f"{name} answer", schema, new.answers[media_type])


# Schemas --------------------------------------------------------------------------------------
class Comparison:
    """Compares schemas of what is asked, or of what is answered."""

    def __init__(self, old: dict[str, Any], new: dict[str, Any], *, asked: bool) -> None:
        self._old = old["components"]["schemas"]
        self._new = new["components"]["schemas"]
        self._asked = asked
        self._seen: set[str] = set()

    def changes(self, at: str, old: Schema, new: Schema) -> Iterator[str]:
        """Say each change that breaks, at a place and below it."""
        was, now = _forms(old, self._old), _forms(new, self._new)
        if self._asked:
            for kind in was.keys() - now.keys() - ({"integer"} if "number" in now else set()):
                yield f"{at}: takes no {kind} any more"
            if _default(old) != _default(new):
                yield f"{at}: its default was {_default(old)} and is {_default(new)}"
        else:
            for kind in now.keys() - was.keys() - ({"integer"} if "number" in was else set()):
                yield f"{at}: may be {kind} now"
        for kind, form in was.items():
            other = now.get(kind) or (now.get("number") if kind == "integer" else None)
            if other is not None and not self._is_seen(form, other):
                yield from self._form(at, form, other)

    def _is_seen(self, old: Schema, new: Schema) -> bool:
        """True for a pair of models that was compared already, wherever it stands."""
        names = f"{old.get('x-model')} {new.get('x-model')}"
        if "x-model" not in old or names in self._seen:
            return "x-model" in old
        self._seen.add(names)
        return False

    def _form(self, at: str, old: Schema, new: Schema) -> Iterator[str]:
        yield from self._options(at, old, new)
        for word in _SAME:
            if old.get(word) != new.get(word):
                yield f"{at}: its {word} was {old.get(word)} and is {new.get(word)}"
        if self._asked:
            yield from _tightened(at, old, new)
        if "items" in old and "items" in new:
            yield from self.changes(f"{at}[]", old["items"], new["items"])
        yield from self._fields(at, old, new)

    def _options(self, at: str, old: Schema, new: Schema) -> Iterator[str]:
        was, now = _words(old), _words(new)
        if self._asked and now is not None:
            gone = "other words" if was is None else ", ".join(sorted(was - now))
            if gone:
                yield f"{at}: takes no {gone} any more"
        if not self._asked and was is not None and _JUDGEMENT.search(at):
            more = "any word" if now is None else ", ".join(sorted(now - was))
            if more:
                yield f"{at}: may say {more} now"

    def _fields(self, at: str, old: Schema, new: Schema) -> Iterator[str]:
        was, now = old.get("properties", {}), new.get("properties", {})
        must_be, must_be_now = set(old.get("required", ())), set(new.get("required", ()))
        for name in was.keys() - now.keys():
            yield f"{at}.{name}: removed"
        for name in sorted(was.keys() & now.keys()):
            yield from self.changes(f"{at}.{name}", was[name], now[name])
        if self._asked:
            for name in sorted(must_be_now - must_be):
                yield f"{at}.{name}: must be sent now"
        else:
            for name in sorted((must_be - must_be_now) & now.keys()):
                yield f"{at}.{name}: may be left out now"
            closed = new.get("additionalProperties") is False
            if closed and old.get("additionalProperties") is not False:
                yield f"{at}: takes no further field now, so that none can be added later"


def _forms(schema: Schema, schemas: dict[str, Schema]) -> dict[str, Schema]:
    """The forms that a value may take by their type; objects by what tells them apart."""
    forms: dict[str, Schema] = {}
    for leaf in branches(schema):
        name = str(leaf.get("$ref", "")).removeprefix(REFERENCE)
        whole = {**schemas[name], **leaf, "x-model": name} if name else leaf
        forms[_kind(whole)] = whole
    if _takes_null(schema):
        forms["null"] = {"type": "null"}
    return forms


def _kind(schema: Schema) -> str:
    kind = str(schema.get("type", "any"))
    tags = [p["const"] for p in schema.get("properties", {}).values() if "const" in p]
    return f"{kind} {tags[0]}" if tags else kind


def _takes_null(schema: Schema) -> bool:
    parts = schema.get("anyOf") or schema.get("oneOf") or []
    return schema.get("type") == "null" or any(_takes_null(part) for part in parts)


def _words(schema: Schema) -> set[str] | None:
    """Options of a text or number; None where it is open."""
    if "enum" in schema or "const" in schema:
        return {str(word) for word in schema.get("enum", [schema.get("const")])}
    return None


def _default(schema: Schema) -> str:
    return _compact(schema["default"]) if "default" in schema else "none"


def _tightened(at: str, old: Schema, new: Schema) -> Iterator[str]:
    """Say each bound that refuses what was taken."""
    for words, sign in ((_LOWER, 1.0), (_UPPER, -1.0)):
        for word in words:
            was, now = old.get(word), new.get(word)
            if now is not None and (was is None or sign * now > sign * was):
                if was is None and _held_by_the_other(word, old, now, sign):
                    continue
                yield f"{at}: its {word} was {'none' if was is None else was} and is {now}"


def _held_by_the_other(word: str, old: Schema, now: float, sign: float) -> bool:
    """True where `minimum` replaces `exclusiveMinimum`, or the other way, and takes no less."""
    others = {"minimum": "exclusiveMinimum", "maximum": "exclusiveMaximum"}
    other = others.get(word)
    return other is not None and other in old and sign * now <= sign * old[other]


if __name__ == "__main__":
    raise SystemExit(main())
