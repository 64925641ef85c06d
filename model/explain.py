"""Where the numbers on the screen come from: formula in words, values that went in, source, spread."""

from collections.abc import Iterator

from model.coach.rules_size import outermost
from model.coach.sentences import money, trim_words
from model.explain_air import air_quantities
from model.explain_drag import drag_quantities
from model.explain_frame import frame_quantities
from model.explain_motion import motion_quantities
from model.frame.letters import CutGroup
from model.quantity import Quantity
from model.survey import Survey
from model.units import format_length, format_mass
from model.vectors import Vector
from model.water.stability import TILTER, stability, tilt_by

ARCHIMEDES = "Archimedes' principle"
SIDES = (("ahead of", "aft of"), ("to port of", "to starboard of"), ("above", "below"))
PUSH_IN = "push-in depth scatters by 3 mm a joint, 1 mm with a push-to mark (common practice, no source)"
FOAM = (
    "foam from 20 to 40 kg/m3 and push-in scatter change it by more than the 20 g aimed at: try it in water"
)


def quantities(survey: Survey) -> tuple[Quantity, ...]:
    """The headline numbers of a survey, in the order of the steps."""
    return (
        *_sizes(survey),
        *_cuts(survey),
        *frame_quantities(survey),
        *_floating(survey),
        *air_quantities(survey),
        *drag_quantities(survey),
        *motion_quantities(survey),
        *_money(survey),
    )


def _sizes(survey: Survey) -> Iterator[Quantity]:
    if survey.extents.box is None:
        return
    unit = survey.design.units
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
            f"from the {low} of any part to the {high}; hubs, thrusters, hooks and floats count",
            ((high, _reach(survey, axis, 1)), (low, _reach(survey, axis, -1))),
            "geometry",
            PUSH_IN,
        )


def _reach(survey: Survey, axis: int, side: int) -> str:
    """How far the outermost part reaches along an axis, and which it is."""
    part = outermost(survey, axis, side)
    box = part.box
    at = 0.0 if box is None else (box.high if side > 0 else box.low)[axis]
    return f"{part.name}, {_from_zero(at, axis, survey)} the zero point"


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
        _give_or_take(survey),
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
        _give_or_take(survey),
    )
    yield from _resting(survey)
    yield from _steadiness(survey)


def _give_or_take(survey: Survey) -> str:
    return (
        f"give or take {format_mass(survey.spread.spare)}: foam that nobody weighed, fittings known to 25 %, "
        "a scale that is 2 g off"
    )


def _resting(survey: Survey) -> Iterator[Quantity]:
    balance, unit = survey.balance, survey.design.units
    centres = (
        ("middle of the weight, G", _point(balance.g, survey)),
        ("middle of the lift, B", _point(balance.b, survey)),
    )
    spread = survey.spread
    yield Quantity(
        "lift point above balance point (BG)",
        format_length(balance.bg, unit),
        "the distance from G to B; water inside flooded pipes is left out of both",
        centres,
        "stability of a submerged body: B above G rights it",
        "some mm, from push-in scatter and the weights of fittings",
    )
    yield Quantity(
        "trim at rest",
        trim_words(balance.pitch, balance.roll),
        "it turns until B lies straight above G",
        centres,
        "statics: two forces balance when they act in one line",
        f"give or take {spread.pitch:.1f} degrees of pitch and {spread.roll:.1f} of roll",
    )


def _steadiness(survey: Survey) -> Iterator[Quantity]:
    balance, unit = survey.balance, survey.design.units
    if balance.bg <= 0 or not balance.mass:
        return
    weight, lever = TILTER
    yield Quantity(
        f"tilt from {format_mass(weight)} hung {format_length(lever, unit)} from the middle",
        f"{tilt_by(balance, weight, lever):.1f} degrees",
        "the angle whose tangent is weight times its distance, over the whole weight times BG",
        (("weight", format_mass(balance.mass)), ("BG", format_length(balance.bg, unit))),
        "the inclining experiment, textbook naval architecture",
    )
    calm = stability(survey.design, survey.arrangement, survey.frame, survey.parts, balance, survey.thrust)
    for name, seconds in (("roll", calm.roll_period), ("pitch", calm.pitch_period)):
        if seconds is not None:
            yield Quantity(
                f"one swing in {name}",
                f"{seconds:.1f} s",
                "2 pi times the root of the moment of inertia over weight times BG; the water that moves "
                "along counts in the inertia",
                (("weight", format_mass(balance.mass)), ("BG", format_length(balance.bg, unit))),
                "compound pendulum; added mass by strips, DNV-RP-C205 (from memory)",
                "about a fifth, from the water that moves along",
            )


def weights_by_kind(survey: Survey) -> dict[str, float]:
    """The mass [kg] of all parts of each kind."""
    weights: dict[str, float] = {}
    for part in survey.parts:
        weights[part.kind] = weights.get(part.kind, 0.0) + part.mass
    return weights


def _point(at: Vector, survey: Survey) -> str:
    words = [_from_zero(step, axis, survey) for axis, step in enumerate(at)]
    return f"{words[0]}, {words[1]} and {words[2]} the zero point"


def _from_zero(step: float, axis: int, survey: Survey) -> str:
    """How far something lies from the zero point along an axis, in words without a sign."""
    return f"{format_length(abs(step), survey.design.units)} {SIDES[axis][step < 0]}"


def _money(survey: Survey) -> Iterator[Quantity]:
    bill = survey.bill
    yield Quantity(
        "spent",
        money(bill.spent, bill.currency),
        "the sum of the lines that count; pipe and foam are bought in whole lengths",
        tuple((line.name, f"{line.quantity} x {line.each:.2f}") for line in bill.lines if line.counts),
        "your own prices",
        "pipe by the cheapest cutting plan; beyond 60 pieces of a size by first fit, which can be dearer",
    )
