"""Words of answers in one cell: advisories joined, whole answers' and columns' alike."""

from collections.abc import Iterable, Sequence

from halfangle_service.columns.asked import Places
from halfangle_service.fields.advisories import Advisory
from halfangle_service.trade.columns import Tape

#: Stands between the advisories of one cell.
BETWEEN_TEXTS = " | "


def advised_in_words(advised: Iterable[tuple[str, str, str]]) -> str | None:
    """Advisories by severity, code and message as one text; None where there are none.

    >>> advised_in_words([("note", "small-stack", "Take care."), ("caution", "steep-angle", "Ah.")])
    'note small-stack: Take care. | caution steep-angle: Ah.'
    """
    said = (f"{severity} {code}: {message}" for severity, code, message in advised)
    return BETWEEN_TEXTS.join(said) or None


def words_of(advisories: Sequence[Advisory], tape: Tape, rows: Places) -> Sequence[str | None]:
    """What each of these rows of a path is advised, as one text; one entry if all say the same.

    Raises ArithmeticError or ValueError where a figure cannot be written.
    """
    words = advised_in_words((a.severity, a.code, a.message) for a in advisories)
    return [None] if words is None else tape.sentences(words, rows) or [words]
