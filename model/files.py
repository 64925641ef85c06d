"""Design files: TOML to Design and back, without loss.

A file is read whole, checked, and kept with the digest of its bytes; it is written beside itself
and moved into place, so that a broken file is never left behind.
"""

from collections.abc import Mapping
from os.path import exists, lexists
from pathlib import Path
from typing import Any

from msgspec import Struct
from msgspec.structs import replace

from model.design import FORMAT, Design
from model.errors import FileProblem
from model.migrate import migrated
from model.mistakes import value_text
from model.reading import (
    BYTES_MOST,
    PathText,
    checked,
    decoded,
    digest,
    format_number,
    read_bytes,
    toml_tables,
    unknown_key_warnings,
)
from model.saving import write_bytes
from model.toml_text import toml_text
from model.units import Unit

UNIT_NAMES: dict[Unit, str] = {"mm": "millimetres (mm)", "in": "inches (in)"}
PRESET_KEY = "preset"
"""A table that a preset carries beside the design; it is kept, and nothing to warn of."""
DESIGN_PRESETS = ("starter", "demo")
BOUGHT = {"stock", "supplies"}
BESIDE_MOST = 1000


class FileChanged(FileProblem):
    """The file on disk is not the one that was read; nothing was written."""


class Loaded(Struct, frozen=True):
    """A design and what is to be said about its file.

    Attributes:
        design: what the team decided.
        warnings: sentences about keys that are kept without being understood.
        read_only: whether it must not be saved over; ``why`` is the sentence that says so.
        digest: of the bytes that were read, for ``save_design``.
    """

    design: Design
    warnings: tuple[str, ...] = ()
    read_only: bool = False
    why: str = ""
    digest: str = ""


def load_design(path: PathText) -> Loaded:
    """The design in a file.

    Raises:
        FileProblem: it cannot be read or understood.
    """
    data = read_bytes(path)
    return replace(parse_design(decoded(data, str(path)), str(path)), digest=digest(data))


def parse_design(text: str, file: str) -> Loaded:
    """The design in a TOML text; ``file`` is the name used in messages.

    Raises:
        FileProblem: it cannot be understood.
    """
    raw = toml_tables(text, file)
    _refuse_other_presets(raw, file)
    number = format_number(raw, file)
    if number > FORMAT:
        return _newer(raw, number, file)
    design = checked(Design, migrated(raw, number), file)
    unknown = (key for key in design.unknown_keys() if key[:2] != ("", PRESET_KEY))
    return Loaded(design, unknown_key_warnings(unknown, file), digest=digest(text.encode()))


def design_text(design: Design) -> str:
    """A design as TOML text; ``parse_design`` makes an equal design of it."""
    return heading(design.units) + toml_text(design_tables(design))


def heading(unit: Unit) -> str:
    """The comment at the top of a file, which says its units."""
    return (
        f"# Lengths in {UNIT_NAMES[unit]}, weights in grams, angles in degrees.\n"
        "# A comment is not kept when the design is saved; what is written in the notes is.\n"
    )


def design_tables(design: Design) -> dict[str, Any]:
    """A design as plain tables in its own unit, as they stand in a file.

    What a team decided stands there, defaults left out; what they bought is written in whole, so
    that the file opens the same next year.
    """
    context = {"unit": design.units}
    whole = design.model_dump(include=BOUGHT, context=context)
    decided = design.model_dump(exclude_defaults=True, context=context)
    tables = {"format": design.format, "title": design.title, "units": design.units, **decided}
    for name in BOUGHT & decided.keys():
        tables[name] = _with_numbers(whole[name], decided[name])
    return tables


def _with_numbers(whole: Any, decided: Any) -> Any:
    """What was decided, and every number besides, even where it is the default."""
    if isinstance(whole, Mapping):
        return {
            key: _with_numbers(value, decided.get(key, value))
            for key, value in whole.items()
            if key in decided or (isinstance(value, int | float) and not isinstance(value, bool))
        }
    if isinstance(whole, list | tuple):
        return [_with_numbers(item, other) for item, other in zip(whole, decided, strict=True)]
    return whole


def _refuse_other_presets(raw: Mapping[str, Any], file: str) -> None:
    header = raw.get(PRESET_KEY)
    kind = header.get("kind") if isinstance(header, Mapping) else None
    if kind is not None and kind not in DESIGN_PRESETS:
        found = f"a preset of the kind {value_text(kind)}"
        raise FileProblem(file, "", found, "a design, or a preset that holds a whole one")


def _newer(raw: dict[str, Any], number: int, file: str) -> Loaded:
    """A file of a newer format as far as it is understood, to look at and not to save over."""
    try:
        design = checked(Design, raw, file)
    except FileProblem as problem:
        found = f"format {number}, which a newer poolwright wrote"
        raise FileProblem(file, "format", found, f"format {FORMAT} or older; update poolwright") from problem
    why = (
        f"{file} is in format {number}, which a newer poolwright wrote; it is open for reading only, "
        "so that nothing in it is lost. Save it under another name to work on a copy"
    )
    return Loaded(design, (), True, why)


def save_design(design: Design, path: PathText, expected: str | None) -> str:
    """Write a design in place of a file; the digest of what stands there now.

    Args:
        design: what to write.
        path: where to; a symbolic link is written through.
        expected: the digest of what was read or saved last, None for a file that is new.

    Raises:
        FileChanged: something else is there, and is left as it is.
        FileProblem: it cannot be written; what was there is unharmed.
    """
    data = file_bytes(design, path)
    there = digest_on_disk(path)
    if there is not None and there not in (expected, digest(data)):
        found = "a file that was changed since it was opened" if expected else "a file that is there already"
        kept = "the one that you opened; save under another name to keep both"
        raise FileChanged(str(path), "", found, kept)
    write_bytes(path, data)
    return digest(data)


def save_beside(design: Design, path: PathText) -> tuple[Path, str]:
    """Write a design beside a file, under the first free name like ``reef-2.toml``, so that both are kept.

    Raises:
        FileProblem: it cannot be written.
    """
    target = Path(path)
    data = file_bytes(design, path)
    for number in range(2, BESIDE_MOST):
        beside = target.with_name(f"{target.stem}-{number}{target.suffix}")
        if not lexists(beside):
            write_bytes(beside, data)
            return beside, digest(data)
    raise FileProblem(str(path), "", f"{BESIDE_MOST} copies of it", "a name of your own")


def digest_on_disk(path: PathText) -> str | None:
    """The digest of a file as it is now, or None where there is none.

    Raises:
        FileProblem: it is there and cannot be read.
    """
    return digest(read_bytes(path)) if exists(path) else None


def file_bytes(design: Design, path: PathText) -> bytes:
    """What a saved design consists of.

    Raises:
        FileProblem: it is of a newer format, or larger than could be read back.
    """
    if design.format != FORMAT:
        found = f"a design of format {design.format}, which a newer poolwright wrote"
        raise FileProblem(str(path), "", found, f"one of format {FORMAT}")
    data = design_text(design).encode()
    if len(data) > BYTES_MOST:
        found = f"a design of {len(data) / 1e6:.1f} MB"
        raise FileProblem(str(path), "", found, f"at most {BYTES_MOST / 1e6:.0f} MB; shorten the notes")
    return data
