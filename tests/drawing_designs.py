"""Designs to draw: one with a bit of everything, and random frames on planes of whole millimetres."""

from itertools import pairwise, product
from random import Random

from model.design import (
    Arrangement,
    Attachment,
    Ballast,
    Bar,
    Brief,
    Design,
    Fitting,
    Float,
    Foam,
    Joint,
    Motor,
    Opening,
    Pipe,
    Plane,
    Plug,
    Socket,
    Stock,
    Supplies,
    Tether,
    Thruster,
)

X, Y, Z = (0.0, 0.15, 0.3), (-0.125, 0.125), (0.0, 0.1, 0.2)
"""Planes of the box [m]: 300 long, 250 wide and 200 high, with a mid station and a mid level."""
SHAPES = {
    "corner": ("+x", "+y", "+z"),
    "tee": ("+x", "-x", "+y"),
    "elbow": ("+x", "+y"),
    "side-outlet tee": ("+x", "-x", "+y", "+z"),
    "cross": ("+x", "-x", "+y", "-y"),
    "five-way": ("+x", "-x", "+y", "-y", "+z"),
    "six-way": ("+x", "-x", "+y", "-y", "+z", "-z"),
    "coupling": ("+x", "-x"),
    "cap": ("+x",),
}


def stock() -> Stock:
    """One pipe of 21 mm and fittings for every right-angled joint; all invented."""
    pipe = Pipe(id="p", name="pipe", material="PVC", outside_diameter=0.0213, bore=0.0153, insertion=0.0127)
    fittings = tuple(
        Fitting(
            id=shape.replace(" ", "-"),
            name=shape,
            shape=shape,
            hub=0.028,
            mass=0.02,
            sockets=tuple(Socket(to=to, laying_length=0.0127, depth=0.0178, pipe="p") for to in ways),
        )
        for shape, ways in SHAPES.items()
    )
    return Stock(name="invented", pipes=(pipe,), fittings=fittings)


def frame(
    bars: list[tuple[tuple[int, int, int], tuple[int, int, int]]],
    planes: tuple[tuple[float, ...], tuple[float, ...], tuple[float, ...]] = (X, Y, Z),
    **equipment: object,
) -> Arrangement:
    """An arrangement whose bars run between joints given by the numbers of their planes."""
    names = sorted({end for bar in bars for end in bar})
    kinds = ("station", "side", "level")
    made = [
        tuple(Plane(id=f"{kind[:2]}{k}", name=f"{kind} {k}", at=at) for k, at in enumerate(group))
        for kind, group in zip(kinds, planes, strict=True)
    ]
    joints = tuple(
        Joint(
            id=joint(at),
            name=f"joint {joint(at)[1:]}",
            station=f"st{at[0]}",
            side=f"si{at[1]}",
            level=f"le{at[2]}",
        )
        for at in names
    )
    pieces = tuple(
        Bar(id=f"b{k}", name=f"bar {k}", start=joint(a), end=joint(b)) for k, (a, b) in enumerate(bars)
    )
    return Arrangement(
        id="a",
        name="first",
        stations=made[0],
        sides=made[1],
        levels=made[2],
        joints=joints,
        bars=pieces,
        **equipment,
    )


def joint(at: tuple[int, int, int]) -> str:
    """The id of the joint on some planes."""
    return "j" + "".join(map(str, at))


def box_bars() -> list[tuple[tuple[int, int, int], tuple[int, int, int]]]:
    """The twelve edges of the box, the two long lower ones split at mid-length, with a rail between."""
    edges = []
    for y, z in product((0, 1), (0, 2)):
        stations = (0, 1, 2) if z == 0 else (0, 2)
        edges += [((a, y, z), (b, y, z)) for a, b in pairwise(stations)]
    edges += [((x, 0, z), (x, 1, z)) for x, z in product((0, 2), (0, 2))]
    edges += [((x, y, 0), (x, y, 2)) for x, y in product((0, 2), (0, 1))]
    return [*edges, ((1, 0, 0), (1, 1, 0))]


