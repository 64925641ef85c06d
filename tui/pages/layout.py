"""The layout: overall size, planes and bars; the saw cuts follow."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING, Any

from model.design import Plane, edits, plane_groups
from model.design.edits import PLANE_KINDS, Crossing, Ref
from model.frame.layout import BarPlace
from tui.forms.entry import Entry, field
from tui.forms.items import Column, Row
from tui.forms.kinds import DERIVED_LENGTH, LENGTH, TEXT, Options, choice
from tui.forms.listing import Asking, Listing, ListSection
from tui.forms.section import Act, FormSection, Section
from tui.pages.choosing import pieces_of
from tui.pages.page import Page
from tui.pages.words import bare, shown, sizes

if TYPE_CHECKING:
    from model.coach.finding import About
    from model.review import Report

ARRANGEMENT = Ref("arrangement")
SIZE_NAMES = ("length", "width", "height")
NUDGE = {"mm": 0.005, "in": 0.0254 / 4}
"""[m] One step of the arrow keys."""
JOININGS = (
    ("dry: pushed in", "dry"),
    ("pinned: screw or tie", "pinned"),
    ("cemented for good", "cemented"),
)
BORES = choice(("flooded: water is let in", "flooded"), ("sealed for good", "sealed"))


def overall(report: Report) -> str:
    """The size of the whole vehicle against the limit."""
    extents = report.survey.extents
    words = f"Overall {sizes(report, extents.size)}, hubs, thrusters and floats included"
    if extents.limit is None:
        return f"{words}. The brief sets no size limit."
    limit = f"{words}; the limit is {sizes(report, extents.limit)}"
    over = [
        f"{shown(report, excess)} too much in {name}"
        for name, excess in zip(SIZE_NAMES, extents.over, strict=True)
        if excess
    ]
    return f"{limit}: {', '.join(over) if over else 'it fits'}."


def size_entries(report: Report) -> tuple[Entry, ...]:
    """Drive the frame by its overall size; choose flooded or sealed."""
    return (
        *(_size_entry(report, number) for number in range(3)),
        field(
            ARRANGEMENT,
            "bores",
            "The pipes are",
            BORES,
            help="Sealed is for good: every joint is glued, no hole is drilled, nothing can be changed "
            "later. Flooded is the usual way.",
        ),
        field(ARRANGEMENT, "joining", "The joints are", choice(*JOININGS)),
        field(ARRANGEMENT, "name", "Name", TEXT, help="What this arrangement is called."),
        field(ARRANGEMENT, "notes", "Notes", TEXT, help="Anything to remember about it."),
    )


def _size_entry(report: Report, number: int) -> Entry:
    kind, now = PLANE_KINDS[number], report.survey.extents.size[number]
    return Entry(
        key=f"size-{number}",
        label=f"Overall {SIZE_NAMES[number]}",
        kind=DERIVED_LENGTH,
        get=lambda report: report.survey.extents.size[number],
        edit=lambda wanted: lambda design: edits.resize(design, kind, now, wanted),
        help=f"Change it and all {kind}s move in proportion; the cuts follow.",
    )


def plane_key(kind: str, plane: Plane) -> str:
    """The key of a plane's row."""
    return f"{kind}:{plane.id}"


def plane_rows(report: Report) -> list[Row]:
    """Stations, sides and levels, each in their order."""
    return [
        Row(
            plane_key(kind, plane),
            (
                plane.name,
                kind,
                bare(report, plane.at),
                bare(report, edits.spacing_to_next(report.design, kind, plane.id)),
            ),
        )
        for kind in PLANE_KINDS
        for plane in edits.ordered_planes(report.design, kind)
    ]


def plane_entries(report: Report, key: str) -> tuple[Entry, ...]:
    """Name, position and spacing of a plane."""
    kind, _, identity = key.partition(":")
    ref = Ref(kind, identity)
    about = edits.find(report.design, ref).name
    return (
        Entry(
            "plane-name",
            "Name",
            TEXT,
            lambda report: edits.find(report.design, ref).name,
            lambda name: lambda design: edits.rename(design, ref, name),
            "A word that your team uses: bow, mast, deck.",
            about=about,
        ),
        Entry(
            "plane-at",
            "Position",
            LENGTH,
            lambda report: edits.find(report.design, ref).at,
            lambda at: lambda design: edits.move_plane(design, kind, identity, at),
            "Stations count ahead, sides to port, levels up, from a zero point of your own. "
            "In the table, left and right move it a little.",
            about=about,
        ),
        Entry(
            "plane-spacing",
            "To the next one",
            LENGTH,
            lambda report: edits.spacing_to_next(report.design, kind, identity),
            lambda gap: lambda design: edits.set_spacing(design, kind, identity, gap),
            "Centre to centre; the next plane and all beyond it move.",
            about=about,
        ),
    )


