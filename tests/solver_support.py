"""Stacks by a general exact solver, apart from the service's own search."""

from collections.abc import Sequence

from ortools.sat.python import cp_model


def by_constraints(
    steps: Sequence[int], targets: Sequence[int], most: int
) -> tuple[int | None, list[list[int]]]:
    """Fewest blocks for several targets at once by OR-Tools CP-SAT, each block used once."""
    model = cp_model.CpModel()
    stacks = [[model.new_bool_var(f"{t}-{b}") for b in range(len(steps))] for t in targets]
    for used, target in zip(stacks, targets, strict=True):
        model.add(cp_model.LinearExpr.weighted_sum(used, list(steps)) == target)
        model.add(cp_model.LinearExpr.sum(used) <= most)
    for block in zip(*stacks, strict=True):
        model.add(cp_model.LinearExpr.sum(list(block)) <= 1)
    model.minimize(cp_model.LinearExpr.sum([used for stack in stacks for used in stack]))
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    status = solver.solve(model)
    assert status in (cp_model.OPTIMAL, cp_model.INFEASIBLE)
    if status == cp_model.INFEASIBLE:
        return None, []
    return round(solver.objective_value), [[solver.value(v) for v in stack] for stack in stacks]
