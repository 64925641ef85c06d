"""One design being worked on: its history and its report.  No screen, no file."""

from __future__ import annotations

from collections.abc import Callable

from pydantic import ValidationError

from model.design import Design
from model.design.edits.decisions import changes, logged
from model.design.edits.evidence import with_evidence_of
from model.errors import EditError
from model.review import Report, review
from tui import stamp
from tui.history import History, Moment
from tui.words import plain_refusal

Edit = Callable[[Design], Design]
SHORT = 60
"""Letters of a title that has a word behind it."""


class Session:
    """The design on screen with its report, and the way back through its edits.

    Args:
        design: what to begin with.
        label: where it came from, such as "opened".
    """

    def __init__(self, design: Design, label: str = "opened") -> None:
        self.history = History(Moment(label, design))
        self.report = Report(design)
        """On the first design it is worked out a moment later: the first page is shown before that."""

    @property
    def design(self) -> Design:
        """The design on screen."""
        return self.history.now.design

    @property
    def before(self) -> tuple[Design, ...]:
        """The design as it was when the session began, where it is another one now, for the notebook."""
        first = self.history.past[0].design if self.history.past else self.design
        if not any(changes(first, self.design)):
            return ()
        return (first.but(title=f"{first.title[:SHORT]}, before"),)

    def edit(self, label: str, edit: Edit) -> bool:
        """Make an edit and write it into the log of decisions; False where it changes nothing.

        Raises:
            EditError: it is refused, in one sentence; nothing has changed.
        """
        try:
            design = edit(self.design)
        except ValidationError as problem:
            raise EditError(plain_refusal(problem)) from problem
        if design == self.design:
            return False
        noted = logged(self.design, design, label, stamp.now(), stamp.who())
        self._become(self.history.edited(label, noted))
        return True

    def undo(self) -> str | None:
        """Take the last edit back; its label, or None where there is none."""
        if not self.history.past:
            return None
        label = self.history.now.label
        self._travel(self.history.undone())
        return label

    def redo(self) -> str | None:
        """Make the edit again that was taken back; its label, or None where there is none."""
        if not self.history.future:
            return None
        self._travel(self.history.redone())
        return self.history.now.label

    def _travel(self, history: History) -> None:
        """Another moment of the history: its decisions, with all that was noted until now."""
        kept = with_evidence_of(history.now.design, self.design, stamp.now())
        self._become(history.standing(kept))

    def _become(self, history: History) -> None:
        report = review(history.now.design)
        self.history, self.report = history, report
