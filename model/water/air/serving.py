"""Empty sockets that do an opening's work: what they let out, nothing else does."""

from collections.abc import Sequence

from msgspec.structs import replace

from model.vectors import Vector
from model.water.air.air import MANY_BORES, Air
from model.water.air.bores import Mouth, Network, ring_volume
from model.water.air.pockets import caught

ENOUGH = 1e-6
"""[m3] A socket that lets no more than a millilitre out of the pipes does no work."""


def serving_sockets(air: Air) -> frozenset[tuple[str, Vector]]:
    """The empty sockets that the frame floods, vents or drains through: joint and direction.

    Each is closed in turn; where that leaves more air in an attitude, or more water when the vehicle is
    lifted out, it serves, else it stays closed.  None in a sealed frame; all in one too large to try.
    """
    sockets = [mouth for mouth in air.network.mouths if mouth.kind == "socket"]
    if not sockets or air.level is None:
        return frozenset()
    served = {(mouth.id, air.network.rims[mouth.rim].along) for mouth in sockets}
    if len(air.network.bores) > MANY_BORES:
        return frozenset(served)
    ups = [*(state.attitude.up for state in air.attitudes), air.level.attitude.down]
    open_now, left = air.network, _left(air.network, ups)
    for mouth in sockets:
        fewer = _closed(open_now, mouth)
        more = _left(fewer, ups)
        own = ENOUGH + _room(open_now, mouth.bore)
        if all(volume <= before + own for volume, before in zip(more, left, strict=True)):
            open_now, left = fewer, more
            served.discard((mouth.id, open_now.rims[mouth.rim].along))
    return frozenset(served)


def _closed(network: Network, socket: Mouth) -> Network:
    """A network with an empty socket stopped up at its face."""
    grooves = (replace(ring, face=False) if ring.bore == socket.bore else ring for ring in network.grooves)
    mouths = (mouth for mouth in network.mouths if mouth is not socket)
    return replace(network, grooves=tuple(grooves), mouths=tuple(mouths))


def _room(network: Network, bore: int) -> float:
    """The room [m3] in an empty socket itself, which needs no letting out where nothing else does."""
    rings = sum(ring_volume(ring, network.bores[bore]) for ring in network.grooves if ring.bore == bore)
    return network.bores[bore].volume + rings


def _left(network: Network, ups: Sequence[Vector]) -> list[float]:
    stays = [caught(network, up) for up in ups]
    return [each.volume + each.closed for each in stays]
