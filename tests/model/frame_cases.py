"""Designs that show the findings of sawn pieces, the box, passages and shared places, and some beside them.

Worked by hand from the sizes in ``tests.worked``: half-inch pipe of 21.336 mm pushed in 12.7 mm, hubs of
27.94 mm, 31.75 mm from centre to face, sockets 17.4752 mm deep.  A bar is cut 38.1 mm shorter than it is
from centre to centre: 2 x 31.75 - 2 x 12.7.
"""

from typing import Any

from model.design import (
    Attachment,
    Ballast,
    Design,
    Float,
    HeldFittings,
    HeldPipe,
    MeasuredFitting,
    OnHand,
    OwnParts,
    Thruster,
)
from tests import worked
from tests.model.coach_cases import Case, box, ruled


def sawn(**lengths: float) -> Design:
    """The box of 400 x 300 x 200 mm with some of its bars sawn already [m]."""
    design = box()
    bars = tuple(bar.but(sawn=lengths.get(bar.id)) for bar in design.arrangement.bars)
    return design.arranged(bars=bars)


def boxed(run: Any = None, **held: Any) -> Design:
    """A box with something on hand."""
    design = worked.design(run or worked.box())
    return design.but(stock=design.stock.but(on_hand=OnHand(**held)))


def slack(height: float) -> Design:
    """A box whose pipes go only 5 mm into their sockets, with uprights of some height [m]."""
    return worked.design(worked.box(height=height), stock=worked.stock(pipes=(worked.pipe(insertion=0.005),)))


def measured(far_side: float) -> Design:
    """A box whose team measured its corners from face to far side [m]."""
    design = worked.design(worked.box())
    own = OwnParts(fittings=(MeasuredFitting(fitting="corner", face_to_far_side=far_side),))
    return design.but(stock=design.stock.but(own=own))


RIM = [
    *[((0, y, 0), (1, y, 0)) for y in (0, 2)],
    *[((1, y, 0), (2, y, 0)) for y in (0, 2)],
    *[((x, 0, 0), (x, 1, 0)) for x in (0, 2)],
    *[((x, 1, 0), (x, 2, 0)) for x in (0, 2)],
]
"""A flat rectangle with a joint in the middle of each side."""
CROSSING = [((0, 1, 0), (2, 1, 0)), ((1, 0, 0), (1, 2, 0))]
CROSS = [
    *[((0, 1, 0), (1, 1, 0)), ((1, 1, 0), (2, 1, 0))],
    *[((1, 0, 0), (1, 1, 0)), ((1, 1, 0), (1, 2, 0))],
]


def flat(ends: list[Any]) -> Design:
    """A rectangle of 400 x 300 mm with some bars in it."""
    return worked.design(worked.arrangement((-0.2, 0.0, 0.2), (-0.15, 0.0, 0.15), (0.0,), ends))


def stations(*x: float) -> Design:
    """A bar between two stations, and one across at a third [m]."""
    ends = [((0, 0, 0), (1, 0, 0)), ((2, 0, 0), (2, 1, 0))]
    return worked.design(worked.arrangement(x, (0.0, 0.2), (0.0,), ends))


def threaded(at: float) -> Design:
    """Two pieces of foam of 100 mm on one bar, the second at a share of the way along it."""
    pieces = [
        Float(id=f"f{n}", name=f"foam {n}", bar="b1", foam="noodle", length=0.1, at=share)
        for n, share in ((1, 0.5), (2, at))
    ]
    return box(floats=tuple(pieces))


def probe(up: float) -> Design:
    """A block of 60 mm some way above the low bar to starboard [m]."""
    size = (0.06, 0.06, 0.06)
    item = Attachment(
        id="p", name="probe", bar="b0", offset=(0, 0, up), size=size, mass=0.1, mass_in_water=0.05
    )
    return box(attachments=(item,))


def motor(out: float) -> Design:
    """A motor of 30 mm beside its bar [m]."""
    item = Thruster(id="t", name="port motor", bar="b3", motor="motor", mount="ties", offset=(0, out, 0))
    return box(thrusters=(item,))


def rod(side: str) -> Design:
    """A weight on the low bar to starboard, 60 mm from which another bar runs below it."""
    item = Ballast(id="w", name="rod", bar="b0", mass=0.5, beside=side, diameter=0.08)
    run = worked.box(height=0.06)
    return worked.design(run.but(ballasts=(item,)))


