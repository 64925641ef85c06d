"""Every step that a finding can name has a page on which it can be put right, and says how far it is."""

import pytest

from model.building.order import build_steps
from model.coach.finding import STEPS
from model.design.edits.evidence import tick
from model.pool.checklist import before_a_dive, tick_name
from model.review import review
from model.survey import survey
from tests.tui.pages_app import demo
from tui.guide import Shown, step_state
from tui.panels.steps import SHORTEST, share
from tui.steps import BY_KEY, page_of
from tui.steps import STEPS as ALL


def test_each_step_of_the_coach_has_a_page():
    assert [step for step in STEPS if page_of(step) not in BY_KEY] == []


def test_work_with_the_hands_is_done_when_all_of_it_is_ticked():
    design = demo()
    steps = [step.id for step in build_steps(survey(design))]

    def state(design):
        shown = Shown(review(design), "brief", frozenset(("brief", "build", "pool")))
        return {key: step_state(shown, BY_KEY[key]) for key in ("brief", "build", "pool", "holes")}

    fresh = state(design)
    assert fresh["brief"] == ("√", "nothing to fix")
    assert fresh["holes"] == ("", "not seen yet")
    assert fresh["build"] == ("~", f"{len(steps)} to tick")
    for step in steps[:-1]:
        design = tick(design, step, "2026-03-14 15:30", "Wren")
    assert state(design)["build"] == ("~", "1 to tick")
    design = tick(design, steps[-1], "2026-03-14 15:31", "Wren")
    assert state(design)["build"] == ("√", "nothing to fix")
    assert state(design)["pool"] == fresh["pool"], "the list before a dive is another"
    for key in before_a_dive(survey(design)):
        design = tick(design, tick_name(key), "2026-03-15 09:00", "Wren")
    assert state(design)["pool"] == ("√", "nothing to fix")


@pytest.mark.parametrize("room", range(36, 90, 3))
def test_titles_take_the_room_that_there_is_and_none_is_cut_where_a_letter_more_fits(room):
    whole = BY_KEY["thrusters"]
    titles = share(room, whole)
    taken = sum(map(len, titles.values()))
    least = 11 * SHORTEST + len(whole.title)
    assert taken <= max(room, least)
    assert titles[whole] == whole.title
    assert all(step.title.startswith(title) and len(title) >= SHORTEST for step, title in titles.items())
    cut = [step for step in ALL if titles[step] != step.title]
    missing = [1 for step in cut if step.title[len(titles[step])] != " "]
    assert not missing or taken >= room or room < least
    assert "Pool d" not in titles.values(), "no scrap of a second word"
