"""Where the numbers on drag, and on the water that moves along, come from."""

from collections.abc import Iterator

from model.explain_motion import DRAG
from model.motion.shares import Facing, Share, together
from model.quantity import Quantity
from model.survey import Survey

KINDS = {
    "bar": "pipes",
    "fitting": "fittings",
    "thruster": "motors",
    "float": "floats",
    "ballast": "weights",
    "attachment": "gear",
    "tether": "tether",
}
"""What the parts of a kind are called together."""
SPEED = 0.5
"""[m/s] At which drag is told: about what such vehicles reach."""
UNSURE = "pipes 25 % less to 10 % more, bodies and blocks 20 % either way, tether half to a fifth more"
ALONE = "each part as if it stood alone: what is sheltered by others drags less"
ADDED = "DNV-RP-C205 and DNV-RP-H103 table A-2; cylinders along their axis: a boundary-element computation"


def shares_by_kind(survey: Survey) -> tuple[Share, ...]:
    """What the parts of each kind contribute together, in the order of KINDS; empty without any part."""
    grouped = {kind: [share for share in survey.shares if share.kind == kind] for kind in KINDS}
    return tuple(together(kind, KINDS[kind], found) for kind, found in grouped.items() if found)


def drag_quantities(survey: Survey) -> Iterator[Quantity]:
    """Drag ahead and up, the water moved along, and the water inside."""
    kinds = shares_by_kind(survey)
    if not kinds:
        return
    whole = together("all", "all parts", kinds)
    for way in ("ahead", "up"):
        yield _drag(way, whole, kinds)
    yield _added(whole, kinds)
    if whole.inside:
        yield _inside(whole, kinds)


def _drag(way: str, whole: Share, kinds: tuple[Share, ...]) -> Quantity:
    total = getattr(whole, way)
    return Quantity(
        f"drag {way} at {SPEED:g} m/s",
        total.drag(SPEED).text("N"),
        "half the density times C_D times area times the square of the speed, added over all parts",
        tuple((share.name, _part(getattr(share, way), total.k)) for share in kinds),
        DRAG,
        f"{UNSURE}; {ALONE}",
    )


def _part(facing: Facing, whole: float) -> str:
    """A share, and the coefficient and the area that it comes from."""
    share = f"{facing.k / whole:.0%}" if whole else "0%"
    if facing.coefficient is None:
        return f"{share}, friction alone"
    return f"{share}, C_D {facing.coefficient:.2f} on {facing.area * 1e4:.0f} cm2"


def _added(whole: Share, kinds: tuple[Share, ...]) -> Quantity:
    return Quantity(
        "water moved along outside",
        added_words(whole),
        "for each part a share of the water that it displaces, by its shape and the way that it moves",
        tuple((share.name, added_words(share)) for share in kinds),
        ADDED,
        "10 % of the mass with water: pipes that cross change it",
    )


def added_words(share: Share) -> str:
    """Added mass along the three axes."""
    added = share.added
    return f"{added.xx:.2f} kg ahead, {added.yy:.2f} kg sideways, {added.zz:.2f} kg up"


def _inside(whole: Share, kinds: tuple[Share, ...]) -> Quantity:
    return Quantity(
        "water inside the pipes",
        f"{whole.inside:.2f} kg",
        "the room in bores and fittings times the density: it has to be moved, and weighs nothing in water",
        tuple((share.name, f"{share.inside:.2f} kg") for share in kinds if share.inside),
        "geometry",
        "all air let out",
    )
