"""For each finding of the coach a design that shows it and one beside it that is silent.

The numbers that the sentence must name stand beside it, worked out by hand from the sizes in
``tests.worked``: half-inch pipe of 21.336 mm, hubs of 27.94 mm, 31.75 mm from centre to face.
"""

from dataclasses import dataclass
from typing import Any

from model.design import (
    Attachment,
    Ballast,
    Brief,
    Design,
    Float,
    Mount,
    Opening,
    Stick,
    Supplies,
    Thruster,
)
from tests import worked

HUB, FACE, PIPE = 27.94, 31.75, 21.336
"""[mm]"""


@dataclass(frozen=True)
class Case:
    """A finding: its code, severity and what it is about; a design with it and one without."""

    code: str
    severity: str
    about: tuple[str, str]
    shows: Design
    silent: Design
    words: tuple[str, ...]


def box(**items: Any) -> Design:
    """A box of 400 x 300 x 200 mm between joint centres, with openings high and low."""
    holes = (
        Opening(id="vent", name="vent", bar="b1", face="+z"),
        Opening(id="drain", name="drain", bar="b0", face="-z"),
    )
    return worked.design(worked.box(**{"openings": holes, **items}))


def ruled(design: Design, **rules: Any) -> Design:
    """A design under some rules."""
    return design.but(brief=Brief(**rules))


def with_fitting(design: Design, joint: str, fitting: str | None) -> Design:
    """A design with a fitting picked for a joint."""
    joints = tuple(j.but(fitting=fitting) if j.id == joint else j for j in design.arrangement.joints)
    return design.arranged(joints=joints)


def thruster(**changes: Any) -> Thruster:
    """A motor that pushes ahead, on a low bar to starboard."""
    values = {"bar": "b0", "motor": "motor", "mount": "ties", "offset": (0, 0.05, 0), **changes}
    return Thruster(**{"id": "t", "name": "port motor", **values})


def hole(**changes: Any) -> Opening:
    """A hole in the upper side of a top bar."""
    return Opening(**{"id": "o", "name": "hole", "bar": "b1", "at": 0.3, **changes})


def foam(**changes: Any) -> Float:
    """A piece of foam tube on the top bar to starboard."""
    return Float(
        **{"id": "f", "name": "noodle piece", "foam": "noodle", "bar": "b1", "length": 0.1, **changes}
    )


def heavier(density: float) -> Supplies:
    """A foam of a density [kg/m3], and one that floats."""
    noodle = worked.SUPPLIES.foams[0]
    foams = (noodle.but(density=density), noodle.but(id="light", name="light foam"))
    return worked.SUPPLIES.but(foams=foams)


def chain(*x: float, **more: Any) -> Design:
    """Bars end to end between stations [m], capped at both ends."""
    ends = [((n, 0, 0), (n + 1, 0, 0)) for n in range(len(x) - 1)]
    last = worked.name((len(x) - 1, 0, 0))
    capped = with_fitting(worked.design(worked.arrangement(x, (0.0,), (0.0,), ends), **more), "j000", "cap")
    return with_fitting(capped, last, "cap")


def drilled_tee(mount: str = "ties", **more: Any) -> Design:
    """Two bars in line, drilled above and below, with a tee between them; a motor hangs on one."""
    holes = tuple(
        Opening(id=f"o{bar}{number}", name=f"hole {bar}{number}", bar=bar, at=at, face=face)
        for bar, at in (("b0", 0.3), ("b1", 0.7))
        for number, face in enumerate(("+z", "-z"))
    )
    stub = Mount(id="stub", name="a stub", method="stub", mass=0.02, mass_in_water=0.01)
    goods = worked.SUPPLIES.but(mounts=(*worked.SUPPLIES.mounts, stub))
    design = chain(0.0, 0.2, 0.4, stock=worked.stock("cap", "tee")).but(supplies=goods)
    return design.arranged(**{"openings": holes, "thrusters": (thruster(mount=mount),), **more})


def two_boxes(apart: bool) -> Design:
    """A flat rectangle with two bars that stand apart from it, or hang on it."""
    loose = [((0, 0, 1), (1, 0, 1)), ((1, 0, 1), (1, 1, 1))]
    joined = [] if apart else [((0, 0, 0), (0, 0, 1))]
    ends = [*worked.FLAT, *loose, *joined]
    return worked.design(worked.arrangement((-0.2, 0.0, 0.2), (-0.15, 0.15), (0.0, 0.2), ends))


def slanting(x: float, y: float) -> Design:
    """A bar that slants by x and y [m] between two that lie fore and aft."""
    ends = [((0, 0, 0), (1, 0, 0)), ((1, 0, 0), (2, 1, 0)), ((2, 1, 0), (3, 1, 0))]
    return worked.design(worked.arrangement((-0.3, 0.0, x, 0.6), (0.0, y), (0.0,), ends))


