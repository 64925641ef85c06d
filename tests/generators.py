"""Hypothesis strategies that make designs: frames on up to 6 x 6 x 6 planes, and what is fixed to them.

``tidy_designs`` makes connected frames along the axes and at 45 degrees, with a stock of every shape;
``designs`` makes whatever a file may hold: poor stocks, planes in one place, crooked bars, loose pieces.
How much there is of everything is drawn by hypothesis, and shrinks; the rest comes from dice with a seed.
"""

from itertools import product
from random import Random
from typing import Any

from hypothesis import strategies as st

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
    Mount,
    Opening,
    Pipe,
    Plane,
    Socket,
    Stick,
    Stock,
    Supplies,
    Tether,
    Thruster,
    Water,
)
from tests.strewn import strewn

SHAPES = {
    "cap": ("+x",),
    "coupling": ("+x", "-x"),
    "elbow": ("+x", "+y"),
    "elbow 45": ("+x", "-x+y"),
    "tee": ("+x", "-x", "+y"),
    "corner": ("+x", "+y", "+z"),
    "cross": ("+x", "-x", "+y", "-y"),
    "side-outlet tee": ("+x", "-x", "+y", "+z"),
    "five-way": ("+x", "-x", "+y", "-y", "+z"),
    "six-way": ("+x", "-x", "+y", "-y", "+z", "-z"),
}
HEADINGS = tuple(step for step in product((-1, 0, 1), repeat=3) if 1 <= sum(map(abs, step)) <= 2)
AXES = tuple(step for step in HEADINGS if sum(map(abs, step)) == 1)
SIDES = ("+x", "-x", "+y", "-y", "+z", "-z", "+x+y", "+x-z", "-y-z")
NAMES = ("rail", 'the "long" one', "balk €", "a\\b [x]", "n" * 80)
Spot = tuple[int, int, int]
Planes = tuple[tuple[float, ...], ...]


def _pipe(name: str, outside: float, bore: float, insertion: float, **more: Any) -> Pipe:
    values = {
        "material": "PVC",
        "sticks": (Stick(length=3.0, price=4.0), Stick(length=1.5, price=2.5)),
        **more,
    }
    return Pipe(id=name, name=name, outside_diameter=outside, bore=bore, insertion=insertion, **values)


HALF = _pipe("half", 0.021336, 0.0152908, 0.0127)
WIDE = _pipe("wide", 0.02667, 0.0204216, 0.0121, material="ABS", density=1050.0)
NARROW = _pipe("narrow", 0.02, 0.0166, 0.03, sticks=())  # pushed in deeper than a socket is


def fitting(shape: str, pipe: str, run: float, branch: float, depth: float, hub: float) -> Fitting:
    """A fitting of a shape; sockets on its run may have another laying length than its branches [m]."""
    ways = SHAPES[shape]
    sockets = tuple(
        Socket(
            to=to, laying_length=run if _opposite(to) in ways else branch, depth=depth + 1e-3 * k, pipe=pipe
        )
        for k, to in enumerate(ways)
    )
    number = list(SHAPES).index(shape)
    return Fitting(
        id=f"{pipe}-{number}",
        name=f"{shape} of {pipe}",
        shape=shape,
        sockets=sockets,
        hub=hub,
        mass=0.008 + 0.006 * number,
        price=0.5 + 0.3 * number,
    )


def _opposite(to: str) -> str:
    return to.translate(str.maketrans("+-", "-+"))


def stock(*pipes: Pipe, shapes: tuple[str, ...] = tuple(SHAPES), kerf: float = 0.001) -> Stock:
    """A range of some shapes for each pipe."""
    made = [
        fitting(s, p.id, 0.0127, 0.0143, 0.0175, p.outside_diameter + 0.0066) for p in pipes for s in shapes
    ]
    return Stock(name="generated", pipes=pipes, fittings=tuple(made), kerf=kerf)


FULL = (stock(HALF), stock(WIDE, kerf=0.0), stock(NARROW))
POOR = (
    stock(HALF, WIDE),
    stock(HALF, shapes=("elbow", "tee")),
    stock(WIDE, HALF, shapes=("corner", "cap", "six-way")),
    Stock(name="pipe alone", pipes=(HALF,)),
)
SUPPLIES = Supplies(
    motors=(
        Motor(
            id="m1",
            name="small motor",
            mass=0.12,
            mass_in_water=0.07,
            body_diameter=0.03,
            body_length=0.06,
            propeller_diameter=0.05,
            thrust_ahead=3.0,
            price=9.5,
        ),
        Motor(
            id="m2",
            name="floating motor",
            mass=0.05,
            mass_in_water=-0.02,
            body_diameter=0.04,
            body_length=0.05,
            propeller_diameter=0.03,
            thrust_ahead=0.0,
            thrust_astern=0.0,
        ),
    ),
    mounts=(Mount(id="g1", name="two ties", mass=0.004, mass_in_water=0.001, price=0.2),),
    foams=(
        Foam(id="e1", name="noodle", outside_diameter=0.0635, hole=0.01905, sold_length=1.5, price=3.0),
        Foam(id="e2", name="solid rod", outside_diameter=0.02, density=40.0, sold_length=0.5),
    ),
)


