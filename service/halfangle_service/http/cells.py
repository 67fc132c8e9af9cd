"""What a cell of a sheet is given: values picked of an answer as text, or what was refused."""

from collections.abc import Awaitable, Callable, Mapping
from dataclasses import dataclass
from difflib import get_close_matches

from litestar.types import ASGIApp

from halfangle_service.errors import Refusal
from halfangle_service.http.answers import (
    TEXT,
    AnyRequest,
    Headers,
    cached,
    require_accepts,
)
from halfangle_service.http.picks import advisories_header, pick_values
from halfangle_service.http.problems import (
    PROBLEM_TYPES,
    ProblemError,
    pointer_to,
    problem_of_refusal,
    shortened,
)
from halfangle_service.http.query import Pairs, QueryField
from halfangle_service.settings import Settings

#: Asks for values of the answer in place of all.
PICK = "pick"
#: Where they have an address of their own, and the part of it that names them.
VALUE_PATH = "/v1/values/{operation}/{field}"
FIELD = "field"
#: Says of a published table which row is meant, where the address names the table alone.
KEY = "key"
#: What stands between several values.
SEPARATOR = "separator"
#: Whether a refusal comes as text that a cell shows, with a status of success.
ON_ERROR = "on_error"
AS_TEXT = "text"
LONGEST_SEPARATOR = 10
#: First word of such a text, which no number has: a formula tests for it.
ERROR_WORD, STOP_WORD = "ERROR", "STOP"
#: Signs that numbers, dates and times are written with; a sheet passes over blanks within them.
_OF_NUMBERS = frozenset("0123456789.,'+-/:eE% \u00a0\u202f\t\r\n")
_OWN = (PICK, SEPARATOR, ON_ERROR)
#: Longer names are no slip of the hand, and the search for what is near takes long.
_LONGEST_MISSPELT = 15
_NEAR = 0.75
_BLANKS = frozenset("\t\r\n")
_SERVER_FAULTS = 500


@dataclass(frozen=True, slots=True)
class Cell:
    """How a cell asks: for which paths, named by what, and what is wrong with that."""

    paths: str
    asked_as: str
    separator: str | None
    as_text: bool
    problem: ProblemError | None


def cell_of(pairs: Pairs, fields: Mapping[str, QueryField]) -> tuple[Cell | None, Pairs]:
    """What parameters say of a cell, and the rest of them, which are the request's.

    None where nothing is picked; then raises ProblemError where a parameter is of a cell alone.
    """
    own, rest, problem = _parted(pairs, fields)
    if PICK in own:
        return _cell(own[PICK], PICK, own, problem), rest
    for name in own:
        problem = problem or _wrong(name, needs := f"needs {PICK} beside it", needs)
    if problem is not None:
        raise problem
    return None, rest


def cell_at(paths: str, pairs: Pairs, fields: Mapping[str, QueryField]) -> tuple[Cell, Pairs]:
    """The same where the address names what is picked: it takes no `pick` besides."""
    own, rest, problem = _parted(pairs, fields)
    if PICK in own:
        problem = problem or _twice(PICK)
    return _cell(paths, FIELD, own, problem), rest


def _cell(paths: str, asked_as: str, own: Mapping[str, str], problem: ProblemError | None) -> Cell:
    """A cell with what is wrong with it, which may be wanted as text."""
    as_text = own.get(ON_ERROR) == AS_TEXT
    return Cell(paths, asked_as, own.get(SEPARATOR), as_text, problem or _wrong_choice(own))


def _parted(
    pairs: Pairs, fields: Mapping[str, QueryField]
) -> tuple[dict[str, str], Pairs, ProblemError | None]:
    """Parameters of a cell, those of the request, and the first that is wrong as such."""
    own: dict[str, str] = {}
    rest: Pairs = []
    problem: ProblemError | None = None
    for name, text in pairs:
        if name not in _OWN:
            rest.append((name, text))
            problem = problem or _misspelt(name, fields)
        elif name in own:
            problem = problem or _twice(name)
        else:
            own[name] = text
    return own, rest, problem


def _twice(name: str) -> ProblemError:
    return _wrong(name, "is given twice", "should be given once")


def _misspelt(name: str, fields: Mapping[str, QueryField]) -> ProblemError | None:
    """Refuse what is near to a parameter of a cell and to none of the request."""
    if name in fields or len(name) > _LONGEST_MISSPELT:
        return None
    close = get_close_matches(name, _OWN, n=1, cutoff=_NEAR)
    if not close or get_close_matches(name, fields, n=1, cutoff=_NEAR):
        return None
    words = f"is not a field of this request; did you mean {close[0]}?"
    return _wrong(name, words.removesuffix("?"), words)


def _wrong_choice(own: Mapping[str, str]) -> ProblemError | None:
    """What is wrong with the parameters of a cell that were given."""
    if own.get(ON_ERROR, AS_TEXT) != AS_TEXT:
        return _wrong(ON_ERROR, words := f"should be {AS_TEXT}, or left out", words)
    separator = own.get(SEPARATOR)
    if separator is None:
        return None
    words = ""
    if not 1 <= len(separator) <= LONGEST_SEPARATOR:
        words = f"should have 1 to {LONGEST_SEPARATOR} characters; got {len(separator)}"
    elif not all(c.isprintable() or c in _BLANKS for c in separator):
        words = "should hold printable characters, tabs and line ends alone"
    elif set(separator) <= _OF_NUMBERS:
        words = "could make one number of two: it needs a sign that no number has, such as | or ;"
    return _wrong(SEPARATOR, words, words) if words else None


async def answer_to_cell(
    request: AnyRequest, cell: Cell, calculate: Callable[[], Awaitable[bytes]], settings: Settings
) -> ASGIApp:
    """Answer with what a cell picks or, where it asks for that, with the text of a refusal.

    What the service itself fails at, as when it has too much to do, keeps its status: it would be
    kept as an answer, and is none.
    """
    require_accepts(request, TEXT)
    try:
        if cell.problem is not None:
            raise cell.problem
        text, headers = pick_values(await calculate(), cell.paths, cell.asked_as, cell.separator)
    except (ProblemError, Refusal) as error:
        problem = problem_of_refusal(error) if isinstance(error, Refusal) else error
        if not cell.as_text or PROBLEM_TYPES[problem.name][0] >= _SERVER_FAULTS:
            raise
        text, headers = refusal_as_text(problem).encode(errors="replace"), _advised(problem)
    return cached(request, text, TEXT, settings, headers)


def _advised(problem: ProblemError) -> Headers:
    """The header that a refusal brings along: that of a stop names what stops."""
    advisories = problem.more.get("advisories")
    return advisories_header(advisories) if isinstance(advisories, list) else ()


def refusal_as_text(problem: ProblemError) -> str:
    """A problem in one line whose first word tells it from every value."""
    said = " ".join(shortened(problem.detail).split())
    if problem.name == "stopped":
        return f"{STOP_WORD} {said}"
    return f"{ERROR_WORD} {problem.name}: {said}"


def _wrong(name: str, detail: str, message: str) -> ProblemError:
    return ProblemError(
        "invalid-request",
        f"{name[:60]} {detail}.",
        errors=[{"pointer": pointer_to(name), "message": message}],
    )
