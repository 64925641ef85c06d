"""Edits of what is fixed to bars: thrusters, floats, ballast, attachments, tether, openings."""

from typing import Any, Literal

from model.design.arrangement import Bar
from model.design.document import Design
from model.design.edits.core import (
    IDS,
    Ref,
    arranged,
    changed,
    find,
    fresh_id,
    fresh_name,
    pieces,
    put_all,
    set_field,
    taken_ids,
)
from model.design.equipment import Attachment, Ballast, Float, Opening, Plug, Tether, Thruster
from model.errors import EditError
from model.units import usual_length

Where = Literal["highest", "lowest", "first"]
FLOAT_LENGTH = (150, 6)  # [mm], [in] of a new piece of foam, or shorter where its bar is
BALLAST_MASS = 0.1  # [kg]
TETHER_DIAMETER = 0.008  # [m]
TETHER_HANGING = (3000, 120)  # [mm], [in]
TETHER_MASS = 0.06  # [kg/m]
TETHER_MASS_IN_WATER = 0.01  # [kg/m]
ATTACHMENTS: dict[str, tuple[tuple[float, float, float], float, float]] = {
    "hook": ((0.10, 0.02, 0.04), 0.03, 0.02),
    "camera": ((0.06, 0.04, 0.04), 0.08, 0.02),
    "other": ((0.05, 0.05, 0.05), 0.05, 0.02),
}
"""Size [m], weight in air and in water [kg] of a new attachment, until the team measures its own."""


def bar_length(design: Design, bar: str) -> float:
    """[m] Centre to centre of the joints at the ends of a bar."""
    record = find(design, Ref("bar", bar))
    ends = [find(design, Ref("joint", joint)) for joint in (record.start, record.end)]
    squares = 0.0
    for kind in ("station", "side", "level"):
        first, second = (find(design, Ref(kind, getattr(joint, kind))).at for joint in ends)
        squares += (second - first) ** 2
    return float(squares**0.5)


def _height(design: Design, bar: Bar) -> float:
    """[m] Twice the height of the middle of a bar: enough to compare by."""
    joints = (find(design, Ref("joint", joint)) for joint in (bar.start, bar.end))
    return float(sum(find(design, Ref("level", joint.level)).at for joint in joints))


def _a_bar(design: Design, where: Where) -> str:
    bars = design.arrangement.bars
    if not bars:
        raise EditError("there is no bar to fix it to yet; build the frame on the Layout page first")
    if where == "first":
        return bars[0].id
    heights = {bar.id: _height(design, bar) for bar in bars}
    best = (max if where == "highest" else min)(heights.values())
    return max((b.id for b in bars if heights[b.id] == best), key=lambda b: bar_length(design, b))


def _first(design: Design, kind: str) -> str:
    known = pieces(design, kind)
    if not known:
        raise EditError(f"there is no {kind} to use yet; add one on the Stock page first")
    identity: str = known[0].id
    return identity


def _labels(design: Design, kind: str, name: str) -> dict[str, str]:
    return {
        "id": fresh_id(IDS[kind], taken_ids(design, kind)),
        "name": fresh_name(name, (item.name for item in pieces(design, kind))),
    }


def add_thruster(design: Design, bar: str | None = None, motor: str | None = None) -> Design:
    """A new thruster that pushes ahead, in the middle of a bar.

    Raises:
        EditError: there is no bar or no motor yet.
    """
    mounts = pieces(design, "mount")
    new = Thruster(
        **_labels(design, "thruster", "thruster 1"),
        bar=bar or _a_bar(design, "first"),
        motor=motor or _first(design, "motor"),
        mount=mounts[0].id if mounts else None,
    )
    return put_all(design, "thruster", (*design.arrangement.thrusters, new))


def add_float(design: Design, bar: str | None = None, foam: str | None = None) -> Design:
    """A new piece of foam round a bar; round the longest of the highest bars if none is named.

    Raises:
        EditError: there is no bar or no foam yet.
    """
    where = bar or _a_bar(design, "highest")
    usual = usual_length(design.units, *FLOAT_LENGTH)
    new = Float(
        **_labels(design, "float", "float 1"),
        bar=where,
        foam=foam or _first(design, "foam"),
        length=min(usual, bar_length(design, where) / 2 or usual),
    )
    return put_all(design, "float", (*design.arrangement.floats, new))


def add_ballast(design: Design, bar: str | None = None) -> Design:
    """A new weight under a bar; under the longest of the lowest bars if none is named."""
    new = Ballast(
        **_labels(design, "ballast", "weight 1"), bar=bar or _a_bar(design, "lowest"), mass=BALLAST_MASS
    )
    return put_all(design, "ballast", (*design.arrangement.ballasts, new))


