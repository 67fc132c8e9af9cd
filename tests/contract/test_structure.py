"""How the project is built: rooms and their sizes, declarations, and that nothing lacks its test.

What may import what is held by import-linter (`pyproject.toml`), which `.ci/run` calls.
"""

import ast
import re
from collections import Counter
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from textwrap import dedent

import pytest

from halfangle_service.registry import load_registry
from source_support import (
    ALL_FILES,
    ROOT,
    SERVICE,
    TOPIC_FILES,
    TOPICS,
    TRADE,
    TRADE_FILES,
    imports_of,
    relative,
    tracked,
    tree_of,
)

OPERATIONS = load_registry().operations
TOP_LEVEL = {
    *(".ci", ".gitignore", "README.md", "DEVELOPERS.md", "pyproject.toml"),
    *("service", "client", "openapi", "tests", "docker"),
}
TEXT_SUFFIXES = {
    *(".py", ".md", ".toml", ".json", ".yaml", ".yml", ".csv", ".txt"),
    *(".html", ".css", ".js", ".jinja", ".jinja2", ".svg"),
}
LONGEST_FILE = 400
#: Files of one folder; more want a folder that explains them.
LARGEST_ROOM = 15
#: Programs that are run by hand stand side by side, as DEVELOPERS.md lists them.
PROGRAMS, MOST_PROGRAMS = "tests/load", 20


# Registry -------------------------------------------------------------------------------------
def test_registry_lists_exactly_what_is_on_disk() -> None:
    """Every folder of topics declares operations, and no operation comes from elsewhere."""
    assert {operation.topic for operation in OPERATIONS.values()} == {t.name for t in TOPICS}


def declarations() -> Iterator[tuple[Path, str]]:
    """File and dotted name of each operation and published table that the source declares."""
    for path in TOPIC_FILES:
        for node in ast.walk(tree_of(path)):
            if (
                isinstance(node, ast.Call)
                and isinstance(node.func, ast.Name)
                and node.func.id in {"operation", "published_table"}
            ):
                name = node.args[0]
                assert isinstance(name, ast.Constant), f"{relative(path)}:{node.lineno}"
                yield path, str(name.value)


def test_what_is_written_is_declared() -> None:
    """Each declaration in the source is in the registry, under its own topic, and none other is."""
    tables = {f"{table.topic}.{table.name}" for table in load_registry().tables}
    assert {name for _, name in declarations()} == {*OPERATIONS, *tables}
    for path, name in declarations():
        assert path.relative_to(SERVICE / "topics").parts[0] == name.partition(".")[0], name


@pytest.mark.parametrize("name", OPERATIONS)
def test_operation_says_what_it_stands_on(name: str) -> None:
    """Every operation has relations, sources with a citation, and plain words."""
    operation = OPERATIONS[name]
    assert re.fullmatch(r"[a-z]+\.[a-z]+(?:-[a-z0-9]+)*", name)
    assert operation.relations
    assert all(len(source.citation) > 10 for source in operation.sources)
    assert operation.sources
    assert operation.summary.endswith(".")
    assert not operation.title.endswith(".")
    assert not operation.largest_request.endswith(".")


# Tests ----------------------------------------------------------------------------------------
@cache
def outside_marks() -> tuple[tuple[str, str], ...]:
    """Operation and source of every `@pytest.mark.outside(...)` in the tests."""
    return tuple(_outside_marks())


def _outside_marks() -> Iterator[tuple[str, str]]:
    for path in sorted((ROOT / "tests").rglob("test_*.py")):
        tree = tree_of(path)
        constants = {
            ast.unparse(line.targets[0]): ast.unparse(line.value)
            for line in tree.body
            if isinstance(line, ast.Assign)
        }
        for node in ast.walk(tree):
            if isinstance(node, ast.Call) and ast.unparse(node.func) == "pytest.mark.outside":
                named = {word.arg: word.value for word in node.keywords}
                source = named.get("source")
                assert source is not None, f"{path}:{node.lineno} names no source"
                for argument in node.args:
                    assert isinstance(argument, ast.Constant), f"{path}:{node.lineno}"
                    text = ast.unparse(source)
                    yield str(argument.value), constants.get(text, text)


@pytest.mark.parametrize("name", OPERATIONS)
def test_every_operation_is_checked_against_the_outside(name: str) -> None:
    """Each operation has a test that compares it with something outside the project."""
    sources = [source for operation, source in outside_marks() if operation == name]
    assert sources
    assert all(len(source) > 12 for source in sources)


def test_checks_name_operations_that_exist() -> None:
    """No mark names an operation that is not there (any more)."""
    assert {operation for operation, _ in outside_marks()} <= set(OPERATIONS)


