"""Materials, dressing, checks before starting, terms of runout, held to second transcriptions."""

from itertools import pairwise

import pytest

from halfangle_service.trade.tables.materials.expansion import materials
from halfangle_service.trade.tables.runout.terms import terms
from halfangle_service.trade.tables.wheels.guides import guides
from halfangle_service.trade.tables.wheels.start_checks import start_checks
from transcribed.others import (
    guide_differences,
    material_differences,
    start_check_differences,
    term_differences,
)
from transcribed.reading import number, printed


@pytest.mark.outside(
    "sine.uncertainty", source="ISO 3650:1998 (steel, 11.5); NIST Monograph 180 from memory"
)
def test_every_expansion_is_the_listed_one() -> None:
    """Each material has the listed coefficient, and half of the range given of it as spread."""
    assert not material_differences(materials())


def test_a_coefficient_lies_in_its_range() -> None:
    """What is taken for a material is within the range that is given of it."""
    for row in printed("others/expansion.csv"):
        assert number(row["low"]) <= materials()[row["material"]].coefficient * 1e6
        assert materials()[row["material"]].coefficient * 1e6 <= number(row["high"])


@pytest.mark.outside("wheels.dressing", source="Textbooks of grinding and shop texts, from memory")
def test_every_guide_of_dressing_is_the_listed_one() -> None:
    """Each purpose has the listed overlap and depth."""
    assert not guide_differences(guides())


def test_guides_run_from_coarse_to_fine() -> None:
    """Where one purpose's overlap ends the next begins; passes grow no deeper."""
    for coarse, fine in pairwise(guides().values()):
        assert coarse.overlap_high == fine.overlap_low
        assert coarse.depth_high_mm > fine.depth_high_mm
        assert coarse.depth_low_mm >= fine.depth_low_mm
    for guide in guides().values():
        assert 1.0 < guide.overlap_low < guide.overlap_high
        assert 0.0 < guide.depth_low_mm < guide.depth_high_mm


@pytest.mark.outside(
    "wheels.speed", source="29 CFR 1910.215 as state copies print it; ANSI B7.1 from memory"
)
def test_figures_of_the_checks_before_starting_are_the_listed_ones() -> None:
    """Angles, distances, shares and times in the checks are those of the rules, check by check."""
    assert not start_check_differences(start_checks())


@pytest.mark.outside(
    "runout.convert", source="ISO 1101:2017 and ASME Y14.5-2009 as summarised; the rest from memory"
)
def test_terms_of_runout_are_the_listed_ones() -> None:
    """Each term names its edition, and speaks of a section or the whole feature as listed."""
    assert not term_differences(terms())


def test_the_zone_of_a_term_is_a_diameter() -> None:
    """A zone's diameter is twice the eccentricity that fills it; nothing else is halved."""
    for key, term in terms().items():
        assert term.per_eccentricity == (1.0 if key == "eccentricity" else 2.0)
        assert ("diameter" in key) is ("Diameter" in term.definition)
