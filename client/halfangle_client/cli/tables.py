"""An answer's values as rows and columns for a terminal, made by Rich."""

from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from rich.console import Console, Group, RenderableType
from rich.padding import Padding
from rich.table import Table
from rich.text import Text

from halfangle_client.cli import screen
from halfangle_client.cli.contract import Shapes
from halfangle_client.cli.figures import angle, figure, figures, is_angle, spoken

_SEVERITIES = {"stop": "bold white on red", "caution": "bold yellow", "note": "dim"}
_INDENT = 2
_ESTIMATE = frozenset({"value", "standard_uncertainty", "contributions", "not_stated"})
#: Parts of an estimate that say how another part was got; JSON has them.
_NOT_TOLD = frozenset({"coverage_factor", "coverage_probability"})
_CONTRIBUTION = "a contribution as it is shown"
#: More columns than these are shown one entry below the other.
_MOST_COLUMNS = 7
_FEW = 3
#: A text of more lines is a file, and not shown.
_MOST_LINES = 12
_WIDEST_NAME = 36


class Page:
    """Prints one answer: what stops or cautions first, then its values, then the notes."""

    def __init__(self, shapes: Shapes, units: str) -> None:
        self._shapes = shapes
        self._units = units
        colour = screen.wants_colour()
        self._console = Console(
            markup=False,
            highlight=False,
            emoji=False,
            soft_wrap=False,
            no_color=colour is False,
        )

    def show(self, title: str, shape: str, answer: Mapping[str, Any]) -> None:
        """Print the whole."""
        with self._console.capture() as written:
            self._write(title, shape, answer)
        lines = written.get().splitlines()
        screen.say("\n".join(line.rstrip() for line in lines))

    def _write(self, title: str, shape: str, answer: Mapping[str, Any]) -> None:
        advisories = answer["advisories"]
        self._advise(a for a in advisories if a["severity"] == "stop")
        self._advise(a for a in advisories if a["severity"] == "caution")
        self._console.print(self._text(title, "bold"))
        inside = self._shape(shape).get("result", shape)
        self._console.print(Padding(self._object(answer["result"], inside), (0, 0, 0, _INDENT)))
        self._advise(a for a in advisories if a["severity"] not in {"stop", "caution"})
        release = answer.get("basis", {}).get("release", "")
        self._console.print(
            self._text(f"By release {release}; --json gives all digits, formulas, sources.", "dim")
        )

    def _advise(self, advisories: Iterator[dict[str, str]]) -> None:
        for advisory in advisories:
            severity = advisory["severity"]
            grid = Table.grid(padding=(0, 1))
            grid.add_column(no_wrap=True)
            grid.add_column(overflow="fold")
            mark = self._text(severity.upper(), _SEVERITIES.get(severity, ""))
            grid.add_row(mark, self._text(advisory["message"], _body_style(severity)))
            self._console.print(grid)

    def _object(self, value: Mapping[str, Any], shape: str, path: str = "") -> RenderableType:
        """Rows of an object: its single values together, then what is larger under its name.

        `path` is what stands before the names of its values where they are picked.
        """
        units = self._shape(shape)
        parts: list[RenderableType] = []
        rows = self._rows()
        for name, part in value.items():
            unit = units.get(name, "")
            single = _too_long(f"{path}{name}", part) or self._single(part, unit)
            if single is not None:
                rows.add_row(self._text(spoken(name), "cyan"), self._text(single))
            else:
                if rows.row_count:
                    parts.append(rows)
                    rows = self._rows()
                parts.append(self._text(spoken(name), "bold"))
                parts.append(
                    Padding(self._larger(part, unit, f"{path}{name}."), (0, 0, 0, _INDENT))
                )
        if rows.row_count:
            parts.append(rows)
        return Group(*parts)

    def _estimate(self, value: Mapping[str, Any], shape: str) -> RenderableType:
        """An estimate: what is known of it, then what each contribution brings, then what is not.

        Nothing is lost with its nulls: `not_stated` names what they stand for.
        """
        units = self._shape(shape)
        known = {k: v for k, v in value.items() if v is not None and k not in _NOT_TOLD}
        probability = value.get("coverage_probability")
        if probability is not None:
            covered = figure(
                value["expanded_uncertainty"], units["expanded_uncertainty"], self._units
            )
            known["expanded_uncertainty"] = f"±{covered}, covers {100.0 * probability:g} %"
        entries = known.pop("contributions")
        if entries:
            known["contributions"] = [_contribution(entry, self._units) for entry in entries]
        shown = {**self._shapes, _CONTRIBUTION: self._shape(units.get("contributions", ""))}
        page = Page({**shown, "": {**units, "contributions": f"@{_CONTRIBUTION}"}}, self._units)
        return page._object(known, "")

    def _larger(self, value: Any, unit: str, path: str) -> RenderableType:
        if _is_estimate(value):
            return self._estimate(value, unit)
        if isinstance(value, Mapping):
            return self._object(value, unit, path)
        if all(isinstance(entry, Mapping) for entry in value):
            return self._list(value, unit, path)
        lines = [self._single(entry, unit) for entry in value]
        if any(line is None for line in lines):
            return Group(*(self._larger(e, unit, f"{path}{i}.") for i, e in enumerate(value)))
        return Group(*(self._text(f"- {line}") for line in lines))

    def _list(self, entries: Sequence[Mapping[str, Any]], shape: str, path: str) -> RenderableType:
        """A table where every entry is flat and narrow enough, else one entry below the other.

        What is null in every entry is left out: the answer's `not_stated` names what was not said.
        """
        units = self._shape(shape)
        known = [{k for k, v in entry.items() if v is not None} for entry in entries]
        names = [name for name in entries[0] if any(name in found for found in known)]
        names += [n for e in entries[1:] for n in e if n not in entries[0] and n not in names]
        entries = [{name: entry.get(name) for name in names if name in entry} for entry in entries]
        cells = [
            [self._single(entry.get(name), units.get(name, ""), short=True) for name in names]
            for entry in entries
        ]
        flat = [[cell for cell in row if cell is not None] for row in cells]
        narrow = len(names) <= _MOST_COLUMNS and self._fits(names, flat)
        if not narrow or any(None in row for row in cells):
            return Group(
                *(
                    Group(
                        self._text(f"{i + 1}.", "bold"),
                        Padding(self._object(e, shape, f"{path}{i}."), (0, 0, 0, 2)),
                    )
                    for i, e in enumerate(entries)
                )
            )
        table = Table(box=None, pad_edge=False, padding=(0, 2, 0, 0), header_style="cyan")
        for name, entry in zip(names, zip(*flat, strict=True), strict=True):
            number = all(text[:1] in set("-–0123456789") for text in entry)
            table.add_column(self._text(spoken(name)), justify="right" if number else "left")
        for row in flat:
            table.add_row(*map(self._text, row))
        return table

    def _fits(self, names: Sequence[str], rows: Sequence[Sequence[str]]) -> bool:
        """Whether a table keeps its figures whole; headings and sentences may wrap."""
        widths = [max(map(len, spoken(name).split()), default=0) for name in names]
        for row in rows:
            for i, cell in enumerate(row[: len(widths)]):
                whole = [cell] if cell[:1] in set("-0123456789") else cell.split()
                widths[i] = max(widths[i], *map(len, whole), 0)
        return sum(widths) + 2 * len(widths) + 3 * _INDENT <= self._console.width

    def _single(self, value: Any, unit: str, *, short: bool = False) -> str | None:
        """A value that takes one line; None where it needs more room."""
        if is_angle(value):
            return str(value["dms"]) if short else angle(value)
        if isinstance(value, Mapping):
            return self._pair(value, unit)
        if not isinstance(value, list):
            return figure(value, "" if unit.startswith("@") else unit, self._units)
        if _are_numbers(value):
            return figures(value, unit, self._units)
        words = all(isinstance(e, str) and " " not in e for e in value)
        return ", ".join(value or ["none"]) if words else None

    def _pair(self, value: Mapping[str, Any], shape: str) -> str | None:
        """An object of a few numbers, such as a point, on one line."""
        if len(value) > _FEW or not all(isinstance(part, float) for part in value.values()):
            return None
        units = self._shape(shape)
        parts = (
            f"{spoken(k)} {figure(v, units.get(k, ''), self._units)}" for k, v in value.items()
        )
        return ", ".join(parts)

    def _rows(self) -> Table:
        rows = Table.grid(padding=(0, 2))
        rows.add_column(max_width=_WIDEST_NAME)
        rows.add_column(overflow="fold")
        return rows

    def _shape(self, shape: str) -> dict[str, str]:
        """Units of an object's fields; of several kinds of object all together."""
        found: dict[str, str] = {}
        for name in shape.removeprefix("@").split("|"):
            found.update(self._shapes.get(name, {}))
        return found

    def _text(self, text: str, style: str = "") -> Text:
        return Text(screen.shown(text), style=style)


