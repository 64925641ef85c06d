"""Whatever is done to a file, it opens or gets one sentence; nothing else may come out."""

import tomllib

from hypothesis import HealthCheck, example, given, settings
from hypothesis import strategies as st

from model.errors import FileProblem
from model.files import design_text, parse_design
from model.preset_files import parse_preset
from model.review import review
from model.toml_text import toml_text
from tests.model.files_designs import sample

TEXT = design_text(sample())
RAW = tomllib.loads(TEXT)
NUMBERS = [0, -1, 1.5, 10**400, -0.0, 1e308, 1e-300, float("nan"), float("inf"), True]
WORDS = ["", "x", "3 3/8", "1/0", "\x00", "nan", "1e999", "9" * 300, "é" * 100, "+x+x", "-z+y"]
ODD = st.sampled_from([*NUMBERS, *WORDS, [], {}, [[]], [{}], {"id": "x"}, [1, "a"]])


def told(parse, *arguments):
    """The sentence that a text gets, or None where it opens and can be reviewed."""
    try:
        loaded = parse(*arguments)
    except FileProblem as problem:
        sentence = str(problem)
        assert "\n" not in sentence
        assert "Input should" not in sentence
        assert len(sentence) < 600
        return sentence
    return loaded


def places(value, place=()):
    """Every place in some tables."""
    items = value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else ()
    for key, inner in items:
        yield (*place, key)
        yield from places(inner, (*place, key))


PLACES = list(places(RAW))


def changed(value, place, odd):
    """The tables with another value in one place; None takes it out."""
    step, *rest = place
    copy = dict(value) if isinstance(value, dict) else list(value)
    if rest:
        copy[step] = changed(copy[step], rest, odd)
    elif odd is None:
        del copy[step]
    else:
        copy[step] = odd
    return copy


@given(st.sampled_from(PLACES), st.none() | ODD)
@settings(max_examples=150, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@example(("arrangements", 0, "stations", 1, "at"), 10**400)
@example(("arrangements", 0, "bars", 0, "name"), "\x00")
def test_any_value_in_any_place_opens_or_gets_a_sentence(place, odd):
    loaded = told(parse_design, toml_text(changed(RAW, place, odd)), "reef.toml")
    if not isinstance(loaded, str) and not loaded.read_only:
        assert parse_design(design_text(loaded.design), "reef.toml").design == loaded.design
        review(loaded.design)  # never raises on a design that loads


@given(st.integers(0, len(TEXT)), st.integers(0, 30), st.text(max_size=3))
@settings(max_examples=150, deadline=None)
def test_any_slip_of_the_keyboard_opens_or_gets_a_sentence(start, length, typed):
    told(parse_design, TEXT[:start] + typed + TEXT[start + length :], "reef.toml")


@given(st.text(max_size=200))
@settings(max_examples=100, deadline=None)
def test_any_text_gets_a_sentence(text):
    assert isinstance(told(parse_design, text, "reef.toml"), str)
    assert isinstance(told(parse_preset, text, "reef.toml"), str)
