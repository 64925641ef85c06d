"""Design files: what is written comes back, and a person can read it."""

import tomllib

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from model.design import FORMAT, Design, Plane
from model.design.record import Record
from model.files import design_text, load_design, parse_design
from model.units import snap
from tests.model.files_designs import RUN, STOCK, UNITS, designs, sample

UNIT_METRES = {"mm": 0.001, "in": 0.0254}


@given(designs())
@settings(deadline=None)
def test_any_design_comes_back_equal_and_is_written_the_same_again(design):
    text = design_text(design)
    loaded = parse_design(text, "reef.toml")
    assert loaded.design == design
    assert loaded.warnings == ()
    assert design_text(loaded.design) == text


@given(st.floats(-1000, 1000), UNITS)
@settings(deadline=None)
def test_any_length_comes_back_to_the_nanometre(metres, units):
    plane = Plane(id="s1", name="stern", at=metres)
    run = RUN.but(stations=(plane, RUN.stations[1]))
    design = sample(units).but(arrangements=(run,))
    again = parse_design(design_text(design), "reef.toml").design.arrangement.stations[0].at
    assert again == plane.at == snap(metres)


@pytest.mark.parametrize("sixteenths", [1, 54, 216, 1001])
def test_inches_stand_in_the_file_as_they_were_typed(sixteenths):
    inches = sixteenths / 16
    plane = Plane(id="s1", name="stern", at=inches * UNIT_METRES["in"])
    design = sample("in").but(arrangements=(RUN.but(stations=(plane, RUN.stations[1])),))
    raw = tomllib.loads(design_text(design))
    assert raw["arrangements"][0]["stations"][0]["at"] == inches


@pytest.mark.parametrize("units", ["mm", "in"])
def test_a_file_keeps_its_unit_and_says_it_in_its_first_line(units):
    text = design_text(sample(units))
    assert text.startswith("# Lengths in")
    assert f"({units})" in text.splitlines()[0]
    assert tomllib.loads(text)["units"] == units
    assert parse_design(text, "reef.toml").design.units == units


def test_numbers_stand_in_the_unit_of_the_file_and_weights_in_grams():
    raw = tomllib.loads(design_text(sample("mm")))
    run = raw["arrangements"][0]
    assert run["stations"][1]["at"] == 85.725  # 3 3/8 in is 3.375 x 25.4 mm
    assert run["attachments"][0]["size"] == [50, 10, 30]
    assert run["ballasts"][0]["mass"] == 60
    assert tomllib.loads(design_text(sample("in")))["stock"]["pipes"][0]["outside_diameter"] == 0.84


def test_format_title_and_units_always_stand_at_the_top():
    plain = Design(title="bare", stock=STOCK, arrangements=(RUN.but(thrusters=(), floats=()),))
    lines = [line for line in design_text(plain).splitlines() if not line.startswith("#")]
    assert lines[:3] == [f"format = {FORMAT}", 'title = "bare"', 'units = "mm"']


def test_defaults_of_decisions_are_left_out_and_numbers_of_bought_things_are_not():
    raw = tomllib.loads(design_text(sample()))
    run = raw["arrangements"][0]
    assert "at" not in run["floats"][0]
    assert "bores" not in run
    assert "water" not in raw["brief"]
    assert raw["stock"]["pipes"][0]["density"] == 1400
    assert raw["stock"]["fittings"][0]["price"] == 0
    assert raw["supplies"]["motors"][0]["volts"] == 12
    assert "counts" not in raw["stock"]["pipes"][0]


def test_ballast_that_is_threaded_is_told_from_ballast_that_is_strapped_below():
    washers, rod = parse_design(design_text(sample()), "reef.toml").design.arrangement.ballasts
    assert washers.beside is None
    assert rod.beside == "-z"


def test_lists_of_bars_and_planes_take_a_line_each():
    lines = design_text(sample()).splitlines()
    assert '    { id = "b2", name = "starboard rail", start = "j11", end = "j21" },' in lines
    assert '    { id = "s2", name = "bow", at = 85.725 },' in lines
    assert all(len(line) <= 120 for line in lines)


