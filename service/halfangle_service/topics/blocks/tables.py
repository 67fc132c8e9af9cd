"""The built-in tables: sets, grades and materials of gauge blocks; sets, grades of angle blocks."""

from typing import Annotated

from pydantic import Field

from halfangle_service.fields import (
    Angle,
    ArcsecOut,
    CountOut,
    LengthOut,
    ResultModel,
    Unit,
    Units,
    from_tenth_nm,
)
from halfangle_service.operation import published_table
from halfangle_service.trade.tables.blocks.angle_sets import (
    THOUSANDTHS_PER_DEGREE,
    angle_grades,
    angle_sets,
)
from halfangle_service.trade.tables.blocks.flatness import FlatnessGrade, flatness_grades
from halfangle_service.trade.tables.blocks.sets import BlockSet, built_in_sets
from halfangle_service.trade.tables.blocks.tolerances import Grade, grades
from halfangle_service.trade.tables.loader import Standing
from halfangle_service.trade.tables.materials.expansion import MaterialName, materials

_Millimetres = Annotated[float, Unit("millimetre")]
_Micrometres = Annotated[float, Unit("micrometre")]


class BlockSetEntry(ResultModel):
    """A built-in set in short."""

    name: str = Field(description="Name to use as `set`.", examples=["inch-81"])
    units: Units = Field(description="Unit of its nominal sizes.")
    count: CountOut = Field(description="How many blocks.")
    size_series: list[str] = Field(
        description="The series of its sizes: first to last by step (count)."
    )
    source: str = Field(description="Where the composition comes from.")
    standing: Standing = Field(description="How it is known.")
    note: str = Field(description="What to mind; empty where nothing.")


class BlockSetDetail(BlockSetEntry):
    """A built-in set with every block."""

    sizes: list[LengthOut] = Field(description="Every block, ascending, in the set's units.")
    wear_blocks: list[LengthOut] = Field(description="Which of them are wear blocks.")


class BlockGradeRange(ResultModel):
    """Limits of one range of sizes."""

    up_to: _Millimetres = Field(description="Upper end of the range, included, in millimetres.")
    limit_deviation: _Micrometres = Field(
        description="Limit deviation te of the length at any point, in micrometres: ± this."
    )
    variation: _Micrometres = Field(
        description="Tolerance tv for the variation in length, in micrometres."
    )


class BlockGradeEntry(ResultModel):
    """A tolerance grade."""

    name: str = Field(description="Name to use as `grade`.", examples=["iso-1"])
    label: str = Field(description="The grade as its standard writes it.", examples=["ISO 1"])
    source: str = Field(description="Standard, edition, table.")
    standing: Standing = Field(description="How it is known.")
    note: str = Field(description="What to mind; empty where nothing.")
    ranges: list[BlockGradeRange] = Field(description="Its ranges, ascending.")


class BlockFlatnessRange(ResultModel):
    """Flatness of one range of sizes."""

    over: _Millimetres = Field(description="Lower end of the range, not included.")
    up_to: _Millimetres = Field(description="Upper end of the range, included, in millimetres.")
    flatness: _Micrometres = Field(
        description="Tolerance tf of the flatness of each measuring face, in micrometres."
    )


class BlockFlatnessEntry(ResultModel):
    """Flatness that a grade asks of the measuring faces."""

    name: str = Field(description="Name to use as `grade`.", examples=["iso-1"])
    label: str = Field(description="The grade as its standard writes it.", examples=["ISO 1"])
    ranges: list[BlockFlatnessRange] = Field(description="Its ranges, ascending.")
    source: str = Field(description="Standard, edition, table.")
    standing: Standing = Field(description="How it is known.")
    note: str = Field(description="What to mind; empty where nothing.")


class BlockMaterialEntry(ResultModel):
    """A material of blocks and plates, and how it expands near 20 °C."""

    name: MaterialName = Field(description="Name to use as `material`.", examples=["steel"])
    expansion_coefficient: Annotated[float, Unit("per_kelvin")] = Field(
        description="Coefficient of linear expansion, per kelvin."
    )
    expansion_coefficient_error_limit: Annotated[float, Unit("per_kelvin")] = Field(
        description="Largest error ± of it that budgets take, per kelvin."
    )
    source: str = Field(description="Where it comes from.")
    standing: Standing = Field(description="How it is known.")


class BlockAngleSetEntry(ResultModel):
    """A built-in set of angle blocks."""

    name: str = Field(description="Name to use as `set`.", examples=["angle-16"])
    count: CountOut = Field(description="How many blocks.")
    angles: list[Angle] = Field(description="Its blocks, descending.")
    source: str = Field(description="Where the composition comes from.")
    standing: Standing = Field(description="How it is known.")
    note: str = Field(description="What to mind; empty where nothing.")


