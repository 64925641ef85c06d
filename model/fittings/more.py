"""Fittings that a stock lacks, as the ready-made ranges have them: for a bag of parts from several shops.

A range has no fitting of the wanted shape for every pipe.  Then the one whose pipe is most like it is
scaled by the width of the pipe: good enough to begin with, until it lies under the ruler.
"""

from collections.abc import Iterator
from itertools import combinations, permutations

from model.design import Fitting, Pipe, Stock
from model.design.edits import on_the_run
from model.presets import presets

SAME = 1e-4
"""[m] Pipes whose outside diameters are this near are pushed into the same fittings."""
Kind = tuple[str, tuple[tuple[bool, str], ...]]
"""A shape, and for each socket whether it is on the run and which pipe it takes."""


def addable(stock: Stock, *, scaled: bool = True) -> tuple[Fitting, ...]:
    """One fitting of each shape and pipe that a stock lacks; those made for its own pipe come first.

    Args:
        scaled: whether those count that are made for another pipe.
    """
    have = {_kind(fitting) for fitting in stock.fittings}
    best: dict[Kind, tuple[float, Fitting]] = {}
    for preset in presets("stock"):
        other = preset.payload
        for off, fitting in _fitted(other, stock) if isinstance(other, Stock) else ():
            kind = _kind(fitting)
            if kind not in have and (kind not in best or off < best[kind][0]):
                best[kind] = off, fitting
    ordered = sorted(best.values(), key=lambda found: found[0])
    return tuple(fitting for off, fitting in ordered if scaled or off <= SAME)


def _kind(fitting: Fitting) -> Kind:
    return fitting.shape, tuple(
        sorted((on_the_run(fitting, socket), socket.pipe) for socket in fitting.sockets)
    )


def _fitted(other: Stock, stock: Stock) -> Iterator[tuple[float, Fitting]]:
    """Every fitting of another stock made to take pipes of this one, with how unlike the pipes are."""
    pipes = {pipe.id: pipe for pipe in other.pipes}
    for fitting in other.fittings:
        theirs = [pipes[id] for id in dict.fromkeys(socket.pipe for socket in fitting.sockets)]
        for ours in permutations(stock.pipes, len(theirs)):
            pairs = list(zip(theirs, ours, strict=True))
            if all(_alike(a, b) for a, b in combinations(pairs, 2)):
                yield _made_for(fitting, pairs, other.name)


def _alike(first: tuple[Pipe, Pipe], second: tuple[Pipe, Pipe]) -> bool:
    """Whether of two pipes the wider one stands for the wider one."""
    (a, b), (c, d) = first, second
    return (a.outside_diameter > c.outside_diameter) == (b.outside_diameter > d.outside_diameter)


def _made_for(fitting: Fitting, pairs: list[tuple[Pipe, Pipe]], name: str) -> tuple[float, Fitting]:
    """A fitting for other pipes, and by how much [m] they differ at the most."""
    off = max(abs(ours.outside_diameter - theirs.outside_diameter) for theirs, ours in pairs)
    ids = {theirs.id: ours.id for theirs, ours in pairs}
    if off <= SAME:
        sockets = tuple(socket.but(pipe=ids[socket.pipe]) for socket in fitting.sockets)
        return off, fitting.but(sockets=sockets)
    ratio = {theirs.id: ours.outside_diameter / theirs.outside_diameter for theirs, ours in pairs}
    sockets = tuple(
        socket.but(
            pipe=ids[socket.pipe],
            laying_length=socket.laying_length * ratio[socket.pipe],
            depth=socket.depth * ratio[socket.pipe],
        )
        for socket in fitting.sockets
    )
    widest = max(ratio.values())
    called, takes = fitting.name if len(pairs) == 1 else fitting.shape, [ours.name for _, ours in pairs]
    return off, fitting.but(
        name=f"{called} for {' and '.join(takes)}"[:80],
        sockets=sockets,
        hub=fitting.hub * widest,
        mass=fitting.mass * widest**2,
        price=0.0,
        source=f"Scaled by the width of the pipe from {fitting.name}, {name}: measure and weigh yours.",
    )
