"""Designs built from raw numbers in inches or mm, small enough to be worked out by hand."""

from typing import Any

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

INCH = 0.0254
Spot = tuple[int, int, int]
Ends = list[tuple[Spot, Spot]]
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


def pipe(name: str = "half", **changes: Any) -> Pipe:
    """Half-inch Schedule 40: 0.840 in outside (ASTM D1785), average bore 0.602 in, pushed in 1/2 in."""
    values: dict[str, Any] = {
        "material": "PVC",
        "outside_diameter": 0.84 * INCH,
        "bore": 0.602 * INCH,
        "insertion": 0.5 * INCH,
        "sticks": (Stick(length=120 * INCH, price=4.0),),
    }
    return Pipe(id=name, name=name, **{**values, **changes})


def fitting(
    shape: str, *, stop: float = 0.562, branch: float | None = None, depth: float = 0.688, **more: Any
) -> Fitting:
    """A half-inch fitting: centre to stop on the run and on a tee's branch, socket depth [in].

    With 0.562 + 0.688 = 1.25 in from centre to face and a hub of 1.1 in, an elbow measures 1.8 in
    from a face to its far side and a tee 2.5 in from face to face (common practice, no source).
    """
    ways = SHAPES[shape]
    opposite = str.maketrans("+-", "-+")
    sockets = tuple(
        Socket(
            to=to,
            laying_length=(stop if branch is None or to.translate(opposite) in ways else branch) * INCH,
            depth=depth * INCH,
            pipe=more.get("pipe", "half"),
        )
        for to in ways
    )
    values = {"id": shape.replace(" ", "-"), "name": shape, "hub": 1.1 * INCH, "mass": 0.025, **more}
    values.pop("pipe", None)
    return Fitting(shape=shape, sockets=sockets, **values)


def stock(*shapes: str, **changes: Any) -> Stock:
    """Half-inch pipe and some fittings; all there are if none is named."""
    values = {"pipes": (pipe(),), "fittings": tuple(fitting(shape) for shape in shapes or SHAPES), **changes}
    return Stock(name="worked by hand", **values)


SUPPLIES = Supplies(
    motors=(
        Motor(
            id="motor",
            name="motor",
            mass=0.12,
            mass_in_water=0.07,
            body_diameter=0.03,
            body_length=0.06,
            propeller_diameter=0.05,
            thrust_ahead=3.0,
            thrust_astern=2.0,
            price=9.0,
        ),
    ),
    mounts=(Mount(id="ties", name="two ties", mass=0.004, mass_in_water=0.001, price=0.5),),
    foams=(
        Foam(id="noodle", name="noodle", outside_diameter=0.0635, hole=0.01905, sold_length=1.5, price=3.0),
    ),
)


def arrangement(
    x: tuple[float, ...], y: tuple[float, ...], z: tuple[float, ...], ends: Ends, **more: Any
) -> Arrangement:
    """Bars between joints given by the numbers of their planes; plane positions in m."""
    lines = [
        tuple(Plane(id=f"{axis}{k}", name=f"{axis}{k}", at=at) for k, at in enumerate(line))
        for axis, line in zip("xyz", (x, y, z), strict=True)
    ]
    spots = list(dict.fromkeys(spot for pair in ends for spot in pair))
    joints = tuple(
        Joint(id=name(s), name=name(s), station=f"x{s[0]}", side=f"y{s[1]}", level=f"z{s[2]}") for s in spots
    )
    bars = tuple(
        Bar(id=f"b{n}", name=f"bar {n}", start=name(a), end=name(b)) for n, (a, b) in enumerate(ends)
    )
    return Arrangement(
        id="run",
        name="run",
        stations=lines[0],
        sides=lines[1],
        levels=lines[2],
        **{"joints": joints, "bars": bars, **more},
    )


def name(spot: Spot) -> str:
    """The id and name of the joint on three planes."""
    return "j" + "".join(map(str, spot))


def design(run: Arrangement, **changes: Any) -> Design:
    """A design with one arrangement, half-inch pipe and every fitting there is."""
    values = {"title": "worked", "stock": stock(), "supplies": SUPPLIES, **changes}
    return Design(arrangements=(run,), **values)


FLAT: Ends = [
    ((0, 0, 0), (1, 0, 0)),
    ((1, 0, 0), (2, 0, 0)),
    ((2, 0, 0), (2, 1, 0)),
    ((2, 1, 0), (1, 1, 0)),
    ((1, 1, 0), (0, 1, 0)),
    ((0, 1, 0), (0, 0, 0)),
]
"""A flat rectangle with a joint in the middle of each long side."""
BOX: Ends = [
    *[((0, y, z), (1, y, z)) for y in (0, 1) for z in (0, 1)],
    *[((x, 0, z), (x, 1, z)) for x in (0, 1) for z in (0, 1)],
    *[((x, y, 0), (x, y, 1)) for x in (0, 1) for y in (0, 1)],
]
"""The twelve edges of a box: b0 to b3 fore and aft, b4 to b7 across, b8 to b11 upright.

Of the fore-and-aft bars b0 and b1 are to starboard, b1 and b3 at the top.
"""


def box(length: float = 0.4, width: float = 0.3, height: float = 0.2, **more: Any) -> Arrangement:
    """A box of twelve bars about the zero point [m]."""
    x, y, z = ((-size / 2, size / 2) for size in (length, width, height))
    return arrangement(x, y, z, BOX, **more)
