"""Pictures that somebody sends: what is read, what is refused, what is left behind."""

import io
from pathlib import Path

import numpy as np
import pytest
from PIL import Image, ImageCms

from loopwright.colour.pixels import MOST_PIXELS, read_picture, write_jpeg
from loopwright.files.picture_file import read_picture_file
from loopwright.units import BadInput
from tests.files.pictures import SVG, bomb_png, gradient, png, stored


@pytest.mark.parametrize(
    ("kind", "options", "off"),
    [
        ("PNG", {}, 0),
        ("WEBP", {"lossless": True}, 0),
        ("JPEG", {"quality": 95, "subsampling": 0}, 6),
    ],
)
def test_a_picture_is_read_as_it_is(kind: str, options: dict[str, object], off: int) -> None:
    pixels = read_picture(stored(gradient(), kind, **options))
    assert pixels.shape == (60, 90, 3)
    assert pixels.dtype == np.dtype(np.uint8)
    assert np.abs(pixels.astype(int) - np.asarray(gradient()).astype(int)).max() <= off


@pytest.mark.parametrize(
    ("orientation", "turned"),
    [(1, None), (3, Image.Transpose.ROTATE_180), (6, Image.Transpose.ROTATE_270), (8, Image.Transpose.ROTATE_90)],
)
def test_it_stands_upright(orientation: int, turned: Image.Transpose | None) -> None:
    """Orientation 6 is to be turned a quarter clockwise, 8 a quarter back: Exif 2.3, tag 0x0112."""
    exif = Image.Exif()
    exif[0x0112] = orientation
    expected = gradient() if turned is None else gradient().transpose(turned)
    pixels = read_picture(stored(gradient(), "PNG", exif=exif))
    assert (pixels == np.asarray(expected)).all()


def test_what_is_clear_lies_on_white_or_on_a_ground() -> None:
    clear = Image.new("RGBA", (8, 8), (200, 10, 10, 0))
    assert (read_picture(stored(clear, "PNG")) == 255).all()
    assert (read_picture(stored(clear, "PNG"), ground=(10, 20, 30)) == (10, 20, 30)).all()


@pytest.mark.parametrize("mode", ["L", "LA", "P", "1", "I;16", "CMYK"])
def test_other_ways_to_store_colour_become_three_bytes(mode: str) -> None:
    grey = Image.fromarray(np.full((9, 9), 0x8080, dtype=np.uint16)) if mode == "I;16" else None
    plain = Image.new("RGB", (9, 9), (128, 128, 128))
    picture = grey or (plain.quantize(4) if mode == "P" else plain.convert(mode))
    pixels = read_picture(stored(picture, "JPEG" if mode == "CMYK" else "PNG"))
    assert pixels.shape == (9, 9, 3)
    assert mode == "1" or abs(int(pixels[4, 4, 0]) - 128) <= 2


def test_a_profile_is_applied_and_a_broken_one_left_aside() -> None:
    profile = ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes()
    for said in (profile, b"not a profile"):
        pixels = read_picture(stored(gradient(), "PNG", icc_profile=said))
        assert np.abs(pixels.astype(int) - np.asarray(gradient())).max() <= 2


def test_of_a_moving_picture_the_first_is_taken() -> None:
    frames = [Image.new("RGB", (20, 20), colour) for colour in ("red", "blue")]
    pixels = read_picture(stored(frames[0], "WEBP", save_all=True, append_images=frames[1:], lossless=True))
    assert pixels[0, 0].tolist() == [255, 0, 0]


def test_nothing_but_pixels_is_handed_on() -> None:
    exif = Image.Exif()
    exif[0x010F] = "Camera of Ina"
    exif.get_ifd(0x8825)[1] = "S"
    content = stored(gradient(), "JPEG", exif=exif, comment=b"at home")
    assert b"Camera of Ina" in content
    anew = write_jpeg(read_picture(content), 50)
    with Image.open(io.BytesIO(anew)) as picture:
        assert (picture.size, dict(picture.getexif()), picture.info.get("comment")) == ((50, 33), {}, None)
    assert b"Exif" not in anew
    assert b"at home" not in anew


def half(content: bytes) -> bytes:
    return content[: len(content) // 2]


HOSTILE = {
    "nothing": b"",
    "text": b"name = 'Winter'",
    "svg": SVG,
    "gif": stored(gradient(), "GIF"),
    "tiff": stored(gradient(), "TIFF"),
    "half a png": half(stored(gradient(), "PNG")),
    "half a jpeg": half(stored(gradient(), "JPEG")),
    "half a webp": half(stored(gradient(), "WEBP")),
    "only the head of a png": stored(gradient(), "PNG")[:8],
    "a png of rubbish": png(40, 40, b"rubbish"),
    "a png without rows": bomb_png(4000, 4000),
    "no side": png(0, 9, b""),
    "html behind a jpeg's first bytes": b"\xff\xd8\xff\xe0<script>",
}


@pytest.mark.parametrize("name", HOSTILE)
def test_what_is_no_picture_is_refused(name: str) -> None:
    with pytest.raises(BadInput, match="wanted a photo as JPEG, PNG or WebP"):
        read_picture(HOSTILE[name])


@pytest.mark.parametrize("side", [8_000, 13_000, 60_000, 2_000_000_000])
def test_a_picture_of_too_many_pixels_is_never_unpacked(side: int) -> None:
    content = bomb_png(side, side)
    assert len(content) < 1000
    assert side * side > MOST_PIXELS
    with pytest.raises(BadInput, match="pixels"):
        read_picture(content)


def test_a_file_of_too_many_bytes_is_not_opened() -> None:
    with pytest.raises(BadInput, match=r"found \"a file of 0.0 MB\"; wanted .* at most 0.0001 MB"):
        read_picture(stored(gradient(), "PNG"), most_bytes=100)


def test_a_file_on_disk_is_read_and_a_fault_names_it(tmp_path: Path) -> None:
    good, bad = tmp_path / "skein.png", tmp_path / "skein.svg"
    good.write_bytes(stored(gradient(), "PNG"))
    bad.write_bytes(SVG)
    assert read_picture_file(good).shape == (60, 90, 3)
    for path in (bad, tmp_path / "none.jpg", tmp_path):
        with pytest.raises(BadInput, match=path.name):
            read_picture_file(path)


@pytest.mark.parametrize("at", range(20, 400, 23))
def test_a_byte_that_is_wrong_ends_in_a_picture_or_in_words(at: int) -> None:
    content = bytearray(stored(gradient(30, 20), "JPEG" if at % 2 else "PNG"))
    content[at % len(content)] ^= 0xFF
    try:
        assert read_picture(bytes(content)).shape[2] == 3
    except BadInput as error:
        assert "wanted" in str(error)
