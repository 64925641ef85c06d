"""Small steps of one remedy told together: what is done twice is told once, with the sum."""

from collections.abc import Callable, Iterable

from msgspec import Struct

from model.coach.remedies.changes import Edit
from model.coach.sentences import counted, listed

NAMED = 2
"""Where there are over one more than these, so many are named in a label; the details name them all."""


class Step(Struct, frozen=True):
    """One step of a remedy.

    Attributes:
        doing: what is done, the same for steps that are told together: "Slide the floats".
        by: how much of it, in SI; the sign tells apart what is done one way and the other.
        where: what it is done to; steps alike in this are summed up.
        told: how much and where, in words, of an amount.
        total: the sum of several, in words, of an amount.
    """

    doing: str
    by: float
    where: str
    told: Callable[[float], str]
    total: Callable[[float], str]
    edit: Edit


def told(steps: Iterable[Step]) -> tuple[str, tuple[str, ...]]:
    """The label of some steps, and its details where the label does not name all.

    >>> g = lambda by: f"{by:g} g"
    >>> step = lambda by, bar: Step(
    ...     "Strap steel:", by, bar, lambda by: f"{g(by)} under {bar}", g, lambda design: design
    ... )
    >>> told([step(40, "a"), step(10, "b"), step(25, "a")])
    ('Strap steel: 65 g under a and 10 g under b', ())
    >>> told([step(40, "a"), step(10, "b"), step(25, "c"), step(5, "d"), step(5, "e")])[0]
    'Strap steel: 40 g under a, 10 g under b and 3 pieces more, 35 g together'
    """
    kinds: dict[str, dict[str, tuple[float, Step]]] = {}
    for step in steps:
        here = kinds.setdefault(step.doing, {})
        here[step.where] = (here.get(step.where, (0.0, step))[0] + step.by, step)
    labels, details = list[str](), list[str]()
    for doing, sums in kinds.items():
        done = [(by, step) for by, step in sums.values() if abs(by) > 1e-9]
        words = [step.told(by) for by, step in done]
        if len(words) > NAMED + 1:
            details += [f"{doing} {word}" for word in words]
            rest = done[NAMED:]
            together = rest[0][1].total(sum(by for by, _ in rest))
            words = [*words[:NAMED], f"{counted(len(rest), 'piece')} more, {together} together"]
        if words:
            labels.append(f"{doing} {listed(words)}")
    small = [f"{label[:1].lower()}{label[1:]}" for label in labels[1:]]
    return "; ".join([*labels[:1], *small]), tuple(details)
