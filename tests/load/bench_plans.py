"""Plans of whole jobs, side by side with `jobs.center` and a general exact solver. Not collected.

    .venv/bin/python tests/load/bench_plans.py

Different plans from a seed, in two lots: those of a shop (one to three plates, one or two sets
with blocks away, some with a dresser or a compound plate, some errors not stated), and the
largest (four plates, dressers and sets of odd sizes in fine steps). Of each lot the processor time
of a plan, and how many a core makes in a minute; beside it, in the same run, the time of the plan
of one center, and of one stack of inch-81 by OR-Tools CP-SAT (one worker). Every plan is made once:
what tables are kept of the one before counts as it does in service.
"""

import argparse
import copy
import json
import random
import time
from collections.abc import Callable, Iterator
from itertools import islice
from typing import Any

from bench_blocks import fewest_by_solver, spread, targets_of
from halfangle_service.errors import Refusal
from halfangle_service.registry import load_registry
from halfangle_service.trade.stacks.search.stacking import StackTable
from halfangle_service.trade.tables.blocks.sets import built_in_sets

Json = dict[str, Any]
OPERATIONS = load_registry().operations
SETS = ("inch-81", "inch-81", "inch-36", "inch-83")
GRADES = ("asme-0", "asme-as-1", None)
SEED = 15


def features(chance: random.Random) -> Json:
    """A feature of one of the kinds, as drawings have them."""
    angle, tolerance = round(chance.uniform(8.0, 110.0), 2), chance.choice([10, 30, 60, 120, 600])
    turned = {"included_angle_tolerance_arcsec": tolerance}
    return chance.choice(
        [
            {"kind": "center", "included_angle": angle, "large_diameter": 0.75, **turned},
            {"kind": "cone", "included_angle": angle, "large_diameter": 1.0, **turned}
            | {"small_diameter": round(chance.uniform(0.2, 0.9), 3)},
            {"kind": "taper-plug", "designation": f"morse-{chance.randrange(1, 6)}", **turned},
            {"kind": "angled-face", "face_angle": round(angle / 2, 3), "rise": 0.5}
            | {"tolerance_arcsec": tolerance},
            {"kind": "compound-face", "rise": 0.3, "tolerance_arcsec": tolerance}
            | {"orientation": two_views(chance)},
        ]
    )


def two_views(chance: random.Random) -> Json:
    """A compound face by the angles in two views."""
    x_angle, y_angle = (round(chance.uniform(3.0, 25.0), 2) for _ in range(2))
    return {"kind": "projected-angles", "x_angle": x_angle, "y_angle": y_angle}


def plates(chance: random.Random, count: int) -> list[Json]:
    """Sine plates of usual lengths, of which some errors were stated."""
    example = OPERATIONS["jobs.plan"].example["equipment"]["sine_plates"][0]
    return [
        {
            "name": f"plate {place}",
            "center_distance": chance.choice([2.5, 5.0, 10.0]) + 0.0001 * place,
            "angle_errors": {
                name: error
                for name, error in example["angle_errors"].items()
                if chance.random() < 0.8
            },
        }
        for place in range(count)
    ]


def dressers(chance: random.Random, count: int) -> list[Json]:
    """Wheels with a dresser on a sine base."""
    return [
        {
            "name": f"dressed wheel {place}",
            "wheel_diameter": 7,
            "wheel_width": 0.75,
            "depth_per_pass": 0.0005,
            "dresser": {
                "kind": "sine-base",
                "center_distance": round(chance.uniform(2.0, 4.0), 4),
                "zero": "wheel-axis",
            },
        }
        for place in range(count)
    ]


def request_with(feature: Json, pieces: int, equipment: Json, **more: Any) -> Json:
    """A request for a feature with the equipment and the example's means of measuring."""
    measuring = copy.deepcopy(OPERATIONS["jobs.plan"].example["equipment"]["measuring"])
    shop = {**equipment, "measuring": measuring}
    return {"units": "in", "job": "HL-0900", "feature": feature, "pieces": pieces, **more} | {
        "equipment": shop
    }


