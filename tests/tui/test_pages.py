"""The nine pages: complete, safe with any text, usable by keyboard at both sizes."""

import pytest

from model.coach.finding import About
from model.design import Design, edits
from model.design.edits import Ref
from model.review import review
from tests.model.edits_designs import EMPTY, rectangle
from tests.tui.pages_app import PAGES, SIZES, PageApp, demo, opened, typed
from tui.forms.items import ItemTable
from tui.forms.kinds import DERIVED_LENGTH, Chosen, Typed
from tui.forms.listing import ListSection
from tui.forms.pick import Pick
from tui.forms.section import FormSection

NASTY = "[/x] [red]b[/] \\[ $x"


def nasty(design: Design) -> Design:
    """The design with a name that looks like markup wherever a name can stand."""

    def spoiled(value):
        if isinstance(value, dict):
            return {
                key: NASTY
                if key in ("name", "title", "team", "currency", "source", "notes", "task", "origin")
                and isinstance(each, str)
                else spoiled(each)
                for key, each in value.items()
            }
        return [spoiled(each) for each in value] if isinstance(value, list | tuple) else value

    dump = spoiled(design.model_dump())
    dump["brief"]["currency"] = "[/x]"
    return Design.model_validate(dump)


async def sections(app: PageApp, pilot):
    """Each section of the page, opened in turn."""
    for number in range(len(app.page.makers())):
        section = await app.page.open_section(number)
        await pilot.pause()
        yield section


@pytest.mark.parametrize("key", PAGES)
async def test_any_text_is_shown_as_it_is(key):
    app = PageApp(key, nasty(demo()))
    async with app.run_test(size=SIZES[0]) as pilot:
        await pilot.pause()
        texts = []
        async for section in sections(app, pilot):
            section.focus_first()
            await pilot.pause()
            texts.append(app.text())
        assert "[/x]" in "\n".join(texts)


@pytest.mark.parametrize(
    ("design", "size"),
    [(EMPTY, SIZES[0]), (demo(), SIZES[0]), (demo(), SIZES[1])],
    ids=["empty", "small", "wide"],
)
@pytest.mark.parametrize("key", PAGES)
async def test_each_section_opens_and_nothing_is_wider_than_the_page(key, design, size):
    app = PageApp(key, design)
    async with app.run_test(size=size) as pilot:
        await pilot.pause()
        assert len(app.page.WHY) < 160
        async for section in sections(app, pilot):
            await pilot.pause()
            assert not app.page.show_horizontal_scrollbar
            for table in section.query(ItemTable):
                assert table.virtual_size.width <= table.size.width or not table.size.width
            for row in app.rows:
                assert row.entry.told, f"{row.entry.key} has no help"
        assert app.design == design, "showing a page changed the design"


def entries_of(page, report):
    """Every entry of every section and row."""
    for _, make in page.makers():
        section = make()
        if isinstance(section, FormSection):
            yield from section.entries(report)
        elif isinstance(section, ListSection):
            for row in section.listing.rows(report):
                yield from section.listing.entries(report, row.key)


@pytest.mark.parametrize("units", ["mm", "in"])
@pytest.mark.parametrize("key", PAGES)
async def test_every_entry_reads_back_what_it_shows_and_sets_what_it_reads(key, units):
    design = edits.use_units(demo(), units)
    report = review(design)
    app = PageApp(key, design)
    async with app.run_test(size=SIZES[0]):
        listed = list(entries_of(app.page, report))
    assert listed
    for entry in listed:
        value, kind = entry.get(report), entry.kind
        if isinstance(kind, Typed) and value is not None:
            text = kind.show(value, units)
            read = kind.read(text, units)
            if kind is DERIVED_LENGTH:  # shown to a tenth of a mm or a sixteenth of an inch
                assert read == pytest.approx(value, abs=0.8e-3 if units == "in" else 0.5e-4 + 1e-9), entry.key
                continue
            assert read == (value if isinstance(value, str | tuple) else pytest.approx(value, abs=1e-10)), (
                entry.key
            )
        if isinstance(kind, Chosen):
            assert value in [each for _, each in kind.options(report)], entry.key
        if value is not None or entry.optional:
            changed = entry.edit(value)(design)
            assert changed == design, f"{entry.key}: setting what is there changes the design"


