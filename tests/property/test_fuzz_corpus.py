"""What the search for faults of the parsers has reached, read again."""

import pytest

from fuzz.targets import ROOT, TARGETS

CORPUS = ROOT / "tests/load/fuzz/corpus"


@pytest.mark.parametrize("name", TARGETS)
def test_each_kept_input_is_read_or_refused(name: str) -> None:
    """Every input that reached something new in a parser is read right, or refused."""
    kept = sorted((CORPUS / name).iterdir())
    assert kept, f"{name}: no corpus; run tests/load/fuzz_parsers.py"
    target = TARGETS[name]()
    for one in (*target.seeds, *(path.read_bytes() for path in kept)):
        target.read(one)


def test_a_target_sees_a_parser_that_fails(monkeypatch: pytest.MonkeyPatch) -> None:
    """A parser that raises what is no refusal, or reads a wrong value, is found by its target."""

    def fails(text: str) -> float:
        if "°" in text:
            return 30.0
        return 0.5 if text == "30" else [0.0][int(text)]

    monkeypatch.setattr("fuzz.targets.parse_dms", fails)
    target = TARGETS["angles"]()
    with pytest.raises(IndexError, match="out of range"):
        target.read(b"7")
    with pytest.raises(AssertionError, match="30"):
        target.read(b"30")
