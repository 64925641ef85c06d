"""Evidence: undo never takes it away, it survives a file, and bad values are refused in one sentence."""

import pytest

from model.design import Design
from model.design.edits.decisions import logged
from model.design.edits.evidence import (
    done_steps,
    log_decision,
    note_expense,
    note_trial,
    taken_back,
    tick,
    untick,
    with_changed,
    with_evidence_of,
)
from model.errors import EditError
from model.files import design_text, parse_design
from tests.drawing_designs import box_design


@pytest.fixture
def design() -> Design:
    return box_design()


def test_a_line_of_the_ledger_survives_the_file(design):
    design = note_expense(
        design,
        "2026-03-14",
        "tees <b>",
        4.5,
        shop="corner shop",
        receipt="17",
        line="fitting tee",
        quantity=6,
    )
    again = parse_design(design_text(design), "x.toml").design
    assert again == design
    assert again.evidence.ledger[0].amount == 4.5


def test_undo_keeps_what_was_noted_and_marks_it(design):
    later = note_trial(design, "weight", 2.4, "2026-03-14 15:30", model=2.3)
    undone = with_evidence_of(design, later, "2026-03-14 15:31")
    assert [(trial.value, trial.taken_back) for trial in undone.evidence.trials] == [
        (2.4, "2026-03-14 15:31")
    ]
    redone = with_evidence_of(later, undone, "2026-03-14 15:32")
    assert redone == later


def test_undo_of_an_edit_made_after_a_trial_leaves_the_trial_standing(design):
    tried = note_trial(design, "weight", 2.4, "2026-03-14")
    edited = log_decision(tried.but(title="Other"), "title", "2026-03-15", before=tried.title, after="Other")
    undone = with_evidence_of(tried, edited, "2026-03-16")
    assert undone.title == tried.title
    assert undone.evidence.trials[0].stands
    assert not undone.evidence.log[0].stands
    twice = with_evidence_of(design, undone, "2026-03-17")
    assert twice.evidence.trials[0].taken_back == "2026-03-17"
    assert twice.evidence.log[0].taken_back == "2026-03-16"


def test_without_evidence_undo_gives_the_very_design(design):
    assert with_evidence_of(design, design.but(title="Other"), "2026-03-14") is design


def test_ticks_can_be_taken_back_and_set_again(design):
    design = tick(tick(design, "mark", "2026-03-14", "Ida"), "mark", "2026-03-14")
    assert len(design.evidence.ticks) == 1
    design = untick(design, "mark", "2026-03-15")
    assert done_steps(design) == frozenset()
    assert done_steps(tick(design, "mark", "2026-03-16")) == {"mark"}


@pytest.mark.parametrize(
    ("when", "amount", "says"),
    [("yesterday", 1.0, "2026-03-14"), ("2026-02-30", 1.0, "2026-03-14"), ("2026-03-14", -4.0, "0 or more")],
)
def test_impossible_entries_are_refused_in_words(design, when, amount, says):
    with pytest.raises(EditError, match=says):
        note_expense(design, when, "tees", amount)


def test_what_is_not_there_cannot_be_changed(design):
    with pytest.raises(EditError, match="not in the evidence"):
        with_changed(design, "ledger", "e9", amount=3.0)
    noted = note_expense(design, "2026-03-14", "tees", 4.0)
    assert taken_back(noted, "ledger", "e1", "2026-03-15").evidence.ledger[0].taken_back == "2026-03-15"


def test_a_float_moved_along_in_steps_is_one_decision(design):
    when = "2026-03-14 10:00"
    for place in (0.52, 0.54, 0.56):
        design = logged(design, moved(design, place), "float moved", when)
    (entry,) = design.evidence.log
    assert entry.after.endswith("at 0.56")
    assert not entry.before.endswith("at 0.54")
    later = logged(design, moved(design, 0.6), "float moved", "2026-03-14 10:02")
    assert len(later.evidence.log) == 2


def moved(design, place):
    first, *rest = design.arrangement.floats
    return design.arranged(floats=(first.but(at=place), *rest))
