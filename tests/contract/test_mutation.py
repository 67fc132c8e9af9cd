"""The mutation run makes the mutants that it says, and none of what is only said."""

import pytest

from mutation.digits import mutants_of_table
from mutation.mutants import KINDS, Kind, Mutant
from mutation.report import load_accepted
from mutation.sampling import WEIGHTS, all_mutants, sample
from mutation.sites import mutants_of_module
from mutation.trees import ROOT


@pytest.fixture(scope="module")
def mutants() -> list[Mutant]:
    """Every mutant of the service."""
    return list(all_mutants(13))


CASES: list[tuple[str, Kind, str]] = [
    ("def f(a, b):\n    return a - b\n", "operator", "return (a + b)"),
    ("def f(a, b):\n    return a - b\n", "dropped", "return (a)"),
    ("def f(a, b):\n    return a < b\n", "comparison", "return (a <= b)"),
    ("def f(a, b):\n    return a and b\n", "condition", "return (a or b)"),
    ("def f(a):\n    if a > 1:\n        g()\n", "condition", "if (not a > 1):"),
    ("def f(a):\n    return 2.0 * a\n", "constant", "return 2.1 * a"),
    ("def f(a):\n    return a + 1e-9\n", "constant", "return a + 0.0"),
    ("def f(a):\n    return math.sin(a)\n", "function", "return (math.cos(a))"),
    ("def f(a, b):\n    return max(a, b)\n", "dropped", "return (a)"),
    ("def f(a):\n    yield stop('x', 'y')\n", "dropped", "    yield from ()"),
    ("def f(a):\n    require(a)\n", "dropped", "    pass"),
    ("def f(a):\n    return [1 for b in a if b]\n", "dropped", "for b in a if True]"),
    ("def f(a=1.0):\n    return a\n", "default", "def f(a=1.05)"),
    ("class A:\n    b: float = Field(2, ge=1)\n", "default", "Field(3, ge=1)"),
    ("class A:\n    b: float = Field(2, ge=1)\n", "bound", "Field(2, gt=1)"),
    ("A = Annotated[float, Field(lt=1.0)]\n", "bound", "Field(lt=1.05)"),
]


@pytest.mark.parametrize(("source", "kind", "changed"), CASES)
def test_a_mutant_is_one_change(source: str, kind: Kind, changed: str) -> None:
    """Each kind of change is made where it can be, and nothing else of the module with it."""
    made = {
        mutant.applied(source.encode()).decode()
        for mutant in mutants_of_module("a.py", source)
        if mutant.kind == kind
    }
    assert any(changed in text for text in made), made
    assert source not in made


@pytest.mark.parametrize(("severity", "weaker"), [("stop", "caution"), ("caution", "note")])
def test_a_severity_is_weakened(severity: str, weaker: str) -> None:
    """A stop is taken for a caution and a caution for a note, with code and words as they were."""
    source = f"def f():\n    return {severity}('x', f'{{1 + 1}}')\n"
    (mutant,) = mutants_of_module("a.py", source)
    assert mutant.kind == "severity"
    assert mutant.shown_after == f"{weaker}('x', f'{{1 + 1}}')"


@pytest.mark.parametrize(
    "source",
    [
        '"""1 + 1."""\n',
        "__all__ = ['a', 'b']\n",
        "A = Literal['a', 1]\n",
        "def f(a: float | None) -> int | None:\n    return a\n",
        "class A:\n    b: float = Field(description='a' + 'b', examples=[1.0])\n",
        "@operation('a.b', example={'c': 1})\ndef f(a):\n    return a\n",
        "def f(a):\n    return f'{a + 1} or {plain(a, 4)}'\n",
        "def f(a, b):\n    return zip(a, b, strict=True)\n",
    ],
)
def test_what_is_only_said_is_left_alone(source: str) -> None:
    """Docstrings, descriptions, types, examples and figures in sentences are not changed."""
    assert mutants_of_module("a.py", source) == []


def test_a_mutant_in_a_class_names_it_and_one_in_a_method_its_lines() -> None:
    """What runs when the module is loaded is found by its name, what runs in a test by its line."""
    source = "class A:\n    b = 1\n\n    def c(self):\n        return 2\n"
    loaded, run = mutants_of_module("a.py", source)
    assert (loaded.made_at_import, loaded.function) == (("A",), "")
    assert (run.made_at_import, run.function, run.first_line) == ((), "A", 5)


def test_one_digit_of_each_value_of_a_table() -> None:
    """Values change in one digit, in place; names, sources and comments never."""
    table = b'# 12 rows\nsource = "DIN 1"\n[[row]]\nkey = "a-1"\nlow = [1.5, 20]\nrate = "0.625"\n'
    made = [m.applied(table) for m in mutants_of_table("a.toml", table, seed=13)]
    assert len(made) == 3
    for changed in made:
        assert len(changed) == len(table)
        (place,) = (p for p, (a, b) in enumerate(zip(table, changed, strict=True)) if a != b)
        assert chr(changed[place]).isdigit()
        assert place > table.index(b"low")


def test_the_sample_is_of_the_weights_and_of_the_seed(mutants: list[Mutant]) -> None:
    """A seed draws the same mutants whatever is edited elsewhere; another draws others."""
    drawn = sample(mutants, 13, 100)
    file = drawn[0].file
    elsewhere = [mutant for mutant in mutants if mutant.file != file]
    assert len(drawn) == 100
    assert {m for m in drawn if m.file != file} <= set(sample(elsewhere, 13, 100))
    assert set(sample(mutants, 14, 100)) != set(drawn)
    assert set(WEIGHTS) == set(KINDS)
    assert sum(WEIGHTS.values()) == pytest.approx(1.0, abs=1e-12)


def test_mutants_can_be_read(mutants: list[Mutant]) -> None:
    """Every mutant of a sample of modules is Python still, so that its tests can run."""
    for mutant in sample(mutants, 13, 200):
        if mutant.file.endswith(".py"):
            content = (ROOT / mutant.file).read_bytes()
            compile(mutant.applied(content), mutant.file, "exec")


def test_every_mutant_that_may_live_can_be_made(mutants: list[Mutant]) -> None:
    """What is accepted, with a reason, is still a mutant of the source as it stands."""
    for entry in load_accepted():
        assert any(entry.is_of(mutant) for mutant in mutants), entry
