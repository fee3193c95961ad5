"""Photos of lots: bounded, written anew, safe to serve."""

import io

import numpy as np
import pytest
from django.core.files.uploadedfile import SimpleUploadedFile
from django.test import Client
from PIL import Image

from loopwright.store import changes
from loopwright.units import BadInput
from loopwright.web.cupboard.photo import LONGEST_SIDE, SMALL_SIDE, read_photo
from tests.web.asking import body, words

KEY = "winter-at-wethers-reach"


def written(picture: Image.Image, kind: str = "JPEG", **more: object) -> bytes:
    out = io.BytesIO()
    picture.save(out, kind, **more)
    return out.getvalue()


def half_and_half() -> Image.Image:
    """Red above, blue below, twice as wide as high."""
    picture = Image.new("RGB", (400, 200), "red")
    picture.paste((0, 0, 255), (0, 100, 400, 200))
    return picture


def read_back(content: bytes) -> Image.Image:
    return Image.open(io.BytesIO(content))


@pytest.mark.parametrize("kind", ["JPEG", "PNG", "WEBP"])
def test_a_photo_is_written_anew_as_jpeg(kind: str) -> None:
    photo = read_photo(written(Image.new("RGB", (3000, 1500), "teal"), kind))
    picture, small = read_back(photo.picture), read_back(photo.small)
    assert (picture.format, picture.size) == ("JPEG", (LONGEST_SIDE, LONGEST_SIDE // 2))
    assert (photo.width, photo.height) == picture.size
    assert (small.format, small.size) == ("JPEG", (SMALL_SIDE, SMALL_SIDE))


def test_place_time_and_camera_do_not_survive_and_the_photo_stands_upright() -> None:
    exif = Image.Exif()
    exif[0x0112] = 6  # Orientation: turned by a quarter. Source: Exif 2.32, CIPA DC-008, table 4
    exif[0x010F] = "A camera"
    exif.get_ifd(0x8825)[1] = "S"  # latitude, south
    source = written(half_and_half(), exif=exif, comment=b"a remark")
    assert b"A camera" in source
    photo = read_photo(source)
    picture = read_back(photo.picture)
    assert picture.size == (200, 400)
    left, right = picture.getpixel((20, 200)), picture.getpixel((180, 200))
    assert isinstance(left, tuple)
    assert isinstance(right, tuple)
    assert left[2] > 200  # blue lay below, so a quarter turn clockwise puts it left
    assert left[0] < 50
    assert right[0] > 200
    assert right[2] < 50
    for content in (photo.picture, photo.small):
        assert not read_back(content).getexif()
        assert "comment" not in read_back(content).info
        assert b"A camera" not in content


def test_what_is_clear_lies_on_paper() -> None:
    picture = read_back(read_photo(written(Image.new("RGBA", (40, 40), (0, 0, 0, 0)), "PNG")).picture)
    pixel = picture.getpixel((20, 20))
    assert isinstance(pixel, tuple)
    assert min(pixel) > 245


def test_grey_of_sixteen_bits_keeps_its_grey() -> None:
    """Half of 65535 is half of 255 (ISO/IEC 15948, scaling of sample depth)."""
    grey = Image.fromarray(np.full((40, 40), 0x8080, dtype=np.uint16))
    pixel = read_back(read_photo(written(grey, "PNG")).picture).getpixel((20, 20))
    assert isinstance(pixel, tuple)
    assert all(abs(value - 128) <= 2 for value in pixel)


@pytest.mark.parametrize(
    "content",
    [
        b"",
        b"no picture",
        b"<svg xmlns='http://www.w3.org/2000/svg'/>",
        written(half_and_half(), "GIF"),
        b"\xff\xd8\xff",
    ],
)
def test_what_is_no_photo_is_refused(content: bytes) -> None:
    with pytest.raises(BadInput, match="a photo as JPEG, PNG or WebP"):
        read_photo(content)


def test_half_a_photo_is_refused() -> None:
    content = written(Image.effect_noise((600, 600), 80).convert("RGB"))
    with pytest.raises(BadInput, match="a photo as JPEG, PNG or WebP"):
        read_photo(content[: len(content) // 2])


def test_a_picture_of_too_many_points_is_not_unpacked() -> None:
    content = written(Image.new("1", (10_000, 6_000)), "PNG")
    assert len(content) < 20_000
    with pytest.raises(BadInput, match="at most 50 million pixels"):
        read_photo(content)
    with pytest.raises(BadInput, match=r"of at most 5 MB"):
        read_photo(b"\0" * 5_000_001)


def put(browser: Client, page: str, content: bytes) -> str:
    address = f"{page}cupboard/lot/ropewalk-damson/"
    upload = SimpleUploadedFile("photo.html", content, content_type="text/html")
    response = browser.post(f"{address}photo/", {"photo": upload})
    assert (response.status_code, response["Location"]) == (302, address)
    return changes.photos_of(KEY)["ropewalk-damson"]


def test_it_is_shown_and_served_as_nothing_but_a_picture(browser: Client, page: str) -> None:
    digest = put(browser, page, written(half_and_half()))
    address = f"{page}cupboard/photo/{digest}/large.jpg"
    assert address in body(browser.get(f"{page}cupboard/lot/ropewalk-damson/"))
    assert address.replace("large", "small") in body(browser.get(f"{page}cupboard/"))
    response = browser.get(address)
    assert response["Content-Type"] == "image/jpeg"
    assert response["X-Content-Type-Options"] == "nosniff"
    assert response["Content-Security-Policy"] == "default-src 'none'"
    assert "immutable" in response["Cache-Control"]
    assert response.content.startswith(b"\xff\xd8\xff")


def test_a_photo_is_taken_away_and_undone(browser: Client, page: str) -> None:
    digest = put(browser, page, written(half_and_half()))
    browser.post(f"{page}cupboard/lot/ropewalk-damson/photo/away/")
    assert browser.get(f"{page}cupboard/photo/{digest}/large.jpg").status_code == 404
    browser.post(f"{page}undo/")
    assert browser.get(f"{page}cupboard/photo/{digest}/large.jpg").status_code == 200
    assert browser.get(f"{page}cupboard/photo/{digest}/huge.jpg").status_code == 404
    browser.post(f"{page}undo/")
    assert changes.photos_of(KEY) == {}


def test_a_fault_is_told_on_the_page(browser: Client, page: str) -> None:
    address = f"{page}cupboard/lot/ropewalk-damson/photo/"
    upload = SimpleUploadedFile("photo.jpg", b"no photo", content_type="image/jpeg")
    response = browser.post(address, {"photo": upload})
    assert response.status_code == 422
    assert "wanted a photo as JPEG, PNG or WebP (some phones save HEIC: choose JPEG)" in words(response)
    assert "Photo: found nothing" in words(browser.post(address))
