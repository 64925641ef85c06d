"""Small designs to try edits on, built by hand from round numbers."""

from model.design import (
    Arrangement,
    Bar,
    Design,
    Fitting,
    Foam,
    Joint,
    Motor,
    Mount,
    Pipe,
    Plane,
    Socket,
    Stick,
    Stock,
    Supplies,
)

PIPE = Pipe(
    id="half",
    name="half inch",
    material="PVC",
    outside_diameter=0.02134,
    bore=0.01529,
    insertion=0.0127,
    sticks=(Stick(length=3.0, price=4.0),),
)
WIDE = PIPE.but(id="wide", name="three quarter", outside_diameter=0.02667, bore=0.02042)


def fitting(identity: str, shape: str, *directions: str) -> Fitting:
    """A fitting with the same sockets all round."""
    sockets = tuple(Socket(to=to, laying_length=0.0127, depth=0.0175, pipe="half") for to in directions)
    return Fitting(id=identity, name=identity, shape=shape, sockets=sockets, hub=0.027, mass=0.02)


STOCK = Stock(
    name="test range",
    pipes=(PIPE, WIDE),
    fittings=(
        fitting("elbow", "elbow", "+x", "+y"),
        fitting("tee", "tee", "+x", "-x", "+y"),
        fitting("corner", "corner", "+x", "+y", "+z"),
    ),
    kerf=0.002,
)
SUPPLIES = Supplies(
    motors=(
        Motor(
            id="m1",
            name="motor",
            mass=0.12,
            mass_in_water=0.07,
            body_diameter=0.03,
            body_length=0.06,
            propeller_diameter=0.05,
            thrust_ahead=3.0,
        ),
    ),
    mounts=(Mount(id="mt1", name="two ties", mass=0.004, mass_in_water=0.0),),
    foams=(Foam(id="fm1", name="noodle", outside_diameter=0.06, hole=0.02, sold_length=1.5),),
)
EMPTY = Design(
    title="nothing yet", stock=STOCK, supplies=SUPPLIES, arrangements=(Arrangement(id="a", name="run 1"),)
)


def planes(prefix: str, *positions: float) -> tuple[Plane, ...]:
    """Planes at some positions [m], with ids and names by number."""
    return tuple(Plane(id=f"{prefix}{n}", name=f"{prefix}-{n}", at=at) for n, at in enumerate(positions))


def rectangle() -> Design:
    """Four bars of 300 x 200 mm in one level, a second level above that carries nothing."""
    corners = ((0, 0), (1, 0), (1, 1), (0, 1))
    joints = tuple(
        Joint(id=f"k{n}", name=f"corner {n}", station=f"x{x}", side=f"y{y}", level="z0")
        for n, (x, y) in enumerate(corners)
    )
    bars = tuple(Bar(id=f"r{n}", name=f"rail {n}", start=f"k{n}", end=f"k{(n + 1) % 4}") for n in range(4))
    arrangement = Arrangement(
        id="a",
        name="run 1",
        stations=planes("x", 0.0, 0.3),
        sides=planes("y", 0.0, 0.2),
        levels=planes("z", 0.0, 0.1),
        joints=joints,
        bars=bars,
    )
    return EMPTY.but(title="rectangle", arrangements=(arrangement,))