def of_a_shop(chance: random.Random) -> Json:
    """What a shop asks for."""
    boxes: list[Json] = []
    for place in range(chance.choice([1, 1, 2])):
        named = chance.choice(SETS)
        away = chance.sample(built_in_sets()[named].sizes, chance.randrange(4))
        box = {"name": f"set {place}", "set": named, "missing": [size / 254e6 for size in away]}
        grade = chance.choice(GRADES)
        boxes.append(box if grade is None else {**box, "grade": grade})
    feature = features(chance)
    equipment: Json = {
        "sine_plates": plates(chance, chance.choice([1, 2, 3])),
        "block_sets": boxes,
        "dressed_wheels": dressers(chance, chance.choice([0, 0, 1])),
    }
    if feature["kind"] == "compound-face":
        compound = {"base_center_distance": 5, "upper_center_distance": 5, "base_axis": "x"}
        equipment["compound_plates"] = [{"name": "compound plate", **compound}]
    return request_with(feature, chance.choice([1, 5, 40]), equipment)


def largest(chance: random.Random) -> Json:
    """The most plates, dressers and sets, these of odd sizes in fine steps."""
    boxes = []
    for place in range(4):
        count, decimals = chance.choice([(30, 5), (60, 5), (120, 5), (400, 4)])
        sizes = {round(chance.uniform(0.1, 4.0), decimals) for _ in range(count)}
        box = [{"size": size, "special": True} for size in sorted(sizes)]
        boxes.append({"name": f"set {place}", "box": box})
    angle, tolerance = round(chance.uniform(5.0, 40.0), 3), chance.choice([1, 60, 3600])
    feature = {"kind": "angled-face", "face_angle": angle, "rise": 0.5}
    equipment = {
        "sine_plates": plates(chance, 4),
        "block_sets": boxes,
        "dressed_wheels": dressers(chance, 4),
    }
    return request_with(
        {**feature, "tolerance_arcsec": tolerance}, 5, equipment, max_blocks=chance.choice([5, 8])
    )


def seconds_of(name: str, request: Json) -> float | None:
    """Processor time of one answer; None where the request is refused."""
    operation = OPERATIONS[name]
    validated = operation.request.model_validate_json(json.dumps(request))
    started = time.process_time()
    try:
        operation.answer_json(validated)
    except Refusal:
        return None
    return time.process_time() - started


def answered(make: Callable[[random.Random], Json]) -> Iterator[float]:
    """Times of plans, one seed after another."""
    chance = random.Random(SEED)  # noqa: S311  reproducible plans, not secrets
    while True:
        seconds = seconds_of("jobs.plan", make(chance))
        if seconds is not None:
            yield seconds


def center_seconds(goes: int) -> float:
    """Median time of the plan of one center."""
    example = dict(OPERATIONS["jobs.center"].example)
    found = [seconds_of("jobs.center", example) for _ in range(goes)]
    return spread([seconds for seconds in found if seconds is not None])[0]


def solver_seconds(targets: int) -> float:
    """Median time of the general solver for one stack of inch-81."""
    table = StackTable(tuple(sorted(built_in_sets()["inch-81"].sizes, reverse=True)), 5)
    steps = [size // table.step for size in table.sizes]
    found = []
    for target in islice(targets_of(table, SEED), targets):
        started = time.process_time()
        fewest_by_solver(steps, [target], 5)
        found.append(time.process_time() - started)
    return spread(found)[0]


def main() -> None:
    """Run the benchmark."""
    parser = argparse.ArgumentParser(description=__doc__.partition("\n")[0])
    parser.add_argument("--plans", type=int, default=500, help="plans of a shop")
    parser.add_argument("--largest", type=int, default=40, help="plans of the largest kind")
    parser.add_argument("--solved", type=int, default=15, help="targets given to the solver")
    options = parser.parse_args()
    next(answered(of_a_shop))  # loads the tables
    center, solver = center_seconds(60), solver_seconds(options.solved)
    print(f"jobs.center {center * 1e3:.1f} ms; a stack by the solver {solver * 1e3:.1f} ms")
    for title, make, count in (
        ("of a shop", of_a_shop, options.plans),
        ("largest", largest, options.largest),
    ):
        times = list(islice(answered(make), count))
        median, p99, most = spread(times)
        print(
            f"{count} plans {title}: median {median * 1e3:.1f} ms ({median / center:.1f} times "
            f"jobs.center, {median / solver:.2f} times the solver's one stack), p99 "
            f"{p99 * 1e3:.0f} ms, greatest {most * 1e3:.0f} ms; "
            f"{60 * count / sum(times):,.0f} a minute a core",
            flush=True,
        )


if __name__ == "__main__":
    main()
