"""The two base models: what a request may be, and what a result must be."""

from collections.abc import Iterator
from dataclasses import dataclass
from inspect import get_annotations
from typing import Any, ClassVar, Literal

from pydantic import BaseModel, BeforeValidator, ConfigDict, ValidationError

from halfangle_service.trade.columns import Column, Mask

#: The unit of every length of a request: of no group.
UNITS = "units"


@dataclass(frozen=True, slots=True)
class Rule:
    """Which fields of a request go together, as the contract says it (`x-rules`).

    `needs`: each of the fields needs that one. The words are those of the functions that refuse
    (`fields/choice.py`), which take the same names.
    """

    kind: Literal["one-of", "at-most-one-of", "at-least-one-of", "all-or-none", "needs"]
    fields: tuple[str, ...]
    needs: str = ""


@dataclass(frozen=True, slots=True)
class Group:
    """Fields that a form shows together, as the contract says it (`x-forms`).

    `fields`: those that the class declares, where none are named. `advanced`: shown to who asks.
    """

    title: str
    advanced: bool = False
    fields: tuple[str, ...] = ()


#: What is stated as ± a limit refines an answer: it comes without, and names what was not stated.
ERRORS = Group("Errors, by their limits", advanced=True)
BLOCKS = Group("Gauge blocks")
PLATE = Group("Sine bar or plate")


#: For a group of fields that may be left out: null, what is not stated, is the group left out.
NULL_LEFT_OUT = BeforeValidator(lambda group: {} if group is None else group)


class RequestModel(BaseModel):
    """A request: immutable, no unknown fields, numbers never read from strings or booleans."""

    model_config = ConfigDict(extra="forbid", strict=True, frozen=True, allow_inf_nan=False)

    #: What each class adds to the rules of those that it is made from.
    rules: ClassVar[tuple[Rule, ...]] = ()
    #: The group of the fields that each class declares; without one they are the operation's own.
    group: ClassVar[Group | None] = None

    @classmethod
    def all_rules(cls) -> tuple[Rule, ...]:
        """Its own rules, and those of the classes that it is made from.

        Of two on the same fields its own stands, which asks for more.
        """
        every = [rule for c in cls.__mro__ for rule in c.__dict__.get("rules", ())]
        return tuple({rule.fields: rule for rule in reversed(every)}.values())

    @classmethod
    def groups(cls) -> Iterator[tuple[Group, tuple[str, ...]]]:
        """The groups of the classes that it is made from, with the fields of each."""
        for c in reversed(cls.__mro__):
            group: Group | None = c.__dict__.get("group")
            if group is not None:
                declared = (f for f in get_annotations(c) if f in cls.model_fields and f != UNITS)
                yield group, group.fields or tuple(declared)


class ResultModel(BaseModel):
    """A result: immutable, no unknown fields, every number finite."""

    model_config = ConfigDict(extra="forbid", frozen=True, allow_inf_nan=False)

    def __init__(self, /, **fields: Any) -> None:
        """Check the fields; columns and truths are taken as they are: who reads those checks."""
        try:
            self.__pydantic_validator__.validate_python(fields, self_instance=self)
        except ValidationError as error:
            # Read by the loop: a fault beside a column is one of the calculation, and stays one.
            faults = error.errors(include_url=False, include_context=False)
            if not all(isinstance(fault["input"], Column | Mask) for fault in faults):
                raise
            made = self.model_construct(**fields)
            for slot in ("__dict__", "__pydantic_fields_set__", *_UNSET_SLOTS):
                object.__setattr__(self, slot, getattr(made, slot))


_UNSET_SLOTS = ("__pydantic_extra__", "__pydantic_private__")
