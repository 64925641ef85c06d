"""Port and starboard made alike: a bar copied across, or a whole side."""

import re
from collections.abc import Callable
from contextlib import suppress
from re import Match
from typing import Any, Literal

from model.design.arrangement import Bar, Plane
from model.design.document import Design
from model.design.edits.bars import FIXED, Crossing, add_bar, bar_between, joint_at, with_joint
from model.design.edits.core import IDS, Ref, arranged, changed, find, fresh_id, fresh_name, put, taken_ids
from model.design.edits.planes import move_plane
from model.design.equipment import TieHole
from model.errors import EditError
from model.units import format_length, snap
from model.vectors import direction_text, grid

Hand = Literal["port", "starboard"]
OTHER: dict[Hand, Hand] = {"port": "starboard", "starboard": "port"}
SIDE_WORDS = {"port": "starboard", "starboard": "port", "left": "right", "right": "left"}
SIDE_WORD = re.compile(r"(?<![a-z])(port|starboard|left|right)(?![a-z])", re.IGNORECASE)
"""A side as a word of its own: no support becomes a supstarboard."""
SAME = 1e-6
"""[m] A side this near to where its mirror image belongs is it."""


def middle_of(design: Design) -> float:
    """Where the middle between port and starboard lies [m]: half-way between the outermost used sides.

    While one hand is still empty it is half-way between the outermost sides, used or not.

    Raises:
        EditError: the frame has fewer than two sides, or no bars.
    """
    return _middles(design)[0]


def _middles(design: Design) -> list[float]:
    """Where the middle may lie [m], the likeliest first: between the used sides, then between all of them."""
    sides = design.arrangement.sides
    used = {joint.side for joint in design.arrangement.joints}
    places = sorted({plane.at for plane in sides if plane.id in used})
    if not places:
        raise EditError("there must be bars on one side before the other can be made like it")
    every = [plane.at for plane in sides]
    between, half_way = (places[0] + places[-1]) / 2, (min(every) + max(every)) / 2
    found = [between] if len(places) > 1 else []
    if abs(half_way - between) > SAME:
        found.append(half_way)
    if not found:
        raise EditError("there must be two sides before one can be like the other; add a plane for the other")
    return found


def copy_bar_across(design: Design, bar: str) -> Design:
    """A bar copied to the other side, with a new side plane where there is none.

    Raises:
        EditError: it runs across the middle, so that it has no other side, or a bar is there already.
    """
    record = find(design, Ref("bar", bar))
    middle = middle_of(design)
    start, end = ends_of(design, record)
    places = [find(design, Ref("side", crossing[1])).at - middle for crossing in (start, end)]
    if min(places) < -SAME and max(places) > SAME:
        raise EditError(f"'{record.name}' runs across the middle; it has no other side to be copied to")
    if max(abs(place) for place in places) <= SAME:
        raise EditError(f"'{record.name}' lies in the middle; it is its own mirror image")
    for crossing in (start, end):
        design = _with_side_across(design, crossing[1], middle)
    first, second = (_across(design, crossing, middle) for crossing in (start, end))
    design = _renamed(add_bar(design, first, second, record.pipe), record.name)
    for here, there in ((start, first), (end, second)):
        design = _held_alike(design, here, there)
    return design


def ends_of(design: Design, bar: Bar) -> tuple[Crossing, Crossing]:
    start, end = (find(design, Ref("joint", joint)).planes for joint in (bar.start, bar.end))
    return start, end


def _side_at(design: Design, at: float) -> Plane | None:
    return next((plane for plane in design.arrangement.sides if abs(plane.at - at) <= SAME), None)


def _with_side_across(design: Design, side: str, middle: float) -> Design:
    """The design with a side plane at the mirror image of another."""
    plane = find(design, Ref("side", side))
    at = snap(2 * middle - plane.at)
    if _side_at(design, at):
        return design
    name = fresh_name(other_hand(plane.name), (other.name for other in design.arrangement.sides))
    new = Plane(id=fresh_id(IDS["side"], taken_ids(design, "side")), name=name[:80], at=at)
    return arranged(design, sides=(*design.arrangement.sides, new))


def _across(design: Design, crossing: Crossing, middle: float) -> Crossing:
    at = find(design, Ref("side", crossing[1])).at
    other = _side_at(design, 2 * middle - at)
    if other is None:
        raise EditError(f"there is no side at {format_length(2 * middle - at, design.units)} to mirror to")
    return crossing[0], other.id, crossing[2]


def other_hand(name: str) -> str:
    """A name with port and starboard changed over, and left and right.

    >>> other_hand("port skid"), other_hand("Starboard rail"), other_hand("left support")
    ('starboard skid', 'Port rail', 'right support')
    """

    def changed_over(found: Match[str]) -> str:
        word = SIDE_WORDS[found[0].lower()]
        return word.upper() if found[0].isupper() else word.title() if found[0].istitle() else word

    return SIDE_WORD.sub(changed_over, name)


def _renamed(design: Design, like: str) -> Design:
    """The newest bar called after the one that it is the image of."""
    *others, new = design.arrangement.bars
    wanted = other_hand(like)
    if wanted == like:
        return design
    name = fresh_name(wanted[:80], (bar.name for bar in others))
    return arranged(design, bars=(*others, changed(new, name=name)))


def mirror_sides(design: Design, hand: Hand) -> Design:
    """The side ``hand`` copied over the other: planes, bars, and what is fixed to them.

    Nothing of the other side is taken away; it may be empty.

    Raises:
        EditError: a bar is odd: it has no partner, and could not be kept in a frame that is alike
            on both sides.  Or there is nothing on the side that is to be copied.
    """
    first, *others = _middles(design)
    try:
        return _mirrored(design, hand, first)
    except EditError:
        for middle in others:
            with suppress(EditError):
                return _mirrored(design, hand, middle)
        raise


def _mirrored(design: Design, hand: Hand, middle: float) -> Design:
    sign = 1 if hand == "port" else -1
    if all(_out(design, joint.planes, sign, middle) <= SAME for joint in design.arrangement.joints):
        raise EditError(f"nothing is on the {hand} side yet; take the {OTHER[hand]} side as the right one")
    design = _mirrored_planes(design, sign, middle)
    for joint in design.arrangement.joints:  # bars across the middle are split alike on both sides
        if _out(design, joint.planes, sign, middle) > SAME:
            design = with_joint(design, _across(design, joint.planes, middle))
    for bar in design.arrangement.bars:
        ends = ends_of(design, bar)
        places = [_out(design, crossing, sign, middle) for crossing in ends]
        if min(places) < -SAME or max(places) <= SAME:
            continue
        crossings = [_across(design, crossing, middle) for crossing in ends]
        if bar_between(design, crossings[0], crossings[1]) is None:
            design = _renamed(add_bar(design, crossings[0], crossings[1], bar.pipe), bar.name)
        design = _fixed_across(design, bar, crossings)
    for joint in design.arrangement.joints:
        if _out(design, joint.planes, sign, middle) > SAME:
            design = _held_alike(design, joint.planes, _across(design, joint.planes, middle))
    _check_odd(design, middle)
    return design


def _held_alike(design: Design, here: Crossing, there: Crossing) -> Design:
    """The fitting that was picked for a joint, and how it is held, for one where as many bars end.

    What the team has decided for the other joint already stays.
    """
    joint, image = joint_at(design.arrangement, here), joint_at(design.arrangement, there)
    if joint is None or image is None or joint.id == image.id:
        return design
    if len(_ending_at(design, joint.id)) != len(_ending_at(design, image.id)):
        return design
    like = changed(image, fitting=image.fitting or joint.fitting, joining=image.joining or joint.joining)
    return design if like == image else put(design, Ref("joint", image.id), like)


def _ending_at(design: Design, joint: str) -> list[Bar]:
    return [bar for bar in design.arrangement.bars if joint in (bar.start, bar.end)]


def _out(design: Design, crossing: Crossing, sign: int, middle: float) -> float:
    """How far a crossing lies from the middle [m], above zero towards one hand."""
    return float(sign * (find(design, Ref("side", crossing[1])).at - middle))


