"""Lengths, weights and numbers as people write them."""

from contextlib import suppress
from fractions import Fraction
from math import isclose

import pytest
from hypothesis import given
from hypothesis import strategies as st

from model.errors import LengthError
from model.units import entry_text, format_length, format_mass, parse_length, parse_mass, parse_number, snap

READ = {
    "3 3/8": 3.375 * 25.4,
    '3-3/8"': 3.375 * 25.4,
    "86 mm": 86.0,
    "8,6 cm": 86.0,
    "8.6cm": 86.0,
    "86": 86.0,
    "0.086 m": 86.0,
    "1 ft": 304.8,
    "1'": 304.8,
    "3/8": 9.525,
    "3/8 in": 9.525,
    "13 1/2 inches": 342.9,
    " 12.5 ": 12.5,
    ".5 in": 12.7,
    "-20 mm": -20.0,
    "0": 0.0,
    "1 1/2''": 38.1,
}
REFUSED = (
    "", " ", "mm", "abc", "1,234", "1.2.3", "3 3/8 mm", "1/0", "3 9/8", "33/8 3", "3.5 1/2", "3 3/", "1e3",
    "nan", "inf", "12 furlongs", "3 3 mm", "--3", "1_000", "½", "3 3/8 cm", "9" * 60,
)  # fmt: skip


@pytest.mark.parametrize(("text", "millimetres"), READ.items())
def test_a_length_is_read_as_it_is_written(text: str, millimetres: float):
    assert parse_length(text, "mm") == pytest.approx(millimetres / 1000, abs=1e-12)


@pytest.mark.parametrize("text", REFUSED)
def test_what_cannot_be_read_or_could_be_read_in_two_ways_is_refused_with_a_sentence(text: str):
    with pytest.raises(LengthError, match=r".{20}"):
        parse_length(text, "mm")


def test_a_bare_number_is_in_the_unit_of_the_design_and_a_bare_fraction_in_inches():
    assert parse_length("2", "in") == pytest.approx(0.0508)
    assert parse_length("2", "mm") == pytest.approx(0.002)
    assert parse_length("1/2", "mm") == parse_length("1/2", "in") == pytest.approx(0.0127)


def test_a_comma_before_three_digits_is_shown_both_ways():
    with pytest.raises(LengthError, match=r"1\.234 or 1234"):
        parse_number("1,234")
    assert parse_number("1,5") == 1.5
    assert parse_number("0,125") == 0.125  # nobody writes 0125


def test_weights_are_in_grams_unless_they_say_so():
    assert parse_mass("86") == pytest.approx(0.086)
    assert parse_mass("0,2 kg") == pytest.approx(0.2)
    assert parse_mass("1 lb") == pytest.approx(0.45359237)  # exact since 1959
    assert parse_mass("2 oz") == pytest.approx(2 * 0.45359237 / 16)
    with pytest.raises(LengthError, match="the units are g, kg, lb, oz"):
        parse_mass("3 mm")


@given(st.integers(-3000, 3000))
def test_sixteenths_of_an_inch_are_written_in_lowest_terms_and_read_back(count: int):
    exact = Fraction(count, 16)
    text = format_length(count * 0.0254 / 16, "in")
    assert text.endswith(" in")
    assert parse_length(text, "in") == snap(float(exact) * 0.0254)
    if "/" in text:
        top, bottom = text.removesuffix(" in").split()[-1].lstrip("-").split("/")
        assert (Fraction(int(top), int(bottom)), int(bottom)) == (
            abs(exact) % 1,
            (abs(exact) % 1).denominator,
        )


@given(st.floats(-50, 50), st.sampled_from(["mm", "in"]))
def test_what_stands_in_an_entry_field_gives_the_same_length_when_it_is_typed_back(metres: float, unit):
    length = snap(metres)
    assert isclose(parse_length(entry_text(length, unit), unit), length, abs_tol=5e-9)
    assert abs(parse_length(format_length(length, unit), unit) - length) <= (0.0254 / 32 + 1e-9)


@given(st.text(max_size=50))
def test_no_text_does_worse_than_a_sentence(text: str):
    for parse in (parse_number, parse_mass, lambda t: parse_length(t, "in")):
        with suppress(LengthError):
            parse(text)


def test_nothing_is_written_as_minus_nothing():
    assert format_length(-1e-6, "mm") == "0 mm"
    assert format_length(-1e-6, "in") == "0 in"
    assert format_mass(-1e-5) == "0 g"
    assert (format_mass(9.9994), format_mass(10.0)) == ("9999 g", "10.0 kg")
