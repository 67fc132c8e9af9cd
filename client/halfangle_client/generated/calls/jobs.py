# Generated from openapi/openapi.json by openapi/generate.py. Do not edit.
"""Calls of the topic `jobs`."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Any, Literal

from halfangle_client.endpoint import AsyncSender, Endpoint, Sender
from halfangle_client.sheet import Sheet

if TYPE_CHECKING:
    from halfangle_client.generated import models

_CENTER: Endpoint[models.CenterJobAnswer] = Endpoint(
    name="jobs.center",
    method="POST",
    path="/v1/jobs/center",
    answer="CenterJobAnswer",
    accept="application/json",
    sends="application/json",
    heavy=True,
)
_CENTER_SHEET: Endpoint[Sheet] = Endpoint(
    name="jobs.center_sheet",
    method="POST",
    path="/v1/jobs/center/sheet",
    answer=Sheet,
    accept="text/html, application/pdf",
    sends="application/json",
    query=(
        "paper",
        "format",
    ),
    heavy=True,
)
_CORRECTION: Endpoint[models.JobsCorrectionAnswer] = Endpoint(
    name="jobs.correction",
    method="POST",
    path="/v1/jobs/correction",
    answer="JobsCorrectionAnswer",
    accept="application/json",
    sends="application/json",
    heavy=True,
)
_PLAN: Endpoint[models.JobPlanAnswer] = Endpoint(
    name="jobs.plan",
    method="POST",
    path="/v1/jobs/plan",
    answer="JobPlanAnswer",
    accept="application/json",
    sends="application/json",
    heavy=True,
)
_ROUTING: Endpoint[models.JobRoutingAnswer] = Endpoint(
    name="jobs.routing",
    method="POST",
    path="/v1/jobs/routing",
    answer="JobRoutingAnswer",
    accept="application/json",
    sends="application/json",
    heavy=True,
)
_ROUTING_CSV: Endpoint[str] = Endpoint(
    name="jobs.routing_csv",
    method="POST",
    path="/v1/jobs/routing/csv",
    answer=str,
    accept="text/csv",
    sends="application/json",
    query=("delimiter",),
    heavy=True,
)
_SHEET: Endpoint[Sheet] = Endpoint(
    name="jobs.sheet",
    method="POST",
    path="/v1/jobs/plan/sheet",
    answer=Sheet,
    accept="text/html, application/pdf",
    sends="application/json",
    query=(
        "paper",
        "format",
        "way",
        "kind",
    ),
    heavy=True,
)

ENDPOINTS: tuple[Endpoint[Any], ...] = (
    _CENTER,
    _CENTER_SHEET,
    _CORRECTION,
    _PLAN,
    _ROUTING,
    _ROUTING_CSV,
    _SHEET,
)


class JobsCalls:
    """Calls of the topic `jobs`."""

    def __init__(self, sender: Sender) -> None:
        self._sender = sender

    def center(
        self,
        *,
        units: Literal["in", "mm"],
        included_angle_tolerance_arcsec: float,
        shank: models.StraightShank | models.TaperShank,
        limit_tir: float,
        large_diameter: float,
        job: str,
        center_distance: float,
        set: str | None = None,
        sizes: Sequence[float] | None = None,
        box: Sequence[models.BlockOwned] | None = None,
        missing: Sequence[float] | None = None,
        in_use: Sequence[float] | None = None,
        grade: str | None = None,
        included_angle: float | str | None = None,
        half_angle: float | str | None = None,
        taper_per_foot: float | None = None,
        one_in_x: float | None = None,
        rate_of_taper: float | None = None,
        designation: str | None = None,
        decision_rule: Literal["iso-14253-1-2017", "iso-14253-1-2013"] = "iso-14253-1-2017",
        max_blocks: int = 5,
        runout_errors: models.RunoutContributions | None = None,
        angle_errors: models.AngleContributions | None = None,
        downfeed_step: float | None = None,
        grinding_allowance: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.CenterJobAnswer:
        """Plan of a center ground on a sine plate.

        A center planned end to end: the plate's setting and its stack, the angle error and the
        runout to expect against their limits, what a step of downfeed takes off, the steps in
        order, and the checks, with which of them would catch a wrong block. It is a plan of one way
        (`jobs.plan`).

        Largest request: one stack of up to 8 blocks from up to 500.

        Args:
            units: Unit of every length here and in the answer.
            included_angle_tolerance_arcsec: ± tolerance of the included angle. [arcsecond, 1e-06 to
                324000]
            shank: The shank that the cone must run true to.
            limit_tir: Runout of the cone to its shank that the drawing allows, as full indicator
                movement square to the axis, in `units`. [length, 1e-06 to 10000]
            large_diameter: Larger diameter of the cone, where it meets the body, in `units`.
                [length, 1e-06 to 10000]
            job: Name of the job, for the heading of the plan. [1 to 60 characters]
            center_distance: Distance between the centers of the two rolls, in `units`. [length,
                1e-06 to 10000]
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
            decision_rule: Rule by which limits are judged. `iso-14253-1-2017`: they are kept with a
                probability of at least 95 %. `iso-14253-1-2013`: with a guard band of two standard
                uncertainties at either limit.
            max_blocks: Most blocks to wring in one stack. [count, 1 to 8]
            runout_errors: Runout that the holding adds.
            angle_errors: Errors of the set-up that turn the angle.
            downfeed_step: One step of downfeed, in `units`; 0.0001 in or 0.001 mm where left out.
                [length, 1e-06 to 10000]
            grinding_allowance: Stock left on the cone, measured square to its surface, in `units`.
                [length, 1e-06 to 10000]
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `heavy_timeout_seconds`. [second, over 0, at most
                86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.CenterJobAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.jobs.center(job="HL-0412 machine center", units="in", included_angle=60,
                included_angle_tolerance_arcsec=120, large_diameter=0.75,
                shank=models.TaperShank(kind="taper", designation="morse-2"), limit_tir=0.0003,
                center_distance=5, set="inch-81", grade="asme-0",
                runout_errors=models.RunoutContributions(adapter_tir=0.0001, fixture_tir=5e-05,
                indicating_tir=5e-05),
                angle_errors=models.AngleContributions(center_distance_error_limit=0.0001,
                roll_difference=5e-05, roll_parallelism=5e-05, face_parallelism=0.0001,
                face_flatness=5e-05, table_flatness=5e-05, particle=2e-05,
                temperature_error_limit_celsius=1, temperature_difference_celsius=0.5,
                axis_pitch_error_limit_arcsec=5, axis_yaw_error_limit_arcsec=300,
                wheel_face_error_limit_arcsec=20, temperature_celsius=22),
                grinding_allowance=0.004)
        """
        return self._sender.send(
            _CENTER,
            {
                "set": set,
                "sizes": sizes,
                "box": box,
                "missing": missing,
                "in_use": in_use,
                "units": units,
                "grade": grade,
                "included_angle": included_angle,
                "half_angle": half_angle,
                "taper_per_foot": taper_per_foot,
                "one_in_x": one_in_x,
                "rate_of_taper": rate_of_taper,
                "designation": designation,
                "included_angle_tolerance_arcsec": included_angle_tolerance_arcsec,
                "shank": shank,
                "limit_tir": limit_tir,
                "large_diameter": large_diameter,
                "job": job,
                "center_distance": center_distance,
                "decision_rule": decision_rule,
                "max_blocks": max_blocks,
                "runout_errors": runout_errors,
                "angle_errors": angle_errors,
                "downfeed_step": downfeed_step,
                "grinding_allowance": grinding_allowance,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def center_sheet(
        self,
        *,
        units: Literal["in", "mm"],
        included_angle_tolerance_arcsec: float,
        shank: models.StraightShank | models.TaperShank,
        limit_tir: float,
        large_diameter: float,
        job: str,
        center_distance: float,
        paper: Literal["a4", "letter"] = "a4",
        format: Literal["html", "pdf"] | None = None,
        set: str | None = None,
        sizes: Sequence[float] | None = None,
        box: Sequence[models.BlockOwned] | None = None,
        missing: Sequence[float] | None = None,
        in_use: Sequence[float] | None = None,
        grade: str | None = None,
        included_angle: float | str | None = None,
        half_angle: float | str | None = None,
        taper_per_foot: float | None = None,
        one_in_x: float | None = None,
        rate_of_taper: float | None = None,
        designation: str | None = None,
        decision_rule: Literal["iso-14253-1-2017", "iso-14253-1-2013"] = "iso-14253-1-2017",
        max_blocks: int = 5,
        runout_errors: models.RunoutContributions | None = None,
        angle_errors: models.AngleContributions | None = None,
        downfeed_step: float | None = None,
        grinding_allowance: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> Sheet:
        """Plan of a center ground on a sine plate: sheet.

        What `jobs.center` answers, on a page for the machine.

        Args:
            units: Unit of every length here and in the answer.
            included_angle_tolerance_arcsec: ± tolerance of the included angle. [arcsecond, 1e-06 to
                324000]
            shank: The shank that the cone must run true to.
            limit_tir: Runout of the cone to its shank that the drawing allows, as full indicator
                movement square to the axis, in `units`. [length, 1e-06 to 10000]
            large_diameter: Larger diameter of the cone, where it meets the body, in `units`.
                [length, 1e-06 to 10000]
            job: Name of the job, for the heading of the plan. [1 to 60 characters]
            center_distance: Distance between the centers of the two rolls, in `units`. [length,
                1e-06 to 10000]
            paper: Paper that it is to be printed on.
            format: Form of the sheet. Absent: what Accept asks for, `html` where it takes both.
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
            decision_rule: Rule by which limits are judged. `iso-14253-1-2017`: they are kept with a
                probability of at least 95 %. `iso-14253-1-2013`: with a guard band of two standard
                uncertainties at either limit.
            max_blocks: Most blocks to wring in one stack. [count, 1 to 8]
            runout_errors: Runout that the holding adds.
            angle_errors: Errors of the set-up that turn the angle.
            downfeed_step: One step of downfeed, in `units`; 0.0001 in or 0.001 mm where left out.
                [length, 1e-06 to 10000]
            grinding_allowance: Stock left on the cone, measured square to its surface, in `units`.
                [length, 1e-06 to 10000]
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
            _CENTER_SHEET,
            {
                "paper": paper,
                "format": format,
                "set": set,
                "sizes": sizes,
                "box": box,
                "missing": missing,
                "in_use": in_use,
                "units": units,
                "grade": grade,
                "included_angle": included_angle,
                "half_angle": half_angle,
                "taper_per_foot": taper_per_foot,
                "one_in_x": one_in_x,
                "rate_of_taper": rate_of_taper,
                "designation": designation,
                "included_angle_tolerance_arcsec": included_angle_tolerance_arcsec,
                "shank": shank,
                "limit_tir": limit_tir,
                "large_diameter": large_diameter,
                "job": job,
                "center_distance": center_distance,
                "decision_rule": decision_rule,
                "max_blocks": max_blocks,
                "runout_errors": runout_errors,
                "angle_errors": angle_errors,
                "downfeed_step": downfeed_step,
                "grinding_allowance": grinding_allowance,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def correction(
        self,
        *,
        units: Literal["in", "mm"],
        measured: models.CorrectionAngle
        | models.CorrectionSurface
        | models.CorrectionContact
        | models.CorrectionReseating,
        set: str | None = None,
        sizes: Sequence[float] | None = None,
        box: Sequence[models.BlockOwned] | None = None,
        missing: Sequence[float] | None = None,
        in_use: Sequence[float] | None = None,
        work: models.CorrectionCone
        | models.CorrectionFace
        | models.CorrectionCompoundFace
        | None = None,
        set_up: models.CorrectionSinePlate
        | models.CorrectionCompoundPlate
        | models.CorrectionSineDresser
        | models.CorrectionScaleDresser
        | models.CorrectionSwivel
        | None = None,
        observations: models.CorrectionObservations | None = None,
        max_blocks: int = 6,
        setting_error_limit_arcsec: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.JobsCorrectionAnswer:
        """Correction after a measurement.

        From a measured angle, a contact at one end or a runout read twice: the new stacks, dresser
        setting, swivel or clocking, what to expect then, when to leave it, and the likely causes
        with the check that tells each apart.

        Largest request: both stacks from a box of 500 blocks, 8 blocks each; the search is bounded.

        Args:
            units: Unit of every length here and in the answer.
            measured: What was measured.
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
            work: What was to be ground; needed unless a runout was measured.
            set_up: The set-up by which it was ground; absent, no setting is worked out.
            observations: What was seen of the error.
            max_blocks: Most blocks in the new stack, in both together where both are new. [count, 1
                to 8]
            setting_error_limit_arcsec: How far a setting changed so may be off by itself, ±, of the
                half angle or the face: films, seating, the scale; not stated where absent.
                [arcsecond, 0 to 324000]
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `heavy_timeout_seconds`. [second, over 0, at most
                86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.JobsCorrectionAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.jobs.correction(units="in", set="inch-81",
                work=models.CorrectionCone(kind="cone", included_angle=60,
                included_angle_tolerance_arcsec=60),
                measured=models.CorrectionAngle(kind="angle", measured_included_angle="59°58'",
                measurement_error_limit_arcsec=20),
                set_up=models.CorrectionSinePlate(kind="sine-plate", center_distance=5,
                blocks=[2, 0.5]),
                observations=models.CorrectionObservations(repeats_on_second_stack=True,
                grows_along_batch=False), setting_error_limit_arcsec=3)
        """
        return self._sender.send(
            _CORRECTION,
            {
                "set": set,
                "sizes": sizes,
                "box": box,
                "missing": missing,
                "in_use": in_use,
                "units": units,
                "measured": measured,
                "work": work,
                "set_up": set_up,
                "observations": observations,
                "max_blocks": max_blocks,
                "setting_error_limit_arcsec": setting_error_limit_arcsec,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def plan(
        self,
        *,
        units: Literal["in", "mm"],
        job: str,
        feature: models.PlanCone
        | models.PlanCenter
        | models.PlanTaper
        | models.PlanAngledFace
        | models.PlanCompoundFace,
        equipment: models.PlanEquipment | None = None,
        shop_profile: str | None = None,
        pieces: int = 1,
        observed_pieces: Sequence[models.PlanObservedPiece] | None = None,
        minutes_per_piece: float | None = None,
        times: models.PlanTimes | None = None,
        feeding: models.PlanFeeding | None = None,
        room: models.PlanRoom | None = None,
        decision_rule: Literal["iso-14253-1-2017", "iso-14253-1-2013"] = "iso-14253-1-2017",
        max_blocks: int = 5,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.JobPlanAnswer:
        """Plan of a whole job.

        Every way that the shop has to make a cone, a center, a taper or a face, each with its
        settings, its stacks of one box and the errors to expect against the tolerances, ranked by
        one rule; and every way that cannot, with the reason and the nearest that works.

        Largest request: 4 plates with 4 sets each, stacks of up to 8 blocks from up to 500.

        Args:
            units: Unit of every length here and in the answer.
            job: Name of the job, for the heading of the plan. [1 to 60 characters]
            feature: The feature wanted.
            equipment: What the shop has. Either this or `shop_profile`.
            shop_profile: A profile of equipment with which the service was started, by its name. [1
                to 60 characters]
            pieces: Pieces to grind. [count, 1 to 1000000]
            observed_pieces: Pieces that were measured, at least three, from which the wheel's
                breakdown is taken in place of `breakdown_per_piece`. [at most 100 entries]
            minutes_per_piece: Time to grind one piece, in minutes. Absent: by the feed, where it is
                known of every way, else 10 minutes (common practice, no source). [minute, 0 to
                10000]
            times: What the shop takes in time.
            feeding: How the shop feeds.
            room: The gap and the room that are wanted.
            decision_rule: Rule by which limits are judged. `iso-14253-1-2017`: they are kept with a
                probability of at least 95 %. `iso-14253-1-2013`: with a guard band of two standard
                uncertainties at either limit.
            max_blocks: Most blocks that set one plate, under both rolls together. [count, 1 to 8]
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `heavy_timeout_seconds`. [second, over 0, at most
                86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.JobPlanAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.jobs.plan(job="HL-0412 machine center", units="in",
                feature=models.PlanCenter(kind="center", included_angle=60,
                included_angle_tolerance_arcsec=120, large_diameter=0.75,
                shank=models.TaperShank(kind="taper", designation="morse-2"), limit_tir=0.0003),
                equipment=models.PlanEquipment(sine_plates=[models.PlanSinePlate(name="5 in
                plate", center_distance=5, largest_angle=60,
                angle_errors=models.PlateErrorFields(center_distance_error_limit=0.0001,
                roll_difference=5e-05, roll_parallelism=5e-05, face_parallelism=0.0001,
                face_flatness=5e-05, table_flatness=5e-05, particle=2e-05,
                temperature_error_limit_celsius=1, temperature_difference_celsius=0.5,
                axis_pitch_error_limit_arcsec=5, axis_yaw_error_limit_arcsec=300,
                wheel_face_error_limit_arcsec=20, temperature_celsius=22),
                plate_body=models.PlanPlateBody(length=6, thickness=0.75, closed_height=2.2,
                roll_diameter=0.5))], block_sets=[models.PlanBlockSet(name="toolroom set",
                set="inch-81", grade="asme-0")], wheel=models.PlanWheel(diameter=7, width=0.5,
                rpm=3450, head=models.PlanWheelHead(flange_diameter=3, flange_width=1.25,
                guard=models.ClearanceGuard(length=8, width=2.5, lower_edge_below_spindle=1)),
                breakdown_per_piece=5e-06),
                spin_fixture=models.ClearanceFixture(axis_height=1.5, body_length=3,
                body_height=2.6, nose_diameter=1.25, nose_length=0.75, stick_out=0.75,
                shank_diameter=0.75, front_to_high_end=1),
                runout_errors=models.RunoutContributions(adapter_tir=0.0001, fixture_tir=5e-05,
                indicating_tir=5e-05), measuring=models.PlanMeasuring(rolls=models.InspectionRol
                ls(roll_diameters=[0.0625, 0.125, 0.25], measure_error_limit=0.0001,
                stack_rise_error_limit=2e-05),
                comparator=models.InspectionComparator(instrument_angle_error_limit_arcsec=60),
                stack_reading_error_limit=0.0001, comparison_error_limit=5e-05,
                tir_error_limit=5e-05)), pieces=5,
                feeding=models.PlanFeeding(grinding_allowance=0.004, past_large_end=0.1,
                past_small_end=0.25), room=models.PlanRoom(gap_wanted=0.1, room_under_wheel=12))
        """
        return self._sender.send(
            _PLAN,
            {
                "units": units,
                "job": job,
                "feature": feature,
                "equipment": equipment,
                "shop_profile": shop_profile,
                "pieces": pieces,
                "observed_pieces": observed_pieces,
                "minutes_per_piece": minutes_per_piece,
                "times": times,
                "feeding": feeding,
                "room": room,
                "decision_rule": decision_rule,
                "max_blocks": max_blocks,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def routing(
        self,
        *,
        units: Literal["in", "mm"],
        job: str,
        feature: models.PlanCone
        | models.PlanCenter
        | models.PlanTaper
        | models.PlanAngledFace
        | models.PlanCompoundFace,
        equipment: models.PlanEquipment | None = None,
        shop_profile: str | None = None,
        pieces: int = 1,
        observed_pieces: Sequence[models.PlanObservedPiece] | None = None,
        minutes_per_piece: float | None = None,
        times: models.PlanTimes | None = None,
        feeding: models.PlanFeeding | None = None,
        room: models.PlanRoom | None = None,
        decision_rule: Literal["iso-14253-1-2017", "iso-14253-1-2013"] = "iso-14253-1-2017",
        max_blocks: int = 5,
        way: str = "",
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.JobRoutingAnswer:
        """Routing of a job.

        One way of its plan as operations for a planner's system: each with a stable code, so that
        jobs share one master operation, its text, seconds with what was taken as usual in them,
        tools and figures.

        Largest request: 4 plates with 4 sets each, stacks of up to 8 blocks from up to 500.

        Args:
            units: Unit of every length here and in the answer.
            job: Name of the job, for the heading of the plan. [1 to 60 characters]
            feature: The feature wanted.
            equipment: What the shop has. Either this or `shop_profile`.
            shop_profile: A profile of equipment with which the service was started, by its name. [1
                to 60 characters]
            pieces: Pieces to grind. [count, 1 to 1000000]
            observed_pieces: Pieces that were measured, at least three, from which the wheel's
                breakdown is taken in place of `breakdown_per_piece`. [at most 100 entries]
            minutes_per_piece: Time to grind one piece, in minutes. Absent: by the feed, where it is
                known of every way, else 10 minutes (common practice, no source). [minute, 0 to
                10000]
            times: What the shop takes in time.
            feeding: How the shop feeds.
            room: The gap and the room that are wanted.
            decision_rule: Rule by which limits are judged. `iso-14253-1-2017`: they are kept with a
                probability of at least 95 %. `iso-14253-1-2013`: with a guard band of two standard
                uncertainties at either limit.
            max_blocks: Most blocks that set one plate, under both rolls together. [count, 1 to 8]
            way: Which of the plan's `ways`: its name, or its place counted from 1. Absent: the
                first. [at most 40 characters]
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `heavy_timeout_seconds`. [second, over 0, at most
                86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.JobRoutingAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.jobs.routing(job="HL-0412 machine center", units="in",
                feature=models.PlanCenter(kind="center", included_angle=60,
                included_angle_tolerance_arcsec=120, large_diameter=0.75,
                shank=models.TaperShank(kind="taper", designation="morse-2"), limit_tir=0.0003),
                equipment=models.PlanEquipment(sine_plates=[models.PlanSinePlate(name="5 in
                plate", center_distance=5, largest_angle=60,
                angle_errors=models.PlateErrorFields(center_distance_error_limit=0.0001,
                roll_difference=5e-05, roll_parallelism=5e-05, face_parallelism=0.0001,
                face_flatness=5e-05, table_flatness=5e-05, particle=2e-05,
                temperature_error_limit_celsius=1, temperature_difference_celsius=0.5,
                axis_pitch_error_limit_arcsec=5, axis_yaw_error_limit_arcsec=300,
                wheel_face_error_limit_arcsec=20, temperature_celsius=22),
                plate_body=models.PlanPlateBody(length=6, thickness=0.75, closed_height=2.2,
                roll_diameter=0.5))], block_sets=[models.PlanBlockSet(name="toolroom set",
                set="inch-81", grade="asme-0")], wheel=models.PlanWheel(diameter=7, width=0.5,
                rpm=3450, head=models.PlanWheelHead(flange_diameter=3, flange_width=1.25,
                guard=models.ClearanceGuard(length=8, width=2.5, lower_edge_below_spindle=1)),
                breakdown_per_piece=5e-06),
                spin_fixture=models.ClearanceFixture(axis_height=1.5, body_length=3,
                body_height=2.6, nose_diameter=1.25, nose_length=0.75, stick_out=0.75,
                shank_diameter=0.75, front_to_high_end=1),
                runout_errors=models.RunoutContributions(adapter_tir=0.0001, fixture_tir=5e-05,
                indicating_tir=5e-05), measuring=models.PlanMeasuring(rolls=models.InspectionRol
                ls(roll_diameters=[0.0625, 0.125, 0.25], measure_error_limit=0.0001,
                stack_rise_error_limit=2e-05),
                comparator=models.InspectionComparator(instrument_angle_error_limit_arcsec=60),
                stack_reading_error_limit=0.0001, comparison_error_limit=5e-05,
                tir_error_limit=5e-05)), pieces=5,
                feeding=models.PlanFeeding(grinding_allowance=0.004, past_large_end=0.1,
                past_small_end=0.25), room=models.PlanRoom(gap_wanted=0.1, room_under_wheel=12))
        """
        return self._sender.send(
            _ROUTING,
            {
                "units": units,
                "job": job,
                "feature": feature,
                "equipment": equipment,
                "shop_profile": shop_profile,
                "pieces": pieces,
                "observed_pieces": observed_pieces,
                "minutes_per_piece": minutes_per_piece,
                "times": times,
                "feeding": feeding,
                "room": room,
                "decision_rule": decision_rule,
                "max_blocks": max_blocks,
                "way": way,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def routing_csv(
        self,
        *,
        units: Literal["in", "mm"],
        job: str,
        feature: models.PlanCone
        | models.PlanCenter
        | models.PlanTaper
        | models.PlanAngledFace
        | models.PlanCompoundFace,
        delimiter: Literal["comma", "semicolon", "tab"] = "comma",
        equipment: models.PlanEquipment | None = None,
        shop_profile: str | None = None,
        pieces: int = 1,
        observed_pieces: Sequence[models.PlanObservedPiece] | None = None,
        minutes_per_piece: float | None = None,
        times: models.PlanTimes | None = None,
        feeding: models.PlanFeeding | None = None,
        room: models.PlanRoom | None = None,
        decision_rule: Literal["iso-14253-1-2017", "iso-14253-1-2013"] = "iso-14253-1-2017",
        max_blocks: int = 5,
        way: str = "",
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> str:
        """Routing of a job: CSV.

        What `jobs.routing` answers, a line an operation; a stop stands in each.

        Args:
            units: Unit of every length here and in the answer.
            job: Name of the job, for the heading of the plan. [1 to 60 characters]
            feature: The feature wanted.
            delimiter: What parts the columns. Numbers have a decimal point with each.
            equipment: What the shop has. Either this or `shop_profile`.
            shop_profile: A profile of equipment with which the service was started, by its name. [1
                to 60 characters]
            pieces: Pieces to grind. [count, 1 to 1000000]
            observed_pieces: Pieces that were measured, at least three, from which the wheel's
                breakdown is taken in place of `breakdown_per_piece`. [at most 100 entries]
            minutes_per_piece: Time to grind one piece, in minutes. Absent: by the feed, where it is
                known of every way, else 10 minutes (common practice, no source). [minute, 0 to
                10000]
            times: What the shop takes in time.
            feeding: How the shop feeds.
            room: The gap and the room that are wanted.
            decision_rule: Rule by which limits are judged. `iso-14253-1-2017`: they are kept with a
                probability of at least 95 %. `iso-14253-1-2013`: with a guard band of two standard
                uncertainties at either limit.
            max_blocks: Most blocks that set one plate, under both rolls together. [count, 1 to 8]
            way: Which of the plan's `ways`: its name, or its place counted from 1. Absent: the
                first. [at most 40 characters]
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `heavy_timeout_seconds`. [second, over 0, at most
                86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            str: the body, as it came.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.
        """
        return self._sender.send(
            _ROUTING_CSV,
            {
                "delimiter": delimiter,
                "units": units,
                "job": job,
                "feature": feature,
                "equipment": equipment,
                "shop_profile": shop_profile,
                "pieces": pieces,
                "observed_pieces": observed_pieces,
                "minutes_per_piece": minutes_per_piece,
                "times": times,
                "feeding": feeding,
                "room": room,
                "decision_rule": decision_rule,
                "max_blocks": max_blocks,
                "way": way,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def sheet(
        self,
        *,
        units: Literal["in", "mm"],
        job: str,
        feature: models.PlanCone
        | models.PlanCenter
        | models.PlanTaper
        | models.PlanAngledFace
        | models.PlanCompoundFace,
        paper: Literal["a4", "letter"] = "a4",
        format: Literal["html", "pdf"] | None = None,
        way: str | None = None,
        kind: Literal["set-up", "inspection"] = "set-up",
        equipment: models.PlanEquipment | None = None,
        shop_profile: str | None = None,
        pieces: int = 1,
        observed_pieces: Sequence[models.PlanObservedPiece] | None = None,
        minutes_per_piece: float | None = None,
        times: models.PlanTimes | None = None,
        feeding: models.PlanFeeding | None = None,
        room: models.PlanRoom | None = None,
        decision_rule: Literal["iso-14253-1-2017", "iso-14253-1-2013"] = "iso-14253-1-2017",
        max_blocks: int = 5,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> Sheet:
        """Plan of a whole job: sheet.

        What `jobs.plan` answers, on a page for the machine.

        Args:
            units: Unit of every length here and in the answer.
            job: Name of the job, for the heading of the plan. [1 to 60 characters]
            feature: The feature wanted.
            paper: Paper that it is to be printed on.
            format: Form of the sheet. Absent: what Accept asks for, `html` where it takes both.
            way: Which of `ways`: its name, or its place counted from 1. Absent: the first. [at most
                40 characters]
            kind: For the hand at the machine, or for who inspects the pieces.
            equipment: What the shop has. Either this or `shop_profile`.
            shop_profile: A profile of equipment with which the service was started, by its name. [1
                to 60 characters]
            pieces: Pieces to grind. [count, 1 to 1000000]
            observed_pieces: Pieces that were measured, at least three, from which the wheel's
                breakdown is taken in place of `breakdown_per_piece`. [at most 100 entries]
            minutes_per_piece: Time to grind one piece, in minutes. Absent: by the feed, where it is
                known of every way, else 10 minutes (common practice, no source). [minute, 0 to
                10000]
            times: What the shop takes in time.
            feeding: How the shop feeds.
            room: The gap and the room that are wanted.
            decision_rule: Rule by which limits are judged. `iso-14253-1-2017`: they are kept with a
                probability of at least 95 %. `iso-14253-1-2013`: with a guard band of two standard
                uncertainties at either limit.
            max_blocks: Most blocks that set one plate, under both rolls together. [count, 1 to 8]
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
                "way": way,
                "kind": kind,
                "units": units,
                "job": job,
                "feature": feature,
                "equipment": equipment,
                "shop_profile": shop_profile,
                "pieces": pieces,
                "observed_pieces": observed_pieces,
                "minutes_per_piece": minutes_per_piece,
                "times": times,
                "feeding": feeding,
                "room": room,
                "decision_rule": decision_rule,
                "max_blocks": max_blocks,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )


class AsyncJobsCalls:
    """Calls of the topic `jobs`, to be awaited."""

    def __init__(self, sender: AsyncSender) -> None:
        self._sender = sender

    async def center(
        self,
        *,
        units: Literal["in", "mm"],
        included_angle_tolerance_arcsec: float,
        shank: models.StraightShank | models.TaperShank,
        limit_tir: float,
        large_diameter: float,
        job: str,
        center_distance: float,
        set: str | None = None,
        sizes: Sequence[float] | None = None,
        box: Sequence[models.BlockOwned] | None = None,
        missing: Sequence[float] | None = None,
        in_use: Sequence[float] | None = None,
        grade: str | None = None,
        included_angle: float | str | None = None,
        half_angle: float | str | None = None,
        taper_per_foot: float | None = None,
        one_in_x: float | None = None,
        rate_of_taper: float | None = None,
        designation: str | None = None,
        decision_rule: Literal["iso-14253-1-2017", "iso-14253-1-2013"] = "iso-14253-1-2017",
        max_blocks: int = 5,
        runout_errors: models.RunoutContributions | None = None,
        angle_errors: models.AngleContributions | None = None,
        downfeed_step: float | None = None,
        grinding_allowance: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.CenterJobAnswer:
        """Plan of a center ground on a sine plate. As `Halfangle.jobs.center`, to be awaited."""
        return await self._sender.send(
            _CENTER,
            {
                "set": set,
                "sizes": sizes,
                "box": box,
                "missing": missing,
                "in_use": in_use,
                "units": units,
                "grade": grade,
                "included_angle": included_angle,
                "half_angle": half_angle,
                "taper_per_foot": taper_per_foot,
                "one_in_x": one_in_x,
                "rate_of_taper": rate_of_taper,
                "designation": designation,
                "included_angle_tolerance_arcsec": included_angle_tolerance_arcsec,
                "shank": shank,
                "limit_tir": limit_tir,
                "large_diameter": large_diameter,
                "job": job,
                "center_distance": center_distance,
                "decision_rule": decision_rule,
                "max_blocks": max_blocks,
                "runout_errors": runout_errors,
                "angle_errors": angle_errors,
                "downfeed_step": downfeed_step,
                "grinding_allowance": grinding_allowance,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def center_sheet(
        self,
        *,
        units: Literal["in", "mm"],
        included_angle_tolerance_arcsec: float,
        shank: models.StraightShank | models.TaperShank,
        limit_tir: float,
        large_diameter: float,
        job: str,
        center_distance: float,
        paper: Literal["a4", "letter"] = "a4",
        format: Literal["html", "pdf"] | None = None,
        set: str | None = None,
        sizes: Sequence[float] | None = None,
        box: Sequence[models.BlockOwned] | None = None,
        missing: Sequence[float] | None = None,
        in_use: Sequence[float] | None = None,
        grade: str | None = None,
        included_angle: float | str | None = None,
        half_angle: float | str | None = None,
        taper_per_foot: float | None = None,
        one_in_x: float | None = None,
        rate_of_taper: float | None = None,
        designation: str | None = None,
        decision_rule: Literal["iso-14253-1-2017", "iso-14253-1-2013"] = "iso-14253-1-2017",
        max_blocks: int = 5,
        runout_errors: models.RunoutContributions | None = None,
        angle_errors: models.AngleContributions | None = None,
        downfeed_step: float | None = None,
        grinding_allowance: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> Sheet:
        """As `Halfangle.jobs.center_sheet`, to be awaited."""
        return await self._sender.send(
            _CENTER_SHEET,
            {
                "paper": paper,
                "format": format,
                "set": set,
                "sizes": sizes,
                "box": box,
                "missing": missing,
                "in_use": in_use,
                "units": units,
                "grade": grade,
                "included_angle": included_angle,
                "half_angle": half_angle,
                "taper_per_foot": taper_per_foot,
                "one_in_x": one_in_x,
                "rate_of_taper": rate_of_taper,
                "designation": designation,
                "included_angle_tolerance_arcsec": included_angle_tolerance_arcsec,
                "shank": shank,
                "limit_tir": limit_tir,
                "large_diameter": large_diameter,
                "job": job,
                "center_distance": center_distance,
                "decision_rule": decision_rule,
                "max_blocks": max_blocks,
                "runout_errors": runout_errors,
                "angle_errors": angle_errors,
                "downfeed_step": downfeed_step,
                "grinding_allowance": grinding_allowance,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def correction(
        self,
        *,
        units: Literal["in", "mm"],
        measured: models.CorrectionAngle
        | models.CorrectionSurface
        | models.CorrectionContact
        | models.CorrectionReseating,
        set: str | None = None,
        sizes: Sequence[float] | None = None,
        box: Sequence[models.BlockOwned] | None = None,
        missing: Sequence[float] | None = None,
        in_use: Sequence[float] | None = None,
        work: models.CorrectionCone
        | models.CorrectionFace
        | models.CorrectionCompoundFace
        | None = None,
        set_up: models.CorrectionSinePlate
        | models.CorrectionCompoundPlate
        | models.CorrectionSineDresser
        | models.CorrectionScaleDresser
        | models.CorrectionSwivel
        | None = None,
        observations: models.CorrectionObservations | None = None,
        max_blocks: int = 6,
        setting_error_limit_arcsec: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.JobsCorrectionAnswer:
        """Correction after a measurement. As `Halfangle.jobs.correction`, to be awaited."""
        return await self._sender.send(
            _CORRECTION,
            {
                "set": set,
                "sizes": sizes,
                "box": box,
                "missing": missing,
                "in_use": in_use,
                "units": units,
                "measured": measured,
                "work": work,
                "set_up": set_up,
                "observations": observations,
                "max_blocks": max_blocks,
                "setting_error_limit_arcsec": setting_error_limit_arcsec,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def plan(
        self,
        *,
        units: Literal["in", "mm"],
        job: str,
        feature: models.PlanCone
        | models.PlanCenter
        | models.PlanTaper
        | models.PlanAngledFace
        | models.PlanCompoundFace,
        equipment: models.PlanEquipment | None = None,
        shop_profile: str | None = None,
        pieces: int = 1,
        observed_pieces: Sequence[models.PlanObservedPiece] | None = None,
        minutes_per_piece: float | None = None,
        times: models.PlanTimes | None = None,
        feeding: models.PlanFeeding | None = None,
        room: models.PlanRoom | None = None,
        decision_rule: Literal["iso-14253-1-2017", "iso-14253-1-2013"] = "iso-14253-1-2017",
        max_blocks: int = 5,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.JobPlanAnswer:
        """Plan of a whole job. As `Halfangle.jobs.plan`, to be awaited."""
        return await self._sender.send(
            _PLAN,
            {
                "units": units,
                "job": job,
                "feature": feature,
                "equipment": equipment,
                "shop_profile": shop_profile,
                "pieces": pieces,
                "observed_pieces": observed_pieces,
                "minutes_per_piece": minutes_per_piece,
                "times": times,
                "feeding": feeding,
                "room": room,
                "decision_rule": decision_rule,
                "max_blocks": max_blocks,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def routing(
        self,
        *,
        units: Literal["in", "mm"],
        job: str,
        feature: models.PlanCone
        | models.PlanCenter
        | models.PlanTaper
        | models.PlanAngledFace
        | models.PlanCompoundFace,
        equipment: models.PlanEquipment | None = None,
        shop_profile: str | None = None,
        pieces: int = 1,
        observed_pieces: Sequence[models.PlanObservedPiece] | None = None,
        minutes_per_piece: float | None = None,
        times: models.PlanTimes | None = None,
        feeding: models.PlanFeeding | None = None,
        room: models.PlanRoom | None = None,
        decision_rule: Literal["iso-14253-1-2017", "iso-14253-1-2013"] = "iso-14253-1-2017",
        max_blocks: int = 5,
        way: str = "",
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.JobRoutingAnswer:
        """Routing of a job. As `Halfangle.jobs.routing`, to be awaited."""
        return await self._sender.send(
            _ROUTING,
            {
                "units": units,
                "job": job,
                "feature": feature,
                "equipment": equipment,
                "shop_profile": shop_profile,
                "pieces": pieces,
                "observed_pieces": observed_pieces,
                "minutes_per_piece": minutes_per_piece,
                "times": times,
                "feeding": feeding,
                "room": room,
                "decision_rule": decision_rule,
                "max_blocks": max_blocks,
                "way": way,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def routing_csv(
        self,
        *,
        units: Literal["in", "mm"],
        job: str,
        feature: models.PlanCone
        | models.PlanCenter
        | models.PlanTaper
        | models.PlanAngledFace
        | models.PlanCompoundFace,
        delimiter: Literal["comma", "semicolon", "tab"] = "comma",
        equipment: models.PlanEquipment | None = None,
        shop_profile: str | None = None,
        pieces: int = 1,
        observed_pieces: Sequence[models.PlanObservedPiece] | None = None,
        minutes_per_piece: float | None = None,
        times: models.PlanTimes | None = None,
        feeding: models.PlanFeeding | None = None,
        room: models.PlanRoom | None = None,
        decision_rule: Literal["iso-14253-1-2017", "iso-14253-1-2013"] = "iso-14253-1-2017",
        max_blocks: int = 5,
        way: str = "",
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> str:
        """Routing of a job: CSV. As `Halfangle.jobs.routing_csv`, to be awaited."""
        return await self._sender.send(
            _ROUTING_CSV,
            {
                "delimiter": delimiter,
                "units": units,
                "job": job,
                "feature": feature,
                "equipment": equipment,
                "shop_profile": shop_profile,
                "pieces": pieces,
                "observed_pieces": observed_pieces,
                "minutes_per_piece": minutes_per_piece,
                "times": times,
                "feeding": feeding,
                "room": room,
                "decision_rule": decision_rule,
                "max_blocks": max_blocks,
                "way": way,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def sheet(
        self,
        *,
        units: Literal["in", "mm"],
        job: str,
        feature: models.PlanCone
        | models.PlanCenter
        | models.PlanTaper
        | models.PlanAngledFace
        | models.PlanCompoundFace,
        paper: Literal["a4", "letter"] = "a4",
        format: Literal["html", "pdf"] | None = None,
        way: str | None = None,
        kind: Literal["set-up", "inspection"] = "set-up",
        equipment: models.PlanEquipment | None = None,
        shop_profile: str | None = None,
        pieces: int = 1,
        observed_pieces: Sequence[models.PlanObservedPiece] | None = None,
        minutes_per_piece: float | None = None,
        times: models.PlanTimes | None = None,
        feeding: models.PlanFeeding | None = None,
        room: models.PlanRoom | None = None,
        decision_rule: Literal["iso-14253-1-2017", "iso-14253-1-2013"] = "iso-14253-1-2017",
        max_blocks: int = 5,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> Sheet:
        """Plan of a whole job: sheet. As `Halfangle.jobs.sheet`, to be awaited."""
        return await self._sender.send(
            _SHEET,
            {
                "paper": paper,
                "format": format,
                "way": way,
                "kind": kind,
                "units": units,
                "job": job,
                "feature": feature,
                "equipment": equipment,
                "shop_profile": shop_profile,
                "pieces": pieces,
                "observed_pieces": observed_pieces,
                "minutes_per_piece": minutes_per_piece,
                "times": times,
                "feeding": feeding,
                "room": room,
                "decision_rule": decision_rule,
                "max_blocks": max_blocks,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )
