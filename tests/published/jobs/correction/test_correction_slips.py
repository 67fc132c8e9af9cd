"""Mistakes in setting simulated: made here by geometry, asked of, mended as said, made again."""

import math
from itertools import product
from typing import Any

import numpy as np
import pytest
from numpy.typing import NDArray

from correction_support import chance, example
from support import Call

SOURCE = "Brute force: a mistake made by geometry, asked of, the setting made anew as said"
#: The 81-piece inch set, by its series.
BOX = [
    *(0.1 + step / 10_000 for step in range(1, 10)),
    *(0.1 + step / 1000 for step in range(1, 50)),
    *(0.05 * step for step in range(1, 20)),
    *(float(inches) for inches in range(1, 5)),
]
Json = dict[str, Any]


def asked(call: Call, half_angle: float, measured: float, **set_up: Any) -> Json:
    """What a cone of a half angle, measured so, is answered with, in degrees."""
    found: Json = call(
        "jobs.correction",
        units="in",
        set="inch-81",
        work={"kind": "cone", "half_angle": half_angle, "included_angle_tolerance_arcsec": 60},
        measured={
            "kind": "angle",
            "measured_half_angle": measured,
            "measurement_error_limit_arcsec": 5,
        },
        set_up={"kind": "sine-plate", "center_distance": 5, **set_up},
    )
    return found


def on_plate(high: list[float], low: list[float] | None = None, rest: float = 0.0) -> float:
    """Half angle in degrees that blocks give on a 5 in plate."""
    return math.degrees(math.asin((sum(high) - sum(low or []) - rest) / 5))


# Blocks -------------------------------------------------------------------------------------
@pytest.mark.outside("jobs.correction", source=SOURCE)
@pytest.mark.parametrize("seed", range(6))
def test_a_wrong_block_is_among_those_named_and_the_stack_as_meant_lands(
    call: Call, seed: int
) -> None:
    """A block swapped, left out, added or exchanged: it is named, and what it makes is right."""
    dice = chance(seed)
    sizes = [0.1001, 0.1007, 0.119, 0.135, 0.15, 0.45, 0.75, 2.0]
    high, low = [2.0, 0.45, 0.119], [0.15, 0.1007]
    spare = [size for size in sizes if size not in (*high, *low)]
    was, under, name = list(high), list(low), ""
    meant: float | None = float(dice.choice(high))
    wrung: float | None = float(dice.choice(spare))
    kinds = ("wrong-block", "block-left-out", "block-too-many", "blocks-exchanged")
    name = kinds[seed % len(kinds)]
    if name == "block-left-out":
        wrung = None
    elif name == "block-too-many":
        meant, wrung = None, 0.1001
    elif name == "blocks-exchanged":
        wrung = float(dice.choice(low))
        under.remove(wrung)
        under.append(meant or 0.0)
    if meant is not None:
        was.remove(meant)
    if wrung is not None:
        was.append(wrung)
    wanted, made = on_plate(high, low), on_plate(was, under)
    read = made + float(dice.uniform(-4, 4)) / 3600
    result = asked(call, wanted, read, blocks=high, low_blocks=low)["result"]
    told = {(row["slip"], row["meant"], row["wrung"]): row for row in result["slips"]}
    assert (name, meant, wrung) in told
    row = told[name, meant, wrung]
    assert row["slip_errors_arcsec"] == [pytest.approx((made - wanted) * 3600, abs=1e-6)]
    assert row["unexplained_arcsec"] == [pytest.approx((read - made) * 3600, abs=1e-6)]
    assert row["cause"] == "wrong-block"
    assert (row["setting"], row["roll"]) == ("plate", "high-roll")
    for size in (meant, wrung):
        assert size is None or f"{size:.4f}".rstrip("0") in row["words"]
    # Mended as said: the stacks as named make the height said, and that the angle wanted.
    assert row["right_heights"] == [pytest.approx(sum(high) - sum(low))]
    assert math.degrees(math.asin(row["right_heights"][0] / 5)) == pytest.approx(wanted)
    assert result["settings"] != []


