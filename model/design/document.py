"""The document: what the team decided, and nothing that could be worked out from it."""

from collections import Counter
from collections.abc import Iterable, Iterator
from typing import Annotated, Any, Self

from pydantic import Field, model_validator

from model.design.arrangement import Arrangement, Joint, Plane
from model.design.brief import Brief
from model.design.equipment import OnBar
from model.design.evidence import Evidence
from model.design.measures import Name, Text
from model.design.record import Record, untouched
from model.design.stock import Stock
from model.design.supplies import Supplies
from model.units import Unit

FORMAT = 1
BARS_MOST = 2000


class Design(Record):
    """A whole design.  Frozen: an edit makes a new one.

    Raises:
        pydantic.ValidationError: a value is not allowed, or something refers to what is not there.
    """

    format: Annotated[int, Field(ge=1)] = FORMAT
    title: Name
    team: Annotated[str, Field(max_length=80)] = ""
    units: Unit = "mm"
    """The unit that lengths are written in, on screen and in the file."""
    notes: Text = ""
    """Anything to remember; comments in a file do not survive a save, this does."""
    brief: Brief = untouched(Brief)
    stock: Stock
    supplies: Supplies = untouched(Supplies)
    arrangements: Annotated[tuple[Arrangement, ...], Field(min_length=1)]
    evidence: Evidence = untouched(Evidence)
    """What was bought, built, measured, tried and decided; it stands beside the decisions."""

    @property
    def arrangement(self) -> Arrangement:
        """The arrangement for the first run."""
        return self.arrangements[0]

    def arranged(self, **changes: Any) -> Self:
        """This design with some fields of its first arrangement changed and checked.

        Raises:
            pydantic.ValidationError: a new value is not allowed, or something refers to what is gone.
        """
        return self.but(arrangements=(self.arrangement.but(**changes), *self.arrangements[1:]))

    @model_validator(mode="after")
    def _consistent(self) -> Self:
        for problem in inconsistencies(self):
            raise ValueError(problem)
        return self


def inconsistencies(design: Design) -> Iterator[str]:
    """What is wrong between the pieces of a design, one sentence each; nothing if all is well."""
    pipes = {pipe.id for pipe in design.stock.pipes}
    yield from _repeated("stock.pipes", (pipe.id for pipe in design.stock.pipes))
    yield from _repeated("stock.fittings", (fitting.id for fitting in design.stock.fittings))
    for name, items in _supplies(design).items():
        yield from _repeated(f"supplies.{name}", items)
    for fitting in design.stock.fittings:
        for socket in fitting.sockets:
            if socket.pipe not in pipes:
                yield _missing(f"stock fitting {fitting.id}", "pipe", socket.pipe, pipes)
        yield from _repeated(f"the sockets of stock fitting {fitting.id}", (s.to for s in fitting.sockets))
    yield from _own_problems(design.stock, pipes)
    yield from _repeated("arrangements", (arrangement.id for arrangement in design.arrangements))
    for name in type(design.evidence).model_fields:
        yield from _repeated(f"evidence.{name}", (item.id for item in getattr(design.evidence, name)))
    for arrangement in design.arrangements:
        yield from _frame_problems(arrangement, design)
        yield from _equipment_problems(arrangement, design)


def _own_problems(stock: Stock, pipes: set[str]) -> Iterator[str]:
    """What the team measured and holds must be of the stock."""
    fittings = {fitting.id for fitting in stock.fittings}
    own, held = stock.own, stock.on_hand
    measured = [item.fitting for item in own.fittings]
    measured += [pipe.dry_joint.fitting for pipe in own.pipes if pipe.dry_joint]
    named = (
        ("stock.own", "fitting", measured, fittings),
        ("stock.own", "pipe", [item.pipe for item in own.pipes], pipes),
        ("stock.on_hand", "fitting", [item.fitting for item in held.fittings], fittings),
        ("stock.on_hand", "pipe", [item.pipe for item in held.pieces], pipes),
    )
    for where, kind, ids, known in named:
        for id in ids:
            if id not in known:
                yield _missing(where, kind, id, known)
    yield from _repeated("stock.own.fittings", (item.fitting for item in own.fittings))
    yield from _repeated("stock.own.pipes", (item.pipe for item in own.pipes))
    yield from _repeated("stock.on_hand.fittings", (item.fitting for item in held.fittings))


def _supplies(design: Design) -> dict[str, tuple[str, ...]]:
    supplies = design.supplies
    return {
        "motors": tuple(motor.id for motor in supplies.motors),
        "mounts": tuple(mount.id for mount in supplies.mounts),
        "foams": tuple(foam.id for foam in supplies.foams),
    }


