"""Plans and odd numbers strewn over a design: wires, plugs, loads, pieces in the box, odd values."""

from collections.abc import Iterator
from random import Random
from typing import Any

from pydantic import ValidationError

from model.design import Design, Opening, Record, Thruster
from model.design.brief import Leg, Load
from model.design.equipment import Plug, Pull, TieHole
from model.design.joining import Pin
from model.design.on_hand import HeldFittings, HeldPipe, OnHand
from model.design.own_parts import DryJoint, MeasuredFitting, MeasuredPipe, OwnParts
from model.design.wiring import Battery, Branch, Power

NUMBERS = (-0.3, -0.01, 0.0, 1e-9, 0.001, 0.006, 0.02, 0.1, 0.5, 1.0, 3.0, 12.0, 40.0, 900.0, 7850.0, 1e5)
ATTITUDES = ("level", "nose up 30", "nose down 30", "port side up 45", "starboard side up 45", "upside down")


def strewn(dice: Random, design: Design, count: int) -> Design:
    """The design with some of its plans filled in and some of its numbers changed, where that is valid."""
    for _ in range(count):
        change = dice.choice(CHANGES)
        try:
            design = change(dice, design)
        except (ValidationError, IndexError):
            continue
    return design


def _number(dice: Random, design: Design) -> Design:
    """Any one number of the design."""
    paths = list(_numbers(design, ()))
    return _set(design, dice.choice(paths), dice.choice(NUMBERS))


def _numbers(record: Record, path: tuple[Any, ...]) -> Iterator[tuple[Any, ...]]:
    for name in type(record).model_fields:
        value = getattr(record, name)
        if isinstance(value, Record):
            yield from _numbers(value, (*path, name))
        elif isinstance(value, tuple):
            for number, item in enumerate(value):
                if isinstance(item, Record):
                    yield from _numbers(item, (*path, name, number))
        elif isinstance(value, float):
            yield (*path, name)


def _set(record: Any, path: tuple[Any, ...], value: float) -> Any:
    """The record with the value at the end of a path changed, and checked from there up."""
    if not path:
        return value
    if isinstance(record, tuple):
        changed = _set(record[path[0]], path[1:], value)
        return (*record[: path[0]], changed, *record[path[0] + 1 :])
    return record.but(**{path[0]: _set(getattr(record, path[0]), path[1:], value)})


def _wires(dice: Random, design: Design) -> Design:
    power = Power(
        battery=Battery(volts=dice.choice((6.0, 12.0, 24.0)), resistance=dice.choice((0.0, 0.03))),
        main_fuse=dice.choice((None, 3.0, 25.0)),
        feed=dice.choice(("pair each", "one pair")),
        core_area=dice.choice((0.1, 0.75)),
        length=dice.choice((0.0, 15.0)),
        plugs=dice.choice((0, 3)),
        strain_relief=dice.random() < 0.5,
        soak_hours=dice.choice((0.0, 24.0)),
    )
    return design.arranged(power=power)


def _thrusters(dice: Random, design: Design) -> Design:
    def planned(item: Thruster) -> Thruster:
        holes = tuple(
            TieHole(along=dice.choice((-0.02, 0.02)), face=dice.choice(("+z", "+y"))) for _ in range(2)
        )
        return item.but(
            pull=dice.choice(
                (None, Pull(ahead=2.0), Pull(ahead=0.0, astern=0.0, amps=1.0), Pull(ahead=5.0, amps=3.0))
            ),
            hand=dice.choice((None, "right", "left")),
            guard=dice.random() < 0.5,
            tie_holes=dice.choice(((), holes)),
            branch=Branch(fuse=dice.choice((None, 2.0, 30.0)), core_area=dice.choice((None, 0.22))),
        )

    return design.arranged(thrusters=tuple(planned(item) for item in design.arrangement.thrusters))


def _motors(dice: Random, design: Design) -> Design:
    amps = dice.choice((None, 0.8, 2.0))
    stalled = dice.choice((None, 5.0))
    watts = dice.choice((None, 10.0))
    motors = tuple(
        motor.but(amps=amps, stalled_amps=stalled, shaft_watts=watts) for motor in design.supplies.motors
    )
    return design.but(supplies=design.supplies.but(motors=motors))


def _bores(dice: Random, design: Design) -> Design:
    bars = [bar.id for bar in design.arrangement.bars]
    plugs = tuple(
        Plug(id=f"plug{n}", name=f"plug {n}", bar=dice.choice(bars), at=dice.choice((0.0, 0.3, 0.5, 1.0)))
        for n in range(dice.randint(1, 3))
    )
    faces = ("+z", "-z", "+y", "+x")
    holes = tuple(
        Opening(
            id=f"bored{n}",
            name=f"bored {n}",
            bar=dice.choice(bars),
            at=dice.random(),
            face=dice.choice(faces),
        )
        for n in range(dice.randint(1, 4))
    )
    return design.arranged(plugs=plugs, openings=(*design.arrangement.openings[:2], *holes))


def _joining(dice: Random, design: Design) -> Design:
    kinds = ("dry", "pinned", "cemented")
    joints = tuple(joint.but(joining=dice.choice((None, *kinds))) for joint in design.arrangement.joints)
    stock = design.stock.but(pin=Pin(each_end=dice.randint(1, 3), price=dice.choice((0.0, 0.2))))
    return design.but(stock=stock).arranged(joints=joints, joining=dice.choice(kinds))


def _sawn(dice: Random, design: Design) -> Design:
    bars = list(design.arrangement.bars)
    for _ in range(2):
        number = dice.randrange(len(bars)) if bars else 0
        bars[number] = bars[number].but(sawn=dice.choice((0.001, 0.08, 0.2, 0.6)))
    return design.arranged(bars=tuple(bars))


def _box(dice: Random, design: Design) -> Design:
    fittings = tuple(
        HeldFittings(fitting=item.id, count=dice.randint(0, 9)) for item in design.stock.fittings[::2]
    )
    pipe = design.stock.pipes[-1].id
    pieces = tuple(HeldPipe(pipe=pipe, length=dice.choice((0.1, 0.5, 2.0)), count=n) for n in range(3))
    return design.but(
        stock=design.stock.but(on_hand=OnHand(fittings=fittings, pieces=pieces, only=dice.random() < 0.5))
    )


def _ruler(dice: Random, design: Design) -> Design:
    item = dice.choice(design.stock.fittings)
    joint = DryJoint(fitting=item.id, first=0.1, second=0.1, overall=dice.choice((0.1, 0.23, 0.5)))
    pipe = MeasuredPipe(
        pipe=item.sockets[0].pipe,
        hub=dice.choice((None, 0.001, 0.03)),
        socket_depth=dice.choice((None, 0.002, 0.019)),
        dry_joint=dice.choice((None, joint)),
    )
    measured = MeasuredFitting(
        fitting=item.id,
        face_to_face=dice.choice((None, 0.001, 0.065)),
        face_to_far_side=dice.choice((None, 0.001, 0.047)),
    )
    return design.but(stock=design.stock.but(own=OwnParts(pipes=(pipe,), fittings=(measured,))))


def _task(dice: Random, design: Design) -> Design:
    course = tuple(
        Leg(
            ahead=dice.choice((0.0, 4.0)),
            turn=dice.choice((0.0, 90.0)),
            climb=dice.choice((-1.0, 0.0, 1.0)),
            wait=2.0,
        )
        for _ in range(dice.randint(0, 3))
    )
    brief = design.brief.but(
        hoop=dice.choice((None, 0.1, 0.6)),
        gate=dice.choice((None, (0.05, 0.3), (1.0, 1.0))),
        load=dice.choice(
            (None, Load(mass=0.0), Load(mass=0.4), Load(mass=2.0, weighed="air", density=900.0))
        ),
        supply_limit=dice.choice((None, 12.0)),
        course=course,
        attitudes=tuple(dice.sample(ATTITUDES, dice.randint(0, 3))),
    )
    return design.but(brief=brief)


CHANGES = (
    _number, _number, _number, _wires, _thrusters, _motors, _bores, _joining, _sawn, _box, _ruler, _task
)  # fmt: skip