def _mirrored_planes(design: Design, sign: int, middle: float) -> Design:
    """The sides of one hand set to the images of the other's, from the outermost inwards."""

    def of_hand(hand: int) -> list[Plane]:
        planes = [plane for plane in design.arrangement.sides if hand * (plane.at - middle) > SAME]
        return sorted(planes, key=lambda plane: -hand * (plane.at - middle))

    loose = [plane for plane in of_hand(-sign) if not _is_image(design, plane, sign, middle)]
    for plane in of_hand(sign):
        at = snap(2 * middle - plane.at)
        if _side_at(design, at):
            continue
        if loose:
            design = move_plane(design, "side", loose.pop(0).id, at)
        else:
            design = _with_side_across(design, plane.id, middle)
    return design


def _is_image(design: Design, plane: Plane, sign: int, middle: float) -> bool:
    other = _side_at(design, 2 * middle - plane.at)
    return other is not None and sign * (other.at - middle) > 0


def _check_odd(design: Design, middle: float) -> None:
    """Refuses a design in which bars have no partner."""
    odd = [bar for bar in design.arrangement.bars if not _has_partner(design, bar, middle)]
    if odd:
        odd.sort(key=lambda bar: len({crossing[1] for crossing in ends_of(design, bar)}))  # those along first
        names = ", ".join(f"'{bar.name}'" for bar in odd[:3]) + (" and others" if len(odd) > 3 else "")
        have, them = ("has", "it") if len(odd) == 1 else ("have", "them")
        raise EditError(
            f"{names} {have} no partner on the other side; copy {them} across or remove {them} first"
        )


def _has_partner(design: Design, bar: Bar, middle: float) -> bool:
    images: list[Crossing] = []
    for station, side, level in ends_of(design, bar):
        image = _side_at(design, 2 * middle - find(design, Ref("side", side)).at)
        if image is None:
            return False
        images.append((station, image.id, level))
    return bar_between(design, images[0], images[1]) is not None


def _fixed_across(design: Design, bar: Bar, crossings: list[Crossing]) -> Design:
    """What is fixed to a bar copied to its image, where nothing of the kind is there yet."""
    image = bar_between(design, crossings[0], crossings[1])
    if image is None or image.id == bar.id:
        return design
    start = joint_at(design.arrangement, crossings[0])
    turned = start is not None and image.start != start.id
    for field in FIXED:
        items = getattr(design.arrangement, field)
        if any(item.bar == image.id for item in items):
            continue
        for item in [item for item in items if item.bar == bar.id]:
            new = _image_of(design, item, image.id, turned)
            design = arranged(design, **{field: (*getattr(design.arrangement, field), new)})
    return design


def _image_of(design: Design, item: Any, bar: str, turned: bool) -> Any:
    kind = type(item).__name__.lower()
    changes: dict[str, Any] = {
        "id": fresh_id(IDS.get(kind, "i"), taken_ids(design, kind)),
        "name": fresh_name(other_hand(item.name)[:80], _names(design, kind)),
        "bar": bar,
        "at": 1 - item.at if turned else item.at,
    }
    if kind == "thruster":
        changes["pull"] = None  # what was measured was measured on the other motor
    flips: tuple[tuple[str, Callable[[Any], Any]], ...] = (
        ("to", _flipped),
        ("face", _flipped),
        ("beside", _flipped),
        ("offset", lambda offset: (offset[0], -offset[1], offset[2])),
        ("hand", {"left": "right", "right": "left"}.get),
        ("tie_holes", lambda holes: tuple(_hole_across(hole, turned) for hole in holes)),
    )
    for field, flip in flips:
        value = getattr(item, field, None)
        if value is not None:
            changes[field] = flip(value)
    return changed(item, **changes)


def _hole_across(hole: TieHole, turned: bool) -> TieHole:
    """A hole for a tie at its mirror image, on a bar that may run the other way."""
    return hole.but(face=_flipped(hole.face), along=-hole.along if turned else hole.along)


def _names(design: Design, kind: str) -> list[str]:
    return [item.name for item in getattr(design.arrangement, f"{kind}s", ())]


def _flipped(direction: str) -> str:
    x, y, z = grid(direction)
    return direction_text((x, -y, z))