def in_line(*overlap: tuple[int, int]) -> Design:
    """Bars between joints in one line that slopes at 45 degrees."""
    ends = [((a, a, 0), (b, b, 0)) for a, b in overlap]
    places = (0.0, 0.2, 0.4, 0.6)
    return worked.design(worked.arrangement(places, places, (0.0,), ends))


def mixed(brief: Brief) -> Design:
    """A box with one bar of another material."""
    goods = worked.stock(pipes=(worked.pipe(), worked.pipe("grey", material="ABS")))
    run = worked.box()
    bars = tuple(bar.but(pipe="grey" if bar.id == "b0" else None) for bar in run.bars)
    return worked.design(run.but(bars=bars), stock=goods, brief=brief)


def gear(**changes: Any) -> Attachment:
    """A probe that reaches 50 mm ahead of the hub of the low forward cross bar."""
    values = {"bar": "b6", "offset": (0.05, 0, 0), "size": (0.06, 0.02, 0.02), **changes}
    return Attachment(**{"id": "p", "name": "probe", "mass": 0.02, "mass_in_water": 0.01, **values})


def weighted(*, counts: bool) -> Design:
    """A box with a weight that costs 30.00, against the limit or not."""
    return box(ballasts=(Ballast(id="w", name="w", bar="b0", mass=0.1, price=30.0, counts=counts),))


