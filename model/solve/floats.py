"""Foam and weights that give the wanted spare buoyancy and level trim, in pieces that can be cut."""

from collections.abc import Sequence
from itertools import combinations

from msgspec import Struct

from model.coach.remedies.changes import FOAM_STEP, free_id
from model.coach.sentences import grams, length, trim_words
from model.design import Ballast, Design, Float
from model.design.measures import Direction
from model.frame.layout import BarPlace
from model.solve.places import ROD, Place, foam_places, level_bars_at, weight_places
from model.solve.trial import LEVEL, Aim, Piece, Rest, neighbours, outcome, score
from model.survey import Survey, survey
from model.vectors import ORIGIN, add, scale
from model.water.balance import GRAVITY

SPARE = (0.010, 0.040)
"""[kg] Spare buoyancy aimed at (DEFAULTS)."""
INSIDE = 0.98
"""Kept from the limits of the coach, so that rounding does not cross them."""
COARSE = 0.020
"""[kg] Foam that lifts more than this with one step is hard to level with."""
MOST_AT_ONCE = 4
"""Pieces are tried on up to this many bars together."""
MOST_SETS = 10
"""Sets of bars tried for each number of bars, those that lie evenly about the middle first."""
MOST_MOVES = 200
"""Moves made from each set at the most."""


class Wish(Struct, frozen=True):
    """What the team has and where it may go.

    Attributes:
        float_bars, weight_bars: ids of the bars that foam and weights may go on.
        foam: its id; ``foam_length`` is how much there is [m], None for as much as is needed.
        beside: the side of the bar that foam is strapped to; None where it is threaded.
        weight: mass of one washer or piece [kg]; ``weights`` is how many there are.
    """

    float_bars: tuple[str, ...]
    foam: str
    foam_length: float | None = None
    beside: Direction | None = None
    weight_bars: tuple[str, ...] = ()
    weight: float = 0.02
    weights: int = 0


class Proposal(Struct, frozen=True):
    """What the solver offers: the new design, how it floats, and in words whether that is what was asked."""

    design: Design
    after: Survey
    reached: bool
    words: str


def propose_floats(found: Survey, wish: Wish) -> Proposal:
    """New floats and weights in place of the floats that there are; the closest where none will do."""
    foam = next(foam for foam in found.design.supplies.foams if foam.id == wish.foam)
    step = FOAM_STEP[found.design.units]
    places = [
        *foam_places(found, wish.float_bars, foam, step, wish.beside),
        *(weight_places(found, wish.weight_bars, wish.weight, wish.weights) if wish.weights else ()),
    ]
    rest, aim = _rest(found), aim_of(found)
    best = _best(places, rest, aim, wish)
    design = _applied(found, best, wish)
    after = survey(design)
    reached = bool(best) and _reaches(rest, aim, best)
    return Proposal(design, after, reached, _words(found, after, best, rest, aim, reached))


def aim_of(found: Survey) -> Aim:
    """What suits a vehicle, inside what the coach is silent about."""
    limits = found.design.brief.thresholds
    down = found.thrust.down / GRAVITY * limits.spare_of_thrust / 100
    high = min(SPARE[1], INSIDE * down) if down else SPARE[1]
    least, most = limits.spare_least / 100 / INSIDE, limits.spare_most / 100 * INSIDE
    return Aim(min(SPARE[0], high), high, least, most, limits.bg_least)


def _rest(found: Survey) -> Rest:
    mass = volume = 0.0
    mass_moment = volume_moment = ORIGIN
    for part in found.parts:
        if part.kind != "float":
            mass, volume = mass + part.mass, volume + part.volume
            mass_moment = add(mass_moment, scale(part.mass_centre, part.mass))
            volume_moment = add(volume_moment, scale(part.volume_centre, part.volume))
    return Rest(mass, volume, mass_moment, volume_moment, found.balance.density)


def _best(places: list[Place], rest: Rest, aim: Aim, wish: Wish) -> tuple[Piece, ...]:
    """The best pieces found, on as few bars as reach the aim; () where there is no place."""
    foam = [place for place in places if place.kind == "float"]
    weights = [place for place in places if place.kind != "float"]
    found: list[tuple[Piece, ...]] = []
    for count in range(1, MOST_AT_ONCE + 1):
        sets = sorted(combinations(foam, count), key=_lopsided)[:MOST_SETS]
        starts = [_start(chosen, weights, rest, aim, wish) for chosen in sets]
        found += [_improved(rest, aim, start, wish) for start in starts]
        if any(_reaches(rest, aim, pieces) for pieces in found):
            break
    return min(found, key=lambda pieces: score(rest, aim, pieces), default=())


def _reaches(rest: Rest, aim: Aim, pieces: Sequence[Piece]) -> bool:
    return score(rest, aim, pieces)[0] == 0


def _lopsided(places: tuple[Place, ...]) -> tuple[float, int]:
    """How far a set of places is from lying even about the middle plane [m], and how many there are."""
    centre = sum(_middle(place)[1] for place in places) / len(places)
    return round(abs(centre), 3), len(places)


def _middle(place: Place) -> tuple[float, float, float]:
    return add(place.origin, scale(place.along, (place.low + place.high) / 2))


def _start(
    foam: Sequence[Place], weights: Sequence[Place], rest: Rest, aim: Aim, wish: Wish
) -> tuple[Piece, ...]:
    """Foam or weights for what lacks, spread evenly over their places, as far as there are any."""
    lack = sum(aim.window(rest.mass)) / 2 + rest.mass - rest.density * rest.volume
    foam_most = int(wish.foam_length / foam[0].step + 1e-6) if wish.foam_length is not None else None
    return (
        *_spread(foam, lack, rest.density, foam_most),
        *_spread(weights, lack, rest.density, wish.weights),
    )


def _spread(places: Sequence[Place], lack: float, density: float, most: int | None) -> list[Piece]:
    """So many steps on each place as together lift what lacks [kg]; weights lift less than nothing."""
    pieces = []
    for place in places:
        lift = place.volume * density - place.mass
        steps = max(0, round(lack / len(places) / lift)) if lift else 0
        share = place.most if most is None else most // len(places)
        pieces.append(Piece(place, min(steps, place.most, share), (place.low + place.high) / 2))
    return pieces


def _improved(rest: Rest, aim: Aim, start: tuple[Piece, ...], wish: Wish) -> tuple[Piece, ...]:
    """Where single moves lead, each taken as soon as it makes things better."""
    here, worth = start, score(rest, aim, start)
    for _ in range(MOST_MOVES):
        for pieces in neighbours(here):
            better = score(rest, aim, pieces)
            if better < worth and _enough(pieces, wish):
                here, worth = pieces, better
                break
        else:
            break
    return here


def _enough(pieces: Sequence[Piece], wish: Wish) -> bool:
    foam = sum(piece.length for piece in pieces)
    weights = sum(piece.steps for piece in pieces if piece.place.kind == "ballast")
    return weights <= wish.weights and (wish.foam_length is None or foam <= wish.foam_length + 1e-9)


def _applied(found: Survey, pieces: Sequence[Piece], wish: Wish) -> Design:
    """The design with the pieces in place of its floats."""
    design = found.design.arranged(floats=())
    for piece in pieces:
        if not piece.steps:
            continue
        bar = found.frame.bars[piece.place.bar]
        common = {"bar": bar.id, "at": piece.middle / bar.spacing, "beside": piece.place.beside}
        if piece.place.kind == "float":
            new = Float(
                id=free_id(design.arrangement, "f"),
                name=_name("float", bar),
                foam=wish.foam,
                length=piece.length,
                **common,
            )
            design = design.arranged(floats=(*design.arrangement.floats, new))
        else:
            mass = piece.steps * wish.weight
            weight = Ballast(
                id=free_id(design.arrangement, "w"),
                name=_name("weight", bar),
                mass=mass,
                diameter=ROD,
                **common,
            )
            design = design.arranged(ballasts=(*design.arrangement.ballasts, weight))
    return design


def _name(what: str, bar: BarPlace) -> str:
    return f"{what} on {bar.name}"[:80]


def _words(found: Survey, after: Survey, pieces: Sequence[Piece], rest: Rest, aim: Aim, reached: bool) -> str:
    """What it comes to, and where it misses, why."""
    got = after.balance
    floats = "floats up" if got.spare >= 0 else "sinks"
    result = f"It {floats} with {grams(got.spare)} and lies {trim_words(got.pitch, got.roll)}."
    if reached:
        return result
    return f"{_reason(found, pieces, rest, aim)} This comes closest: {result[0].lower()}{result[1:]}"


def _reason(found: Survey, pieces: Sequence[Piece], rest: Rest, aim: Aim) -> str:
    bare = rest.density * rest.volume - rest.mass
    low, high = aim.window(rest.mass)
    foam = [piece for piece in pieces if piece.place.kind == "float"]
    most = sum(p.place.most * (p.place.volume * rest.density - p.place.mass) for p in foam)
    if bare > high:
        return f"Without any foam it already floats up with {grams(bare)}: it needs weights, not foam."
    if not foam:
        return (
            "Nothing may go on the bars that were named: propellers, other parts or the size limit forbid it."
        )
    if most <= 0:
        return "This foam is heavier than the water, and sinks: choose another, or weigh a piece again."
    if bare + most < low:
        return f"Foam on those bars lifts at most {grams(most)}, and {grams(low - bare)} are needed."
    got = outcome(rest, pieces)
    if got.bg < aim.bg:
        height = length(got.bg, found.design.units)
        return f"The lift comes to lie only {height} above the weight: name higher bars, or weights."
    step = max(piece.place.volume * rest.density - piece.place.mass for piece in foam)
    if got.tilt > LEVEL and step > COARSE:
        return f"One step of this foam lifts {grams(step)}, too coarse to level it: thinner foam cuts finer."
    if got.tilt > LEVEL:
        return f"Foam there cannot bring it within {LEVEL:g} degrees: name bars further out as well."
    return "The pieces cannot be cut finely enough, or there is too little foam."


def usual_bars(found: Survey, sign: int) -> tuple[str, ...]:
    """The bars that foam (1) or weights (-1) go on already, or else the highest or lowest level ones."""
    items = found.arrangement.floats if sign > 0 else found.arrangement.ballasts
    taken = tuple(dict.fromkeys(item.bar for item in items))
    return taken or tuple(bar.id for bar in level_bars_at(found, sign))
