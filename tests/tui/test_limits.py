"""A number that makes no sense is refused in one sentence: what was found, what is expected."""

import pytest

from model.errors import PoolwrightError
from tests.tui.pages_app import PageApp, demo, opened, typed
from tests.tui.test_in_sight import each_form
from tui.forms.kinds import NAMES, Typed

PAGES = ("brief", "money", "build", "pool")
HUGE = "9999999999"


def is_number(kind) -> bool:
    """Whether a field takes a number and no text."""
    if not isinstance(kind, Typed) or kind is NAMES:
        return False
    try:
        kind.read("a word", "mm")
    except PoolwrightError:
        return True
    return False


@pytest.mark.parametrize("key", PAGES)
async def test_no_number_of_a_page_may_be_absurd(key):
    app = PageApp(key, demo())
    before, tried = app.design, set()
    async with app.run_test(size=(78, 40)) as pilot:
        await pilot.pause()
        async for _ in each_form(app, pilot):
            for row in app.rows:
                if not is_number(row.entry.kind):
                    continue
                if row.entry.kind.read.__name__ in ("read_sizes", "read_pair"):
                    count = 3 if row.entry.kind.read.__name__ == "read_sizes" else 2
                    texts = [" x ".join([each] * count) for each in (HUGE, "0")]
                else:
                    texts = [HUGE, f"-{HUGE}"]
                for text in texts:
                    row.editor.focus()
                    await pilot.pause()
                    row.editor.value = text
                    await pilot.press("enter")
                    await pilot.pause()
                    start = f"! {row.entry.label}: found {text}"
                    assert row.refusal.startswith(start), (row.entry.label, text, row.refusal)
                    assert "; expected " in row.refusal
                    await pilot.press("escape")
                tried.add(row.entry.key)
    assert len(tried) >= {"brief": 18, "money": 5, "build": 1, "pool": 9}[key], tried
    assert app.design == before


CASES = [
    ("pool", "Trials", "weight:", "trial-scale", "0", "Scale reads: found 0 g; expected more than 0 g"),
    ("pool", "Trials", "weight:", "trial-scale", "-5", "Scale reads: found -5 g; expected more than 0 g"),
    (
        "pool",
        "Trials",
        "course:",
        "trial-over",
        "0",
        "Length of the course: found 0 mm; expected more than 0 mm",
    ),
    ("pool", "Trials", "battery:", "trial-watch", "0", "It ran for: found 0 min; expected more than 0 min"),
    (
        "build",
        "Pieces",
        "",
        "piece-length",
        "9999",
        "found 9999 mm; expected more than 0 mm, 4 m at the most (no pipe on sale or in the box is longer).",
    ),
    (
        "money",
        "Rules",
        "",
        "brief-spending_limit",
        "0",
        "Spending limit: found 0 credits; expected more than 0 credits",
    ),
    (
        "money",
        "Rules",
        "",
        "brief-currency",
        "",
        "Money is called: found nothing; expected at least one letter.",
    ),
    (
        "brief",
        "Rules",
        "",
        "brief-title",
        "",
        "Name of the task: found nothing; expected at least one letter.",
    ),
    ("brief", "More rules", "", "load", "0", "Heaviest lift: found 0 g; expected more than 0 g"),
    (
        "brief",
        "Water",
        "",
        "water-temperature",
        "90",
        "Temperature: found 90 deg C; expected 0 deg C to 40 deg C.",
    ),
    ("holes", "Holes", "", "opening-at", "9999", "the two ends of its bar"),
    (
        "gear",
        "Parts",
        "",
        "attachment-mass_in_water",
        "9 kg",
        "Weight in water: found 9 kg; expected no more than the mass.",
    ),
]


@pytest.mark.parametrize(("key", "title", "row", "field", "text", "words"), CASES)
async def test_the_sentence_names_the_field_and_what_is_expected(key, title, row, field, text, words):
    app = PageApp(key, demo())
    async with app.run_test(size=(78, 40)) as pilot:
        section = await opened(app, pilot, title)
        if row:
            section.table.choose(row)
            await pilot.pause()
        await typed(pilot, app.field(field), text, "enter")
        assert words in app.row(field).refusal
        assert app.design == demo()