CASES = (
    Case(
        "frame.bars-none",
        "must",
        ("design", ""),
        worked.design(worked.arrangement((0.0,), (0.0,), (0.0,), [])),
        box(),
        ("no frame yet",),
    ),
    Case(
        "frame.end-loose",
        "must",
        ("joint", "j100"),
        with_fitting(chain(0.0, 0.2), "j100", None),
        chain(0.0, 0.2),
        ("bar 0 ends at j100",),
    ),
    Case(
        "frame.groups-apart", "must", ("joint", "j001"), two_boxes(apart=True), two_boxes(apart=False),
        ("in 2 pieces", "j001, j101 and j111"),
    ),
    Case(
        "frame.joints-close", "must", ("bar", "b0"), chain(0.0, 0.06, 0.3), chain(0.0, 2 * FACE / 1000, 0.3),
        ("j000 and j100 are 60 mm apart", "need 63.5 mm", "3.5 mm further"),
    ),
    Case(
        "frame.joints-together", "must", ("bar", "b0"), chain(0.0, 0.0, 0.3), chain(0.0, 0.1, 0.3),
        ("j000 and j100 are in the same place",),
    ),
    Case(
        "frame.bar-crooked", "must", ("bar", "b1"), slanting(0.3, 0.2), slanting(0.3, 0.3),
        ("bar 1 runs neither",),
    ),
    Case(
        "frame.bars-overlap", "must", ("bar", "b1"),
        in_line((0, 1), (0, 2), (2, 3)), in_line((0, 1), (1, 2), (2, 3)),
        ("bar 0 and bar 1",),
    ),
    Case(
        "fitting.joint-unmatched", "must", ("joint", "j000"),
        box().but(stock=worked.stock("elbow", "tee", "cross")), box(),
        ("j000, where bars leave ahead, to port and up",),
    ),
    Case(
        "fitting.pick-wrong", "must", ("joint", "j000"),
        with_fitting(box(), "j000", "tee"), with_fitting(box(), "j000", "corner"),
        ("The tee picked for j000", "ahead, to port and up"),
    ),
    Case(
        "fitting.socket-spare", "tip", ("joint", "j100"), drilled_tee(), chain(0.0, 0.2, 0.4),
        ("The tee at j100",),
    ),
    Case(  # without the holes the socket is the only way in and out
        "fitting.socket-spare", "tip", ("joint", "j100"), drilled_tee(), drilled_tee(openings=()),
        ("The tee at j100 has an empty socket to port",),
    ),
    Case(
        "fitting.socket-spare", "tip", ("joint", "j100"), drilled_tee("ties"), drilled_tee("stub"),
        ("The tee at j100 has an empty socket to port",),
    ),
    Case(
        "fitting.socket-spare", "tip", ("joint", "j100"),
        drilled_tee(bores="sealed", openings=()), chain(0.0, 0.2, 0.4).arranged(bores="sealed"),
        ("The tee at j100",),
    ),
    Case(
        "stock.bar-long", "must", ("bar", "b0"),
        box().but(stock=worked.stock(pipes=(worked.pipe(sticks=(Stick(length=0.36),)),))),
        box().but(stock=worked.stock(pipes=(worked.pipe(sticks=(Stick(length=0.3619),)),))),
        ("bar 0 needs 361.9 mm", "longest on sale is 360 mm"),  # 400 - 63.5 + 25.4
    ),
    Case(
        "material.pipe-disallowed", "must", ("pipe", "grey"),
        mixed(Brief(materials=("pvc",))), mixed(Brief(materials=("PVC", "abs"))),
        ("grey is ABS", "allows only pvc"),
    ),
    Case(
        "size.limit-over", "must", ("axis", "y"),
        ruled(box(), size_limit=(1.0, 0.3, 1.0)), ruled(box(), size_limit=(1.0, 0.32794, 1.0)),
        ("327.9 mm wide, 27.9 mm over the limit of 300 mm", "j010 sticks out to port", "j000 to starboard"),
    ),
    Case(
        "size.limit-over", "must", ("axis", "x"),
        ruled(box(attachments=(gear(),)), size_limit=(0.45, 1.0, 1.0)),
        ruled(box(attachments=(gear(size=(0.01, 0.02, 0.02)),)), size_limit=(0.47, 1.0, 1.0)),
        ("494 mm long, 44 mm over the limit of 450 mm", "probe sticks out ahead"),  # 200 + 13.97 + 200 + 80
    ),
    Case(
        "size.limit-over", "must", ("axis", "z"),
        ruled(box(floats=(foam(),)), size_limit=(1.0, 1.0, 0.24)),
        ruled(box(floats=(foam(),)), size_limit=(1.0, 1.0, 0.25)),
        ("246.1 mm high, 6.1 mm over", "noodle piece sticks out at the top"),  # 200 + 13.97 + 64.22 / 2
    ),
    Case(
        "thruster.mount-missing", "must", ("thruster", "t"),
        box(thrusters=(thruster(mount=None),)), box(thrusters=(thruster(),)),
        ("port motor has nothing that holds it",),
    ),
    Case(
        "thruster.move-missing", "must", ("move", "up"),
        ruled(box(thrusters=(thruster(),)), moves=("ahead", "up")),
        ruled(box(thrusters=(thruster(), thruster(id="u", to="+z"))), moves=("ahead", "up")),
        ("vehicle to climb",),
    ),
    Case(
        "float.bar-short", "must", ("float", "f"),
        box(floats=(foam(length=0.34),)), box(floats=(foam(length=0.3365),)),
        ("noodle piece is 340 mm long", "bar 1 has only 336.5 mm"),  # 400 - 2 x 31.75
    ),
    Case(
        "float.end-over", "must", ("float", "f"),
        box(floats=(foam(at=0.1, length=0.0995),)), box(floats=(foam(at=0.21),)),
        ("reaches 41.5 mm past the pipe that shows on bar 1",),  # 31.75 - (40 - 49.75)
    ),
    Case(
        "float.foam-heavy", "should", ("float", "f"),
        box(floats=(foam(),)).but(supplies=heavier(1000.0)),
        box(floats=(foam(),)).but(supplies=heavier(990.0)),
        ("noodle weighs 1000 kg/m3 and the water 997 kg/m3", "sinks"),
    ),
    Case(
        "stock.push-deep", "should", ("pipe", "half"),
        box().but(stock=worked.stock(pipes=(worked.pipe(insertion=0.0176),))),
        box().but(stock=worked.stock(pipes=(worked.pipe(insertion=0.0174),))),
        ("half is set to go 17.6 mm into each fitting", "only 17.5 mm deep"),  # 0.688 in
    ),
    Case(
        "opening.none-flooded", "must", ("design", ""),
        box(openings=()), box(),
        ("no hole lets the water in",),
    ),
    Case(
        "opening.in-sealed", "must", ("opening", "o"),
        box(bores="sealed", openings=(hole(),)), box(openings=(hole(),)),
        ("hole is a hole in a frame that is sealed",),
    ),
    Case(
        "opening.socket-open", "must", ("joint", "j100"),
        chain(0.0, 0.2, 0.4, stock=worked.stock("cap", "tee")).arranged(bores="sealed"),
        chain(0.0, 0.2, 0.4).arranged(bores="sealed"),
        ("j100 has an empty socket",),
    ),
    Case(
        "opening.hole-small", "tip", ("opening", "o"),
        box(openings=(hole(diameter=0.0055),)), box(openings=(hole(diameter=0.006),)),
        ("hole is 5.5 mm wide", "under 6 mm"),
    ),
    Case(
        "opening.hole-wide", "must", ("opening", "o"),
        box(openings=(hole(diameter=PIPE / 1000),)), box(openings=(hole(diameter=0.006),)),
        ("hole is 21.3 mm wide, and its pipe only 21.3 mm",),
    ),
    Case(
        "money.limit-over", "must", ("design", ""),
        ruled(weighted(counts=True), spending_limit=25.0, currency="shells"),
        ruled(weighted(counts=False), spending_limit=25.0, currency="shells"),
        ("over the limit of 25.00 shells",),
    ),
)  # fmt: skip
"""The findings about what is built and bought; those about numbers of balance stand in the limits' tests."""
