"""Which missing statement would change which way is best: the ways ranked anew with it stated."""

import math
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import partial

from halfangle_service.fields.glossary import title_of
from halfangle_service.topics.jobs.plan.parts.batch import (
    BREAKDOWN,
    planned_batch,
    without_wear,
)
from halfangle_service.topics.jobs.plan.parts.decision import PlanBest, PlanDecision, PlanThreshold
from halfangle_service.topics.jobs.plan.parts.every import Job, by_flat_wheel
from halfangle_service.topics.jobs.plan.ranking import (
    KnownAngle,
    Rank,
    Ranked,
    as_good,
    forecast_on_a_dress,
    is_fit,
    rank_of,
    standing_by,
)
from halfangle_service.topics.jobs.plan.shop.equipment import NAMED, PlanEquipment
from halfangle_service.topics.jobs.plan.shop.errors import PlateErrorFields
from halfangle_service.topics.jobs.plan.ways.way import YAW, ToleratedAngle, Way
from halfangle_service.trade.planning.batch import Growth, largest_growth, to_inspect
from halfangle_service.trade.planning.statements import (
    FAR_BEYOND_USE,
    Deciding,
    Missing,
    beyond_use,
    deciding,
    deciding_together,
    sentence,
    stated,
)
from halfangle_service.trade.sine.angle_error import LARGEST_YAW_ARCSEC
from halfangle_service.trade.uncertainty import (
    Budget,
    Contribution,
    DecisionRule,
    forecast_of,
)
from halfangle_service.trade.uncertainty.coverage import half_width
from halfangle_service.trade.wheel.in_bore import OFFSET
from halfangle_service.trade.wording import arcsec, figure, plain

#: Values at which errors that act by their square are tried: small, and yet no rounding.
_TRIED_AT = {YAW: 600.0, "diamond_height_error_limit": 0.01, OFFSET: 0.01}
#: Ways whose statements are looked at, as they are ranked now: the work is bounded so.
MOST_WAYS = 8
#: A cone's growth in its first piece is tried up to so many times the tolerance.
_MOST_GROWTH = 2.0
#: Largest error of a temperature that a request may state, in kelvins.
_LARGEST_CELSIUS = 50.0


@dataclass(frozen=True, slots=True)
class _Statement:
    """A missing statement: its path, its field's name, and what it adds to each way's angle.

    `tried` are by the way's place what the value at which it was tried adds; None where it adds
    nothing by itself.
    """

    path: str
    name: str
    tried: dict[int, Contribution | None]


def decisions(
    job: Job, entries: Sequence[Ranked], rule: DecisionRule, finest_arcsec: float | None
) -> list[PlanDecision]:
    """Every missing statement, or all that one way lacks, that would change which way is best.

    `entries` as they are ranked now, of which the first are looked at, with the finest inspection
    at hand. What else is missing stays missing.
    """
    race = _Race(job, entries, rule, finest_arcsec)
    now = race.best({})
    found = _statements(job.equipment, entries[:MOST_WAYS])
    missing = {path: race.missing(statement) for path, statement in found.items()}

    def ranks_with(path: str, value: float) -> dict[int, Rank]:
        return race.with_value(found[path], value)

    def ranks_with_all(paths: Sequence[str]) -> dict[int, Rank]:
        return race.with_none_missing([found[path] for path in paths])

    alone = [
        each
        for each in deciding(
            list(missing.values()), lambda path, value: race.best(ranks_with(path, value)), now
        )
        if race.matters(each, partial(ranks_with, each.names[0]), missing[each.names[0]].largest)
    ]
    together_only = [
        each
        for each in deciding_together(
            list(missing.values()), lambda paths: race.best(ranks_with_all(paths)), now, alone
        )
        if race.matters(each, partial(_at_any_value, ranks_with_all(each.names)), 0.0)
    ]
    answers = [_answer(race, each, found) for each in (*alone, *together_only)]
    return [*answers, *race.by_breakdown(now)]


def _at_any_value(ranks: dict[int, Rank], _value: float) -> dict[int, Rank]:
    """The ranks where several statements are stated as nothing: no value acts on them."""
    return ranks


