"""What each operation of a routing takes, as far as the plan or the shop names it."""

from collections.abc import Iterator, Sequence

from halfangle_service.fields import Units
from halfangle_service.topics.jobs.plan.checks import PlanChecks
from halfangle_service.topics.jobs.plan.features import PlannedFeature
from halfangle_service.topics.jobs.plan.result import JobPlanResult, PlannedWay, PlanStack
from halfangle_service.topics.jobs.plan.shop.equipment import PlanEquipment
from halfangle_service.topics.jobs.routing.result import RoutingTool, ToolKind
from halfangle_service.trade.inspection.means import MeansName
from halfangle_service.trade.wording import length, stack

#: What a means of inspection is made with.
_OF_MEANS: dict[MeansName, tuple[ToolKind, ...]] = {
    "over-rolls": ("rolls",),
    "over-balls": ("balls",),
    "gauge-depth": ("gauges",),
    "two-gauges": ("gauges",),
    "probe": ("probe",),
    "sine-plate": ("sine-plate", "indicator"),
    "comparator": ("comparator",),
    "bluing": ("master-and-blue",),
}
_BY_WHEEL = ("dressed-wheel", "wheel-side")


class Tools:
    """What one way of a plan takes."""

    def __init__(
        self, plan: JobPlanResult, way: PlannedWay, shop: PlanEquipment, units: Units
    ) -> None:
        self._plan, self._way, self._shop, self._units = plan, way, shop, units

    def of_dressing(self) -> Iterator[RoutingTool]:
        """The wheel and what dresses it; what sets the dresser of a flank."""
        yield from self._wheel()
        yield _tool("dresser")
        if self._way.way == "dressed-wheel":
            yield from self._blocks()

    def of_holding(self) -> Iterator[RoutingTool]:
        """What holds the work, and what brings it true."""
        way, plan = self._way, self._plan
        if way.way == "quarter-turn":
            yield _tool("angle-plate")
        if _turned(plan.feature):
            if way.way == "swivelled-workhead":
                yield _tool("workhead", way.equipment[0])
            else:
                yield _tool("spin-fixture")
            if plan.shank is not None:
                yield _tool("adapter", plan.adapter, plan.shank.held_in)
                yield _tool("test-bar", None, plan.shank.test_bar)
            else:
                yield _tool("test-bar")
        yield _tool("indicator")

    def of_setting(self) -> Iterator[RoutingTool]:
        """What sets the angle."""
        way = self._way
        if way.way == "compound-sine-plate":
            yield _tool("compound-plate", way.equipment[0])
        elif way.way == "swivelled-workhead":
            yield _tool("workhead", way.equipment[0])
        elif way.way == "wheel-side":
            yield _tool("wheel", way.equipment[0])
        else:
            yield _tool("sine-plate", way.equipment[0])
        yield from self._blocks()

    def of_grinding(self) -> Iterator[RoutingTool]:
        """The wheel that grinds."""
        spindle = self._shop.internal_spindle
        if self._plan.feature.kind == "taper-socket" and spindle is not None:
            yield _tool("wheel", None, self._size(spindle.wheel_diameter, spindle.wheel_width))
        else:
            yield from self._wheel()

    def of_inspecting(self, checks: PlanChecks) -> Iterator[RoutingTool]:
        """What the best means of inspection is made with; what has no means is left to its text."""
        if checks.best is not None:
            for tool in _OF_MEANS[checks.best]:
                yield _tool(tool)

    def of_runout(self) -> Iterator[RoutingTool]:
        """What reads it, and what the work is seated in again."""
        yield _tool("indicator")
        if self._plan.shank is not None:
            yield _tool("adapter", self._plan.adapter, self._plan.shank.held_in)

    def _wheel(self) -> Iterator[RoutingTool]:
        way, wheel = self._way, self._shop.wheel
        if way.way in _BY_WHEEL:
            yield _tool("wheel", way.equipment[0])
        elif way.way == "swivelled-workhead" or wheel is None:
            yield _tool("wheel")
        else:
            yield _tool("wheel", None, self._size(wheel.diameter, wheel.width))

    def _blocks(self) -> Iterator[RoutingTool]:
        """The set that all stacks come from, which a way names last."""
        stacks = self._way.stacks
        if stacks:
            yield _tool("block-set", self._way.equipment[-1], self._in_words(stacks))

    def _in_words(self, stacks: Sequence[PlanStack]) -> str:
        told = (f"{made.role}: {stack(tuple(made.blocks), self._units)}" for made in stacks)
        return "; ".join(told)

    def _size(self, diameter: float, width: float | None) -> str:
        wide = "" if width is None else f", {length(width, self._units)} wide"
        return f"{length(diameter, self._units)} diameter{wide}"


def _turned(feature: PlannedFeature) -> bool:
    return feature.included_angle is not None


def _tool(tool: ToolKind, name: str | None = None, detail: str | None = None) -> RoutingTool:
    return RoutingTool(tool=tool, name=name, detail=detail)
