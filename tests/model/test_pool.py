"""Pool day: what a trial says of the model, and that a correction makes the model say what was measured."""

import pytest

from model.design.edits.evidence import note_trial
from model.files import design_text, parse_design
from model.pool.corrections import correction
from model.pool.expected import expected
from model.pool.kinds import KINDS
from model.pool.results import difference_words, newest, results
from model.presets import load_preset, presets
from model.survey import survey

DAY = "2026-03-14"


@pytest.fixture(scope="module")
def demo():
    return load_preset(presets("demo")[0])


def tried(design, kind, factor=1.0, plus=0.0, **more):
    """A trial that measures what the model says times a factor and some more."""
    says = expected(survey(design), kind, **{k: v for k, v in more.items() if k in ("over", "about")})
    return note_trial(design, kind, says * factor + plus, DAY, model=says, **more)


def test_the_model_has_a_word_on_every_kind(demo):
    found = survey(demo)
    bar, foam = demo.arrangement.bars[0].id, demo.arrangement.floats[0].foam
    for kind in KINDS:
        about = bar if kind == "showing" else foam if kind == "foam" else ""
        assert expected(found, kind, over=0.5, about=about) is not None, kind


@pytest.mark.parametrize(
    ("kind", "factor", "plus", "more"),
    [
        ("spare", 1.0, 0.009, {}),
        ("spare", 1.0, -0.006, {}),
        ("pull ahead", 0.8, 0.0, {}),
        ("pull astern", 1.3, 0.0, {}),
        ("pull up", 0.7, 0.0, {}),
        ("course", 1.3, 0.0, {"over": 5.0}),
        ("course", 0.8, 0.0, {"over": 2.0}),
    ],
)
def test_a_correction_makes_the_model_say_what_was_measured(demo, kind, factor, plus, more):
    design = tried(demo, kind, factor, plus, **more)
    result = newest(survey(design))[kind]
    found = correction(survey(design), result)
    corrected = found.edit(design)
    again = newest(survey(corrected))[kind]
    assert again.model == pytest.approx(result.trial.value, rel=5e-3, abs=2e-4)
    assert corrected.evidence == design.evidence
    assert parse_design(design_text(corrected), "x").design == corrected
    assert correction(survey(corrected), again) is None


def test_a_bar_that_shows_less_pipe_goes_in_further(demo):
    bar = demo.arrangement.bars[0].id
    design = tried(demo, "showing", 1.0, -0.004, about=bar)
    found = correction(survey(design), newest(survey(design))["showing"])
    pipe = demo.stock.pipes[0].insertion
    assert found.edit(design).stock.pipes[0].insertion == pytest.approx(pipe + 0.002)


def test_a_piece_of_foam_that_was_weighed(demo):
    foam = demo.supplies.foams[0]
    design = tried(demo, "foam", 1.25, about=foam.id, over=1.0)
    found = correction(survey(design), newest(survey(design))["foam"])
    after = found.edit(design).supplies.foams[0]
    assert after.density == pytest.approx(foam.density * 1.25, rel=1e-3)
    assert after.scatter <= 2.0


@pytest.mark.parametrize(("kind", "factor"), [("spare", 60.0), ("pull ahead", 9.0), ("course", 40.0)])
def test_a_slip_of_the_measurement_corrects_nothing(demo, kind, factor):
    design = tried(demo, kind, factor)
    assert correction(survey(design), newest(survey(design))[kind]) is None


def test_what_agrees_needs_no_correction(demo):
    design = tried(demo, "course")
    result = newest(survey(design))["course"]
    assert correction(survey(design), result) is None
    assert difference_words(survey(design), result) == "as the model says"


def test_a_trial_taken_back_is_no_result(demo):
    design = tried(demo, "weight", 1.2)
    trial = design.evidence.trials[0].but(taken_back=DAY)
    gone = design.but(evidence=design.evidence.but(trials=(trial,)))
    assert results(survey(design))[0].share == pytest.approx(0.2)
    assert results(survey(gone)) == ()


def test_differences_are_said_in_words(demo):
    design = tried(tried(demo, "pitch", 1.0, 6.0), "weight", 1.1)
    pitch, weight = results(survey(design))
    assert difference_words(survey(design), pitch) == "6.0 degrees bow higher"
    assert difference_words(survey(design), weight).endswith("more (10%)")
