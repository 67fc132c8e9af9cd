"""What came of many rows: one outcome a row, in the order of the rows."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from html import escape
from typing import Any, Generic, overload

from halfangle_client.endpoint import AnswerT
from halfangle_client.errors import HalfangleError, NotCalled, ProblemError
from halfangle_client.views.page import records_as_html
from halfangle_client.views.records import with_same_columns

#: What the caller calls a row of a batch.
Ref = str | int


@dataclass(frozen=True, slots=True)
class Counts:
    """How rows ended, in the words of the service's batches.

    `unanswered` rows have neither an answer nor the service's refusal: they could not be sent, or
    nothing came back.
    """

    rows: int
    ok: int
    refused: int
    unanswered: int
    with_stop: int
    with_caution: int


class Outcomes(Sequence[AnswerT | HalfangleError], Generic[AnswerT]):
    """What came of each row: its answer, or the error in place of it.

    `isinstance(outcome, HalfangleError)` tells the two apart. A row that was not called, or whose
    call had not ended when the work was stopped, holds NotCalled.
    """

    def __init__(self) -> None:
        self._outcomes: list[AnswerT | HalfangleError] = []

    @property
    def answers(self) -> list[AnswerT]:
        """The answers alone, in the order of their rows."""
        return [outcome for outcome in self if not isinstance(outcome, HalfangleError)]

    @property
    def errors(self) -> dict[int, HalfangleError]:
        """The errors by the number of their row, from 0."""
        return {n: one for n, one in enumerate(self) if isinstance(one, HalfangleError)}

    @property
    def stops(self) -> dict[int, AnswerT]:
        """The answers that say stop, do not run this, by the number of their row, from 0."""
        return self._saying("stop")

    @property
    def cautions(self) -> dict[int, AnswerT]:
        """The answers that say caution, by the number of their row, from 0."""
        return self._saying("caution")

    def _saying(self, severity: str) -> dict[int, AnswerT]:
        return {
            number: outcome
            for number, outcome in enumerate(self)
            if not isinstance(outcome, HalfangleError) and _says(outcome, severity)
        }

    @property
    def counts(self) -> Counts:
        """How many rows were answered, refused, or neither, and in how many an answer warns."""
        answers, errors = self.answers, self.errors.values()
        refused = sum(isinstance(error, ProblemError) for error in errors)
        return Counts(
            rows=len(self),
            ok=len(answers),
            refused=refused,
            unanswered=len(errors) - refused,
            with_stop=sum(_says(answer, "stop") for answer in answers),
            with_caution=sum(_says(answer, "caution") for answer in answers),
        )

    def to_records(self, rows: str | None = None) -> list[dict[str, Any]]:
        """Flatten all rows for a table: `pandas.DataFrame(outcomes.to_records())`, or polars.

        As `to_records` of an answer, all records with the same columns, and before them `row`, the
        row's number from 0, and `problem`: why it has no answer, None where it has one.
        """
        found: list[dict[str, Any]] = []
        for number, outcome in enumerate(self):
            head = self._head(number)
            if isinstance(outcome, HalfangleError):
                found.append({**head, "problem": f"{type(outcome).__name__}: {outcome}"})
            else:
                # An answer may be bytes; its class is not loaded here before the first answer is.
                records = outcome.to_records(rows) if hasattr(outcome, "to_records") else [{}]
                found += [{**head, "problem": None, **record} for record in records]
        return with_same_columns(found)

    def _head(self, number: int) -> dict[str, Any]:
        """Columns that say which row a record is of."""
        return {"row": number}

    def begin(self, count: int) -> None:
        """Empty it, for so many rows."""
        self._outcomes[:] = [NotCalled("The call of this row was not made, or not ended.")] * count

    def put(self, number: int, outcome: AnswerT | HalfangleError) -> None:
        """Keep what came of a row."""
        self._outcomes[number] = outcome

    def __len__(self) -> int:
        return len(self._outcomes)

    @overload
    def __getitem__(self, index: int) -> AnswerT | HalfangleError: ...
    @overload
    def __getitem__(self, index: slice) -> list[AnswerT | HalfangleError]: ...
    def __getitem__(
        self, index: int | slice
    ) -> AnswerT | HalfangleError | list[AnswerT | HalfangleError]:
        return self._outcomes[index]

    def _repr_html_(self) -> str:
        return f"<p>{escape(repr(self))}</p>{records_as_html(self.to_records())}"

    def __repr__(self) -> str:
        stops = len(self.stops)
        said = f", {stops} of them STOP" if stops else ""
        return f"<{len(self)} rows: {len(self.answers)} answers{said}, {len(self.errors)} errors>"


class BatchOutcomes(Outcomes[Any]):
    """What came of each row of a batch, by the row's number or by its `ref`."""

    def __init__(self) -> None:
        super().__init__()
        self.refs: list[Ref | None] = []

    def begin_batch(self, refs: Iterable[Ref | None]) -> None:
        """Empty it, for rows of these references."""
        self.refs[:] = refs
        self.begin(len(self.refs))

    @property
    def by_ref(self) -> Mapping[Ref, Any]:
        """The outcomes by their row's `ref`; of a `ref` that came twice, that of the first row."""
        found: dict[Ref, Any] = {}
        for ref, outcome in zip(self.refs, self, strict=True):
            if ref is not None:
                found.setdefault(ref, outcome)
        return found

    def _head(self, number: int) -> dict[str, Any]:
        return {"row": number, "ref": self.refs[number]}


class Interrupted(KeyboardInterrupt):
    """Ctrl-C came between the first row and the last; `outcomes` hold what was done by then."""

    def __init__(self, outcomes: Outcomes[Any]) -> None:
        super().__init__(f"stopped by Ctrl-C: {outcomes!r}")
        self.outcomes: Outcomes[Any] = outcomes


def _says(answer: object, severity: str) -> bool:
    """Whether an answer says so; bytes and text have no advisories."""
    return any(advisory.severity == severity for advisory in getattr(answer, "advisories", ()))
