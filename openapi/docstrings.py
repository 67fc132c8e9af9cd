"""Writes the docstring of a call: all that its caller needs to know, with units and bounds."""

import textwrap

from signatures import JSON, Call

_WIDTH = 92
_LONGEST_LINE = 86
#: What any call may raise, as `halfangle_client.errors` has it.
_ERRORS = {
    "ProblemError": "The service refused; InvalidRequest names each wrong field.",
    "ConnectionFailed": "No answer came; TimedOut: none within the time limit.",
    "UnexpectedAnswer": "What came is not what the contract promises.",
    "Unsendable": "A value has no form in JSON.",
}


def docstring(call: Call) -> str:
    """What it answers, arguments with units and bounds, answer, errors, example."""
    parts = [_sentence(call.summary), *map(_filled, call.description.split("\n\n"))]
    arguments = [*call.positional, *call.keyword_only]
    lines = [*(_item(a.name, a.description) for a in arguments), *_lines_of_every_call(call)]
    parts.append("Args:\n" + "\n".join(lines))
    parts.append(f"Returns:\n    {_returns(call)}")
    parts.append("Raises:\n" + "\n".join(_item(*error) for error in _ERRORS.items()))
    if call.example is not None:
        parts.append(f"Example:\n    {_example(call)}")
    return _escaped("\n\n".join(part for part in parts if part))


def one_line(call: Call) -> str:
    """The docstring of the async call."""
    elsewhere = f"As `Halfangle.{call.name}`, to be awaited."
    whole = f"{_sentence(call.summary)} {elsewhere}"
    return _escaped(whole if len(whole) <= _LONGEST_LINE else elsewhere)


def _lines_of_every_call(call: Call) -> list[str]:
    limit = "heavy_timeout_seconds" if call.heavy else "timeout_seconds"
    seconds = (
        "Time limit of the call from its turn on, tries and waits between them included. "
        f"Absent: the client's `{limit}`. [second, over 0, at most 86400]"
    )
    request_id = "Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]"
    is_raw = call.sends and call.sends != JSON
    return [
        *([_item("content", f"The body, as it is sent ({call.sends}).")] if is_raw else []),
        _item("timeout_seconds", seconds),
        _item("request_id", request_id),
    ]


def _returns(call: Call) -> str:
    if call.answer.startswith("models."):
        return f"{call.answer}: `result`, `advisories` (heed each stop), `basis`."
    return f"{call.answer}: the body, as it came."


def _example(call: Call) -> str:
    given = ", ".join(f"{name}={value}" for name, value in (call.example or {}).items())
    line = f"client.{call.name}({given})"
    return "\n    ".join(textwrap.wrap(line, _WIDTH - 8, subsequent_indent="    "))


def _escaped(text: str) -> str:
    return text.replace("\\", "\\\\").replace('"""', '\\"\\"\\"')


def _sentence(text: str) -> str:
    return text if text.endswith((".", "?", "!")) else f"{text}."


def _filled(paragraph: str) -> str:
    return textwrap.fill(paragraph, _WIDTH, break_on_hyphens=False)


def _item(name: str, text: str) -> str:
    return textwrap.fill(
        f"{name}: {text}".rstrip(": "),
        _WIDTH,
        initial_indent=" " * 4,
        subsequent_indent=" " * 8,
        break_on_hyphens=False,
        break_long_words=False,
    )
