"""Layout: three ways to size at once, pieces that are sawn, sides made alike, tolerance and outline."""

import math
from itertools import product

import pytest

from model.design import Plane, edits
from tests.model.edits_designs import rectangle
from tests.tui.fakes import until
from tests.tui.pages_app import SIZES, PageApp, demo, typed
from tui.forms.pick import Pick
from tui.pages import layout_bars


async def opened(app, pilot, title):
    """A section by its title, with the focus in it."""
    await pilot.pause()
    number = [name for name, _ in app.page.makers()].index(title)
    section = await app.page.open_section(number)
    section.focus_first()
    await pilot.pause()
    return section


def choose(section, words):
    """Put the cursor on the row whose cells hold some words; its key."""
    key = next(row.key for row in section.table.shown if any(words in cell for cell in row.cells))
    assert section.table.choose(key)
    return key


def cells(section, key):
    return next(row.cells for row in section.table.shown if row.key == key)


# Between two tees of the demo's stock 2 x (11 + 16) mm are taken up, and 2 x 10.5 mm of pipe goes back in.
TAKEN = 54.0
BACK = 21.0


async def test_overall_centres_and_cut_stand_side_by_side_and_each_moves_the_others():
    app = PageApp("layout", demo())
    async with app.run_test(size=SIZES[0]) as pilot:
        section = await opened(app, pilot, "Size")
        key = choose(section, "starboard - port")
        await pilot.pause()
        outside = 1000 * app.report.survey.extents.size[1]
        assert float(app.field("size-centres").value) == pytest.approx(250)
        assert float(app.field("size-cut-A").value) == pytest.approx(250 - TAKEN + BACK)

        await typed(pilot, app.field("size-centres"), "240", "enter")
        assert float(app.field("size-cut-A").value) == pytest.approx(240 - TAKEN + BACK)
        assert float(app.field("size-outside").value) == pytest.approx(outside - 10, abs=0.06)

        await typed(pilot, app.field("size-cut-A"), "200", "enter")
        assert float(app.field("size-centres").value) == pytest.approx(200 + TAKEN - BACK)

        await typed(pilot, app.field("size-outside"), "400", "enter")
        assert 1000 * app.report.survey.extents.size[1] == pytest.approx(400, abs=1e-6)
        assert float(cells(section, key)[3]) == pytest.approx(250 + 400 - outside, abs=0.06)


async def test_bars_of_one_letter_that_lie_alike_stay_alike():
    app = PageApp("layout", demo())
    async with app.run_test(size=SIZES[0]) as pilot:
        section = await opened(app, pilot, "Size")
        choose(section, "stern - aft post")
        await pilot.pause()
        await typed(pilot, app.field("size-cut-E"), "40", "enter")
        stubs = [bar for bar in app.report.survey.frame.bars.values() if "stub" in bar.name]
        assert len(stubs) >= 4
        assert {round(1000 * bar.cut, 6) for bar in stubs} == {40.0}


async def test_a_size_that_fittings_alone_take_is_refused_in_a_sentence():
    app = PageApp("layout", demo())
    async with app.run_test(size=SIZES[0]) as pilot:
        section = await opened(app, pilot, "Size")
        choose(section, "starboard - port")
        await pilot.pause()
        await typed(pilot, app.field("size-outside"), "20", "enter")
        assert "take" in app.row("size-outside").refusal
        await typed(pilot, app.field("size-centres"), "30", "enter")
        assert "need" in app.row("size-centres").refusal
        assert app.design == demo()


async def test_a_piece_that_is_sawn_holds_its_planes_until_it_is_given_up():
    app = PageApp("layout", demo())
    async with app.run_test(size=SIZES[0]) as pilot:
        section = await opened(app, pilot, "Bars")
        choose(section, "port deck fore rail")
        await pilot.pause()
        await typed(pilot, app.field("bar-sawn"), "100", "enter")
        bar = app.report.survey.frame.bars[section.table.chosen]
        assert bar.spacing == pytest.approx((100 + TAKEN - BACK) / 1000)
        assert "Already sawn: 100 mm" in " ".join(app.text().split())
        await typed(pilot, app.field("bar-cut"), "90", "enter")
        assert "sawn already" in app.row("bar-cut").refusal
        await typed(pilot, app.field("bar-sawn"), "", "enter")
        assert all(bar.sawn is None for bar in app.design.arrangement.bars)
        bar = app.report.survey.frame.bars[section.table.chosen]
        assert bar.spacing == pytest.approx((100 + TAKEN - BACK) / 1000), "nothing moves when it is given up"


