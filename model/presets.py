"""Presets: stocks, briefs, motors, starters and the demo, as TOML that a mentor reads, copies and edits.

The user's own folder comes before the built-in one.  A preset that cannot be read is listed with
the sentence that says why, and never stops the rest.
"""

import os
from collections.abc import Iterator
from contextlib import suppress
from pathlib import Path

from msgspec import Struct

from model.errors import FileProblem
from model.preset_files import KINDS, Kind, Payload, read_preset
from model.reading import PathText
from model.units import Unit

FOLDERS: dict[Kind, str] = {
    "stock": "stocks",
    "brief": "briefs",
    "motors": "motors",
    "starter": "starters",
    "demo": "demo",
}
OWN_FOLDER_VARIABLE = "POOLWRIGHT_PRESETS"
"""Names another folder for the user's own presets."""


class Preset(Struct, frozen=True):
    """A preset in a folder.

    Attributes:
        name: of the file, without its ending; what people type.
        own: whether it lies in the user's own folder.
        problem: why it cannot be used, in one sentence, or "".
        warnings: sentences about keys that are not known.
        payload: what it holds, None where it cannot be used.
        units: in which its lengths are round, None where it cannot be used.
    """

    kind: Kind
    name: str
    path: Path
    own: bool
    title: str = ""
    origin: str = ""
    summary: str = ""
    problem: str = ""
    warnings: tuple[str, ...] = ()
    payload: Payload | None = None
    units: Unit | None = None


def built_in_folder() -> Path:
    """The folder of presets that came with the program, beside the package."""
    return Path(__file__).resolve().parent.parent / "presets"


def own_folder() -> Path:
    """The user's own presets folder; it need not be there."""
    named = os.environ.get(OWN_FOLDER_VARIABLE)
    if named:
        return Path(named)
    from platformdirs import user_data_path

    return user_data_path("poolwright", appauthor=False) / "presets"


def presets(kind: Kind | None = None) -> tuple[Preset, ...]:
    """All presets, or those of one kind, in the order of kinds; the user's own first.

    One of the user's own takes the place of a built-in one of the same kind and name, unless it
    cannot be read: then both are listed.
    """
    wanted = KINDS if kind is None else (kind,)
    return tuple(preset for each in wanted for preset in _of_kind(each))


def find_preset(kind: Kind, name: str) -> Preset:
    """The preset of a kind and name, the user's own before the built-in one.

    Raises:
        FileProblem: there is none of that name, or none that can be read.
    """
    found = [preset for preset in _of_kind(kind) if preset.name == name]
    usable = [preset for preset in found if not preset.problem]
    if usable:
        return usable[0]
    for preset in found:
        load_preset(preset)  # which says what is wrong with it
    names = ", ".join(preset.name for preset in _of_kind(kind)) or "none, there are none yet"
    raise FileProblem(f"{kind} preset {name}", "", "no preset of that name", f"one of {names}")


def folder_kind(path: PathText) -> Kind | None:
    """The kind that a file in one of the presets folders has to be, None for a file elsewhere."""
    folder = Path(path).absolute().parent
    for kind, name in FOLDERS.items():
        if folder in (own_folder().absolute() / name, built_in_folder() / name):
            return kind
    return None


def load_preset(preset: Preset) -> Payload:
    """The stock, brief, supplies or design of a preset.

    Raises:
        FileProblem: it cannot be read or understood.
    """
    return preset.payload or read_preset(preset.path, preset.kind).payload


def _of_kind(kind: Kind) -> Iterator[Preset]:
    own = [_entry(kind, path, True) for path in _files(own_folder() / FOLDERS[kind])]
    replaced = {preset.name for preset in own if not preset.problem}
    yield from own
    for path in _files(built_in_folder() / FOLDERS[kind]):
        if path.stem not in replaced:
            yield _entry(kind, path, False)


def _files(folder: Path) -> list[Path]:
    """The TOML files of a folder by name; a folder that cannot be read has none."""
    with suppress(OSError):
        return sorted(path for path in folder.iterdir() if path.suffix == ".toml")
    return []


def _entry(kind: Kind, path: Path, own: bool) -> Preset:
    try:
        content = read_preset(path, kind)
    except FileProblem as problem:
        return Preset(kind, path.stem, path, own, title=path.stem, problem=str(problem))
    header = content.header
    return Preset(
        kind,
        path.stem,
        path,
        own,
        header.title,
        header.origin,
        header.summary,
        warnings=content.warnings,
        payload=content.payload,
        units=content.units,
    )
