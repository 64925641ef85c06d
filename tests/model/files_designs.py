"""Designs for the tests of files: one written out by hand, and any that hypothesis thinks of."""

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
    Thresholds,
    Thruster,
    Water,
)
from model.units import Unit


def sockets(*directions: str) -> tuple[Socket, ...]:
    """The same socket in some directions."""
    return tuple(Socket(to=to, laying_length=0.012, depth=0.0175, pipe="half") for to in directions)


PIPE = Pipe(
    id="half",
    name="half-inch pipe",
    material="PVC",
    outside_diameter=0.021336,
    bore=0.0152908,
    insertion=0.0127,
    sticks=(Stick(length=3.048, price=4.5), Stick(length=1.524, price=2.75)),
)
STOCK = Stock(
    name="test range",
    kerf=0.0015,
    pipes=(PIPE,),
    fittings=(
        Fitting(id="elbow", name="elbow", shape="elbow", sockets=sockets("+x", "+y"), hub=0.0275, mass=0.021),
        Fitting(id="tee", name="tee", shape="tee", sockets=sockets("+x", "-x", "+y"), hub=0.0275, mass=0.028),
    ),
)
SUPPLIES = Supplies(
    motors=(
        Motor(
            id="small",
            name="small motor",
            mass=0.095,
            mass_in_water=0.06,
            body_diameter=0.028,
            body_length=0.06,
            propeller_diameter=0.05,
            thrust_ahead=3,
        ),
    ),
    mounts=(Mount(id="ties", name="two ties", mass=0.004, mass_in_water=0.001),),
    foams=(Foam(id="tube", name="foam tube", outside_diameter=0.065, hole=0.02, sold_length=1.2),),
)
JOINTS = tuple(
    Joint(id=f"j{x}{y}", name=f"joint {x}{y}", station=f"s{x}", side=f"p{y}", level="l1")
    for x in (1, 2)
    for y in (1, 2)
)
BARS = (
    Bar(id="b1", name="port rail", start="j12", end="j22"),
    Bar(id="b2", name="starboard rail", start="j11", end="j21"),
    Bar(id="b3", name="stern cross", start="j11", end="j12"),
    Bar(id="b4", name="bow cross", start="j21", end="j22", pipe="half"),
)
RUN = Arrangement(
    id="run1",
    name="first run",
    stations=(Plane(id="s1", name="stern", at=-0.15), Plane(id="s2", name="bow", at=0.085725)),
    sides=(Plane(id="p1", name="starboard", at=-0.1), Plane(id="p2", name="port", at=0.1)),
    levels=(Plane(id="l1", name="floor", at=0),),
    joints=JOINTS,
    bars=BARS,
    thrusters=(Thruster(id="t1", name="port thruster", bar="b1", at=0.25, motor="small", mount="ties"),),
    floats=(Float(id="f1", name="port float", bar="b1", foam="tube", length=0.15),),
    ballasts=(
        Ballast(id="w1", name="washers", bar="b2", mass=0.06, beside=None),
        Ballast(id="w2", name="rod", bar="b3", mass=0.06),
    ),
    attachments=(
        Attachment(
            id="hook",
            name="hook",
            bar="b4",
            kind="hook",
            size=(0.05, 0.01, 0.03),
            mass=0.02,
            mass_in_water=0.017,
            notes="bent from\ncoated wire",
        ),
    ),
    tether=Tether(
        id="cable",
        name="cable",
        bar="b3",
        diameter=0.008,
        hanging=3,
        mass_per_m=0.06,
        mass_in_water_per_m=0.01,
    ),
    openings=(Opening(id="o1", name="vent", bar="b1", at=0.1),),
)


def sample(units: Unit = "mm") -> Design:
    """A flat frame of four bars that carries one of everything."""
    return Design(
        title="Reed frog",
        team="Reedbed",
        units=units,
        notes="first line\nsecond line",
        brief=Brief(
            size_limit=(0.6, 0.4, 0.3),
            spending_limit=90,
            materials=("PVC",),
            moves=("ahead", "up"),
            thresholds=Thresholds(bg_least=0.03),
        ),
        stock=STOCK,
        supplies=SUPPLIES,
        arrangements=(RUN,),
    )


LENGTHS = st.floats(-50, 50)
SIZES = st.floats(1e-6, 50)
MASSES = st.floats(0, 50)
MONEY = st.floats(0, 1e6)
NAMES = st.text(min_size=1, max_size=12)
TEXTS = st.text(max_size=40) | st.sampled_from(
    ["two\nlines", '"""\n', "back\\slash\nand more", "\r\n", "''' \t"]
)
UNITS: st.SearchStrategy[Unit] = st.sampled_from(["mm", "in"])
DIRECTIONS = st.sampled_from(["+x", "-y", "+z", "+x+y", "-y+z"])


@st.composite
def designs(draw: st.DrawFn) -> Design:
    """Any design on the frame of the sample, with numbers and texts of all kinds."""
    stock = STOCK.but(
        name=draw(NAMES),
        kerf=draw(MASSES),
        notes=draw(TEXTS),
        pipes=(
            PIPE.but(
                outside_diameter=PIPE.bore + draw(SIZES), insertion=draw(MASSES), counts=draw(st.booleans())
            ),
        ),
    )
    fixed = {"bar": "b1", "at": draw(st.floats(0, 1)), "notes": draw(TEXTS)}
    run = RUN.but(
        stations=tuple(Plane(id=f"s{n}", name=draw(NAMES), at=draw(LENGTHS)) for n in (1, 2)),
        bores=draw(st.sampled_from(["flooded", "sealed"])),
        ballasts=(
            Ballast(
                id="w1",
                name=draw(NAMES),
                mass=draw(MASSES),
                diameter=draw(SIZES),
                beside=draw(st.none() | DIRECTIONS),
                **fixed,
            ),
        ),
        floats=(
            Float(
                id="f1",
                name="f",
                foam="tube",
                length=draw(SIZES),
                beside=draw(st.none() | DIRECTIONS),
                **fixed,
            ),
        ),
        tether=draw(st.none() | st.just(RUN.tether)),
        notes=draw(TEXTS),
    )
    brief = Brief(
        size_limit=draw(st.none() | st.tuples(SIZES, SIZES, SIZES)),
        spending_limit=draw(st.none() | MONEY),
        water=Water(temperature=draw(st.floats(0, 40))),
        thresholds=Thresholds(bg_least=draw(st.floats(0, 1))),
    )
    return Design(
        title=draw(NAMES),
        team=draw(st.text(max_size=20)),
        units=draw(UNITS),
        notes=draw(TEXTS),
        brief=brief,
        stock=stock,
        supplies=draw(st.sampled_from([SUPPLIES])),
        arrangements=(run, *draw(st.sampled_from([(), (run.but(id="run2"),)]))),
    )
