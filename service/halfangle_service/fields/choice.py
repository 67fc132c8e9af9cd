"""Fields of which one, or all, must be sent: one wording for every such refusal."""

from collections.abc import Sequence

from halfangle_service.errors import Disagreement
from halfangle_service.fields.base import RequestModel


def one_of(request: RequestModel, *names: str, path: str = "") -> str:
    """Name of the one field of these that was sent; raises Disagreement at none or several.

    `path` is that of the object that holds them, such as `work/`.
    """
    sent = sent_of(request, *names)
    if len(sent) != 1:
        how = "are all missing" if not sent else f"were sent together ({_listed(sent)})"
        raise Disagreement(
            f"One of {_listed(names)} is needed; they {how}.",
            fields={f"{path}{name}": f"send one of {_plain_list(names)}" for name in sent or names},
        )
    return sent[0]


def at_most_one_of(request: RequestModel, *names: str, path: str = "") -> str | None:
    """Name of the field of these that was sent, None where none was; raises at several."""
    return one_of(request, *names, path=path) if sent_of(request, *names) else None


def at_least_one_of(request: RequestModel, *names: str, path: str = "") -> list[str]:
    """Names of the fields of these that were sent; raises Disagreement where none was.

    `path` is that of the object that holds them, such as `ways/`.
    """
    sent = sent_of(request, *names)
    if not sent:
        raise Disagreement(
            f"At least one of {_listed(names)} is needed; none was sent.",
            fields={
                f"{path}{name}": f"send at least one of {_plain_list(names)}" for name in names
            },
        )
    return sent


def all_or_none(request: RequestModel, *names: str, why: str, path: str = "") -> bool:
    """True where all of these fields were sent, False where none was.

    Raises Disagreement where some are missing; `why` says in a sentence what one says alone.
    """
    sent = sent_of(request, *names)
    if len(sent) in (0, len(names)):
        return bool(sent)
    missing = [name for name in names if name not in sent]
    raise Disagreement(
        f"{why} Send {_listed(names)} together, or none of them.",
        fields={
            f"{path}{name}": f"is needed together with {_plain_list(sent)}" for name in missing
        },
    )


def needs(request: RequestModel, name: str, other: str, *, why: str, path: str = "") -> None:
    """Refuse a field sent without the other that it acts by; `why` says in a sentence how it does.

    `path` is that of the object that holds them, such as `work/`.
    """
    if getattr(request, name) is not None and getattr(request, other) is None:
        raise Disagreement(
            f"{why} Send {_listed([other])} together with {_listed([name])}.",
            fields={f"{path}{other}": f"is needed together with {name}"},
        )


def sent_of(request: RequestModel, *names: str) -> list[str]:
    """Names of those fields that hold a value, in the order given."""
    return [name for name in names if getattr(request, name) is not None]


def not_sent(request: RequestModel, *names: str) -> list[str]:
    """Names of those fields that hold no value, in the order given."""
    return [name for name in names if getattr(request, name) is None]


def _listed(names: Sequence[str]) -> str:
    return _plain_list([f"`{name}`" for name in names])


def _plain_list(names: Sequence[str]) -> str:
    return names[0] if len(names) == 1 else f"{', '.join(names[:-1])} and {names[-1]}"
