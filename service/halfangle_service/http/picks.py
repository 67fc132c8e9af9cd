"""Values of an answer as plain text, for a spreadsheet, and what is advised beside them."""

import json
from collections.abc import Iterator, Sequence
from typing import Any

from halfangle_service.columns import text_of
from halfangle_service.fields.advisories import Advisory
from halfangle_service.http.answers import Headers
from halfangle_service.http.problems import ProblemError, nearest, pointer_to
from halfangle_service.trade.uncertainty.decision import YES

#: Picks the advisories; no result has a field of this name.
ADVISORIES = "advisories"
#: Parts the paths of several values, and stands for every entry of a list.
BETWEEN_PATHS = ","
EVERY = "*"
#: Between several values, unless the caller says otherwise: none of it is part of a number.
BETWEEN_VALUES = " | "
#: Fields that judge: they may be picked though the answer says stop, where they say so themselves.
_JUDGEMENTS = ("forecast", "verdict")
_NOTHING_ADVISED = "none"
_MOST_IN_HEADER = 20
_MOST_PATHS = 100
_MOST_OFFERED = 40


def pick_values(
    answer: bytes, paths: str, asked_as: str, separator: str | None = None
) -> tuple[bytes, Headers]:
    """Give values of an answer's result as plain text, and the header that tells what to mind.

    Numbers have full precision and a decimal point; what is not stated is `null`. A path names
    fields and list positions joined by dots: `height`, `angle.dms`, `blocks.0`, `ways.*.name` for
    that of every entry; `advisories` gives these, one a line. Several paths are parted by commas,
    their values by the separator. A list of scalars is one text: the blocks of a stack joined by
    ` + `, other entries by `; `; of one path alone the separator stands between the entries.

    `asked_as` is the parameter that held the paths. Raises ProblemError: `no-such-value` where one
    leads nowhere or to an object, `stopped` where the answer says stop, unless each value is a
    judgement that does not say yes.
    """
    whole = json.loads(answer)
    advisories: list[dict[str, str]] = whole["advisories"]
    wanted = [path.strip() for path in paths.split(BETWEEN_PATHS)]
    if len(wanted) > _MOST_PATHS:
        raise _no_such_value(f"names {len(wanted)} values; {_MOST_PATHS} at most", asked_as)
    texts = []
    for path in wanted:
        if path == ADVISORIES:
            lines = [f"{a['severity']} {a['code']}: {a['message']}" for a in advisories]
            texts.append("\n".join(lines or [_NOTHING_ADVISED]))
            continue
        value, name = _value_at(whole["result"], path, asked_as)
        if not all(stands_at_stop(path, one) for one in _singles(value)):
            _refuse_at_stop(advisories, asked_as)
        texts.append(text_of(value, name, separator if len(wanted) == 1 else None))
    between = BETWEEN_VALUES if separator is None else separator
    return between.join(texts).encode(), advisories_header(advisories)


def _value_at(found: Any, path: str, asked_as: str) -> tuple[Any, str]:
    """What a path leads to, a single value or a list of such, and the name of the list.

    The name is that of the field which holds the list, or the innermost lists where there are
    several by `*`, whether entries are picked whole or a part of each.
    """
    name = ""
    parts = path.split(".")
    for place, part in enumerate(parts):
        if isinstance(found, dict) and part in found:
            found, name = found[part], part
        elif isinstance(found, list) and part == EVERY:
            rest = ".".join(parts[place + 1 :])
            if rest:
                inner = [_value_at(entry, rest, asked_as) for entry in found]
                lists = (held_by for value, held_by in inner if isinstance(value, list))
                return [value for value, _ in inner], next(lists, name)
        elif (
            isinstance(found, list)
            and part.isascii()
            and part.isdigit()
            and (int(part[:9]) < len(found))
        ):
            found = found[int(part)]
        else:
            raise _no_such_value(f"has no {part[:60]!r}{_offered(found, part)}", asked_as)
    if any(isinstance(one, dict) for one in _singles(found)):
        several = f"{path[:60]!r} names several values, not one"
        raise _no_such_value(f"{several}{_offered(found, '')}", asked_as)
    return found, name


def _offered(found: Any, part: str) -> str:
    """What there is in place of what was asked for, the nearest name first."""
    if isinstance(found, dict):
        rest = f" and {len(found) - _MOST_OFFERED} more" if len(found) > _MOST_OFFERED else ""
        return f"{nearest(part, found)}; there is: {', '.join([*found][:_MOST_OFFERED])}{rest}"
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


def stands_at_stop(path: str, value: object) -> bool:
    """True for a judgement that does not say yes: one that does is of a part only.

    Any other value would be read by itself, without the stop.
    """
    return _judges(path) and value not in YES


def _judges(path: str) -> bool:
    """True where a path leads to a judgement.

    >>> _judges("forecast"), _judges("checks.0.verdict"), _judges("tir_forecast"), _judges("tir")
    (True, True, True, False)
    """
    name = path.rpartition(".")[2]
    return any(name == word or name.endswith(f"_{word}") for word in _JUDGEMENTS)


def _refuse_at_stop(advisories: list[dict[str, str]], asked_as: str) -> None:
    """Refuse a bare number beside which nobody would read that it must not be used."""
    stops = [a["message"] for a in advisories if a["severity"] == "stop"]
    if stops:
        raise ProblemError(
            "stopped",
            " ".join(stops),
            errors=[
                {
                    "pointer": pointer_to(asked_as),
                    "message": "is refused where the answer says stop",
                }
            ],
            more={"advisories": advisories[:_MOST_IN_HEADER]},
        )


def advisories_header(advisories: Sequence[dict[str, str]]) -> Headers:
    """Header `Advisories`: a list of codes as tokens, each with its severity (RFC 9651, 3.1).

    >>> advisories_header([{"code": "wheel-safety", "severity": "caution"}])
    ((b'advisories', b'wheel-safety;severity=caution'),)
    """
    if not advisories:
        return ()
    # A stop first where the header has no room for all.
    shown = sorted(advisories, key=lambda a: a["severity"] != "stop")[:_MOST_IN_HEADER]
    if len(advisories) <= _MOST_IN_HEADER:
        shown = [*advisories]
    tokens = [f"{a['code']};severity={a['severity']}" for a in shown]
    return ((b"advisories", ", ".join(tokens).encode()),)


def headed(advisories: Sequence[Advisory]) -> Headers:
    """Header `Advisories` of what an answer advises, for a form of it that has no JSON.

    A stop first: of many advisories the header holds only the first.
    """
    told = [{"code": one.code, "severity": one.severity} for one in advisories]
    return advisories_header(sorted(told, key=lambda one: one["severity"] != "stop"))


def _no_such_value(message: str, asked_as: str) -> ProblemError:
    return ProblemError(
        "no-such-value",
        f"{asked_as} {message}.",
        errors=[{"pointer": pointer_to(asked_as), "message": message}],
    )
