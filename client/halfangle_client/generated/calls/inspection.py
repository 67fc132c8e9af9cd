# Generated from openapi/openapi.json by openapi/generate.py. Do not edit.
"""Calls of the topic `inspection`."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Any, Literal

from halfangle_client.endpoint import AsyncSender, Endpoint, Sender
from halfangle_client.sheet import Sheet

if TYPE_CHECKING:
    from halfangle_client.generated import models

_COMPARATOR: Endpoint[models.InspectionComparatorAnswer] = Endpoint(
    name="inspection.comparator",
    method="POST",
    path="/v1/inspection/comparator",
    answer="InspectionComparatorAnswer",
    accept="application/json",
    sends="application/json",
    heavy=True,
)
_DRIFT: Endpoint[models.DriftComparisonAnswer] = Endpoint(
    name="inspection.drift",
    method="POST",
    path="/v1/inspection/drift",
    answer="DriftComparisonAnswer",
    accept="application/json",
    sends="application/json",
)
_OVERLAY: Endpoint[models.InspectionOverlayAnswer] = Endpoint(
    name="inspection.overlay",
    method="POST",
    path="/v1/inspection/overlay",
    answer="InspectionOverlayAnswer",
    accept="application/json",
    sends="application/json",
    heavy=True,
)
_OVERLAY_SHEET: Endpoint[Sheet] = Endpoint(
    name="inspection.overlay_sheet",
    method="POST",
    path="/v1/inspection/overlay/sheet",
    answer=Sheet,
    accept="text/html, application/pdf",
    sends="application/json",
    query=(
        "paper",
        "format",
    ),
    heavy=True,
)
_PLAN: Endpoint[models.InspectionPlanAnswer] = Endpoint(
    name="inspection.plan",
    method="POST",
    path="/v1/inspection/plan",
    answer="InspectionPlanAnswer",
    accept="application/json",
    sends="application/json",
    heavy=True,
)
_SHEET: Endpoint[Sheet] = Endpoint(
    name="inspection.sheet",
    method="POST",
    path="/v1/inspection/plan/sheet",
    answer=Sheet,
    accept="text/html, application/pdf",
    sends="application/json",
    query=(
        "paper",
        "format",
    ),
    heavy=True,
)
_STRAIGHTNESS: Endpoint[models.StraightnessAnswer] = Endpoint(
    name="inspection.straightness",
    method="POST",
    path="/v1/inspection/straightness",
    answer="StraightnessAnswer",
    accept="application/json",
    sends="application/json",
    heavy=True,
)
_VERDICT: Endpoint[models.InspectionVerdictAnswer] = Endpoint(
    name="inspection.verdict",
    method="POST",
    path="/v1/inspection/verdict",
    answer="InspectionVerdictAnswer",
    accept="application/json",
    sends="application/json",
    heavy=True,
)

ENDPOINTS: tuple[Endpoint[Any], ...] = (
    _COMPARATOR,
    _DRIFT,
    _OVERLAY,
    _OVERLAY_SHEET,
    _PLAN,
    _SHEET,
    _STRAIGHTNESS,
    _VERDICT,
)


class InspectionCalls:
    """Calls of the topic `inspection`."""

    def __init__(self, sender: Sender) -> None:
        self._sender = sender

    def comparator(
        self,
        *,
        units: Literal["in", "mm"],
        flank: Sequence[models.PickedPoint],
        other_flank: Sequence[models.PickedPoint] | None = None,
        axis_line: Sequence[models.PickedPoint] | None = None,
        base_line: Sequence[models.PickedPoint] | None = None,
        magnification: float | None = None,
        picking_standard_uncertainty: float | None = None,
        magnification_difference_limit_percent: float | None = None,
        instrument_angle_error_limit_arcsec: float | None = None,
        included_angle: float | str | None = None,
        included_angle_tolerance_arcsec: float | None = None,
        half_angle: float | str | None = None,
        half_angle_tolerance_arcsec: float | None = None,
        flank_angle: float | str | None = None,
        flank_angle_tolerance_arcsec: float | None = None,
        decision_rule: Literal["iso-14253-1-2017", "iso-14253-1-2013"] = "iso-14253-1-2017",
        overlay: models.ProfileOverlay | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.InspectionComparatorAnswer:
        """Angle from picked points.

        The angle between two flanks of a profile, or of a flank to the axis or the base, from
        points picked on a comparator: least squares, uncertainty, straightness, apex, and what it
        proves.

        Largest request: 200 points a line, one overlay.

        Args:
            units: Unit of every length here and in the answer.
            flank: Points along one flank, from end to end, as read at the part; at the screen where
                `magnification` is sent. [3 to 200 entries]
            other_flank: Points along the opposite flank: gives the included angle. [3 to 200
                entries]
            axis_line: Points along the part's axis: gives the half angle. [2 to 200 entries]
            base_line: Points along the base: gives the flank's angle to it. [2 to 200 entries]
            magnification: Magnification of a screen at which all points were read, such as 20. [0.1
                to 1000]
            picking_standard_uncertainty: Standard uncertainty of one picked point square to its
                line, at the part, in `units`. Not stated, it is judged by what the lines leave of
                the points; so it is where they scatter more than was stated explains. [length, 0 to
                10000]
            magnification_difference_limit_percent: Limit ± of the difference of the magnification,
                or of the scales, along x and y, in percent; alike along both it turns no angle.
                [percent, 0 to 10]
            instrument_angle_error_limit_arcsec: Largest error ± of the comparator in an angle by
                itself, in arc-seconds, such as its axes out of square. [arcsecond, 0 to 324000]
            included_angle: Included angle wanted, with its tolerance ±. [degree, over 0.01, under
                179; or text in degrees, minutes, seconds]
            included_angle_tolerance_arcsec: Tolerance ± of the included angle, in arc-seconds.
                [arcsecond, 1e-06 to 324000]
            half_angle: Half angle wanted, with its tolerance ±. [degree, over 0.005, under 89.5; or
                text in degrees, minutes, seconds]
            half_angle_tolerance_arcsec: Tolerance ± of the half angle, in arc-seconds. [arcsecond,
                1e-06 to 324000]
            flank_angle: Angle of the flank to the base that is wanted, with its tolerance ±.
                [degree, over 0, under 90; or text in degrees, minutes, seconds]
            flank_angle_tolerance_arcsec: Tolerance ± of the angle to the base, in arc-seconds.
                [arcsecond, 1e-06 to 324000]
            decision_rule: Rule by which limits are judged. `iso-14253-1-2017`: they are kept with a
                probability of at least 95 %. `iso-14253-1-2013`: with a guard band of two standard
                uncertainties at either limit.
            overlay: The profile wanted, to be drawn with the picked points on it, apex on apex and
                axis on axis; of two flanks, or of a flank and the axis.
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `heavy_timeout_seconds`. [second, over 0, at most
                86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.InspectionComparatorAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.inspection.comparator(units="in", flank=[models.PickedPoint(x=0.05, y=0.029),
                models.PickedPoint(x=0.1, y=0.0577), models.PickedPoint(x=0.15, y=0.0866),
                models.PickedPoint(x=0.2, y=0.1156), models.PickedPoint(x=0.25, y=0.1443)],
                other_flank=[models.PickedPoint(x=0.05, y=-0.0288), models.PickedPoint(x=0.1,
                y=-0.0578), models.PickedPoint(x=0.15, y=-0.0866), models.PickedPoint(x=0.2,
                y=-0.1154), models.PickedPoint(x=0.25, y=-0.1444)],
                picking_standard_uncertainty=5e-05, magnification_difference_limit_percent=0.02,
                instrument_angle_error_limit_arcsec=20, included_angle=60,
                included_angle_tolerance_arcsec=300)
        """
        return self._sender.send(
            _COMPARATOR,
            {
                "units": units,
                "flank": flank,
                "other_flank": other_flank,
                "axis_line": axis_line,
                "base_line": base_line,
                "magnification": magnification,
                "picking_standard_uncertainty": picking_standard_uncertainty,
                "magnification_difference_limit_percent": magnification_difference_limit_percent,
                "instrument_angle_error_limit_arcsec": instrument_angle_error_limit_arcsec,
                "included_angle": included_angle,
                "included_angle_tolerance_arcsec": included_angle_tolerance_arcsec,
                "half_angle": half_angle,
                "half_angle_tolerance_arcsec": half_angle_tolerance_arcsec,
                "flank_angle": flank_angle,
                "flank_angle_tolerance_arcsec": flank_angle_tolerance_arcsec,
                "decision_rule": decision_rule,
                "overlay": overlay,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def drift(
        self,
        *,
        units: Literal["in", "mm"],
        reading_order: str,
        readings_in_order: Sequence[float],
        read_at_minutes: Sequence[float] | None = None,
        repeatability: float | None = None,
        indicator_resolution: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.DriftComparisonAnswer:
        """Difference freed of drift.

        A part against a standard from readings in turn (A-B-B-A and longer), the instrument's
        steady drift taken out by least squares, with the uncertainty of the difference.

        Largest request: 60 readings.

        Args:
            units: Unit of every length here and in the answer.
            reading_order: What was read, in turn: A the standard, B the part. The order returns to
                the first, such as ABBA, ABABA or ABBAABBA. [3 to 60 characters]
            readings_in_order: The readings in that order. [3 to 60 entries, each length, -10000 to
                10000]
            read_at_minutes: When each was read, in minutes; absent, at equal times. [3 to 60
                entries, each minute, 0 to 10000]
            repeatability: Standard deviation of one reading, from earlier series; absent, by what
                the fit leaves of these. [length, 0 to 10000]
            indicator_resolution: Resolution of the indicator; each reading may err by half of it.
                Counts beside `repeatability`, or where the readings scatter less. [length, 1e-06 to
                10000]
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `timeout_seconds`. [second, over 0, at most 86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.DriftComparisonAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.inspection.drift(units="mm", reading_order="ABBA", readings_in_order=[0.0,
                0.0021, 0.0023, 0.0004], repeatability=0.0001, indicator_resolution=0.0001)
        """
        return self._sender.send(
            _DRIFT,
            {
                "units": units,
                "reading_order": reading_order,
                "readings_in_order": readings_in_order,
                "read_at_minutes": read_at_minutes,
                "repeatability": repeatability,
                "indicator_resolution": indicator_resolution,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def overlay(
        self,
        *,
        large_diameter: float,
        length: float,
        large_diameter_tolerance: float,
        included_angle_tolerance_arcsec: float,
        magnification: float,
        formats: Sequence[Literal["svg", "dxf"]],
        units: Literal["in", "mm"],
        included_angle: float | str | None = None,
        half_angle: float | str | None = None,
        taper_per_foot: float | None = None,
        one_in_x: float | None = None,
        rate_of_taper: float | None = None,
        designation: str | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.InspectionOverlayAnswer:
        """Overlay of a profile.

        A cone's nominal profile with its tolerance band at a magnification, as SVG at true size
        with a bar to check the print by, and as DXF.

        Largest request: one profile in two forms.

        Args:
            large_diameter: Diameter at the large end. [length, 1e-06 to 10000]
            length: Length of the cone along its axis. [length, 1e-06 to 10000]
            large_diameter_tolerance: Tolerance of the large diameter, plus and minus. [length, 0 to
                10000]
            included_angle_tolerance_arcsec: Tolerance ± of the included angle, in arc-seconds.
                [arcsecond, 1e-06 to 324000]
            magnification: How many times the part's size to draw; 1 gives the part's own
                coordinates. [0.1 to 1000]
            formats: Forms wanted: `svg` to print at true size, `dxf` for a screen, a plotter or a
                machine's program. [1 to 2 entries]
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
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `heavy_timeout_seconds`. [second, over 0, at most
                86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.InspectionOverlayAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.inspection.overlay(units="in", included_angle=60, large_diameter=0.5,
                length=0.4, large_diameter_tolerance=0.002, included_angle_tolerance_arcsec=600,
                magnification=20, formats=["svg"])
        """
        return self._sender.send(
            _OVERLAY,
            {
                "included_angle": included_angle,
                "half_angle": half_angle,
                "taper_per_foot": taper_per_foot,
                "one_in_x": one_in_x,
                "rate_of_taper": rate_of_taper,
                "designation": designation,
                "large_diameter": large_diameter,
                "length": length,
                "large_diameter_tolerance": large_diameter_tolerance,
                "included_angle_tolerance_arcsec": included_angle_tolerance_arcsec,
                "magnification": magnification,
                "formats": formats,
                "units": units,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def overlay_sheet(
        self,
        *,
        large_diameter: float,
        length: float,
        large_diameter_tolerance: float,
        included_angle_tolerance_arcsec: float,
        magnification: float,
        formats: Sequence[Literal["svg", "dxf"]],
        units: Literal["in", "mm"],
        paper: Literal["a4", "letter"] = "a4",
        format: Literal["html", "pdf"] | None = None,
        included_angle: float | str | None = None,
        half_angle: float | str | None = None,
        taper_per_foot: float | None = None,
        one_in_x: float | None = None,
        rate_of_taper: float | None = None,
        designation: str | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> Sheet:
        """Overlay of a profile: sheet.

        What `inspection.overlay` answers, on a page for the machine.

        Args:
            large_diameter: Diameter at the large end. [length, 1e-06 to 10000]
            length: Length of the cone along its axis. [length, 1e-06 to 10000]
            large_diameter_tolerance: Tolerance of the large diameter, plus and minus. [length, 0 to
                10000]
            included_angle_tolerance_arcsec: Tolerance ± of the included angle, in arc-seconds.
                [arcsecond, 1e-06 to 324000]
            magnification: How many times the part's size to draw; 1 gives the part's own
                coordinates. [0.1 to 1000]
            formats: Forms wanted: `svg` to print at true size, `dxf` for a screen, a plotter or a
                machine's program. [1 to 2 entries]
            units: Unit of every length here and in the answer.
            paper: Paper that it is to be printed on.
            format: Form of the sheet. Absent: what Accept asks for, `html` where it takes both.
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
            Sheet: the body, as it came.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.
        """
        return self._sender.send(
            _OVERLAY_SHEET,
            {
                "paper": paper,
                "format": format,
                "included_angle": included_angle,
                "half_angle": half_angle,
                "taper_per_foot": taper_per_foot,
                "one_in_x": one_in_x,
                "rate_of_taper": rate_of_taper,
                "designation": designation,
                "large_diameter": large_diameter,
                "length": length,
                "large_diameter_tolerance": large_diameter_tolerance,
                "included_angle_tolerance_arcsec": included_angle_tolerance_arcsec,
                "magnification": magnification,
                "formats": formats,
                "units": units,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def plan(
        self,
        *,
        units: Literal["in", "mm"],
        feature: models.InspectedConeFeature
        | models.InspectedPlugFeature
        | models.InspectedSocketFeature
        | models.InspectedFaceFeature,
        formats: Sequence[Literal["svg"]] | None = None,
        set: str | None = None,
        sizes: Sequence[float] | None = None,
        box: Sequence[models.BlockOwned] | None = None,
        missing: Sequence[float] | None = None,
        in_use: Sequence[float] | None = None,
        grade: str | None = None,
        rolls: models.InspectionRolls | None = None,
        balls: models.InspectionBalls | None = None,
        gauges: models.InspectionGauges | None = None,
        probe: models.InspectionProbe | None = None,
        comparator: models.InspectionComparator | None = None,
        bluing: models.InspectionBluing | None = None,
        plate: models.InspectionPlate | None = None,
        max_blocks: int = 5,
        decision_rule: Literal["iso-14253-1-2017", "iso-14253-1-2013"] = "iso-14253-1-2017",
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.InspectionPlanAnswer:
        """Plan of an inspection.

        A cone, a taper or an angled face with its tolerances: by each means at hand what to expect,
        the limits to read with its own uncertainty, whether it can prove the tolerance, and what it
        cannot see; and each means that finds no room or cannot reach, with the reason and the
        nearest that works.

        Largest request: seven means, a stack of up to 8 blocks from up to 500.

        Args:
            units: Unit of every length here and in the answer.
            feature: The part to inspect.
            formats: `svg` for a drawing. Absent: none. [1 to 2 entries]
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
            rolls: Pairs of rolls.
            balls: Balls.
            gauges: A gauge by its depth, or two with sharp edges.
            probe: A probe of known tip.
            comparator: An optical comparator.
            bluing: A gauge and a marking film.
            plate: A sine bar or plate, with an indicator.
            max_blocks: Most blocks to wring in one stack. [count, 1 to 8]
            decision_rule: Rule by which limits are judged. `iso-14253-1-2017`: they are kept with a
                probability of at least 95 %. `iso-14253-1-2013`: with a guard band of two standard
                uncertainties at either limit.
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `heavy_timeout_seconds`. [second, over 0, at most
                86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.InspectionPlanAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.inspection.plan(units="in", feature=models.InspectedPlugFeature(kind="taper-
                plug", designation="morse-3", included_angle_tolerance_arcsec=40,
                large_diameter_tolerance=0.0005),
                rolls=models.InspectionRolls(roll_diameters=[0.125, 0.25, 0.5],
                measure_error_limit=5e-05, roll_error_limit=2e-05,
                stack_rise_error_limit=2e-05),
                gauges=models.InspectionGauges(gauge_diameter=0.938, depth_error_limit=0.001,
                gauge_error_limit=3e-05), plate=models.InspectionPlate(center_distance=5,
                center_distance_error_limit=0.0001, roll_difference=5e-05,
                roll_parallelism=5e-05, face_parallelism=0.0001, face_flatness=5e-05,
                table_flatness=5e-05, particle=2e-05, temperature_celsius=20,
                temperature_error_limit_celsius=1, temperature_difference_celsius=0.5,
                axis_pitch_error_limit_arcsec=5, axis_yaw_error_limit_arcsec=60,
                indicating_error_limit=5e-05), set="inch-81", grade="asme-0",
                comparator=models.InspectionComparator(instrument_angle_error_limit_arcsec=60),
                bluing=models.InspectionBluing(blue_film=8e-05, blue_film_error_limit=4e-05,
                marked_share_error_limit_percent=10, gauge_angle_error_limit_arcsec=4),
                formats=["svg"])
        """
        return self._sender.send(
            _PLAN,
            {
                "formats": formats,
                "set": set,
                "sizes": sizes,
                "box": box,
                "missing": missing,
                "in_use": in_use,
                "units": units,
                "grade": grade,
                "rolls": rolls,
                "balls": balls,
                "gauges": gauges,
                "probe": probe,
                "comparator": comparator,
                "bluing": bluing,
                "feature": feature,
                "plate": plate,
                "max_blocks": max_blocks,
                "decision_rule": decision_rule,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def sheet(
        self,
        *,
        units: Literal["in", "mm"],
        feature: models.InspectedConeFeature
        | models.InspectedPlugFeature
        | models.InspectedSocketFeature
        | models.InspectedFaceFeature,
        paper: Literal["a4", "letter"] = "a4",
        format: Literal["html", "pdf"] | None = None,
        formats: Sequence[Literal["svg"]] | None = None,
        set: str | None = None,
        sizes: Sequence[float] | None = None,
        box: Sequence[models.BlockOwned] | None = None,
        missing: Sequence[float] | None = None,
        in_use: Sequence[float] | None = None,
        grade: str | None = None,
        rolls: models.InspectionRolls | None = None,
        balls: models.InspectionBalls | None = None,
        gauges: models.InspectionGauges | None = None,
        probe: models.InspectionProbe | None = None,
        comparator: models.InspectionComparator | None = None,
        bluing: models.InspectionBluing | None = None,
        plate: models.InspectionPlate | None = None,
        max_blocks: int = 5,
        decision_rule: Literal["iso-14253-1-2017", "iso-14253-1-2013"] = "iso-14253-1-2017",
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> Sheet:
        """Plan of an inspection: sheet.

        What `inspection.plan` answers, on a page for the machine.

        Args:
            units: Unit of every length here and in the answer.
            feature: The part to inspect.
            paper: Paper that it is to be printed on.
            format: Form of the sheet. Absent: what Accept asks for, `html` where it takes both.
            formats: `svg` for a drawing. Absent: none. [1 to 2 entries]
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
            rolls: Pairs of rolls.
            balls: Balls.
            gauges: A gauge by its depth, or two with sharp edges.
            probe: A probe of known tip.
            comparator: An optical comparator.
            bluing: A gauge and a marking film.
            plate: A sine bar or plate, with an indicator.
            max_blocks: Most blocks to wring in one stack. [count, 1 to 8]
            decision_rule: Rule by which limits are judged. `iso-14253-1-2017`: they are kept with a
                probability of at least 95 %. `iso-14253-1-2013`: with a guard band of two standard
                uncertainties at either limit.
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `heavy_timeout_seconds`. [second, over 0, at most
                86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            Sheet: the body, as it came.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.
        """
        return self._sender.send(
            _SHEET,
            {
                "paper": paper,
                "format": format,
                "formats": formats,
                "set": set,
                "sizes": sizes,
                "box": box,
                "missing": missing,
                "in_use": in_use,
                "units": units,
                "grade": grade,
                "rolls": rolls,
                "balls": balls,
                "gauges": gauges,
                "probe": probe,
                "comparator": comparator,
                "bluing": bluing,
                "feature": feature,
                "plate": plate,
                "max_blocks": max_blocks,
                "decision_rule": decision_rule,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def straightness(
        self,
        *,
        units: Literal["in", "mm"],
        stations: Sequence[float],
        readings_in_order: Sequence[float],
        formats: Sequence[Literal["svg"]] | None = None,
        indicator_error_limit: float | None = None,
        datum_straightness: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.StraightnessAnswer:
        """Straightness of a surface line.

        The straight line under an indicator's readings along a surface, by least squares and by the
        narrowest zone, its slope, and how straight the surface is with its uncertainty.

        Largest request: 500 readings.

        Args:
            units: Unit of every length here and in the answer.
            stations: Places along the line, each once. [3 to 500 entries, each length, -10000 to
                10000]
            readings_in_order: Reading of the indicator at each; more is metal nearer to it. [3 to
                500 entries, each length, -10000 to 10000]
            formats: `svg` for a drawing. Absent: none. [1 to 2 entries]
            indicator_error_limit: Largest error ± of each reading. [length, 0 to 10000]
            datum_straightness: Straightness of the table or way along which the indicator or the
                part is moved: what it adds at most. [length, 0 to 10000]
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `heavy_timeout_seconds`. [second, over 0, at most
                86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.StraightnessAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.inspection.straightness(units="mm", stations=[0, 10, 20, 30, 40],
                readings_in_order=[0.0, 0.003, 0.005, 0.004, 0.001],
                indicator_error_limit=0.0005, datum_straightness=0.001, formats=["svg"])
        """
        return self._sender.send(
            _STRAIGHTNESS,
            {
                "formats": formats,
                "units": units,
                "stations": stations,
                "readings_in_order": readings_in_order,
                "indicator_error_limit": indicator_error_limit,
                "datum_straightness": datum_straightness,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def verdict(
        self,
        *,
        units: Literal["in", "mm"],
        measured_included_angle: float | str | None = None,
        included_angle: float | str | None = None,
        included_angle_tolerance_arcsec: float | None = None,
        smallest_included_angle: float | str | None = None,
        largest_included_angle: float | str | None = None,
        measured_half_angle: float | str | None = None,
        half_angle: float | str | None = None,
        half_angle_tolerance_arcsec: float | None = None,
        smallest_half_angle: float | str | None = None,
        largest_half_angle: float | str | None = None,
        measured_diameter: float | None = None,
        smallest_diameter: float | None = None,
        largest_diameter: float | None = None,
        measured_gauge_depth: float | None = None,
        smallest_gauge_depth: float | None = None,
        largest_gauge_depth: float | None = None,
        measured_tir: float | None = None,
        limit_tir: float | None = None,
        standard_uncertainty: float | None = None,
        expanded_uncertainty: float | None = None,
        measurement_error_limit: float | None = None,
        standard_uncertainty_arcsec: float | None = None,
        expanded_uncertainty_arcsec: float | None = None,
        measurement_error_limit_arcsec: float | None = None,
        coverage_factor: float | None = None,
        degrees_of_freedom: float | None = None,
        decision_rule: Literal[
            "iso-14253-1-2017", "iso-14253-1-2013", "guard-band", "simple-acceptance"
        ] = "iso-14253-1-2017",
        guard_band: float | None = None,
        guard_band_arcsec: float | None = None,
        smallest_capability_index: float | None = None,
        who_proves: Literal["supplier", "customer"] | None = None,
        part_temperature_celsius: float | None = None,
        part_material: Literal[
            "steel",
            "tungsten-carbide",
            "chromium-carbide",
            "ceramic",
            "glass-ceramic",
            "fused-quartz",
        ]
        | None = None,
        instrument_temperature_celsius: float | None = None,
        instrument_material: Literal[
            "steel",
            "tungsten-carbide",
            "chromium-carbide",
            "ceramic",
            "glass-ceramic",
            "fused-quartz",
        ]
        | None = None,
        temperature_error_limit_celsius: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.InspectionVerdictAnswer:
        """Verdict on a measurement.

        A measured angle, diameter, depth or runout with its uncertainty against its limits: what it
        proves by the rule named, how probable it is, the gauge limits, the uncertainty that would
        be needed, and what to do next.

        Args:
            units: Unit of every length here and in the answer.
            measured_included_angle: Included angle of a cone as measured, in degrees. [degree, over
                0, under 180; or text in degrees, minutes, seconds]
            included_angle: Included angle wanted, with its tolerance ±. [degree, over 0.01, under
                179; or text in degrees, minutes, seconds]
            included_angle_tolerance_arcsec: Tolerance ± of the included angle, in arc-seconds.
                [arcsecond, 1e-06 to 324000]
            smallest_included_angle: Smallest included angle allowed, in degrees. Absent: no limit
                to that side. [degree, over 0.01, under 179; or text in degrees, minutes, seconds]
            largest_included_angle: Largest included angle allowed, in degrees. Absent: no limit to
                that side. [degree, over 0.01, under 179; or text in degrees, minutes, seconds]
            measured_half_angle: Half angle of a cone as measured, in degrees. [degree, over 0,
                under 90; or text in degrees, minutes, seconds]
            half_angle: Half angle wanted, with its tolerance ±. [degree, over 0.005, under 89.5; or
                text in degrees, minutes, seconds]
            half_angle_tolerance_arcsec: Tolerance ± of the half angle, in arc-seconds. [arcsecond,
                1e-06 to 324000]
            smallest_half_angle: Smallest half angle allowed, in degrees. Absent: no limit to that
                side. [degree, over 0.005, under 89.5; or text in degrees, minutes, seconds]
            largest_half_angle: Largest half angle allowed, in degrees. Absent: no limit to that
                side. [degree, over 0.005, under 89.5; or text in degrees, minutes, seconds]
            measured_diameter: Diameter as measured. [length, 1e-06 to 10000]
            smallest_diameter: Smallest diameter allowed. Absent: no limit to that side. [length,
                1e-06 to 10000]
            largest_diameter: Largest diameter allowed. Absent: no limit to that side. [length,
                1e-06 to 10000]
            measured_gauge_depth: Depth of a gauge as measured, or any distance of that kind;
                negative where it stands out. [length, -10000 to 10000]
            smallest_gauge_depth: Smallest depth of the gauge allowed: the shallow limit. Absent: no
                limit to that side. [length, -10000 to 10000]
            largest_gauge_depth: Largest depth of the gauge allowed: the deep limit. Absent: no
                limit to that side. [length, -10000 to 10000]
            measured_tir: TIR as measured: of the eccentricity, as `runout.indicate` gives it, or as
                read. Its true value is taken as the length of a vector, which is never below
                nothing. [length, 0 to 10000]
            limit_tir: Limit of the TIR. [length, 1e-06 to 10000]
            standard_uncertainty: Standard uncertainty of a diameter, depth or TIR, in `units`.
                [length, 0 to 10000]
            expanded_uncertainty: Expanded uncertainty of a diameter, depth or TIR, in `units`, with
                its `coverage_factor`. [length, 0 to 10000]
            measurement_error_limit: Largest error ± of a diameter, depth or TIR, in `units`: no
                error is larger, and all within are alike likely. [length, 1e-06 to 10000]
            standard_uncertainty_arcsec: Standard uncertainty of the angle measured, in arc-seconds.
                [arcsecond, 0 to 324000]
            expanded_uncertainty_arcsec: Expanded uncertainty of the angle measured, in arc-seconds,
                with its `coverage_factor`. [arcsecond, 0 to 324000]
            measurement_error_limit_arcsec: Largest error ± of the angle measured, in arc-seconds:
                no error is larger, and all within are alike likely. [arcsecond, 1e-06 to 324000]
            coverage_factor: Coverage factor k of the expanded uncertainty, as the certificate
                states it. [1 to 100]
            degrees_of_freedom: Effective degrees of freedom of the standard or expanded
                uncertainty; not limited where absent. [1 to 1000000000]
            decision_rule: Rule by which limits are judged. `iso-14253-1-2017`: proved with a
                probability of at least 95 %. `iso-14253-1-2013`: with a guard band of two standard
                uncertainties at either limit. `guard-band`: with the guard band agreed on,
                `guard_band` or `guard_band_arcsec`. `simple-acceptance`: by the measured value
                alone, supplier and customer sharing the risk; `smallest_capability_index` says how
                coarse the measurement may be.
            guard_band: Guard band agreed on, in `units`, at either limit. [length, 0 to 10000]
            guard_band_arcsec: Guard band agreed on, in arc-seconds, at either limit. [arcsecond, 0
                to 324000]
            smallest_capability_index: Smallest measurement capability index with which simple
                acceptance was agreed on: tolerance over four standard uncertainties, the N of a
                rule N:1. Without it a value is judged however coarse the measurement is. [0.1 to
                1000]
            who_proves: Who has to prove it. `supplier`: that the part conforms, so it is accepted
                only where that is proved; `customer`: that it does not, so it is rejected only
                then. The uncertainty is always at the cost of who proves.
            part_temperature_celsius: Temperature of the part when its diameter or depth was
                measured. Absent: the value is that at 20 °C (ISO 1), and its uncertainty holds what
                temperature does. [°C, -40 to 150]
            part_material: Material of the part.
            instrument_temperature_celsius: Temperature of the instrument then; 20 where it corrects
                its reading to 20 °C by itself. [°C, -40 to 150]
            instrument_material: Material of the instrument's measuring length, such as steel.
            temperature_error_limit_celsius: Largest error ± of each of the two temperatures, in
                kelvins. [°C, 0 to 50]
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `heavy_timeout_seconds`. [second, over 0, at most
                86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.InspectionVerdictAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.inspection.verdict(units="in", measured_included_angle="60 00 07",
                included_angle=60, included_angle_tolerance_arcsec=10,
                expanded_uncertainty_arcsec=4, coverage_factor=2, who_proves="supplier")
        """
        return self._sender.send(
            _VERDICT,
            {
                "units": units,
                "measured_included_angle": measured_included_angle,
                "included_angle": included_angle,
                "included_angle_tolerance_arcsec": included_angle_tolerance_arcsec,
                "smallest_included_angle": smallest_included_angle,
                "largest_included_angle": largest_included_angle,
                "measured_half_angle": measured_half_angle,
                "half_angle": half_angle,
                "half_angle_tolerance_arcsec": half_angle_tolerance_arcsec,
                "smallest_half_angle": smallest_half_angle,
                "largest_half_angle": largest_half_angle,
                "measured_diameter": measured_diameter,
                "smallest_diameter": smallest_diameter,
                "largest_diameter": largest_diameter,
                "measured_gauge_depth": measured_gauge_depth,
                "smallest_gauge_depth": smallest_gauge_depth,
                "largest_gauge_depth": largest_gauge_depth,
                "measured_tir": measured_tir,
                "limit_tir": limit_tir,
                "standard_uncertainty": standard_uncertainty,
                "expanded_uncertainty": expanded_uncertainty,
                "measurement_error_limit": measurement_error_limit,
                "standard_uncertainty_arcsec": standard_uncertainty_arcsec,
                "expanded_uncertainty_arcsec": expanded_uncertainty_arcsec,
                "measurement_error_limit_arcsec": measurement_error_limit_arcsec,
                "coverage_factor": coverage_factor,
                "degrees_of_freedom": degrees_of_freedom,
                "decision_rule": decision_rule,
                "guard_band": guard_band,
                "guard_band_arcsec": guard_band_arcsec,
                "smallest_capability_index": smallest_capability_index,
                "who_proves": who_proves,
                "part_temperature_celsius": part_temperature_celsius,
                "part_material": part_material,
                "instrument_temperature_celsius": instrument_temperature_celsius,
                "instrument_material": instrument_material,
                "temperature_error_limit_celsius": temperature_error_limit_celsius,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )


class AsyncInspectionCalls:
    """Calls of the topic `inspection`, to be awaited."""

    def __init__(self, sender: AsyncSender) -> None:
        self._sender = sender

    async def comparator(
        self,
        *,
        units: Literal["in", "mm"],
        flank: Sequence[models.PickedPoint],
        other_flank: Sequence[models.PickedPoint] | None = None,
        axis_line: Sequence[models.PickedPoint] | None = None,
        base_line: Sequence[models.PickedPoint] | None = None,
        magnification: float | None = None,
        picking_standard_uncertainty: float | None = None,
        magnification_difference_limit_percent: float | None = None,
        instrument_angle_error_limit_arcsec: float | None = None,
        included_angle: float | str | None = None,
        included_angle_tolerance_arcsec: float | None = None,
        half_angle: float | str | None = None,
        half_angle_tolerance_arcsec: float | None = None,
        flank_angle: float | str | None = None,
        flank_angle_tolerance_arcsec: float | None = None,
        decision_rule: Literal["iso-14253-1-2017", "iso-14253-1-2013"] = "iso-14253-1-2017",
        overlay: models.ProfileOverlay | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.InspectionComparatorAnswer:
        """Angle from picked points. As `Halfangle.inspection.comparator`, to be awaited."""
        return await self._sender.send(
            _COMPARATOR,
            {
                "units": units,
                "flank": flank,
                "other_flank": other_flank,
                "axis_line": axis_line,
                "base_line": base_line,
                "magnification": magnification,
                "picking_standard_uncertainty": picking_standard_uncertainty,
                "magnification_difference_limit_percent": magnification_difference_limit_percent,
                "instrument_angle_error_limit_arcsec": instrument_angle_error_limit_arcsec,
                "included_angle": included_angle,
                "included_angle_tolerance_arcsec": included_angle_tolerance_arcsec,
                "half_angle": half_angle,
                "half_angle_tolerance_arcsec": half_angle_tolerance_arcsec,
                "flank_angle": flank_angle,
                "flank_angle_tolerance_arcsec": flank_angle_tolerance_arcsec,
                "decision_rule": decision_rule,
                "overlay": overlay,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def drift(
        self,
        *,
        units: Literal["in", "mm"],
        reading_order: str,
        readings_in_order: Sequence[float],
        read_at_minutes: Sequence[float] | None = None,
        repeatability: float | None = None,
        indicator_resolution: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.DriftComparisonAnswer:
        """Difference freed of drift. As `Halfangle.inspection.drift`, to be awaited."""
        return await self._sender.send(
            _DRIFT,
            {
                "units": units,
                "reading_order": reading_order,
                "readings_in_order": readings_in_order,
                "read_at_minutes": read_at_minutes,
                "repeatability": repeatability,
                "indicator_resolution": indicator_resolution,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def overlay(
        self,
        *,
        large_diameter: float,
        length: float,
        large_diameter_tolerance: float,
        included_angle_tolerance_arcsec: float,
        magnification: float,
        formats: Sequence[Literal["svg", "dxf"]],
        units: Literal["in", "mm"],
        included_angle: float | str | None = None,
        half_angle: float | str | None = None,
        taper_per_foot: float | None = None,
        one_in_x: float | None = None,
        rate_of_taper: float | None = None,
        designation: str | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.InspectionOverlayAnswer:
        """Overlay of a profile. As `Halfangle.inspection.overlay`, to be awaited."""
        return await self._sender.send(
            _OVERLAY,
            {
                "included_angle": included_angle,
                "half_angle": half_angle,
                "taper_per_foot": taper_per_foot,
                "one_in_x": one_in_x,
                "rate_of_taper": rate_of_taper,
                "designation": designation,
                "large_diameter": large_diameter,
                "length": length,
                "large_diameter_tolerance": large_diameter_tolerance,
                "included_angle_tolerance_arcsec": included_angle_tolerance_arcsec,
                "magnification": magnification,
                "formats": formats,
                "units": units,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def overlay_sheet(
        self,
        *,
        large_diameter: float,
        length: float,
        large_diameter_tolerance: float,
        included_angle_tolerance_arcsec: float,
        magnification: float,
        formats: Sequence[Literal["svg", "dxf"]],
        units: Literal["in", "mm"],
        paper: Literal["a4", "letter"] = "a4",
        format: Literal["html", "pdf"] | None = None,
        included_angle: float | str | None = None,
        half_angle: float | str | None = None,
        taper_per_foot: float | None = None,
        one_in_x: float | None = None,
        rate_of_taper: float | None = None,
        designation: str | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> Sheet:
        """Overlay of a profile: sheet. As `Halfangle.inspection.overlay_sheet`, to be awaited."""
        return await self._sender.send(
            _OVERLAY_SHEET,
            {
                "paper": paper,
                "format": format,
                "included_angle": included_angle,
                "half_angle": half_angle,
                "taper_per_foot": taper_per_foot,
                "one_in_x": one_in_x,
                "rate_of_taper": rate_of_taper,
                "designation": designation,
                "large_diameter": large_diameter,
                "length": length,
                "large_diameter_tolerance": large_diameter_tolerance,
                "included_angle_tolerance_arcsec": included_angle_tolerance_arcsec,
                "magnification": magnification,
                "formats": formats,
                "units": units,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def plan(
        self,
        *,
        units: Literal["in", "mm"],
        feature: models.InspectedConeFeature
        | models.InspectedPlugFeature
        | models.InspectedSocketFeature
        | models.InspectedFaceFeature,
        formats: Sequence[Literal["svg"]] | None = None,
        set: str | None = None,
        sizes: Sequence[float] | None = None,
        box: Sequence[models.BlockOwned] | None = None,
        missing: Sequence[float] | None = None,
        in_use: Sequence[float] | None = None,
        grade: str | None = None,
        rolls: models.InspectionRolls | None = None,
        balls: models.InspectionBalls | None = None,
        gauges: models.InspectionGauges | None = None,
        probe: models.InspectionProbe | None = None,
        comparator: models.InspectionComparator | None = None,
        bluing: models.InspectionBluing | None = None,
        plate: models.InspectionPlate | None = None,
        max_blocks: int = 5,
        decision_rule: Literal["iso-14253-1-2017", "iso-14253-1-2013"] = "iso-14253-1-2017",
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.InspectionPlanAnswer:
        """Plan of an inspection. As `Halfangle.inspection.plan`, to be awaited."""
        return await self._sender.send(
            _PLAN,
            {
                "formats": formats,
                "set": set,
                "sizes": sizes,
                "box": box,
                "missing": missing,
                "in_use": in_use,
                "units": units,
                "grade": grade,
                "rolls": rolls,
                "balls": balls,
                "gauges": gauges,
                "probe": probe,
                "comparator": comparator,
                "bluing": bluing,
                "feature": feature,
                "plate": plate,
                "max_blocks": max_blocks,
                "decision_rule": decision_rule,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def sheet(
        self,
        *,
        units: Literal["in", "mm"],
        feature: models.InspectedConeFeature
        | models.InspectedPlugFeature
        | models.InspectedSocketFeature
        | models.InspectedFaceFeature,
        paper: Literal["a4", "letter"] = "a4",
        format: Literal["html", "pdf"] | None = None,
        formats: Sequence[Literal["svg"]] | None = None,
        set: str | None = None,
        sizes: Sequence[float] | None = None,
        box: Sequence[models.BlockOwned] | None = None,
        missing: Sequence[float] | None = None,
        in_use: Sequence[float] | None = None,
        grade: str | None = None,
        rolls: models.InspectionRolls | None = None,
        balls: models.InspectionBalls | None = None,
        gauges: models.InspectionGauges | None = None,
        probe: models.InspectionProbe | None = None,
        comparator: models.InspectionComparator | None = None,
        bluing: models.InspectionBluing | None = None,
        plate: models.InspectionPlate | None = None,
        max_blocks: int = 5,
        decision_rule: Literal["iso-14253-1-2017", "iso-14253-1-2013"] = "iso-14253-1-2017",
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> Sheet:
        """Plan of an inspection: sheet. As `Halfangle.inspection.sheet`, to be awaited."""
        return await self._sender.send(
            _SHEET,
            {
                "paper": paper,
                "format": format,
                "formats": formats,
                "set": set,
                "sizes": sizes,
                "box": box,
                "missing": missing,
                "in_use": in_use,
                "units": units,
                "grade": grade,
                "rolls": rolls,
                "balls": balls,
                "gauges": gauges,
                "probe": probe,
                "comparator": comparator,
                "bluing": bluing,
                "feature": feature,
                "plate": plate,
                "max_blocks": max_blocks,
                "decision_rule": decision_rule,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def straightness(
        self,
        *,
        units: Literal["in", "mm"],
        stations: Sequence[float],
        readings_in_order: Sequence[float],
        formats: Sequence[Literal["svg"]] | None = None,
        indicator_error_limit: float | None = None,
        datum_straightness: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.StraightnessAnswer:
        """Straightness of a surface line. As `Halfangle.inspection.straightness`, to be awaited."""
        return await self._sender.send(
            _STRAIGHTNESS,
            {
                "formats": formats,
                "units": units,
                "stations": stations,
                "readings_in_order": readings_in_order,
                "indicator_error_limit": indicator_error_limit,
                "datum_straightness": datum_straightness,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def verdict(
        self,
        *,
        units: Literal["in", "mm"],
        measured_included_angle: float | str | None = None,
        included_angle: float | str | None = None,
        included_angle_tolerance_arcsec: float | None = None,
        smallest_included_angle: float | str | None = None,
        largest_included_angle: float | str | None = None,
        measured_half_angle: float | str | None = None,
        half_angle: float | str | None = None,
        half_angle_tolerance_arcsec: float | None = None,
        smallest_half_angle: float | str | None = None,
        largest_half_angle: float | str | None = None,
        measured_diameter: float | None = None,
        smallest_diameter: float | None = None,
        largest_diameter: float | None = None,
        measured_gauge_depth: float | None = None,
        smallest_gauge_depth: float | None = None,
        largest_gauge_depth: float | None = None,
        measured_tir: float | None = None,
        limit_tir: float | None = None,
        standard_uncertainty: float | None = None,
        expanded_uncertainty: float | None = None,
        measurement_error_limit: float | None = None,
        standard_uncertainty_arcsec: float | None = None,
        expanded_uncertainty_arcsec: float | None = None,
        measurement_error_limit_arcsec: float | None = None,
        coverage_factor: float | None = None,
        degrees_of_freedom: float | None = None,
        decision_rule: Literal[
            "iso-14253-1-2017", "iso-14253-1-2013", "guard-band", "simple-acceptance"
        ] = "iso-14253-1-2017",
        guard_band: float | None = None,
        guard_band_arcsec: float | None = None,
        smallest_capability_index: float | None = None,
        who_proves: Literal["supplier", "customer"] | None = None,
        part_temperature_celsius: float | None = None,
        part_material: Literal[
            "steel",
            "tungsten-carbide",
            "chromium-carbide",
            "ceramic",
            "glass-ceramic",
            "fused-quartz",
        ]
        | None = None,
        instrument_temperature_celsius: float | None = None,
        instrument_material: Literal[
            "steel",
            "tungsten-carbide",
            "chromium-carbide",
            "ceramic",
            "glass-ceramic",
            "fused-quartz",
        ]
        | None = None,
        temperature_error_limit_celsius: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.InspectionVerdictAnswer:
        """Verdict on a measurement. As `Halfangle.inspection.verdict`, to be awaited."""
        return await self._sender.send(
            _VERDICT,
            {
                "units": units,
                "measured_included_angle": measured_included_angle,
                "included_angle": included_angle,
                "included_angle_tolerance_arcsec": included_angle_tolerance_arcsec,
                "smallest_included_angle": smallest_included_angle,
                "largest_included_angle": largest_included_angle,
                "measured_half_angle": measured_half_angle,
                "half_angle": half_angle,
                "half_angle_tolerance_arcsec": half_angle_tolerance_arcsec,
                "smallest_half_angle": smallest_half_angle,
                "largest_half_angle": largest_half_angle,
                "measured_diameter": measured_diameter,
                "smallest_diameter": smallest_diameter,
                "largest_diameter": largest_diameter,
                "measured_gauge_depth": measured_gauge_depth,
                "smallest_gauge_depth": smallest_gauge_depth,
                "largest_gauge_depth": largest_gauge_depth,
                "measured_tir": measured_tir,
                "limit_tir": limit_tir,
                "standard_uncertainty": standard_uncertainty,
                "expanded_uncertainty": expanded_uncertainty,
                "measurement_error_limit": measurement_error_limit,
                "standard_uncertainty_arcsec": standard_uncertainty_arcsec,
                "expanded_uncertainty_arcsec": expanded_uncertainty_arcsec,
                "measurement_error_limit_arcsec": measurement_error_limit_arcsec,
                "coverage_factor": coverage_factor,
                "degrees_of_freedom": degrees_of_freedom,
                "decision_rule": decision_rule,
                "guard_band": guard_band,
                "guard_band_arcsec": guard_band_arcsec,
                "smallest_capability_index": smallest_capability_index,
                "who_proves": who_proves,
                "part_temperature_celsius": part_temperature_celsius,
                "part_material": part_material,
                "instrument_temperature_celsius": instrument_temperature_celsius,
                "instrument_material": instrument_material,
                "temperature_error_limit_celsius": temperature_error_limit_celsius,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )
