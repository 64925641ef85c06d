"""What a team can measure on its own parts with a ruler, and what each reading makes of the stock."""

from collections.abc import Iterator, Mapping
from typing import Literal

from msgspec import Struct

from model.design.in_hand import has_run, in_hand, opposite
from model.design.own_parts import DryJoint
from model.design.stock import Fitting, Pipe, Shape, Socket, Stock

What = Literal["hub", "socket depth", "face to face", "face to far side", "dry joint"]
MAKES: dict[What, str] = {
    "hub": "hub",
    "socket depth": "socket depth",
    "face to face": "centre to stop",
    "face to far side": "centre to stop",
    "dry joint": "push-in depth",
}


class Reading(Struct, frozen=True):
    """One thing to measure.

    Attributes:
        what: what the ruler goes over.
        kind, id: the pipe or the fitting that it belongs to.
        name: what that is called.
        ruler: what was read [m]; None before it is measured, and for a dry joint.
        joint: the dry joint that was measured.
        fitting: the fitting that a dry joint is made in.
        shape: of the fitting that is measured.
        ours: what follows for the team's own parts [m].
        published: the same in the stock as it was published [m].
    """

    what: What
    kind: Literal["pipe", "fitting"]
    id: str
    name: str
    ruler: float | None
    ours: float
    published: float
    joint: DryJoint | None = None
    fitting: str = ""
    shape: Shape | None = None

    @property
    def makes(self) -> str:
        """What follows from it, in the trade's words."""
        return MAKES[self.what]

    @property
    def done(self) -> bool:
        """Whether it was measured."""
        return self.ruler is not None or self.joint is not None


def readings(stock: Stock, joint_in: Mapping[str, str] | None = None) -> tuple[Reading, ...]:
    """Everything that can be measured, in the order in which it is best measured.

    Args:
        joint_in: by pipe id, the fitting that a dry joint is to be made in where none was measured yet.
    """
    own = in_hand(stock)
    pairs = list(zip(stock.fittings, own.fittings, strict=True))
    return (
        *(found for pipe in stock.pipes for found in _sockets(pipe, stock, own)),
        *(found for published, ours in pairs for found in _fitting(published, ours, stock)),
        *(found for pipe in stock.pipes for found in _joint(pipe, stock, own, joint_in or {})),
    )


def _sockets(pipe: Pipe, stock: Stock, own: Stock) -> Iterator[Reading]:
    """The hub and the socket depth of the fittings for a pipe; the first of them stands for all."""
    measured = next((item for item in stock.own.pipes if item.pipe == pipe.id), None)
    for published, ours in zip(stock.fittings, own.fittings, strict=True):
        for socket, ruled in zip(published.sockets, ours.sockets, strict=True):
            if socket.pipe == pipe.id:
                hub, depth = (measured.hub, measured.socket_depth) if measured else (None, None)
                yield Reading("hub", "pipe", pipe.id, pipe.name, hub, ours.hub, published.hub)
                yield Reading("socket depth", "pipe", pipe.id, pipe.name, depth, ruled.depth, socket.depth)
                return


def _fitting(published: Fitting, ours: Fitting, stock: Stock) -> Iterator[Reading]:
    """Face to face over the run, face to far side of a branch, where the fitting has them."""
    measured = next((item for item in stock.own.fittings if item.fitting == published.id), None)
    run = _first(published, on_run=True)
    branch = _first(published, on_run=False)
    lengths: tuple[tuple[What, int | None, float | None], ...] = (
        ("face to face", run, measured.face_to_face if measured else None),
        ("face to far side", branch, measured.face_to_far_side if measured else None),
    )
    for what, place, ruler in lengths:
        if place is not None:
            old, new = published.sockets[place].laying_length, ours.sockets[place].laying_length
            yield Reading(
                what, "fitting", published.id, published.name, ruler, new, old, shape=published.shape
            )


def _first(fitting: Fitting, *, on_run: bool) -> int | None:
    """The first socket that has another opposite to it, or the first that has none, by its number."""
    ways = {socket.to for socket in fitting.sockets}
    found = (n for n, socket in enumerate(fitting.sockets) if (opposite(socket.to) in ways) == on_run)
    return next(found, None)


def joint_fittings(stock: Stock, pipe: str) -> tuple[Fitting, ...]:
    """The fittings that a dry joint can be made in: those with a run for the pipe, a tee before others."""
    found = [fitting for fitting in stock.fittings if has_run(fitting) and _takes(fitting.sockets, pipe)]
    return tuple(sorted(found, key=lambda fitting: fitting.shape not in ("tee", "coupling")))


def _takes(sockets: tuple[Socket, ...], pipe: str) -> bool:
    return all(socket.pipe == pipe for socket in sockets)


def _joint(pipe: Pipe, stock: Stock, own: Stock, joint_in: Mapping[str, str]) -> Iterator[Reading]:
    """The dry joint of a pipe, in the fitting that was used or is to be used for it."""
    measured = next((item for item in stock.own.pipes if item.pipe == pipe.id), None)
    joint = measured.dry_joint if measured else None
    able = joint_fittings(stock, pipe.id)
    if not able:
        return
    ours = next(item.insertion for item in own.pipes if item.id == pipe.id)
    fitting = joint.fitting if joint else joint_in.get(pipe.id, able[0].id)
    yield Reading(
        "dry joint", "pipe", pipe.id, pipe.name, None, ours, pipe.insertion, joint=joint, fitting=fitting
    )
