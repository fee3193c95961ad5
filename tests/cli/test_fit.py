"""``loopwright fit``."""

import json
from pathlib import Path

from tests.cli.conftest import Run


def test_every_size_stands_with_its_ease(run: Run, winter: Path) -> None:
    done = run("fit", winter, "cardigan")
    assert (done.code, done.err) == (0, "")
    for size in ("XS", "S", "M", "L", "XL"):
        assert any(line.strip().lstrip("* ").startswith(f"{size} ") for line in done.out.splitlines())


def test_json_has_every_point(run: Run, winter: Path) -> None:
    (cardigan,) = json.loads(run("fit", winter, "cardigan", "--json").out)
    best = cardigan["sizes"][0]
    assert cardigan["size"] == best["size"]
    assert all(
        point["ease_cm"] == point["garment_cm"] - point["body_cm"]
        for size in cardigan["sizes"]
        for point in size["points"]
    )


def test_a_garment_that_is_not_there(run: Run, winter: Path) -> None:
    done = run("fit", winter, "cardgan")
    assert done.code == 2
    assert "cardgan" in done.err


def test_what_fits_nobody_ends_with_one(run: Run, winter: Path, tmp_path: Path) -> None:
    text = winter.read_text(encoding="utf-8").replace('swatch = "aran"', 'swatch = "aran"\nsize = "XS"')
    small = tmp_path / "small.toml"
    small.write_text(text, encoding="utf-8")
    assert run("fit", small, "cardigan").code == 1
