"""Errors of the client: one class a status, and for 422 one a problem type."""

import asyncio
import inspect
from typing import Any

import httpx
import pytest
from litestar.testing import TestClient

from client_support import Act, FaultServer, refusal
from halfangle_client import AsyncHalfangle, Halfangle, Retries, errors, models
from halfangle_service.app import create_app
from halfangle_service.http.problems import PROBLEM_TYPES
from halfangle_service.settings import Settings

SETTING: dict[str, Any] = {"units": "in", "center_distance": 5, "angle": 30}


def problem(kind: str, status: int) -> models.Problem:
    """A problem document of a type and a status."""
    return models.Problem(
        type=kind, title="Title", status=status, detail="Detail", instance="/", errors=[]
    )


@pytest.mark.parametrize(("name", "status"), [(n, s) for n, (s, _) in PROBLEM_TYPES.items()])
def test_every_problem_of_the_service_has_its_class(name: str, status: int) -> None:
    """No problem type of the service is a bare ProblemError, and each 422 has its own class."""
    error = errors.error_of(problem(f"/problems/{name}", status))
    assert type(error) is not errors.ProblemError
    if status == 422:
        assert type(error) is not errors.Unprocessable
        assert type(error).__name__ == "".join(part.title() for part in name.split("-"))


def test_unknown_problems_fall_back_to_their_status() -> None:
    """A problem type of a later release is an error of its status."""
    assert type(errors.error_of(problem("/problems/new", 422))) is errors.Unprocessable
    assert type(errors.error_of(problem("/problems/new", 418))) is errors.ProblemError
    assert type(errors.error_of(problem("/problems/new", 502))) is errors.ServiceFailed
    assert type(errors.error_of(problem("/problems/impossible", 400))) is errors.BadRequest


def test_the_tree_at_the_top_of_the_file_is_true() -> None:
    """Each class stands in the drawn tree once, one step deeper than its parent."""
    lines = (errors.__doc__ or "").splitlines()
    depth = {}
    for line in lines:
        name = next((part for part in line.split() if part.isidentifier()), "")
        if isinstance(getattr(errors, name, None), type):
            depth[name] = line.index(name) // 4
    classes = {
        name: kind
        for name, kind in inspect.getmembers(errors, inspect.isclass)
        if issubclass(kind, errors.HalfangleError)
    }
    assert set(depth) == set(classes)
    for name, kind in classes.items():
        if name != "HalfangleError":
            assert depth[name] == depth[kind.__mro__[1].__name__] + 1, name


@pytest.mark.parametrize(
    ("change", "pointer", "message"),
    [
        ({"angle": 90}, "/angle", "less than 90"),
        ({"angle": float("nan")}, "/angle", "finite"),
        ({"center_distance": "5"}, "/center_distance", "valid number"),
        ({"units": "ft"}, "/units", "'in' or 'mm'"),
        ({"angel": 30}, "/angel", "not a field"),
    ],
)
def test_a_wrong_field_is_named(
    client: Halfangle, change: dict[str, Any], pointer: str, message: str
) -> None:
    """InvalidRequest carries the problem document, which names the field and the limit."""
    with pytest.raises(errors.InvalidRequest, match=pointer) as caught:
        client.call("sine.setting", SETTING | change)
    error = caught.value
    assert error.status == 422
    assert error.problem.type == "/problems/invalid-request"
    assert error.fields[0].pointer == pointer
    assert message in error.fields[0].message


def test_an_unreachable_stack_brings_the_nearest(client: Halfangle) -> None:
    """The facts of a refusal arrive with it."""
    with pytest.raises(errors.Unreachable, match="nearest above it") as caught:
        client.blocks.stack(units="in", height=0.00005, set="inch-81")
    assert caught.value.more["nearest"]["above"]["total"] == 0.05


def test_async_raises_alike() -> None:
    """The async client raises the same class with the same document."""

    async def run() -> None:
        # Of two descriptions of ASGI, the framework's is the narrower one.
        app: Any = create_app(Settings(log_level="error"))
        transport = httpx.ASGITransport(app)
        async with httpx.AsyncClient(transport=transport) as http:
            client = AsyncHalfangle("http://testserver.local", http_client=http)
            await client.tapers.solve(units="in", large_diameter=1, small_diameter=2, length=1)

    with pytest.raises(errors.Unprocessable, match="is not below the larger one"):
        asyncio.run(run())


