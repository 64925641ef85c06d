"""The section Drag on the page Thrusters: shares, coefficients and areas of each kind, at both sizes."""

import pytest

from model.explain_drag import shares_by_kind
from model.silhouette import silhouettes
from tests import worked
from tests.tui.pages_app import SIZES, PageApp, demo, opened
from tui.forms.items import ItemTable


@pytest.mark.parametrize("size", SIZES, ids=str)
async def test_each_kind_has_a_row_and_the_shares_are_of_one_whole(size):
    app = PageApp("thrusters", demo())
    async with app.run_test(size=size) as pilot:
        section = await opened(app, pilot, "Drag")
        await pilot.pause()
        *kinds, whole = section.table.shown
        assert [row.key for row in kinds] == [share.kind for share in shares_by_kind(app.report.survey)]
        for column in (1, 4):
            assert sum(float(row.cells[column].split()[0]) for row in kinds) == pytest.approx(100, abs=3)
            assert whole.cells[column] == "100 %"
        areas = silhouettes(app.report.survey.parts)
        assert f"Silhouette {areas.front * 1e4:.0f} cm2 ahead" in app.text()
        section.query_one(ItemTable).focus()
        await pilot.press("down")
        await pilot.pause()
        assert "Most ahead:" in section.listing.note(app.report, section.table.chosen)
        assert "kg of water ahead" in app.text()
        assert app.marked[-1] == ("", ""), "a kind is no single thing to mark"


async def test_without_a_frame_there_is_nothing_to_drag():
    app = PageApp("thrusters", worked.design(worked.box().but(joints=(), bars=())))
    async with app.run_test(size=SIZES[0]) as pilot:
        await opened(app, pilot, "Drag")
        assert "Nothing to drag yet" in app.text()
