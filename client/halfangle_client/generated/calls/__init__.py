# Generated from openapi/openapi.json by openapi/generate.py. Do not edit.
"""Every endpoint by its dotted name."""

from typing import Any

from halfangle_client.endpoint import Endpoint
from halfangle_client.generated.calls import blocks as _blocks
from halfangle_client.generated.calls import catalogue as _catalogue
from halfangle_client.generated.calls import centers as _centers
from halfangle_client.generated.calls import clearance as _clearance
from halfangle_client.generated.calls import curves as _curves
from halfangle_client.generated.calls import inspection as _inspection
from halfangle_client.generated.calls import jobs as _jobs
from halfangle_client.generated.calls import measuring as _measuring
from halfangle_client.generated.calls import runout as _runout
from halfangle_client.generated.calls import sine as _sine
from halfangle_client.generated.calls import tapers as _tapers
from halfangle_client.generated.calls import wheels as _wheels

ENDPOINTS: dict[str, Endpoint[Any]] = {
    endpoint.name: endpoint
    for endpoints in (
        _blocks.ENDPOINTS,
        _catalogue.ENDPOINTS,
        _centers.ENDPOINTS,
        _clearance.ENDPOINTS,
        _curves.ENDPOINTS,
        _inspection.ENDPOINTS,
        _jobs.ENDPOINTS,
        _measuring.ENDPOINTS,
        _runout.ENDPOINTS,
        _sine.ENDPOINTS,
        _tapers.ENDPOINTS,
        _wheels.ENDPOINTS,
    )
    for endpoint in endpoints
}