def _statements(equipment: PlanEquipment, entries: Sequence[Ranked]) -> dict[str, _Statement]:
    """Every missing statement of the ways' budgets, by its path in the request."""
    found: dict[str, _Statement] = {}
    for place, entry in enumerate(entries):
        way = entry.way
        for name in dict.fromkeys(n for angle in way.angles for n in angle.budget.not_stated):
            path = _path(equipment, way, name)
            statement = found.setdefault(path, _Statement(path, name, {}))
            single = way.adds is not None and len(way.angles) == 1
            at = _TRIED_AT.get(name, 1.0)
            statement.tried[place] = way.adds(name, at) if single and way.adds else None
    return found


def _path(equipment: PlanEquipment, way: Way, name: str) -> str:
    """Where in the request a statement of a way belongs, by the equipment that the way takes."""
    places = {
        item.name: (f"equipment/{kind}/{place}/", kind)
        for kind in NAMED
        for place, item in enumerate(getattr(equipment, kind) or ())
    }
    mine = [places[item] for item in way.equipment if item in places]
    of_blocks = name in {"grade", "block_material"}
    path, kind = next(((p, k) for p, k in mine if (k == "block_sets") == of_blocks), ("", ""))
    if kind == "sine_plates" and name == OFFSET:
        return f"equipment/internal_spindle/{name}"
    errors = kind == "sine_plates" and name in PlateErrorFields.model_fields
    return f"{path}{'angle_errors/' if errors else ''}{name}"


