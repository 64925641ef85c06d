"""One preset file: what it says about itself, and the stock, brief, supplies or design that it holds."""

from collections.abc import Iterator, Mapping
from itertools import chain
from typing import Annotated, Any, Literal, get_args

from msgspec import Struct
from pydantic import Field

from model.design import FORMAT, Brief, Design, Stock, Supplies
from model.design.document import inconsistencies
from model.design.measures import Name, Text
from model.design.record import Record
from model.errors import FileProblem
from model.files import PRESET_KEY, design_tables, heading
from model.migrate import migrated
from model.mistakes import FileMistake, value_text
from model.reading import (
    PathText,
    UnknownKey,
    checked,
    decoded,
    format_number,
    read_bytes,
    toml_tables,
    unknown_key_warnings,
)
from model.toml_text import toml_text
from model.units import Unit

Kind = Literal["stock", "brief", "motors", "starter", "demo"]
Payload = Stock | Brief | Supplies | Design
KINDS: tuple[Kind, ...] = get_args(Kind)


class Header(Record):
    """What a preset says about itself."""

    kind: Kind
    """What it holds: stock, brief, motors, starter or demo."""
    title: Name
    """What people see in a list."""
    origin: Annotated[str, Field(min_length=1, max_length=2000)]
    """Where its values come from, or "invented"."""
    summary: Text = ""
    """One or two sentences that help to choose."""


class _Labelled(Record):
    format: int
    units: Unit
    preset: Header


class _StockFile(_Labelled):
    stock: Stock


class _BriefFile(_Labelled):
    brief: Brief


class _MotorsFile(_Labelled):
    supplies: Supplies


class Content(Struct, frozen=True):
    """What a preset file holds, in which unit; ``warnings`` are sentences about keys that are not known."""

    header: Header
    units: Unit
    payload: Payload
    warnings: tuple[str, ...] = ()


def read_preset(path: PathText, kind: Kind | None = None) -> Content:
    """A preset file, checked in whole.

    Args:
        path: the file.
        kind: what it has to be, None where any will do.

    Raises:
        FileProblem: it cannot be read or understood, or is of another kind.
    """
    return parse_preset(decoded(read_bytes(path), str(path)), str(path), kind)


def parse_preset(text: str, file: str, kind: Kind | None = None) -> Content:
    """A preset from its TOML text; the same sentences as for a design file.

    Raises:
        FileProblem: it cannot be understood, or is of another kind.
    """
    raw = toml_tables(text, file)
    number = format_number(raw, file)
    if number > FORMAT:
        found = f"format {number}, which a newer poolwright wrote"
        raise FileProblem(file, "format", found, f"format {FORMAT} or older; update poolwright")
    raw = migrated(raw, number)
    label = checked(_Labelled, raw, file)
    header = label.preset
    if kind is not None and header.kind != kind:
        raise FileProblem(file, "preset.kind", value_text(header.kind), f"'{kind}', as its folder says")
    payload, unknown = _payload(header, raw, file)
    return Content(header, label.units, payload, unknown_key_warnings(unknown, file))


def preset_text(
    design: Design, kind: Literal["starter", "demo"], title: str, origin: str, summary: str
) -> str:
    """A whole design as the text of a starter or demo preset."""
    header = {"kind": kind, "title": title, "origin": origin, "summary": summary}
    tables = design_tables(design)
    return heading(design.units) + toml_text({PRESET_KEY: header, **tables})


def _payload(header: Header, raw: Mapping[str, Any], file: str) -> tuple[Payload, Iterator[UnknownKey]]:
    """What stands beside the header, and its unknown keys."""
    if header.kind == "stock":
        of_stock = checked(_StockFile, raw, file)
        _check_together(file, of_stock.stock)
        return of_stock.stock, of_stock.unknown_keys()
    if header.kind == "brief":
        of_brief = checked(_BriefFile, raw, file)
        return of_brief.brief, of_brief.unknown_keys()
    if header.kind == "motors":
        of_motors = checked(_MotorsFile, raw, file)
        _check_together(file, supplies=of_motors.supplies)
        return of_motors.supplies, of_motors.unknown_keys()
    design = checked(Design, {key: raw[key] for key in raw if key != PRESET_KEY}, file)
    return design, chain(header.unknown_keys(f"{PRESET_KEY}."), design.unknown_keys())


def _check_together(file: str, stock: Stock | None = None, supplies: Supplies | None = None) -> None:
    """What a design would find wrong between their pieces."""
    nothing = Stock.model_construct(name="", pipes=())
    design = Design.model_construct(
        title="", stock=stock or nothing, supplies=supplies or Supplies(), arrangements=()
    )
    for sentence in inconsistencies(design):
        raise FileMistake(file, "", sentence)
