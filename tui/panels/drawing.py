"""The drawing: front, top, side and oblique view of the design on screen, as large as the panel is."""

from __future__ import annotations

from typing import TYPE_CHECKING

from rich.segment import Segment
from rich.style import Style
from textual import events
from textual.binding import Binding
from textual.reactive import reactive
from textual.strip import Strip
from textual.style import Style as VisualStyle
from textual.widget import Widget

from tui.messages import MarkRequested

if TYPE_CHECKING:
    from model.coach.finding import About
    from model.drawing.pen import Hand
    from model.drawing.scene import Sheet
    from model.review import Report
    from tui.raster.canvas import Row

VIEWS = ("three", "front", "top", "side", "oblique")
LEAST_THREE = (72, 24)
"""Columns and rows below which one view stands in for all of them."""
TURN = 15
"""[deg] What one key press turns the oblique view by."""
NOTHING = "Nothing to draw yet: the frame has no bars."
PARTS = {
    "end": "bar",
    "joint": "bar",
    "propeller": "thruster",
    "hook": "gear",
    "camera": "gear",
    "attachment": "gear",
    "tether": "gear",
    "plug": "opening",
    "air": "opening",
    "centre": "picked",
    "crossing": "limit",
    "hoop": "limit",
    "gate": "limit",
}
"""The look of a role, where the two are called differently."""
LOOKS = {
    "bar": "$foreground",
    "label": "bold $accent",
    "thruster": "$primary",
    "float": "$success",
    "ballast": "$secondary",
    "gear": "$warning",
    "opening": "bold $primary",
    "gravity": "bold $error",
    "buoyancy": "bold $success",
    "limit": "$text-muted",
    "dimension": "$text-muted",
    "unfitted": "bold reverse $error",
    "marked": "bold reverse $accent",
    "picked": "bold $accent",
    "title": "bold $foreground",
    "legend": "$text-muted",
}
"""Not component classes: sixteen of them would be styled anew at every change of focus."""


