"""Sheets as tests ask for them: jobs of several kinds, pages, and PDFs taken apart by programs."""

import copy
import re
import shutil
import subprocess
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

from halfangle_service.registry import load_registry
from halfangle_service.sheets.made import PLAN, Choice, Page, page_for
from halfangle_service.topics.jobs.plan.shop.profiles import read_profiles
from support import need_program

ROOT = Path(__file__).parent.parent
Json = dict[str, Any]

_CONE_TOLERANCE = {"included_angle_tolerance_arcsec": 40}
#: Features whose sheets were looked at, by the names of their jobs.
FEATURES: dict[str, Json] = {
    "HL-0030 bar of 0°30′": {
        "kind": "angled-face", "face_angle": "0°30'", "tolerance_arcsec": 10, "rise": 0.03,
    },
    "HL-0072 work of 72°": {
        "kind": "angled-face", "face_angle": 72, "tolerance_arcsec": 30, "rise": 0.9,
    },
    "HL-0303 Morse 3 plug": {"kind": "taper-plug", "designation": "morse-3", **_CONE_TOLERANCE},
    "HL-0304 Morse 3 socket": {"kind": "taper-socket", "designation": "morse-3", **_CONE_TOLERANCE},
    "HL-0210 compound face": {
        "kind": "compound-face", "rise": 0.3, "tolerance_arcsec": 60,
        "orientation": {"kind": "projected-angles", "x_angle": 12, "y_angle": 8},
    },
    "HL-0211 its other hand": {
        "kind": "compound-face", "rise": 0.3, "tolerance_arcsec": 60, "hand": "opposite",
        "orientation": {"kind": "projected-angles", "x_angle": 12, "y_angle": 8},
    },
    "HL-0510 face of 22°30′ ±10″": {
        "kind": "angled-face", "face_angle": 22.5, "tolerance_arcsec": 10, "rise": 0.5,
    },
    "HL-0002 cone of 2°": {
        "kind": "cone", "included_angle": 2, "large_diameter": 0.75, "small_diameter": 0.68,
        "included_angle_tolerance_arcsec": 60,
    },
}  # fmt: skip


@cache
def plan_operation() -> Any:
    """The plan, with the shop that the example of profiles holds."""
    profiles = read_profiles(ROOT / "docker/profiles/harrow_lane.toml")
    return load_registry().operations[PLAN].in_shop(profiles)


def center_job(**changes: Any) -> Json:
    """The example of a plan: a 60° center."""
    return {**copy.deepcopy(dict(plan_operation().example)), **changes}


def shop_job(job: str, feature: Json, **changes: Any) -> Json:
    """A feature made by the shop of the profile."""
    sent = center_job(job=job, feature=feature, shop_profile="Harrow Lane", pieces=3, **changes)
    del sent["equipment"]
    return sent


def plan_page(sent: Json, **choice: Any) -> Page:
    """The page of a plan."""
    operation = plan_operation()
    return page_for(operation, operation.request.model_validate(sent), Choice(**choice))


def visible_text(html: str) -> str:
    """Text of a page without its marks, blanks as one, its drawing left out."""
    body = html[html.index("<body") :]
    without = re.sub(r"<(svg|details)\b.*?</\1>", " ", body, flags=re.S)
    return " ".join(re.sub(r"<wbr>|<[^>]+>", " ", without).split())


@dataclass(frozen=True)
class Word:
    """A word of a PDF, and its box in points from the upper left."""

    text: str
    box: tuple[float, float, float, float]


def program(name: str) -> str:
    """A program of poppler or zbar; the test is skipped where it is absent."""
    found = shutil.which(name)
    need_program(found, f"{name} is not installed")
    return str(found)


def need_pdf() -> None:
    """Skip the test where no PDF can be drawn, or the fonts are not those of the tests."""
    try:
        import weasyprint  # noqa: PLC0415
    except OSError:
        weasyprint = None
    need_program(weasyprint, "the library Pango is not installed")
    fonts = subprocess.run([program("fc-list")], capture_output=True, text=True, check=True).stdout
    need_program("LiberationSans-Bold" in fonts, "fonts-liberation is not installed")
    need_program("DejaVuSans.ttf" in fonts, "fonts-dejavu-core is not installed")


def run(*command: str) -> str:
    """Run a program; give what it prints."""
    done = subprocess.run(command, capture_output=True, text=True, check=True)
    return done.stdout


def words_of(pdf: Path) -> Iterator[Word]:
    """Words of a PDF of one page."""
    listed = run(program("pdftotext"), "-bbox", str(pdf), "-")
    pattern = r'<word xMin="([\d.]+)" yMin="([\d.]+)" xMax="([\d.]+)" yMax="([\d.]+)">(.*?)</word>'
    for left, top, right, bottom, text in re.findall(pattern, listed):
        yield Word(text, (float(left), float(top), float(right), float(bottom)))


def pages_in(pdf: Path) -> int:
    """Pages of a PDF."""
    found = re.search(r"Pages:\s+(\d+)", run(program("pdfinfo"), str(pdf)))
    assert found is not None
    return int(found[1])
