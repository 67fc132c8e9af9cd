"""The two base models: what a request may be, and what a result must be."""

from dataclasses import dataclass
from typing import ClassVar, Literal

from pydantic import BaseModel, ConfigDict


@dataclass(frozen=True, slots=True)
class Rule:
    """Which fields of a request go together, as the contract says it (`x-rules`).

    `needs`: each of the fields needs that one. The words are those of the functions that refuse
    (`fields/choice.py`), which take the same names.
    """

    kind: Literal["one-of", "at-most-one-of", "at-least-one-of", "all-or-none", "needs"]
    fields: tuple[str, ...]
    needs: str = ""


class RequestModel(BaseModel):
    """A request: immutable, no unknown fields, numbers never read from strings or booleans."""

    model_config = ConfigDict(extra="forbid", strict=True, frozen=True, allow_inf_nan=False)

    #: What each class adds to the rules of those that it is made from.
    rules: ClassVar[tuple[Rule, ...]] = ()

    @classmethod
    def all_rules(cls) -> tuple[Rule, ...]:
        """Its own rules, and those of the classes that it is made from.

        Of two on the same fields its own stands, which asks for more.
        """
        every = [rule for c in cls.__mro__ for rule in c.__dict__.get("rules", ())]
        return tuple({rule.fields: rule for rule in reversed(every)}.values())


class ResultModel(BaseModel):
    """A result: immutable, no unknown fields, every number finite."""

    model_config = ConfigDict(extra="forbid", frozen=True, allow_inf_nan=False)
