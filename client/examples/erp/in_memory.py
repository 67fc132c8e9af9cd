r"""Try the connector in an ERP of its own in memory; what the ERP holds is printed as JSON.

Harrow Lane Tool & Gauge, an invented shop, plans two jobs and orders one of each. What is stale is
asked for as it was planned, with a request changed, and of a service of another release.

    DB_NAME=:memory: TRYTOND_DATABASE_URI=sqlite:// DB_CACHE=FOLDER \
        python in_memory.py URL URL_OF_ANOTHER_RELEASE < jobs.json
"""

import json
import sys
from dataclasses import asdict
from decimal import Decimal
from typing import Any

from load_routing import PLACES, Stopped, load, stale
from proteus import Model
from trytond.modules.company.tests.tools import create_company
from trytond.tests.tools import activate_modules

from halfangle_client import Halfangle


def made(model: str, **fields: Any) -> Any:
    """A new record, saved."""
    record = Model.get(model)(**fields)
    record.save()
    return record


def found(model: str, *condition: Any) -> Any:
    """The one record of a condition."""
    (record,) = Model.get(model).find([condition])
    return record


def shop() -> Any:
    """Work centers of the shop under one root."""
    warehouse = found("stock.location", "type", "=", "warehouse")
    root = made("production.work.center", name="Toolroom", warehouse=warehouse)
    for name in sorted(set(PLACES.values())):
        category = made("production.work.center.category", name=name)
        made(
            "production.work.center",
            name=f"{name} 1",
            parent=root,
            category=category,
            warehouse=warehouse,
            cost_price=Decimal(60),
            cost_method="hour",
        )
    return root


def product(name: str) -> Any:
    """A product by the piece."""
    unit = found("product.uom", "name", "=", "Unit")
    template = Model.get("product.template")(
        name=name, default_uom=unit, type="goods", producible=True, list_price=Decimal(0)
    )
    template.products[0].cost_price = Decimal(0)
    template.save()
    return template.products[0]


def ordered(job: str, root: Any) -> Any:
    """A production by the routing of a job, with its works."""
    part, blank = product(job), product(f"{job}, blank")
    bom = Model.get("production.bom")(name=job)
    bom.inputs.new(product=blank, quantity=1)
    bom.outputs.new(product=part, quantity=1)
    bom.save()
    routing = found("production.routing", "name", "=", job)
    routing.boms.append(bom)
    routing.save()
    part.boms.new(bom=bom, routing=routing)
    part.save()
    production = Model.get("production")(
        product=part, bom=bom, routing=routing, work_center=root, quantity=1
    )
    production.click("wait")
    return production


def main() -> None:
    """Plan, load, order, and ask what is stale."""
    url, later = sys.argv[1:]
    jobs = json.load(sys.stdin)
    first, second = jobs["jobs"]
    activate_modules(["production_routing", "production_work"], create_company)
    root = shop()
    told: dict[str, Any] = {}
    with Halfangle(url) as client:
        told["loaded"] = [asdict(load(client, job)) for job in (first, second)]
        told["again"] = asdict(load(client, first))
        try:
            load(client, jobs["stopped"])
        except Stopped as stopped:
            told["stopped"] = str(stopped)
        orders = [ordered(job["job"], root) for job in (first, second)]
        told["works"] = [
            [[work.operation.name, work.work_center.name] for work in order.works]
            for order in orders
        ]
        told["operations"] = [
            each.name for each in Model.get("production.routing.operation").find([])
        ]
        told["notes"] = [
            [
                [note.message for note in Model.get("ir.note").find([("resource", "=", str(step))])]
                for step in order.routing.steps
            ]
            for order in orders
        ]
        told["fresh"] = [asdict(each) for each in stale(client)]
        changed = {**second, "pieces": second["pieces"] + 1}
        told["changed"] = [asdict(each) for each in stale(client, [first, changed])]
        told["replanned"] = asdict(load(client, changed))
        told["after"] = [asdict(each) for each in stale(client, [first, changed])]
    with Halfangle(later) as client:
        told["later"] = [asdict(each) for each in stale(client)]
    told["orders"] = [order.number for order in orders]
    print(json.dumps(told))


if __name__ == "__main__":
    main()
