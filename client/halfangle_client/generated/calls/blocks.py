# Generated from openapi/openapi.json by openapi/generate.py. Do not edit.
"""Calls of the topic `blocks`."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Any, Literal

from halfangle_client.endpoint import AsyncSender, Endpoint, Sender

if TYPE_CHECKING:
    from halfangle_client.generated import models

_ANGLE_STACK: Endpoint[models.BlockAngleStackAnswer] = Endpoint(
    name="blocks.angle_stack",
    method="POST",
    path="/v1/blocks/angle-stack",
    answer="BlockAngleStackAnswer",
    accept="application/json",
    sends="application/json",
    heavy=True,
)
_BUDGET: Endpoint[models.BlockBudgetAnswer] = Endpoint(
    name="blocks.budget",
    method="POST",
    path="/v1/blocks/budget",
    answer="BlockBudgetAnswer",
    accept="application/json",
    sends="application/json",
)
_CALIBRATION: Endpoint[models.BlockCalibrationAnswer] = Endpoint(
    name="blocks.calibration",
    method="POST",
    path="/v1/blocks/calibration",
    answer="BlockCalibrationAnswer",
    accept="application/json",
    sends="application/json",
    heavy=True,
)
_CHECK: Endpoint[models.BlockCheckAnswer] = Endpoint(
    name="blocks.check",
    method="POST",
    path="/v1/blocks/check",
    answer="BlockCheckAnswer",
    accept="application/json",
    sends="application/json",
    heavy=True,
)
_DAY: Endpoint[models.BlockDayAnswer] = Endpoint(
    name="blocks.day",
    method="POST",
    path="/v1/blocks/day",
    answer="BlockDayAnswer",
    accept="application/json",
    sends="application/json",
    heavy=True,
)
_GET_ANGLE_GRADE: Endpoint[models.BlockAngleGradeEntryAnswer] = Endpoint(
    name="blocks.get_angle_grade",
    method="GET",
    path="/v1/blocks/angle-grades/{key}",
    answer="BlockAngleGradeEntryAnswer",
    accept="application/json",
)
_GET_ANGLE_SET: Endpoint[models.BlockAngleSetEntryAnswer] = Endpoint(
    name="blocks.get_angle_set",
    method="GET",
    path="/v1/blocks/angle-sets/{key}",
    answer="BlockAngleSetEntryAnswer",
    accept="application/json",
)
_GET_FLATNESS_GRADE: Endpoint[models.BlockFlatnessEntryAnswer] = Endpoint(
    name="blocks.get_flatness_grade",
    method="GET",
    path="/v1/blocks/flatness-grades/{key}",
    answer="BlockFlatnessEntryAnswer",
    accept="application/json",
)
_GET_GRADE: Endpoint[models.BlockGradeEntryAnswer] = Endpoint(
    name="blocks.get_grade",
    method="GET",
    path="/v1/blocks/grades/{key}",
    answer="BlockGradeEntryAnswer",
    accept="application/json",
)
_GET_MATERIAL: Endpoint[models.BlockMaterialEntryAnswer] = Endpoint(
    name="blocks.get_material",
    method="GET",
    path="/v1/blocks/materials/{key}",
    answer="BlockMaterialEntryAnswer",
    accept="application/json",
)
_GET_SET: Endpoint[models.BlockSetDetailAnswer] = Endpoint(
    name="blocks.get_set",
    method="GET",
    path="/v1/blocks/sets/{key}",
    answer="BlockSetDetailAnswer",
    accept="application/json",
)
_LIST_ANGLE_GRADES: Endpoint[models.BlockAngleGradeListAnswer] = Endpoint(
    name="blocks.list_angle_grades",
    method="GET",
    path="/v1/blocks/angle-grades",
    answer="BlockAngleGradeListAnswer",
    accept="application/json",
)
_LIST_ANGLE_SETS: Endpoint[models.BlockAngleSetListAnswer] = Endpoint(
    name="blocks.list_angle_sets",
    method="GET",
    path="/v1/blocks/angle-sets",
    answer="BlockAngleSetListAnswer",
    accept="application/json",
)
_LIST_FLATNESS_GRADES: Endpoint[models.BlockFlatnessListAnswer] = Endpoint(
    name="blocks.list_flatness_grades",
    method="GET",
    path="/v1/blocks/flatness-grades",
    answer="BlockFlatnessListAnswer",
    accept="application/json",
)
_LIST_GRADES: Endpoint[models.BlockGradeListAnswer] = Endpoint(
    name="blocks.list_grades",
    method="GET",
    path="/v1/blocks/grades",
    answer="BlockGradeListAnswer",
    accept="application/json",
)
_LIST_MATERIALS: Endpoint[models.BlockMaterialListAnswer] = Endpoint(
    name="blocks.list_materials",
    method="GET",
    path="/v1/blocks/materials",
    answer="BlockMaterialListAnswer",
    accept="application/json",
)
_LIST_SETS: Endpoint[models.BlockSetListAnswer] = Endpoint(
    name="blocks.list_sets",
    method="GET",
    path="/v1/blocks/sets",
    answer="BlockSetListAnswer",
    accept="application/json",
)
_SINCE: Endpoint[models.BlockSinceAnswer] = Endpoint(
    name="blocks.since",
    method="POST",
    path="/v1/blocks/since",
    answer="BlockSinceAnswer",
    accept="application/json",
    sends="application/json",
)
_STACK: Endpoint[models.BlockStackAnswer] = Endpoint(
    name="blocks.stack",
    method="POST",
    path="/v1/blocks/stack",
    answer="BlockStackAnswer",
    accept="application/json",
    sends="application/json",
    heavy=True,
)
_STACKS: Endpoint[models.BlockStacksAnswer] = Endpoint(
    name="blocks.stacks",
    method="POST",
    path="/v1/blocks/stacks",
    answer="BlockStacksAnswer",
    accept="application/json",
    sends="application/json",
    heavy=True,
)

ENDPOINTS: tuple[Endpoint[Any], ...] = (
    _ANGLE_STACK,
    _BUDGET,
    _CALIBRATION,
    _CHECK,
    _DAY,
    _GET_ANGLE_GRADE,
    _GET_ANGLE_SET,
    _GET_FLATNESS_GRADE,
    _GET_GRADE,
    _GET_MATERIAL,
    _GET_SET,
    _LIST_ANGLE_GRADES,
    _LIST_ANGLE_SETS,
    _LIST_FLATNESS_GRADES,
    _LIST_GRADES,
    _LIST_MATERIALS,
    _LIST_SETS,
    _SINCE,
    _STACK,
    _STACKS,
)


class BlocksCalls:
    """Calls of the topic `blocks`."""

    def __init__(self, sender: Sender) -> None:
        self._sender = sender

    def angle_stack(
        self,
        *,
        angle: float | str,
        set: str | None = None,
        box: Sequence[models.BlockAngleOwned] | None = None,
        with_square_block: bool = False,
        max_blocks: int = 22,
        tolerance_arcsec: float = 0.0,
        max_alternatives: int = 0,
        grade: str | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.BlockAngleStackAnswer:
        """Stack of angle gauge blocks.

        The fewest angle gauge blocks, each added or subtracted, that build an angle, proved; with
        the error that their grades or calibrations leave.

        Largest request: 22 angle blocks; of more than a million stacks of as few blocks within the
        tolerance the best of the first million.

        Args:
            angle: Angle to build, in degrees; taken to the nearest 0.001″. [degree, over 0, at most
                360; or text in degrees, minutes, seconds]
            set: Built-in set, as `GET /v1/blocks/angle-sets` lists it. Either this or `box`. [1 to
                60 characters]
            box: The shop's own angle blocks with what is known of them; at most 22, counts
                included. [1 to 22 entries]
            with_square_block: True to have a square block of 90° too, added or subtracted.
            max_blocks: Most blocks to wring together. [count, 1 to 22]
            tolerance_arcsec: Angles within ± this will do: the fewest blocks that come within it,
                and of these the nearest. [arcsecond, 0 to 324000]
            max_alternatives: How many further stacks to give, the next best ones, all different.
                [count, 0 to 20]
            grade: Tolerance grade of blocks without a calibration, as `GET /v1/blocks/angle-grades`
                lists it, for the angle's uncertainty. [1 to 60 characters]
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `heavy_timeout_seconds`. [second, over 0, at most
                86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.BlockAngleStackAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.blocks.angle_stack(angle="37 24 18", set="angle-16", grade="toolroom")
        """
        return self._sender.send(
            _ANGLE_STACK,
            {
                "angle": angle,
                "set": set,
                "box": box,
                "with_square_block": with_square_block,
                "max_blocks": max_blocks,
                "tolerance_arcsec": tolerance_arcsec,
                "max_alternatives": max_alternatives,
                "grade": grade,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def budget(
        self,
        *,
        units: Literal["in", "mm"],
        blocks: Sequence[float] | None = None,
        calibrated_blocks: Sequence[models.BlockOwned] | None = None,
        grade: str | None = None,
        block_material: Literal[
            "steel",
            "tungsten-carbide",
            "chromium-carbide",
            "ceramic",
            "glass-ceramic",
            "fused-quartz",
        ] = "steel",
        plate_material: Literal[
            "steel",
            "tungsten-carbide",
            "chromium-carbide",
            "ceramic",
            "glass-ceramic",
            "fused-quartz",
        ]
        | None = None,
        temperature_celsius: float | None = None,
        temperature_error_limit_celsius: float | None = None,
        temperature_difference_celsius: float | None = None,
        film_nanometres: float = 0.0,
        film_error_limit_nanometres: float = 10.0,
        wrung_to_base: bool = True,
        coverage_factor: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.BlockBudgetAnswer:
        """Error budget of a stack.

        The height that a stack will really have, from grades or calibrations, wringing films and
        temperature: worst case and standard uncertainty.

        Largest request: 20 blocks.

        Args:
            units: Unit of every length here and in the answer.
            blocks: Nominal sizes of the blocks in the stack, in `units`. Either this or
                `calibrated_blocks`. [1 to 20 entries, each length, 1e-06 to 10000]
            calibrated_blocks: The blocks with what is known of them: deviation, uncertainty,
                material. At most 20 in all, counts included, none of them `missing`. [1 to 20
                entries]
            grade: Tolerance grade of blocks without a calibration, as `GET /v1/blocks/grades` lists
                it. Needed where some block has none. [1 to 60 characters]
            block_material: Material of the blocks given by nominal size alone.
            plate_material: Material of the sine plate or the part that the stack stands against:
                the height is then what it is against the plate, which grows too. Absent: the height
                by itself.
            temperature_celsius: Temperature of the blocks; 20 °C is the reference (ISO 1). Not
                stated where absent: the height is then the one at 20 °C, and the answer names it.
                [°C, -40 to 150]
            temperature_error_limit_celsius: Largest error ± of that temperature, in kelvins. [°C, 0
                to 50]
            temperature_difference_celsius: Limit ± of the difference of the blocks' temperature to
                the plate's, in kelvins; counts with `plate_material` only, and an advisory says so
                where that is absent. [°C, 0 to 50]
            film_nanometres: Mean by which a wringing film is thicker than the one that a block's
                length includes by definition, in nanometres. [nanometre, -1000 to 1000]
            film_error_limit_nanometres: Largest error ± of each film about that mean, in
                nanometres; the presetting is from memory of national laboratory practice: 5 to 10
                for clean, well wrung blocks, more where they are worn. [nanometre, 0 to 1000]
            wrung_to_base: True where the lowest block is wrung to its base: one film a block. False
                where it merely stands: one film less, and flatness and dirt below it are not
                covered.
            coverage_factor: Coverage factor k of the expanded uncertainty. Absent: what covers 95
                %, by the distributions of the contributions. [1 to 4]
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `timeout_seconds`. [second, over 0, at most 86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.BlockBudgetAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.blocks.budget(units="mm", blocks=[50.0, 10.0, 1.3], grade="iso-1",
                temperature_celsius=22.0, temperature_error_limit_celsius=0.5,
                block_material="tungsten-carbide", plate_material="steel")
        """
        return self._sender.send(
            _BUDGET,
            {
                "units": units,
                "blocks": blocks,
                "calibrated_blocks": calibrated_blocks,
                "grade": grade,
                "block_material": block_material,
                "plate_material": plate_material,
                "temperature_celsius": temperature_celsius,
                "temperature_error_limit_celsius": temperature_error_limit_celsius,
                "temperature_difference_celsius": temperature_difference_celsius,
                "film_nanometres": film_nanometres,
                "film_error_limit_nanometres": film_error_limit_nanometres,
                "wrung_to_base": wrung_to_base,
                "coverage_factor": coverage_factor,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def calibration(
        self,
        *,
        units: Literal["in", "mm"],
        standard_length: float,
        differences: Sequence[float],
        size: float | None = None,
        standard_expanded_uncertainty: float | None = None,
        standard_coverage_factor: float = 2.0,
        standard_degrees_of_freedom: float | None = None,
        repeatability: float | None = None,
        repeatability_degrees_of_freedom: float | None = None,
        comparator_random_uncertainty: float | None = None,
        comparator_random_degrees_of_freedom: float | None = None,
        comparator_systematic_uncertainty: float | None = None,
        comparator_systematic_degrees_of_freedom: float | None = None,
        expansion_coefficient: float = 1.15e-05,
        expansion_coefficient_error_limit: float | None = None,
        expansion_difference: float | None = None,
        expansion_difference_inexact_percent: float = 0.0,
        temperature_celsius: float | None = None,
        temperature_standard_uncertainty_celsius: float | None = None,
        temperature_cycle_celsius: float | None = None,
        temperature_difference_celsius: float | None = None,
        temperature_difference_inexact_percent: float = 0.0,
        coverage_probability: float = 0.95,
        trials: int = 50000,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.BlockCalibrationAnswer:
        """Calibration of a block by comparison.

        A block's length at 20 °C from its difference to a standard on a comparator, with the budget
        of the GUM's H.1, its terms of second order, and Monte Carlo with the shortest interval.

        Largest request: 100 readings, 200,000 Monte Carlo trials.

        Args:
            units: Unit of every length here and in the answer.
            standard_length: Length of the standard at 20 °C by its certificate. [length, 1e-06 to
                10000]
            differences: Each reading of the comparator: block less standard. [1 to 100 entries,
                each length, -10000 to 10000]
            size: Nominal size of the block. [length, 1e-06 to 10000]
            standard_expanded_uncertainty: Its expanded uncertainty. [length, 0 to 10000]
            standard_coverage_factor: Coverage factor k of that. [1 to 5]
            standard_degrees_of_freedom: Degrees of freedom of that; absent, they are not limited.
                [1 to 1000000]
            repeatability: Standard deviation of one reading, from earlier series; absent, that of
                `differences`. [length, 0 to 10000]
            repeatability_degrees_of_freedom: Degrees of freedom of that; absent, they are not
                limited. [1 to 1000000]
            comparator_random_uncertainty: Standard uncertainty by the comparator's random effects.
                [length, 0 to 10000]
            comparator_random_degrees_of_freedom: Degrees of freedom of that; absent, they are not
                limited. [1 to 1000000]
            comparator_systematic_uncertainty: Standard uncertainty by the comparator's systematic
                effects. [length, 0 to 10000]
            comparator_systematic_degrees_of_freedom: Degrees of freedom of that; absent, they are
                not limited. [1 to 1000000]
            expansion_coefficient: Coefficient of expansion of the standard, per kelvin: steel. [per
                kelvin, 0 to 0.001]
            expansion_coefficient_error_limit: Largest error ± of that. [per kelvin, 0 to 0.001]
            expansion_difference: Largest difference ± of the block's coefficient from the
                standard's. [per kelvin, 0 to 0.001]
            expansion_difference_inexact_percent: How far that limit itself may be off, in percent
                of it. [percent, 0 to 100]
            temperature_celsius: Mean temperature of the bench. [°C, -40 to 150]
            temperature_standard_uncertainty_celsius: Standard uncertainty of that mean, in kelvins.
                [°C, 0 to 50]
            temperature_cycle_celsius: Amplitude ± of the cycles about that mean, in kelvins. [°C, 0
                to 50]
            temperature_difference_celsius: Largest difference ± of the block's temperature from the
                standard's, in kelvins. [°C, 0 to 50]
            temperature_difference_inexact_percent: How far that limit itself may be off, in percent
                of it. [percent, 0 to 100]
            coverage_probability: Probability that the expanded uncertainty covers. [0.5 to 0.999]
            trials: Trials of the Monte Carlo check. [count, 1000 to 200000]
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `heavy_timeout_seconds`. [second, over 0, at most
                86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.BlockCalibrationAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.blocks.calibration(units="mm", size=50, standard_length=50.000623,
                standard_expanded_uncertainty=7.5e-05, standard_coverage_factor=3,
                standard_degrees_of_freedom=18, differences=[0.000215, 0.000215, 0.000215,
                0.000215, 0.000215], repeatability=1.3e-05, repeatability_degrees_of_freedom=24,
                comparator_random_uncertainty=3.9e-06, comparator_random_degrees_of_freedom=5,
                comparator_systematic_uncertainty=6.7e-06,
                comparator_systematic_degrees_of_freedom=8,
                expansion_coefficient_error_limit=2e-06, expansion_difference=1e-06,
                expansion_difference_inexact_percent=10, temperature_celsius=19.9,
                temperature_standard_uncertainty_celsius=0.2, temperature_cycle_celsius=0.5,
                temperature_difference_celsius=0.05, temperature_difference_inexact_percent=50,
                coverage_probability=0.99)
        """
        return self._sender.send(
            _CALIBRATION,
            {
                "units": units,
                "size": size,
                "standard_length": standard_length,
                "standard_expanded_uncertainty": standard_expanded_uncertainty,
                "standard_coverage_factor": standard_coverage_factor,
                "standard_degrees_of_freedom": standard_degrees_of_freedom,
                "differences": differences,
                "repeatability": repeatability,
                "repeatability_degrees_of_freedom": repeatability_degrees_of_freedom,
                "comparator_random_uncertainty": comparator_random_uncertainty,
                "comparator_random_degrees_of_freedom": comparator_random_degrees_of_freedom,
                "comparator_systematic_uncertainty": comparator_systematic_uncertainty,
                "comparator_systematic_degrees_of_freedom": comparator_systematic_degrees_of_freedom,
                "expansion_coefficient": expansion_coefficient,
                "expansion_coefficient_error_limit": expansion_coefficient_error_limit,
                "expansion_difference": expansion_difference,
                "expansion_difference_inexact_percent": expansion_difference_inexact_percent,
                "temperature_celsius": temperature_celsius,
                "temperature_standard_uncertainty_celsius": temperature_standard_uncertainty_celsius,
                "temperature_cycle_celsius": temperature_cycle_celsius,
                "temperature_difference_celsius": temperature_difference_celsius,
                "temperature_difference_inexact_percent": temperature_difference_inexact_percent,
                "coverage_probability": coverage_probability,
                "trials": trials,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def check(
        self,
        *,
        units: Literal["in", "mm"],
        blocks: Sequence[float],
        set: str | None = None,
        sizes: Sequence[float] | None = None,
        box: Sequence[models.BlockOwned] | None = None,
        missing: Sequence[float] | None = None,
        in_use: Sequence[float] | None = None,
        wear_blocks: Sequence[float] | None = None,
        height: float | None = None,
        angle: float | str | None = None,
        center_distance: float | None = None,
        low_stack: float | None = None,
        low_blocks: Sequence[float] | None = None,
        offset: float = 0.0,
        measured_height: float | None = None,
        measured_angle: float | str | None = None,
        measurement_error_limit: float | None = None,
        measurement_error_limit_arcsec: float | None = None,
        grade: str | None = None,
        max_explanations: int = 5,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.BlockCheckAnswer:
        """Check of a stack as wrung.

        Height, uncertainty and angle of a stack as wrung, against what is wanted and what was
        measured; and which single swapped, forgotten or added block explains a difference.

        Largest request: 20 blocks in the stack, 500 in the box.

        Args:
            units: Unit of every length here and in the answer.
            blocks: Nominal sizes of the blocks in the stack as read from them, wear blocks left
                out, in `units`. [1 to 20 entries, each length, 1e-06 to 10000]
            set: Built-in set, as `GET /v1/blocks/sets` lists it. One of `set`, `sizes`, `box` is
                needed. [1 to 60 characters]
            sizes: Nominal sizes of the blocks that the shop has, each once, in `units`. Where there
                are several of a size, send `box` with its `count`. [1 to 500 entries, each length,
                1e-06 to 10000]
            box: The shop's own blocks with what is known of them. [1 to 500 entries]
            missing: Sizes that are missing from the set, one entry a block, in `units`. [at most
                500 entries, each length, 1e-06 to 10000]
            in_use: Sizes that are in use elsewhere, one entry a block, in `units`. [at most 500
                entries, each length, 1e-06 to 10000]
            wear_blocks: Sizes of the wear blocks on its ends, in `units`: of the set's or box's own
                where it has some of that size, else of a pair kept beside it. [at most 2 entries,
                each length, 1e-06 to 10000]
            height: Height wanted, in `units`. Either this or `angle`, or neither. The sum of the
                nominal sizes, wear blocks included, is as wanted below half of the smallest
                difference of two sizes of the set, and of 0.0001 in or 0.001 mm; differences below
                0.00005 in or 0.0005 mm do not count. `measurement_error_limit` sent without a
                measurement takes the place of that. [length, 1e-06 to 10000]
            angle: Angle wanted on the sine plate, in degrees; needs `center_distance`. Its height
                is compared as `height` is; a stack for it rounded to 0.0001 in or 0.001 mm is as
                wanted too. [degree, over 0, under 90; or text in degrees, minutes, seconds]
            center_distance: Distance between the centers of the plate's rolls, in `units`. With it
                every height is given as an angle too. [length, 1e-06 to 10000]
            low_stack: Height of the stack under the low roll, in `units`. Either this or
                `low_blocks`; absent both: no stack stands there. [length, 0 to 10000]
            low_blocks: Nominal sizes of the blocks under the low roll as read from them, wear
                blocks included, in `units`. They are of the same box, so that a wrong block there
                is looked for too, where an angle is wanted or measured; needs `center_distance`. [1
                to 20 entries, each length, 1e-06 to 10000]
            offset: Difference of the stacks at which the plate stands at zero, in `units`: the step
                of its seats less half the difference of its rolls' diameters. [length, -10000 to
                10000]
            measured_height: Height measured on the stack, in `units`. Either this or
                `measured_angle`. [length, 1e-06 to 10000]
            measured_angle: Angle measured on the plate, in degrees; needs `center_distance`.
                [degree, over 0, under 90; or text in degrees, minutes, seconds]
            measurement_error_limit: Largest error ± of the measured height, in `units`: within it,
                and at it, the measurement agrees with the stack as read, measured deviations
                included, and a mistake explains the measurement. Either this or
                `measurement_error_limit_arcsec`; absent both: half of 0.0001 in or 0.001 mm. It
                does not widen what passes against the wanted height, unless nothing was measured:
                then the actual height is to come within it of the wanted one. [length, 1e-06 to
                10000]
            measurement_error_limit_arcsec: The same limit in arc-seconds at the angle of the stack
                as read; needs `center_distance`. [arcsecond, 1e-06 to 324000]
            grade: Tolerance grade of blocks without a calibration, as `GET /v1/blocks/grades` lists
                it. [1 to 60 characters]
            max_explanations: How many mistakes to list, the likeliest first. [count, 0 to 50]
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `heavy_timeout_seconds`. [second, over 0, at most
                86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.BlockCheckAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.blocks.check(units="in", set="inch-81", blocks=[2.0, 0.4, 0.1001], angle=30,
                center_distance=5)
        """
        return self._sender.send(
            _CHECK,
            {
                "set": set,
                "sizes": sizes,
                "box": box,
                "missing": missing,
                "in_use": in_use,
                "units": units,
                "blocks": blocks,
                "wear_blocks": wear_blocks,
                "height": height,
                "angle": angle,
                "center_distance": center_distance,
                "low_stack": low_stack,
                "low_blocks": low_blocks,
                "offset": offset,
                "measured_height": measured_height,
                "measured_angle": measured_angle,
                "measurement_error_limit": measurement_error_limit,
                "measurement_error_limit_arcsec": measurement_error_limit_arcsec,
                "grade": grade,
                "max_explanations": max_explanations,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def day(
        self,
        *,
        units: Literal["in", "mm"],
        jobs: Sequence[models.BlockDayJob],
        set: str | None = None,
        sizes: Sequence[float] | None = None,
        box: Sequence[models.BlockOwned] | None = None,
        missing: Sequence[float] | None = None,
        in_use: Sequence[float] | None = None,
        grade: str | None = None,
        wear_ends: Literal["none", "one-end", "both-ends"] = "none",
        wear_block_size: float | None = None,
        max_blocks: int = 5,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.BlockDayAnswer:
        """A day's settings from one box.

        For a day's list of jobs: stacks for each period that do not get in one another's way,
        settings that can share a stack, and benches that would need the same block.

        Largest request: 60 jobs, 8 in a slot; for the whole day as for several stacks: 12 heights
        from 500 blocks; 8 million blocks tried to list stacks and 60 million comparisons of stacks,
        then the best found and the proved gap.

        Args:
            units: Unit of every length here and in the answer.
            jobs: The jobs, the most important first. [1 to 60 entries]
            set: Built-in set, as `GET /v1/blocks/sets` lists it. One of `set`, `sizes`, `box` is
                needed. [1 to 60 characters]
            sizes: Nominal sizes of the blocks that the shop has, each once, in `units`. Where there
                are several of a size, send `box` with its `count`. [1 to 500 entries, each length,
                1e-06 to 10000]
            box: The shop's own blocks with what is known of them. [1 to 500 entries]
            missing: Sizes that are missing from the set, one entry a block, in `units`. [at most
                500 entries, each length, 1e-06 to 10000]
            in_use: Sizes that are in use elsewhere, one entry a block, in `units`. [at most 500
                entries, each length, 1e-06 to 10000]
            grade: Tolerance grade of blocks without a calibration, as `GET /v1/blocks/grades` lists
                it, for the height's uncertainty. [1 to 60 characters]
            wear_ends: At which ends of every stack wear blocks go.
            wear_block_size: Nominal size of a wear block, in `units`. Absent: that of the set's or
                box's own wear blocks; of several sizes the one of which there are most, of equally
                many the largest, and no other is tried. [length, 1e-06 to 10000]
            max_blocks: Most blocks in each stack, wear blocks included. [count, 1 to 8]
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `heavy_timeout_seconds`. [second, over 0, at most
                86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.BlockDayAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.blocks.day(units="in", set="inch-81", jobs=[models.BlockDayJob(job="HL-0412",
                bench="grinder 1", slot=1, height=2.5), models.BlockDayJob(job="HL-0413",
                bench="grinder 2", slot=1, height=1.2941), models.BlockDayJob(job="HL-0420",
                bench="grinder 2", slot=2, height=2.5)])
        """
        return self._sender.send(
            _DAY,
            {
                "set": set,
                "sizes": sizes,
                "box": box,
                "missing": missing,
                "in_use": in_use,
                "units": units,
                "grade": grade,
                "wear_ends": wear_ends,
                "wear_block_size": wear_block_size,
                "jobs": jobs,
                "max_blocks": max_blocks,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def get_angle_grade(
        self,
        key: str,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.BlockAngleGradeEntryAnswer:
        """Tolerance grades of angle gauge blocks: one angle-grade.

        The accuracy of each grade, with its source.

        Args:
            key: The name, such as `laboratory-master`.
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `timeout_seconds`. [second, over 0, at most 86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.BlockAngleGradeEntryAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.blocks.get_angle_grade(key="laboratory-master")
        """
        return self._sender.send(
            _GET_ANGLE_GRADE,
            {
                "key": key,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def get_angle_set(
        self,
        key: str,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.BlockAngleSetEntryAnswer:
        """Built-in sets of angle gauge blocks: one angle-set.

        Every block of each set, with its source.

        Args:
            key: The name, such as `angle-16`.
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `timeout_seconds`. [second, over 0, at most 86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.BlockAngleSetEntryAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.blocks.get_angle_set(key="angle-16")
        """
        return self._sender.send(
            _GET_ANGLE_SET,
            {
                "key": key,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def get_flatness_grade(
        self,
        key: str,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.BlockFlatnessEntryAnswer:
        """Flatness of gauge blocks: one flatness-grade.

        Flatness of the measuring faces of each grade, by range of sizes. Parallelism is the
        variation in length: `GET /v1/blocks/grades`.

        Args:
            key: The name, such as `iso-k`.
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `timeout_seconds`. [second, over 0, at most 86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.BlockFlatnessEntryAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.blocks.get_flatness_grade(key="iso-k")
        """
        return self._sender.send(
            _GET_FLATNESS_GRADE,
            {
                "key": key,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def get_grade(
        self,
        key: str,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.BlockGradeEntryAnswer:
        """Tolerance grades of gauge blocks: one grade.

        Limit deviation and variation in length of each grade, by range of sizes.

        Args:
            key: The name, such as `iso-k`.
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `timeout_seconds`. [second, over 0, at most 86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.BlockGradeEntryAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.blocks.get_grade(key="iso-k")
        """
        return self._sender.send(
            _GET_GRADE,
            {
                "key": key,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def get_material(
        self,
        key: str,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.BlockMaterialEntryAnswer:
        """Materials of blocks and plates: one material.

        Expansion near 20 °C (ISO 1) of each, near-zero glass-ceramic and quartz too.

        Args:
            key: The name, such as `steel`.
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `timeout_seconds`. [second, over 0, at most 86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.BlockMaterialEntryAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.blocks.get_material(key="steel")
        """
        return self._sender.send(
            _GET_MATERIAL,
            {
                "key": key,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def get_set(
        self,
        key: str,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.BlockSetDetailAnswer:
        """Built-in sets of gauge blocks: one set.

        Sets by count and series, each with its source. No standard fixes the composition of a set:
        check it against your box.

        Args:
            key: The name, such as `inch-81`.
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `timeout_seconds`. [second, over 0, at most 86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.BlockSetDetailAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.blocks.get_set(key="inch-81")
        """
        return self._sender.send(
            _GET_SET,
            {
                "key": key,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def list_angle_grades(
        self,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.BlockAngleGradeListAnswer:
        """Tolerance grades of angle gauge blocks.

        The accuracy of each grade, with its source.

        Args:
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `timeout_seconds`. [second, over 0, at most 86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.BlockAngleGradeListAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.blocks.list_angle_grades()
        """
        return self._sender.send(
            _LIST_ANGLE_GRADES,
            {},
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def list_angle_sets(
        self,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.BlockAngleSetListAnswer:
        """Built-in sets of angle gauge blocks.

        Every block of each set, with its source.

        Args:
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `timeout_seconds`. [second, over 0, at most 86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.BlockAngleSetListAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.blocks.list_angle_sets()
        """
        return self._sender.send(
            _LIST_ANGLE_SETS,
            {},
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def list_flatness_grades(
        self,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.BlockFlatnessListAnswer:
        """Flatness of gauge blocks.

        Flatness of the measuring faces of each grade, by range of sizes. Parallelism is the
        variation in length: `GET /v1/blocks/grades`.

        Args:
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `timeout_seconds`. [second, over 0, at most 86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.BlockFlatnessListAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.blocks.list_flatness_grades()
        """
        return self._sender.send(
            _LIST_FLATNESS_GRADES,
            {},
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def list_grades(
        self,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.BlockGradeListAnswer:
        """Tolerance grades of gauge blocks.

        Limit deviation and variation in length of each grade, by range of sizes.

        Args:
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `timeout_seconds`. [second, over 0, at most 86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.BlockGradeListAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.blocks.list_grades()
        """
        return self._sender.send(
            _LIST_GRADES,
            {},
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def list_materials(
        self,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.BlockMaterialListAnswer:
        """Materials of blocks and plates.

        Expansion near 20 °C (ISO 1) of each, near-zero glass-ceramic and quartz too.

        Args:
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `timeout_seconds`. [second, over 0, at most 86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.BlockMaterialListAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.blocks.list_materials()
        """
        return self._sender.send(
            _LIST_MATERIALS,
            {},
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def list_sets(
        self,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.BlockSetListAnswer:
        """Built-in sets of gauge blocks.

        Sets by count and series, each with its source. No standard fixes the composition of a set:
        check it against your box.

        Args:
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `timeout_seconds`. [second, over 0, at most 86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.BlockSetListAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.blocks.list_sets()
        """
        return self._sender.send(
            _LIST_SETS,
            {},
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def since(
        self,
        *,
        units: Literal["in", "mm"],
        size: float,
        deviation: float,
        years_since: float,
        expanded_uncertainty: float | None = None,
        drift_per_year: float = 0.0,
        drift_error_limit_per_year: float | None = None,
        stability: Literal["grades-k-and-0", "grades-1-and-2"] | None = None,
        material: Literal[
            "steel",
            "tungsten-carbide",
            "chromium-carbide",
            "ceramic",
            "glass-ceramic",
            "fused-quartz",
        ] = "steel",
        temperature_celsius: float | None = None,
        temperature_error_limit_celsius: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.BlockSinceAnswer:
        """A calibrated block today.

        A block's length from its certificate, the drift since and its temperature, with all three
        in one budget.

        Args:
            units: Unit of every length here and in the answer.
            size: Nominal size of the block. [length, 1e-06 to 10000]
            deviation: Deviation by the certificate: actual less nominal, at 20 °C. [length, -10000
                to 10000]
            years_since: Years since it was calibrated. [year, 0 to 100]
            expanded_uncertainty: Expanded uncertainty (k = 2) of that. [length, 0 to 10000]
            drift_per_year: Change a year as earlier certificates show it; 0 where they show none.
                [length, -10000 to 10000]
            drift_error_limit_per_year: Largest error ± of that change a year. [length, 0 to 10000]
            stability: In its place: what its standard allows the block to change.
            material: Material of the block.
            temperature_celsius: Temperature of the block; absent, its length at 20 °C is not known.
                [°C, -40 to 150]
            temperature_error_limit_celsius: Largest error ± of that, in kelvins. [°C, 0 to 50]
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `timeout_seconds`. [second, over 0, at most 86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.BlockSinceAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.blocks.since(units="mm", size=100, deviation=0.00012,
                expanded_uncertainty=6e-05, years_since=2, stability="grades-k-and-0",
                temperature_celsius=20.5, temperature_error_limit_celsius=0.2)
        """
        return self._sender.send(
            _SINCE,
            {
                "units": units,
                "size": size,
                "deviation": deviation,
                "expanded_uncertainty": expanded_uncertainty,
                "years_since": years_since,
                "drift_per_year": drift_per_year,
                "drift_error_limit_per_year": drift_error_limit_per_year,
                "stability": stability,
                "material": material,
                "temperature_celsius": temperature_celsius,
                "temperature_error_limit_celsius": temperature_error_limit_celsius,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def stack(
        self,
        *,
        units: Literal["in", "mm"],
        height: float,
        set: str | None = None,
        sizes: Sequence[float] | None = None,
        box: Sequence[models.BlockOwned] | None = None,
        missing: Sequence[float] | None = None,
        in_use: Sequence[float] | None = None,
        grade: str | None = None,
        wear_ends: Literal["none", "one-end", "both-ends"] = "none",
        wear_block_size: float | None = None,
        max_blocks: int = 6,
        tolerance: float | None = None,
        aim: Literal["nominal", "actual"] = "nominal",
        prefer: Literal[
            "large-blocks", "fewer-small-blocks", "least-wear", "least-uncertainty"
        ] = "large-blocks",
        max_alternatives: int = 0,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.BlockStackAnswer:
        """Stack of gauge blocks.

        The fewest gauge blocks that build a height, from a built-in set or from the blocks that the
        shop has, proved: no smaller stack exists; or the stack whose measured height comes nearest.

        Largest request: 500 blocks; a table of 12 million heights and 600 million heights times
        blocks, or else every pair or triple of the blocks; 12 million blocks tried in partial
        stacks for preference and alternatives.

        Args:
            units: Unit of every length here and in the answer.
            height: Height to build, in `units`; it is taken to the nearest 0.1 nm. [length, 1e-06
                to 10000]
            set: Built-in set, as `GET /v1/blocks/sets` lists it. One of `set`, `sizes`, `box` is
                needed. [1 to 60 characters]
            sizes: Nominal sizes of the blocks that the shop has, each once, in `units`. Where there
                are several of a size, send `box` with its `count`. [1 to 500 entries, each length,
                1e-06 to 10000]
            box: The shop's own blocks with what is known of them. [1 to 500 entries]
            missing: Sizes that are missing from the set, one entry a block, in `units`. [at most
                500 entries, each length, 1e-06 to 10000]
            in_use: Sizes that are in use elsewhere, one entry a block, in `units`. [at most 500
                entries, each length, 1e-06 to 10000]
            grade: Tolerance grade of blocks without a calibration, as `GET /v1/blocks/grades` lists
                it, for the height's uncertainty. [1 to 60 characters]
            wear_ends: At which ends of every stack wear blocks go.
            wear_block_size: Nominal size of a wear block, in `units`. Absent: that of the set's or
                box's own wear blocks; of several sizes the one of which there are most, of equally
                many the largest, and no other is tried. [length, 1e-06 to 10000]
            max_blocks: Most blocks to wring in one stack, wear blocks included. [count, 1 to 8]
            tolerance: Heights within ± this will do, in `units`: the fewest blocks that come within
                it, and of these the nearest. Absent: the height itself by nominal sizes, or the
                nearest by measured ones. [length, 0 to 10000]
            aim: `nominal`: the nominal sizes sum up to the height. `actual`: the stack whose actual
                height, measured deviations included, comes nearest; exact for up to 6 blocks out of
                200 (8 out of 30), and for up to 4 out of more.
            prefer: Which of several stacks of as few blocks: `large-blocks`, the largest block as
                large as can be, then the next; `fewer-small-blocks`, the thinnest block as thick as
                can be, then the next; `least-wear`, blocks wrung least often; `least-uncertainty`.
                With `aim` `actual` the nearest comes first, whatever is preferred.
            max_alternatives: How many further stacks to give, the next best ones, all different.
                [count, 0 to 20]
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `heavy_timeout_seconds`. [second, over 0, at most
                86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.BlockStackAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.blocks.stack(units="in", height=2.5, set="inch-81")
        """
        return self._sender.send(
            _STACK,
            {
                "set": set,
                "sizes": sizes,
                "box": box,
                "missing": missing,
                "in_use": in_use,
                "units": units,
                "grade": grade,
                "wear_ends": wear_ends,
                "wear_block_size": wear_block_size,
                "height": height,
                "max_blocks": max_blocks,
                "tolerance": tolerance,
                "aim": aim,
                "prefer": prefer,
                "max_alternatives": max_alternatives,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def stacks(
        self,
        *,
        units: Literal["in", "mm"],
        heights: Sequence[models.BlockHeightWanted],
        set: str | None = None,
        sizes: Sequence[float] | None = None,
        box: Sequence[models.BlockOwned] | None = None,
        missing: Sequence[float] | None = None,
        in_use: Sequence[float] | None = None,
        grade: str | None = None,
        wear_ends: Literal["none", "one-end", "both-ends"] = "none",
        wear_block_size: float | None = None,
        max_blocks: int = 5,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.BlockStacksAnswer:
        """Several stacks at once.

        Stacks for several heights from one box, no block used twice, the fewest blocks overall; or
        why they cannot all stand at once, and the most of them that can.

        Largest request: 12 heights from 500 blocks; 8 million blocks tried to list stacks and 60
        million comparisons of stacks, then the best found and the proved gap.

        Args:
            units: Unit of every length here and in the answer.
            heights: The heights, the most important first: where not all can stand, the earlier
                ones are kept. [1 to 12 entries]
            set: Built-in set, as `GET /v1/blocks/sets` lists it. One of `set`, `sizes`, `box` is
                needed. [1 to 60 characters]
            sizes: Nominal sizes of the blocks that the shop has, each once, in `units`. Where there
                are several of a size, send `box` with its `count`. [1 to 500 entries, each length,
                1e-06 to 10000]
            box: The shop's own blocks with what is known of them. [1 to 500 entries]
            missing: Sizes that are missing from the set, one entry a block, in `units`. [at most
                500 entries, each length, 1e-06 to 10000]
            in_use: Sizes that are in use elsewhere, one entry a block, in `units`. [at most 500
                entries, each length, 1e-06 to 10000]
            grade: Tolerance grade of blocks without a calibration, as `GET /v1/blocks/grades` lists
                it, for the height's uncertainty. [1 to 60 characters]
            wear_ends: At which ends of every stack wear blocks go.
            wear_block_size: Nominal size of a wear block, in `units`. Absent: that of the set's or
                box's own wear blocks; of several sizes the one of which there are most, of equally
                many the largest, and no other is tried. [length, 1e-06 to 10000]
            max_blocks: Most blocks in each stack, wear blocks included. [count, 1 to 8]
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `heavy_timeout_seconds`. [second, over 0, at most
                86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.BlockStacksAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.blocks.stacks(units="in", set="inch-81",
                heights=[models.BlockHeightWanted(name="base", height=2.2361),
                models.BlockHeightWanted(name="top", height=2.5)])
        """
        return self._sender.send(
            _STACKS,
            {
                "set": set,
                "sizes": sizes,
                "box": box,
                "missing": missing,
                "in_use": in_use,
                "units": units,
                "grade": grade,
                "wear_ends": wear_ends,
                "wear_block_size": wear_block_size,
                "heights": heights,
                "max_blocks": max_blocks,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )


class AsyncBlocksCalls:
    """Calls of the topic `blocks`, to be awaited."""

    def __init__(self, sender: AsyncSender) -> None:
        self._sender = sender

    async def angle_stack(
        self,
        *,
        angle: float | str,
        set: str | None = None,
        box: Sequence[models.BlockAngleOwned] | None = None,
        with_square_block: bool = False,
        max_blocks: int = 22,
        tolerance_arcsec: float = 0.0,
        max_alternatives: int = 0,
        grade: str | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.BlockAngleStackAnswer:
        """Stack of angle gauge blocks. As `Halfangle.blocks.angle_stack`, to be awaited."""
        return await self._sender.send(
            _ANGLE_STACK,
            {
                "angle": angle,
                "set": set,
                "box": box,
                "with_square_block": with_square_block,
                "max_blocks": max_blocks,
                "tolerance_arcsec": tolerance_arcsec,
                "max_alternatives": max_alternatives,
                "grade": grade,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def budget(
        self,
        *,
        units: Literal["in", "mm"],
        blocks: Sequence[float] | None = None,
        calibrated_blocks: Sequence[models.BlockOwned] | None = None,
        grade: str | None = None,
        block_material: Literal[
            "steel",
            "tungsten-carbide",
            "chromium-carbide",
            "ceramic",
            "glass-ceramic",
            "fused-quartz",
        ] = "steel",
        plate_material: Literal[
            "steel",
            "tungsten-carbide",
            "chromium-carbide",
            "ceramic",
            "glass-ceramic",
            "fused-quartz",
        ]
        | None = None,
        temperature_celsius: float | None = None,
        temperature_error_limit_celsius: float | None = None,
        temperature_difference_celsius: float | None = None,
        film_nanometres: float = 0.0,
        film_error_limit_nanometres: float = 10.0,
        wrung_to_base: bool = True,
        coverage_factor: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.BlockBudgetAnswer:
        """Error budget of a stack. As `Halfangle.blocks.budget`, to be awaited."""
        return await self._sender.send(
            _BUDGET,
            {
                "units": units,
                "blocks": blocks,
                "calibrated_blocks": calibrated_blocks,
                "grade": grade,
                "block_material": block_material,
                "plate_material": plate_material,
                "temperature_celsius": temperature_celsius,
                "temperature_error_limit_celsius": temperature_error_limit_celsius,
                "temperature_difference_celsius": temperature_difference_celsius,
                "film_nanometres": film_nanometres,
                "film_error_limit_nanometres": film_error_limit_nanometres,
                "wrung_to_base": wrung_to_base,
                "coverage_factor": coverage_factor,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def calibration(
        self,
        *,
        units: Literal["in", "mm"],
        standard_length: float,
        differences: Sequence[float],
        size: float | None = None,
        standard_expanded_uncertainty: float | None = None,
        standard_coverage_factor: float = 2.0,
        standard_degrees_of_freedom: float | None = None,
        repeatability: float | None = None,
        repeatability_degrees_of_freedom: float | None = None,
        comparator_random_uncertainty: float | None = None,
        comparator_random_degrees_of_freedom: float | None = None,
        comparator_systematic_uncertainty: float | None = None,
        comparator_systematic_degrees_of_freedom: float | None = None,
        expansion_coefficient: float = 1.15e-05,
        expansion_coefficient_error_limit: float | None = None,
        expansion_difference: float | None = None,
        expansion_difference_inexact_percent: float = 0.0,
        temperature_celsius: float | None = None,
        temperature_standard_uncertainty_celsius: float | None = None,
        temperature_cycle_celsius: float | None = None,
        temperature_difference_celsius: float | None = None,
        temperature_difference_inexact_percent: float = 0.0,
        coverage_probability: float = 0.95,
        trials: int = 50000,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.BlockCalibrationAnswer:
        """As `Halfangle.blocks.calibration`, to be awaited."""
        return await self._sender.send(
            _CALIBRATION,
            {
                "units": units,
                "size": size,
                "standard_length": standard_length,
                "standard_expanded_uncertainty": standard_expanded_uncertainty,
                "standard_coverage_factor": standard_coverage_factor,
                "standard_degrees_of_freedom": standard_degrees_of_freedom,
                "differences": differences,
                "repeatability": repeatability,
                "repeatability_degrees_of_freedom": repeatability_degrees_of_freedom,
                "comparator_random_uncertainty": comparator_random_uncertainty,
                "comparator_random_degrees_of_freedom": comparator_random_degrees_of_freedom,
                "comparator_systematic_uncertainty": comparator_systematic_uncertainty,
                "comparator_systematic_degrees_of_freedom": comparator_systematic_degrees_of_freedom,
                "expansion_coefficient": expansion_coefficient,
                "expansion_coefficient_error_limit": expansion_coefficient_error_limit,
                "expansion_difference": expansion_difference,
                "expansion_difference_inexact_percent": expansion_difference_inexact_percent,
                "temperature_celsius": temperature_celsius,
                "temperature_standard_uncertainty_celsius": temperature_standard_uncertainty_celsius,
                "temperature_cycle_celsius": temperature_cycle_celsius,
                "temperature_difference_celsius": temperature_difference_celsius,
                "temperature_difference_inexact_percent": temperature_difference_inexact_percent,
                "coverage_probability": coverage_probability,
                "trials": trials,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def check(
        self,
        *,
        units: Literal["in", "mm"],
        blocks: Sequence[float],
        set: str | None = None,
        sizes: Sequence[float] | None = None,
        box: Sequence[models.BlockOwned] | None = None,
        missing: Sequence[float] | None = None,
        in_use: Sequence[float] | None = None,
        wear_blocks: Sequence[float] | None = None,
        height: float | None = None,
        angle: float | str | None = None,
        center_distance: float | None = None,
        low_stack: float | None = None,
        low_blocks: Sequence[float] | None = None,
        offset: float = 0.0,
        measured_height: float | None = None,
        measured_angle: float | str | None = None,
        measurement_error_limit: float | None = None,
        measurement_error_limit_arcsec: float | None = None,
        grade: str | None = None,
        max_explanations: int = 5,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.BlockCheckAnswer:
        """Check of a stack as wrung. As `Halfangle.blocks.check`, to be awaited."""
        return await self._sender.send(
            _CHECK,
            {
                "set": set,
                "sizes": sizes,
                "box": box,
                "missing": missing,
                "in_use": in_use,
                "units": units,
                "blocks": blocks,
                "wear_blocks": wear_blocks,
                "height": height,
                "angle": angle,
                "center_distance": center_distance,
                "low_stack": low_stack,
                "low_blocks": low_blocks,
                "offset": offset,
                "measured_height": measured_height,
                "measured_angle": measured_angle,
                "measurement_error_limit": measurement_error_limit,
                "measurement_error_limit_arcsec": measurement_error_limit_arcsec,
                "grade": grade,
                "max_explanations": max_explanations,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def day(
        self,
        *,
        units: Literal["in", "mm"],
        jobs: Sequence[models.BlockDayJob],
        set: str | None = None,
        sizes: Sequence[float] | None = None,
        box: Sequence[models.BlockOwned] | None = None,
        missing: Sequence[float] | None = None,
        in_use: Sequence[float] | None = None,
        grade: str | None = None,
        wear_ends: Literal["none", "one-end", "both-ends"] = "none",
        wear_block_size: float | None = None,
        max_blocks: int = 5,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.BlockDayAnswer:
        """A day's settings from one box. As `Halfangle.blocks.day`, to be awaited."""
        return await self._sender.send(
            _DAY,
            {
                "set": set,
                "sizes": sizes,
                "box": box,
                "missing": missing,
                "in_use": in_use,
                "units": units,
                "grade": grade,
                "wear_ends": wear_ends,
                "wear_block_size": wear_block_size,
                "jobs": jobs,
                "max_blocks": max_blocks,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def get_angle_grade(
        self,
        key: str,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.BlockAngleGradeEntryAnswer:
        """As `Halfangle.blocks.get_angle_grade`, to be awaited."""
        return await self._sender.send(
            _GET_ANGLE_GRADE,
            {
                "key": key,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def get_angle_set(
        self,
        key: str,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.BlockAngleSetEntryAnswer:
        """As `Halfangle.blocks.get_angle_set`, to be awaited."""
        return await self._sender.send(
            _GET_ANGLE_SET,
            {
                "key": key,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def get_flatness_grade(
        self,
        key: str,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.BlockFlatnessEntryAnswer:
        """As `Halfangle.blocks.get_flatness_grade`, to be awaited."""
        return await self._sender.send(
            _GET_FLATNESS_GRADE,
            {
                "key": key,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def get_grade(
        self,
        key: str,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.BlockGradeEntryAnswer:
        """As `Halfangle.blocks.get_grade`, to be awaited."""
        return await self._sender.send(
            _GET_GRADE,
            {
                "key": key,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def get_material(
        self,
        key: str,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.BlockMaterialEntryAnswer:
        """As `Halfangle.blocks.get_material`, to be awaited."""
        return await self._sender.send(
            _GET_MATERIAL,
            {
                "key": key,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def get_set(
        self,
        key: str,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.BlockSetDetailAnswer:
        """Built-in sets of gauge blocks: one set. As `Halfangle.blocks.get_set`, to be awaited."""
        return await self._sender.send(
            _GET_SET,
            {
                "key": key,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def list_angle_grades(
        self,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.BlockAngleGradeListAnswer:
        """As `Halfangle.blocks.list_angle_grades`, to be awaited."""
        return await self._sender.send(
            _LIST_ANGLE_GRADES,
            {},
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def list_angle_sets(
        self,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.BlockAngleSetListAnswer:
        """As `Halfangle.blocks.list_angle_sets`, to be awaited."""
        return await self._sender.send(
            _LIST_ANGLE_SETS,
            {},
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def list_flatness_grades(
        self,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.BlockFlatnessListAnswer:
        """Flatness of gauge blocks. As `Halfangle.blocks.list_flatness_grades`, to be awaited."""
        return await self._sender.send(
            _LIST_FLATNESS_GRADES,
            {},
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def list_grades(
        self,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.BlockGradeListAnswer:
        """Tolerance grades of gauge blocks. As `Halfangle.blocks.list_grades`, to be awaited."""
        return await self._sender.send(
            _LIST_GRADES,
            {},
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def list_materials(
        self,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.BlockMaterialListAnswer:
        """Materials of blocks and plates. As `Halfangle.blocks.list_materials`, to be awaited."""
        return await self._sender.send(
            _LIST_MATERIALS,
            {},
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def list_sets(
        self,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.BlockSetListAnswer:
        """Built-in sets of gauge blocks. As `Halfangle.blocks.list_sets`, to be awaited."""
        return await self._sender.send(
            _LIST_SETS,
            {},
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def since(
        self,
        *,
        units: Literal["in", "mm"],
        size: float,
        deviation: float,
        years_since: float,
        expanded_uncertainty: float | None = None,
        drift_per_year: float = 0.0,
        drift_error_limit_per_year: float | None = None,
        stability: Literal["grades-k-and-0", "grades-1-and-2"] | None = None,
        material: Literal[
            "steel",
            "tungsten-carbide",
            "chromium-carbide",
            "ceramic",
            "glass-ceramic",
            "fused-quartz",
        ] = "steel",
        temperature_celsius: float | None = None,
        temperature_error_limit_celsius: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.BlockSinceAnswer:
        """A calibrated block today. As `Halfangle.blocks.since`, to be awaited."""
        return await self._sender.send(
            _SINCE,
            {
                "units": units,
                "size": size,
                "deviation": deviation,
                "expanded_uncertainty": expanded_uncertainty,
                "years_since": years_since,
                "drift_per_year": drift_per_year,
                "drift_error_limit_per_year": drift_error_limit_per_year,
                "stability": stability,
                "material": material,
                "temperature_celsius": temperature_celsius,
                "temperature_error_limit_celsius": temperature_error_limit_celsius,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def stack(
        self,
        *,
        units: Literal["in", "mm"],
        height: float,
        set: str | None = None,
        sizes: Sequence[float] | None = None,
        box: Sequence[models.BlockOwned] | None = None,
        missing: Sequence[float] | None = None,
        in_use: Sequence[float] | None = None,
        grade: str | None = None,
        wear_ends: Literal["none", "one-end", "both-ends"] = "none",
        wear_block_size: float | None = None,
        max_blocks: int = 6,
        tolerance: float | None = None,
        aim: Literal["nominal", "actual"] = "nominal",
        prefer: Literal[
            "large-blocks", "fewer-small-blocks", "least-wear", "least-uncertainty"
        ] = "large-blocks",
        max_alternatives: int = 0,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.BlockStackAnswer:
        """Stack of gauge blocks. As `Halfangle.blocks.stack`, to be awaited."""
        return await self._sender.send(
            _STACK,
            {
                "set": set,
                "sizes": sizes,
                "box": box,
                "missing": missing,
                "in_use": in_use,
                "units": units,
                "grade": grade,
                "wear_ends": wear_ends,
                "wear_block_size": wear_block_size,
                "height": height,
                "max_blocks": max_blocks,
                "tolerance": tolerance,
                "aim": aim,
                "prefer": prefer,
                "max_alternatives": max_alternatives,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def stacks(
        self,
        *,
        units: Literal["in", "mm"],
        heights: Sequence[models.BlockHeightWanted],
        set: str | None = None,
        sizes: Sequence[float] | None = None,
        box: Sequence[models.BlockOwned] | None = None,
        missing: Sequence[float] | None = None,
        in_use: Sequence[float] | None = None,
        grade: str | None = None,
        wear_ends: Literal["none", "one-end", "both-ends"] = "none",
        wear_block_size: float | None = None,
        max_blocks: int = 5,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.BlockStacksAnswer:
        """Several stacks at once. As `Halfangle.blocks.stacks`, to be awaited."""
        return await self._sender.send(
            _STACKS,
            {
                "set": set,
                "sizes": sizes,
                "box": box,
                "missing": missing,
                "in_use": in_use,
                "units": units,
                "grade": grade,
                "wear_ends": wear_ends,
                "wear_block_size": wear_block_size,
                "heights": heights,
                "max_blocks": max_blocks,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )
