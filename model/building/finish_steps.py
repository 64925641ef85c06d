"""Steps from the drilled frame to one that is ready for the water."""

from collections.abc import Iterator

from model.building.cautions import CEMENT, ELECTRIC, HOT, KNIFE, TIES, WEIGHTS
from model.building.fitting_steps import from_sawn_end, side_words
from model.building.step import Step
from model.design import Ballast, Float
from model.power.diagram import wiring_lines
from model.survey import Survey
from model.thrust.mounts import mount_plans
from model.units import format_length, format_mass

JOIN = "join"
TETHER = "tether"


def finish_steps(survey: Survey) -> Iterator[Step]:
    """Mounts, floats, tether, wires, and how the joints are held."""
    yield from _mounts(survey)
    yield from _gear(survey)
    yield from _tether(survey)
    yield from _wiring(survey)
    if survey.frame.bars:
        yield _join(survey)
        yield Step(
            "tug",
            "Tug test: pull on every joint, every mount and the tether",
            ("each joint both ways, each thruster along its shaft, the tether at its tie-off",),
            "hands",
            (),
            "Nothing moves, turns or clicks; push-to marks are still at the face of every socket.",
        )


def _mounts(survey: Survey) -> Iterator[Step]:
    plans = mount_plans(survey.design, survey.arrangement, survey.frame, survey.parts)
    if not plans:
        return
    pieces = []
    for plan in plans:
        needed = ", ".join(f"{count} {what}" for count, what in plan.parts)
        bar = survey.frame.bars[next(t.bar for t in survey.arrangement.thrusters if t.id == plan.thruster)]
        pieces.append(f"{plan.name} on {bar.letter} {bar.name}: {needed}")
    yield Step(
        "mounts",
        "Fix the thrusters",
        tuple(pieces),
        "cable ties and pliers, side cutter, or clamps and screwdriver",
        TIES,
        "The propeller turns free by hand and nothing is in its disc or stream; the motor does not twist.",
    )


def _gear(survey: Survey) -> Iterator[Step]:
    run = survey.arrangement
    pieces = []
    strapped: tuple[Float | Ballast, ...] = (*run.floats, *run.ballasts)
    for item in strapped:
        if item.beside is None:
            continue
        bar = survey.frame.bars[item.bar]
        side = side_words(item.beside)
        size = (
            format_length(item.length, survey.design.units)
            if isinstance(item, Float)
            else format_mass(item.mass)
        )
        pieces.append(
            f"{item.name}, {size}: {_where(survey, item.bar, item.at)}, on the {side} of {bar.name}"
        )
    pieces += [f"{gear.name}: {_where(survey, gear.bar, gear.at)}" for gear in run.attachments]
    pieces += [f"plug '{plug.name}': {_where(survey, plug.bar, plug.at)}, glued in" for plug in run.plugs]
    if pieces:
        cautions = (*KNIFE, *TIES, *(WEIGHTS if run.ballasts else ()), *(HOT if run.plugs else ()))
        yield Step(
            "floats",
            "Fix floats, weights and gear",
            tuple(pieces),
            "foam knife and board, cable ties, ruler",
            cautions,
            "Floats high, weights low; nothing slides along its pipe when you shake the frame.",
        )


def _where(survey: Survey, bar: str, share: float) -> str:
    place = survey.frame.bars[bar]
    at = format_length(from_sawn_end(place, share), survey.design.units)
    return (
        f"its middle {at} from the sawn end of {place.letter} at {survey.frame.joints[place.joints[0]].name}"
    )


def _tether(survey: Survey) -> Iterator[Step]:
    tether = survey.arrangement.tether
    if tether is None:
        return
    floats = f"{tether.floats} small floats along {tether.hanging:.3g} m" if tether.floats else "no floats"
    yield Step(
        TETHER,
        "Tie on the tether",
        (f"{tether.name}: {_where(survey, tether.bar, tether.at)}", floats),
        "soft ties in two places, tape",
        TIES,
        "Pull on the tether: the frame takes the pull, and the wires at the motors stay slack.",
    )


def _wiring(survey: Survey) -> Iterator[Step]:
    if survey.wiring is None:
        if survey.arrangement.thrusters:
            yield Step(
                "wiring",
                "Check the wiring, dry, on the table",
                ("no wiring is planned yet: plan it on the page of the wires first",),
                "multimeter",
                ELECTRIC,
                "Fuse at the battery; each switch turns the motor that it names, the right way round.",
            )
        return
    yield Step(
        "wiring",
        "Check the wiring, dry, on the table",
        wiring_lines(survey.arrangement, survey.wiring, survey.design.units),
        "multimeter, small screwdriver",
        (*ELECTRIC, *HOT[:1]),
        "No short between the two poles; each switch turns the motor that it names, the right way round.",
    )


def _join(survey: Survey) -> Step:
    ways: dict[str, list[str]] = {}
    for joint in survey.frame.joints.values():
        ways.setdefault(joint.joining, []).append(joint.name)
    pieces = [f"{way}: {', '.join(names)}" for way, names in ways.items()]
    cautions: tuple[str, ...] = ()
    if "cemented" in ways:
        cautions += (*CEMENT, "A cemented joint cannot be opened again: everything must fit dry first.")
    if "pinned" in ways:
        pin = survey.design.stock.pin
        pieces.append(f"{pin.each_end} {pin.name} at each pipe end, through both walls")
        cautions += (
            "Drilling for pins: clamp, eye protection, no hand behind the wall, an adult stands by.",
        )
    if "dry" in ways:
        pieces.append("dry joints may pull apart: pin or cement them before a pool day")
    return Step(
        JOIN,
        "Make the joints hold",
        tuple(pieces),
        "drill and screwdriver, or primer and cement, as chosen for each joint",
        cautions,
        "No joint turns by hand; cement has set for as long as its maker says.",
    )
