"""The stock as it is in the team's hands: its published values under what was measured with a ruler.

On an elbow, from the face of one socket to the far side of the fitting is centre to face and half
a hub; on a 45-degree elbow the rim of its other socket lies furthest; on a cap it is centre to face
itself.  On a tee, face to face is twice centre to face; centre to stop is centre to face less the
socket depth.  Two pieces pushed into opposite sockets make face to face and both pieces less both
push-in depths.  Geometry; common practice, no source.
"""

from collections.abc import Iterator, Mapping
from functools import lru_cache
from math import sqrt

from model.design.measures import Direction
from model.design.own_parts import DryJoint, MeasuredFitting, MeasuredPipe
from model.design.stock import Fitting, Pipe, Socket, Stock
from model.units import snap
from model.vectors import direction_text, dot, grid, unit

HUB_GROWTH = 1.5
"""A hub wider than this many times its pipe is a slip of the ruler (common practice, no source)."""


def run_face(face_to_face: float) -> float:
    """Centre to face [m] of a socket on the run, from face to face [m].

    >>> run_face(0.0635)
    0.03175
    """
    return face_to_face / 2


def branch_face(face_to_far_side: float, hub: float, back: float = 0.0) -> float:
    """Centre to face [m] of a socket with nothing opposite, from face to far side and hub [m].

    Args:
        back: how far an alike socket leads back behind the centre, as a share of its own length: the
            cosine of 45 degrees on a 45-degree elbow, where the rim of that socket is the far side.

    >>> round(branch_face(0.0457, 0.0279), 5), round(branch_face(0.0518, 0.0279, 0.7071), 5)
    (0.03175, 0.02457)
    """
    return (face_to_far_side - sqrt(1 - back * back) * hub / 2) / (1 + back)


def leads_back(fitting: Fitting, socket: Socket) -> float:
    """How far another socket leads back from one, as a share of its length; 0 where all are square to it."""
    along = unit(socket.to)
    others = (other for other in fitting.sockets if other.to != socket.to)
    return max([0.0, *(-dot(along, unit(other.to)) for other in others)])


def push_in(face_to_face: float, first: float, second: float, overall: float) -> float:
    """Push-in depth [m] of a dry joint, from the fitting, two pieces and the whole [m].

    >>> round(push_in(0.0635, 0.1, 0.1, 0.2381), 5)
    0.0127
    """
    return (face_to_face + first + second - overall) / 2


def opposite(to: Direction) -> Direction:
    """The direction that points the other way."""
    x, y, z = grid(to)
    return direction_text((-x, -y, -z))


def has_run(fitting: Fitting) -> bool:
    """Whether two of its sockets lie in one line."""
    directions = {socket.to for socket in fitting.sockets}
    return any(opposite(to) in directions for to in directions)


@lru_cache(maxsize=16)
def in_hand(stock: Stock) -> Stock:
    """The stock with the team's own measurements in the place of the published values.

    A measurement that cannot be right is passed over; ``slips`` says which.
    """
    own = stock.own
    if not own.pipes and not own.fittings:
        return stock
    fittings = _measured(stock)
    pipes = tuple(_with_push_in(pipe, stock, fittings) for pipe in stock.pipes)
    return stock.but(fittings=tuple(fittings.values()), pipes=pipes)


def slips(stock: Stock) -> Iterator[tuple[str, str, str]]:
    """Measurements that cannot be right: the kind and id of what was measured, and a sentence."""
    for pipe in stock.own.pipes:
        yield from (("pipe", pipe.pipe, why) for why in _pipe_slips(pipe, stock))
    for fitting in stock.fittings:
        measured = _of(fitting.id, stock)
        for socket in fitting.sockets:
            why = _socket_slip(fitting, socket, measured, stock)
            if why:
                yield "fitting", fitting.id, why
                break


def _of(fitting: str, stock: Stock) -> MeasuredFitting | None:
    return next((item for item in stock.own.fittings if item.fitting == fitting), None)


def _by_pipe(stock: Stock) -> dict[str, MeasuredPipe]:
    return {item.pipe: item for item in stock.own.pipes}


def _hub(fitting: Fitting, stock: Stock) -> float:
    """The widest hub [m] over the sockets, as measured where it was and can be right."""
    own, pipes = _by_pipe(stock), {pipe.id: pipe for pipe in stock.pipes}
    ids = [socket.pipe for socket in fitting.sockets]
    hubs = [hub for id in ids if id in own and (hub := own[id].hub) and not _hub_slip(hub, pipes[id])]
    return max(hubs, default=fitting.hub)


def _hub_slip(hub: float, pipe: Pipe) -> bool:
    return not pipe.outside_diameter < hub < HUB_GROWTH * pipe.outside_diameter


def _measured(stock: Stock) -> dict[str, Fitting]:
    own = _by_pipe(stock)
    found: dict[str, Fitting] = {}
    for fitting in stock.fittings:
        measured = _of(fitting.id, stock)
        touched = measured is not None or any(socket.pipe in own for socket in fitting.sockets)
        found[fitting.id] = _fitting_in_hand(fitting, measured, stock) if touched else fitting
    return found


def _fitting_in_hand(fitting: Fitting, measured: MeasuredFitting | None, stock: Stock) -> Fitting:
    sockets = tuple(
        socket
        if _socket_slip(fitting, socket, measured, stock)
        else socket.but(laying_length=snap(max(0.0, face - depth)), depth=depth)
        for socket in fitting.sockets
        for face, depth in (_face_and_depth(fitting, socket, measured, stock),)
    )
    return fitting.but(sockets=sockets, hub=_hub(fitting, stock))


def _face_and_depth(
    fitting: Fitting, socket: Socket, measured: MeasuredFitting | None, stock: Stock
) -> tuple[float, float]:
    """Centre to face and socket depth [m] of a socket, each as measured where it was.

    A depth that was measured alone leaves the face where it is published.
    """
    own = _by_pipe(stock).get(socket.pipe)
    depth = (own.socket_depth if own else None) or socket.depth
    face = socket.centre_to_face
    on_run = any(other.to == opposite(socket.to) for other in fitting.sockets)
    if measured and on_run and measured.face_to_face:
        face = run_face(measured.face_to_face)
    elif measured and not on_run and measured.face_to_far_side:
        hub = _hub(fitting, stock) if len(fitting.sockets) > 1 else 0.0  # a cap's centre is its far side
        face = branch_face(measured.face_to_far_side, hub, leads_back(fitting, socket))
    return face, depth


def _socket_slip(fitting: Fitting, socket: Socket, measured: MeasuredFitting | None, stock: Stock) -> str:
    face, depth = _face_and_depth(fitting, socket, measured, stock)
    if face >= depth - 1e-9:
        return ""
    return (
        f"the measurements of the {fitting.name} leave less from its centre to its face than its "
        "socket is deep; measure again"
    )


def _pipe_slips(measured: MeasuredPipe, stock: Stock) -> Iterator[str]:
    pipe = next(pipe for pipe in stock.pipes if pipe.id == measured.pipe)
    if measured.hub and _hub_slip(measured.hub, pipe):
        yield f"a hub for {pipe.name} must be wider than the pipe, but not half as wide again; measure again"
    if measured.dry_joint:
        why = _joint_slip(measured.dry_joint, pipe, _measured(stock))
        if why:
            yield why


def _joint_slip(joint: DryJoint, pipe: Pipe, fittings: Mapping[str, Fitting]) -> str:
    fitting = fittings[joint.fitting]
    run = _run(fitting, pipe.id)
    if run is None:
        return f"the {fitting.name} has no two sockets in one line for {pipe.name}; use a tee or a coupling"
    depth = push_in(_length(run), joint.first, joint.second, joint.overall)
    if depth < 0:
        return f"the dry joint of {pipe.name} is longer than its pieces and fitting together; measure again"
    if depth > min(socket.depth for socket in run) + 1e-9:
        return f"the dry joint of {pipe.name} is so short that the pipes would pass the stop; measure again"
    return ""


def _run(fitting: Fitting, pipe: str) -> tuple[Socket, Socket] | None:
    """Two sockets in one line that take a pipe, if there are any."""
    by_direction = {socket.to: socket for socket in fitting.sockets if socket.pipe == pipe}
    pairs = ((socket, by_direction.get(opposite(to))) for to, socket in by_direction.items())
    return next(((first, second) for first, second in pairs if second), None)


def _length(run: tuple[Socket, Socket]) -> float:
    return run[0].centre_to_face + run[1].centre_to_face


def _with_push_in(pipe: Pipe, stock: Stock, fittings: Mapping[str, Fitting]) -> Pipe:
    measured = _by_pipe(stock).get(pipe.id)
    joint = measured.dry_joint if measured else None
    run = _run(fittings[joint.fitting], pipe.id) if joint else None
    if joint is None or run is None or _joint_slip(joint, pipe, fittings):
        return pipe
    return pipe.but(insertion=snap(push_in(_length(run), joint.first, joint.second, joint.overall)))
