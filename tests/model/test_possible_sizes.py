"""Sizes and weights that no thing can have are refused with a sentence, since nothing could be worked out."""

import pytest

from model.errors import FileProblem
from model.files import design_text, parse_design
from tests import worked
from tests.drawing_designs import box_design


@pytest.mark.parametrize(
    ("old", "new", "words"),
    [
        ("bore = 15.3", "bore = 21.3", r"stock\.pipes\[1\]\.bore.*less than the outside diameter"),
        ("hole = 20", "hole = 60", "hole.*less than the outside diameter"),
        ("mass_in_water = 60", "mass_in_water = 101", "found 101; expected no more than the mass"),
        ("mass_in_water = 20", "mass_in_water = 31", "found 31; expected no more than the mass"),
        ("mass_in_water_per_m = 5", "mass_in_water_per_m = 61", "no more than the mass per m"),
        ("at = 300", "at = 1e300", "a length within 1 km"),
        ("mass = 80", "mass = 1e306", "a weight within 1000 tonnes"),
        ("density = 28.0", "density = 1e-300", "1 or more"),
        ("price = 0.0", "price = 1e308", r"1e\+09 or less"),
        ("thrust_ahead = 2.0", "thrust_ahead = 1e308", r"1e\+06 or less"),
    ],
)
def test_what_cannot_be_is_refused(old: str, new: str, words: str):
    text = design_text(box_design())
    assert old in text
    with pytest.raises(FileProblem, match=words):
        parse_design(text.replace(old, new), "file.toml")


def test_what_just_can_be_is_taken():
    assert worked.pipe(bore=0.021).bore == 0.021
    text = design_text(box_design()).replace("mass_in_water = 60", "mass_in_water = 100")
    assert parse_design(text, "f").design.supplies.motors[0].mass_in_water == 0.1