def add_attachment(
    design: Design, kind: Literal["hook", "camera", "other"] = "other", bar: str | None = None
) -> Design:
    """A new hook, camera or other part, with a size and weight to be replaced by the team's own."""
    size, mass, wet = ATTACHMENTS[kind]
    new = Attachment(
        **_labels(design, "attachment", "part 1" if kind == "other" else kind),
        bar=bar or _a_bar(design, "first"),
        kind=kind,
        size=size,
        mass=mass,
        mass_in_water=wet,
    )
    return put_all(design, "attachment", (*design.arrangement.attachments, new))


def add_opening(design: Design, bar: str | None = None, face: str = "+z") -> Design:
    """A new drilled hole in the middle of a bar."""
    new = Opening(
        **_labels(design, "opening", "hole 1"),
        bar=bar or _a_bar(design, "first"),
        face=face,
        diameter=design.brief.thresholds.hole_least or Opening.model_fields["diameter"].default,
    )
    return put_all(design, "opening", (*design.arrangement.openings, new))


def add_plug(design: Design, bar: str | None = None) -> Design:
    """A new plug in the middle of a bar's bore."""
    new = Plug(**_labels(design, "plug", "plug 1"), bar=bar or _a_bar(design, "first"))
    return put_all(design, "plug", (*design.arrangement.plugs, new))


def add_tether(design: Design, bar: str | None = None) -> Design:
    """A tether tied to a bar, with values to be replaced by the team's own.

    Raises:
        EditError: there is one already, or no bar yet.
    """
    if design.arrangement.tether:
        raise EditError("there is a tether already; a vehicle has one")
    new = Tether(
        id=fresh_id(IDS["tether"], taken_ids(design, "tether")),
        name="tether",
        bar=bar or _a_bar(design, "highest"),
        diameter=TETHER_DIAMETER,
        hanging=usual_length(design.units, *TETHER_HANGING),
        mass_per_m=TETHER_MASS,
        mass_in_water_per_m=TETHER_MASS_IN_WATER,
    )
    return arranged(design, tether=new)


def distance_along(design: Design, ref: Ref) -> float:
    """[m] How far along its bar something sits, from the joint where the bar starts."""
    item = find(design, ref)
    return float(item.at * bar_length(design, item.bar))


def place_along(design: Design, ref: Ref, distance: float) -> Design:
    """Something moved along its bar, to a distance [m] from the joint where the bar starts.

    Raises:
        EditError: that is not on the bar.
    """
    length = bar_length(design, find(design, ref).bar)
    share = distance / length if length else 0.5
    if not -1e-9 <= share <= 1 + 1e-9:
        raise EditError("that is not on the bar; it must lie between its two joints")
    return set_field(design, ref, "at", min(1.0, max(0.0, share)))


def nudge(design: Design, ref: Ref, by: float) -> Design:
    """Something moved a little along its bar [m], and no further than its ends."""
    item = find(design, ref)
    length = bar_length(design, item.bar)
    wanted = item.at * length + by
    return place_along(design, ref, min(length, max(0.0, wanted)))


def put_on_bar(design: Design, ref: Ref, bar: str) -> Design:
    """Something moved to another bar, at the same share of the way along it."""
    find(design, Ref("bar", bar))
    return set_field(design, ref, "bar", bar)


def copy_item(design: Design, ref: Ref) -> Design:
    """A second piece like the first, with an id and a name of its own, put after it."""
    item = find(design, ref)
    taken = taken_ids(design, ref.kind)
    fresh = fresh_id(IDS.get(ref.kind, f"{item.id[:36]}-"), taken)
    name = fresh_name(item.name, (other.name for other in pieces(design, ref.kind)))
    items: list[Any] = []
    for other in pieces(design, ref.kind):
        items.append(other)
        if other.id == item.id:
            items.append(changed(item, id=fresh, name=name))
    return put_all(design, ref.kind, items)


def remove_item(design: Design, ref: Ref) -> Design:
    """Something that is fixed to a bar taken away."""
    find(design, ref)
    if ref.kind == "tether":
        return arranged(design, tether=None)
    return put_all(design, ref.kind, (item for item in pieces(design, ref.kind) if item.id != ref.id))


def rename(design: Design, ref: Ref, name: str) -> Design:
    """A new name; nothing refers to names, so nothing else changes."""
    return set_field(design, ref, "name", name)
