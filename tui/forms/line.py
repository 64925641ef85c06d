"""One line to type in."""

from __future__ import annotations

from textual.validation import ValidationResult
from textual.widgets import Input


class Line(Input):
    """Textual's, without the check that a row of a form does itself: a form opens sooner so."""

    def __init__(self, value: str) -> None:
        super().__init__(value, compact=True)

    def validate(self, value: str) -> ValidationResult | None:
        """Nothing: the row asks the model, and says what is wrong."""
        return None
