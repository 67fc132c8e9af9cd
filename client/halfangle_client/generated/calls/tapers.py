# Generated from openapi/openapi.json by openapi/generate.py. Do not edit.
"""Calls of the topic `tapers`."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Any, Literal

from halfangle_client.endpoint import AsyncSender, Endpoint, Sender

if TYPE_CHECKING:
    from halfangle_client.generated import models

_ANGLE: Endpoint[models.TaperAngleAnswer] = Endpoint(
    name="tapers.angle",
    method="POST",
    path="/v1/tapers/angle",
    answer="TaperAngleAnswer",
    accept="application/json",
    sends="application/json",
)
_CLEAN_UP: Endpoint[models.TaperCleanUpAnswer] = Endpoint(
    name="tapers.clean_up",
    method="POST",
    path="/v1/tapers/clean-up",
    answer="TaperCleanUpAnswer",
    accept="application/json",
    sends="application/json",
)
_DOVETAIL_OVER_ROLLS: Endpoint[models.DovetailOverRollsAnswer] = Endpoint(
    name="tapers.dovetail_over_rolls",
    method="POST",
    path="/v1/tapers/dovetail-over-rolls",
    answer="DovetailOverRollsAnswer",
    accept="application/json",
    sends="application/json",
)
_GET_CONE_ANGLE_GRADE: Endpoint[models.TaperAngleGradeEntryAnswer] = Endpoint(
    name="tapers.get_cone_angle_grade",
    method="GET",
    path="/v1/tapers/cone-angle-grades/{key}",
    answer="TaperAngleGradeEntryAnswer",
    accept="application/json",
)
_GET_RATE: Endpoint[models.TaperRateEntryAnswer] = Endpoint(
    name="tapers.get_rate",
    method="GET",
    path="/v1/tapers/rates/{key}",
    answer="TaperRateEntryAnswer",
    accept="application/json",
)
_GET_STANDARD: Endpoint[models.StandardTaperEntryAnswer] = Endpoint(
    name="tapers.get_standard",
    method="GET",
    path="/v1/tapers/standard/{key}",
    answer="StandardTaperEntryAnswer",
    accept="application/json",
)
_IDENTIFY: Endpoint[models.TaperIdentifyAnswer] = Endpoint(
    name="tapers.identify",
    method="POST",
    path="/v1/tapers/identify",
    answer="TaperIdentifyAnswer",
    accept="application/json",
    sends="application/json",
)
_INFEED: Endpoint[models.TaperInfeedAnswer] = Endpoint(
    name="tapers.infeed",
    method="POST",
    path="/v1/tapers/infeed",
    answer="TaperInfeedAnswer",
    accept="application/json",
    sends="application/json",
)
_LIST_CONE_ANGLE_GRADES: Endpoint[models.TaperAngleGradeListAnswer] = Endpoint(
    name="tapers.list_cone_angle_grades",
    method="GET",
    path="/v1/tapers/cone-angle-grades",
    answer="TaperAngleGradeListAnswer",
    accept="application/json",
)
_LIST_RATES: Endpoint[models.TaperRateListAnswer] = Endpoint(
    name="tapers.list_rates",
    method="GET",
    path="/v1/tapers/rates",
    answer="TaperRateListAnswer",
    accept="application/json",
)
_LIST_STANDARD: Endpoint[models.StandardTaperListAnswer] = Endpoint(
    name="tapers.list_standard",
    method="GET",
    path="/v1/tapers/standard",
    answer="StandardTaperListAnswer",
    accept="application/json",
)
_ONE_BALL: Endpoint[models.TaperOneBallAnswer] = Endpoint(
    name="tapers.one_ball",
    method="POST",
    path="/v1/tapers/one-ball",
    answer="TaperOneBallAnswer",
    accept="application/json",
    sends="application/json",
)
_OVER_BALLS: Endpoint[models.TaperOverBallsAnswer] = Endpoint(
    name="tapers.over_balls",
    method="POST",
    path="/v1/tapers/over-balls",
    answer="TaperOverBallsAnswer",
    accept="application/json",
    sends="application/json",
    heavy=True,
)
_OVER_BALLS_NOMINAL: Endpoint[models.TaperOverBallsNominalAnswer] = Endpoint(
    name="tapers.over_balls_nominal",
    method="POST",
    path="/v1/tapers/over-balls-nominal",
    answer="TaperOverBallsNominalAnswer",
    accept="application/json",
    sends="application/json",
    heavy=True,
)
_OVER_ROLLS: Endpoint[models.TaperOverRollsAnswer] = Endpoint(
    name="tapers.over_rolls",
    method="POST",
    path="/v1/tapers/over-rolls",
    answer="TaperOverRollsAnswer",
    accept="application/json",
    sends="application/json",
    heavy=True,
)
_OVER_ROLLS_NOMINAL: Endpoint[models.TaperOverRollsNominalAnswer] = Endpoint(
    name="tapers.over_rolls_nominal",
    method="POST",
    path="/v1/tapers/over-rolls-nominal",
    answer="TaperOverRollsNominalAnswer",
    accept="application/json",
    sends="application/json",
    heavy=True,
)
_PLUG_DEPTH: Endpoint[models.TaperPlugDepthAnswer] = Endpoint(
    name="tapers.plug_depth",
    method="POST",
    path="/v1/tapers/plug-depth",
    answer="TaperPlugDepthAnswer",
    accept="application/json",
    sends="application/json",
)
_PLUG_DEPTH_NOMINAL: Endpoint[models.TaperPlugDepthNominalAnswer] = Endpoint(
    name="tapers.plug_depth_nominal",
    method="POST",
    path="/v1/tapers/plug-depth-nominal",
    answer="TaperPlugDepthNominalAnswer",
    accept="application/json",
    sends="application/json",
)
_PROBED: Endpoint[models.TaperProbedAnswer] = Endpoint(
    name="tapers.probed",
    method="POST",
    path="/v1/tapers/probed",
    answer="TaperProbedAnswer",
    accept="application/json",
    sends="application/json",
    heavy=True,
)
_SET_OVER: Endpoint[models.TaperSetOverAnswer] = Endpoint(
    name="tapers.set_over",
    method="POST",
    path="/v1/tapers/set-over",
    answer="TaperSetOverAnswer",
    accept="application/json",
    sends="application/json",
)
_SOLVE: Endpoint[models.TaperSolveAnswer] = Endpoint(
    name="tapers.solve",
    method="POST",
    path="/v1/tapers/solve",
    answer="TaperSolveAnswer",
    accept="application/json",
    sends="application/json",
)
_STANDOFF: Endpoint[models.TaperStandoffAnswer] = Endpoint(
    name="tapers.standoff",
    method="POST",
    path="/v1/tapers/standoff",
    answer="TaperStandoffAnswer",
    accept="application/json",
    sends="application/json",
)
_TOLERANCE: Endpoint[models.TaperToleranceAnswer] = Endpoint(
    name="tapers.tolerance",
    method="POST",
    path="/v1/tapers/tolerance",
    answer="TaperToleranceAnswer",
    accept="application/json",
    sends="application/json",
)
_VEE_OVER_ROLLS: Endpoint[models.VeeOverRollsAnswer] = Endpoint(
    name="tapers.vee_over_rolls",
    method="POST",
    path="/v1/tapers/vee-over-rolls",
    answer="VeeOverRollsAnswer",
    accept="application/json",
    sends="application/json",
)
_VEE_OVER_ROLLS_NOMINAL: Endpoint[models.VeeOverRollsNominalAnswer] = Endpoint(
    name="tapers.vee_over_rolls_nominal",
    method="POST",
    path="/v1/tapers/vee-over-rolls-nominal",
    answer="VeeOverRollsNominalAnswer",
    accept="application/json",
    sends="application/json",
)

ENDPOINTS: tuple[Endpoint[Any], ...] = (
    _ANGLE,
    _CLEAN_UP,
    _DOVETAIL_OVER_ROLLS,
    _GET_CONE_ANGLE_GRADE,
    _GET_RATE,
    _GET_STANDARD,
    _IDENTIFY,
    _INFEED,
    _LIST_CONE_ANGLE_GRADES,
    _LIST_RATES,
    _LIST_STANDARD,
    _ONE_BALL,
    _OVER_BALLS,
    _OVER_BALLS_NOMINAL,
    _OVER_ROLLS,
    _OVER_ROLLS_NOMINAL,
    _PLUG_DEPTH,
    _PLUG_DEPTH_NOMINAL,
    _PROBED,
    _SET_OVER,
    _SOLVE,
    _STANDOFF,
    _TOLERANCE,
    _VEE_OVER_ROLLS,
    _VEE_OVER_ROLLS_NOMINAL,
)


class TapersCalls:
    """Calls of the topic `tapers`."""

    def __init__(self, sender: Sender) -> None:
        self._sender = sender

    def angle(
        self,
        *,
        text: str,
        bare_angle_is: Literal["included", "half", "complement"] | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.TaperAngleAnswer:
        """A taper's angle in every notation.

        Reads an angle as a drawing writes it and gives it in every form.

        Args:
            text: `60° included`, `8°17'50" half`, `30 complement`, `45°±5' included`, `1:20`, `1:20
                per side`, `C=1:20`, `7/24`, `5 %`, `0.6 in/ft`, `3/4 per foot`, `0.602 TPF`, `10
                mm/m`, `0.05 per inch`, `D 20 d 18 L 40`, `Ø20-Ø18 x 40`, or a standard taper:
                `MT3`, `7/24 No. 40`. What has two meanings is refused with both. [1 to 60
                characters]
            bare_angle_is: Which angle it is where the text does not say; `complement` is from the
                face.
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `timeout_seconds`. [second, over 0, at most 86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.TaperAngleAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.tapers.angle(text="3/4 per foot")
        """
        return self._sender.send(
            _ANGLE,
            {
                "text": text,
                "bare_angle_is": bare_angle_is,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def clean_up(
        self,
        *,
        units: Literal["in", "mm"],
        large_diameter: float,
        length: float,
        included_angle: float | str | None = None,
        half_angle: float | str | None = None,
        taper_per_foot: float | None = None,
        one_in_x: float | None = None,
        rate_of_taper: float | None = None,
        designation: str | None = None,
        tir_large_end: float | None = None,
        tir_small_end: float | None = None,
        tir_indicated: Literal["square-to-surface", "radially"] = "square-to-surface",
        half_angle_error_arcsec: float | None = None,
        wear: float | None = None,
        allowance: float = 0.0,
        smallest_large_diameter: float | None = None,
        limit_point_loss: float | None = None,
        downfeed_per_pass: float | None = None,
        spark_out_passes: int = 2,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.TaperCleanUpAnswer:
        """Whether this part can be saved.

        Stock needed to clean up runout, angle error and wear of a cone against what is there, and
        how much its point shortens.

        Args:
            units: Unit of every length here and in the answer.
            large_diameter: Diameter at the large end as it stands, the mean over a turn. [length,
                1e-06 to 10000]
            length: Length to clean up along the axis, at most to the point. [length, 1e-06 to
                10000]
            included_angle: Angle between opposite surfaces of the cone, in degrees. [degree, over
                0.01, under 179; or text in degrees, minutes, seconds]
            half_angle: Angle between the cone's axis and its surface, in degrees. [degree, over
                0.005, under 89.5; or text in degrees, minutes, seconds]
            taper_per_foot: Inches of diameter a foot of length, whatever `units` are. [inch per
                foot, 0.003 to 2000]
            one_in_x: The x of a taper written 1:x, on the diameter (ISO 1119). [0.005 to 5000]
            rate_of_taper: Change of diameter for one unit of length, C = 1/x (ISO 3040). [length
                per length, 0.0002 to 200]
            designation: Designation of a standard taper or rate, as `GET /v1/tapers/standard` and
                `GET /v1/tapers/rates` list them, or what a toolmaker calls it: `MT3`, `B&S 9`,
                `JT33`, `NT40`, `1:20`. The answer says what it was read as. [1 to 60 characters]
            tir_large_end: Full indicator movement at the large end. [length, 0 to 10000]
            tir_small_end: Full indicator movement at the small end. [length, 0 to 10000]
            tir_indicated: How the indicator stood.
            half_angle_error_arcsec: Half angle of the part as it stands less the right one:
                positive where it is too blunt. [arcsecond, -36000 to 36000]
            wear: Deepest wear or dent below the surface, square to it. [length, 0 to 10000]
            allowance: Further stock to be sure that all is clean, square to the surface. [length, 0
                to 10000]
            smallest_large_diameter: Smallest diameter at the large end's station that is still of
                use. [length, 1e-06 to 10000]
            limit_point_loss: Most that the point may lose along the axis. [length, 0 to 10000]
            downfeed_per_pass: Feed a pass, square to the cone. [length, 1e-06 to 10000]
            spark_out_passes: Passes without feed at the end. [count, 0 to 100]
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `timeout_seconds`. [second, over 0, at most 86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.TaperCleanUpAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.tapers.clean_up(units="in", included_angle=60, large_diameter=0.75,
                length=0.6, tir_large_end=0.001, tir_small_end=0.002,
                half_angle_error_arcsec=120, wear=0.002, smallest_large_diameter=0.74,
                downfeed_per_pass=0.0002)
        """
        return self._sender.send(
            _CLEAN_UP,
            {
                "included_angle": included_angle,
                "half_angle": half_angle,
                "taper_per_foot": taper_per_foot,
                "one_in_x": one_in_x,
                "rate_of_taper": rate_of_taper,
                "designation": designation,
                "units": units,
                "large_diameter": large_diameter,
                "length": length,
                "tir_large_end": tir_large_end,
                "tir_small_end": tir_small_end,
                "tir_indicated": tir_indicated,
                "half_angle_error_arcsec": half_angle_error_arcsec,
                "wear": wear,
                "allowance": allowance,
                "smallest_large_diameter": smallest_large_diameter,
                "limit_point_loss": limit_point_loss,
                "downfeed_per_pass": downfeed_per_pass,
                "spark_out_passes": spark_out_passes,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def dovetail_over_rolls(
        self,
        *,
        units: Literal["in", "mm"],
        kind: Literal["male", "female"],
        flank_angle: float | str,
        flank_height: float,
        roll_diameter: float,
        corner_width: float | None = None,
        measure: float | None = None,
        measure_error_limit: float | None = None,
        roll_error_limit: float | None = None,
        flank_angle_error_limit_arcsec: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.DovetailOverRollsAnswer:
        """Dovetail over rolls.

        Measure over or between two rolls in a dovetail's corners, or its widths from it.

        Args:
            units: Unit of every length here and in the answer.
            kind: `male`: the measure is over the rolls; `female`: between them.
            flank_angle: Angle of the flank to the base, in degrees. [degree, at least 20, under 90;
                or text in degrees, minutes, seconds]
            flank_height: Height of the flank. [length, 1e-06 to 10000]
            roll_diameter: Diameter of the rolls. [length, 1e-06 to 10000]
            corner_width: Width between the sharp corners at the base. [length, 1e-06 to 10000]
            measure: Measure over or between the rolls. [length, 1e-06 to 10000]
            measure_error_limit: Largest error of each measure, plus or minus. [length, 0 to 10000]
            roll_error_limit: Largest error of a roll's or ball's diameter, plus or minus. [length,
                0 to 10000]
            flank_angle_error_limit_arcsec: Largest error of the flank's angle, plus or minus.
                [arcsecond, 0 to 3600]
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `timeout_seconds`. [second, over 0, at most 86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.DovetailOverRollsAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.tapers.dovetail_over_rolls(units="mm", kind="male", flank_angle=60,
                flank_height=10, roll_diameter=8, corner_width=50, roll_error_limit=0.0005,
                flank_angle_error_limit_arcsec=20)
        """
        return self._sender.send(
            _DOVETAIL_OVER_ROLLS,
            {
                "units": units,
                "kind": kind,
                "flank_angle": flank_angle,
                "flank_height": flank_height,
                "roll_diameter": roll_diameter,
                "corner_width": corner_width,
                "measure": measure,
                "measure_error_limit": measure_error_limit,
                "roll_error_limit": roll_error_limit,
                "flank_angle_error_limit_arcsec": flank_angle_error_limit_arcsec,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def get_cone_angle_grade(
        self,
        key: str,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.TaperAngleGradeEntryAnswer:
        """Grades of cone angle tolerance: one cone-angle-grade.

        Tolerance of the included angle of each grade AT, by range of cone length.

        Args:
            key: The name, such as `AT1`.
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `timeout_seconds`. [second, over 0, at most 86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.TaperAngleGradeEntryAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.tapers.get_cone_angle_grade(key="AT1")
        """
        return self._sender.send(
            _GET_CONE_ANGLE_GRADE,
            {
                "key": key,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def get_rate(
        self,
        key: str,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.TaperRateEntryAnswer:
        """Standard rates of taper: one rate.

        Rates of taper and cone angles of ISO 1119, tapers per foot, taper pins and pipe.

        Args:
            key: The designation, such as `cone-120`.
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `timeout_seconds`. [second, over 0, at most 86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.TaperRateEntryAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.tapers.get_rate(key="cone-120")
        """
        return self._sender.send(
            _GET_RATE,
            {
                "key": key,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def get_standard(
        self,
        key: str,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.StandardTaperEntryAnswer:
        """Standard tapers: one standard.

        Standard tapers from published tables, each row with its source.

        Args:
            key: The designation, such as `morse-0`.
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `timeout_seconds`. [second, over 0, at most 86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.StandardTaperEntryAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.tapers.get_standard(key="morse-0")
        """
        return self._sender.send(
            _GET_STANDARD,
            {
                "key": key,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def identify(
        self,
        *,
        units: Literal["in", "mm"],
        large_diameter: float,
        small_diameter: float,
        length: float,
        diameter_error_limit: float | None = None,
        length_error_limit: float | None = None,
        max_candidates: int = 5,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.TaperIdentifyAnswer:
        """Which standard taper this is.

        Standard tapers ranked by their misfit to two measured diameters and a length, with the
        measuring error that would explain each; names of one taper stand together.

        Args:
            units: Unit of every length here and in the answer.
            large_diameter: Larger diameter measured. [length, 1e-06 to 10000]
            small_diameter: Smaller diameter measured. [length, 1e-06 to 10000]
            length: Distance between the two diameters along the axis. [length, 1e-06 to 10000]
            diameter_error_limit: Largest error of each diameter as measured, plus or minus.
                [length, 0 to 10000]
            length_error_limit: Largest error of the length as measured, plus or minus. [length, 0
                to 10000]
            max_candidates: How many candidates to list at most. [count, 1 to 50]
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `timeout_seconds`. [second, over 0, at most 86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.TaperIdentifyAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.tapers.identify(units="in", large_diameter=0.699, small_diameter=0.599,
                length=2, diameter_error_limit=0.0005, length_error_limit=0.005)
        """
        return self._sender.send(
            _IDENTIFY,
            {
                "units": units,
                "large_diameter": large_diameter,
                "small_diameter": small_diameter,
                "length": length,
                "diameter_error_limit": diameter_error_limit,
                "length_error_limit": length_error_limit,
                "max_candidates": max_candidates,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def infeed(
        self,
        *,
        units: Literal["in", "mm"],
        amount: float,
        included_angle: float | str | None = None,
        half_angle: float | str | None = None,
        taper_per_foot: float | None = None,
        one_in_x: float | None = None,
        rate_of_taper: float | None = None,
        designation: str | None = None,
        amount_is: Literal[
            "square-to-surface", "radius", "diameter", "axial"
        ] = "square-to-surface",
        downfeed_per_pass: float | None = None,
        spark_out_passes: int = 2,
        length: float | None = None,
        half_angle_error_arcsec: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.TaperInfeedAnswer:
        """Feed on a cone.

        What a downfeed square to the surface takes off diameter and radius, how far gauge line and
        point move, what each end loses where the angle is in error, and the passes.

        Args:
            units: Unit of every length here and in the answer.
            amount: Size of the layer that comes off everywhere, measured as `amount_is` says; where
                the angle is in error, more comes off one end. [length, 1e-06 to 10000]
            included_angle: Angle between opposite surfaces of the cone, in degrees. [degree, over
                0.01, under 179; or text in degrees, minutes, seconds]
            half_angle: Angle between the cone's axis and its surface, in degrees. [degree, over
                0.005, under 89.5; or text in degrees, minutes, seconds]
            taper_per_foot: Inches of diameter a foot of length, whatever `units` are. [inch per
                foot, 0.003 to 2000]
            one_in_x: The x of a taper written 1:x, on the diameter (ISO 1119). [0.005 to 5000]
            rate_of_taper: Change of diameter for one unit of length, C = 1/x (ISO 3040). [length
                per length, 0.0002 to 200]
            designation: Designation of a standard taper or rate, as `GET /v1/tapers/standard` and
                `GET /v1/tapers/rates` list them, or what a toolmaker calls it: `MT3`, `B&S 9`,
                `JT33`, `NT40`, `1:20`. The answer says what it was read as. [1 to 60 characters]
            amount_is: How `amount` is measured. `square-to-surface`: as a slide feeds that goes
                square to the generator, over a sine plate, beside a swivelled workhead or with the
                wheel's side; `radius`: at a fixed station, as a slide feeds that goes square to the
                work's axis, to a flank dressed on the wheel; `diameter`: twice that; `axial`: as
                the gauge line and the point move.
            downfeed_per_pass: Feed a pass, square to the surface. [length, 1e-06 to 10000]
            spark_out_passes: Passes without feed at the end. [count, 0 to 100]
            length: Length of the cone along its axis; needed with `half_angle_error_arcsec`
                [length, 1e-06 to 10000]
            half_angle_error_arcsec: Half angle of the part as it stands less the right one:
                positive where it is too blunt. [arcsecond, -36000 to 36000]
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `timeout_seconds`. [second, over 0, at most 86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.TaperInfeedAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.tapers.infeed(units="in", included_angle=60, amount=0.001,
                downfeed_per_pass=0.0002, length=0.6, half_angle_error_arcsec=30)
        """
        return self._sender.send(
            _INFEED,
            {
                "included_angle": included_angle,
                "half_angle": half_angle,
                "taper_per_foot": taper_per_foot,
                "one_in_x": one_in_x,
                "rate_of_taper": rate_of_taper,
                "designation": designation,
                "units": units,
                "amount": amount,
                "amount_is": amount_is,
                "downfeed_per_pass": downfeed_per_pass,
                "spark_out_passes": spark_out_passes,
                "length": length,
                "half_angle_error_arcsec": half_angle_error_arcsec,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def list_cone_angle_grades(
        self,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.TaperAngleGradeListAnswer:
        """Grades of cone angle tolerance.

        Tolerance of the included angle of each grade AT, by range of cone length.

        Args:
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `timeout_seconds`. [second, over 0, at most 86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.TaperAngleGradeListAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.tapers.list_cone_angle_grades()
        """
        return self._sender.send(
            _LIST_CONE_ANGLE_GRADES,
            {},
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def list_rates(
        self,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.TaperRateListAnswer:
        """Standard rates of taper.

        Rates of taper and cone angles of ISO 1119, tapers per foot, taper pins and pipe.

        Args:
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `timeout_seconds`. [second, over 0, at most 86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.TaperRateListAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.tapers.list_rates()
        """
        return self._sender.send(
            _LIST_RATES,
            {},
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def list_standard(
        self,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.StandardTaperListAnswer:
        """Standard tapers.

        Standard tapers from published tables, each row with its source.

        Args:
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `timeout_seconds`. [second, over 0, at most 86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.StandardTaperListAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.tapers.list_standard()
        """
        return self._sender.send(
            _LIST_STANDARD,
            {},
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def one_ball(
        self,
        *,
        units: Literal["in", "mm"],
        ball_diameter: float,
        ball_depth: float,
        length: float,
        included_angle: float | str | None = None,
        half_angle: float | str | None = None,
        taper_per_foot: float | None = None,
        one_in_x: float | None = None,
        rate_of_taper: float | None = None,
        designation: str | None = None,
        measure_error_limit: float | None = None,
        roll_error_limit: float | None = None,
        included_angle_error_limit_arcsec: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.TaperOneBallAnswer:
        """Socket's mouth from one ball.

        Mouth diameter of a socket of known slope from the depth of one ball.

        Args:
            units: Unit of every length here and in the answer.
            ball_diameter: Diameter of the ball. [length, 1e-06 to 10000]
            ball_depth: Depth of the ball's top below the mouth; negative where it stands out.
                [length, -10000 to 10000]
            length: Depth of the cone from the mouth. [length, 1e-06 to 10000]
            included_angle: Angle between opposite surfaces of the cone, in degrees. [degree, over
                0.01, under 179; or text in degrees, minutes, seconds]
            half_angle: Angle between the cone's axis and its surface, in degrees. [degree, over
                0.005, under 89.5; or text in degrees, minutes, seconds]
            taper_per_foot: Inches of diameter a foot of length, whatever `units` are. [inch per
                foot, 0.003 to 2000]
            one_in_x: The x of a taper written 1:x, on the diameter (ISO 1119). [0.005 to 5000]
            rate_of_taper: Change of diameter for one unit of length, C = 1/x (ISO 3040). [length
                per length, 0.0002 to 200]
            designation: Designation of a standard taper or rate, as `GET /v1/tapers/standard` and
                `GET /v1/tapers/rates` list them, or what a toolmaker calls it: `MT3`, `B&S 9`,
                `JT33`, `NT40`, `1:20`. The answer says what it was read as. [1 to 60 characters]
            measure_error_limit: Largest error of each measure, plus or minus. [length, 0 to 10000]
            roll_error_limit: Largest error of a roll's or ball's diameter, plus or minus. [length,
                0 to 10000]
            included_angle_error_limit_arcsec: Largest error of the included angle stated, plus or
                minus. [arcsecond, 0 to 36000]
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `timeout_seconds`. [second, over 0, at most 86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.TaperOneBallAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.tapers.one_ball(units="in", included_angle=60, ball_diameter=0.5,
                ball_depth=-0.2, length=0.4, measure_error_limit=0.0001)
        """
        return self._sender.send(
            _ONE_BALL,
            {
                "included_angle": included_angle,
                "half_angle": half_angle,
                "taper_per_foot": taper_per_foot,
                "one_in_x": one_in_x,
                "rate_of_taper": rate_of_taper,
                "designation": designation,
                "units": units,
                "ball_diameter": ball_diameter,
                "ball_depth": ball_depth,
                "length": length,
                "measure_error_limit": measure_error_limit,
                "roll_error_limit": roll_error_limit,
                "included_angle_error_limit_arcsec": included_angle_error_limit_arcsec,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def over_balls(
        self,
        *,
        units: Literal["in", "mm"],
        large_ball_diameter: float,
        small_ball_diameter: float,
        large_ball_depth: float,
        small_ball_depth: float,
        length: float,
        formats: Sequence[Literal["svg"]] | None = None,
        measure_error_limit: float | None = None,
        roll_error_limit: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.TaperOverBallsAnswer:
        """Socket measured with two balls.

        Half angle, diameters and their uncertainty from the depths of two balls.

        Args:
            units: Unit of every length here and in the answer.
            large_ball_diameter: Diameter of the larger ball. [length, 1e-06 to 10000]
            small_ball_diameter: Diameter of the smaller ball. [length, 1e-06 to 10000]
            large_ball_depth: Depth of the larger ball's top below the mouth; negative where it
                stands out. [length, -10000 to 10000]
            small_ball_depth: Depth of the smaller ball's top below the mouth. [length, -10000 to
                10000]
            length: Depth of the cone from the mouth. [length, 1e-06 to 10000]
            formats: `svg` for a drawing. Absent: none. [1 to 2 entries]
            measure_error_limit: Largest error of each measure, plus or minus. [length, 0 to 10000]
            roll_error_limit: Largest error of a roll's or ball's diameter, plus or minus. [length,
                0 to 10000]
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `heavy_timeout_seconds`. [second, over 0, at most
                86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.TaperOverBallsAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.tapers.over_balls(units="mm", large_ball_diameter=40, small_ball_diameter=32,
                large_ball_depth=-8, small_ball_depth=76, length=120, measure_error_limit=0.005,
                roll_error_limit=0.0005, formats=["svg"])
        """
        return self._sender.send(
            _OVER_BALLS,
            {
                "formats": formats,
                "units": units,
                "large_ball_diameter": large_ball_diameter,
                "small_ball_diameter": small_ball_diameter,
                "large_ball_depth": large_ball_depth,
                "small_ball_depth": small_ball_depth,
                "length": length,
                "measure_error_limit": measure_error_limit,
                "roll_error_limit": roll_error_limit,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def over_balls_nominal(
        self,
        *,
        units: Literal["in", "mm"],
        large_diameter: float,
        length: float,
        large_ball_diameter: float,
        small_ball_diameter: float,
        formats: Sequence[Literal["svg"]] | None = None,
        included_angle: float | str | None = None,
        half_angle: float | str | None = None,
        taper_per_foot: float | None = None,
        one_in_x: float | None = None,
        rate_of_taper: float | None = None,
        designation: str | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.TaperOverBallsNominalAnswer:
        """What to expect with balls.

        Depths of two balls in a nominal socket, and where they touch.

        Args:
            units: Unit of every length here and in the answer.
            large_diameter: Diameter at the large end, the mouth. [length, 1e-06 to 10000]
            length: Depth of the cone from the mouth. [length, 1e-06 to 10000]
            large_ball_diameter: Diameter of the larger ball. [length, 1e-06 to 10000]
            small_ball_diameter: Diameter of the smaller ball. [length, 1e-06 to 10000]
            formats: `svg` for a drawing. Absent: none. [1 to 2 entries]
            included_angle: Angle between opposite surfaces of the cone, in degrees. [degree, over
                0.01, under 179; or text in degrees, minutes, seconds]
            half_angle: Angle between the cone's axis and its surface, in degrees. [degree, over
                0.005, under 89.5; or text in degrees, minutes, seconds]
            taper_per_foot: Inches of diameter a foot of length, whatever `units` are. [inch per
                foot, 0.003 to 2000]
            one_in_x: The x of a taper written 1:x, on the diameter (ISO 1119). [0.005 to 5000]
            rate_of_taper: Change of diameter for one unit of length, C = 1/x (ISO 3040). [length
                per length, 0.0002 to 200]
            designation: Designation of a standard taper or rate, as `GET /v1/tapers/standard` and
                `GET /v1/tapers/rates` list them, or what a toolmaker calls it: `MT3`, `B&S 9`,
                `JT33`, `NT40`, `1:20`. The answer says what it was read as. [1 to 60 characters]
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `heavy_timeout_seconds`. [second, over 0, at most
                86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.TaperOverBallsNominalAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.tapers.over_balls_nominal(units="in", taper_per_foot=0.59941,
                large_diameter=0.7, length=2.5, large_ball_diameter=0.6875,
                small_ball_diameter=0.625, formats=["svg"])
        """
        return self._sender.send(
            _OVER_BALLS_NOMINAL,
            {
                "formats": formats,
                "included_angle": included_angle,
                "half_angle": half_angle,
                "taper_per_foot": taper_per_foot,
                "one_in_x": one_in_x,
                "rate_of_taper": rate_of_taper,
                "designation": designation,
                "units": units,
                "large_diameter": large_diameter,
                "length": length,
                "large_ball_diameter": large_ball_diameter,
                "small_ball_diameter": small_ball_diameter,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def over_rolls(
        self,
        *,
        units: Literal["in", "mm"],
        roll_diameter: float,
        lower_measure: float,
        upper_measure: float,
        stack_rise: float,
        length: float,
        formats: Sequence[Literal["svg"]] | None = None,
        lower_stack: float = 0.0,
        measure_error_limit: float | None = None,
        roll_error_limit: float | None = None,
        stack_rise_error_limit: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.TaperOverRollsAnswer:
        """Taper measured over rolls.

        Half angle, diameters and their uncertainty from measures over two equal rolls at two
        heights.

        Args:
            units: Unit of every length here and in the answer.
            roll_diameter: Diameter of the rolls. [length, 1e-06 to 10000]
            lower_measure: Measure over both rolls at the lower height. [length, 1e-06 to 10000]
            upper_measure: Measure over both rolls at the upper height. [length, 1e-06 to 10000]
            stack_rise: Upper blocks less lower blocks, under each roll. [length, 1e-06 to 10000]
            length: Length of the cone above the face it stands on. [length, 1e-06 to 10000]
            formats: `svg` for a drawing. Absent: none. [1 to 2 entries]
            lower_stack: Blocks under each roll at the lower height; 0 on the surface plate.
                [length, 0 to 10000]
            measure_error_limit: Largest error of each measure, plus or minus. [length, 0 to 10000]
            roll_error_limit: Largest error of a roll's or ball's diameter, plus or minus. [length,
                0 to 10000]
            stack_rise_error_limit: Largest error of the difference of the stacks, plus or minus;
                not stated where left out. [length, 0 to 10000]
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `heavy_timeout_seconds`. [second, over 0, at most
                86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.TaperOverRollsAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.tapers.over_rolls(units="mm", roll_diameter=12, lower_measure=60.21,
                upper_measure=67.695, stack_rise=75, length=100, measure_error_limit=0.002,
                roll_error_limit=0.0005, stack_rise_error_limit=0.0005, formats=["svg"])
        """
        return self._sender.send(
            _OVER_ROLLS,
            {
                "formats": formats,
                "units": units,
                "roll_diameter": roll_diameter,
                "lower_measure": lower_measure,
                "upper_measure": upper_measure,
                "lower_stack": lower_stack,
                "stack_rise": stack_rise,
                "length": length,
                "measure_error_limit": measure_error_limit,
                "roll_error_limit": roll_error_limit,
                "stack_rise_error_limit": stack_rise_error_limit,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def over_rolls_nominal(
        self,
        *,
        units: Literal["in", "mm"],
        large_diameter: float,
        length: float,
        roll_diameter: float,
        stack_rise: float,
        formats: Sequence[Literal["svg"]] | None = None,
        included_angle: float | str | None = None,
        half_angle: float | str | None = None,
        taper_per_foot: float | None = None,
        one_in_x: float | None = None,
        rate_of_taper: float | None = None,
        designation: str | None = None,
        standing_on: Literal["small-end", "large-end"] = "small-end",
        lower_stack: float = 0.0,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.TaperOverRollsNominalAnswer:
        """What to expect over rolls.

        Measures over two rolls at two heights for a nominal taper, and where they touch.

        Args:
            units: Unit of every length here and in the answer.
            large_diameter: Diameter at the large end. [length, 1e-06 to 10000]
            length: Length of the cone along its axis. [length, 1e-06 to 10000]
            roll_diameter: Diameter of the rolls. [length, 1e-06 to 10000]
            stack_rise: Upper blocks less lower blocks, under each roll. [length, 1e-06 to 10000]
            formats: `svg` for a drawing. Absent: none. [1 to 2 entries]
            included_angle: Angle between opposite surfaces of the cone, in degrees. [degree, over
                0.01, under 179; or text in degrees, minutes, seconds]
            half_angle: Angle between the cone's axis and its surface, in degrees. [degree, over
                0.005, under 89.5; or text in degrees, minutes, seconds]
            taper_per_foot: Inches of diameter a foot of length, whatever `units` are. [inch per
                foot, 0.003 to 2000]
            one_in_x: The x of a taper written 1:x, on the diameter (ISO 1119). [0.005 to 5000]
            rate_of_taper: Change of diameter for one unit of length, C = 1/x (ISO 3040). [length
                per length, 0.0002 to 200]
            designation: Designation of a standard taper or rate, as `GET /v1/tapers/standard` and
                `GET /v1/tapers/rates` list them, or what a toolmaker calls it: `MT3`, `B&S 9`,
                `JT33`, `NT40`, `1:20`. The answer says what it was read as. [1 to 60 characters]
            standing_on: End that the part stands on.
            lower_stack: Blocks under each roll at the lower height; 0 on the surface plate.
                [length, 0 to 10000]
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `heavy_timeout_seconds`. [second, over 0, at most
                86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.TaperOverRollsNominalAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.tapers.over_rolls_nominal(units="in", taper_per_foot=0.59941,
                large_diameter=0.7, length=2.5625, roll_diameter=0.25, stack_rise=2,
                formats=["svg"])
        """
        return self._sender.send(
            _OVER_ROLLS_NOMINAL,
            {
                "formats": formats,
                "included_angle": included_angle,
                "half_angle": half_angle,
                "taper_per_foot": taper_per_foot,
                "one_in_x": one_in_x,
                "rate_of_taper": rate_of_taper,
                "designation": designation,
                "units": units,
                "large_diameter": large_diameter,
                "length": length,
                "standing_on": standing_on,
                "roll_diameter": roll_diameter,
                "lower_stack": lower_stack,
                "stack_rise": stack_rise,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def plug_depth(
        self,
        *,
        units: Literal["in", "mm"],
        gauge_diameter: float,
        gauge_depth: float,
        length: float,
        included_angle: float | str | None = None,
        half_angle: float | str | None = None,
        taper_per_foot: float | None = None,
        one_in_x: float | None = None,
        rate_of_taper: float | None = None,
        designation: str | None = None,
        gauge_length: float = 0.0,
        second_gauge_diameter: float | None = None,
        second_gauge_depth: float | None = None,
        gauge_line: float = 0.0,
        depth_error_limit: float | None = None,
        gauge_error_limit: float | None = None,
        included_angle_error_limit_arcsec: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.TaperPlugDepthAnswer:
        """Taper gauged by depth.

        Diameter at the gauge line from how deep a plug enters a socket or a ring goes over a plug;
        the taper too, from two gauges.

        Args:
            units: Unit of every length here and in the answer.
            gauge_diameter: The gauge's diameter at its line or sharp edge. [length, 1e-06 to 10000]
            gauge_depth: Distance from the part's large end (a socket's mouth, a plug's large end)
                toward the small end to the gauge's line or sharp edge; negative where it stands
                out. [length, -10000 to 10000]
            length: Length of the part's cone. [length, 1e-06 to 10000]
            included_angle: Angle between opposite surfaces of the cone, in degrees. [degree, over
                0.01, under 179; or text in degrees, minutes, seconds]
            half_angle: Angle between the cone's axis and its surface, in degrees. [degree, over
                0.005, under 89.5; or text in degrees, minutes, seconds]
            taper_per_foot: Inches of diameter a foot of length, whatever `units` are. [inch per
                foot, 0.003 to 2000]
            one_in_x: The x of a taper written 1:x, on the diameter (ISO 1119). [0.005 to 5000]
            rate_of_taper: Change of diameter for one unit of length, C = 1/x (ISO 3040). [length
                per length, 0.0002 to 200]
            designation: Designation of a standard taper or rate, as `GET /v1/tapers/standard` and
                `GET /v1/tapers/rates` list them, or what a toolmaker calls it: `MT3`, `B&S 9`,
                `JT33`, `NT40`, `1:20`. The answer says what it was read as. [1 to 60 characters]
            gauge_length: How far the gauge's cone runs from its line toward the small end; 0 for a
                sharp edge, such as a disc's or a straight ring's. [length, 0 to 10000]
            second_gauge_diameter: Diameter of a second gauge, at a sharp edge. [length, 1e-06 to
                10000]
            second_gauge_depth: Its distance from the part's large end (a socket's mouth, a plug's
                large end) toward the small end to the gauge's line or sharp edge; negative where it
                stands out. [length, -10000 to 10000]
            gauge_line: Distance of the part's own gauge line from its large end. [length, 0 to
                10000]
            depth_error_limit: Largest error of each depth, plus or minus. [length, 0 to 10000]
            gauge_error_limit: Largest error of each gauge's diameter, plus or minus. [length, 0 to
                10000]
            included_angle_error_limit_arcsec: Largest error of the included angle stated, plus or
                minus. [arcsecond, 0 to 36000]
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `timeout_seconds`. [second, over 0, at most 86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.TaperPlugDepthAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.tapers.plug_depth(units="mm", one_in_x=20.02, gauge_diameter=17.78,
                gauge_depth=0.5, gauge_length=60, length=64, depth_error_limit=0.02,
                gauge_error_limit=0.001)
        """
        return self._sender.send(
            _PLUG_DEPTH,
            {
                "included_angle": included_angle,
                "half_angle": half_angle,
                "taper_per_foot": taper_per_foot,
                "one_in_x": one_in_x,
                "rate_of_taper": rate_of_taper,
                "designation": designation,
                "units": units,
                "gauge_diameter": gauge_diameter,
                "gauge_depth": gauge_depth,
                "gauge_length": gauge_length,
                "second_gauge_diameter": second_gauge_diameter,
                "second_gauge_depth": second_gauge_depth,
                "length": length,
                "gauge_line": gauge_line,
                "depth_error_limit": depth_error_limit,
                "gauge_error_limit": gauge_error_limit,
                "included_angle_error_limit_arcsec": included_angle_error_limit_arcsec,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def plug_depth_nominal(
        self,
        *,
        units: Literal["in", "mm"],
        large_diameter: float,
        length: float,
        gauge_diameter: float,
        included_angle: float | str | None = None,
        half_angle: float | str | None = None,
        taper_per_foot: float | None = None,
        one_in_x: float | None = None,
        rate_of_taper: float | None = None,
        designation: str | None = None,
        gauge_length: float = 0.0,
        large_diameter_tolerance: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.TaperPlugDepthNominalAnswer:
        """Depth to expect of a gauge.

        How deep a plug enters a nominal socket, or a ring goes over a nominal plug, with limits for
        a tolerance of the diameter.

        Args:
            units: Unit of every length here and in the answer.
            large_diameter: Diameter at the large end. [length, 1e-06 to 10000]
            length: Length of the part's cone. [length, 1e-06 to 10000]
            gauge_diameter: The gauge's diameter at its line or sharp edge. [length, 1e-06 to 10000]
            included_angle: Angle between opposite surfaces of the cone, in degrees. [degree, over
                0.01, under 179; or text in degrees, minutes, seconds]
            half_angle: Angle between the cone's axis and its surface, in degrees. [degree, over
                0.005, under 89.5; or text in degrees, minutes, seconds]
            taper_per_foot: Inches of diameter a foot of length, whatever `units` are. [inch per
                foot, 0.003 to 2000]
            one_in_x: The x of a taper written 1:x, on the diameter (ISO 1119). [0.005 to 5000]
            rate_of_taper: Change of diameter for one unit of length, C = 1/x (ISO 3040). [length
                per length, 0.0002 to 200]
            designation: Designation of a standard taper or rate, as `GET /v1/tapers/standard` and
                `GET /v1/tapers/rates` list them, or what a toolmaker calls it: `MT3`, `B&S 9`,
                `JT33`, `NT40`, `1:20`. The answer says what it was read as. [1 to 60 characters]
            gauge_length: How far the gauge's cone runs from its line toward the small end. [length,
                0 to 10000]
            large_diameter_tolerance: Tolerance of the large diameter, plus and minus. [length, 0 to
                10000]
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `timeout_seconds`. [second, over 0, at most 86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.TaperPlugDepthNominalAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.tapers.plug_depth_nominal(units="mm", one_in_x=20.02, large_diameter=17.8,
                length=64, gauge_diameter=17.78, gauge_length=60, large_diameter_tolerance=0.01)
        """
        return self._sender.send(
            _PLUG_DEPTH_NOMINAL,
            {
                "included_angle": included_angle,
                "half_angle": half_angle,
                "taper_per_foot": taper_per_foot,
                "one_in_x": one_in_x,
                "rate_of_taper": rate_of_taper,
                "designation": designation,
                "units": units,
                "large_diameter": large_diameter,
                "length": length,
                "gauge_diameter": gauge_diameter,
                "gauge_length": gauge_length,
                "large_diameter_tolerance": large_diameter_tolerance,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def probed(
        self,
        *,
        units: Literal["in", "mm"],
        surface: Literal["external", "internal"],
        tip_diameter: float,
        readings: Sequence[models.TaperProbedReading],
        measure_error_limit: float | None = None,
        depth_error_limit: float | None = None,
        tip_error_limit: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.TaperProbedAnswer:
        """Taper probed at depths.

        Half angle and diameter at the face of a tapered hole, or an outer taper, from the travel of
        a probe or a height gauge across it at depths, the tip's size taken off square to the
        surface.

        Largest request: 24 readings.

        Args:
            units: Unit of every length here and in the answer.
            surface: Surface that the indicator reads: `external`, a shaft or cone from outside;
                `internal`, a bore or socket. Highest is where metal comes nearest to the indicator:
                on a shaft toward its center's offset, in a bore opposite to it.
            tip_diameter: Diameter of the probe's tip. [length, 1e-06 to 10000]
            readings: Readings, each of a depth. [2 to 24 entries]
            measure_error_limit: Largest error ± of each travel, in `units`. [length, 0 to 10000]
            depth_error_limit: Largest error ± of each depth, in `units`. [length, 0 to 10000]
            tip_error_limit: Largest error ± of the tip's diameter, in `units`. [length, 0 to 10000]
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `heavy_timeout_seconds`. [second, over 0, at most
                86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.TaperProbedAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.tapers.probed(units="mm", surface="internal", tip_diameter=2,
                readings=[models.TaperProbedReading(depth=10, tip_travel=20),
                models.TaperProbedReading(depth=40, tip_travel=40)], measure_error_limit=0.002,
                depth_error_limit=0.005, tip_error_limit=0.001)
        """
        return self._sender.send(
            _PROBED,
            {
                "units": units,
                "surface": surface,
                "tip_diameter": tip_diameter,
                "readings": readings,
                "measure_error_limit": measure_error_limit,
                "depth_error_limit": depth_error_limit,
                "tip_error_limit": tip_error_limit,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def set_over(
        self,
        *,
        units: Literal["in", "mm"],
        work_length: float,
        scale_radius: float,
        scale_reading_error_limit: float,
        set_over_error_limit: float,
        attachment_length: float,
        attachment_error_limit: float,
        included_angle: float | str | None = None,
        half_angle: float | str | None = None,
        taper_per_foot: float | None = None,
        one_in_x: float | None = None,
        rate_of_taper: float | None = None,
        designation: str | None = None,
        work_length_error_limit: float | None = None,
        largest_angle: float | str | None = None,
        largest_set_over: float | None = None,
        largest_attachment_offset: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.TaperSetOverAnswer:
        """Other ways to set a taper.

        Swivel, tailstock set-over and taper attachment for one taper, with their errors side by
        side.

        Args:
            units: Unit of every length here and in the answer.
            work_length: Length of the work between its center holes. [length, 1e-06 to 10000]
            scale_radius: Radius of the swivel's scale, or of an indicator from its pivot. [length,
                1e-06 to 10000]
            scale_reading_error_limit: Largest error of setting along that scale, plus or minus.
                [length, 0 to 10000]
            set_over_error_limit: Largest error of setting the tailstock over, plus or minus.
                [length, 0 to 10000]
            attachment_length: Length of the taper attachment's bar between its pointers. [length,
                1e-06 to 10000]
            attachment_error_limit: Largest error of setting the bar at that length, plus or minus.
                [length, 0 to 10000]
            included_angle: Angle between opposite surfaces of the cone, in degrees. [degree, over
                0.01, under 179; or text in degrees, minutes, seconds]
            half_angle: Angle between the cone's axis and its surface, in degrees. [degree, over
                0.005, under 89.5; or text in degrees, minutes, seconds]
            taper_per_foot: Inches of diameter a foot of length, whatever `units` are. [inch per
                foot, 0.003 to 2000]
            one_in_x: The x of a taper written 1:x, on the diameter (ISO 1119). [0.005 to 5000]
            rate_of_taper: Change of diameter for one unit of length, C = 1/x (ISO 3040). [length
                per length, 0.0002 to 200]
            designation: Designation of a standard taper or rate, as `GET /v1/tapers/standard` and
                `GET /v1/tapers/rates` list them, or what a toolmaker calls it: `MT3`, `B&S 9`,
                `JT33`, `NT40`, `1:20`. The answer says what it was read as. [1 to 60 characters]
            work_length_error_limit: Largest error of the length between the center holes, plus or
                minus. [length, 0 to 10000]
            largest_angle: Furthest that workhead or table swivels, in degrees. [degree, over 0, at
                most 90; or text in degrees, minutes, seconds]
            largest_set_over: Furthest that the tailstock can be set over. [length, 1e-06 to 10000]
            largest_attachment_offset: Furthest that the attachment's bar can be offset at its
                length. [length, 1e-06 to 10000]
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `timeout_seconds`. [second, over 0, at most 86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.TaperSetOverAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.tapers.set_over(units="in", taper_per_foot=1, work_length=9, scale_radius=6,
                scale_reading_error_limit=0.005, set_over_error_limit=0.002,
                work_length_error_limit=0.01, attachment_length=12,
                attachment_error_limit=0.005, largest_set_over=1)
        """
        return self._sender.send(
            _SET_OVER,
            {
                "included_angle": included_angle,
                "half_angle": half_angle,
                "taper_per_foot": taper_per_foot,
                "one_in_x": one_in_x,
                "rate_of_taper": rate_of_taper,
                "designation": designation,
                "units": units,
                "work_length": work_length,
                "scale_radius": scale_radius,
                "scale_reading_error_limit": scale_reading_error_limit,
                "set_over_error_limit": set_over_error_limit,
                "work_length_error_limit": work_length_error_limit,
                "attachment_length": attachment_length,
                "attachment_error_limit": attachment_error_limit,
                "largest_angle": largest_angle,
                "largest_set_over": largest_set_over,
                "largest_attachment_offset": largest_attachment_offset,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def solve(
        self,
        *,
        units: Literal["in", "mm"],
        included_angle: float | str | None = None,
        half_angle: float | str | None = None,
        taper_per_foot: float | None = None,
        one_in_x: float | None = None,
        rate_of_taper: float | None = None,
        designation: str | None = None,
        large_diameter: float | None = None,
        small_diameter: float | None = None,
        length: float | None = None,
        agree_within: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.TaperSolveAnswer:
        """Taper from three of its quantities.

        Large diameter, small diameter, length and slope from any three of them; more than three
        must agree.

        Args:
            units: Unit of every length here and in the answer.
            included_angle: Angle between opposite surfaces of the cone, in degrees. [degree, over
                0.01, under 179; or text in degrees, minutes, seconds]
            half_angle: Angle between the cone's axis and its surface, in degrees. [degree, over
                0.005, under 89.5; or text in degrees, minutes, seconds]
            taper_per_foot: Inches of diameter a foot of length, whatever `units` are. [inch per
                foot, 0.003 to 2000]
            one_in_x: The x of a taper written 1:x, on the diameter (ISO 1119). [0.005 to 5000]
            rate_of_taper: Change of diameter for one unit of length, C = 1/x (ISO 3040). [length
                per length, 0.0002 to 200]
            designation: Designation of a standard taper or rate, as `GET /v1/tapers/standard` and
                `GET /v1/tapers/rates` list them, or what a toolmaker calls it: `MT3`, `B&S 9`,
                `JT33`, `NT40`, `1:20`. The answer says what it was read as. [1 to 60 characters]
            large_diameter: Diameter of the large end, in `units`. [length, 1e-06 to 10000]
            small_diameter: Diameter of the small end, in `units`; 0 for a sharp point. [length, 0
                to 10000]
            length: Distance between the two diameters along the axis, in `units`. [length, 1e-06 to
                10000]
            agree_within: How far diameters that follow from redundant values may differ, in
                `units`; 0.0001 in or 0.001 mm where left out. [length, 1e-06 to 10000]
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `timeout_seconds`. [second, over 0, at most 86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.TaperSolveAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.tapers.solve(units="in", large_diameter=0.7, length=2.5625,
                taper_per_foot=0.59941)
        """
        return self._sender.send(
            _SOLVE,
            {
                "included_angle": included_angle,
                "half_angle": half_angle,
                "taper_per_foot": taper_per_foot,
                "one_in_x": one_in_x,
                "rate_of_taper": rate_of_taper,
                "designation": designation,
                "units": units,
                "large_diameter": large_diameter,
                "small_diameter": small_diameter,
                "length": length,
                "agree_within": agree_within,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def standoff(
        self,
        *,
        units: Literal["in", "mm"],
        kind: Literal["external", "internal"],
        contact_length: float,
        included_angle: float | str | None = None,
        half_angle: float | str | None = None,
        taper_per_foot: float | None = None,
        one_in_x: float | None = None,
        rate_of_taper: float | None = None,
        designation: str | None = None,
        diameter_error: float | None = None,
        included_angle_error_arcsec: float | None = None,
        blue_film: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.TaperStandoffAnswer:
        """Stand-off of a taper gauge.

        How far a gauge stands off for an error of diameter, where cones of different angles bear
        and by how much they gape, and what bluing will show.

        Args:
            units: Unit of every length here and in the answer.
            kind: `external`: a plug or shank in a ring gauge; `internal`: a socket with a plug
                gauge in it.
            contact_length: Length of contact along the axis, from the gauge plane at the large end
                to where the inner cone ends. [length, 1e-06 to 10000]
            included_angle: Angle between opposite surfaces of the cone, in degrees. [degree, over
                0.01, under 179; or text in degrees, minutes, seconds]
            half_angle: Angle between the cone's axis and its surface, in degrees. [degree, over
                0.005, under 89.5; or text in degrees, minutes, seconds]
            taper_per_foot: Inches of diameter a foot of length, whatever `units` are. [inch per
                foot, 0.003 to 2000]
            one_in_x: The x of a taper written 1:x, on the diameter (ISO 1119). [0.005 to 5000]
            rate_of_taper: Change of diameter for one unit of length, C = 1/x (ISO 3040). [length
                per length, 0.0002 to 200]
            designation: Designation of a standard taper or rate, as `GET /v1/tapers/standard` and
                `GET /v1/tapers/rates` list them, or what a toolmaker calls it: `MT3`, `B&S 9`,
                `JT33`, `NT40`, `1:20`. The answer says what it was read as. [1 to 60 characters]
            diameter_error: Part's diameter at the gauge plane less the gauge's. [length, -10000 to
                10000]
            included_angle_error_arcsec: Part's included angle less the gauge's. [arcsecond, -36000
                to 36000]
            blue_film: Thickness of the marking film; 0.00008 in or 0.002 mm where left out (common
                practice, no source). [length, 1e-06 to 10000]
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `timeout_seconds`. [second, over 0, at most 86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.TaperStandoffAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.tapers.standoff(units="in", taper_per_foot=3.5, kind="external",
                contact_length=2.5, diameter_error=0.0005, included_angle_error_arcsec=20)
        """
        return self._sender.send(
            _STANDOFF,
            {
                "included_angle": included_angle,
                "half_angle": half_angle,
                "taper_per_foot": taper_per_foot,
                "one_in_x": one_in_x,
                "rate_of_taper": rate_of_taper,
                "designation": designation,
                "units": units,
                "kind": kind,
                "contact_length": contact_length,
                "diameter_error": diameter_error,
                "included_angle_error_arcsec": included_angle_error_arcsec,
                "blue_film": blue_film,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def tolerance(
        self,
        *,
        units: Literal["in", "mm"],
        large_diameter: float,
        length: float,
        included_angle: float | str | None = None,
        half_angle: float | str | None = None,
        taper_per_foot: float | None = None,
        one_in_x: float | None = None,
        rate_of_taper: float | None = None,
        designation: str | None = None,
        cone_angle_grade: Literal[
            "AT1", "AT2", "AT3", "AT4", "AT5", "AT6", "AT7", "AT8", "AT9", "AT10", "AT11", "AT12"
        ]
        | None = None,
        included_angle_band_arcsec: float | None = None,
        diameter_band_over_length: float | None = None,
        disposition: Literal["plus", "minus", "symmetric"] = "symmetric",
        large_diameter_tolerance: float | None = None,
        stations_from_large_end: Sequence[float] | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.TaperToleranceAnswer:
        """Tolerance of a cone.

        A cone's angle tolerance as a grade, as arc-seconds and on the diameter, and limits of size
        at any station.

        Args:
            units: Unit of every length here and in the answer.
            large_diameter: Diameter at the large end. [length, 1e-06 to 10000]
            length: Length of the cone. [length, 1e-06 to 10000]
            included_angle: Angle between opposite surfaces of the cone, in degrees. [degree, over
                0.01, under 179; or text in degrees, minutes, seconds]
            half_angle: Angle between the cone's axis and its surface, in degrees. [degree, over
                0.005, under 89.5; or text in degrees, minutes, seconds]
            taper_per_foot: Inches of diameter a foot of length, whatever `units` are. [inch per
                foot, 0.003 to 2000]
            one_in_x: The x of a taper written 1:x, on the diameter (ISO 1119). [0.005 to 5000]
            rate_of_taper: Change of diameter for one unit of length, C = 1/x (ISO 3040). [length
                per length, 0.0002 to 200]
            designation: Designation of a standard taper or rate, as `GET /v1/tapers/standard` and
                `GET /v1/tapers/rates` list them, or what a toolmaker calls it: `MT3`, `B&S 9`,
                `JT33`, `NT40`, `1:20`. The answer says what it was read as. [1 to 60 characters]
            cone_angle_grade: Grade of the cone angle.
            included_angle_band_arcsec: Whole tolerance of the included angle, from least to most.
                [arcsecond, over 0, at most 36000]
            diameter_band_over_length: Whole tolerance of the difference of the end diameters, from
                least to most. [length, 1e-06 to 10000]
            disposition: Where the tolerance lies to the nominal angle; `symmetric` has half of the
                angle to either side, however the tolerance is stated.
            large_diameter_tolerance: Tolerance of the large diameter, plus and minus. [length, 0 to
                10000]
            stations_from_large_end: Distances from the large end for limits of size; both ends
                else. [1 to 50 entries, each length, 0 to 10000]
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `timeout_seconds`. [second, over 0, at most 86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.TaperToleranceAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.tapers.tolerance(units="mm", one_in_x=20, large_diameter=40, length=80,
                cone_angle_grade="AT5", large_diameter_tolerance=0.01)
        """
        return self._sender.send(
            _TOLERANCE,
            {
                "included_angle": included_angle,
                "half_angle": half_angle,
                "taper_per_foot": taper_per_foot,
                "one_in_x": one_in_x,
                "rate_of_taper": rate_of_taper,
                "designation": designation,
                "units": units,
                "large_diameter": large_diameter,
                "length": length,
                "cone_angle_grade": cone_angle_grade,
                "included_angle_band_arcsec": included_angle_band_arcsec,
                "diameter_band_over_length": diameter_band_over_length,
                "disposition": disposition,
                "large_diameter_tolerance": large_diameter_tolerance,
                "stations_from_large_end": stations_from_large_end,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def vee_over_rolls(
        self,
        *,
        units: Literal["in", "mm"],
        large_roll_diameter: float,
        small_roll_diameter: float,
        large_roll_top: float,
        small_roll_top: float,
        measure_error_limit: float | None = None,
        roll_error_limit: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.VeeOverRollsAnswer:
        """Vee over two rolls.

        Angle and width of a vee from the tops of two rolls of different size.

        Args:
            units: Unit of every length here and in the answer.
            large_roll_diameter: Diameter of the larger roll. [length, 1e-06 to 10000]
            small_roll_diameter: Diameter of the smaller roll. [length, 1e-06 to 10000]
            large_roll_top: Height of the larger roll's top over the vee's faces. [length, -10000 to
                10000]
            small_roll_top: Height of the smaller roll's top over the faces; negative below them.
                [length, -10000 to 10000]
            measure_error_limit: Largest error of each measure, plus or minus. [length, 0 to 10000]
            roll_error_limit: Largest error of a roll's or ball's diameter, plus or minus. [length,
                0 to 10000]
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `timeout_seconds`. [second, over 0, at most 86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.VeeOverRollsAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.tapers.vee_over_rolls(units="mm", large_roll_diameter=40,
                small_roll_diameter=20, large_roll_top=20, small_roll_top=-10,
                measure_error_limit=0.002, roll_error_limit=0.0005)
        """
        return self._sender.send(
            _VEE_OVER_ROLLS,
            {
                "units": units,
                "large_roll_diameter": large_roll_diameter,
                "small_roll_diameter": small_roll_diameter,
                "large_roll_top": large_roll_top,
                "small_roll_top": small_roll_top,
                "measure_error_limit": measure_error_limit,
                "roll_error_limit": roll_error_limit,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def vee_over_rolls_nominal(
        self,
        *,
        units: Literal["in", "mm"],
        vee_angle: float | str,
        face_width: float,
        roll_diameters: Sequence[float],
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.VeeOverRollsNominalAnswer:
        """What to expect over rolls in a vee.

        Height of rolls over the faces of a nominal vee, and where they touch.

        Args:
            units: Unit of every length here and in the answer.
            vee_angle: The vee's included angle, in degrees. [degree, 1 to 175; or text in degrees,
                minutes, seconds]
            face_width: Width between the sides at the faces. [length, 1e-06 to 10000]
            roll_diameters: Diameters of the rolls, laid in one at a time. [1 to 20 entries, each
                length, 1e-06 to 10000]
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `timeout_seconds`. [second, over 0, at most 86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.VeeOverRollsNominalAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.tapers.vee_over_rolls_nominal(units="mm", vee_angle=60, face_width=46.188,
                roll_diameters=[40, 20])
        """
        return self._sender.send(
            _VEE_OVER_ROLLS_NOMINAL,
            {
                "units": units,
                "vee_angle": vee_angle,
                "face_width": face_width,
                "roll_diameters": roll_diameters,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )


class AsyncTapersCalls:
    """Calls of the topic `tapers`, to be awaited."""

    def __init__(self, sender: AsyncSender) -> None:
        self._sender = sender

    async def angle(
        self,
        *,
        text: str,
        bare_angle_is: Literal["included", "half", "complement"] | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.TaperAngleAnswer:
        """A taper's angle in every notation. As `Halfangle.tapers.angle`, to be awaited."""
        return await self._sender.send(
            _ANGLE,
            {
                "text": text,
                "bare_angle_is": bare_angle_is,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def clean_up(
        self,
        *,
        units: Literal["in", "mm"],
        large_diameter: float,
        length: float,
        included_angle: float | str | None = None,
        half_angle: float | str | None = None,
        taper_per_foot: float | None = None,
        one_in_x: float | None = None,
        rate_of_taper: float | None = None,
        designation: str | None = None,
        tir_large_end: float | None = None,
        tir_small_end: float | None = None,
        tir_indicated: Literal["square-to-surface", "radially"] = "square-to-surface",
        half_angle_error_arcsec: float | None = None,
        wear: float | None = None,
        allowance: float = 0.0,
        smallest_large_diameter: float | None = None,
        limit_point_loss: float | None = None,
        downfeed_per_pass: float | None = None,
        spark_out_passes: int = 2,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.TaperCleanUpAnswer:
        """Whether this part can be saved. As `Halfangle.tapers.clean_up`, to be awaited."""
        return await self._sender.send(
            _CLEAN_UP,
            {
                "included_angle": included_angle,
                "half_angle": half_angle,
                "taper_per_foot": taper_per_foot,
                "one_in_x": one_in_x,
                "rate_of_taper": rate_of_taper,
                "designation": designation,
                "units": units,
                "large_diameter": large_diameter,
                "length": length,
                "tir_large_end": tir_large_end,
                "tir_small_end": tir_small_end,
                "tir_indicated": tir_indicated,
                "half_angle_error_arcsec": half_angle_error_arcsec,
                "wear": wear,
                "allowance": allowance,
                "smallest_large_diameter": smallest_large_diameter,
                "limit_point_loss": limit_point_loss,
                "downfeed_per_pass": downfeed_per_pass,
                "spark_out_passes": spark_out_passes,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def dovetail_over_rolls(
        self,
        *,
        units: Literal["in", "mm"],
        kind: Literal["male", "female"],
        flank_angle: float | str,
        flank_height: float,
        roll_diameter: float,
        corner_width: float | None = None,
        measure: float | None = None,
        measure_error_limit: float | None = None,
        roll_error_limit: float | None = None,
        flank_angle_error_limit_arcsec: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.DovetailOverRollsAnswer:
        """Dovetail over rolls. As `Halfangle.tapers.dovetail_over_rolls`, to be awaited."""
        return await self._sender.send(
            _DOVETAIL_OVER_ROLLS,
            {
                "units": units,
                "kind": kind,
                "flank_angle": flank_angle,
                "flank_height": flank_height,
                "roll_diameter": roll_diameter,
                "corner_width": corner_width,
                "measure": measure,
                "measure_error_limit": measure_error_limit,
                "roll_error_limit": roll_error_limit,
                "flank_angle_error_limit_arcsec": flank_angle_error_limit_arcsec,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def get_cone_angle_grade(
        self,
        key: str,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.TaperAngleGradeEntryAnswer:
        """As `Halfangle.tapers.get_cone_angle_grade`, to be awaited."""
        return await self._sender.send(
            _GET_CONE_ANGLE_GRADE,
            {
                "key": key,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def get_rate(
        self,
        key: str,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.TaperRateEntryAnswer:
        """Standard rates of taper: one rate. As `Halfangle.tapers.get_rate`, to be awaited."""
        return await self._sender.send(
            _GET_RATE,
            {
                "key": key,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def get_standard(
        self,
        key: str,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.StandardTaperEntryAnswer:
        """Standard tapers: one standard. As `Halfangle.tapers.get_standard`, to be awaited."""
        return await self._sender.send(
            _GET_STANDARD,
            {
                "key": key,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def identify(
        self,
        *,
        units: Literal["in", "mm"],
        large_diameter: float,
        small_diameter: float,
        length: float,
        diameter_error_limit: float | None = None,
        length_error_limit: float | None = None,
        max_candidates: int = 5,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.TaperIdentifyAnswer:
        """Which standard taper this is. As `Halfangle.tapers.identify`, to be awaited."""
        return await self._sender.send(
            _IDENTIFY,
            {
                "units": units,
                "large_diameter": large_diameter,
                "small_diameter": small_diameter,
                "length": length,
                "diameter_error_limit": diameter_error_limit,
                "length_error_limit": length_error_limit,
                "max_candidates": max_candidates,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def infeed(
        self,
        *,
        units: Literal["in", "mm"],
        amount: float,
        included_angle: float | str | None = None,
        half_angle: float | str | None = None,
        taper_per_foot: float | None = None,
        one_in_x: float | None = None,
        rate_of_taper: float | None = None,
        designation: str | None = None,
        amount_is: Literal[
            "square-to-surface", "radius", "diameter", "axial"
        ] = "square-to-surface",
        downfeed_per_pass: float | None = None,
        spark_out_passes: int = 2,
        length: float | None = None,
        half_angle_error_arcsec: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.TaperInfeedAnswer:
        """Feed on a cone. As `Halfangle.tapers.infeed`, to be awaited."""
        return await self._sender.send(
            _INFEED,
            {
                "included_angle": included_angle,
                "half_angle": half_angle,
                "taper_per_foot": taper_per_foot,
                "one_in_x": one_in_x,
                "rate_of_taper": rate_of_taper,
                "designation": designation,
                "units": units,
                "amount": amount,
                "amount_is": amount_is,
                "downfeed_per_pass": downfeed_per_pass,
                "spark_out_passes": spark_out_passes,
                "length": length,
                "half_angle_error_arcsec": half_angle_error_arcsec,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def list_cone_angle_grades(
        self,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.TaperAngleGradeListAnswer:
        """As `Halfangle.tapers.list_cone_angle_grades`, to be awaited."""
        return await self._sender.send(
            _LIST_CONE_ANGLE_GRADES,
            {},
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def list_rates(
        self,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.TaperRateListAnswer:
        """Standard rates of taper. As `Halfangle.tapers.list_rates`, to be awaited."""
        return await self._sender.send(
            _LIST_RATES,
            {},
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def list_standard(
        self,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.StandardTaperListAnswer:
        """Standard tapers. As `Halfangle.tapers.list_standard`, to be awaited."""
        return await self._sender.send(
            _LIST_STANDARD,
            {},
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def one_ball(
        self,
        *,
        units: Literal["in", "mm"],
        ball_diameter: float,
        ball_depth: float,
        length: float,
        included_angle: float | str | None = None,
        half_angle: float | str | None = None,
        taper_per_foot: float | None = None,
        one_in_x: float | None = None,
        rate_of_taper: float | None = None,
        designation: str | None = None,
        measure_error_limit: float | None = None,
        roll_error_limit: float | None = None,
        included_angle_error_limit_arcsec: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.TaperOneBallAnswer:
        """Socket's mouth from one ball. As `Halfangle.tapers.one_ball`, to be awaited."""
        return await self._sender.send(
            _ONE_BALL,
            {
                "included_angle": included_angle,
                "half_angle": half_angle,
                "taper_per_foot": taper_per_foot,
                "one_in_x": one_in_x,
                "rate_of_taper": rate_of_taper,
                "designation": designation,
                "units": units,
                "ball_diameter": ball_diameter,
                "ball_depth": ball_depth,
                "length": length,
                "measure_error_limit": measure_error_limit,
                "roll_error_limit": roll_error_limit,
                "included_angle_error_limit_arcsec": included_angle_error_limit_arcsec,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def over_balls(
        self,
        *,
        units: Literal["in", "mm"],
        large_ball_diameter: float,
        small_ball_diameter: float,
        large_ball_depth: float,
        small_ball_depth: float,
        length: float,
        formats: Sequence[Literal["svg"]] | None = None,
        measure_error_limit: float | None = None,
        roll_error_limit: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.TaperOverBallsAnswer:
        """Socket measured with two balls. As `Halfangle.tapers.over_balls`, to be awaited."""
        return await self._sender.send(
            _OVER_BALLS,
            {
                "formats": formats,
                "units": units,
                "large_ball_diameter": large_ball_diameter,
                "small_ball_diameter": small_ball_diameter,
                "large_ball_depth": large_ball_depth,
                "small_ball_depth": small_ball_depth,
                "length": length,
                "measure_error_limit": measure_error_limit,
                "roll_error_limit": roll_error_limit,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def over_balls_nominal(
        self,
        *,
        units: Literal["in", "mm"],
        large_diameter: float,
        length: float,
        large_ball_diameter: float,
        small_ball_diameter: float,
        formats: Sequence[Literal["svg"]] | None = None,
        included_angle: float | str | None = None,
        half_angle: float | str | None = None,
        taper_per_foot: float | None = None,
        one_in_x: float | None = None,
        rate_of_taper: float | None = None,
        designation: str | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.TaperOverBallsNominalAnswer:
        """What to expect with balls. As `Halfangle.tapers.over_balls_nominal`, to be awaited."""
        return await self._sender.send(
            _OVER_BALLS_NOMINAL,
            {
                "formats": formats,
                "included_angle": included_angle,
                "half_angle": half_angle,
                "taper_per_foot": taper_per_foot,
                "one_in_x": one_in_x,
                "rate_of_taper": rate_of_taper,
                "designation": designation,
                "units": units,
                "large_diameter": large_diameter,
                "length": length,
                "large_ball_diameter": large_ball_diameter,
                "small_ball_diameter": small_ball_diameter,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def over_rolls(
        self,
        *,
        units: Literal["in", "mm"],
        roll_diameter: float,
        lower_measure: float,
        upper_measure: float,
        stack_rise: float,
        length: float,
        formats: Sequence[Literal["svg"]] | None = None,
        lower_stack: float = 0.0,
        measure_error_limit: float | None = None,
        roll_error_limit: float | None = None,
        stack_rise_error_limit: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.TaperOverRollsAnswer:
        """Taper measured over rolls. As `Halfangle.tapers.over_rolls`, to be awaited."""
        return await self._sender.send(
            _OVER_ROLLS,
            {
                "formats": formats,
                "units": units,
                "roll_diameter": roll_diameter,
                "lower_measure": lower_measure,
                "upper_measure": upper_measure,
                "lower_stack": lower_stack,
                "stack_rise": stack_rise,
                "length": length,
                "measure_error_limit": measure_error_limit,
                "roll_error_limit": roll_error_limit,
                "stack_rise_error_limit": stack_rise_error_limit,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def over_rolls_nominal(
        self,
        *,
        units: Literal["in", "mm"],
        large_diameter: float,
        length: float,
        roll_diameter: float,
        stack_rise: float,
        formats: Sequence[Literal["svg"]] | None = None,
        included_angle: float | str | None = None,
        half_angle: float | str | None = None,
        taper_per_foot: float | None = None,
        one_in_x: float | None = None,
        rate_of_taper: float | None = None,
        designation: str | None = None,
        standing_on: Literal["small-end", "large-end"] = "small-end",
        lower_stack: float = 0.0,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.TaperOverRollsNominalAnswer:
        """What to expect over rolls. As `Halfangle.tapers.over_rolls_nominal`, to be awaited."""
        return await self._sender.send(
            _OVER_ROLLS_NOMINAL,
            {
                "formats": formats,
                "included_angle": included_angle,
                "half_angle": half_angle,
                "taper_per_foot": taper_per_foot,
                "one_in_x": one_in_x,
                "rate_of_taper": rate_of_taper,
                "designation": designation,
                "units": units,
                "large_diameter": large_diameter,
                "length": length,
                "standing_on": standing_on,
                "roll_diameter": roll_diameter,
                "lower_stack": lower_stack,
                "stack_rise": stack_rise,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def plug_depth(
        self,
        *,
        units: Literal["in", "mm"],
        gauge_diameter: float,
        gauge_depth: float,
        length: float,
        included_angle: float | str | None = None,
        half_angle: float | str | None = None,
        taper_per_foot: float | None = None,
        one_in_x: float | None = None,
        rate_of_taper: float | None = None,
        designation: str | None = None,
        gauge_length: float = 0.0,
        second_gauge_diameter: float | None = None,
        second_gauge_depth: float | None = None,
        gauge_line: float = 0.0,
        depth_error_limit: float | None = None,
        gauge_error_limit: float | None = None,
        included_angle_error_limit_arcsec: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.TaperPlugDepthAnswer:
        """Taper gauged by depth. As `Halfangle.tapers.plug_depth`, to be awaited."""
        return await self._sender.send(
            _PLUG_DEPTH,
            {
                "included_angle": included_angle,
                "half_angle": half_angle,
                "taper_per_foot": taper_per_foot,
                "one_in_x": one_in_x,
                "rate_of_taper": rate_of_taper,
                "designation": designation,
                "units": units,
                "gauge_diameter": gauge_diameter,
                "gauge_depth": gauge_depth,
                "gauge_length": gauge_length,
                "second_gauge_diameter": second_gauge_diameter,
                "second_gauge_depth": second_gauge_depth,
                "length": length,
                "gauge_line": gauge_line,
                "depth_error_limit": depth_error_limit,
                "gauge_error_limit": gauge_error_limit,
                "included_angle_error_limit_arcsec": included_angle_error_limit_arcsec,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def plug_depth_nominal(
        self,
        *,
        units: Literal["in", "mm"],
        large_diameter: float,
        length: float,
        gauge_diameter: float,
        included_angle: float | str | None = None,
        half_angle: float | str | None = None,
        taper_per_foot: float | None = None,
        one_in_x: float | None = None,
        rate_of_taper: float | None = None,
        designation: str | None = None,
        gauge_length: float = 0.0,
        large_diameter_tolerance: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.TaperPlugDepthNominalAnswer:
        """Depth to expect of a gauge. As `Halfangle.tapers.plug_depth_nominal`, to be awaited."""
        return await self._sender.send(
            _PLUG_DEPTH_NOMINAL,
            {
                "included_angle": included_angle,
                "half_angle": half_angle,
                "taper_per_foot": taper_per_foot,
                "one_in_x": one_in_x,
                "rate_of_taper": rate_of_taper,
                "designation": designation,
                "units": units,
                "large_diameter": large_diameter,
                "length": length,
                "gauge_diameter": gauge_diameter,
                "gauge_length": gauge_length,
                "large_diameter_tolerance": large_diameter_tolerance,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def probed(
        self,
        *,
        units: Literal["in", "mm"],
        surface: Literal["external", "internal"],
        tip_diameter: float,
        readings: Sequence[models.TaperProbedReading],
        measure_error_limit: float | None = None,
        depth_error_limit: float | None = None,
        tip_error_limit: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.TaperProbedAnswer:
        """Taper probed at depths. As `Halfangle.tapers.probed`, to be awaited."""
        return await self._sender.send(
            _PROBED,
            {
                "units": units,
                "surface": surface,
                "tip_diameter": tip_diameter,
                "readings": readings,
                "measure_error_limit": measure_error_limit,
                "depth_error_limit": depth_error_limit,
                "tip_error_limit": tip_error_limit,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def set_over(
        self,
        *,
        units: Literal["in", "mm"],
        work_length: float,
        scale_radius: float,
        scale_reading_error_limit: float,
        set_over_error_limit: float,
        attachment_length: float,
        attachment_error_limit: float,
        included_angle: float | str | None = None,
        half_angle: float | str | None = None,
        taper_per_foot: float | None = None,
        one_in_x: float | None = None,
        rate_of_taper: float | None = None,
        designation: str | None = None,
        work_length_error_limit: float | None = None,
        largest_angle: float | str | None = None,
        largest_set_over: float | None = None,
        largest_attachment_offset: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.TaperSetOverAnswer:
        """Other ways to set a taper. As `Halfangle.tapers.set_over`, to be awaited."""
        return await self._sender.send(
            _SET_OVER,
            {
                "included_angle": included_angle,
                "half_angle": half_angle,
                "taper_per_foot": taper_per_foot,
                "one_in_x": one_in_x,
                "rate_of_taper": rate_of_taper,
                "designation": designation,
                "units": units,
                "work_length": work_length,
                "scale_radius": scale_radius,
                "scale_reading_error_limit": scale_reading_error_limit,
                "set_over_error_limit": set_over_error_limit,
                "work_length_error_limit": work_length_error_limit,
                "attachment_length": attachment_length,
                "attachment_error_limit": attachment_error_limit,
                "largest_angle": largest_angle,
                "largest_set_over": largest_set_over,
                "largest_attachment_offset": largest_attachment_offset,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def solve(
        self,
        *,
        units: Literal["in", "mm"],
        included_angle: float | str | None = None,
        half_angle: float | str | None = None,
        taper_per_foot: float | None = None,
        one_in_x: float | None = None,
        rate_of_taper: float | None = None,
        designation: str | None = None,
        large_diameter: float | None = None,
        small_diameter: float | None = None,
        length: float | None = None,
        agree_within: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.TaperSolveAnswer:
        """Taper from three of its quantities. As `Halfangle.tapers.solve`, to be awaited."""
        return await self._sender.send(
            _SOLVE,
            {
                "included_angle": included_angle,
                "half_angle": half_angle,
                "taper_per_foot": taper_per_foot,
                "one_in_x": one_in_x,
                "rate_of_taper": rate_of_taper,
                "designation": designation,
                "units": units,
                "large_diameter": large_diameter,
                "small_diameter": small_diameter,
                "length": length,
                "agree_within": agree_within,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def standoff(
        self,
        *,
        units: Literal["in", "mm"],
        kind: Literal["external", "internal"],
        contact_length: float,
        included_angle: float | str | None = None,
        half_angle: float | str | None = None,
        taper_per_foot: float | None = None,
        one_in_x: float | None = None,
        rate_of_taper: float | None = None,
        designation: str | None = None,
        diameter_error: float | None = None,
        included_angle_error_arcsec: float | None = None,
        blue_film: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.TaperStandoffAnswer:
        """Stand-off of a taper gauge. As `Halfangle.tapers.standoff`, to be awaited."""
        return await self._sender.send(
            _STANDOFF,
            {
                "included_angle": included_angle,
                "half_angle": half_angle,
                "taper_per_foot": taper_per_foot,
                "one_in_x": one_in_x,
                "rate_of_taper": rate_of_taper,
                "designation": designation,
                "units": units,
                "kind": kind,
                "contact_length": contact_length,
                "diameter_error": diameter_error,
                "included_angle_error_arcsec": included_angle_error_arcsec,
                "blue_film": blue_film,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def tolerance(
        self,
        *,
        units: Literal["in", "mm"],
        large_diameter: float,
        length: float,
        included_angle: float | str | None = None,
        half_angle: float | str | None = None,
        taper_per_foot: float | None = None,
        one_in_x: float | None = None,
        rate_of_taper: float | None = None,
        designation: str | None = None,
        cone_angle_grade: Literal[
            "AT1", "AT2", "AT3", "AT4", "AT5", "AT6", "AT7", "AT8", "AT9", "AT10", "AT11", "AT12"
        ]
        | None = None,
        included_angle_band_arcsec: float | None = None,
        diameter_band_over_length: float | None = None,
        disposition: Literal["plus", "minus", "symmetric"] = "symmetric",
        large_diameter_tolerance: float | None = None,
        stations_from_large_end: Sequence[float] | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.TaperToleranceAnswer:
        """Tolerance of a cone. As `Halfangle.tapers.tolerance`, to be awaited."""
        return await self._sender.send(
            _TOLERANCE,
            {
                "included_angle": included_angle,
                "half_angle": half_angle,
                "taper_per_foot": taper_per_foot,
                "one_in_x": one_in_x,
                "rate_of_taper": rate_of_taper,
                "designation": designation,
                "units": units,
                "large_diameter": large_diameter,
                "length": length,
                "cone_angle_grade": cone_angle_grade,
                "included_angle_band_arcsec": included_angle_band_arcsec,
                "diameter_band_over_length": diameter_band_over_length,
                "disposition": disposition,
                "large_diameter_tolerance": large_diameter_tolerance,
                "stations_from_large_end": stations_from_large_end,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def vee_over_rolls(
        self,
        *,
        units: Literal["in", "mm"],
        large_roll_diameter: float,
        small_roll_diameter: float,
        large_roll_top: float,
        small_roll_top: float,
        measure_error_limit: float | None = None,
        roll_error_limit: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.VeeOverRollsAnswer:
        """Vee over two rolls. As `Halfangle.tapers.vee_over_rolls`, to be awaited."""
        return await self._sender.send(
            _VEE_OVER_ROLLS,
            {
                "units": units,
                "large_roll_diameter": large_roll_diameter,
                "small_roll_diameter": small_roll_diameter,
                "large_roll_top": large_roll_top,
                "small_roll_top": small_roll_top,
                "measure_error_limit": measure_error_limit,
                "roll_error_limit": roll_error_limit,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def vee_over_rolls_nominal(
        self,
        *,
        units: Literal["in", "mm"],
        vee_angle: float | str,
        face_width: float,
        roll_diameters: Sequence[float],
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.VeeOverRollsNominalAnswer:
        """As `Halfangle.tapers.vee_over_rolls_nominal`, to be awaited."""
        return await self._sender.send(
            _VEE_OVER_ROLLS_NOMINAL,
            {
                "units": units,
                "vee_angle": vee_angle,
                "face_width": face_width,
                "roll_diameters": roll_diameters,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )
