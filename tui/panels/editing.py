"""The drawing as a sheet to draw on: a cursor on the crossings of planes, a pen, keys and mouse.

What a step, a key or a click means is worked out in model/drawing/pen.py; every change goes up as a
request, so that it is undone like any other.
"""

from __future__ import annotations

from collections.abc import Callable
from textwrap import wrap
from typing import TYPE_CHECKING, Any, ClassVar

from textual import events
from textual.actions import SkipAction
from textual.binding import Binding
from textual.reactive import reactive

from model.errors import PoolwrightError
from model.units import format_mass
from tui.forms.pick import Pick
from tui.messages import EditRequested, MarkRequested
from tui.panels.drawing import DrawingPanel
from tui.phrases import box_text

if TYPE_CHECKING:
    from model.design import Design
    from model.design.edits import Crossing
    from model.drawing.pen import Hand, Move
    from model.drawing.projection import Projection
    from model.review import Report

KEYS = "Enter bar  , . depth  p r plane  g move it  s split  c copy  m mirror  v view"
ROOMY = 24
"""Rows from which the lines under the drawing may wrap."""
NO_PLANES = "Press p to add planes: a station, a side and a level. Bars run between them."
GRABBED = "Moving planes: arrows move the plane under the cursor, g lets go."
TURNING = "Arrows turn it, Shift with them moves the cursor. "


