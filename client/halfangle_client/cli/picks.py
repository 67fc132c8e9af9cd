"""Values of an answer as text, by the rules of the service's own `pick`."""

from collections.abc import Iterator, Mapping
from difflib import get_close_matches
from typing import Any

ADVISORIES = "advisories"
BETWEEN_VALUES = " | "
#: Fields that judge: they may be picked though the answer says stop, where they say so themselves.
_JUDGEMENTS = ("forecast", "verdict")
#: Judgements that say yes: of a part only, where the answer says stop.
_YES = ("conforming", "holds")
#: Between the blocks of a stack, which is their sum, and between the entries of any other list.
_OF_A_STACK, _OF_A_LIST = " + ", "; "
_STACKS = ("blocks", "second_stack", "wringing_order")
_EVERY = "*"
_NONE = "none"


class NoSuchValue(Exception):
    """The result holds no value of the name picked, or an object."""


def stops_of(answer: Mapping[str, Any]) -> list[str]:
    """What an answer says of severity stop, for whoever reads no more than that."""
    return [a["message"] for a in answer[ADVISORIES] if a["severity"] == "stop"]


def picked(answer: Mapping[str, Any], paths: str, separator: str | None = None) -> str | None:
    """Values of the result as the service's own `pick` writes them.

    Paths are parted by commas; a path is of field names and list positions joined by dots, `*` for
    every entry, or `advisories`. None where the answer says stop, unless each value is a judgement
    that does not say yes: nobody would read beside a bare value that the answer must not be used.
    Raises NoSuchValue.
    """
    stopped = bool(stops_of(answer))
    wanted = [path.strip() for path in paths.split(",")]
    texts = []
    for path in wanted:
        if path == ADVISORIES:
            lines = [f"{a['severity']} {a['code']}: {a['message']}" for a in answer[ADVISORIES]]
            texts.append("\n".join(lines or [_NONE]))
            continue
        value, name = _value_at(answer["result"], path)
        if stopped and not stands_at_stop(path, value):
            return None
        texts.append(text_of(value, name, separator if len(wanted) == 1 else None))
    return (BETWEEN_VALUES if separator is None else separator).join(texts)


def stands_at_stop(path: str, value: Any) -> bool:
    """Whether a value may be read alone though its answer says stop: a judgement that says no."""
    last = path.replace("-", "_").rpartition(".")[2]
    judges = any(last == word or last.endswith(f"_{word}") for word in _JUDGEMENTS)
    return judges and not any(one in _YES for one in _singles(value))


def _value_at(found: Any, path: str) -> tuple[Any, str]:
    """What a path leads to, and the name of the field which holds it, or the innermost lists."""
    held_by = ""
    parts = path.split(".")
    for place, part in enumerate(parts):
        name = part.replace("-", "_")
        if isinstance(found, dict) and (part in found or name in found):
            held_by = part if part in found else name
            found = found[held_by]
        elif isinstance(found, list) and part == _EVERY:
            rest = ".".join(parts[place + 1 :])
            if rest:
                inner = [_value_at(entry, rest) for entry in found]
                lists = (name for value, name in inner if isinstance(value, list))
                return [value for value, _ in inner], next(lists, held_by)
        elif (
            isinstance(found, list)
            and part.isascii()
            and part.isdigit()
            and int(part[:9]) < len(found)
        ):
            found = found[int(part)]
        else:
            raise NoSuchValue(f"has no {part[:60]!r}{_offered(found, name)}")
    if any(isinstance(one, dict) for one in _singles(found)):
        raise NoSuchValue(f"{path[:60]!r} names several values, not one{_offered(found, '')}")
    return found, held_by


def _offered(found: Any, name: str) -> str:
    if isinstance(found, dict):
        close = get_close_matches(name[:60], found, n=2)
        meant = f"; did you mean {' or '.join(close)}" if close else ""
        return f"{meant}; there is: {', '.join(found)}"
    if isinstance(found, list):
        return f"; there are {len(found)} entries, from 0" if found else "; the list is empty"
    return "; there is: a single value"


def _singles(value: Any) -> Iterator[Any]:
    """The entries of a list, of lists within it too; a single value is the only one."""
    if isinstance(value, list):
        for entry in value:
            yield from _singles(entry)
    else:
        yield value


def joint_of(name: str) -> str:
    """What stands between the entries of a list, by its name: blocks of a stack are added up.

    >>> joint_of("low_blocks"), joint_of("not_stated")
    (' + ', '; ')
    """
    return _OF_A_STACK if name in _STACKS or name.endswith("_blocks") else _OF_A_LIST


def _as_json(value: Any) -> str:
    """What is no text, as the answer writes it: 0.00001, where Python writes 1e-05."""
    # Of the command only a pick writes numbers, and all else goes without what takes time to load.
    from pydantic_core import to_json  # noqa: PLC0415

    return to_json(value).decode()


def text_of(value: Any, name: str, between: str | None = None) -> str:
    """A value, or the entries of the list of this name, as text.

    >>> text_of([0.5, 0.121], "low_blocks"), text_of([1, None], "stations"), text_of([], "marks")
    ('0.5 + 0.121', '1; null', 'none')
    >>> text_of(0.00001, "tir")
    '0.00001'
    """
    if not isinstance(value, list):
        return value if isinstance(value, str) else _as_json(value)
    if between is None:
        of_lists = any(isinstance(entry, list) for entry in value)
        between = _OF_A_LIST if of_lists else joint_of(name)
    return between.join(text_of(entry, name) for entry in value) or _NONE