@dataclass(frozen=True)
class _Race:
    """The ways with their ranks as they are now, to be ranked anew."""

    job: Job
    entries: Sequence[Ranked]
    rule: DecisionRule
    finest_arcsec: float | None

    def best(self, changed: Mapping[int, Rank]) -> str | None:
        """Place of the first way, as text, with some ranks changed; None where none is fit."""
        ranks = self._ranks(changed)
        first = min(ranks)
        return str(ranks.index(first)) if is_fit(first) else None

    def _ranks(self, changed: Mapping[int, Rank]) -> list[Rank]:
        return [changed.get(place, entry.rank) for place, entry in enumerate(self.entries)]

    def matters(
        self, found: Deciding, ranks_at: Callable[[float], Mapping[int, Rank]], largest: float
    ) -> bool:
        """Whether what is best by a statement is better than what was by more than a tenth.

        Two ways on one plate share nearly every error: which of them is ahead by a hair's breadth
        is nothing to state an error for.
        """
        before, value = found.best_now, 0.0
        ends = [turn.above for turn in found.turns[1:]] + [largest]
        told = [(found.best_at_zero, 0.0)]
        told += [(turn.best, end) for turn, end in zip(found.turns, ends, strict=False)]
        for after, value in told:
            if before != after and self._better(before, after, self._ranks(ranks_at(value))):
                return True
            before = after
        return False

    def _better(self, before: str | None, after: str | None, ranks: Sequence[Rank]) -> bool:
        if before is None or after is None:
            return True
        return not as_good(ranks[int(before)], ranks[int(after)])

    def with_value(self, statement: _Statement, value: float) -> dict[int, Rank]:
        """The ranks of the ways that a statement acts on, were it so much."""
        return {
            place: self._rank(
                place,
                [
                    _with(angle.budget, statement.name, tried, value)
                    for angle in self.entries[place].way.angles
                ],
            )
            for place, tried in statement.tried.items()
        }

    def with_none_missing(self, statements: Sequence[_Statement]) -> dict[int, Rank]:
        """The ranks of the ways were all of these stated as nothing."""
        names: dict[int, set[str]] = {}
        for statement in statements:
            for place in statement.tried:
                names.setdefault(place, set()).add(statement.name)
        return {
            place: self._rank(
                place,
                [_without(angle.budget, left) for angle in self.entries[place].way.angles],
            )
            for place, left in names.items()
        }

    def missing(self, statement: _Statement) -> Missing:
        """A statement as the search takes it."""
        largest = farthest = 0.0
        for place, tried in statement.tried.items():
            for angle in self.entries[place].way.angles:
                if tried is not None:
                    largest = max(largest, _largest(tried, angle))
                    farthest = max(farthest, _largest(tried, angle, FAR_BEYOND_USE))
        ways = tuple(str(place) for place in statement.tried)
        return Missing(statement.path, largest, ways, farthest)

    def by_breakdown(self, now: str | None) -> Iterator[PlanDecision]:
        """What the breakdown of the wheel a piece would decide, where it was not stated."""
        batch = self.job.batch
        places = [place for place, e in enumerate(self.entries[:MOST_WAYS]) if by_flat_wheel(e.way)]
        told = batch.growth is not None or not batch.flat_wheel
        if told or not places:  # of one piece too: a wheel can spoil the first
            return
        slant, counted = self.job.wanted.slant, self.job.wanted.counted
        rooms = {place: self._room(self.entries[place].way) for place in places}

        def ranks_at(value: float) -> dict[int, Rank]:
            growth = Growth.of_breakdown(value, slant, counted=counted)
            return {
                place: self._dressed(
                    place, growth, 0.0 if room is None else growth.pieces_within(room)
                )
                for place, room in rooms.items()
            }

        tolerance = self.job.wanted.tolerance_arcsec
        first = Growth.of_angle(min(_MOST_GROWTH * tolerance, 3600.0), counted=counted)
        largest = first.slope * slant
        ways = tuple(str(place) for place in places)

        def written(value: float) -> str:
            grown = Growth.of_breakdown(value, slant, counted=counted).error_arcsec(1)
            return f"{figure(value, self.job.wanted.units)} ({arcsec(grown)} a piece)"

        asked = [Missing(BREAKDOWN, largest, ways)]
        for each in deciding(asked, lambda _, value: self.best(ranks_at(value)), now):
            if self.matters(each, ranks_at, largest):
                yield _decision(self, each, "the breakdown of the wheel a piece", "length", written)

    def _room(self, way: Way) -> float | None:
        """The growth that all angles of a way have room for; None where not even none."""
        angles = _without_wear(way)
        rooms = [largest_growth(budget, None, limit, self.rule) for budget, limit in angles]
        known = [room for room in rooms if room is not None]
        return min(known) if len(known) == len(rooms) else None

    def _dressed(self, place: int, growth: Growth, pieces: float) -> Rank:
        """The rank of a way that grinds so many pieces on one dress; below one it may not hold."""
        entry, batch = self.entries[place], self.job.batch
        count = batch.pieces
        most = math.floor(min(pieces, count))
        times = entry.parts.whole
        whole = replace(times, inspected=1, dressings=0)
        if most:
            inspected = to_inspect(count, most)
            whole = replace(times, inspected=inspected.count, dressings=inspected.dressings)
        fails = most == 0 and replace(batch, growth=growth).first_fails(_without_wear(entry.way))
        forecast = forecast_on_a_dress([entry.row.forecast], most, fails=fails)
        return rank_of(entry.way, forecast, entry.standing, whole.total)

    def _rank(self, place: int, budgets: Sequence[Budget]) -> Rank:
        """The rank of a way with other budgets of its angles."""
        entry = self.entries[place]
        pairs = list(zip(budgets, entry.way.angles, strict=True))
        forecasts = [
            forecast_of(
                budget, -a.tolerance_arcsec / a.per_unit, a.tolerance_arcsec / a.per_unit, self.rule
            )
            for budget, a in pairs
        ]
        if entry.row.runout_budget is not None:
            forecasts.append(entry.row.runout_budget.forecast)
        if entry.row.size_plan is not None:
            forecasts.append(entry.row.size_plan.forecast)
        batch = self.job.batch_by(entry.way)
        whole, most, fails = entry.parts.whole, None, False
        if batch.growth is not None:
            # The pieces on one dress follow from the budgets, and the time from them.
            angles = [(without_wear(budget, a.per_unit), a.tolerance_arcsec) for budget, a in pairs]
            anew = planned_batch(batch, angles)
            most, dressings = anew.pieces_per_dress, anew.dressings or 0
            fails = most == 0 and batch.first_fails(angles)
            whole = replace(whole, inspected=anew.pieces_inspected, dressings=dressings)
        forecast = forecast_on_a_dress(forecasts, most, fails=fails)
        # What ranks neither by its doubt nor by its room needs no uncertainty.
        needed = forecast != "not-stated"
        known = [
            KnownAngle(
                a.tolerance_arcsec,
                budget.mean * a.per_unit,
                half_width(budget) * a.per_unit if needed and budget.contributions else None,
                lacks=bool(budget.not_stated),
            )
            for budget, a in pairs
        ]
        standing = standing_by(known, self.finest_arcsec)
        return rank_of(entry.way, forecast, standing, whole.total)

    def named(self, place: str | None) -> str:
        """A way in plain words."""
        return "" if place is None else self.entries[int(place)].way.in_words

    def best_way(self, place: str | None) -> dict[str, int | str | None]:
        """A way as the answer names it."""
        number = None if place is None else int(place) + 1
        return {"way_number": number, "best_way": self.named(place) or None}


