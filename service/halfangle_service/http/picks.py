"""One value of an answer as plain text, for a spreadsheet, and what is advised beside it."""

import json
from typing import Any

from halfangle_service.http.answers import Headers
from halfangle_service.http.problems import ProblemError, pointer_to
from halfangle_service.trade.uncertainty.decision import YES

#: Picks the advisories; no result has a field of this name.
ADVISORIES = "advisories"
#: Fields that judge: they may be picked though the answer says stop, where they say so themselves.
_JUDGEMENTS = ("forecast", "verdict")
_NOTHING_ADVISED = "none"
_MOST_IN_HEADER = 20


def pick_value(answer: bytes, path: str, asked_as: str) -> tuple[bytes, Headers]:
    """Give one value of an answer's result as plain text, and the header that tells what to mind.

    Text has full precision and a decimal point. The path names fields and list positions joined by
    dots: `height`, `angle.dms`, `blocks.0`; `advisories` gives these, one a line. `asked_as` is the
    parameter that held it. Raises ProblemError: `no-such-value` where it leads nowhere or to more
    than one value, `stopped` where the answer says stop, unless the value is a judgement that does
    not say yes.
    """
    whole = json.loads(answer)
    advisories: list[dict[str, str]] = whole["advisories"]
    headers = advisories_header(advisories)
    if path == ADVISORIES:
        lines = [f"{a['severity']} {a['code']}: {a['message']}" for a in advisories]
        return "\n".join(lines or [_NOTHING_ADVISED]).encode(), headers
    value = _value_at(whole["result"], path, asked_as)
    if not stands_at_stop(path, value):
        _refuse_at_stop(advisories, asked_as)
    text = value if isinstance(value, str) else json.dumps(value)
    return text.encode(), headers


def _value_at(value: Any, path: str, asked_as: str) -> str | float | bool | None:
    """The one value that a path leads to."""
    for part in path.split("."):
        if isinstance(value, dict) and part in value:
            value = value[part]
        elif (
            isinstance(value, list)
            and part.isascii()
            and part.isdigit()
            and (int(part[:9]) < len(value))
        ):
            value = value[int(part)]
        else:
            offered = ", ".join(value) if isinstance(value, dict) else "a single value"
            raise _no_such_value(f"has no {part[:60]!r}; there is: {offered}", asked_as)
    if isinstance(value, dict | list):
        raise _no_such_value("names several values, not one", asked_as)
    single: str | float | bool | None = value
    return single


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


def advisories_header(advisories: list[dict[str, str]]) -> Headers:
    """Header `Advisories`: a list of codes as tokens, each with its severity (RFC 9651, 3.1).

    >>> advisories_header([{"code": "wheel-safety", "severity": "caution"}])
    ((b'advisories', b'wheel-safety;severity=caution'),)
    """
    if not advisories:
        return ()
    tokens = [f"{a['code']};severity={a['severity']}" for a in advisories[:_MOST_IN_HEADER]]
    return ((b"advisories", ", ".join(tokens).encode()),)


def _no_such_value(message: str, asked_as: str) -> ProblemError:
    return ProblemError(
        "no-such-value",
        f"{asked_as} {message}.",
        errors=[{"pointer": pointer_to(asked_as), "message": message}],
    )
