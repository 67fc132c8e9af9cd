"""Figures in sentences have their unit: every `plain` in a message is followed by one."""

import ast
import re
from collections.abc import Iterator
from pathlib import Path

import pytest

SERVICE = Path(__file__).parents[2] / "service" / "halfangle_service"
#: What follows a figure: a unit, or the next of two figures of one unit.
_UNIT = re.compile(r'[°″′"%]| (%|mm|in|µm|m/s|s|per minute|°C|N|years|to|or|and)\b| %| °C')
#: Figures without a unit: pure numbers, the marks of a drawing, a name in a table of one unit.
_PURE = {
    "fields/advisories.py": "was read as decimal degrees",
    "http/guards/keys.py": "times a minute",
    "settings/told.py": "above {plain(bounds[Gt].gt)}",
    "topics/inspection/verdict/judging.py": "times four standard uncertainties",
    "topics/runout/v_block.py": "lobes: it shows",
    "topics/sine/table.py": "arcsec_per_",
    "topics/tapers/infeed.py": "times the downfeed",
    "topics/wheels/dressing.py": "overlap ratio",
    "topics/wheels/profile.py": "{plain(x, 9)},{plain(abs(y), 9)}",
    "trade/sine/compound.py": "The normal",
    "trade/wording.py": "_ANY_UNIT",
}
#: Drawings say their unit once, under the title.
_DRAWINGS = {
    "trade/comparator/overlay_dxf.py",
    "trade/comparator/overlay_svg.py",
    "trade/drawing/scales.py",
    "trade/wheel/profile_drawing.py",
}


def bare_figures(source: str) -> Iterator[str]:
    """Sentences of a module in which `plain` writes a figure that no unit follows."""
    for node in ast.walk(ast.parse(source)):
        if isinstance(node, ast.JoinedStr):
            yield from _bare_in(node)


def _bare_in(sentence: ast.JoinedStr) -> Iterator[str]:
    for part, following in zip(sentence.values, [*sentence.values[1:], None], strict=True):
        if not _is_plain(part):
            continue
        text = following.value if isinstance(following, ast.Constant) else ""
        if isinstance(text, str) and not (text == " " or _UNIT.match(text)):
            yield ast.unparse(sentence)


def _is_plain(part: ast.expr) -> bool:
    """True for a placeholder that is a call of `plain` itself."""
    return (
        isinstance(part, ast.FormattedValue)
        and isinstance(part.value, ast.Call)
        and isinstance(part.value.func, ast.Name)
        and part.value.func.id == "plain"
    )


@pytest.mark.parametrize(
    "bare",
    ["f'A wheel of {plain(7)} is too small'", "f'at most {plain(x)}'", "f'{plain(x, 3)} wide'"],
)
def test_a_figure_without_a_unit_would_be_seen(bare: str) -> None:
    """The check below sees a figure that nothing follows, or only a word."""
    assert list(bare_figures(bare)) == [ast.unparse(ast.parse(bare))]
    assert list(bare_figures(bare.replace(")}", ")} mm"))) == []


def test_every_figure_in_a_sentence_has_its_unit() -> None:
    """Each figure that the service writes into a sentence is followed by a unit, or is a number."""
    found = {
        (name, sentence)
        for path in sorted(SERVICE.rglob("*.py"))
        if (name := path.relative_to(SERVICE).as_posix()) not in _DRAWINGS
        for sentence in bare_figures(path.read_text("utf-8"))
    }
    assert [row for row in found if _PURE.get(row[0], "\0") not in row[1]] == []
    assert {name for name, _ in found} == set(_PURE)
