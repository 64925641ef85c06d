"""From the bytes of a file to checked tables, or one sentence that says why not."""

import hashlib
import tomllib
from collections.abc import Iterable, Mapping
from os import PathLike
from pathlib import Path
from stat import S_ISDIR, S_ISREG
from typing import Any, TypeVar

from pydantic import ValidationError

from model.design import FORMAT
from model.design.record import Record
from model.errors import FileProblem
from model.mistakes import file_problem, nearest, value_text
from model.units import Unit

BYTES_MOST = 4_000_000
"""The largest file that is read or written; a frame of 2,000 bars takes about a tenth of it."""
WARNINGS_MOST = 20
UNITS: tuple[Unit, ...] = ("mm", "in")
PathText = str | PathLike[str]
UnknownKey = tuple[str, str, tuple[str, ...]]
RecordT = TypeVar("RecordT", bound=Record)


def digest(data: bytes) -> str:
    """The SHA-256 of some bytes, by which a file that was changed by others is known."""
    return hashlib.sha256(data).hexdigest()


def read_bytes(path: PathText) -> bytes:
    """All bytes of an ordinary file.

    Raises:
        FileProblem: it is missing, a folder, too large, or may not be read.
    """
    file = str(path)
    try:
        status = Path(path).stat()
        if S_ISDIR(status.st_mode):
            raise FileProblem(file, "", "a folder", "the name of a file")
        if not S_ISREG(status.st_mode):
            raise FileProblem(file, "", "a device or pipe", "the name of an ordinary file")
        if status.st_size > BYTES_MOST:
            found = f"a file of {status.st_size / 1e6:.1f} MB"
            raise FileProblem(file, "", found, f"at most {BYTES_MOST / 1e6:.0f} MB")
        return Path(path).read_bytes()
    except (OSError, ValueError) as problem:
        raise unreadable(file, problem) from problem


def unreadable(file: str, problem: OSError | ValueError) -> FileProblem:
    """A failure of the file system in words."""
    if isinstance(problem, FileNotFoundError | NotADirectoryError):
        return FileProblem(file, "", "no such file", "the name of a file that is there")
    if isinstance(problem, PermissionError):
        return FileProblem(file, "", "a file that you may not read", "a file with read permission")
    reason = (problem.strerror or str(problem)) if isinstance(problem, OSError) else "an impossible name"
    return FileProblem(file, "", f"an obstacle ({reason.lower()})", "a file that can be read")


def decoded(data: bytes, file: str) -> str:
    """Bytes as text.

    Raises:
        FileProblem: they are not UTF-8, or there are none.
    """
    try:
        text = data.decode("utf-8-sig")  # some editors put a mark at the start
    except UnicodeDecodeError as problem:
        line = data[: problem.start].count(b"\n") + 1
        expected = "text saved as UTF-8"
        raise FileProblem(file, f"line {line}", "bytes that are no UTF-8 text", expected) from problem
    if not text.strip():
        raise FileProblem(file, "", "an empty file", "a file with at least format, units and title")
    return text


def toml_tables(text: str, file: str) -> dict[str, Any]:
    """The tables of a TOML text, lists as tuples.

    Raises:
        FileProblem: it is not TOML; the line is named where it is known.
    """
    try:
        tables: dict[str, Any] = tomllib.loads(text)
        return {key: _frozen(value) for key, value in tables.items()}
    except tomllib.TOMLDecodeError as problem:
        raise _not_toml(file, str(problem)) from problem
    except RecursionError as problem:
        raise FileProblem(file, "", "tables nested too deeply", "a simple TOML file") from problem
    except ValueError as problem:  # a whole number with thousands of digits
        raise FileProblem(file, "", "a number that is too long to read", "a shorter number") from problem


def _frozen(value: Any) -> Any:
    if isinstance(value, list):
        return tuple(_frozen(item) for item in value)
    return {key: _frozen(item) for key, item in value.items()} if isinstance(value, dict) else value


def _not_toml(file: str, problem: str) -> FileProblem:
    """What tomllib says, like ``Invalid value (at line 3, column 7)``, taken apart."""
    reason, _, where = problem.rstrip(")").partition(" (at ")
    place = where if where.startswith("line") else "at the end" if where else ""
    found = f"a mistake in the TOML ({reason[:1].lower()}{reason[1:]})"
    return FileProblem(file, place, found, 'lines like name = "bow" or at = 120')


def format_number(raw: dict[str, Any], file: str) -> int:
    """The format that a file is written in.

    Raises:
        FileProblem: there is none, or it is no whole number from 1 up.
    """
    number = raw.get("format")
    if isinstance(number, int) and not isinstance(number, bool) and number >= 1:
        return number
    found = value_text(number) if "format" in raw else "no key 'format'"
    raise FileProblem(file, "format", found, f"format = {FORMAT}")


def checked(model: type[RecordT], raw: Mapping[str, Any], file: str) -> RecordT:
    """Raw tables of the present format as a piece of a design.

    Raises:
        FileProblem: the first mistake, in one sentence.
    """
    unit = raw.get("units")
    if unit not in UNITS:
        found = "no key 'units'" if unit is None else value_text(unit)
        raise FileProblem(file, "units", found, 'units = "mm" or units = "in"')
    try:
        return model.model_validate(raw, strict=True, context={"unit": unit})
    except ValidationError as error:
        raise file_problem(error, raw, file) from error


def unknown_key_warnings(keys: Iterable[UnknownKey], file: str) -> tuple[str, ...]:
    """A sentence for each key that is kept without being understood, and for how many more there are.

    Args:
        keys: where each stands, the key, the known names there, as ``Record.unknown_keys`` gives them.
        file: the name of the file, as the user wrote it.
    """
    keys = list(keys)
    warnings = [_unknown(file, *key) for key in keys[:WARNINGS_MOST]]
    if len(keys) > WARNINGS_MOST:
        warnings.append(f"{file}: {len(keys) - WARNINGS_MOST} more unknown keys are kept as they are")
    return tuple(warnings)


def _unknown(file: str, path: str, key: str, known: tuple[str, ...]) -> str:
    similar = nearest(key, known)
    hint = f"did you mean '{similar}'?" if similar else f"known here are {', '.join(known[:12])}"
    return f"{file}: {path}{key} is not a key that is known here, and is kept as it is; {hint}"
