# Generated from openapi/openapi.json by openapi/generate.py. Do not edit.
"""Calls of the topic `tapers`."""

from typing import Any, Literal

from halfangle_client.endpoint import AsyncSender, Endpoint, Sender
from halfangle_client.generated import models

_CLEAN_UP = Endpoint(
    name="tapers.clean_up",
    method="POST",
    path="/v1/tapers/clean-up",
    answer=models.TaperCleanUpAnswer,
    accept="application/json",
    sends="application/json",
)
_GET_STANDARD = Endpoint(
    name="tapers.get_standard",
    method="GET",
    path="/v1/tapers/standard/{key}",
    answer=models.StandardTaperEntryAnswer,
    accept="application/json",
)
_INFEED = Endpoint(
    name="tapers.infeed",
    method="POST",
    path="/v1/tapers/infeed",
    answer=models.TaperInfeedAnswer,
    accept="application/json",
    sends="application/json",
)
_LIST_STANDARD = Endpoint(
    name="tapers.list_standard",
    method="GET",
    path="/v1/tapers/standard",
    answer=models.StandardTaperListAnswer,
    accept="application/json",
)
_SOLVE = Endpoint(
    name="tapers.solve",
    method="POST",
    path="/v1/tapers/solve",
    answer=models.TaperSolveAnswer,
    accept="application/json",
    sends="application/json",
)
_STANDOFF = Endpoint(
    name="tapers.standoff",
    method="POST",
    path="/v1/tapers/standoff",
    answer=models.TaperStandoffAnswer,
    accept="application/json",
    sends="application/json",
)

ENDPOINTS: tuple[Endpoint[Any], ...] = (
    _CLEAN_UP,
    _GET_STANDARD,
    _INFEED,
    _LIST_STANDARD,
    _SOLVE,
    _STANDOFF,
)


