"""What a team measures on its own parts with a ruler: a layer over the published values of the stock."""

from model.design.measures import Id, Size
from model.design.record import Record


class MeasuredFitting(Record):
    """One fitting under the ruler."""

    fitting: Id
    face_to_face: Size | None = None
    """Face to face, over the two sockets that lie in one line."""
    face_to_far_side: Size | None = None
    """From the face of a socket that has no other opposite to it, to the far side of the fitting."""


class DryJoint(Record):
    """Two pieces of known length, pushed dry into the two opposite sockets of one fitting."""

    fitting: Id
    """A fitting with two sockets in one line, such as a tee or a coupling."""
    first: Size
    """Length of the first piece."""
    second: Size
    """Length of the second piece."""
    overall: Size
    """Length of the whole: from the free end of one piece to the free end of the other."""


class MeasuredPipe(Record):
    """What was measured of all fittings for one size of pipe."""

    pipe: Id
    hub: Size | None = None
    """Outside diameter of a hub, over the socket."""
    socket_depth: Size | None = None
    """Socket depth, from the face to the stop."""
    dry_joint: DryJoint | None = None
    """One dry joint, from which the push-in depth follows."""


class OwnParts(Record):
    """The team's own measurements."""

    pipes: tuple[MeasuredPipe, ...] = ()
    fittings: tuple[MeasuredFitting, ...] = ()
