"""Calls of the client, against the service in process and against one really started."""

import asyncio
import inspect
import json
import re
from collections.abc import Awaitable, Callable
from pathlib import Path
from typing import Any

import httpx
import numpy as np
import pytest

from halfangle_client import AsyncHalfangle, Halfangle, Sheet, errors, models
from halfangle_client.generated.calls import ENDPOINTS
from halfangle_service.app import create_app
from halfangle_service.settings import Settings
from inlining import inlined

ROOT = Path(__file__).resolve().parents[2]
CONTRACT: dict[str, Any] = inlined(json.loads((ROOT / "openapi/openapi.json").read_text("utf-8")))
#: The example of an overlay is larger than a page: its sheet is asked for with less.
ON_A_PAGE = {"inspection.overlay_sheet": {"magnification": 8}}

CENTER: dict[str, Any] = {
    "job": "HL-0412",
    "units": "in",
    "included_angle": "60 00 00",
    "included_angle_tolerance_arcsec": 120,
    "large_diameter": 0.75,
    "limit_tir": 0.0003,
    "center_distance": 5,
    "set": "inch-81",
    "grade": "asme-0",
}


def examples() -> list[Any]:
    """Every call of the client with the request that the contract gives as its example.

    A sheet takes what the operation takes whose answer it shows, so its example is that one's.
    """
    found = []
    for name, endpoint in ENDPOINTS.items():
        operation = CONTRACT["paths"][endpoint.path][endpoint.method.lower()]
        shown = CONTRACT["paths"][endpoint.path.removesuffix("/sheet").removesuffix("/csv")][
            endpoint.method.lower()
        ]
        content = shown.get("requestBody", {}).get("content", {})
        request = dict(content.get("application/json", {}).get("example", {}))
        request.update(ON_A_PAGE.get(name, {}))
        for parameter in operation.get("parameters", ()):
            if "example" in parameter:
                request[parameter["name"]] = parameter["example"]
        found.append(pytest.param(name, request, id=name))
    return found


def method(client: Halfangle | AsyncHalfangle, name: str) -> Callable[..., Any]:
    """The method of a dotted name."""
    topic, _, verb = name.partition(".")
    found: Callable[..., Any] = getattr(getattr(client, topic), verb)
    return found


def in_process(task: Callable[[AsyncHalfangle], Awaitable[Any]]) -> Any:
    """Run a task with an async client of the service in process."""

    async def run() -> Any:
        # Of two descriptions of ASGI, the framework's is the narrower one.
        app: Any = create_app(Settings(log_level="error"))
        transport = httpx.ASGITransport(app)
        async with (
            httpx.AsyncClient(transport=transport) as http,
            AsyncHalfangle("http://testserver.local", http_client=http) as client,
        ):
            return await task(client)

    return asyncio.run(run())


def test_reads_as_written_by_hand(client: Halfangle) -> None:
    """30° on a 5 in sine plate is a 2.5 in stack, with the release that said so."""
    answer = client.sine.setting(units="in", center_distance=5, angle=30)
    assert isinstance(answer, models.SineSettingAnswer)
    assert answer.result.height == pytest.approx(5 * 0.5, rel=1e-15)
    assert answer.basis.release


def test_async_says_the_same() -> None:
    """The async client gives the same height, and takes an angle as text too."""

    async def task(client: AsyncHalfangle) -> models.SineSettingAnswer:
        return await client.sine.setting(units="in", center_distance=5, angle="30 00 00")

    assert in_process(task).result.height == pytest.approx(2.5, rel=1e-15)


@pytest.mark.parametrize(("name", "request_fields"), examples())
def test_every_example_runs(client: Halfangle, name: str, request_fields: dict[str, Any]) -> None:
    """Every example of the contract runs through its typed method, whose answer is its model."""
    answer = method(client, name)(**request_fields)
    wanted = ENDPOINTS[name].answer_type
    assert isinstance(answer, wanted)


@pytest.mark.parametrize(("name", "request_fields"), examples())
def test_typed_answer_loses_nothing(
    client: Halfangle, name: str, request_fields: dict[str, Any]
) -> None:
    """What the typed answer holds is what the service sent, field by field."""
    sent = client.call(name, request_fields)
    typed = method(client, name)(**request_fields)
    if isinstance(typed, Sheet):
        assert typed.content == sent
    else:
        assert (typed.model_dump(mode="json") if hasattr(typed, "model_dump") else typed) == sent


def test_every_example_runs_async(client: Halfangle) -> None:
    """The async client gives the answers of the sync one."""

    async def task(other: AsyncHalfangle) -> dict[str, Any]:
        return {p.values[0]: await method(other, p.values[0])(**p.values[1]) for p in examples()}

    for name, answer in in_process(task).items():
        fields = next(p.values[1] for p in examples() if p.values[0] == name)
        assert answer == method(client, name)(**fields), name


