# Generated from openapi/openapi.json by openapi/generate.py. Do not edit.

from __future__ import annotations

from typing import Annotated, Any, Literal

from pydantic import Field

from halfangle_client.answer import Answer, AnswerModel, OpenModel, RequestModel


class Advisory(AnswerModel):
    """The voice of an experienced hand."""

    code: str
    """Stable code of the advisory."""
    severity: Literal["note", "caution", "stop"] | str
    """`note`: a better way exists; `caution`: mind this; `stop`: do not run this."""
    message: str
    """What to mind, in plain words."""


class Angle(AnswerModel):
    """An angle in an answer, in two forms of the same value."""

    degrees: float
    """Decimal degrees, full precision. [degree]"""
    dms: str
    """Degrees, minutes and seconds, rounded to 0.01 second."""


class AngleContributions(RequestModel):
    """
    Errors of the set-up that turn the cone's half angle, each as ± a limit.

    A limit that is not sent is not stated: nothing counts for it, and the plan names it. 0
    says that there is no such error. The blocks' own errors come with `grade` or `box`, and
    the stack's deviation from the height is known.
    """

    center_distance_error_limit: float | None = None
    """Largest error ± of the center distance, in `units`. [length, 0 to 10000]"""
    roll_difference: float | None = None
    """Limit ± of the difference of the rolls' diameters, in `units`. [length, 0 to 10000]"""
    roll_parallelism: float | None = None
    """
    Limit ± by which the rolls are out of parallel in height from end to end, in `units`; a
    stack under one end rather than the middle sees half of it. [length, 0 to 10000]
    """
    face_parallelism: float | None = None
    """
    Limit ± by which the plate's face is out of parallel over `face_length`, in `units`.
    [length, 0 to 10000]
    """
    face_parallelism_on_rolls: bool = False
    """
    True where the face's parallelism was measured with the plate resting on its rolls: it
    then holds the rolls' difference already, and only the rest of it counts.
    """
    face_flatness: float | None = None
    """Flatness of the plate's face over `face_length`, in `units`. [length, 0 to 10000]"""
    face_length: float | None = None
    """
    Length over which parallelism and flatness act: the plate's, or the work's seat. Absent:
    the center distance. [length, 1e-06 to 10000]
    """
    table_flatness: float | None = None
    """
    Limit ± of the difference in height of the surface plate under the two rolls, in
    `units`. [length, 0 to 10000]
    """
    particle: float | None = None
    """Size of a particle under either roll or its stack, in `units`. [length, 0 to 10000]"""
    temperature_celsius: float | None = None
    """
    Temperature of plate and blocks alike; 20 °C is the reference (ISO 1). Not stated where
    absent: unlike materials then turn the angle by an unknown amount, and even of like ones
    the coefficients are known only to so much. [°C, -40 to 150]
    """
    temperature_error_limit_celsius: float | None = None
    """Largest error ± of the temperature of plate and blocks, in kelvins. [°C, 0 to 50]"""
    temperature_difference_celsius: float | None = None
    """Limit ± of the difference of the blocks' temperature to the plate's. [°C, 0 to 50]"""
    plate_material: Literal[
        "steel",
        "tungsten-carbide",
        "chromium-carbide",
        "ceramic",
        "glass-ceramic",
        "fused-quartz",
    ] = "steel"
    """Material of the plate."""
    axis_yaw_error_limit_arcsec: float | None = None
    """
    Largest error ± of the yaw of the work's axis out of the plane in which the plate tilts;
    at most 18000, which is 5°. It acts by its square, always toward a smaller angle.
    [arcsecond, 0 to 18000]
    """
    axis_pitch_error_limit_arcsec: float | None = None
    """
    Largest error ± of the pitch of the work's axis to the plate's face, in the plane in
    which the plate tilts; it acts one to one. [arcsecond, 0 to 324000]
    """
    wheel_face_error_limit_arcsec: float | None = None
    """
    Largest slope ± of the wheel's face along the slant, from breakdown since dressing.
    [arcsecond, 0 to 324000]
    """
    block_material: (
        Literal[
            "steel",
            "tungsten-carbide",
            "chromium-carbide",
            "ceramic",
            "glass-ceramic",
            "fused-quartz",
        ]
        | None
    ) = None
    """
    Material of the gauge blocks of a set, or of sizes. Absent: steel. A `box` says it of
    each of its blocks.
    """


class ArcsecContribution(AnswerModel):
    """One contribution to an angle, in arc-seconds."""

    name: str
    """
    What contributes: the field of the request that states it, spelled as in `not_stated`;
    or, where no one field does, a name of its own, which has a label.
    """
    of: str | None
    """
    Which one, where several may bear one name: a block by its size, a film by its number,
    an expansion of blocks by their material, a measured size by its field; else null.
    """
    input_value: float
    """
    Half-width of the input's distribution, or its standard deviation where it is normal, or
    the length of a vector of unknown phase, in `input_unit`. [stated]
    """
    input_unit: str
    """Unit of the input, as `x-unit` names units."""
    sensitivity: float
    """
    Change of the estimate for one unit of the input, signed; of a one-sided input the
    change at its limit, over that limit. [per stated]
    """
    distribution: Literal["normal", "rectangular", "triangular", "u-shaped", "uniform-phase"] | str
    """
    Its distribution (JCGM 100:2008, 4.3; JCGM 101:2008, 6.4); `uniform-phase` of a vector
    that may point any way, all alike.
    """
    standard_uncertainty: float
    """What it adds to the estimate's standard uncertainty. [arcsecond]"""
    worst_case: float | None
    """
    Largest change of the estimate that it can cause; null where its spread was estimated
    from few readings, which is no limit. [arcsecond]
    """
    share_percent: float
    """Its share of the combined variance. [percent]"""


class ArcsecEstimate(AnswerModel):
    """A small angle, or an angle's error, with its uncertainty, all in arc-seconds."""

    value: float | None
    """Best estimate, known offsets and the means of one-sided errors included. [arcsecond]"""
    standard_uncertainty: float | None
    """Combined standard uncertainty; null where no contribution was stated. [arcsecond]"""
    degrees_of_freedom: float | None
    """
    Effective degrees of freedom (Welch and Satterthwaite); null where they are not limited,
    as with stated limits.
    """
    expanded_uncertainty: float | None
    """Expanded uncertainty: half of the width that covers `coverage_probability`. [arcsecond]"""
    coverage_factor: float | None
    """Coverage factor k: expanded over standard uncertainty; null where both are 0."""
    coverage_probability: float | None
    """
    Probability, 0 to 1, that value ± expanded uncertainty covers, by the distributions of
    the contributions (JCGM 101:2008), or by Student's where degrees of freedom are limited
    (JCGM 100:2008, G.4).
    """
    worst_case: float | None
    """
    Largest error with every stated contribution at its limit at once, known offsets
    included; of a normal contribution three standard deviations. Never less than what
    covers 95 %; null where a contribution has no limit, because its spread was itself
    estimated from few readings (`degrees_of_freedom`). [arcsecond]
    """
    contributions: list[ArcsecContribution]
    """What was stated, in a fixed order."""
    not_stated: list[str]
    """Contributions that were not stated: nothing is known of them, and nothing counted."""


class BlockAngleGradeEntry(AnswerModel):
    """A grade of angle blocks."""

    name: str
    """Name to use as `grade`."""
    limit_deviation_arcsec: float
    """Limit ± of the deviation of each block's angle. [arcsecond]"""
    source: str
    """Where it comes from."""
    standing: Literal["published", "derived", "common-practice-no-source", "from-memory"] | str
    """How it is known."""


class BlockAngleGradeList(AnswerModel):
    """Tolerance grades of angle gauge blocks: every row."""

    angle_grades: list[BlockAngleGradeEntry]
    """The rows, in order."""


class BlockAngleOwned(RequestModel):
    """An angle block that the shop owns."""

    angle: float | str
    """
    Nominal angle, in degrees. [degree, over 0, at most 180; or text in degrees, minutes,
    seconds]
    """
    count: int = 1
    """How many of them. [count, 1 to 4]"""
    deviation_arcsec: float = 0.0
    """
    Measured deviation, actual less nominal, as the certificate states it; at most 60″
    either way. [arcsecond, -324000 to 324000]
    """
    expanded_uncertainty_arcsec: float | None = None
    """
    Expanded uncertainty (k = 2) of that deviation. Absent: the block is not calibrated, and
    its grade, if one is given, limits its error. [arcsecond, 0 to 324000]
    """


class BlockAngleSetEntry(AnswerModel):
    """A built-in set of angle blocks."""

    name: str
    """Name to use as `set`."""
    count: int
    """How many blocks. [count]"""
    angles: list[Angle]
    """Its blocks, descending."""
    source: str
    """Where the composition comes from."""
    standing: Literal["published", "derived", "common-practice-no-source", "from-memory"] | str
    """How it is known."""
    note: str
    """What to mind; empty where nothing."""


class BlockAngleSetList(AnswerModel):
    """Built-in sets of angle gauge blocks: every row."""

    angle_sets: list[BlockAngleSetEntry]
    """The rows, in order."""


class BlockAngleUsed(AnswerModel):
    """A block in a stack of angle blocks."""

    angle: Angle
    """Nominal angle of the block."""
    sense: Literal["add", "subtract"] | str
    """`add`: wide end to that of the others; `subtract`: turned end for end."""


class BlockContention(AnswerModel):
    """Two benches that would take the same blocks if each built its fewest blocks by itself."""

    jobs: list[str]
    """The two jobs."""
    benches: list[str]
    """Their benches, in the same order."""
    blocks: list[float]
    """Blocks that both would need. [each length]"""
    avoidable: bool | None
    """
    True where the two can stand at once all the same, with other blocks; null where the
    bound on the work was reached before that was known.
    """


class BlockDayJob(RequestModel):
    """A setting that a bench needs at some time of the day."""

    job: str
    """Name of the job; each name once. [1 to 60 characters]"""
    bench: str
    """Bench or machine. [1 to 60 characters]"""
    slot: int = 1
    """Period of the day: jobs of one slot run at once. [count, 1 to 24]"""
    height: float
    """Height of its stack, in `units`; taken to the nearest 0.1 nm. [length, 1e-06 to 10000]"""
    tolerance: float = 0.0
    """
    Heights within ± this will do, in `units`; at most 100 steps of the set. [length, 0 to
    10000]
    """


class BlockFlatnessRange(AnswerModel):
    """Flatness of one range of sizes."""

    over: float
    """Lower end of the range, not included. [millimetre]"""
    up_to: float
    """Upper end of the range, included, in millimetres. [millimetre]"""
    flatness: float
    """Tolerance tf of the flatness of each measuring face, in micrometres. [micrometre]"""


class BlockGradeRange(AnswerModel):
    """Limits of one range of sizes."""

    up_to: float
    """Upper end of the range, included, in millimetres. [millimetre]"""
    limit_deviation: float
    """Limit deviation te of the length at any point, in micrometres: ± this. [micrometre]"""
    variation: float
    """Tolerance tv for the variation in length, in micrometres. [micrometre]"""


class BlockHeightWanted(RequestModel):
    """One of several heights."""

    name: str
    """What it is for; each name once. [1 to 60 characters]"""
    height: float
    """Height, in `units`; taken to the nearest 0.1 nm. [length, 1e-06 to 10000]"""
    tolerance: float = 0.0
    """
    Heights within ± this will do, in `units`; at most 100 steps of the set. [length, 0 to
    10000]
    """


class BlockMaterialEntry(AnswerModel):
    """A material of blocks and plates, and how it expands near 20 °C."""

    name: (
        Literal[
            "steel",
            "tungsten-carbide",
            "chromium-carbide",
            "ceramic",
            "glass-ceramic",
            "fused-quartz",
        ]
        | str
    )
    """Name to use as `material`."""
    expansion_coefficient: float
    """Coefficient of linear expansion, per kelvin. [per kelvin]"""
    expansion_coefficient_error_limit: float
    """Largest error ± of it that budgets take, per kelvin. [per kelvin]"""
    source: str
    """Where it comes from."""
    standing: Literal["published", "derived", "common-practice-no-source", "from-memory"] | str
    """How it is known."""


class BlockMaterialList(AnswerModel):
    """Materials of blocks and plates: every row."""

    materials: list[BlockMaterialEntry]
    """The rows, in order."""


class BlockMistake(AnswerModel):
    """
    One mistake with the stack that was meant, what it does, and how well that explains.

    `mistakes_explain` tells which case it is. `what-was-measured`: the stack as read was
    meant, and the mistake gives the measured one. `the-stack-as-read`: a stack of the
    wanted height was meant, and the mistake gives the stack as read, which is right to its
    blocks.
    """

    kind: (
        Literal[
            "wrong-block",
            "block-left-out",
            "block-too-many",
            "wear-block-left-out",
            "wear-block-too-many",
        ]
        | str
    )
    """What went wrong."""
    meant: float | None
    """Block that was meant; null where none was. [length]"""
    meant_mark: str | None
    """
    Mark of the block that was meant; null where it has none, or where any of several of its
    size may be it.
    """
    wrung: float | None
    """Block that was wrung; null where none was. [length]"""
    wrung_mark: str | None
    """Mark of the block that was wrung, likewise."""
    likeness: (
        Literal[
            "same-size",
            "same-digits",
            "neighbours-in-the-box",
            "digits-swapped",
            "one-digit",
            "none",
        ]
        | str
    )
    """
    How the one is taken for the other: `same-size`, another block of the box with another
    measured deviation; `same-digits`, .1003 for .103; `neighbours-in-the-box`;
    `digits-swapped`; `one-digit`; `none`.
    """
    roll: Literal["high-roll", "low-roll"] | str | None
    """Roll under which the mistake is; null without a plate."""
    height: float
    """
    Height of the stack that was meant, with this mistake: of the actual height of the stack
    as read, or of the wanted height, as `mistakes_explain` tells. Of a mistake under the
    low roll, the height that would lift the high roll as much. [length]
    """
    angle: Angle | None
    """
    Angle that it gives; null without a plate, and where it lifts the plate by its center
    distance or more.
    """
    angle_error_arcsec: float | None
    """That angle less the wanted one; null where there is none of them. [arcsecond]"""
    unexplained: float
    """
    Height to be explained, the measured one or that of the stack as read, less the height
    with this mistake. [length]
    """
    explains: bool
    """
    True where that is within the limit; with a wanted angle also where it is within it of
    the height rounded to 0.0001 in or 0.001 mm.
    """
    words: str
    """The mistake in plain words."""


class BlockMonteCarlo(AnswerModel):
    """The same comparison drawn at random through the whole model (JCGM 101)."""

    trials: int
    """Trials, with a fixed seed. [count]"""
    mean: float | None
    """
    Mean of the block's length; null where an uncertainty of two degrees of freedom or fewer
    leaves it none. [length]
    """
    standard_deviation: float | None
    """Its standard deviation; null likewise. [length]"""
    shortest_low: float
    """Lower end of the shortest coverage interval. [length]"""
    shortest_high: float
    """Upper end of it. [length]"""
    symmetric_low: float
    """Lower end of the interval with equal tails. [length]"""
    symmetric_high: float
    """Upper end of it. [length]"""


class BlockOwned(RequestModel):
    """A block that the shop owns, or several alike, as box and certificate tell."""

    size: float
    """Nominal size, in `units`. [length, 1e-06 to 10000]"""
    count: int = 1
    """How many blocks of this size and these data. [count, 1 to 20]"""
    deviation: float = 0.0
    """
    Measured deviation, actual less nominal, in `units`, as the certificate states it at 20
    °C; at most 0.001 in or 0.02 mm either way. [length, -10000 to 10000]
    """
    expanded_uncertainty: float | None = None
    """
    Expanded uncertainty (k = 2) of that deviation, in `units`. Absent: the block is not
    calibrated, and its grade, if one is given, limits its error. [length, 0 to 10000]
    """
    material: Literal[
        "steel",
        "tungsten-carbide",
        "chromium-carbide",
        "ceramic",
        "glass-ceramic",
        "fused-quartz",
    ] = "steel"
    """Material of the block."""
    state: Literal["in-the-box", "missing", "in-use"] = "in-the-box"
    """
    `missing` or `in-use` blocks are not built with; a refusal says when one of them would
    have done it.
    """
    times_wrung: int = 0
    """How often it was wrung, for `least-wear`. [count, 0 to 1000000]"""
    wear_block: bool = False
    """True for a wear block: it goes to an end of a stack or nowhere."""
    mark: str | None = None
    """
    Identification mark of the block, as on it or on its certificate: answers then say which
    block they mean. With a count of 1 only. [1 to 30 characters]
    """
    special: bool = False
    """
    True for an odd size that is meant as it stands: it is then not questioned as a size of
    the other unit system.
    """


class BlockSetDetail(AnswerModel):
    """A built-in set with every block."""

    name: str
    """Name to use as `set`."""
    units: Literal["in", "mm"] | str
    """Unit of its nominal sizes."""
    count: int
    """How many blocks. [count]"""
    size_series: list[str]
    """The series of its sizes: first to last by step (count)."""
    source: str
    """Where the composition comes from."""
    standing: Literal["published", "derived", "common-practice-no-source", "from-memory"] | str
    """How it is known."""
    note: str
    """What to mind; empty where nothing."""
    sizes: list[float]
    """Every block, ascending, in the set's units. [each length]"""
    wear_blocks: list[float]
    """Which of them are wear blocks. [each length]"""


class BlockSetEntry(AnswerModel):
    """A built-in set in short."""

    name: str
    """Name to use as `set`."""
    units: Literal["in", "mm"] | str
    """Unit of its nominal sizes."""
    count: int
    """How many blocks. [count]"""
    size_series: list[str]
    """The series of its sizes: first to last by step (count)."""
    source: str
    """Where the composition comes from."""
    standing: Literal["published", "derived", "common-practice-no-source", "from-memory"] | str
    """How it is known."""
    note: str
    """What to mind; empty where nothing."""


class BlockSetList(AnswerModel):
    """Built-in sets of gauge blocks: every row."""

    sets: list[BlockSetEntry]
    """The rows, in order."""


class BlockSharedStack(AnswerModel):
    """A stack that serves several jobs."""

    height: float
    """Height of the stack, wear blocks included: within the tolerance of each job. [length]"""
    blocks: list[float]
    """
    Nominal sizes of the fewest blocks for it, largest first; beside the other stacks of a
    slot it may be of other blocks. [each length]
    """
    jobs: list[str]
    """Jobs that need it, in order of slots."""
    at_once: bool
    """
    True where some of them run in one slot: the stack then has to go from bench to bench,
    or stand twice.
    """


class BlockToBorrow(AnswerModel):
    """A block that is not at hand, with which a height could stand."""

    block: float
    """Its nominal size. [length]"""
    where: Literal["missing", "in-use", "not-in-the-box", "another-of-this-size"] | str
    """
    `missing` or `in-use` where the box has it; else `not-in-the-box`, or
    `another-of-this-size` where those of the box stand already.
    """


class CenterBallReading(AnswerModel):
    """One stock ball in the hole."""

    ball_diameter: float
    """Diameter of the ball, in `units`. [length]"""
    ball_named: str
    """Its size as it is sold."""
    contact_diameter: float
    """Circle on which it touches the cone. [length]"""
    height_over_face: float
    """Height of its top over the face; negative below it. [length]"""
    smallest_height_over_face: float | None
    """Lowest reading within the tolerances stated; null where none was. [length]"""
    largest_height_over_face: float | None
    """Highest reading within them. [length]"""
    height_per_diameter: float
    """
    Change of the reading for a unit of mouth diameter, the chamfer's as it is. [length per
    length]
    """


class CenterBallsResult(AnswerModel):
    """Every stock ball that touches the cone, ascending."""

    balls: list[CenterBallReading]
    """The balls, smallest first."""
    middle_ball_diameter: float
    """The ball of these that touches nearest to the cone's middle. [length]"""
    not_stated: list[str]
    """
    Fields of the request that were not stated: nothing is known of them, and nothing
    counted.
    """


class CenterCalloutResult(AnswerModel):
    """The hole called out, in millimetres, and how it is written."""

    type: Literal["A", "B", "C", "D", "R"] | str
    """Its type; D where it is tapped."""
    hole_key: str | None
    """Row of the tables; null where none has this size."""
    standard_name: str
    """Standard that the text names; empty where none."""
    thread: str | None
    """Its thread; null but for type D."""
    second_figure_is: Literal["cone-diameter", "chamfer-diameter", "not-sent"] | str
    """
    What the second figure was read as: ISO 6411 writes the chamfer of type B, DIN 332 its
    cone.
    """
    pilot_diameter_mm: float | None
    """Pilot, or bore over a thread. [millimetre]"""
    smallest_pilot_diameter_mm: float | None
    """Smallest pilot by the drill's tolerance k12; null of type D. [millimetre]"""
    largest_pilot_diameter_mm: float | None
    """Largest by the same. [millimetre]"""
    cone_diameter_mm: float | None
    """Largest diameter of the cone: a limit, since the drill's body rubs beyond. [millimetre]"""
    chamfer_diameter_mm: float | None
    """Protecting chamfer at the face; null where the type has none. [millimetre]"""
    included_angle: Angle
    """The cone's; of R and DR about, at its middle."""
    callout: str
    """As ISO 6411 writes it, with a decimal comma."""
    callout_with_point: str
    """The same with a decimal point."""
    drawing_symbol: str
    """Symbol that the drawing shows with it, in words."""


class CenterContactResult(AnswerModel):
    """Where the center bears, and how the work shifts."""

    svg: str | None
    """The drawing, as SVG; null where `formats` did not ask for it."""
    bearing: Literal["whole-cone", "mouth", "small-end"] | str
    """`mouth` or `small-end`: an edge carries; `whole-cone`: the angles match."""
    contact_diameter: float
    """Largest diameter at which it bears. [length]"""
    gap_at_other_end: float
    """Radial gap at the other end of the cone. [length]"""
    point_from_mouth: float
    """How far the center's sharp point would lie inside the mouth. [length]"""
    axial_shift: float | None
    """
    How far the work shifts along the axis for `diameter_error_limit`, with the hole's depth
    kept; null where that was not stated. [length]
    """
    not_stated: list[str]
    """`diameter_error_limit` where it was not sent."""


class CenterError(RequestModel):
    """How far a center's cone is off the axis of rotation."""

    eccentricity: float
    """Its eccentricity, half its TIR. [length, 0 to 10000]"""
    high_spot: float | str | None = None
    """
    Direction in which its cone lies off, in degrees on the spindle; not stated where
    absent: of an eccentric center without it only the worst clocking is told. [degree, -360
    to 360; or text in degrees, minutes, seconds]
    """
    turns: bool
    """True for a center that turns with the work."""


class CenterHoleBall(AnswerModel):
    """The check over a ball."""

    ball_diameter: float
    """Diameter of the ball. [length]"""
    contact_diameter: float
    """Circle on which it touches the cone: d cos α. [length]"""
    height_over_face: float
    """Height of its top over the face, chamfer counted; negative below the face. [length]"""
    height_per_diameter: float
    """Change of that height for a unit of mouth diameter. [length per length]"""
    found_diameter: float | None
    """Mouth diameter by the measured height; null where none was sent. [length]"""
    diameter_error: float | None
    """Found less wanted diameter; null where no height was sent. [length]"""


class CenterHoleByShaft(AnswerModel):
    """Center hole for a range of shafts; all in millimetres."""

    key: str
    """Key of the row."""
    over: float
    """Shafts above this diameter. [millimetre]"""
    up_to: float | None
    """And up to this one; null without an end. [millimetre]"""
    pilot_diameter_mm: float
    """Diameter of the pilot: d1. [millimetre]"""
    cone_diameter_mm: float
    """Largest diameter of the 60° cone: d2. [millimetre]"""
    source: str
    """Where the row comes from."""
    standing: Literal["published", "derived", "common-practice-no-source", "from-memory"] | str
    """How it is known."""
    note: str
    """What to mind; empty where nothing."""


class CenterHoleByShaftList(AnswerModel):
    """Center holes by shaft diameter: every row."""

    by_shaft: list[CenterHoleByShaft]
    """The rows, in order."""


class CenterHoleResult(AnswerModel):
    """Pilot, countersink and depth."""

    svg: str | None
    """The drawing, as SVG; null where `formats` did not ask for it."""
    key: str
    """Key of the size used."""
    type: Literal["A", "B", "R", "plain", "bell"] | str
    """Its type."""
    pilot_diameter: float
    """Diameter of the pilot. [length]"""
    mouth_diameter: float
    """Diameter at the mouth of the cone. [length]"""
    cone_diameter: float
    """Largest that the table gives this size. [length]"""
    cone_depth: float | None
    """
    Depth of the cone, pilot's edge to mouth; null for type R, whose wall is an arc.
    [length]
    """
    chamfer_diameter: float | None
    """Protecting chamfer at the face. [length]"""
    chamfer_depth: float
    """Depth of the protecting chamfer; 0 without one. [length]"""
    depth_to_pilot_edge: float | None
    """Face to the edge of the pilot; null for type R. [length]"""
    tool_depth_min: float | None
    """Face to the drill's tip with the shortest pilot of the table. [length]"""
    tool_depth_max: float | None
    """Face to the drill's tip with the longest pilot of the table. [length]"""
    depth_min: float | None
    """
    Least depth of the whole hole by the table, at its full mouth; null where it gives none.
    [length]
    """
    cut_off: float | None
    """Length to cut off where the hole may not stay; null where the table gives none. [length]"""
    ball: CenterHoleBall | None
    """The check over a ball; null for type R."""
    standing: Literal["published", "derived", "common-practice-no-source", "from-memory"] | str
    """How the hole's dimensions are had."""
    drill_standing: (
        Literal["published", "derived", "common-practice-no-source", "from-memory"] | str
    )
    """How the pilot's length is had, on which the tool depths stand."""


class CenterHoleRow(AnswerModel):
    """One row of the table, in its own units."""

    key: str
    """Key to send as `key`."""
    type: Literal["A", "B", "R", "plain", "bell"] | str
    """A, B, R, plain or bell."""
    units: Literal["in", "mm"] | str
    """Unit of its lengths."""
    pilot_diameter: float
    """Diameter of the pilot. [length]"""
    cone_diameter: float
    """Largest diameter of the 60° cone (of the arc, for type R). [length]"""
    chamfer_diameter: float | None
    """Protecting chamfer, 120°; type B. [length]"""
    chamfer_depth: float | None
    """Its depth by the table; type B. [length]"""
    depth_min: float | None
    """Least depth of the whole hole. [length]"""
    cut_off: float | None
    """Length to cut off where the hole may not stay. [length]"""
    pilot_length_min: float | None
    """Shortest pilot of the drill. [length]"""
    pilot_length_max: float | None
    """Longest pilot of the drill. [length]"""
    body_diameter: float
    """Body of the drill. [length]"""
    arc_radius_min: float | None
    """Smallest radius of the arc; type R. [length]"""
    arc_radius_max: float | None
    """Largest radius of the arc; type R. [length]"""
    source: str
    """Where the row comes from."""
    standing: Literal["published", "derived", "common-practice-no-source", "from-memory"] | str
    """How the hole's dimensions are had."""
    drill_standing: (
        Literal["published", "derived", "common-practice-no-source", "from-memory"] | str
    )
    """How pilot lengths and body are had."""


class CenterLimit(AnswerModel):
    """One limit in every form, all of one meaning for a round cone that is only off center."""

    eccentricity: float
    """Offset of the cone's axis from the shank's. [length]"""
    tir: float
    """Full indicator movement square to the axis: twice the eccentricity. [length]"""
    zone_diameter: float
    """Diameter of the coaxiality zone: twice the eccentricity. [length]"""
    tir_on_cone: float
    """Full indicator movement square to the cone's surface: 2 e cos α. [length]"""


class CenterLimitsResult(AnswerModel):
    """The limits of this center, for each way of using it."""

    seen_percent: float
    """
    Share of this center's eccentricity that the work sees at the station: 100 (1 - z/L).
    [percent]
    """
    live: CenterLimit
    """
    For a live center, which turns with the work: its eccentricity is runout of the work,
    and moves its axis.
    """
    dead: CenterLimit | None
    """
    For a dead center, which stands still: its eccentricity only moves the work's axis. Null
    where no position is given, since it makes no runout.
    """
    dead_reseated: CenterLimit | None
    """
    For a dead center that may be put back at any clocking between parts: from part to part
    the axis may then move by twice as much.
    """


class CenterOutOfRoundResult(AnswerModel):
    """What reaches the work at this center; a station sees its share, see centers.limits."""

    work_out_of_roundness: float | None
    """
    Out-of-roundness that the work gets, peak to valley, without friction; null where forces
    were not stated and it depends on them. [length]
    """
    axis_offset_standing: float | None
    """Offset at which the work's axis stands still, at most; null as above. [length]"""
    reaches_percent: float | None
    """Work's out-of-roundness over the seat's; null as above, and of a round seat. [percent]"""
    steady_side_force_ratio: float
    """
    Side force over axial force up to which the seat rests on all lobes and nothing reaches
    the work; 0 of an oval.
    """
    lifts_side_force_ratio: float
    """The ratio at which the work is lifted out of its seat: 1 / tan α."""
    work_lobes: int
    """Lobes of the work; 0 where nothing can reach it. [count]"""
    not_stated: list[str]
    """
    Fields of the request that were not stated: nothing is known of them, and nothing
    counted.
    """


class CenterPointEntry(AnswerModel):
    """Included angle of centers and their holes for a kind of work."""

    key: str
    """Key of the row."""
    purpose: str
    """What it is for."""
    included_angle: Angle
    """Included angle of point and hole."""
    largest_mass_kg: float | None
    """Heaviest work that it is for, in kilograms; null where none is given. [kilogram]"""
    source: str
    """Where the row comes from."""
    standing: Literal["published", "derived", "common-practice-no-source", "from-memory"] | str
    """How it is known."""
    note: str
    """What to mind; empty where nothing."""


class CenterPointList(AnswerModel):
    """Points of lathe centers: every row."""

    points: list[CenterPointEntry]
    """The rows, in order."""


class CenterRegrindResult(AnswerModel):
    """
    What comes off, and what becomes of the length; null where nothing was stated of the
    wear.
    """

    needed_normal: float | None
    """Layer below the mean surface that cleans it up, square to the surface. [length]"""
    downfeed_from_first_touch: float | None
    """Downfeed from the first spark to clean. [length]"""
    off_diameter: float | None
    """What the cone's diameters lose. [length]"""
    point_loss: float | None
    """How far the point comes back, and work of any hole with it. [length]"""
    point_stick_out_after: float | None
    """Nose to point afterwards; null without `point_stick_out`. [length]"""
    regrinds_left: int | None
    """
    How many such regrinds the least stick-out leaves, this one counted; null where it was
    not stated, or nothing comes off. [count]
    """
    not_stated: list[str]
    """
    Fields of the request that were not stated: nothing is known of them, and nothing
    counted.
    """


class ChooseSinePlate(RequestModel):
    """The sine plate with a flat wheel, table traversed."""

    center_distance: float
    """Distance between the centers of the two rolls, in `units`. [length, 1e-06 to 10000]"""
    stack_error_limit: float | None = None
    """Largest error ± of the stack as wrung, in `units`. [length, 0 to 10000]"""
    plate_error_limit_arcsec: float | None = None
    """
    Largest error ± of the plate's angle, in arc-seconds, by all that is not stated beside
    it: center distance, rolls, face, table, dirt and temperature, as `sine.uncertainty` has
    them. [arcsecond, 0 to 324000]
    """
    axis_pitch_error_limit_arcsec: float | None = None
    """
    Largest error ± of the fixture's axis from parallel to the plate, in arc-seconds, in the
    plane in which the plate tilts. [arcsecond, 0 to 324000]
    """
    axis_yaw_error_limit_arcsec: float | None = None
    """
    Largest error ± of the work's axis out of the plane in which the angle is set, in
    arc-seconds; acts by its square. Under a wheel above the work: the axis turned on the
    plate, or about the vertical; beside a wheel or its side: one end of it high.
    [arcsecond, 0 to 18000]
    """
    wheel_breakdown: float | None = None
    """
    Breakdown of the wheel over the length of the surface, square to it, in `units`; 0 where
    the traverse evens it out. [length, 0 to 10000]
    """
    largest_angle: float | str | None = None
    """
    Largest angle that the plate reaches, in degrees. [degree, over 0, under 90; or text in
    degrees, minutes, seconds]
    """
    setup_minutes: float = 30.0
    """Time to set up, in minutes (default: common practice, no source). [minute, 0 to 10000]"""
    inspection_minutes: float = 5.0
    """Time to inspect the first piece, in minutes (same standing). [minute, 0 to 10000]"""


class ChooseWheelSide(RequestModel):
    """The wheel's side, work swivelled to it."""

    rated_for_side: bool | None = None
    """
    Whether the wheel is stated to be rated for grinding with its side. Absent where it is
    not known: then this way is ruled out.
    """
    usable_width: float
    """Radial width of the side that may grind, in `units`. [length, 1e-06 to 10000]"""
    swivel_error_limit_arcsec: float | None = None
    """
    Largest error ± of the set swivel angle, in arc-seconds, in the plane in which the work
    swivels. [arcsecond, 0 to 324000]
    """
    side_error_limit_arcsec: float | None = None
    """
    Largest error ± of the side from square to the wheel's axis, in arc-seconds, in the
    plane in which the work swivels. [arcsecond, 0 to 324000]
    """
    axis_yaw_error_limit_arcsec: float | None = None
    """
    Largest error ± of the work's axis out of the plane in which the angle is set, in
    arc-seconds; acts by its square. Under a wheel above the work: the axis turned on the
    plate, or about the vertical; beside a wheel or its side: one end of it high.
    [arcsecond, 0 to 18000]
    """
    side_wear: float | None = None
    """Wear of the side over the surface, square to it, in `units`. [length, 0 to 10000]"""
    setup_minutes: float = 20.0
    """Time to set up, in minutes (same standing). [minute, 0 to 10000]"""
    inspection_minutes: float = 20.0
    """Time to measure the angle, in minutes (same standing). [minute, 0 to 10000]"""


class ChooseWorkhead(RequestModel):
    """A workhead swivelled about the vertical by its scale, a flat wheel beside it."""

    grinder: Literal["surface", "cylindrical"]
    """
    `surface`: the wheel stands above the work, which the table carries past it.
    `cylindrical`: it stands beside the work, both axes at one height (tool grinders too).
    """
    graduation: float | str
    """
    Smallest step that its scale or vernier shows, in degrees; it is set to half of it.
    [degree, over 0, at most 5; or text in degrees, minutes, seconds]
    """
    axis_offset_error_limit: float | None = None
    """
    Largest error ± of the work axis from the wheel axis' height, in `units`; acts by its
    square. [length, 0 to 10000]
    """
    axis_yaw_error_limit_arcsec: float | None = None
    """
    Largest error ± of the work's axis out of the plane in which the angle is set, in
    arc-seconds; acts by its square. Under a wheel above the work: the axis turned on the
    plate, or about the vertical; beside a wheel or its side: one end of it high.
    [arcsecond, 0 to 18000]
    """
    wheel_breakdown: float | None = None
    """
    Breakdown of the wheel over the length of the surface, square to it, in `units`; 0 where
    the traverse evens it out. [length, 0 to 10000]
    """
    largest_angle: float | str | None = None
    """
    Largest angle to which it swivels, in degrees. [degree, over 0, under 90; or text in
    degrees, minutes, seconds]
    """
    setup_minutes: float = 15.0
    """Time to set up, in minutes (same standing). [minute, 0 to 10000]"""
    inspection_minutes: float = 20.0
    """Time to measure the angle, in minutes (same standing). [minute, 0 to 10000]"""


class ClearanceChange(AnswerModel):
    """A change that opens the gaps, by the least that will do."""

    kind: Literal["stick-out", "riser", "wheel-diameter", "tilt-direction"] | str
    """What to change."""
    change_to: float | None
    """Its new value: stick-out, height of riser, or diameter; null for the direction. [length]"""
    keeps_gap_wanted: bool
    """True where this change alone gives the gap wanted everywhere."""
    action: str
    """What to do, in plain words."""


class ClearanceGuard(RequestModel):
    """The wheel's guard, or whatever of the head hangs lowest, as the box about it."""

    length: float
    """
    Over all, in the plane of the wheel, centered on the spindle, in `units`. [length, 1e-06
    to 10000]
    """
    width: float
    """Over all, along the spindle, centered on the wheel, in `units`. [length, 1e-06 to 10000]"""
    lower_edge_below_spindle: float
    """
    From the spindle's center down to its lower edge, in `units`; negative where the edge is
    above. [length, -10000 to 10000]
    """


class ClearancePlate(RequestModel):
    """The sine plate with the distance of its rolls."""

    length: float
    """Length up the slope, in `units`. [length, 1e-06 to 10000]"""
    thickness: float
    """From its top to the centers of its rolls, in `units`. [length, 1e-06 to 10000]"""
    closed_height: float
    """Its top over the table at zero tilt, in `units`. [length, 1e-06 to 10000]"""
    roll_diameter: float
    """Diameter of the rolls, in `units`. [length, 1e-06 to 10000]"""
    low_roll_from_end: float | None = None
    """
    From the plate's low end to the center of the low roll, in `units`. Absent: the rolls
    lie in the middle of the plate's length. A plate whose low end would tilt into its base
    is refused. [length, 0 to 10000]
    """
    center_distance: float
    """Distance between the centers of the rolls, in `units`. [length, 1e-06 to 10000]"""


class ClearancePoint(AnswerModel):
    """A point in the plane of the ground line, or in the one of two views that decides."""

    x: float
    """Along the ground line, from its large or high end. [length]"""
    z: float
    """From the ground line into the wheel. [length]"""


class ClearanceTurningPart(RequestModel):
    """
    A part that turns with the work, or stands about its axis.

    A collet nut, a dog by the circle that it sweeps, a tailstock's center before the nose.
    """

    name: str
    """What it is called in the answer. [1 to 60 characters]"""
    diameter: float
    """Largest diameter that it sweeps in a full turn, in `units`. [length, 1e-06 to 10000]"""
    length: float
    """Length along the axis, in `units`. [length, 1e-06 to 10000]"""
    behind_face: float = 0.0
    """
    From the nose's face back to the part's front end, in `units`; negative where it stands
    before the face. [length, -10000 to 10000]
    """


class ClearanceWheel(RequestModel):
    """Wheel, flanges and guard."""

    worn_diameter: float | None = None
    """Diameter that it will wear to, in `units`. [length, 1e-06 to 10000]"""
    flange_diameter: float
    """Diameter of the flanges, in `units`. [length, 1e-06 to 10000]"""
    flange_width: float
    """Width over both flanges, in `units`; at least the wheel's. [length, 1e-06 to 10000]"""
    guard: ClearanceGuard | None = None
    """The guard. Absent: it is left out, the answer says so, and nothing is said to hold."""
    diameter: float
    """Diameter of the wheel, in `units`. [length, 1e-06 to 10000]"""
    width: float
    """Width of the wheel, in `units`. [length, 1e-06 to 10000]"""


class ConeWork(RequestModel):
    """A cone whose axis is parallel to the wheel's."""

    included_angle: float | str | None = None
    """
    Angle between opposite surfaces of the cone, in degrees. [degree, over 0.01, under 179;
    or text in degrees, minutes, seconds]
    """
    half_angle: float | str | None = None
    """
    Angle between the cone's axis and its surface, in degrees. [degree, over 0.005, under
    89.5; or text in degrees, minutes, seconds]
    """
    taper_per_foot: float | None = None
    """
    Inches of diameter a foot of length, whatever `units` are. [inch per foot, 0.003 to
    2000]
    """
    one_in_x: float | None = None
    """The x of a taper written 1:x, on the diameter (ISO 1119). [0.005 to 5000]"""
    rate_of_taper: float | None = None
    """
    Change of diameter for one unit of length, C = 1/x (ISO 3040). [length per length,
    0.0002 to 200]
    """
    designation: str | None = None
    """
    Designation of a standard taper or rate, as `GET /v1/tapers/standard` and `GET
    /v1/tapers/rates` list them, or what a toolmaker calls it: `MT3`, `B&S 9`, `JT33`,
    `NT40`, `1:20`. The answer says what it was read as. [1 to 60 characters]
    """
    large_diameter: float
    """Larger diameter to grind, in `units`. [length, 1e-06 to 10000]"""
    small_diameter: float
    """Smaller diameter to grind, in `units`; 0 for a sharp point. [length, 0 to 10000]"""
    kind: Literal["cone"]


class CorrectionAngle(RequestModel):
    """An angle as measured: a cone's included or half angle, or a face's; or its error."""

    standard_uncertainty_arcsec: float | None = None
    """Standard uncertainty of the angle as it was measured. [arcsecond, 0 to 324000]"""
    measurement_error_limit_arcsec: float | None = None
    """Largest error ± of the angle as it was measured. [arcsecond, 1e-06 to 324000]"""
    kind: Literal["angle"]
    measured_included_angle: float | str | None = None
    """
    Included angle of the cone as measured, in degrees; its uncertainty is then that of the
    included angle. [degree, over 0, under 180; or text in degrees, minutes, seconds]
    """
    measured_half_angle: float | str | None = None
    """
    Half angle of the cone as measured, in degrees. [degree, over 0, under 90; or text in
    degrees, minutes, seconds]
    """
    measured_face_angle: float | str | None = None
    """
    Angle of the face to its base as measured, in degrees. [degree, over 0, under 90; or
    text in degrees, minutes, seconds]
    """
    measured_included_angle_error_arcsec: float | None = None
    """Included angle as measured less the one wanted. [arcsecond, -324000 to 324000]"""
    measured_error_arcsec: float | None = None
    """
    Half angle, or the face's angle, as measured less the one wanted. [arcsecond, -324000 to
    324000]
    """


class CorrectionCause(AnswerModel):
    """A likely cause, and the check that tells it apart."""

    cause: (
        Literal[
            "wrong-block",
            "dirt-under-a-roll",
            "plate-error",
            "axis-not-parallel",
            "axis-yawed",
            "wheel-breakdown",
            "diamond-wear",
            "diamond-height",
            "axis-height",
            "dresser-error",
            "scale-error",
            "wrong-hinge-order",
            "wrong-hand",
            "half-for-included",
            "tangent-for-sine",
            "complement-set",
            "base-step-left-out",
            "seat-of-the-work",
            "temperature",
            "measurement",
            "runout-of-the-socket",
            "runout-of-the-part",
        ]
        | str
    )
    """The cause."""
    evidence: Literal["for", "none", "against"] | str
    """
    `for`: something seen speaks for it and nothing against; `against`: something speaks
    against it; `none`: nothing stated says anything of it.
    """
    for_it: list[str]
    """What speaks for it: observations, by their fields."""
    against_it: list[str]
    """What speaks against it; `sense` where it turns the angle the other way only."""
    observation: str
    """Observation, or reading, that tells it from the others, by its field."""
    check: str
    """The check that tells it apart, in plain words."""
    mend: str
    """What to do where it is this."""
    source: str
    """Where that comes from."""
    standing: Literal["published", "derived", "common-practice-no-source", "from-memory"] | str
    """How it is had."""


class CorrectionCompoundPlate(RequestModel):
    """A compound plate, the face level on it under a flat wheel."""

    base_center_distance: float
    """Distance between the centers of the two rolls, in `units`. [length, 1e-06 to 10000]"""
    upper_center_distance: float
    """Distance between the centers of the two rolls, in `units`. [length, 1e-06 to 10000]"""
    base_axis: Literal["x", "y"]
    """
    Axis of the machine along which the hinge of the base plate lies: `x` (left to right;
    the base raises the back or the front) or `y` (front to back; the base raises the right
    or the left). The upper plate's hinge lies along the other. Always required: the same
    two stacks in the other order give another surface.
    """
    base_step: float = 0.0
    """Stack under the base plate's roll at which it stands at zero. [length, -10000 to 10000]"""
    upper_step: float = 0.0
    """Stack under the upper plate's roll at which it stands at zero. [length, -10000 to 10000]"""
    kind: Literal["compound-plate"]
    base_blocks: list[float] | None = None
    """
    Blocks under the base plate's roll now, in `units`; absent as above. [1 to 8 entries,
    each length, 1e-06 to 10000]
    """
    upper_blocks: list[float] | None = None
    """
    Blocks under the upper plate's roll now, in `units`. [1 to 8 entries, each length, 1e-06
    to 10000]
    """


class CorrectionCone(RequestModel):
    """A cone or taper, by its slope."""

    included_angle: float | str | None = None
    """
    Angle between opposite surfaces of the cone, in degrees. [degree, over 0.01, under 179;
    or text in degrees, minutes, seconds]
    """
    half_angle: float | str | None = None
    """
    Angle between the cone's axis and its surface, in degrees. [degree, over 0.005, under
    89.5; or text in degrees, minutes, seconds]
    """
    taper_per_foot: float | None = None
    """
    Inches of diameter a foot of length, whatever `units` are. [inch per foot, 0.003 to
    2000]
    """
    one_in_x: float | None = None
    """The x of a taper written 1:x, on the diameter (ISO 1119). [0.005 to 5000]"""
    rate_of_taper: float | None = None
    """
    Change of diameter for one unit of length, C = 1/x (ISO 3040). [length per length,
    0.0002 to 200]
    """
    designation: str | None = None
    """
    Designation of a standard taper or rate, as `GET /v1/tapers/standard` and `GET
    /v1/tapers/rates` list them, or what a toolmaker calls it: `MT3`, `B&S 9`, `JT33`,
    `NT40`, `1:20`. The answer says what it was read as. [1 to 60 characters]
    """
    kind: Literal["cone"]
    included_angle_tolerance_arcsec: float | None = None
    """
    ± tolerance of the included angle; absent, nothing is judged. [arcsecond, 1e-06 to
    324000]
    """


class CorrectionContact(RequestModel):
    """Where the cone touches its gauge, and how far the two gape at the other end."""

    kind: Literal["contact"]
    surface: Literal["external", "internal"]
    """
    Surface that the indicator reads: `external`, a shaft or cone from outside; `internal`,
    a bore or socket. Highest is where metal comes nearest to the indicator: on a shaft
    toward its center's offset, in a bore opposite to it.
    """
    touches: Literal["large-end", "small-end", "both-ends"]
    """Where gauge and cone touch: at the large or the small end, or `both-ends`, all over."""
    contact_length: float
    """
    Length along the axis from the end that touches to the open end, in `units`. [length,
    1e-06 to 10000]
    """
    gap_at_other_end: float | None = None
    """
    Radial gap at the open end, in `units`, such as by a feeler or shake. [length, 0 to
    10000]
    """
    gap_error_limit: float | None = None
    """Largest error ± of that gap, in `units`. [length, 0 to 10000]"""
    marked_share_percent: float | None = None
    """Share of that length that the film marked, from the touching end. [percent, 1 to 100]"""
    marked_share_error_limit_percent: float | None = None
    """Largest error ± of that share, as judged by eye. [percent, 0 to 100]"""
    blue_film: float | None = None
    """Thickness of the marking film, in `units`. [length, 1e-06 to 10000]"""
    blue_film_error_limit: float | None = None
    """Largest error ± of that thickness, in `units`. [length, 0 to 10000]"""
    gauge_angle_error_limit_arcsec: float | None = None
    """Largest error ± of the gauge's own included angle. [arcsecond, 0 to 324000]"""


class CorrectionFace(RequestModel):
    """A plane face at an angle to its base."""

    kind: Literal["angled-face"]
    face_angle: float | str
    """
    Angle between the face and the base, in degrees. [degree, over 0, under 90; or text in
    degrees, minutes, seconds]
    """
    tolerance_arcsec: float | None = None
    """± tolerance of that angle; absent, nothing is judged. [arcsecond, 1e-06 to 324000]"""


class CorrectionObservations(RequestModel):
    """What was seen of the error. One left out is not stated: nothing is concluded from it."""

    repeats_on_second_stack: bool | None = None
    """Whether the same error comes back on a second stack of that height."""
    grows_along_batch: bool | None = None
    """Whether it grows from piece to piece, and falls back at a dress."""
    surface_form: Literal["straight", "crowned", "hollow"] | None = None
    """How the ground surface runs from end to end under a knife edge."""
    changes_on_reseating: bool | None = None
    """Whether it changes when the work is seated again."""
    follows_temperature: bool | None = None
    """Whether it goes with the temperature of room, coolant or work."""
    repeats_when_measured_again: bool | None = None
    """Whether the same is measured again, by a second means where there is."""


class CorrectionScale(AnswerModel):
    """The change of a scale's setting."""

    scale_reading_now: Angle
    """Reading as it stands."""
    turn_arcsec: float
    """How far to turn it, exact: positive to a larger reading. [arcsecond]"""
    scale_reading: Angle
    """Reading to set: the nearest graduation where that was stated, else exact."""
    indicator_movement: float | None
    """
    How far an indicator at `scale_radius` moves by that turn, along the chord: so it is set
    exactly, whatever the graduation. Null without the radius. [length]
    """


class CorrectionScaleDresser(RequestModel):
    """A wheel dressed to the angle by a dresser with a scale."""

    kind: Literal["scale-dresser"]
    zero: Literal["wheel-axis", "wheel-side"] = "wheel-axis"
    """
    Direction of the diamond's path with the dresser at zero: along the wheel's axis (it
    dresses flat), or along its side.
    """
    graduation: float | str | None = None
    """
    Smallest step that the scale shows, in degrees. [degree, over 0, at most 5; or text in
    degrees, minutes, seconds]
    """
    scale_reading_now: float | str | None = None
    """
    Reading of the scale now, in degrees. Absent: what the angle asks for. [degree, -90 to
    180; or text in degrees, minutes, seconds]
    """


class CorrectionSineDresser(RequestModel):
    """
    A wheel dressed to the angle by a dresser on blocks, the work's axis parallel to its
    own.
    """

    kind: Literal["sine-dresser"]
    center_distance: float
    """Distance between the centers of the two rolls, in `units`. [length, 1e-06 to 10000]"""
    zero: Literal["wheel-axis", "wheel-side"] = "wheel-axis"
    """
    Direction of the diamond's path with the dresser at zero: along the wheel's axis (it
    dresses flat), or along its side.
    """
    blocks: list[float] | None = None
    """
    Blocks under the dresser's high roll now, in `units`. [1 to 8 entries, each length,
    1e-06 to 10000]
    """
    low_blocks: list[float] | None = None
    """
    Blocks under its low roll now, in `units`; with `blocks`. [1 to 8 entries, each length,
    1e-06 to 10000]
    """


class CorrectionSinePlate(RequestModel):
    """A sine plate or bar, at the half angle or the face's, or, turned a quarter, 90° less it."""

    kind: Literal["sine-plate"]
    center_distance: float
    """Distance between the centers of the two rolls, in `units`. [length, 1e-06 to 10000]"""
    base_step: float = 0.0
    """
    Height of the low roll's seat over the high roll's, in `units`: the stack at which the
    plate stands at zero. [length, -10000 to 10000]
    """
    low_roll_hinged: bool = False
    """True where the low roll is a hinge, so that no stack goes under it."""
    blocks: list[float] | None = None
    """
    Blocks under the high roll now, in `units`. Absent: the height that the angle asks for.
    [1 to 8 entries, each length, 1e-06 to 10000]
    """
    low_blocks: list[float] | None = None
    """
    Blocks under the low roll now, in `units`; with `blocks`. [1 to 8 entries, each length,
    1e-06 to 10000]
    """
    turned_quarter: bool = False
    """
    True where the work stood turned a quarter, its axis or base square to the plate's top:
    the plate then has 90° less its angle.
    """


class CorrectionSlip(AnswerModel):
    """A single mistake in setting that explains what was measured within its uncertainty."""

    slip: (
        Literal["wrong-block", "blocks-exchanged", "block-left-out", "block-too-many"]
        | str
        | Literal[
            "included-for-half",
            "half-of-half",
            "tangent-for-sine",
            "complement-set",
            "base-step-left-out",
            "hinges-exchanged",
            "other-frame",
            "angles-not-converted",
            "mirrored",
        ]
    )
    """What went wrong."""
    cause: (
        Literal[
            "wrong-block",
            "dirt-under-a-roll",
            "plate-error",
            "axis-not-parallel",
            "axis-yawed",
            "wheel-breakdown",
            "diamond-wear",
            "diamond-height",
            "axis-height",
            "dresser-error",
            "scale-error",
            "wrong-hinge-order",
            "wrong-hand",
            "half-for-included",
            "tangent-for-sine",
            "complement-set",
            "base-step-left-out",
            "seat-of-the-work",
            "temperature",
            "measurement",
            "runout-of-the-socket",
            "runout-of-the-part",
        ]
        | str
    )
    """The cause that it is; its check in `causes` tells it apart."""
    words: str
    """The mistake in plain words."""
    setting: Literal["plate", "base", "upper", "dresser", "swivel"] | str | None
    """Setting that a block is wrong in; null where the whole setting is."""
    roll: Literal["high-roll", "low-roll"] | str | None
    """
    Roll that its stack stands under; null of a compound plate, whose stacks have one each,
    and where the whole setting is wrong.
    """
    meant: float | None
    """Block that belongs there; of blocks exchanged the one of the first stack. [length]"""
    wrung: float | None
    """Block wrung there; of blocks exchanged the one of the second stack. [length]"""
    likeness: (
        Literal[
            "same-size",
            "same-digits",
            "neighbours-in-the-box",
            "digits-swapped",
            "one-digit",
            "none",
        ]
        | str
        | None
    )
    """How the one block is taken for the other; null of a whole setting."""
    slip_errors_arcsec: list[float]
    """
    Error that it makes: of the half angle or the face, or of a compound face in the front
    view and the side view. [each arcsecond]
    """
    unexplained_arcsec: list[float]
    """What was measured less that. [each arcsecond]"""
    right_heights: list[float]
    """
    Difference of stacks that sets what is wanted, of a compound plate the stack of each
    plate; empty of a scale. [each length]
    """


class CorrectionStack(AnswerModel):
    """The stack under one roll: what comes out, what goes in, and what it is then."""

    roll: Literal["high-roll", "low-roll"] | str
    """Roll that it stands under."""
    remove: list[float]
    """Blocks to take out, largest first. [each length]"""
    add: list[float]
    """Blocks to put in, largest first. [each length]"""
    blocks: list[float]
    """The new stack, largest first. [each length]"""
    total: float
    """Its height. [length]"""


class CorrectionSwivel(RequestModel):
    """A workhead or table swivelled by the half angle under a flat wheel."""

    kind: Literal["swivel"]
    graduation: float | str | None = None
    """
    Smallest step that the scale shows, in degrees. [degree, over 0, at most 5; or text in
    degrees, minutes, seconds]
    """
    scale_reading_now: float | str | None = None
    """
    Reading of the scale now, in degrees. Absent: the half angle. [degree, -90 to 180; or
    text in degrees, minutes, seconds]
    """
    scale_radius: float | None = None
    """Radius at which an indicator reads the swivel, in `units`. [length, 1e-06 to 10000]"""


class CurveAdvisory(AnswerModel):
    """An advisory, and the points whose answer has it; its message is that of the first."""

    code: str
    """Stable code of the advisory."""
    severity: Literal["note", "caution", "stop"] | str
    """`note`: a better way exists; `caution`: mind this; `stop`: do not run this."""
    message: str
    """What to mind, in plain words."""
    count: int
    """How many points. [at least 1]"""
    points: list[list[int]]
    """The points, from 0: first and last of each unbroken run."""


class CurveAxis(AnswerModel):
    """One of the numbers that run."""

    field: str
    """The field of the request."""
    unit: str | None
    """Its unit; `length` is in the request's `units`."""
    values: list[float]
    """Its numbers, in order."""


class CurveColumn(AnswerModel):
    """One value of the result at every point."""

    name: str
    """Its path in the result."""
    unit: str | None
    """Its unit; `length` is in the request's `units`; null where it has none."""
    values: list[float | int | str | bool | None]
    """
    One a point, in the order of the points; null where the result says null, where the
    point is refused, and where its answer says stop (but a judgement that does not say yes
    stands).
    """


class CurveCounts(AnswerModel):
    """How the points ended."""

    points: int
    """Points asked for. [at least 1]"""
    ok: int
    """Points with an answer that does not say stop. [at least 0]"""
    refused: int
    """Points with a problem. [at least 0]"""
    with_stop: int
    """Points whose answer says stop. [at least 0]"""


class CurveRange(RequestModel):
    """Numbers at even steps, both ends among them."""

    from_: Annotated[float, Field(alias="from")]
    """The first, less than the last."""
    to: float
    """The last."""
    count: int
    """How many, the ends among them. [2 to 10000]"""


class Direction(AnswerModel):
    """A direction round a turn in an answer, in two forms of the same value."""

    degrees: float
    """Decimal degrees, from 0 to below 360. [degree]"""
    dms: str
    """Degrees and minutes, rounded to the minute: finer no part is marked."""


class DirectionContribution(AnswerModel):
    """One contribution to a direction, in degrees."""

    name: str
    """
    What contributes: the field of the request that states it, spelled as in `not_stated`;
    or, where no one field does, a name of its own, which has a label.
    """
    of: str | None
    """
    Which one, where several may bear one name: a block by its size, a film by its number,
    an expansion of blocks by their material, a measured size by its field; else null.
    """
    input_value: float
    """
    Half-width of the input's distribution, or its standard deviation where it is normal, or
    the length of a vector of unknown phase, in `input_unit`. [stated]
    """
    input_unit: str
    """Unit of the input, as `x-unit` names units."""
    sensitivity: float
    """
    Change of the estimate for one unit of the input, signed; of a one-sided input the
    change at its limit, over that limit. [per stated]
    """
    distribution: Literal["normal", "rectangular", "triangular", "u-shaped", "uniform-phase"] | str
    """
    Its distribution (JCGM 100:2008, 4.3; JCGM 101:2008, 6.4); `uniform-phase` of a vector
    that may point any way, all alike.
    """
    standard_uncertainty: float
    """What it adds to the estimate's standard uncertainty. [degree]"""
    worst_case: float | None
    """
    Largest change of the estimate that it can cause; null where its spread was estimated
    from few readings, which is no limit. [degree]
    """
    share_percent: float
    """Its share of the combined variance. [percent]"""


class DirectionEstimate(AnswerModel):
    """A direction round a turn with its uncertainty in degrees."""

    value: Direction | None
    """Best estimate, known offsets and the means of one-sided errors included."""
    standard_uncertainty: float | None
    """Combined standard uncertainty; null where no contribution was stated. [degree]"""
    degrees_of_freedom: float | None
    """
    Effective degrees of freedom (Welch and Satterthwaite); null where they are not limited,
    as with stated limits.
    """
    expanded_uncertainty: float | None
    """Expanded uncertainty: half of the width that covers `coverage_probability`. [degree]"""
    coverage_factor: float | None
    """Coverage factor k: expanded over standard uncertainty; null where both are 0."""
    coverage_probability: float | None
    """
    Probability, 0 to 1, that value ± expanded uncertainty covers, by the distributions of
    the contributions (JCGM 101:2008), or by Student's where degrees of freedom are limited
    (JCGM 100:2008, G.4).
    """
    worst_case: float | None
    """
    Largest error with every stated contribution at its limit at once, known offsets
    included; of a normal contribution three standard deviations. Never less than what
    covers 95 %; null where a contribution has no limit, because its spread was itself
    estimated from few readings (`degrees_of_freedom`). [degree]
    """
    contributions: list[DirectionContribution]
    """What was stated, in a fixed order."""
    not_stated: list[str]
    """Contributions that were not stated: nothing is known of them, and nothing counted."""


class DressedStation(AnswerModel):
    """The cone at one station."""

    work_diameter: float
    """Diameter of the cone. [length]"""
    wheel_radius: float
    """Radius of the wheel that grinds it. [length]"""
    half_angle: Angle
    """Half angle there, from the diamond's height alone."""
    half_angle_error_arcsec: float
    """It, less the one wanted. [arcsecond]"""


class DresserStack(AnswerModel):
    """Gauge blocks that set the dresser."""

    high_blocks: list[float]
    """Blocks under the raised roll, largest first. [each length]"""
    low_blocks: list[float]
    """Blocks under the other roll; empty where one stack does it. [each length]"""
    height_as_set: float
    """Difference of the stacks as built. [length]"""
    angle_as_set: Angle
    """Dresser angle that these stacks give."""
    deviation_arcsec: float
    """
    `angle_as_set` less the dresser angle wanted; a cone's included angle is out by twice as
    much. [arcsecond]
    """


class DressingError(AnswerModel):
    """What one error does to the cone; null, all of it, where the error was not stated."""

    name: (
        Literal[
            "diamond-height",
            "diamond-nose-radius",
            "dresser-angle",
            "wheel-wear",
            "diamond-wear",
            "all-together",
        ]
        | str
    )
    """Which error."""
    half_angle_error_arcsec: float | None
    """Mean half angle over the length, less the one wanted. [arcsecond]"""
    included_angle_error_arcsec: float | None
    """Twice as much. [arcsecond]"""
    end_to_end: float | None
    """What the angle error comes to over the slant, square to the surface. [length]"""
    straightness: float | None
    """
    Departure of the surface from straight: the least distance of two parallel lines that
    hold it. [length]
    """
    diameter_change: float | None
    """
    Change of the diameter at the small end, with the wheel set by touching its periphery.
    [length]
    """
    seen_by: list[str]
    """Inspections of the cone that would show it."""
    seen_by_stack: bool
    """True where checking the dresser's stack for a wrong block can show it."""


class DressingGuideEntry(AnswerModel):
    """Guide values for one purpose."""

    purpose: Literal["roughing", "general", "finishing"] | str
    """Purpose."""
    overlap_low: float
    """Overlap ratio, from."""
    overlap_high: float
    """Overlap ratio, to."""
    depth_low_mm: float
    """Depth of one pass, from. [millimetre]"""
    depth_high_mm: float
    """Depth of one pass, to. [millimetre]"""
    note: str
    """What it does."""
    source: str
    """Where the values come from."""
    standing: Literal["published", "derived", "common-practice-no-source", "from-memory"] | str
    """How they are had."""


class DressingGuideList(AnswerModel):
    """Guide values for dressing: every row."""

    guides: list[DressingGuideEntry]
    """The rows, in order."""


class DressingGuideRange(AnswerModel):
    """What the guide values for one purpose mean for this diamond and wheel."""

    purpose: Literal["roughing", "general", "finishing"] | str
    """Purpose."""
    overlap_low: float
    """Overlap ratio, from."""
    overlap_high: float
    """Overlap ratio, to."""
    largest_traverse: float
    """Traverse at the lower overlap ratio. [length per minute]"""
    smallest_traverse: float
    """Traverse at the higher overlap ratio. [length per minute]"""
    within_guide: bool
    """True where the overlap ratio of this dress lies within."""
    source: str
    """Where the guide values come from."""
    standing: Literal["published", "derived", "common-practice-no-source", "from-memory"] | str
    """How they are had."""


class FaceWork(RequestModel):
    """A plane face at an angle to the table."""

    kind: Literal["face"]
    face_angle: float | str
    """
    Angle between the face and the table, in degrees. [degree, over 0, under 90; or text in
    degrees, minutes, seconds]
    """
    rise: float
    """Height of the face, square to the table, in `units`. [length, 1e-06 to 10000]"""


class FieldProblem(AnswerModel):
    """One field that is wrong, and how."""

    pointer: str
    """JSON pointer (RFC 6901) into the request."""
    message: str
    """What was wanted and what came."""


class GrindingWay(AnswerModel):
    """One way: what it reaches, what it takes, and why it is ruled out."""

    way: Literal["sine-plate", "dressed-wheel", "wheel-side", "swivelled-workhead"] | str
    """Which way."""
    forecast: Literal["holds", "may-not-hold", "does-not-hold", "not-stated"] | str
    """
    Whether the included angle keeps its tolerance: `holds` with a probability of 95 % at
    least, and only where every error of the way was stated; `does-not-hold` with one of 5 %
    at most, or where the way is ruled out.
    """
    included_angle_error_arcsec: ArcsecEstimate
    """
    Error of the included angle to expect, in arc-seconds; its contributions are named by
    the fields of the way.
    """
    first_piece_minutes: float
    """Time to the first good piece: set-up, dressing, grinding, inspection. [minute]"""
    total_minutes: float
    """Time for all pieces. [minute]"""
    inspect: list[str]
    """What to inspect, in order."""
    ruled_out_by: list[str]
    """Why it is ruled out; empty where it is not."""


class InspectedConeFeature(RequestModel):
    """An outer cone between two diameters, such as a center: 0 for a sharp point."""

    included_angle: float | str | None = None
    """
    Angle between opposite surfaces of the cone, in degrees. [degree, over 0.01, under 179;
    or text in degrees, minutes, seconds]
    """
    half_angle: float | str | None = None
    """
    Angle between the cone's axis and its surface, in degrees. [degree, over 0.005, under
    89.5; or text in degrees, minutes, seconds]
    """
    taper_per_foot: float | None = None
    """
    Inches of diameter a foot of length, whatever `units` are. [inch per foot, 0.003 to
    2000]
    """
    one_in_x: float | None = None
    """The x of a taper written 1:x, on the diameter (ISO 1119). [0.005 to 5000]"""
    rate_of_taper: float | None = None
    """
    Change of diameter for one unit of length, C = 1/x (ISO 3040). [length per length,
    0.0002 to 200]
    """
    designation: str | None = None
    """
    Designation of a standard taper or rate, as `GET /v1/tapers/standard` and `GET
    /v1/tapers/rates` list them, or what a toolmaker calls it: `MT3`, `B&S 9`, `JT33`,
    `NT40`, `1:20`. The answer says what it was read as. [1 to 60 characters]
    """
    large_diameter: float
    """Larger diameter to grind, in `units`. [length, 1e-06 to 10000]"""
    small_diameter: float
    """Smaller diameter to grind, in `units`; 0 for a sharp point. [length, 0 to 10000]"""
    cone_angle_grade: (
        Literal[
            "AT1",
            "AT2",
            "AT3",
            "AT4",
            "AT5",
            "AT6",
            "AT7",
            "AT8",
            "AT9",
            "AT10",
            "AT11",
            "AT12",
        ]
        | None
    ) = None
    """Grade of the cone angle."""
    included_angle_band_arcsec: float | None = None
    """
    Whole tolerance of the included angle, from least to most. [arcsecond, over 0, at most
    36000]
    """
    included_angle_tolerance_arcsec: float | None = None
    """± tolerance of the included angle. [arcsecond, 1e-06 to 324000]"""
    disposition: Literal["plus", "minus", "symmetric"] = "symmetric"
    """
    Where a grade or a band lies to the nominal angle; `symmetric` has half of it to either
    side.
    """
    large_diameter_tolerance: float | None = None
    """Tolerance of the large diameter, plus and minus. [length, 0 to 10000]"""
    kind: Literal["cone"]


class InspectedFaceFeature(RequestModel):
    """A plane face at an angle to its base."""

    face_angle: float | str
    """
    Angle between the face and the base, in degrees. [degree, over 0, under 90; or text in
    degrees, minutes, seconds]
    """
    rise: float
    """Height of the face, square to the base, in `units`. [length, 1e-06 to 10000]"""
    tolerance_arcsec: float
    """± tolerance of that angle, in arc-seconds. [arcsecond, 1e-06 to 324000]"""
    kind: Literal["angled-face"]


class InspectedPart(AnswerModel):
    """The part as it was read, with the limits of its angle."""

    kind: Literal["cone", "taper-plug", "taper-socket", "angled-face"] | str
    """Which kind it is."""
    included_angle: Angle | None
    """Included angle; null of a face."""
    half_angle: Angle | None
    """Half angle; null of a face."""
    face_angle: Angle | None
    """Angle between face and base; null of a cone."""
    large_diameter: float | None
    """Diameter at the large end, a socket's mouth; null of a face. [length]"""
    small_diameter: float | None
    """Diameter at the small end, 0 at a point; null of a face. [length]"""
    length: float | None
    """Length along the axis; null of a face. [length]"""
    smallest_allowed_angle: Angle
    """Smallest angle that the tolerance allows: included, of a face to its base."""
    largest_allowed_angle: Angle
    """Largest angle that the tolerance allows."""
    angle_band_arcsec: float
    """Whole tolerance of that angle, from least to most. [arcsecond]"""


class InspectedPlugFeature(RequestModel):
    """A taper plug or shank."""

    included_angle: float | str | None = None
    """
    Angle between opposite surfaces of the cone, in degrees. [degree, over 0.01, under 179;
    or text in degrees, minutes, seconds]
    """
    half_angle: float | str | None = None
    """
    Angle between the cone's axis and its surface, in degrees. [degree, over 0.005, under
    89.5; or text in degrees, minutes, seconds]
    """
    taper_per_foot: float | None = None
    """
    Inches of diameter a foot of length, whatever `units` are. [inch per foot, 0.003 to
    2000]
    """
    one_in_x: float | None = None
    """The x of a taper written 1:x, on the diameter (ISO 1119). [0.005 to 5000]"""
    rate_of_taper: float | None = None
    """
    Change of diameter for one unit of length, C = 1/x (ISO 3040). [length per length,
    0.0002 to 200]
    """
    designation: str | None = None
    """
    Designation of a standard taper or rate, as `GET /v1/tapers/standard` and `GET
    /v1/tapers/rates` list them, or what a toolmaker calls it: `MT3`, `B&S 9`, `JT33`,
    `NT40`, `1:20`. The answer says what it was read as. [1 to 60 characters]
    """
    gauge_diameter: float | None = None
    """
    Diameter at the gauge line, the taper's large end, in `units`; a standard taper has its
    own. [length, 1e-06 to 10000]
    """
    length: float | None = None
    """
    Length from the gauge line to the small end, in `units`; of a standard taper absent
    where its table has one. [length, 1e-06 to 10000]
    """
    cone_angle_grade: (
        Literal[
            "AT1",
            "AT2",
            "AT3",
            "AT4",
            "AT5",
            "AT6",
            "AT7",
            "AT8",
            "AT9",
            "AT10",
            "AT11",
            "AT12",
        ]
        | None
    ) = None
    """Grade of the cone angle."""
    included_angle_band_arcsec: float | None = None
    """
    Whole tolerance of the included angle, from least to most. [arcsecond, over 0, at most
    36000]
    """
    included_angle_tolerance_arcsec: float | None = None
    """± tolerance of the included angle. [arcsecond, 1e-06 to 324000]"""
    disposition: Literal["plus", "minus", "symmetric"] = "symmetric"
    """
    Where a grade or a band lies to the nominal angle; `symmetric` has half of it to either
    side.
    """
    large_diameter_tolerance: float | None = None
    """Tolerance of the large diameter, plus and minus. [length, 0 to 10000]"""
    kind: Literal["taper-plug"]


class InspectedSocketFeature(RequestModel):
    """A taper socket; its large end is its mouth."""

    included_angle: float | str | None = None
    """
    Angle between opposite surfaces of the cone, in degrees. [degree, over 0.01, under 179;
    or text in degrees, minutes, seconds]
    """
    half_angle: float | str | None = None
    """
    Angle between the cone's axis and its surface, in degrees. [degree, over 0.005, under
    89.5; or text in degrees, minutes, seconds]
    """
    taper_per_foot: float | None = None
    """
    Inches of diameter a foot of length, whatever `units` are. [inch per foot, 0.003 to
    2000]
    """
    one_in_x: float | None = None
    """The x of a taper written 1:x, on the diameter (ISO 1119). [0.005 to 5000]"""
    rate_of_taper: float | None = None
    """
    Change of diameter for one unit of length, C = 1/x (ISO 3040). [length per length,
    0.0002 to 200]
    """
    designation: str | None = None
    """
    Designation of a standard taper or rate, as `GET /v1/tapers/standard` and `GET
    /v1/tapers/rates` list them, or what a toolmaker calls it: `MT3`, `B&S 9`, `JT33`,
    `NT40`, `1:20`. The answer says what it was read as. [1 to 60 characters]
    """
    gauge_diameter: float | None = None
    """
    Diameter at the gauge line, the taper's large end, in `units`; a standard taper has its
    own. [length, 1e-06 to 10000]
    """
    length: float | None = None
    """
    Length from the gauge line to the small end, in `units`; of a standard taper absent
    where its table has one. [length, 1e-06 to 10000]
    """
    cone_angle_grade: (
        Literal[
            "AT1",
            "AT2",
            "AT3",
            "AT4",
            "AT5",
            "AT6",
            "AT7",
            "AT8",
            "AT9",
            "AT10",
            "AT11",
            "AT12",
        ]
        | None
    ) = None
    """Grade of the cone angle."""
    included_angle_band_arcsec: float | None = None
    """
    Whole tolerance of the included angle, from least to most. [arcsecond, over 0, at most
    36000]
    """
    included_angle_tolerance_arcsec: float | None = None
    """± tolerance of the included angle. [arcsecond, 1e-06 to 324000]"""
    disposition: Literal["plus", "minus", "symmetric"] = "symmetric"
    """
    Where a grade or a band lies to the nominal angle; `symmetric` has half of it to either
    side.
    """
    large_diameter_tolerance: float | None = None
    """Tolerance of the large diameter, plus and minus. [length, 0 to 10000]"""
    kind: Literal["taper-socket"]


class InspectionAngleProof(AnswerModel):
    """What a means proves of the angle: a cone's included angle, a face's to its base."""

    angle_error_arcsec: ArcsecEstimate
    """The error that it finds of a nominal part, 0, with its own uncertainty."""
    proves_tolerance: bool | None
    """
    Whether a reading of it can prove the tolerance, by `decision_rule`; null where what was
    not stated of it decides.
    """
    smallest_accepted_error_arcsec: float | None
    """
    Smallest error found, measured less nominal, that proves the tolerance; null where none
    does. [arcsecond]
    """
    largest_accepted_error_arcsec: float | None
    """Largest error found that proves the tolerance. [arcsecond]"""


class InspectionBalls(RequestModel):
    """Balls, to lay into a socket one at a time."""

    ball_diameters: list[float]
    """
    Diameters of the balls at hand, in `units`. [1 to 20 entries, each length, 1e-06 to
    10000]
    """
    measure_error_limit: float | None = None
    """Largest error ± of each depth, in `units`. [length, 0 to 10000]"""
    roll_error_limit: float | None = None
    """Largest error ± of a ball's diameter, in `units`. [length, 0 to 10000]"""


class InspectionBluing(RequestModel):
    """A gauge of the part's own taper and a marking film."""

    contact_length: float | None = None
    """
    Length of contact along the axis, from the large end, in `units`. Absent: the part's
    whole length. [length, 1e-06 to 10000]
    """
    blue_film: float | None = None
    """
    Thickness of the marking film; 0.00008 in or 0.002 mm where left out (common practice,
    no source). [length, 1e-06 to 10000]
    """
    blue_film_error_limit: float | None = None
    """Largest error ± of that thickness, in `units`; less than it. [length, 0 to 10000]"""
    marked_share_error_limit_percent: float | None = None
    """
    Largest error ± of the share judged by eye, in percent of the length. Absent: only a
    part marked all over is judged. [percent, 0 to 100]
    """
    gauge_angle_error_limit_arcsec: float | None = None
    """Largest error ± of the gauge's own included angle. [arcsecond, 0 to 324000]"""


class InspectionComparator(RequestModel):
    """An optical comparator or a toolmaker's microscope."""

    instrument_angle_error_limit_arcsec: float | None = None
    """Largest error ± of an angle read on it. [arcsecond, 0 to 324000]"""


class InspectionGauges(RequestModel):
    """A plug or ring gauge whose depth is measured; two with sharp edges give the angle too."""

    gauge_diameter: float
    """The gauge's diameter at its line or sharp edge, in `units`. [length, 1e-06 to 10000]"""
    gauge_length: float = 0.0
    """
    How far the gauge's cone runs from its line toward the small end; 0 for a sharp edge.
    [length, 0 to 10000]
    """
    second_gauge_diameter: float | None = None
    """Diameter of a second gauge, at a sharp edge, in `units`. [length, 1e-06 to 10000]"""
    depth_error_limit: float | None = None
    """Largest error ± of each depth, in `units`. [length, 0 to 10000]"""
    gauge_error_limit: float | None = None
    """Largest error ± of each gauge's diameter, in `units`. [length, 0 to 10000]"""


class InspectionNextStep(AnswerModel):
    """One thing to do next."""

    step: (
        Literal[
            "accept",
            "set-apart",
            "hold-back",
            "state-the-uncertainty",
            "measure-better",
            "read-more-often",
            "let-it-soak",
            "bring-within-gauge-limits",
            "say-who-proves",
        ]
        | str
    )
    """What to do, as a token."""
    words: str
    """The same in plain words, with its figures."""


class InspectionOverlayResult(AnswerModel):
    """The overlay, and its sizes on paper in the request's `units`."""

    svg: str | None
    """
    The overlay as SVG, its size in millimetres: printed at 100 % it is true, which the bar
    on it checks. Null where it was not asked for.
    """
    dxf: str | None
    """
    The overlay as the text of a DXF file (2000) in the request's `units` times the
    magnification: closed outlines on the layers NOMINAL, SMALLEST and LARGEST, the large
    end at x = 0, the axis along x. Null where it was not asked for.
    """
    drawn_length: float
    """Length of the profile as drawn. [length]"""
    drawn_diameter: float
    """Large diameter as drawn. [length]"""
    drawn_band: float
    """Widest distance of a limit from the nominal line as drawn, square to it. [length]"""


class InspectionPlate(RequestModel):
    """A sine bar or plate with an indicator; its stack is of the blocks sent, else of any."""

    center_distance_error_limit: float | None = None
    """Largest error ± of the center distance, in `units`. [length, 0 to 10000]"""
    roll_difference: float | None = None
    """Limit ± of the difference of the rolls' diameters, in `units`. [length, 0 to 10000]"""
    roll_parallelism: float | None = None
    """
    Limit ± by which the rolls are out of parallel in height from end to end, in `units`; a
    stack under one end rather than the middle sees half of it. [length, 0 to 10000]
    """
    face_parallelism: float | None = None
    """
    Limit ± by which the plate's face is out of parallel over `face_length`, in `units`.
    [length, 0 to 10000]
    """
    face_parallelism_on_rolls: bool = False
    """
    True where the face's parallelism was measured with the plate resting on its rolls: it
    then holds the rolls' difference already, and only the rest of it counts.
    """
    face_flatness: float | None = None
    """Flatness of the plate's face over `face_length`, in `units`. [length, 0 to 10000]"""
    face_length: float | None = None
    """
    Length over which parallelism and flatness act: the plate's, or the work's seat. Absent:
    the center distance. [length, 1e-06 to 10000]
    """
    table_flatness: float | None = None
    """
    Limit ± of the difference in height of the surface plate under the two rolls, in
    `units`. [length, 0 to 10000]
    """
    particle: float | None = None
    """Size of a particle under either roll or its stack, in `units`. [length, 0 to 10000]"""
    temperature_celsius: float | None = None
    """
    Temperature of plate and blocks alike; 20 °C is the reference (ISO 1). Not stated where
    absent: unlike materials then turn the angle by an unknown amount, and even of like ones
    the coefficients are known only to so much. [°C, -40 to 150]
    """
    temperature_error_limit_celsius: float | None = None
    """Largest error ± of the temperature of plate and blocks, in kelvins. [°C, 0 to 50]"""
    temperature_difference_celsius: float | None = None
    """Limit ± of the difference of the blocks' temperature to the plate's. [°C, 0 to 50]"""
    plate_material: Literal[
        "steel",
        "tungsten-carbide",
        "chromium-carbide",
        "ceramic",
        "glass-ceramic",
        "fused-quartz",
    ] = "steel"
    """Material of the plate."""
    axis_yaw_error_limit_arcsec: float | None = None
    """
    Largest error ± of the yaw of the work's axis out of the plane in which the plate tilts;
    at most 18000, which is 5°. It acts by its square, always toward a smaller angle.
    [arcsecond, 0 to 18000]
    """
    axis_pitch_error_limit_arcsec: float | None = None
    """
    Largest error ± of the pitch of the work's axis to the plate's face, in the plane in
    which the plate tilts; it acts one to one. [arcsecond, 0 to 324000]
    """
    center_distance: float
    """Distance between the centers of the two rolls, in `units`. [length, 1e-06 to 10000]"""
    base_step: float = 0.0
    """
    Height of the low roll's seat over the high roll's, in `units`: the stack at which a
    plate with equal rolls stands at zero. [length, -10000 to 10000]
    """
    largest_angle: float | str | None = None
    """
    Largest angle that the plate reaches, in degrees; past it a setting is refused. Absent:
    anything below 90°. [degree, over 0, under 90; or text in degrees, minutes, seconds]
    """
    holding: Literal["between-centers", "on-its-generator", "in-a-vee"] | None = None
    """How a cone is held on the plate. Absent: between centers. Does not count for a face."""
    vee_angle: float | str = 90.0
    """
    Included angle of the vee, in degrees; counts for `in-a-vee` only. [degree, 1 to 175; or
    text in degrees, minutes, seconds]
    """
    resolution: float | None = None
    """
    Step to which a stack can be built, in `units`. Absent: 0.0001 in or 0.001 mm. [length,
    1e-06 to 10000]
    """
    stack_error_limit: float | None = None
    """
    Largest error ± of the stack's height, in `units`, where no blocks were sent; those
    bring their own. [length, 0 to 10000]
    """
    block_material: (
        Literal[
            "steel",
            "tungsten-carbide",
            "chromium-carbide",
            "ceramic",
            "glass-ceramic",
            "fused-quartz",
        ]
        | None
    ) = None
    """Material of the blocks. Absent: steel. A `box` says it of each block."""
    indicator_travel: float | None = None
    """
    Travel of the indicator along the surface, in `units`. Absent: four fifths of the
    surface's length. [length, 1e-06 to 10000]
    """
    indicating_error_limit: float | None = None
    """
    Largest error ± of the rise that the indicator reads over its travel, in `units`: its
    own, and that of what it runs on. [length, 0 to 10000]
    """


class InspectionProbe(RequestModel):
    """A height gauge or a measuring machine, to probe a cone or socket near both its ends."""

    tip_diameter: float
    """Diameter of the tip, in `units`. [length, 1e-06 to 10000]"""
    measure_error_limit: float | None = None
    """Largest error ± of each travel across the axis, in `units`. [length, 0 to 10000]"""
    depth_error_limit: float | None = None
    """Largest error ± of each depth, in `units`. [length, 0 to 10000]"""
    tip_error_limit: float | None = None
    """
    Largest error ± of the tip's diameter, in `units`; counts for the size. [length, 0 to
    10000]
    """


class InspectionReading(AnswerModel):
    """One figure to read, with its limits."""

    name: str
    """What is read, by the name of the field that takes or gives it elsewhere."""
    unit: str
    """Unit of the figures, as `x-unit` names units; `length` is the request's."""
    expected_reading: float
    """What a nominal part reads. [stated]"""
    smallest_reading: float | None
    """
    Least that a part within its tolerances reads; null where a tolerance that it depends on
    was not stated. [stated]
    """
    largest_reading: float | None
    """Most that such a part reads. [stated]"""
    smallest_accepted_reading: float | None
    """
    Least reading that proves the tolerance, by `decision_rule`; null where none does, and
    where the reading speaks of angle and size at once. [stated]
    """
    largest_accepted_reading: float | None
    """Largest reading that proves the tolerance. [stated]"""


class InspectionRolls(RequestModel):
    """Pairs of equal rolls, to measure an outer cone over."""

    roll_diameters: list[float]
    """
    Diameters of the pairs at hand, in `units`. [1 to 20 entries, each length, 1e-06 to
    10000]
    """
    standing_on: Literal["small-end", "large-end"] | None = None
    """
    End that the part stands on. Absent: its small end, where that is wide enough to stand
    on, else its large one.
    """
    stack_rise: float | None = None
    """
    Height of the two equal stacks under the rolls at the upper height. Absent: the highest
    in whole steps of 0.05 in or 1 mm that the cone has room for. [length, 1e-06 to 10000]
    """
    measure_error_limit: float | None = None
    """Largest error ± of each measure over the rolls, in `units`. [length, 0 to 10000]"""
    roll_error_limit: float | None = None
    """
    Largest error ± of a roll's diameter, in `units`; counts for the size. [length, 0 to
    10000]
    """
    stack_rise_error_limit: float | None = None
    """Largest error ± of the stacks' height, in `units`. [length, 0 to 10000]"""


class InspectionSetting(AnswerModel):
    """What a means is set up with."""

    name: str
    """What it is, by the name of the field that states it where it is asked for."""
    unit: str
    """Unit of `set_to`, as `x-unit` names units; `length` is the request's."""
    set_to: float
    """What it is. [stated]"""


class LengthContribution(AnswerModel):
    """One contribution to a length, in the request's `units`."""

    name: str
    """
    What contributes: the field of the request that states it, spelled as in `not_stated`;
    or, where no one field does, a name of its own, which has a label.
    """
    of: str | None
    """
    Which one, where several may bear one name: a block by its size, a film by its number,
    an expansion of blocks by their material, a measured size by its field; else null.
    """
    input_value: float
    """
    Half-width of the input's distribution, or its standard deviation where it is normal, or
    the length of a vector of unknown phase, in `input_unit`. [stated]
    """
    input_unit: str
    """Unit of the input, as `x-unit` names units."""
    sensitivity: float
    """
    Change of the estimate for one unit of the input, signed; of a one-sided input the
    change at its limit, over that limit. [per stated]
    """
    distribution: Literal["normal", "rectangular", "triangular", "u-shaped", "uniform-phase"] | str
    """
    Its distribution (JCGM 100:2008, 4.3; JCGM 101:2008, 6.4); `uniform-phase` of a vector
    that may point any way, all alike.
    """
    standard_uncertainty: float
    """What it adds to the estimate's standard uncertainty. [length]"""
    worst_case: float | None
    """
    Largest change of the estimate that it can cause; null where its spread was estimated
    from few readings, which is no limit. [length]
    """
    share_percent: float
    """Its share of the combined variance. [percent]"""


class LengthEstimate(AnswerModel):
    """A length with its uncertainty, all in the request's `units`."""

    value: float | None
    """Best estimate, known offsets and the means of one-sided errors included. [length]"""
    standard_uncertainty: float | None
    """Combined standard uncertainty; null where no contribution was stated. [length]"""
    degrees_of_freedom: float | None
    """
    Effective degrees of freedom (Welch and Satterthwaite); null where they are not limited,
    as with stated limits.
    """
    expanded_uncertainty: float | None
    """Expanded uncertainty: half of the width that covers `coverage_probability`. [length]"""
    coverage_factor: float | None
    """Coverage factor k: expanded over standard uncertainty; null where both are 0."""
    coverage_probability: float | None
    """
    Probability, 0 to 1, that value ± expanded uncertainty covers, by the distributions of
    the contributions (JCGM 101:2008), or by Student's where degrees of freedom are limited
    (JCGM 100:2008, G.4).
    """
    worst_case: float | None
    """
    Largest error with every stated contribution at its limit at once, known offsets
    included; of a normal contribution three standard deviations. Never less than what
    covers 95 %; null where a contribution has no limit, because its spread was itself
    estimated from few readings (`degrees_of_freedom`). [length]
    """
    contributions: list[LengthContribution]
    """What was stated, in a fixed order."""
    not_stated: list[str]
    """Contributions that were not stated: nothing is known of them, and nothing counted."""


class LengthJudged(AnswerModel):
    """A diameter, a depth or a TIR judged, in the request's `units`."""

    smallest_allowed: float | None
    """Lower limit; null where there is none. [length]"""
    largest_allowed: float | None
    """Upper limit; null where there is none. [length]"""
    smallest_accepted: float | None
    """
    Lower gauge limit: the smallest value that, measured as well as this one, proves that
    the limits are kept. Null without a lower limit, and where no value does. [length]
    """
    largest_accepted: float | None
    """Upper gauge limit, likewise the largest such value. [length]"""
    rejected_below: float | None
    """
    Below this value, measured as well as this one, the limits are proved not to be kept.
    Null without a lower limit, and where no value proves it. [length]
    """
    rejected_above: float | None
    """Likewise above this value. [length]"""
    needed_standard_uncertainty: float | None
    """
    Largest standard uncertainty with which the value as measured would prove that the
    limits are kept, or where it lies outside that they are not; the error distributed as
    the one stated, else normal. Of simple acceptance the one agreed on. Null where the rule
    does not go by it, and where none would do: on a limit. [length]
    """
    estimate: LengthEstimate
    """
    The length as measured, corrected to 20 °C where temperatures were sent, with its
    uncertainty.
    """


class MeasuringBoreResult(AnswerModel):
    """The bore by two touching balls."""

    svg: str | None
    """The drawing, as SVG; null where `formats` did not ask for it."""
    bore_diameter: LengthEstimate
    """Diameter of the bore."""
    center_rise: float
    """Upper ball's center over the lower one's. [length]"""
    lean_of_centers: float
    """Lean of the balls' line of centers to the bore's axis: 90 is surest. [degree]"""
    lower_contact_depth: float
    """Depth at which the lower ball touches the wall. [length]"""
    upper_contact_depth: float
    """Depth at which the upper ball touches the wall, on the other side. [length]"""


class MeasuringLeverTipResult(AnswerModel):
    """The movement that made the reading."""

    true_movement: LengthEstimate
    """Movement square to the surface."""
    excess_reading: float
    """Reading less the movement. [length]"""
    movement_per_reading: float | None
    """Movement over reading, the cosine where the angle stays; null at a reading of 0."""
    tip_angle_after: Angle
    """Angle of the lever as the reading ends."""


class MeasuringSmallAngleResult(AnswerModel):
    """The angle in every form, and the height that it makes over a base."""

    tilt_arcsec: ArcsecEstimate
    """The angle."""
    tilt_microradian: float
    """The same. [microradian]"""
    rise_per_metre_mm: float
    """Rise in millimetres over a metre: 1000 tan. [millimetre]"""
    height_over_base: LengthEstimate | None
    """Height of the base's far end; null without `base_length`."""
    zero_error_arcsec: ArcsecEstimate | None
    """What the level reads on a level place; null without a turned reading."""


class MeasuringSquareResult(AnswerModel):
    """The square's error and the column's, told apart."""

    square_angle: Angle
    """Angle of the square within its metal."""
    square_error_arcsec: ArcsecEstimate
    """That angle less 90°; positive where the face leans out."""
    reference_error_arcsec: ArcsecEstimate
    """Lean of the column, toward the square in its first place."""


class OperationEntry(AnswerModel):
    """One line of the catalogue."""

    name: str
    """Dotted name."""
    topic: str
    """Topic that it belongs to."""
    title: str
    """Title for a person."""
    summary: str
    """What it answers, in a sentence."""
    path: str
    """Path to POST a request to."""
    query: bool
    """Whether GET with a query string is offered too."""
    columns: bool
    """Whether it works out columns, so that it has curves."""


class OperationList(AnswerModel):
    """Operation catalogue: every row."""

    operations: list[OperationEntry]
    """The rows, in order."""


class PickedPoint(RequestModel):
    """One point picked on the profile."""

    x: float
    """Coordinate to the right. [length, -10000 to 10000]"""
    y: float
    """Coordinate upward. [length, -10000 to 10000]"""


class PlanAngle(AnswerModel):
    """The error of one angle of the feature to expect, against its tolerance."""

    of: Literal["included-angle", "face-angle", "x-angle", "y-angle"] | str
    """Which angle."""
    error_arcsec: ArcsecEstimate
    """
    Its error: known deviations, temperature and the mean of a yaw as its value, the rest as
    its uncertainty.
    """
    tolerance_arcsec: float
    """± tolerance asked for. [arcsecond]"""
    tolerance_used_percent: float | None
    """Worst case over tolerance; null where no contribution was stated. [percent]"""
    forecast: Literal["holds", "may-not-hold", "does-not-hold", "not-stated"] | str
    """
    Whether it will keep the tolerance, by `decision_rule`; never `holds` with something not
    stated.
    """


class PlanAnglePlate(RequestModel):
    """What work turned a quarter stands against, on its low side."""

    upright_height: float
    """Height over the plate, in `units`. [length, 1e-06 to 10000]"""
    upright_thickness: float
    """Thickness, in `units`. [length, 1e-06 to 10000]"""
    face_to_high_end: float
    """From the upright's face up the slope to the plate's high end. [length, 0 to 10000]"""
    seat_height: float = 0.0
    """From the plate up to the fixture's rear, or the work's foot. [length, 0 to 10000]"""


class PlanAssumption(AnswerModel):
    """What was taken as usual, since it was not stated; common practice, no source."""

    name: str
    """Field of the request that would state it, as a path."""
    assumed_value: float
    """What was taken, in `input_unit`. [stated]"""
    input_unit: str
    """Unit of the value, as `x-unit` names units."""


class PlanBatch(AnswerModel):
    """The pieces of the job on one wheel; what was not stated could only make a dress sooner."""

    growth_per_piece_arcsec: float | None
    """
    Growth of the angle's error in one piece; null where no breakdown was stated, and by
    another wheel than the flat one over the plates. [arcsecond]
    """
    pieces_per_dress: int | None
    """
    Most pieces on one dress, so that the last still keeps the tolerance by `decision_rule`
    and what was stated; 0 where not even the first does. [count]
    """
    growth_at_last_arcsec: float | None
    """Growth up to the last piece before a dress. [arcsecond]"""
    dressings: int | None
    """Dresses between the first piece and the last. [count]"""
    pieces_inspected: int
    """How many pieces to measure. [count]"""
    pieces_to_measure: list[int]
    """
    Which, by number: first, last before each dress, first after it, last of all; no more
    than the first 24 of them. First and last where no dress is known. [each count]
    """
    reason: str
    """Why these, in plain words."""
    not_stated: list[str]
    """
    Fields of the request that were not stated: nothing is known of them, and nothing
    counted.
    """


class PlanBest(AnswerModel):
    """The way that would be best; null and empty where none would be fit."""

    way_number: int | None
    """
    Its place in `ways` as they are ranked now, the first being 1; null where no way would
    hold or might. [count]
    """
    best_way: str | None
    """It in plain words, with its equipment."""


class PlanBlockSet(RequestModel):
    """A set of gauge blocks."""

    set: str | None = None
    """
    Built-in set, as `GET /v1/blocks/sets` lists it. One of `set`, `sizes`, `box` is needed.
    [1 to 60 characters]
    """
    sizes: list[float] | None = None
    """
    Nominal sizes of the blocks that the shop has, each once, in `units`. Where there are
    several of a size, send `box` with its `count`. [1 to 500 entries, each length, 1e-06 to
    10000]
    """
    box: list[BlockOwned] | None = None
    """The shop's own blocks with what is known of them. [1 to 500 entries]"""
    missing: list[float] | None = None
    """
    Sizes that are missing from the set, one entry a block, in `units`. [at most 500
    entries, each length, 1e-06 to 10000]
    """
    in_use: list[float] | None = None
    """
    Sizes that are in use elsewhere, one entry a block, in `units`. [at most 500 entries,
    each length, 1e-06 to 10000]
    """
    name: str
    """What the shop calls it; the plan names it so. [1 to 60 characters]"""
    grade: str | None = None
    """
    Tolerance grade of blocks without a calibration, as `GET /v1/blocks/grades` lists it,
    for the height's uncertainty. [1 to 60 characters]
    """
    block_material: (
        Literal[
            "steel",
            "tungsten-carbide",
            "chromium-carbide",
            "ceramic",
            "glass-ceramic",
            "fused-quartz",
        ]
        | None
    ) = None
    """Material of the blocks. Absent: steel. A `box` says it of each block."""


class PlanBlockWork(RequestModel):
    """The work that has a face, as a block, for the clearance."""

    base_length: float
    """
    Length up the face's slope, of a compound face from left to right. [length, 1e-06 to
    10000]
    """
    base_width: float | None = None
    """Width across it, of a compound face from front to back. [length, 1e-06 to 10000]"""
    face_height: float
    """From the base to the face's highest place. [length, 1e-06 to 10000]"""


class PlanCheck(AnswerModel):
    """One check: whether it would catch a wrong block, and whether it can prove a tolerance."""

    check: str
    """What to check."""
    how: str
    """How the check is made."""
    expected: str
    """What to expect."""
    catches_wrong_block: bool | None
    """
    Whether it would show the smallest mistake that takes the angle out of its tolerance;
    null where no single wrong block does.
    """
    reason: str
    """Why it would, or would not."""
    proves_tolerance: bool
    """
    Whether a reading of it can prove that the ground cone keeps the tolerance of its angle,
    or the limit of its runout.
    """
    proof: str
    """What it can prove, in plain words."""
    acceptance_arcsec: float | None
    """
    ± error of the included angle, as read, within which it proves the angle's tolerance;
    null where it proves none. [arcsecond]
    """
    acceptance_tir: float | None
    """
    Reading up to which it proves the limit of the runout; null where it proves none.
    [length]
    """


class PlanFeeding(RequestModel):
    """How the shop feeds. What is absent is taken as usual, and the plan says so."""

    grinding_allowance: float | None = None
    """
    Stock left on the surface, measured square to it, in `units`. Absent: passes and times
    of them are not told. [length, 1e-06 to 10000]
    """
    rough_downfeed_per_pass: float | None = None
    """Downfeed of a roughing pass, square to the surface, in `units`. [length, 1e-06 to 10000]"""
    finish_downfeed_per_pass: float | None = None
    """
    Downfeed of a finishing pass, square to the surface, in `units`. [length, 1e-06 to
    10000]
    """
    finish_allowance: float | None = None
    """Stock left for finishing, square to the surface, in `units`. [length, 0 to 10000]"""
    spark_out_passes: int = 2
    """Passes without feed at the end. [count, 0 to 100]"""
    past_large_end: float | None = None
    """How far the wheel goes past the large end of the ground line. [length, 0 to 10000]"""
    past_small_end: float | None = None
    """How far it goes past the small end. [length, 0 to 10000]"""
    width_across_slope: float | None = None
    """Width of a face across its slope, in `units`; not of a cone. [length, 1e-06 to 10000]"""
    work_rpm: float | None = None
    """Turns of the work in a minute; not of a face. [per minute, 1 to 500000]"""
    diameter_error_limit: float | None = None
    """
    Largest error ± of the diameter as it is measured at the gauge line. [length, 0 to
    10000]
    """
    axial_position_error_limit: float | None = None
    """
    Largest error ± of the place of gauge line or point along the axis, as it is measured,
    in `units`. [length, 0 to 10000]
    """
    height_error_limit: float | None = None
    """Largest error ± of a face's height as it is measured, in `units`. [length, 0 to 10000]"""
    dial_error_limit: float | None = None
    """
    Largest error ± of the feed dial from the first touch on, the wheel's wear in it, in
    `units`. [length, 0 to 10000]
    """
    dial_step: float | None = None
    """Smallest step of the feed dial, in `units`; 0 where it has none. [length, 0 to 10000]"""
    size_wear_per_piece: float | None = None
    """
    What the wheel loses in one piece, square to the surface, in `units`; counts where
    pieces are stopped by the dial. [length, 0 to 10000]
    """
    work_temperature_difference_celsius: float | None = None
    """
    Largest difference ± of the work's temperature from that of what measures it, in °C.
    [°C, 0 to 50]
    """


class PlanHingedBody(RequestModel):
    """Body of one plate of a compound plate, closed in the middle of what it stands on."""

    length: float
    """Length up the slope, in `units`. [length, 1e-06 to 10000]"""
    thickness: float
    """From its top to the centers of its rolls, in `units`. [length, 1e-06 to 10000]"""
    closed_height: float
    """Its top over the table at zero tilt, in `units`. [length, 1e-06 to 10000]"""
    roll_diameter: float
    """Diameter of the rolls, in `units`. [length, 1e-06 to 10000]"""
    low_roll_from_end: float | None = None
    """
    From the plate's low end to the center of the low roll, in `units`. Absent: the rolls
    lie in the middle of the plate's length. A plate whose low end would tilt into its base
    is refused. [length, 0 to 10000]
    """
    plate_width: float
    """Width along its hinge, in `units`. [length, 1e-06 to 10000]"""


class PlanInternalSpindle(RequestModel):
    """A spindle whose wheel goes into a bore."""

    wheel_diameter: float
    """Diameter of the wheel, in `units`. [length, 1e-06 to 10000]"""
    reach: float
    """How far wheel and quill go into a bore, in `units`. [length, 1e-06 to 10000]"""
    axis_offset_error_limit: float | None = None
    """
    Largest error ± sideways of the quill's axis from the bore's, at either end, in `units`;
    acts by its square. [length, 0 to 10000]
    """
    wheel_width: float | None = None
    """Width of the wheel, in `units`. [length, 1e-06 to 10000]"""
    quill_diameter: float | None = None
    """Diameter of the quill, in `units`. [length, 1e-06 to 10000]"""
    spindle_diameter: float | None = None
    """Diameter of the spindle that carries the quill. [length, 1e-06 to 10000]"""
    rpm: float | None = None
    """Spindle speed. [per minute, 1 to 500000]"""
    marked_rpm: float | None = None
    """
    Highest speed marked on the wheel for this overhang, per minute. [per minute, 1 to
    500000]
    """


class PlanMeansNotAtHand(AnswerModel):
    """A means that is usual for such a feature, and of which nothing is stated."""

    means: (
        Literal[
            "over-rolls",
            "over-balls",
            "gauge-depth",
            "two-gauges",
            "probe",
            "sine-plate",
            "comparator",
            "bluing",
        ]
        | str
    )
    """Which means."""
    field: str
    """The field of the request that states it, as a path."""
    action: str
    """What to get, in plain words."""


class PlanMeasuring(RequestModel):
    """
    Means of measuring the ground feature and of checking the set-up that grinds it.

    A limit of error that is not sent is not stated, and no judgement comes out of it.
    """

    rolls: InspectionRolls | None = None
    """Pairs of rolls."""
    balls: InspectionBalls | None = None
    """Balls."""
    gauges: InspectionGauges | None = None
    """A gauge by its depth, or two with sharp edges."""
    probe: InspectionProbe | None = None
    """A probe of known tip."""
    comparator: InspectionComparator | None = None
    """An optical comparator."""
    bluing: InspectionBluing | None = None
    """A gauge and a marking film."""
    plate: InspectionPlate | None = None
    """A sine bar or plate, with an indicator, to measure on."""
    stack_reading_error_limit: float | None = None
    """
    Largest error ± of a wrung stack's height as measured, by micrometer or comparator, in
    `units`. [length, 0 to 10000]
    """
    comparison_error_limit: float | None = None
    """
    Largest error ± of the difference of two stacks as an indicator compares them, in
    `units`. [length, 0 to 10000]
    """
    tir_error_limit: float | None = None
    """Largest error ± of a TIR as read on the cone, in `units`. [length, 0 to 10000]"""


class PlanMistake(AnswerModel):
    """The smallest wrong block of one stack that leaves the tolerance of an angle."""

    role: Literal["high", "low", "base", "upper", "check"] | str
    """Which stack it is in."""
    meant: float
    """Block that belongs in the stack. [length]"""
    wrung: float
    """Block taken in its place. [length]"""
    height_change: float
    """What it adds to the stack's actual height. [length]"""
    angle_error_arcsec: float | None
    """
    Angle that the feature then has, less the one wanted, by the sine itself; null where
    nothing stands on such a stack. [arcsecond]
    """
    seen_by: list[
        Literal[
            "stack-measured",
            "second-stack",
            "same-setting",
            "re-seated",
            "over-rolls",
            "over-balls",
            "gauge-depth",
            "two-gauges",
            "probe",
            "sine-plate",
            "comparator",
            "bluing",
        ]
        | str
    ]
    """
    Checks that would show it: it shows more than they tell apart. Empty where none does, or
    nothing was stated of any.
    """


class PlanObservedPiece(RequestModel):
    """A piece of an earlier batch on this wheel, as it was measured."""

    piece_since_dress: int
    """Which piece it was since the wheel was dressed, the first being 1. [count, 1 to 1000000]"""
    measured_error_arcsec: float
    """
    Its angle as measured, less the angle wanted: of a cone the included one. [arcsecond,
    -324000 to 324000]
    """


class PlanPhase(AnswerModel):
    """Roughing or finishing. Lengths square to the surface but where they say otherwise."""

    stock: float
    """What it takes off. [length]"""
    downfeed_per_pass: float
    """Downfeed of a pass. [length]"""
    cutting_passes: int
    """Passes with feed. [count]"""
    last_pass: float
    """Downfeed of the last of them. [length]"""
    dial_per_pass: float
    """
    What the feed dial moves in a pass: the downfeed where the slide goes square to the
    surface, more where it goes square to the work's axis. [length]
    """
    advance: float | None
    """
    Advance along the slant in a turn of the work, or across a face in a stroke; null where
    the wheel is plunged, or was not stated. [length]
    """
    minutes: float | None
    """Time that it takes; null where not known. [minute]"""


class PlanPlateBody(RequestModel):
    """Body of a sine plate; clearance is worked out with it."""

    length: float
    """Length up the slope, in `units`. [length, 1e-06 to 10000]"""
    thickness: float
    """From its top to the centers of its rolls, in `units`. [length, 1e-06 to 10000]"""
    closed_height: float
    """Its top over the table at zero tilt, in `units`. [length, 1e-06 to 10000]"""
    roll_diameter: float
    """Diameter of the rolls, in `units`. [length, 1e-06 to 10000]"""
    low_roll_from_end: float | None = None
    """
    From the plate's low end to the center of the low roll, in `units`. Absent: the rolls
    lie in the middle of the plate's length. A plate whose low end would tilt into its base
    is refused. [length, 0 to 10000]
    """


class PlanRoom(RequestModel):
    """Gap and room to keep under the wheel."""

    gap_wanted: float | None = None
    """Least gap wanted everywhere, in `units`. [length, 0 to 10000]"""
    room_under_wheel: float | None = None
    """
    Greatest height from the table to the wheel's lowest line with the head raised, in
    `units`. Absent: the height is not judged. [length, 1e-06 to 10000]
    """


class PlanSeatReading(AnswerModel):
    """One reading of the cone's runout in a seat, and what it shows."""

    turned: Literal["nothing", "work", "adapter-and-work"] | str
    """What is turned by half a turn before it is read."""
    how: str
    """How, and what the reading is."""
    shows: list[Literal["spindle-and-form", "fixture", "adapter"] | str]
    """What the reading shows, together."""
    largest_tir: float | None
    """
    Most that work within its limit reads, square to its surface; null where the reading
    says nothing of the limit. [length]
    """


class PlanSetUpCheck(AnswerModel):
    """A check of the set-up, or of the runout."""

    check: Literal["stack-measured", "second-stack", "same-setting", "re-seated"] | str
    """Which check."""
    how: str
    """How it is made."""
    told_apart: float | None
    """
    Expanded uncertainty of what it reads; null where it reads no length, or nothing was
    stated of it. [length]
    """
    proves_tolerance: bool | None
    """
    Whether it can prove the limit of the runout, or the angle's tolerance; null where what
    was not stated decides.
    """
    acceptance_tir: float | None
    """
    Reading up to which it proves the limit of the runout; null of the others, and where it
    proves none. [length]
    """


class PlanSetting(AnswerModel):
    """What is set to which angle."""

    part: Literal["plate", "base", "upper", "dresser", "work", "workhead"] | str
    """What is set."""
    angle: Angle
    """Angle to set."""
    height: float | None
    """Difference of the stacks that sets it, not rounded; null of a scale. [length]"""
    deviation_arcsec: float | None
    """
    What is set less the angle wanted, by the stacks as they are; null of a scale.
    [arcsecond]
    """
    arcsec_per_step: float | None
    """Change of angle for one bench step of height; null of a scale. [arcsecond]"""
    action: str
    """What to do, in plain words."""


class PlanSetupPart(AnswerModel):
    """A part of a set-up, in minutes."""

    setup_part: (
        Literal[
            "equipment",
            "block",
            "stack",
            "further-tilt",
            "squaring",
            "edge-trueing",
            "turn-in-plan",
        ]
        | str
    )
    """Which part."""
    times_done: int
    """How often. [count]"""
    minutes_each: float
    """Time of each. [minute]"""


class PlanSize(AnswerModel):
    """The size that the feed ends at: the large diameter, or a face's distance."""

    nominal_size: float
    """The size wanted. [length]"""
    size_tolerance: float
    """± tolerance asked for. [length]"""
    read_off: Literal["diameter", "axial-position", "height", "feed-dial"] | str
    """The reading to stop by."""
    aimed_stop: float | None
    """What to stop at: the middle of both below; null where they are. [length]"""
    smallest_stop: float | None
    """
    Smallest reading at which the size is inside by `decision_rule`; null where none says
    so, or what it is counted from was not stated. [length]
    """
    largest_stop: float | None
    """Largest such reading; null likewise. [length]"""
    pieces_between: int
    """
    Pieces that are stopped by the dial as the first of a dress was; 0 where each is stopped
    by its own reading. [count]
    """
    size_error: LengthEstimate
    """
    The size's error to expect, stopped there: by the reading, the dial's step, the wheel's
    wear and warmth of the work.
    """
    forecast: Literal["holds", "may-not-hold", "does-not-hold", "not-stated"] | str
    """
    Whether it will keep the tolerance, by `decision_rule`; never `holds` with something not
    stated.
    """


class PlanSlopedWork(RequestModel):
    """The same with what of its top lies before the face."""

    base_length: float
    """
    Length up the face's slope, of a compound face from left to right. [length, 1e-06 to
    10000]
    """
    base_width: float | None = None
    """Width across it, of a compound face from front to back. [length, 1e-06 to 10000]"""
    face_height: float
    """From the base to the face's highest place. [length, 1e-06 to 10000]"""
    before_face: float = 0.0
    """Level top before the face's high edge. [length, 0 to 10000]"""


class PlanStack(AnswerModel):
    """A stack of a way; all of them come from one box, no block twice."""

    blocks: list[float]
    """Nominal sizes of the blocks, largest first. [each length]"""
    marks: list[str | None]
    """
    Identification marks of the same blocks, null where one has none; empty where none of
    them has one.
    """
    count: int
    """How many blocks. [count]"""
    total: float
    """Sum of the nominal sizes. [length]"""
    deviation: float
    """Total less the height asked for. [length]"""
    actual_height: LengthEstimate
    """
    Height of the stack at 20 °C: the sum of nominal sizes and measured deviations, and how
    far calibrations and grade limits leave it open. Nothing is said of that, and `grade`
    named as not stated, where neither is known of some block. `blocks.budget` takes in
    films and temperature.
    """
    actual_deviation: float
    """Actual height less the height asked for. [length]"""
    role: Literal["high", "low", "base", "upper", "check"] | str
    """Where it stands; `check`: to compare another one with."""


class PlanStep(AnswerModel):
    """One step of the work, in order."""

    number: int
    """Its place in the order. [count]"""
    stage: Literal["dressing", "holding", "setting", "grinding", "finishing"] | str
    """Which part of the work it belongs to."""
    action: str
    """What to do."""
    cautions: list[str]
    """What to be careful of."""


class PlanStopReading(AnswerModel):
    """What can be read to stop by."""

    read_off: Literal["diameter", "axial-position", "height", "feed-dial"] | str
    """What is read."""
    per_downfeed: float
    """Its change for one unit of downfeed."""
    at_finish: float | None
    """What it reads when roughing is done; null where allowance or size is unknown. [length]"""
    at_size: float | None
    """
    What it reads at size: diameter or height as such, the axial position what a gauge
    stands off its place, the dial counted from the first touch. [length]
    """
    reading_error_limit: float | None
    """Largest error ± of the reading; null where it is not stated. [length]"""
    layer_error_limit: float | None
    """The layer, square to the surface, that this error comes to. [length]"""


class PlanSwivelBase(RequestModel):
    """What turns work in plan on a plate: a swivelling base, or an angle set against its rail."""

    swivel_error_limit_arcsec: float | None = None
    """
    Largest error ± of the angle in plan, the trueing of the work with it. [arcsecond, 0 to
    324000]
    """


class PlanThreshold(AnswerModel):
    """A value above which another way is best."""

    way_number: int | None
    """
    Its place in `ways` as they are ranked now, the first being 1; null where no way would
    hold or might. [count]
    """
    best_way: str | None
    """It in plain words, with its equipment."""
    above: float
    """The value, in `input_unit`, to a half of a percent. [stated]"""
    input_unit: str
    """Unit of the value, as `x-unit` names units."""


class PlanTime(AnswerModel):
    """Time of a way by its parts, in minutes."""

    setup_minutes: float
    """To set up, the first dress with it. [minute]"""
    setup_parts: list[PlanSetupPart]
    """What that is made of: the equipment's own time, blocks, stacks and the rest."""
    loading_minutes: float
    """
    To put a piece in and take it out; 0 where `minutes_per_piece` was stated, which holds
    it. [minute]
    """
    minutes_per_piece: float
    """To grind one piece: as stated, else by the feed, else as usual. [minute]"""
    inspection_minutes: float
    """To inspect one piece. [minute]"""
    dressing_minutes: float
    """To dress the wheel again. [minute]"""
    pieces_inspected: int
    """Pieces that are inspected: first and last where no dress is known. [count]"""
    dressings: int
    """Dresses between the pieces; 0 where not told. [count]"""
    by_feed: bool
    """Whether the time of a piece follows from the feed."""


class PlanTimes(RequestModel):
    """
    What a shop takes in time beside each way's own set-up and inspection, in minutes.

    The usual times are common practice, no source.
    """

    block_minutes: float = 1.0
    """To clean and wring a block. [minute, 0 to 10000]"""
    stack_minutes: float = 2.0
    """To measure a stack and put it under its roll. [minute, 0 to 10000]"""
    further_tilt_minutes: float = 10.0
    """To set another plate than the first, and lock it. [minute, 0 to 10000]"""
    squaring_minutes: float = 15.0
    """
    To square what holds work turned a quarter on the plate, by indicator. [minute, 0 to
    10000]
    """
    edge_trueing_minutes: float = 3.0
    """To indicate the edge of a face's work true to the plate. [minute, 0 to 10000]"""
    turn_in_plan_minutes: float = 10.0
    """To turn work in plan by an angle on the plate. [minute, 0 to 10000]"""
    loading_minutes: float = 1.0
    """To put a piece in and take it out. [minute, 0 to 10000]"""
    dressing_minutes: float = 3.0
    """To dress the wheel again between pieces. [minute, 0 to 10000]"""


class PlanWheelHead(RequestModel):
    """Flanges and guard, and how far the wheel wears."""

    worn_diameter: float | None = None
    """Diameter that it will wear to, in `units`. [length, 1e-06 to 10000]"""
    flange_diameter: float
    """Diameter of the flanges, in `units`. [length, 1e-06 to 10000]"""
    flange_width: float
    """Width over both flanges, in `units`; at least the wheel's. [length, 1e-06 to 10000]"""
    guard: ClearanceGuard | None = None
    """The guard. Absent: it is left out, the answer says so, and nothing is said to hold."""


class PlanWheelSide(RequestModel):
    """A wheel that may grind with its side."""

    rated_for_side: bool | None = None
    """
    Whether the wheel is stated to be rated for grinding with its side. Absent where it is
    not known: then this way is ruled out.
    """
    usable_width: float
    """Radial width of the side that may grind, in `units`. [length, 1e-06 to 10000]"""
    swivel_error_limit_arcsec: float | None = None
    """
    Largest error ± of the set swivel angle, in arc-seconds, in the plane in which the work
    swivels. [arcsecond, 0 to 324000]
    """
    side_error_limit_arcsec: float | None = None
    """
    Largest error ± of the side from square to the wheel's axis, in arc-seconds, in the
    plane in which the work swivels. [arcsecond, 0 to 324000]
    """
    axis_yaw_error_limit_arcsec: float | None = None
    """
    Largest error ± of the work's axis out of the plane in which the angle is set, in
    arc-seconds; acts by its square. Under a wheel above the work: the axis turned on the
    plate, or about the vertical; beside a wheel or its side: one end of it high.
    [arcsecond, 0 to 18000]
    """
    side_wear: float | None = None
    """Wear of the side over the surface, square to it, in `units`. [length, 0 to 10000]"""
    setup_minutes: float = 20.0
    """Time to set up, in minutes (same standing). [minute, 0 to 10000]"""
    inspection_minutes: float = 20.0
    """Time to measure the angle, in minutes (same standing). [minute, 0 to 10000]"""
    name: str
    """What the shop calls it; the plan names it so. [1 to 60 characters]"""
    wheel_diameter: float | None = None
    """Diameter of the wheel, in `units`. [length, 1e-06 to 10000]"""
    wheel_width: float | None = None
    """Width of the wheel, in `units`. [length, 1e-06 to 10000]"""
    head: PlanWheelHead | None = None
    """What is about this wheel."""
    work_below_spindle: float | None = None
    """
    From the spindle down to the work's axis, or the middle of its face. [length, 0 to
    10000]
    """
    body_width: float | None = None
    """Width of the spindle fixture that stands beside it. [length, 1e-06 to 10000]"""


class PlanWorkHolder(RequestModel):
    """What holds block-like work by its foot: a vice, an angle plate, rails of a magnet."""

    seat_height: float
    """Height of the work's base; 0 on a magnet. [length, 0 to 10000]"""
    holder_height: float
    """
    Height of its highest place; 0 where nothing stands beside the work. [length, 0 to
    10000]
    """
    magnet_holds: bool | None = None
    """
    Whether a magnet holds the work's material, as it does no carbide, aluminium, brass or
    most stainless steel.
    """
    past_tall_end: float = 0.0
    """How far it reaches past the work's tall end. [length, 0 to 10000]"""
    past_short_end: float = 0.0
    """How far it reaches past the short end. [length, 0 to 10000]"""


class PlanWorkheadBody(RequestModel):
    """A workhead and how the work stands out of it."""

    body_length: float
    """Length of the body along the axis, in `units`. [length, 1e-06 to 10000]"""
    body_width: float
    """Width of the body, the axis in its middle, in `units`. [length, 1e-06 to 10000]"""
    nose_diameter: float
    """Diameter of the nose that carries the work, in `units`. [length, 1e-06 to 10000]"""
    nose_length: float
    """How far the nose stands before the body, in `units`. [length, 0 to 10000]"""
    stick_out: float
    """From the nose's face to the large end of the cone, in `units`. [length, 0 to 10000]"""
    shank_diameter: float
    """Largest diameter of the work between nose and cone, in `units`. [length, 0 to 10000]"""
    turning_parts: list[ClearanceTurningPart] | None = None
    """Further parts that turn with the work. [at most 8 entries]"""


class PlannedAngle(AnswerModel):
    """The angle error to expect, against its tolerance. The half angle's error counts twice."""

    included_angle_error_arcsec: ArcsecEstimate
    """
    Error of the included angle: the stack's deviation, temperature and the mean of a yaw as
    its value, the rest as its uncertainty.
    """
    included_angle_tolerance_arcsec: float
    """± tolerance asked for. [arcsecond]"""
    tolerance_used_percent: float | None
    """Worst case over tolerance; null where no contribution was stated. [percent]"""
    forecast: Literal["holds", "may-not-hold", "does-not-hold", "not-stated"] | str
    """
    Whether this set-up will hold the tolerance, by `decision_rule`; never `holds` with
    something not stated.
    """


class PlannedCone(AnswerModel):
    """The cone itself."""

    included_angle: Angle
    """Included angle wanted."""
    half_angle: Angle
    """Half angle wanted."""
    length: float
    """Length along the axis, from body to sharp point. [length]"""
    slant_length: float
    """Length along the surface: the least travel of the wheel across the cone. [length]"""


class PlannedFeed(AnswerModel):
    """What one step of downfeed, square to the cone's surface, takes off."""

    downfeed_step: float
    """The step of downfeed. [length]"""
    off_diameter: float
    """Taken off the diameter at a fixed station. [length]"""
    off_point: float
    """How far the point moves along the axis. [length]"""
    steps_for_allowance: int | None
    """Steps to remove the grinding allowance, the last one perhaps a part of a step. [count]"""
    allowance_off_diameter: float | None
    """What the whole allowance takes off the diameter. [length]"""
    allowance_off_point: float | None
    """How far the whole allowance moves the point. [length]"""


class PlannedMeans(AnswerModel):
    """One means that reaches the part: how it is done, what to read, what it proves."""

    means: (
        Literal[
            "over-rolls",
            "over-balls",
            "gauge-depth",
            "two-gauges",
            "probe",
            "sine-plate",
            "comparator",
            "bluing",
        ]
        | str
    )
    """Which means."""
    of: Literal["x-angle", "y-angle"] | str | None
    """
    Which angle of a face with two it measures; null where the part has one, and where it
    speaks of both.
    """
    how: str
    """How it is done."""
    settings: list[InspectionSetting]
    """What it is set up with."""
    readings: list[InspectionReading]
    """What to read, in order."""
    angle_proof: InspectionAngleProof | None
    """What it proves of the angle; null where it sees none."""
    cannot_see: list[
        Literal[
            "angle",
            "size",
            "form-between-contacts",
            "form-round-the-part",
            "runout",
            "squareness-of-the-standing-face",
            "error-of-the-gauge",
            "errors-within-the-film",
            "error-of-the-setting",
            "edges-out-of-focus",
        ]
        | str
    ]
    """What it cannot see, however finely it is read."""


class PlannedSetting(AnswerModel):
    """The sine plate's setting and the stack that gives it; the height asked for is `height`."""

    blocks: list[float]
    """Nominal sizes of the blocks, largest first. [each length]"""
    marks: list[str | None]
    """
    Identification marks of the same blocks, null where one has none; empty where none of
    them has one.
    """
    count: int
    """How many blocks. [count]"""
    total: float
    """Sum of the nominal sizes. [length]"""
    deviation: float
    """Total less the height asked for. [length]"""
    actual_height: LengthEstimate
    """
    Height of the stack at 20 °C: the sum of nominal sizes and measured deviations, and how
    far calibrations and grade limits leave it open. Nothing is said of that, and `grade`
    named as not stated, where neither is known of some block. `blocks.budget` takes in
    films and temperature.
    """
    actual_deviation: float
    """Actual height less the height asked for. [length]"""
    plate_angle: Angle
    """Angle of the plate: the half angle of the cone."""
    height: float
    """Exact height for that angle. [length]"""
    included_angle_from_stack: Angle
    """Included angle that the stack gives by its actual height."""
    included_angle_arcsec_per_step: float
    """
    Change of the *included* angle for one bench step of stack height (0.0001 in or 0.001
    mm). [arcsecond]
    """
    proved: bool
    """True where no smaller stack gives this height; that is proved, not searched."""


class PlannedShank(AnswerModel):
    """The shank and how it is held."""

    kind: Literal["straight", "taper"] | str
    """Kind of shank."""
    designation: str | None
    """Designation of the taper, if it is one."""
    gauge_diameter: float
    """Diameter at the gauge line of the taper, or of the straight shank. [length]"""
    included_angle: Angle | None
    """Included angle of the taper, if it is one."""
    held_in: str
    """What holds it."""
    test_bar: str
    """
    What takes the shank's place while the holding is indicated: a bar that runs true by
    itself.
    """


class PlateErrorFields(RequestModel):
    """
    Errors of a set-up on a plate under a flat wheel, each as ± a limit.

    A limit that is not sent is not stated: nothing counts for it, and the plan names it. 0
    says that there is no such error. The blocks' own errors come with `grade` or `box`, and
    the stack's deviation from the height is known.
    """

    center_distance_error_limit: float | None = None
    """Largest error ± of the center distance, in `units`. [length, 0 to 10000]"""
    roll_difference: float | None = None
    """Limit ± of the difference of the rolls' diameters, in `units`. [length, 0 to 10000]"""
    roll_parallelism: float | None = None
    """
    Limit ± by which the rolls are out of parallel in height from end to end, in `units`; a
    stack under one end rather than the middle sees half of it. [length, 0 to 10000]
    """
    face_parallelism: float | None = None
    """
    Limit ± by which the plate's face is out of parallel over `face_length`, in `units`.
    [length, 0 to 10000]
    """
    face_parallelism_on_rolls: bool = False
    """
    True where the face's parallelism was measured with the plate resting on its rolls: it
    then holds the rolls' difference already, and only the rest of it counts.
    """
    face_flatness: float | None = None
    """Flatness of the plate's face over `face_length`, in `units`. [length, 0 to 10000]"""
    face_length: float | None = None
    """
    Length over which parallelism and flatness act: the plate's, or the work's seat. Absent:
    the center distance. [length, 1e-06 to 10000]
    """
    table_flatness: float | None = None
    """
    Limit ± of the difference in height of the surface plate under the two rolls, in
    `units`. [length, 0 to 10000]
    """
    particle: float | None = None
    """Size of a particle under either roll or its stack, in `units`. [length, 0 to 10000]"""
    temperature_celsius: float | None = None
    """
    Temperature of plate and blocks alike; 20 °C is the reference (ISO 1). Not stated where
    absent: unlike materials then turn the angle by an unknown amount, and even of like ones
    the coefficients are known only to so much. [°C, -40 to 150]
    """
    temperature_error_limit_celsius: float | None = None
    """Largest error ± of the temperature of plate and blocks, in kelvins. [°C, 0 to 50]"""
    temperature_difference_celsius: float | None = None
    """Limit ± of the difference of the blocks' temperature to the plate's. [°C, 0 to 50]"""
    plate_material: Literal[
        "steel",
        "tungsten-carbide",
        "chromium-carbide",
        "ceramic",
        "glass-ceramic",
        "fused-quartz",
    ] = "steel"
    """Material of the plate."""
    axis_yaw_error_limit_arcsec: float | None = None
    """
    Largest error ± of the yaw of the work's axis out of the plane in which the plate tilts;
    at most 18000, which is 5°. It acts by its square, always toward a smaller angle.
    [arcsecond, 0 to 18000]
    """
    axis_pitch_error_limit_arcsec: float | None = None
    """
    Largest error ± of the pitch of the work's axis to the plate's face, in the plane in
    which the plate tilts; it acts one to one. [arcsecond, 0 to 324000]
    """
    wheel_face_error_limit_arcsec: float | None = None
    """
    Largest slope ± of the wheel's face along the slant, from breakdown since dressing.
    [arcsecond, 0 to 324000]
    """


class Problem(OpenModel):
    """A problem document (RFC 9457); further members hold facts that help to mend the request."""

    type: str
    """Which problem it is, as a relative URI."""
    title: str
    """The problem type in words."""
    status: int
    """HTTP status. [400 to 599]"""
    detail: str
    """What is wrong with this request."""
    instance: str
    """Path of the request."""
    errors: list[FieldProblem]
    """Fields concerned; empty where none is."""


class ProfileLine(AnswerModel):
    """A line through picked points."""

    name: str
    """Field of the request that holds its points."""
    direction: float
    """Its direction from the x axis, −90 to 90. [degree]"""
    straightness: float
    """Highest less lowest of its points square to it, at the part. [length]"""
    point_scatter: float | None
    """Standard deviation of its points about it; null without a point to spare. [length]"""
    farthest_point: int
    """Place in its list, from 0, of the point that lies farthest off. [count]"""


class ProfileOverlay(RequestModel):
    """A cone's profile with its tolerances, and how to draw it."""

    included_angle: float | str | None = None
    """
    Angle between opposite surfaces of the cone, in degrees. [degree, over 0.01, under 179;
    or text in degrees, minutes, seconds]
    """
    half_angle: float | str | None = None
    """
    Angle between the cone's axis and its surface, in degrees. [degree, over 0.005, under
    89.5; or text in degrees, minutes, seconds]
    """
    taper_per_foot: float | None = None
    """
    Inches of diameter a foot of length, whatever `units` are. [inch per foot, 0.003 to
    2000]
    """
    one_in_x: float | None = None
    """The x of a taper written 1:x, on the diameter (ISO 1119). [0.005 to 5000]"""
    rate_of_taper: float | None = None
    """
    Change of diameter for one unit of length, C = 1/x (ISO 3040). [length per length,
    0.0002 to 200]
    """
    designation: str | None = None
    """
    Designation of a standard taper or rate, as `GET /v1/tapers/standard` and `GET
    /v1/tapers/rates` list them, or what a toolmaker calls it: `MT3`, `B&S 9`, `JT33`,
    `NT40`, `1:20`. The answer says what it was read as. [1 to 60 characters]
    """
    large_diameter: float
    """Diameter at the large end. [length, 1e-06 to 10000]"""
    length: float
    """Length of the cone along its axis. [length, 1e-06 to 10000]"""
    large_diameter_tolerance: float
    """Tolerance of the large diameter, plus and minus. [length, 0 to 10000]"""
    included_angle_tolerance_arcsec: float
    """Tolerance ± of the included angle, in arc-seconds. [arcsecond, 1e-06 to 324000]"""
    magnification: float
    """
    How many times the part's size to draw; 1 gives the part's own coordinates. [0.1 to
    1000]
    """
    formats: list[Literal["svg", "dxf"]]
    """
    Forms wanted: `svg` to print at true size, `dxf` for a screen, a plotter or a machine's
    program. [1 to 2 entries]
    """


class ProfilePlace(AnswerModel):
    """A place on the profile, at the part."""

    x: float
    """Coordinate to the right. [length]"""
    y: float
    """Coordinate upward. [length]"""


class ProfilePoint(AnswerModel):
    """A point of the dressed profile."""

    x: float
    """Along the wheel's axis, from one side of the wheel. [length]"""
    radial_depth: float
    """Below the periphery, radially. [length]"""


class RoutingTool(AnswerModel):
    """What an operation takes."""

    tool: (
        Literal[
            "wheel",
            "dresser",
            "spin-fixture",
            "workhead",
            "adapter",
            "test-bar",
            "angle-plate",
            "sine-plate",
            "compound-plate",
            "block-set",
            "indicator",
            "rolls",
            "balls",
            "gauges",
            "probe",
            "comparator",
            "master-and-blue",
        ]
        | str
    )
    """What it is."""
    name: str | None
    """What the shop calls it; null where it has no name."""
    detail: str | None
    """Its size, or which blocks of it, in plain words; null where none was stated."""


class RoutingValue(AnswerModel):
    """A figure of an operation."""

    name: str
    """What it is, by the fields of `jobs.plan`, parts of the name apart by `/`."""
    value: float
    """The figure, not rounded. [stated]"""
    unit: str
    """
    Unit of the figure, as `x-unit` names units, a length in the unit that it has: `inch` or
    `millimetre`.
    """


class RuledOutInspection(AnswerModel):
    """A means that finds no room or cannot reach."""

    means: (
        Literal[
            "over-rolls",
            "over-balls",
            "gauge-depth",
            "two-gauges",
            "probe",
            "sine-plate",
            "comparator",
            "bluing",
        ]
        | str
    )
    """Which means."""
    reason: str
    """Why it cannot."""
    field: str
    """The field of the request that stands in its way, as a path."""
    instead: str | None
    """The nearest that works, in plain words; null where nothing is near."""


class RuledOutWay(AnswerModel):
    """A way that cannot make the feature."""

    way: (
        Literal[
            "sine-plate",
            "stacks-under-both-rolls",
            "quarter-turn",
            "sine-plate-turned-in-plan",
            "compound-sine-plate",
            "dressed-wheel",
            "wheel-side",
            "swivelled-workhead",
        ]
        | str
    )
    """Which way."""
    equipment: list[str]
    """What it would take of the shop, by name."""
    reason: str
    """Why it cannot."""
    field: str
    """The field of the request that stands in its way, as a path."""
    instead: str | None
    """The nearest that works, in plain words; null where nothing is near."""


class RunoutAfterTap(AnswerModel):
    """
    What a section should read once a tap is made; past its uncertainty, something else
    moved.
    """

    tir: float
    """TIR by eccentricity. [length]"""
    high_spot: Direction | None
    """Its high spot; null where nothing runs out."""
    indicator_change: float
    """
    Change of the reading by this tap with the side to tap from under the indicator: a shaft
    goes away from it and reads less, a bore's wall comes nearer and reads more, unless the
    section lies beyond the pivot. [length]
    """
    expected_readings: list[float]
    """
    Reading to expect at each angle sent, in that order, the indicator's zero left as it
    was; form included. [each length]
    """
    tir_of_readings: float
    """Highest less lowest of these, square to the surface. [length]"""


class RunoutAtStation(AnswerModel):
    """Runout of the axis at one station."""

    station: float
    """The station. [length]"""
    tir: LengthEstimate
    """
    TIR by eccentricity there. Its uncertainty, by those of both sections, grows past them;
    near zero it reaches down to none.
    """
    high_spot: DirectionEstimate | None
    """Angle at which the same surface would read highest; null where nothing runs out."""


class RunoutContributions(RequestModel):
    """
    What each part of the holding adds to the runout of the cone, as full indicator
    movement.

    Each is the TIR that it causes where the cone is ground, all else being true. One left
    out is not guessed: the plan says that it is missing from the budget.
    """

    adapter_tir: float | None = None
    """TIR of the adapter or collet at the cone, in `units`. [length, 0 to 10000]"""
    fixture_tir: float | None = None
    """TIR of the spin fixture's own axis at the cone, in `units`. [length, 0 to 10000]"""
    indicating_tir: float | None = None
    """TIR left after indicating true: resolution and reading, in `units`. [length, 0 to 10000]"""


class RunoutContributor(RequestModel):
    """One part of the chain that holds and turns the work."""

    name: str
    """Name of the contributor. [1 to 60 characters]"""
    tir: float
    """
    TIR that it makes at the station of the budget; where `projection` is sent, TIR at its
    own seat. In `units`. [length, 0 to 10000]
    """
    tilt_tir: float | None = None
    """
    Change of its TIR over `tilt_span`, by tilt, in `units`; it acts by `projection`, and is
    named as not stated where only that was sent. [length, 0 to 10000]
    """
    tilt_span: float | None = None
    """Length over which `tilt_tir` was found, in `units`. [length, 1e-06 to 10000]"""
    projection: float | None = None
    """Distance from its seat to the station of the budget, in `units`. [length, 0 to 10000]"""
    can_be_mended: bool = True
    """False for what has to be lived with."""


class RunoutCorrection(AnswerModel):
    """One correction, as a move of the axis."""

    kind: Literal["swing", "slide"] | str
    """Swing about the pivot, or slide whole."""
    near_move: float
    """How far the axis moves at the near section. [length]"""
    far_move: float
    """How far the axis moves at the far section. [length]"""
    tap_from: Direction | None
    """
    Side to tap from at the far section (at the near one where the far one does not move; at
    any, for a slide), toward the axis: where the center lies, in a bore opposite to the
    high spot. Null where nothing has to move.
    """


class RunoutFormHarmonic(AnswerModel):
    """One harmonic beyond the first."""

    lobes: int
    """Lobes a turn. [count]"""
    amplitude: float
    """Amplitude, half of its own full movement. [length]"""
    high_spot: Direction | None
    """Angle at which it first reads highest; null where there is none of it."""


class RunoutFound(RequestModel):
    """A runout found, and how well its eccentricity is known."""

    tir: float
    """Twice the eccentricity, in `units`. [length, 0 to 10000]"""
    high_spot: float | str | None = None
    """
    Angle at which the indicator reads highest, in degrees on the spindle, counted alike at
    every section: seen from one end, in one sense. Needed unless `tir` is 0. [degree, -360
    to 360; or text in degrees, minutes, seconds]
    """
    eccentricity_standard_uncertainty: float | None = None
    """
    Standard uncertainty of its eccentricity, in `units`, alike in every direction, as
    `runout.indicate` gives it; not stated where absent. [length, 0 to 10000]
    """


class RunoutIndicateResult(AnswerModel):
    """Eccentricity, what to tap, and what no tapping removes."""

    svg: str | None
    """The drawing, as SVG; null where `formats` did not ask for it."""
    eccentricity: LengthEstimate
    """
    Offset of the section's center from the axis. Its uncertainty is by rounding or by
    scatter, whichever reaches further, since scatter holds rounding already, and by form
    that was not fitted; what the indicator and the spindle err by themselves is not in it.
    Near zero it reaches down to none.
    """
    tir_from_eccentricity: float
    """Twice the eccentricity. [length]"""
    high_spot: DirectionEstimate | None
    """Angle at which the eccentricity reads highest; null where there is none."""
    tap_from: Direction | None
    """
    Side to tap from, toward the axis: where the center lies, which in a bore is opposite to
    the high spot; as well known as that. Null without eccentricity.
    """
    tap_distance: float
    """How far the part has to move: the eccentricity. [length]"""
    uncertainty_by_resolution: float
    """
    Standard uncertainty of the eccentricity by the indicator's resolution alone: half a
    step either way at each reading, opposed readings rounded alike. [length]
    """
    uncertainty_by_scatter: float | None
    """
    By the repeatability stated, or by the scatter of the readings about the fullest fit;
    null without a spare reading. [length]
    """
    tir_of_readings: float
    """Highest less lowest reading, corrected for the tip, as the indicator swung. [length]"""
    form: list[RunoutFormHarmonic]
    """Ovality and lobes; tapping leaves them."""
    residual_rms: float | None
    """Root mean square of what the fit leaves; null without a spare reading. [length]"""
    tir_left_after_tapping: float | None
    """
    Highest less lowest of the readings, square to the axis, less eccentricity; null of
    three readings, which any eccentricity fits whatever the form. [length]
    """
    sensed_station_from_apex: float | None
    """Where the indicator senses the axis: z / cos² α. Null without a station. [length]"""


class RunoutOffCrestResult(AnswerModel):
    """The false taper."""

    drop_at_small_end: float
    """How much lower it reads at the small end. [length]"""
    drop_at_large_end: float
    """How much lower it reads at the large end. [length]"""
    false_reading: float
    """Their difference over the run. [length]"""
    false_half_angle_arcsec: float
    """By how much the half angle seems larger than it is. [arcsecond]"""
    false_included_angle_arcsec: float
    """Twice that. [arcsecond]"""
    seems: Literal["true", "steeper"] | str
    """How the cone seems."""
    ground_by_this: Literal["true", "shallower"] | str
    """What the cone becomes when it is adjusted until the indicator stands still."""
    limit_miss: float | None
    """Largest miss for `half_angle_tolerance_arcsec`; null where that was not sent. [length]"""


class RunoutReading(RequestModel):
    """One reading of the indicator."""

    angular_position: float | str | None = None
    """
    Place under the indicator, in degrees, as marked on the part: counted from one mark,
    seen from one end, in the same sense at every section. Left out of all readings, these
    stand at equal steps of a whole turn, the first at 0°. [degree, -360 to 360; or text in
    degrees, minutes, seconds]
    """
    reading: float
    """
    Indicator reading in `units`; more is metal nearer to the indicator: a high spot of a
    shaft, the near wall of a bore. [length, -10000 to 10000]
    """


class RunoutReversalResult(AnswerModel):
    """Socket and part told apart. Directions are null where nothing runs out."""

    socket_tir: LengthEstimate
    """TIR that the socket makes."""
    socket_high_spot: DirectionEstimate | None
    """Angle on the spindle at which the surface reads highest by the socket alone."""
    socket_off_toward: Direction | None
    """
    Direction in which the socket's axis lies off: its high spot, opposite to it where a
    bore was read.
    """
    part_tir: LengthEstimate
    """TIR that the part makes by itself."""
    part_high_spot: DirectionEstimate | None
    """Angle at which it reads highest by the part alone, at its first clocking."""
    part_off_toward: Direction | None
    """Direction in which the part's axis lies off, at its first clocking."""
    best_clocking: Direction | None
    """Turn the part by so much from its first clocking; null where any clocking is as good."""
    best_clocking_tir: float
    """TIR at the best clocking: 2·||S| − |C||. [length]"""
    worst_clocking_tir: float
    """TIR at the worst clocking: 2(|S| + |C|). [length]"""


class RunoutSection(RequestModel):
    """Runout found at one section."""

    tir: float
    """Twice the eccentricity, in `units`. [length, 0 to 10000]"""
    high_spot: float | str | None = None
    """
    Angle at which the indicator reads highest, in degrees on the spindle, counted alike at
    every section: seen from one end, in one sense. Needed unless `tir` is 0. [degree, -360
    to 360; or text in degrees, minutes, seconds]
    """
    eccentricity_standard_uncertainty: float | None = None
    """
    Standard uncertainty of its eccentricity, in `units`, alike in every direction, as
    `runout.indicate` gives it; not stated where absent. [length, 0 to 10000]
    """
    station: float
    """Distance along the axis, in `units`. [length, -10000 to 10000]"""


class RunoutSectionFound(AnswerModel):
    """One section."""

    station: float
    """Its station. [length]"""
    circular_runout: float
    """Highest less lowest reading of the section. [length]"""
    mean_reading: float
    """Mean of its readings. [length]"""
    smallest_section_reading: float
    """Its lowest reading. [length]"""
    largest_section_reading: float
    """Its highest reading. [length]"""


class RunoutSectionRead(AnswerModel):
    """What was found at a section, as `runout.indicate` finds it."""

    station: float
    """The station. [length]"""
    eccentricity: LengthEstimate
    """
    Offset of the section's center from the axis, with its uncertainty by rounding or by
    scatter, and by form that was not fitted.
    """
    tir_from_eccentricity: float
    """Twice the eccentricity. [length]"""
    high_spot: DirectionEstimate | None
    """Angle at which the eccentricity reads highest; null where there is none."""
    tir_of_readings: float
    """Highest less lowest reading, square to the surface. [length]"""
    form: list[RunoutFormHarmonic]
    """Ovality and lobes; tapping leaves them."""
    tir_left_after_tapping: float | None
    """
    Highest less lowest of the readings, square to the axis, less eccentricity: no tap
    removes it. Null of three readings. [length]
    """


class RunoutSurfaceSection(RequestModel):
    """One section of the surface."""

    station: float
    """Its station along the axis. [length, -10000 to 10000]"""
    section_readings: list[float]
    """
    Readings round it; its highest and lowest will do. More is metal nearer to the
    indicator. [2 to 120 entries, each length, -10000 to 10000]
    """


class RunoutTap(AnswerModel):
    """One tap, in its turn."""

    kind: Literal["swing", "slide"] | str
    """Swing about the pivot, or slide whole."""
    station: float
    """Where to tap. [length]"""
    pivot_station: float | None
    """Station about which the work swings; null of a slide. [length]"""
    leave_it: bool
    """
    True where there is nothing to tap: the movement is within its uncertainty, or the limit
    is kept already. What follows then holds without this tap.
    """
    tap_from: Direction | None
    """
    Side to tap from, toward the axis, on the part's own angles; null where nothing has to
    move.
    """
    tap_distance: LengthEstimate
    """How far the axis has to move at the place tapped."""
    near: RunoutAfterTap
    """Near section after it."""
    far: RunoutAfterTap
    """Far section after it."""


class RunoutTapPlace(RequestModel):
    """Where the work can be tapped, and how it then moves."""

    kind: Literal["swing", "slide"]
    """`swing`: it turns about `pivot_station`; `slide`: it moves whole."""
    station: float
    """Where it is tapped, in `units`. [length, -10000 to 10000]"""
    pivot_station: float | None = None
    """
    Station about which the work swings, such as where it is held, in `units`; of a swing
    only. [length, -10000 to 10000]
    """


class RunoutTerm(AnswerModel):
    """One term by its definition."""

    key: (
        Literal[
            "tir",
            "eccentricity",
            "concentricity-zone-diameter",
            "coaxiality-zone-diameter",
            "circular-runout",
            "total-runout",
        ]
        | str
    )
    """Key of the term."""
    name: str
    """Its name."""
    definition: str
    """Its definition, in this project's words."""
    scope: Literal["section", "feature"] | str
    """Whether a value speaks of one section or of the whole feature."""
    source: str
    """Standard that defines it."""
    standing: Literal["published", "derived", "common-practice-no-source", "from-memory"] | str
    """How the definition is had."""


class RunoutTermList(AnswerModel):
    """Terms of runout: every row."""

    terms: list[RunoutTerm]
    """The rows, in order."""


class RunoutTotalResult(AnswerModel):
    """Total run-out, and what makes it."""

    total_runout: float
    """Highest less lowest reading of the whole surface. [length]"""
    circular_runout: float
    """The greatest of the sections. [length]"""
    circular_at: RunoutSectionFound
    """That section."""
    half_taper_arcsec: float
    """
    Rise of the mean reading along the axis as an angle: half of the taper; positive where
    the surface rises with the station. [arcsecond]
    """
    taper_over_length: float
    """That rise between the outermost sections, on the radius. [length]"""
    left_by_taper: float
    """Range of the means about that line: the surface line's bend. [length]"""
    margin: float | None
    """
    Limit less total run-out; null without a limit. No verdict: see inspection.verdict for
    that. [length]
    """
    sections: list[RunoutSectionFound]
    """Each section, in the order sent."""


class RunoutTrueUpAtStation(AnswerModel):
    """Runout of the axis at one station, before and after."""

    station: float
    """The station. [length]"""
    tir: LengthEstimate
    """TIR by eccentricity there now, as `runout.axis` has."""
    high_spot: DirectionEstimate | None
    """Angle at which the same surface would read highest now."""
    verdict: Literal["conforming", "not-conforming", "not-provable"] | str | None
    """
    Whether the limit is kept now by eccentricity, at 95 and 5 of 100; never `conforming`
    where a section's form passes it by itself. Null without a limit.
    """
    tir_after: LengthEstimate
    """
    TIR by eccentricity to expect after the taps; what is left by the readings' own
    uncertainty and by tapping. Form is not in it.
    """
    forecast: Literal["holds", "may-not-hold", "does-not-hold", "not-stated"] | str | None
    """
    Whether the taps keep the limit, at 95 and 5 of 100; never `holds` with something not
    stated, or with a section's form past the limit. Null without a limit.
    """


class RunoutTrueUpResult(AnswerModel):
    """The taps in order, with what to expect after each."""

    svg: str | None
    """The drawing, as SVG; null where `formats` did not ask for it."""
    near: RunoutSectionRead
    """Near section as read."""
    far: RunoutSectionRead
    """Far section as read."""
    tilt_arcsec: float
    """Angle between the work's axis and the spindle's. [arcsecond]"""
    leave_it: bool
    """True where no tap is to be made."""
    taps: list[RunoutTap]
    """In the order of `tap_places`."""
    at_stations: list[RunoutTrueUpAtStation]
    """In the order sent."""


class RunoutTrueUpSection(RequestModel):
    """
    One section as read.

    The slope is that of a cone indicated square to its surface; without one the indicator
    is square to the axis.
    """

    included_angle: float | str | None = None
    """
    Angle between opposite surfaces of the cone, in degrees. [degree, over 0.01, under 179;
    or text in degrees, minutes, seconds]
    """
    half_angle: float | str | None = None
    """
    Angle between the cone's axis and its surface, in degrees. [degree, over 0.005, under
    89.5; or text in degrees, minutes, seconds]
    """
    taper_per_foot: float | None = None
    """
    Inches of diameter a foot of length, whatever `units` are. [inch per foot, 0.003 to
    2000]
    """
    one_in_x: float | None = None
    """The x of a taper written 1:x, on the diameter (ISO 1119). [0.005 to 5000]"""
    rate_of_taper: float | None = None
    """
    Change of diameter for one unit of length, C = 1/x (ISO 3040). [length per length,
    0.0002 to 200]
    """
    designation: str | None = None
    """
    Designation of a standard taper or rate, as `GET /v1/tapers/standard` and `GET
    /v1/tapers/rates` list them, or what a toolmaker calls it: `MT3`, `B&S 9`, `JT33`,
    `NT40`, `1:20`. The answer says what it was read as. [1 to 60 characters]
    """
    readings: list[RunoutReading]
    """Readings at any angles, each angle once. [3 to 180 entries]"""
    station: float
    """
    Distance along the axis, in `units`; of a cone where the indicator senses its axis
    (`sensed_station_from_apex` of runout.indicate). [length, -10000 to 10000]
    """


class RunoutVBlockFactor(AnswerModel):
    """What is shown of one number of lobes."""

    lobes: int
    """Lobes a turn. [count]"""
    factor: float
    """Full movement for a departure from roundness of 1."""
    hidden: bool
    """True where less than a twentieth is shown."""
    two_point_factor: float
    """The same for a two-point check, as with a micrometer: odd lobes read 0."""


class RunoutVBlockResult(AnswerModel):
    """What the V shows, hides, and what a reading means."""

    factors: list[RunoutVBlockFactor]
    """From 2 lobes up."""
    hidden_lobes: list[int]
    """Numbers of lobes that the setting hides. [each count]"""
    hidden_from_both: list[int]
    """Of these, what a two-point check hides as well. [each count]"""
    out_of_roundness: float | None
    """Departure from roundness, peak to valley: TIR / factor. Null without a TIR. [length]"""
    better_vee_angle: Angle | None
    """
    Of 60°, 72°, 90°, 108° and 120°, indicator opposite the V, the one that shows most of
    `lobes`; null without `lobes`.
    """
    better_factor: float | None
    """Its factor."""


class RunoutVector(RequestModel):
    """A runout found: its TIR by eccentricity and its high spot."""

    tir: float
    """Twice the eccentricity, in `units`. [length, 0 to 10000]"""
    high_spot: float | str | None = None
    """
    Angle at which the indicator reads highest, in degrees on the spindle, counted alike at
    every section: seen from one end, in one sense. Needed unless `tir` is 0. [degree, -360
    to 360; or text in degrees, minutes, seconds]
    """


class ScaleDresser(RequestModel):
    """A dresser set by its graduated scale or vernier."""

    kind: Literal["scale"]
    zero: Literal["wheel-axis", "wheel-side"] = "wheel-axis"
    """
    Direction of the diamond's path with the dresser at zero: along the wheel's axis (it
    dresses flat), or along its side.
    """
    graduation: float | str
    """
    Smallest step that the scale or its vernier shows, in degrees. [degree, over 0, at most
    5; or text in degrees, minutes, seconds]
    """


class SetUpErrorFields(RequestModel):
    """
    How far each part of a sine set-up may be off, each as ± a limit.

    A limit that is not sent is not stated: nothing counts for it, and the answer names it.
    0 says that there is no such error.
    """

    center_distance_error_limit: float | None = None
    """Largest error ± of the center distance, in `units`. [length, 0 to 10000]"""
    roll_difference: float | None = None
    """Limit ± of the difference of the rolls' diameters, in `units`. [length, 0 to 10000]"""
    roll_parallelism: float | None = None
    """
    Limit ± by which the rolls are out of parallel in height from end to end, in `units`; a
    stack under one end rather than the middle sees half of it. [length, 0 to 10000]
    """
    face_parallelism: float | None = None
    """
    Limit ± by which the plate's face is out of parallel over `face_length`, in `units`.
    [length, 0 to 10000]
    """
    face_parallelism_on_rolls: bool = False
    """
    True where the face's parallelism was measured with the plate resting on its rolls: it
    then holds the rolls' difference already, and only the rest of it counts.
    """
    face_flatness: float | None = None
    """Flatness of the plate's face over `face_length`, in `units`. [length, 0 to 10000]"""
    face_length: float | None = None
    """
    Length over which parallelism and flatness act: the plate's, or the work's seat. Absent:
    the center distance. [length, 1e-06 to 10000]
    """
    table_flatness: float | None = None
    """
    Limit ± of the difference in height of the surface plate under the two rolls, in
    `units`. [length, 0 to 10000]
    """
    particle: float | None = None
    """Size of a particle under either roll or its stack, in `units`. [length, 0 to 10000]"""
    temperature_celsius: float | None = None
    """
    Temperature of plate and blocks alike; 20 °C is the reference (ISO 1). Not stated where
    absent: unlike materials then turn the angle by an unknown amount, and even of like ones
    the coefficients are known only to so much. [°C, -40 to 150]
    """
    temperature_error_limit_celsius: float | None = None
    """Largest error ± of the temperature of plate and blocks, in kelvins. [°C, 0 to 50]"""
    temperature_difference_celsius: float | None = None
    """Limit ± of the difference of the blocks' temperature to the plate's. [°C, 0 to 50]"""
    plate_material: Literal[
        "steel",
        "tungsten-carbide",
        "chromium-carbide",
        "ceramic",
        "glass-ceramic",
        "fused-quartz",
    ] = "steel"
    """Material of the plate."""
    axis_yaw_error_limit_arcsec: float | None = None
    """
    Largest error ± of the yaw of the work's axis out of the plane in which the plate tilts;
    at most 18000, which is 5°. It acts by its square, always toward a smaller angle.
    [arcsecond, 0 to 18000]
    """
    axis_pitch_error_limit_arcsec: float | None = None
    """
    Largest error ± of the pitch of the work's axis to the plate's face, in the plane in
    which the plate tilts; it acts one to one. [arcsecond, 0 to 324000]
    """


class SetupError(AnswerModel):
    """What one set-up error does to the cone; null, all of it, where it was not stated."""

    name: Literal["axis-offset", "axis-pitch", "axis-yaw", "all-together"] | str
    """Which error."""
    on_the_grinder: str | None
    """What this error is on this grinder, as it can be indicated there; null for all together."""
    half_angle_error_arcsec: float | None
    """
    Half angle of the straight line fitted to the surface (least squares), less the one
    wanted. [arcsecond]
    """
    included_angle_error_arcsec: float | None
    """Twice as much. [arcsecond]"""
    straightness: float | None
    """
    Departure of the surface from straight: peak to valley about that line, square to it.
    [length]
    """
    diameter_change: float | None
    """Change of the diameter at the small end for the same infeed. [length]"""


class SetupStation(AnswerModel):
    """The cone as ground at one station, all errors together."""

    station_from_small_end: float
    """Distance from the small end along the work's axis. [length]"""
    diameter: float
    """Diameter ground. [length]"""
    wanted_diameter: float
    """Diameter of the wanted cone. [length]"""


class SineAngleResult(AnswerModel):
    """The angle that a stack gives."""

    angle: Angle
    """
    Angle between the plate's top and the surface it stands on; negative where the roll
    called high stands lower.
    """
    height: float
    """Difference of the stacks, high less low. [length]"""
    arcsec_per_step: float
    """
    Change of angle in arc-seconds for one bench step of height (0.0001 in or 0.001 mm).
    [arcsecond]
    """


class SineBarToleranceEntry(AnswerModel):
    """One tolerance of a sine bar."""

    key: str
    """Key of the row."""
    standard_name: str
    """Standard, or kind of text."""
    applies_to: str
    """Bars that it is for."""
    characteristic: str
    """What is limited."""
    tolerance_low_mm: float | None
    """
    The tolerance in millimetres, the tighter where sources differ; null of an angle.
    [millimetre]
    """
    tolerance_high_mm: float | None
    """The wider where sources differ, else the same. [millimetre]"""
    per_length_mm: float | None
    """Length that it is for; null where it is for the whole of what it limits. [millimetre]"""
    tolerance_arcsec: float | None
    """Of an angle set, either way; null of a length. [arcsecond]"""
    either_way: bool
    """True where the tolerance is plus or minus."""
    edition: str
    """Edition of the standard."""
    source: str
    """Where the row comes from."""
    standing: Literal["published", "derived", "common-practice-no-source", "from-memory"] | str
    """How it is known."""
    note: str
    """What to mind; empty where nothing."""


class SineBarToleranceList(AnswerModel):
    """Tolerances of sine bars: every row."""

    bar_tolerances: list[SineBarToleranceEntry]
    """The rows, in order."""


class SineBaseDresser(RequestModel):
    """A dresser set by gauge blocks under its sine base."""

    kind: Literal["sine-base"]
    zero: Literal["wheel-axis", "wheel-side"] = "wheel-axis"
    """
    Direction of the diamond's path with the dresser at zero: along the wheel's axis (it
    dresses flat), or along its side.
    """
    center_distance: float
    """Distance between the centers of the two rolls, in `units`. [length, 1e-06 to 10000]"""


class SineCalibrationSetting(RequestModel):
    """One setting: a stack, angle blocks on the face, what the indicator still read."""

    angle: float | str
    """
    Angle of the angle blocks, in degrees, as calibrated. [degree, over 0, under 90; or text
    in degrees, minutes, seconds]
    """
    height: float
    """
    Stack under the high roll over that under the low one, in `units`. [length, 1e-06 to
    10000]
    """
    indicator_rise: float = 0.0
    """
    Rise that the indicator read along the top of the angle blocks, toward the low roll,
    over `indicator_travel`. [length, -10000 to 10000]
    """


class SineCenterDistanceResult(AnswerModel):
    """The center distance as calibrated."""

    center_distance: LengthEstimate
    """Distance of the centers of the rolls."""
    center_distance_error: float | None
    """That less the nominal one; null without it. [length]"""
    face_lean_arcsec: ArcsecEstimate | None
    """Lean of the face to the line of the rolls, steeper is positive; null from one setting."""
    largest_residual_arcsec: float | None
    """Most that an angle differs from what follows; null up to two settings. [arcsecond]"""


class SineComplement(AnswerModel):
    """The same work turned by 90°, set to the complement of the angle."""

    angle: Angle
    """90° less the angle wanted."""
    height: float
    """Difference of the stacks that sets it. [length]"""
    height_to_set: float
    """The same, rounded to the resolution. [length]"""
    deviation_arcsec: float
    """Angle at `height_to_set` less the complement. [arcsecond]"""
    arcsec_per_step: float
    """
    Change of angle in arc-seconds for one bench step of height (0.0001 in or 0.001 mm).
    [arcsecond]
    """


class SineCompoundStacks(AnswerModel):
    """The stacks of both plates from one set: they stand at once, so no block is in both."""

    base_blocks: list[float]
    """
    Nominal sizes of the blocks under the base plate's roll, largest first; empty where it
    stays at zero. [each length]
    """
    upper_blocks: list[float]
    """The same under the upper plate's roll. [each length]"""
    base_height: float
    """Height of the base plate's stack. [length]"""
    upper_height: float
    """Height of the upper plate's stack. [length]"""
    count: int
    """Blocks in both. [count]"""
    proved: bool
    """No two stacks of these heights that stand at once have fewer blocks."""
    as_built_arcsec: float
    """Angle between the surface wanted and the one that these stacks give. [arcsecond]"""


class SineEdgeTurns(AnswerModel):
    """How far the part's edges turn in plan when the plate is set; positive from +X toward +Y."""

    x_edge: Angle
    """Turn of an edge that lay along X."""
    y_edge: Angle
    """Turn of an edge that lay along Y."""


class SineHingeSetting(AnswerModel):
    """The setting of one plate of a compound plate."""

    hinge_axis: Literal["x", "y"] | str
    """Axis along which its hinge lies."""
    angle: Angle
    """
    Hinge angle, signed: positive raises the right (hinge along Y) or the back (hinge along
    X).
    """
    raised_side: Literal["right", "left", "back", "front", "neither"] | str
    """Side whose roll stands on the stack."""
    raised_work_side: Literal["top", "bottom", "right", "left", "back", "front", "neither"] | str
    """Side of the work, as drawn, that lies at the raised side."""
    height: float
    """Stack under the raised roll. [length]"""
    height_to_set: float
    """The same, rounded to the resolution. [length]"""
    arcsec_per_step: float
    """
    Change of angle in arc-seconds for one bench step of height (0.0001 in or 0.001 mm).
    [arcsecond]
    """
    action: str
    """What to do, in plain words."""


class SineLaying(AnswerModel):
    """How the work lies on the upper plate, from how it was drawn."""

    side_up: Literal["top", "right", "left", "back", "front"] | str
    """Side of the work, as drawn, that faces up: `top` where it is not tipped."""
    plan_turn: Angle
    """How far it is then turned in plan, by quarter turns, from +X toward +Y."""
    action: str
    """What to do, in plain words."""


class SineMend(AnswerModel):
    """A term to mend, and how far; its values in its `input_unit`."""

    term: (
        Literal[
            "center_distance_error_limit",
            "roll_difference",
            "roll_parallelism",
            "face_parallelism",
            "face_flatness",
            "stack_error_limit",
            "resolution",
            "table_flatness",
            "particle",
            "temperature_error_limit_celsius",
            "temperature_difference_celsius",
            "block_expansion",
            "plate_expansion",
            "axis_yaw_error_limit_arcsec",
            "axis_pitch_error_limit_arcsec",
            "wheel_breakdown",
        ]
        | str
    )
    """The term."""
    input_unit: str
    """Unit of the values, as `x-unit` names units."""
    at_hand: float
    """Value as stated. [stated]"""
    hold: float
    """Value to hold. [stated]"""
    ratio: float
    """`hold` over `at_hand`: near 1 is a small mend."""


class SineMonteCarlo(AnswerModel):
    """The same set-up drawn at random through the whole model (JCGM 101)."""

    trials: int
    """Trials, with a fixed seed. [count]"""
    mean_arcsec: float
    """Mean error of the angle. [arcsecond]"""
    standard_deviation_arcsec: float
    """Standard deviation of the angle. [arcsecond]"""
    low_arcsec: float
    """Lower end of the 95 % interval. [arcsecond]"""
    high_arcsec: float
    """Upper end of the 95 % interval. [arcsecond]"""
    difference_percent: float
    """Standard deviation over the budget's combined standard uncertainty, less one. [percent]"""


class SineNormal(RequestModel):
    """A surface by a vector that stands square on it, out of the work; any length."""

    kind: Literal["normal"]
    normal_x: float
    """Component to the right. [-1000000 to 1000000]"""
    normal_y: float
    """Component to the back. [-1000000 to 1000000]"""
    normal_z: float
    """Component upward; greater than 0. [-1000000 to 1000000]"""


class SineOverPinResult(AnswerModel):
    """Heights over the corner of face and stop, square to the surface plate."""

    svg: str | None
    """The drawing, as SVG; null where `formats` did not ask for it."""
    height_over_pin: LengthEstimate
    """
    Point over the pin's top: what to grind to or to find; negative below it.
    `measure_error_limit` counts for `pin_from_stop`.
    """
    pin_top_height: float
    """Pin's top over the corner. [length]"""
    point_height: float
    """Point over the corner. [length]"""


class SineProjectedAngles(RequestModel):
    """A surface by the two angles that its views show."""

    kind: Literal["projected-angles"]
    x_angle: float | str
    """
    Angle in the front view, in degrees: positive where the surface rises to the right (+X).
    [degree, over -90, under 90; or text in degrees, minutes, seconds]
    """
    y_angle: float | str
    """
    Angle in the side view, in degrees: positive where the surface rises to the back (+Y).
    [degree, over -90, under 90; or text in degrees, minutes, seconds]
    """


class SineRequirement(AnswerModel):
    """What must be held of one term; each value in `input_unit`, as ± a limit."""

    term: (
        Literal[
            "center_distance_error_limit",
            "roll_difference",
            "roll_parallelism",
            "face_parallelism",
            "face_flatness",
            "stack_error_limit",
            "resolution",
            "table_flatness",
            "particle",
            "temperature_error_limit_celsius",
            "temperature_difference_celsius",
            "block_expansion",
            "plate_expansion",
            "axis_yaw_error_limit_arcsec",
            "axis_pitch_error_limit_arcsec",
            "wheel_breakdown",
        ]
        | str
    )
    """The term."""
    input_unit: str
    """Unit of the values, as `x-unit` names units."""
    at_hand: float | None
    """Value as stated; null where it was not. [stated]"""
    alone: float
    """Largest value were all else perfect. [stated]"""
    equal_share: float
    """
    Largest value when this and the terms at hand each take an equal share of the variance;
    0 where what is known to be off leaves no room. [stated]
    """
    with_others: float | None
    """Largest value with all other terms as stated; null where they leave no room. [stated]"""


class SineRequirementsResult(AnswerModel):
    """What must be held so that the angle keeps its tolerance."""

    forecast: Literal["holds", "may-not-hold", "does-not-hold", "not-stated"] | str
    """
    Whether the set-up at hand will keep the tolerance, by `decision_rule`; `holds` only
    where every error that can act here was stated.
    """
    not_stated: list[str]
    """
    Fields of the request that were not stated: nothing is known of them, and nothing
    counted.
    """
    smallest_tolerance_arcsec: float | None
    """
    Tightest ± tolerance, on what `tolerance_on` names, that holds with the errors stated,
    by `decision_rule`. Null where no error was stated. [arcsecond]
    """
    limit_standard_uncertainty_arcsec: float | None
    """
    Combined standard uncertainty of the plate's angle, were it normal, that the tolerance
    leaves after the expected error; null where that alone is past it. [arcsecond]
    """
    requirements: list[SineRequirement]
    """What to hold of each term that has any effect here. Yaw ends at 18000″."""
    cheapest_to_mend: SineMend | None
    """
    The one term that needs the smallest improvement, in proportion, to bring the set-up
    within the tolerance by itself; null where it is already, or no single term can.
    """
    mend_together: list[
        Literal[
            "center_distance_error_limit",
            "roll_difference",
            "roll_parallelism",
            "face_parallelism",
            "face_flatness",
            "stack_error_limit",
            "resolution",
            "table_flatness",
            "particle",
            "temperature_error_limit_celsius",
            "temperature_difference_celsius",
            "block_expansion",
            "plate_expansion",
            "axis_yaw_error_limit_arcsec",
            "axis_pitch_error_limit_arcsec",
            "wheel_breakdown",
        ]
        | str
    ]
    """
    Where no single term can: the fewest, largest first, that would have to be all but
    removed.
    """


class SineRotationCheck(AnswerModel):
    """The result, checked by rotating the surface's normal through both hinges."""

    residual_arcsec: float
    """
    Angle between the surface's normal after both rotations and where it should point;
    rounding of the arithmetic only. [arcsecond]
    """
    as_set_arcsec: float
    """The same with the stacks rounded to be built. [arcsecond]"""
    wrong_frame: Angle
    """How far out the surface would be had the angles been taken in the other frame."""
    uncorrected: Angle
    """How far out it would be had both views' angles been set on the hinges as they stand."""


class SineSettingResult(AnswerModel):
    """The difference in height that sets the angle, and how much a small error of it matters."""

    height: float
    """Height of the stack under the high roll over that under the low roll. [length]"""
    height_to_set: float
    """The same, rounded to what can be built (`resolution`). [length]"""
    angle_as_set: Angle
    """The angle that `height_to_set` gives."""
    deviation_arcsec: float
    """`angle_as_set` less the angle wanted, in arc-seconds. [arcsecond]"""
    arcsec_per_unit: float
    """Change of angle in arc-seconds for one whole unit of height. [arcsecond per length]"""
    bench_step: float
    """The bench step: 0.0001 in or 0.001 mm. [length]"""
    arcsec_per_step: float
    """
    Change of angle in arc-seconds for one bench step of height (0.0001 in or 0.001 mm).
    [arcsecond]
    """
    angle: Angle
    """The angle as it was read."""
    complement_setting: SineComplement | None
    """Setting for the work turned by 90°, past `steep_angle` only."""


class SineStack(AnswerModel):
    """One stack."""

    blocks: list[float]
    """Nominal sizes, largest first; may be empty. [each length]"""
    total: float
    """Sum of the nominal sizes. [length]"""


class SineSwap(AnswerModel):
    """Blocks to change."""

    remove: list[float]
    """Blocks to take out, largest first. [each length]"""
    add: list[float]
    """Blocks to put in, largest first. [each length]"""
    blocks: list[float]
    """The new stack, largest first. [each length]"""
    total: float
    """Its height. [length]"""
    remaining_error_arcsec: float
    """Angle of the plate to expect less the one wanted, from the set's step alone. [arcsecond]"""


class SineTableRow(AnswerModel):
    """One line of a setting table."""

    angle: Angle
    """The angle."""
    height: float
    """Difference of the stacks that sets it. [length]"""
    height_to_set: float
    """The same, rounded to the resolution. [length]"""
    arcsec_per_step: float
    """
    Change of angle in arc-seconds for one bench step of height (0.0001 in or 0.001 mm).
    [arcsecond]
    """


class SineTaperAngleResult(AnswerModel):
    """The taper that a setting stands for."""

    included_angle: Angle
    """Angle between opposite surfaces of the cone."""
    taper_per_foot: float
    """Inches of diameter a foot of length. [inch per foot]"""
    one_in_x: float
    """
    The x of the taper written 1:x, on the diameter: how far a gauge moves along the axis
    for one unit of diameter.
    """
    rate_of_taper: float
    """
    C = (D − d) / l = 2 tan α: change of diameter for one unit of length (ISO 3040). [length
    per length]
    """
    plate_angle: Angle
    """Angle of the plate as set."""
    generator_lean: Angle
    """
    Lean of the top generator to the plate's top: the plate's angle, and what the indicator
    read.
    """
    half_angle: Angle
    """The cone's half angle."""
    included_angle_arcsec_per_step: float
    """Change of the included angle for one bench step of height. [arcsecond]"""


class SineTaperMistake(AnswerModel):
    """A usual mistake, and what it would do."""

    mistake: str
    """What is mistaken for what."""
    height: float
    """Height that the mistake would set. [length]"""
    plate_angle: Angle
    """Plate's angle at that height."""
    plate_angle_error_arcsec: float
    """That angle less the right one, in arc-seconds. [arcsecond]"""


class SineTaperSettingResult(AnswerModel):
    """The setting that brings the taper's top generator parallel to the surface plate."""

    plate_angle: Angle
    """Angle to set on the plate."""
    height: float
    """Difference of the stacks, high less low. [length]"""
    height_to_set: float
    """The same, rounded to 0.0001 in or 0.001 mm. [length]"""
    deviation_arcsec: float
    """Plate's angle at `height_to_set` less the right one. [arcsecond]"""
    half_angle: Angle
    """The cone's half angle."""
    included_angle: Angle
    """The cone's included angle."""
    axis_tilt: Angle
    """Lean of the cone's axis to the plate's top."""
    arcsec_per_step: float
    """
    Change of angle in arc-seconds for one bench step of height (0.0001 in or 0.001 mm).
    [arcsecond]
    """
    included_angle_arcsec_per_step: float
    """Change of the included angle that one bench step of height stands for. [arcsecond]"""
    action: str
    """Which way round, in plain words."""
    usual_mistakes: list[SineTaperMistake]
    """Heights that the usual mistakes give: none of them should be on the bench."""


class SineTrueTilt(RequestModel):
    """A surface by its steepest tilt, and the direction in plan in which it rises."""

    kind: Literal["true-tilt"]
    tilt: float | str
    """
    Angle between the surface and the horizontal, in degrees. [degree, at least 0, under 90;
    or text in degrees, minutes, seconds]
    """
    rise_direction: float | str
    """
    Direction in plan in which the surface rises, in degrees from +X (right) toward +Y
    (back). [degree, -360 to 360; or text in degrees, minutes, seconds]
    """


class SineTurnedSetting(AnswerModel):
    """The whole setting for the same surface with the work laid in another way."""

    laying: SineLaying
    """How the work lies."""
    base: SineHingeSetting
    """The base plate."""
    upper: SineHingeSetting
    """The upper plate, riding on the base plate."""


class SineUncertaintyResult(AnswerModel):
    """The budget of a set-up's angle, in arc-seconds of the plate's angle unless said."""

    angle: Angle
    """The angle as it was read."""
    angle_error_arcsec: ArcsecEstimate
    """
    Error of the plate's angle: its value is the expected angle less the wanted one, from
    the stack as built, from temperature off 20 °C and from yaw, which always flattens the
    angle. The contributions are the terms stated, by name.
    """
    included_angle_error_arcsec: ArcsecEstimate
    """
    Error of a cone's included angle: twice that of the plate's, which its half angle
    follows.
    """
    thermal_shift_arcsec: float | None
    """
    What the temperature does to the plate's angle; 0 where blocks and plate are of one
    material, else null where no temperature was stated. [arcsecond]
    """
    deviation_arcsec: float | None
    """
    What the stack's height as built does to the plate's angle: the angle that it sets less
    the one wanted; null without `height`. [arcsecond]
    """
    largest_term: (
        Literal[
            "center_distance_error_limit",
            "roll_difference",
            "roll_parallelism",
            "face_parallelism",
            "face_flatness",
            "stack_error_limit",
            "resolution",
            "table_flatness",
            "particle",
            "temperature_error_limit_celsius",
            "temperature_difference_celsius",
            "block_expansion",
            "plate_expansion",
            "axis_yaw_error_limit_arcsec",
            "axis_pitch_error_limit_arcsec",
            "wheel_breakdown",
        ]
        | str
        | None
    )
    """Term with the largest share, if any."""
    monte_carlo: SineMonteCarlo | None
    """The check by Monte Carlo; null where no error was stated."""
    smallest_tolerance_arcsec: float | None
    """
    Tightest ± tolerance, on what `tolerance_on` names, that holds with the errors stated,
    by `decision_rule`. Null where no error was stated. [arcsecond]
    """
    forecast: Literal["holds", "may-not-hold", "does-not-hold", "not-stated"] | str | None
    """
    Whether the set-up will keep the tolerance, by `decision_rule`; null without a
    tolerance. `holds` only where every error that can act here was stated.
    """


class SineVector(AnswerModel):
    """A unit vector; X right, Y back, Z up."""

    normal_x: float
    """Component to the right."""
    normal_y: float
    """Component to the back."""
    normal_z: float
    """Component upward."""


class SlopeFields(RequestModel):
    """A cone's slope, stated in at least one of six ways; several must agree."""

    included_angle: float | str | None = None
    """
    Angle between opposite surfaces of the cone, in degrees. [degree, over 0.01, under 179;
    or text in degrees, minutes, seconds]
    """
    half_angle: float | str | None = None
    """
    Angle between the cone's axis and its surface, in degrees. [degree, over 0.005, under
    89.5; or text in degrees, minutes, seconds]
    """
    taper_per_foot: float | None = None
    """
    Inches of diameter a foot of length, whatever `units` are. [inch per foot, 0.003 to
    2000]
    """
    one_in_x: float | None = None
    """The x of a taper written 1:x, on the diameter (ISO 1119). [0.005 to 5000]"""
    rate_of_taper: float | None = None
    """
    Change of diameter for one unit of length, C = 1/x (ISO 3040). [length per length,
    0.0002 to 200]
    """
    designation: str | None = None
    """
    Designation of a standard taper or rate, as `GET /v1/tapers/standard` and `GET
    /v1/tapers/rates` list them, or what a toolmaker calls it: `MT3`, `B&S 9`, `JT33`,
    `NT40`, `1:20`. The answer says what it was read as. [1 to 60 characters]
    """


class Source(AnswerModel):
    """Where a relation or a value comes from."""

    citation: str
    """Author, title, edition, year, clause or page; or the derivation."""
    standing: Literal["published", "derived", "common-practice-no-source", "from-memory"] | str
    """
    `published`: read in the text cited or its reprint; `from-memory`: recalled, not read
    again; `derived`: worked out and cross-checked by this project;
    `common-practice-no-source`: what the trade does, with no source.
    """


class StandardShankDimensions(AnswerModel):
    """
    Principal dimensions of a shank and its socket, null where the table gives none.

    The gauge plane is at the end of the socket, where the gauge diameter is.
    """

    units: Literal["in", "mm"] | str
    """Unit of these lengths."""
    gauge_plane_tolerance: float | None
    """
    How far the gauge plane may lie from its place along the axis, plus or minus: z.
    [length]
    """
    gauge_plane_to_end: float | None
    """How far the cone runs on past the gauge plane, at most: a. [length]"""
    end_diameter: float | None
    """Diameter at the cone's large end, about: D1 = D + C a. [length]"""
    small_end_diameter: float | None
    """Diameter at the cone's small end, about: d = D − C l1. [length]"""
    small_end_depth: float | None
    """Gauge plane to the small end of a shank without tang, at most: l1. [length]"""
    plain_shank_length: float | None
    """Whole length of a shank without tang, at most: l2 = l1 + a. [length]"""
    tang_end_depth: float | None
    """Gauge plane to the tang's end, at most: l3; S of the inch tables. [length]"""
    shank_length: float | None
    """Whole length of a shank with tang, at most: l4 = l3 + a; B of the inch tables. [length]"""
    tang_thickness: float | None
    """Thickness of the tang: b, h13; t of the inch tables. [length]"""
    tang_length: float | None
    """Length of the tang: T of the inch tables. [length]"""
    tang_radius: float | None
    """Radius of the tang's run-out: R of the inch tables. [length]"""
    tang_diameter: float | None
    """Diameter over the tang: d of the inch tables. [length]"""
    socket_bore: float | None
    """Bore at the socket's small end: d5, H11. [length]"""
    socket_depth: float | None
    """Least depth of the socket's cone and bore: l5; H of the inch tables. [length]"""
    slot_depth: float | None
    """
    Gauge plane to the near end of the slot for the drift: l6; K of the inch tables.
    [length]
    """
    slot_length: float | None
    """Length of the slot: L of the inch tables. [length]"""
    slot_width: float | None
    """Width of the slot: g, A13; W of the inch tables. [length]"""
    published: list[str]
    """Names of the columns seen in print."""
    source: str
    """Standard and table."""
    standing: Literal["published", "derived", "common-practice-no-source", "from-memory"] | str
    """How the other columns are had."""


class StandardTaperEntry(AnswerModel):
    """A standard taper; lengths in its own units."""

    designation: str
    """Designation to ask by."""
    name: str
    """Its name."""
    series: str
    """Series that it belongs to."""
    units: Literal["in", "mm"] | str
    """Unit of its lengths."""
    gauge_diameter: float
    """Large diameter, at the gauge plane. [length]"""
    small_diameter: float | None
    """Small diameter, where the table gives one. [length]"""
    small_end_depth: float | None
    """Distance from the gauge plane to the small diameter, where the table gives it. [length]"""
    included_angle: Angle
    """Included angle."""
    taper_per_foot: float
    """Inches of diameter a foot of length. [inch per foot]"""
    one_in_x: float
    """
    The x of the taper written 1:x, on the diameter: how far a gauge moves along the axis
    for one unit of diameter.
    """
    source: str
    """Standard and clause."""
    dimensions: StandardShankDimensions | None
    """Principal dimensions of shank and socket, where the table holds them."""
    standing: Literal["published", "derived", "common-practice-no-source", "from-memory"] | str
    """How the row is had."""
    note: str
    """What to mind; empty where nothing."""


class StandardTaperList(AnswerModel):
    """Standard tapers: every row."""

    standard: list[StandardTaperEntry]
    """The rows, in order."""


class StandingOffsetStation(AnswerModel):
    """The work at one station."""

    station_from_first: float
    """Its distance from the true center. [length]"""
    diameter: float
    """Diameter as ground. [length]"""
    diameter_error: float
    """That less `work_diameter`. [length]"""
    by_offset_toward_wheel: float
    """Of it, by that offset alone. [length]"""
    by_offset_across: float
    """Of it, by the offset across alone. [length]"""


class StraightShank(RequestModel):
    """A cylindrical shank, held in a collet or bushing of the fixture."""

    kind: Literal["straight"]
    diameter: float
    """Diameter of the shank, in `units`. [length, 1e-06 to 10000]"""


class StraightnessContact(AnswerModel):
    """A reading that the narrowest zone rests on."""

    station: float
    """Its place along the line. [length]"""
    reading: float
    """The reading. [length]"""


class StraightnessResult(AnswerModel):
    """The straight lines under the readings, and what they leave."""

    svg: str | None
    """The drawing, as SVG; null where `formats` did not ask for it."""
    straightness: LengthEstimate
    """
    Width of the narrowest zone between two parallel lines that holds all readings: the
    straightness of ISO 1101.
    """
    fitted_straightness: float
    """Highest less lowest residual of the least-squares line: never less. [length]"""
    zone_slope_arcsec: float
    """Slope of the narrowest zone. [arcsecond]"""
    fitted_slope_arcsec: float
    """Slope of the least-squares line. [arcsecond]"""
    rests_on: list[StraightnessContact]
    """The three readings that the zone rests on: two on one side, then the one on the other."""
    shape: Literal["crowned", "hollow", "straight"] | str
    """
    `crowned` where the one between the two stands above them, `hollow` where it stands
    below; `straight` where nothing is left.
    """
    residuals: list[float]
    """Each reading less the least-squares line. [each length]"""


class TaperAngleGradeRange(AnswerModel):
    """The tolerance of one range of cone lengths."""

    over: float
    """Lower end of the range, not included. [millimetre]"""
    up_to: float
    """Upper end of the range, included. [millimetre]"""
    included_angle_band_arcsec: float
    """Whole tolerance of the included angle: AT_α. [arcsecond]"""
    included_angle_band_microradians: float
    """The same in microradians, as the standard gives it. [microradian]"""
    printed_arcsec: float
    """
    The same in whole seconds as the standard prints it, 0.206″ to a microradian.
    [arcsecond]
    """
    smallest_diameter_band: float
    """
    The same on the diameter over the shortest cone of the range: AT_D, its bound.
    [micrometre]
    """
    largest_diameter_band: float
    """The same on the diameter over the longest cone of the range: AT_D. [micrometre]"""
    smallest_printed_diameter_band: float
    """
    AT_D over the shortest cone as printed: the preferred number R10 next to it.
    [micrometre]
    """
    largest_printed_diameter_band: float
    """AT_D over the longest cone as printed. [micrometre]"""


class TaperAngleResult(AnswerModel):
    """The same angle in every form."""

    included_angle: Angle
    """Angle between opposite surfaces of the cone."""
    taper_per_foot: float
    """Inches of diameter a foot of length. [inch per foot]"""
    one_in_x: float
    """
    The x of the taper written 1:x, on the diameter: how far a gauge moves along the axis
    for one unit of diameter.
    """
    rate_of_taper: float
    """
    C = (D − d) / l = 2 tan α: change of diameter for one unit of length (ISO 3040). [length
    per length]
    """
    read_as: str
    """How the text was read."""
    designations: list[str]
    """Standard tapers that the text names; empty where it names none."""
    half_angle: Angle
    """Half angle."""
    complement: Angle
    """Angle between the surface and the face: 90° − half."""
    half_angle_radians: float
    """Half angle in radians."""
    taper_percent: float
    """Rate of taper in percent. [percent]"""
    tolerance_arcsec: float | None
    """
    Plus or minus written beside the angle, on the angle as it is written; null where none
    is. [arcsecond]
    """


class TaperCandidateName(AnswerModel):
    """One name of a standard taper: a row of the tables."""

    designation: str
    """Designation of the taper or of the rate."""
    name: str
    """Its name or purpose."""
    source: str
    """Where the row comes from."""
    standing: Literal["published", "derived", "common-practice-no-source", "from-memory"] | str
    """How the row is had."""


class TaperCleanUpResult(AnswerModel):
    """
    Stock needed against stock there is.

    It counts what was stated of the part, see `not_stated`; null where nothing was.
    """

    forecast: Literal["holds", "may-not-hold", "does-not-hold", "not-stated"] | str
    """
    Whether the part cleans up within the limits given; `not-stated` without a limit, or
    with nothing stated that asks for stock.
    """
    needed_at_large_end: float | None
    """Stock below the mean surface at the large end, square to the surface. [length]"""
    needed_at_small_end: float | None
    """The same at the small end. [length]"""
    downfeed_from_first_touch: float | None
    """Downfeed from the first spark to clean. [length]"""
    off_diameter: float | None
    """What the large end's station loses. [length]"""
    final_large_diameter: float | None
    """Diameter at the large end's station. [length]"""
    point_loss: float | None
    """How far the cone's (virtual) point comes back along the axis. [length]"""
    from_runout: float | None
    """Larger share of runout, square to the surface. [length]"""
    from_angle: float | None
    """What the angle error alone asks for. [length]"""
    available_at_large_end: float | None
    """Stock that the least diameter leaves, square to the surface. [length]"""
    margin_at_large_end: float | None
    """Available less needed. [length]"""
    point_margin: float | None
    """`limit_point_loss` less the point's loss. [length]"""
    cutting_passes: int | None
    """Passes with feed. [count]"""
    total_passes: int | None
    """Passes with and without feed. [count]"""
    not_stated: list[str]
    """
    Fields of the request that were not stated: nothing is known of them, and nothing
    counted.
    """


class TaperFeedAtEnd(AnswerModel):
    """What one end of a cone meets, and what it loses by the whole downfeed."""

    gap_at_first_touch: float
    """
    Air between wheel and part here when the wheel first touches the other end, square to
    the surface. [length]
    """
    off_normal: float
    """Thickness that comes off square to the surface. [length]"""
    off_diameter: float
    """What comes off the diameter at a fixed station. [length]"""


class TaperInfeedResult(AnswerModel):
    """
    One layer in every measure, what each end loses, and the passes that take it off.

    Ends, total downfeed and passes count an angle error where one was stated; see
    `not_stated`. The layer is what comes off everywhere: where the angle is right, and at
    the end touched last.
    """

    half_angle: Angle
    """Half angle of the cone."""
    off_normal: float
    """Thickness of the layer square to the surface. [length]"""
    off_radius: float
    """What the layer takes off the radius at a fixed station. [length]"""
    off_diameter: float
    """What the layer takes off the diameter at a fixed station. [length]"""
    axial_shift: float
    """How far the layer moves gauge line and point along the axis. [length]"""
    diameter_per_downfeed: float
    """Diameter for one unit of downfeed."""
    axial_per_downfeed: float
    """Axial shift for one unit of downfeed."""
    touches_first: Literal["large-end", "small-end", "both-ends"] | str | None
    """End that the wheel reaches first; null where no angle error was stated."""
    large_end: TaperFeedAtEnd | None
    """What the large end loses; null where no angle error was stated."""
    small_end: TaperFeedAtEnd | None
    """What the small end loses; null where no angle error was stated."""
    total_downfeed: float
    """Downfeed from the first touch: the layer and the gap at the end touched last. [length]"""
    cutting_passes: int | None
    """Passes with feed. [count]"""
    last_pass: float | None
    """Feed of the last cutting pass. [length]"""
    total_passes: int | None
    """Passes with and without feed. [count]"""
    not_stated: list[str]
    """
    Fields of the request that were not stated: nothing is known of them, and nothing
    counted.
    """


class TaperOneBallResult(AnswerModel):
    """The socket's mouth from one ball."""

    large_diameter: LengthEstimate
    """Diameter at the large end, the mouth, with its uncertainty."""
    contact_diameter: float
    """Diameter of the circle of contact. [length]"""
    contact_depth: float
    """Depth of the circle of contact below the mouth. [length]"""
    rate_of_taper: float
    """
    C = (D − d) / l = 2 tan α: change of diameter for one unit of length (ISO 3040). [length
    per length]
    """


class TaperOverBallsNominalResult(AnswerModel):
    """What to expect with balls in a socket."""

    svg: str | None
    """The drawing, as SVG; null where `formats` did not ask for it."""
    large_ball_depth: float
    """Depth of the larger ball's top below the mouth; negative where it stands out. [length]"""
    small_ball_depth: float
    """Depth of the smaller ball's top below the mouth. [length]"""
    large_ball_contact_depth: float
    """Depth below the mouth at which the larger ball touches. [length]"""
    small_ball_contact_depth: float
    """Depth below the mouth at which the smaller ball touches. [length]"""
    half_angle: Angle
    """Half angle."""


class TaperOverRollsNominalResult(AnswerModel):
    """What to expect over rolls."""

    svg: str | None
    """The drawing, as SVG; null where `formats` did not ask for it."""
    lower_measure: float
    """Measure over both rolls, lower. [length]"""
    upper_measure: float
    """Measure over both rolls, upper. [length]"""
    measure_difference: float
    """Upper less lower measure. [length]"""
    lower_contact_height: float
    """Height over the standing face at which the lower rolls touch. [length]"""
    upper_contact_height: float
    """Height over the standing face at which the upper rolls touch. [length]"""
    half_angle: Angle
    """Half angle."""
    half_angle_arcsec_per_measure_step: float
    """Half angle that 0.0001 in or 0.001 mm on one measure stands for. [arcsecond]"""


class TaperPlugDepthNominalResult(AnswerModel):
    """The depth to expect, and its limits."""

    included_angle: Angle
    """Angle between opposite surfaces of the cone."""
    taper_per_foot: float
    """Inches of diameter a foot of length. [inch per foot]"""
    one_in_x: float
    """
    The x of the taper written 1:x, on the diameter: how far a gauge moves along the axis
    for one unit of diameter.
    """
    rate_of_taper: float
    """
    C = (D − d) / l = 2 tan α: change of diameter for one unit of length (ISO 3040). [length
    per length]
    """
    gauge_depth: float
    """
    Distance from the part's large end (a socket's mouth, a plug's large end) toward the
    small end to the gauge's line or sharp edge; negative where it stands out. [length]
    """
    smallest_gauge_depth: float | None
    """
    Depth at the smallest large diameter, the shallow limit; null where its tolerance was
    not stated. [length]
    """
    largest_gauge_depth: float | None
    """
    Depth at the largest large diameter, the deep limit; null where its tolerance was not
    stated. [length]
    """
    engaged_length: float
    """Length over which the gauge touches; 0 for a sharp edge. [length]"""
    half_angle: Angle
    """Half angle."""
    not_stated: list[str]
    """
    Fields of the request that were not stated: nothing is known of them, and nothing
    counted.
    """


class TaperProbedReading(RequestModel):
    """One depth and the travel there."""

    depth: float
    """Depth of the tip's center below the face, in `units`. [length, -10000 to 10000]"""
    tip_travel: float
    """
    Travel of the tip's center from wall to wall across the axis, in `units`: on a height
    gauge the high reading less the low one, the tip not taken off. [length, 0 to 10000]
    """


class TaperRateEntry(AnswerModel):
    """A standard rate of taper or cone angle."""

    designation: str
    """Designation to ask by."""
    used_for: str
    """What it is for."""
    included_angle: Angle
    """Cone angle."""
    one_in_x: float
    """
    The x of the taper written 1:x, on the diameter: how far a gauge moves along the axis
    for one unit of diameter.
    """
    taper_per_foot: float
    """Inches of diameter a foot of length. [inch per foot]"""
    source: str
    """Standard and table."""
    standing: Literal["published", "derived", "common-practice-no-source", "from-memory"] | str
    """How the row is had."""
    note: str
    """What to mind; empty where nothing."""


class TaperRateList(AnswerModel):
    """Standard rates of taper: every row."""

    rates: list[TaperRateEntry]
    """The rows, in order."""


class TaperShank(RequestModel):
    """A tapered shank, held in an adapter that fits the fixture."""

    kind: Literal["taper"]
    designation: str
    """
    Designation of a standard taper or rate, as `GET /v1/tapers/standard` and `GET
    /v1/tapers/rates` list them, or what a toolmaker calls it: `MT3`, `B&S 9`, `JT33`,
    `NT40`, `1:20`. The answer says what it was read as. [1 to 60 characters]
    """


class TaperSolveResult(AnswerModel):
    """The whole taper, its slope in every form."""

    included_angle: Angle
    """Angle between opposite surfaces of the cone."""
    taper_per_foot: float
    """Inches of diameter a foot of length. [inch per foot]"""
    one_in_x: float
    """
    The x of the taper written 1:x, on the diameter: how far a gauge moves along the axis
    for one unit of diameter.
    """
    rate_of_taper: float
    """
    C = (D − d) / l = 2 tan α: change of diameter for one unit of length (ISO 3040). [length
    per length]
    """
    large_diameter: float
    """Diameter of the large end. [length]"""
    small_diameter: float
    """Diameter of the small end; 0 for a sharp point. [length]"""
    length: float
    """Distance between the two diameters along the axis. [length]"""
    slant_length: float
    """Length along the surface. [length]"""
    half_angle: Angle
    """Angle between axis and surface."""


class TaperStandoffResult(AnswerModel):
    """
    Where the gauge line stands and where the cones bear.

    What follows from an error is null where that error was not stated; see `not_stated`.
    """

    standoff: float | None
    """
    How far the inner cone's gauge plane stands out of the outer one's, by the errors
    stated: positive out, negative in. [length]
    """
    standoff_from_diameter: float | None
    """Its share from the diameter. [length]"""
    standoff_from_angle: float | None
    """Its share from the angle. [length]"""
    standoff_per_diameter: float
    """Axial shift for one unit of diameter, along the side that bears."""
    bears_at: Literal["large-end", "small-end", "both-ends"] | str | None
    """Where the cones bear."""
    open_at: Literal["large-end", "small-end", "both-ends"] | str | None
    """Where they stand apart; null too at both ends."""
    gap_normal: float | None
    """Gap at the open end, square to the gauge's surface. [length]"""
    gap_on_diameter: float | None
    """The same on the diameter. [length]"""
    marked_share_percent: float | None
    """Share of the length that the film would mark. [percent]"""
    marked_length: float | None
    """Length along the axis that the film would mark. [length]"""
    bluing_marks: Literal["all-over", "at-large-end-only", "at-small-end-only"] | str | None
    """What the marking shows."""
    smallest_error_shown_arcsec: float
    """
    Least error of included angle that this film shows over this length: smaller ones mark
    all over. [arcsecond]
    """
    not_stated: list[str]
    """
    Fields of the request that were not stated: nothing is known of them, and nothing
    counted.
    """


class TaperStationLimits(AnswerModel):
    """Limits of size at one station; null where the large diameter's tolerance was not stated."""

    station_from_large_end: float
    """Distance from the large end. [length]"""
    nominal_diameter: float
    """Nominal diameter. [length]"""
    smallest_diameter: float | None
    """Smallest diameter. [length]"""
    largest_diameter: float | None
    """Largest diameter. [length]"""


class TaperToleranceResult(AnswerModel):
    """The tolerance in every form."""

    included_angle: Angle
    """Nominal included angle."""
    included_angle_band_arcsec: float
    """Whole tolerance of the included angle. [arcsecond]"""
    included_angle_band_microradians: float
    """The same in microradians. [microradian]"""
    diameter_band_over_length: float
    """What its limits span on the difference of the end diameters, exactly. [length]"""
    diameter_band_by_standard: float
    """AT_D = AT_α × length, as the standard states it for slopes up to 1:3. [length]"""
    smallest_included_angle: Angle
    """Smallest included angle."""
    largest_included_angle: Angle
    """Largest included angle."""
    at_stations: list[TaperStationLimits]
    """Limits of size."""
    not_stated: list[str]
    """
    Fields of the request that were not stated: nothing is known of them, and nothing
    counted.
    """


class TaperWayToSet(AnswerModel):
    """One way to set a taper and its error."""

    way: Literal["swivel", "tailstock-set-over", "taper-attachment"] | str
    """The way."""
    setting: float
    """Arc on the scale, set-over, or offset of the bar at its length. [length]"""
    half_angle_error_arcsec: ArcsecEstimate
    """Error of the half angle."""
    error_on_diameter: LengthEstimate
    """What it makes over the work's length on the diameter."""
    forecast: Literal["holds", "may-not-hold", "does-not-hold", "not-stated"] | str
    """
    Whether the machine reaches this setting: by the limit stated; without one `not-stated`,
    or `may-not-hold` where the taper is steeper than is commonly set this way.
    """


class TappedHoleEntry(AnswerModel):
    """A tapped center hole; all in millimetres."""

    key: str
    """Key of the row."""
    thread: str
    """Its thread."""
    pilot_diameter_mm: float
    """Clearance bore before the thread: d3. [millimetre]"""
    cone_diameter_mm: float
    """Largest diameter of the 60° cone: d4. [millimetre]"""
    chamfer_diameter_mm: float
    """Protecting chamfer, 120°, of form DS alone: d5. [millimetre]"""
    cone_depth_mm: float
    """Depth of the cone, to a tenth. [millimetre]"""
    source: str
    """Where the row comes from."""
    standing: Literal["published", "derived", "common-practice-no-source", "from-memory"] | str
    """How it is known."""


class TappedHoleList(AnswerModel):
    """Tapped center holes: every row."""

    tapped_holes: list[TappedHoleEntry]
    """The rows, in order."""


class TirEstimate(AnswerModel):
    """
    TIR at the station, as the length of a sum of vectors of unknown phase.

    `value` is null, for no `high_spots` were stated. `standard_uncertainty` is the root
    mean square of that length, the root sum of squares of the contributors' TIR:
    `rms_share_percent` says how many assemblies keep it. `expanded_uncertainty` is the TIR
    that 95 of 100 assemblies do not pass (by their phases, so without a coverage factor);
    `worst_case` the sum, all in line, that none passes. Vector quantities are treated in
    JCGM 102:2011, cited from memory; for this chain it is derived here.
    """

    value: float | None
    """Best estimate, known offsets and the means of one-sided errors included. [length]"""
    standard_uncertainty: float | None
    """Combined standard uncertainty; null where no contribution was stated. [length]"""
    degrees_of_freedom: float | None
    """
    Effective degrees of freedom (Welch and Satterthwaite); null where they are not limited,
    as with stated limits.
    """
    expanded_uncertainty: float | None
    """Expanded uncertainty: half of the width that covers `coverage_probability`. [length]"""
    coverage_factor: float | None
    """Coverage factor k: expanded over standard uncertainty; null where both are 0."""
    coverage_probability: float | None
    """
    Probability, 0 to 1, that value ± expanded uncertainty covers, by the distributions of
    the contributions (JCGM 101:2008), or by Student's where degrees of freedom are limited
    (JCGM 100:2008, G.4).
    """
    worst_case: float | None
    """
    Largest error with every stated contribution at its limit at once, known offsets
    included; of a normal contribution three standard deviations. Never less than what
    covers 95 %; null where a contribution has no limit, because its spread was itself
    estimated from few readings (`degrees_of_freedom`). [length]
    """
    contributions: list[LengthContribution]
    """What was stated, in a fixed order."""
    not_stated: list[str]
    """Contributions that were not stated: nothing is known of them, and nothing counted."""
    rms_share_percent: float | None
    """
    Share of assemblies whose TIR does not pass `standard_uncertainty`, in percent: half of
    two alike, 59 of 100 where one is twice each of two others. [percent]
    """


class VeeRollExpected(AnswerModel):
    """One roll in a nominal vee."""

    roll_diameter: float
    """Diameter of the roll. [length]"""
    roll_top: float
    """Height of the roll's top over the faces; negative below them. [length]"""
    contact_depth: float
    """Depth below the faces at which it touches. [length]"""


class WheelChooseResult(AnswerModel):
    """The ways side by side."""

    half_angle: Angle
    """Half angle of the cone."""
    best: Literal["sine-plate", "dressed-wheel", "wheel-side", "swivelled-workhead"] | str | None
    """
    Of the ways that hold, the quickest; else of those that may not hold, the one with the
    least expanded uncertainty; null where there is neither.
    """
    ways: list[GrindingWay]
    """The ways described, best first."""
    not_described: list[
        Literal["sine-plate", "dressed-wheel", "wheel-side", "swivelled-workhead"] | str
    ]
    """Ways that the request does not describe."""
    considered: int
    """How many were considered. [count]"""


class WheelDiamondResult(AnswerModel):
    """How the diamond stands to the wheel's surface, and what its height does."""

    svg: str | None
    """The drawing, as SVG; null where `formats` did not ask for it."""
    drag_angle: Angle
    """Lean of the nib to the wheel's radius at the point; positive where the wheel drags it."""
    drag_angle_worn: Angle | None
    """The same of the worn wheel, the diamond left where it is; null without its diameter."""
    behind_crest: float
    """How much lower the wheel's foremost line stands than the point touches it. [length]"""
    depth_per_pass: float | None
    """Radial depth that a feed dresses away; null without a feed. [length]"""
    slope_ratio: float
    """
    What the tangent of an angle dressed at this height is multiplied by, at this diameter;
    the radius of a dressed arc is divided by it.
    """


class WheelDressingResult(AnswerModel):
    """Lead, traverse and time of a dress, and the thread that it leaves on the wheel."""

    active_width: float
    """Width over which the diamond touches the wheel. [length]"""
    lead: float
    """Way of the diamond along the wheel in one turn of it. [length]"""
    overlap_ratio: float
    """Active width over lead: how many times each place is dressed in one pass."""
    traverse: float
    """Traverse of the diamond, in `units` per minute. [length per minute]"""
    cusp_height: float | None
    """
    Height of the cusps that a round nose leaves, in theory; null for an active width given
    by itself, and below an overlap ratio of 1, where the rule does not hold. [length]
    """
    roughness_by_cusps_micrometre: float | None
    """
    Ra to expect after this dress, in proportion to the cusps; null without a known dress
    and a nose radius, and outside overlap ratios of 1 to 6 of either dress. [micrometre]
    """
    roughness_by_power_rule_micrometre: float | None
    """The same as √lead · depth^¼, which changes it far less: expect it between. [micrometre]"""
    pass_seconds: float
    """Time of one pass over the width and both overruns, its return not counted. [second]"""
    total_seconds: float
    """Time of all passes, returns not counted. [second]"""
    total_depth: float
    """Depth dressed away by all passes. [length]"""
    guides: list[DressingGuideRange]
    """The guide values, coarse to fine."""


class WheelInspection(RequestModel):
    """A way to inspect the ground cone, by the least errors that it shows."""

    name: str
    """What it is called in the answer. [1 to 60 characters]"""
    smallest_half_angle_error_arcsec: float | None = None
    """
    Least error of the half angle that it shows, in arc-seconds. Absent: it shows no angle.
    [arcsecond, 0 to 324000]
    """
    smallest_straightness: float | None = None
    """
    Least departure from straight that it shows, in `units`. Absent: it shows no form.
    [length, 0 to 10000]
    """


class WheelObservedPiece(RequestModel):
    """A piece ground on one dress, as it was measured."""

    piece_since_dress: int
    """Which piece it was since the wheel was dressed, the first being 1. [count, 1 to 1000000]"""
    measured_error_arcsec: float | None = None
    """Its angle as measured, less the angle wanted. [arcsecond, -324000 to 324000]"""
    measured_size_error: float | None = None
    """Its size as measured, less the size wanted, in `units`. [length, -10000 to 10000]"""


class WheelRadiusResult(AnswerModel):
    """The arc, and what a check of it reads."""

    radius: LengthEstimate
    """Radius of the arc."""
    arc_width: LengthEstimate
    """Width of the arc."""
    sagitta: LengthEstimate
    """Sagitta of the arc."""
    pin_over_face: float | None
    """Top of the pin over the face of the groove; null without a pin. [length]"""
    pin_rests_on: Literal["bottom", "edges"] | str | None
    """Where the pin rests; on the edges it tells the width only."""
    gap_at_edges: float | None
    """
    Light under the radius gauge at the arc's ends, where it touches the middle; negative
    where it touches the ends, and the light is in the middle. [length]
    """
    radius_as_dressed: float | None
    """
    Radius, through middle and ends, that comes out by the diamond's height; null without
    it. [length]
    """
    radius_ratio: float | None
    """That over the radius set; never below 1."""


class WheelRedressResult(AnswerModel):
    """How angle and size grow, and how many pieces keep them on one dress."""

    growth_per_piece_arcsec: ArcsecEstimate | None
    """Growth of the angle's error a piece, signed; null without a tolerance of it."""
    growth_per_piece: LengthEstimate | None
    """Growth of the size's error a piece, signed; null without a tolerance of it."""
    first_piece_error_arcsec: float | None
    """Angle's error of the first piece by the line: the set-up's own. [arcsecond]"""
    first_piece_size_error: float | None
    """Size's error of the first piece by the line. [length]"""
    pieces_per_dress: int
    """
    Most pieces on one dress, so that the last still keeps every tolerance by
    `decision_rule` and what was stated; 0 where not even the first does. [count]
    """
    limited_by: Literal["angle", "size"] | str | None
    """Which of them asks for the dress; null where all pieces keep both."""
    dressings: int | None
    """Dresses between the first piece and the last; null where none would do. [count]"""
    pieces_inspected: int | None
    """How many pieces to measure. [count]"""
    pieces_to_measure: list[int]
    """Which: first, last before each dress, first after it, last; at most 24. [each count]"""
    not_stated: list[str]
    """Fields that were not stated; they could only make a dress sooner."""


class WheelSafetyRule(AnswerModel):
    """One rule, in our own words."""

    key: str
    """Key of the row."""
    subject: str
    """What it is about."""
    applies_to: str
    """Machines, wheels or work that it is for."""
    rule: str
    """The rule in our own words; the text in force comes first."""
    source: str
    """Regulation or standard, with the clause."""
    clause: str
    """Clause, and how its text was had."""
    edition: str
    """Edition read; `not known` where it was not told."""
    standing: Literal["published", "derived", "common-practice-no-source", "from-memory"] | str
    """How it is known."""


class WheelSafetyRuleList(AnswerModel):
    """Safety rules of grinding wheels: every row."""

    safety_rules: list[WheelSafetyRule]
    """The rows, in order."""


class WheelSpeedLimit(AnswerModel):
    """One limit of the spindle's speed."""

    name: str
    """The request's field that it comes from."""
    rpm: float
    """Highest spindle speed that it allows. [per minute]"""
    share_percent: float
    """Spindle speed as a share of it. [percent]"""
    over_limit: bool
    """True where the spindle speed is over it."""


class WheelStartCheck(AnswerModel):
    """A usual check before the wheel is started."""

    action: str
    """What to do."""
    source: str
    """Where it comes from."""
    standing: Literal["published", "derived", "common-practice-no-source", "from-memory"] | str
    """How it is had."""


class WornWheelErrors(AnswerModel):
    """The diamond's height on the worn wheel."""

    worn_diameter: float
    """Worn diameter. [length]"""
    half_angle_error_arcsec: float
    """Mean half angle error. [arcsecond]"""
    straightness: float
    """Departure from straight. [length]"""


class WornWheelSpeed(AnswerModel):
    """The same wheel worn down."""

    worn_diameter: float
    """Worn diameter. [length]"""
    surface_speed_m_per_s: float
    """Surface speed at the same spindle speed. [metre per second]"""
    surface_speed_ft_per_min: float
    """The same in ft/min. [foot per minute]"""
    loss_percent: float
    """Surface speed lost by wear. [percent]"""
    rpm_to_restore: float | None
    """
    Spindle speed that would bring the surface speed back; null where a limit forbids it,
    where the wheel bears no mark, or one in surface speed and `new_diameter` was not
    stated. [per minute]
    """
    reason: str | None
    """Why `rpm_to_restore` is null; null where it is not."""


class WrongBlock(AnswerModel):
    """One mistake with this stack: a block taken for another one of the box."""

    meant: float
    """Block that belongs in the stack. [length]"""
    wrung: float
    """Block taken in its place. [length]"""
    included_angle_error_arcsec: float | None
    """
    Included angle that the wrong stack gives, less the wanted one; null where it lifts the
    plate by its center distance or more. [arcsecond]
    """


class AngleEstimate(AnswerModel):
    """An angle with its uncertainty in arc-seconds."""

    value: Angle | None
    """Best estimate, known offsets and the means of one-sided errors included."""
    standard_uncertainty: float | None
    """Combined standard uncertainty; null where no contribution was stated. [arcsecond]"""
    degrees_of_freedom: float | None
    """
    Effective degrees of freedom (Welch and Satterthwaite); null where they are not limited,
    as with stated limits.
    """
    expanded_uncertainty: float | None
    """Expanded uncertainty: half of the width that covers `coverage_probability`. [arcsecond]"""
    coverage_factor: float | None
    """Coverage factor k: expanded over standard uncertainty; null where both are 0."""
    coverage_probability: float | None
    """
    Probability, 0 to 1, that value ± expanded uncertainty covers, by the distributions of
    the contributions (JCGM 101:2008), or by Student's where degrees of freedom are limited
    (JCGM 100:2008, G.4).
    """
    worst_case: float | None
    """
    Largest error with every stated contribution at its limit at once, known offsets
    included; of a normal contribution three standard deviations. Never less than what
    covers 95 %; null where a contribution has no limit, because its spread was itself
    estimated from few readings (`degrees_of_freedom`). [arcsecond]
    """
    contributions: list[ArcsecContribution]
    """What was stated, in a fixed order."""
    not_stated: list[str]
    """Contributions that were not stated: nothing is known of them, and nothing counted."""


class AngleJudged(AnswerModel):
    """An angle judged."""

    smallest_allowed: Angle | None
    """Lower limit; null where there is none."""
    largest_allowed: Angle | None
    """Upper limit; null where there is none."""
    smallest_accepted: Angle | None
    """
    Lower gauge limit: the smallest value that, measured as well as this one, proves that
    the limits are kept. Null without a lower limit, and where no value does.
    """
    largest_accepted: Angle | None
    """Upper gauge limit, likewise the largest such value."""
    rejected_below: Angle | None
    """
    Below this value, measured as well as this one, the limits are proved not to be kept.
    Null without a lower limit, and where no value proves it.
    """
    rejected_above: Angle | None
    """Likewise above this value."""
    needed_standard_uncertainty_arcsec: float | None
    """
    Largest standard uncertainty with which the value as measured would prove that the
    limits are kept, or where it lies outside that they are not; the error distributed as
    the one stated, else normal. Of simple acceptance the one agreed on. Null where the rule
    does not go by it, and where none would do: on a limit. [arcsecond]
    """
    estimate: AngleEstimate
    """The angle as measured, with its uncertainty."""


class Basis(AnswerModel):
    """What an answer stands on."""

    relations: list[str]
    """The formulas used, as text."""
    sources: list[Source]
    """Where formulas and values come from."""
    release: str
    """
    Release of the calculations: on one installation the same request at the same release
    gives the same bytes.
    """
    fingerprint: str
    """
    Digest of the request, as it was read, and the release: the same for the same request
    however it is written, another where the answer may be another.
    """


class BlockAlternative(AnswerModel):
    """Another stack."""

    blocks: list[float]
    """Nominal sizes of the blocks, largest first. [each length]"""
    marks: list[str | None]
    """
    Identification marks of the same blocks, null where one has none; empty where none of
    them has one.
    """
    count: int
    """How many blocks. [count]"""
    total: float
    """Sum of the nominal sizes. [length]"""
    deviation: float
    """Total less the height asked for. [length]"""
    actual_height: LengthEstimate
    """
    Height of the stack at 20 °C: the sum of nominal sizes and measured deviations, and how
    far calibrations and grade limits leave it open. Nothing is said of that, and `grade`
    named as not stated, where neither is known of some block. `blocks.budget` takes in
    films and temperature.
    """
    actual_deviation: float
    """Actual height less the height asked for. [length]"""


class BlockAngleAlternative(AnswerModel):
    """A stack of angle blocks."""

    angle_blocks: list[BlockAngleUsed]
    """The blocks, largest first."""
    count: int
    """How many blocks. [count]"""
    total: Angle
    """Angle that the nominal angles make."""
    deviation_arcsec: float
    """Total less the wanted angle. [arcsecond]"""
    actual_angle: AngleEstimate
    """
    Angle with measured deviations, a subtracted block's counted the other way, and how far
    calibrations and grade leave it open. Nothing is said of that, and `grade` named as not
    stated, where neither is known of some block.
    """
    actual_deviation_arcsec: float
    """Actual angle less the wanted one. [arcsecond]"""
    words: str
    """The stack as a sum."""


class BlockAngleGradeEntryAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: BlockAngleGradeEntry
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class BlockAngleGradeListAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: BlockAngleGradeList
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class BlockAngleSetEntryAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: BlockAngleSetEntry
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class BlockAngleSetListAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: BlockAngleSetList
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class BlockAngleStackResult(AnswerModel):
    """The stack of the fewest angle blocks."""

    angle_blocks: list[BlockAngleUsed]
    """The blocks, largest first."""
    count: int
    """How many blocks. [count]"""
    total: Angle
    """Angle that the nominal angles make."""
    deviation_arcsec: float
    """Total less the wanted angle. [arcsecond]"""
    actual_angle: AngleEstimate
    """
    Angle with measured deviations, a subtracted block's counted the other way, and how far
    calibrations and grade leave it open. Nothing is said of that, and `grade` named as not
    stated, where neither is known of some block.
    """
    actual_deviation_arcsec: float
    """Actual angle less the wanted one. [arcsecond]"""
    words: str
    """The stack as a sum."""
    proved: bool
    """
    No stack of fewer blocks comes within the tolerance, and of as many blocks none comes
    nearer: every way to add, subtract and leave out blocks was considered. False where the
    bound on the work was reached first.
    """
    order_proved: bool
    """
    Alternatives are proved: every stack that could come before the last one given was
    considered.
    """
    bound: str | None
    """What bounded the search, and what holds in spite of it; null where nothing did."""
    alternatives: list[BlockAngleAlternative]
    """
    The next best, all different: fewest blocks first, then the nearest, then those that
    subtract fewer blocks, then those that add larger ones.
    """


class BlockBudgetResult(AnswerModel):
    """The height that the stack will really have, and how sure that is."""

    total: float
    """Sum of the nominal sizes. [length]"""
    deviations: float
    """Sum of the measured deviations. [length]"""
    films: float
    """Sum of the films' means. [length]"""
    expansion: float | None
    """
    Growth from 20 °C: of the stack by itself, or over what the plate grows; null where it
    grows and the temperature was not stated. [length]
    """
    height: LengthEstimate
    """
    Height to expect: total, deviations, films and what is known of the expansion, with the
    budget of its errors, in order of their sources.
    """


class BlockCalibrationResult(AnswerModel):
    """The block's length at 20 °C, and how sure it is."""

    length: LengthEstimate
    """
    Length by the budget of first order; Student's factor where degrees of freedom are
    limited.
    """
    deviation: float | None
    """That length less the nominal size; null without `size`. [length]"""
    difference: float
    """Mean of the readings: block less standard. [length]"""
    second_order_of_expansion: float
    """Standard uncertainty by the unlike expansions times the temperature's doubt. [length]"""
    second_order_of_temperature: float
    """Standard uncertainty by the unlike temperatures times the coefficient's doubt. [length]"""
    second_order_standard_uncertainty: float
    """Standard uncertainty with these terms of second order. [length]"""
    monte_carlo: BlockMonteCarlo | None
    """The check by Monte Carlo; null where no uncertainty was stated."""


class BlockCheckResult(AnswerModel):
    """What a stack is, and what may be wrong with it."""

    total: float
    """Sum of the nominal sizes, wear blocks included. [length]"""
    marks: list[str | None]
    """
    Identification marks of the blocks taken for the stack, in the order of `blocks` and
    `wear_blocks`, null where one has none; empty where none of them has one.
    """
    actual_height: LengthEstimate
    """
    Height of the stack at 20 °C: the sum of nominal sizes and measured deviations, and how
    far calibrations and grade limits leave it open. Nothing is said of that, and `grade`
    named as not stated, where neither is known of some block. `blocks.budget` takes in
    films and temperature.
    """
    wanted_height: float | None
    """Height wanted; null where none is. [length]"""
    actual_deviation: float | None
    """Actual height less the wanted one; null where none is. [length]"""
    angle: Angle | None
    """Angle that the stack gives; null without a plate."""
    angle_error_arcsec: float | None
    """That angle less the wanted one; null where none is wanted. [arcsecond]"""
    measured_deviation: float | None
    """
    Measured height, or that of the measured angle, less the actual height of the stack as
    read; null where nothing was measured. [length]
    """
    measured_error_arcsec: float | None
    """Measured angle less the angle of the stack as read; null without either. [arcsecond]"""
    verdict: Literal["conforming", "not-conforming", "not-provable"] | str | None
    """
    `conforming`: the stack as read agrees with what is wanted, and what was measured on it
    with the stack as read; `height` and `measurement_error_limit` tell how nearly.
    `not-provable`: what was measured agrees, but is too coarse to tell the stack from one
    with a wrong block; or it is not sure by the blocks' grades and calibrations that the
    actual height is within the `measurement_error_limit` of the wanted one, at 95 % (ISO
    14253-1:2017). Else `not-conforming`; null where there is nothing to compare it with.
    """
    not_stated: list[str]
    """
    Where there is no verdict, the fields one of which would give something to compare the
    stack with; `grade` where nothing can be proved without it.
    """
    mistakes_explain: Literal["what-was-measured", "the-stack-as-read"] | str | None
    """
    What the mistakes are to explain. `what-was-measured`: it differs from the stack as
    read. `the-stack-as-read`: it differs from what is wanted, and nothing measured speaks
    against it. Null where nothing differs.
    """
    mistakes: list[BlockMistake]
    """
    Single mistakes that could explain the difference, the likeliest first. Where there is
    no difference, none.
    """
    explained: bool
    """True where some single mistake explains it, be it listed or not."""


class BlockDayStack(AnswerModel):
    """The stack of one job."""

    blocks: list[float]
    """Nominal sizes of the blocks, largest first. [each length]"""
    marks: list[str | None]
    """
    Identification marks of the same blocks, null where one has none; empty where none of
    them has one.
    """
    count: int
    """How many blocks. [count]"""
    total: float
    """Sum of the nominal sizes. [length]"""
    deviation: float
    """Total less the height asked for. [length]"""
    actual_height: LengthEstimate
    """
    Height of the stack at 20 °C: the sum of nominal sizes and measured deviations, and how
    far calibrations and grade limits leave it open. Nothing is said of that, and `grade`
    named as not stated, where neither is known of some block. `blocks.budget` takes in
    films and temperature.
    """
    actual_deviation: float
    """Actual height less the height asked for. [length]"""
    wear_blocks: list[float]
    """Which of the blocks are wear blocks at the ends; empty without them. [each length]"""
    wringing_order: list[float]
    """
    The blocks from the bottom up: a wear block first and last where they are used, the
    others from the largest up. [each length]
    """
    job: str
    """Name of the job."""
    bench: str
    """Its bench."""


class BlockFlatnessEntry(AnswerModel):
    """Flatness that a grade asks of the measuring faces."""

    name: str
    """Name to use as `grade`."""
    label: str
    """The grade as its standard writes it."""
    ranges: list[BlockFlatnessRange]
    """Its ranges, ascending."""
    source: str
    """Standard, edition, table."""
    standing: Literal["published", "derived", "common-practice-no-source", "from-memory"] | str
    """How it is known."""
    note: str
    """What to mind; empty where nothing."""


class BlockFlatnessEntryAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: BlockFlatnessEntry
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class BlockFlatnessList(AnswerModel):
    """Flatness of gauge blocks: every row."""

    flatness_grades: list[BlockFlatnessEntry]
    """The rows, in order."""


class BlockFlatnessListAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: BlockFlatnessList
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class BlockGradeEntry(AnswerModel):
    """A tolerance grade."""

    name: str
    """Name to use as `grade`."""
    label: str
    """The grade as its standard writes it."""
    source: str
    """Standard, edition, table."""
    standing: Literal["published", "derived", "common-practice-no-source", "from-memory"] | str
    """How it is known."""
    note: str
    """What to mind; empty where nothing."""
    ranges: list[BlockGradeRange]
    """Its ranges, ascending."""


class BlockGradeEntryAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: BlockGradeEntry
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class BlockGradeList(AnswerModel):
    """Tolerance grades of gauge blocks: every row."""

    grades: list[BlockGradeEntry]
    """The rows, in order."""


class BlockGradeListAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: BlockGradeList
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class BlockLeftOut(AnswerModel):
    """A height for which there is no stack beside the others."""

    name: str
    """Name of the height."""
    reason: str
    """Why it is left out."""
    would_make_it_possible: list[BlockToBorrow]
    """
    Single blocks, of the sizes of the built-in sets, any one of which would let it stand
    beside the stacks given, those away first; at most three, and none where none was found.
    """


class BlockMaterialEntryAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: BlockMaterialEntry
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class BlockMaterialListAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: BlockMaterialList
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class BlockNamedStack(AnswerModel):
    """The stack for one of the heights."""

    blocks: list[float]
    """Nominal sizes of the blocks, largest first. [each length]"""
    marks: list[str | None]
    """
    Identification marks of the same blocks, null where one has none; empty where none of
    them has one.
    """
    count: int
    """How many blocks. [count]"""
    total: float
    """Sum of the nominal sizes. [length]"""
    deviation: float
    """Total less the height asked for. [length]"""
    actual_height: LengthEstimate
    """
    Height of the stack at 20 °C: the sum of nominal sizes and measured deviations, and how
    far calibrations and grade limits leave it open. Nothing is said of that, and `grade`
    named as not stated, where neither is known of some block. `blocks.budget` takes in
    films and temperature.
    """
    actual_deviation: float
    """Actual height less the height asked for. [length]"""
    wear_blocks: list[float]
    """Which of the blocks are wear blocks at the ends; empty without them. [each length]"""
    wringing_order: list[float]
    """
    The blocks from the bottom up: a wear block first and last where they are used, the
    others from the largest up. [each length]
    """
    name: str
    """Name of the height."""


class BlockSetDetailAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: BlockSetDetail
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class BlockSetListAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: BlockSetList
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class BlockSinceResult(AnswerModel):
    """The block's length as it lies, and at 20 °C."""

    length: LengthEstimate
    """Length as it lies, at its temperature; at 20 °C where none was stated."""
    deviation_today: float
    """Deviation at 20 °C today: the certificate's and the drift since. [length]"""
    drift_since: float
    """Change since the calibration, by the drift. [length]"""
    expansion: float | None
    """Growth from 20 °C; null where no temperature was stated. [length]"""


class BlockStackResult(AnswerModel):
    """The stack of the fewest blocks, or the one whose actual height is nearest."""

    blocks: list[float]
    """Nominal sizes of the blocks, largest first. [each length]"""
    marks: list[str | None]
    """
    Identification marks of the same blocks, null where one has none; empty where none of
    them has one.
    """
    count: int
    """How many blocks. [count]"""
    total: float
    """Sum of the nominal sizes. [length]"""
    deviation: float
    """Total less the height asked for. [length]"""
    actual_height: LengthEstimate
    """
    Height of the stack at 20 °C: the sum of nominal sizes and measured deviations, and how
    far calibrations and grade limits leave it open. Nothing is said of that, and `grade`
    named as not stated, where neither is known of some block. `blocks.budget` takes in
    films and temperature.
    """
    actual_deviation: float
    """Actual height less the height asked for. [length]"""
    wear_blocks: list[float]
    """Which of the blocks are wear blocks at the ends; empty without them. [each length]"""
    wringing_order: list[float]
    """
    The blocks from the bottom up: a wear block first and last where they are used, the
    others from the largest up. [each length]
    """
    proved: bool
    """
    `aim` `nominal`: no stack of fewer blocks exists. `actual`: no stack of up to
    `max_blocks` comes nearer. False where the bound on the work was reached first.
    """
    order_proved: bool
    """
    Preference and alternatives are proved: every stack that could come before the last one
    given was considered.
    """
    bound: str | None
    """What bounded the search, and what holds in spite of it; null where nothing did."""
    alternatives: list[BlockAlternative]
    """The next best stacks, in order."""


class BlockStacksResult(AnswerModel):
    """Stacks that can stand at once."""

    complete: bool
    """True where every height has its stack."""
    stacks: list[BlockNamedStack]
    """
    The stacks, no block used twice: of all the heights, or else of the largest number of
    them that can stand at once.
    """
    left_out: list[BlockLeftOut]
    """Heights without a stack, and why."""
    count: int
    """Blocks in all stacks together. [count]"""
    fewest_possible: int
    """
    No stacks for these heights have fewer blocks together. Where it is less than `count`,
    the difference is the proved gap. [count]
    """
    largest_count: int
    """
    No more of the heights than this can stand at once. Where it is more than there are
    stacks, whether more can is not known. [count]
    """
    proved: bool
    """
    The number of blocks is the fewest, and where heights are left out, no more of them can
    stand at once. False where the bound on the work was reached.
    """
    bound: str | None
    """What bounded the search; null where nothing did."""


class CenterAdapterResult(AnswerModel):
    """Seat match and runout."""

    shank_half_angle: Angle
    """Half angle of the shank."""
    socket_half_angle: Angle
    """Half angle of the socket."""
    half_angle_difference_arcsec: float
    """Shank's less socket's. [arcsecond]"""
    bearing: Literal["whole-seat", "large-end", "small-end"] | str
    """Where the shank bears."""
    gap_at_other_end: float
    """Radial gap at the end that does not bear. [length]"""
    rock_arcsec: float
    """Tilt to one side that the gap allows. [arcsecond]"""
    standoff: float | None
    """
    How far the shank stands out of the socket, by its diameter and its angle, as
    `tapers.standoff` has it: positive out, negative in; null where the diameter is not
    stated. [length]
    """
    standoff_from_diameter: float | None
    """
    Its share by `diameter_difference` and the gauge diameters of two standard tapers; null
    where neither is stated. [length]
    """
    standoff_from_angle: float
    """Its share by the angles: nothing where the shank bears at the mouth. [length]"""
    tir: TirEstimate
    tir_at_nose: TirEstimate
    """The same at the nose, the socket's mouth."""
    mend_first: Literal["socket_runout", "adapter_runout", "rocking_in_the_seat"] | str | None
    """The largest at the station; null where nothing runs out."""
    forecast: Literal["holds", "may-not-hold", "does-not-hold", "not-stated"] | str | None
    """
    Whether `tir` will keep `limit_tir`: `holds` where 95 of 100 assemblies are within it,
    `does-not-hold` where not even 5 of 100 are, else `may-not-hold`; with a cause not
    stated it is never said to hold. Null where no limit was sent.
    """
    not_stated: list[str]
    """`diameter_difference` where it was not sent; the estimates name their own."""


class CenterBallsAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: CenterBallsResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class CenterCalloutAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: CenterCalloutResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class CenterContactAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: CenterContactResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class CenterEffectAt(AnswerModel):
    """
    What is seen at one station; directions are null where nothing runs out.

    What needs the direction of an eccentric center is null where that was not stated.
    """

    station_from_first: float
    """The station, from the first center. [length]"""
    apparent_tir: float | None
    """Runout made by the centers that turn. [length]"""
    high_spot: Direction | None
    """Angle at which an indicator on `surface` reads highest by that runout."""
    standing_offset: float | None
    """Offset made by centers that stand still: taper or place, no runout. [length]"""
    worst_clocking_tir: float
    """Runout at the worst clocking of the same centers. [length]"""
    part_tir: float | None
    """
    The part's own runout at this section, on the line through both ends; with one end
    stated it is known at that end alone, and else null, as is what follows from it.
    [length]
    """
    seen_tir: float | None
    """What an indicator shows: centers and part together. [length]"""
    seen_high_spot: Direction | None
    """Angle at which an indicator on `surface` reads highest."""
    seen_tir_end_for_end: float | None
    """The same section of the part after it is turned end for end, its mark kept up. [length]"""
    height_offset: float | None
    """
    Height of the axis here over the first center, by `second_height`; null without it.
    [length]
    """
    line_offset: float | None
    """
    Distance of the axis here from the line of the ways, by `second_line`: the miss of an
    indicator set on the crest at the first center; null without it. [length]
    """


class CenterEffectResult(AnswerModel):
    """What both centers do."""

    at_stations: list[CenterEffectAt]
    """In the order sent."""
    tilt_arcsec: float | None
    """Tilt of the axis with the directions sent; null where one was not stated. [arcsecond]"""
    worst_tilt_arcsec: float
    """Tilt with the centers opposed. [arcsecond]"""
    bench_height_tilt_arcsec: float | None
    """
    Slope of the bench centers' axis in height: taken for taper by an indicator that runs
    along the top; signed as `second_height`, null without it. [arcsecond]
    """
    bench_line_tilt_arcsec: float | None
    """
    Slope of their axis in plan: taken for taper by an indicator that runs along the side;
    signed as `second_line`, null without it. [arcsecond]
    """
    not_stated: list[str]
    """
    Of the centers' `high_spot`, `part_at_first`, `part_at_second`, `second_height` and
    `second_line` those not sent: nothing is known of them, and nothing follows from them.
    """


class CenterHoleAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: CenterHoleResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class CenterHoleByShaftAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: CenterHoleByShaft
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class CenterHoleByShaftListAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: CenterHoleByShaftList
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class CenterHoleList(AnswerModel):
    """Center holes: every row."""

    holes: list[CenterHoleRow]
    """The rows, in order."""


class CenterHoleListAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: CenterHoleList
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class CenterHoleRowAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: CenterHoleRow
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class CenterLimitsAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: CenterLimitsResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class CenterOutOfRoundAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: CenterOutOfRoundResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class CenterPointEntryAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: CenterPointEntry
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class CenterPointListAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: CenterPointList
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class CenterRegrindAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: CenterRegrindResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class ChooseDressedWheel(RequestModel):
    """A flank dressed on the wheel, axes parallel."""

    wheel_width: float
    """Width of the wheel, in `units`. [length, 1e-06 to 10000]"""
    dresser: Annotated[SineBaseDresser | ScaleDresser, Field(discriminator="kind")]
    """How the dresser is set."""
    stack_error_limit: float | None = None
    """
    Largest error ± of the stack under the dresser's sine base, in `units`. [length, 0 to
    10000]
    """
    diamond_height_error_limit: float | None = None
    """
    Largest error ± of the diamond's height from the wheel's axis, in `units`; acts by its
    square. [length, 0 to 10000]
    """
    flank_wear: float | None = None
    """
    Wear of the flank at one end between dressings, square to it, in `units`. [length, 0 to
    10000]
    """
    axis_pitch_error_limit_arcsec: float | None = None
    """
    Largest error ± of the work's axis from parallel to the wheel's, in arc-seconds, in the
    plane of both axes. [arcsecond, 0 to 324000]
    """
    axis_yaw_error_limit_arcsec: float | None = None
    """
    Largest error ± of the work's axis out of the plane in which the angle is set, in
    arc-seconds; acts by its square. Under a wheel above the work: the axis turned on the
    plate, or about the vertical; beside a wheel or its side: one end of it high.
    [arcsecond, 0 to 18000]
    """
    depth_per_pass: float
    """Depth dressed away by one pass, radially, in `units`. [length, 1e-06 to 10000]"""
    pass_seconds_with_return: float = 10.0
    """Time of one pass with its return, in seconds (same standing). [second, 0 to 10000]"""
    setup_minutes: float = 40.0
    """Time to set up, dressing apart, in minutes (same standing). [minute, 0 to 10000]"""
    inspection_minutes: float = 20.0
    """Time of the optical check, in minutes (same standing). [minute, 0 to 10000]"""


class ChooseWays(RequestModel):
    """The ways to consider, each as far as the shop has it."""

    sine_plate: ChooseSinePlate | None = None
    """Absent where there is none."""
    dressed_wheel: ChooseDressedWheel | None = None
    """Absent where there is no dresser."""
    wheel_side: ChooseWheelSide | None = None
    """Absent where the side is not to grind."""
    swivelled_workhead: ChooseWorkhead | None = None
    """Absent where there is none."""


class ClearanceFixture(RequestModel):
    """The spindle fixture on the plate, and how the work stands out of it."""

    axis_height: float
    """Work axis over the plate's top, in `units`. [length, 1e-06 to 10000]"""
    body_length: float
    """Length of the body along the axis, in `units`. [length, 1e-06 to 10000]"""
    body_height: float
    """Top of the body over the plate, in `units`. [length, 1e-06 to 10000]"""
    nose_diameter: float
    """Diameter of the nose that carries the work, in `units`. [length, 1e-06 to 10000]"""
    nose_length: float
    """How far the nose stands before the body, in `units`. [length, 0 to 10000]"""
    stick_out: float
    """From the nose's face to the large end of the cone, in `units`. [length, 0 to 10000]"""
    shank_diameter: float
    """Largest diameter of the work between nose and cone, in `units`. [length, 0 to 10000]"""
    front_to_high_end: float
    """
    From the body's front face up the slope to the plate's high end, in `units`; negative
    where the body overhangs it. [length, -10000 to 10000]
    """
    turning_parts: list[ClearanceTurningPart] | None = None
    """Further parts that turn with the work. [at most 8 entries]"""
    limit_stick_out: float | None = None
    """
    Most that the work may stand out, in `units`, for its length or its rigidity. Absent: no
    limit is known. [length, 1e-06 to 10000]
    """


class ClearanceGap(AnswerModel):
    """A gap between a part of the wheel's head and a body of the set-up."""

    wheel_state: Literal["new", "worn"] | str
    """With which wheel."""
    part: Literal["wheel", "flange", "guard", "quill", "spindle"] | str
    """Part of the head."""
    body: str
    """Body of the set-up."""
    gap: float
    """
    Least distance over the whole stroke and a full turn of the work; negative where they
    foul, by the least way that would part them. [length]
    """
    on_part: ClearancePoint
    """Nearest point of the part."""
    on_body: ClearancePoint
    """Nearest point of the body."""


class CorrectionCompoundFace(RequestModel):
    """A plane face that slopes in both views of its drawing, in the part's own views."""

    kind: Literal["compound-face"]
    orientation: Annotated[
        SineProjectedAngles | SineTrueTilt | SineNormal, Field(discriminator="kind")
    ]
    """The surface."""
    tolerance_arcsec: float | None = None
    """
    ± tolerance of the angle in each view; absent, nothing is judged. [arcsecond, 1e-06 to
    324000]
    """


class CorrectionHeight(AnswerModel):
    """The change of a sine setting."""

    height_now: float
    """Difference of the stacks as they stand. [length]"""
    height_change: float
    """Change of it: positive to add under the high. [length]"""
    new_height: float
    """Difference of the stacks to build, exact. [length]"""
    stacks: list[CorrectionStack]
    """The new stacks, the high roll's first; empty where no blocks were named."""


class CorrectionReseating(RequestModel):
    """The same station read twice, the work turned half a turn in its socket between."""

    kind: Literal["reseating"]
    surface: Literal["external", "internal"]
    """
    Surface that the indicator reads: `external`, a shaft or cone from outside; `internal`,
    a bore or socket. Highest is where metal comes nearest to the indicator: on a shaft
    toward its center's offset, in a bore opposite to it.
    """
    at_0: RunoutFound
    """Work at its first clocking; angles on the spindle."""
    at_180: RunoutFound
    """Work turned by 180°; angles on the spindle."""
    limit_tir: float | None = None
    """TIR allowed, in `units`; absent, nothing is judged. [length, 1e-06 to 10000]"""


class CorrectionSeats(AnswerModel):
    """Socket told from part by re-seating, as `runout.reversal` does; what to do about it."""

    socket_tir: LengthEstimate
    """TIR that stays on the spindle."""
    socket_off_toward: Direction | None
    """Direction in which the socket's axis lies off; null where it runs true."""
    part_tir: LengthEstimate
    """TIR that turns with the work."""
    part_off_toward: Direction | None
    """Direction in which the work's axis lies off, at its first clocking."""
    best_clocking: Direction | None
    """Turn the work by so much from its first clocking; null where any is as good."""
    best_clocking_tir: float
    """TIR to expect there. [length]"""


class CorrectionSetting(AnswerModel):
    """The change of one setting; a compound plate has two."""

    setting: Literal["plate", "base", "upper", "dresser", "swivel"] | str
    """Which setting."""
    angle_error_arcsec: ArcsecEstimate
    """
    Its angle as the part shows it, less the one wanted; of a dresser set from the wheel's
    side, or a plate with the work turned a quarter, the opposite of the part's.
    """
    leave_it: bool | None
    """
    True where that is no more than its uncertainty: leave it. Null where the uncertainty
    was not stated, or only in part and the rest may be as large.
    """
    height: CorrectionHeight | None
    """The change of stacks; null for a scale, and where it is left."""
    scale: CorrectionScale | None
    """The change of a scale's reading; null for stacks, and where it is left."""
    expected_error_arcsec: ArcsecEstimate
    """
    Its angle less the one wanted, to expect of the next part: what the blocks or the
    graduation leave, with the measurement's uncertainty and, where it is changed, the
    setting's own.
    """


class CorrectionSurface(RequestModel):
    """A compound face as measured, in the part's own views."""

    standard_uncertainty_arcsec: float | None = None
    """Standard uncertainty of the angle as it was measured. [arcsecond, 0 to 324000]"""
    measurement_error_limit_arcsec: float | None = None
    """Largest error ± of the angle as it was measured. [arcsecond, 1e-06 to 324000]"""
    kind: Literal["surface"]
    orientation: Annotated[
        SineProjectedAngles | SineTrueTilt | SineNormal, Field(discriminator="kind")
    ]
    """The surface."""


class CurveRefusal(AnswerModel):
    """Points that are refused alike."""

    count: int
    """How many points. [at least 1]"""
    points: list[list[int]]
    """The points, from 0: first and last of each unbroken run."""
    problem: Problem
    """The problem document of the first."""


class DovetailOverRollsResult(AnswerModel):
    """
    Widths of a dovetail and its measure with rolls.

    From a measure follow the widths, each with its uncertainty; from a corner width alone,
    taken as exact, the measure to expect and the edge width.
    """

    measure: LengthEstimate
    """Over the rolls (male) or between them (female)."""
    corner_width: LengthEstimate
    """Width between the sharp corners at the base."""
    edge_width: LengthEstimate
    """Width between the sharp edges at the other face."""
    contact_height: float
    """Height over the base where a roll touches. [length]"""
    rolls_constant: float
    """d (1 + cot(θ / 2)): both rolls' share. [length]"""


class DresserSetting(AnswerModel):
    """The dresser's setting for one flank."""

    dresser_angle: Angle
    """Angle to set on the dresser, from its zero."""
    height: float | None
    """Difference of the stacks under the sine base; null for a scale. [length]"""
    arcsec_per_step: float | None
    """
    Change of the dressed angle for one bench step of that stack (0.0001 in or 0.001 mm); a
    cone's included angle changes twice as much. Null for a scale. [arcsecond]
    """
    stack: DresserStack | None
    """The blocks; null for a scale, or where no blocks were named."""
    scale_reading: Angle | None
    """Nearest graduation of the scale; null for a sine base."""
    deviation_arcsec: float | None
    """`scale_reading` less the angle wanted; null for a sine base. [arcsecond]"""


class DressingErrorsResult(AnswerModel):
    """What the errors of dressing do to the ground cone."""

    half_angle: Angle
    """Half angle wanted."""
    slant_length: float
    """Length of the surface along its slope. [length]"""
    errors: list[DressingError]
    """One by one in a fixed order, and all that were stated together."""
    not_stated: list[str]
    """Errors that were not stated: nothing is known of them, and nothing counted."""
    at_stations: list[DressedStation] | None
    """
    Angle at each radius, from the small end to the large one; null where `diamond_height`
    was not stated.
    """
    worn: WornWheelErrors | None
    """Null without `worn_diameter`, or where `diamond_height` was not stated."""
    forecast: Literal["holds", "may-not-hold", "does-not-hold", "not-stated"] | str
    """
    Whether the included angle keeps its tolerance with all stated errors together;
    `not-stated` without a tolerance.
    """
    unseen: list[
        Literal[
            "diamond-height",
            "diamond-nose-radius",
            "dresser-angle",
            "wheel-wear",
            "diamond-wear",
            "all-together",
        ]
        | str
    ]
    """Errors present that no inspection named would show."""


class DressingGuideEntryAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: DressingGuideEntry
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class DressingGuideListAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: DressingGuideList
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class DriftComparisonResult(AnswerModel):
    """The difference, freed of drift."""

    difference: LengthEstimate
    """Part less standard."""
    drift_per_reading: float | None
    """Drift from one reading to the next; null where times were sent. [length]"""
    drift_per_minute: float | None
    """Drift in a minute; null where no times were sent. [length]"""
    difference_of_means: float
    """Mean of the part's readings less that of the standard's: with the drift in it. [length]"""
    scatter_about_fit: float | None
    """
    Standard deviation of one reading about the fit; null without a reading to spare.
    [length]
    """
    residuals: list[float]
    """Each reading less the fit. [each length]"""
    uncertainty_inflation: float
    """
    Times by which taking the drift out widens the uncertainty; 1 for an order that is
    balanced, such as ABBA.
    """


class Grounds(AnswerModel):
    """What answers of one kind stand on, whatever was asked."""

    relations: list[str]
    """The formulas used, as text."""
    sources: list[Source]
    """Where formulas and values come from."""
    release: str
    """
    Release of the calculations: on one installation the same request at the same release
    gives the same bytes.
    """


class InspectionComparatorResult(AnswerModel):
    """The angle, the lines that it lies between, and what it proves."""

    quantity: Literal["included-angle", "half-angle", "flank-angle"] | str
    """Which angle was measured."""
    estimate: AngleEstimate
    """The angle, with its uncertainty."""
    measured_error_arcsec: float | None
    """That angle less the one wanted; null where none is. [arcsecond]"""
    verdict: Literal["conforming", "not-conforming", "not-provable"] | str | None
    """
    What it proves of its tolerance, by `decision_rule`; with something of its uncertainty
    not stated nothing is. Null without a tolerance.
    """
    probability_of_conformance: float | None
    """
    Probability, 0 to 1, that the true angle keeps its tolerance (JCGM 106:2012, 7). Null
    without a tolerance, and where something of its uncertainty was not stated.
    """
    apex: ProfilePlace
    """Where the two lines meet, at the part."""
    lines: list[ProfileLine]
    """The two lines, in the order of the request."""
    overlay: InspectionOverlayResult | None
    """The overlay; null where none was asked for."""


class InspectionOverlayAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: InspectionOverlayResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class InspectionSizeProof(AnswerModel):
    """What a means proves of the large diameter."""

    large_diameter_error: LengthEstimate
    """The error that it finds of a nominal part, 0, with its own uncertainty."""
    proves_tolerance: bool | None
    """
    Whether it can prove the tolerance, by `decision_rule`; null where what was not stated
    of it decides.
    """
    smallest_accepted_error: float | None
    """
    Smallest error found, measured less nominal, that proves the tolerance; null where none
    does. [length]
    """
    largest_accepted_error: float | None
    """Largest error found that proves the tolerance. [length]"""


class InspectionVerdictResult(AnswerModel):
    """What a measurement proves, and what to do next."""

    verdict: Literal["conforming", "not-conforming", "not-provable"] | str
    """
    `conforming`: the limits are proved to be kept; `not-conforming`: they are proved not to
    be; `not-provable`: neither, by `decision_rule`.
    """
    decision: Literal["accept", "hold-back", "reject"] | str | None
    """
    What follows for the part. Where neither is proved it depends on who proves: a supplier
    holds it back, a customer accepts it; null where that was not stated.
    """
    reason: str
    """Why, with the rule and its figures."""
    quantity: Literal["included-angle", "half-angle", "diameter", "gauge-depth", "tir"] | str
    """What was measured."""
    probability_of_conformance: float | None
    """
    Probability, 0 to 1, that the true value keeps its limits (JCGM 106:2012, 7); null where
    no uncertainty was stated.
    """
    probability_below: float | None
    """Probability, 0 to 1, that the true value lies under its lower limit."""
    probability_above: float | None
    """Probability, 0 to 1, that the true value lies over its upper limit."""
    measurement_capability_index: float | None
    """
    Tolerance over four standard uncertainties (JCGM 106:2012, 7.6.3), of a TIR its limit:
    the N of a rule N:1. Null with a limit to one side only, and without an uncertainty.
    """
    angle_judged: AngleJudged | None
    """The angle judged; null of a length."""
    length_judged: LengthJudged | None
    """The length judged; null of an angle."""
    next_steps: list[InspectionNextStep]
    """What to do next, the first thing first."""
    not_stated: list[str]
    """Where no uncertainty was stated, the fields one of which states it."""


class JobsCorrectionResult(AnswerModel):
    """What to change, what to expect then, and what it may have been."""

    sense: Literal["larger", "smaller", "alike"] | str | None
    """
    Whether the half angle, or the face's, came out larger or smaller than wanted, by what
    was measured; null of a compound face and of a runout.
    """
    angle_error_arcsec: ArcsecEstimate | None
    """
    Half angle, or the face's, as measured less the one wanted; null where only its sense is
    known, of a compound face and of a runout.
    """
    included_angle_error_arcsec: ArcsecEstimate | None
    """The same of a cone's included angle: twice as much; else null."""
    leave_it: bool | None
    """
    True where nothing is to be changed: what was measured is within its uncertainty. Null
    where that cannot be said.
    """
    settings: list[CorrectionSetting]
    """
    The change of each setting; empty without a set-up, of a runout, where only the sense is
    known, and where a mistake in the whole setting explains it: then set anew.
    """
    slips: list[CorrectionSlip] | None
    """
    Single mistakes in setting that explain what was measured within its uncertainty, the
    most plausible first, no more than eight; null where that uncertainty was not stated,
    without a set-up and of a runout.
    """
    slips_found: int | None
    """How many there are; null likewise. [count]"""
    seats: CorrectionSeats | None
    """Of a runout read twice; else null."""
    expected_included_angle_error_arcsec: ArcsecEstimate | None
    """
    Included angle less the one wanted, to expect of the next part; null but of a cone with
    a setting.
    """
    forecast: Literal["holds", "may-not-hold", "does-not-hold", "not-stated"] | str | None
    """Whether the next part will keep the tolerance; null without one."""
    causes: list[CorrectionCause]
    """Likely causes, the likeliest first."""
    not_stated: list[str]
    """Observations that were not stated and would tell the causes apart."""


class MeasuringBoreAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: MeasuringBoreResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class MeasuringChordResult(AnswerModel):
    """The angle and its measure; from an angle alone, taken as exact, the measure to set."""

    svg: str | None
    """The drawing, as SVG; null where `formats` did not ask for it."""
    angle: AngleEstimate
    """Angle between the arms."""
    measure: LengthEstimate
    """Measure over or between the rolls."""
    chord: float
    """Distance of the centers of the rolls. [length]"""
    lean_of_chord: float
    """Lean of the chord to the shorter arm: 90 is surest. [degree]"""
    arcsec_per_measure_step: float
    """Angle that one bench step of the measure stands for (0.0001 in or 0.001 mm). [arcsecond]"""
    sine_arcsec_per_step: float | None
    """
    The same of a sine bar of the shorter center distance at this angle; null from 90° on.
    [arcsecond]
    """


class MeasuringLeverTipAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: MeasuringLeverTipResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class MeasuringSmallAngleAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: MeasuringSmallAngleResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class MeasuringSquareAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: MeasuringSquareResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class OperationDetail(AnswerModel):
    """One operation in full. Units, bounds and descriptions of fields stand in its schemas."""

    name: str
    """Dotted name."""
    topic: str
    """Topic that it belongs to."""
    title: str
    """Title for a person."""
    summary: str
    """What it answers, in a sentence."""
    path: str
    """Path to POST a request to."""
    query: bool
    """Whether GET with a query string is offered too."""
    columns: bool
    """Whether it works out columns, so that it has curves."""
    largest_request: str
    """What bounds the work of one request."""
    relations: list[str]
    """The formulas used, as text."""
    sources: list[Source]
    """Where formulas and values come from."""
    example: dict[str, Any]
    """A request that runs."""
    request_schema: dict[str, Any]
    """JSON Schema (2020-12) of the request; `x-unit` names the unit of a number."""
    result_schema: dict[str, Any]
    """JSON Schema (2020-12) of the result."""


class OperationDetailAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: OperationDetail
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class OperationListAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: OperationList
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class PlanAdapter(RequestModel):
    """An adapter, collet or bushing of the fixture, by the shank that it takes."""

    name: str
    """What the shop calls it; the plan names it so. [1 to 60 characters]"""
    shank: Annotated[StraightShank | TaperShank, Field(discriminator="kind")]
    """The shank that it takes."""
    adapter_tir: float | None = None
    """TIR of the adapter or collet at the cone, in `units`. [length, 0 to 10000]"""


class PlanAngledFace(RequestModel):
    """A plane face at an angle to its base."""

    face_distance: float | None = None
    """
    Distance of the face from what it is measured from, square to it, in `units`. [length,
    1e-06 to 10000]
    """
    face_distance_tolerance: float | None = None
    """± tolerance of that distance, in `units`. [length, 0 to 10000]"""
    face_angle: float | str
    """
    Angle between the face and the base, in degrees. [degree, over 0, under 90; or text in
    degrees, minutes, seconds]
    """
    rise: float
    """Height of the face, square to the base, in `units`. [length, 1e-06 to 10000]"""
    tolerance_arcsec: float
    """± tolerance of that angle, in arc-seconds. [arcsecond, 1e-06 to 324000]"""
    kind: Literal["angled-face"]
    work_body: PlanSlopedWork | None = None
    """The work as a block."""


class PlanCenter(RequestModel):
    """A center: a cone that comes to its point."""

    included_angle: float | str | None = None
    """
    Angle between opposite surfaces of the cone, in degrees. [degree, over 0.01, under 179;
    or text in degrees, minutes, seconds]
    """
    half_angle: float | str | None = None
    """
    Angle between the cone's axis and its surface, in degrees. [degree, over 0.005, under
    89.5; or text in degrees, minutes, seconds]
    """
    taper_per_foot: float | None = None
    """
    Inches of diameter a foot of length, whatever `units` are. [inch per foot, 0.003 to
    2000]
    """
    one_in_x: float | None = None
    """The x of a taper written 1:x, on the diameter (ISO 1119). [0.005 to 5000]"""
    rate_of_taper: float | None = None
    """
    Change of diameter for one unit of length, C = 1/x (ISO 3040). [length per length,
    0.0002 to 200]
    """
    designation: str | None = None
    """
    Designation of a standard taper or rate, as `GET /v1/tapers/standard` and `GET
    /v1/tapers/rates` list them, or what a toolmaker calls it: `MT3`, `B&S 9`, `JT33`,
    `NT40`, `1:20`. The answer says what it was read as. [1 to 60 characters]
    """
    included_angle_tolerance_arcsec: float
    """± tolerance of the included angle. [arcsecond, 1e-06 to 324000]"""
    shank: Annotated[StraightShank | TaperShank | None, Field(discriminator="kind")] = None
    """The shank that the cone must run true to."""
    limit_tir: float | None = None
    """
    Runout of the cone to its shank that the drawing allows, as full indicator movement
    square to the axis, in `units`; needs `shank`. [length, 1e-06 to 10000]
    """
    large_diameter: float
    """
    Larger diameter of the cone, where it meets the body, in `units`. [length, 1e-06 to
    10000]
    """
    large_diameter_tolerance: float | None = None
    """
    ± tolerance of the large diameter, in `units`; absent, nothing is said of it. [length, 0
    to 10000]
    """
    kind: Literal["center"]


class PlanChecks(AnswerModel):
    """What checks the set-up and proves the feature, the same for every way."""

    set_up_checks: list[PlanSetUpCheck]
    """Checks of stacks, setting and runout."""
    seat_readings: list[PlanSeatReading]
    """
    Readings that tell spindle, fixture and adapter apart, in order; empty without a limit
    of the runout.
    """
    inspections: list[PlannedMeans]
    """
    Each means at hand that reaches the ground feature, as `inspection.plan` gives it; of a
    compound face view by view.
    """
    not_at_hand: list[PlanMeansNotAtHand]
    """Usual means of which nothing is stated."""
    ruled_out: list[RuledOutInspection]
    """Each means that does not."""
    best: (
        Literal[
            "over-rolls",
            "over-balls",
            "gauge-depth",
            "two-gauges",
            "probe",
            "sine-plate",
            "comparator",
            "bluing",
        ]
        | str
        | None
    )
    """Of the means that prove the angle's tolerance the finest; null where none does."""


class PlanClearance(AnswerModel):
    """Clearance of wheel, flanges and guard through the whole stroke and a full turn."""

    forecast: Literal["holds", "may-not-hold", "does-not-hold", "not-stated"] | str
    """
    Whether everything clears: `not-stated` where `not_stated` names what lacks;
    `may-not-hold` where a gap is less than the one wanted, or the guard was left out. A way
    that fouls is ruled out.
    """
    smallest_gap: ClearanceGap | None
    """The smallest gap of all; null where something was not stated."""
    stick_out_needed: float | None
    """
    Smallest stick-out with which fixture and turning parts keep the gap wanted; null where
    none does, where it is kept already, and where something was not stated. [length]
    """
    room_left: float | None
    """
    Room under the raised wheel less the set-up's height; null without the room, and where
    nothing stands under the wheel. [length]
    """
    findings: list[str]
    """What is wrong, in plain words; empty where nothing."""
    changes: list[ClearanceChange]
    """Changes that would open the gaps."""
    not_stated: list[str]
    """
    Fields of the request that were not stated: nothing is known of them, and nothing
    counted.
    """


class PlanCompoundFace(RequestModel):
    """A plane face that slopes in both views of its drawing."""

    face_distance: float | None = None
    """
    Distance of the face from what it is measured from, square to it, in `units`. [length,
    1e-06 to 10000]
    """
    face_distance_tolerance: float | None = None
    """± tolerance of that distance, in `units`. [length, 0 to 10000]"""
    kind: Literal["compound-face"]
    orientation: Annotated[
        SineProjectedAngles | SineTrueTilt | SineNormal, Field(discriminator="kind")
    ]
    """The surface."""
    hand: Literal["as-drawn", "opposite"] = "as-drawn"
    """`opposite`: the part of the other hand, mirrored left to right."""
    rise: float
    """Height of the face, square to the base, in `units`. [length, 1e-06 to 10000]"""
    tolerance_arcsec: float
    """± tolerance of the angle in each view, in arc-seconds. [arcsecond, 1e-06 to 324000]"""
    work_body: PlanBlockWork | None = None
    """The work as a block."""


class PlanCompoundPlate(RequestModel):
    """
    A compound sine plate under a flat wheel.

    Of the base plate's errors, yaw and pitch are those of the upper plate on it; of the
    upper plate's, those of the work.
    """

    base_center_distance: float
    """Distance between the centers of the two rolls, in `units`. [length, 1e-06 to 10000]"""
    upper_center_distance: float
    """Distance between the centers of the two rolls, in `units`. [length, 1e-06 to 10000]"""
    base_axis: Literal["x", "y"]
    """
    Axis of the machine along which the hinge of the base plate lies: `x` (left to right;
    the base raises the back or the front) or `y` (front to back; the base raises the right
    or the left). The upper plate's hinge lies along the other. Always required: the same
    two stacks in the other order give another surface.
    """
    base_step: float = 0.0
    """Stack under the base plate's roll at which it stands at zero. [length, -10000 to 10000]"""
    upper_step: float = 0.0
    """Stack under the upper plate's roll at which it stands at zero. [length, -10000 to 10000]"""
    base_raised_side: Literal["right", "left", "back", "front"] | None = None
    """
    Side that this plate raises, away from its hinge: `right` or `left` where the hinge lies
    along Y, `back` or `front` where it lies along X. The work is then turned in plan so
    that no other side is raised. Absent: either side may be.
    """
    upper_raised_side: Literal["right", "left", "back", "front"] | None = None
    """
    Side that this plate raises, away from its hinge: `right` or `left` where the hinge lies
    along Y, `back` or `front` where it lies along X. The work is then turned in plan so
    that no other side is raised. Absent: either side may be.
    """
    name: str
    """What the shop calls it; the plan names it so. [1 to 60 characters]"""
    base_largest_angle: float | str | None = None
    """
    Largest angle that the plate reaches, in degrees; past it a setting is refused. Absent:
    anything below 90°. [degree, over 0, under 90; or text in degrees, minutes, seconds]
    """
    upper_largest_angle: float | str | None = None
    """
    Largest angle that the plate reaches, in degrees; past it a setting is refused. Absent:
    anything below 90°. [degree, over 0, under 90; or text in degrees, minutes, seconds]
    """
    base_errors: SetUpErrorFields | None = None
    """Errors of the base plate's setting."""
    upper_errors: SetUpErrorFields | None = None
    """Errors of the upper plate's setting."""
    wheel_face_error_limit_arcsec: float | None = None
    """
    Largest slope ± of the wheel's face along the slant, from breakdown since dressing.
    [arcsecond, 0 to 324000]
    """
    base_body: PlanHingedBody | None = None
    """Body of the base plate."""
    upper_body: PlanHingedBody | None = None
    """Body of the upper plate; the work lies in the middle of its top."""
    work_holder: PlanWorkHolder | None = None
    """What holds block-like work on it."""
    setup_minutes: float = 30.0
    """Time to set up, in minutes (default: common practice, no source). [minute, 0 to 10000]"""
    inspection_minutes: float = 5.0
    """Time to inspect the first piece, in minutes (same standing). [minute, 0 to 10000]"""


class PlanCone(RequestModel):
    """A cone between two diameters."""

    included_angle: float | str | None = None
    """
    Angle between opposite surfaces of the cone, in degrees. [degree, over 0.01, under 179;
    or text in degrees, minutes, seconds]
    """
    half_angle: float | str | None = None
    """
    Angle between the cone's axis and its surface, in degrees. [degree, over 0.005, under
    89.5; or text in degrees, minutes, seconds]
    """
    taper_per_foot: float | None = None
    """
    Inches of diameter a foot of length, whatever `units` are. [inch per foot, 0.003 to
    2000]
    """
    one_in_x: float | None = None
    """The x of a taper written 1:x, on the diameter (ISO 1119). [0.005 to 5000]"""
    rate_of_taper: float | None = None
    """
    Change of diameter for one unit of length, C = 1/x (ISO 3040). [length per length,
    0.0002 to 200]
    """
    designation: str | None = None
    """
    Designation of a standard taper or rate, as `GET /v1/tapers/standard` and `GET
    /v1/tapers/rates` list them, or what a toolmaker calls it: `MT3`, `B&S 9`, `JT33`,
    `NT40`, `1:20`. The answer says what it was read as. [1 to 60 characters]
    """
    large_diameter: float
    """Larger diameter to grind, in `units`. [length, 1e-06 to 10000]"""
    small_diameter: float
    """Smaller diameter to grind, in `units`; 0 for a sharp point. [length, 0 to 10000]"""
    included_angle_tolerance_arcsec: float
    """± tolerance of the included angle. [arcsecond, 1e-06 to 324000]"""
    shank: Annotated[StraightShank | TaperShank | None, Field(discriminator="kind")] = None
    """The shank that the cone must run true to."""
    limit_tir: float | None = None
    """
    Runout of the cone to its shank that the drawing allows, as full indicator movement
    square to the axis, in `units`; needs `shank`. [length, 1e-06 to 10000]
    """
    large_diameter_tolerance: float | None = None
    """
    ± tolerance of the large diameter, in `units`; absent, nothing is said of it. [length, 0
    to 10000]
    """
    kind: Literal["cone"]


class PlanDecision(AnswerModel):
    """Statements that are missing and would change which way is best."""

    statements: list[str]
    """Fields of the request to state, as paths; of several it takes all of them."""
    best_at_zero: PlanBest
    """Best where they are stated as nothing at all."""
    thresholds: list[PlanThreshold]
    """Values above which another way is best, rising; what else is missing stays so."""
    sentence: str
    """The same in plain words."""


class PlanDressedWheel(RequestModel):
    """A wheel with a dresser for a flank."""

    wheel_width: float
    """Width of the wheel, in `units`. [length, 1e-06 to 10000]"""
    dresser: Annotated[SineBaseDresser | ScaleDresser, Field(discriminator="kind")]
    """How the dresser is set."""
    stack_error_limit: float | None = None
    """
    Largest error ± of the stack under the dresser's sine base, in `units`. [length, 0 to
    10000]
    """
    diamond_height_error_limit: float | None = None
    """
    Largest error ± of the diamond's height from the wheel's axis, in `units`; acts by its
    square. [length, 0 to 10000]
    """
    flank_wear: float | None = None
    """
    Wear of the flank at one end between dressings, square to it, in `units`. [length, 0 to
    10000]
    """
    axis_pitch_error_limit_arcsec: float | None = None
    """
    Largest error ± of the work's axis from parallel to the wheel's, in arc-seconds, in the
    plane of both axes. [arcsecond, 0 to 324000]
    """
    axis_yaw_error_limit_arcsec: float | None = None
    """
    Largest error ± of the work's axis out of the plane in which the angle is set, in
    arc-seconds; acts by its square. Under a wheel above the work: the axis turned on the
    plate, or about the vertical; beside a wheel or its side: one end of it high.
    [arcsecond, 0 to 18000]
    """
    depth_per_pass: float
    """Depth dressed away by one pass, radially, in `units`. [length, 1e-06 to 10000]"""
    pass_seconds_with_return: float = 10.0
    """Time of one pass with its return, in seconds (same standing). [second, 0 to 10000]"""
    setup_minutes: float = 40.0
    """Time to set up, dressing apart, in minutes (same standing). [minute, 0 to 10000]"""
    inspection_minutes: float = 20.0
    """Time of the optical check, in minutes (same standing). [minute, 0 to 10000]"""
    name: str
    """What the shop calls it; the plan names it so. [1 to 60 characters]"""
    wheel_diameter: float
    """Diameter of the wheel, in `units`. [length, 1e-06 to 10000]"""
    head: PlanWheelHead | None = None
    """What is about this wheel."""
    work_holder: PlanWorkHolder | None = None
    """What holds block-like work on it."""


class PlanFeed(AnswerModel):
    """How the allowance comes off."""

    dial_measures: Literal["square-to-surface", "radius", "diameter", "axial"] | str
    """
    What the feed dial measures of a layer, as `amount_is` of `tapers.infeed` has it: by the
    way that the slide goes.
    """
    rough: PlanPhase | None
    """Roughing; null where the allowance is unknown, or all of it is finished."""
    finish: PlanPhase | None
    """Finishing; null where nothing is left for it."""
    spark_out_passes: int
    """Passes without feed at the end. [count]"""
    total_passes: int | None
    """Passes with and without feed. [count]"""
    travel: float | None
    """
    Travel of a pass along the slant, both overruns with it; 0 where the wheel is plunged;
    null where it is seen on edge and its width was not stated. [length]
    """
    work_rpm: float | None
    """Turns of the work in a minute; null of a face, and where not known. [per minute]"""
    stop_by: Literal["diameter", "axial-position", "height", "feed-dial"] | str | None
    """The reading to stop by: the one whose error is the thinnest layer."""
    stop_readings: list[PlanStopReading]
    """What can be read to stop by."""
    assumptions: list[PlanAssumption]
    """What was taken as usual; common practice, no source."""
    not_stated: list[str]
    """
    Fields of the request that were not stated: nothing is known of them, and nothing
    counted.
    """


class PlanSinePlate(RequestModel):
    """A sine plate with what holds the work on it, under a flat wheel."""

    name: str
    """What the shop calls it; the plan names it so. [1 to 60 characters]"""
    center_distance: float
    """Distance between the centers of the two rolls, in `units`. [length, 1e-06 to 10000]"""
    base_step: float = 0.0
    """
    Height of the low roll's seat over the high roll's, in `units`: the stack at which a
    plate with equal rolls stands at zero. [length, -10000 to 10000]
    """
    largest_angle: float | str | None = None
    """
    Largest angle that the plate reaches, in degrees; past it a setting is refused. Absent:
    anything below 90°. [degree, over 0, under 90; or text in degrees, minutes, seconds]
    """
    low_roll_hinged: bool = False
    """True where the low roll is a hinge, so that no stack goes under it."""
    angle_errors: PlateErrorFields | None = None
    """Errors of a set-up on it that turn the angle."""
    squareness_error_limit_arcsec: float | None = None
    """
    Largest error ± from square of what turns the work a quarter on the plate: an angle
    plate, or the work's own side. Takes the place of `axis_pitch_error_limit_arcsec` there.
    [arcsecond, 0 to 324000]
    """
    swivel_base: PlanSwivelBase | None = None
    """What turns work in plan on it. Absent where there is nothing."""
    tilt_direction: Literal["along-travel", "across-travel"] = "along-travel"
    """
    Whether the plate tilts along the table's travel (the wheel is seen as a circle) or
    across it (the wheel is seen on edge).
    """
    plate_body: PlanPlateBody | None = None
    """Its body. Absent: no clearance over it is worked out."""
    work_holder: PlanWorkHolder | None = None
    """What holds block-like work on it."""
    work_to_high_end: float | None = None
    """From the work's short end up the slope to the plate's high end. [length, 0 to 10000]"""
    angle_plate: PlanAnglePlate | None = None
    """What work turned a quarter stands against."""
    setup_minutes: float = 30.0
    """Time to set up, in minutes (default: common practice, no source). [minute, 0 to 10000]"""
    inspection_minutes: float = 5.0
    """Time to inspect the first piece, in minutes (same standing). [minute, 0 to 10000]"""


class PlanTaper(RequestModel):
    """A taper plug or socket; a standard's designation is enough."""

    included_angle: float | str | None = None
    """
    Angle between opposite surfaces of the cone, in degrees. [degree, over 0.01, under 179;
    or text in degrees, minutes, seconds]
    """
    half_angle: float | str | None = None
    """
    Angle between the cone's axis and its surface, in degrees. [degree, over 0.005, under
    89.5; or text in degrees, minutes, seconds]
    """
    taper_per_foot: float | None = None
    """
    Inches of diameter a foot of length, whatever `units` are. [inch per foot, 0.003 to
    2000]
    """
    one_in_x: float | None = None
    """The x of a taper written 1:x, on the diameter (ISO 1119). [0.005 to 5000]"""
    rate_of_taper: float | None = None
    """
    Change of diameter for one unit of length, C = 1/x (ISO 3040). [length per length,
    0.0002 to 200]
    """
    designation: str | None = None
    """
    Designation of a standard taper or rate, as `GET /v1/tapers/standard` and `GET
    /v1/tapers/rates` list them, or what a toolmaker calls it: `MT3`, `B&S 9`, `JT33`,
    `NT40`, `1:20`. The answer says what it was read as. [1 to 60 characters]
    """
    gauge_diameter: float | None = None
    """
    Diameter at the gauge line, the taper's large end, in `units`; a standard taper has its
    own. [length, 1e-06 to 10000]
    """
    length: float | None = None
    """
    Length from the gauge line to the small end, in `units`; of a standard taper absent
    where its table has one. [length, 1e-06 to 10000]
    """
    included_angle_tolerance_arcsec: float
    """± tolerance of the included angle. [arcsecond, 1e-06 to 324000]"""
    shank: Annotated[StraightShank | TaperShank | None, Field(discriminator="kind")] = None
    """The shank that the cone must run true to."""
    limit_tir: float | None = None
    """
    Runout of the cone to its shank that the drawing allows, as full indicator movement
    square to the axis, in `units`; needs `shank`. [length, 1e-06 to 10000]
    """
    large_diameter_tolerance: float | None = None
    """
    ± tolerance of the large diameter, in `units`; absent, nothing is said of it. [length, 0
    to 10000]
    """
    kind: Literal["taper-plug", "taper-socket"]
    """Which of both it is."""
    relief_length: float | None = None
    """
    How far a socket is open past its small end, no narrower; 0 where it ends. [length, 0 to
    10000]
    """


class PlanWheel(RequestModel):
    """A flat wheel; what is not stated of it leaves null what follows from it."""

    diameter: float
    """Diameter of the wheel, in `units`. [length, 1e-06 to 10000]"""
    width: float | None = None
    """Width of the wheel, in `units`. [length, 1e-06 to 10000]"""
    rpm: float | None = None
    """Spindle speed. [per minute, 1 to 500000]"""
    marked_rpm: float | None = None
    """Highest speed marked on the wheel, per minute. [per minute, 1 to 500000]"""
    head: PlanWheelHead | None = None
    """What is about the wheel; clearance is worked out with it."""
    breakdown_per_piece: float | None = None
    """
    Breakdown of the wheel in one piece, over the length of the surface and square to it, in
    `units`; 0 where the traverse evens it out. [length, 0 to 10000]
    """
    breakdown_makes: Literal["blunter", "sharper"] | None = None
    """
    Which way the angle grows as the wheel breaks down. Absent: either way, and the worse
    counts.
    """


class PlanWorkhead(RequestModel):
    """A workhead swivelled by its scale, and the flat wheel beside it."""

    grinder: Literal["surface", "cylindrical"]
    """
    `surface`: the wheel stands above the work, which the table carries past it.
    `cylindrical`: it stands beside the work, both axes at one height (tool grinders too).
    """
    graduation: float | str
    """
    Smallest step that its scale or vernier shows, in degrees; it is set to half of it.
    [degree, over 0, at most 5; or text in degrees, minutes, seconds]
    """
    axis_offset_error_limit: float | None = None
    """
    Largest error ± of the work axis from the wheel axis' height, in `units`; acts by its
    square. [length, 0 to 10000]
    """
    axis_yaw_error_limit_arcsec: float | None = None
    """
    Largest error ± of the work's axis out of the plane in which the angle is set, in
    arc-seconds; acts by its square. Under a wheel above the work: the axis turned on the
    plate, or about the vertical; beside a wheel or its side: one end of it high.
    [arcsecond, 0 to 18000]
    """
    wheel_breakdown: float | None = None
    """
    Breakdown of the wheel over the length of the surface, square to it, in `units`; 0 where
    the traverse evens it out. [length, 0 to 10000]
    """
    largest_angle: float | str | None = None
    """
    Largest angle to which it swivels, in degrees. [degree, over 0, under 90; or text in
    degrees, minutes, seconds]
    """
    setup_minutes: float = 15.0
    """Time to set up, in minutes (same standing). [minute, 0 to 10000]"""
    inspection_minutes: float = 20.0
    """Time to measure the angle, in minutes (same standing). [minute, 0 to 10000]"""
    name: str
    """What the shop calls it; the plan names it so. [1 to 60 characters]"""
    wheel_diameter: float
    """Diameter of the wheel, in `units`. [length, 1e-06 to 10000]"""
    wheel_width: float | None = None
    """Width of the wheel, in `units`. [length, 1e-06 to 10000]"""
    head: PlanWheelHead | None = None
    """What is about this wheel."""
    workhead_body: PlanWorkheadBody | None = None
    """The workhead's body, and how the work stands out of it."""


class PlannedInspection(AnswerModel):
    """One means that reaches the part, with the size that it proves and its plate's stack."""

    means: (
        Literal[
            "over-rolls",
            "over-balls",
            "gauge-depth",
            "two-gauges",
            "probe",
            "sine-plate",
            "comparator",
            "bluing",
        ]
        | str
    )
    """Which means."""
    of: Literal["x-angle", "y-angle"] | str | None
    """
    Which angle of a face with two it measures; null where the part has one, and where it
    speaks of both.
    """
    how: str
    """How it is done."""
    settings: list[InspectionSetting]
    """What it is set up with."""
    readings: list[InspectionReading]
    """What to read, in order."""
    angle_proof: InspectionAngleProof | None
    """What it proves of the angle; null where it sees none."""
    cannot_see: list[
        Literal[
            "angle",
            "size",
            "form-between-contacts",
            "form-round-the-part",
            "runout",
            "squareness-of-the-standing-face",
            "error-of-the-gauge",
            "errors-within-the-film",
            "error-of-the-setting",
            "edges-out-of-focus",
        ]
        | str
    ]
    """What it cannot see, however finely it is read."""
    size_proof: InspectionSizeProof | None
    """
    What it proves of the large diameter; null where it sees none, or no tolerance was
    stated.
    """
    blocks: list[float]
    """
    Blocks of the plate's stack, by their nominal sizes, largest first; empty where no
    blocks were sent or none are taken. [each length]
    """


class PlannedRunout(AnswerModel):
    """The runout budget of the cone against the limit. Square to the axis, at the cone."""

    tir: TirEstimate
    limit_tir: float
    """Limit as full indicator movement. [length]"""
    limit_eccentricity: float
    """The same limit as eccentricity: half of it. [length]"""
    limit_zone_diameter: float
    """The same limit as the diameter of a coaxiality zone. [length]"""
    limit_tir_on_cone: float
    """The limit as an indicator square to the cone's surface reads it. [length]"""
    forecast: Literal["holds", "may-not-hold", "does-not-hold", "not-stated"] | str
    """
    Whether the limit will be kept: it holds where 95 of 100 assemblies keep it, and does
    not where 95 of 100 pass it, whatever `decision_rule`; never `holds` with something not
    stated.
    """
    mend_first: str | None
    """
    The largest contribution, by its name: the first one to mend; null where none was
    stated.
    """


class PlannedWay(AnswerModel):
    """One way to make the feature, in full."""

    way: (
        Literal[
            "sine-plate",
            "stacks-under-both-rolls",
            "quarter-turn",
            "sine-plate-turned-in-plan",
            "compound-sine-plate",
            "dressed-wheel",
            "wheel-side",
            "swivelled-workhead",
        ]
        | str
    )
    """Which way."""
    equipment: list[str]
    """What it takes of the shop, by name."""
    in_words: str
    """It in plain words, with its equipment, as no other of `ways` is called."""
    forecast: Literal["holds", "may-not-hold", "does-not-hold", "not-stated"] | str
    """Whether every limit will be kept, by the first piece on a dress at least."""
    angles: list[PlanAngle]
    """The angle, or both of a compound face."""
    room_to_prove_arcsec: float | None
    """
    Tolerance less the error to expect and the uncertainty of the finest inspection at hand:
    above 0 the angle can be proved. Null where either is not known. [arcsecond]
    """
    runout_budget: PlannedRunout | None
    """The runout to expect; null where no limit was stated."""
    settings: list[PlanSetting]
    """What is set, in order."""
    stacks: list[PlanStack]
    """The stacks, all from one box."""
    first_piece_minutes: float
    """Time to the first good piece: set-up, grinding, inspection. [minute]"""
    total_minutes: float
    """Time for all pieces. [minute]"""
    time: PlanTime
    """That time by its parts."""
    feed_plan: PlanFeed
    """How the allowance is ground off, and when to stop."""
    size_plan: PlanSize | None
    """When to stop so that the size comes inside its tolerance; null where none was stated."""
    batch: PlanBatch
    """When to dress, and which pieces to measure."""
    mistakes: list[PlanMistake]
    """
    For each stack the smallest wrong block that leaves the angle's tolerance; a stack in
    which no single block does is not there.
    """
    clearance: PlanClearance
    """Clearance under the wheel, or beside it."""


class ProfileBlend(AnswerModel):
    """A radius that blends a corner, with its tangent points."""

    corner: Literal["edge", "root", "apex", "other-edge", "other-root"] | str
    """Which corner: of flank and periphery, of flank and land, or of two flanks."""
    radius: float
    """Radius. [length]"""
    center: ProfilePoint
    """Center of the arc."""
    first_tangent: ProfilePoint
    """Where the arc begins."""
    second_tangent: ProfilePoint
    """Where the arc ends."""
    convex: bool
    """True where the wheel is rounded, false in a root."""


class RoutingOperation(AnswerModel):
    """An operation of a routing."""

    sequence: int
    """Its place in the order: 10, 20, 30. [count]"""
    code: str
    """
    Stable code of the operation, by its kind and its means and nothing of the job:
    operations of one code are one master operation. [at most 40 characters]
    """
    kind: Literal["set-up", "run", "inspect"] | str
    """To set up, to run or to inspect."""
    name: str
    """Name of the master operation, alike for every job. [at most 80 characters]"""
    text: str
    """What to do for this job, a line a step, numbered as in the plan; stops first."""
    set_up_seconds: float | None
    """
    Time to set up; null of what is run or inspected, and where `timed_in` says which
    operation holds it. [second]
    """
    run_seconds: float | None
    """
    Time to run or inspect once; null of a set-up, where `timed_in` says which operation
    holds it, and of finishing, of which a plan has no time. [second]
    """
    timed_by: Literal["batch", "piece", "inspected-piece", "dress"] | str
    """What is done once in that time."""
    times_done: int
    """How often in the batch. [count]"""
    timed_in: int | None
    """
    `sequence` of the operation whose time holds this one's too; null where it has its own,
    or the plan has none. [count]
    """
    assumptions: list[PlanAssumption]
    """
    What is the usual in its time or its feed, stated so or not stated; common practice, no
    source.
    """
    tools: list[RoutingTool]
    """What it takes."""
    values: list[RoutingValue]
    """Its figures; what is not known is left out."""
    cautions: list[str]
    """What to be careful of, of the plan's steps."""
    stops: list[str]
    """What the answer says of severity `stop`: with any of it the operation is not to be run."""


class RunoutAxisResult(AnswerModel):
    """Line of the axis, and two corrections in order."""

    tilt_arcsec: float
    """Angle between the work's axis and the spindle's. [arcsecond]"""
    at_stations: list[RunoutAtStation]
    """In the order sent."""
    corrections: list[RunoutCorrection]
    """Swing first, since it moves both sections; then the slide takes both to zero."""


class RunoutBudgetResult(AnswerModel):
    """The budget against the limit."""

    tir: TirEstimate
    best_clocking_tir: float
    """Least that clocking alone can reach. [length]"""
    share_within_limit_percent: float
    """Share of assemblies, in percent, whose TIR is within `limit_tir`. [percent]"""
    percentile_50_tir: float
    """Not passed in half of assemblies. [length]"""
    percentile_99_tir: float
    """Not passed in 99 of 100 assemblies. [length]"""
    mend_first: str | None
    """Largest that can be mended, by its own name; null if none can."""
    forecast: Literal["holds", "may-not-hold", "does-not-hold", "not-stated"] | str
    """
    The chain as it is against the limit: `holds` where 95 of 100 assemblies are within it,
    `does-not-hold` where not even 5 of 100 are, else `may-not-hold`; with a tilt not stated
    it is never said to hold.
    """
    mended_forecast: Literal["holds", "may-not-hold", "does-not-hold", "not-stated"] | str
    """The same once all that can be mended is perfect: what cannot be mended alone."""


class RunoutConvertResult(AnswerModel):
    """What the value says of the other term, and why no more."""

    relation: Literal["equal", "between", "at-least", "at-most"] | str
    """`equal`: convertible; else bounds only, and `reasons` says why."""
    value: float | None
    """The value, where convertible; else null. [length]"""
    smallest: float
    """It is not less than this. [length]"""
    largest: float | None
    """It is not more than this; null for no bound. [length]"""
    reasons: list[str]
    """Why it is not equal; empty where it is."""
    given_term: RunoutTerm
    """The term sent."""
    wanted_term: RunoutTerm
    """The term wanted."""


class RunoutIndicateAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: RunoutIndicateResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class RunoutOffCrestAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: RunoutOffCrestResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class RunoutReversalAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: RunoutReversalResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class RunoutTermAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: RunoutTerm
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class RunoutTermListAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: RunoutTermList
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class RunoutTotalAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: RunoutTotalResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class RunoutTrueUpAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: RunoutTrueUpResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class RunoutVBlockAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: RunoutVBlockResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class SetupErrorsResult(AnswerModel):
    """What the errors of the set-up do to the ground cone."""

    half_angle: Angle
    """Half angle wanted."""
    as_ground: Angle | None
    """Half angle ground, all stated errors together; null where none was stated."""
    errors: list[SetupError]
    """One by one in a fixed order, and all that were stated together."""
    not_stated: list[str]
    """Errors that were not stated: nothing is known of them, and nothing counted."""
    at_stations: list[SetupStation] | None
    """The surface, small end to large end; null where no error was stated."""
    shape: Literal["cone", "hyperboloid"] | str | None
    """
    What the surface is: a true cone, or bent by more than 0.1 nm; null where no error was
    stated.
    """


class SineAngleAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: SineAngleResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class SineBarToleranceEntryAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: SineBarToleranceEntry
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class SineBarToleranceListAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: SineBarToleranceList
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class SineCenterDistanceAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: SineCenterDistanceResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class SineCorrectionResult(AnswerModel):
    """The change of stack that mends a measured angle."""

    measured_error_arcsec: float
    """
    Angle of the plate as measured less the one wanted: half of an included angle's error.
    [arcsecond]
    """
    height_change: float
    """Change of the high roll's stack: positive to add. [length]"""
    height_now: float
    """Difference of the stacks now: as given, else what the wanted angle asks for. [length]"""
    new_height: float
    """Difference of the stacks to build. [length]"""
    effective_center_distance: float
    """Center distance that would explain the measured angle by itself. [length]"""
    swap: SineSwap | None
    """Which blocks to swap; null where no blocks were given."""


class SineLowStackResult(AnswerModel):
    """The stacks under both rolls."""

    high: SineStack
    """Stack under the high roll."""
    low: SineStack
    """Stack under the low roll; empty where none is needed."""
    count: int
    """Blocks in both stacks. [count]"""
    height: float
    """Difference of the stacks that the angle asks for. [length]"""
    height_as_set: float
    """Difference of the stacks as built. [length]"""
    deviation: float
    """`height_as_set` less `height`. [length]"""
    angle_as_set: Angle
    """The angle that these stacks give."""
    deviation_arcsec: float
    """`angle_as_set` less the angle wanted. [arcsecond]"""
    set_step: float
    """Smallest step of height that the set has. [length]"""
    proved: bool
    """
    No fewer blocks do it under the conditions stated: every combination of one set's blocks
    under either roll was considered.
    """
    action: str
    """What to do, in plain words."""


class SineMeasuredAngleResult(AnswerModel):
    """The part's angle, from the stack and what was left to read."""

    quantity: Literal["face-angle", "included-angle"] | str
    """What was measured: a face's angle to its base, or a cone's included angle."""
    measured_angle: AngleEstimate
    """That angle, with the plate's whole budget and the indicator's error."""
    plate_angle: Angle
    """Angle of the plate on the stack's actual height."""
    stack_height: float
    """Actual height of the stack, at 20 °C. [length]"""
    residual_arcsec: float
    """What the surface leans more than the plate, by the indicator. [arcsecond]"""


class SineOrientation(AnswerModel):
    """One surface, in every way that a drawing may give it."""

    unit_normal: SineVector
    """Outward unit normal."""
    x_angle: Angle
    """Rise to the right in the front view."""
    y_angle: Angle
    """Rise to the back in the side view."""
    tilt: Angle
    """True (steepest) tilt."""
    rise_direction: Angle
    """Direction in plan in which it rises, 0 to 360° from +X toward +Y; 0 where it is level."""


class SineOverPinAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: SineOverPinResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class SineRequirementsAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: SineRequirementsResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class SineSettingAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: SineSettingResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class SineTableResult(AnswerModel):
    """A setting table, as rows and as CSV."""

    count: int
    """How many rows. [count]"""
    rows: list[SineTableRow]
    """The rows, angles ascending."""
    csv: str
    """
    The same table as CSV (RFC 4180), with a header that names units; heights in full
    precision.
    """


class SineTaperAngleAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: SineTaperAngleResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class SineTaperSettingAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: SineTaperSettingResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class SineUncertaintyAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: SineUncertaintyResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class StandardTaperEntryAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: StandardTaperEntry
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class StandardTaperListAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: StandardTaperList
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class StandingOffsetResult(AnswerModel):
    """What the offset takes off along the work."""

    at_stations: list[StandingOffsetStation]
    """The stations, in order."""
    taper_on_diameter: float
    """Diameter at the last station less that at the first. [length]"""
    taper_by_offset_toward_wheel: float
    """Of it, by that offset alone. [length]"""
    taper_by_offset_across: float
    """Of it, by the offset across alone. [length]"""
    half_taper_arcsec: float
    """
    Half angle of that taper; positive where the work grows towards the second center.
    [arcsecond]
    """
    across_like_toward_wheel: float
    """
    Offset towards the wheel that would make as much of a taper as the offset across does;
    negative: away from it. [length]
    """


class StraightnessAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: StraightnessResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class TaperAngleAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: TaperAngleResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class TaperAngleGradeEntry(AnswerModel):
    """A grade of cone angle tolerance."""

    name: str
    """Name to use as `cone_angle_grade`."""
    ranges: list[TaperAngleGradeRange]
    """Its ranges of length, ascending."""
    source: str
    """Standard and table."""
    standing: Literal["published", "derived", "common-practice-no-source", "from-memory"] | str
    """How the row is had."""


class TaperAngleGradeEntryAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: TaperAngleGradeEntry
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class TaperAngleGradeList(AnswerModel):
    """Grades of cone angle tolerance: every row."""

    cone_angle_grades: list[TaperAngleGradeEntry]
    """The rows, in order."""


class TaperAngleGradeListAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: TaperAngleGradeList
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class TaperCandidate(AnswerModel):
    """A standard taper under every name that it has, and how well it fits."""

    names: list[TaperCandidateName]
    """
    Its names, nearest first: no measuring of this cone tells them apart, since their slopes
    lie within 2″ of included angle and the same sizes fit or do not.
    """
    taper_per_foot: float
    """Inches of diameter a foot of length. [inch per foot]"""
    misfit_on_diameter: float
    """
    Measured difference of the diameters less the one that this taper has over the same
    length: the error of measured diameters that would explain it. [length]
    """
    length_error_to_explain: float
    """Error of the length that would explain the same misfit. [length]"""
    misfit_arcsec: float
    """Measured less standard included angle. [arcsecond]"""
    explained_by_errors: bool | None
    """
    Whether the measuring errors stated explain the misfit; null where they do not and
    others were not stated.
    """
    sizes_fit: bool
    """Whether both diameters lie within the table's, to 5 %; true for a mere rate."""


class TaperCleanUpAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: TaperCleanUpResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class TaperIdentifyResult(AnswerModel):
    """The taper as measured, and standard ones: those of fitting size first, best fit first."""

    included_angle: Angle
    """Angle between opposite surfaces of the cone."""
    taper_per_foot: float
    """Inches of diameter a foot of length. [inch per foot]"""
    one_in_x: float
    """
    The x of the taper written 1:x, on the diameter: how far a gauge moves along the axis
    for one unit of diameter.
    """
    rate_of_taper: float
    """
    C = (D − d) / l = 2 tan α: change of diameter for one unit of length (ISO 3040). [length
    per length]
    """
    half_angle: AngleEstimate
    """Half angle as measured, with its uncertainty."""
    candidates: list[TaperCandidate]
    """Candidates, best first."""


class TaperInfeedAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: TaperInfeedResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class TaperOneBallAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: TaperOneBallResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class TaperOverBallsNominalAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: TaperOverBallsNominalResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class TaperOverBallsResult(AnswerModel):
    """A socket as measured with two balls, with its uncertainty; its large end is the mouth."""

    svg: str | None
    """The drawing, as SVG; null where `formats` did not ask for it."""
    included_angle: Angle
    """Angle between opposite surfaces of the cone."""
    taper_per_foot: float
    """Inches of diameter a foot of length. [inch per foot]"""
    one_in_x: float
    """
    The x of the taper written 1:x, on the diameter: how far a gauge moves along the axis
    for one unit of diameter.
    """
    rate_of_taper: float
    """
    C = (D − d) / l = 2 tan α: change of diameter for one unit of length (ISO 3040). [length
    per length]
    """
    half_angle: AngleEstimate
    """Half angle, with its uncertainty."""
    large_diameter: LengthEstimate
    """Diameter at the large end, with its uncertainty."""
    small_diameter: LengthEstimate
    """Diameter at the small end, with its uncertainty; 0 for a sharp point."""
    large_ball_contact_depth: float
    """Depth below the mouth at which the larger ball touches. [length]"""
    small_ball_contact_depth: float
    """Depth below the mouth at which the smaller ball touches. [length]"""


class TaperOverRollsNominalAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: TaperOverRollsNominalResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class TaperOverRollsResult(AnswerModel):
    """A taper as measured over rolls, with its uncertainty."""

    svg: str | None
    """The drawing, as SVG; null where `formats` did not ask for it."""
    included_angle: Angle
    """Angle between opposite surfaces of the cone."""
    taper_per_foot: float
    """Inches of diameter a foot of length. [inch per foot]"""
    one_in_x: float
    """
    The x of the taper written 1:x, on the diameter: how far a gauge moves along the axis
    for one unit of diameter.
    """
    rate_of_taper: float
    """
    C = (D − d) / l = 2 tan α: change of diameter for one unit of length (ISO 3040). [length
    per length]
    """
    half_angle: AngleEstimate
    """Half angle, with its uncertainty."""
    large_diameter: LengthEstimate
    """Diameter at the large end, with its uncertainty."""
    small_diameter: LengthEstimate
    """Diameter at the small end, with its uncertainty; 0 for a sharp point."""
    lower_contact_height: float
    """Height over the standing face at which the lower rolls touch. [length]"""
    upper_contact_height: float
    """Height over the standing face at which the upper rolls touch. [length]"""


class TaperPlugDepthNominalAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: TaperPlugDepthNominalResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class TaperPlugDepthResult(AnswerModel):
    """The part as gauged by depth; its half angle is the one found, else the one stated."""

    included_angle: Angle
    """Angle between opposite surfaces of the cone."""
    taper_per_foot: float
    """Inches of diameter a foot of length. [inch per foot]"""
    one_in_x: float
    """
    The x of the taper written 1:x, on the diameter: how far a gauge moves along the axis
    for one unit of diameter.
    """
    rate_of_taper: float
    """
    C = (D − d) / l = 2 tan α: change of diameter for one unit of length (ISO 3040). [length
    per length]
    """
    half_angle: AngleEstimate
    """Half angle, with its uncertainty."""
    large_diameter: LengthEstimate
    """Diameter at the large end, with its uncertainty."""
    small_diameter: LengthEstimate
    """Diameter at the small end, with its uncertainty; 0 for a sharp point."""
    gauge_line_diameter: LengthEstimate
    """Diameter at the part's gauge line, with its uncertainty."""
    included_angle_off_stated_arcsec: float | None
    """Included angle found less the one stated; null without both. [arcsecond]"""
    engaged_length: float
    """Length over which the first gauge touches; 0 for a sharp edge. [length]"""


class TaperProbedResult(AnswerModel):
    """The taper as probed."""

    included_angle: Angle
    """Angle between opposite surfaces of the cone."""
    taper_per_foot: float
    """Inches of diameter a foot of length. [inch per foot]"""
    one_in_x: float
    """
    The x of the taper written 1:x, on the diameter: how far a gauge moves along the axis
    for one unit of diameter.
    """
    rate_of_taper: float
    """
    C = (D − d) / l = 2 tan α: change of diameter for one unit of length (ISO 3040). [length
    per length]
    """
    half_angle: AngleEstimate
    """Half angle, with its uncertainty."""
    face_diameter: LengthEstimate
    """Diameter at the face that depths run from: of a socket its mouth."""
    widens_with_depth: bool
    """True where the far end is the large one."""
    largest_residual: float | None
    """Most that a travel lies off the straight line; null of two readings. [length]"""


class TaperRateEntryAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: TaperRateEntry
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class TaperRateListAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: TaperRateList
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class TaperSetOverResult(AnswerModel):
    """Ways to set the taper: those that the machine reaches first, of these the surest."""

    half_angle: Angle
    """Half angle to swivel the workhead or table."""
    scale_arc: float
    """Arc along the scale. [length]"""
    scale_chord: float
    """Chord across the scale: 2 r sin(α / 2). [length]"""
    set_over: float
    """Set-over on ball centers: L sin α. [length]"""
    set_over_by_rule: float
    """Set-over by the shop rule: L tan α. [length]"""
    rule_error_arcsec: float | None
    """
    Error of the half angle that the rule's set-over makes; null past 45°, where that would
    be the work's whole length or more. [arcsecond]
    """
    ways: list[TaperWayToSet]
    """
    Each way with its error: first what the machine reaches as far as is known, then what it
    may not reach, last what it does not; of these the surest first, and last those of which
    some error was not stated.
    """


class TaperSolveAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: TaperSolveResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class TaperStandoffAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: TaperStandoffResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class TaperToleranceAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: TaperToleranceResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class TappedHoleEntryAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: TappedHoleEntry
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class TappedHoleListAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: TappedHoleList
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class TiltedPlateResult(AnswerModel):
    """Whether everything clears, where it is closest, and what would clear it."""

    forecast: Literal["holds", "may-not-hold", "does-not-hold", "not-stated"] | str
    """
    Whether this set-up holds: every gap at least the one wanted, the stick-out and the room
    under the wheel within their limits where sent. `may-not-hold`: nothing fouls, but a gap
    is less than the one wanted, or the guard was left out. `does-not-hold`: an advisory
    `stop` says why.
    """
    plate_angle: Angle
    """Tilt of the plate: the half angle of the cone."""
    slant_length: float
    """Length of the level line to grind. [length]"""
    smallest_gap: ClearanceGap
    """The smallest gap of all."""
    gaps: list[ClearanceGap]
    """Every gap, smallest first."""
    stick_out_needed: float | None
    """
    Smallest stick-out with which fixture and turning parts keep the gap wanted; null where
    none does, since the shank itself is in the way. [length]
    """
    stick_out_to_pass_under: float
    """
    Stick-out with which the nose lies wholly under the ground line, so that the wheel may
    run on over it. [length]
    """
    ruled_out_by: list[str]
    """
    Why the set-up does not hold: something fouls, the room is too low, or the work stands
    out too far; empty where nothing stops it.
    """
    changes: list[ClearanceChange]
    """Changes that would help."""
    high_stack: float
    """Stack under the high roll. [length]"""
    height_to_wheel: float
    """From the table to the wheel's lowest line while it grinds. [length]"""
    height_over_all: float
    """From the table to the highest point of the set-up, and the room to load. [length]"""
    room_left: float | None
    """Room under the raised wheel less `height_over_all`; null without the room. [length]"""
    svg: str
    """The set-up drawn to scale in the plane of the tilt, as SVG."""


class VeeOverRollsNominalResult(AnswerModel):
    """What to expect over rolls in a nominal vee."""

    apex_depth: float
    """Depth of the (virtual) apex below the faces. [length]"""
    largest_roll_diameter: float
    """Largest roll that still touches the sides, at their upper edges. [length]"""
    rolls: list[VeeRollExpected]
    """The rolls, in the order asked."""
    fall_per_width: float
    """Fall of the roll's top for one unit more of width: 1 / (2 tan ν)."""


class VeeOverRollsResult(AnswerModel):
    """A vee as measured; the errors of its whole angle are twice those of the half."""

    vee_half_angle: AngleEstimate
    """Half of the vee's included angle, with its uncertainty."""
    vee_angle: Angle
    """The vee's included angle."""
    face_width: LengthEstimate
    """Width between the sides at the faces, with its uncertainty."""
    apex_depth: LengthEstimate
    """Depth of the (virtual) apex below the faces, with its uncertainty."""
    large_roll_contact_depth: float
    """Depth below the faces at which the larger roll touches. [length]"""
    small_roll_contact_depth: float
    """Depth below the faces at which the smaller roll touches. [length]"""


class WheelChooseAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: WheelChooseResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class WheelDiamondAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: WheelDiamondResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class WheelDressingAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: WheelDressingResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class WheelRadiusAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: WheelRadiusResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class WheelRedressAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: WheelRedressResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class WheelSafetyRuleAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: WheelSafetyRule
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class WheelSafetyRuleListAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: WheelSafetyRuleList
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class WheelSpeedResult(AnswerModel):
    """Speed, limits, and what can be said of them."""

    forecast: Literal["holds", "may-not-hold", "does-not-hold", "not-stated"] | str
    """
    `holds`: every limit stated is kept; this sees only the figures sent, which is less than
    a permission. `does-not-hold`: do not run it. `may-not-hold`: of what `not_stated` names
    nothing is known; `not-stated`: of anything, or not of a side that is to grind.
    """
    speed_forecast: Literal["holds", "may-not-hold", "does-not-hold", "not-stated"] | str
    """The speed against every mark stated."""
    side_forecast: Literal["holds", "may-not-hold", "does-not-hold", "not-stated"] | str | None
    """The side against its rating; null where it is not to grind."""
    not_stated: list[str]
    """Fields without which the forecast never `holds`."""
    rpm: float
    """Spindle speed. [per minute]"""
    surface_speed_m_per_s: float
    """Surface speed in m/s. [metre per second]"""
    surface_speed_ft_per_min: float
    """Surface speed in ft/min. [foot per minute]"""
    limits: list[WheelSpeedLimit]
    """Every limit stated."""
    limit_rpm: float | None
    """
    Highest spindle speed that no limit forbids; null without a mark on the wheel. [per
    minute]
    """
    worn: WornWheelSpeed | None
    """The wheel worn; null without its diameter."""
    before_starting: list[WheelStartCheck]
    """Usual checks before starting."""


class BlockAngleStackAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: BlockAngleStackResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class BlockBudgetAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: BlockBudgetResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class BlockCalibrationAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: BlockCalibrationResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class BlockCheckAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: BlockCheckResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class BlockDaySlot(AnswerModel):
    """One period: stacks that do not get in one another's way."""

    slot: int
    """Number of the period. [count]"""
    stacks: list[BlockDayStack]
    """Stacks, no block used twice."""
    left_out: list[BlockLeftOut]
    """Jobs without a stack, and why."""
    contention: list[BlockContention]
    """Where benches would need the same block."""
    proved: bool
    """Fewest blocks, and as many jobs as can be, are proved."""


class BlockSinceAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: BlockSinceResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class BlockStackAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: BlockStackResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class BlockStacksAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: BlockStacksResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class CenterAdapterAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: CenterAdapterResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class CenterEffectAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: CenterEffectResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class CenterJobResult(AnswerModel):
    """The plan."""

    job: str
    """Name of the job."""
    forecast: Literal["holds", "may-not-hold", "does-not-hold", "not-stated"] | str
    """
    Whether angle and runout will both keep their limits; it holds only where both hold, and
    does not where either does not.
    """
    cone: PlannedCone
    """The cone."""
    shank: PlannedShank
    plate_setting: PlannedSetting
    """The plate's setting and its stack."""
    angle_budget: PlannedAngle
    """The angle error to expect."""
    runout_budget: PlannedRunout
    """The runout to expect."""
    downfeed: PlannedFeed
    """What a step of downfeed takes off."""
    smallest_mistake: WrongBlock | None
    """
    The wrong block that would be hardest to notice; null where no other block could be
    taken.
    """
    smallest_mistake_past_tolerance: WrongBlock | None
    """
    The hardest to notice of those that take the angle out of its tolerance, which is what
    the checks are judged by; null where no single wrong block does.
    """
    second_stack: list[float] | None
    """
    The same height from other blocks of the set, to check the first stack; null where the
    set has no such stack. [each length]
    """
    steps: list[PlanStep]
    """The steps, in order, with the cautions of the trade."""
    checks: list[PlanCheck]
    """The checks to make."""


class CurveAnswer(AnswerModel):
    """Values at every point. Of two axes the last one runs fastest (row-major)."""

    operation: str
    """Name of the operation."""
    shape: list[int]
    """Numbers on each axis, in the order of `axes`."""
    axes: list[CurveAxis]
    """What runs, in the order in which it was sent."""
    columns: list[CurveColumn]
    """What was asked for, in its order."""
    counts: CurveCounts
    refusals: list[CurveRefusal]
    """Points that are refused, by their problem."""
    advisories: list[CurveAdvisory]
    """What answers advise, and where."""
    basis: Grounds
    """Formulas, sources and release."""


class DovetailOverRollsAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: DovetailOverRollsResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class DressedFlank(AnswerModel):
    """One flank, and how to dress it."""

    side: Literal["work", "other-side"] | str
    """Which surface it grinds."""
    angle_from_axis: Angle
    """Angle between flank and wheel axis."""
    angle_from_side: Angle
    """Angle between flank and the wheel's side."""
    dresser_setting: DresserSetting
    """The dresser's setting."""
    width: float
    """Width of the flank along the wheel's axis. [length]"""
    slant_length: float
    """Length of the flank along its slope, radii not taken off. [length]"""
    straight_slant_length: float
    """Straight part of it between the radii. [length]"""
    depth_to_dress: float
    """Radial depth to dress away at its lower end. [length]"""
    passes: int
    """Passes of `depth_per_pass`, radially. [count]"""
    last_pass_depth: float
    """Depth that is left to the last pass. [length]"""
    infeed_normal: float
    """`depth_per_pass` measured square to the flank: what the diamond takes. [length]"""
    infeed_axial: float
    """The same pass fed along the wheel's axis: for a steep flank the better way. [length]"""


class DressingErrorsAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: DressingErrorsResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class DriftComparisonAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: DriftComparisonResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class InspectionComparatorAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: InspectionComparatorResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class InspectionPlanResult(AnswerModel):
    """The inspection planned."""

    feature: InspectedPart
    """The part as it was read."""
    best: (
        Literal[
            "over-rolls",
            "over-balls",
            "gauge-depth",
            "two-gauges",
            "probe",
            "sine-plate",
            "comparator",
            "bluing",
        ]
        | str
        | None
    )
    """
    Of the means that can prove the angle's tolerance the one with the least expanded
    uncertainty; null where none can.
    """
    inspections: list[PlannedInspection]
    """Each means that reaches the part, in a fixed order."""
    ruled_out: list[RuledOutInspection]
    """Each means that does not, with the reason and the nearest that works."""
    svg: str | None
    """
    The part over its rolls or with its balls, as SVG; null where neither reaches it, and
    where `formats` did not ask for it.
    """


class InspectionVerdictAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: InspectionVerdictResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class JobRoutingResult(AnswerModel):
    """The routing of one way of a plan."""

    job: str
    """Name of the job."""
    way: (
        Literal[
            "sine-plate",
            "stacks-under-both-rolls",
            "quarter-turn",
            "sine-plate-turned-in-plan",
            "compound-sine-plate",
            "dressed-wheel",
            "wheel-side",
            "swivelled-workhead",
        ]
        | str
    )
    """The way of the plan that it follows."""
    in_words: str
    """That way in plain words, with its equipment."""
    forecast: Literal["holds", "may-not-hold", "does-not-hold", "not-stated"] | str
    """Whether that way will keep every limit."""
    pieces: int
    """Pieces to grind. [count]"""
    plan_fingerprint: str
    """
    `basis.fingerprint` of the answer of `jobs.plan` to the same request: another where the
    plan may be another, so that work planned before is seen to be stale.
    """
    first_piece_minutes: float
    """The plan's time to the first good piece. [minute]"""
    total_minutes: float
    """
    The plan's time for all pieces: the seconds of all operations, each so often as it is
    done. [minute]
    """
    operations: list[RoutingOperation]
    """The operations, in order."""
    not_stated: list[str]
    """
    Fields of the request that were not stated: nothing is known of them, and nothing
    counted.
    """


class JobsCorrectionAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: JobsCorrectionResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class MeasuringChordAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: MeasuringChordResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class PlanEquipment(RequestModel):
    """What the shop has; lengths in the request's `units`."""

    sine_plates: list[PlanSinePlate] | None = None
    """Sine plates and bars. [at most 4 entries]"""
    block_sets: list[PlanBlockSet] | None = None
    """Sets of gauge blocks. [at most 4 entries]"""
    compound_plates: list[PlanCompoundPlate] | None = None
    """Compound sine plates. [at most 4 entries]"""
    dressed_wheels: list[PlanDressedWheel] | None = None
    """Wheels on which a flank may be dressed. [at most 4 entries]"""
    wheel_sides: list[PlanWheelSide] | None = None
    """Wheels that may grind with their side. [at most 4 entries]"""
    swivelled_workheads: list[PlanWorkhead] | None = None
    """Workheads swivelled by their scale. [at most 4 entries]"""
    wheel: PlanWheel | None = None
    """The flat wheel that grinds over the sine plates."""
    spin_fixture: ClearanceFixture | None = None
    """
    The spindle fixture. Of a socket `stick_out` is to its mouth, `shank_diameter` its
    outside.
    """
    internal_spindle: PlanInternalSpindle | None = None
    """What grinds a socket. Absent where there is none."""
    adapters: list[PlanAdapter] | None = None
    """Adapters at hand. Absent: there is one for the shank. [at most 40 entries]"""
    runout_errors: RunoutContributions | None = None
    """Runout that the holding adds."""
    measuring: PlanMeasuring | None = None
    """What the shop checks a set-up and measures a ground feature with."""


class PlannedFeature(AnswerModel):
    """The feature as it was read."""

    kind: (
        Literal[
            "cone",
            "center",
            "taper-plug",
            "taper-socket",
            "angled-face",
            "compound-face",
        ]
        | str
    )
    """Which kind it is."""
    included_angle: Angle | None
    """Included angle; null of a face."""
    half_angle: Angle | None
    """Half angle; null of a face."""
    face_angle: Angle | None
    """Angle between face and base, of a compound face its tilt; null of a cone."""
    large_diameter: float | None
    """Larger diameter; null of a face. [length]"""
    small_diameter: float | None
    """Smaller diameter, 0 at a point; null of a face. [length]"""
    length: float | None
    """Length along the axis; null of a face. [length]"""
    slant_length: float
    """Length along the surface, up the slope. [length]"""
    surface_orientation: SineOrientation | None
    """A compound face in its own views, the hand counted; null of all else."""


class RunoutAxisAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: RunoutAxisResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class RunoutBudgetAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: RunoutBudgetResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class RunoutConvertAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: RunoutConvertResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class SetupErrorsAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: SetupErrorsResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class SineCompoundAnglesResult(AnswerModel):
    """What two stacks set."""

    base_angle: Angle
    """Hinge angle of the base plate, signed."""
    upper_angle: Angle
    """Hinge angle of the upper plate, signed."""
    part_surface: SineOrientation
    """The surface of the part, in the part's own views, that is level now."""
    upper_face: SineOrientation
    """The upper plate's face as it stands in the machine's views."""
    edge_turns: SineEdgeTurns
    """How far the part's edges turn in plan."""


class SineCompoundResult(AnswerModel):
    """Both settings of a compound plate."""

    base: SineHingeSetting
    """The base plate."""
    upper: SineHingeSetting
    """The upper plate, riding on the base plate."""
    axis_order: str
    """The order of the axes, in plain words."""
    surface_orientation: SineOrientation
    """The surface as it was read, in the frame stated."""
    laying: SineLaying
    """
    How the work lies on the upper plate, so that each plate raises the side that it can
    raise; as drawn where the request does not say which.
    """
    edge_turns: SineEdgeTurns
    """How far the part's edges turn in plan."""
    stacks: SineCompoundStacks | None
    """Both stacks from the set given; null where none was."""
    rotation_check: SineRotationCheck
    """The check by rotation."""
    turned_settings: list[SineTurnedSetting]
    """
    Where a hinge angle is past 45°: the whole setting with the work turned or tipped by
    quarter turns, each less steep, the least steep first.
    """
    conventions: list[str]
    """The sign conventions, in plain words."""


class SineCorrectionAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: SineCorrectionResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class SineLowStackAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: SineLowStackResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class SineMeasuredAngleAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: SineMeasuredAngleResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class SineTableAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: SineTableResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class StandingOffsetAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: StandingOffsetResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class TaperIdentifyAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: TaperIdentifyResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class TaperOverBallsAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: TaperOverBallsResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class TaperOverRollsAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: TaperOverRollsResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class TaperPlugDepthAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: TaperPlugDepthResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class TaperProbedAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: TaperProbedResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class TaperSetOverAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: TaperSetOverResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class TiltedPlateAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: TiltedPlateResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class VeeOverRollsAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: VeeOverRollsResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class VeeOverRollsNominalAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: VeeOverRollsNominalResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class WheelFlankResult(AnswerModel):
    """The flanks to dress, the dresser's settings, the profile, and what is dressed away."""

    flanks: list[DressedFlank]
    """The flank, or both."""
    wheel_width_needed: float
    """Least width of a wheel for flanks and `edge_flat`. [length]"""
    flat_left: float
    """Width of periphery left, before the edge radius. [length]"""
    depth_to_dress: float
    """Greatest radial depth to dress away. [length]"""
    passes: int
    """Passes for all flanks together. [count]"""
    volume_to_dress: float | None
    """Volume of wheel dressed away, in cubic `units`; null without the diameter. [volume]"""
    blends: list[ProfileBlend]
    """The radii with their tangent points."""
    profile: list[ProfilePoint]
    """The profile from one side of the wheel to the other; arcs in steps of at most 3 degrees."""
    profile_csv: str
    """The same as CSV with a header row (RFC 4180), in `units`."""
    svg: str
    """The profile drawn to scale, as SVG."""


class WheelSpeedAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: WheelSpeedResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class BlockDayResult(AnswerModel):
    """What the box can do for the day."""

    complete: bool
    """True where every job has its stack."""
    slots: list[BlockDaySlot]
    """The periods, in order."""
    shared: list[BlockSharedStack]
    """Stacks to wring once and pass on, most jobs first."""


class CenterJobAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: CenterJobResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class InspectionPlanAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: InspectionPlanResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class JobPlanResult(AnswerModel):
    """The plan."""

    job: str
    """Name of the job."""
    shop_profile: str | None
    """The profile of equipment that was used; null where the request stated its own."""
    shop_profile_digest: str | None
    """Digest of what that profile holds: another one is another shop."""
    feature: PlannedFeature
    shank: PlannedShank | None
    """The shank and how it is held; null where none was stated."""
    adapter: str | None
    """The adapter that takes the shank, by name; null where the shop names none."""
    best: (
        Literal[
            "sine-plate",
            "stacks-under-both-rolls",
            "quarter-turn",
            "sine-plate-turned-in-plan",
            "compound-sine-plate",
            "dressed-wheel",
            "wheel-side",
            "swivelled-workhead",
        ]
        | str
        | None
    )
    """The first of `ways`; null where it neither holds nor may hold."""
    ranking: str
    """The one rule by which the ways are ranked."""
    ways: list[PlannedWay]
    """Every way that can make the feature, best first."""
    told_apart_by: list[PlanDecision]
    """What was not stated and would change which way is best; of the first eight ways."""
    steps: list[PlanStep]
    """The steps of the first of them, in order, with the cautions of the trade."""
    checks: PlanChecks
    """What checks the set-up and proves the ground feature, whatever the way."""
    ruled_out: list[RuledOutWay]
    """Every way that cannot, with the reason."""


class JobRoutingAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: JobRoutingResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class SineCompoundAnglesAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: SineCompoundAnglesResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class SineCompoundAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: SineCompoundResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class WheelFlankAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: WheelFlankResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class BlockDayAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: BlockDayResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


class JobPlanAnswer(Answer):
    """An answer: its result, advisories, and what it stands on."""

    result: JobPlanResult
    advisories: list[Advisory]
    """What an experienced hand would add."""
    basis: Basis
    """Formulas, sources, release and fingerprint."""


__all__ = [
    "Advisory",
    "Angle",
    "AngleContributions",
    "AngleEstimate",
    "AngleJudged",
    "ArcsecContribution",
    "ArcsecEstimate",
    "Basis",
    "BlockAlternative",
    "BlockAngleAlternative",
    "BlockAngleGradeEntry",
    "BlockAngleGradeEntryAnswer",
    "BlockAngleGradeList",
    "BlockAngleGradeListAnswer",
    "BlockAngleOwned",
    "BlockAngleSetEntry",
    "BlockAngleSetEntryAnswer",
    "BlockAngleSetList",
    "BlockAngleSetListAnswer",
    "BlockAngleStackAnswer",
    "BlockAngleStackResult",
    "BlockAngleUsed",
    "BlockBudgetAnswer",
    "BlockBudgetResult",
    "BlockCalibrationAnswer",
    "BlockCalibrationResult",
    "BlockCheckAnswer",
    "BlockCheckResult",
    "BlockContention",
    "BlockDayAnswer",
    "BlockDayJob",
    "BlockDayResult",
    "BlockDaySlot",
    "BlockDayStack",
    "BlockFlatnessEntry",
    "BlockFlatnessEntryAnswer",
    "BlockFlatnessList",
    "BlockFlatnessListAnswer",
    "BlockFlatnessRange",
    "BlockGradeEntry",
    "BlockGradeEntryAnswer",
    "BlockGradeList",
    "BlockGradeListAnswer",
    "BlockGradeRange",
    "BlockHeightWanted",
    "BlockLeftOut",
    "BlockMaterialEntry",
    "BlockMaterialEntryAnswer",
    "BlockMaterialList",
    "BlockMaterialListAnswer",
    "BlockMistake",
    "BlockMonteCarlo",
    "BlockNamedStack",
    "BlockOwned",
    "BlockSetDetail",
    "BlockSetDetailAnswer",
    "BlockSetEntry",
    "BlockSetList",
    "BlockSetListAnswer",
    "BlockSharedStack",
    "BlockSinceAnswer",
    "BlockSinceResult",
    "BlockStackAnswer",
    "BlockStackResult",
    "BlockStacksAnswer",
    "BlockStacksResult",
    "BlockToBorrow",
    "CenterAdapterAnswer",
    "CenterAdapterResult",
    "CenterBallReading",
    "CenterBallsAnswer",
    "CenterBallsResult",
    "CenterCalloutAnswer",
    "CenterCalloutResult",
    "CenterContactAnswer",
    "CenterContactResult",
    "CenterEffectAnswer",
    "CenterEffectAt",
    "CenterEffectResult",
    "CenterError",
    "CenterHoleAnswer",
    "CenterHoleBall",
    "CenterHoleByShaft",
    "CenterHoleByShaftAnswer",
    "CenterHoleByShaftList",
    "CenterHoleByShaftListAnswer",
    "CenterHoleList",
    "CenterHoleListAnswer",
    "CenterHoleResult",
    "CenterHoleRow",
    "CenterHoleRowAnswer",
    "CenterJobAnswer",
    "CenterJobResult",
    "CenterLimit",
    "CenterLimitsAnswer",
    "CenterLimitsResult",
    "CenterOutOfRoundAnswer",
    "CenterOutOfRoundResult",
    "CenterPointEntry",
    "CenterPointEntryAnswer",
    "CenterPointList",
    "CenterPointListAnswer",
    "CenterRegrindAnswer",
    "CenterRegrindResult",
    "ChooseDressedWheel",
    "ChooseSinePlate",
    "ChooseWays",
    "ChooseWheelSide",
    "ChooseWorkhead",
    "ClearanceChange",
    "ClearanceFixture",
    "ClearanceGap",
    "ClearanceGuard",
    "ClearancePlate",
    "ClearancePoint",
    "ClearanceTurningPart",
    "ClearanceWheel",
    "ConeWork",
    "CorrectionAngle",
    "CorrectionCause",
    "CorrectionCompoundFace",
    "CorrectionCompoundPlate",
    "CorrectionCone",
    "CorrectionContact",
    "CorrectionFace",
    "CorrectionHeight",
    "CorrectionObservations",
    "CorrectionReseating",
    "CorrectionScale",
    "CorrectionScaleDresser",
    "CorrectionSeats",
    "CorrectionSetting",
    "CorrectionSineDresser",
    "CorrectionSinePlate",
    "CorrectionSlip",
    "CorrectionStack",
    "CorrectionSurface",
    "CorrectionSwivel",
    "CurveAdvisory",
    "CurveAnswer",
    "CurveAxis",
    "CurveColumn",
    "CurveCounts",
    "CurveRange",
    "CurveRefusal",
    "Direction",
    "DirectionContribution",
    "DirectionEstimate",
    "DovetailOverRollsAnswer",
    "DovetailOverRollsResult",
    "DressedFlank",
    "DressedStation",
    "DresserSetting",
    "DresserStack",
    "DressingError",
    "DressingErrorsAnswer",
    "DressingErrorsResult",
    "DressingGuideEntry",
    "DressingGuideEntryAnswer",
    "DressingGuideList",
    "DressingGuideListAnswer",
    "DressingGuideRange",
    "DriftComparisonAnswer",
    "DriftComparisonResult",
    "FaceWork",
    "FieldProblem",
    "GrindingWay",
    "Grounds",
    "InspectedConeFeature",
    "InspectedFaceFeature",
    "InspectedPart",
    "InspectedPlugFeature",
    "InspectedSocketFeature",
    "InspectionAngleProof",
    "InspectionBalls",
    "InspectionBluing",
    "InspectionComparator",
    "InspectionComparatorAnswer",
    "InspectionComparatorResult",
    "InspectionGauges",
    "InspectionNextStep",
    "InspectionOverlayAnswer",
    "InspectionOverlayResult",
    "InspectionPlanAnswer",
    "InspectionPlanResult",
    "InspectionPlate",
    "InspectionProbe",
    "InspectionReading",
    "InspectionRolls",
    "InspectionSetting",
    "InspectionSizeProof",
    "InspectionVerdictAnswer",
    "InspectionVerdictResult",
    "JobPlanAnswer",
    "JobPlanResult",
    "JobRoutingAnswer",
    "JobRoutingResult",
    "JobsCorrectionAnswer",
    "JobsCorrectionResult",
    "LengthContribution",
    "LengthEstimate",
    "LengthJudged",
    "MeasuringBoreAnswer",
    "MeasuringBoreResult",
    "MeasuringChordAnswer",
    "MeasuringChordResult",
    "MeasuringLeverTipAnswer",
    "MeasuringLeverTipResult",
    "MeasuringSmallAngleAnswer",
    "MeasuringSmallAngleResult",
    "MeasuringSquareAnswer",
    "MeasuringSquareResult",
    "OperationDetail",
    "OperationDetailAnswer",
    "OperationEntry",
    "OperationList",
    "OperationListAnswer",
    "PickedPoint",
    "PlanAdapter",
    "PlanAngle",
    "PlanAnglePlate",
    "PlanAngledFace",
    "PlanAssumption",
    "PlanBatch",
    "PlanBest",
    "PlanBlockSet",
    "PlanBlockWork",
    "PlanCenter",
    "PlanCheck",
    "PlanChecks",
    "PlanClearance",
    "PlanCompoundFace",
    "PlanCompoundPlate",
    "PlanCone",
    "PlanDecision",
    "PlanDressedWheel",
    "PlanEquipment",
    "PlanFeed",
    "PlanFeeding",
    "PlanHingedBody",
    "PlanInternalSpindle",
    "PlanMeansNotAtHand",
    "PlanMeasuring",
    "PlanMistake",
    "PlanObservedPiece",
    "PlanPhase",
    "PlanPlateBody",
    "PlanRoom",
    "PlanSeatReading",
    "PlanSetUpCheck",
    "PlanSetting",
    "PlanSetupPart",
    "PlanSinePlate",
    "PlanSize",
    "PlanSlopedWork",
    "PlanStack",
    "PlanStep",
    "PlanStopReading",
    "PlanSwivelBase",
    "PlanTaper",
    "PlanThreshold",
    "PlanTime",
    "PlanTimes",
    "PlanWheel",
    "PlanWheelHead",
    "PlanWheelSide",
    "PlanWorkHolder",
    "PlanWorkhead",
    "PlanWorkheadBody",
    "PlannedAngle",
    "PlannedCone",
    "PlannedFeature",
    "PlannedFeed",
    "PlannedInspection",
    "PlannedMeans",
    "PlannedRunout",
    "PlannedSetting",
    "PlannedShank",
    "PlannedWay",
    "PlateErrorFields",
    "Problem",
    "ProfileBlend",
    "ProfileLine",
    "ProfileOverlay",
    "ProfilePlace",
    "ProfilePoint",
    "RoutingOperation",
    "RoutingTool",
    "RoutingValue",
    "RuledOutInspection",
    "RuledOutWay",
    "RunoutAfterTap",
    "RunoutAtStation",
    "RunoutAxisAnswer",
    "RunoutAxisResult",
    "RunoutBudgetAnswer",
    "RunoutBudgetResult",
    "RunoutContributions",
    "RunoutContributor",
    "RunoutConvertAnswer",
    "RunoutConvertResult",
    "RunoutCorrection",
    "RunoutFormHarmonic",
    "RunoutFound",
    "RunoutIndicateAnswer",
    "RunoutIndicateResult",
    "RunoutOffCrestAnswer",
    "RunoutOffCrestResult",
    "RunoutReading",
    "RunoutReversalAnswer",
    "RunoutReversalResult",
    "RunoutSection",
    "RunoutSectionFound",
    "RunoutSectionRead",
    "RunoutSurfaceSection",
    "RunoutTap",
    "RunoutTapPlace",
    "RunoutTerm",
    "RunoutTermAnswer",
    "RunoutTermList",
    "RunoutTermListAnswer",
    "RunoutTotalAnswer",
    "RunoutTotalResult",
    "RunoutTrueUpAnswer",
    "RunoutTrueUpAtStation",
    "RunoutTrueUpResult",
    "RunoutTrueUpSection",
    "RunoutVBlockAnswer",
    "RunoutVBlockFactor",
    "RunoutVBlockResult",
    "RunoutVector",
    "ScaleDresser",
    "SetUpErrorFields",
    "SetupError",
    "SetupErrorsAnswer",
    "SetupErrorsResult",
    "SetupStation",
    "SineAngleAnswer",
    "SineAngleResult",
    "SineBarToleranceEntry",
    "SineBarToleranceEntryAnswer",
    "SineBarToleranceList",
    "SineBarToleranceListAnswer",
    "SineBaseDresser",
    "SineCalibrationSetting",
    "SineCenterDistanceAnswer",
    "SineCenterDistanceResult",
    "SineComplement",
    "SineCompoundAnglesAnswer",
    "SineCompoundAnglesResult",
    "SineCompoundAnswer",
    "SineCompoundResult",
    "SineCompoundStacks",
    "SineCorrectionAnswer",
    "SineCorrectionResult",
    "SineEdgeTurns",
    "SineHingeSetting",
    "SineLaying",
    "SineLowStackAnswer",
    "SineLowStackResult",
    "SineMeasuredAngleAnswer",
    "SineMeasuredAngleResult",
    "SineMend",
    "SineMonteCarlo",
    "SineNormal",
    "SineOrientation",
    "SineOverPinAnswer",
    "SineOverPinResult",
    "SineProjectedAngles",
    "SineRequirement",
    "SineRequirementsAnswer",
    "SineRequirementsResult",
    "SineRotationCheck",
    "SineSettingAnswer",
    "SineSettingResult",
    "SineStack",
    "SineSwap",
    "SineTableAnswer",
    "SineTableResult",
    "SineTableRow",
    "SineTaperAngleAnswer",
    "SineTaperAngleResult",
    "SineTaperMistake",
    "SineTaperSettingAnswer",
    "SineTaperSettingResult",
    "SineTrueTilt",
    "SineTurnedSetting",
    "SineUncertaintyAnswer",
    "SineUncertaintyResult",
    "SineVector",
    "SlopeFields",
    "Source",
    "StandardShankDimensions",
    "StandardTaperEntry",
    "StandardTaperEntryAnswer",
    "StandardTaperList",
    "StandardTaperListAnswer",
    "StandingOffsetAnswer",
    "StandingOffsetResult",
    "StandingOffsetStation",
    "StraightShank",
    "StraightnessAnswer",
    "StraightnessContact",
    "StraightnessResult",
    "TaperAngleAnswer",
    "TaperAngleGradeEntry",
    "TaperAngleGradeEntryAnswer",
    "TaperAngleGradeList",
    "TaperAngleGradeListAnswer",
    "TaperAngleGradeRange",
    "TaperAngleResult",
    "TaperCandidate",
    "TaperCandidateName",
    "TaperCleanUpAnswer",
    "TaperCleanUpResult",
    "TaperFeedAtEnd",
    "TaperIdentifyAnswer",
    "TaperIdentifyResult",
    "TaperInfeedAnswer",
    "TaperInfeedResult",
    "TaperOneBallAnswer",
    "TaperOneBallResult",
    "TaperOverBallsAnswer",
    "TaperOverBallsNominalAnswer",
    "TaperOverBallsNominalResult",
    "TaperOverBallsResult",
    "TaperOverRollsAnswer",
    "TaperOverRollsNominalAnswer",
    "TaperOverRollsNominalResult",
    "TaperOverRollsResult",
    "TaperPlugDepthAnswer",
    "TaperPlugDepthNominalAnswer",
    "TaperPlugDepthNominalResult",
    "TaperPlugDepthResult",
    "TaperProbedAnswer",
    "TaperProbedReading",
    "TaperProbedResult",
    "TaperRateEntry",
    "TaperRateEntryAnswer",
    "TaperRateList",
    "TaperRateListAnswer",
    "TaperSetOverAnswer",
    "TaperSetOverResult",
    "TaperShank",
    "TaperSolveAnswer",
    "TaperSolveResult",
    "TaperStandoffAnswer",
    "TaperStandoffResult",
    "TaperStationLimits",
    "TaperToleranceAnswer",
    "TaperToleranceResult",
    "TaperWayToSet",
    "TappedHoleEntry",
    "TappedHoleEntryAnswer",
    "TappedHoleList",
    "TappedHoleListAnswer",
    "TiltedPlateAnswer",
    "TiltedPlateResult",
    "TirEstimate",
    "VeeOverRollsAnswer",
    "VeeOverRollsNominalAnswer",
    "VeeOverRollsNominalResult",
    "VeeOverRollsResult",
    "VeeRollExpected",
    "WheelChooseAnswer",
    "WheelChooseResult",
    "WheelDiamondAnswer",
    "WheelDiamondResult",
    "WheelDressingAnswer",
    "WheelDressingResult",
    "WheelFlankAnswer",
    "WheelFlankResult",
    "WheelInspection",
    "WheelObservedPiece",
    "WheelRadiusAnswer",
    "WheelRadiusResult",
    "WheelRedressAnswer",
    "WheelRedressResult",
    "WheelSafetyRule",
    "WheelSafetyRuleAnswer",
    "WheelSafetyRuleList",
    "WheelSafetyRuleListAnswer",
    "WheelSpeedAnswer",
    "WheelSpeedLimit",
    "WheelSpeedResult",
    "WheelStartCheck",
    "WornWheelErrors",
    "WornWheelSpeed",
    "WrongBlock",
]
