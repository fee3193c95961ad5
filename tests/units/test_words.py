import pytest

from loopwright.units import TERMS, Reader, Term, term

BRITISH, AMERICAN = Reader(), Reader(words="american")


@pytest.mark.parametrize("pair", TERMS, ids=lambda pair: pair.british)
def test_each_reader_gets_her_own_word(pair: Term) -> None:
    assert (term(pair.british, BRITISH), term(pair.british, AMERICAN)) == (pair.british, pair.american)


# UK "cast off" and "tension" are US "bind off" and "gauge"; the moss stitches from memory.
@pytest.mark.parametrize(
    ("british", "american"),
    [
        ("cast off", "bind off"),
        ("tension", "gauge"),
        ("stocking stitch", "stockinette stitch"),
        ("moss stitch", "seed stitch"),
        ("double moss stitch", "moss stitch"),
        ("work straight", "work even"),
    ],
)
def test_the_pairs_that_trip_people(british: str, american: str) -> None:
    assert term(british, AMERICAN) == american


@pytest.mark.parametrize("name", ["bind off", "Tension", ""])
def test_only_the_british_form_in_lower_case_is_a_key(name: str) -> None:
    with pytest.raises(KeyError):
        term(name, BRITISH)


def test_every_pair_names_its_source() -> None:
    assert all(pair.source for pair in TERMS)