class BlockAngleGradeEntry(ResultModel):
    """A grade of angle blocks."""

    name: str = Field(description="Name to use as `grade`.", examples=["toolroom"])
    limit_deviation_arcsec: ArcsecOut = Field(
        description="Limit ± of the deviation of each block's angle."
    )
    source: str = Field(description="Where it comes from.")
    standing: Standing = Field(description="How it is known.")


def _entry(block_set: BlockSet) -> BlockSetEntry:
    return BlockSetEntry(
        name=block_set.name,
        units=block_set.units,
        count=len(block_set.sizes),
        size_series=list(block_set.series),
        source=block_set.source,
        standing=block_set.standing,
        note=block_set.note,
    )


def _detail(block_set: BlockSet) -> BlockSetDetail:
    units = block_set.units
    return BlockSetDetail(
        **dict(_entry(block_set)),
        sizes=[from_tenth_nm(size, units) for size in block_set.sizes],
        wear_blocks=[from_tenth_nm(size, units) for size in block_set.wear],
    )


def _in_short(row: BlockSetDetail) -> BlockSetEntry:
    return _entry(built_in_sets()[row.name])


@published_table("blocks.sets", singular="set", key="name", in_short=_in_short)
def sets() -> dict[str, BlockSetDetail]:
    """Built-in sets of gauge blocks.

    Sets by count and series, each with its source. No standard fixes the composition of a set:
    check it against your box.
    """
    return {name: _detail(block_set) for name, block_set in built_in_sets().items()}


@published_table("blocks.grades", singular="grade", key="name")
def block_grades() -> dict[str, BlockGradeEntry]:
    """Tolerance grades of gauge blocks.

    Limit deviation and variation in length of each grade, by range of sizes.
    """
    return {name: _grade(grade) for name, grade in grades().items()}


def _grade(grade: Grade) -> BlockGradeEntry:
    columns = zip(grade.up_to, grade.limit_deviation_mm, grade.variation_mm, strict=True)
    return BlockGradeEntry(
        name=grade.name,
        label=grade.label,
        source=grade.source,
        standing=grade.standing,
        note=grade.note,
        ranges=[
            BlockGradeRange(up_to=end / 1e7, limit_deviation=te * 1e3, variation=tv * 1e3)
            for end, te, tv in columns
        ],
    )


@published_table("blocks.flatness-grades", singular="flatness-grade", key="name")
def block_flatness() -> dict[str, BlockFlatnessEntry]:
    """Flatness of gauge blocks.

    Flatness of the measuring faces of each grade, by range of sizes. Parallelism is the variation
    in length: `GET /v1/blocks/grades`.
    """
    return {name: _flatness(grade) for name, grade in flatness_grades().items()}


def _flatness(grade: FlatnessGrade) -> BlockFlatnessEntry:
    columns = zip(grade.over_mm, grade.up_to_mm, grade.flatness_um, strict=True)
    return BlockFlatnessEntry(
        name=grade.name,
        label=grade.label,
        ranges=[BlockFlatnessRange(over=o, up_to=u, flatness=f) for o, u, f in columns],
        source=grade.source,
        standing=grade.standing,
        note=grade.note,
    )


@published_table("blocks.materials", singular="material", key="name")
def block_materials() -> dict[str, BlockMaterialEntry]:
    """Materials of blocks and plates.

    Expansion near 20 °C (ISO 1) of each, near-zero glass-ceramic and quartz too.
    """
    return {
        name: BlockMaterialEntry(
            name=row.name,
            expansion_coefficient=row.coefficient,
            expansion_coefficient_error_limit=row.spread,
            source=row.source,
            standing=row.standing,
        )
        for name, row in materials().items()
    }


@published_table("blocks.angle-sets", singular="angle-set", key="name")
def block_angle_sets() -> dict[str, BlockAngleSetEntry]:
    """Built-in sets of angle gauge blocks.

    Every block of each set, with its source.
    """
    return {
        name: BlockAngleSetEntry(
            name=angle_set.name,
            count=len(angle_set.angles),
            angles=[Angle.of(angle / THOUSANDTHS_PER_DEGREE) for angle in angle_set.angles],
            source=angle_set.source,
            standing=angle_set.standing,
            note=angle_set.note,
        )
        for name, angle_set in angle_sets().items()
    }


@published_table("blocks.angle-grades", singular="angle-grade", key="name")
def block_angle_grades() -> dict[str, BlockAngleGradeEntry]:
    """Tolerance grades of angle gauge blocks.

    The accuracy of each grade, with its source.
    """
    return {
        name: BlockAngleGradeEntry(
            name=grade.name,
            limit_deviation_arcsec=grade.limit_deviation_arcsec,
            source=grade.source,
            standing=grade.standing,
        )
        for name, grade in angle_grades().items()
    }
