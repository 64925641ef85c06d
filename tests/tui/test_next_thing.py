"""The line of the next thing to do: it names a key that helps, and F5 takes what it says and no more."""

import pytest

from model.coach.finding import Finding
from model.design import Brief
from model.review import Report, proven_remedy, review
from tests.model.coach_cases import box, foam, ruled
from tests.tui.fakes import screen_text, see
from tests.tui.pages_app import demo
from tui.app import Poolwright
from tui.guide import Shown, next_thing, no_remedy
from tui.steps import BY_KEY, page_of

ALL = frozenset(BY_KEY)


def proved(report: Report) -> dict[object, object]:
    """What is known of every remedy."""
    return {finding.key: proven_remedy(report, finding) for finding in report.findings}


def shown(design, step="brief", seen=ALL, proofs=True) -> Shown:
    report = review(design)
    return Shown(report, step, seen, proved(report) if proofs else {})


def first(report: Report, code: str) -> Finding:
    return next(finding for finding in report.findings if finding.code == code)


def faulty():
    """A material that no remedy changes, and a thruster and holes missing, which one key puts there."""
    return ruled(box(openings=(), floats=(foam(length=0.1),)), moves=("ahead",), materials=("glass",))


@pytest.mark.parametrize("step", BY_KEY)
@pytest.mark.parametrize("proofs", [False, True], ids=["not proved yet", "proved"])
def test_a_key_is_named_wherever_there_is_something_to_do(step, proofs):
    for seen in (frozenset((step,)), ALL):
        state = shown(faulty(), step, seen, proofs)
        assert "F" in next_thing(state).text
        assert any(f"F{number} " in next_thing(state).text for number in (3, 5, 9)), next_thing(state).text


def test_a_must_with_a_remedy_goes_before_one_without_and_both_are_said():
    state = shown(faulty())
    thing = next_thing(state)
    assert state.remedy(thing.finding) is not None
    assert thing.text.startswith(f"F5 takes this remedy: {state.remedy(thing.finding).label}. MUST: ")
    assert thing.finding.code == "thruster.move-missing"
    assert thing.text.endswith("(No remedy is known for 1 on Stock.)")


def test_without_any_remedy_the_key_to_the_place_is_named():
    report = review(faulty())
    state = Shown(report, "brief", ALL, dict.fromkeys((f.key for f in report.findings), None))
    thing = next_thing(state)
    title = BY_KEY[page_of(thing.finding.step)].title
    assert thing.text.startswith(f"F3 goes to {title}. MUST: ")
    assert no_remedy(state, thing.finding) == f"No remedy is known for this one; F3 goes to {title}."
    there = Shown(report, page_of(thing.finding.step), ALL, state.proofs)
    assert next_thing(there).text.startswith("F3 shows the place. MUST: ")
    assert no_remedy(there, thing.finding) == "No remedy is known for this one; F3 shows the place."


def test_on_the_way_through_the_steps_f5_takes_nothing_and_says_where_something_is():
    state = shown(ruled(demo(), size_limit=(0.2, 1.0, 1.0)), "brief", frozenset(("brief",)))
    thing = next_thing(state)
    assert thing.text.startswith("F9 opens the next step, Stock.")
    assert thing.finding is None
    assert page_of(thing.place.step) == "layout"
    assert no_remedy(state, None) == "Nothing to fix on this step; 1 on Layout: F3 goes there."


def test_a_step_that_was_passed_over_is_opened_by_a_key_after_what_must_be_fixed():
    seen = ALL - {"thrusters"}
    clean = shown(demo(), "money", seen)
    assert next_thing(clean).text.startswith("F3 opens a step not seen yet, Thrusters.")
    assert next_thing(clean).step == "thrusters"
    assert no_remedy(clean, None) == "Nothing to fix on this step. F3 opens Thrusters."
    wrong = shown(demo().arranged(openings=()), "money", seen)
    assert next_thing(wrong).finding.code == "opening.none-flooded"


def test_lift_and_trim_come_first_among_what_should_be_put_right():
    lopsided = demo()
    floats = tuple(piece.but(at=0.9) for piece in lopsided.arrangement.floats)
    design = lopsided.arranged(floats=floats)
    report = review(design)
    shoulds = [f.code for f in report.to_do if f.severity == "should"]
    afloat = [code.startswith("balance.") for code in shoulds]
    assert afloat == sorted(afloat, reverse=True)


def test_what_should_be_put_right_and_has_no_remedy_is_named_with_its_step():
    lopsided = demo().arranged(floats=tuple(piece.but(at=0.6) for piece in demo().arrangement.floats))
    report = review(lopsided.but(brief=Brief()))
    shoulds = [f for f in report.to_do if f.severity == "should"]
    assert shoulds
    assert not report.musts
    state = Shown(report, "pool", ALL, dict.fromkeys((f.key for f in report.findings), None))
    text = next_thing(state).text
    assert f"{shoulds[0].noun} (" in text
    assert text.startswith("Ready to build; ")
    assert "should be put right: " in text
    assert report.verdict_words in f"{text[:1].lower()}{text[1:]}"
    assert f"({shoulds[0].step})" in text


def test_a_tip_is_said_with_its_step_and_the_key_that_shows_it():
    tipped = demo().but(brief=demo().brief.but(size_limit=tuple(review(demo()).survey.extents.size)))
    report = review(tipped)
    tips = [f for f in report.findings if f.severity == "tip"]
    assert tips
    assert {f.severity for f in report.findings} == {"tip"}
    thing = next_thing(Shown(report, "pool", ALL, proved(report)))
    which = "it" if len(tips) == 1 else "the first"
    assert f"F3 shows {which}, on {BY_KEY[page_of(thing.finding.step)].title}" in thing.text
    assert "this design is ready to build" in thing.text


def test_an_unproved_remedy_is_not_taken():
    state = shown(faulty(), proofs=False)
    finding = next_thing(state).finding
    assert finding.may_be_cleared
    assert no_remedy(state, finding) == "A remedy is being looked for; F5 takes it when it stands here."


async def test_f5_says_why_it_takes_nothing(box_file):
    async with Poolwright(str(box_file)).run_test(size=(80, 24)) as pilot:
        await see(pilot, "Next: F9 opens the next step, Stock.")
        before = pilot.app.screen.session.design
        await pilot.press("f5")
        await see(pilot, "Nothing to fix on this step; ")
        assert pilot.app.screen.session.design is before
        place = next_thing(pilot.app.screen.state).place
        await pilot.press("f3")
        await see(pilot, f"[{BY_KEY[page_of(place.step)].title}")


async def test_f5_takes_what_the_next_line_said_or_what_is_marked_in_the_list(box_file):
    async with Poolwright(str(box_file)).run_test(size=(120, 40)) as pilot:
        await see(pilot, "Next:")
        await pilot.app.screen.action_go("thrusters")
        await see(pilot, "F5 takes this remedy")
        screen = pilot.app.screen
        said = screen.state.remedy(next_thing(screen.state).finding).label
        await pilot.press("f5")
        await see(pilot, "Done:")
        assert screen.session.history.now.label == said
        screen.action_everywhere()
        await see(pilot, " remedy: ")
        able = [n for n, f in enumerate(screen.findings.findings) if screen.state.remedy(f)]
        number, marked = able[-1], screen.findings.findings[able[-1]]
        screen.findings.highlighted = number
        label = screen.state.remedy(marked).label
        assert "F5 takes its remedy" in screen_text(pilot.app)
        await pilot.press("f5")
        assert screen.session.history.now.label == label
