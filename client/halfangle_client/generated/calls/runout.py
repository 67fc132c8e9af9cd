# Generated from openapi/openapi.json by openapi/generate.py. Do not edit.
"""Calls of the topic `runout`."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Any, Literal

from halfangle_client.endpoint import AsyncSender, Endpoint, Sender
from halfangle_client.sheet import Sheet

if TYPE_CHECKING:
    from halfangle_client.generated import models

_AXIS: Endpoint[models.RunoutAxisAnswer] = Endpoint(
    name="runout.axis",
    method="POST",
    path="/v1/runout/axis",
    answer="RunoutAxisAnswer",
    accept="application/json",
    sends="application/json",
    heavy=True,
)
_BUDGET: Endpoint[models.RunoutBudgetAnswer] = Endpoint(
    name="runout.budget",
    method="POST",
    path="/v1/runout/budget",
    answer="RunoutBudgetAnswer",
    accept="application/json",
    sends="application/json",
    heavy=True,
)
_CONVERT: Endpoint[models.RunoutConvertAnswer] = Endpoint(
    name="runout.convert",
    method="POST",
    path="/v1/runout/convert",
    answer="RunoutConvertAnswer",
    accept="application/json",
    sends="application/json",
)
_GET_TERM: Endpoint[models.RunoutTermAnswer] = Endpoint(
    name="runout.get_term",
    method="GET",
    path="/v1/runout/terms/{key}",
    answer="RunoutTermAnswer",
    accept="application/json",
)
_INDICATE: Endpoint[models.RunoutIndicateAnswer] = Endpoint(
    name="runout.indicate",
    method="POST",
    path="/v1/runout/indicate",
    answer="RunoutIndicateAnswer",
    accept="application/json",
    sends="application/json",
    heavy=True,
)
_INDICATE_SHEET: Endpoint[Sheet] = Endpoint(
    name="runout.indicate_sheet",
    method="POST",
    path="/v1/runout/indicate/sheet",
    answer=Sheet,
    accept="text/html, application/pdf",
    sends="application/json",
    query=(
        "paper",
        "format",
    ),
    heavy=True,
)
_LIST_TERMS: Endpoint[models.RunoutTermListAnswer] = Endpoint(
    name="runout.list_terms",
    method="GET",
    path="/v1/runout/terms",
    answer="RunoutTermListAnswer",
    accept="application/json",
)
_OFF_CREST: Endpoint[models.RunoutOffCrestAnswer] = Endpoint(
    name="runout.off_crest",
    method="POST",
    path="/v1/runout/off-crest",
    answer="RunoutOffCrestAnswer",
    accept="application/json",
    sends="application/json",
)
_REVERSAL: Endpoint[models.RunoutReversalAnswer] = Endpoint(
    name="runout.reversal",
    method="POST",
    path="/v1/runout/reversal",
    answer="RunoutReversalAnswer",
    accept="application/json",
    sends="application/json",
)
_TOTAL: Endpoint[models.RunoutTotalAnswer] = Endpoint(
    name="runout.total",
    method="POST",
    path="/v1/runout/total",
    answer="RunoutTotalAnswer",
    accept="application/json",
    sends="application/json",
    heavy=True,
)
_TRUE_UP: Endpoint[models.RunoutTrueUpAnswer] = Endpoint(
    name="runout.true_up",
    method="POST",
    path="/v1/runout/true-up",
    answer="RunoutTrueUpAnswer",
    accept="application/json",
    sends="application/json",
    heavy=True,
)
_TRUE_UP_SHEET: Endpoint[Sheet] = Endpoint(
    name="runout.true_up_sheet",
    method="POST",
    path="/v1/runout/true-up/sheet",
    answer=Sheet,
    accept="text/html, application/pdf",
    sends="application/json",
    query=(
        "paper",
        "format",
    ),
    heavy=True,
)
_V_BLOCK: Endpoint[models.RunoutVBlockAnswer] = Endpoint(
    name="runout.v_block",
    method="POST",
    path="/v1/runout/v-block",
    answer="RunoutVBlockAnswer",
    accept="application/json",
    sends="application/json",
)

ENDPOINTS: tuple[Endpoint[Any], ...] = (
    _AXIS,
    _BUDGET,
    _CONVERT,
    _GET_TERM,
    _INDICATE,
    _INDICATE_SHEET,
    _LIST_TERMS,
    _OFF_CREST,
    _REVERSAL,
    _TOTAL,
    _TRUE_UP,
    _TRUE_UP_SHEET,
    _V_BLOCK,
)


class RunoutCalls:
    """Calls of the topic `runout`."""

    def __init__(self, sender: Sender) -> None:
        self._sender = sender

    def axis(
        self,
        *,
        units: Literal["in", "mm"],
        surface: Literal["external", "internal"],
        near: models.RunoutSection,
        far: models.RunoutSection,
        stations: Sequence[float],
        pivot_station: float,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.RunoutAxisAnswer:
        """Line of an axis from two sections.

        Runout of a shaft or a bore at two sections: tilt, runout at other stations, and the two
        corrections in the order in which to make them.

        Largest request: 100 stations.

        Args:
            units: Unit of every length here and in the answer.
            surface: Surface that the indicator reads: `external`, a shaft or cone from outside;
                `internal`, a bore or socket. Highest is where metal comes nearest to the indicator:
                on a shaft toward its center's offset, in a bore opposite to it.
            near: Section near the holding.
            far: Section far from the holding.
            stations: Stations wanted, such as the point. [1 to 100 entries, each length, -10000 to
                10000]
            pivot_station: Station about which the work swings. [length, -10000 to 10000]
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `heavy_timeout_seconds`. [second, over 0, at most
                86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.RunoutAxisAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.runout.axis(units="in", surface="external",
                near=models.RunoutSection(station=1, tir=0.0006, high_spot=20),
                far=models.RunoutSection(station=4, tir=0.001, high_spot=140), stations=[5.5],
                pivot_station=0)
        """
        return self._sender.send(
            _AXIS,
            {
                "units": units,
                "surface": surface,
                "near": near,
                "far": far,
                "stations": stations,
                "pivot_station": pivot_station,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def budget(
        self,
        *,
        units: Literal["in", "mm"],
        contributors: Sequence[models.RunoutContributor],
        limit_tir: float,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.RunoutBudgetAnswer:
        """Runout budget of a chain.

        Adapter, socket, fixture and indicating, of unknown phases: worst case, root sum of squares,
        how many of 100 assemblies keep each, and what to mend first.

        Largest request: 20 contributors.

        Args:
            units: Unit of every length here and in the answer.
            contributors: The chain, each of unknown phase. [1 to 20 entries]
            limit_tir: TIR wanted at the station. [length, 1e-06 to 10000]
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `heavy_timeout_seconds`. [second, over 0, at most
                86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.RunoutBudgetAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.runout.budget(units="in", limit_tir=0.0003,
                contributors=[models.RunoutContributor(name="adapter", tir=0.0001),
                models.RunoutContributor(name="spin fixture", tir=5e-05),
                models.RunoutContributor(name="indicating", tir=5e-05)])
        """
        return self._sender.send(
            _BUDGET,
            {
                "units": units,
                "contributors": contributors,
                "limit_tir": limit_tir,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def convert(
        self,
        *,
        units: Literal["in", "mm"],
        value: float,
        given_term: Literal[
            "tir",
            "eccentricity",
            "concentricity-zone-diameter",
            "coaxiality-zone-diameter",
            "circular-runout",
            "total-runout",
        ],
        wanted_term: Literal[
            "tir",
            "eccentricity",
            "concentricity-zone-diameter",
            "coaxiality-zone-diameter",
            "circular-runout",
            "total-runout",
        ],
        out_of_roundness: float | None = None,
        every_section_alike: bool = False,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.RunoutConvertAnswer:
        """From one term of runout to another.

        TIR, eccentricity, concentricity, coaxiality, circular and total run-out: the value where it
        follows, bounds with the reason where it does not, a refusal where nothing follows.

        Args:
            units: Unit of every length here and in the answer.
            value: Value found, in `units`. [length, 0 to 10000]
            given_term: Term of the value.
            wanted_term: Term wanted.
            out_of_roundness: Departure from roundness about the least-squares center, peak to
                valley, in `units`; 0 for a round section. Of the section that is spoken of, or of
                the least round one where both terms speak of the whole feature. Absent, it is taken
                as unknown. [length, 0 to 10000]
            every_section_alike: True where the section spoken of is the worst of all, or where all
                are alike: axis parallel to the datum and the form the same all along.
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `timeout_seconds`. [second, over 0, at most 86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.RunoutConvertAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.runout.convert(units="in", value=0.0004, given_term="tir",
                wanted_term="eccentricity", out_of_roundness=5e-05)
        """
        return self._sender.send(
            _CONVERT,
            {
                "units": units,
                "value": value,
                "given_term": given_term,
                "wanted_term": wanted_term,
                "out_of_roundness": out_of_roundness,
                "every_section_alike": every_section_alike,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def get_term(
        self,
        key: str,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.RunoutTermAnswer:
        """Terms of runout: one term.

        TIR, eccentricity, concentricity, coaxiality, circular and total run-out, each by the
        standard that defines it.

        Args:
            key: The key, such as `tir`.
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `timeout_seconds`. [second, over 0, at most 86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.RunoutTermAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.runout.get_term(key="tir")
        """
        return self._sender.send(
            _GET_TERM,
            {
                "key": key,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def indicate(
        self,
        *,
        units: Literal["in", "mm"],
        surface: Literal["external", "internal"],
        indicator_resolution: float,
        readings: Sequence[models.RunoutReading],
        formats: Sequence[Literal["svg"]] | None = None,
        harmonics: int = 1,
        repeatability: float | None = None,
        tip_angle: float | str = 0.0,
        included_angle: float | str | None = None,
        half_angle: float | str | None = None,
        taper_per_foot: float | None = None,
        one_in_x: float | None = None,
        rate_of_taper: float | None = None,
        designation: str | None = None,
        station_from_apex: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.RunoutIndicateAnswer:
        """Indicate a section true.

        Readings round one section of a shaft or a bore: eccentricity, high spot, how far to tap,
        from which side, and the ovality and lobes that no tapping removes.

        Largest request: 720 readings, 15 harmonics.

        Args:
            units: Unit of every length here and in the answer.
            surface: Surface that the indicator reads: `external`, a shaft or cone from outside;
                `internal`, a bore or socket. Highest is where metal comes nearest to the indicator:
                on a shaft toward its center's offset, in a bore opposite to it.
            indicator_resolution: Resolution of the indicator, in `units`. [length, 1e-06 to 10000]
            readings: Readings at any angles, each angle once. [3 to 720 entries]
            formats: `svg` for a drawing. Absent: none. [1 to 2 entries]
            harmonics: Harmonics to fit: 1 eccentricity, 2 ovality, 3 and more lobes. [count, 1 to
                15]
            repeatability: Standard deviation of one reading, by reading one place several times, in
                `units`. Not stated, it is judged by what as many harmonics as the readings carry
                leave of them; of four readings ovality is then taken for scatter. [length, 0 to
                10000]
            tip_angle: Angle of a lever indicator's tip to the surface, in degrees; 0 for a plunger
                or a tip that corrects itself. [degree, 0 to 75; or text in degrees, minutes,
                seconds]
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
            station_from_apex: Distance along the axis of the reading from the cone's apex, in
                `units`. [length, 1e-06 to 10000]
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `heavy_timeout_seconds`. [second, over 0, at most
                86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.RunoutIndicateAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.runout.indicate(units="in", surface="external", indicator_resolution=0.0001,
                readings=[models.RunoutReading(angular_position=0, reading=0.0003),
                models.RunoutReading(angular_position=90, reading=0.0004),
                models.RunoutReading(angular_position=180, reading=-0.0003),
                models.RunoutReading(angular_position=270, reading=-0.0004)], formats=["svg"])
        """
        return self._sender.send(
            _INDICATE,
            {
                "formats": formats,
                "units": units,
                "surface": surface,
                "harmonics": harmonics,
                "indicator_resolution": indicator_resolution,
                "repeatability": repeatability,
                "tip_angle": tip_angle,
                "included_angle": included_angle,
                "half_angle": half_angle,
                "taper_per_foot": taper_per_foot,
                "one_in_x": one_in_x,
                "rate_of_taper": rate_of_taper,
                "designation": designation,
                "readings": readings,
                "station_from_apex": station_from_apex,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def indicate_sheet(
        self,
        *,
        units: Literal["in", "mm"],
        surface: Literal["external", "internal"],
        indicator_resolution: float,
        readings: Sequence[models.RunoutReading],
        paper: Literal["a4", "letter"] = "a4",
        format: Literal["html", "pdf"] | None = None,
        formats: Sequence[Literal["svg"]] | None = None,
        harmonics: int = 1,
        repeatability: float | None = None,
        tip_angle: float | str = 0.0,
        included_angle: float | str | None = None,
        half_angle: float | str | None = None,
        taper_per_foot: float | None = None,
        one_in_x: float | None = None,
        rate_of_taper: float | None = None,
        designation: str | None = None,
        station_from_apex: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> Sheet:
        """Indicate a section true: sheet.

        What `runout.indicate` answers, on a page for the machine.

        Args:
            units: Unit of every length here and in the answer.
            surface: Surface that the indicator reads: `external`, a shaft or cone from outside;
                `internal`, a bore or socket. Highest is where metal comes nearest to the indicator:
                on a shaft toward its center's offset, in a bore opposite to it.
            indicator_resolution: Resolution of the indicator, in `units`. [length, 1e-06 to 10000]
            readings: Readings at any angles, each angle once. [3 to 720 entries]
            paper: Paper that it is to be printed on.
            format: Form of the sheet. Absent: what Accept asks for, `html` where it takes both.
            formats: `svg` for a drawing. Absent: none. [1 to 2 entries]
            harmonics: Harmonics to fit: 1 eccentricity, 2 ovality, 3 and more lobes. [count, 1 to
                15]
            repeatability: Standard deviation of one reading, by reading one place several times, in
                `units`. Not stated, it is judged by what as many harmonics as the readings carry
                leave of them; of four readings ovality is then taken for scatter. [length, 0 to
                10000]
            tip_angle: Angle of a lever indicator's tip to the surface, in degrees; 0 for a plunger
                or a tip that corrects itself. [degree, 0 to 75; or text in degrees, minutes,
                seconds]
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
            station_from_apex: Distance along the axis of the reading from the cone's apex, in
                `units`. [length, 1e-06 to 10000]
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
            _INDICATE_SHEET,
            {
                "paper": paper,
                "format": format,
                "formats": formats,
                "units": units,
                "surface": surface,
                "harmonics": harmonics,
                "indicator_resolution": indicator_resolution,
                "repeatability": repeatability,
                "tip_angle": tip_angle,
                "included_angle": included_angle,
                "half_angle": half_angle,
                "taper_per_foot": taper_per_foot,
                "one_in_x": one_in_x,
                "rate_of_taper": rate_of_taper,
                "designation": designation,
                "readings": readings,
                "station_from_apex": station_from_apex,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def list_terms(
        self,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.RunoutTermListAnswer:
        """Terms of runout.

        TIR, eccentricity, concentricity, coaxiality, circular and total run-out, each by the
        standard that defines it.

        Args:
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `timeout_seconds`. [second, over 0, at most 86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.RunoutTermListAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.runout.list_terms()
        """
        return self._sender.send(
            _LIST_TERMS,
            {},
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def off_crest(
        self,
        *,
        units: Literal["in", "mm"],
        small_diameter: float,
        large_diameter: float,
        miss: float,
        included_angle: float | str | None = None,
        half_angle: float | str | None = None,
        taper_per_foot: float | None = None,
        one_in_x: float | None = None,
        rate_of_taper: float | None = None,
        designation: str | None = None,
        tip_radius: float = 0.0,
        half_angle_tolerance_arcsec: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.RunoutOffCrestAnswer:
        """False taper of an indicator off the crest.

        An indicator run along a cone beside its crest drops more at the small end: the false taper,
        and the miss that a wanted angle allows.

        Args:
            units: Unit of every length here and in the answer.
            small_diameter: Diameter at the small end of the run; 0 for a true point. [length, 0 to
                10000]
            large_diameter: Diameter at its large end. [length, 1e-06 to 10000]
            miss: How far beside the crest the tip runs, in `units`. [length, 0 to 10000]
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
            tip_radius: Radius of the indicator's tip, in `units`. [length, 0 to 10000]
            half_angle_tolerance_arcsec: False half angle to allow, ± in arc-seconds on the half
                angle; gives the miss allowed. [arcsecond, 1e-06 to 324000]
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `timeout_seconds`. [second, over 0, at most 86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.RunoutOffCrestAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.runout.off_crest(units="in", included_angle=60, small_diameter=0.1,
                large_diameter=0.5, miss=0.01, tip_radius=0.04, half_angle_tolerance_arcsec=10)
        """
        return self._sender.send(
            _OFF_CREST,
            {
                "included_angle": included_angle,
                "half_angle": half_angle,
                "taper_per_foot": taper_per_foot,
                "one_in_x": one_in_x,
                "rate_of_taper": rate_of_taper,
                "designation": designation,
                "units": units,
                "small_diameter": small_diameter,
                "large_diameter": large_diameter,
                "miss": miss,
                "tip_radius": tip_radius,
                "half_angle_tolerance_arcsec": half_angle_tolerance_arcsec,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def reversal(
        self,
        *,
        units: Literal["in", "mm"],
        surface: Literal["external", "internal"],
        at_0: models.RunoutFound,
        at_180: models.RunoutFound,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.RunoutReversalAnswer:
        """Socket's error or the part's.

        Two readings with the part turned half a turn in its socket: the runout of each, the best
        and the worst clocking.

        Args:
            units: Unit of every length here and in the answer.
            surface: Surface that the indicator reads: `external`, a shaft or cone from outside;
                `internal`, a bore or socket. Highest is where metal comes nearest to the indicator:
                on a shaft toward its center's offset, in a bore opposite to it.
            at_0: Part at its first clocking; angles on the spindle.
            at_180: Part turned by 180; angles on the spindle.
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `timeout_seconds`. [second, over 0, at most 86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.RunoutReversalAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.runout.reversal(units="mm", surface="external",
                at_0=models.RunoutFound(tir=0.01, high_spot=30),
                at_180=models.RunoutFound(tir=0.004, high_spot=200))
        """
        return self._sender.send(
            _REVERSAL,
            {
                "units": units,
                "surface": surface,
                "at_0": at_0,
                "at_180": at_180,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def total(
        self,
        *,
        units: Literal["in", "mm"],
        sections: Sequence[models.RunoutSurfaceSection],
        limit_total_runout: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.RunoutTotalAnswer:
        """Total run-out of a surface.

        Total run-out of a shaft or bore from readings along it with one setting of the indicator,
        the greatest circular run-out, and how much of it is taper.

        Largest request: 60 sections of 120 readings.

        Args:
            units: Unit of every length here and in the answer.
            sections: The sections, in any order; the indicator is moved parallel to the datum axis
                between them and not set anew. [2 to 60 entries]
            limit_total_runout: What the drawing allows. [length, 1e-06 to 10000]
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `heavy_timeout_seconds`. [second, over 0, at most
                86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.RunoutTotalAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.runout.total(units="mm", sections=[models.RunoutSurfaceSection(station=0,
                section_readings=[-0.09, -0.07]), models.RunoutSurfaceSection(station=20,
                section_readings=[-0.05, -0.02]), models.RunoutSurfaceSection(station=40,
                section_readings=[0.0, 0.02])], limit_total_runout=0.1)
        """
        return self._sender.send(
            _TOTAL,
            {
                "units": units,
                "sections": sections,
                "limit_total_runout": limit_total_runout,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def true_up(
        self,
        *,
        units: Literal["in", "mm"],
        surface: Literal["external", "internal"],
        indicator_resolution: float,
        near: models.RunoutTrueUpSection,
        far: models.RunoutTrueUpSection,
        tap_places: Sequence[models.RunoutTapPlace],
        stations: Sequence[float],
        formats: Sequence[Literal["svg"]] | None = None,
        harmonics: int = 1,
        repeatability: float | None = None,
        tip_angle: float | str = 0.0,
        limit_tir: float | None = None,
        tap_error_limit: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.RunoutTrueUpAnswer:
        """True up a part by taps.

        Raw readings round two sections of a shaft or a bore: the taps in order, from which side,
        how far and with which reading to expect after each, when to leave it, and the runout to
        expect at other stations.

        Largest request: 2 sections of 180 readings, 15 harmonics, 100 stations.

        Args:
            units: Unit of every length here and in the answer.
            surface: Surface that the indicator reads: `external`, a shaft or cone from outside;
                `internal`, a bore or socket. Highest is where metal comes nearest to the indicator:
                on a shaft toward its center's offset, in a bore opposite to it.
            indicator_resolution: Resolution of the indicator, in `units`. [length, 1e-06 to 10000]
            near: Section near the holding.
            far: Section far from the holding.
            tap_places: Where the work can be tapped, in the order of the taps. Two bring the whole
                axis true; one alone only the first of `stations`. [1 to 2 entries]
            stations: Stations wanted, such as the point. [1 to 100 entries, each length, -10000 to
                10000]
            formats: `svg` for a drawing. Absent: none. [1 to 2 entries]
            harmonics: Harmonics to fit: 1 eccentricity, 2 ovality, 3 and more lobes. [count, 1 to
                15]
            repeatability: Standard deviation of one reading, by reading one place several times, in
                `units`. Not stated, it is judged by what as many harmonics as the readings carry
                leave of them; of four readings ovality is then taken for scatter. [length, 0 to
                10000]
            tip_angle: Angle of a lever indicator's tip to the surface, in degrees; 0 for a plunger
                or a tip that corrects itself. [degree, 0 to 75; or text in degrees, minutes,
                seconds]
            limit_tir: TIR allowed at `stations`, square to the axis, in `units`: where it is kept
                already nothing is tapped. [length, 1e-06 to 10000]
            tap_error_limit: How far a tap may end from where it should, ± at the place tapped and
                alike in every direction, in `units`; not stated where absent. [length, 0 to 10000]
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `heavy_timeout_seconds`. [second, over 0, at most
                86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.RunoutTrueUpAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.runout.true_up(units="in", surface="external", indicator_resolution=5e-05,
                repeatability=2e-05, tap_error_limit=5e-05, limit_tir=0.0003,
                near=models.RunoutTrueUpSection(station=1,
                readings=[models.RunoutReading(angular_position=0, reading=0.0003),
                models.RunoutReading(angular_position=90, reading=0.0004),
                models.RunoutReading(angular_position=180, reading=-0.0003),
                models.RunoutReading(angular_position=270, reading=-0.0004)]),
                far=models.RunoutTrueUpSection(station=4,
                readings=[models.RunoutReading(angular_position=0, reading=-0.0005),
                models.RunoutReading(angular_position=90, reading=0.0008),
                models.RunoutReading(angular_position=180, reading=0.0005),
                models.RunoutReading(angular_position=270, reading=-0.0008)]),
                tap_places=[models.RunoutTapPlace(kind="swing", station=4, pivot_station=0),
                models.RunoutTapPlace(kind="slide", station=0)], stations=[5.5],
                formats=["svg"])
        """
        return self._sender.send(
            _TRUE_UP,
            {
                "formats": formats,
                "units": units,
                "surface": surface,
                "harmonics": harmonics,
                "indicator_resolution": indicator_resolution,
                "repeatability": repeatability,
                "tip_angle": tip_angle,
                "near": near,
                "far": far,
                "tap_places": tap_places,
                "stations": stations,
                "limit_tir": limit_tir,
                "tap_error_limit": tap_error_limit,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def true_up_sheet(
        self,
        *,
        units: Literal["in", "mm"],
        surface: Literal["external", "internal"],
        indicator_resolution: float,
        near: models.RunoutTrueUpSection,
        far: models.RunoutTrueUpSection,
        tap_places: Sequence[models.RunoutTapPlace],
        stations: Sequence[float],
        paper: Literal["a4", "letter"] = "a4",
        format: Literal["html", "pdf"] | None = None,
        formats: Sequence[Literal["svg"]] | None = None,
        harmonics: int = 1,
        repeatability: float | None = None,
        tip_angle: float | str = 0.0,
        limit_tir: float | None = None,
        tap_error_limit: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> Sheet:
        """True up a part by taps: sheet.

        What `runout.true-up` answers, on a page for the machine.

        Args:
            units: Unit of every length here and in the answer.
            surface: Surface that the indicator reads: `external`, a shaft or cone from outside;
                `internal`, a bore or socket. Highest is where metal comes nearest to the indicator:
                on a shaft toward its center's offset, in a bore opposite to it.
            indicator_resolution: Resolution of the indicator, in `units`. [length, 1e-06 to 10000]
            near: Section near the holding.
            far: Section far from the holding.
            tap_places: Where the work can be tapped, in the order of the taps. Two bring the whole
                axis true; one alone only the first of `stations`. [1 to 2 entries]
            stations: Stations wanted, such as the point. [1 to 100 entries, each length, -10000 to
                10000]
            paper: Paper that it is to be printed on.
            format: Form of the sheet. Absent: what Accept asks for, `html` where it takes both.
            formats: `svg` for a drawing. Absent: none. [1 to 2 entries]
            harmonics: Harmonics to fit: 1 eccentricity, 2 ovality, 3 and more lobes. [count, 1 to
                15]
            repeatability: Standard deviation of one reading, by reading one place several times, in
                `units`. Not stated, it is judged by what as many harmonics as the readings carry
                leave of them; of four readings ovality is then taken for scatter. [length, 0 to
                10000]
            tip_angle: Angle of a lever indicator's tip to the surface, in degrees; 0 for a plunger
                or a tip that corrects itself. [degree, 0 to 75; or text in degrees, minutes,
                seconds]
            limit_tir: TIR allowed at `stations`, square to the axis, in `units`: where it is kept
                already nothing is tapped. [length, 1e-06 to 10000]
            tap_error_limit: How far a tap may end from where it should, ± at the place tapped and
                alike in every direction, in `units`; not stated where absent. [length, 0 to 10000]
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
            _TRUE_UP_SHEET,
            {
                "paper": paper,
                "format": format,
                "formats": formats,
                "units": units,
                "surface": surface,
                "harmonics": harmonics,
                "indicator_resolution": indicator_resolution,
                "repeatability": repeatability,
                "tip_angle": tip_angle,
                "near": near,
                "far": far,
                "tap_places": tap_places,
                "stations": stations,
                "limit_tir": limit_tir,
                "tap_error_limit": tap_error_limit,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    def v_block(
        self,
        *,
        units: Literal["in", "mm"],
        vee_angle: float | str = 90.0,
        indicator_angle: float | str = 0.0,
        max_lobes: int = 15,
        lobes: int | None = None,
        tir: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.RunoutVBlockAnswer:
        """Lobes that a V-block hides.

        What an indicator shows of each number of lobes while the part turns in a V, which lobes it
        hides, and what a reading means.

        Args:
            units: Unit of every length here and in the answer.
            vee_angle: Included angle of the V, in degrees. [degree, 1 to 175; or text in degrees,
                minutes, seconds]
            indicator_angle: Angle of the indicator from the V's bisector, in degrees; 0 opposite
                the V. [degree, -90 to 90; or text in degrees, minutes, seconds]
            max_lobes: Largest number of lobes to list. [count, 2 to 50]
            lobes: Lobes that the part has, such as 3 from a three-jaw chuck. [count, 2 to 50]
            tir: Full indicator movement in the V, in `units`; needs `lobes`. [length, 0 to 10000]
            timeout_seconds: Time limit of the call from its turn on, tries and waits between them
                included. Absent: the client's `timeout_seconds`. [second, over 0, at most 86400]
            request_id: Sent as X-Request-ID; absent: one is made. [at most 64 of A-Z a-z 0-9 . _ -]

        Returns:
            models.RunoutVBlockAnswer: `result`, `advisories` (heed each stop), `basis`.

        Raises:
            ProblemError: The service refused; InvalidRequest names each wrong field.
            ConnectionFailed: No answer came; TimedOut: none within the time limit.
            UnexpectedAnswer: What came is not what the contract promises.
            Unsendable: A value has no form in JSON.

        Example:
            client.runout.v_block(units="in", vee_angle=90, lobes=3, tir=0.0004)
        """
        return self._sender.send(
            _V_BLOCK,
            {
                "units": units,
                "vee_angle": vee_angle,
                "indicator_angle": indicator_angle,
                "max_lobes": max_lobes,
                "lobes": lobes,
                "tir": tir,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )


class AsyncRunoutCalls:
    """Calls of the topic `runout`, to be awaited."""

    def __init__(self, sender: AsyncSender) -> None:
        self._sender = sender

    async def axis(
        self,
        *,
        units: Literal["in", "mm"],
        surface: Literal["external", "internal"],
        near: models.RunoutSection,
        far: models.RunoutSection,
        stations: Sequence[float],
        pivot_station: float,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.RunoutAxisAnswer:
        """Line of an axis from two sections. As `Halfangle.runout.axis`, to be awaited."""
        return await self._sender.send(
            _AXIS,
            {
                "units": units,
                "surface": surface,
                "near": near,
                "far": far,
                "stations": stations,
                "pivot_station": pivot_station,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def budget(
        self,
        *,
        units: Literal["in", "mm"],
        contributors: Sequence[models.RunoutContributor],
        limit_tir: float,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.RunoutBudgetAnswer:
        """Runout budget of a chain. As `Halfangle.runout.budget`, to be awaited."""
        return await self._sender.send(
            _BUDGET,
            {
                "units": units,
                "contributors": contributors,
                "limit_tir": limit_tir,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def convert(
        self,
        *,
        units: Literal["in", "mm"],
        value: float,
        given_term: Literal[
            "tir",
            "eccentricity",
            "concentricity-zone-diameter",
            "coaxiality-zone-diameter",
            "circular-runout",
            "total-runout",
        ],
        wanted_term: Literal[
            "tir",
            "eccentricity",
            "concentricity-zone-diameter",
            "coaxiality-zone-diameter",
            "circular-runout",
            "total-runout",
        ],
        out_of_roundness: float | None = None,
        every_section_alike: bool = False,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.RunoutConvertAnswer:
        """From one term of runout to another. As `Halfangle.runout.convert`, to be awaited."""
        return await self._sender.send(
            _CONVERT,
            {
                "units": units,
                "value": value,
                "given_term": given_term,
                "wanted_term": wanted_term,
                "out_of_roundness": out_of_roundness,
                "every_section_alike": every_section_alike,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def get_term(
        self,
        key: str,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.RunoutTermAnswer:
        """Terms of runout: one term. As `Halfangle.runout.get_term`, to be awaited."""
        return await self._sender.send(
            _GET_TERM,
            {
                "key": key,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def indicate(
        self,
        *,
        units: Literal["in", "mm"],
        surface: Literal["external", "internal"],
        indicator_resolution: float,
        readings: Sequence[models.RunoutReading],
        formats: Sequence[Literal["svg"]] | None = None,
        harmonics: int = 1,
        repeatability: float | None = None,
        tip_angle: float | str = 0.0,
        included_angle: float | str | None = None,
        half_angle: float | str | None = None,
        taper_per_foot: float | None = None,
        one_in_x: float | None = None,
        rate_of_taper: float | None = None,
        designation: str | None = None,
        station_from_apex: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.RunoutIndicateAnswer:
        """Indicate a section true. As `Halfangle.runout.indicate`, to be awaited."""
        return await self._sender.send(
            _INDICATE,
            {
                "formats": formats,
                "units": units,
                "surface": surface,
                "harmonics": harmonics,
                "indicator_resolution": indicator_resolution,
                "repeatability": repeatability,
                "tip_angle": tip_angle,
                "included_angle": included_angle,
                "half_angle": half_angle,
                "taper_per_foot": taper_per_foot,
                "one_in_x": one_in_x,
                "rate_of_taper": rate_of_taper,
                "designation": designation,
                "readings": readings,
                "station_from_apex": station_from_apex,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def indicate_sheet(
        self,
        *,
        units: Literal["in", "mm"],
        surface: Literal["external", "internal"],
        indicator_resolution: float,
        readings: Sequence[models.RunoutReading],
        paper: Literal["a4", "letter"] = "a4",
        format: Literal["html", "pdf"] | None = None,
        formats: Sequence[Literal["svg"]] | None = None,
        harmonics: int = 1,
        repeatability: float | None = None,
        tip_angle: float | str = 0.0,
        included_angle: float | str | None = None,
        half_angle: float | str | None = None,
        taper_per_foot: float | None = None,
        one_in_x: float | None = None,
        rate_of_taper: float | None = None,
        designation: str | None = None,
        station_from_apex: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> Sheet:
        """Indicate a section true: sheet. As `Halfangle.runout.indicate_sheet`, to be awaited."""
        return await self._sender.send(
            _INDICATE_SHEET,
            {
                "paper": paper,
                "format": format,
                "formats": formats,
                "units": units,
                "surface": surface,
                "harmonics": harmonics,
                "indicator_resolution": indicator_resolution,
                "repeatability": repeatability,
                "tip_angle": tip_angle,
                "included_angle": included_angle,
                "half_angle": half_angle,
                "taper_per_foot": taper_per_foot,
                "one_in_x": one_in_x,
                "rate_of_taper": rate_of_taper,
                "designation": designation,
                "readings": readings,
                "station_from_apex": station_from_apex,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def list_terms(
        self,
        *,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.RunoutTermListAnswer:
        """Terms of runout. As `Halfangle.runout.list_terms`, to be awaited."""
        return await self._sender.send(
            _LIST_TERMS,
            {},
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def off_crest(
        self,
        *,
        units: Literal["in", "mm"],
        small_diameter: float,
        large_diameter: float,
        miss: float,
        included_angle: float | str | None = None,
        half_angle: float | str | None = None,
        taper_per_foot: float | None = None,
        one_in_x: float | None = None,
        rate_of_taper: float | None = None,
        designation: str | None = None,
        tip_radius: float = 0.0,
        half_angle_tolerance_arcsec: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.RunoutOffCrestAnswer:
        """As `Halfangle.runout.off_crest`, to be awaited."""
        return await self._sender.send(
            _OFF_CREST,
            {
                "included_angle": included_angle,
                "half_angle": half_angle,
                "taper_per_foot": taper_per_foot,
                "one_in_x": one_in_x,
                "rate_of_taper": rate_of_taper,
                "designation": designation,
                "units": units,
                "small_diameter": small_diameter,
                "large_diameter": large_diameter,
                "miss": miss,
                "tip_radius": tip_radius,
                "half_angle_tolerance_arcsec": half_angle_tolerance_arcsec,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def reversal(
        self,
        *,
        units: Literal["in", "mm"],
        surface: Literal["external", "internal"],
        at_0: models.RunoutFound,
        at_180: models.RunoutFound,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.RunoutReversalAnswer:
        """Socket's error or the part's. As `Halfangle.runout.reversal`, to be awaited."""
        return await self._sender.send(
            _REVERSAL,
            {
                "units": units,
                "surface": surface,
                "at_0": at_0,
                "at_180": at_180,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def total(
        self,
        *,
        units: Literal["in", "mm"],
        sections: Sequence[models.RunoutSurfaceSection],
        limit_total_runout: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.RunoutTotalAnswer:
        """Total run-out of a surface. As `Halfangle.runout.total`, to be awaited."""
        return await self._sender.send(
            _TOTAL,
            {
                "units": units,
                "sections": sections,
                "limit_total_runout": limit_total_runout,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def true_up(
        self,
        *,
        units: Literal["in", "mm"],
        surface: Literal["external", "internal"],
        indicator_resolution: float,
        near: models.RunoutTrueUpSection,
        far: models.RunoutTrueUpSection,
        tap_places: Sequence[models.RunoutTapPlace],
        stations: Sequence[float],
        formats: Sequence[Literal["svg"]] | None = None,
        harmonics: int = 1,
        repeatability: float | None = None,
        tip_angle: float | str = 0.0,
        limit_tir: float | None = None,
        tap_error_limit: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.RunoutTrueUpAnswer:
        """True up a part by taps. As `Halfangle.runout.true_up`, to be awaited."""
        return await self._sender.send(
            _TRUE_UP,
            {
                "formats": formats,
                "units": units,
                "surface": surface,
                "harmonics": harmonics,
                "indicator_resolution": indicator_resolution,
                "repeatability": repeatability,
                "tip_angle": tip_angle,
                "near": near,
                "far": far,
                "tap_places": tap_places,
                "stations": stations,
                "limit_tir": limit_tir,
                "tap_error_limit": tap_error_limit,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def true_up_sheet(
        self,
        *,
        units: Literal["in", "mm"],
        surface: Literal["external", "internal"],
        indicator_resolution: float,
        near: models.RunoutTrueUpSection,
        far: models.RunoutTrueUpSection,
        tap_places: Sequence[models.RunoutTapPlace],
        stations: Sequence[float],
        paper: Literal["a4", "letter"] = "a4",
        format: Literal["html", "pdf"] | None = None,
        formats: Sequence[Literal["svg"]] | None = None,
        harmonics: int = 1,
        repeatability: float | None = None,
        tip_angle: float | str = 0.0,
        limit_tir: float | None = None,
        tap_error_limit: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> Sheet:
        """True up a part by taps: sheet. As `Halfangle.runout.true_up_sheet`, to be awaited."""
        return await self._sender.send(
            _TRUE_UP_SHEET,
            {
                "paper": paper,
                "format": format,
                "formats": formats,
                "units": units,
                "surface": surface,
                "harmonics": harmonics,
                "indicator_resolution": indicator_resolution,
                "repeatability": repeatability,
                "tip_angle": tip_angle,
                "near": near,
                "far": far,
                "tap_places": tap_places,
                "stations": stations,
                "limit_tir": limit_tir,
                "tap_error_limit": tap_error_limit,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )

    async def v_block(
        self,
        *,
        units: Literal["in", "mm"],
        vee_angle: float | str = 90.0,
        indicator_angle: float | str = 0.0,
        max_lobes: int = 15,
        lobes: int | None = None,
        tir: float | None = None,
        timeout_seconds: float | None = None,
        request_id: str | None = None,
    ) -> models.RunoutVBlockAnswer:
        """Lobes that a V-block hides. As `Halfangle.runout.v_block`, to be awaited."""
        return await self._sender.send(
            _V_BLOCK,
            {
                "units": units,
                "vee_angle": vee_angle,
                "indicator_angle": indicator_angle,
                "max_lobes": max_lobes,
                "lobes": lobes,
                "tir": tir,
            },
            timeout_seconds=timeout_seconds,
            request_id=request_id,
        )