def add_plane(section: ListSection) -> None:
    """Ask which kind of plane, and add it."""
    options = (
        ("station: across the vehicle, further ahead", "station"),
        ("side: along the vehicle, further to port", "side"),
        ("level: higher up", "level"),
    )
    chosen = (section.table.chosen or "station:").partition(":")[0]

    def then(kind: str) -> None:
        section.ask(f"{kind} added", lambda design: edits.add_plane(design, kind))

    section.pick("Which kind of plane?", options, then, chosen)


def remove_plane(report: Report, key: str) -> Asking:
    """A plane with all that lies on it."""
    kind, _, identity = key.partition(":")
    name = edits.find(report.design, Ref(kind, identity)).name
    return f"{kind} {name} removed", lambda design: edits.remove_plane(design, kind, identity)


def nudge_plane(report: Report, key: str, steps: int) -> Asking:
    """A plane moved a little."""
    kind, _, identity = key.partition(":")
    plane = edits.find(report.design, Ref(kind, identity))
    at = plane.at + steps * NUDGE[report.design.units]
    return f"{kind} {plane.name} to {shown(report, at)}", lambda design: edits.move_plane(
        design, kind, identity, at
    )


def locate_plane(report: Report, about: About) -> str | None:
    """The row of a plane."""
    if about.kind not in PLANE_KINDS:
        return None
    known = {plane.id for plane in edits.pieces(report.design, about.kind)}
    return f"{about.kind}:{about.id}" if about.id in known else None


def bar_rows(report: Report) -> list[Row]:
    """Each bar with its lengths."""
    frame = report.survey.frame
    return [
        Row(
            bar.id,
            (
                bar.letter,
                bar.name,
                " - ".join(frame.joints[joint].name for joint in bar.joints),
                bare(report, bar.spacing),
                bare(report, bar.exposed),
                bare(report, bar.cut),
            ),
        )
        for bar in frame.bars.values()
    ]


def bar_note(report: Report, key: str) -> str:
    """Where a bar runs and what is fixed to it."""
    frame = report.survey.frame
    bar = frame.bars[key]
    ends = " to ".join(f"'{frame.joints[joint].name}'" for joint in bar.joints)
    fixed = ", ".join(item.name for item in edits.fixed_to(report.design, key))
    return f"Runs from {ends}" + (f"; carries {fixed}." if fixed else ".")


def bar_entries(report: Report, key: str) -> tuple[Entry, ...]:
    """Name, pipe, and three ways to drive the length of a bar."""
    ref = Ref("bar", key)
    bar = report.survey.frame.bars[key]
    return (
        field(ref, "name", "Name", TEXT, help="A word that your team uses.", about=bar.name),
        field(ref, "pipe", "Pipe", pieces_of("pipe", "first of the stock"), about=bar.name),
        _length_entry(bar, "spacing", "Centre to centre"),
        _length_entry(bar, "exposed", "Pipe still showing"),
        _length_entry(bar, "cut", "Cut"),
    )


def _length_entry(bar: BarPlace, name: str, label: str) -> Entry:
    now = getattr(bar, name)

    def stretched(wanted: float) -> Any:
        return lambda design: edits.stretch_bar(design, bar.id, now if now is not None else wanted, wanted)

    return Entry(
        key=f"bar-{name}",
        label=label,
        kind=DERIVED_LENGTH,
        get=lambda report: getattr(report.survey.frame.bars[bar.id], name),
        edit=stretched,
        help="Change any of the three lengths: the plane at the far end moves, and all beyond it.",
        about=bar.name,
    )


def add_bar(section: ListSection) -> None:
    """Ask for two crossings, and put a bar between them."""
    report = section.report
    crossings = _crossings(report) if report else ()
    if len(crossings) < 2:
        section.say(
            "! A bar needs two crossings; add stations, sides and levels in the section Planes first."
        )
        return

    def second(start: Crossing) -> None:
        in_line = tuple((words, end) for words, end in crossings if _in_line(start, end))
        section.pick(
            "Where does it end? Only crossings in one line are listed.",
            in_line,
            lambda end: finish(start, end),
        )

    def finish(start: Crossing, end: Crossing) -> None:
        section.ask("bar added", lambda design: edits.add_bar(design, start, end))

    section.pick("Where does the bar start? Station, side, level:", crossings, second)


def _crossings(report: Report) -> Options:
    arrangement = report.design.arrangement
    stations, sides, levels = plane_groups(arrangement)
    return tuple(
        (edits.crossing_name(arrangement, (x.id, y.id, z.id)), (x.id, y.id, z.id))
        for x in stations
        for y in sides
        for z in levels
    )


def _in_line(start: Crossing, end: Crossing) -> bool:
    return sum(a != b for a, b in zip(start, end, strict=True)) == 1


