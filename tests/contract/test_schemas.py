"""What every request and result promises: units, bounds, names, options, advisories."""

import json
import re
from collections import Counter
from collections.abc import Iterator
from typing import Any

import pytest
from pydantic import BaseModel

from halfangle_service.app import all_tables, contract_bytes
from halfangle_service.fields import RequestModel, ResultModel
from halfangle_service.fields.advisories import Advisory
from halfangle_service.fields.estimate import OWN_CAUSES
from halfangle_service.fields.glossary import glossary, option_labels
from halfangle_service.http.contract.shorter import with_nulls_in_types, with_whole_bounds
from halfangle_service.operation import PublishedTable
from halfangle_service.registry import load_registry
from halfangle_service.trade.angles import DMS_PATTERN
from inlining import inlined
from schema_support import SCHEMAS, Schema, components, options_of, request_schemas, tokens_of
from source_support import advisory_codes

OPERATIONS = load_registry().operations


@pytest.mark.parametrize("name", SCHEMAS)
def test_every_field_is_described_and_every_number_has_a_unit(name: str) -> None:
    """A front end can label each field, and write the unit beside each number."""
    for field, schema in components()[name].get("properties", {}).items():
        # A reference alone: the words are those of the object that it leads to.
        described = components()[schema["$ref"].rsplit("/", 1)[-1]] if len(schema) == 1 else schema
        assert len(described.get("description", "")) > 5 or "const" in schema, field
        for option in options_of(schema):
            if option.get("type") in {"number", "integer"} and "const" not in option:
                assert "x-unit" in option, f"{field}: no unit"


@pytest.mark.parametrize("name", sorted(request_schemas()))
def test_everything_sent_is_bounded(name: str) -> None:
    """In a request each number has bounds, each list and each text a greatest length."""
    for field, schema in components()[name].get("properties", {}).items():
        for option in options_of(schema):
            kind = option.get("type")
            if "enum" in option or "const" in option:
                continue
            if kind in {"number", "integer"}:
                assert {"minimum", "exclusiveMinimum"} & set(option), f"{field}: no lower bound"
                assert {"maximum", "exclusiveMaximum"} & set(option), f"{field}: no upper bound"
            elif kind == "array":
                assert "maxItems" in option, f"{field}: any number of entries"
            elif kind == "string":
                assert "maxLength" in option, f"{field}: text of any length"


@pytest.mark.parametrize("name", sorted(request_schemas()))
def test_nothing_unknown_is_taken(name: str) -> None:
    """Every object of a request refuses unknown fields."""
    schema = components()[name]
    if schema.get("type") == "object":
        assert schema.get("additionalProperties") is False


def all_models(base: type[BaseModel]) -> Iterator[type[BaseModel]]:
    """Every model below a base, however deep."""
    for model in base.__subclasses__():
        if not model.__name__.endswith("Answer"):
            if "[" not in model.__name__:  # a generic's own step on the way to a named class
                yield model
            yield from all_models(model)


def test_model_names_are_unique() -> None:
    """A name of a model is a name in the contract and in the client, so it stands for one model."""
    assert all_tables()
    models = {*all_models(RequestModel), *all_models(ResultModel)}
    counted = Counter(model.__name__ for model in models)
    assert [name for name, count in counted.items() if count > 1] == []
    # Pydantic writes a longer name, with the module, where two would clash or where the same
    # model differs between input and output.
    assert not [
        name for name in components() if "__" in name or name.endswith(("-Input", "-Output"))
    ]


#: Words of an estimate, whose unit is that of the quantity it estimates (`x-unit` says it).
_OF_AN_ESTIMATE = re.compile(r"(Angle|Arcsec|Length)(Estimate|Contribution)")


@pytest.mark.parametrize("name", SCHEMAS)
def test_field_names_say_the_unit_they_are_in(name: str) -> None:
    """A field in arc-seconds ends so; a field so named is in arc-seconds; likewise Celsius."""
    for field, schema in components()[name].get("properties", {}).items():
        units = {option.get("x-unit") for option in options_of(schema)} - {None}
        if units == {"arcsecond"} and not _OF_AN_ESTIMATE.fullmatch(name):
            assert "arcsec" in field, field
        if field.endswith("_arcsec") and units:
            assert units == {"arcsecond"}, field
        if field.endswith("_celsius") and units:
            assert units == {"celsius"}, field
        if units == {"celsius"}:
            assert "celsius" in field, field


# The vocabulary -------------------------------------------------------------------------------
def names_in_use() -> dict[str, set[str]]:
    """Every field of every request and result, with the units that its numbers bear."""
    used: dict[str, set[str]] = {}
    for name in SCHEMAS:
        for field, schema in components()[name].get("properties", {}).items():
            units = {str(o["x-unit"]) for o in options_of(schema) if "x-unit" in o}
            used.setdefault(field, set()).update(units)
    return used


def outside_the_glossary(used: Iterator[str]) -> list[str]:
    """Those names that the glossary does not hold."""
    return sorted(set(used) - set(glossary()))


def test_a_field_outside_the_glossary_would_be_seen() -> None:
    """The check below sees a name that nobody has defined."""
    assert outside_the_glossary(iter(["height", "hieght"])) == ["hieght"]


def test_every_field_is_in_the_glossary() -> None:
    """Each name of a field has one meaning, written down; and every name written down is in use."""
    assert outside_the_glossary(iter(names_in_use())) == []
    assert sorted(set(glossary()) - set(names_in_use())) == []


@pytest.mark.parametrize("name", sorted(glossary()))
def test_a_term_says_what_it_is(name: str) -> None:
    """Each term has a sentence for its meaning, and the units that its fields bear."""
    term = glossary()[name]
    assert term.meaning.endswith(".")
    assert len(term.meaning) > 8
    assert set(filter(None, term.unit.split("|"))) == names_in_use().get(name, set())


#: Other words for smallest and largest than DEVELOPERS.md has them.
_OTHER_EXTREMES = re.compile(
    r"(^|_)((least|most|lowest|highest|minimum|maximum|greatest|slowest|fastest)(_|$)|(min|max)_)"
)


def other_extremes(names: Iterator[str], counts: set[str]) -> list[str]:
    """Names that say smallest or largest otherwise: `max_` stands before a count alone."""
    found = [name for name in names if _OTHER_EXTREMES.search(name)]
    return [name for name in found if not (name.startswith("max_") and name in counts)]


def test_extremes_have_one_word_each() -> None:
    """Names say `smallest` and `largest`; `max_` before a count is the most that one asks for."""
    counts = {name for name, units in names_in_use().items() if units == {"count"}}
    assert other_extremes(iter(glossary()), counts) == []
    wrong = ["least_gap", "gap_most", "max_height", "machine_max_rpm", "traverse_slowest"]
    right = ["smallest_gap", "max_blocks", "pilot_length_min", "almost", "atleast"]
    assert other_extremes(iter(wrong + right), {"max_blocks"}) == wrong


#: A place along an axis: its datum in its name, or one that the caller chooses.
_STATION = re.compile(r"(pivot_)?stations?|(sensed_)?stations?_from_[a-z_]+|at_stations")


def test_places_along_an_axis_are_stations() -> None:
    """Each place along an axis is called a station, and says from what it is measured."""
    stations = [name for name in glossary() if "station" in name]
    assert [name for name in stations if not _STATION.fullmatch(name)] == []
    places = [name for name in stations if glossary()[name].unit]
    assert [name for name in places if not glossary()[name].datum] == []
    measured_from = ("from_large_end", "from_small_end", "from_apex", "along_axis")
    assert not set(measured_from) & set(glossary())


#: Letters and numbers of a standard, and units, are written as their standard writes them.
_AS_IN_STANDARD = re.compile(r"in|mm|[ABCDR]|AT\d+")


def tokens_in_use() -> set[str]:
    """Every option of every request and result, and every cause that no field states."""
    options = {
        token
        for name in SCHEMAS
        for schema in components()[name].get("properties", {}).values()
        for token in tokens_of(schema)
    }
    return options | set(OWN_CAUSES)


#: A word of a token; `_KEY_PART` has a ratio (1:20) and a length in a designation (3_5625) besides.
_TOKEN = re.compile(r"[a-z0-9]+(?:[-.][a-z0-9]+)*")
_KEY_PART = re.compile(r"[a-z0-9]+(?:\.[a-z0-9]+)*|[0-9]+:[0-9]+(?:\.[0-9]+)?|[0-9]+_[0-9]+")


@pytest.mark.parametrize("token", sorted(tokens_in_use()))
def test_options_are_tokens_with_a_label(token: str) -> None:
    """An option is a token in kebab-case, or a standard's letter, with a label for a person.

    What contributes to an estimate is named as its field is, or like one.
    """
    kebab = re.fullmatch(r"[a-z0-9]+(?:[-.][a-z0-9]+)*", token)
    contributes = token in OWN_CAUSES or token in glossary()
    assert kebab or contributes or _AS_IN_STANDARD.fullmatch(token)
    assert option_labels()[token]


def is_key(text: str) -> bool:
    """True for a token whose parts are words, ratios or lengths, or a standard's letter."""
    whole = _AS_IN_STANDARD.fullmatch(text) is not None
    return whole or all(_KEY_PART.fullmatch(part) for part in text.split("-"))


@pytest.mark.parametrize("table", all_tables(), ids=lambda table: table.path)
def test_keys_of_tables_are_tokens(table: PublishedTable[Any]) -> None:
    """Each row of every published table is asked for by a token, as every option is."""
    assert [key for key in table.keys() if not is_key(key)] == []  # noqa: SIM118  no mapping


@pytest.mark.parametrize("key", ["ISO 0", "iso 0", "ISO-0", "iso-", "-iso", "", "a--b", "ü", "1:"])
def test_what_is_no_token_would_be_seen(key: str) -> None:
    """The check above sees blanks, capitals, and dashes without a word."""
    assert not is_key(key)


