"""Every action, declared once: the key, the footer, the list of all actions and the help come from here.

The session screen or the app has a method ``action_<call>`` for each.  Keys that live in tmux, editors and
school computers: function keys (F6 and F7 belong to text areas), arrows, Enter, Esc and Tab.
"""

from __future__ import annotations

from msgspec import Struct
from textual.binding import Binding, BindingType

from tui.steps import STEPS, Step

CAPS = {"escape": "Esc", "pageup": "PgUp", "pagedown": "PgDn"}
"""What stands on the keys that a keyboard shortens."""


def key_name(key: str) -> str:
    """A key as people write it: ``shift+f1`` is Shift+F1."""
    return "+".join(CAPS.get(part, part.capitalize()) for part in key.split("+"))


class Action(Struct, frozen=True):
    """One action.

    Attributes:
        call: the name of the method, with an argument in brackets where it takes one; those of the
            app say so, the others are the session screen's.
        keys: key names, the first of them shown; empty where it is only in the list.
        label: what the list of actions calls it.
        help: one sentence more.
        footer: the short name at the foot of the screen; empty keeps it out.
    """

    call: str
    keys: str
    label: str
    help: str
    footer: str = ""

    @property
    def id(self) -> str:
        """The id by which a user can remap its key."""
        return f"session.{self.call.partition('.')[2] or self.call}"

    @property
    def action(self) -> str:
        """What Textual runs."""
        return self.call if "." in self.call else f"screen.{self.call}"

    @property
    def key_name(self) -> str:
        """The first key as people write it."""
        return key_name(self.keys.split(",")[0])


ACTIONS = (
    Action("help", "f1", "Help", "What this page is for, and every key.", "Help"),
    Action(
        "origins",
        "shift+f1,f13",
        "Where a number comes from",
        "How each number is worked out, what went in, its source, and how sure it is.",
    ),
    Action("undo", "f2", "Undo", "Take the last change back.", "Undo"),
    Action("redo", "shift+f2,f14", "Redo", "Make the change again that was taken back."),
    Action("place", "f3", "Show the place", "Go to what the finding is about and mark it in the drawing."),
    Action(
        "look",
        "f4",
        "Show the next panel, or turn the drawing",
        "On a small screen show drawing, findings, numbers in turn; on a large one turn the drawing.",
        "Look",
    ),
    Action(
        "remedy", "f5", "Take the remedy", "Make the change that clears the finding; F2 takes it back.", "Fix"
    ),
    Action("step_before", "f8", "Previous step", "Open the page of the step before this one."),
    Action("step_after", "f9", "Next step", "Open the page of the step after this one.", "Next step"),
    Action("app.leave", "f10,ctrl+q", "Quit", "Save and leave.", "Quit"),
    Action("palette", "f12,ctrl+p", "All actions", "Find any action by typing a part of its name.", "More"),
    Action("page_up", "pageup", "Page up", "Scroll the page up."),
    Action("page_down", "pagedown", "Page down", "Scroll the page down."),
    Action("back", "escape", "Back to the page", "Put the page in front again."),
    Action(
        "sheets",
        "shift+f4,f16",
        "Make the sheets to print",
        "Drawings, cut sheet, drill templates, lists and the notebook, into a folder.",
    ),
    Action("findings", "", "Go to the findings", "Put the focus on the list of findings."),
    Action(
        "everywhere", "", "Findings of every step, or of this one", "Switch what the findings list shows."
    ),
    Action("view('front')", "", "Drawing: front view", "See it from ahead."),
    Action("view('top')", "", "Drawing: top view", "See it from above."),
    Action("view('side')", "", "Drawing: side view", "See it from the side."),
    Action("view('oblique')", "", "Drawing: oblique view", "See it at a slant."),
    Action(
        "view('three')",
        "",
        "Drawing: all views on one sheet",
        "Front, top and side side by side, where there is room for them.",
    ),
    Action(
        "draw", "", "Draw the frame", "Add, move and remove bars and planes with a cursor on the drawing."
    ),
    Action(
        "angle",
        "",
        "Drawing: third or first angle",
        "Each view on the side that it is seen from, or on the other side.",
    ),
    Action("names", "", "Drawing: names of the joints", "Show or hide the name of every joint."),
    Action(
        "app.new_design", "", "New design", "Begin from a starter frame; the design on screen stays saved."
    ),
    Action("app.open_file", "", "Open a file", "Open a saved design; the design on screen stays saved."),
    Action("save", "", "Save now", "It is saved by itself after each change; this does it at once."),
    Action("app.save_as", "", "Save under another name", "Keep a copy under a new name and go on with it."),
    Action("units", "", "Switch between mm and inches", "Show and write lengths in the other unit."),
    Action("app.ascii", "", "Plain ASCII, on or off", "For screens whose letters lack lines and boxes."),
    Action("app.colours", "", "Light or dark colours", "A light screen is easier to read in a bright room."),
)
GO = tuple(Action(f"go('{step.key}')", "", f"Go to {step.title}", step.purpose) for step in STEPS)


def to_section(step: Step, title: str) -> Action:
    """The way to a section of a page."""
    help_ = f"Open the section {title} of the page {step.title}."
    return Action(f"go('{step.key}', '{title}')", "", f"Go to {step.title} > {title}", help_)


FOOTER = tuple(action for action in ACTIONS if action.footer)


def bindings() -> list[BindingType]:
    """The key bindings of the session screen."""
    return [
        Binding(action.keys, action.action, action.label, tooltip=action.help, show=False, id=action.id)
        for action in ACTIONS
        if action.keys
    ]
