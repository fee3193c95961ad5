"""A catalogue of yarns from a CSV: whatever parts its columns, and every fault with its line and column."""

from pathlib import Path

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from loopwright.files.catalogue import MOST_SHOWN, CatalogueFaults, read_catalogue, read_catalogue_text
from loopwright.files.catalogue_cells import read_fibres
from loopwright.need.substitution import FIBRE_NAMES, YarnCatalogue
from loopwright.units import BadInput, Money

PLAIN = """name,fibres,length (m),mass (g),price NZD,colours
Tidal DK,"80 % merino, 20 % nylon",112.5,50,9.90,12
Fog,70 mohair / 30 silk,210,25,,3
"""


def read(text: str) -> YarnCatalogue:
    return read_catalogue_text(text, "shop.csv")


def faults(text: str) -> list[str]:
    with pytest.raises(CatalogueFaults) as caught:
        read(text)
    return [str(fault) for fault in caught.value.faults]


def blend(catalogue: YarnCatalogue, row: int) -> dict[str, float]:
    return {share.fibre: share.percent for share in catalogue.yarn(row).fibres}


def test_a_plain_file() -> None:
    found = read(PLAIN)
    assert list(found.names) == ["Tidal DK", "Fog"]
    assert found.length_m.tolist() == [112.5, 210]
    assert found.mass_g.tolist() == [50, 25]
    assert (found.price(0), found.price(1)) == (Money(990, "NZD"), None)
    assert blend(found, 0) == {"merino": 80, "nylon": 20}
    assert found.strands.grist_tex[1] == pytest.approx(25 / 210 * 1000)


@pytest.mark.parametrize(
    "text",
    [
        "Yarn;Composition;Metres;Grams;Price;Currency\nTidal;merino 62,5 % nylon 37,5 %;1.112,5;50;9,90;EUR\n",
        "yarn name\tblend\tlength_m\tball weight [g]\tcost eur\nTidal\t62.5% merino 37.5% nylon\t1112.5\t50\t9.90\n",
        'NAME,MATERIAL,LENGTH,MASS,PRICE\nTidal,"62.5 % merino, 37.5 % polyamide","1,112.5 m",50 g,9.90 EUR\n',
        "\ufeff\n\nyarn;composition;length in m;mass g;price EUR\n;;;;\nTidal;62,5 merino 37,5 nylon;1112,5;50;9,9\n",
    ],
)
def test_the_same_yarn_in_other_files(text: str) -> None:
    found = read(text)
    assert (list(found.names), found.length_m.tolist(), found.mass_g.tolist()) == (["Tidal"], [1112.5], [50])
    assert blend(found, 0) == {"merino": 62.5, "nylon": 37.5}
    assert found.price(0) == Money(990, "EUR")


def test_yards_and_ounces_by_heading_and_by_cell() -> None:
    found = read("name,fibres,yards,ounces\nA,wool,125,1 3/4\nB,wool,110 m,50 g\n")
    assert found.length_m.tolist() == pytest.approx([114.3, 110])
    assert found.mass_g.tolist() == pytest.approx([49.612, 50], abs=1e-3)


def test_several_currencies() -> None:
    found = read("name,fibres,metres,grams,price\nA,wool,100,50,5 EUR\nB,wool,100,50,600 JPY\n")
    assert (found.price(0), found.price(1)) == (Money(500, "EUR"), Money(600, "JPY"))


@pytest.mark.parametrize(
    ("written", "parts"),
    [
        ("wool", {"wool": 100}),
        ("100% Extra-fine merino", {"merino": 100}),
        ("70% kid mohair and 30% mulberry silk", {"mohair": 70, "silk": 30}),
        ("superwash merino 75 %, polyamide 25 %", {"superwash wool": 75, "nylon": 25}),
        ("50 % baby alpaca + 30 % alpaca + 20 % flax", {"alpaca": 80, "linen": 20}),
        ("33.3 wool 33.3 silk 33.3 cotton", {"wool": 33.3, "silk": 33.3, "cotton": 33.3}),
        ("", {}),
    ],
)
def test_fibres_in_words(written: str, parts: dict[str, float]) -> None:
    assert read_fibres(written) == pytest.approx(parts)


@given(st.lists(st.sampled_from(FIBRE_NAMES), min_size=1, max_size=5, unique=True), st.data())
def test_a_written_blend_reads_back(fibres: list[str], data: st.DataObject) -> None:
    cuts = sorted(data.draw(st.lists(st.integers(1, 99), min_size=len(fibres) - 1, max_size=4, unique=True)))
    cuts = cuts[: len(fibres) - 1]
    parts = dict(zip(fibres, np.diff([0, *cuts, 100]).tolist(), strict=True))
    form = data.draw(st.sampled_from(["{p} % {f}", "{f} {p} %", "{p}% {f}", "{f}: {p}"]))
    between = data.draw(st.sampled_from([", ", " / ", " and ", "; "]))
    assert read_fibres(between.join(form.format(p=p, f=f) for f, p in parts.items())) == parts


