"""Edits of what there is to build with: the stock, the supplies, the brief, the units."""

from collections.abc import Iterable
from typing import Any

from model.design.brief import Brief, Water
from model.design.document import Design
from model.design.edits.box import without_mention
from model.design.edits.carry import carried
from model.design.edits.core import (
    Ref,
    changed,
    find,
    fresh_id,
    fresh_name,
    pieces,
    put,
    put_all,
    set_field,
)
from model.design.stock import Fitting, Pipe, Socket, Stick, Stock
from model.design.supplies import Supplies
from model.errors import EditError
from model.units import Unit, usual_length
from model.vectors import direction_text, grid

NEW_STICK = (2000, 120)
"""[mm], [in] A length on sale before the team writes its own."""
WATERS = (
    Water(name="fresh pool", temperature=27.0, salinity=0.5),
    Water(name="salt pool", temperature=27.0, salinity=3.0),
    Water(name="sea", temperature=15.0, salinity=35.0),
)
"""Usual waters to choose from (common practice, no source); a team that measures writes its own."""


def use_stock(design: Design, stock: Stock) -> Design:
    """Another stock; picks of fittings and choices of pipe that it lacks are cleared.

    What the team measured and counted of its own parts is kept as far as it fits: ``left_behind`` says
    what does not.
    """
    stock = carried(design.stock, stock)
    fittings = {fitting.id for fitting in stock.fittings}
    pipes = {pipe.id for pipe in stock.pipes}
    arrangements = tuple(
        changed(
            arrangement,
            joints=tuple(
                j if j.fitting in fittings else changed(j, fitting=None) for j in arrangement.joints
            ),
            bars=tuple(b if b.pipe in pipes else changed(b, pipe=None) for b in arrangement.bars),
        )
        for arrangement in design.arrangements
    )
    result: Design = changed(design, stock=stock, arrangements=arrangements)
    return result


def use_brief(design: Design, brief: Brief) -> Design:
    """Another brief in the place of the present one."""
    return put(design, Ref("brief"), brief)


def use_units(design: Design, units: Unit) -> Design:
    """Lengths shown and saved in mm or in inches; nothing changes its size."""
    return set_field(design, Ref("design"), "units", units)


def add_supplies(design: Design, more: Supplies) -> Design:
    """Motors, mounts and foams of a preset beside those of the team; what is the same is not doubled."""
    for kind in ("motor", "mount", "foam"):
        known = list(pieces(design, kind))
        for piece in getattr(more, f"{kind}s"):
            if piece in known:
                continue
            taken = {other.id for other in known}
            fresh = piece.id if piece.id not in taken else fresh_id(f"{piece.id[:36]}-", taken)
            known.append(changed(piece, id=fresh))
        design = put_all(design, kind, known)
    return design


def add_fitting(design: Design, fitting: Fitting) -> Design:
    """One more kind of fitting in the stock, under an id and a name that nothing there has yet.

    Raises:
        EditError: it takes a pipe that the stock does not hold.
    """
    known = pieces(design, "fitting")
    taken = {other.id for other in known}
    id = fitting.id if fitting.id not in taken else fresh_id(f"{fitting.id[:36]}-", taken)
    name = fresh_name(fitting.name[:72], (other.name for other in known))
    return put_all(design, "fitting", (*known, changed(fitting, id=id, name=name)))


def remove_supply(design: Design, ref: Ref) -> Design:
    """A pipe, fitting, motor, mount or foam taken out of what there is.

    Joints that had picked a fitting, and thrusters that used a mount, go on without it.

    Raises:
        EditError: something needs it, or it is the last pipe.
    """
    record = find(design, ref)
    if ref.kind == "pipe" and len(design.stock.pipes) == 1:
        raise EditError(f"'{record.name}' is the only pipe; a stock needs one")
    users = _users(design, ref)
    if users:
        raise EditError(f"'{record.name}' is in use by {_listed(users)}; change that first")
    design = _without_choice(design, ref)
    if ref.kind in ("fitting", "pipe"):
        design = put(design, Ref("stock"), without_mention(design.stock, ref))
    return put_all(design, ref.kind, (piece for piece in pieces(design, ref.kind) if piece.id != ref.id))


