"""The built-in tables of blocks: sets, grades, sets of angle blocks."""

from halfangle_service.fields import Angle, from_tenth_nm
from halfangle_service.operation import Collection, Source, table_standing
from halfangle_service.topics.blocks.models_tables import (
    BlockAngleGradeEntry,
    BlockAngleSetEntry,
    BlockAngleSetList,
    BlockGradeEntry,
    BlockGradeList,
    BlockGradeRange,
    BlockSetDetail,
    BlockSetEntry,
    BlockSetList,
)
from halfangle_service.topics.blocks.operations_stack import GRADES, SETS
from halfangle_service.trade.tables.blocks.angle_sets import (
    THOUSANDTHS_PER_DEGREE,
    AngleSet,
    angle_grades,
    angle_sets,
)
from halfangle_service.trade.tables.blocks.sets import BlockSet, built_in_sets
from halfangle_service.trade.tables.blocks.tolerances import Grade, grades

ANGLE_SETS = Source(
    citation="Sets of angle gauge blocks; each names its own source.", standing="from memory"
)


def _entry(block_set: BlockSet) -> BlockSetEntry:
    return BlockSetEntry(
        name=block_set.name,
        units=block_set.units,
        pieces=len(block_set.sizes),
        series=list(block_set.series),
        source=block_set.source,
        standing=table_standing(block_set.how),
        note=block_set.note,
    )


def _detail(name: str) -> BlockSetDetail | None:
    block_set = built_in_sets().get(name)
    if block_set is None:
        return None
    units = block_set.units
    return BlockSetDetail(
        **dict(_entry(block_set)),
        sizes=[from_tenth_nm(size, units) for size in block_set.sizes],
        wear_blocks=[from_tenth_nm(size, units) for size in block_set.wear],
    )


def _grade(grade: Grade) -> BlockGradeEntry:
    columns = zip(grade.up_to, grade.limit_deviation_mm, grade.variation_mm, strict=True)
    return BlockGradeEntry(
        name=grade.name,
        source=grade.source,
        standing=table_standing(grade.how),
        note=grade.note,
        ranges=[
            BlockGradeRange(up_to=end / 1e7, limit_deviation=te * 1e3, variation=tv * 1e3)
            for end, te, tv in columns
        ],
    )


def _grade_named(name: str) -> BlockGradeEntry | None:
    grade = grades().get(name)
    return None if grade is None else _grade(grade)


def _angle_set(angle_set: AngleSet) -> BlockAngleSetEntry:
    return BlockAngleSetEntry(
        name=angle_set.name,
        pieces=len(angle_set.angles),
        angles=[Angle.of(angle / THOUSANDTHS_PER_DEGREE) for angle in angle_set.angles],
        source=angle_set.source,
        standing=table_standing(angle_set.how),
        note=angle_set.note,
    )


def _angle_set_named(name: str) -> BlockAngleSetEntry | None:
    found = angle_sets().get(name)
    return None if found is None else _angle_set(found)


def _angle_listing() -> BlockAngleSetList:
    return BlockAngleSetList(
        sets=[_angle_set(entry) for entry in angle_sets().values()],
        grades=[
            BlockAngleGradeEntry(
                name=grade.name,
                accuracy_arcsec=grade.accuracy_arcsec,
                source=grade.source,
                standing=table_standing(grade.how),
            )
            for grade in angle_grades().values()
        ],
    )


COLLECTIONS = (
    Collection(
        topic="blocks",
        name="sets",
        singular="set",
        key="name",
        title="Built-in sets of gauge blocks",
        summary="Sets by count and series, each with its source. No standard fixes the composition "
        "of a set: check it against your box.",
        listing=BlockSetList,
        rows=lambda: BlockSetList(sets=[_entry(s) for s in built_in_sets().values()]),
        item=BlockSetDetail,
        get=_detail,
        keys=lambda: tuple(built_in_sets()),
        sources=(SETS,),
    ),
    Collection(
        topic="blocks",
        name="grades",
        singular="grade",
        key="name",
        title="Tolerance grades of gauge blocks",
        summary="Limit deviation and variation in length of each grade, by range of sizes.",
        listing=BlockGradeList,
        rows=lambda: BlockGradeList(grades=[_grade(grade) for grade in grades().values()]),
        item=BlockGradeEntry,
        get=_grade_named,
        keys=lambda: tuple(grades()),
        sources=(GRADES,),
    ),
    Collection(
        topic="blocks",
        name="angle-sets",
        singular="angle-set",
        key="name",
        title="Built-in sets of angle gauge blocks",
        summary="Sets and grades of angle gauge blocks, each with its source.",
        listing=BlockAngleSetList,
        rows=_angle_listing,
        item=BlockAngleSetEntry,
        get=_angle_set_named,
        keys=lambda: tuple(angle_sets()),
        sources=(ANGLE_SETS,),
    ),
)