def test_every_fault_names_line_and_column() -> None:
    text = (
        "name,fibres,length,mass (g)\n"
        "A,95 % wool,120 m,50\n"
        "B,wool 50 nylon,120,50\n"
        "C,100 % wol,-3 m,\n"
        "D,wool,120 m,50\n"
        '"d",wool,120.0 m,50\n'
        ",wool,100 m,0\n"
    )
    known = "merino, longwool, wool, superwash wool, alpaca, mohair, cashmere, yak, camel, silk, cotton, "
    known += "mercerised cotton, linen, hemp, viscose, bamboo viscose, lyocell, nylon, acrylic, polyester, or other"
    assert sorted(faults(text)) == sorted(
        [
            'shop.csv:2: fibres: found "95 % wool"; wanted fibres that sum to 100 % (these sum to 95 %)',
            'shop.csv:3: length: found "120"; wanted a length with its unit, such as 115 m or 125 yd '
            "(or name the unit in the heading, such as length (m) or mass (g))",
            'shop.csv:3: fibres: found "wool 50 nylon"; wanted fibres with their percent, such as '
            "80 % merino, 20 % nylon",
            'shop.csv:4: length: found "-3 m"; wanted a yarn length with its unit, such as 430 m or 470 yd '
            "(it cannot be negative)",
            "shop.csv:4: mass (g): found nothing; wanted a mass with its unit, such as 50 g or 1 3/4 oz",
            f"shop.csv:4: fibres: found \"100 % wol\"; wanted a fibre: {known} (did you mean 'wool'?)",
            'shop.csv:6: name: found "d" of this length and mass a second time; wanted each put-up of a yarn once; '
            "the first is on line 5",
            'shop.csv:7: mass (g): found "0"; wanted a mass of a put-up from 0.01 g to 1,000 kg',
            "shop.csv:7: name: found nothing; wanted the name of a yarn",
        ]
    )


def test_another_put_up_of_a_yarn_is_no_repeat() -> None:
    assert len(read("name,fibres,metres,grams\nA,wool,120,50\nA,wool,240,100\n")) == 2


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("", "found nothing; wanted a row of headings, then yarns"),
        ("\n \n", "found nothing; wanted a row of headings, then yarns"),
        ("name,fibres,metres,grams\n", "found headings and no yarn; wanted a yarn a row"),
        ("name,colour\nA,red\n", "shop.csv:1: found the columns name, colour; wanted one for fibres"),
        ("name,fibres,metres,yards,grams\nA,wool,1,1,1\n", 'two columns for length: "metres" and "yards"; wanted one'),
        ("name;fibres;metres;grams\nA;wool;1,200;50\n", 'metres: found "1,200"; wanted a number that reads one way'),
        ("name;fibres;metres;grams\nA;wool;112,5;50\nB;wool;112.5;50\n", "decimal commas alone or decimal points"),
        ("name,fibres,metres,grams,price\nA,wool,112,50,9.90\n", "(which currency?)"),
        ("name,fibres,metres,grams,price\nA,wool,112,50,$9.90\n", "a sign such as $ is not enough"),
        ("name,fibres,metres,grams,price eur\nA,wool,112,50,9.905\n", "EUR has 2 decimals"),
        ('name,fibres,metres,grams\n"A,wool,112,50\n', "found cells that cannot be told apart"),
        ("name,fibres,metres,grams\nA,wool,many,50\n", 'shop.csv:2: metres: found "many"'),
        ("name,fibres,metres,grams\nA,wool,nan,50\n", 'shop.csv:2: metres: found "nan"'),
    ],
)
def test_a_file_that_cannot_be_read(text: str, says: str) -> None:
    assert any(says in fault for fault in faults(text))


def test_a_cell_over_two_lines_is_told_by_its_first() -> None:
    assert faults('name,fibres,metres,grams\n"A\nB",wool,120,50\nC,wax,120,50\n')[0].startswith("shop.csv:4: fibres")


def test_very_many_faults_are_counted() -> None:
    text = "name,fibres,metres,grams\n" + "".join(f"Y{n},wax,120,50\n" for n in range(500))
    with pytest.raises(CatalogueFaults) as caught:
        read(text)
    assert len(caught.value.faults) == 500
    assert str(caught.value).splitlines()[-1] == f"and {500 - MOST_SHOWN} more faults"


def test_from_the_disk(tmp_path: Path) -> None:
    path = tmp_path / "shop.csv"
    path.write_text(PLAIN, encoding="utf-8-sig")
    assert len(read_catalogue(path)) == 2
    path.write_bytes("name,fibres\nCafé".encode("latin-1"))
    with pytest.raises(BadInput, match="not UTF-8"):
        read_catalogue(path)
    with pytest.raises(BadInput, match=r"none\.csv: found \"no such file\""):
        read_catalogue(tmp_path / "none.csv")
    with pytest.raises(BadInput, match="no file"):
        read_catalogue(tmp_path)


@given(st.text(max_size=200))
def test_any_text_reads_or_is_a_fault(text: str) -> None:
    try:
        read(text)
    except CatalogueFaults as caught:
        assert caught.faults
        assert all(fault.line >= 1 for fault in caught.faults)
