"""``poolwright presets``: what is there, where it comes from, and whether a mentor's own is right."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from tui.cli_check import FIX, READY, UNREADABLE, Outcome
from tui.cli_text import columns, plain

if TYPE_CHECKING:
    from model.preset_files import Kind
    from model.presets import Preset

WHOSE = {True: "own", False: "built in"}


def list_presets(kind: Kind | None) -> Outcome:
    """Each preset with its kind, name, owner, title and the source of its values."""
    from model.presets import built_in_folder, own_folder, presets

    found = presets(kind)
    rows = [["kind", "name", "whose", "title", "origin"], *map(_row, found)]
    where = [f"built in: {built_in_folder()}", f"own:      {own_folder()}"]
    lines = [*columns(rows), "", *map(plain, where)]
    errors = tuple(preset.problem for preset in found if preset.problem)
    return Outcome(_text(lines), errors, UNREADABLE if errors else READY)


def show_preset(word: str) -> Outcome:
    """The text of a preset, ready to be copied into a file of one's own."""
    from model.errors import FileProblem
    from model.reading import decoded, read_bytes

    try:
        preset = named_preset(word)
        text = decoded(read_bytes(preset.path), str(preset.path))
    except FileProblem as problem:
        return Outcome("", (str(problem),), UNREADABLE)
    lines = [f"# {preset.path}", *text.splitlines()]
    errors = (preset.problem,) if preset.problem else ()
    return Outcome(_text(map(plain, lines)), errors, UNREADABLE if errors else READY)


def check_presets(words: Sequence[str]) -> Outcome:
    """Whether presets are right: those named, by name or file, or else all there are."""
    from model.errors import FileProblem
    from model.preset_files import read_preset
    from model.presets import folder_kind, presets

    lines: list[str] = []
    errors: list[str] = []
    status = READY
    for word in words or [str(preset.path) for preset in presets()]:
        try:
            path = word if _is_file(word) else str(named_preset(word).path)
            warnings = read_preset(path, folder_kind(path)).warnings
        except FileProblem as problem:
            errors.append(str(problem))
            status = UNREADABLE
            continue
        lines.append(plain(f"{path}: {'see the notes' if warnings else 'right'}"))
        errors += [f"note: {sentence}" for sentence in warnings]
        status = max(status, FIX if warnings else READY)
    return Outcome(_text(lines), tuple(errors), status)


def named_preset(word: str) -> Preset:
    """The preset called ``name``, or ``kind/name`` where several kinds have one of that name.

    Raises:
        FileProblem: there is none, or there are several.
    """
    from model.errors import FileProblem
    from model.presets import presets

    found = {f"{each.kind}/{each.name}": each for each in reversed(presets()) if _is_called(each, word)}
    if len(found) == 1:
        return next(iter(found.values()))
    if found:
        raise FileProblem(word, "", "presets of that name of several kinds", f"one of {', '.join(found)}")
    raise FileProblem(word, "", "no preset of that name", "a name that 'poolwright presets list' shows")


def _is_called(preset: Preset, word: str) -> bool:
    return word in (preset.name, f"{preset.kind}/{preset.name}")


def _is_file(word: str) -> bool:
    return word.endswith(".toml") or Path(word).exists()


def _row(preset: Preset) -> list[str]:
    if preset.problem:
        return [preset.kind, preset.name, WHOSE[preset.own], "cannot be used", preset.problem]
    return [preset.kind, preset.name, WHOSE[preset.own], preset.title, preset.origin]


def _text(lines: Iterable[str]) -> str:
    return "".join(f"{line}\n" for line in lines)
