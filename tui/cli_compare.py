"""``poolwright compare``: designs side by side, speed against handling; the choice is left to the team."""

from __future__ import annotations

import json
from collections.abc import Sequence
from typing import TYPE_CHECKING

from tui.cli_check import READY, UNREADABLE, Outcome
from tui.cli_files import load_designs
from tui.cli_text import columns, dim, plain

if TYPE_CHECKING:
    from model.compare import Comparison
    from model.design import Design

BEST = "*"
WIDEST = 22
"""The longest title that stands over its column."""
NOTE = """\
* best of its line, or even. With a spread: best guess, lowest to highest.
Pitch: bow up, below 0 stern up. Steadiness: what rights it on its side."""
YOURS = "No line counts more than another here: the best compromise is yours to choose."


def compare(files: Sequence[str], *, as_json: bool) -> Outcome:
    """Compare design files; none is left out, so one that cannot be read ends it."""
    from os.path import samefile

    from model.compare import beaten_words, compared, standing_of_design

    loaded, errors = load_designs(files)
    if len(loaded) < len(files):
        return Outcome("", tuple(errors), UNREADABLE)
    designs = [design for _, design in loaded]
    currencies = sorted({design.brief.currency for design in designs})
    if len(currencies) > 1:
        errors.append(
            f"note: the costs are in different money ({', '.join(currencies)}): do not compare them"
        )
    twice = [file for number, file in enumerate(files) if any(samefile(file, one) for one in files[:number])]
    errors += [f"note: {plain(file)} is named twice, so a design is compared with itself" for file in twice]
    found = compared([standing_of_design(design) for design in designs])
    names = _names(files, designs)
    if as_json:
        return Outcome(json.dumps(_document(files, found), indent=2) + "\n", tuple(errors), READY)
    said = [dim(line) for line in beaten_words(names, found)]
    lines = [*_table(names, found), "", *said, NOTE, YOURS]
    return Outcome("".join(f"{line}\n" for line in lines), tuple(errors), READY)


def _names(files: Sequence[str], designs: Sequence[Design]) -> list[str]:
    """Each title; with its file where two designs have the same."""
    titles = [design.title for design in designs]
    return [
        plain(f"{title} ({file})" if titles.count(title) > 1 else title)
        for title, file in zip(titles, files, strict=True)
    ]


def _table(names: list[str], found: Comparison) -> list[str]:
    """Titles that would make two columns too wide for 80 signs stand above, by letters."""
    from model.drawing.trade import sign_of

    heads, key = names, list[str]()
    if max(map(len, names)) > WIDEST:
        heads = [sign_of(found, number) for number in range(len(names))]
        key = [f"{sign}: {name}" for sign, name in zip(heads, names, strict=True)]
    rows = [
        [f"{short}, {row.unit}" if row.unit else short]
        + [f"{text} {BEST if number in row.best else ''}".rstrip() for number, text in enumerate(row.texts)]
        for row in found.rows
        for short in (row.name.partition(",")[0],)
    ]
    beaten = [number for number, other in enumerate(found.beaten, 1) if other is not None]
    return [*key, *columns([["", *heads], *rows], grey=beaten)]


def _document(files: Sequence[str], found: Comparison) -> list[dict[str, object]]:
    """A document for each design; a number with a spread is its value, lowest and highest."""
    from model.compare import MEASURES

    return [
        {
            "file": file,
            "title": standing.name,
            "measures": [
                {
                    "name": measure.name,
                    "unit": measure.unit,
                    "value": measure.of(standing),
                    "spread": [span.low, span.high] if (span := measure.span(standing)) else None,
                    "more_is_better": measure.more,
                }
                for measure in MEASURES
            ],
            "fits": standing.fits,
            "builds": standing.builds,
            "beaten_by": None if other is None else files[other],
        }
        for file, standing, other in zip(files, found.standings, found.beaten, strict=True)
    ]