def test_nested_requests_are_models(client: Halfangle) -> None:
    """Parts of a request are passed as models; what they leave out is left to the service."""
    plan = client.jobs.center(
        **CENTER,
        shank=models.TaperShank(kind="taper", designation="morse-2"),
        runout_errors=models.RunoutContributions(
            adapter_tir=0.0001, fixture_tir=0.00005, indicating_tir=0.00005
        ),
        angle_errors=models.AngleContributions(axis_pitch_error_limit_arcsec=5),
    )
    assert plan.result.plate_setting.blocks == [2.0, 0.5]
    assert plan.result.shank.designation == "morse-2"
    error = plan.result.angle_budget.included_angle_error_arcsec
    assert "temperature_celsius" in error.not_stated


def test_numpy_is_taken(client: Halfangle) -> None:
    """NumPy's numbers and arrays are sent as numbers and lists."""
    sizes: Any = np.array([0.05, 0.1, 1.0])
    height: Any = np.float32(1.125 + 0.025)
    count: Any = np.int64(3)
    stack = client.blocks.stack(units="in", height=1.15, sizes=sizes, max_blocks=count)
    assert stack.result.blocks == [1.0, 0.1, 0.05]
    assert client.sine.setting(units="in", center_distance=height, angle=30).result.height == (
        pytest.approx(float(height) / 2, rel=1e-12)
    )


def test_published_tables(client: Halfangle) -> None:
    """A table is listed, and each entry of it can be asked for by its key."""
    sets = client.blocks.list_sets().result.sets
    assert sets
    for entry in sets:
        assert client.blocks.get_set(entry.name).result.name == entry.name


def test_catalogue_and_client_agree(client: Halfangle) -> None:
    """Every operation of the catalogue is a method of the client."""
    listed = {
        entry.name.replace("-", "_")
        for entry in client.catalogue.list_operations().result.operations
    }
    assert listed
    assert listed <= set(ENDPOINTS)


@pytest.mark.parametrize("name", ENDPOINTS)
def test_sync_and_async_are_alike(client: Halfangle, name: str) -> None:
    """Both clients have the same calls and arguments; the async ones say so in one line."""
    other = AsyncHalfangle()
    ours, theirs = method(client, name), method(other, name)
    assert inspect.signature(ours) == inspect.signature(theirs)
    words = theirs.__doc__ or ""
    assert f"As `Halfangle.{name}`, to be awaited." in words
    assert "\n" not in words
    assert inspect.iscoroutinefunction(theirs)
    asyncio.run(other.close())


@pytest.mark.parametrize("name", ENDPOINTS)
def test_every_argument_is_described(client: Halfangle, name: str) -> None:
    """A docstring describes each argument, unit and bounds of each number, answer and errors."""
    call = method(client, name)
    words = " ".join((call.__doc__ or "").split())
    for argument in inspect.signature(call).parameters:
        assert f" {argument}: " in words, argument
    assert f"Returns: {inspect.signature(call).return_annotation}: " in words
    assert "client's `heavy_timeout_seconds`" in words or "client's `timeout_seconds`" in words
    raised = words.partition("Raises: ")[2].partition("Example: ")[0]
    named = {word for word in re.findall(r"([A-Z]\w+)\b", raised) if hasattr(errors, word)}
    assert named >= {"ProblemError", "InvalidRequest", "TimedOut", "UnexpectedAnswer"}
    if name == "sine.setting":
        assert "rolls, in `units`. [length, 1e-06 to 10000]" in words
        assert "[degree, over 0, under 90; or text in degrees, minutes, seconds]" in words


def test_real_service(live: Halfangle) -> None:
    """The same over a socket: a calculation, a table, and a request id that comes back."""
    assert live.is_ready()
    assert live.sine.setting(units="mm", center_distance=100, angle=30).result.height == (
        pytest.approx(50.0, rel=1e-15)
    )
    assert live.catalogue.get_operation("sine.setting").result.name == "sine.setting"


def test_real_service_async(live: Halfangle) -> None:
    """Many async calls at once over one client each get their own answer."""
    url = live._manners.base_url

    async def run() -> list[float]:
        async with AsyncHalfangle(url) as client:
            calls = (
                client.sine.setting(units="mm", center_distance=100 + n, angle=30)
                for n in range(20)
            )
            return [answer.result.height for answer in await asyncio.gather(*calls)]

    assert asyncio.run(run()) == pytest.approx([(100 + n) / 2 for n in range(20)], rel=1e-15)
