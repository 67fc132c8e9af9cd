"""Which column is which field: by headers, by a map, and what is refused."""

from pathlib import Path
from typing import Any

import pytest

from fill_support import cells_of
from halfangle_client import Halfangle
from halfangle_client.fill import FillMap, MapRefused, fill, read_map, written_map

PLAIN = FillMap("sine.setting", delimiter=";", decimal=".", results={"height": "height"})


def columns(shop: Halfangle, folder: Path, header: str, row: str, **said: Any) -> list[str]:
    """The fields of the first row of such a file once it is filled."""
    (folder / "in.csv").write_text(f"{header}\n{row}\n", "utf-8")
    fill(shop, folder / "in.csv", folder / "out.csv", PLAIN.with_more(**said), overwrite=True)
    return (folder / "out.csv").read_text("utf-8").splitlines()[1].split(";")


@pytest.mark.parametrize(
    ("header", "row"),
    [
        ("units;center_distance;angle", "in;5;30"),
        ("Units; CENTER  distance ;Angle", "in;5;30"),
        ("Center-distance [in];Angle [deg]", "5;30"),
        ("Center distance (inch);Angle [°]", "5;30"),
    ],
)
def test_headers_are_names_or_titles(
    shop: Halfangle, tmp_path: Path, header: str, row: str
) -> None:
    """Case, spaces and hyphens are forgiven; lengths whose header says so are in that unit."""
    assert columns(shop, tmp_path, header, row)[-3] == "2.5"


@pytest.mark.parametrize(
    ("header", "said", "why"),
    [
        ("center_distance;angle", {}, r"no column for units of sine\.setting"),
        ("units;center_distance;angel", {}, r"column C 'angel': did you mean angle\?"),
        ("units;center_distance;angle;Angle", {}, "column C 'angle' and column D 'Angle' are both"),
        ("center_distance [in];angle [rad]", {}, r"column B 'angle \[rad\]': the field angle is"),
        ("center_distance [in];base_step [mm];angle", {}, "all lengths of a request are in one"),
        ("center_distance [mm];angle", {"fixed": {"units": "in"}}, "center_distance is in 'in'"),
        ("units;center_distance;angle", {"fixed": {"units": "in"}}, "units is both a column and"),
        ("units;center_distance;x", {"columns": {"angle": "y"}}, "no column has the header 'y'"),
        ("units;center_distance;x", {"columns": {"angel": "x"}}, "no field 'angel'; did you mean"),
        ("units;center_distance;x", {"columns": {"angle": ["A", "B"]}}, "angle takes one value"),
        ("units;center_distance;angle", {"results": {"h": "hieght"}}, "did you mean height"),
        ("units;center_distance;angle", {"results": {"h": "height.x"}}, "it is a single value"),
        ("units;center_distance;angle", {"results": {"h": "complement_setting"}}, "several values"),
        ("units;center_distance;angle", {"results": {"angle": "angle.degrees"}}, "another header"),
        ("units;center_distance;angle", {"rows": "9-2"}, "not past the last"),
        ("units;center_distance;angle", {"rows": "x"}, "say '2-51'"),
        ("units;center_distance;angle", {"operation": "sine.list-bar-tolerances"}, "looked up"),
        ("units;center_distance;angle", {"header_row": 7}, "row 7 is blank"),
    ],
)
def test_what_is_not_settled_is_refused(
    shop: Halfangle, tmp_path: Path, header: str, said: dict[str, Any], why: str
) -> None:
    """What is unknown, twice there or of another unit is refused, both sides named."""
    row = ";".join(["in", "5", "30", "1"][: len(header.split(";"))])
    with pytest.raises(MapRefused, match=why):
        columns(shop, tmp_path, header, row, **said)