def _are_numbers(values: Sequence[Any]) -> bool:
    """Whether a list is of numbers, some of them perhaps not known, as where a curve has a gap."""
    known = [value for value in values if value is not None]
    return bool(known) and all(type(value) in {int, float} for value in known)


def _is_estimate(value: Any) -> bool:
    return (
        isinstance(value, Mapping)
        and value.keys() >= _ESTIMATE
        and isinstance(value["contributions"], list)
    )


def _contribution(entry: Mapping[str, Any], units: str) -> dict[str, Any]:
    """The part of a contribution that a person judges by; JSON has the rest."""
    of = entry.get("of")
    within, _, field = entry["name"].rpartition("/")
    # Of one of several the words say which it is; the field they share says less.
    name = "" if within and of else spoken(field)
    stated = figure(entry.get("input_value"), str(entry.get("input_unit", "")), units)
    return {
        "contribution": f"{name} ({of})" if name and of else name or str(of),
        "stated": stated,
        **{k: entry[k] for k in ("worst_case", "share_percent") if k in entry},
    }


def _too_long(path: str, value: Any) -> str:
    """What stands for a drawing, or a file of many lines; nothing for what a person reads."""
    if not isinstance(value, str):
        return ""
    lines = value.count("\n") + 1
    if not value.startswith("<") and lines <= _MOST_LINES:
        return ""
    kind = "drawing" if value.startswith("<svg") else f"text of {lines} lines"
    return f"{kind}, whole by --pick {path}"


def _body_style(severity: str) -> str:
    return {"stop": "bold red", "caution": "yellow"}.get(severity, "dim")