@pytest.mark.parametrize(
    ("typed", "metres"),
    [
        ('"3 3/8 in"', 0.085725),
        ("'3-3/8\"'", 0.085725),
        ('"86 mm"', 0.086),
        ('"8,6 cm"', 0.086),
        ("86", 0.086),
    ],
)
def test_a_length_may_be_typed_with_its_unit(typed, metres):
    text = design_text(sample()).replace("at = 85.725", f"at = {typed}")
    assert parse_design(text, "reef.toml").design.arrangement.stations[1].at == metres


@pytest.mark.parametrize(
    ("typed", "kilograms"), [('"0,25 kg"', 0.25), ("250", 0.25), ('"2 oz"', 2 * 0.45359237 / 16)]
)
def test_a_weight_may_be_typed_with_its_unit(typed, kilograms):
    text = design_text(sample()).replace("mass = 60, beside", f"mass = {typed}, beside")
    mass = parse_design(text, "reef.toml").design.arrangement.ballasts[0].mass
    assert mass == pytest.approx(kilograms, abs=1e-9)


UNKNOWN = {
    "at the top": ('title = "Reed frog"\n', 'title = "Reed frog"\ntitel = "x"\n', "titel", "title"),
    "in the brief": ("[brief]\n", "[brief]\ncurency = 'shell'\n", "brief.curency", "currency"),
    "in a plane": ('name = "bow", ', 'name = "bow", nmae = 3.5, ', "stations[2].nmae", "name"),
    "a whole table": (
        "[brief.thresholds]",
        "[brief.watter]\na = [1, {b = 2}]\n[brief.thresholds]",
        "watter",
        "water",
    ),
    "in a fitting": (
        'shape = "tee"\n',
        'shape = "tee"\ncolor = 2020-01-01\n',
        "fittings[2].color",
        "id, name",
    ),
    "a mark that would be a default": (
        "[arrangements.tether]\n",
        "[arrangements.tether]\ncuonts = true\n",
        "cuonts",
        "",
    ),
}


@pytest.mark.parametrize(("old", "new", "place", "hint"), UNKNOWN.values(), ids=UNKNOWN)
def test_a_key_of_a_newer_version_is_told_and_survives_a_save(old, new, place, hint):
    text = design_text(sample()).replace(old, new, 1)
    loaded = parse_design(text, "reef.toml")
    assert len(loaded.warnings) == 1
    assert loaded.warnings[0].startswith("reef.toml: ")
    assert place in loaded.warnings[0]
    assert hint in loaded.warnings[0]
    assert loaded.design != sample()
    again = design_text(loaded.design)
    key = place.split(".")[-1].strip("[]")
    assert key in again
    assert parse_design(again, "reef.toml").design == loaded.design
    assert tomllib.loads(again) == tomllib.loads(text)


def test_a_hundred_unknown_keys_do_not_fill_the_screen():
    keys = "".join(f"k{number} = 1\n" for number in range(100))
    text = design_text(sample()).replace("[brief]", f"{keys}[brief]", 1)
    loaded = parse_design(text, "reef.toml")
    assert len(loaded.warnings) < 30
    assert "80 more" in loaded.warnings[-1]


def test_a_design_loaded_from_a_starter_keeps_its_label_without_a_warning():
    text = design_text(sample()).replace("[brief]", '[preset]\nkind = "starter"\n\n[brief]', 1)
    loaded = parse_design(text, "reef.toml")
    assert loaded.warnings == ()
    assert 'kind = "starter"' in design_text(loaded.design)


def test_a_file_with_a_mark_at_its_start_and_line_ends_of_windows_opens(tmp_path):
    path = tmp_path / "reef.toml"
    path.write_bytes(b"\xef\xbb\xbf" + design_text(sample()).replace("\n", "\r\n").encode())
    assert load_design(path).design == sample()


def records(kind=Record):
    """Every kind of record in which nothing has to be given."""
    for each in kind.__subclasses__():
        if not any(field.is_required() for field in each.model_fields.values()):
            yield each
        yield from records(each)


@pytest.mark.parametrize("kind", sorted(set(records()), key=lambda kind: kind.__name__))
def test_a_record_in_which_nothing_is_decided_is_allowed_though_it_is_made_without_a_check(kind):
    bare = kind.model_construct()
    assert kind.model_validate(bare.model_dump()) == bare == kind()