class EditingPanel(DrawingPanel):
    """A drawing that can be edited while it has the focus.

    Attributes:
        at: the planes that cross at the cursor; None until the drawing is first used.
        pen: where a bar was begun.
        grabbed: whether the arrows move planes.
        said: why the last thing could not be done, or nothing.
    """

    HELP: ClassVar[str] = (
        "The drawing is a sheet to draw on. Dots show where planes cross; the brackets [ ] are your cursor. "
        "Arrow keys take it from plane to plane; comma and full stop take it deeper into the sheet and back "
        "towards you. In the views the vehicle has three kinds of plane: stations lie across it, sides along "
        "it, levels flat.\n\n"
        "Enter or space puts the pen down, and the next Enter draws a bar from there to the cursor, or takes "
        "away the bar that is there already. The pen then stays at the new end, so that you can go on "
        "drawing; Enter again on the same spot, or Esc, lifts it. With the mouse: click a dot to go there, "
        "click it again to put the pen down, then click where the bar ends.\n\n"
        "A bar may slant, at 45 degrees: where it would lie too flat or too steep, p offers a plane at which "
        "it is right. p adds any plane, r removes one with its bars, g takes hold of the planes under the "
        "cursor so that arrows move them. s splits a bar where a plane crosses it, to get a tee. c copies a "
        "bar to the other side, m makes one whole side like the other. F2 takes anything back.\n\n"
        "v turns to the next view: front, top, side, oblique, or all at once. In third angle each view lies "
        "on the side it is seen from: the top view above the front view, the view from port on its right. "
        "In first angle, key a, it is the other way round. n shows the names of the joints. In the oblique "
        "view the arrows walk round the vehicle and over it; with Shift they take the cursor along."
    )
    BINDINGS = [
        Binding("left", "go(-1, 0)", "Left", id="pen.left", tooltip="The plane to the left", show=False),
        Binding("right", "go(1, 0)", "Right", id="pen.right", tooltip="The plane to the right", show=False),
        Binding("up", "go(0, 1)", "Up", id="pen.up", tooltip="The plane above", show=False),
        Binding("down", "go(0, -1)", "Down", id="pen.down", tooltip="The plane below", show=False),
        Binding("shift+left", "step(-1, 0)", "Left", id="pen.step-left", show=False),
        Binding("shift+right", "step(1, 0)", "Right", id="pen.step-right", show=False),
        Binding("shift+up", "step(0, 1)", "Up", id="pen.step-up", show=False),
        Binding("shift+down", "step(0, -1)", "Down", id="pen.step-down", show=False),
        Binding("comma", "depth(-1)", "Deeper", id="pen.deeper", tooltip="One plane away from you"),
        Binding("full_stop", "depth(1)", "Nearer", id="pen.nearer", tooltip="One plane towards you"),
        Binding("enter,space", "pen", "Pen", id="pen.bar", tooltip="Begin a bar; draw it or take it away"),
        Binding("escape", "lift", "Lift", id="pen.lift", tooltip="Lift the pen", show=False),
        Binding("p", "add_plane", "Plane", id="pen.plane", tooltip="Add a station, a side or a level"),
        Binding("r", "remove_plane", "Remove", id="pen.remove", tooltip="Remove a plane with its bars"),
        Binding("g", "grab", "Grab", id="pen.grab", tooltip="Arrows move the planes, or the cursor again"),
        Binding("s", "split", "Split", id="pen.split", tooltip="Split the bar that runs through here"),
        Binding("c", "copy", "Copy", id="pen.copy", tooltip="Copy a bar from here to the other side"),
        Binding("m", "mirror", "Mirror", id="pen.mirror", tooltip="Make one side like the other"),
    ]
    at: reactive[Crossing | None] = reactive(None)
    pen: reactive[Crossing | None] = reactive(None)
    grabbed: reactive[bool] = reactive(False)
    said: reactive[str] = reactive("")
    _foot: tuple[tuple[object, ...], tuple[str, ...]] | None = None

    @property
    def hand(self) -> Hand | None:
        """The cursor and the pen, while this has the focus and shows a view to draw on."""
        if not self.has_focus or self.at is None:
            return None
        from model.drawing.pen import Hand

        return Hand(self.at, self.pen)

    def foot(self) -> tuple[str, ...]:
        """Where the cursor is and what Enter does; the keys; the results, where no panel shows them."""
        if not self.has_focus or self.report is None:
            return ()
        wide = self.screen.has_class("-wide")
        known = (self.report, self.at, self.pen, self.grabbed, self.said, self.shown_view, wide, self.size)
        if self._foot is None or self._foot[0] != known:
            now, results = self._now(), () if wide else (results_line(self.report),)
            self._foot = (known, (*self._two_lines(now), *results))
        return self._foot[1]

    def _two_lines(self, now: str) -> tuple[str, ...]:
        """What is said, and the keys; a longer sentence takes the place of the keys on a small panel."""
        width = max(20, self.size.width)
        said = wrap(now, width)
        if self.size.height >= ROOMY:
            return (*said, *wrap(KEYS, width))
        return tuple(said[:2]) if len(said) > 1 else (*said, KEYS)

    def _now(self) -> str:
        from model.drawing.pen import words

        if self.said:
            return self.said
        if self.at is None or self.report is None:
            return NO_PLANES
        if self.grabbed:
            return GRABBED
        turning = TURNING if self.shown_view == "oblique" else ""
        return turning + words(self.report.survey, self.at, self.pen)

    def on_focus(self) -> None:
        """Show the cursor."""
        if self.at is None and self.report is not None:
            from model.drawing.pen import beginning

            self.at = beginning(self.report.design)
        self.refresh()

    def on_blur(self) -> None:
        """Hide it, with the pen lifted."""
        self.pen, self.grabbed, self.said = None, False, ""
        self.refresh()

    def watch_report(self, old: Report | None, new: Report | None) -> None:
        """Keep the cursor on planes that there are."""
        self.said = ""
        if new is None or not (self.at or self.has_focus):
            return
        from model.drawing.pen import beginning, settled

        before = old.design if old else None
        self.at = settled(new.design, self.at, before) if self.at else beginning(new.design)
        known = {plane.id for group in _planes(new.design) for plane in group}
        if self.pen is not None and not known.issuperset(self.pen):
            self.pen = None

    @property
    def _work_view(self) -> str | Projection:
        """The view that the arrows belong to."""
        from model.drawing.projection import oblique

        if self.shown_view == "oblique":
            return oblique(*self.turned)
        return "front" if self.shown_view == "three" else self.shown_view

    def action_go(self, right: int, up: int) -> None:
        """The cursor to the next plane, the plane under it a step, or round the oblique view."""
        if self.shown_view == "oblique" and not self.grabbed:
            self.action_turn(right, up)
        else:
            self.action_step(right, up)

    def action_step(self, right: int, up: int) -> None:
        """The cursor to the next plane, or the plane under it a step."""
        from model.drawing.pen import moved, nudged

        if self.report is not None and self.at is not None:
            if self.grabbed:
                self.ask(nudged(self.report.design, self._work_view, self.at, right, up))
            else:
                self._stand(moved(self.report.design, self._work_view, self.at, right, up))

    def action_depth(self, nearer: int) -> None:
        """The cursor one plane towards the viewer or away."""
        from model.drawing.pen import moved

        if self.report is not None and self.at is not None:
            self._stand(moved(self.report.design, self._work_view, self.at, nearer=nearer))

    def _stand(self, at: Crossing) -> None:
        self.at, self.said = at, ""

    def action_pen(self) -> None:
        """Put the pen down, lift it, or draw a bar to the cursor."""
        from model.drawing.pen import at_45_degrees, stroke

        if self.hand is None or self.report is None or self.at is None:
            return
        if self.pen is None or self.pen == self.at:
            self.pen, self.said = (None if self.pen else self.at), ""
        elif self.ask(stroke(self.report.design, self.pen, self.at)):
            self.pen = self.at
        elif at_45_degrees(self.report.design, self.pen, self.at):
            self.said += " p adds a plane for it."

    def action_lift(self) -> None:
        """Lift the pen and let go of planes; where neither is needed, the key is the screen's."""
        if self.pen is None and not self.grabbed:
            raise SkipAction
        self.pen, self.grabbed = None, False

    def action_grab(self) -> None:
        """Take hold of planes, or let them go."""
        self.grabbed, self.said = not self.grabbed, ""

    def action_add_plane(self) -> None:
        """Ask where the new plane goes."""
        from model.drawing.pen import new_planes

        if self.report is not None:
            planes = new_planes(self.report.design, self._work_view, self.at, self.pen)
            self.offer("Which plane do you want?", planes, "added")

    def action_remove_plane(self) -> None:
        """Ask which plane goes."""
        from model.drawing.pen import planes_here

        if self.report is not None and self.at is not None:
            self.offer(
                "Which plane goes, with all that lies on it?", planes_here(self.report.design, self.at)
            )

    def action_split(self) -> None:
        """Split the bar that runs through the cursor."""
        from model.drawing.pen import split

        if self.report is not None and self.at is not None:
            self.attempt(lambda design, at: split(design, at))

    def action_copy(self) -> None:
        """Copy a bar at the cursor to the other side."""
        from model.drawing.pen import across, bars_here

        if self.report is None or self.at is None:
            return
        bars = bars_here(self.report.design, self.at)
        if not bars:
            self.said = "! No bar ends here or runs through here."
        elif len(bars) == 1:
            self.ask(across(bars[0]))
        else:
            self.offer("Which bar has a twin on the other side?", tuple(across(bar) for bar in bars))

    def action_mirror(self) -> None:
        """Make one side like the other."""
        from model.drawing.pen import mirrors

        self.offer("Which side is right?", mirrors())

    def offer(self, question: str, moves: tuple[Move, ...], done: str = "") -> None:
        """Let one of some edits be picked."""

        def picked(answer: tuple[Any] | None) -> None:
            if answer is not None:
                label, edit = answer[0]
                self.ask((f"{label} {done}".strip(), edit))

        self.app.push_screen(Pick(question, tuple((move[0], move) for move in moves)), picked)

    def attempt(self, make: Callable[[Design, Crossing], Move]) -> None:
        """Work out an edit at the cursor and ask for it; what cannot be done is said."""
        if self.report is None or self.at is None:
            return
        try:
            move = make(self.report.design, self.at)
        except PoolwrightError as problem:
            self.say(problem)
        else:
            self.ask(move)

    def ask(self, move: Move) -> bool:
        """Ask for an edit; whether it can be made, else it is said why not."""
        label, edit = move
        if self.report is None:
            return False
        try:
            edit(self.report.design)
        except PoolwrightError as problem:
            self.say(problem)
            return False
        self.said = ""
        self.post_message(EditRequested(label, edit))
        return True

    def say(self, problem: PoolwrightError) -> None:
        """Say in one sentence under the drawing what could not be done."""
        words = str(problem).rstrip(".")
        self.said = f"! {words[:1].upper()}{words[1:]}."

    def on_click(self, event: events.Click) -> None:
        """Take the cursor to a crossing, use the pen there, and mark what stands there."""
        from tui.raster.drawing import crossing, picked

        event.prevent_default()
        spot = event.get_content_offset(self)
        if spot is None or self._sheet is None:
            return
        kind, id = picked(self._sheet, *self.room, spot.x, spot.y) or ("", "")
        self.post_message(MarkRequested(kind, id))
        near = crossing(self._sheet, *self.room, spot.x, spot.y)
        if near is None or self.at is None:
            return
        again = near[1] == self.at
        self._stand(near[1])
        if again or self.pen is not None:
            self.action_pen()


def _planes(design: Design) -> tuple[Any, ...]:
    arrangement = design.arrangement
    return arrangement.stations, arrangement.sides, arrangement.levels


def results_line(report: Report) -> str:
    """Size, weight, money and what is still wrong, on one line."""
    survey = report.survey
    musts, shoulds = len(report.musts), sum(finding.severity == "should" for finding in report.findings)
    better = f"{shoulds} should be put right" if shoulds else "nothing to put right"
    wrong = f"{musts} to put right" if musts else better
    if survey.extents.box is None:
        return wrong
    return (
        f"{box_text(survey.extents.size, report.design.units)}, {format_mass(survey.balance.mass)}, "
        f"{survey.bill.spent:.2f} {survey.bill.currency}, {wrong}"
    )