@pytest.mark.outside("jobs.correction", source="Every swap, omission and addition tried by hand")
def test_just_those_mistakes_are_named_that_explain_it(call: Call) -> None:
    """All blocks of the set tried one by one: what comes within the uncertainty is all there is."""
    box = [round(size, 4) for size in BOX]
    assert len(box) == 81
    high, spare = [2.0, 0.5], [size for size in box if size not in (2.0, 0.5)]
    wanted = 30.0
    read = 30.0 + 20 / 3600
    stacks = [[other, kept] for kept in high for other in spare]
    stacks += [[2.0], [0.5], *([*high, other] for other in spare)]
    tried = [on_plate(stack) for stack in stacks if sum(stack) < 5]
    # Of ±5″, rectangular, 95 % lie within 4.75″.
    within = [made for made in tried if abs(made - read) * 3600 <= 4.75]
    result = asked(call, wanted, read, blocks=high)["result"]
    assert result["slips_found"] == len(within)
    assert len(result["slips"]) == min(8, len(within))
    order = [row["likeness"] for row in result["slips"] if row["slip"] == "wrong-block"]
    likeness = ["same-size", "same-digits", "neighbours-in-the-box", "digits-swapped", "one-digit"]
    assert order == sorted(order, key=[*likeness, "none"].index)


def test_nothing_is_named_without_an_uncertainty_or_an_error(call: Call) -> None:
    """Not stated how well it was measured: null. Within its uncertainty: nothing to explain."""
    unknown = example(measured={"kind": "angle", "measured_error_arcsec": 60})
    result = call("jobs.correction", **unknown)["result"]
    assert (result["slips"], result["slips_found"]) == (None, None)
    small = asked(call, 30.0, 30.0 + 3 / 3600, blocks=[2.0, 0.5])["result"]
    assert (small["slips"], small["slips_found"]) == ([], 0)


# The whole setting --------------------------------------------------------------------------
#: What a plate of 5 in with a rest 0.1 in high stands at by each mistake, in degrees.
WHOLE: dict[str, Any] = {
    "included-for-half": (lambda a: 2 * a, "half-for-included"),
    "half-of-half": (lambda a: a / 2, "half-for-included"),
    "complement-set": (lambda a: 90 - a, "complement-set"),
    "tangent-for-sine": (
        lambda a: math.degrees(math.asin(math.tan(math.radians(a)))),
        "tangent-for-sine",
    ),
    "base-step-left-out": (
        lambda a: math.degrees(math.asin((5 * math.sin(math.radians(a)) - 0.1) / 5)),
        "base-step-left-out",
    ),
}


@pytest.mark.outside("jobs.correction", source=SOURCE)
@pytest.mark.parametrize(("name", "half"), [*product(WHOLE, [16.594, 30.5])])
def test_a_mistake_in_the_whole_setting_is_named_and_the_height_said_lands(
    call: Call, name: str, half: float
) -> None:
    """The cause comes first, nothing is corrected by blocks, and its height sets what is wanted."""
    made, cause = WHOLE[name][0](half), WHOLE[name][1]
    answer = asked(call, half, made + 3 / 3600, base_step=0.1)
    result = answer["result"]
    first = result["slips"][0]
    assert (first["slip"], first["cause"]) == (name, cause)
    assert first["slip_errors_arcsec"] == [pytest.approx((made - half) * 3600, abs=1e-6)]
    assert first["unexplained_arcsec"] == [pytest.approx(3, abs=1e-6)]
    assert first["setting"] is first["roll"] is first["meant"] is first["likeness"] is None
    top = result["causes"][0]
    assert (top["cause"], top["evidence"], top["observation"]) == (cause, "for", "measured")
    others = {WHOLE[each][1] for each in WHOLE} - {cause}
    against = {row["cause"] for row in result["causes"] if row["evidence"] == "against"}
    assert others <= against
    assert result["settings"] == []
    assert "mend-the-cause-first" in [advisory["code"] for advisory in answer["advisories"]]
    (right,) = first["right_heights"]
    assert on_plate([right], rest=0.1) == pytest.approx(half, abs=1e-9)


