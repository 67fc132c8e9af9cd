# Generated from openapi/openapi.json by openapi/generate.py. Do not edit.
"""Calls of the topic `sine`."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Any, Literal

from halfangle_client.endpoint import AsyncSender, Endpoint, Sender
from halfangle_client.sheet import Sheet

if TYPE_CHECKING:
    from halfangle_client.generated import models

_ANGLE: Endpoint[models.SineAngleAnswer] = Endpoint(
    name="sine.angle",
    method="POST",
    path="/v1/sine/angle",
    answer="SineAngleAnswer",
    accept="application/json",
    sends="application/json",
)
_CENTER_DISTANCE: Endpoint[models.SineCenterDistanceAnswer] = Endpoint(
    name="sine.center_distance",
    method="POST",
    path="/v1/sine/center-distance",
    answer="SineCenterDistanceAnswer",
    accept="application/json",
    sends="application/json",
    heavy=True,
)
_COMPOUND: Endpoint[models.SineCompoundAnswer] = Endpoint(
    name="sine.compound",
    method="POST",
    path="/v1/sine/compound",
    answer="SineCompoundAnswer",
    accept="application/json",
    sends="application/json",
    heavy=True,
)
_COMPOUND_ANGLES: Endpoint[models.SineCompoundAnglesAnswer] = Endpoint(
    name="sine.compound_angles",
    method="POST",
    path="/v1/sine/compound-angles",
    answer="SineCompoundAnglesAnswer",
    accept="application/json",
    sends="application/json",
)
_COMPOUND_SHEET: Endpoint[Sheet] = Endpoint(
    name="sine.compound_sheet",
    method="POST",
    path="/v1/sine/compound/sheet",
    answer=Sheet,
    accept="text/html, application/pdf",
    sends="application/json",
    query=(
        "paper",
        "format",
    ),
    heavy=True,
)
_CORRECTION: Endpoint[models.SineCorrectionAnswer] = Endpoint(
    name="sine.correction",
    method="POST",
    path="/v1/sine/correction",
    answer="SineCorrectionAnswer",
    accept="application/json",
    sends="application/json",
    heavy=True,
)
_GET_BAR_TOLERANCE: Endpoint[models.SineBarToleranceEntryAnswer] = Endpoint(
    name="sine.get_bar_tolerance",
    method="GET",
    path="/v1/sine/bar-tolerances/{key}",
    answer="SineBarToleranceEntryAnswer",
    accept="application/json",
)
_LIST_BAR_TOLERANCES: Endpoint[models.SineBarToleranceListAnswer] = Endpoint(
    name="sine.list_bar_tolerances",
    method="GET",
    path="/v1/sine/bar-tolerances",
    answer="SineBarToleranceListAnswer",
    accept="application/json",
)
_LOW_STACK: Endpoint[models.SineLowStackAnswer] = Endpoint(
    name="sine.low_stack",
    method="POST",
    path="/v1/sine/low-stack",
    answer="SineLowStackAnswer",
    accept="application/json",
    sends="application/json",
    heavy=True,
)
_LOW_STACK_SHEET: Endpoint[Sheet] = Endpoint(
    name="sine.low_stack_sheet",
    method="POST",
    path="/v1/sine/low-stack/sheet",
    answer=Sheet,
    accept="text/html, application/pdf",
    sends="application/json",
    query=(
        "paper",
        "format",
    ),
    heavy=True,
)
_MEASURED_ANGLE: Endpoint[models.SineMeasuredAngleAnswer] = Endpoint(
    name="sine.measured_angle",
    method="POST",
    path="/v1/sine/measured-angle",
    answer="SineMeasuredAngleAnswer",
    accept="application/json",
    sends="application/json",
    heavy=True,
)
_OVER_PIN: Endpoint[models.SineOverPinAnswer] = Endpoint(
    name="sine.over_pin",
    method="POST",
    path="/v1/sine/over-pin",
    answer="SineOverPinAnswer",
    accept="application/json",
    sends="application/json",
    heavy=True,
)
_REQUIREMENTS: Endpoint[models.SineRequirementsAnswer] = Endpoint(
    name="sine.requirements",
    method="POST",
    path="/v1/sine/requirements",
    answer="SineRequirementsAnswer",
    accept="application/json",
    sends="application/json",
    heavy=True,
)
_SETTING: Endpoint[models.SineSettingAnswer] = Endpoint(
    name="sine.setting",
    method="POST",
    path="/v1/sine/setting",
    answer="SineSettingAnswer",
    accept="application/json",
    sends="application/json",
)
_SETTING_SHEET: Endpoint[Sheet] = Endpoint(
    name="sine.setting_sheet",
    method="POST",
    path="/v1/sine/setting/sheet",
    answer=Sheet,
    accept="text/html, application/pdf",
    sends="application/json",
    query=(
        "paper",
        "format",
    ),
    heavy=True,
)
_TABLE: Endpoint[models.SineTableAnswer] = Endpoint(
    name="sine.table",
    method="POST",
    path="/v1/sine/table",
    answer="SineTableAnswer",
    accept="application/json",
    sends="application/json",
    heavy=True,
)
_TAPER_ANGLE: Endpoint[models.SineTaperAngleAnswer] = Endpoint(
    name="sine.taper_angle",
    method="POST",
    path="/v1/sine/taper-angle",
    answer="SineTaperAngleAnswer",
    accept="application/json",
    sends="application/json",
)
_TAPER_SETTING: Endpoint[models.SineTaperSettingAnswer] = Endpoint(
    name="sine.taper_setting",
    method="POST",
    path="/v1/sine/taper-setting",
    answer="SineTaperSettingAnswer",
    accept="application/json",
    sends="application/json",
)
_TAPER_SETTING_SHEET: Endpoint[Sheet] = Endpoint(
    name="sine.taper_setting_sheet",
    method="POST",
    path="/v1/sine/taper-setting/sheet",
    answer=Sheet,
    accept="text/html, application/pdf",
    sends="application/json",
    query=(
        "paper",
        "format",
    ),
    heavy=True,
)
_UNCERTAINTY: Endpoint[models.SineUncertaintyAnswer] = Endpoint(
    name="sine.uncertainty",
    method="POST",
    path="/v1/sine/uncertainty",
    answer="SineUncertaintyAnswer",
    accept="application/json",
    sends="application/json",
    heavy=True,
)

ENDPOINTS: tuple[Endpoint[Any], ...] = (
    _ANGLE,
    _CENTER_DISTANCE,
    _COMPOUND,
    _COMPOUND_ANGLES,
    _COMPOUND_SHEET,
    _CORRECTION,
    _GET_BAR_TOLERANCE,
    _LIST_BAR_TOLERANCES,
    _LOW_STACK,
    _LOW_STACK_SHEET,
    _MEASURED_ANGLE,
    _OVER_PIN,
    _REQUIREMENTS,
    _SETTING,
    _SETTING_SHEET,
    _TABLE,
    _TAPER_ANGLE,
    _TAPER_SETTING,
    _TAPER_SETTING_SHEET,
    _UNCERTAINTY,
)


class SineCalls:
    """Calls of the topic `sine`."""

    def __init__(self, sender: Sender) -> None:
        self._sender = sender

    def angle(
        self,
        *,
        units: Literal["in", "mm"],
        center_distance: float,
        high_roll_diameter: float | None = None,
        low_roll_diameter: float | None = None,
        base_step: float = 0.0,
        height: float | None = None,
        high_stack: float | None = None,
        low_stack: float = 0.0,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.SineAngleAnswer:
        """Angle of a stack.

        The angle that a stack, or the stacks under both rolls, gives on a sine bar or plate.

        Args:
            units: Unit of every length here and in the answer.
            center_distance: Distance between the centers of the two rolls, in `units`. [length,
                1e-06 to 10000]
            high_roll_diameter: Diameter of the roll that is raised, in `units`; only where the
                rolls differ, together with `low_roll_diameter`. [length, 1e-06 to 10000]
            low_roll_diameter: Diameter of the other roll, in `units`. [length, 1e-06 to 10000]
            base_step: Height of the low roll's seat over the high roll's, in `units`: the stack at
                which a plate with equal rolls stands at zero. [length, -10000 to 10000]
            height: Height of the stack under the high roll over that under the low roll; less than
                the center distance. Either this or `high_stack`. [length, 1e-06 to 10000]
            high_stack: Stack under the high roll, as measured, in `units`. [length, 0 to 10000]
            low_stack: Stack under the low roll, as measured; counts with `high_stack` only.
                [length, 0 to 10000]
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `timeout_seconds`. [second, over 0, at most 86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.SineAngleAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.sine.angle(units="in", center_distance=5, height=2.5)
        """
        return self._sender.send(
            _ANGLE,
            {
                "units": units,
                "center_distance": center_distance,
                "high_roll_diameter": high_roll_diameter,
                "low_roll_diameter": low_roll_diameter,
                "base_step": base_step,
                "height": height,
                "high_stack": high_stack,
                "low_stack": low_stack,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def center_distance(
        self,
        *,
        units: Literal["in", "mm"],
        settings: Sequence[models.SineCalibrationSetting],
        indicator_travel: float,
        base_step: float = 0.0,
        nominal_center_distance: float | None = None,
        angle_error_limit_arcsec: float | None = None,
        stack_error_limit: float | None = None,
        indicating_error_limit: float | None = None,
        face_lean_error_limit_arcsec: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.SineCenterDistanceAnswer:
        """Center distance from angle blocks.

        Calibrates a sine bar: the center distance, and from several settings the lean of its face,
        by angle blocks that an indicator shows level on it.

        Largest request: 12 settings.

        Args:
            units: Unit of every length here and in the answer.
            settings: Settings; from two different angles on the lean of the face is told apart. [1
                to 12 entries]
            indicator_travel: Travel of the indicator, in `units`. [length, 1e-06 to 10000]
            base_step: Height of the low roll's seat over the high roll's, in `units`: the stack at
                which a plate with equal rolls stands at zero. [length, -10000 to 10000]
            nominal_center_distance: Center distance as engraved, in `units`. [length, 1e-06 to
                10000]
            angle_error_limit_arcsec: Largest error ± of each angle of the blocks, in arc-seconds.
                [arcsecond, 0 to 3600]
            stack_error_limit: Largest error ± of each stack's height, in `units`. [length, 0 to
                10000]
            indicating_error_limit: Largest error ± of each rise that the indicator reads, in
                `units`. [length, 0 to 10000]
            face_lean_error_limit_arcsec: Limit ± of the lean of the face to the line of the rolls,
                in arc-seconds; counts with one setting, from several it is found. [arcsecond, 0 to
                3600]
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `heavy_timeout_seconds`. [second, over 0, at most
                86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.SineCenterDistanceAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.sine.center_distance(units="in",
                settings=[models.SineCalibrationSetting(angle=15, height=1.29415,
                indicator_rise=-2e-05), models.SineCalibrationSetting(angle=30, height=2.5001,
                indicator_rise=1e-05), models.SineCalibrationSetting(angle=45, height=3.5357)],
                indicator_travel=2, nominal_center_distance=5, angle_error_limit_arcsec=1,
                stack_error_limit=1e-05, indicating_error_limit=1e-05)
        """
        return self._sender.send(
            _CENTER_DISTANCE,
            {
                "units": units,
                "settings": settings,
                "indicator_travel": indicator_travel,
                "base_step": base_step,
                "nominal_center_distance": nominal_center_distance,
                "angle_error_limit_arcsec": angle_error_limit_arcsec,
                "stack_error_limit": stack_error_limit,
                "indicating_error_limit": indicating_error_limit,
                "face_lean_error_limit_arcsec": face_lean_error_limit_arcsec,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def compound(
        self,
        *,
        units: Literal["in", "mm"],
        base_center_distance: float,
        upper_center_distance: float,
        base_axis: Literal["x", "y"],
        frame: Literal["part", "machine"],
        orientation: models.SineProjectedAngles | models.SineTrueTilt | models.SineNormal,
        set: str | None = None,
        sizes: Sequence[float] | None = None,
        box: Sequence[models.BlockOwned] | None = None,
        missing: Sequence[float] | None = None,
        in_use: Sequence[float] | None = None,
        base_step: float = 0.0,
        upper_step: float = 0.0,
        base_raised_side: Literal["right", "left", "back", "front"] | None = None,
        upper_raised_side: Literal["right", "left", "back", "front"] | None = None,
        base_largest_angle: float | str | None = None,
        upper_largest_angle: float | str | None = None,
        resolution: float | None = None,
        max_blocks: int = 5,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.SineCompoundAnswer:
        """Compound sine plate.

        Both stacks of a two-axis sine plate for a surface given by projected angles, by its true
        tilt and direction, or by its normal, in the part's or in the machine's frame; checked by
        rotating the normal back, with the turn of the edges in plan.

        Largest request: two stacks of up to 8 blocks each from 500.

        Args:
            units: Unit of every length here and in the answer.
            base_center_distance: Distance between the centers of the two rolls, in `units`.
                [length, 1e-06 to 10000]
            upper_center_distance: Distance between the centers of the two rolls, in `units`.
                [length, 1e-06 to 10000]
            base_axis: Axis of the machine along which the hinge of the base plate lies: `x` (left
                to right; the base raises the back or the front) or `y` (front to back; the base
                raises the right or the left). The upper plate's hinge lies along the other. Always
                required: the same two stacks in the other order give another surface.
            frame: Whose views the orientation is given in. `part`: the part's own, lying flat; the
                plate shall bring that surface level under the wheel. `machine`: the machine's; the
                upper plate's face itself shall stand with these angles. Always required: at 30/30
                the wrong one is 4.58° out.
            orientation: The surface.
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
            base_step: Stack under the base plate's roll at which it stands at zero. [length, -10000
                to 10000]
            upper_step: Stack under the upper plate's roll at which it stands at zero. [length,
                -10000 to 10000]
            base_raised_side: Side that this plate raises, away from its hinge: `right` or `left`
                where the hinge lies along Y, `back` or `front` where it lies along X. The work is
                then turned in plan so that no other side is raised. Absent: either side may be.
            upper_raised_side: Side that this plate raises, away from its hinge: `right` or `left`
                where the hinge lies along Y, `back` or `front` where it lies along X. The work is
                then turned in plan so that no other side is raised. Absent: either side may be.
            base_largest_angle: Largest angle that the plate reaches, in degrees; past it a setting
                is refused. Absent: anything below 90°. [degree, over 0, under 90; or text in
                degrees, minutes, seconds]
            upper_largest_angle: Largest angle that the plate reaches, in degrees; past it a setting
                is refused. Absent: anything below 90°. [degree, over 0, under 90; or text in
                degrees, minutes, seconds]
            resolution: Step to which a stack can be built, in `units`. Absent: 0.0001 in or 0.001
                mm. [length, 1e-06 to 10000]
            max_blocks: Most blocks in each of the two stacks. [count, 1 to 8]
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `heavy_timeout_seconds`. [second, over 0, at most
                86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.SineCompoundAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.sine.compound(units="in", base_center_distance=5, upper_center_distance=5,
                base_axis="x", frame="part",
                orientation=models.SineProjectedAngles(kind="projected-angles", x_angle=30,
                y_angle=30), set="inch-81")
        """
        return self._sender.send(
            _COMPOUND,
            {
                "set": set,
                "sizes": sizes,
                "box": box,
                "missing": missing,
                "in_use": in_use,
                "units": units,
                "base_center_distance": base_center_distance,
                "upper_center_distance": upper_center_distance,
                "base_axis": base_axis,
                "base_step": base_step,
                "upper_step": upper_step,
                "base_raised_side": base_raised_side,
                "upper_raised_side": upper_raised_side,
                "frame": frame,
                "orientation": orientation,
                "base_largest_angle": base_largest_angle,
                "upper_largest_angle": upper_largest_angle,
                "resolution": resolution,
                "max_blocks": max_blocks,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def compound_angles(
        self,
        *,
        base_center_distance: float,
        upper_center_distance: float,
        base_axis: Literal["x", "y"],
        units: Literal["in", "mm"],
        base_height: float,
        upper_height: float,
        base_step: float = 0.0,
        upper_step: float = 0.0,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.SineCompoundAnglesAnswer:
        """Angles of a compound setting.

        What two stacks under a compound sine plate set: the surface of the part that is level, and
        how the upper plate's face stands.

        Args:
            base_center_distance: Distance between the centers of the two rolls, in `units`.
                [length, 1e-06 to 10000]
            upper_center_distance: Distance between the centers of the two rolls, in `units`.
                [length, 1e-06 to 10000]
            base_axis: Axis of the machine along which the hinge of the base plate lies: `x` (left
                to right; the base raises the back or the front) or `y` (front to back; the base
                raises the right or the left). The upper plate's hinge lies along the other. Always
                required: the same two stacks in the other order give another surface.
            units: Unit of every length here and in the answer.
            base_height: Stack under the base plate's raised roll, in `units`: positive under the
                right or back roll, negative under the left or front one. [length, -10000 to 10000]
            upper_height: Stack under the upper plate's raised roll, signed in the same way.
                [length, -10000 to 10000]
            base_step: Stack under the base plate's roll at which it stands at zero. [length, -10000
                to 10000]
            upper_step: Stack under the upper plate's roll at which it stands at zero. [length,
                -10000 to 10000]
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `timeout_seconds`. [second, over 0, at most 86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.SineCompoundAnglesAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.sine.compound_angles(units="in", base_center_distance=5,
                upper_center_distance=5, base_axis="x", base_height=-2.2360679775,
                upper_height=-2.5)
        """
        return self._sender.send(
            _COMPOUND_ANGLES,
            {
                "base_center_distance": base_center_distance,
                "upper_center_distance": upper_center_distance,
                "base_axis": base_axis,
                "base_step": base_step,
                "upper_step": upper_step,
                "units": units,
                "base_height": base_height,
                "upper_height": upper_height,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def compound_sheet(
        self,
        *,
        units: Literal["in", "mm"],
        base_center_distance: float,
        upper_center_distance: float,
        base_axis: Literal["x", "y"],
        frame: Literal["part", "machine"],
        orientation: models.SineProjectedAngles | models.SineTrueTilt | models.SineNormal,
        paper: Literal["a4", "letter"] = "a4",
        format: Literal["html", "pdf"] | None = None,
        set: str | None = None,
        sizes: Sequence[float] | None = None,
        box: Sequence[models.BlockOwned] | None = None,
        missing: Sequence[float] | None = None,
        in_use: Sequence[float] | None = None,
        base_step: float = 0.0,
        upper_step: float = 0.0,
        base_raised_side: Literal["right", "left", "back", "front"] | None = None,
        upper_raised_side: Literal["right", "left", "back", "front"] | None = None,
        base_largest_angle: float | str | None = None,
        upper_largest_angle: float | str | None = None,
        resolution: float | None = None,
        max_blocks: int = 5,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> Sheet:
        """Compound sine plate: sheet.

        What `sine.compound` answers, on a page for the machine.

        Args:
            units: Unit of every length here and in the answer.
            base_center_distance: Distance between the centers of the two rolls, in `units`.
                [length, 1e-06 to 10000]
            upper_center_distance: Distance between the centers of the two rolls, in `units`.
                [length, 1e-06 to 10000]
            base_axis: Axis of the machine along which the hinge of the base plate lies: `x` (left
                to right; the base raises the back or the front) or `y` (front to back; the base
                raises the right or the left). The upper plate's hinge lies along the other. Always
                required: the same two stacks in the other order give another surface.
            frame: Whose views the orientation is given in. `part`: the part's own, lying flat; the
                plate shall bring that surface level under the wheel. `machine`: the machine's; the
                upper plate's face itself shall stand with these angles. Always required: at 30/30
                the wrong one is 4.58° out.
            orientation: The surface.
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
            base_step: Stack under the base plate's roll at which it stands at zero. [length, -10000
                to 10000]
            upper_step: Stack under the upper plate's roll at which it stands at zero. [length,
                -10000 to 10000]
            base_raised_side: Side that this plate raises, away from its hinge: `right` or `left`
                where the hinge lies along Y, `back` or `front` where it lies along X. The work is
                then turned in plan so that no other side is raised. Absent: either side may be.
            upper_raised_side: Side that this plate raises, away from its hinge: `right` or `left`
                where the hinge lies along Y, `back` or `front` where it lies along X. The work is
                then turned in plan so that no other side is raised. Absent: either side may be.
            base_largest_angle: Largest angle that the plate reaches, in degrees; past it a setting
                is refused. Absent: anything below 90°. [degree, over 0, under 90; or text in
                degrees, minutes, seconds]
            upper_largest_angle: Largest angle that the plate reaches, in degrees; past it a setting
                is refused. Absent: anything below 90°. [degree, over 0, under 90; or text in
                degrees, minutes, seconds]
            resolution: Step to which a stack can be built, in `units`. Absent: 0.0001 in or 0.001
                mm. [length, 1e-06 to 10000]
            max_blocks: Most blocks in each of the two stacks. [count, 1 to 8]
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
            _COMPOUND_SHEET,
            {
                "paper": paper,
                "format": format,
                "set": set,
                "sizes": sizes,
                "box": box,
                "missing": missing,
                "in_use": in_use,
                "units": units,
                "base_center_distance": base_center_distance,
                "upper_center_distance": upper_center_distance,
                "base_axis": base_axis,
                "base_step": base_step,
                "upper_step": upper_step,
                "base_raised_side": base_raised_side,
                "upper_raised_side": upper_raised_side,
                "frame": frame,
                "orientation": orientation,
                "base_largest_angle": base_largest_angle,
                "upper_largest_angle": upper_largest_angle,
                "resolution": resolution,
                "max_blocks": max_blocks,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def correction(
        self,
        *,
        units: Literal["in", "mm"],
        center_distance: float,
        set: str | None = None,
        sizes: Sequence[float] | None = None,
        box: Sequence[models.BlockOwned] | None = None,
        missing: Sequence[float] | None = None,
        in_use: Sequence[float] | None = None,
        high_roll_diameter: float | None = None,
        low_roll_diameter: float | None = None,
        base_step: float = 0.0,
        angle: float | str | None = None,
        included_angle: float | str | None = None,
        measured_angle: float | str | None = None,
        measured_error_arcsec: float | None = None,
        measured_included_angle: float | str | None = None,
        measured_included_angle_error_arcsec: float | None = None,
        blocks: Sequence[float] | None = None,
        low_stack: float = 0.0,
        max_blocks: int = 6,
        tolerance_arcsec: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.SineCorrectionAnswer:
        """Correction of a measured angle.

        From a measured angle error to the change of the stack, and which blocks to swap, as few as
        can be.

        Largest request: 500 blocks of which the largest 8 make at most 10000000 steps of the sizes'
        common step.

        Args:
            units: Unit of every length here and in the answer.
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
            high_roll_diameter: Diameter of the roll that is raised, in `units`; only where the
                rolls differ, together with `low_roll_diameter`. [length, 1e-06 to 10000]
            low_roll_diameter: Diameter of the other roll, in `units`. [length, 1e-06 to 10000]
            base_step: Height of the low roll's seat over the high roll's, in `units`: the stack at
                which a plate with equal rolls stands at zero. [length, -10000 to 10000]
            angle: Angle wanted of the plate, in degrees. Either this or `included_angle`. [degree,
                over 0, under 90; or text in degrees, minutes, seconds]
            included_angle: Included angle wanted of the cone, in degrees; the plate has half of it.
                [degree, over 0, under 180; or text in degrees, minutes, seconds]
            measured_angle: Angle of the plate as measured, in degrees. One of this,
                `measured_error_arcsec`, `measured_included_angle` and
                `measured_included_angle_error_arcsec` is needed. [degree, over 0, under 90; or text
                in degrees, minutes, seconds]
            measured_error_arcsec: Angle of the plate as measured less the one wanted, in
                arc-seconds. [arcsecond, -324000 to 324000]
            measured_included_angle: Included angle of the cone as measured, in degrees. [degree,
                over 0, under 180; or text in degrees, minutes, seconds]
            measured_included_angle_error_arcsec: Included angle as measured less the one wanted, in
                arc-seconds. [arcsecond, -324000 to 324000]
            blocks: Blocks under the high roll now, in `units`; with `set` or `sizes`, which hold
                them too. [1 to 8 entries, each length, 1e-06 to 10000]
            low_stack: Stack under the low roll, left as it is, in `units`. [length, 0 to 10000]
            max_blocks: Most blocks in the new stack. [count, 1 to 8]
            tolerance_arcsec: Angles of the plate within ± this of the wanted one will do; of them,
                the one with the fewest blocks to handle is taken. Absent: the nearest height that
                the set's step has. [arcsecond, 1e-06 to 324000]
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `heavy_timeout_seconds`. [second, over 0, at most
                86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.SineCorrectionAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.sine.correction(units="in", center_distance=5, angle=30,
                measured_error_arcsec=10, blocks=[2.0, 0.5], set="inch-81")
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
                "center_distance": center_distance,
                "high_roll_diameter": high_roll_diameter,
                "low_roll_diameter": low_roll_diameter,
                "base_step": base_step,
                "angle": angle,
                "included_angle": included_angle,
                "measured_angle": measured_angle,
                "measured_error_arcsec": measured_error_arcsec,
                "measured_included_angle": measured_included_angle,
                "measured_included_angle_error_arcsec": measured_included_angle_error_arcsec,
                "blocks": blocks,
                "low_stack": low_stack,
                "max_blocks": max_blocks,
                "tolerance_arcsec": tolerance_arcsec,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def get_bar_tolerance(
        self,
        key: str,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.SineBarToleranceEntryAnswer:
        """Tolerances of sine bars: one bar-tolerance.

        What standards and textbooks ask of sine bars: faces, rolls, center distance; rows from
        memory say so.

        Args:
            key: The key, such as `is-5359-100-upper-and-lower-flatness`.
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `timeout_seconds`. [second, over 0, at most 86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.SineBarToleranceEntryAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.sine.get_bar_tolerance(key="is-5359-100-upper-and-lower-flatness")
        """
        return self._sender.send(
            _GET_BAR_TOLERANCE,
            {
                "key": key,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def list_bar_tolerances(
        self,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.SineBarToleranceListAnswer:
        """Tolerances of sine bars.

        What standards and textbooks ask of sine bars: faces, rolls, center distance; rows from
        memory say so.

        Args:
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `timeout_seconds`. [second, over 0, at most 86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.SineBarToleranceListAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.sine.list_bar_tolerances()
        """
        return self._sender.send(
            _LIST_BAR_TOLERANCES,
            {},
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def low_stack(
        self,
        *,
        units: Literal["in", "mm"],
        center_distance: float,
        angle: float | str,
        set: str | None = None,
        sizes: Sequence[float] | None = None,
        box: Sequence[models.BlockOwned] | None = None,
        missing: Sequence[float] | None = None,
        in_use: Sequence[float] | None = None,
        high_roll_diameter: float | None = None,
        low_roll_diameter: float | None = None,
        base_step: float = 0.0,
        low_stack_use: Literal["if-needed", "fewest-blocks", "always", "never"] = "if-needed",
        max_single_blocks: int = 4,
        max_blocks: int = 6,
        smallest_high_stack: float = 0.0,
        smallest_low_stack: float = 0.0,
        tolerance_arcsec: float | None = None,
        largest_angle: float | str | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.SineLowStackAnswer:
        """Stacks under both rolls.

        The blocks for an angle from one set: a single stack where it can be built, else stacks
        under both rolls, with the fewest blocks, proved.

        Largest request: 500 blocks of which the largest 8 make at most 10000000 steps of the sizes'
        common step.

        Args:
            units: Unit of every length here and in the answer.
            center_distance: Distance between the centers of the two rolls, in `units`. [length,
                1e-06 to 10000]
            angle: Angle wanted, in degrees. [degree, at least 0, under 90; or text in degrees,
                minutes, seconds]
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
            high_roll_diameter: Diameter of the roll that is raised, in `units`; only where the
                rolls differ, together with `low_roll_diameter`. [length, 1e-06 to 10000]
            low_roll_diameter: Diameter of the other roll, in `units`. [length, 1e-06 to 10000]
            base_step: Height of the low roll's seat over the high roll's, in `units`: the stack at
                which a plate with equal rolls stands at zero. [length, -10000 to 10000]
            low_stack_use: `if-needed`: a stack under the low roll only where no single stack of up
                to `max_single_blocks` does it; `fewest-blocks`: wherever it saves a block;
                `always`; `never`, as for a plate that pivots on its low roll.
            max_single_blocks: Most blocks that a single stack may have before two stacks are
                preferred. [count, 1 to 8]
            max_blocks: Most blocks in both stacks together. [count, 1 to 8]
            smallest_high_stack: Least height of the high roll's stack, in `units`: what lifts the
                plate off its rest. [length, 0 to 10000]
            smallest_low_stack: Least height of the low roll's stack, where there is one, in
                `units`. [length, 0 to 10000]
            tolerance_arcsec: Angles within ± this of the wanted one will do, in arc-seconds: of
                them, the one with the fewest blocks is taken. Absent: the nearest height that the
                set's step has. [arcsecond, 1e-06 to 324000]
            largest_angle: Largest angle that the plate reaches, in degrees; past it a setting is
                refused. Absent: anything below 90°. [degree, over 0, under 90; or text in degrees,
                minutes, seconds]
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `heavy_timeout_seconds`. [second, over 0, at most
                86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.SineLowStackAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.sine.low_stack(units="in", center_distance=5, angle=0.5, set="inch-81")
        """
        return self._sender.send(
            _LOW_STACK,
            {
                "set": set,
                "sizes": sizes,
                "box": box,
                "missing": missing,
                "in_use": in_use,
                "units": units,
                "center_distance": center_distance,
                "high_roll_diameter": high_roll_diameter,
                "low_roll_diameter": low_roll_diameter,
                "base_step": base_step,
                "angle": angle,
                "low_stack_use": low_stack_use,
                "max_single_blocks": max_single_blocks,
                "max_blocks": max_blocks,
                "smallest_high_stack": smallest_high_stack,
                "smallest_low_stack": smallest_low_stack,
                "tolerance_arcsec": tolerance_arcsec,
                "largest_angle": largest_angle,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def low_stack_sheet(
        self,
        *,
        units: Literal["in", "mm"],
        center_distance: float,
        angle: float | str,
        paper: Literal["a4", "letter"] = "a4",
        format: Literal["html", "pdf"] | None = None,
        set: str | None = None,
        sizes: Sequence[float] | None = None,
        box: Sequence[models.BlockOwned] | None = None,
        missing: Sequence[float] | None = None,
        in_use: Sequence[float] | None = None,
        high_roll_diameter: float | None = None,
        low_roll_diameter: float | None = None,
        base_step: float = 0.0,
        low_stack_use: Literal["if-needed", "fewest-blocks", "always", "never"] = "if-needed",
        max_single_blocks: int = 4,
        max_blocks: int = 6,
        smallest_high_stack: float = 0.0,
        smallest_low_stack: float = 0.0,
        tolerance_arcsec: float | None = None,
        largest_angle: float | str | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> Sheet:
        """Stacks under both rolls: sheet.

        What `sine.low-stack` answers, on a page for the machine.

        Args:
            units: Unit of every length here and in the answer.
            center_distance: Distance between the centers of the two rolls, in `units`. [length,
                1e-06 to 10000]
            angle: Angle wanted, in degrees. [degree, at least 0, under 90; or text in degrees,
                minutes, seconds]
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
            high_roll_diameter: Diameter of the roll that is raised, in `units`; only where the
                rolls differ, together with `low_roll_diameter`. [length, 1e-06 to 10000]
            low_roll_diameter: Diameter of the other roll, in `units`. [length, 1e-06 to 10000]
            base_step: Height of the low roll's seat over the high roll's, in `units`: the stack at
                which a plate with equal rolls stands at zero. [length, -10000 to 10000]
            low_stack_use: `if-needed`: a stack under the low roll only where no single stack of up
                to `max_single_blocks` does it; `fewest-blocks`: wherever it saves a block;
                `always`; `never`, as for a plate that pivots on its low roll.
            max_single_blocks: Most blocks that a single stack may have before two stacks are
                preferred. [count, 1 to 8]
            max_blocks: Most blocks in both stacks together. [count, 1 to 8]
            smallest_high_stack: Least height of the high roll's stack, in `units`: what lifts the
                plate off its rest. [length, 0 to 10000]
            smallest_low_stack: Least height of the low roll's stack, where there is one, in
                `units`. [length, 0 to 10000]
            tolerance_arcsec: Angles within ± this of the wanted one will do, in arc-seconds: of
                them, the one with the fewest blocks is taken. Absent: the nearest height that the
                set's step has. [arcsecond, 1e-06 to 324000]
            largest_angle: Largest angle that the plate reaches, in degrees; past it a setting is
                refused. Absent: anything below 90°. [degree, over 0, under 90; or text in degrees,
                minutes, seconds]
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
            _LOW_STACK_SHEET,
            {
                "paper": paper,
                "format": format,
                "set": set,
                "sizes": sizes,
                "box": box,
                "missing": missing,
                "in_use": in_use,
                "units": units,
                "center_distance": center_distance,
                "high_roll_diameter": high_roll_diameter,
                "low_roll_diameter": low_roll_diameter,
                "base_step": base_step,
                "angle": angle,
                "low_stack_use": low_stack_use,
                "max_single_blocks": max_single_blocks,
                "max_blocks": max_blocks,
                "smallest_high_stack": smallest_high_stack,
                "smallest_low_stack": smallest_low_stack,
                "tolerance_arcsec": tolerance_arcsec,
                "largest_angle": largest_angle,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def measured_angle(
        self,
        *,
        units: Literal["in", "mm"],
        center_distance: float,
        indicator_rise: float,
        indicator_travel: float,
        center_distance_error_limit: float | None = None,
        roll_difference: float | None = None,
        roll_parallelism: float | None = None,
        face_parallelism: float | None = None,
        face_parallelism_on_rolls: bool = False,
        face_flatness: float | None = None,
        face_length: float | None = None,
        table_flatness: float | None = None,
        particle: float | None = None,
        temperature_celsius: float | None = None,
        temperature_error_limit_celsius: float | None = None,
        temperature_difference_celsius: float | None = None,
        plate_material: Literal[
            "steel",
            "tungsten-carbide",
            "chromium-carbide",
            "ceramic",
            "glass-ceramic",
            "fused-quartz",
        ] = "steel",
        axis_yaw_error_limit_arcsec: float | None = None,
        axis_pitch_error_limit_arcsec: float | None = None,
        high_roll_diameter: float | None = None,
        low_roll_diameter: float | None = None,
        base_step: float = 0.0,
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
        holding: Literal["between-centers", "on-its-generator", "in-a-vee"] | None = None,
        vee_angle: float | str = 90.0,
        indicating_error_limit: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.SineMeasuredAngleAnswer:
        """Angle measured on a sine bar.

        Angle of a part whose surface an indicator shows nearly level on a sine bar: from the stack,
        the residual rise corrected, with the uncertainty of plate, blocks and indicator.

        Largest request: 20 blocks.

        Args:
            units: Unit of every length here and in the answer.
            center_distance: Distance between the centers of the two rolls, in `units`. [length,
                1e-06 to 10000]
            indicator_rise: Rise that the indicator read along the surface, toward the low roll, in
                `units`; negative where it rises toward the high roll. [length, -10000 to 10000]
            indicator_travel: Travel of the indicator, in `units`. [length, 1e-06 to 10000]
            center_distance_error_limit: Largest error ± of the center distance, in `units`.
                [length, 0 to 10000]
            roll_difference: Limit ± of the difference of the rolls' diameters, in `units`. [length,
                0 to 10000]
            roll_parallelism: Limit ± by which the rolls are out of parallel in height from end to
                end, in `units`; a stack under one end rather than the middle sees half of it.
                [length, 0 to 10000]
            face_parallelism: Limit ± by which the plate's face is out of parallel over
                `face_length`, in `units`. [length, 0 to 10000]
            face_parallelism_on_rolls: True where the face's parallelism was measured with the plate
                resting on its rolls: it then holds the rolls' difference already, and only the rest
                of it counts.
            face_flatness: Flatness of the plate's face over `face_length`, in `units`. [length, 0
                to 10000]
            face_length: Length over which parallelism and flatness act: the plate's, or the work's
                seat. Absent: the center distance. [length, 1e-06 to 10000]
            table_flatness: Limit ± of the difference in height of the surface plate under the two
                rolls, in `units`. [length, 0 to 10000]
            particle: Size of a particle under either roll or its stack, in `units`. [length, 0 to
                10000]
            temperature_celsius: Temperature of plate and blocks alike; 20 °C is the reference (ISO
                1). Not stated where absent: unlike materials then turn the angle by an unknown
                amount, and even of like ones the coefficients are known only to so much. [°C, -40
                to 150]
            temperature_error_limit_celsius: Largest error ± of the temperature of plate and blocks,
                in kelvins. [°C, 0 to 50]
            temperature_difference_celsius: Limit ± of the difference of the blocks' temperature to
                the plate's. [°C, 0 to 50]
            plate_material: Material of the plate.
            axis_yaw_error_limit_arcsec: Largest error ± of the yaw of the work's axis out of the
                plane in which the plate tilts; at most 18000, which is 5°. It acts by its square,
                always toward a smaller angle. [arcsecond, 0 to 18000]
            axis_pitch_error_limit_arcsec: Largest error ± of the pitch of the work's axis to the
                plate's face, in the plane in which the plate tilts; it acts one to one. [arcsecond,
                0 to 324000]
            high_roll_diameter: Diameter of the roll that is raised, in `units`; only where the
                rolls differ, together with `low_roll_diameter`. [length, 1e-06 to 10000]
            low_roll_diameter: Diameter of the other roll, in `units`. [length, 1e-06 to 10000]
            base_step: Height of the low roll's seat over the high roll's, in `units`: the stack at
                which a plate with equal rolls stands at zero. [length, -10000 to 10000]
            blocks: Nominal sizes of the blocks under the high roll, in `units`. Either this or
                `calibrated_blocks`. [1 to 20 entries, each length, 1e-06 to 10000]
            calibrated_blocks: The same with what is known of each. [1 to 20 entries]
            grade: Tolerance grade of blocks without a calibration, as `GET /v1/blocks/grades` lists
                it, for the height's uncertainty. [1 to 60 characters]
            block_material: Material of the blocks given by nominal size alone.
            holding: How a cone is held on the plate. Absent: a face, the part on its base.
            vee_angle: Included angle of the vee, in degrees; counts for `in-a-vee` only. [degree, 1
                to 175; or text in degrees, minutes, seconds]
            indicating_error_limit: Largest error ± of the rise that the indicator reads, in
                `units`. [length, 0 to 10000]
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `heavy_timeout_seconds`. [second, over 0, at most
                86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.SineMeasuredAngleAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.sine.measured_angle(units="in", center_distance=5, blocks=[2.0, 0.5],
                grade="asme-as-1", indicator_rise=0.0002, indicator_travel=2,
                indicating_error_limit=2e-05, center_distance_error_limit=0.0002,
                roll_difference=5e-05, face_parallelism=0.0001, temperature_celsius=20)
        """
        return self._sender.send(
            _MEASURED_ANGLE,
            {
                "center_distance_error_limit": center_distance_error_limit,
                "roll_difference": roll_difference,
                "roll_parallelism": roll_parallelism,
                "face_parallelism": face_parallelism,
                "face_parallelism_on_rolls": face_parallelism_on_rolls,
                "face_flatness": face_flatness,
                "face_length": face_length,
                "table_flatness": table_flatness,
                "particle": particle,
                "temperature_celsius": temperature_celsius,
                "temperature_error_limit_celsius": temperature_error_limit_celsius,
                "temperature_difference_celsius": temperature_difference_celsius,
                "plate_material": plate_material,
                "axis_yaw_error_limit_arcsec": axis_yaw_error_limit_arcsec,
                "axis_pitch_error_limit_arcsec": axis_pitch_error_limit_arcsec,
                "units": units,
                "center_distance": center_distance,
                "high_roll_diameter": high_roll_diameter,
                "low_roll_diameter": low_roll_diameter,
                "base_step": base_step,
                "blocks": blocks,
                "calibrated_blocks": calibrated_blocks,
                "grade": grade,
                "block_material": block_material,
                "holding": holding,
                "vee_angle": vee_angle,
                "indicator_rise": indicator_rise,
                "indicator_travel": indicator_travel,
                "indicating_error_limit": indicating_error_limit,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def over_pin(
        self,
        *,
        units: Literal["in", "mm"],
        angle: float | str,
        pin_diameter: float,
        point_from_stop: float,
        formats: Sequence[Literal["svg"]] | None = None,
        pin_from_stop: float | None = None,
        stop_at: Literal["low-end", "high-end"] = "low-end",
        point_over_face: float = 0.0,
        angle_error_limit_arcsec: float | None = None,
        roll_error_limit: float | None = None,
        measure_error_limit: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.SineOverPinAnswer:
        """Height over a pin on a sine bar.

        Height of a point of the work over the top of a pin that lies on the tilted face: to grind a
        surface at an angle to its place, or to measure where it is.

        Args:
            units: Unit of every length here and in the answer.
            angle: Angle of the plate, in degrees. [degree, over 0, under 90; or text in degrees,
                minutes, seconds]
            pin_diameter: Diameter of the pin. [length, 1e-06 to 10000]
            point_from_stop: Stop to the point, along the face. [length, 0 to 10000]
            formats: `svg` for a drawing. Absent: none. [1 to 2 entries]
            pin_from_stop: Stop to where the pin touches the face, along the face; not less than the
                pin's radius. Absent: the pin lies in the corner of face and stop. [length, 1e-06 to
                10000]
            stop_at: End of the plate at which the stop stands.
            point_over_face: Height of the point over the face, square to it. [length, 0 to 10000]
            angle_error_limit_arcsec: Largest error ± of the plate's angle, in arc-seconds.
                [arcsecond, 0 to 3600]
            roll_error_limit: Largest error of a roll's or ball's diameter, plus or minus. [length,
                0 to 10000]
            measure_error_limit: Largest error of each measure, plus or minus. [length, 0 to 10000]
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `heavy_timeout_seconds`. [second, over 0, at most
                86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.SineOverPinAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.sine.over_pin(units="mm", angle=45, pin_diameter=10, pin_from_stop=42,
                point_from_stop=70, angle_error_limit_arcsec=10, roll_error_limit=0.001,
                measure_error_limit=0.005, formats=["svg"])
        """
        return self._sender.send(
            _OVER_PIN,
            {
                "formats": formats,
                "units": units,
                "angle": angle,
                "pin_diameter": pin_diameter,
                "pin_from_stop": pin_from_stop,
                "stop_at": stop_at,
                "point_from_stop": point_from_stop,
                "point_over_face": point_over_face,
                "angle_error_limit_arcsec": angle_error_limit_arcsec,
                "roll_error_limit": roll_error_limit,
                "measure_error_limit": measure_error_limit,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def requirements(
        self,
        *,
        units: Literal["in", "mm"],
        center_distance: float,
        angle: float | str,
        tolerance_arcsec: float,
        center_distance_error_limit: float | None = None,
        roll_difference: float | None = None,
        roll_parallelism: float | None = None,
        face_parallelism: float | None = None,
        face_parallelism_on_rolls: bool = False,
        face_flatness: float | None = None,
        face_length: float | None = None,
        table_flatness: float | None = None,
        particle: float | None = None,
        temperature_celsius: float | None = None,
        temperature_error_limit_celsius: float | None = None,
        temperature_difference_celsius: float | None = None,
        plate_material: Literal[
            "steel",
            "tungsten-carbide",
            "chromium-carbide",
            "ceramic",
            "glass-ceramic",
            "fused-quartz",
        ] = "steel",
        axis_yaw_error_limit_arcsec: float | None = None,
        axis_pitch_error_limit_arcsec: float | None = None,
        high_roll_diameter: float | None = None,
        low_roll_diameter: float | None = None,
        base_step: float = 0.0,
        stack_error_limit: float | None = None,
        height: float | None = None,
        resolution: float | None = None,
        block_material: Literal[
            "steel",
            "tungsten-carbide",
            "chromium-carbide",
            "ceramic",
            "glass-ceramic",
            "fused-quartz",
        ] = "steel",
        wheel_breakdown: float | None = None,
        wheel_contact_length: float | None = None,
        normal_terms: Sequence[
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
        ]
        | None = None,
        triangular_terms: Sequence[
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
        ]
        | None = None,
        u_shaped_terms: Sequence[
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
        ]
        | None = None,
        coverage_factor: float | None = None,
        decision_rule: Literal["iso-14253-1-2017", "iso-14253-1-2013"] = "iso-14253-1-2017",
        tolerance_on: Literal["plate-angle", "included-angle"] = "plate-angle",
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.SineRequirementsAnswer:
        """What must be held for a tolerance.

        From the angle's tolerance to the allowed error of each part of the set-up, and the cheapest
        term to mend.

        Largest request: one set-up of 16 terms.

        Args:
            units: Unit of every length here and in the answer.
            center_distance: Distance between the centers of the two rolls, in `units`. [length,
                1e-06 to 10000]
            angle: Angle to set, in degrees. [degree, over 0, under 90; or text in degrees, minutes,
                seconds]
            tolerance_arcsec: The angle must keep within ± this, in arc-seconds. [arcsecond, 1e-06
                to 324000]
            center_distance_error_limit: Largest error ± of the center distance, in `units`.
                [length, 0 to 10000]
            roll_difference: Limit ± of the difference of the rolls' diameters, in `units`. [length,
                0 to 10000]
            roll_parallelism: Limit ± by which the rolls are out of parallel in height from end to
                end, in `units`; a stack under one end rather than the middle sees half of it.
                [length, 0 to 10000]
            face_parallelism: Limit ± by which the plate's face is out of parallel over
                `face_length`, in `units`. [length, 0 to 10000]
            face_parallelism_on_rolls: True where the face's parallelism was measured with the plate
                resting on its rolls: it then holds the rolls' difference already, and only the rest
                of it counts.
            face_flatness: Flatness of the plate's face over `face_length`, in `units`. [length, 0
                to 10000]
            face_length: Length over which parallelism and flatness act: the plate's, or the work's
                seat. Absent: the center distance. [length, 1e-06 to 10000]
            table_flatness: Limit ± of the difference in height of the surface plate under the two
                rolls, in `units`. [length, 0 to 10000]
            particle: Size of a particle under either roll or its stack, in `units`. [length, 0 to
                10000]
            temperature_celsius: Temperature of plate and blocks alike; 20 °C is the reference (ISO
                1). Not stated where absent: unlike materials then turn the angle by an unknown
                amount, and even of like ones the coefficients are known only to so much. [°C, -40
                to 150]
            temperature_error_limit_celsius: Largest error ± of the temperature of plate and blocks,
                in kelvins. [°C, 0 to 50]
            temperature_difference_celsius: Limit ± of the difference of the blocks' temperature to
                the plate's. [°C, 0 to 50]
            plate_material: Material of the plate.
            axis_yaw_error_limit_arcsec: Largest error ± of the yaw of the work's axis out of the
                plane in which the plate tilts; at most 18000, which is 5°. It acts by its square,
                always toward a smaller angle. [arcsecond, 0 to 18000]
            axis_pitch_error_limit_arcsec: Largest error ± of the pitch of the work's axis to the
                plate's face, in the plane in which the plate tilts; it acts one to one. [arcsecond,
                0 to 324000]
            high_roll_diameter: Diameter of the roll that is raised, in `units`; only where the
                rolls differ, together with `low_roll_diameter`. [length, 1e-06 to 10000]
            low_roll_diameter: Diameter of the other roll, in `units`. [length, 1e-06 to 10000]
            base_step: Height of the low roll's seat over the high roll's, in `units`: the stack at
                which a plate with equal rolls stands at zero. [length, -10000 to 10000]
            stack_error_limit: Largest error ± of the block stack's height, in `units`. [length, 0
                to 10000]
            height: Difference of the stacks as they are built, high less low, in `units`: what it
                is off from the angle's own height then counts as a known shift. Either this or
                `resolution`. [length, 1e-06 to 10000]
            resolution: Step to which the stack is built, in `units`: it is then off by up to half
                of it. 0: built exactly. Absent, and without `height`: not stated. [length, 0 to
                10000]
            block_material: Material of the blocks.
            wheel_breakdown: Limit ± by which the wheel's face is off over `wheel_contact_length`,
                in `units`. [length, 0 to 10000]
            wheel_contact_length: Length of the slant that the wheel's face grinds, in `units`.
                [length, 1e-06 to 10000]
            normal_terms: Terms whose number is a standard deviation of a normal distribution, not a
                limit. All other terms are rectangular, unless listed below; yaw and the stack's
                rounding always are. [at most 16 entries]
            triangular_terms: Terms with a triangular distribution. [at most 16 entries]
            u_shaped_terms: Terms with a U-shaped distribution, such as a cycling temperature. [at
                most 16 entries]
            coverage_factor: Coverage factor k of the expanded uncertainty. Absent: what covers 95 %
                by the distributions themselves. The forecast goes by `decision_rule`, whatever k
                is. [1 to 4]
            decision_rule: Rule by which limits are judged. `iso-14253-1-2017`: they are kept with a
                probability of at least 95 %. `iso-14253-1-2013`: with a guard band of two standard
                uncertainties at either limit.
            tolerance_on: What the tolerance belongs to: a cone's half angle follows the plate's
                angle, so that its error counts twice on the `included-angle`.
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `heavy_timeout_seconds`. [second, over 0, at most
                86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.SineRequirementsAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.sine.requirements(units="in", center_distance=5, angle=30,
                center_distance_error_limit=0.0002, roll_difference=5e-05,
                roll_parallelism=5e-05, face_parallelism=0.0001, face_flatness=5e-05,
                stack_error_limit=2e-05, resolution=0.0001, table_flatness=5e-05,
                particle=2e-05, temperature_celsius=22, temperature_error_limit_celsius=1,
                temperature_difference_celsius=0.5, axis_yaw_error_limit_arcsec=900,
                axis_pitch_error_limit_arcsec=5, wheel_breakdown=0, tolerance_arcsec=10)
        """
        return self._sender.send(
            _REQUIREMENTS,
            {
                "center_distance_error_limit": center_distance_error_limit,
                "roll_difference": roll_difference,
                "roll_parallelism": roll_parallelism,
                "face_parallelism": face_parallelism,
                "face_parallelism_on_rolls": face_parallelism_on_rolls,
                "face_flatness": face_flatness,
                "face_length": face_length,
                "table_flatness": table_flatness,
                "particle": particle,
                "temperature_celsius": temperature_celsius,
                "temperature_error_limit_celsius": temperature_error_limit_celsius,
                "temperature_difference_celsius": temperature_difference_celsius,
                "plate_material": plate_material,
                "axis_yaw_error_limit_arcsec": axis_yaw_error_limit_arcsec,
                "axis_pitch_error_limit_arcsec": axis_pitch_error_limit_arcsec,
                "units": units,
                "center_distance": center_distance,
                "high_roll_diameter": high_roll_diameter,
                "low_roll_diameter": low_roll_diameter,
                "base_step": base_step,
                "angle": angle,
                "stack_error_limit": stack_error_limit,
                "height": height,
                "resolution": resolution,
                "block_material": block_material,
                "wheel_breakdown": wheel_breakdown,
                "wheel_contact_length": wheel_contact_length,
                "normal_terms": normal_terms,
                "triangular_terms": triangular_terms,
                "u_shaped_terms": u_shaped_terms,
                "coverage_factor": coverage_factor,
                "decision_rule": decision_rule,
                "tolerance_on": tolerance_on,
                "tolerance_arcsec": tolerance_arcsec,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def setting(
        self,
        *,
        units: Literal["in", "mm"],
        center_distance: float,
        angle: float | str,
        high_roll_diameter: float | None = None,
        low_roll_diameter: float | None = None,
        base_step: float = 0.0,
        largest_angle: float | str | None = None,
        steep_angle: float | str = 45.0,
        resolution: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.SineSettingAnswer:
        """Sine setting.

        The height of the stack that sets a sine bar or plate to an angle, what it is worth once
        rounded, and past a stated angle the setting of the complement.

        Args:
            units: Unit of every length here and in the answer.
            center_distance: Distance between the centers of the two rolls, in `units`. [length,
                1e-06 to 10000]
            angle: Angle between the plate's top and the surface it stands on, in degrees. [degree,
                over 0, under 90; or text in degrees, minutes, seconds]
            high_roll_diameter: Diameter of the roll that is raised, in `units`; only where the
                rolls differ, together with `low_roll_diameter`. [length, 1e-06 to 10000]
            low_roll_diameter: Diameter of the other roll, in `units`. [length, 1e-06 to 10000]
            base_step: Height of the low roll's seat over the high roll's, in `units`: the stack at
                which a plate with equal rolls stands at zero. [length, -10000 to 10000]
            largest_angle: Largest angle that the plate reaches, in degrees; past it a setting is
                refused. Absent: anything below 90°. [degree, over 0, under 90; or text in degrees,
                minutes, seconds]
            steep_angle: Angle in degrees past which the complement (work turned by 90°) is offered.
                [degree, over 0, under 90; or text in degrees, minutes, seconds]
            resolution: Step to which a stack can be built, in `units`. Absent: 0.0001 in or 0.001
                mm. [length, 1e-06 to 10000]
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `timeout_seconds`. [second, over 0, at most 86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.SineSettingAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.sine.setting(units="in", center_distance=5, angle=30)
        """
        return self._sender.send(
            _SETTING,
            {
                "units": units,
                "center_distance": center_distance,
                "high_roll_diameter": high_roll_diameter,
                "low_roll_diameter": low_roll_diameter,
                "base_step": base_step,
                "angle": angle,
                "largest_angle": largest_angle,
                "steep_angle": steep_angle,
                "resolution": resolution,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def setting_sheet(
        self,
        *,
        units: Literal["in", "mm"],
        center_distance: float,
        angle: float | str,
        paper: Literal["a4", "letter"] = "a4",
        format: Literal["html", "pdf"] | None = None,
        high_roll_diameter: float | None = None,
        low_roll_diameter: float | None = None,
        base_step: float = 0.0,
        largest_angle: float | str | None = None,
        steep_angle: float | str = 45.0,
        resolution: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> Sheet:
        """Sine setting: sheet.

        What `sine.setting` answers, on a page for the machine.

        Args:
            units: Unit of every length here and in the answer.
            center_distance: Distance between the centers of the two rolls, in `units`. [length,
                1e-06 to 10000]
            angle: Angle between the plate's top and the surface it stands on, in degrees. [degree,
                over 0, under 90; or text in degrees, minutes, seconds]
            paper: Paper that it is to be printed on.
            format: Form of the sheet. Absent: what Accept asks for, `html` where it takes both.
            high_roll_diameter: Diameter of the roll that is raised, in `units`; only where the
                rolls differ, together with `low_roll_diameter`. [length, 1e-06 to 10000]
            low_roll_diameter: Diameter of the other roll, in `units`. [length, 1e-06 to 10000]
            base_step: Height of the low roll's seat over the high roll's, in `units`: the stack at
                which a plate with equal rolls stands at zero. [length, -10000 to 10000]
            largest_angle: Largest angle that the plate reaches, in degrees; past it a setting is
                refused. Absent: anything below 90°. [degree, over 0, under 90; or text in degrees,
                minutes, seconds]
            steep_angle: Angle in degrees past which the complement (work turned by 90°) is offered.
                [degree, over 0, under 90; or text in degrees, minutes, seconds]
            resolution: Step to which a stack can be built, in `units`. Absent: 0.0001 in or 0.001
                mm. [length, 1e-06 to 10000]
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
            _SETTING_SHEET,
            {
                "paper": paper,
                "format": format,
                "units": units,
                "center_distance": center_distance,
                "high_roll_diameter": high_roll_diameter,
                "low_roll_diameter": low_roll_diameter,
                "base_step": base_step,
                "angle": angle,
                "largest_angle": largest_angle,
                "steep_angle": steep_angle,
                "resolution": resolution,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def table(
        self,
        *,
        units: Literal["in", "mm"],
        center_distance: float,
        first_angle: float | str,
        last_angle: float | str,
        angle_step: float | str,
        high_roll_diameter: float | None = None,
        low_roll_diameter: float | None = None,
        base_step: float = 0.0,
        resolution: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.SineTableAnswer:
        """Setting table.

        Heights for a range of angles on one sine bar or plate, as rows and as CSV.

        Largest request: 5400 rows: every minute of arc up to 90°.

        Args:
            units: Unit of every length here and in the answer.
            center_distance: Distance between the centers of the two rolls, in `units`. [length,
                1e-06 to 10000]
            first_angle: First angle of the table, in degrees. [degree, at least 0, under 90; or
                text in degrees, minutes, seconds]
            last_angle: Last angle of the table, in degrees; the table may end a part step below it.
                [degree, at least 0, under 90; or text in degrees, minutes, seconds]
            angle_step: Step from one angle to the next, in degrees; at least one second of arc.
                [degree, 0.000277777777777778 to 45; or text in degrees, minutes, seconds]
            high_roll_diameter: Diameter of the roll that is raised, in `units`; only where the
                rolls differ, together with `low_roll_diameter`. [length, 1e-06 to 10000]
            low_roll_diameter: Diameter of the other roll, in `units`. [length, 1e-06 to 10000]
            base_step: Height of the low roll's seat over the high roll's, in `units`: the stack at
                which a plate with equal rolls stands at zero. [length, -10000 to 10000]
            resolution: Step to which a stack can be built, in `units`. Absent: 0.0001 in or 0.001
                mm. [length, 1e-06 to 10000]
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `heavy_timeout_seconds`. [second, over 0, at most
                86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.SineTableAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.sine.table(units="in", center_distance=5, first_angle=0, last_angle=60,
                angle_step=5)
        """
        return self._sender.send(
            _TABLE,
            {
                "units": units,
                "center_distance": center_distance,
                "high_roll_diameter": high_roll_diameter,
                "low_roll_diameter": low_roll_diameter,
                "base_step": base_step,
                "first_angle": first_angle,
                "last_angle": last_angle,
                "angle_step": angle_step,
                "resolution": resolution,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def taper_angle(
        self,
        *,
        units: Literal["in", "mm"],
        center_distance: float,
        holding: Literal["between-centers", "on-its-generator", "in-a-vee"],
        height: float,
        high_roll_diameter: float | None = None,
        low_roll_diameter: float | None = None,
        base_step: float = 0.0,
        vee_angle: float | str = 90.0,
        indicator_rise: float = 0.0,
        indicator_travel: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.SineTaperAngleAnswer:
        """Taper of a sine setting.

        The taper that a sine setting stands for, with what the indicator still read along its top
        generator.

        Args:
            units: Unit of every length here and in the answer.
            center_distance: Distance between the centers of the two rolls, in `units`. [length,
                1e-06 to 10000]
            holding: How the taper is held. `between-centers`: its axis parallel to the plate's top,
                also a bar laid over a taper whose axis is level; `on-its-generator`: lying on the
                plate's flat top, also a bar laid over a taper that lies on the surface plate;
                `in-a-vee`: lying in a vee along the plate.
            height: Height of the stack under the high roll over that under the low roll. [length,
                1e-06 to 10000]
            high_roll_diameter: Diameter of the roll that is raised, in `units`; only where the
                rolls differ, together with `low_roll_diameter`. [length, 1e-06 to 10000]
            low_roll_diameter: Diameter of the other roll, in `units`. [length, 1e-06 to 10000]
            base_step: Height of the low roll's seat over the high roll's, in `units`: the stack at
                which a plate with equal rolls stands at zero. [length, -10000 to 10000]
            vee_angle: Included angle of the vee, in degrees; counts for `in-a-vee` only. [degree, 1
                to 175; or text in degrees, minutes, seconds]
            indicator_rise: Rise of the top generator along `indicator_travel`, in `units`: positive
                where it rises toward the low roll, so that the taper is larger than the plate's
                setting. [length, -10000 to 10000]
            indicator_travel: Travel of the indicator along the top generator, in `units`. [length,
                1e-06 to 10000]
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `timeout_seconds`. [second, over 0, at most 86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.SineTaperAngleAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.sine.taper_angle(units="in", center_distance=5, height=0.7219,
                holding="between-centers")
        """
        return self._sender.send(
            _TAPER_ANGLE,
            {
                "units": units,
                "center_distance": center_distance,
                "high_roll_diameter": high_roll_diameter,
                "low_roll_diameter": low_roll_diameter,
                "base_step": base_step,
                "holding": holding,
                "vee_angle": vee_angle,
                "height": height,
                "indicator_rise": indicator_rise,
                "indicator_travel": indicator_travel,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def taper_setting(
        self,
        *,
        units: Literal["in", "mm"],
        center_distance: float,
        holding: Literal["between-centers", "on-its-generator", "in-a-vee"],
        included_angle: float | str | None = None,
        half_angle: float | str | None = None,
        taper_per_foot: float | None = None,
        one_in_x: float | None = None,
        rate_of_taper: float | None = None,
        designation: str | None = None,
        high_roll_diameter: float | None = None,
        low_roll_diameter: float | None = None,
        base_step: float = 0.0,
        vee_angle: float | str = 90.0,
        largest_angle: float | str | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.SineTaperSettingAnswer:
        """Sine setting for a taper.

        The setting that brings a taper's top generator parallel to the surface plate: held between
        centers, lying on its generator, or in a vee; with the heights that the usual mistakes would
        give.

        Args:
            units: Unit of every length here and in the answer.
            center_distance: Distance between the centers of the two rolls, in `units`. [length,
                1e-06 to 10000]
            holding: How the taper is held. `between-centers`: its axis parallel to the plate's top,
                also a bar laid over a taper whose axis is level; `on-its-generator`: lying on the
                plate's flat top, also a bar laid over a taper that lies on the surface plate;
                `in-a-vee`: lying in a vee along the plate.
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
            high_roll_diameter: Diameter of the roll that is raised, in `units`; only where the
                rolls differ, together with `low_roll_diameter`. [length, 1e-06 to 10000]
            low_roll_diameter: Diameter of the other roll, in `units`. [length, 1e-06 to 10000]
            base_step: Height of the low roll's seat over the high roll's, in `units`: the stack at
                which a plate with equal rolls stands at zero. [length, -10000 to 10000]
            vee_angle: Included angle of the vee, in degrees; counts for `in-a-vee` only. [degree, 1
                to 175; or text in degrees, minutes, seconds]
            largest_angle: Largest angle that the plate reaches, in degrees; past it a setting is
                refused. Absent: anything below 90°. [degree, over 0, under 90; or text in degrees,
                minutes, seconds]
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `timeout_seconds`. [second, over 0, at most 86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.SineTaperSettingAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.sine.taper_setting(units="in", center_distance=5, taper_per_foot=3.5,
                holding="between-centers")
        """
        return self._sender.send(
            _TAPER_SETTING,
            {
                "included_angle": included_angle,
                "half_angle": half_angle,
                "taper_per_foot": taper_per_foot,
                "one_in_x": one_in_x,
                "rate_of_taper": rate_of_taper,
                "designation": designation,
                "units": units,
                "center_distance": center_distance,
                "high_roll_diameter": high_roll_diameter,
                "low_roll_diameter": low_roll_diameter,
                "base_step": base_step,
                "holding": holding,
                "vee_angle": vee_angle,
                "largest_angle": largest_angle,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def taper_setting_sheet(
        self,
        *,
        units: Literal["in", "mm"],
        center_distance: float,
        holding: Literal["between-centers", "on-its-generator", "in-a-vee"],
        paper: Literal["a4", "letter"] = "a4",
        format: Literal["html", "pdf"] | None = None,
        included_angle: float | str | None = None,
        half_angle: float | str | None = None,
        taper_per_foot: float | None = None,
        one_in_x: float | None = None,
        rate_of_taper: float | None = None,
        designation: str | None = None,
        high_roll_diameter: float | None = None,
        low_roll_diameter: float | None = None,
        base_step: float = 0.0,
        vee_angle: float | str = 90.0,
        largest_angle: float | str | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> Sheet:
        """Sine setting for a taper: sheet.

        What `sine.taper-setting` answers, on a page for the machine.

        Args:
            units: Unit of every length here and in the answer.
            center_distance: Distance between the centers of the two rolls, in `units`. [length,
                1e-06 to 10000]
            holding: How the taper is held. `between-centers`: its axis parallel to the plate's top,
                also a bar laid over a taper whose axis is level; `on-its-generator`: lying on the
                plate's flat top, also a bar laid over a taper that lies on the surface plate;
                `in-a-vee`: lying in a vee along the plate.
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
            high_roll_diameter: Diameter of the roll that is raised, in `units`; only where the
                rolls differ, together with `low_roll_diameter`. [length, 1e-06 to 10000]
            low_roll_diameter: Diameter of the other roll, in `units`. [length, 1e-06 to 10000]
            base_step: Height of the low roll's seat over the high roll's, in `units`: the stack at
                which a plate with equal rolls stands at zero. [length, -10000 to 10000]
            vee_angle: Included angle of the vee, in degrees; counts for `in-a-vee` only. [degree, 1
                to 175; or text in degrees, minutes, seconds]
            largest_angle: Largest angle that the plate reaches, in degrees; past it a setting is
                refused. Absent: anything below 90°. [degree, over 0, under 90; or text in degrees,
                minutes, seconds]
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
            _TAPER_SETTING_SHEET,
            {
                "paper": paper,
                "format": format,
                "included_angle": included_angle,
                "half_angle": half_angle,
                "taper_per_foot": taper_per_foot,
                "one_in_x": one_in_x,
                "rate_of_taper": rate_of_taper,
                "designation": designation,
                "units": units,
                "center_distance": center_distance,
                "high_roll_diameter": high_roll_diameter,
                "low_roll_diameter": low_roll_diameter,
                "base_step": base_step,
                "holding": holding,
                "vee_angle": vee_angle,
                "largest_angle": largest_angle,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def uncertainty(
        self,
        *,
        units: Literal["in", "mm"],
        center_distance: float,
        angle: float | str,
        center_distance_error_limit: float | None = None,
        roll_difference: float | None = None,
        roll_parallelism: float | None = None,
        face_parallelism: float | None = None,
        face_parallelism_on_rolls: bool = False,
        face_flatness: float | None = None,
        face_length: float | None = None,
        table_flatness: float | None = None,
        particle: float | None = None,
        temperature_celsius: float | None = None,
        temperature_error_limit_celsius: float | None = None,
        temperature_difference_celsius: float | None = None,
        plate_material: Literal[
            "steel",
            "tungsten-carbide",
            "chromium-carbide",
            "ceramic",
            "glass-ceramic",
            "fused-quartz",
        ] = "steel",
        axis_yaw_error_limit_arcsec: float | None = None,
        axis_pitch_error_limit_arcsec: float | None = None,
        high_roll_diameter: float | None = None,
        low_roll_diameter: float | None = None,
        base_step: float = 0.0,
        stack_error_limit: float | None = None,
        height: float | None = None,
        resolution: float | None = None,
        block_material: Literal[
            "steel",
            "tungsten-carbide",
            "chromium-carbide",
            "ceramic",
            "glass-ceramic",
            "fused-quartz",
        ] = "steel",
        wheel_breakdown: float | None = None,
        wheel_contact_length: float | None = None,
        normal_terms: Sequence[
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
        ]
        | None = None,
        triangular_terms: Sequence[
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
        ]
        | None = None,
        u_shaped_terms: Sequence[
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
        ]
        | None = None,
        coverage_factor: float | None = None,
        decision_rule: Literal["iso-14253-1-2017", "iso-14253-1-2013"] = "iso-14253-1-2017",
        tolerance_on: Literal["plate-angle", "included-angle"] = "plate-angle",
        tolerance_arcsec: float | None = None,
        trials: int = 50000,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.SineUncertaintyAnswer:
        """Uncertainty of a sine set-up.

        The budget of a set-up's angle in arc-seconds, each term with its sensitivity and share,
        checked by Monte Carlo, and whether it will hold a tolerance.

        Largest request: 200,000 Monte Carlo trials.

        Args:
            units: Unit of every length here and in the answer.
            center_distance: Distance between the centers of the two rolls, in `units`. [length,
                1e-06 to 10000]
            angle: Angle to set, in degrees. [degree, over 0, under 90; or text in degrees, minutes,
                seconds]
            center_distance_error_limit: Largest error ± of the center distance, in `units`.
                [length, 0 to 10000]
            roll_difference: Limit ± of the difference of the rolls' diameters, in `units`. [length,
                0 to 10000]
            roll_parallelism: Limit ± by which the rolls are out of parallel in height from end to
                end, in `units`; a stack under one end rather than the middle sees half of it.
                [length, 0 to 10000]
            face_parallelism: Limit ± by which the plate's face is out of parallel over
                `face_length`, in `units`. [length, 0 to 10000]
            face_parallelism_on_rolls: True where the face's parallelism was measured with the plate
                resting on its rolls: it then holds the rolls' difference already, and only the rest
                of it counts.
            face_flatness: Flatness of the plate's face over `face_length`, in `units`. [length, 0
                to 10000]
            face_length: Length over which parallelism and flatness act: the plate's, or the work's
                seat. Absent: the center distance. [length, 1e-06 to 10000]
            table_flatness: Limit ± of the difference in height of the surface plate under the two
                rolls, in `units`. [length, 0 to 10000]
            particle: Size of a particle under either roll or its stack, in `units`. [length, 0 to
                10000]
            temperature_celsius: Temperature of plate and blocks alike; 20 °C is the reference (ISO
                1). Not stated where absent: unlike materials then turn the angle by an unknown
                amount, and even of like ones the coefficients are known only to so much. [°C, -40
                to 150]
            temperature_error_limit_celsius: Largest error ± of the temperature of plate and blocks,
                in kelvins. [°C, 0 to 50]
            temperature_difference_celsius: Limit ± of the difference of the blocks' temperature to
                the plate's. [°C, 0 to 50]
            plate_material: Material of the plate.
            axis_yaw_error_limit_arcsec: Largest error ± of the yaw of the work's axis out of the
                plane in which the plate tilts; at most 18000, which is 5°. It acts by its square,
                always toward a smaller angle. [arcsecond, 0 to 18000]
            axis_pitch_error_limit_arcsec: Largest error ± of the pitch of the work's axis to the
                plate's face, in the plane in which the plate tilts; it acts one to one. [arcsecond,
                0 to 324000]
            high_roll_diameter: Diameter of the roll that is raised, in `units`; only where the
                rolls differ, together with `low_roll_diameter`. [length, 1e-06 to 10000]
            low_roll_diameter: Diameter of the other roll, in `units`. [length, 1e-06 to 10000]
            base_step: Height of the low roll's seat over the high roll's, in `units`: the stack at
                which a plate with equal rolls stands at zero. [length, -10000 to 10000]
            stack_error_limit: Largest error ± of the block stack's height, in `units`. [length, 0
                to 10000]
            height: Difference of the stacks as they are built, high less low, in `units`: what it
                is off from the angle's own height then counts as a known shift. Either this or
                `resolution`. [length, 1e-06 to 10000]
            resolution: Step to which the stack is built, in `units`: it is then off by up to half
                of it. 0: built exactly. Absent, and without `height`: not stated. [length, 0 to
                10000]
            block_material: Material of the blocks.
            wheel_breakdown: Limit ± by which the wheel's face is off over `wheel_contact_length`,
                in `units`. [length, 0 to 10000]
            wheel_contact_length: Length of the slant that the wheel's face grinds, in `units`.
                [length, 1e-06 to 10000]
            normal_terms: Terms whose number is a standard deviation of a normal distribution, not a
                limit. All other terms are rectangular, unless listed below; yaw and the stack's
                rounding always are. [at most 16 entries]
            triangular_terms: Terms with a triangular distribution. [at most 16 entries]
            u_shaped_terms: Terms with a U-shaped distribution, such as a cycling temperature. [at
                most 16 entries]
            coverage_factor: Coverage factor k of the expanded uncertainty. Absent: what covers 95 %
                by the distributions themselves. The forecast goes by `decision_rule`, whatever k
                is. [1 to 4]
            decision_rule: Rule by which limits are judged. `iso-14253-1-2017`: they are kept with a
                probability of at least 95 %. `iso-14253-1-2013`: with a guard band of two standard
                uncertainties at either limit.
            tolerance_on: What the tolerance belongs to: a cone's half angle follows the plate's
                angle, so that its error counts twice on the `included-angle`.
            tolerance_arcsec: The angle must keep within ± this, in arc-seconds. [arcsecond, 1e-06
                to 324000]
            trials: Trials of the Monte Carlo check. [count, 1000 to 200000]
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `heavy_timeout_seconds`. [second, over 0, at most
                86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.SineUncertaintyAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.sine.uncertainty(units="in", center_distance=5, angle=30,
                center_distance_error_limit=0.0002, roll_difference=5e-05,
                roll_parallelism=5e-05, face_parallelism=0.0001, face_flatness=5e-05,
                stack_error_limit=2e-05, resolution=0.0001, table_flatness=5e-05,
                particle=2e-05, temperature_celsius=22, temperature_error_limit_celsius=1,
                temperature_difference_celsius=0.5, axis_yaw_error_limit_arcsec=900,
                axis_pitch_error_limit_arcsec=5, wheel_breakdown=0, tolerance_arcsec=20)
        """
        return self._sender.send(
            _UNCERTAINTY,
            {
                "center_distance_error_limit": center_distance_error_limit,
                "roll_difference": roll_difference,
                "roll_parallelism": roll_parallelism,
                "face_parallelism": face_parallelism,
                "face_parallelism_on_rolls": face_parallelism_on_rolls,
                "face_flatness": face_flatness,
                "face_length": face_length,
                "table_flatness": table_flatness,
                "particle": particle,
                "temperature_celsius": temperature_celsius,
                "temperature_error_limit_celsius": temperature_error_limit_celsius,
                "temperature_difference_celsius": temperature_difference_celsius,
                "plate_material": plate_material,
                "axis_yaw_error_limit_arcsec": axis_yaw_error_limit_arcsec,
                "axis_pitch_error_limit_arcsec": axis_pitch_error_limit_arcsec,
                "units": units,
                "center_distance": center_distance,
                "high_roll_diameter": high_roll_diameter,
                "low_roll_diameter": low_roll_diameter,
                "base_step": base_step,
                "angle": angle,
                "stack_error_limit": stack_error_limit,
                "height": height,
                "resolution": resolution,
                "block_material": block_material,
                "wheel_breakdown": wheel_breakdown,
                "wheel_contact_length": wheel_contact_length,
                "normal_terms": normal_terms,
                "triangular_terms": triangular_terms,
                "u_shaped_terms": u_shaped_terms,
                "coverage_factor": coverage_factor,
                "decision_rule": decision_rule,
                "tolerance_on": tolerance_on,
                "tolerance_arcsec": tolerance_arcsec,
                "trials": trials,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )


class AsyncSineCalls:
    """Calls of the topic `sine`, to be awaited."""

    def __init__(self, sender: AsyncSender) -> None:
        self._sender = sender

    async def angle(
        self,
        *,
        units: Literal["in", "mm"],
        center_distance: float,
        high_roll_diameter: float | None = None,
        low_roll_diameter: float | None = None,
        base_step: float = 0.0,
        height: float | None = None,
        high_stack: float | None = None,
        low_stack: float = 0.0,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.SineAngleAnswer:
        """Angle of a stack. As `Halfangle.sine.angle`, to be awaited."""
        return await self._sender.send(
            _ANGLE,
            {
                "units": units,
                "center_distance": center_distance,
                "high_roll_diameter": high_roll_diameter,
                "low_roll_diameter": low_roll_diameter,
                "base_step": base_step,
                "height": height,
                "high_stack": high_stack,
                "low_stack": low_stack,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def center_distance(
        self,
        *,
        units: Literal["in", "mm"],
        settings: Sequence[models.SineCalibrationSetting],
        indicator_travel: float,
        base_step: float = 0.0,
        nominal_center_distance: float | None = None,
        angle_error_limit_arcsec: float | None = None,
        stack_error_limit: float | None = None,
        indicating_error_limit: float | None = None,
        face_lean_error_limit_arcsec: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.SineCenterDistanceAnswer:
        """Center distance from angle blocks. As `Halfangle.sine.center_distance`, to be awaited."""
        return await self._sender.send(
            _CENTER_DISTANCE,
            {
                "units": units,
                "settings": settings,
                "indicator_travel": indicator_travel,
                "base_step": base_step,
                "nominal_center_distance": nominal_center_distance,
                "angle_error_limit_arcsec": angle_error_limit_arcsec,
                "stack_error_limit": stack_error_limit,
                "indicating_error_limit": indicating_error_limit,
                "face_lean_error_limit_arcsec": face_lean_error_limit_arcsec,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def compound(
        self,
        *,
        units: Literal["in", "mm"],
        base_center_distance: float,
        upper_center_distance: float,
        base_axis: Literal["x", "y"],
        frame: Literal["part", "machine"],
        orientation: models.SineProjectedAngles | models.SineTrueTilt | models.SineNormal,
        set: str | None = None,
        sizes: Sequence[float] | None = None,
        box: Sequence[models.BlockOwned] | None = None,
        missing: Sequence[float] | None = None,
        in_use: Sequence[float] | None = None,
        base_step: float = 0.0,
        upper_step: float = 0.0,
        base_raised_side: Literal["right", "left", "back", "front"] | None = None,
        upper_raised_side: Literal["right", "left", "back", "front"] | None = None,
        base_largest_angle: float | str | None = None,
        upper_largest_angle: float | str | None = None,
        resolution: float | None = None,
        max_blocks: int = 5,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.SineCompoundAnswer:
        """Compound sine plate. As `Halfangle.sine.compound`, to be awaited."""
        return await self._sender.send(
            _COMPOUND,
            {
                "set": set,
                "sizes": sizes,
                "box": box,
                "missing": missing,
                "in_use": in_use,
                "units": units,
                "base_center_distance": base_center_distance,
                "upper_center_distance": upper_center_distance,
                "base_axis": base_axis,
                "base_step": base_step,
                "upper_step": upper_step,
                "base_raised_side": base_raised_side,
                "upper_raised_side": upper_raised_side,
                "frame": frame,
                "orientation": orientation,
                "base_largest_angle": base_largest_angle,
                "upper_largest_angle": upper_largest_angle,
                "resolution": resolution,
                "max_blocks": max_blocks,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def compound_angles(
        self,
        *,
        base_center_distance: float,
        upper_center_distance: float,
        base_axis: Literal["x", "y"],
        units: Literal["in", "mm"],
        base_height: float,
        upper_height: float,
        base_step: float = 0.0,
        upper_step: float = 0.0,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.SineCompoundAnglesAnswer:
        """Angles of a compound setting. As `Halfangle.sine.compound_angles`, to be awaited."""
        return await self._sender.send(
            _COMPOUND_ANGLES,
            {
                "base_center_distance": base_center_distance,
                "upper_center_distance": upper_center_distance,
                "base_axis": base_axis,
                "base_step": base_step,
                "upper_step": upper_step,
                "units": units,
                "base_height": base_height,
                "upper_height": upper_height,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def compound_sheet(
        self,
        *,
        units: Literal["in", "mm"],
        base_center_distance: float,
        upper_center_distance: float,
        base_axis: Literal["x", "y"],
        frame: Literal["part", "machine"],
        orientation: models.SineProjectedAngles | models.SineTrueTilt | models.SineNormal,
        paper: Literal["a4", "letter"] = "a4",
        format: Literal["html", "pdf"] | None = None,
        set: str | None = None,
        sizes: Sequence[float] | None = None,
        box: Sequence[models.BlockOwned] | None = None,
        missing: Sequence[float] | None = None,
        in_use: Sequence[float] | None = None,
        base_step: float = 0.0,
        upper_step: float = 0.0,
        base_raised_side: Literal["right", "left", "back", "front"] | None = None,
        upper_raised_side: Literal["right", "left", "back", "front"] | None = None,
        base_largest_angle: float | str | None = None,
        upper_largest_angle: float | str | None = None,
        resolution: float | None = None,
        max_blocks: int = 5,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> Sheet:
        """Compound sine plate: sheet. As `Halfangle.sine.compound_sheet`, to be awaited."""
        return await self._sender.send(
            _COMPOUND_SHEET,
            {
                "paper": paper,
                "format": format,
                "set": set,
                "sizes": sizes,
                "box": box,
                "missing": missing,
                "in_use": in_use,
                "units": units,
                "base_center_distance": base_center_distance,
                "upper_center_distance": upper_center_distance,
                "base_axis": base_axis,
                "base_step": base_step,
                "upper_step": upper_step,
                "base_raised_side": base_raised_side,
                "upper_raised_side": upper_raised_side,
                "frame": frame,
                "orientation": orientation,
                "base_largest_angle": base_largest_angle,
                "upper_largest_angle": upper_largest_angle,
                "resolution": resolution,
                "max_blocks": max_blocks,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def correction(
        self,
        *,
        units: Literal["in", "mm"],
        center_distance: float,
        set: str | None = None,
        sizes: Sequence[float] | None = None,
        box: Sequence[models.BlockOwned] | None = None,
        missing: Sequence[float] | None = None,
        in_use: Sequence[float] | None = None,
        high_roll_diameter: float | None = None,
        low_roll_diameter: float | None = None,
        base_step: float = 0.0,
        angle: float | str | None = None,
        included_angle: float | str | None = None,
        measured_angle: float | str | None = None,
        measured_error_arcsec: float | None = None,
        measured_included_angle: float | str | None = None,
        measured_included_angle_error_arcsec: float | None = None,
        blocks: Sequence[float] | None = None,
        low_stack: float = 0.0,
        max_blocks: int = 6,
        tolerance_arcsec: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.SineCorrectionAnswer:
        """Correction of a measured angle. As `Halfangle.sine.correction`, to be awaited."""
        return await self._sender.send(
            _CORRECTION,
            {
                "set": set,
                "sizes": sizes,
                "box": box,
                "missing": missing,
                "in_use": in_use,
                "units": units,
                "center_distance": center_distance,
                "high_roll_diameter": high_roll_diameter,
                "low_roll_diameter": low_roll_diameter,
                "base_step": base_step,
                "angle": angle,
                "included_angle": included_angle,
                "measured_angle": measured_angle,
                "measured_error_arcsec": measured_error_arcsec,
                "measured_included_angle": measured_included_angle,
                "measured_included_angle_error_arcsec": measured_included_angle_error_arcsec,
                "blocks": blocks,
                "low_stack": low_stack,
                "max_blocks": max_blocks,
                "tolerance_arcsec": tolerance_arcsec,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def get_bar_tolerance(
        self,
        key: str,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.SineBarToleranceEntryAnswer:
        """As `Halfangle.sine.get_bar_tolerance`, to be awaited."""
        return await self._sender.send(
            _GET_BAR_TOLERANCE,
            {
                "key": key,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def list_bar_tolerances(
        self,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.SineBarToleranceListAnswer:
        """Tolerances of sine bars. As `Halfangle.sine.list_bar_tolerances`, to be awaited."""
        return await self._sender.send(
            _LIST_BAR_TOLERANCES,
            {},
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def low_stack(
        self,
        *,
        units: Literal["in", "mm"],
        center_distance: float,
        angle: float | str,
        set: str | None = None,
        sizes: Sequence[float] | None = None,
        box: Sequence[models.BlockOwned] | None = None,
        missing: Sequence[float] | None = None,
        in_use: Sequence[float] | None = None,
        high_roll_diameter: float | None = None,
        low_roll_diameter: float | None = None,
        base_step: float = 0.0,
        low_stack_use: Literal["if-needed", "fewest-blocks", "always", "never"] = "if-needed",
        max_single_blocks: int = 4,
        max_blocks: int = 6,
        smallest_high_stack: float = 0.0,
        smallest_low_stack: float = 0.0,
        tolerance_arcsec: float | None = None,
        largest_angle: float | str | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.SineLowStackAnswer:
        """Stacks under both rolls. As `Halfangle.sine.low_stack`, to be awaited."""
        return await self._sender.send(
            _LOW_STACK,
            {
                "set": set,
                "sizes": sizes,
                "box": box,
                "missing": missing,
                "in_use": in_use,
                "units": units,
                "center_distance": center_distance,
                "high_roll_diameter": high_roll_diameter,
                "low_roll_diameter": low_roll_diameter,
                "base_step": base_step,
                "angle": angle,
                "low_stack_use": low_stack_use,
                "max_single_blocks": max_single_blocks,
                "max_blocks": max_blocks,
                "smallest_high_stack": smallest_high_stack,
                "smallest_low_stack": smallest_low_stack,
                "tolerance_arcsec": tolerance_arcsec,
                "largest_angle": largest_angle,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def low_stack_sheet(
        self,
        *,
        units: Literal["in", "mm"],
        center_distance: float,
        angle: float | str,
        paper: Literal["a4", "letter"] = "a4",
        format: Literal["html", "pdf"] | None = None,
        set: str | None = None,
        sizes: Sequence[float] | None = None,
        box: Sequence[models.BlockOwned] | None = None,
        missing: Sequence[float] | None = None,
        in_use: Sequence[float] | None = None,
        high_roll_diameter: float | None = None,
        low_roll_diameter: float | None = None,
        base_step: float = 0.0,
        low_stack_use: Literal["if-needed", "fewest-blocks", "always", "never"] = "if-needed",
        max_single_blocks: int = 4,
        max_blocks: int = 6,
        smallest_high_stack: float = 0.0,
        smallest_low_stack: float = 0.0,
        tolerance_arcsec: float | None = None,
        largest_angle: float | str | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> Sheet:
        """Stacks under both rolls: sheet. As `Halfangle.sine.low_stack_sheet`, to be awaited."""
        return await self._sender.send(
            _LOW_STACK_SHEET,
            {
                "paper": paper,
                "format": format,
                "set": set,
                "sizes": sizes,
                "box": box,
                "missing": missing,
                "in_use": in_use,
                "units": units,
                "center_distance": center_distance,
                "high_roll_diameter": high_roll_diameter,
                "low_roll_diameter": low_roll_diameter,
                "base_step": base_step,
                "angle": angle,
                "low_stack_use": low_stack_use,
                "max_single_blocks": max_single_blocks,
                "max_blocks": max_blocks,
                "smallest_high_stack": smallest_high_stack,
                "smallest_low_stack": smallest_low_stack,
                "tolerance_arcsec": tolerance_arcsec,
                "largest_angle": largest_angle,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def measured_angle(
        self,
        *,
        units: Literal["in", "mm"],
        center_distance: float,
        indicator_rise: float,
        indicator_travel: float,
        center_distance_error_limit: float | None = None,
        roll_difference: float | None = None,
        roll_parallelism: float | None = None,
        face_parallelism: float | None = None,
        face_parallelism_on_rolls: bool = False,
        face_flatness: float | None = None,
        face_length: float | None = None,
        table_flatness: float | None = None,
        particle: float | None = None,
        temperature_celsius: float | None = None,
        temperature_error_limit_celsius: float | None = None,
        temperature_difference_celsius: float | None = None,
        plate_material: Literal[
            "steel",
            "tungsten-carbide",
            "chromium-carbide",
            "ceramic",
            "glass-ceramic",
            "fused-quartz",
        ] = "steel",
        axis_yaw_error_limit_arcsec: float | None = None,
        axis_pitch_error_limit_arcsec: float | None = None,
        high_roll_diameter: float | None = None,
        low_roll_diameter: float | None = None,
        base_step: float = 0.0,
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
        holding: Literal["between-centers", "on-its-generator", "in-a-vee"] | None = None,
        vee_angle: float | str = 90.0,
        indicating_error_limit: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.SineMeasuredAngleAnswer:
        """Angle measured on a sine bar. As `Halfangle.sine.measured_angle`, to be awaited."""
        return await self._sender.send(
            _MEASURED_ANGLE,
            {
                "center_distance_error_limit": center_distance_error_limit,
                "roll_difference": roll_difference,
                "roll_parallelism": roll_parallelism,
                "face_parallelism": face_parallelism,
                "face_parallelism_on_rolls": face_parallelism_on_rolls,
                "face_flatness": face_flatness,
                "face_length": face_length,
                "table_flatness": table_flatness,
                "particle": particle,
                "temperature_celsius": temperature_celsius,
                "temperature_error_limit_celsius": temperature_error_limit_celsius,
                "temperature_difference_celsius": temperature_difference_celsius,
                "plate_material": plate_material,
                "axis_yaw_error_limit_arcsec": axis_yaw_error_limit_arcsec,
                "axis_pitch_error_limit_arcsec": axis_pitch_error_limit_arcsec,
                "units": units,
                "center_distance": center_distance,
                "high_roll_diameter": high_roll_diameter,
                "low_roll_diameter": low_roll_diameter,
                "base_step": base_step,
                "blocks": blocks,
                "calibrated_blocks": calibrated_blocks,
                "grade": grade,
                "block_material": block_material,
                "holding": holding,
                "vee_angle": vee_angle,
                "indicator_rise": indicator_rise,
                "indicator_travel": indicator_travel,
                "indicating_error_limit": indicating_error_limit,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def over_pin(
        self,
        *,
        units: Literal["in", "mm"],
        angle: float | str,
        pin_diameter: float,
        point_from_stop: float,
        formats: Sequence[Literal["svg"]] | None = None,
        pin_from_stop: float | None = None,
        stop_at: Literal["low-end", "high-end"] = "low-end",
        point_over_face: float = 0.0,
        angle_error_limit_arcsec: float | None = None,
        roll_error_limit: float | None = None,
        measure_error_limit: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.SineOverPinAnswer:
        """Height over a pin on a sine bar. As `Halfangle.sine.over_pin`, to be awaited."""
        return await self._sender.send(
            _OVER_PIN,
            {
                "formats": formats,
                "units": units,
                "angle": angle,
                "pin_diameter": pin_diameter,
                "pin_from_stop": pin_from_stop,
                "stop_at": stop_at,
                "point_from_stop": point_from_stop,
                "point_over_face": point_over_face,
                "angle_error_limit_arcsec": angle_error_limit_arcsec,
                "roll_error_limit": roll_error_limit,
                "measure_error_limit": measure_error_limit,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def requirements(
        self,
        *,
        units: Literal["in", "mm"],
        center_distance: float,
        angle: float | str,
        tolerance_arcsec: float,
        center_distance_error_limit: float | None = None,
        roll_difference: float | None = None,
        roll_parallelism: float | None = None,
        face_parallelism: float | None = None,
        face_parallelism_on_rolls: bool = False,
        face_flatness: float | None = None,
        face_length: float | None = None,
        table_flatness: float | None = None,
        particle: float | None = None,
        temperature_celsius: float | None = None,
        temperature_error_limit_celsius: float | None = None,
        temperature_difference_celsius: float | None = None,
        plate_material: Literal[
            "steel",
            "tungsten-carbide",
            "chromium-carbide",
            "ceramic",
            "glass-ceramic",
            "fused-quartz",
        ] = "steel",
        axis_yaw_error_limit_arcsec: float | None = None,
        axis_pitch_error_limit_arcsec: float | None = None,
        high_roll_diameter: float | None = None,
        low_roll_diameter: float | None = None,
        base_step: float = 0.0,
        stack_error_limit: float | None = None,
        height: float | None = None,
        resolution: float | None = None,
        block_material: Literal[
            "steel",
            "tungsten-carbide",
            "chromium-carbide",
            "ceramic",
            "glass-ceramic",
            "fused-quartz",
        ] = "steel",
        wheel_breakdown: float | None = None,
        wheel_contact_length: float | None = None,
        normal_terms: Sequence[
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
        ]
        | None = None,
        triangular_terms: Sequence[
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
        ]
        | None = None,
        u_shaped_terms: Sequence[
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
        ]
        | None = None,
        coverage_factor: float | None = None,
        decision_rule: Literal["iso-14253-1-2017", "iso-14253-1-2013"] = "iso-14253-1-2017",
        tolerance_on: Literal["plate-angle", "included-angle"] = "plate-angle",
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.SineRequirementsAnswer:
        """What must be held for a tolerance. As `Halfangle.sine.requirements`, to be awaited."""
        return await self._sender.send(
            _REQUIREMENTS,
            {
                "center_distance_error_limit": center_distance_error_limit,
                "roll_difference": roll_difference,
                "roll_parallelism": roll_parallelism,
                "face_parallelism": face_parallelism,
                "face_parallelism_on_rolls": face_parallelism_on_rolls,
                "face_flatness": face_flatness,
                "face_length": face_length,
                "table_flatness": table_flatness,
                "particle": particle,
                "temperature_celsius": temperature_celsius,
                "temperature_error_limit_celsius": temperature_error_limit_celsius,
                "temperature_difference_celsius": temperature_difference_celsius,
                "plate_material": plate_material,
                "axis_yaw_error_limit_arcsec": axis_yaw_error_limit_arcsec,
                "axis_pitch_error_limit_arcsec": axis_pitch_error_limit_arcsec,
                "units": units,
                "center_distance": center_distance,
                "high_roll_diameter": high_roll_diameter,
                "low_roll_diameter": low_roll_diameter,
                "base_step": base_step,
                "angle": angle,
                "stack_error_limit": stack_error_limit,
                "height": height,
                "resolution": resolution,
                "block_material": block_material,
                "wheel_breakdown": wheel_breakdown,
                "wheel_contact_length": wheel_contact_length,
                "normal_terms": normal_terms,
                "triangular_terms": triangular_terms,
                "u_shaped_terms": u_shaped_terms,
                "coverage_factor": coverage_factor,
                "decision_rule": decision_rule,
                "tolerance_on": tolerance_on,
                "tolerance_arcsec": tolerance_arcsec,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def setting(
        self,
        *,
        units: Literal["in", "mm"],
        center_distance: float,
        angle: float | str,
        high_roll_diameter: float | None = None,
        low_roll_diameter: float | None = None,
        base_step: float = 0.0,
        largest_angle: float | str | None = None,
        steep_angle: float | str = 45.0,
        resolution: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.SineSettingAnswer:
        """Sine setting. As `Halfangle.sine.setting`, to be awaited."""
        return await self._sender.send(
            _SETTING,
            {
                "units": units,
                "center_distance": center_distance,
                "high_roll_diameter": high_roll_diameter,
                "low_roll_diameter": low_roll_diameter,
                "base_step": base_step,
                "angle": angle,
                "largest_angle": largest_angle,
                "steep_angle": steep_angle,
                "resolution": resolution,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def setting_sheet(
        self,
        *,
        units: Literal["in", "mm"],
        center_distance: float,
        angle: float | str,
        paper: Literal["a4", "letter"] = "a4",
        format: Literal["html", "pdf"] | None = None,
        high_roll_diameter: float | None = None,
        low_roll_diameter: float | None = None,
        base_step: float = 0.0,
        largest_angle: float | str | None = None,
        steep_angle: float | str = 45.0,
        resolution: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> Sheet:
        """Sine setting: sheet. As `Halfangle.sine.setting_sheet`, to be awaited."""
        return await self._sender.send(
            _SETTING_SHEET,
            {
                "paper": paper,
                "format": format,
                "units": units,
                "center_distance": center_distance,
                "high_roll_diameter": high_roll_diameter,
                "low_roll_diameter": low_roll_diameter,
                "base_step": base_step,
                "angle": angle,
                "largest_angle": largest_angle,
                "steep_angle": steep_angle,
                "resolution": resolution,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def table(
        self,
        *,
        units: Literal["in", "mm"],
        center_distance: float,
        first_angle: float | str,
        last_angle: float | str,
        angle_step: float | str,
        high_roll_diameter: float | None = None,
        low_roll_diameter: float | None = None,
        base_step: float = 0.0,
        resolution: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.SineTableAnswer:
        """Setting table. As `Halfangle.sine.table`, to be awaited."""
        return await self._sender.send(
            _TABLE,
            {
                "units": units,
                "center_distance": center_distance,
                "high_roll_diameter": high_roll_diameter,
                "low_roll_diameter": low_roll_diameter,
                "base_step": base_step,
                "first_angle": first_angle,
                "last_angle": last_angle,
                "angle_step": angle_step,
                "resolution": resolution,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def taper_angle(
        self,
        *,
        units: Literal["in", "mm"],
        center_distance: float,
        holding: Literal["between-centers", "on-its-generator", "in-a-vee"],
        height: float,
        high_roll_diameter: float | None = None,
        low_roll_diameter: float | None = None,
        base_step: float = 0.0,
        vee_angle: float | str = 90.0,
        indicator_rise: float = 0.0,
        indicator_travel: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.SineTaperAngleAnswer:
        """Taper of a sine setting. As `Halfangle.sine.taper_angle`, to be awaited."""
        return await self._sender.send(
            _TAPER_ANGLE,
            {
                "units": units,
                "center_distance": center_distance,
                "high_roll_diameter": high_roll_diameter,
                "low_roll_diameter": low_roll_diameter,
                "base_step": base_step,
                "holding": holding,
                "vee_angle": vee_angle,
                "height": height,
                "indicator_rise": indicator_rise,
                "indicator_travel": indicator_travel,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def taper_setting(
        self,
        *,
        units: Literal["in", "mm"],
        center_distance: float,
        holding: Literal["between-centers", "on-its-generator", "in-a-vee"],
        included_angle: float | str | None = None,
        half_angle: float | str | None = None,
        taper_per_foot: float | None = None,
        one_in_x: float | None = None,
        rate_of_taper: float | None = None,
        designation: str | None = None,
        high_roll_diameter: float | None = None,
        low_roll_diameter: float | None = None,
        base_step: float = 0.0,
        vee_angle: float | str = 90.0,
        largest_angle: float | str | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.SineTaperSettingAnswer:
        """Sine setting for a taper. As `Halfangle.sine.taper_setting`, to be awaited."""
        return await self._sender.send(
            _TAPER_SETTING,
            {
                "included_angle": included_angle,
                "half_angle": half_angle,
                "taper_per_foot": taper_per_foot,
                "one_in_x": one_in_x,
                "rate_of_taper": rate_of_taper,
                "designation": designation,
                "units": units,
                "center_distance": center_distance,
                "high_roll_diameter": high_roll_diameter,
                "low_roll_diameter": low_roll_diameter,
                "base_step": base_step,
                "holding": holding,
                "vee_angle": vee_angle,
                "largest_angle": largest_angle,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def taper_setting_sheet(
        self,
        *,
        units: Literal["in", "mm"],
        center_distance: float,
        holding: Literal["between-centers", "on-its-generator", "in-a-vee"],
        paper: Literal["a4", "letter"] = "a4",
        format: Literal["html", "pdf"] | None = None,
        included_angle: float | str | None = None,
        half_angle: float | str | None = None,
        taper_per_foot: float | None = None,
        one_in_x: float | None = None,
        rate_of_taper: float | None = None,
        designation: str | None = None,
        high_roll_diameter: float | None = None,
        low_roll_diameter: float | None = None,
        base_step: float = 0.0,
        vee_angle: float | str = 90.0,
        largest_angle: float | str | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> Sheet:
        """As `Halfangle.sine.taper_setting_sheet`, to be awaited."""
        return await self._sender.send(
            _TAPER_SETTING_SHEET,
            {
                "paper": paper,
                "format": format,
                "included_angle": included_angle,
                "half_angle": half_angle,
                "taper_per_foot": taper_per_foot,
                "one_in_x": one_in_x,
                "rate_of_taper": rate_of_taper,
                "designation": designation,
                "units": units,
                "center_distance": center_distance,
                "high_roll_diameter": high_roll_diameter,
                "low_roll_diameter": low_roll_diameter,
                "base_step": base_step,
                "holding": holding,
                "vee_angle": vee_angle,
                "largest_angle": largest_angle,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def uncertainty(
        self,
        *,
        units: Literal["in", "mm"],
        center_distance: float,
        angle: float | str,
        center_distance_error_limit: float | None = None,
        roll_difference: float | None = None,
        roll_parallelism: float | None = None,
        face_parallelism: float | None = None,
        face_parallelism_on_rolls: bool = False,
        face_flatness: float | None = None,
        face_length: float | None = None,
        table_flatness: float | None = None,
        particle: float | None = None,
        temperature_celsius: float | None = None,
        temperature_error_limit_celsius: float | None = None,
        temperature_difference_celsius: float | None = None,
        plate_material: Literal[
            "steel",
            "tungsten-carbide",
            "chromium-carbide",
            "ceramic",
            "glass-ceramic",
            "fused-quartz",
        ] = "steel",
        axis_yaw_error_limit_arcsec: float | None = None,
        axis_pitch_error_limit_arcsec: float | None = None,
        high_roll_diameter: float | None = None,
        low_roll_diameter: float | None = None,
        base_step: float = 0.0,
        stack_error_limit: float | None = None,
        height: float | None = None,
        resolution: float | None = None,
        block_material: Literal[
            "steel",
            "tungsten-carbide",
            "chromium-carbide",
            "ceramic",
            "glass-ceramic",
            "fused-quartz",
        ] = "steel",
        wheel_breakdown: float | None = None,
        wheel_contact_length: float | None = None,
        normal_terms: Sequence[
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
        ]
        | None = None,
        triangular_terms: Sequence[
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
        ]
        | None = None,
        u_shaped_terms: Sequence[
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
        ]
        | None = None,
        coverage_factor: float | None = None,
        decision_rule: Literal["iso-14253-1-2017", "iso-14253-1-2013"] = "iso-14253-1-2017",
        tolerance_on: Literal["plate-angle", "included-angle"] = "plate-angle",
        tolerance_arcsec: float | None = None,
        trials: int = 50000,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.SineUncertaintyAnswer:
        """Uncertainty of a sine set-up. As `Halfangle.sine.uncertainty`, to be awaited."""
        return await self._sender.send(
            _UNCERTAINTY,
            {
                "center_distance_error_limit": center_distance_error_limit,
                "roll_difference": roll_difference,
                "roll_parallelism": roll_parallelism,
                "face_parallelism": face_parallelism,
                "face_parallelism_on_rolls": face_parallelism_on_rolls,
                "face_flatness": face_flatness,
                "face_length": face_length,
                "table_flatness": table_flatness,
                "particle": particle,
                "temperature_celsius": temperature_celsius,
                "temperature_error_limit_celsius": temperature_error_limit_celsius,
                "temperature_difference_celsius": temperature_difference_celsius,
                "plate_material": plate_material,
                "axis_yaw_error_limit_arcsec": axis_yaw_error_limit_arcsec,
                "axis_pitch_error_limit_arcsec": axis_pitch_error_limit_arcsec,
                "units": units,
                "center_distance": center_distance,
                "high_roll_diameter": high_roll_diameter,
                "low_roll_diameter": low_roll_diameter,
                "base_step": base_step,
                "angle": angle,
                "stack_error_limit": stack_error_limit,
                "height": height,
                "resolution": resolution,
                "block_material": block_material,
                "wheel_breakdown": wheel_breakdown,
                "wheel_contact_length": wheel_contact_length,
                "normal_terms": normal_terms,
                "triangular_terms": triangular_terms,
                "u_shaped_terms": u_shaped_terms,
                "coverage_factor": coverage_factor,
                "decision_rule": decision_rule,
                "tolerance_on": tolerance_on,
                "tolerance_arcsec": tolerance_arcsec,
                "trials": trials,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )
