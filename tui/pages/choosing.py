"""What can be chosen on several pages: bars, pieces of the supplies, presets."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING, Any

from msgspec.structs import replace

from model.design import edits
from model.design.edits import Ref
from model.errors import FileProblem
from model.presets import load_preset, presets
from tui.forms.entry import Entry, field
from tui.forms.kinds import DERIVED_LENGTH, Chosen, Options
from tui.forms.section import Section
from tui.pages.words import bare

if TYPE_CHECKING:
    from model.design.edits import Edit
    from model.design.limits import Limits
    from model.preset_files import Kind
    from model.presets import Preset
    from model.review import Report


def pieces_of(kind: str, off: str = "") -> Chosen:
    """One of the pieces of a kind; ``off`` says what none of them means."""

    def options(report: Report) -> Options:
        named: Options = tuple((piece.name, piece.id) for piece in edits.pieces(report.design, kind))
        return ((off, None), *named) if off else named

    return Chosen(options)


def bar_entry(ref: Ref, about: str) -> Entry:
    """On which bar something sits."""
    entry = field(ref, "bar", "On the bar", pieces_of("bar"), about=about)
    return replace(
        entry,
        edit=lambda bar: lambda design: edits.put_on_bar(design, ref, bar),
        help="The bar that it is fixed to; it moves with the frame.",
    )


def place_entry(ref: Ref, about: str) -> Entry:
    """How far along its bar something sits."""
    return Entry(
        key=f"{ref.kind}-at",
        label="Place on the bar",
        kind=DERIVED_LENGTH,
        get=lambda report: edits.distance_along(report.design, ref),
        edit=lambda place: lambda design: edits.place_along(design, ref, place),
        help="Measured from the centre of the joint where the bar starts. "
        "In the table, left and right move it a little.",
        about=about,
        limits=lambda report: on_bar(report, ref),
    )


def on_bar(report: Report, ref: Ref) -> Limits:
    """Where on its bar something may sit."""
    from model.design.limits import Limits  # asked for only when a place is typed

    length = edits.bar_length(report.design, edits.find(report.design, ref).bar)
    return Limits(0.0, length, why="the two ends of its bar")


def place_words(report: Report, ref: Ref) -> str:
    """How far along its bar something sits, of how much."""
    item = edits.find(report.design, ref)
    along, whole = edits.distance_along(report.design, ref), edits.bar_length(report.design, item.bar)
    return f"{bare(report, along)} of {bare(report, whole)}"


def name_of(report: Report, kind: str, identity: str | None, none: str = "-") -> str:
    """The name of a piece, or what none means."""
    return none if identity is None else str(edits.find(report.design, Ref(kind, identity)).name)


def pick_preset(
    section: Section, kind: Kind, question: str, use: Callable[[Preset, Any], None], present: str = ""
) -> None:
    """Let a preset be picked and read; one that cannot be read says why.

    The team's own come first, then those in the unit of the design.

    Args:
        present: the name of what is in use, which is not put in the place of itself.
    """
    unit = section.report.design.units if section.report else None
    listed = sorted(presets(kind), key=lambda preset: (not preset.own, preset.units != unit))
    options: Options = tuple((_words(preset), preset) for preset in listed)
    if not options:
        section.say(f"! There is no {kind} preset in the presets folders.")
        return

    def then(preset: Preset) -> None:
        try:
            loaded = load_preset(preset)
        except FileProblem as problem:
            section.say(f"! {problem}")
            return
        if present and _named(loaded) == present:
            section.say(f"{present} is in use already; nothing is changed.")
        else:
            use(preset, loaded)

    in_use = next((preset for preset in listed if present and _named(preset.payload) == present), None)
    section.pick(question, options, then, in_use)


def _named(payload: Any) -> str:
    """What a range or a brief is called; other presets are added, not put in the place of one."""
    return getattr(payload, "name", "") or getattr(payload, "title", "")


def _words(preset: Preset) -> str:
    own = " (your own)" if preset.own else ""
    broken = " (cannot be read)" if preset.problem else ""
    return f"{preset.title or preset.name}{own}{broken}"


def asks(label: str, edit: Edit) -> Callable[[Section], None]:
    """An act that asks for one edit."""
    return lambda section: section.ask(label, edit)
