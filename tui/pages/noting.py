"""What the pages of evidence share: a record that is put right, and who is at the keyboard."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING, Any

from model.design.edits.evidence import taken_back, with_changed
from tui import stamp
from tui.forms.acts import Act
from tui.forms.entry import Entry
from tui.forms.kinds import Kind
from tui.forms.section import Section

if TYPE_CHECKING:
    from model.design import Noted
    from model.design.edits import Edit
    from model.review import Report
    from tui.forms.listing import Asking


def noted(report: Report, kind: str, id: str) -> Any:
    """A piece of evidence by its kind and id; None where it is gone."""
    return next((item for item in getattr(report.design.evidence, kind) if item.id == id), None)


def noted_entry(
    kind: str, record: Noted, name: str, label: str, value: Kind, *, help: str = "", optional: bool = False
) -> Entry:
    """An entry that puts right one field of a piece of evidence."""

    def edit(value: Any) -> Edit:
        return lambda design: with_changed(design, kind, record.id, **{name: value})

    return Entry(
        key=f"{kind}-{name}",
        label=label,
        kind=value,
        get=lambda report: getattr(noted(report, kind, record.id) or record, name),
        edit=edit,
        help=help,
        field=(kind, name),
        optional=optional,
        about=str(getattr(record, "what", "")),
    )


def back(kind: str, words: str) -> Callable[[Report, str], Asking]:
    """Asks for a piece of evidence to be taken back; it stays in the notebook, struck out."""
    return lambda report, key: (words, lambda design: taken_back(design, kind, key, stamp.now()))


def name_author(section: Section) -> None:
    """Ask who is at the keyboard; what is noted from then on has that name."""
    from tui.dialogs.words import WordsDialog

    def named(name: str | None) -> None:
        if name is not None:
            stamp.set_who(name)
            if section.report:
                section.show(section.report)

    dialog = WordsDialog(
        "Who is at the keyboard?", stamp.who(), "It stands beside what is noted from now on."
    )
    section.app.push_screen(dialog, named)


AUTHOR = Act("author", "Who writes", name_author)


def author_words() -> str:
    """Who is at the keyboard, in words."""
    return f"Noted by {stamp.who()}." if stamp.who() else "Nobody is named as who writes."
