# Generated from openapi/openapi.json by openapi/generate.py. Do not edit.
"""Calls of the topic `measuring`."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Any, Literal

from halfangle_client.endpoint import AsyncSender, Endpoint, Sender

if TYPE_CHECKING:
    from halfangle_client.generated import models

_BORE: Endpoint[models.MeasuringBoreAnswer] = Endpoint(
    name="measuring.bore",
    method="POST",
    path="/v1/measuring/bore",
    answer="MeasuringBoreAnswer",
    accept="application/json",
    sends="application/json",
    heavy=True,
)
_CHORD: Endpoint[models.MeasuringChordAnswer] = Endpoint(
    name="measuring.chord",
    method="POST",
    path="/v1/measuring/chord",
    answer="MeasuringChordAnswer",
    accept="application/json",
    sends="application/json",
    heavy=True,
)
_LEVER_TIP: Endpoint[models.MeasuringLeverTipAnswer] = Endpoint(
    name="measuring.lever_tip",
    method="POST",
    path="/v1/measuring/lever-tip",
    answer="MeasuringLeverTipAnswer",
    accept="application/json",
    sends="application/json",
)
_SMALL_ANGLE: Endpoint[models.MeasuringSmallAngleAnswer] = Endpoint(
    name="measuring.small_angle",
    method="POST",
    path="/v1/measuring/small-angle",
    answer="MeasuringSmallAngleAnswer",
    accept="application/json",
    sends="application/json",
)
_SQUARE: Endpoint[models.MeasuringSquareAnswer] = Endpoint(
    name="measuring.square",
    method="POST",
    path="/v1/measuring/square",
    answer="MeasuringSquareAnswer",
    accept="application/json",
    sends="application/json",
)

ENDPOINTS: tuple[Endpoint[Any], ...] = (
    _BORE,
    _CHORD,
    _LEVER_TIP,
    _SMALL_ANGLE,
    _SQUARE,
)


class MeasuringCalls:
    """Calls of the topic `measuring`."""

    def __init__(self, sender: Sender) -> None:
        self._sender = sender

    def bore(
        self,
        *,
        units: Literal["in", "mm"],
        lower_ball_diameter: float,
        upper_ball_diameter: float,
        lower_ball_depth: float,
        upper_ball_depth: float,
        formats: Sequence[Literal["svg"]] | None = None,
        measure_error_limit: float | None = None,
        roll_error_limit: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.MeasuringBoreAnswer:
        """Bore over two touching balls.

        Diameter of a straight or recessed bore, wider than what reaches it, from the depths of two
        balls that touch one another and opposite walls.

        Args:
            units: Unit of every length here and in the answer.
            lower_ball_diameter: Diameter of the lower ball. [length, 1e-06 to 10000]
            upper_ball_diameter: Diameter of the ball that rests on it. [length, 1e-06 to 10000]
            lower_ball_depth: Depth of the lower ball's top below the face; negative above it.
                [length, -10000 to 10000]
            upper_ball_depth: Depth of the upper ball's top below the face; negative above it.
                [length, -10000 to 10000]
            formats: `svg` for a drawing. Absent: none. [1 to 2 entries]
            measure_error_limit: Largest error of each measure, plus or minus. [length, 0 to 10000]
            roll_error_limit: Largest error of a roll's or ball's diameter, plus or minus. [length,
                0 to 10000]
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `heavy_timeout_seconds`. [second, over 0, at most
                86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.MeasuringBoreAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.measuring.bore(units="mm", lower_ball_diameter=60, upper_ball_diameter=40,
                lower_ball_depth=35.55, upper_ball_depth=20.55, measure_error_limit=0.005,
                roll_error_limit=0.0005, formats=["svg"])
        """
        return self._sender.send(
            _BORE,
            {
                "formats": formats,
                "units": units,
                "lower_ball_diameter": lower_ball_diameter,
                "upper_ball_diameter": upper_ball_diameter,
                "lower_ball_depth": lower_ball_depth,
                "upper_ball_depth": upper_ball_depth,
                "measure_error_limit": measure_error_limit,
                "roll_error_limit": roll_error_limit,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def chord(
        self,
        *,
        units: Literal["in", "mm"],
        first_center_distance: float,
        second_center_distance: float,
        first_roll_diameter: float,
        second_roll_diameter: float,
        measure_is: Literal["over-both-rolls", "between-rolls"],
        formats: Sequence[Literal["svg"]] | None = None,
        angle: float | str | None = None,
        measure: float | None = None,
        measure_error_limit: float | None = None,
        roll_error_limit: float | None = None,
        center_distance_error_limit: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.MeasuringChordAnswer:
        """Angle by the chord over rolls.

        Angle between two arms from the measure over or between their rolls, or the measure to set;
        past 45°, where a sine bar loses its edge, a chord still turns little for an error.

        Args:
            units: Unit of every length here and in the answer.
            first_center_distance: Pivot's center to the center of the first arm's roll, in `units`.
                [length, 1e-06 to 10000]
            second_center_distance: The same of the second arm, in `units`. [length, 1e-06 to 10000]
            first_roll_diameter: Diameter of the first arm's roll. [length, 1e-06 to 10000]
            second_roll_diameter: Diameter of the second arm's roll. [length, 1e-06 to 10000]
            measure_is: `over-both-rolls`: outside; `between-rolls`: the gap, as blocks fill it.
            formats: `svg` for a drawing. Absent: none. [1 to 2 entries]
            angle: Angle between the arms, in degrees. Either this or `measure`. [degree, over 0,
                under 180; or text in degrees, minutes, seconds]
            measure: Measure with the rolls, in `units`. [length, 1e-06 to 10000]
            measure_error_limit: Largest error of each measure, plus or minus. [length, 0 to 10000]
            roll_error_limit: Largest error of a roll's or ball's diameter, plus or minus. [length,
                0 to 10000]
            center_distance_error_limit: Largest error ± of each center distance, in `units`.
                [length, 0 to 10000]
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `heavy_timeout_seconds`. [second, over 0, at most
                86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.MeasuringChordAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.measuring.chord(units="in", first_center_distance=5,
                second_center_distance=5, first_roll_diameter=1, second_roll_diameter=1,
                measure_is="between-rolls", angle=75, roll_error_limit=5e-05,
                center_distance_error_limit=0.0002, formats=["svg"])
        """
        return self._sender.send(
            _CHORD,
            {
                "formats": formats,
                "units": units,
                "first_center_distance": first_center_distance,
                "second_center_distance": second_center_distance,
                "first_roll_diameter": first_roll_diameter,
                "second_roll_diameter": second_roll_diameter,
                "measure_is": measure_is,
                "angle": angle,
                "measure": measure,
                "measure_error_limit": measure_error_limit,
                "roll_error_limit": roll_error_limit,
                "center_distance_error_limit": center_distance_error_limit,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def lever_tip(
        self,
        *,
        units: Literal["in", "mm"],
        reading: float,
        tip_form: Literal["ball", "cylinder", "pear"],
        tip_angle: float | str,
        lever_length: float | None = None,
        indicating_error_limit: float | None = None,
        tip_angle_error_limit: float | str | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.MeasuringLeverTipAnswer:
        """Lever indicator by its tip.

        What a lever indicator's reading is worth at the angle of its lever: a ball or cylinder
        reads too much by the cosine, a pear corrects itself within its range.

        Args:
            units: Unit of every length here and in the answer.
            reading: Difference read on the dial, in `units`; positive where the work rises.
                [length, -10000 to 10000]
            tip_form: Form of the tip: a `ball`, a `cylinder` across the lever, or a `pear`
                (involute) that corrects the angle by itself.
            tip_angle: Angle of the lever to the surface as the reading begins, in degrees. [degree,
                0 to 75; or text in degrees, minutes, seconds]
            lever_length: Pivot to the middle of the tip, in `units`: the angle then changes over
                the reading, and the movement is exact. Absent: the angle is taken to stay. [length,
                1e-06 to 10000]
            indicating_error_limit: Largest error ± of the reading, in `units`. [length, 0 to 10000]
            tip_angle_error_limit: Largest error ± of the tip's angle, in degrees. [degree, 0 to 45;
                or text in degrees, minutes, seconds]
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `timeout_seconds`. [second, over 0, at most 86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.MeasuringLeverTipAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.measuring.lever_tip(units="mm", reading=0.2, tip_form="ball", tip_angle=30,
                lever_length=15, indicating_error_limit=0.002, tip_angle_error_limit=5)
        """
        return self._sender.send(
            _LEVER_TIP,
            {
                "units": units,
                "reading": reading,
                "tip_form": tip_form,
                "tip_angle": tip_angle,
                "lever_length": lever_length,
                "indicating_error_limit": indicating_error_limit,
                "tip_angle_error_limit": tip_angle_error_limit,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def small_angle(
        self,
        *,
        units: Literal["in", "mm"],
        tilt_reading: float,
        tilt_reading_in: Literal["arcsecond", "microradian", "mm-per-m", "divisions"],
        division_value: float | None = None,
        division_unit: Literal["arcsecond", "microradian", "mm-per-m"] | None = None,
        turned_tilt_reading: float | None = None,
        tilt_reading_error_limit: float | None = None,
        base_length: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.MeasuringSmallAngleAnswer:
        """Small angle by autocollimator or level.

        A reading in arc-seconds, mm/m, microradians or divisions as an angle, and the height that
        it makes over a base; a level turned end for end tells its own zero error.

        Args:
            units: Unit of every length here and in the answer.
            tilt_reading: Reading, in what `tilt_reading_in` says; up toward the base's far end is
                positive. [stated, -1000000 to 1000000]
            tilt_reading_in: What the reading is in. Of an autocollimator the angle of the mirror.
            division_value: What one division stands for, in `division_unit`: the sensitivity of a
                level. [stated, 1e-06 to 100000]
            division_unit: Unit of `division_value`.
            turned_tilt_reading: Reading with the level turned end for end on the same place, signed
                as seen on the level: its own zero error is then taken out. [stated, -1000000 to
                1000000]
            tilt_reading_error_limit: Largest error ± of each reading, in what it is in. [stated, 0
                to 1000000]
            base_length: Length over which the height is wanted, in `units`: between the feet.
                [length, 1e-06 to 10000]
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `timeout_seconds`. [second, over 0, at most 86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.MeasuringSmallAngleAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.measuring.small_angle(units="mm", tilt_reading=2.5,
                tilt_reading_in="divisions", division_value=0.02, division_unit="mm-per-m",
                tilt_reading_error_limit=0.5, base_length=200)
        """
        return self._sender.send(
            _SMALL_ANGLE,
            {
                "units": units,
                "tilt_reading": tilt_reading,
                "tilt_reading_in": tilt_reading_in,
                "division_value": division_value,
                "division_unit": division_unit,
                "turned_tilt_reading": turned_tilt_reading,
                "tilt_reading_error_limit": tilt_reading_error_limit,
                "base_length": base_length,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def square(
        self,
        *,
        units: Literal["in", "mm"],
        first_rise: float,
        second_rise: float,
        indicated_height: float,
        indicating_error_limit: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.MeasuringSquareAnswer:
        """Square by reversal.

        Errors of a square and of the column that it is compared with, from readings on either side
        of the column: no true square is needed.

        Args:
            units: Unit of every length here and in the answer.
            first_rise: Reading at the top less reading at the bottom, in `units`; more is metal
                nearer to the indicator. [length, -10000 to 10000]
            second_rise: The same of the same face, the square moved to the other side of the column
                and the indicator turned round. [length, -10000 to 10000]
            indicated_height: Height between the two readings, in `units`. [length, 1e-06 to 10000]
            indicating_error_limit: Largest error ± of each rise that the indicator reads, in
                `units`. [length, 0 to 10000]
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `timeout_seconds`. [second, over 0, at most 86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.MeasuringSquareAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.measuring.square(units="in", first_rise=0.0006, second_rise=-0.0002,
                indicated_height=6, indicating_error_limit=5e-05)
        """
        return self._sender.send(
            _SQUARE,
            {
                "units": units,
                "first_rise": first_rise,
                "second_rise": second_rise,
                "indicated_height": indicated_height,
                "indicating_error_limit": indicating_error_limit,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )


class AsyncMeasuringCalls:
    """Calls of the topic `measuring`, to be awaited."""

    def __init__(self, sender: AsyncSender) -> None:
        self._sender = sender

    async def bore(
        self,
        *,
        units: Literal["in", "mm"],
        lower_ball_diameter: float,
        upper_ball_diameter: float,
        lower_ball_depth: float,
        upper_ball_depth: float,
        formats: Sequence[Literal["svg"]] | None = None,
        measure_error_limit: float | None = None,
        roll_error_limit: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.MeasuringBoreAnswer:
        """Bore over two touching balls. As `Halfangle.measuring.bore`, to be awaited."""
        return await self._sender.send(
            _BORE,
            {
                "formats": formats,
                "units": units,
                "lower_ball_diameter": lower_ball_diameter,
                "upper_ball_diameter": upper_ball_diameter,
                "lower_ball_depth": lower_ball_depth,
                "upper_ball_depth": upper_ball_depth,
                "measure_error_limit": measure_error_limit,
                "roll_error_limit": roll_error_limit,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def chord(
        self,
        *,
        units: Literal["in", "mm"],
        first_center_distance: float,
        second_center_distance: float,
        first_roll_diameter: float,
        second_roll_diameter: float,
        measure_is: Literal["over-both-rolls", "between-rolls"],
        formats: Sequence[Literal["svg"]] | None = None,
        angle: float | str | None = None,
        measure: float | None = None,
        measure_error_limit: float | None = None,
        roll_error_limit: float | None = None,
        center_distance_error_limit: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.MeasuringChordAnswer:
        """Angle by the chord over rolls. As `Halfangle.measuring.chord`, to be awaited."""
        return await self._sender.send(
            _CHORD,
            {
                "formats": formats,
                "units": units,
                "first_center_distance": first_center_distance,
                "second_center_distance": second_center_distance,
                "first_roll_diameter": first_roll_diameter,
                "second_roll_diameter": second_roll_diameter,
                "measure_is": measure_is,
                "angle": angle,
                "measure": measure,
                "measure_error_limit": measure_error_limit,
                "roll_error_limit": roll_error_limit,
                "center_distance_error_limit": center_distance_error_limit,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def lever_tip(
        self,
        *,
        units: Literal["in", "mm"],
        reading: float,
        tip_form: Literal["ball", "cylinder", "pear"],
        tip_angle: float | str,
        lever_length: float | None = None,
        indicating_error_limit: float | None = None,
        tip_angle_error_limit: float | str | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.MeasuringLeverTipAnswer:
        """Lever indicator by its tip. As `Halfangle.measuring.lever_tip`, to be awaited."""
        return await self._sender.send(
            _LEVER_TIP,
            {
                "units": units,
                "reading": reading,
                "tip_form": tip_form,
                "tip_angle": tip_angle,
                "lever_length": lever_length,
                "indicating_error_limit": indicating_error_limit,
                "tip_angle_error_limit": tip_angle_error_limit,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def small_angle(
        self,
        *,
        units: Literal["in", "mm"],
        tilt_reading: float,
        tilt_reading_in: Literal["arcsecond", "microradian", "mm-per-m", "divisions"],
        division_value: float | None = None,
        division_unit: Literal["arcsecond", "microradian", "mm-per-m"] | None = None,
        turned_tilt_reading: float | None = None,
        tilt_reading_error_limit: float | None = None,
        base_length: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.MeasuringSmallAngleAnswer:
        """As `Halfangle.measuring.small_angle`, to be awaited."""
        return await self._sender.send(
            _SMALL_ANGLE,
            {
                "units": units,
                "tilt_reading": tilt_reading,
                "tilt_reading_in": tilt_reading_in,
                "division_value": division_value,
                "division_unit": division_unit,
                "turned_tilt_reading": turned_tilt_reading,
                "tilt_reading_error_limit": tilt_reading_error_limit,
                "base_length": base_length,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def square(
        self,
        *,
        units: Literal["in", "mm"],
        first_rise: float,
        second_rise: float,
        indicated_height: float,
        indicating_error_limit: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.MeasuringSquareAnswer:
        """Square by reversal. As `Halfangle.measuring.square`, to be awaited."""
        return await self._sender.send(
            _SQUARE,
            {
                "units": units,
                "first_rise": first_rise,
                "second_rise": second_rise,
                "indicated_height": indicated_height,
                "indicating_error_limit": indicating_error_limit,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )
