"""Where the numbers about air and water in the pipes come from."""

from collections.abc import Iterator

from model.quantity import Quantity
from model.solve.hole_words import flow_words, millilitres, pocket_words
from model.survey import Survey
from model.units import format_mass
from model.water.air.air import AttitudeAir
from model.water.air.flow import Flow
from model.water.air.seal import DEPTHS, Seal, shrunk

POCKETS_SHOWN = 3
WIDEST_PATHS = "widest paths (Pollack, Operations Research 8, 1960, from memory); geometry of cut cylinders"
HOLES = (
    "Encyclopaedia Britannica, 11th ed. (1911), Hydraulics; coefficient 0.65 for a drilled wall, from memory"
)
BUBBLES = "Young and Laplace: a bubble needs 4 sigma / d; sigma 0.0728 N/m at 20 deg C (CoolProp)"
LOOSE = "a quarter either way: the coefficient is 0.55 to 0.75, and burrs and bends slow it"


def air_quantities(survey: Survey) -> tuple[Quantity, ...]:
    """Numbers about the air, the holes and the seal; some take a moment, for when they are asked for."""
    air = survey.air
    if air.seal:
        return (_lift(survey, air.seal), *_pressures(air.seal))
    if air.level is None or not air.network.mouths:
        return ()
    caught = [_caught(survey, one) for one in air.attitudes if one.cared]
    flows = (_flow(survey, air.flooding, "fills"), _flow(survey, air.draining, "drains"))
    return (*caught, _held(air.level), _water(survey), *flows)


def _caught(survey: Survey, one: AttitudeAir) -> Quantity:
    pockets = tuple(
        (pocket_words(survey, pocket), millilitres(pocket.volume))
        for pocket in one.caught.pockets[:POCKETS_SHOWN]
    )
    deep = shrunk(DEPTHS[-1], survey.balance.density)
    spread = f"it is squeezed to {100 * deep:.0f} % at {DEPTHS[-1]:g} m"
    if one is survey.air.level:
        least, most = survey.air.spread
        spread = f"{millilitres(least)} to {millilitres(most)} with one degree of tilt; {spread}"
    return Quantity(
        f"air caught, {one.attitude.name}",
        f"{millilitres(one.caught.volume)}, lifts {format_mass(one.lift)}",
        "in each bore what lies above the best way out of it: the way whose lowest point is highest",
        (*pockets, ("in the rings of the sockets, which no hole empties", millilitres(one.caught.grooves))),
        WIDEST_PATHS,
        spread,
    )


def _held(level: AttitudeAir) -> Quantity:
    return Quantity(
        "air that the skin of the water may hold besides, level",
        f"up to {millilitres(level.held)}",
        "what stays if air leaves a hole only once it is 4 sigma / (density x gravity x diameter) deep there",
        (("holes", str(len(level.network.mouths))),),
        BUBBLES,
        "at most: tilting and shaking let it out",
    )


def _water(survey: Survey) -> Quantity:
    water = survey.air.water_left
    return Quantity(
        "water that stays after the lift-out, level",
        millilitres(water.volume),
        "as for the air, with the vehicle upside down",
        tuple((pocket_words(survey, one), millilitres(one.volume)) for one in water.pockets[:POCKETS_SHOWN]),
        WIDEST_PATHS,
        "tilting lets more out",
    )


def _flow(survey: Survey, flow: Flow, doing: str) -> Quantity:
    words = flow_words(flow.seconds, doing)
    return Quantity(
        "time to flood" if doing == "fills" else "time to drain",
        words,
        "slice by slice, as much comes in through low holes as goes out through high ones; for 95 % of it",
        (("can flow", millilitres(flow.volume)), ("holes", str(len(survey.air.network.mouths)))),
        HOLES,
        LOOSE,
    )


def _lift(survey: Survey, seal: Seal) -> Quantity:
    return Quantity(
        "lift of the sealed pipes",
        format_mass(seal.lift),
        "all the room in pipes and fittings times the density of the water",
        (
            ("room", millilitres(survey.air.room)),
            ("spare buoyancy while tight", format_mass(seal.spare)),
            ("spare buoyancy after a leak", format_mass(seal.leaked)),
        ),
        "Archimedes' principle",
        "push-in depth and the bore of your own pipe change it by a few per cent",
    )


def _pressures(seal: Seal) -> Iterator[Quantity]:
    for one in seal.pressures:
        yield Quantity(
            f"pressure at {one.depth:g} m",
            f"{one.pascals / 1000:.1f} kPa, {one.per_cm2:.2f} kg on each square centimetre",
            "density of the water x gravity x depth",
            (("depth", f"{one.depth:g} m"),),
            "hydrostatics",
        )
