"""Advisories of tapers: their tolerance, their stock, their setting up, their gauging."""

from advisories.row import Request, Row, caution, note, stop

_CLEAN_UP, _INFEED, _SET_OVER = "tapers.clean-up", "tapers.infeed", "tapers.set-over"
_IDENTIFY, _STANDOFF, _TOLERANCE = "tapers.identify", "tapers.standoff", "tapers.tolerance"
_PLUG, _DOVETAIL, _BALL = "tapers.plug-depth", "tapers.dovetail-over-rolls", "tapers.one-ball"
_ROLLS, _ROLLS_NOMINAL = "tapers.over-rolls", "tapers.over-rolls-nominal"
_BALLS, _BALLS_NOMINAL = "tapers.over-balls", "tapers.over-balls-nominal"
_VEE, _VEE_NOMINAL = "tapers.vee-over-rolls", "tapers.vee-over-rolls-nominal"

_STOCK: tuple[Row, ...] = (
    stop("does-not-clean-up", _CLEAN_UP, {"wear": 0.00293}, {"wear": 0.00292}, "does not clean up"),
    stop(
        "does-not-clean-up",
        _CLEAN_UP,
        {"smallest_large_diameter": 0.7422},
        {"smallest_large_diameter": 0.7421},
        "does not clean up",
    ),
    caution(
        "may-not-clean-up",
        _CLEAN_UP,
        {"half_angle_error_arcsec": None, "limit_point_loss": 0.00599},
        {"limit_point_loss": 0.00601},
    ),
    caution(
        "may-not-clean-up",
        _CLEAN_UP,
        {"half_angle_error_arcsec": None, "limit_point_loss": 0.00387},
        {"half_angle_error_arcsec": -60},
    ),
    note(
        "runout-takes-the-stock",
        _CLEAN_UP,
        {"tir_large_end": 0.00401},
        {"tir_large_end": 0.00399},
    ),
    caution(
        "deep-stock",
        _CLEAN_UP,
        {"smallest_large_diameter": 0.1, "downfeed_per_pass": 0.001, "wear": 0.0965},
        {"wear": 0.0964},
        "0.0985 in",
    ),
    caution(
        "heavy-pass",
        _CLEAN_UP,
        {"downfeed_per_pass": 0.00394},
        {"downfeed_per_pass": 0.00393},
        "0.00394 in",
    ),
    caution(
        "many-passes",
        _CLEAN_UP,
        {"downfeed_per_pass": 0.0000199},
        {"downfeed_per_pass": 0.00002},
        "202 passes",
    ),
    caution("wheel-safety", _CLEAN_UP, {}, None),
    caution(
        "gauge-line-runs", _INFEED, {"included_angle": 23.07}, {"included_angle": 23.08}, "5.001"
    ),
    caution(
        "ends-lose-unequally",
        _INFEED,
        {},
        {"half_angle_error_arcsec": 0},
        "0.00254 in at the large",
        "0.00231 in at the small",
    ),
    caution(
        "ends-lose-unequally",
        _INFEED,
        {"half_angle_error_arcsec": -30},
        {"half_angle_error_arcsec": None},
    ),
    caution(
        "deep-stock",
        _INFEED,
        {"downfeed_per_pass": 0.001, "amount": 0.0984},
        {"amount": 0.0983},
        "0.0985 in",
    ),
    caution("heavy-pass", _INFEED, {"downfeed_per_pass": 0.00394}, {"downfeed_per_pass": 0.00393}),
    caution("many-passes", _INFEED, {"amount": 0.0399}, {"amount": 0.0398}, "201 passes"),
    note("no-spark-out", _INFEED, {"spark_out_passes": 0}, {"spark_out_passes": 1}),
    note("no-spark-out", _INFEED, {"spark_out_passes": 0}, {"downfeed_per_pass": None}),
    caution("wheel-safety", _INFEED, {}, None),
)

#: No way of three goes as far as the taper asks.
_ALL_SHORT: Request = {
    "largest_angle": 2.38,
    "largest_set_over": 0.374,
    "largest_attachment_offset": 0.499,
}

_WAYS: tuple[Row, ...] = (
    stop("no-way-reaches", _SET_OVER, _ALL_SHORT, {"largest_angle": 2.39}, "within the limits"),
    stop("no-way-reaches", _SET_OVER, _ALL_SHORT, {"largest_set_over": 0.375}, "No way"),
    stop("no-way-reaches", _SET_OVER, _ALL_SHORT, {"largest_attachment_offset": 0.5}, "No way"),
    caution(
        "way-out-of-reach",
        _SET_OVER,
        {"largest_set_over": 0.3746},
        {"largest_set_over": 0.3747},
        "0.3747 in",
    ),
    caution(
        "steep-for-this-way",
        _SET_OVER,
        {"taper_per_foot": 3.01, "largest_set_over": 2},
        {"taper_per_foot": 3},
        "3 in per foot",
    ),
    caution(
        "set-over-wears-centers",
        _SET_OVER,
        {"largest_set_over": 0.3747},
        {"largest_set_over": 0.3746},
    ),
)

