"""Each size of wire on sale for the cores of the tether, and each fuse on sale for a branch."""

from msgspec import Struct

from model.design import Arrangement, Design
from model.power.wire import ampacity, gauges
from model.power.wiring import wired

FUSES = (1.0, 2.0, 3.0, 5.0, 7.5, 10.0, 15.0, 20.0, 25.0, 30.0)
"""[A] Blade fuses on sale (common practice; ISO 8820-3, from memory)."""


class Guarded(Struct, frozen=True):
    """A fuse, and what it guards.

    Attributes:
        name: in words; thruster: whose branch it is in, None for the main fuse.
        fuse: its rating [A]; amps: that run through it with all motors on [A].
        most: what the smallest wire behind it may be fused with [A].
    """

    name: str
    thruster: str | None
    fuse: float
    amps: float
    most: float


class GaugeChoice(Struct, frozen=True):
    """A size of wire for the cores of the tether.

    Attributes:
        name: of the size; area: copper of one core [mm2].
        lost: worst share of the volts that does not arrive.
        volts: least at any motor [V].
        pull: least share of the pull of its test that a motor has left.
        fuse: the largest fuse for it [A].
        enough: whether the coach is silent about it.
    """

    name: str
    area: float
    lost: float
    volts: float
    pull: float
    fuse: float
    enough: bool


def gauge_choices(design: Design, arrangement: Arrangement, density: float) -> tuple[GaugeChoice, ...]:
    """Each size of wire on sale for all cores of the tether, the thinnest first; none without a wiring.

    Args:
        density: of the water [kg/m3].
    """
    if arrangement.power is None or not arrangement.thrusters:
        return ()
    return tuple(
        _choice(design, arrangement, density, name, area)
        for name, area in gauges(inches=design.units == "in")
    )


def _choice(design: Design, arrangement: Arrangement, density: float, name: str, area: float) -> GaugeChoice:
    other = cores_of(arrangement, area)
    if other.power is None:
        raise ValueError("an arrangement without a wiring has no cores")
    result = wired(design, other, other.power, density)
    lost = max(result.lost.values())
    return GaugeChoice(
        name=name,
        area=area,
        lost=lost,
        volts=min(load.volts for load in result.loads),
        pull=min(result.share.values()),
        fuse=ampacity(area),
        enough=lost <= design.brief.thresholds.volts_tip / 100,
    )


def thinnest_enough(design: Design, arrangement: Arrangement, density: float) -> GaugeChoice | None:
    """The thinnest size about which the coach is silent, or None where none will do."""
    return next((one for one in gauge_choices(design, arrangement, density) if one.enough), None)


def cores_of(arrangement: Arrangement, area: float) -> Arrangement:
    """An arrangement with the same copper in every core of its tether [mm2]."""
    if arrangement.power is None:
        return arrangement
    thrusters = tuple(
        item.but(branch=item.branch.but(core_area=None)) if item.branch.core_area else item
        for item in arrangement.thrusters
    )
    return arrangement.but(thrusters=thrusters, power=arrangement.power.but(core_area=area))


def fuse_for(amps: float, most: float, margin: float) -> float | None:
    """The smallest fuse on sale [A] that carries a running current with a margin and protects its wire.

    Args:
        amps: running current [A]; margin: fuse over that, at least.
        most: what the wire may be fused with [A].

    >>> fuse_for(2.2, 9.3, 1.25), fuse_for(9.0, 9.3, 1.25)
    (3.0, None)
    """
    return next((fuse for fuse in FUSES if margin * amps <= fuse <= most), None)