FULL = (
    HeldFittings(fitting="corner", count=8),
    *(HeldPipe(pipe="half", length=length, count=4) for length in (0.3619, 0.2619, 0.1619)),
)
CASES = (
    Case(
        "frame.sawn-short", "must", ("bar", "b0"), sawn(b0=0.02), sawn(b0=0.36), ("sawn to 20 mm", "25.4 mm")
    ),
    Case(
        "frame.sawn-misfit",
        "should",
        ("bar", "b0"),
        sawn(b0=0.36, b1=0.35),
        sawn(b0=0.36, b1=0.36, b4=0.2),
        ("bar 0 is sawn to 360 mm, but should be 355 mm there, 5 mm off: bar 1",),
    ),
    Case(
        "frame.sawn-misfit",
        "tip",
        ("bar", "b0"),
        sawn(b0=0.36, b1=0.356),
        sawn(b0=0.36, b1=0.358),
        ("2 mm off",),
    ),
    Case(
        "frame.plane-held",
        "tip",
        ("station", "x0"),
        sawn(b0=0.3559),
        sawn(b0=0.3619),
        ("x0 is drawn 200 mm aft", "hold it 197 mm aft"),
    ),
    Case(
        "frame.piece-slips",
        "should",
        ("bar", "b8"),
        slack(0.0685),
        slack(0.075),
        ("only 15 mm", "17.5 mm deep"),
    ),
    Case(
        "stock.measure-wrong",
        "should",
        ("fitting", "corner"),
        measured(0.02),
        measured(0.046),
        ("The measurements of the corner",),
    ),
    Case(
        "stock.box-short",
        "must",
        ("design", ""),
        boxed(only=True, fittings=(HeldFittings(fitting="corner", count=5),)),
        boxed(only=True, fittings=FULL[:1], pieces=FULL[1:]),
        ("3 x corner", "3142.8 mm of half in 12 pieces"),
    ),
    Case(
        "stock.stick-short",
        "should",
        ("pipe", "half"),
        boxed(worked.box(height=0.12), pieces=(HeldPipe(pipe="half", length=0.12),)),
        boxed(worked.box(height=0.12), pieces=(HeldPipe(pipe="half", length=0.15),)),
        ("81.9 mm is sawn off the 120 mm stick", "only 120 mm", "under 150 mm"),
    ),
    Case(
        "size.limit-near",
        "tip",
        ("axis", "x"),
        ruled(box(), size_limit=(0.43, 1, 1)),
        ruled(box(), size_limit=(0.434, 1, 1)),
        ("2.1 mm inside its limit of 430 mm", "4.5 mm off (7.6 mm at worst)", "chance of 9 %"),
    ),
    Case(
        "size.hoop-tight",
        "must",
        ("hoop", ""),
        ruled(box(), hoop=0.38),
        ruled(box(), hoop=0.3885),
        ("380 mm wide, but the vehicle needs 388.5 mm: 8.5 mm",),
    ),
    Case(
        "size.gate-tight",
        "must",
        ("gate", "y"),
        ruled(box(), gate=(0.32, 0.3)),
        ruled(box(), gate=(0.328, 0.228)),
        ("320 mm wide, but the vehicle is 327.9 mm: 7.9 mm",),
    ),
    Case(
        "place.solids-shared",
        "must",
        ("bar", "b9"),
        flat([*RIM, *CROSSING]),
        flat([*RIM, *CROSS]),
        ("bar 9 is in the same place as bar 8",),
    ),
    Case(
        "place.solids-shared", "must", ("thruster", "t"), motor(0.02), motor(0.026), ("port motor", "bar 3")
    ),
    Case("place.solids-shared", "must", ("ballast", "w"), rod("+z"), rod("-z"), ("rod", "bar 1")),
    Case(
        "place.foam-squeezed",
        "should",
        ("float", "f2"),
        threaded(0.7),
        threaded(0.74),
        ("foam 2 is in the same place as foam 1", "3 mm"),
    ),
    Case("place.part-shared", "should", ("attachment", "p"), probe(0.2), probe(0.1), ("probe", "bar 1")),
    Case(
        "frame.joints-together",
        "must",
        ("joint", "j200"),
        worked.design(
            worked.arrangement(
                (0.0, 0.2, 0.2), (0.0, 0.2), (0.0,), [((0, 0, 0), (1, 0, 0)), ((2, 0, 0), (2, 1, 0))]
            )
        ),
        worked.design(
            worked.arrangement(
                (0.0, 0.2, 0.25), (0.0, 0.2), (0.0,), [((0, 0, 0), (1, 0, 0)), ((2, 0, 0), (2, 1, 0))]
            )
        ),
        ("j100 and j200 are in the same place",),
    ),
)
NO_REMEDY = {("frame.joints-together", "j200")}
"""Findings that only a team can decide what to do about: by code and id."""