class DrawingPanel(Widget, can_focus=True):
    """Draws what the model says of a report; it works nothing out by itself.

    Attributes:
        report: what to draw, or None before there is anything.
        view: one of VIEWS; "three" shows front, top, side and oblique where there is room for them.
        marked: what is under the cursor.
        ascii: whether to keep to plain ASCII.
        angle: "third" or "first", how the views lie on the sheet.
        named: whether every joint shows its name in the front, top and side views.
        turned: azimuth and elevation of the oblique view [deg].
    """

    DEFAULT_CSS = "DrawingPanel { min-height: 8; }"
    BINDINGS = [
        Binding("v", "next_view", "Next view", id="drawing.view", tooltip="Front, top, side, oblique or all"),
        Binding("a", "angle", "Angle", id="drawing.angle", tooltip="Third or first angle projection"),
        Binding("n", "names", "Names", id="drawing.names", tooltip="Show the names of the joints"),
        Binding(
            "left", "turn(-1, 0)", "Turn", id="drawing.left", tooltip="Turn the oblique view", show=False
        ),
        Binding(
            "right", "turn(1, 0)", "Turn", id="drawing.right", tooltip="Turn it the other way", show=False
        ),
        Binding("up", "turn(0, 1)", "Tilt", id="drawing.up", tooltip="Look from higher up", show=False),
        Binding("down", "turn(0, -1)", "Tilt", id="drawing.down", tooltip="Look from lower down", show=False),
    ]

    report: reactive[Report | None] = reactive(None, always_update=True)
    view: reactive[str] = reactive("three")
    marked: reactive[About | None] = reactive(None)
    ascii: reactive[bool] = reactive(False)
    angle: reactive[str] = reactive("third")
    named: reactive[bool] = reactive(False)
    turned: reactive[tuple[int, int]] = reactive((30, 25))

    _sheet: Sheet | None = None
    _styles: tuple[VisualStyle, dict[str, Style]] = (VisualStyle(), {"title": Style()})
    _drawn: tuple[Report | None, tuple[object, ...], list[Row]] = (None, (), [])

    def render_line(self, y: int) -> Strip:
        """One row of the drawing."""
        rows = self.rows()
        style = self.rich_style
        if y >= len(rows):
            return Strip.blank(self.size.width, style)
        segments = [Segment(text, self._role_style(role) if role else style) for text, role in rows[y]]
        return Strip(segments, self.size.width)

    def rows(self) -> list[Row]:
        """The rows that are shown now; drawn again only when something about them has changed."""
        settings = (
            *(*self.size, self.view, self.marked, self.ascii, self.angle, self.named, self.turned),
            *(self.hand, self.foot()),
        )
        report, known, rows = self._drawn
        if report is not self.report or known != settings:
            rows = self._draw()
            self._drawn = (self.report, settings, rows)
        return rows

    @property
    def hand(self) -> Hand | None:
        """The cursor and the pen while the frame is edited on the drawing."""
        return None

    def foot(self) -> tuple[str, ...]:
        """Lines that stand under the drawing."""
        return ()

    @property
    def shown_view(self) -> str:
        """The view that is shown: one alone where there is no room for all."""
        small = self.size.width < LEAST_THREE[0] or self.size.height < LEAST_THREE[1]
        return "front" if self.view == "three" and small else self.view

    def on_click(self, event: events.Click) -> None:
        """Ask for a mark on what stands under the pointer, or for none where nothing does."""
        from tui.raster.drawing import picked

        place = event.get_content_offset(self)
        if place is not None and self._sheet is not None:
            kind, id = picked(self._sheet, *self.room, place.x, place.y) or ("", "")
            self.post_message(MarkRequested(kind, id))

    def action_next_view(self) -> None:
        """Show the next view."""
        self.view = VIEWS[(VIEWS.index(self.view) + 1) % len(VIEWS)]

    def action_angle(self) -> None:
        """Change between third and first angle."""
        self.angle = "first" if self.angle == "third" else "third"

    def action_names(self) -> None:
        """Show or hide the names of the joints."""
        self.named = not self.named

    def action_turn(self, right: int, up: int) -> None:
        """Turn the oblique view to the right, or upwards."""
        azimuth, elevation = self.turned
        self.turned = ((azimuth + right * TURN) % 360, max(-90, min(90, elevation + up * TURN)))

    def _role_style(self, role: str) -> Style:
        base, styles = self._styles
        if base != self.visual_style or self.has_focus != styles["title"].underline:
            base = self.visual_style
            styles = {look: (base + VisualStyle.parse(words)).rich_style for look, words in LOOKS.items()}
            styles["title"] += Style(underline=self.has_focus)
            self._styles = base, styles
        return styles[PARTS.get(role, role)]

    def _draw(self) -> list[Row]:
        """Draw it, with the lines that stand under it."""
        width, height = self.room
        self._sheet = None
        if self.report is None:
            return []
        if not (self.report.survey.frame.bars or self.hand):
            return [[(NOTHING.ljust(width)[:width], "legend")], *self._foot_rows(width)]
        return [*self._views(width, height), *self._foot_rows(width)]

    @property
    def room(self) -> tuple[int, int]:
        """Columns and rows for the drawing itself."""
        return self.size.width, max(1, self.size.height - len(self.foot()))

    def _foot_rows(self, width: int) -> list[Row]:
        return [[(line.ljust(width)[:width], "legend")] for line in self.foot()]

    def _views(self, width: int, height: int) -> list[Row]:
        """The view that is shown; the model and the rasters are imported here, after the first paint."""
        from model.drawing.oblique import oblique_scene
        from model.drawing.views import one_view, three_views
        from tui.raster.drawing import oblique_panel, sheet_panel

        assert self.report is not None
        survey, view = self.report.survey, self.shown_view
        marked = (self.marked.kind, self.marked.id) if self.marked else None
        if view == "oblique":
            scene = oblique_scene(survey, *self.turned, marked, self.hand)
            return oblique_panel(scene, width, height, ascii=self.ascii)
        if view == "three":
            beside = oblique_scene(survey, *self.turned, marked, self.hand)
            self._sheet = three_views(survey, marked, angle=self.angle, named=self.named, hand=self.hand)
            return sheet_panel(self._sheet, width, height, ascii=self.ascii, beside=beside)
        self._sheet = one_view(survey, view, marked, named=self.named, hand=self.hand)
        return sheet_panel(self._sheet, width, height, ascii=self.ascii)
