"""Generated frames with generated holes and plugs, for the tests of the air in the pipes."""

from itertools import product
from random import Random

from model.design import Opening, Plug
from tests.worked import arrangement, design

ACROSS = {
    0: ("+y", "-y", "+z", "-z", "+y+z", "+y-z", "-y+z", "-y-z"),
    1: ("+x", "-x", "+z", "-z", "+x+z", "+x-z", "-x+z", "-x-z"),
    2: ("+x", "-x", "+y", "-y", "+x+y", "+x-y", "-x+y", "-x-y"),
}
"""The sides of a bar along each axis."""


def random_ends(rng, bars):
    """Bars of a frame that hangs together, between joints of a 3 x 2 x 2 lattice."""
    spots = list(product(range(3), range(2), range(2)))
    edges = [
        (a, b)
        for a in spots
        for b in spots
        if a < b and sum(abs(p - q) for p, q in zip(a, b, strict=True)) == 1
    ]
    start = rng.choice(edges)
    ends, reached = [start], set(start)
    while len(ends) < bars:
        near = [edge for edge in edges if edge not in ends and (edge[0] in reached or edge[1] in reached)]
        chosen = rng.choice(near)
        ends.append(chosen)
        reached.update(chosen)
    return ends


def random_design(seed, bars=6, holes=4, plugs=1, low=0.075, high=0.12):
    """A generated design: spacing [m] between low and high, some holes and plugs anywhere on its pipes."""
    rng = Random(seed)
    lines = [tuple(k * round(rng.uniform(low, high), 3) for k in range(n)) for n in (3, 2, 2)]
    ends = random_ends(rng, bars)
    run = arrangement(*lines, ends)
    openings = tuple(random_opening(rng, f"o{n}", ends) for n in range(holes))
    stoppers = tuple(
        Plug(id=f"s{n}", name=f"plug {n}", bar=f"b{rng.randrange(bars)}", at=rng.uniform(0.4, 0.6))
        for n in range(plugs)
    )
    return design(run.but(openings=openings, plugs=stoppers))


def random_opening(rng, identity, ends):
    """A hole on the pipe that shows, on any side."""
    bar = rng.randrange(len(ends))
    axis = next(k for k in range(3) if ends[bar][0][k] != ends[bar][1][k])
    return Opening(
        id=identity,
        name=identity,
        bar=f"b{bar}",
        at=round(rng.choice((rng.uniform(0.28, 0.38), rng.uniform(0.62, 0.72))), 3),
        face=rng.choice(ACROSS[axis]),
        diameter=rng.choice((0.005, 0.006, 0.008)),
        through=rng.random() < 0.3,
    )