def _frame_problems(arrangement: Arrangement, design: Design) -> Iterator[str]:
    if len(arrangement.bars) > BARS_MOST:
        count = len(arrangement.bars)
        yield f"arrangement {arrangement.id} has {count} bars; at most {BARS_MOST} are allowed"
        return
    planes = [tuple(plane.id for plane in group) for group in plane_groups(arrangement)]
    yield from _repeated("planes", (plane for group in planes for plane in group))
    yield from _repeated("joints", (joint.id for joint in arrangement.joints))
    yield from _repeated("bars", (bar.id for bar in arrangement.bars))
    fittings = {fitting.id for fitting in design.stock.fittings}
    for joint in arrangement.joints:
        for kind, here, known in zip(("station", "side", "level"), joint.planes, planes, strict=True):
            if here not in known:
                yield _missing(f"joint {joint.id}", kind, here, known)
        if joint.fitting is not None and joint.fitting not in fittings:
            yield _missing(f"joint {joint.id}", "fitting", joint.fitting, fittings)
    yield from _shared_places(arrangement.joints)
    yield from _bar_problems(arrangement, {pipe.id for pipe in design.stock.pipes})


def plane_groups(arrangement: Arrangement) -> tuple[tuple[Plane, ...], tuple[Plane, ...], tuple[Plane, ...]]:
    """Stations, sides and levels, in the order x, y, z."""
    return arrangement.stations, arrangement.sides, arrangement.levels


def _shared_places(joints: tuple[Joint, ...]) -> Iterator[str]:
    first: dict[tuple[str, str, str], str] = {}
    for joint in joints:
        other = first.setdefault(joint.planes, joint.id)
        if other != joint.id:
            yield f"joints {other} and {joint.id} lie on the same three planes; one joint is enough there"


def _bar_problems(arrangement: Arrangement, pipes: set[str]) -> Iterator[str]:
    joints = {joint.id for joint in arrangement.joints}
    pairs: dict[frozenset[str], str] = {}
    for bar in arrangement.bars:
        for end in (bar.start, bar.end):
            if end not in joints:
                yield _missing(f"bar {bar.id}", "joint", end, joints)
        if bar.pipe is not None and bar.pipe not in pipes:
            yield _missing(f"bar {bar.id}", "pipe", bar.pipe, pipes)
        if bar.start == bar.end:
            yield f"bar {bar.id} starts and ends at joint {bar.start}; a bar needs two joints"
        other = pairs.setdefault(frozenset((bar.start, bar.end)), bar.id)
        if other != bar.id:
            yield f"bars {other} and {bar.id} join the same two joints; one bar is enough there"


def equipment(arrangement: Arrangement) -> tuple[OnBar, ...]:
    """Everything that is fixed to a bar, in the order in which it is saved."""
    tether = (arrangement.tether,) if arrangement.tether else ()
    return (
        *arrangement.thrusters,
        *arrangement.floats,
        *arrangement.ballasts,
        *arrangement.attachments,
        *tether,
        *arrangement.openings,
        *arrangement.plugs,
    )


def _equipment_problems(arrangement: Arrangement, design: Design) -> Iterator[str]:
    items = equipment(arrangement)
    bars = {bar.id for bar in arrangement.bars}
    yield from _repeated("what is fixed to bars", (item.id for item in items))
    for item in items:
        if item.bar not in bars:
            yield _missing(f"{type(item).__name__.lower()} {item.id}", "bar", item.bar, bars)
    known = _supplies(design)
    for thruster in arrangement.thrusters:
        if thruster.motor not in known["motors"]:
            yield _missing(f"thruster {thruster.id}", "motor", thruster.motor, known["motors"])
        if thruster.mount is not None and thruster.mount not in known["mounts"]:
            yield _missing(f"thruster {thruster.id}", "mount", thruster.mount, known["mounts"])
    for piece in arrangement.floats:
        if piece.foam not in known["foams"]:
            yield _missing(f"float {piece.id}", "foam", piece.foam, known["foams"])


def _repeated(where: str, ids: Iterable[str]) -> Iterator[str]:
    for name, count in Counter(ids).items():
        if count > 1:
            yield f"{where}: the id '{name}' stands {count} times; each must be different"


def _missing(who: str, kind: str, found: str, known: Iterable[str]) -> str:
    shown = sorted(known)
    choices = ", ".join(shown[:8]) + (", ..." if len(shown) > 8 else "")
    expected = f"one of {choices}" if shown else f"a {kind}, but there is none yet"
    return f"{who} refers to the {kind} '{found}', which is not there; expected {expected}"
