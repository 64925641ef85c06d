"""Older formats are brought up to the present one, step by step, on raw tables."""

import pytest

from model import files
from model.design import FORMAT
from model.files import design_text, parse_design
from model.migrate import MIGRATIONS, migrated
from tests.model.files_designs import sample

STEPS = {
    1: lambda raw: {**raw, "title": raw["name"]},
    2: lambda raw: {key: value for key, value in raw.items() if key != "name"},
}


def test_each_format_from_the_first_has_its_step():
    assert set(MIGRATIONS) == set(range(1, FORMAT))


def test_steps_follow_one_another_and_the_raw_tables_stay_as_they_were():
    old = {"format": 1, "name": "frog"}
    assert migrated(old, 1, to=3, migrations=STEPS) == {"format": 3, "title": "frog"}
    assert old == {"format": 1, "name": "frog"}


@pytest.mark.parametrize("number", [3, 4])
def test_the_present_and_newer_formats_stay_as_they_are(number):
    raw = {"format": number, "title": "frog"}
    assert migrated(raw, number, to=3, migrations=STEPS) == raw


def test_a_file_is_migrated_before_it_is_checked(monkeypatch):
    def play(raw, number):
        return migrated(raw, 1, to=2, migrations=STEPS) | {"format": number}

    monkeypatch.setattr(files, "migrated", play)
    text = design_text(sample()).replace("title = ", "name = ", 1)
    assert parse_design(text, "reef.toml").design.title == "Reed frog"
