"""Delimited text is filled, and every field that is not filled stays as it was written."""

from pathlib import Path

import pytest

from halfangle_client import Halfangle
from halfangle_client.fill import FileRefused, FillMap, fill

SETTING = FillMap(
    "sine.setting",
    fixed={"units": "in"},
    results={"height": "height"},
    delimiter=",",
    decimal=".",
)


def filled(shop: Halfangle, folder: Path, content: bytes, said: FillMap = SETTING) -> bytes:
    """The bytes that such a file is filled to."""
    (folder / "in.csv").write_bytes(content)
    fill(shop, folder / "in.csv", folder / "out.csv", said, overwrite=True)
    return (folder / "out.csv").read_bytes()


def test_fields_stay_as_they_were_written(shop: Halfangle, tmp_path: Path) -> None:
    """Quotes, blanks, ends of lines, a mark of order and a line within a field stay."""
    content = (
        b'\xef\xbb\xbfjob,center_distance,angle\r\n"a ""1""\r\nb",5,"30"\r\n\r\n x ,5.0,95\r\n'
        b"y,5,8\xc2\xb018'"
    )
    out = filled(shop, tmp_path, content).decode("utf-8-sig")
    height = shop.sine.setting(units="in", center_distance=5, angle="8°18'").result.height
    flat = shop.sine.setting(units="in", center_distance=5, angle=30).result.height
    assert out == (
        "job,center_distance,angle,height [in],advisories,problem\r\n"
        f'"a ""1""\r\nb",5,"30",{flat},,\r\n\r\n'
        " x ,5.0,95,,,/angle: should be less than 90°; got 95.\r\n"
        f"y,5,8°18',{height},,"
    )


def test_a_decimal_comma(shop: Halfangle, tmp_path: Path) -> None:
    """With a comma declared numbers are read with it and written with it."""
    said = SETTING.with_more(delimiter=";", decimal=",")
    out = filled(shop, tmp_path, b"center_distance;angle;n\n5,0;22,5;1\n5;1.5;2\n", said).decode()
    lines = out.splitlines()
    assert lines[1].startswith("5,0;22,5;1;1,91341716182")
    problem = "B3 holds '1.5'; the decimal sign declared is a comma."
    assert lines[2] == f'5;1.5;2;;;"{problem}"'


def test_a_column_that_is_there(shop: Halfangle, tmp_path: Path) -> None:
    """A result column that stands there is filled in its place, of short rows too."""
    out = filled(shop, tmp_path, b"height,angle,center_distance,note\n,30,5\n1,40,5,n\n").decode()
    first = shop.sine.setting(units="in", center_distance=5, angle=30).result.height
    assert out.splitlines()[0] == "height,angle,center_distance,note,advisories,problem"
    assert out.splitlines()[1] == f"{first},30,5,,,"
    assert out.splitlines()[2].startswith("3.2139")


@pytest.mark.parametrize(
    ("content", "said", "why"),
    [
        (b"angle\n1\n", {"delimiter": "|"}, "declare its delimiter"),
        (b"angle\n1\n", {"decimal": ","}, "cannot be both"),
        (b"center_distance,angle\n5,1\n5,\xff\n", {}, r"in\.csv, line 3: no UTF-8"),
        (b'center_distance,angle\n5,"1\n5,2\n', {}, "line 2: a quotation mark is not closed"),
        (b'center_distance,angle\n5,"1"x\n', {}, "line 2: text follows a closing"),
        (b"center_distance,angle\n5,1,2\n", {}, "line 2: 3 fields, where the first row has 2"),
        (b"", {}, "it is empty"),
        (b"center_distance,angle\n", {}, "no row below row 1"),
    ],
)
def test_what_is_refused(
    shop: Halfangle, tmp_path: Path, content: bytes, said: dict[str, str], why: str
) -> None:
    """What is not declared, not UTF-8, not closed or too long is refused with its line."""
    with pytest.raises(FileRefused, match=why):
        filled(shop, tmp_path, content, SETTING.with_more(**said))
    assert not (tmp_path / "out.csv").exists()