def plane_positions(dice: Random, count: int, *, unique: bool) -> tuple[float, ...]:
    """Positions [m] of some planes, on a raster that makes 45 degrees likely; not in order."""
    step = dice.choice((0.1, 0.1, 0.0635, 0.03))
    places = dice.sample(range(-6, 7), count) if unique else dice.choices(range(-6, 7), k=count)
    return tuple(round(place * step, 9) for place in places)


def next_spot(here: Spot, heading: Spot, planes: Planes, far: bool) -> Spot | None:
    """The joint that a bar reaches which leaves in a direction, along an axis or at 45 degrees."""
    axes = [axis for axis in range(3) if heading[axis]]
    first = axes[0]
    ways = [
        (there, abs(at - planes[first][here[first]]))
        for there, at in enumerate(planes[first])
        if (at - planes[first][here[first]]) * heading[first] > 1e-6
    ]
    for there, run in sorted(ways, key=lambda way: way[1], reverse=far):
        spot = list(here)
        spot[first] = there
        if len(axes) == 1:
            return spot[0], spot[1], spot[2]
        wanted = planes[axes[1]][here[axes[1]]] + heading[axes[1]] * run
        for number, at in enumerate(planes[axes[1]]):
            if abs(at - wanted) < 1e-9:
                spot[axes[1]] = number
                return spot[0], spot[1], spot[2]
    return None


def bar_ends(dice: Random, planes: Planes, bars: int) -> list[tuple[Spot, Spot]]:
    """The ends of the bars of one connected frame, about as many as asked for."""
    start = tuple(dice.randrange(len(line)) for line in planes)
    reached: list[Spot] = [(start[0], start[1], start[2])]
    found: dict[frozenset[Spot], tuple[Spot, Spot]] = {}
    for _ in range(3 * bars):
        here = dice.choice(reached[-8:])
        heading = dice.choice(AXES if dice.random() < 0.6 else HEADINGS)
        there = next_spot(here, heading, planes, dice.random() < 0.2)
        if there and len(found) < bars and frozenset((here, there)) not in found:
            found[frozenset((here, there))] = (here, there)
            if there not in reached:
                reached.append(there)
    return list(found.values())


def frame(planes: Planes, ends: list[tuple[Spot, Spot]], **more: Any) -> Arrangement:
    """An arrangement whose bars run between joints given by the numbers of their planes."""
    spots = list(dict.fromkeys(spot for pair in ends for spot in pair))
    lines = [
        tuple(Plane(id=f"{axis}{k}", name=f"{axis} plane {k}", at=at) for k, at in enumerate(line))
        for axis, line in zip("xyz", planes, strict=True)
    ]
    joints = tuple(
        Joint(
            id=joint_id(spot),
            name=f"joint {n}",
            station=f"x{spot[0]}",
            side=f"y{spot[1]}",
            level=f"z{spot[2]}",
        )
        for n, spot in enumerate(spots)
    )
    bars = tuple(
        Bar(id=f"b{n}", name=f"{NAMES[n % len(NAMES)][:70]} {n}", start=joint_id(a), end=joint_id(b))
        for n, (a, b) in enumerate(ends)
    )
    names = dict(zip(("stations", "sides", "levels"), lines, strict=True))
    return Arrangement(id="run", name="first run", **names, **{"joints": joints, "bars": bars, **more})


def joint_id(spot: Spot) -> str:
    """The id of the joint on some planes."""
    return "j" + "-".join(map(str, spot))


