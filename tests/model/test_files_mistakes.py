"""What is wrong in a file is said in one sentence: file, place, what was found, what was expected."""

import os
import time

import pytest

from model.errors import FileProblem
from model.files import design_text, load_design, parse_design
from model.reading import BYTES_MOST
from tests.model.files_designs import sample

TEXT = design_text(sample())
LENGTH_HINT = "a length like 86 or '3 3/8 in'"

# old text, new text, place, found, expected
MISTAKES = {
    "a word for a length": (
        "at = 85.725",
        'at = "bow"',
        "arrangements[1].stations[2].at",
        "'bow' cannot be read",
        "3 3/8 in",
    ),
    "true for a length": ("at = 85.725", "at = true", "stations[2].at", "true", LENGTH_HINT),
    "a list for a length": ("at = 85.725", "at = [1]", "stations[2].at", "a list of 1", LENGTH_HINT),
    "an unknown unit": ("at = 85.725", 'at = "3 ells"', "stations[2].at", "unit 'ells'", "the units are mm"),
    "two readings": ("at = 85.725", 'at = "1,234"', "stations[2].at", "'1,234' could be", "1.234 or 1234"),
    "nan": ("at = 85.725", "at = nan", "stations[2].at", "nan", "a finite number"),
    "infinity": ("at = 85.725", "at = -inf", "stations[2].at", "-inf", "a finite number"),
    "500 digits": ("at = 85.725", f"at = {'9' * 500}", "stations[2].at", "many digits", "a finite number"),
    "5000 digits": ("at = 85.725", f"at = {'9' * 5000}", "", "too long", "a shorter number"),
    "500 digits in quotes": ("at = 85.725", f'at = "{"9" * 500}"', "stations[2].at", "'999", "like 86"),
    "a missing length": (', at = 85.725', "", "stations[2]", "no key 'at'", "a key 'at'"),
    "a misspelt key": ("length = 150", "lenght = 150", "floats[1]", "'lenght', but no key", "'length'"),
    "beyond the bar": ("at = 0.1 }", "at = 1.1 }", "openings[1].at", "1.1", "1 or less"),
    "a length below zero": ("length = 150", "length = -150", "floats[1].length", "-150", "more than 0"),
    "a weight in words": ("mass = 20\n", 'mass = "heavy"\n', "attachments[1].mass", "'heavy'", "86 g"),
    "a weight below zero": ("mass = 20\n", "mass = -20\n", "attachments[1].mass", "-20", "0 or more"),
    "the unit of the file": ('units = "mm"', 'units = "furlong"', "units", "'furlong'", 'units = "mm" or'),
    "no unit": ('units = "mm"\n', "", "units", "no key 'units'", 'units = "mm" or'),
    "no format": ("format = 1\n", "", "format", "no key 'format'", "format = 1"),
    "a format in words": ("format = 1\n", 'format = "one"\n', "format", "'one'", "format = 1"),
    "format zero": ("format = 1\n", "format = 0\n", "format", "0", "format = 1"),
    "format true": ("format = 1\n", "format = true\n", "format", "true", "format = 1"),
    "a number for text": ('title = "Reed frog"', "title = 5", "title", "5", "text in quotes"),
    "a date for text": ('title = "Reed frog"', "title = 2031-05-06", "title", "2031-05-06", "text in quotes"),
    "an empty title": ('title = "Reed frog"', 'title = ""', "title", "''", "not empty"),
    "a long title": ('title = "Reed frog"', f'title = "{"x" * 99}"', "title", "'xxxx", "at most 80 char"),
    "no title": ('title = "Reed frog"\n', "", "", "no key 'title'", "a key 'title'"),
    "an unknown shape": ('shape = "tee"', 'shape = "tea"', "fittings[2].shape", "'tea'", "'elbow'"),
    "a word for a mark": ('name = "tee"', 'name = "tee"\ncounts = "no"', "counts", "'no'", "true or false"),
    "half a number": ("ether]", "ether]\nfloats = 1.5", "floats", "1.5", "whole"),
    "two sides of a box": ("[600, 400, 300]", "[600, 400]", "brief.size_limit", "list of 2", "at least 3"),
    "four sides of a box": ("[600, 400, 300]", "[6, 4, 3, 1]", "brief.size_limit", "list of 4", "at most 3"),
    "a number for a list": ("[600, 400, 300]", "600", "brief.size_limit", "600", "a list"),
    "no table": ("[brief.thresholds]\nbg_least = 30", "thresholds = 3", "thresholds", "3", "table"),
    "a stalled motor that draws less": (
        "volts = 12.0\n",
        "volts = 12.0\namps = 2\nstalled_amps = 1\n",
        "supplies.motors[1] ('small')",
        "1 A stalled and 2 A running",
        "a stalled motor draws more",
    ),
    "a direction": ('to = "+x"', 'to = "left"', "sockets[1].to", "'left'", "like +x"),
    "an id with a space": ('id = "b1"', 'id = "b 1"', "bars[1].id", "'b 1'", "only letters"),
    "the same id twice": ('id = "b1"', 'id = "b2"', "", "'b2' stands 2 times", "different"),
    "a joint that is not there": ('start = "j12"', 'start = "j99"', "", "'j99', which is not", "j11, j12"),
    "a motor that is not there": ('motor = "small"', 'motor = "big"', "", "'big', which is not", "small"),
    "a bar in a list of numbers": ("bars = [\n", "bars = [\n    7,\n", "bars[1]", "7", "a table"),
    "a quote left open": ('title = "Reed frog"', 'title = "Reed frog', "line 4", "TOML", "name ="),
    "an equals sign left out": ("kerf = 1.5", "kerf 1.5", "line ", "TOML", "name ="),
    "the same key twice": ("kerf = 1.5", "kerf = 1.5\nkerf = 2", "", "TOML", "name ="),
}  # fmt: skip


