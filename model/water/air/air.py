"""The air in the pipes of one arrangement: what the survey says about it.

For the six attitudes it is worked out at once, about 0.3 ms each for a demo of 20 bars: with the survey's
other topics that is more than 5 ms together when the frame or its openings change, and next to nothing
after any other edit, since the last few frames are remembered.  What only a page asks for (small tilts,
surface tension, times, the tilt by hand) is worked out when it is asked.
"""

from functools import cached_property

from msgspec import Struct

from model.design import Arrangement, Design, Opening, Plug
from model.frame.layout import Frame
from model.vectors import Vector, add, scale, sub
from model.water.air.attitudes import ATTITUDES, SMALL_TILTS, Attitude
from model.water.air.bores import Network
from model.water.air.drilling import Fault, faults
from model.water.air.flow import Flow, draining, flooding
from model.water.air.network import network_of
from model.water.air.orifice import hold_up
from model.water.air.pockets import SPECK, Caught, Pocket, air_left, caught
from model.water.air.recent import Recent
from model.water.air.seal import Seal, seal_of
from model.water.balance import Balance, rest

MANY_BORES = 150
"""Frames with more bores have only "level" worked out, and few tilts, so that 500 bars stay quick to edit."""
HAND_TILTS = tuple(
    Attitude("tilt by hand", pitch, roll)
    for pitch in (-60, -45, -30, 0, 30, 45, 60)
    for roll in (-90, -60, -45, -30, 0, 30, 45, 60, 90)
)
"""What two hands can hold for a quarter of a minute at the pool's edge."""


class AttitudeAir(Struct, frozen=True, dict=True):
    """The air that stays in one attitude.

    Attributes:
        cared: whether the brief cares about this attitude.
        caught: the pockets.
        network: the bores.
        floating: the balance without that air.
    """

    attitude: Attitude
    cared: bool
    caught: Caught
    network: Network
    floating: Balance

    @property
    def lift(self) -> float:
        """What it lifts near the surface [kg]; 22 % less at 3 m, where it is squeezed."""
        return self.caught.volume * self.floating.density

    @cached_property
    def held(self) -> float:
        """What the skin of the water may keep besides [m3]: an upper bound, for clean round wetted holes."""
        lower = _hold_ups(self.network, self.floating.density)
        return max(0.0, air_left(self.network, self.attitude.up, lower) - self.caught.volume)

    @cached_property
    def trim(self) -> tuple[float | None, float | None]:
        """Bow up and port side up at rest [deg] with this air where it is now."""
        balance = self.floating
        lifted, volume = scale(balance.b, balance.displaced), balance.displaced
        for pocket in self.caught.pockets:
            if not pocket.closed:
                lifted, volume = add(lifted, scale(pocket.at, pocket.volume)), volume + pocket.volume
        return rest(sub(scale(lifted, 1 / volume), balance.g)) if volume else (None, None)

    @property
    def turned(self) -> float:
        """How far this air changes the trim [deg], the larger of pitch and roll."""
        after, before = self.trim, (self.floating.pitch, self.floating.roll)
        changes = [abs(a - b) for a, b in zip(after, before, strict=True) if a is not None and b is not None]
        return max((min(change, 360 - change) for change in changes), default=0.0)


class Tilt(Struct, frozen=True):
    """A tilt by hand, the air that stays in it [m3], and what the skin of the water may keep besides."""

    attitude: Attitude
    volume: float
    held: float


