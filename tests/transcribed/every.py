"""The check of each file of the service's tables, on the table as it loads now.

`__wrapped__` is the loader's function under its cache: what a file says at this moment is read,
so that a test may change a cell and see whether it is noticed.
"""

from collections.abc import Callable

from halfangle_service.trade.tables.blocks.angle_sets import angle_grades, angle_sets
from halfangle_service.trade.tables.blocks.flatness import flatness_grades
from halfangle_service.trade.tables.blocks.sets import built_in_sets
from halfangle_service.trade.tables.blocks.tolerances import grades
from halfangle_service.trade.tables.centers.guides import (
    center_points,
    holes_by_shaft,
    stock_balls,
    tapped_holes,
)
from halfangle_service.trade.tables.centers.holes import center_holes
from halfangle_service.trade.tables.correction.causes import causes
from halfangle_service.trade.tables.materials.expansion import materials
from halfangle_service.trade.tables.runout.terms import terms
from halfangle_service.trade.tables.sine.bars import bar_tolerances
from halfangle_service.trade.tables.tapers.grades import angle_grades as cone_angle_grades
from halfangle_service.trade.tables.tapers.rates import standard_rates
from halfangle_service.trade.tables.tapers.shanks import shank_dimensions
from halfangle_service.trade.tables.tapers.standard import standard_tapers
from halfangle_service.trade.tables.wheels.guides import guides
from halfangle_service.trade.tables.wheels.safety import safety_rules
from halfangle_service.trade.tables.wheels.start_checks import start_checks
from transcribed import bench, blocks, centers, others, tapers

#: Gives the differences of a table from its transcription, none where it is held.
Check = Callable[[], list[str]]


def _holes() -> list[str]:
    return centers.hole_differences(center_holes.__wrapped__())


def _tapers() -> list[str]:
    return tapers.taper_differences(standard_tapers.__wrapped__())


def _rates() -> list[str]:
    return tapers.rate_differences(standard_rates.__wrapped__())


def _shanks() -> list[str]:
    return tapers.shank_differences(shank_dimensions.__wrapped__())


def _angle_blocks() -> list[str]:
    return [
        *blocks.angle_set_differences(angle_sets.__wrapped__()),
        *blocks.angle_grade_differences(angle_grades.__wrapped__()),
    ]


CHECKS: dict[str, Check] = {
    "blocks/angle_sets.toml": _angle_blocks,
    "blocks/flatness.toml": lambda: bench.flatness_differences(flatness_grades.__wrapped__()),
    "blocks/sets.toml": lambda: blocks.set_differences(built_in_sets.__wrapped__()),
    "blocks/tolerances.toml": lambda: blocks.grade_differences(grades.__wrapped__()),
    "centers/balls.toml": lambda: bench.ball_differences(stock_balls.__wrapped__()),
    "centers/by_shaft.toml": lambda: bench.shaft_differences(holes_by_shaft.__wrapped__()),
    "centers/points.toml": lambda: bench.point_differences(center_points.__wrapped__()),
    "centers/tapped.toml": lambda: bench.tapped_differences(tapped_holes.__wrapped__()),
    "centers/holes_inch.toml": _holes,
    "centers/holes_metric.toml": _holes,
    "materials/expansion.toml": lambda: others.material_differences(materials.__wrapped__()),
    "runout/terms.toml": lambda: others.term_differences(terms.__wrapped__()),
    "sine/bars.toml": lambda: bench.bar_differences(bar_tolerances.__wrapped__()),
    "tapers/grades.toml": lambda: tapers.grade_differences(cone_angle_grades.__wrapped__()),
    "correction/causes.toml": lambda: others.cause_differences(causes.__wrapped__()),
    "wheels/before_starting.toml": lambda: others.start_check_differences(
        start_checks.__wrapped__()
    ),
    "wheels/safety.toml": lambda: bench.rule_differences(safety_rules.__wrapped__()),
    "wheels/dressing.toml": lambda: others.guide_differences(guides.__wrapped__()),
    **{
        f"tapers/{name}.toml": _tapers
        for name in (
            *("morse_inch", "morse_iso", "steep_inch", "steep_iso", "metric", "brown_sharpe"),
            *("jarno", "drill_chuck"),
        )
    },
    **{f"tapers/rates_{name}.toml": _rates for name in ("iso", "per_foot", "other")},
    **{f"tapers/shanks_{name}.toml": _shanks for name in ("metric", "inch", "steep", "steep_inch")},
}