def test_angle_strings_have_the_named_format() -> None:
    """Whatever takes an angle as text says so by the format that the contract describes."""
    texts = [
        option
        for name in request_schemas()
        for schema in components()[name].get("properties", {}).values()
        for option in options_of(schema)
        if "°" in option.get("pattern", "")
    ]
    assert len(texts) > 30
    assert {text["format"] for text in texts} == set(json.loads(contract_bytes())["x-formats"])


def test_angles_are_one_component() -> None:
    """The forms of an angle are written once; each field names them and has its bounds beside."""
    document = contract_bytes().decode()
    assert document.count(json.dumps(DMS_PATTERN, ensure_ascii=False)) == 1
    angles = list(_angles_of(json.loads(document)))
    assert len(angles) > 30
    for angle in angles:
        assert {"minimum", "exclusiveMinimum"} & set(angle), angle
        assert {"maximum", "exclusiveMaximum"} & set(angle), angle


def _angles_of(value: Any) -> Iterator[Schema]:
    """Every reference to the component of angles."""
    if isinstance(value, list):
        for part in value:
            yield from _angles_of(part)
    elif isinstance(value, dict):
        if value.get("$ref") == "#/components/schemas/AngleIn":
            yield value
        for part in value.values():
            yield from _angles_of(part)


# Written shorter ------------------------------------------------------------------------------
NULLABLE = {"anyOf": [{"type": "number"}, {"type": "null"}], "x-unit": "length"}
WORD_OR_NULL = {"anyOf": [{"enum": ["a"], "type": "string"}, {"type": "null"}]}
MODEL_OR_NULL = {"anyOf": [{"$ref": "#/components/schemas/Angle"}, {"type": "null"}]}


def test_a_plain_value_or_null_is_one_type() -> None:
    """What may be null is a second type; a choice, which would have to list null, and a model stay.

    The generator and tests get the longer way back.
    """
    shorter = with_nulls_in_types({"a": NULLABLE, "b": WORD_OR_NULL, "c": MODEL_OR_NULL})
    assert shorter == {
        "a": {"type": ["number", "null"], "x-unit": "length"},
        "b": WORD_OR_NULL,
        "c": MODEL_OR_NULL,
    }
    assert inlined({"components": {"schemas": shorter}})["components"]["schemas"] == {}
    whole = {"Models": {"properties": shorter}}
    back = inlined({"components": {"schemas": whole}})["components"]["schemas"]["Models"]
    assert back["properties"] == {"a": NULLABLE, "b": WORD_OR_NULL, "c": MODEL_OR_NULL}


def test_bounds_of_whole_numbers_have_no_point() -> None:
    """A bound is written as people write it; what is no bound keeps its kind of number."""
    field = {"maximum": 10000.0, "minimum": 1e-6, "default": 45.0}
    assert json.dumps(with_whole_bounds(field)) == (
        '{"maximum": 10000, "minimum": 1e-06, "default": 45.0}'
    )


def test_every_answer_is_the_common_one_with_its_result() -> None:
    """Advisories and basis are declared once; in one piece each answer has all three, required."""
    written = json.loads(contract_bytes())["components"]["schemas"]
    answers = [name for name in SCHEMAS if name.endswith("Answer")]
    assert len(answers) > 60
    for name in answers:
        common, own = written[name]["allOf"]
        assert common == {"$ref": "#/components/schemas/Answer"}
        assert own["required"] == ["result"]
        whole = components()[name]
        assert list(whole["properties"]) == whole["required"] == ["result", "advisories", "basis"]


def test_a_shared_field_that_is_the_only_one_of_its_name_has_it_alone() -> None:
    """References are short: a field's own name, and a class's before it for its further forms."""
    names = list(json.loads(contract_bytes())["components"]["schemas"])
    assert {"center_distance", "high_roll_diameter", "units"} <= set(names)
    further = [name for name in names if "_" in name and name[0].isupper()]
    assert all(name.partition("_")[2] in names or name.startswith("Options_") for name in further)


def test_no_label_is_left_over() -> None:
    """Every label belongs to an option in use."""
    assert sorted(set(option_labels()) - tokens_in_use()) == []


def test_operation_ids_are_names() -> None:
    """An operation's id is a name in every language: letters, digits, underscores."""
    document = json.loads(contract_bytes())
    ids = [o["operationId"] for item in document["paths"].values() for o in item.values()]
    assert [name for name in ids if not re.fullmatch(r"[a-z][a-z0-9_]*", name)] == []
    assert len(ids) == len(set(ids))


# Advisories -----------------------------------------------------------------------------------
def test_advisory_codes_are_stable_words() -> None:
    """Every code is in kebab-case, as callers compare it."""
    codes = {code for code, _ in advisory_codes()}
    assert codes
    for code in codes:
        assert Advisory(code=code, severity="note", message="-").code == code