def test_not_found_names_what_there_is(client: Halfangle) -> None:
    """A key that no table knows is NotFound; a slash in it changes no address."""
    with pytest.raises(errors.NotFound, match="inch-82") as caught:
        client.blocks.get_set("inch-82")
    assert "inch-81" in caught.value.more["known"]
    with pytest.raises(errors.NotFound, match="There is nothing at this address"):
        client.blocks.get_set("../sets")


def test_a_key_is_asked_for_and_sent() -> None:
    """Without its key a client is Unauthorized; with it, it is answered."""
    app: Any = create_app(Settings(log_level="error", api_keys=frozenset({"secret-1"})))
    with TestClient(app) as http:
        with pytest.raises(errors.Unauthorized, match="X-API-Key"):
            Halfangle("http://testserver.local", http_client=http).blocks.list_sets()
        keyed = Halfangle("http://testserver.local", api_key="secret-1", http_client=http)
        assert keyed.blocks.list_sets().result.sets


def test_a_request_id_goes_there_and_back(client: Halfangle) -> None:
    """The caller's request id is the error's; without one the client makes one a call."""
    with pytest.raises(errors.InvalidRequest, match="angle") as caught:
        client.sine.setting(**(SETTING | {"angle": 0}), request_id="bench-7")
    assert caught.value.request_id == "bench-7"
    with pytest.raises(errors.InvalidRequest, match="angle") as caught:
        client.sine.setting(**(SETTING | {"angle": 0}))
    assert len(caught.value.request_id) == 32


@pytest.mark.parametrize("request_id", ["", "a b", "ü", "x" * 65, "a\n"])
def test_a_request_id_that_would_be_lost_is_refused(client: Halfangle, request_id: str) -> None:
    """An id that the service would replace by its own is refused before anything is sent."""
    with pytest.raises(ValueError, match="request_id: should be 1 to 64 letters"):
        client.blocks.list_sets(request_id=request_id)


@pytest.mark.parametrize("api_key", ["", " k", "k\r\nX: y", "schlüssel"])
def test_a_key_that_no_header_holds_is_refused(api_key: str) -> None:
    """A key that a header cannot carry is refused at once, and not shown."""
    with pytest.raises(ValueError, match="api_key: should be printable ASCII") as caught:
        Halfangle(api_key=api_key)
    assert api_key == "" or api_key not in str(caught.value)


def test_too_large_a_body(client: Halfangle) -> None:
    """A body past the service's limit is ContentTooLarge."""
    with pytest.raises(errors.ContentTooLarge, match="larger"):
        client.blocks.stack(units="in", height=1, sizes=[0.05] * 300_000)


def test_no_service() -> None:
    """Where nothing listens, ConnectionFailed names the address."""
    with (
        Halfangle("http://127.0.0.1:9", retries=Retries(0)) as client,
        pytest.raises(errors.ConnectionFailed, match=r"http://127\.0\.0\.1:9: no answer"),
    ):
        client.blocks.list_sets()


def test_an_answer_of_something_else(faults: FaultServer) -> None:
    """A page of some other program is an UnexpectedAnswer, its errors are told by status."""
    page = b"<html>hello</html>"
    faults.acts = [Act(200, {"Content-Type": "text/html"}, page), Act(502, {}, page)]
    with Halfangle(faults.url) as client:
        with pytest.raises(errors.UnexpectedAnswer, match="text/html"):
            client.blocks.list_sets()
        with pytest.raises(errors.ServiceFailed, match="502 without a problem document: <html>"):
            client.blocks.list_sets()


def test_a_redirect_is_not_followed(faults: FaultServer) -> None:
    """A request, and the key in it, go nowhere but to the address given."""
    faults.acts = [refusal(302, Location="http://127.0.0.1:9/elsewhere")]
    with (
        Halfangle(faults.url, api_key="k") as client,
        pytest.raises(errors.ProblemError, match="fault"),
    ):
        client.blocks.list_sets()
    assert len(faults.seen) == 1