def test_a_map_names_columns_by_header_or_letters(shop: Halfangle, tmp_path: Path) -> None:
    """`Winkel` and B name columns; a column that is ignored is no field whatever its header."""
    said = {
        "columns": {"angle": "Winkel", "center_distance": "B"},
        "fixed": {"units": "in"},
        "ignored": ["units"],
    }
    found = columns(shop, tmp_path, "units;Abstand;Winkel", "mm;5;30", **said)
    assert found == ["mm", "5", "30", "2.5", "", ""]


def test_lists(shop: Halfangle, tmp_path: Path) -> None:
    """A list comes from several columns, blank ones left out, or from one cell."""
    (tmp_path / "in.csv").write_text("a|b|c|d|e\n0.5|1||2|0.5;1;2\n")
    _as_workbook(tmp_path / "in.csv", tmp_path / "in.xlsx")
    expected = shop.blocks.stack(units="in", height=3.5, sizes=[0.5, 1, 2]).result
    for columns_said in (["A", "B", "C", "D"], "E"):
        said = FillMap(
            "blocks.stack",
            columns={"sizes": columns_said},
            fixed={"units": "in", "height": 3.5},
            results={"blocks": "blocks", "last": "blocks.2"},
            decimal=".",
        )
        fill(shop, tmp_path / "in.xlsx", tmp_path / "out.xlsx", said, overwrite=True)
        row = cells_of(tmp_path / "out.xlsx")[1]
        assert row[5] == " + ".join(map(str, expected.blocks))
        assert row[6] == expected.blocks[2]


def _as_workbook(source: Path, target: Path) -> None:
    import xlsxwriter  # noqa: PLC0415

    book = xlsxwriter.Workbook(str(target))
    sheet = book.add_worksheet()
    for row, line in enumerate(source.read_text().splitlines()):
        sheet.write_row(row, 0, line.split("|"))
    book.close()


def test_blocks_are_joined_as_a_sum(shop: Halfangle, tmp_path: Path) -> None:
    """The usual results of a stack hold its blocks, joined as they add up."""
    (tmp_path / "in.csv").write_text("height [in]\n1.15\n")
    said = FillMap("blocks.stack", fixed={"set": "inch-81"}, delimiter=";", decimal=".")
    fill(shop, tmp_path / "in.csv", tmp_path / "out.csv", said)
    head, row = (tmp_path / "out.csv").read_text("utf-8").splitlines()
    blocks = dict(zip(head.split(";"), row.split(";"), strict=True))["blocks [in]"]
    assert sum(map(float, blocks.split(" + "))) == pytest.approx(1.15)


def test_a_map_is_kept_as_toml_and_read_back(tmp_path: Path) -> None:
    """What a map says is the same once it was written and read, hostile names too."""
    said = FillMap(
        "sine.setting",
        sheet='a "b" \\ \x7f ü',
        header_row=3,
        rows="4-9",
        columns={"angle": "B", "shank.kind": ["C", "D"]},
        fixed={"units": "in", "shank": {"kind": "straight", "x y": [1, True]}},
        results={"Höhe [in]": "height"},
        ignored=["E"],
        decimal=",",
        delimiter="\t",
    )
    (tmp_path / "a.toml").write_text(written_map(said), "utf-8")
    assert read_map(tmp_path / "a.toml") == said


@pytest.mark.parametrize(
    ("text", "why"),
    [
        ("operation = 1", "operation should be text, not 1"),
        ("colums.angle = 'B'", "knows no 'colums'; did you mean columns"),
        ("columns.angle = 3", "'angle' should be text, not 3"),
        ("header_row = true", "header_row should be a whole number"),
        ("results = []", "results should be a table of headers"),
        ("a = [", "is no TOML"),
        ("\udcff", "is no TOML"),
    ],
)
def test_maps_that_are_none(tmp_path: Path, text: str, why: str) -> None:
    """A map that says what it cannot is refused by name."""
    (tmp_path / "a.toml").write_bytes(text.encode("utf-8", "surrogateescape"))
    with pytest.raises(MapRefused, match=why):
        read_map(tmp_path / "a.toml")
    with pytest.raises(MapRefused, match="No such file"):
        read_map(tmp_path / "none.toml")