@pytest.mark.parametrize(("old", "new", "place", "found", "expected"), MISTAKES.values(), ids=MISTAKES)
def test_a_mistake_is_named_with_its_place(old, new, place, found, expected):
    assert old in TEXT
    with pytest.raises(FileProblem) as caught:
        parse_design(TEXT.replace(old, new, 1), "reef.toml")
    sentence = str(caught.value)
    assert sentence.startswith("reef.toml: ")
    assert place in caught.value.place
    assert found in caught.value.found
    assert expected in caught.value.expected
    for part in (place, found, expected):
        assert part in sentence
    assert "\n" not in sentence
    assert "pydantic" not in sentence
    assert "Input should" not in sentence
    assert len(sentence) < 300


def test_the_entry_is_named_by_its_id_too():
    with pytest.raises(FileProblem, match=r"floats\[1\]\.length \('f1'\)"):
        parse_design(TEXT.replace("length = 150", "length = -1"), "reef.toml")


def test_of_several_mistakes_the_first_is_named_and_the_others_are_counted():
    text = (
        TEXT.replace("kerf = 1.5", "kerf = -1")
        .replace("length = 150", "length = -1")
        .replace("mass = 20", "mass = -1")
    )
    with pytest.raises(FileProblem, match=r"stock\.kerf: found -1; .* \(2 more mistakes in this file\)"):
        parse_design(text, "reef.toml")


def test_a_list_whose_entries_are_wrong_is_not_called_too_short_as_well():
    text = TEXT.replace("bore = 15.2908", "bore = 0")
    with pytest.raises(FileProblem) as caught:
        parse_design(text, "reef.toml")
    assert "more mistake" not in str(caught.value)


@pytest.mark.parametrize("entry", ['start="j11",end="j12"', 'start="j11"', 'start="j77",end="j78"'])
def test_ten_thousand_bars_are_answered_at_once(entry):
    bars = "".join(f'{{id="x{number}",name="n",{entry}}},\n' for number in range(10_000))
    text = TEXT.replace("bars = [", f"bars = [\n{bars}", 1)
    begun = time.perf_counter()
    with pytest.raises(FileProblem) as caught:
        parse_design(text, "reef.toml")
    assert time.perf_counter() - begun < 5
    assert len(str(caught.value)) < 300


