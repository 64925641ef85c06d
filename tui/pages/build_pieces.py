"""The section Pieces: how long each piece came out, and what that means."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from msgspec.structs import replace

from model.building.as_built import FINE, Piece, can_be, keep_piece, measured_pieces, note_cut, saw_anew
from model.units import format_length
from tui import stamp
from tui.forms.acts import Act
from tui.forms.entry import Entry
from tui.forms.items import Column, Row
from tui.forms.kinds import LENGTH
from tui.forms.listing import Asking, Listing, ListSection
from tui.pages.words import bare, shown

if TYPE_CHECKING:
    from model.coach.finding import About
    from model.design import Design
    from model.design.edits import Edit
    from model.review import Report

CODE = "build.piece-off"


def pieces_section() -> ListSection:
    """The section Pieces."""
    return ListSection(
        Listing(
            title="Pieces",
            columns=(
                Column("", 2),
                Column("Piece of"),
                Column("Planned", 9, right=True),
                Column("Measured", 9, right=True),
                Column("Off by", 12, right=True),
            ),
            rows=rows,
            entries=entries,
            marks=lambda report, key: ("bar", key),
            empty="No bars yet: there is nothing to saw.",
            remove=thrown_away,
            removing="Discard",
            acts=(Act("keep", "Build with it", keep),),
            facts=standing,
            note=note,
            locate=locate,
        )
    )


def rows(report: Report) -> list[Row]:
    """A row for each piece, in the order of the letters: the longest first."""
    known = _measured(report)
    bars = sorted(report.survey.frame.bars.values(), key=lambda bar: (bar.letter, bar.name))
    return [Row(bar.id, _cells(report, bar.letter, bar.name, bar.cut, known.get(bar.id))) for bar in bars]


def _cells(report: Report, letter: str, name: str, cut: float | None, piece: Piece | None) -> tuple[str, ...]:
    planned = piece.cut.planned if piece else cut
    measured = shown(report, piece.cut.length) if piece else "-"
    return letter, name, shown(report, planned), measured, off_words(report, piece) if piece else "-"


def _measured(report: Report) -> dict[str, Piece]:
    return {piece.bar.id: piece for piece in measured_pieces(report.design)}


def off_words(report: Report, piece: Piece) -> str:
    """How far a piece is off its plan."""
    amount = bare(report, abs(piece.off))
    if amount == bare(report, 0.0):
        return "on the mark"
    return f"{amount} {'long' if piece.off > 0 else 'short'}"


def standing(report: Report) -> str:
    """How many pieces are measured, and what is fine."""
    count, known = len(report.survey.frame.bars), len(_measured(report))
    fine = format_length(FINE, report.design.units)
    return f"{known} of {count} pieces are measured. Within {fine} of the plan is fine."


def entries(report: Report, key: str) -> tuple[Entry, ...]:
    """The length of the piece."""
    name = report.survey.frame.bars[key].name

    def get(report: Report) -> float | None:
        piece = _measured(report).get(key)
        return piece.cut.length if piece else None

    def edit(length: Any) -> Edit:
        if length is None:
            return lambda design: _forgotten(design, key)
        return lambda design: note_cut(design, key, length, stamp.now(), stamp.who())

    help_ = "From end to end, after the burr is off. Empty: the piece is thrown away and sawn anew."
    entry = Entry("piece-length", "Measured", LENGTH, get, edit, help_, optional=True, about=name)
    return (replace(entry, limits=lambda report: can_be(report.design, key)),)


def _forgotten(design: Design, bar: str) -> Design:
    """The field emptied: nothing changes where nothing was measured."""
    known = any(piece.bar.id == bar for piece in measured_pieces(design))
    return saw_anew(design, bar, stamp.now()) if known else design


def note(report: Report, key: str) -> str:
    """What to do about the chosen piece."""
    piece = _measured(report).get(key)
    if piece is None:
        return "Measure it after the burr is off, and type its length."
    said = [
        finding.message for finding in report.findings if finding.code == CODE and finding.about.id == key
    ]
    if said:
        longer = "Saw it again" if piece.off > 0 else "Discard it and saw a new one"
        return f"{said[0]} {longer}, or build with it: the frame and the cuts that are left follow."
    if piece.cut.kept:
        return "It is built in as it is: the frame and the cuts that are left have followed it."
    return "It is near enough to its plan."


def thrown_away(report: Report, key: str) -> Asking:
    """The piece sawn anew."""
    name = report.survey.frame.bars[key].name
    return f"{name} to be sawn anew", lambda design: saw_anew(design, key, stamp.now())


def keep(section: ListSection) -> None:
    """Build with the piece as it is."""
    report, key = section.report, section.table.chosen
    if report and key:
        name = report.survey.frame.bars[key].name
        section.ask(f"{name} built in as it is", lambda design: keep_piece(design, key))


def locate(report: Report, about: About) -> str | None:
    """The row of a bar."""
    return about.id if about.kind == "bar" and about.id in report.survey.frame.bars else None