_FITS: tuple[Row, ...] = (
    caution(
        "taper-not-told-apart",
        _IDENTIFY,
        {"length_error_limit": 0.0001, "diameter_error_limit": 0.0000467},
        {"diameter_error_limit": 0.0000466},
        "2 standard tapers",
    ),
    note(
        "names-of-one-taper",
        _IDENTIFY,
        {"diameter_error_limit": 0.00001, "length_error_limit": 0.0001},
        {"large_diameter": 0.6991},
        "iso-1:20, jarno-6 and tpf-0.6",
    ),
    note(
        "no-standard-taper",
        _IDENTIFY,
        {
            "diameter_error_limit": 0.00001,
            "length_error_limit": 0.0001,
            "large_diameter": 0.6991,
        },
        {"large_diameter": 0.699},
    ),
    caution(
        "sinks-past-contact",
        _STANDOFF,
        {"diameter_error": -0.7295},
        {"diameter_error": -0.7294},
        "2.5",
    ),
    caution(
        "bears-at-small-end",
        _STANDOFF,
        {"included_angle_error_arcsec": -12.87},
        {"included_angle_error_arcsec": -12.86},
    ),
    note(
        "bluing-blind",
        _STANDOFF,
        {"included_angle_error_arcsec": 12.86},
        {"included_angle_error_arcsec": 12.87},
        "12.9″",
    ),
    note(
        "bluing-blind",
        _STANDOFF,
        {"included_angle_error_arcsec": -12.86},
        {"included_angle_error_arcsec": -12.87},
    ),
    note(
        "bluing-blind",
        _STANDOFF,
        {"included_angle_error_arcsec": None},
        {"included_angle_error_arcsec": 20},
    ),
    caution(
        "steeper-than-the-grades", _TOLERANCE, {"one_in_x": 2.999}, {"one_in_x": 3}, "up to 1:3"
    ),
    note(
        "grades-from-memory",
        _TOLERANCE,
        {},
        {"cone_angle_grade": None, "included_angle_band_arcsec": 30},
    ),
    note("gauge-slope-assumed", _PLUG, {}, {"gauge_length": 0}),
)


def _odd(operation: str, field: str, odd: object, usual: object, **more: object) -> Row:
    """A row of a size that hardly anybody measures with, just past the usual ones."""
    return caution("odd-size", operation, more | {field: odd}, {field: usual}, "Hardly anybody")


#: The usual sizes end at 0.5 and 100 mm.
_ODD: tuple[Row, ...] = (
    _odd(_DOVETAIL, "roll_diameter", 0.499, 0.5),
    _odd(_DOVETAIL, "roll_diameter", 100.1, 100, flank_height=200, corner_width=500),
    _odd(_BALL, "ball_diameter", 3.94, 3.93, ball_depth=-2, length=3),
    _odd(_ROLLS, "roll_diameter", 0.499, 0.5),
    _odd(
        _ROLLS,
        "roll_diameter",
        100.1,
        100,
        lower_measure=300,
        upper_measure=307,
        length=300,
    ),
    _odd(_ROLLS_NOMINAL, "roll_diameter", 0.0196, 0.0197),
    _odd(
        _BALLS,
        "large_ball_diameter",
        100.1,
        100,
        large_ball_depth=-30,
        small_ball_diameter=95,
        length=250,
    ),
    _odd(
        _BALLS_NOMINAL,
        "large_ball_diameter",
        3.94,
        3.93,
        large_diameter=4,
        small_ball_diameter=3.9,
    ),
    _odd(
        _BALLS_NOMINAL,
        "small_ball_diameter",
        0.0196,
        0.0197,
        large_diameter=0.06,
        length=1,
        large_ball_diameter=0.05,
    ),
    _odd(_VEE, "large_roll_diameter", 100.1, 100, large_roll_top=50, small_roll_diameter=60),
    _odd(
        _VEE,
        "small_roll_diameter",
        0.499,
        0.5,
        large_roll_diameter=2,
        large_roll_top=0.1,
        small_roll_top=-1.5,
    ),
    _odd(_VEE_NOMINAL, "roll_diameters", [40, 0.499], [40, 0.5]),
    _odd(_VEE_NOMINAL, "roll_diameters", [100.1, 40], [100, 40], face_width=100),
)


def _travels(middle: float) -> Request:
    """Three readings, the middle one's travel as given; 30 lies on the line."""
    read = {10: 20.0, 25: middle, 40: 40.0}
    return {"readings": [{"depth": depth, "tip_travel": way} for depth, way in read.items()]}


_PROBED: tuple[Row, ...] = (
    note("straightness-not-told", "tapers.probed", {}, _travels(30.0)),
    caution("off-the-line", "tapers.probed", _travels(30.0061), _travels(30.0059), "0.0041 mm"),
    note("across-the-axis", "tapers.probed", {}, None),
)

ROWS = (*_STOCK, *_WAYS, *_FITS, *_ODD, *_PROBED)