@pytest.mark.parametrize("topic", TOPICS, ids=lambda topic: topic.name)
def test_every_topic_has_tests_of_its_own(topic: Path) -> None:
    """A topic's published checks are in a folder of its name, in files named after it."""
    assert list((ROOT / "tests/published" / topic.name).rglob(f"test_{topic.name}*.py"))


def test_every_test_says_what_must_be_true() -> None:
    """The docstring of a test is the sentence that must be true."""
    silent = [
        f"{relative(path)}:{node.name}"
        for path in sorted((ROOT / "tests").rglob("test_*.py"))
        for node in tree_of(path).body
        if isinstance(node, ast.FunctionDef)
        and node.name.startswith("test_")
        and not (ast.get_docstring(node) or "").endswith((".", "?"))
    ]
    assert not silent


def test_every_raises_says_what_it_expects() -> None:
    """`pytest.raises` always comes with `match`."""
    loose = [
        f"{relative(path)}:{node.lineno}"
        for path in sorted((ROOT / "tests").rglob("*.py"))
        for node in ast.walk(tree_of(path))
        if isinstance(node, ast.Call)
        and ast.unparse(node.func) == "pytest.raises"
        and "match" not in {word.arg for word in node.keywords}
    ]
    assert not loose


# Files ----------------------------------------------------------------------------------------
#: Tests too, but for the tools that are run by hand.
TESTS = sorted((ROOT / "tests").rglob("*.py"))


@pytest.mark.parametrize("path", [*ALL_FILES, *TESTS], ids=relative)
def test_files_stay_readable(path: Path) -> None:
    """A file of the service, or of its tests, has at most 400 lines."""
    assert len(path.read_text("utf-8").splitlines()) <= LONGEST_FILE


def test_rooms_stay_small() -> None:
    """No folder of the service, of its published checks or its tools holds more than 15 files."""
    tests = [path for path in TESTS if {"published", "load"} & set(path.parts)]
    rooms = Counter(
        relative(path.parent) for path in [*ALL_FILES, *tests] if path.name != "__init__.py"
    )
    assert rooms.pop(PROGRAMS) <= MOST_PROGRAMS
    assert {room: n for room, n in rooms.items() if n > LARGEST_ROOM} == {}


def test_every_room_says_what_it_is_for() -> None:
    """Each folder of the service opens with a sentence."""
    rooms = {path.parent for path in ALL_FILES}
    assert not [
        relative(room)
        for room in rooms
        if not (ast.get_docstring(tree_of(room / "__init__.py")) or "").strip()
    ]


@pytest.mark.parametrize("path", TOPIC_FILES, ids=relative)
def test_a_topic_holds_subjects(path: Path) -> None:
    """No file of a topic is named after its form or after nothing: it bears its subject's name."""
    assert not re.match(
        r"(models|operations|common|misc|more|shared|utils|helpers)(_|$)", path.stem
    )


# Sentences ------------------------------------------------------------------------------------
def exponents(tree: ast.Module) -> Iterator[int]:
    """Lines where a figure may be written with an exponent: a format of `g` or `e`."""
    for node in ast.walk(tree):
        if isinstance(node, ast.FormattedValue) and node.format_spec is not None:
            spec = ast.unparse(node.format_spec).strip("f'\"")
            if spec[-1:] in {"g", "e", "G", "E"}:
                yield node.lineno


def test_an_exponent_would_be_seen() -> None:
    """The check below sees a figure that is written with `g`."""
    assert list(exponents(ast.parse("f'{1e-5:.3g} from the end'"))) == [1]
    assert list(exponents(ast.parse("f'{plain(1e-5, 3)} from the end, {x:.1f}'"))) == []


#: The one module that writes figures, and the one that rounds a number to 15 digits.
_WRITERS = {TRADE / "wording.py", TRADE / "decimals.py"}


def test_figures_are_written_without_exponents() -> None:
    """Sentences take their figures from `trade/wording.py`, which never writes an exponent."""
    assert not [
        f"{relative(path)}:{line}"
        for path in ALL_FILES
        if path not in _WRITERS
        for line in exponents(tree_of(path))
    ]


# Units ----------------------------------------------------------------------------------------
#: What names a unit, or says that a quantity has none; `length` and `angle` are no units.
UNIT_WORDS = re.compile(
    r"radian|degree|°|arc-?second|second of arc|″|millimet|micromet|nanomet|\binch|\bmm\b|\bnm\b|"
    r"µm|percent|kelvin|celsius|\bunits?\b|pure number|dimensionless|\bratio\b|\bshare\b|factor|"
    r"per turn|how many|\bcount|times|positions?\b|steps?\b|probability|rpm|m/s|ft/min|seconds?\b|"
    r"minutes?\b|pixels?\b",
    re.IGNORECASE,
)
UNIT_SUFFIXES = re.compile(
    r"_(rad|degrees|arcsec|mm|um|nm|tenth_nm|celsius|percent|rpm|per_\w+|factor|ratio|count)$"
)