@pytest.mark.parametrize("kind", ["sine-dresser", "scale-dresser", "swivel"])
def test_a_dresser_or_scale_set_to_the_included_angle_is_told(call: Call, kind: str) -> None:
    """Whatever is set, an included angle in place of its half is named; a scale has no height."""
    own = {"center_distance": 3} if kind == "sine-dresser" else {}
    request = {
        "units": "in",
        "work": {"kind": "cone", "half_angle": 20},
        "measured": {
            "kind": "angle",
            "measured_half_angle": 40,
            "measurement_error_limit_arcsec": 20,
        },
        "set_up": {"kind": kind, **own},
    }
    first = call("jobs.correction", **request)["result"]["slips"][0]
    assert first["slip"] == "included-for-half"
    heights = [pytest.approx(3 * math.sin(math.radians(20)))] if own else []
    assert first["right_heights"] == heights


# A compound face ----------------------------------------------------------------------------
def rotation(axis: str, degrees: float) -> NDArray[np.float64]:
    """About X raising the back, or about Y raising the right, by so much."""
    c, s = math.cos(math.radians(degrees)), math.sin(math.radians(degrees))
    if axis == "x":
        return np.array([[1, 0, 0], [0, c, -s], [0, s, c]])
    return np.array([[c, 0, -s], [0, 1, 0], [s, 0, c]])


def views(base: float, upper: float) -> tuple[float, float]:
    """Angles in both views of what is ground level, the base hinge along X."""
    normal = (rotation("x", base) @ rotation("y", upper)).T @ np.array([0, 0, 1.0])
    return tuple(math.degrees(math.atan2(-part, normal[2])) for part in normal[:2])  # type: ignore[return-value]


X, Y = 12.0, 25.0
#: Hinge angles of that face on such a plate: the part's normal brought level, by hand.
NORMAL = np.array([-math.tan(math.radians(X)), -math.tan(math.radians(Y)), 1.0])
UPPER = math.degrees(math.atan2(NORMAL[0], NORMAL[2]))
BASE = math.degrees(math.asin(NORMAL[1] / float(np.linalg.norm(NORMAL))))


def of_surface(call: Call, shown: tuple[float, float], **plate: Any) -> Json:
    """What a compound face measured so is answered with."""
    wanted = {"kind": "projected-angles", "x_angle": X, "y_angle": Y}
    found: Json = call(
        "jobs.correction",
        units="in",
        set="inch-81",
        work={"kind": "compound-face", "orientation": wanted, "tolerance_arcsec": 60},
        measured={
            "kind": "surface",
            "orientation": {"kind": "projected-angles", "x_angle": shown[0], "y_angle": shown[1]},
            "measurement_error_limit_arcsec": 10,
        },
        set_up={
            "kind": "compound-plate",
            "base_axis": "x",
            "base_center_distance": 5,
            "upper_center_distance": 5,
            **plate,
        },
    )
    return found


def by_heights(base: float, upper: float) -> tuple[float, float]:
    """Both views of what is ground on stacks of these heights, raised as wanted."""
    angles = [math.degrees(math.asin(height / 5)) for height in (base, upper)]
    return views(math.copysign(angles[0], BASE), math.copysign(angles[1], UPPER))


HEIGHTS = tuple(5 * math.sin(math.radians(abs(angle))) for angle in (BASE, UPPER))