class Air(Struct, frozen=True, dict=True):
    """The air and the water in the pipes.

    Attributes:
        network: the bores with what opens them.
        attitudes: what stays in each; empty for a sealed frame and where there are no bores.
        water_left: the water that stays when the vehicle is lifted out level.
        faults: openings that are no way out, by id, and why.
        seal: what sealing gains and risks, or None for a frame that floods.
    """

    network: Network
    attitudes: tuple[AttitudeAir, ...]
    water_left: Caught
    faults: dict[str, Fault]
    seal: Seal | None
    floating: Balance

    @property
    def room(self) -> float:
        """All the room inside the pipes [m3]."""
        return self.network.volume

    @property
    def level(self) -> AttitudeAir | None:
        """What stays when it lies level."""
        return self.attitudes[0] if self.attitudes else None

    @property
    def voids(self) -> tuple[Pocket, ...]:
        """Rooms without any opening, in a frame that floods."""
        return tuple(pocket for pocket in self.level.caught.pockets if pocket.closed) if self.level else ()

    @cached_property
    def spread(self) -> tuple[float, float]:
        """The least and the most that stays level or within one degree of it [m3]: no pool is dead level."""
        if self.level is None:
            return 0.0, 0.0
        volumes = [air_left(self.network, tilt.up) for tilt in SMALL_TILTS] + [self.level.caught.volume]
        return min(volumes), max(volumes)

    @cached_property
    def flooding(self) -> Flow:
        """How fast it fills, held level."""
        return flooding(self.network, ATTITUDES[0].up, self.floating.density)

    @cached_property
    def draining(self) -> Flow:
        """How fast it empties, lifted out level."""
        return draining(self.network, ATTITUDES[0].up, self.floating.density)

    @property
    def _tilts(self) -> tuple[Attitude, ...]:
        return HAND_TILTS if len(self.network.bores) <= MANY_BORES else ATTITUDES[1:5]

    @cached_property
    def tilt(self) -> Tilt | None:
        """The tilt by hand before a start that leaves least air, the skin of the water counted.

        Of tilts that leave the same to a drop, that nearest to level; None where none beats level.
        """
        if self.level is None:
            return None
        lower = _hold_ups(self.network, self.floating.density)
        tried = [(air_left(self.network, tilt.up, lower), tilt) for tilt in self._tilts]
        most, best = min(tried, key=lambda one: (round(one[0], 7), abs(one[1].pitch) + abs(one[1].roll)))
        if most >= self.level.caught.volume + self.level.held - SPECK:
            return None
        volume = air_left(self.network, best.up)
        return Tilt(best, volume, max(0.0, most - volume))


def _hold_ups(network: Network, density: float) -> tuple[float, ...]:
    """By how much the skin of the water lowers the level at each mouth, at most [m]."""
    return tuple(hold_up(mouth.diameter, density) for mouth in network.mouths)


_Key = tuple[Frame, tuple[Opening, ...], tuple[Plug, ...]]
_Static = tuple[Network, dict[Attitude, Caught], Caught]
_remembered: Recent[_Key, _Static] = Recent(8)
NO_AIR = Caught((), 0.0, 0.0)


def air_of(design: Design, arrangement: Arrangement, frame: Frame, floating: Balance) -> Air:
    """The air in the pipes of an arrangement, from its frame and its balance without that air."""
    wrong = faults(arrangement, frame, design.supplies.foams)
    openings = tuple(opening for opening in arrangement.openings if opening.id not in wrong)
    sealed = arrangement.bores == "sealed"
    if sealed or not frame.bars:
        network = network_of(frame, openings, arrangement.plugs)
        seal = seal_of(network.volume, floating) if sealed else None
        return Air(network, (), NO_AIR, wrong, seal, floating)
    key = (frame, openings, arrangement.plugs)
    network, found, water = _remembered.get(key, lambda: _worked_out(*key))
    cares = design.brief.attitudes
    attitudes = tuple(
        AttitudeAir(attitude, not cares or attitude.name in cares, stays, network, floating)
        for attitude, stays in found.items()
    )
    return Air(network, attitudes, water, wrong, None, floating)


def _worked_out(frame: Frame, openings: tuple[Opening, ...], plugs: tuple[Plug, ...]) -> _Static:
    network = network_of(frame, openings, plugs)
    wanted = ATTITUDES if len(network.bores) <= MANY_BORES else ATTITUDES[:1]
    found = {attitude: caught(network, attitude.up) for attitude in wanted}
    down: Vector = ATTITUDES[0].down
    return network, found, caught(network, down)
