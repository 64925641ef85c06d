"""Every step that a finding can name has a page on which it can be put right."""

from model.coach.finding import STEPS
from tui.steps import BY_KEY, page_of


def test_each_step_of_the_coach_has_a_page():
    assert [step for step in STEPS if page_of(step) not in BY_KEY] == []