def _without_wear(way: Way) -> list[tuple[Budget, float]]:
    """Each angle's budget in arc-seconds, without the wheel's wear, and its tolerance."""
    return [(without_wear(a.budget, a.per_unit), a.tolerance_arcsec) for a in way.angles]


def _with(budget: Budget, name: str, tried: Contribution | None, value: float) -> Budget:
    """A budget with a missing error stated as so much; what acts by its square grows by it."""
    if value == 0.0 or tried is None:
        return _without(budget, {name})
    slope = tried.sensitivity
    if tried.one_sided:
        slope *= value / tried.value
    return stated(budget, replace(tried, value=value, sensitivity=slope))


def _without(budget: Budget, names: set[str]) -> Budget:
    """A budget of which these are no longer missing, and add nothing."""
    return replace(budget, not_stated=tuple(n for n in budget.not_stated if n not in names))


def _largest(tried: Contribution, angle: ToleratedAngle, times: float = 1.0) -> float:
    """The largest value of an error to look at for one angle, or so many times as useless a one."""
    tolerance = times * angle.tolerance_arcsec / angle.per_unit
    useless = beyond_use(replace(tried, value=1.0), tolerance)
    largest = math.sqrt(useless * tried.value) if tried.one_sided else useless
    if tried.unit == "celsius":
        return min(largest, _LARGEST_CELSIUS)
    return min(largest, LARGEST_YAW_ARCSEC) if tried.name == YAW else largest


def _answer(race: _Race, found: Deciding, statements: Mapping[str, _Statement]) -> PlanDecision:
    """A decision in words: what to state, of which equipment, and what it decides."""
    mine = [statements[path] for path in found.names]
    tried = next((t for t in mine[0].tried.values() if t is not None), None)
    unit = None if len(mine) > 1 or tried is None else tried.unit or "arcsecond"
    entry = race.entries[next(iter(mine[0].tried))]
    titles = [title_of(statement.name.rpartition("/")[2]) for statement in mine]
    words = ", ".join(f"{title[0].lower()}{title[1:]}" for title in titles)

    def written(value: float) -> str:
        if unit == "length":
            return figure(value, race.job.wanted.units)
        if unit == "arcsecond":
            return arcsec(value)
        if unit == "celsius":
            return f"{plain(value, 2)} °C"
        return f"{plain(value, 3)}°" if unit == "degree" else plain(value, 3)

    return _decision(race, found, f"{words} of {_owner(mine[0], entry.way)}", unit, written)


def _owner(statement: _Statement, way: Way) -> str:
    """Whose statement it is, by name: the blocks' where it is theirs, else what they set."""
    return way.equipment[-1 if "/block_sets/" in statement.path else 0]


def _decision(
    race: _Race, found: Deciding, what: str, unit: str | None, written: Callable[[float], str]
) -> PlanDecision:
    return PlanDecision(
        statements=list(found.names),
        best_at_zero=PlanBest.model_validate(race.best_way(found.best_at_zero)),
        thresholds=[
            PlanThreshold.model_validate(
                {"above": turn.above, "input_unit": unit, **race.best_way(turn.best)}
            )
            for turn in found.turns
        ],
        sentence=sentence(found, what, written, race.named),
    )