@pytest.mark.parametrize("key", ["brief", "thrusters", "wires"])
async def test_the_foot_never_hides_the_field_that_has_the_focus(key):
    app = PageApp(key, demo())
    async with app.run_test(size=SIZES[0]) as pilot:
        await pilot.pause()
        for _ in range(20):
            await pilot.press("tab")
            await pilot.pause()
            field, foot = app.focused, app.page.query_one("#foot")
            assert field is not None
            own = foot in field.ancestors
            assert own or field.region.height > 3 or field.region.bottom <= foot.region.y, field


async def test_bars_by_keyboard():
    app = PageApp("layout", rectangle())
    async with app.run_test(size=SIZES[0]) as pilot:
        await pilot.pause()
        app.query_one(ItemTable).focus()
        await pilot.press("a")
        await pilot.pause()
        assert isinstance(app.screen, Pick)
        await pilot.press("enter")  # the first crossing: x-0 y-0 z-0
        await pilot.pause()
        assert isinstance(app.screen, Pick)
        words = [text for text, _ in app.screen.options]
        assert words == ["x-0 y-0 z-1", "x-0 y-1 z-0", "x-1 y-0 z-0"]
        await pilot.press("enter")
        await pilot.pause()
        assert [bar.name for bar in app.design.arrangement.bars][-1] == "x-0 y-0 bar"
        assert app.query_one(ItemTable).chosen == "b1"
        await pilot.press("d")
        await pilot.pause()
        assert app.design == rectangle()
        assert app.labels == ["bar added", "bar x-0 y-0 bar removed"]
        await pilot.press("f2", "f2")
        assert app.design == rectangle()


async def test_a_bar_that_cannot_be_is_said_on_the_page():
    app = PageApp("layout", rectangle())
    async with app.run_test(size=SIZES[0]) as pilot:
        await pilot.pause()
        app.query_one(ItemTable).focus()
        await pilot.press("a")
        await pilot.pause()
        await pilot.press("enter")
        await pilot.pause()
        await pilot.press("down", "down", "enter")
        await pilot.pause()
        assert "already runs there" in app.text()
        assert app.design == rectangle()


async def test_a_cut_drives_its_plane():
    app = PageApp("layout", demo())
    async with app.run_test(size=SIZES[0]) as pilot:
        await pilot.pause()
        bar = app.query_one(ItemTable).chosen
        before = app.report.survey.frame.bars[bar]
        await typed(pilot, app.field("bar-cut"), "41,5", "enter")
        after = app.report.survey.frame.bars[bar]
        assert after.cut == pytest.approx(0.0415)
        assert after.spacing - before.spacing == pytest.approx(0.0415 - before.cut)


async def test_planes_are_added_named_moved_and_removed_by_keyboard():
    app = PageApp("layout", rectangle())
    async with app.run_test(size=SIZES[0]) as pilot:
        await opened(app, pilot, "Planes")
        app.page.section.focus_first()
        await pilot.press("a")
        await pilot.pause()
        await pilot.press("l", "enter")
        await pilot.pause()
        assert [plane.at for plane in app.design.arrangement.levels] == pytest.approx([0.0, 0.1, 0.2])
        await typed(pilot, app.field("plane-name"), "mast", "enter")
        assert app.design.arrangement.levels[-1].name == "mast"
        app.page.section.query_one(ItemTable).focus()
        await pilot.press("right")
        await pilot.pause()
        assert app.design.arrangement.levels[-1].at == pytest.approx(0.205)
        await pilot.press("d")
        await pilot.pause()
        assert app.design == rectangle()


@pytest.mark.parametrize(
    ("key", "section", "field"),
    [
        ("thrusters", "Thrusters", "thrusters"),
        ("floats", "Foam", "floats"),
        ("floats", "Weights", "ballasts"),
        ("holes", "Holes", "openings"),
    ],
)
async def test_things_on_bars_are_added_copied_moved_and_removed_by_keyboard(key, section, field):
    app = PageApp(key, rectangle())

    def there(field=field):
        return getattr(app.design.arrangement, field)

    async with app.run_test(size=SIZES[0]) as pilot:
        await opened(app, pilot, section)
        app.page.section.focus_first()
        await pilot.press("enter")  # the table is empty, so the focus is on Add
        await pilot.pause()
        assert len(there()) == 1
        app.page.section.query_one(ItemTable).focus()
        await pilot.press("c")
        await pilot.pause()
        assert len({item.id for item in there()}) == 2
        place = there()[1].at
        await pilot.press("right")
        await pilot.pause()
        length = edits.bar_length(app.design, there()[1].bar)
        assert there()[1].at - place == pytest.approx(0.005 / length)
        assert app.marked[-1][1] == there()[1].id
        await pilot.press("delete", "minus")
        await pilot.pause()
        assert app.design == rectangle()


async def test_gear_asks_what_it_is_and_the_tether_comes_and_goes():
    app = PageApp("gear", rectangle())
    async with app.run_test(size=SIZES[0]) as pilot:
        await pilot.pause()
        await pilot.press("enter")
        await pilot.pause()
        await pilot.press("c", "enter")
        await pilot.pause()
        assert [item.kind for item in app.design.arrangement.attachments] == ["camera"]
        await typed(pilot, app.field("attachment-mass_in_water"), "-4", "enter")
        assert app.design.arrangement.attachments[0].mass_in_water == -0.004
        section = await opened(app, pilot, "Tether")
        section.focus_first()
        await pilot.press("enter")
        await pilot.pause()
        await typed(pilot, app.field("tether-hanging"), "2,5 m", "enter")
        assert app.design.arrangement.tether.hanging == 2.5
        section.query_one("#act-remove").focus()
        await pilot.press("enter")
        await pilot.pause()
        assert app.design.arrangement.tether is None


async def test_presets_are_taken_from_the_pages():
    app = PageApp("stock", EMPTY)
    async with app.run_test(size=SIZES[0]) as pilot:
        await pilot.pause()
        app.query_one("#act-stock").focus()
        await pilot.press("enter")
        await pilot.pause()
        assert isinstance(app.screen, Pick)
        title = app.screen.options[0][0]
        await pilot.press("enter")
        await pilot.pause()
        assert app.design.stock.name != EMPTY.stock.name, title
        await opened(app, pilot, "Motors")
        motors = len(app.design.supplies.motors)
        app.page.section.query_one(ItemTable).focus()
        await pilot.press("a")
        await pilot.pause()
        await pilot.press("enter")
        await pilot.pause()
        assert len(app.design.supplies.motors) > motors
    app = PageApp("brief", EMPTY)
    async with app.run_test(size=SIZES[0]) as pilot:
        await pilot.pause()
        app.query_one("#act-brief").focus()
        await pilot.press("enter")
        await pilot.pause()
        await pilot.press("enter")
        await pilot.pause()
        assert app.design.brief != EMPTY.brief


async def test_a_fitting_is_picked_and_let_go():
    app = PageApp("fittings", demo())
    async with app.run_test(size=SIZES[0]) as pilot:
        await pilot.pause()
        app.field("joint-fitting").focus()
        await pilot.press("right")
        await pilot.pause()
        assert app.design.arrangement.joints[0].fitting is not None
        await pilot.press("left")
        await pilot.pause()
        assert app.design == demo()


async def test_measured_sockets_reach_the_stock():
    app = PageApp("stock", rectangle())
    async with app.run_test(size=SIZES[0]) as pilot:
        await opened(app, pilot, "Fittings")
        app.page.section.query_one(ItemTable).choose("tee")
        await pilot.pause()
        keys = [row.entry.label for row in app.rows][:4]
        assert keys == [
            "Centre to stop run",
            "Socket depth run",
            "Centre to stop branch",
            "Socket depth branch",
        ]
        await typed(pilot, app.field("laying_length-+x-x"), "14", "enter")
        tee = edits.find(app.design, Ref("fitting", "tee"))
        assert [socket.laying_length for socket in tee.sockets] == [0.014, 0.014, 0.0127]


async def test_the_price_is_changed_where_it_lives():
    app = PageApp("money", demo())
    async with app.run_test(size=SIZES[0]) as pilot:
        table = (await opened(app, pilot, "Prices")).table
        motor = next(row.key for row in table.shown if row.key.startswith("motor:"))
        table.choose(motor)
        await pilot.pause()
        spent = app.report.survey.bill.spent
        await typed(pilot, app.field("price"), "20", "enter")
        line = next(line for line in app.report.survey.bill.lines if line.kind == "motor")
        assert line.each == 20
        assert app.report.survey.bill.spent > spent
        app.field("counts").focus()
        await pilot.press("space")
        await pilot.pause()
        assert not next(line for line in app.report.survey.bill.lines if line.kind == "motor").counts


def abouts(design: Design) -> list[tuple[str, About]]:
    arrangement = design.arrangement
    return [
        ("layout", About("bar", arrangement.bars[3].id)),
        ("layout", About("joint", arrangement.joints[2].id)),
        ("layout", About("level", arrangement.levels[0].id)),
        ("layout", About("vehicle")),
        ("fittings", About("joint", arrangement.joints[2].id)),
        ("fittings", About("bar", arrangement.bars[3].id)),
        ("thrusters", About("thruster", arrangement.thrusters[1].id)),
        ("gear", About("attachment", arrangement.attachments[-1].id)),
        ("gear", About("tether", arrangement.tether.id)),
        ("floats", About("float", arrangement.floats[1].id)),
        ("holes", About("opening", arrangement.openings[1].id)),
        ("stock", About("fitting", design.stock.fittings[1].id)),
        ("money", About("motor", design.supplies.motors[0].id)),
        ("brief", About("nonesuch", "x")),
    ]


@pytest.mark.parametrize(("key", "about"), abouts(demo()), ids=lambda value: str(value))
async def test_a_finding_leads_to_its_place(key, about):
    design = demo()
    app = PageApp(key, design)
    async with app.run_test(size=SIZES[0]) as pilot:
        await pilot.pause()
        app.page.focus_about(about)
        await pilot.pause()
        await pilot.pause()
        assert app.focused is not None
        section = app.page.section
        if isinstance(section, ListSection) and about.kind != "nonesuch":
            key = section.table.chosen
            assert key == section.listing.locate(app.report, about)


async def test_commit_takes_what_is_being_typed():
    app = PageApp("brief", rectangle())
    async with app.run_test(size=SIZES[0]) as pilot:
        await pilot.pause()
        await typed(pilot, app.field("brief-title"), "pond")
        assert app.design.brief.title != "pond"
        app.page.commit()
        await pilot.pause()
        assert app.design.brief.title == "pond"


async def test_floats_show_lift_before_and_after():
    app = PageApp("floats", demo())
    async with app.run_test(size=SIZES[0]) as pilot:
        await pilot.pause()
        assert "Before" not in app.text()
        await typed(pilot, app.field("float-length"), "60", "enter")
        assert "Before: 15 g of lift to spare" in app.text()
        assert "Now: sinks by" in app.text()


async def test_cautions_stand_on_the_pages_where_work_is_planned():
    words = {
        "layout": ("eye protection", "clamp", "adult", "solvent cement", "sealed for good"),
        "fittings": ("flames", "moving air", "heat PVC"),
        "thrusters": ("unplug", "low-voltage DC", "fuse at the battery", "no hand behind", "no mains"),
        "gear": ("tether", "never alone", "two metres back"),
        "floats": ("knives", "coated steel", "before its loop is closed"),
        "holes": ("eye protection", "no loose sleeves", "opened slowly"),
    }
    for key, expected in words.items():
        app = PageApp(key, rectangle())
        async with app.run_test(size=SIZES[0]) as pilot:
            await pilot.pause()
            assert "SAFETY" in app.text()
            assert all(each in app.page.SAFETY for each in expected), key
            assert app.page.SAFETY in app.page.HELP
