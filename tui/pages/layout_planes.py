"""The planes of the layout: stations, sides and levels."""

from __future__ import annotations

from typing import TYPE_CHECKING

from model.design import Plane, edits
from model.design.edits import PLANE_KINDS, Ref
from tui.forms.entry import Entry
from tui.forms.items import Column, Row
from tui.forms.kinds import LENGTH, TEXT
from tui.forms.listing import Asking, Listing, ListSection
from tui.pages.words import bare, shown

if TYPE_CHECKING:
    from model.coach.finding import About
    from model.review import Report

NUDGE = {"mm": 0.005, "in": 0.0254 / 4}
"""[m] One step of the arrow keys."""


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


def _called(kind: str, name: str) -> str:
    """A plane in words; one whose name says its kind needs no second word for it.

    >>> _called("station", "station 7"), _called("station", "bow")
    ('station 7', 'station bow')
    """
    return name if kind in name.split() else f"{kind} {name}"


def remove_plane(report: Report, key: str) -> Asking:
    """A plane with all that lies on it."""
    kind, _, identity = key.partition(":")
    name = edits.find(report.design, Ref(kind, identity)).name
    return f"{_called(kind, name)} removed", lambda design: edits.remove_plane(design, kind, identity)


def nudge_plane(report: Report, key: str, steps: int) -> Asking:
    """A plane moved a little."""
    kind, _, identity = key.partition(":")
    plane = edits.find(report.design, Ref(kind, identity))
    at = plane.at + steps * NUDGE[report.design.units]
    return f"{_called(kind, plane.name)} to {shown(report, at)}", lambda design: edits.move_plane(
        design, kind, identity, at
    )


def locate_plane(report: Report, about: About) -> str | None:
    """The row of a plane."""
    if about.kind not in PLANE_KINDS:
        return None
    known = {plane.id for plane in edits.pieces(report.design, about.kind)}
    return f"{about.kind}:{about.id}" if about.id in known else None


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