async def test_a_side_is_mirrored_by_keyboard():
    app = PageApp("layout", demo())
    async with app.run_test(size=SIZES[0]) as pilot:
        section = await opened(app, pilot, "Bars")
        gone = next(bar for bar in app.design.arrangement.bars if bar.name == "starboard bow stub")
        choose(section, gone.name)
        await pilot.press("d")
        await pilot.pause()
        assert gone.name not in [bar.name for bar in app.design.arrangement.bars]
        app.query_one("#act-mirror").action_press()
        await pilot.pause()
        assert isinstance(app.screen, Pick)
        await pilot.press("p", "enter")
        await pilot.pause()
        assert gone.name in [bar.name for bar in app.design.arrangement.bars]


async def test_tolerance_says_how_far_a_rectangle_and_its_diagonals_may_be_off():
    app = PageApp("layout", rectangle())
    async with app.run_test(size=SIZES[0]) as pilot:
        section = await opened(app, pilot, "Tolerance")
        length = next(row for row in section.table.shown if row.cells[0] == "length")
        limits = app.design.brief.thresholds
        t, e = 1000 * limits.cut_error, 1000 * limits.insertion_scatter
        assert length.cells[2:4] == (f"{math.sqrt(t * t + 2 * e * e):.1f}", f"{t + 2 * e:.1f}")
        said = f"off by less than {math.sqrt(t * t + 2 * e * e):.1f} mm, either way, and none by more than"
        assert f"{said} {t + 2 * e:.1f} mm." in " ".join(app.text().split())
        shape = next(row for row in section.table.shown if row.cells[0].startswith("diagonals"))
        a, b = (float(side) for side in shape.cells[1].split(" x "))
        worst = 2 * (a + b) * (t + 2 * e) / math.hypot(a, b)
        assert float(shape.cells[3]) == pytest.approx(worst, abs=0.051)
        await typed(pilot, app.field("thresholds-cut_error"), "0", "enter")
        assert section.table.shown[0].cells[2] == f"{math.sqrt(2) * e:.1f}"


async def test_tolerance_gives_the_chance_of_breaking_the_size_limit():
    design = demo()
    from model.survey import survey

    length, width, height = survey(design).extents.size
    tight = design.brief.but(size_limit=(length, width + 1, height + 1))
    app = PageApp("layout", design.but(brief=tight))
    async with app.run_test(size=SIZES[0]) as pilot:
        await opened(app, pilot, "Tolerance")
        assert "breaks the size limit: 50 %" in " ".join(app.text().split()), "no room: as likely as not"


@pytest.mark.parametrize("size", SIZES, ids=["small", "large"])
async def test_outline_shows_areas_and_passages(size):
    design = demo()
    design = design.but(brief=design.brief.but(hoop=0.5))
    app = PageApp("layout", design)
    async with app.run_test(size=size) as pilot:
        section = await opened(app, pilot, "Outline")
        listed = {row.key: row.cells for row in section.table.shown}
        assert set(listed) == {"front", "side", "top", "hoop", "gate"}
        width, height = app.report.survey.extents.size[1:]
        needed = float(listed["hoop"][1].split()[0])
        assert max(width, height) * 1000 - 0.1 < needed < 1000 * math.hypot(width, height) + 0.1
        assert listed["hoop"][2] == "500 mm"
        assert listed["gate"][2] == "no rule"
        for hoop, words in ((0.5, "It passes."), (needed / 1000 - 0.01, "It does not pass through the hoop")):
            app.present(design.but(brief=design.brief.but(hoop=hoop)))
            section.table.choose("hoop")
            await until(pilot, lambda words=words: words in " ".join(app.text().split()), words)
        section.table.choose("gate")
        await until(pilot, lambda: "does not pass" not in app.text(), "no rule, no verdict")


async def test_a_bar_at_45_degrees_is_picked_from_the_list():
    """Crossings in line come first, then those where both ways are alike."""
    design = edits.add_plane(edits.add_plane(rectangle(), "station", at=0.05), "side", at=-0.05)
    app = PageApp("layout", design)
    async with app.run_test(size=SIZES[0]) as pilot:
        section = await opened(app, pilot, "Bars")
        at = {p.id: p.at for g in ("stations", "sides", "levels") for p in getattr(design.arrangement, g)}
        report = app.report
        run = design.arrangement
        everywhere = list(product(*([p.id for p in g] for g in (run.stations, run.sides, run.levels))))
        start = everywhere[0]
        _, offered = layout_bars.bar_ends(report, start)
        slopes = [end for words, end in offered if words.endswith("at 45 degrees")]
        assert slopes
        right = [
            end
            for end in everywhere
            if (ways := [abs(at[b] - at[a]) for a, b in zip(start, end, strict=True) if a != b])
            and len(ways) < 3
            and max(ways) - min(ways) < 1e-7
        ]
        assert sorted(end for _, end in offered) == sorted(right), "all of them, and each once"
        for _, end in offered:
            runs = sorted(abs(at[b] - at[a]) for a, b in zip(start, end, strict=True))
            assert runs[0] == runs[1] == 0 or (runs[0] == 0 and runs[1] == pytest.approx(runs[2]))
        layout_bars.add_bar(section)
        await until(pilot, lambda: isinstance(app.screen, Pick), "the first question")
        await pilot.press("enter")
        await until(pilot, lambda: "Where does it end?" in app.text(), "the second question")
        await pilot.press("end", "enter")
        await until(
            pilot, lambda: len(app.design.arrangement.bars) == len(design.arrangement.bars) + 1, "a bar"
        )
        ends = {joint.id: joint.planes for joint in app.design.arrangement.joints}
        bar = app.design.arrangement.bars[-1]
        assert {ends[bar.start], ends[bar.end]} == {start, slopes[-1]}


async def test_pins_are_counted_weighed_and_priced_where_joints_are_pinned():
    """Each bar of the rectangle has two ends; two screws of 3 g and 0.25 in each."""
    app = PageApp("layout", rectangle())
    async with app.run_test(size=SIZES[0]) as pilot:
        await opened(app, pilot, "Joints")
        assert not [row for row in app.rows if row.entry.key.startswith("pin-")], "nothing is pinned yet"
        bars, joints = len(app.design.arrangement.bars), len(app.design.arrangement.joints)
        assert f"Joints: {joints} dry." in app.text()
        weight, spent = app.report.survey.balance.mass, app.report.survey.bill.spent
        app.present(app.design.arranged(joining="pinned"))
        await pilot.pause()
        await typed(pilot, app.field("pin-each_end"), "2", "enter")
        await typed(pilot, app.field("pin-mass"), "3", "enter")
        await typed(pilot, app.field("pin-price"), "0.25", "enter")
        assert f"Joints: {joints} pinned. Pins: {4 * bars}." in app.text()
        assert app.report.survey.balance.mass == pytest.approx(weight + 4 * bars * 0.003)
        assert app.report.survey.bill.spent == pytest.approx(spent + 4 * bars * 0.25)


async def test_among_thousands_of_planes_a_bar_is_begun_plane_by_plane():
    """2000 stations, sides and levels cross 8 thousand million times: no list holds that."""
    design = rectangle()
    run = design.arrangement
    more = {
        f"{kind}s": (
            *getattr(run, f"{kind}s"),
            *(Plane(id=f"{kind}{n}", name=f"{kind} {n}", at=5 + n / 1000) for n in range(2000)),
        )
        for kind in ("station", "side", "level")
    }
    design = design.arranged(**more)
    app = PageApp("layout", design)
    async with app.run_test(size=SIZES[0]) as pilot:
        section = await opened(app, pilot, "Bars")
        layout_bars.add_bar(section)
        for kind in ("station", "side", "level"):
            await until(pilot, lambda kind=kind: f"On which {kind}?" in app.text(), kind)
            await pilot.press("end", "enter")
        await until(pilot, lambda: "The nearest 300." in " ".join(app.text().split()), "the second question")
        await pilot.press("enter")
        count = len(design.arrangement.bars) + 1
        await until(pilot, lambda: len(app.design.arrangement.bars) == count, "a bar")
        ends = {joint.id: joint.planes for joint in app.design.arrangement.joints}
        bar = app.design.arrangement.bars[-1]
        start, end = sorted((ends[bar.start], ends[bar.end]), reverse=True)
        assert ("station1999", "side1999", "level1999") in (start, end)
