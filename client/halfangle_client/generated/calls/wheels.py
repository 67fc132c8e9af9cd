# Generated from openapi/openapi.json by openapi/generate.py. Do not edit.
"""Calls of the topic `wheels`."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Any, Literal

from halfangle_client.endpoint import AsyncSender, Endpoint, Sender
from halfangle_client.sheet import Sheet

if TYPE_CHECKING:
    from halfangle_client.generated import models

_CHOOSE: Endpoint[models.WheelChooseAnswer] = Endpoint(
    name="wheels.choose",
    method="POST",
    path="/v1/wheels/choose",
    answer="WheelChooseAnswer",
    accept="application/json",
    sends="application/json",
    heavy=True,
)
_DIAMOND: Endpoint[models.WheelDiamondAnswer] = Endpoint(
    name="wheels.diamond",
    method="POST",
    path="/v1/wheels/diamond",
    answer="WheelDiamondAnswer",
    accept="application/json",
    sends="application/json",
    heavy=True,
)
_DRESSING: Endpoint[models.WheelDressingAnswer] = Endpoint(
    name="wheels.dressing",
    method="POST",
    path="/v1/wheels/dressing",
    answer="WheelDressingAnswer",
    accept="application/json",
    sends="application/json",
)
_DRESSING_ERRORS: Endpoint[models.DressingErrorsAnswer] = Endpoint(
    name="wheels.dressing_errors",
    method="POST",
    path="/v1/wheels/dressing-errors",
    answer="DressingErrorsAnswer",
    accept="application/json",
    sends="application/json",
)
_DRESSING_SHEET: Endpoint[Sheet] = Endpoint(
    name="wheels.dressing_sheet",
    method="POST",
    path="/v1/wheels/dressing/sheet",
    answer=Sheet,
    accept="text/html, application/pdf",
    sends="application/json",
    query=(
        "paper",
        "format",
    ),
    heavy=True,
)
_FLANK: Endpoint[models.WheelFlankAnswer] = Endpoint(
    name="wheels.flank",
    method="POST",
    path="/v1/wheels/flank",
    answer="WheelFlankAnswer",
    accept="application/json",
    sends="application/json",
    heavy=True,
)
_FLANK_SHEET: Endpoint[Sheet] = Endpoint(
    name="wheels.flank_sheet",
    method="POST",
    path="/v1/wheels/flank/sheet",
    answer=Sheet,
    accept="text/html, application/pdf",
    sends="application/json",
    query=(
        "paper",
        "format",
    ),
    heavy=True,
)
_GET_GUIDE: Endpoint[models.DressingGuideEntryAnswer] = Endpoint(
    name="wheels.get_guide",
    method="GET",
    path="/v1/wheels/guides/{key}",
    answer="DressingGuideEntryAnswer",
    accept="application/json",
)
_GET_SAFETY_RULE: Endpoint[models.WheelSafetyRuleAnswer] = Endpoint(
    name="wheels.get_safety_rule",
    method="GET",
    path="/v1/wheels/safety-rules/{key}",
    answer="WheelSafetyRuleAnswer",
    accept="application/json",
)
_LIST_GUIDES: Endpoint[models.DressingGuideListAnswer] = Endpoint(
    name="wheels.list_guides",
    method="GET",
    path="/v1/wheels/guides",
    answer="DressingGuideListAnswer",
    accept="application/json",
)
_LIST_SAFETY_RULES: Endpoint[models.WheelSafetyRuleListAnswer] = Endpoint(
    name="wheels.list_safety_rules",
    method="GET",
    path="/v1/wheels/safety-rules",
    answer="WheelSafetyRuleListAnswer",
    accept="application/json",
)
_RADIUS: Endpoint[models.WheelRadiusAnswer] = Endpoint(
    name="wheels.radius",
    method="POST",
    path="/v1/wheels/radius",
    answer="WheelRadiusAnswer",
    accept="application/json",
    sends="application/json",
)
_REDRESS: Endpoint[models.WheelRedressAnswer] = Endpoint(
    name="wheels.redress",
    method="POST",
    path="/v1/wheels/redress",
    answer="WheelRedressAnswer",
    accept="application/json",
    sends="application/json",
    heavy=True,
)
_SETUP_ERRORS: Endpoint[models.SetupErrorsAnswer] = Endpoint(
    name="wheels.setup_errors",
    method="POST",
    path="/v1/wheels/setup-errors",
    answer="SetupErrorsAnswer",
    accept="application/json",
    sends="application/json",
    heavy=True,
)
_SPEED: Endpoint[models.WheelSpeedAnswer] = Endpoint(
    name="wheels.speed",
    method="POST",
    path="/v1/wheels/speed",
    answer="WheelSpeedAnswer",
    accept="application/json",
    sends="application/json",
)
_SPEED_SHEET: Endpoint[Sheet] = Endpoint(
    name="wheels.speed_sheet",
    method="POST",
    path="/v1/wheels/speed/sheet",
    answer=Sheet,
    accept="text/html, application/pdf",
    sends="application/json",
    query=(
        "paper",
        "format",
    ),
    heavy=True,
)

ENDPOINTS: tuple[Endpoint[Any], ...] = (
    _CHOOSE,
    _DIAMOND,
    _DRESSING,
    _DRESSING_ERRORS,
    _DRESSING_SHEET,
    _FLANK,
    _FLANK_SHEET,
    _GET_GUIDE,
    _GET_SAFETY_RULE,
    _LIST_GUIDES,
    _LIST_SAFETY_RULES,
    _RADIUS,
    _REDRESS,
    _SETUP_ERRORS,
    _SPEED,
    _SPEED_SHEET,
)


class WheelsCalls:
    """Calls of the topic `wheels`."""

    def __init__(self, sender: Sender) -> None:
        self._sender = sender

    def choose(
        self,
        *,
        large_diameter: float,
        small_diameter: float,
        units: Literal["in", "mm"],
        wheel_diameter: float,
        included_angle_tolerance_arcsec: float,
        ways: models.ChooseWays,
        included_angle: float | str | None = None,
        half_angle: float | str | None = None,
        taper_per_foot: float | None = None,
        one_in_x: float | None = None,
        rate_of_taper: float | None = None,
        designation: str | None = None,
        pieces: int = 1,
        minutes_per_piece: float = 10.0,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.WheelChooseAnswer:
        """Four ways to grind a cone, side by side.

        Sine plate, dressed wheel, wheel's side and swivelled workhead for one cone: the angle error
        that each reaches, its time, what to inspect, and why one is ruled out. Ask `wheels.speed`
        with the wheel's marks before any of them.

        Args:
            large_diameter: Larger diameter to grind, in `units`. [length, 1e-06 to 10000]
            small_diameter: Smaller diameter to grind, in `units`; 0 for a sharp point. [length, 0
                to 10000]
            units: Unit of every length here and in the answer.
            wheel_diameter: Diameter of the wheel, in `units`. [length, 1e-06 to 10000]
            included_angle_tolerance_arcsec: Tolerance ± on the included angle, in arc-seconds.
                [arcsecond, 1e-06 to 324000]
            ways: The ways that the shop has; at least one.
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
            pieces: Pieces to grind. [count, 1 to 1000000]
            minutes_per_piece: Time to grind one piece, in minutes (common practice, no source).
                [minute, 0 to 10000]
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `heavy_timeout_seconds`. [second, over 0, at most
                86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.WheelChooseAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.wheels.choose(units="in", included_angle=60, large_diameter=0.75,
                small_diameter=0.05, wheel_diameter=7, included_angle_tolerance_arcsec=70,
                pieces=5,
                ways=models.ChooseWays(sine_plate=models.ChooseSinePlate(center_distance=5,
                stack_error_limit=2e-05, plate_error_limit_arcsec=2,
                axis_pitch_error_limit_arcsec=5, axis_yaw_error_limit_arcsec=600,
                wheel_breakdown=5e-05),
                dressed_wheel=models.ChooseDressedWheel(wheel_width=0.75,
                dresser=models.SineBaseDresser(kind="sine-base", center_distance=2),
                stack_error_limit=5e-05, diamond_height_error_limit=0.02, flank_wear=0.0001,
                depth_per_pass=0.001), wheel_side=models.ChooseWheelSide(usable_width=1,
                swivel_error_limit_arcsec=60),
                swivelled_workhead=models.ChooseWorkhead(grinder="cylindrical", graduation="0
                05", axis_offset_error_limit=0.02)))
        """
        return self._sender.send(
            _CHOOSE,
            {
                "included_angle": included_angle,
                "half_angle": half_angle,
                "taper_per_foot": taper_per_foot,
                "one_in_x": one_in_x,
                "rate_of_taper": rate_of_taper,
                "designation": designation,
                "large_diameter": large_diameter,
                "small_diameter": small_diameter,
                "units": units,
                "wheel_diameter": wheel_diameter,
                "included_angle_tolerance_arcsec": included_angle_tolerance_arcsec,
                "pieces": pieces,
                "minutes_per_piece": minutes_per_piece,
                "ways": ways,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def diamond(
        self,
        *,
        units: Literal["in", "mm"],
        wheel_diameter: float,
        diamond_height: float,
        nib_lean: float | str,
        formats: Sequence[Literal["svg"]] | None = None,
        worn_diameter: float | None = None,
        feed_per_pass: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.WheelDiamondAnswer:
        """Drag and height of the diamond.

        Whether the wheel drags a single-point diamond or runs into it, by the lean of its nib and
        its place beside the wheel's center, and what that place does to depth, angle and radius.

        Args:
            units: Unit of every length here and in the answer.
            wheel_diameter: Diameter of the wheel, in `units`. [length, 1e-06 to 10000]
            diamond_height: Distance of the diamond's point from the plane through the wheel's axis
                along which it is fed, in `units`; positive on the side to which the wheel's surface
                moves. On a surface grinder: how far beside the wheel's lowest line. [length, -10000
                to 10000]
            nib_lean: Lean of the nib to the direction of feed, in degrees; positive where its point
                leans the way in which the wheel's surface moves. [degree, -60 to 60; or text in
                degrees, minutes, seconds]
            formats: `svg` for a drawing. Absent: none. [1 to 2 entries]
            worn_diameter: Diameter that the wheel will wear to, in `units`. [length, 1e-06 to
                10000]
            feed_per_pass: Feed of the diamond toward the wheel's axis, in `units`. [length, 1e-06
                to 10000]
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `heavy_timeout_seconds`. [second, over 0, at most
                86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.WheelDiamondAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.wheels.diamond(units="in", wheel_diameter=7, diamond_height=0.25, nib_lean=8,
                worn_diameter=5, feed_per_pass=0.0005, formats=["svg"])
        """
        return self._sender.send(
            _DIAMOND,
            {
                "formats": formats,
                "units": units,
                "wheel_diameter": wheel_diameter,
                "diamond_height": diamond_height,
                "nib_lean": nib_lean,
                "worn_diameter": worn_diameter,
                "feed_per_pass": feed_per_pass,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def dressing(
        self,
        *,
        units: Literal["in", "mm"],
        rpm: float,
        depth_per_pass: float,
        width_to_dress: float,
        nose_radius: float | None = None,
        active_width: float | None = None,
        overlap_ratio: float | None = None,
        traverse: float | None = None,
        purpose: Literal["roughing", "general", "finishing"] | None = None,
        overrun: float = 0.0,
        passes: int = 1,
        known_lead: float | None = None,
        known_depth_per_pass: float | None = None,
        known_roughness_micrometre: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.WheelDressingAnswer:
        """Dressing: overlap, lead and traverse.

        Lead and traverse of a single-point diamond for a wanted overlap ratio, or back; the cusps
        that it leaves, the roughness to expect by a dress that is known, the time it takes, and
        guide values from coarse to fine.

        Args:
            units: Unit of every length here and in the answer.
            rpm: Spindle speed of the wheel while it is dressed, per minute. [per minute, 1 to
                500000]
            depth_per_pass: Depth dressed away by one pass, in `units`. [length, 1e-06 to 10000]
            width_to_dress: Width of the wheel, or length of its flank, to dress, in `units`.
                [length, 1e-06 to 10000]
            nose_radius: Radius of the diamond's nose, in `units`. Either this or `active_width`.
                [length, 1e-06 to 10000]
            active_width: Width over which the diamond touches the wheel, in `units`, where it is
                known by itself (a flat or worn diamond, a blade). [length, 1e-06 to 10000]
            overlap_ratio: Overlap ratio wanted. One of this, `traverse` and `purpose`. [0.01 to
                1000]
            traverse: Traverse of the diamond, in `units` per minute. [length per minute, 1e-06 to
                100000]
            purpose: Purpose: the middle of the guide's overlap ratio for it is taken.
            overrun: How far the diamond runs past each end of that width, in `units`. [length, 0 to
                10000]
            passes: How many passes of this depth. [count, 1 to 100000]
            known_lead: Lead of an earlier dress with this diamond and wheel, in `units`; together
                with its depth and the roughness that was ground after it, on like work. [length,
                1e-06 to 10000]
            known_depth_per_pass: Depth of the last pass of that dress, in `units`. [length, 1e-06
                to 10000]
            known_roughness_micrometre: Roughness Ra measured after it, in micrometres. [micrometre,
                0.001 to 100]
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `timeout_seconds`. [second, over 0, at most 86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.WheelDressingAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.wheels.dressing(units="mm", rpm=1410, nose_radius=0.38, depth_per_pass=0.025,
                overlap_ratio=2, width_to_dress=25, known_lead=0.09, known_depth_per_pass=0.015,
                known_roughness_micrometre=0.5)
        """
        return self._sender.send(
            _DRESSING,
            {
                "units": units,
                "rpm": rpm,
                "nose_radius": nose_radius,
                "active_width": active_width,
                "depth_per_pass": depth_per_pass,
                "overlap_ratio": overlap_ratio,
                "traverse": traverse,
                "purpose": purpose,
                "width_to_dress": width_to_dress,
                "overrun": overrun,
                "passes": passes,
                "known_lead": known_lead,
                "known_depth_per_pass": known_depth_per_pass,
                "known_roughness_micrometre": known_roughness_micrometre,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def dressing_errors(
        self,
        *,
        large_diameter: float,
        small_diameter: float,
        units: Literal["in", "mm"],
        wheel_diameter: float,
        included_angle: float | str | None = None,
        half_angle: float | str | None = None,
        taper_per_foot: float | None = None,
        one_in_x: float | None = None,
        rate_of_taper: float | None = None,
        designation: str | None = None,
        worn_diameter: float | None = None,
        diamond_height: float | None = None,
        nose_radius: float | None = None,
        dresser_angle_error_arcsec: float | None = None,
        wheel_wear_small_end: float | None = None,
        wheel_wear_large_end: float | None = None,
        diamond_wear: float | None = None,
        dressed_toward: Literal["small-end", "large-end"] = "large-end",
        included_angle_tolerance_arcsec: float | None = None,
        inspections: Sequence[models.WheelInspection] | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.DressingErrorsAnswer:
        """What errors of dressing do to the cone.

        Diamond above or below the wheel's axis (a hyperbolic flank), nose radius, dresser angle,
        wear of wheel and diamond: their effect on the cone's angle, form and size, and which
        inspection would show them.

        Args:
            large_diameter: Larger diameter to grind, in `units`. [length, 1e-06 to 10000]
            small_diameter: Smaller diameter to grind, in `units`; 0 for a sharp point. [length, 0
                to 10000]
            units: Unit of every length here and in the answer.
            wheel_diameter: Diameter of the wheel, in `units`. [length, 1e-06 to 10000]
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
            worn_diameter: Diameter that the wheel will wear to, in `units`. [length, 1e-06 to
                10000]
            diamond_height: Distance of the diamond's path from the plane through the wheel's axis
                parallel to it (above or below the center), in `units`. [length, -10000 to 10000]
            nose_radius: Radius of the diamond's nose, in `units`; 0 for a sharp one. [length, 0 to
                10000]
            dresser_angle_error_arcsec: Error of the dressed angle from the wheel's axis, in
                arc-seconds: in the plane of that axis and the generator, so one to one on the half
                angle. [arcsecond, -324000 to 324000]
            wheel_wear_small_end: Wear of the flank, square to it, where it grinds the cone's small
                end, in `units`. Only together with `wheel_wear_large_end`: their difference turns
                the flank. [length, 0 to 10000]
            wheel_wear_large_end: The same where it grinds the large end; 0 where it has not worn.
                [length, 0 to 10000]
            diamond_wear: Length that the diamond loses in the last traverse of the flank, square to
                it, in `units`. [length, 0 to 10000]
            dressed_toward: End of the cone toward whose part of the flank the last traverse ran: it
                is dressed less deep there by the diamond's wear.
            included_angle_tolerance_arcsec: Tolerance ± on the included angle, in arc-seconds.
                [arcsecond, 1e-06 to 324000]
            inspections: Ways to inspect the cone. Absent: an optical projector that shows 60″ and
                0.01 mm, and an indicator run along the cone on a sine bar that shows 10″ and 0.001
                mm (common practice, no source). [1 to 12 entries]
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `timeout_seconds`. [second, over 0, at most 86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.DressingErrorsAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.wheels.dressing_errors(units="in", included_angle=60, large_diameter=0.75,
                small_diameter=0.05, wheel_diameter=7, worn_diameter=5, diamond_height=0.1,
                nose_radius=0.01, dresser_angle_error_arcsec=5, wheel_wear_small_end=0.0001,
                wheel_wear_large_end=0)
        """
        return self._sender.send(
            _DRESSING_ERRORS,
            {
                "included_angle": included_angle,
                "half_angle": half_angle,
                "taper_per_foot": taper_per_foot,
                "one_in_x": one_in_x,
                "rate_of_taper": rate_of_taper,
                "designation": designation,
                "large_diameter": large_diameter,
                "small_diameter": small_diameter,
                "units": units,
                "wheel_diameter": wheel_diameter,
                "worn_diameter": worn_diameter,
                "diamond_height": diamond_height,
                "nose_radius": nose_radius,
                "dresser_angle_error_arcsec": dresser_angle_error_arcsec,
                "wheel_wear_small_end": wheel_wear_small_end,
                "wheel_wear_large_end": wheel_wear_large_end,
                "diamond_wear": diamond_wear,
                "dressed_toward": dressed_toward,
                "included_angle_tolerance_arcsec": included_angle_tolerance_arcsec,
                "inspections": inspections,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def dressing_sheet(
        self,
        *,
        units: Literal["in", "mm"],
        rpm: float,
        depth_per_pass: float,
        width_to_dress: float,
        paper: Literal["a4", "letter"] = "a4",
        format: Literal["html", "pdf"] | None = None,
        nose_radius: float | None = None,
        active_width: float | None = None,
        overlap_ratio: float | None = None,
        traverse: float | None = None,
        purpose: Literal["roughing", "general", "finishing"] | None = None,
        overrun: float = 0.0,
        passes: int = 1,
        known_lead: float | None = None,
        known_depth_per_pass: float | None = None,
        known_roughness_micrometre: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> Sheet:
        """Dressing: overlap, lead and traverse: sheet.

        What `wheels.dressing` answers, on a page for the machine.

        Args:
            units: Unit of every length here and in the answer.
            rpm: Spindle speed of the wheel while it is dressed, per minute. [per minute, 1 to
                500000]
            depth_per_pass: Depth dressed away by one pass, in `units`. [length, 1e-06 to 10000]
            width_to_dress: Width of the wheel, or length of its flank, to dress, in `units`.
                [length, 1e-06 to 10000]
            paper: Paper that it is to be printed on.
            format: Form of the sheet. Absent: what Accept asks for, `html` where it takes both.
            nose_radius: Radius of the diamond's nose, in `units`. Either this or `active_width`.
                [length, 1e-06 to 10000]
            active_width: Width over which the diamond touches the wheel, in `units`, where it is
                known by itself (a flat or worn diamond, a blade). [length, 1e-06 to 10000]
            overlap_ratio: Overlap ratio wanted. One of this, `traverse` and `purpose`. [0.01 to
                1000]
            traverse: Traverse of the diamond, in `units` per minute. [length per minute, 1e-06 to
                100000]
            purpose: Purpose: the middle of the guide's overlap ratio for it is taken.
            overrun: How far the diamond runs past each end of that width, in `units`. [length, 0 to
                10000]
            passes: How many passes of this depth. [count, 1 to 100000]
            known_lead: Lead of an earlier dress with this diamond and wheel, in `units`; together
                with its depth and the roughness that was ground after it, on like work. [length,
                1e-06 to 10000]
            known_depth_per_pass: Depth of the last pass of that dress, in `units`. [length, 1e-06
                to 10000]
            known_roughness_micrometre: Roughness Ra measured after it, in micrometres. [micrometre,
                0.001 to 100]
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
            _DRESSING_SHEET,
            {
                "paper": paper,
                "format": format,
                "units": units,
                "rpm": rpm,
                "nose_radius": nose_radius,
                "active_width": active_width,
                "depth_per_pass": depth_per_pass,
                "overlap_ratio": overlap_ratio,
                "traverse": traverse,
                "purpose": purpose,
                "width_to_dress": width_to_dress,
                "overrun": overrun,
                "passes": passes,
                "known_lead": known_lead,
                "known_depth_per_pass": known_depth_per_pass,
                "known_roughness_micrometre": known_roughness_micrometre,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def flank(
        self,
        *,
        units: Literal["in", "mm"],
        work: models.ConeWork | models.FaceWork,
        wheel_width: float,
        dresser: models.SineBaseDresser | models.ScaleDresser,
        depth_per_pass: float,
        set: str | None = None,
        sizes: Sequence[float] | None = None,
        box: Sequence[models.BlockOwned] | None = None,
        missing: Sequence[float] | None = None,
        in_use: Sequence[float] | None = None,
        other_side: models.ConeWork | models.FaceWork | None = None,
        wheel_diameter: float | None = None,
        flange_diameter: float | None = None,
        edge_flat: float = 0.0,
        spare_width: Literal["stays-flat", "flank-runs-on", "land-below-flank"] = "stays-flat",
        edge_radius: float = 0.0,
        root_radius: float = 0.0,
        overrun: float = 0.0,
        max_blocks: int = 6,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.WheelFlankAnswer:
        """Angle to dress on the wheel.

        The flank to dress on one or both sides of the wheel for a cone or an angled face: angle,
        dresser's setting with its block stack or scale reading, widths, blended radii with their
        tangent points, passes, volume, and the profile as coordinates and as a drawing.

        Largest request: two flanks, and blocks as blocks.stack takes them.

        Args:
            units: Unit of every length here and in the answer.
            work: What is to be ground by the flank.
            wheel_width: Width of the wheel, in `units`. [length, 1e-06 to 10000]
            dresser: How the dresser is set.
            depth_per_pass: Depth dressed away by one pass, radially, in `units`. [length, 1e-06 to
                10000]
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
            other_side: What is to be ground by a flank on the wheel's other side; absent for a
                wheel dressed on one side.
            wheel_diameter: Diameter of the wheel, in `units`; without it, no volume is given and
                the depth is not held against the flange. [length, 1e-06 to 10000]
            flange_diameter: Diameter of the flanges, in `units`; the flank must not reach them.
                Absent: not stated, and the depth is held against the wheel's axis alone. [length,
                1e-06 to 10000]
            edge_flat: Width of periphery to be left beside or between the flanks, in `units`.
                [length, 0 to 10000]
            spare_width: What becomes of the wheel's width beyond flanks and `edge_flat`: it stays
                as periphery; the flanks run on to the wheel's sides, deeper; or a straight land is
                dressed below the flanks. Two flanks share it equally.
            edge_radius: Radius that blends flank and periphery (or two flanks), in `units`; needs
                an edge: some periphery, or a second flank. [length, 0 to 10000]
            root_radius: Radius that blends flank and land, in `units`; needs a land below the
                flank. [length, 0 to 10000]
            overrun: How far the flank reaches past the surface at each end, along the slope, in
                `units`. [length, 0 to 10000]
            max_blocks: Most blocks, in both stacks together where two are needed. [count, 1 to 8]
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `heavy_timeout_seconds`. [second, over 0, at most
                86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.WheelFlankAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.wheels.flank(units="in", work=models.ConeWork(kind="cone", included_angle=60,
                large_diameter=0.75, small_diameter=0.05), wheel_width=0.75, wheel_diameter=7,
                overrun=0.02, dresser=models.SineBaseDresser(kind="sine-base",
                center_distance=2), set="inch-81", depth_per_pass=0.0005)
        """
        return self._sender.send(
            _FLANK,
            {
                "set": set,
                "sizes": sizes,
                "box": box,
                "missing": missing,
                "in_use": in_use,
                "units": units,
                "work": work,
                "other_side": other_side,
                "wheel_width": wheel_width,
                "wheel_diameter": wheel_diameter,
                "flange_diameter": flange_diameter,
                "edge_flat": edge_flat,
                "spare_width": spare_width,
                "edge_radius": edge_radius,
                "root_radius": root_radius,
                "overrun": overrun,
                "dresser": dresser,
                "max_blocks": max_blocks,
                "depth_per_pass": depth_per_pass,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def flank_sheet(
        self,
        *,
        units: Literal["in", "mm"],
        work: models.ConeWork | models.FaceWork,
        wheel_width: float,
        dresser: models.SineBaseDresser | models.ScaleDresser,
        depth_per_pass: float,
        paper: Literal["a4", "letter"] = "a4",
        format: Literal["html", "pdf"] | None = None,
        set: str | None = None,
        sizes: Sequence[float] | None = None,
        box: Sequence[models.BlockOwned] | None = None,
        missing: Sequence[float] | None = None,
        in_use: Sequence[float] | None = None,
        other_side: models.ConeWork | models.FaceWork | None = None,
        wheel_diameter: float | None = None,
        flange_diameter: float | None = None,
        edge_flat: float = 0.0,
        spare_width: Literal["stays-flat", "flank-runs-on", "land-below-flank"] = "stays-flat",
        edge_radius: float = 0.0,
        root_radius: float = 0.0,
        overrun: float = 0.0,
        max_blocks: int = 6,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> Sheet:
        """Angle to dress on the wheel: sheet.

        What `wheels.flank` answers, on a page for the machine.

        Args:
            units: Unit of every length here and in the answer.
            work: What is to be ground by the flank.
            wheel_width: Width of the wheel, in `units`. [length, 1e-06 to 10000]
            dresser: How the dresser is set.
            depth_per_pass: Depth dressed away by one pass, radially, in `units`. [length, 1e-06 to
                10000]
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
            other_side: What is to be ground by a flank on the wheel's other side; absent for a
                wheel dressed on one side.
            wheel_diameter: Diameter of the wheel, in `units`; without it, no volume is given and
                the depth is not held against the flange. [length, 1e-06 to 10000]
            flange_diameter: Diameter of the flanges, in `units`; the flank must not reach them.
                Absent: not stated, and the depth is held against the wheel's axis alone. [length,
                1e-06 to 10000]
            edge_flat: Width of periphery to be left beside or between the flanks, in `units`.
                [length, 0 to 10000]
            spare_width: What becomes of the wheel's width beyond flanks and `edge_flat`: it stays
                as periphery; the flanks run on to the wheel's sides, deeper; or a straight land is
                dressed below the flanks. Two flanks share it equally.
            edge_radius: Radius that blends flank and periphery (or two flanks), in `units`; needs
                an edge: some periphery, or a second flank. [length, 0 to 10000]
            root_radius: Radius that blends flank and land, in `units`; needs a land below the
                flank. [length, 0 to 10000]
            overrun: How far the flank reaches past the surface at each end, along the slope, in
                `units`. [length, 0 to 10000]
            max_blocks: Most blocks, in both stacks together where two are needed. [count, 1 to 8]
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
            _FLANK_SHEET,
            {
                "paper": paper,
                "format": format,
                "set": set,
                "sizes": sizes,
                "box": box,
                "missing": missing,
                "in_use": in_use,
                "units": units,
                "work": work,
                "other_side": other_side,
                "wheel_width": wheel_width,
                "wheel_diameter": wheel_diameter,
                "flange_diameter": flange_diameter,
                "edge_flat": edge_flat,
                "spare_width": spare_width,
                "edge_radius": edge_radius,
                "root_radius": root_radius,
                "overrun": overrun,
                "dresser": dresser,
                "max_blocks": max_blocks,
                "depth_per_pass": depth_per_pass,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def get_guide(
        self,
        key: str,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.DressingGuideEntryAnswer:
        """Guide values for dressing: one guide.

        Overlap ratio and depth of a pass for single-point dressing, coarse to fine.

        Args:
            key: The purpose, such as `roughing`.
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `timeout_seconds`. [second, over 0, at most 86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.DressingGuideEntryAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.wheels.get_guide(key="roughing")
        """
        return self._sender.send(
            _GET_GUIDE,
            {
                "key": key,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def get_safety_rule(
        self,
        key: str,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.WheelSafetyRuleAnswer:
        """Safety rules of grinding wheels: one safety-rule.

        Guards, openings, rests, ring test, flanges and marked speeds, each with its clause, in our
        own words. No advice of law: the text in force, the wheel's marks and qualified people come
        first.

        Args:
            key: The key, such as `guard-required`.
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `timeout_seconds`. [second, over 0, at most 86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.WheelSafetyRuleAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.wheels.get_safety_rule(key="guard-required")
        """
        return self._sender.send(
            _GET_SAFETY_RULE,
            {
                "key": key,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def list_guides(
        self,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.DressingGuideListAnswer:
        """Guide values for dressing.

        Overlap ratio and depth of a pass for single-point dressing, coarse to fine.

        Args:
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `timeout_seconds`. [second, over 0, at most 86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.DressingGuideListAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.wheels.list_guides()
        """
        return self._sender.send(
            _LIST_GUIDES,
            {},
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def list_safety_rules(
        self,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.WheelSafetyRuleListAnswer:
        """Safety rules of grinding wheels.

        Guards, openings, rests, ring test, flanges and marked speeds, each with its clause, in our
        own words. No advice of law: the text in force, the wheel's marks and qualified people come
        first.

        Args:
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `timeout_seconds`. [second, over 0, at most 86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.WheelSafetyRuleListAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.wheels.list_safety_rules()
        """
        return self._sender.send(
            _LIST_SAFETY_RULES,
            {},
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def radius(
        self,
        *,
        units: Literal["in", "mm"],
        arc_form: Literal["convex", "concave"],
        radius: float | None = None,
        arc_width: float | None = None,
        sagitta: float | None = None,
        arc_width_error_limit: float | None = None,
        sagitta_error_limit: float | None = None,
        radius_error_limit: float | None = None,
        pin_diameter: float | None = None,
        gauge_radius: float | None = None,
        wheel_diameter: float | None = None,
        diamond_height: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.WheelRadiusAnswer:
        """Wheel dressed to a radius.

        Radius, width and sagitta of the arc, each from the other two; what a pin in the ground
        groove or a radius gauge shows; the radius that a diamond beside the wheel's center leaves.

        Args:
            units: Unit of every length here and in the answer.
            arc_form: `convex`: the wheel stands out and grinds a groove; `concave`: it grinds a
                ridge.
            radius: Radius of the arc. Two of `radius`, `arc_width`, `sagitta`. [length, 1e-06 to
                10000]
            arc_width: Width of the arc, its chord. [length, 1e-06 to 10000]
            sagitta: Height of the arc's middle over its chord. [length, 1e-06 to 10000]
            arc_width_error_limit: Largest error ± of the width as measured, in `units`. [length, 0
                to 10000]
            sagitta_error_limit: Largest error ± of the sagitta as measured, in `units`. [length, 0
                to 10000]
            radius_error_limit: Largest error ± of the radius as set, in `units`. [length, 0 to
                10000]
            pin_diameter: Pin to lay into a groove ground by the wheel, in `units`. [length, 1e-06
                to 10000]
            gauge_radius: Radius gauge to hold against what the wheel ground, in `units`. [length,
                1e-06 to 10000]
            wheel_diameter: Diameter of the wheel at the middle of the arc, in `units`. [length,
                1e-06 to 10000]
            diamond_height: Distance of the plane in which the diamond swings from the wheel's axis,
                in `units`. Together with `wheel_diameter`. [length, -10000 to 10000]
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `timeout_seconds`. [second, over 0, at most 86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.WheelRadiusAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.wheels.radius(units="in", arc_form="convex", radius=0.5, arc_width=0.6,
                radius_error_limit=0.0005, arc_width_error_limit=0.001, pin_diameter=0.75,
                gauge_radius=0.495, wheel_diameter=7, diamond_height=0.1)
        """
        return self._sender.send(
            _RADIUS,
            {
                "units": units,
                "arc_form": arc_form,
                "radius": radius,
                "arc_width": arc_width,
                "sagitta": sagitta,
                "arc_width_error_limit": arc_width_error_limit,
                "sagitta_error_limit": sagitta_error_limit,
                "radius_error_limit": radius_error_limit,
                "pin_diameter": pin_diameter,
                "gauge_radius": gauge_radius,
                "wheel_diameter": wheel_diameter,
                "diamond_height": diamond_height,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def redress(
        self,
        *,
        units: Literal["in", "mm"],
        observed_pieces: Sequence[models.WheelObservedPiece],
        pieces: int,
        tolerance_arcsec: float | None = None,
        size_tolerance: float | None = None,
        measurement_error_limit_arcsec: float | None = None,
        measurement_error_limit: float | None = None,
        decision_rule: Literal["iso-14253-1-2017", "iso-14253-1-2013"] = "iso-14253-1-2017",
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.WheelRedressAnswer:
        """When to dress again.

        How angle and size grow from piece to piece, by pieces measured on one dress, and after how
        many to dress so that the last still keeps its tolerance; which pieces to measure.

        Largest request: 100 pieces observed, a million to grind.

        Args:
            units: Unit of every length here and in the answer.
            observed_pieces: Pieces that were measured, each by angle, size or both; three at least
                of what has a tolerance. [at most 100 entries]
            pieces: How many pieces are to be ground. [count, 1 to 1000000]
            tolerance_arcsec: ± tolerance of the angle, in arc-seconds. [arcsecond, 1e-06 to 324000]
            size_tolerance: ± tolerance of the size, in `units`. [length, 1e-06 to 10000]
            measurement_error_limit_arcsec: Largest error ± common to all measured angles, in
                arc-seconds. [arcsecond, 1e-06 to 324000]
            measurement_error_limit: Largest error ± common to all measured sizes, in `units`.
                [length, 1e-06 to 10000]
            decision_rule: Rule by which limits are judged. `iso-14253-1-2017`: they are kept with a
                probability of at least 95 %. `iso-14253-1-2013`: with a guard band of two standard
                uncertainties at either limit.
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `heavy_timeout_seconds`. [second, over 0, at most
                86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.WheelRedressAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.wheels.redress(units="mm",
                observed_pieces=[models.WheelObservedPiece(piece_since_dress=1,
                measured_error_arcsec=-2, measured_size_error=0.0),
                models.WheelObservedPiece(piece_since_dress=5, measured_error_arcsec=1,
                measured_size_error=0.0007), models.WheelObservedPiece(piece_since_dress=9,
                measured_error_arcsec=5, measured_size_error=0.0011),
                models.WheelObservedPiece(piece_since_dress=13, measured_error_arcsec=7,
                measured_size_error=0.0018)], pieces=50, tolerance_arcsec=20,
                size_tolerance=0.01, measurement_error_limit_arcsec=3,
                measurement_error_limit=0.001)
        """
        return self._sender.send(
            _REDRESS,
            {
                "units": units,
                "observed_pieces": observed_pieces,
                "pieces": pieces,
                "tolerance_arcsec": tolerance_arcsec,
                "size_tolerance": size_tolerance,
                "measurement_error_limit_arcsec": measurement_error_limit_arcsec,
                "measurement_error_limit": measurement_error_limit,
                "decision_rule": decision_rule,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def setup_errors(
        self,
        *,
        large_diameter: float,
        small_diameter: float,
        units: Literal["in", "mm"],
        wheel_diameter: float,
        grinder: Literal["surface", "cylindrical"],
        way: Literal["sine-plate", "dressed-wheel", "wheel-side", "swivelled-workhead"],
        feed: Literal["traversed", "plunge"],
        included_angle: float | str | None = None,
        half_angle: float | str | None = None,
        taper_per_foot: float | None = None,
        one_in_x: float | None = None,
        rate_of_taper: float | None = None,
        designation: str | None = None,
        contact_radius: float | None = None,
        rated_for_side: bool | None = None,
        axis_offset: float | None = None,
        axis_pitch_arcsec: float | None = None,
        axis_yaw_arcsec: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.SetupErrorsAnswer:
        """What errors of the set-up do to the cone.

        Work axis off the wheel's plane, its pitch and its yaw, for a flat wheel with the work on a
        sine plate or a workhead, a dressed wheel or the wheel's side, traversed or plunged: the
        cone's angle, form and size.

        Largest request: 101 stations of the surface.

        Args:
            large_diameter: Larger diameter to grind, in `units`. [length, 1e-06 to 10000]
            small_diameter: Smaller diameter to grind, in `units`; 0 for a sharp point. [length, 0
                to 10000]
            units: Unit of every length here and in the answer.
            wheel_diameter: Diameter of the wheel, in `units`. [length, 1e-06 to 10000]
            grinder: `surface`: the wheel stands above the work, which the table carries past it.
                `cylindrical`: it stands beside the work, both axes at one height (tool grinders
                too).
            way: `sine-plate`: the periphery of a flat wheel, work tilted by a plate or a head until
                its generator is level (surface grinder). `swivelled-workhead`: the same, swivelled
                about the vertical to a wheel beside it (cylindrical). `dressed-wheel`: a flank of
                the half angle, axes parallel. `wheel-side`: the wheel's side, work swivelled about
                the vertical.
            feed: `traversed`: the table carries the work past the wheel, so that the wheel sweeps a
                plane. `plunge`: it stands still, or moves along the wheel's axis.
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
            contact_radius: Wheel side only: radius of the wheel at which the small end is ground,
                in `units`. Absent: the wheel's own radius. [length, 1e-06 to 10000]
            rated_for_side: Wheel side only: whether the wheel is stated to be rated for grinding
                with its side. Absent where it is not known, which is not a permission.
            axis_offset: Distance of the work's axis, at the small end, from the plane through the
                wheel's axis in which the angle is set, in `units`: to one side under a wheel above
                it, high or low beside a wheel or its side. [length, -10000 to 10000]
            axis_pitch_arcsec: Turn of the work's axis in the plane that holds it and the wanted
                generator, in arc-seconds; one to one on the half angle. With a wheel above: one end
                of the axis high, the plate's error included. Beside a wheel or its side: the
                swivel's error. [arcsecond, -324000 to 324000]
            axis_yaw_arcsec: Turn of the work's axis out of that plane, in arc-seconds; by its
                square on the half angle. With a wheel above: the fixture turned on the plate, or a
                head swivelled about the vertical. Beside a wheel or its side: one end of the axis
                high. [arcsecond, -324000 to 324000]
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `heavy_timeout_seconds`. [second, over 0, at most
                86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.SetupErrorsAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.wheels.setup_errors(units="in", included_angle=60, large_diameter=0.75,
                small_diameter=0.5, wheel_diameter=12, grinder="surface", way="sine-plate",
                feed="plunge", axis_offset=0.1, axis_pitch_arcsec=5, axis_yaw_arcsec=600)
        """
        return self._sender.send(
            _SETUP_ERRORS,
            {
                "included_angle": included_angle,
                "half_angle": half_angle,
                "taper_per_foot": taper_per_foot,
                "one_in_x": one_in_x,
                "rate_of_taper": rate_of_taper,
                "designation": designation,
                "large_diameter": large_diameter,
                "small_diameter": small_diameter,
                "units": units,
                "wheel_diameter": wheel_diameter,
                "grinder": grinder,
                "way": way,
                "feed": feed,
                "contact_radius": contact_radius,
                "rated_for_side": rated_for_side,
                "axis_offset": axis_offset,
                "axis_pitch_arcsec": axis_pitch_arcsec,
                "axis_yaw_arcsec": axis_yaw_arcsec,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def speed(
        self,
        *,
        units: Literal["in", "mm"],
        wheel_diameter: float,
        rpm: float | None = None,
        surface_speed_m_per_s: float | None = None,
        surface_speed_ft_per_min: float | None = None,
        new_diameter: float | None = None,
        worn_diameter: float | None = None,
        marked_rpm: float | None = None,
        marked_m_per_s: float | None = None,
        marked_ft_per_min: float | None = None,
        largest_machine_rpm: float | None = None,
        wheel_type: Literal[
            "1-straight",
            "2-cylinder",
            "5-recessed-one-side",
            "6-straight-cup",
            "7-recessed-both-sides",
            "11-flaring-cup",
            "12-dish",
            "13-saucer",
        ]
        | None = None,
        grinding_side: bool = False,
        rated_for_side: bool | None = None,
        flange_diameter: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.WheelSpeedAnswer:
        """Surface speed of a wheel against its marks.

        Surface speed from diameter and spindle speed, or back, in m/s and ft/min, against what is
        marked on wheel and machine; the worn wheel; the usual checks before starting. Where a mark,
        type or rating is missing the forecast never `holds`.

        Args:
            units: Unit of every length here and in the answer.
            wheel_diameter: Diameter of the wheel now, in `units`. [length, 1e-06 to 10000]
            rpm: Spindle speed, per minute. This or one of the surface speeds. [per minute, 1 to
                500000]
            surface_speed_m_per_s: Surface speed in m/s, to find the spindle speed for it. [metre
                per second, 0.01 to 500]
            surface_speed_ft_per_min: Surface speed in ft/min, to find the spindle speed for it.
                [foot per minute, 1 to 100000]
            new_diameter: Diameter of the wheel when new, in `units`, for which its marks hold.
                Absent: a limit marked in surface speed is reckoned for the diameter now, which is
                too high where the wheel is worn, and the forecast never `holds`. [length, 1e-06 to
                10000]
            worn_diameter: Diameter that the wheel will wear to, in `units`. [length, 1e-06 to
                10000]
            marked_rpm: Highest speed marked on the wheel, per minute. [per minute, 1 to 500000]
            marked_m_per_s: Highest surface speed marked on the wheel, in m/s. [metre per second,
                0.01 to 500]
            marked_ft_per_min: Highest surface speed marked on the wheel, in ft/min. [foot per
                minute, 1 to 100000]
            largest_machine_rpm: Highest spindle speed marked on the machine, per minute. [per
                minute, 1 to 500000]
            wheel_type: Type of the wheel by its number in ISO 525 (from memory). Absent: the
                forecast never `holds`.
            grinding_side: Whether the wheel's side is to grind.
            rated_for_side: Whether wheel and maker state that its side may grind. Absent where it
                is not known, which is not a permission.
            flange_diameter: Diameter of the flanges, in `units`. [length, 1e-06 to 10000]
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `timeout_seconds`. [second, over 0, at most 86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.WheelSpeedAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.wheels.speed(units="in", wheel_diameter=7, rpm=3450, worn_diameter=6,
                marked_rpm=3600, wheel_type="1-straight")
        """
        return self._sender.send(
            _SPEED,
            {
                "units": units,
                "wheel_diameter": wheel_diameter,
                "rpm": rpm,
                "surface_speed_m_per_s": surface_speed_m_per_s,
                "surface_speed_ft_per_min": surface_speed_ft_per_min,
                "new_diameter": new_diameter,
                "worn_diameter": worn_diameter,
                "marked_rpm": marked_rpm,
                "marked_m_per_s": marked_m_per_s,
                "marked_ft_per_min": marked_ft_per_min,
                "largest_machine_rpm": largest_machine_rpm,
                "wheel_type": wheel_type,
                "grinding_side": grinding_side,
                "rated_for_side": rated_for_side,
                "flange_diameter": flange_diameter,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def speed_sheet(
        self,
        *,
        units: Literal["in", "mm"],
        wheel_diameter: float,
        paper: Literal["a4", "letter"] = "a4",
        format: Literal["html", "pdf"] | None = None,
        rpm: float | None = None,
        surface_speed_m_per_s: float | None = None,
        surface_speed_ft_per_min: float | None = None,
        new_diameter: float | None = None,
        worn_diameter: float | None = None,
        marked_rpm: float | None = None,
        marked_m_per_s: float | None = None,
        marked_ft_per_min: float | None = None,
        largest_machine_rpm: float | None = None,
        wheel_type: Literal[
            "1-straight",
            "2-cylinder",
            "5-recessed-one-side",
            "6-straight-cup",
            "7-recessed-both-sides",
            "11-flaring-cup",
            "12-dish",
            "13-saucer",
        ]
        | None = None,
        grinding_side: bool = False,
        rated_for_side: bool | None = None,
        flange_diameter: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> Sheet:
        """Surface speed of a wheel against its marks: sheet.

        What `wheels.speed` answers, on a page for the machine.

        Args:
            units: Unit of every length here and in the answer.
            wheel_diameter: Diameter of the wheel now, in `units`. [length, 1e-06 to 10000]
            paper: Paper that it is to be printed on.
            format: Form of the sheet. Absent: what Accept asks for, `html` where it takes both.
            rpm: Spindle speed, per minute. This or one of the surface speeds. [per minute, 1 to
                500000]
            surface_speed_m_per_s: Surface speed in m/s, to find the spindle speed for it. [metre
                per second, 0.01 to 500]
            surface_speed_ft_per_min: Surface speed in ft/min, to find the spindle speed for it.
                [foot per minute, 1 to 100000]
            new_diameter: Diameter of the wheel when new, in `units`, for which its marks hold.
                Absent: a limit marked in surface speed is reckoned for the diameter now, which is
                too high where the wheel is worn, and the forecast never `holds`. [length, 1e-06 to
                10000]
            worn_diameter: Diameter that the wheel will wear to, in `units`. [length, 1e-06 to
                10000]
            marked_rpm: Highest speed marked on the wheel, per minute. [per minute, 1 to 500000]
            marked_m_per_s: Highest surface speed marked on the wheel, in m/s. [metre per second,
                0.01 to 500]
            marked_ft_per_min: Highest surface speed marked on the wheel, in ft/min. [foot per
                minute, 1 to 100000]
            largest_machine_rpm: Highest spindle speed marked on the machine, per minute. [per
                minute, 1 to 500000]
            wheel_type: Type of the wheel by its number in ISO 525 (from memory). Absent: the
                forecast never `holds`.
            grinding_side: Whether the wheel's side is to grind.
            rated_for_side: Whether wheel and maker state that its side may grind. Absent where it
                is not known, which is not a permission.
            flange_diameter: Diameter of the flanges, in `units`. [length, 1e-06 to 10000]
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
            _SPEED_SHEET,
            {
                "paper": paper,
                "format": format,
                "units": units,
                "wheel_diameter": wheel_diameter,
                "rpm": rpm,
                "surface_speed_m_per_s": surface_speed_m_per_s,
                "surface_speed_ft_per_min": surface_speed_ft_per_min,
                "new_diameter": new_diameter,
                "worn_diameter": worn_diameter,
                "marked_rpm": marked_rpm,
                "marked_m_per_s": marked_m_per_s,
                "marked_ft_per_min": marked_ft_per_min,
                "largest_machine_rpm": largest_machine_rpm,
                "wheel_type": wheel_type,
                "grinding_side": grinding_side,
                "rated_for_side": rated_for_side,
                "flange_diameter": flange_diameter,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )


class AsyncWheelsCalls:
    """Calls of the topic `wheels`, to be awaited."""

    def __init__(self, sender: AsyncSender) -> None:
        self._sender = sender

    async def choose(
        self,
        *,
        large_diameter: float,
        small_diameter: float,
        units: Literal["in", "mm"],
        wheel_diameter: float,
        included_angle_tolerance_arcsec: float,
        ways: models.ChooseWays,
        included_angle: float | str | None = None,
        half_angle: float | str | None = None,
        taper_per_foot: float | None = None,
        one_in_x: float | None = None,
        rate_of_taper: float | None = None,
        designation: str | None = None,
        pieces: int = 1,
        minutes_per_piece: float = 10.0,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.WheelChooseAnswer:
        """Four ways to grind a cone, side by side. As `Halfangle.wheels.choose`, to be awaited."""
        return await self._sender.send(
            _CHOOSE,
            {
                "included_angle": included_angle,
                "half_angle": half_angle,
                "taper_per_foot": taper_per_foot,
                "one_in_x": one_in_x,
                "rate_of_taper": rate_of_taper,
                "designation": designation,
                "large_diameter": large_diameter,
                "small_diameter": small_diameter,
                "units": units,
                "wheel_diameter": wheel_diameter,
                "included_angle_tolerance_arcsec": included_angle_tolerance_arcsec,
                "pieces": pieces,
                "minutes_per_piece": minutes_per_piece,
                "ways": ways,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def diamond(
        self,
        *,
        units: Literal["in", "mm"],
        wheel_diameter: float,
        diamond_height: float,
        nib_lean: float | str,
        formats: Sequence[Literal["svg"]] | None = None,
        worn_diameter: float | None = None,
        feed_per_pass: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.WheelDiamondAnswer:
        """Drag and height of the diamond. As `Halfangle.wheels.diamond`, to be awaited."""
        return await self._sender.send(
            _DIAMOND,
            {
                "formats": formats,
                "units": units,
                "wheel_diameter": wheel_diameter,
                "diamond_height": diamond_height,
                "nib_lean": nib_lean,
                "worn_diameter": worn_diameter,
                "feed_per_pass": feed_per_pass,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def dressing(
        self,
        *,
        units: Literal["in", "mm"],
        rpm: float,
        depth_per_pass: float,
        width_to_dress: float,
        nose_radius: float | None = None,
        active_width: float | None = None,
        overlap_ratio: float | None = None,
        traverse: float | None = None,
        purpose: Literal["roughing", "general", "finishing"] | None = None,
        overrun: float = 0.0,
        passes: int = 1,
        known_lead: float | None = None,
        known_depth_per_pass: float | None = None,
        known_roughness_micrometre: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.WheelDressingAnswer:
        """Dressing: overlap, lead and traverse. As `Halfangle.wheels.dressing`, to be awaited."""
        return await self._sender.send(
            _DRESSING,
            {
                "units": units,
                "rpm": rpm,
                "nose_radius": nose_radius,
                "active_width": active_width,
                "depth_per_pass": depth_per_pass,
                "overlap_ratio": overlap_ratio,
                "traverse": traverse,
                "purpose": purpose,
                "width_to_dress": width_to_dress,
                "overrun": overrun,
                "passes": passes,
                "known_lead": known_lead,
                "known_depth_per_pass": known_depth_per_pass,
                "known_roughness_micrometre": known_roughness_micrometre,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def dressing_errors(
        self,
        *,
        large_diameter: float,
        small_diameter: float,
        units: Literal["in", "mm"],
        wheel_diameter: float,
        included_angle: float | str | None = None,
        half_angle: float | str | None = None,
        taper_per_foot: float | None = None,
        one_in_x: float | None = None,
        rate_of_taper: float | None = None,
        designation: str | None = None,
        worn_diameter: float | None = None,
        diamond_height: float | None = None,
        nose_radius: float | None = None,
        dresser_angle_error_arcsec: float | None = None,
        wheel_wear_small_end: float | None = None,
        wheel_wear_large_end: float | None = None,
        diamond_wear: float | None = None,
        dressed_toward: Literal["small-end", "large-end"] = "large-end",
        included_angle_tolerance_arcsec: float | None = None,
        inspections: Sequence[models.WheelInspection] | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.DressingErrorsAnswer:
        """As `Halfangle.wheels.dressing_errors`, to be awaited."""
        return await self._sender.send(
            _DRESSING_ERRORS,
            {
                "included_angle": included_angle,
                "half_angle": half_angle,
                "taper_per_foot": taper_per_foot,
                "one_in_x": one_in_x,
                "rate_of_taper": rate_of_taper,
                "designation": designation,
                "large_diameter": large_diameter,
                "small_diameter": small_diameter,
                "units": units,
                "wheel_diameter": wheel_diameter,
                "worn_diameter": worn_diameter,
                "diamond_height": diamond_height,
                "nose_radius": nose_radius,
                "dresser_angle_error_arcsec": dresser_angle_error_arcsec,
                "wheel_wear_small_end": wheel_wear_small_end,
                "wheel_wear_large_end": wheel_wear_large_end,
                "diamond_wear": diamond_wear,
                "dressed_toward": dressed_toward,
                "included_angle_tolerance_arcsec": included_angle_tolerance_arcsec,
                "inspections": inspections,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def dressing_sheet(
        self,
        *,
        units: Literal["in", "mm"],
        rpm: float,
        depth_per_pass: float,
        width_to_dress: float,
        paper: Literal["a4", "letter"] = "a4",
        format: Literal["html", "pdf"] | None = None,
        nose_radius: float | None = None,
        active_width: float | None = None,
        overlap_ratio: float | None = None,
        traverse: float | None = None,
        purpose: Literal["roughing", "general", "finishing"] | None = None,
        overrun: float = 0.0,
        passes: int = 1,
        known_lead: float | None = None,
        known_depth_per_pass: float | None = None,
        known_roughness_micrometre: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> Sheet:
        """As `Halfangle.wheels.dressing_sheet`, to be awaited."""
        return await self._sender.send(
            _DRESSING_SHEET,
            {
                "paper": paper,
                "format": format,
                "units": units,
                "rpm": rpm,
                "nose_radius": nose_radius,
                "active_width": active_width,
                "depth_per_pass": depth_per_pass,
                "overlap_ratio": overlap_ratio,
                "traverse": traverse,
                "purpose": purpose,
                "width_to_dress": width_to_dress,
                "overrun": overrun,
                "passes": passes,
                "known_lead": known_lead,
                "known_depth_per_pass": known_depth_per_pass,
                "known_roughness_micrometre": known_roughness_micrometre,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def flank(
        self,
        *,
        units: Literal["in", "mm"],
        work: models.ConeWork | models.FaceWork,
        wheel_width: float,
        dresser: models.SineBaseDresser | models.ScaleDresser,
        depth_per_pass: float,
        set: str | None = None,
        sizes: Sequence[float] | None = None,
        box: Sequence[models.BlockOwned] | None = None,
        missing: Sequence[float] | None = None,
        in_use: Sequence[float] | None = None,
        other_side: models.ConeWork | models.FaceWork | None = None,
        wheel_diameter: float | None = None,
        flange_diameter: float | None = None,
        edge_flat: float = 0.0,
        spare_width: Literal["stays-flat", "flank-runs-on", "land-below-flank"] = "stays-flat",
        edge_radius: float = 0.0,
        root_radius: float = 0.0,
        overrun: float = 0.0,
        max_blocks: int = 6,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.WheelFlankAnswer:
        """Angle to dress on the wheel. As `Halfangle.wheels.flank`, to be awaited."""
        return await self._sender.send(
            _FLANK,
            {
                "set": set,
                "sizes": sizes,
                "box": box,
                "missing": missing,
                "in_use": in_use,
                "units": units,
                "work": work,
                "other_side": other_side,
                "wheel_width": wheel_width,
                "wheel_diameter": wheel_diameter,
                "flange_diameter": flange_diameter,
                "edge_flat": edge_flat,
                "spare_width": spare_width,
                "edge_radius": edge_radius,
                "root_radius": root_radius,
                "overrun": overrun,
                "dresser": dresser,
                "max_blocks": max_blocks,
                "depth_per_pass": depth_per_pass,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def flank_sheet(
        self,
        *,
        units: Literal["in", "mm"],
        work: models.ConeWork | models.FaceWork,
        wheel_width: float,
        dresser: models.SineBaseDresser | models.ScaleDresser,
        depth_per_pass: float,
        paper: Literal["a4", "letter"] = "a4",
        format: Literal["html", "pdf"] | None = None,
        set: str | None = None,
        sizes: Sequence[float] | None = None,
        box: Sequence[models.BlockOwned] | None = None,
        missing: Sequence[float] | None = None,
        in_use: Sequence[float] | None = None,
        other_side: models.ConeWork | models.FaceWork | None = None,
        wheel_diameter: float | None = None,
        flange_diameter: float | None = None,
        edge_flat: float = 0.0,
        spare_width: Literal["stays-flat", "flank-runs-on", "land-below-flank"] = "stays-flat",
        edge_radius: float = 0.0,
        root_radius: float = 0.0,
        overrun: float = 0.0,
        max_blocks: int = 6,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> Sheet:
        """Angle to dress on the wheel: sheet. As `Halfangle.wheels.flank_sheet`, to be awaited."""
        return await self._sender.send(
            _FLANK_SHEET,
            {
                "paper": paper,
                "format": format,
                "set": set,
                "sizes": sizes,
                "box": box,
                "missing": missing,
                "in_use": in_use,
                "units": units,
                "work": work,
                "other_side": other_side,
                "wheel_width": wheel_width,
                "wheel_diameter": wheel_diameter,
                "flange_diameter": flange_diameter,
                "edge_flat": edge_flat,
                "spare_width": spare_width,
                "edge_radius": edge_radius,
                "root_radius": root_radius,
                "overrun": overrun,
                "dresser": dresser,
                "max_blocks": max_blocks,
                "depth_per_pass": depth_per_pass,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def get_guide(
        self,
        key: str,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.DressingGuideEntryAnswer:
        """Guide values for dressing: one guide. As `Halfangle.wheels.get_guide`, to be awaited."""
        return await self._sender.send(
            _GET_GUIDE,
            {
                "key": key,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def get_safety_rule(
        self,
        key: str,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.WheelSafetyRuleAnswer:
        """As `Halfangle.wheels.get_safety_rule`, to be awaited."""
        return await self._sender.send(
            _GET_SAFETY_RULE,
            {
                "key": key,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def list_guides(
        self,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.DressingGuideListAnswer:
        """Guide values for dressing. As `Halfangle.wheels.list_guides`, to be awaited."""
        return await self._sender.send(
            _LIST_GUIDES,
            {},
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def list_safety_rules(
        self,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.WheelSafetyRuleListAnswer:
        """As `Halfangle.wheels.list_safety_rules`, to be awaited."""
        return await self._sender.send(
            _LIST_SAFETY_RULES,
            {},
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def radius(
        self,
        *,
        units: Literal["in", "mm"],
        arc_form: Literal["convex", "concave"],
        radius: float | None = None,
        arc_width: float | None = None,
        sagitta: float | None = None,
        arc_width_error_limit: float | None = None,
        sagitta_error_limit: float | None = None,
        radius_error_limit: float | None = None,
        pin_diameter: float | None = None,
        gauge_radius: float | None = None,
        wheel_diameter: float | None = None,
        diamond_height: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.WheelRadiusAnswer:
        """Wheel dressed to a radius. As `Halfangle.wheels.radius`, to be awaited."""
        return await self._sender.send(
            _RADIUS,
            {
                "units": units,
                "arc_form": arc_form,
                "radius": radius,
                "arc_width": arc_width,
                "sagitta": sagitta,
                "arc_width_error_limit": arc_width_error_limit,
                "sagitta_error_limit": sagitta_error_limit,
                "radius_error_limit": radius_error_limit,
                "pin_diameter": pin_diameter,
                "gauge_radius": gauge_radius,
                "wheel_diameter": wheel_diameter,
                "diamond_height": diamond_height,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def redress(
        self,
        *,
        units: Literal["in", "mm"],
        observed_pieces: Sequence[models.WheelObservedPiece],
        pieces: int,
        tolerance_arcsec: float | None = None,
        size_tolerance: float | None = None,
        measurement_error_limit_arcsec: float | None = None,
        measurement_error_limit: float | None = None,
        decision_rule: Literal["iso-14253-1-2017", "iso-14253-1-2013"] = "iso-14253-1-2017",
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.WheelRedressAnswer:
        """When to dress again. As `Halfangle.wheels.redress`, to be awaited."""
        return await self._sender.send(
            _REDRESS,
            {
                "units": units,
                "observed_pieces": observed_pieces,
                "pieces": pieces,
                "tolerance_arcsec": tolerance_arcsec,
                "size_tolerance": size_tolerance,
                "measurement_error_limit_arcsec": measurement_error_limit_arcsec,
                "measurement_error_limit": measurement_error_limit,
                "decision_rule": decision_rule,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def setup_errors(
        self,
        *,
        large_diameter: float,
        small_diameter: float,
        units: Literal["in", "mm"],
        wheel_diameter: float,
        grinder: Literal["surface", "cylindrical"],
        way: Literal["sine-plate", "dressed-wheel", "wheel-side", "swivelled-workhead"],
        feed: Literal["traversed", "plunge"],
        included_angle: float | str | None = None,
        half_angle: float | str | None = None,
        taper_per_foot: float | None = None,
        one_in_x: float | None = None,
        rate_of_taper: float | None = None,
        designation: str | None = None,
        contact_radius: float | None = None,
        rated_for_side: bool | None = None,
        axis_offset: float | None = None,
        axis_pitch_arcsec: float | None = None,
        axis_yaw_arcsec: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.SetupErrorsAnswer:
        """As `Halfangle.wheels.setup_errors`, to be awaited."""
        return await self._sender.send(
            _SETUP_ERRORS,
            {
                "included_angle": included_angle,
                "half_angle": half_angle,
                "taper_per_foot": taper_per_foot,
                "one_in_x": one_in_x,
                "rate_of_taper": rate_of_taper,
                "designation": designation,
                "large_diameter": large_diameter,
                "small_diameter": small_diameter,
                "units": units,
                "wheel_diameter": wheel_diameter,
                "grinder": grinder,
                "way": way,
                "feed": feed,
                "contact_radius": contact_radius,
                "rated_for_side": rated_for_side,
                "axis_offset": axis_offset,
                "axis_pitch_arcsec": axis_pitch_arcsec,
                "axis_yaw_arcsec": axis_yaw_arcsec,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def speed(
        self,
        *,
        units: Literal["in", "mm"],
        wheel_diameter: float,
        rpm: float | None = None,
        surface_speed_m_per_s: float | None = None,
        surface_speed_ft_per_min: float | None = None,
        new_diameter: float | None = None,
        worn_diameter: float | None = None,
        marked_rpm: float | None = None,
        marked_m_per_s: float | None = None,
        marked_ft_per_min: float | None = None,
        largest_machine_rpm: float | None = None,
        wheel_type: Literal[
            "1-straight",
            "2-cylinder",
            "5-recessed-one-side",
            "6-straight-cup",
            "7-recessed-both-sides",
            "11-flaring-cup",
            "12-dish",
            "13-saucer",
        ]
        | None = None,
        grinding_side: bool = False,
        rated_for_side: bool | None = None,
        flange_diameter: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.WheelSpeedAnswer:
        """As `Halfangle.wheels.speed`, to be awaited."""
        return await self._sender.send(
            _SPEED,
            {
                "units": units,
                "wheel_diameter": wheel_diameter,
                "rpm": rpm,
                "surface_speed_m_per_s": surface_speed_m_per_s,
                "surface_speed_ft_per_min": surface_speed_ft_per_min,
                "new_diameter": new_diameter,
                "worn_diameter": worn_diameter,
                "marked_rpm": marked_rpm,
                "marked_m_per_s": marked_m_per_s,
                "marked_ft_per_min": marked_ft_per_min,
                "largest_machine_rpm": largest_machine_rpm,
                "wheel_type": wheel_type,
                "grinding_side": grinding_side,
                "rated_for_side": rated_for_side,
                "flange_diameter": flange_diameter,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def speed_sheet(
        self,
        *,
        units: Literal["in", "mm"],
        wheel_diameter: float,
        paper: Literal["a4", "letter"] = "a4",
        format: Literal["html", "pdf"] | None = None,
        rpm: float | None = None,
        surface_speed_m_per_s: float | None = None,
        surface_speed_ft_per_min: float | None = None,
        new_diameter: float | None = None,
        worn_diameter: float | None = None,
        marked_rpm: float | None = None,
        marked_m_per_s: float | None = None,
        marked_ft_per_min: float | None = None,
        largest_machine_rpm: float | None = None,
        wheel_type: Literal[
            "1-straight",
            "2-cylinder",
            "5-recessed-one-side",
            "6-straight-cup",
            "7-recessed-both-sides",
            "11-flaring-cup",
            "12-dish",
            "13-saucer",
        ]
        | None = None,
        grinding_side: bool = False,
        rated_for_side: bool | None = None,
        flange_diameter: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> Sheet:
        """As `Halfangle.wheels.speed_sheet`, to be awaited."""
        return await self._sender.send(
            _SPEED_SHEET,
            {
                "paper": paper,
                "format": format,
                "units": units,
                "wheel_diameter": wheel_diameter,
                "rpm": rpm,
                "surface_speed_m_per_s": surface_speed_m_per_s,
                "surface_speed_ft_per_min": surface_speed_ft_per_min,
                "new_diameter": new_diameter,
                "worn_diameter": worn_diameter,
                "marked_rpm": marked_rpm,
                "marked_m_per_s": marked_m_per_s,
                "marked_ft_per_min": marked_ft_per_min,
                "largest_machine_rpm": largest_machine_rpm,
                "wheel_type": wheel_type,
                "grinding_side": grinding_side,
                "rated_for_side": rated_for_side,
                "flange_diameter": flange_diameter,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )
