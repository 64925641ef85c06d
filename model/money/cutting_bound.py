"""What any cutting plan must cost at least: a linear program over patterns, grown by knapsack.

Column generation (Gilmore and Gomory, Operations Research 9 (1961) 849-859): the dual values of the
program price the pieces, and a knapsack finds the pattern worth most at these prices, until none is
worth more than its stick.
"""

from collections.abc import Sequence

from msgspec import Struct

from model.money.cutting_task import Choice, Task
from model.money.patterns import NEARLY, best_pattern
from model.solve.highs import Row, Solution, minimise

ROUNDS = 400
SOLVER_SLACK = 1e-6
"""What the solver may be off."""


class Bound(Struct, frozen=True):
    """What every plan costs at least, and a whole-number plan over the same patterns if there is one."""

    least: float
    plan: list[Choice] | None


def bound_of(task: Task) -> Bound | None:
    """The bound of a task; None where the pieces cannot be cut at all."""
    columns = _first_columns(task)
    grown = _grown(columns, task)
    if grown is None:
        return None
    plan = _program(list(columns), task, whole=True)
    return Bound(grown.cost - SOLVER_SLACK, _picked(list(columns), plan) if plan else None)


def _first_columns(task: Task) -> dict[Choice, None]:
    """For each source and piece, as many of that piece as fit: enough to begin with."""
    columns: dict[Choice, None] = {}
    kinds = range(len(task.pieces.sizes))
    for number, room in enumerate(task.rooms):
        for kind in kinds:
            count = min(task.pieces.wanted[kind], room // task.pieces.sizes[kind])
            if count:
                columns[number, tuple(count if other == kind else 0 for other in kinds)] = None
    return columns


def _grown(columns: dict[Choice, None], task: Task) -> Solution | None:
    """Patterns added until none makes the linear program cheaper; its optimum then bounds every plan."""
    for _ in range(ROUNDS):
        bound = _program(list(columns), task, whole=False)
        if bound is None:
            return None
        known = len(columns)
        for number, room in enumerate(task.rooms):
            worth, pattern = best_pattern(task.pieces, room, bound.duals[: len(task.pieces.sizes)])
            if worth > _charge(number, task, bound) + NEARLY:
                columns[number, pattern] = None
        if len(columns) == known:
            return bound
    return None


def _charge(number: int, task: Task, bound: Solution) -> float:
    """What a stick must earn back: its worth, less the dual value of its scarcity (zero or below)."""
    return task.sources[number].worth - bound.duals[len(task.pieces.sizes) + number]


def _program(columns: Sequence[Choice], task: Task, *, whole: bool) -> Solution | None:
    """The cheapest use of some patterns that gives every piece, with no more of each source than there is."""
    rows = [
        Row(
            tuple((n, float(pattern[kind])) for n, (_, pattern) in enumerate(columns) if pattern[kind]),
            wanted,
        )
        for kind, wanted in enumerate(task.pieces.wanted)
    ]
    rows += [
        Row(
            tuple((n, 1.0) for n, (source, _) in enumerate(columns) if source == number),
            high=float("inf") if source.count is None else source.count,
        )
        for number, source in enumerate(task.sources)
    ]
    return minimise([task.sources[number].worth for number, _ in columns], rows, whole=whole)


def _picked(columns: Sequence[Choice], plan: Solution) -> list[Choice]:
    return [choice for choice, value in zip(columns, plan.values, strict=True) for _ in range(round(value))]
