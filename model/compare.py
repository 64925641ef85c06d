"""Designs side by side: speed against handling, weight and cost; which of them others beat in everything.

The best compromise is for the team to choose: nothing here adds unlike things up into a score.
"""

from collections.abc import Callable, Sequence
from math import inf

from msgspec import Struct

from model.design import Arrangement, Design
from model.extents import Extents
from model.frame.layout import Frame
from model.motion.attitude import attitude
from model.motion.body import AHEAD, body_of
from model.motion.span import Span
from model.motion.straight import run
from model.motion.turning import turn
from model.parts import Part
from model.silhouette.area import union_area
from model.silhouette.outline import VIEWS, outline
from model.survey import survey
from model.thrust.drives import Drive
from model.water.balance import GRAVITY, Balance

SAME = 0.005
"""Values that differ by less than this share of the larger count as even."""


class Standing(Struct, frozen=True):
    """What a design is compared by; None where the thrusters cannot do it.

    Attributes:
        ahead: top speed [m/s]; quarter: the slower quarter turn on the spot [s].
        steadiness: W BG, what rights it at 90 degrees [N m].
        pitch: bow up under full thrust ahead [deg]; None also where it turns over.
        front: head-on silhouette [m2]; mass: in air [kg]; cost: what counts, in the brief's money.
        size: length, width, height [m]; fits: the size limit, None without one.
        builds: whether every joint has its fitting and every bar shows some pipe.
    """

    name: str
    ahead: Span | None
    quarter: Span | None
    steadiness: float
    pitch: Span | None
    front: float
    mass: float
    cost: float
    size: tuple[float, float, float]
    fits: bool | None
    builds: bool


class Measure(Struct, frozen=True):
    """One thing that designs are compared by.

    Attributes:
        name: in words; unit: of the number; digits: after the point; more: whether more is better.
        of: the number of a standing in that unit, None where there is none.
        span: the same with its spread, where it has one.
    """

    name: str
    unit: str
    digits: int
    more: bool
    of: Callable[[Standing], float | None]
    span: Callable[[Standing], Span | None] = lambda _: None


def _middle(span: Span | None) -> float | None:
    return None if span is None else span.value


def _pitch(standing: Standing) -> float | None:
    return None if standing.pitch is None else abs(standing.pitch.value)


MEASURES = (
    Measure("top speed ahead", "m/s", 2, True, lambda s: _middle(s.ahead), lambda s: s.ahead),
    Measure("quarter turn on the spot", "s", 2, False, lambda s: _middle(s.quarter), lambda s: s.quarter),
    Measure("steadiness, what rights it lying on its side", "N m", 2, True, lambda s: s.steadiness),
    Measure("pitch under full thrust", "deg", 1, False, _pitch, lambda s: s.pitch),
    Measure("head-on silhouette", "cm2", 0, False, lambda s: s.front * 1e4),
    Measure("weight in air", "g", 0, False, lambda s: s.mass * 1000),
    Measure("cost that counts", "", 2, False, lambda s: s.cost),
)
"""In the order in which a team argues about them."""


class Row(Struct, frozen=True):
    """A line of the table: a number for each design as it is shown, and which are the best.

    All that are even are; none is where there is no number at all.
    """

    name: str
    unit: str
    texts: tuple[str, ...]
    best: frozenset[int]


class Comparison(Struct, frozen=True):
    """Designs side by side.

    Attributes:
        beaten: for each design the first other that is at least as good in everything and better in
            something, by number; None where there is none.
    """

    standings: tuple[Standing, ...]
    rows: tuple[Row, ...]
    beaten: tuple[int | None, ...]


def compare(*designs: Design) -> Comparison:
    """Some designs side by side, by their titles."""
    return compared([standing_of_design(design) for design in designs])


def compared(standings: Sequence[Standing]) -> Comparison:
    """Some standings side by side."""
    rows = [_row(measure, standings) for measure in MEASURES]
    fits = ["no limit" if s.fits is None else "fits" if s.fits else "too large" for s in standings]
    builds = ["yes" if s.builds else "no" for s in standings]
    rows.append(Row("size limit", "", tuple(fits), _where(fits, "too large")))
    rows.append(Row("can be built", "", tuple(builds), _where(builds, "no")))
    return Comparison(tuple(standings), tuple(rows), beaten(standings))


def beaten(standings: Sequence[Standing]) -> tuple[int | None, ...]:
    """For each standing the first other that beats it in everything, by number."""
    scores = [_scores(standing) for standing in standings]
    return tuple(
        next((number for number, other in enumerate(scores) if _beats(other, mine)), None) for mine in scores
    )


def beaten_words(names: Sequence[str], found: Comparison) -> list[str]:
    """A sentence for each design that another beats, by the names that they are shown under."""
    return [
        f"{names[number]} is beaten: {names[other]} is at least as good in every line and better in one."
        for number, other in enumerate(found.beaten)
        if other is not None
    ]


def standing_of_design(design: Design) -> Standing:
    """What a design is compared by."""
    found = survey(design)
    return standing(
        design.title,
        found.arrangement,
        found.frame,
        found.parts,
        found.balance,
        found.drives,
        found.extents,
        found.bill.spent,
    )


def standing(
    name: str,
    arrangement: Arrangement,
    frame: Frame,
    parts: tuple[Part, ...],
    balance: Balance,
    drives: tuple[Drive, ...],
    extents: Extents,
    cost: float,
) -> Standing:
    """What an arrangement is compared by; only that is worked out."""
    body = body_of(arrangement, frame, parts, balance, drives)
    ahead = run(body, AHEAD)
    turns = [turn(body, to_port=side) for side in (True, False)]
    quarters = [found.quarter for found in turns if found]
    outlines = {outline(solid, VIEWS["front"]) for part in parts for solid in part.solids}
    return Standing(
        name=name,
        ahead=ahead.top if ahead else None,
        quarter=max(quarters, key=lambda span: span.value) if len(quarters) == 2 else None,
        steadiness=balance.mass * GRAVITY * balance.bg,
        pitch=attitude(body, AHEAD).pitch if ahead else None,
        front=union_area(outlines),
        mass=balance.mass,
        cost=cost,
        size=extents.size,
        fits=None if extents.limit is None else not any(extents.over),
        builds=builds(frame),
    )


def builds(frame: Frame) -> bool:
    """Whether every joint has its fitting and every bar shows some pipe or none, but not less."""
    return all(joint.match for joint in frame.joints.values()) and all(
        bar.exposed > -1e-6 for bar in frame.bars.values()
    )


def _row(measure: Measure, standings: Sequence[Standing]) -> Row:
    numbers = [_score(measure, measure.of(item)) for item in standings]
    top = max(numbers, default=-inf)
    best = frozenset(number for number, value in enumerate(numbers) if top > -inf and _even(value, top))
    return Row(measure.name, measure.unit, tuple(_text(measure, item) for item in standings), best)


def _text(measure: Measure, item: Standing) -> str:
    """A number with its spread, as it is shown."""
    span, number = measure.span(item), measure.of(item)
    if number is None:
        return "-"
    shown = [number] if span is None else [span.value, span.low, span.high]
    words = [f"{value:.{measure.digits}f}" for value in shown]
    return words[0] if len(words) == 1 else f"{words[0]}, {words[1]} to {words[2]}"


def _where(words: list[str], bad: str) -> frozenset[int]:
    good = frozenset(number for number, word in enumerate(words) if word != bad)
    return good or frozenset(range(len(words)))


def _score(measure: Measure, number: float | None) -> float:
    """A number with more meaning better; nothing is worst."""
    if number is None:
        return -inf
    return number if measure.more else -number


def _scores(item: Standing) -> tuple[float, ...]:
    numbers = [_score(measure, measure.of(item)) for measure in MEASURES]
    return (*numbers, 0.0 if item.fits is False else 1.0, 1.0 if item.builds else 0.0)


def _even(a: float, b: float) -> bool:
    return a == b or (abs(a) < inf > abs(b) and abs(a - b) <= SAME * max(abs(a), abs(b)))


def _beats(other: tuple[float, ...], mine: tuple[float, ...]) -> bool:
    """At least as good in everything, and better in something."""
    pairs = list(zip(other, mine, strict=True))
    return all(a > b or _even(a, b) for a, b in pairs) and any(a > b and not _even(a, b) for a, b in pairs)
