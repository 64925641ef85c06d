"""Foam and weights that give the wanted spare buoyancy and level trim, in pieces that can be cut."""

from collections.abc import Iterator, Sequence
from functools import partial
from itertools import combinations
from math import hypot, inf

from msgspec import Struct

from model.coach.remedies.changes import FOAM_STEP, free_id
from model.coach.sentences import grams, length, trim_words
from model.design import Ballast, Design, Float
from model.design.measures import Direction
from model.frame.layout import BarPlace
from model.solve.places import ROD, Place, foam_places, level_bars_at, shares, weight_places
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
AT_ONCE = (1, 2, 3, 4, 6)
"""Pieces are tried on so many stretches of bar together."""
MOST_STRETCHES = 16
"""So many stretches are looked at together, the highest and longest."""
MOST_SETS = 10
"""Sets tried for each number: first those whose foam lifts enough, in the right place and high."""
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
    """What the solver offers.

    Attributes:
        design: the new design; with no pieces where nothing may go on the bars.
        after: how it floats.
        pieces: how many pieces of foam and weights it brings.
        reached: whether that is what was asked.
        reason: why it is not, in one sentence; "" where it is.
        words: what it comes to, after the reason.
    """

    design: Design
    after: Survey
    pieces: int
    reached: bool
    reason: str
    words: str


def propose_floats(found: Survey, wish: Wish) -> Proposal:
    """New floats and weights in place of the floats that there are; the closest where none will do."""
    return next(proposals(found, wish))


def proposals(found: Survey, wish: Wish) -> Iterator[Proposal]:
    """The same, the best first: those on the fewest bars that reach the aim, then what comes closest.

    Pieces go only where pipe shows that nothing else needs: see ``places``.
    """
    foam = next(foam for foam in found.design.supplies.foams if foam.id == wish.foam)
    step = FOAM_STEP[found.design.units]
    places = [
        *foam_places(found, wish.float_bars, foam, step, wish.beside),
        *(weight_places(found, wish.weight_bars, wish.weight, wish.weights) if wish.weights else ()),
    ]
    rest, aim = _rest(found), aim_of(found)
    for pieces in _best(places, rest, aim, wish):
        design = _applied(found, pieces, wish)
        after = survey(design)
        reached = bool(pieces) and _reaches(rest, aim, pieces)
        reason = "" if reached else _reason(found, pieces, places, rest, aim, wish)
        count = sum(1 for piece in pieces if piece.steps)
        yield Proposal(design, after, count, reached, reason, _words(after, reason))


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


def _best(places: list[Place], rest: Rest, aim: Aim, wish: Wish) -> Iterator[tuple[Piece, ...]]:
    """Sets of pieces, the best first, on as few bars as reach the aim; () where there is no place."""
    foam = [place for place in places if place.kind == "float"]
    weights = [place for place in places if place.kind != "float"]
    close: list[tuple[Piece, ...]] = []
    lack = _lack(rest, aim)
    best = sorted(foam, key=lambda place: (-round(_middle(place)[2], 2), -place.most))[:MOST_STRETCHES]
    for count in (*((0,) if weights else ()), *AT_ONCE):
        found = []
        for chosen in sorted(combinations(best, count), key=partial(_promise, rest, lack))[:MOST_SETS]:
            start = _start(chosen, weights, rest, lack, wish)
            found.append(_improved(rest, aim, start, wish))
        found.sort(key=lambda pieces: score(rest, aim, pieces))
        yield from (pieces for pieces in found if _reaches(rest, aim, pieces))
        close += [pieces for pieces in found if not _reaches(rest, aim, pieces)]
    yield from sorted(close, key=lambda pieces: score(rest, aim, pieces))
    if not places:
        yield ()


def _reaches(rest: Rest, aim: Aim, pieces: Sequence[Piece]) -> bool:
    return score(rest, aim, pieces)[0] == 0


def _lack(rest: Rest, aim: Aim) -> float:
    """Lift that is wanting [kg]; below zero where weights are."""
    return sum(aim.window(rest.mass)) / 2 + rest.mass - rest.density * rest.volume


def _promise(rest: Rest, lack: float, places: tuple[Place, ...]) -> tuple[float, float, float]:
    """The less the better: the lift [kg] that its stretches lack, how far off they lie [m], how low [m].

    Foam at one point would bring B over G where its moments and those of the rest come to the same place.
    """
    lifts = [place.most * place.lift(rest.density) for place in places]
    if lack <= 0 or not places or sum(lifts) <= 0:
        return 0.0, 0.0, 0.0
    share = lack / sum(lifts)
    volume = sum(place.most * place.volume for place in places) * share
    mass = sum(place.most * place.mass for place in places) * share
    effect = volume / (rest.volume + volume) - mass / (rest.mass + mass)
    centre = [sum(_middle(place)[axis] for place in places) / len(places) for axis in range(3)]
    off = 0.0
    for axis in (0, 1):
        there = rest.mass_moment[axis] / (rest.mass + mass) - rest.volume_moment[axis] / (
            rest.volume + volume
        )
        off = hypot(off, centre[axis] - there / effect)
    return round(max(0.0, lack - sum(lifts)), 3), round(off, 2), -round(centre[2], 3)


def _middle(place: Place) -> tuple[float, float, float]:
    return add(place.origin, scale(place.along, (place.low + place.high) / 2))


def _start(
    foam: Sequence[Place], weights: Sequence[Place], rest: Rest, lack: float, wish: Wish
) -> tuple[Piece, ...]:
    """Foam or weights for what lacks, spread evenly over their places, as far as there are any.

    A bar carries foam or weights, not both.
    """
    foam_most = int(wish.foam_length / foam[0].step + 1e-6) if foam and wish.foam_length is not None else None
    taken = {place.bar for place in foam}
    others = [place for place in weights if place.bar not in taken]
    pieces = (
        *_spread(foam, lack, rest.density, foam_most),
        *_spread(others, lack, rest.density, wish.weights),
    )
    return _parted(pieces)


def _parted(pieces: tuple[Piece, ...]) -> tuple[Piece, ...]:
    """The pieces as far as each is clear of those before it; what is not is left out for the time being."""
    kept: list[Piece] = []
    for piece in pieces:
        clash = any(_clash(piece, other) for other in kept)
        kept.append(Piece(piece.place, 0, piece.middle) if clash else piece)
    return tuple(kept)


def _spread(places: Sequence[Place], lack: float, density: float, most: int | None) -> list[Piece]:
    """So many steps on each place as together lift what lacks [kg]; weights lift less than nothing."""
    pieces = []
    for place in places:
        lift = place.lift(density)
        steps = max(0, round(lack / len(places) / lift)) if lift else 0
        share = place.most if most is None else most // len(places)
        pieces.append(Piece(place, min(steps, place.most, share), (place.low + place.high) / 2))
    return pieces


def _improved(rest: Rest, aim: Aim, start: tuple[Piece, ...], wish: Wish) -> tuple[Piece, ...]:
    """Where single moves lead, each taken as soon as it makes things better."""
    here, worth = start, score(rest, aim, start)
    near = _near(start)
    for _ in range(MOST_MOVES):
        for pieces in neighbours(here):
            better = score(rest, aim, pieces)
            if better < worth and _enough(pieces, wish) and _apart(pieces, near):
                here, worth = pieces, better
                break
        else:
            break
    return here


def _enough(pieces: Sequence[Piece], wish: Wish) -> bool:
    foam = sum(piece.length for piece in pieces if piece.place.kind == "float")
    weights = sum(piece.steps for piece in pieces if piece.place.kind == "ballast")
    return weights <= wish.weights and (wish.foam_length is None or foam <= wish.foam_length + 1e-9)


def _near(pieces: Sequence[Piece]) -> list[tuple[int, int]]:
    """Which pieces could ever come into each other's way."""
    whole = [piece.place.solid(piece.place.low, piece.place.high) for piece in pieces]
    return [(a, b) for a, b in combinations(range(len(pieces)), 2) if shares(whole[a], whole[b])]


def _apart(pieces: Sequence[Piece], near: Sequence[tuple[int, int]]) -> bool:
    return not any(_clash(pieces[a], pieces[b]) for a, b in near)


def _clash(one: Piece, other: Piece) -> bool:
    return bool(one.steps and other.steps) and shares(one.solid, other.solid)


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


def _words(after: Survey, reason: str) -> str:
    """What it comes to, after why that is not what was asked."""
    got = after.balance
    floats = "floats up" if got.spare >= 0 else "sinks"
    result = f"t {floats} with {grams(got.spare)} and lies {trim_words(got.pitch, got.roll)}."
    return f"{reason} This comes closest: i{result}" if reason else f"I{result}"


def _reason(
    found: Survey, pieces: Sequence[Piece], places: Sequence[Place], rest: Rest, aim: Aim, wish: Wish
) -> str:
    bare = rest.density * rest.volume - rest.mass
    low, high = aim.window(rest.mass)
    foam = [place for place in places if place.kind == "float"]
    most = sum(place.most * place.lift(rest.density) for place in foam)
    if bare > high:
        return _too_light(pieces, rest, bare, high, wish)
    if not wish.float_bars:
        return "No bar is named that foam may go on, and foam is needed."
    if not foam:
        return (
            "Nothing may go on the bars that were named: propellers, mounts, holes, other parts or the size "
            "limit forbid it."
        )
    if most <= 0:
        return "This foam is heavier than the water, and sinks: choose another, or weigh a piece again."
    if bare + most < low:
        return f"Foam on those bars lifts at most {grams(most)}, and {grams(low - bare)} are needed."
    there = (wish.foam_length or inf) * max(place.lift(rest.density) / place.step for place in foam)
    if bare + there < low:
        return f"The foam that there is lifts at most {grams(there)}, and {grams(low - bare)} are needed."
    got = outcome(rest, pieces)
    if got.bg < aim.bg:
        height = length(got.bg, found.design.units)
        return f"The lift comes to lie only {height} above the weight: name higher bars, or weights."
    step = max(place.lift(rest.density) for place in foam)
    if got.tilt > LEVEL and step > COARSE:
        return f"One step of this foam lifts {grams(step)}, too coarse to level it: thinner foam cuts finer."
    if got.tilt > LEVEL:
        return f"Foam there cannot bring it within {LEVEL:g} degrees: name bars further out as well."
    return "The pieces cannot be cut finely enough, or there is too little foam."


def _too_light(pieces: Sequence[Piece], rest: Rest, bare: float, high: float, wish: Wish) -> str:
    """Why weights do not hold down what floats up by itself."""
    without = f"Without any foam it already floats up with {grams(bare)}"
    most = sum(
        -piece.place.most * piece.place.lift(rest.density) for piece in pieces if piece.place.kind != "float"
    )
    if not wish.weights:
        return f"{without}: it needs weights, not foam."
    if not most:
        return f"{without}, and weights may hang on none of the bars that were named."
    if bare - most > high:
        return f"{without}, and the weights that there are or fit take off at most {grams(most)}."
    return (
        f"{without}, and the weights there cannot bring it level: name bars further out, or lighter washers."
    )


def usual_bars(found: Survey, sign: int) -> tuple[str, ...]:
    """The bars that foam (1) or weights (-1) go on already, or else the highest or lowest level ones."""
    items = found.arrangement.floats if sign > 0 else found.arrangement.ballasts
    taken = tuple(dict.fromkeys(item.bar for item in items))
    return taken or tuple(bar.id for bar in level_bars_at(found, sign))