def split_bar(section: ListSection) -> None:
    """Ask for a plane that crosses the bar, and split it there."""
    report, key = section.report, section.table.chosen
    if report is None or key is None:
        return
    planes = _planes_across(report, key)
    if not planes:
        section.say("! No plane crosses this bar between its ends; add one in the section Planes first.")
        return
    name = report.survey.frame.bars[key].name
    section.pick(
        f"Split '{name}' with a tee at which plane?",
        planes,
        lambda plane: section.ask(f"bar {name} split", lambda design: edits.split_bar(design, key, plane)),
    )


def _planes_across(report: Report, key: str) -> Options:
    bar = report.survey.frame.bars[key]
    found = []
    for number, kind in enumerate(PLANE_KINDS):
        low, high = sorted((bar.start[number], bar.end[number]))
        found += [
            (f"{kind} {plane.name} at {shown(report, plane.at)}", plane.id)
            for plane in edits.ordered_planes(report.design, kind)
            if low < plane.at < high
        ]
    return tuple(found)


def to_the_other_side(section: ListSection) -> None:
    """The same bar on the other side of the vehicle."""
    report, key = section.report, section.table.chosen
    if report is not None and key is not None:
        name = report.survey.frame.bars[key].name
        section.ask(f"bar {name} copied across", lambda design: edits.copy_bar_across(design, key))


def remove_bar(report: Report, key: str) -> Asking:
    """A bar with what is fixed to it."""
    name = report.survey.frame.bars[key].name
    count = len(edits.fixed_to(report.design, key))
    things = f" with {count} {'thing' if count == 1 else 'things'} on it" if count else ""
    return f"bar {name} removed{things}", lambda design: edits.remove_bar(design, key)


def locate_bar(report: Report, about: About) -> str | None:
    """The bar itself, or the first one at a joint."""
    frame = report.survey.frame
    if about.kind == "bar" and about.id in frame.bars:
        return about.id
    joint = frame.joints.get(about.id) if about.kind == "joint" else None
    return joint.arms[0].bar if joint and joint.arms else None


PLANES = Listing(
    title="Planes",
    columns=(
        Column("Plane"),
        Column("Kind", 8),
        Column("Position", 9, right=True),
        Column("To next", 9, right=True),
    ),
    rows=plane_rows,
    entries=plane_entries,
    marks=lambda report, key: (key.partition(":")[0], key.partition(":")[2]),
    empty="No planes yet. Press Add: a frame needs two stations, two sides and one level or more.",
    add=add_plane,
    remove=remove_plane,
    nudge=nudge_plane,
    locate=locate_plane,
)
BARS = Listing(
    title="Bars",
    columns=(
        Column("", 2),
        Column("Bar"),
        Column("From - to", least=70),
        Column("Centres", 9, right=True),
        Column("Showing", 9, right=True),
        Column("Cut", 9, right=True),
    ),
    rows=bar_rows,
    entries=bar_entries,
    marks=lambda report, key: ("bar", key),
    empty="No bars yet. Press Add and choose two crossings of planes.",
    add=add_bar,
    remove=remove_bar,
    acts=(
        Act("across", "Copy across", to_the_other_side),
        Act("split", "Split", split_bar),
    ),
    note=bar_note,
    locate=locate_bar,
)


class LayoutPage(Page):
    """The frame on its planes."""

    WHY = (
        "Small and light is quick, large and wide is steady; a broad front costs speed. "
        "Change a length and the saw cuts follow."
    )
    SAFETY = (
        "Saws and cutters: eye protection on, clamp the work, an adult at the saw, fingers clear of the "
        "blade. A ratchet cutter throws shards and bites fingers; sweep up dust and do not breathe it. "
        "Sealed pipes are glued with primer and solvent cement: moving air, gloves, no flames, and never "
        "heat PVC. A sealed pipe is never heated, is opened slowly, and is sealed for good. The makers' "
        "instructions, your school's rules and local codes come first."
    )
    HELP = (
        "The frame lies on planes: stations lie across the vehicle, sides along it, levels flat. A joint "
        "is where three planes cross, a bar runs between two joints in one line.\n\n"
        "Section Size: change an overall size and all planes move in proportion. Section Planes: name and "
        "move them. Section Bars: add a bar by choosing two crossings, split one where a plane crosses it "
        "to get a tee, or change a cut and let its plane move.\n\n"
        "In a table: a adds, d removes, left and right move a plane a little, Enter goes to the fields.\n\n"
    ) + SAFETY

    def makers(self) -> tuple[tuple[str, Callable[[], Section]], ...]:
        """Bars first, since that is where the cuts are."""
        kinds = ("vehicle", "design", "arrangement", "size", "")
        return (
            ("Bars", lambda: ListSection(BARS)),
            ("Planes", lambda: ListSection(PLANES)),
            ("Size", lambda: FormSection("Size", size_entries, overall, kinds)),
        )