def without_units(tree: ast.Module) -> Iterator[str]:
    """Public functions of floats whose words, names and module say no unit."""
    if UNIT_WORDS.search(ast.get_docstring(tree) or ""):
        return
    for node in tree.body:
        if isinstance(node, ast.FunctionDef) and not node.name.startswith("_"):
            arguments = [*node.args.posonlyargs, *node.args.args, *node.args.kwonlyargs]
            floats = [a.arg for a in arguments if a.annotation and _is_float(a.annotation)]
            named = floats and all(UNIT_SUFFIXES.search(name) for name in floats)
            returns = node.returns is not None and _is_float(node.returns)
            silent = not UNIT_WORDS.search(ast.get_docstring(node) or "")
            if (floats or returns) and not named and silent:
                yield node.name


def _is_float(annotation: ast.expr) -> bool:
    return bool(re.search(r"\b(float|Samples|Values|NDArray)\b", ast.unparse(annotation)))


def test_a_missing_unit_would_be_seen() -> None:
    """The check below sees a function whose words say `name`, `table` or `length` and no unit."""
    silent = "def f(x: float) -> float:\n    'The length by its name in the table.'"
    assert list(without_units(ast.parse(silent))) == ["f"]
    spoken = "def f(x: float) -> float:\n    'The length of x, both in mm.'"
    assert list(without_units(ast.parse(spoken))) == []
    assert list(without_units(ast.parse("def f(x_mm: float) -> float:\n    'Twice it.'"))) == []


@pytest.mark.parametrize("path", TRADE_FILES, ids=relative)
def test_maths_says_its_units(path: Path) -> None:
    """Each public function of floats says its units: in its names, its words or its module's."""
    assert ast.get_docstring(tree_of(path))
    assert list(without_units(tree_of(path))) == []


# The repository -------------------------------------------------------------------------------
def without_fields(tree: ast.Module) -> Iterator[int]:
    """Lines of refusals that name no field of the request."""
    kinds = {"Impossible", "Disagreement", "Unreachable", "BeyondBound"}
    for node in ast.walk(tree):
        if isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id in kinds:
            named = {keyword.arg: keyword.value for keyword in node.keywords}
            fields = named.get("fields")
            if fields is None or (isinstance(fields, ast.Dict) and not fields.keys):
                yield node.lineno


def test_a_refusal_without_fields_would_be_seen() -> None:
    """The check below finds a refusal that names no field, and passes over one that does."""
    text = """
        Impossible("no")
        Unreachable("no", fields={})
        Unreachable("no", fields={"height": "should be less"})
    """
    assert list(without_fields(ast.parse(dedent(text)))) == [2, 3]


def test_every_refusal_names_a_field() -> None:
    """Whatever is refused in the words of the trade, a front end can mark the field concerned."""
    found = [(relative(p), line) for p in ALL_FILES for line in without_fields(tree_of(p))]
    assert found == []


def test_one_module_reads_the_tables() -> None:
    """Every published table is read in one way, by one module; what a shop writes is no table."""
    readers = {relative(path) for path in ALL_FILES if "tomllib" in imports_of(path)}
    of_the_shop = ("topics/jobs/plan/shop/profiles.py", "settings/reading.py",
                   "http/guards/key_file.py")  # fmt: skip
    assert readers - {f"service/halfangle_service/{path}" for path in of_the_shop} == {
        "service/halfangle_service/trade/tables/loader.py"
    }


def test_no_other_entries_at_the_top() -> None:
    """The root holds only what the layout names."""
    assert {path.relative_to(ROOT).parts[0] for path in tracked()} <= TOP_LEVEL


#: A place under a folder of one machine; in a longer path, such as `service/home/`, it is none.
MACHINE_PATH = re.compile(r"(?<![\w.>)}-])/(?:home|root|Users|work|tmp)/\w|[A-Z]:\\\\")


@pytest.mark.parametrize(
    ("text", "seen"),
    [
        ("kept in /tmp/x", True),
        ('"/tmp/x/y.jsonl"', True),
        ("/home/somebody", True),
        ("C:\\\\shop", True),
        ("what is /tmp", False),
        ("/v1/home/piece", False),
    ],
)
def test_a_machine_path_would_be_seen(text: str, seen: bool) -> None:
    """The check below sees a place with or without a slash behind it, and no part of an address."""
    assert bool(MACHINE_PATH.search(text)) == seen


def test_no_machine_paths_in_files() -> None:
    """No file names a place of the machine that it was written on."""
    for path in tracked():
        if path.suffix in TEXT_SUFFIXES and path != Path(__file__):
            found = MACHINE_PATH.search(path.read_text("utf-8"))
            assert found is None, f"{relative(path)}: {found}"
