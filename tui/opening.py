"""Opening a design: its file, its lock, and what the journal still has of last time.  No screen."""

from __future__ import annotations

from pathlib import Path

from msgspec import Struct
from msgspec.structs import replace

from model.design import Design
from model.design.edits import emptied
from model.errors import FileProblem
from model.files import load_design, parse_design
from model.journal import state_folder
from model.preset_files import Kind
from model.presets import Preset, find_preset, load_preset, presets
from tui.keeper import Keeper
from tui.shelf import designs_folder, file_name, free_path, recents


class Opened(Struct, frozen=True):
    """A design and where it is kept.

    Attributes:
        notes: sentences to say.
        left: the design that was not saved last time, or None.
        left_label: what was done last to it.
    """

    design: Design
    keeper: Keeper
    notes: tuple[str, ...] = ()
    left: Design | None = None
    left_label: str = ""


def open_file(path: Path) -> Opened:
    """The design in a file; one that only the journal has yet is taken from there.

    The file is not held yet: ``hold`` does that.

    Raises:
        FileProblem: it cannot be read or understood.
    """
    path = path.absolute()
    if not path.exists():
        keeper = Keeper(path, None)
        keeper.hold()
        left, _ = _left(keeper)
        if left is not None:
            return _never_saved(left, keeper)
        keeper.close()
    loaded = load_design(path)
    return Opened(loaded.design, Keeper(path, loaded.digest, loaded.why), loaded.warnings)


def hold(opened: Opened) -> Opened:
    """Keep other sessions off its file; with what is to be said of that, and the work of last time.

    It takes as long as the rest of a start, so the first page is shown before it.
    """
    keeper = opened.keeper
    keeper.hold()
    said = (f"{keeper.why_not}.",) if keeper.why_not else ()
    left, label = (None, "") if keeper.why_not or keeper.unsaved else _left(keeper)
    left = None if left == opened.design else left
    return replace(opened, notes=(*said, *opened.notes), left=left, left_label=label)


def _never_saved(design: Design, keeper: Keeper) -> Opened:
    """A design that a session left in the journal before its first save; it is saved at the next chance."""
    keeper.note("work from last time", design)
    return Opened(design, keeper, ("This is the work from last time, which was not saved yet.",))


def new_design(starter: str | None, title: str, path: Path | None = None) -> Opened:
    """A starter under a new title, noted down so that it is saved as soon as it is shown.

    Args:
        starter: its name; None for an empty frame, with the pipe and the rules of the first one.
        title: of the vehicle.
        path: where to keep it; a free name in the folder of designs where none is given.

    Raises:
        FileProblem: the starter cannot be read.
    """
    if starter is None:
        design = emptied(_first("starter")).but(title=title)
    else:
        design = _whole(find_preset("starter", starter)).but(title=title)
    if path is None:
        known = [Path(recent.path) for recent in recents()]
        path = free_path(designs_folder() / file_name(title), known)
    keeper = Keeper(path, None)
    keeper.note("begun from a starter" if starter else "begun with an empty frame", design)
    return Opened(design, keeper)


def demo_design() -> Opened:
    """The demo, in a copy of its own that keeps what was tried on it.

    Raises:
        FileProblem: neither the copy nor the demo can be read.
    """
    path = state_folder() / "demo" / "demo.toml"
    if path.exists():
        return open_file(path)
    return Opened(_first("demo"), Keeper(path, None))


def _first(kind: Kind) -> Design:
    """The first design of a kind that can be used."""
    usable = [preset for preset in presets(kind) if not preset.problem]
    if not usable:
        raise FileProblem(f"the {kind}", "", f"no {kind} among the presets", "a complete copy of poolwright")
    return _whole(usable[0])


def _whole(preset: Preset) -> Design:
    payload = load_preset(preset)
    assert isinstance(payload, Design)
    return payload


def _left(keeper: Keeper) -> tuple[Design | None, str]:
    """What the journal had of its file: the last design that can be read, and what was done to it."""
    for entry in reversed(keeper.left):
        try:
            return parse_design(entry.text, str(keeper.path)).design, entry.label
        except FileProblem:
            continue
    return None, ""