def box_design(**changes: object) -> Design:
    """The box with thrusters, floats, ballast, a hook, a camera, a tether and openings."""
    bars = box_bars()
    number = {bar: f"b{k}" for k, bar in enumerate(bars)}
    upper = [number[(0, y, 2), (2, y, 2)] for y in (0, 1)]
    lower = [number[(0, y, 0), (1, y, 0)] for y in (0, 1)]
    fixed = {
        "thrusters": (
            Thruster(id="t1", name="port", bar=lower[1], at=0.4, motor="m", to="+x", offset=(0, 0, 0.035)),
            Thruster(
                id="t2", name="starboard", bar=lower[0], at=0.4, motor="m", to="+x", offset=(0, 0, 0.035)
            ),
            Thruster(
                id="t3",
                name="lift",
                bar=number[(1, 0, 0), (1, 1, 0)],
                motor="m",
                to="+z",
                offset=(0.035, 0, 0.05),
            ),
        ),
        "floats": tuple(
            Float(id=f"f{k}", name=f"float {k}", bar=bar, foam="foam", length=0.16)
            for k, bar in enumerate(upper)
        ),
        "ballasts": (Ballast(id="w", name="rod", bar=number[(2, 0, 0), (2, 1, 0)], mass=0.08),),
        "attachments": (
            Attachment(
                id="h",
                name="hook",
                kind="hook",
                bar=number[(2, 0, 0), (2, 1, 0)],
                at=0.5,
                offset=(0.04, 0, 0),
                size=(0.07, 0.02, 0.04),
                mass=0.03,
                mass_in_water=0.02,
            ),
            Attachment(
                id="c",
                name="camera",
                kind="camera",
                bar=number[(2, 0, 2), (2, 1, 2)],
                at=0.3,
                offset=(0, 0, -0.04),
                size=(0.05, 0.04, 0.04),
                mass=0.08,
                mass_in_water=0.01,
            ),
        ),
        "tether": Tether(
            id="r",
            name="tether",
            bar=number[(0, 0, 2), (0, 1, 2)],
            diameter=0.008,
            hanging=2.0,
            mass_per_m=0.06,
            mass_in_water_per_m=0.005,
        ),
        "plugs": (Plug(id="pl", name="plug", bar=number[(0, 0, 2), (0, 1, 2)], at=0.25),),
        "openings": (
            Opening(id="o1", name="vent", bar=upper[0], at=0.15),
            Opening(id="o2", name="drain", bar=lower[0], at=0.85, face="-z"),
        ),
    }
    motor = Motor(
        id="m",
        name="motor",
        mass=0.1,
        mass_in_water=0.06,
        body_diameter=0.032,
        body_length=0.062,
        propeller_diameter=0.06,
        thrust_ahead=2.0,
    )
    foam = Foam(id="foam", name="foam", outside_diameter=0.06, hole=0.02, sold_length=1.5)
    supplies = Supplies(motors=(motor,), foams=(foam,))
    brief = Brief(size_limit=(0.4, 0.32, 0.3))
    design = Design(
        title="box", brief=brief, stock=stock(), supplies=supplies, arrangements=(frame(bars, **fixed),)
    )
    return design.but(**changes) if changes else design


def random_design(seed: int, planes: int = 4, most: int = 40) -> Design:
    """A connected frame along the axes on random planes, some of them close together."""
    dice = Random(seed)
    lines = [sorted(dice.sample(range(0, 400, 5), dice.randint(1, planes))) for _ in range(3)]
    groups = tuple(tuple(place / 1000 for place in line) for line in lines)
    spots = list(product(*(range(len(line)) for line in lines)))
    reached, bars = [dice.choice(spots)], []
    for _ in range(most):
        here = dice.choice(reached)
        axis, step = dice.randrange(3), dice.choice((-1, 1))
        there = tuple(place + step * (k == axis) for k, place in enumerate(here))
        if there in spots and (here, there) not in bars and (there, here) not in bars:
            bars.append((here, there))
            reached.append(there)
    return Design(title="random", stock=stock(), arrangements=(frame(bars, groups),))
