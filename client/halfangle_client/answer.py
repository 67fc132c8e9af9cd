"""What every model is made from, and how a whole answer is shown.

A model is finished when it is first used, so that loading all of them takes little time.
"""

from typing import Any, ClassVar

from pydantic import BaseModel, ConfigDict

from halfangle_client.views import page, records, text


class RequestModel(BaseModel):
    """Part of a request: it has the fields that the contract names, and no other."""

    model_config: ClassVar[ConfigDict] = ConfigDict(extra="forbid", defer_build=True)


class AnswerModel(BaseModel):
    """Part of an answer: its numbers are numbers and finite, as the service promises.

    A text in place of a number, or NaN, is no answer of the service. What a later release adds, a
    field or a word among the options, is no fault.
    """

    model_config: ClassVar[ConfigDict] = ConfigDict(
        strict=True, allow_inf_nan=False, defer_build=True
    )


class OpenModel(AnswerModel):
    """The same, and fields without a name of their own are kept (`model_extra`)."""

    model_config: ClassVar[ConfigDict] = ConfigDict(extra="allow")


class Answer(AnswerModel):
    """A whole answer: `print` shows it as lines, a notebook as a table, its advisories first."""

    def to_records(self, rows: str | None = None) -> list[dict[str, Any]]:
        """Flatten the result for a table: `pandas.DataFrame(answer.to_records())`, or polars.

        Columns are named by the paths of their values, as `pick` and the columns of a table are:
        `height`, `shank.gage_diameter`, `angle.degrees` and `angle.dms`. `stop` tells whether the
        answer says stop, `advisories` holds severity and code of each. A result that is a list, or
        has one called `rows`, gives a record for each entry; so does the list that `rows` names
        (`"at_stations"`, `"angle_budget.included_angle_error_arcsec.contributions"`). Other lists
        of objects, and documents (`svg`, `dxf`, `csv`), have no place in a record. Raises KeyError
        where there is no such list.
        """
        return records.records_of(self.model_dump(mode="json"), rows)

    @property
    def drawings(self) -> list[page.Drawing]:
        """The drawings of the result (SVG), which a notebook shows."""
        return page.drawings_of(self.model_dump(mode="json"))

    def __repr__(self) -> str:
        return text.line(type(self).__name__, self.model_dump(mode="json"))

    def __str__(self) -> str:
        return text.lines(self.model_dump(mode="json"))

    def _repr_html_(self) -> str:
        return page.answer_as_html(self.model_dump(mode="json"))