def test_more_bars_than_the_limit_are_said_with_both_numbers():
    bars = "".join(f'{{id="x{number}",name="n",start="j11",end="j12"}},\n' for number in range(10_000))
    with pytest.raises(FileProblem, match=r"has 10004 bars; at most 2000 are allowed"):
        parse_design(TEXT.replace("bars = [", f"bars = [\n{bars}", 1), "reef.toml")


@pytest.mark.parametrize("text", ["a = " + "[" * 5000, "a." * 5000 + "b = 1"])
def test_a_file_made_to_hurt_gets_a_sentence(text):
    with pytest.raises(FileProblem):
        parse_design(text, "reef.toml")


def test_a_preset_that_is_no_design_is_called_by_its_kind():
    text = 'format = 1\nunits = "mm"\n[preset]\nkind = "stock"\n'
    with pytest.raises(FileProblem, match="found a preset of the kind 'stock'"):
        parse_design(text, "pipes.toml")


def test_a_newer_format_opens_for_reading_only():
    loaded = parse_design(
        TEXT.replace("format = 1", "format = 7").replace("[brief]", "[brief]\nmood = 1"), "reef.toml"
    )
    assert loaded.read_only
    assert "format 7" in loaded.why
    assert loaded.design.title == "Reed frog"


def test_a_newer_format_that_cannot_be_understood_says_so():
    with pytest.raises(FileProblem, match=r"found format 7.*expected format 1 or older; update"):
        parse_design('format = 7\nunits = "mm"\n', "reef.toml")


FILES = {
    "empty": (b"", "an empty file"),
    "blank": (b" \n\n", "an empty file"),
    "latin-1": (b'format = 1\ntitle = "caf\xe9"\n', "line 2: found bytes that are no UTF-8 text"),
    "utf-16": ("format = 1".encode("utf-16"), "no UTF-8 text"),
    "an image": (b"\x89PNG\r\n\x1a\n" + bytes(range(256)), "no UTF-8 text"),
    "huge": (b"#" * (BYTES_MOST + 1), "a file of 4.0 MB; expected at most 4 MB"),
}


@pytest.mark.parametrize(("data", "sentence"), FILES.values(), ids=FILES)
def test_a_file_that_is_no_design_gets_a_sentence(data, sentence, tmp_path):
    path = tmp_path / "reef.toml"
    path.write_bytes(data)
    with pytest.raises(FileProblem) as caught:
        load_design(path)
    assert str(caught.value).startswith(f"{path}: ")
    assert sentence in str(caught.value)


def test_a_missing_file_and_a_folder_get_a_sentence(tmp_path):
    with pytest.raises(FileProblem, match="found no such file"):
        load_design(tmp_path / "none.toml")
    with pytest.raises(FileProblem, match="found no such file"):
        load_design(tmp_path / "none" / "reef.toml")
    with pytest.raises(FileProblem, match="found a folder; expected the name of a file"):
        load_design(tmp_path)
    with pytest.raises(FileProblem, match="an impossible name"):
        load_design("reef\0.toml")


@pytest.mark.skipif(os.name == "nt", reason="Windows has no such files")
def test_a_pipe_is_not_waited_for(tmp_path):
    os.mkfifo(tmp_path / "reef.toml")
    with pytest.raises(FileProblem, match="found a device or pipe"):
        load_design(tmp_path / "reef.toml")


@pytest.mark.skipif(os.name == "nt", reason="Windows has no such marks")
def test_a_file_that_may_not_be_read_gets_a_sentence(tmp_path, monkeypatch):
    path = tmp_path / "reef.toml"
    path.write_text(TEXT)
    path.chmod(0)
    if os.access(path, os.R_OK):  # the superuser reads everything; then the refusal is played

        def refuse(self):
            raise PermissionError(13, "Permission denied")

        monkeypatch.setattr("pathlib.Path.read_bytes", refuse)
    with pytest.raises(FileProblem, match="found a file that you may not read"):
        load_design(path)


@pytest.mark.skipif(os.name == "nt", reason="links need rights there")
def test_a_link_to_itself_gets_a_sentence(tmp_path):
    (tmp_path / "reef.toml").symlink_to("reef.toml")
    with pytest.raises(FileProblem, match="found an obstacle"):
        load_design(tmp_path / "reef.toml")