@pytest.mark.outside("jobs.correction", source=SOURCE)
@pytest.mark.parametrize(
    ("name", "shown", "cause"),
    [
        ("hinges-exchanged", by_heights(HEIGHTS[1], HEIGHTS[0]), "wrong-hinge-order"),
        (
            "angles-not-converted",
            views(math.copysign(Y, BASE), math.copysign(X, UPPER)),
            "wrong-hinge-order",
        ),
        (
            "other-frame",
            views(
                math.copysign(Y, BASE),
                math.copysign(
                    math.degrees(math.atan(math.tan(math.radians(X)) * math.cos(math.radians(Y)))),
                    UPPER,
                ),
            ),
            "wrong-hinge-order",
        ),
        (
            "tangent-for-sine",
            by_heights(*(5 * math.tan(math.radians(abs(a))) for a in (BASE, UPPER))),
            "tangent-for-sine",
        ),
        ("mirrored", (-X, Y), "wrong-hand"),
        ("mirrored", (X, -Y), "wrong-hand"),
    ],
)
def test_a_compound_face_set_wrongly_is_told_and_lands_by_the_heights_said(
    call: Call, name: str, shown: tuple[float, float], cause: str
) -> None:
    """Wrong hinge, wrong frame, no conversion, tangent, other hand: named, and set anew."""
    assert by_heights(*HEIGHTS) == pytest.approx((X, Y))
    answer = of_surface(call, (shown[0] + 4 / 3600, shown[1] - 5 / 3600))
    result = answer["result"]
    first = result["slips"][0]
    assert (first["slip"], first["cause"]) == (name, cause)
    errors = [(made - wanted) * 3600 for made, wanted in zip(shown, (X, Y), strict=True)]
    assert first["slip_errors_arcsec"] == pytest.approx(errors, abs=1e-5)
    assert first["unexplained_arcsec"] == pytest.approx([4, -5], abs=1e-5)
    assert (result["causes"][0]["cause"], result["causes"][0]["evidence"]) == (cause, "for")
    assert result["settings"] == []
    assert by_heights(*first["right_heights"]) == pytest.approx((X, Y))


def test_blocks_exchanged_between_both_stacks_are_told(call: Call) -> None:
    """A block of the base plate's stack and one of the upper plate's, each in the other."""
    base, upper = [2.0, 0.1007], [1.0, 0.05]
    wanted = by_heights(sum(base), sum(upper))
    shown = by_heights(2.0 + 0.05, 1.0 + 0.1007)
    orientation = [
        {"kind": "projected-angles", "x_angle": x, "y_angle": y} for x, y in (wanted, shown)
    ]
    request: Json = {
        "units": "in",
        "set": "inch-81",
        "work": {"kind": "compound-face", "orientation": orientation[0]},
        "measured": {
            "kind": "surface",
            "orientation": orientation[1],
            "measurement_error_limit_arcsec": 5,
        },
        "set_up": {
            "kind": "compound-plate",
            "base_axis": "x",
            "base_center_distance": 5,
            "upper_center_distance": 5,
            "base_blocks": base,
            "upper_blocks": upper,
        },
    }
    result = call("jobs.correction", **request)["result"]
    told = [(row["slip"], row["meant"], row["wrung"]) for row in result["slips"]]
    assert ("blocks-exchanged", 0.1007, 0.05) in told
    assert [len(result["settings"]), result["slips"][0]["right_heights"]] == [
        2,
        pytest.approx([sum(base), sum(upper)]),
    ]


def test_a_plate_at_zero_that_is_off_gets_an_advisory(call: Call) -> None:
    """No stack stands under it: the answer says how high which side stands at its roll."""
    orientation = {"kind": "projected-angles", "x_angle": 10, "y_angle": 0}
    request: Json = {
        "units": "in",
        "set": "inch-81",
        "work": {"kind": "compound-face", "orientation": orientation},
        "measured": {
            "kind": "surface",
            "orientation": {**orientation, "y_angle": 40 / 3600},
            "measurement_error_limit_arcsec": 10,
        },
        "set_up": {
            "kind": "compound-plate",
            "base_axis": "x",
            "base_center_distance": 5,
            "upper_center_distance": 5,
        },
    }
    answer = call("jobs.correction", **request)
    (told,) = (a for a in answer["advisories"] if a["code"] == "hinge-not-at-zero")
    # By hand: 5 sin 39.4″, as the base hinge sees 40″ of the side view.
    assert "base plate" in told["message"]
    assert "0.00095 in" in told["message"] or "0.00096 in" in told["message"]
    base, upper = answer["result"]["settings"]
    assert (base["height"], base["leave_it"]) == (None, False)
    assert upper["leave_it"] is True
