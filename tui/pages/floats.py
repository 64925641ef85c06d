"""The floats: foam above, weight below, level and with a little lift to spare."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from model.design import Ballast, Float, edits
from model.design.edits import Ref
from model.units import format_mass
from model.water.balance import Balance
from tui.forms.acts import Act
from tui.forms.entry import Entry, field
from tui.forms.items import Column
from tui.forms.kinds import LENGTH, MASS, MONEY, TEXT, YES_NO, number
from tui.forms.listing import ListSection
from tui.forms.section import FormSection, Section
from tui.pages.choosing import asks, name_of, pieces_of
from tui.pages.fixed import fixed_list
from tui.pages.floats_solve import SolveSection
from tui.pages.floats_steady import steadiness
from tui.pages.page import Page
from tui.pages.stock_bought import add_from_preset
from tui.pages.words import bare, faces

if TYPE_CHECKING:
    from model.review import Report


def lift_words(balance: Balance) -> str:
    """Spare buoyancy in words."""
    if not balance.mass:
        return "nothing to float yet"
    amount = format_mass(abs(balance.spare))
    return f"{amount} of lift to spare" if balance.spare >= 0 else f"sinks by {amount}"


def trim_words(balance: Balance) -> str:
    """How it comes to rest, in words."""
    if balance.pitch is None or balance.roll is None:
        return "nothing decides how it rests"
    bow = f"{'bow' if balance.pitch >= 0 else 'stern'} up {abs(balance.pitch):.1f} deg"
    side = f"{'port' if balance.roll >= 0 else 'starboard'} side up {abs(balance.roll):.1f} deg"
    return f"{bow}, {side}"


def float_cells(report: Report, piece: Float) -> tuple[str, ...]:
    """Length and foam."""
    return bare(report, piece.length), name_of(report, "foam", piece.foam)


def float_entries(report: Report, piece: Float, ref: Ref) -> tuple[Entry, ...]:
    """What can be said of one piece of foam."""
    about = piece.name
    return (
        field(ref, "length", "Length", LENGTH, about=about),
        field(ref, "beside", "Strapped to the bar", faces("no: round the bar"), about=about),
        field(
            ref,
            "foam",
            "Foam",
            pieces_of("foam"),
            help="Which of your foam tubes it is cut from.",
            about=about,
        ),
        field(ref, "name", "Name", TEXT, help="A word that your team uses.", about=about),
        field(ref, "notes", "Notes", TEXT, help="Anything to remember about it.", about=about),
    )


def ballast_cells(report: Report, weight: Ballast) -> tuple[str, ...]:
    """What it weighs."""
    return (f"{weight.mass * 1000:.0f} g",)


def ballast_entries(report: Report, weight: Ballast, ref: Ref) -> tuple[Entry, ...]:
    """What can be said of one weight."""
    about = weight.name
    return (
        field(ref, "mass", "Weight in air", MASS, about=about),
        field(ref, "beside", "Strapped to the bar", faces("no: threaded on the bar"), about=about),
        field(ref, "diameter", "Diameter", LENGTH, about=about),
        field(ref, "density", "Material weighs", number("kg/m3"), about=about),
        field(ref, "price", "Price", MONEY, help="What it costs.", about=about),
        field(ref, "counts", "Counts on the bill", YES_NO, about=about),
        field(ref, "name", "Name", TEXT, help="A word that your team uses.", about=about),
        field(ref, "notes", "Notes", TEXT, help="Anything to remember about it.", about=about),
    )


class FloatsPage(Page):
    """Foam and weights."""

    WHY = (
        "Foam high and weight low keep it upright. Aim at 10 to 40 g of lift to spare and 2 degrees "
        "of trim; 5 mm of foam tube is about 14 g."
    )
    SAFETY = (
        "Foam knives: cut away from you, on a board, an adult there; no hot wire without moving air. "
        "Foam that goes round a bar must go on before its loop is closed. Use coated steel, not lead. "
        "Steel rods have sharp ends: file and tape them. Cut tie tails flush. The makers' instructions "
        "come first."
    )
    HELP = (
        "Foam lifts, steel sinks. Put foam on the highest bars and weights on the lowest ones. Move them "
        "ahead or astern with left and right in the table until it rests level; the line above the table "
        "shows what it was before your last change and what it is now.\n\n"
    ) + SAFETY

    def watch_report(self, report: Report | None) -> None:
        """Remember how it floated before the last change."""
        if report is not None:
            last: Balance | None = getattr(self, "_last", None)
            balance = report.survey.balance
            if last is not None and last != balance:
                self._before = last
            self._last = balance
        super().watch_report(report)

    def glance(self, report: Report) -> str:
        """Lift and trim now and before the last change."""
        balance = report.survey.balance
        words = f"Now: {lift_words(balance)}; {trim_words(balance)}."
        before: Balance | None = getattr(self, "_before", None)
        return f"{words}\nBefore: {lift_words(before)}; {trim_words(before)}." if before else words

    def makers(self) -> tuple[tuple[str, Callable[[], Section]], ...]:
        """Foam and weights with the same line above both, the solver, and how steady it is."""
        return (
            ("Foam", self._foam),
            ("Weights", self._weights),
            ("Solve", SolveSection),
            ("Steadiness", lambda: FormSection("Steadiness", lambda report: (), steadiness)),
        )

    def _foam(self) -> ListSection:
        return fixed_list(
            "float",
            "Foam",
            (Column("Length", 7, right=True), Column("Foam", 14, least=72)),
            float_cells,
            float_entries,
            asks("float added", edits.add_float),
            "No foam yet. Press Add. Without a foam to use, take one from a preset first.",
            facts=self.glance,
            acts=(Act("preset", "Foam from a preset", add_from_preset),),
        )

    def _weights(self) -> ListSection:
        return fixed_list(
            "ballast",
            "Weights",
            (Column("Weight", 7, right=True),),
            ballast_cells,
            ballast_entries,
            asks("weight added", edits.add_ballast),
            "No weight yet. Press Add if it floats too high or lies on its side.",
            facts=self.glance,
        )
