"""Names that begin alike stay apart in every table, and a column takes no more room than it needs."""

import pytest

from model.design import edits
from model.design.edits import Ref
from model.design.edits.core import HOMES, pieces
from tests.tui.pages_app import PAGES, SIZES, PageApp, demo
from tui.forms.items import ItemTable
from tui.forms.shortening import told_apart

ALIKE = "starboard side frame "
KINDS = [kind for kind in HOMES if kind not in ("joint", "plug")]


def alike():
    """The demo with names that share their first 21 letters."""
    design = demo()
    for kind in KINDS:
        for number, piece in enumerate(pieces(design, kind)):
            design = edits.set_field(
                design, Ref(kind, piece.id), "name", f"{ALIKE}{kind} {number}, made by us all"
            )
    return design


@pytest.mark.parametrize("size", SIZES)
@pytest.mark.parametrize("key", PAGES)
async def test_names_that_begin_alike_are_told_apart(key, size):
    app = PageApp(key, alike())
    async with app.run_test(size=size) as pilot:
        await pilot.pause()
        for number in range(len(app.page.makers())):
            section = await app.page.open_section(number)
            await pilot.pause()
            for table in section.query(ItemTable):
                for column in table.columns:
                    cells = [row.cells[int(column.value)] for row in table.shown]
                    shown = [table.get_cell(row.key, column.value).plain for row in table.shown]
                    room = table.columns[column].width
                    if table.plan[int(column.value)].right:
                        continue
                    assert all(len(text) <= room for text in shown), (section.title, shown)
                    assert len(set(shown)) == len({" ".join(cell.split()) for cell in cells}), (
                        section.title,
                        column.value,
                        room,
                        sorted(shown),
                    )


async def test_a_name_has_the_room_that_is_free():
    app = PageApp("gear", demo())
    async with app.run_test(size=SIZES[1]) as pilot:
        await pilot.pause()
        table = app.page.section.query_one(ItemTable)
        for column in list(table.columns)[1:]:
            longest = max(len(table.get_cell(row.key, column.value).plain) for row in table.shown)
            label = len(table.columns[column].label.plain)
            assert table.columns[column].width <= max(longest, label)
        assert table.columns["0"].width > 20, "a name has most of the line"


def test_each_way_to_cut_is_taken_where_the_one_before_does_not_tell_apart():
    assert told_apart(["abcdefgh", "xy"], 5) == ["abcd…", "xy"]
    assert told_apart(["aaaaaaa1", "aaaaaaa2"], 5) == ["aa…a1", "aa…a2"]
    same_ends = ["front lower port rail top hole", "front lower port post top hole"]
    one, two = told_apart(same_ends, 14)
    assert one != two
    assert "ra" in one
    assert "po" in two