def equipment(dice: Random, bars: int, most: int) -> dict[str, Any]:
    """What is fixed to the bars b0, b1, ... of a frame: the fields of an arrangement."""

    def some(record: type, prefix: str, least: int = 0, **fields: Any) -> tuple[Any, ...]:
        count = dice.randint(least, most) if bars else 0
        return tuple(record(id=f"{prefix}{n}", name=f"{prefix} {n}", **placed(fields)) for n in range(count))

    def placed(fields: dict[str, Any]) -> dict[str, Any]:
        where = {"bar": f"b{dice.randrange(bars)}", "at": dice.choice((0.0, 0.1, 0.25, 0.5, 0.7, 1.0))}
        return {**where, **{name: draw() for name, draw in fields.items()}}

    def of(*choices: Any) -> Any:
        return lambda: dice.choice(choices)

    def size() -> float:
        return dice.randint(1, 300) / 1000

    def offset() -> tuple[float, ...]:
        return tuple(dice.randint(-100, 100) / 1000 for _ in range(3))

    drive = {"motor": of("m1", "m1", "m2"), "mount": of(None, "g1"), "to": of(*SIDES), "offset": offset}
    foam = {"foam": of("e1", "e2"), "length": size, "beside": of(None, *SIDES)}
    weight = {"mass": of(0.0, 0.05, 0.333), "diameter": of(0.012, 0.03), "beside": of(None, *SIDES)}
    gear = {
        "kind": of("hook", "camera", "other"),
        "offset": offset,
        "size": lambda: (size(), size(), size()),
        "mass": of(0.08),
        "mass_in_water": of(0.03, -0.02),
        "price": of(0.0, 1.25),
        "counts": of(True, False),
    }
    cable = {
        "diameter": of(0.008),
        "hanging": size,
        "mass_per_m": of(0.06),
        "mass_in_water_per_m": of(0.005, -0.01),
        "floats": of(0, 3),
        "float_lift": of(0.02),
    }
    hole = {"face": of(*SIDES), "diameter": of(0.002, 0.006, 0.05), "through": of(True, False)}
    tethers = some(Tether, "cable", **cable)
    return {
        "bores": dice.choice(("flooded", "flooded", "sealed")),
        "thrusters": some(Thruster, "drive", **drive),
        "floats": some(Float, "foam", **foam),
        "ballasts": some(Ballast, "weight", **weight),
        "attachments": some(Attachment, "gear", **gear),
        "tether": tethers[0] if tethers else None,
        "openings": some(Opening, "hole", **hole),
    }


def brief(dice: Random) -> Brief:
    """Limits that may or may not be met."""
    moves = ("ahead", "astern", "up", "down", "turn", "sideways")
    side = dice.choice((None, 0.2, 0.5, 1.0))
    return Brief(
        size_limit=None if side is None else (side, side, side / 2),
        spending_limit=dice.choice((None, None, 0.0, 40.0)),
        materials=dice.choice(((), (), ("pvc",), ("ABS", "PEX"))),
        moves=tuple(dice.sample(moves, dice.choice((0, 1, 6)))),
        water=Water(temperature=float(dice.randint(0, 40)), salinity=dice.choice((0.0, 0.5, 35.0))),
    )


seeds = st.integers(0, 2**32)
counts = st.tuples(st.integers(1, 6), st.integers(1, 6), st.integers(1, 6))


@st.composite
def tidy_designs(draw: st.DrawFn, most: int = 30) -> Design:
    """A connected frame with a stock of every shape, and what is fixed to it."""
    dice = Random(draw(seeds))
    planes = tuple(plane_positions(dice, count, unique=True) for count in draw(counts))
    ends = bar_ends(dice, planes, draw(st.integers(0, most)))
    arrangement = frame(planes, ends, **equipment(dice, len(ends), draw(st.integers(0, 3))))
    return Design(
        title="generated",
        units=draw(st.sampled_from(("mm", "in"))),
        brief=brief(dice),
        stock=dice.choice(FULL),
        supplies=SUPPLIES,
        arrangements=(arrangement,),
    )


@st.composite
def designs(draw: st.DrawFn, most: int = 20, odd: int = 10) -> Design:
    """Whatever a file may hold; ``odd`` is the most plans and odd numbers that are strewn over it."""
    dice = Random(draw(seeds))
    planes = tuple(plane_positions(dice, count, unique=False) for count in draw(counts))
    ends = bar_ends(dice, planes, draw(st.integers(0, most)))
    for _ in range(draw(st.integers(0, 3))):
        a, b = (tuple(dice.randrange(len(line)) for line in planes) for _ in range(2))
        if a != b and (a, b) not in ends and (b, a) not in ends:
            ends.append((a, b))  # type: ignore[arg-type]
    design = Design(
        title=dice.choice(NAMES),
        team="a team",
        units=draw(st.sampled_from(("mm", "in"))),
        notes=dice.choice(("", "line one\nline two", 'quote """ and \\')),
        brief=brief(dice),
        stock=dice.choice(FULL + POOR),
        supplies=SUPPLIES,
        arrangements=(frame(planes, ends, **equipment(dice, len(ends), draw(st.integers(0, 3)))),),
    )
    design = with_picks(dice, design, draw(st.integers(0, 3)))
    return strewn(dice, design, draw(st.integers(0, odd)))


def with_picks(dice: Random, design: Design, count: int) -> Design:
    """The design with some fittings picked and some bars made of another pipe."""
    joints, bars = list(design.arrangement.joints), list(design.arrangement.bars)
    for _ in range(count if joints and design.stock.fittings else 0):
        joint, bar = dice.randrange(len(joints)), dice.randrange(len(bars))
        joints[joint] = joints[joint].but(fitting=dice.choice(design.stock.fittings).id)
        bars[bar] = bars[bar].but(pipe=dice.choice(design.stock.pipes).id)
    return design.arranged(joints=tuple(joints), bars=tuple(bars))