class TapersCalls:
    """Calls of the topic `tapers`."""

    def __init__(self, sender: Sender) -> None:
        self._sender = sender

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
        tir_large_end: float = 0.0,
        tir_small_end: float = 0.0,
        tir_indicated: Literal["square to the surface", "radially"] = "square to the surface",
        half_angle_error_arcsec: float = 0.0,
        wear: float = 0.0,
        allowance: float = 0.0,
        least_large_diameter: float | None = None,
        largest_point_loss: float | None = None,
        downfeed_per_pass: float | None = None,
        spark_out_passes: int = 2,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.TaperCleanUpAnswer:
        """Can this part be saved?

        Stock needed to clean up runout, angle error and wear of a cone against what is there, and
        how much its point shortens.

        Largest request: one calculation of fixed size.

        Args:
            units: Unit of every length here and in the answer.
            large_diameter: Diameter at the large end as it stands, the mean over a turn. [length,
                1e-06 to 10000]
            length: Length to clean up along the axis. [length, 1e-06 to 10000]
            included_angle: Angle between opposite surfaces of the cone, in degrees. [degree, over
                0.01, under 179; or text in degrees, minutes, seconds]
            half_angle: Angle between axis and surface, in degrees. [degree, over 0.005, under 89.5;
                or text in degrees, minutes, seconds]
            taper_per_foot: Inches of diameter a foot of length, whatever `units` are. [inch per
                foot, 0.003 to 2000]
            one_in_x: The x of a taper written 1:x, on the diameter. [0.005 to 5000]
            tir_large_end: Full indicator movement at the large end. [length, 0 to 10000]
            tir_small_end: Full indicator movement at the small end. [length, 0 to 10000]
            tir_indicated: How the indicator stood.
            half_angle_error_arcsec: Half angle as it stands less the right one: positive where too
                blunt. [arcsecond, -36000 to 36000]
            wear: Deepest wear or dent below the surface, square to it. [length, 0 to 10000]
            allowance: Further stock to be sure that all is clean, square to the surface. [length, 0
                to 10000]
            least_large_diameter: Smallest diameter at the large end's station that is still of use.
                [length, 1e-06 to 10000]
            largest_point_loss: Most that the point may lose along the axis. [length, 0 to 10000]
            downfeed_per_pass: Feed a pass, square to the cone. [length, 1e-06 to 10000]
            spark_out_passes: Passes without feed at the end. [count, 0 to 100]

        Example:
            client.tapers.clean_up(units="in", included_angle=60, large_diameter=0.75,
                length=0.6, tir_large_end=0.001, tir_small_end=0.002,
                half_angle_error_arcsec=120, wear=0.002, least_large_diameter=0.74,
                downfeed_per_pass=0.0002)
        """
        return self._sender.send(
            _CLEAN_UP,
            {
                "units": units,
                "included_angle": included_angle,
                "half_angle": half_angle,
                "taper_per_foot": taper_per_foot,
                "one_in_x": one_in_x,
                "large_diameter": large_diameter,
                "length": length,
                "tir_large_end": tir_large_end,
                "tir_small_end": tir_small_end,
                "tir_indicated": tir_indicated,
                "half_angle_error_arcsec": half_angle_error_arcsec,
                "wear": wear,
                "allowance": allowance,
                "least_large_diameter": least_large_diameter,
                "largest_point_loss": largest_point_loss,
                "downfeed_per_pass": downfeed_per_pass,
                "spark_out_passes": spark_out_passes,
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

    def infeed(
        self,
        *,
        units: Literal["in", "mm"],
        amount: float,
        included_angle: float | str | None = None,
        half_angle: float | str | None = None,
        taper_per_foot: float | None = None,
        one_in_x: float | None = None,
        amount_is: Literal["normal", "radius", "diameter", "axial"] = "normal",
        downfeed_per_pass: float | None = None,
        spark_out_passes: int = 2,
        length: float | None = None,
        half_angle_error_arcsec: float = 0.0,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.TaperInfeedAnswer:
        """Feed on a cone.

        What a downfeed square to the surface takes off diameter and radius, how far gauge line and
        point move, stock left at either end by an angle error, and the passes.

        Largest request: one calculation of fixed size.

        Args:
            units: Unit of every length here and in the answer.
            amount: Size of the layer, measured as `amount_is` says. [length, 1e-06 to 10000]
            included_angle: Angle between opposite surfaces of the cone, in degrees. [degree, over
                0.01, under 179; or text in degrees, minutes, seconds]
            half_angle: Angle between axis and surface, in degrees. [degree, over 0.005, under 89.5;
                or text in degrees, minutes, seconds]
            taper_per_foot: Inches of diameter a foot of length, whatever `units` are. [inch per
                foot, 0.003 to 2000]
            one_in_x: The x of a taper written 1:x, on the diameter. [0.005 to 5000]
            amount_is: How `amount` is measured. `normal`: square to the surface, as a sine plate
                feeds down under a flat wheel; `radius` or `diameter`: at a fixed station, as a
                swivelled workhead feeds; `axial`: as the gauge line and the point move.
            downfeed_per_pass: Feed a pass, square to the surface. [length, 1e-06 to 10000]
            spark_out_passes: Passes without feed at the end. [count, 0 to 100]
            length: Length of the cone along its axis; needed with `half_angle_error_arcsec`
                [length, 1e-06 to 10000]
            half_angle_error_arcsec: Half angle of the part as it stands less the right one:
                positive where it is too blunt. [arcsecond, -36000 to 36000]

        Example:
            client.tapers.infeed(units="in", included_angle=60, amount=0.001,
                downfeed_per_pass=0.0002)
        """
        return self._sender.send(
            _INFEED,
            {
                "units": units,
                "included_angle": included_angle,
                "half_angle": half_angle,
                "taper_per_foot": taper_per_foot,
                "one_in_x": one_in_x,
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

    def list_standard(
        self,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.StandardTaperListAnswer:
        """Standard tapers.

        Standard tapers from published tables, each row with its source.

        Example:
            client.tapers.list_standard()
        """
        return self._sender.send(
            _LIST_STANDARD,
            {},
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def solve(
        self,
        *,
        units: Literal["in", "mm"],
        large_diameter: float | None = None,
        small_diameter: float | None = None,
        length: float | None = None,
        included_angle: float | str | None = None,
        half_angle: float | str | None = None,
        taper_per_foot: float | None = None,
        one_in_x: float | None = None,
        agree_within: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.TaperSolveAnswer:
        """Taper from three of its quantities.

        Large diameter, small diameter, length and slope from any three of them; more than three
        must agree.

        Largest request: one calculation of fixed size.

        Args:
            units: Unit of every length here and in the answer.
            large_diameter: Diameter of the large end, in `units`. [length, 1e-06 to 10000]
            small_diameter: Diameter of the small end, in `units`. [length, 1e-06 to 10000]
            length: Distance between the two diameters along the axis, in `units`. [length, 1e-06 to
                10000]
            included_angle: Angle between opposite surfaces of the cone, in degrees. [degree, over
                0, under 180; or text in degrees, minutes, seconds]
            half_angle: Angle between axis and surface, in degrees. [degree, over 0, under 90; or
                text in degrees, minutes, seconds]
            taper_per_foot: Inches of diameter a foot of length, whatever `units` are. [inch per
                foot, 1e-06 to 10000]
            one_in_x: The x of a taper written 1:x, on the diameter. [0.001 to 1000000]
            agree_within: How far diameters that follow from redundant values may differ, in
                `units`; 0.0001 in or 0.001 mm where left out. [length, 1e-06 to 10000]

        Example:
            client.tapers.solve(units="in", large_diameter=0.7, length=2.5625,
                taper_per_foot=0.59941)
        """
        return self._sender.send(
            _SOLVE,
            {
                "units": units,
                "large_diameter": large_diameter,
                "small_diameter": small_diameter,
                "length": length,
                "included_angle": included_angle,
                "half_angle": half_angle,
                "taper_per_foot": taper_per_foot,
                "one_in_x": one_in_x,
                "agree_within": agree_within,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def standoff(
        self,
        *,
        units: Literal["in", "mm"],
        part: Literal["external", "internal"],
        contact_length: float,
        included_angle: float | str | None = None,
        half_angle: float | str | None = None,
        taper_per_foot: float | None = None,
        one_in_x: float | None = None,
        diameter_error: float = 0.0,
        included_angle_error_arcsec: float = 0.0,
        blue_film: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.TaperStandoffAnswer:
        """Stand-off of a taper gauge.

        How far a gauge stands off for an error of diameter, where cones of different angles bear
        and by how much they gape, and what bluing will show.

        Largest request: one calculation of fixed size.

        Args:
            units: Unit of every length here and in the answer.
            part: `external`: a plug or shank in a ring gauge; `internal`: a socket with a plug
                gauge in it.
            contact_length: Length of contact along the axis, from the gauge plane at the large end.
                [length, 1e-06 to 10000]
            included_angle: Angle between opposite surfaces of the cone, in degrees. [degree, over
                0.01, under 179; or text in degrees, minutes, seconds]
            half_angle: Angle between axis and surface, in degrees. [degree, over 0.005, under 89.5;
                or text in degrees, minutes, seconds]
            taper_per_foot: Inches of diameter a foot of length, whatever `units` are. [inch per
                foot, 0.003 to 2000]
            one_in_x: The x of a taper written 1:x, on the diameter. [0.005 to 5000]
            diameter_error: Part's diameter at the gauge plane less the gauge's. [length, -10000 to
                10000]
            included_angle_error_arcsec: Part's included angle less the gauge's. [arcsecond, -36000
                to 36000]
            blue_film: Thickness of the marking film; 0.00008 in or 0.002 mm where left out (common
                practice, no source). [length, 1e-06 to 10000]

        Example:
            client.tapers.standoff(units="in", taper_per_foot=3.5, part="external",
                contact_length=2.5, diameter_error=0.0005, included_angle_error_arcsec=20)
        """
        return self._sender.send(
            _STANDOFF,
            {
                "units": units,
                "included_angle": included_angle,
                "half_angle": half_angle,
                "taper_per_foot": taper_per_foot,
                "one_in_x": one_in_x,
                "part": part,
                "contact_length": contact_length,
                "diameter_error": diameter_error,
                "included_angle_error_arcsec": included_angle_error_arcsec,
                "blue_film": blue_film,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )


class AsyncTapersCalls:
    """Calls of the topic `tapers`, to be awaited."""

    def __init__(self, sender: AsyncSender) -> None:
        self._sender = sender

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
        tir_large_end: float = 0.0,
        tir_small_end: float = 0.0,
        tir_indicated: Literal["square to the surface", "radially"] = "square to the surface",
        half_angle_error_arcsec: float = 0.0,
        wear: float = 0.0,
        allowance: float = 0.0,
        least_large_diameter: float | None = None,
        largest_point_loss: float | None = None,
        downfeed_per_pass: float | None = None,
        spark_out_passes: int = 2,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.TaperCleanUpAnswer:
        """Can this part be saved?

        Stock needed to clean up runout, angle error and wear of a cone against what is there, and
        how much its point shortens.

        Largest request: one calculation of fixed size.

        Args:
            units: Unit of every length here and in the answer.
            large_diameter: Diameter at the large end as it stands, the mean over a turn. [length,
                1e-06 to 10000]
            length: Length to clean up along the axis. [length, 1e-06 to 10000]
            included_angle: Angle between opposite surfaces of the cone, in degrees. [degree, over
                0.01, under 179; or text in degrees, minutes, seconds]
            half_angle: Angle between axis and surface, in degrees. [degree, over 0.005, under 89.5;
                or text in degrees, minutes, seconds]
            taper_per_foot: Inches of diameter a foot of length, whatever `units` are. [inch per
                foot, 0.003 to 2000]
            one_in_x: The x of a taper written 1:x, on the diameter. [0.005 to 5000]
            tir_large_end: Full indicator movement at the large end. [length, 0 to 10000]
            tir_small_end: Full indicator movement at the small end. [length, 0 to 10000]
            tir_indicated: How the indicator stood.
            half_angle_error_arcsec: Half angle as it stands less the right one: positive where too
                blunt. [arcsecond, -36000 to 36000]
            wear: Deepest wear or dent below the surface, square to it. [length, 0 to 10000]
            allowance: Further stock to be sure that all is clean, square to the surface. [length, 0
                to 10000]
            least_large_diameter: Smallest diameter at the large end's station that is still of use.
                [length, 1e-06 to 10000]
            largest_point_loss: Most that the point may lose along the axis. [length, 0 to 10000]
            downfeed_per_pass: Feed a pass, square to the cone. [length, 1e-06 to 10000]
            spark_out_passes: Passes without feed at the end. [count, 0 to 100]

        Example:
            client.tapers.clean_up(units="in", included_angle=60, large_diameter=0.75,
                length=0.6, tir_large_end=0.001, tir_small_end=0.002,
                half_angle_error_arcsec=120, wear=0.002, least_large_diameter=0.74,
                downfeed_per_pass=0.0002)
        """
        return await self._sender.send(
            _CLEAN_UP,
            {
                "units": units,
                "included_angle": included_angle,
                "half_angle": half_angle,
                "taper_per_foot": taper_per_foot,
                "one_in_x": one_in_x,
                "large_diameter": large_diameter,
                "length": length,
                "tir_large_end": tir_large_end,
                "tir_small_end": tir_small_end,
                "tir_indicated": tir_indicated,
                "half_angle_error_arcsec": half_angle_error_arcsec,
                "wear": wear,
                "allowance": allowance,
                "least_large_diameter": least_large_diameter,
                "largest_point_loss": largest_point_loss,
                "downfeed_per_pass": downfeed_per_pass,
                "spark_out_passes": spark_out_passes,
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
        """Standard tapers: one standard.

        Standard tapers from published tables, each row with its source.

        Args:
            key: The designation, such as `morse-0`.

        Example:
            client.tapers.get_standard(key="morse-0")
        """
        return await self._sender.send(
            _GET_STANDARD,
            {
                "key": key,
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
        amount_is: Literal["normal", "radius", "diameter", "axial"] = "normal",
        downfeed_per_pass: float | None = None,
        spark_out_passes: int = 2,
        length: float | None = None,
        half_angle_error_arcsec: float = 0.0,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.TaperInfeedAnswer:
        """Feed on a cone.

        What a downfeed square to the surface takes off diameter and radius, how far gauge line and
        point move, stock left at either end by an angle error, and the passes.

        Largest request: one calculation of fixed size.

        Args:
            units: Unit of every length here and in the answer.
            amount: Size of the layer, measured as `amount_is` says. [length, 1e-06 to 10000]
            included_angle: Angle between opposite surfaces of the cone, in degrees. [degree, over
                0.01, under 179; or text in degrees, minutes, seconds]
            half_angle: Angle between axis and surface, in degrees. [degree, over 0.005, under 89.5;
                or text in degrees, minutes, seconds]
            taper_per_foot: Inches of diameter a foot of length, whatever `units` are. [inch per
                foot, 0.003 to 2000]
            one_in_x: The x of a taper written 1:x, on the diameter. [0.005 to 5000]
            amount_is: How `amount` is measured. `normal`: square to the surface, as a sine plate
                feeds down under a flat wheel; `radius` or `diameter`: at a fixed station, as a
                swivelled workhead feeds; `axial`: as the gauge line and the point move.
            downfeed_per_pass: Feed a pass, square to the surface. [length, 1e-06 to 10000]
            spark_out_passes: Passes without feed at the end. [count, 0 to 100]
            length: Length of the cone along its axis; needed with `half_angle_error_arcsec`
                [length, 1e-06 to 10000]
            half_angle_error_arcsec: Half angle of the part as it stands less the right one:
                positive where it is too blunt. [arcsecond, -36000 to 36000]

        Example:
            client.tapers.infeed(units="in", included_angle=60, amount=0.001,
                downfeed_per_pass=0.0002)
        """
        return await self._sender.send(
            _INFEED,
            {
                "units": units,
                "included_angle": included_angle,
                "half_angle": half_angle,
                "taper_per_foot": taper_per_foot,
                "one_in_x": one_in_x,
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

    async def list_standard(
        self,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.StandardTaperListAnswer:
        """Standard tapers.

        Standard tapers from published tables, each row with its source.

        Example:
            client.tapers.list_standard()
        """
        return await self._sender.send(
            _LIST_STANDARD,
            {},
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def solve(
        self,
        *,
        units: Literal["in", "mm"],
        large_diameter: float | None = None,
        small_diameter: float | None = None,
        length: float | None = None,
        included_angle: float | str | None = None,
        half_angle: float | str | None = None,
        taper_per_foot: float | None = None,
        one_in_x: float | None = None,
        agree_within: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.TaperSolveAnswer:
        """Taper from three of its quantities.

        Large diameter, small diameter, length and slope from any three of them; more than three
        must agree.

        Largest request: one calculation of fixed size.

        Args:
            units: Unit of every length here and in the answer.
            large_diameter: Diameter of the large end, in `units`. [length, 1e-06 to 10000]
            small_diameter: Diameter of the small end, in `units`. [length, 1e-06 to 10000]
            length: Distance between the two diameters along the axis, in `units`. [length, 1e-06 to
                10000]
            included_angle: Angle between opposite surfaces of the cone, in degrees. [degree, over
                0, under 180; or text in degrees, minutes, seconds]
            half_angle: Angle between axis and surface, in degrees. [degree, over 0, under 90; or
                text in degrees, minutes, seconds]
            taper_per_foot: Inches of diameter a foot of length, whatever `units` are. [inch per
                foot, 1e-06 to 10000]
            one_in_x: The x of a taper written 1:x, on the diameter. [0.001 to 1000000]
            agree_within: How far diameters that follow from redundant values may differ, in
                `units`; 0.0001 in or 0.001 mm where left out. [length, 1e-06 to 10000]

        Example:
            client.tapers.solve(units="in", large_diameter=0.7, length=2.5625,
                taper_per_foot=0.59941)
        """
        return await self._sender.send(
            _SOLVE,
            {
                "units": units,
                "large_diameter": large_diameter,
                "small_diameter": small_diameter,
                "length": length,
                "included_angle": included_angle,
                "half_angle": half_angle,
                "taper_per_foot": taper_per_foot,
                "one_in_x": one_in_x,
                "agree_within": agree_within,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def standoff(
        self,
        *,
        units: Literal["in", "mm"],
        part: Literal["external", "internal"],
        contact_length: float,
        included_angle: float | str | None = None,
        half_angle: float | str | None = None,
        taper_per_foot: float | None = None,
        one_in_x: float | None = None,
        diameter_error: float = 0.0,
        included_angle_error_arcsec: float = 0.0,
        blue_film: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.TaperStandoffAnswer:
        """Stand-off of a taper gauge.

        How far a gauge stands off for an error of diameter, where cones of different angles bear
        and by how much they gape, and what bluing will show.

        Largest request: one calculation of fixed size.

        Args:
            units: Unit of every length here and in the answer.
            part: `external`: a plug or shank in a ring gauge; `internal`: a socket with a plug
                gauge in it.
            contact_length: Length of contact along the axis, from the gauge plane at the large end.
                [length, 1e-06 to 10000]
            included_angle: Angle between opposite surfaces of the cone, in degrees. [degree, over
                0.01, under 179; or text in degrees, minutes, seconds]
            half_angle: Angle between axis and surface, in degrees. [degree, over 0.005, under 89.5;
                or text in degrees, minutes, seconds]
            taper_per_foot: Inches of diameter a foot of length, whatever `units` are. [inch per
                foot, 0.003 to 2000]
            one_in_x: The x of a taper written 1:x, on the diameter. [0.005 to 5000]
            diameter_error: Part's diameter at the gauge plane less the gauge's. [length, -10000 to
                10000]
            included_angle_error_arcsec: Part's included angle less the gauge's. [arcsecond, -36000
                to 36000]
            blue_film: Thickness of the marking film; 0.00008 in or 0.002 mm where left out (common
                practice, no source). [length, 1e-06 to 10000]

        Example:
            client.tapers.standoff(units="in", taper_per_foot=3.5, part="external",
                contact_length=2.5, diameter_error=0.0005, included_angle_error_arcsec=20)
        """
        return await self._sender.send(
            _STANDOFF,
            {
                "units": units,
                "included_angle": included_angle,
                "half_angle": half_angle,
                "taper_per_foot": taper_per_foot,
                "one_in_x": one_in_x,
                "part": part,
                "contact_length": contact_length,
                "diameter_error": diameter_error,
                "included_angle_error_arcsec": included_angle_error_arcsec,
                "blue_film": blue_film,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )
