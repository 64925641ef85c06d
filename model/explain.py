"""Where the numbers on the screen come from: formula in words, values that went in, source, spread."""

from collections.abc import Iterator

from model.coach.sentences import money, trim_words
from model.frame.letters import CutGroup
from model.quantity import Quantity
from model.survey import Survey
from model.units import format_length, format_mass
from model.vectors import Vector

ARCHIMEDES = "Archimedes' principle"
PUSH_IN = "push-in depth scatters by 3 mm a joint, 1 mm with a push-to mark (common practice, no source)"
FOAM = (
    "foam from 20 to 40 kg/m3 and push-in scatter change it by more than the 20 g aimed at: try it in water"
)


def quantities(survey: Survey) -> tuple[Quantity, ...]:
    """The headline numbers of a survey, in the order of the steps."""
    return (*_sizes(survey), *_cuts(survey), *_floating(survey), *_money(survey))


def _sizes(survey: Survey) -> Iterator[Quantity]:
    box, unit = survey.extents.box, survey.design.units
    if box is None:
        return
    for axis, (name, high, low) in enumerate(
        (
            ("overall length", "foremost point", "aftmost point"),
            ("overall width", "point furthest to port", "point furthest to starboard"),
            ("overall height", "highest point", "lowest point"),
        )
    ):
        yield Quantity(
            name,
            format_length(survey.extents.size[axis], unit),
            f"{high} of any part, less the {low} of any part; hubs, thrusters, hooks and floats count",
            ((high, format_length(box.high[axis], unit)), (low, format_length(box.low[axis], unit))),
            "geometry",
            PUSH_IN,
        )


def _cuts(survey: Survey) -> Iterator[Quantity]:
    for group in survey.cuts:
        yield _cut(group, survey)


def _cut(group: CutGroup, survey: Survey) -> Quantity:
    bar, unit = group.bars[0], survey.design.units
    parts = (
        ("centre to centre", bar.spacing),
        ("centre to face at its start", bar.faces[0]),
        ("centre to face at its end", bar.faces[1]),
        ("push-in depth at its start", bar.insertions[0]),
        ("push-in depth at its end", bar.insertions[1]),
    )
    return Quantity(
        f"cut {group.letter} ({len(group.bars)} of {bar.pipe.name})",
        format_length(group.cut, unit),
        "centre to centre, less centre to face at both ends, plus push-in depth at both ends",
        tuple((name, format_length(value, unit)) for name, value in parts),
        "geometry; push-in depth as the stock gives it: measure one dry joint of your own",
        PUSH_IN,
    )


def _floating(survey: Survey) -> Iterator[Quantity]:
    balance, water = survey.balance, survey.design.brief.water
    litres = f"{balance.displaced * 1000:.3f} l"
    density = f"{balance.density:.2f} kg/m3"
    yield Quantity(
        "weight",
        format_mass(balance.mass),
        "the sum of the weights in air of all parts, pipes drained",
        tuple((kind, format_mass(mass)) for kind, mass in weights_by_kind(survey).items()),
        "weights of fittings are estimates to 25 % until you weigh one (from memory)",
        "weigh the real thing",
    )
    yield Quantity(
        "water displaced",
        litres,
        "the sum of the room that all parts take up; of a flooded pipe only its plastic",
        (("bores", survey.arrangement.bores),),
        ARCHIMEDES,
        FOAM,
    )
    yield Quantity(
        "density of the water",
        density,
        "a formula in the temperature, with terms for the salt",
        (("temperature", f"{water.temperature:g} deg C"), ("salt", f"{water.salinity:g} g/kg")),
        "Tanaka et al., Metrologia 38 (2001); salt: EOS-80, UNESCO Technical Paper 44",
        "2 parts in a million, if the temperature is right",
    )
    yield Quantity(
        "spare buoyancy",
        f"{format_mass(balance.spare)}, {balance.net:.2f} N",
        "water displaced times its density, less the weight",
        (("displaced", litres), ("density", density), ("weight", format_mass(balance.mass))),
        ARCHIMEDES,
        FOAM,
    )
    yield from _resting(survey)


def _resting(survey: Survey) -> Iterator[Quantity]:
    balance, unit = survey.balance, survey.design.units
    centres = (
        ("middle of the weight, G", _point(balance.g, survey)),
        ("middle of the lift, B", _point(balance.b, survey)),
    )
    yield Quantity(
        "lift point above balance point (BG)",
        format_length(balance.bg, unit),
        "the distance from G to B; water inside flooded pipes is left out of both",
        centres,
        "stability of a submerged body: B above G rights it",
        FOAM,
    )
    yield Quantity(
        "trim at rest",
        trim_words(balance.pitch, balance.roll),
        "it turns until B lies straight above G",
        centres,
        "statics: two forces balance when they act in one line",
        "2 mm of error in G is 3 degrees where BG is 40 mm",
    )


def weights_by_kind(survey: Survey) -> dict[str, float]:
    """The mass [kg] of all parts of each kind."""
    weights: dict[str, float] = {}
    for part in survey.parts:
        weights[part.kind] = weights.get(part.kind, 0.0) + part.mass
    return weights


def _point(at: Vector, survey: Survey) -> str:
    sides = (("ahead of", "aft of"), ("to port of", "to starboard of"), ("above", "below"))
    words = [
        f"{format_length(abs(step), survey.design.units)} {pair[step < 0]}"
        for step, pair in zip(at, sides, strict=True)
    ]
    return f"{words[0]}, {words[1]} and {words[2]} the zero point"


def _money(survey: Survey) -> Iterator[Quantity]:
    bill = survey.bill
    yield Quantity(
        "spent",
        money(bill.spent, bill.currency),
        "the sum of the lines that count; pipe and foam are bought in whole lengths",
        tuple((line.name, f"{line.quantity} x {line.each:.2f}") for line in bill.lines if line.counts),
        "your own prices",
        "pipe is packed by first fit, which can be a length dearer than the best plan",
    )