def _users(design: Design, ref: Ref) -> list[str]:
    """The names of what cannot do without a piece of the supplies."""
    users: list[str] = []
    if ref.kind == "pipe":
        users += [f.name for f in design.stock.fittings if any(s.pipe == ref.id for s in f.sockets)]
    for arrangement in design.arrangements:
        if ref.kind == "pipe":
            users += [bar.name for bar in arrangement.bars if bar.pipe == ref.id]
        if ref.kind == "motor":
            users += [thruster.name for thruster in arrangement.thrusters if thruster.motor == ref.id]
        if ref.kind == "foam":
            users += [piece.name for piece in arrangement.floats if piece.foam == ref.id]
    return users


def _listed(names: list[str]) -> str:
    shown = ", ".join(f"'{name}'" for name in names[:3])
    return f"{shown} and {len(names) - 3} more" if len(names) > 3 else shown


def _without_choice(design: Design, ref: Ref) -> Design:
    places = {"fitting": ("joints", "fitting"), "mount": ("thrusters", "mount")}
    if ref.kind not in places:
        return design
    items, field = places[ref.kind]
    arrangements = [
        changed(arrangement, **{items: _cleared(getattr(arrangement, items), field, ref.id)})
        for arrangement in design.arrangements
    ]
    result: Design = changed(design, arrangements=tuple(arrangements))
    return result


def _cleared(items: Iterable[Any], field: str, gone: str) -> tuple[Any, ...]:
    return tuple(changed(i, **{field: None}) if getattr(i, field) == gone else i for i in items)


def on_the_run(fitting: Fitting, socket: Socket) -> bool:
    """Whether the opposite socket exists too; otherwise the socket is a branch."""
    x, y, z = grid(socket.to)
    opposite = direction_text((-x, -y, -z))
    return any(other.to == opposite for other in fitting.sockets)


def set_sockets(design: Design, fitting: str, directions: Iterable[str], **values: Any) -> Design:
    """Measured values (``laying_length`` or ``depth``, in m) of some sockets of a fitting.

    Args:
        directions: where the sockets point, as the stock has them.
    """
    chosen = set(directions)
    record = find(design, Ref("fitting", fitting))
    sockets = tuple(changed(s, **values) if s.to in chosen else s for s in record.sockets)
    return set_field(design, Ref("fitting", fitting), "sockets", sockets)


def add_stick(design: Design, pipe: str) -> Design:
    """One more length on sale of a pipe, like the last one there is."""
    record: Pipe = find(design, Ref("pipe", pipe))
    new = record.sticks[-1] if record.sticks else Stick(length=usual_length(design.units, *NEW_STICK))
    return set_field(design, Ref("pipe", pipe), "sticks", (*record.sticks, new))


def set_stick(design: Design, pipe: str, number: int, **values: Any) -> Design:
    """The length [m] or the price of one of the lengths on sale, counted from 0."""
    sticks = _sticks(design, pipe, number)
    sticks[number] = changed(sticks[number], **values)
    return set_field(design, Ref("pipe", pipe), "sticks", tuple(sticks))


def remove_stick(design: Design, pipe: str, number: int) -> Design:
    """One of the lengths on sale taken out, counted from 0."""
    sticks = _sticks(design, pipe, number)
    del sticks[number]
    return set_field(design, Ref("pipe", pipe), "sticks", tuple(sticks))


def _sticks(design: Design, pipe: str, number: int) -> list[Stick]:
    sticks = list(find(design, Ref("pipe", pipe)).sticks)
    if not 0 <= number < len(sticks):
        raise EditError("that length is not on sale any more")
    return sticks
