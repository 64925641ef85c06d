"""Presets: every built-in one is right, a mentor's own comes first, and a bad one never stops the rest."""

import shutil

import pytest

from model.design import Brief, Design, Stock, Supplies
from model.errors import FileProblem
from model.files import load_design
from model.preset_files import parse_preset, preset_text, read_preset
from model.presets import FOLDERS, built_in_folder, find_preset, load_preset, own_folder, presets
from tests.model.files_designs import sample

PAYLOADS = {"stock": Stock, "brief": Brief, "motors": Supplies, "starter": Design, "demo": Design}
HEADER = '[preset]\nkind = "{kind}"\ntitle = "our own"\norigin = "invented"\nsummary = "for a test"\n'
TOP = 'format = 1\nunits = "in"\n'
BRIEF = TOP + HEADER.format(kind="brief") + '[brief]\ntitle = "pond"\nsize_limit = [24, "15 3/4 in", 12]\n'
STOCK = (
    TOP
    + HEADER.format(kind="stock")
    + """[stock]
name = "box"
[[stock.pipes]]
id = "half"
name = "half-inch"
material = "PVC"
outside_diameter = 0.84
bore = 0.602
insertion = 0.5
[[stock.fittings]]
id = "cap"
name = "cap"
shape = "cap"
hub = 1.1
mass = 12
sockets = [{ to = "+x", laying_length = 0.25, depth = 0.7, pipe = "half" }]
"""
)
MOTORS = (
    TOP
    + HEADER.format(kind="motors")
    + """[[supplies.mounts]]
id = "ties"
name = "ties"
mass = 4
mass_in_water = 1
"""
)
STARTER = preset_text(sample("in"), "starter", "Reed", "invented", "One of everything.")
TEXTS = {"stock": STOCK, "brief": BRIEF, "motors": MOTORS, "starter": STARTER}


@pytest.fixture(autouse=True)
def own(tmp_path, monkeypatch):
    """The user's own folder, which is not there yet."""
    folder = tmp_path / "own"
    monkeypatch.setenv("POOLWRIGHT_PRESETS", str(folder))
    return folder


def put(folder, kind, name, text):
    path = folder / FOLDERS[kind] / f"{name}.toml"
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(text)
    return path


BUILT_IN = sorted(built_in_folder().rglob("*.toml"))


@pytest.mark.parametrize("path", BUILT_IN, ids=lambda path: f"{path.parent.name}/{path.stem}")
def test_each_built_in_preset_is_right_and_says_where_it_comes_from(path):
    kinds = {folder: kind for kind, folder in FOLDERS.items()}
    content = read_preset(path, kinds[path.parent.name])
    assert content.warnings == ()
    assert content.header.title
    assert content.header.origin
    assert content.header.summary
    assert isinstance(content.payload, PAYLOADS[content.header.kind])


def test_the_list_has_all_built_in_presets_without_a_problem():
    found = presets()
    assert [preset.problem for preset in found if preset.problem] == []
    assert sorted(preset.path for preset in found) == BUILT_IN
    assert not any(preset.own for preset in found)
    assert {preset.kind for preset in presets("stock")} == {"stock"}


def test_a_preset_holds_its_numbers_in_its_own_unit():
    brief = parse_preset(BRIEF, "pond.toml").payload
    assert brief.size_limit == pytest.approx((24 * 0.0254, 15.75 * 0.0254, 12 * 0.0254), abs=1e-12)
    stock = parse_preset(STOCK, "box.toml").payload
    assert stock.fittings[0].mass == 0.012
    assert stock.pipes[0].outside_diameter == 0.021336
    assert parse_preset(MOTORS, "ties.toml").payload.mounts[0].mass_in_water == 0.001


def test_a_starter_is_the_design_it_was_made_of_and_opens_as_a_design_too(own):
    path = put(own, "starter", "reed", STARTER)
    preset = find_preset("starter", "reed")
    assert load_preset(preset) == sample("in")
    assert preset.own
    assert (preset.title, preset.origin, preset.summary) == ("Reed", "invented", "One of everything.")
    loaded = load_design(path)
    assert loaded.warnings == ()
    assert loaded.design.arrangements == sample("in").arrangements


def test_an_own_preset_takes_the_place_of_a_built_in_one_of_its_kind_and_name(own):
    theirs = presets("stock")[0]
    put(own, "stock", theirs.name, STOCK)
    put(own, "brief", theirs.name, BRIEF)
    listed = presets("stock")
    assert len(listed) == len([path for path in BUILT_IN if path.parent.name == "stocks"])
    assert [preset.own for preset in listed if preset.name == theirs.name] == [True]
    assert listed[0].own
    assert load_preset(find_preset("stock", theirs.name)).name == "box"


def test_a_bad_own_preset_is_listed_with_its_problem_and_the_built_in_one_stays(own):
    theirs = presets("stock")[0]
    put(own, "stock", theirs.name, STOCK.replace("0.84", '"wide"'))
    put(own, "stock", "not-toml", "= =")
    (own / "stocks" / "folder.toml").mkdir()
    bad = {preset.name: preset.problem for preset in presets("stock") if preset.problem}
    assert set(bad) == {theirs.name, "not-toml", "folder"}
    assert "stock.pipes[1].outside_diameter ('half'): 'wide' cannot be read" in bad[theirs.name]
    assert "line 1" in bad["not-toml"]
    assert "a folder" in bad["folder"]
    assert not find_preset("stock", theirs.name).own
    with pytest.raises(FileProblem, match="line 1"):
        find_preset("stock", "not-toml")


def test_a_preset_that_is_not_there_is_answered_with_those_that_are(own):
    put(own, "stock", "box", STOCK)
    with pytest.raises(FileProblem, match=r"no preset of that name; expected one of box, "):
        find_preset("stock", "none")


MISTAKES = {
    "other kind": ("brief", "stock", 'kind = "brief"', 'kind = "brief"', "'brief'; expected 'stock', as its"),
    "an unknown kind": ("stock", "stock", '"stock"', '"pipe"', "preset.kind: found 'pipe'; expected one of"),
    "no header": ("stock", "stock", "[preset]", "[present]", "found 'present', but no key 'preset'"),
    "no origin": ("stock", "stock", 'origin = "invented"\n', "", "preset: found no key 'origin'"),
    "an empty origin": ("stock", "stock", '"invented"', '""', "preset.origin: found ''"),
    "no payload": ("brief", "brief", "[brief]", "[rules]", "found no key 'brief'"),
    "a missing field": ("stock", "stock", "bore = 0.602\n", "", "pipes[1] ('half'): found no key 'bore'"),
    "a pipe that is not there": ("stock", "stock", 'pipe = "half"', 'pipe = "full"', "'full', which is not"),
    "no unit": ("stock", "stock", 'units = "in"\n', "", "units: found no key 'units'"),
    "no format": ("stock", "stock", "format = 1\n", "", "format: found no key 'format'"),
    "a newer format": ("stock", "stock", "format = 1\n", "format = 3\n", "format 3, which a newer"),
    "mount twice": ("motors", "motors", "[[supplies.mounts]]", "MOUNT[[supplies.mounts]]", "'ties' stands 2"),
    "a broken design": ("starter", "starter", 'start = "j12"', 'start = "j99"', "'j99', which is not there"),
}  # fmt: skip


@pytest.mark.parametrize(("source", "kind", "old", "new", "sentence"), MISTAKES.values(), ids=MISTAKES)
def test_a_mistake_in_a_preset_gets_a_sentence(source, kind, old, new, sentence):
    mount = MOTORS[MOTORS.index("[[") :]
    assert old in TEXTS[source]
    text = TEXTS[source].replace(old, new.replace("MOUNT", mount), 1)
    with pytest.raises(FileProblem) as caught:
        parse_preset(text, "own.toml", kind)
    assert sentence in str(caught.value)
    assert str(caught.value).startswith("own.toml: ")
    assert "\n" not in str(caught.value)


@pytest.mark.parametrize("kind", TEXTS)
def test_an_unknown_key_anywhere_is_a_warning(kind):
    assert parse_preset(TEXTS[kind], "own.toml").warnings == ()
    text = TEXTS[kind].replace('title = "our own"', 'title = "our own"\nsumary = "x"')
    text = text.replace('title = "Reed"', 'title = "Reed"\nsumary = "x"')
    (warning,) = parse_preset(text, "own.toml").warnings
    assert "preset.sumary" in warning
    assert "did you mean 'summary'?" in warning


def test_the_own_folder_is_the_systems_own_unless_it_is_named(monkeypatch, own):
    assert own_folder() == own
    monkeypatch.delenv("POOLWRIGHT_PRESETS")
    assert own_folder().parts[-2:] == ("poolwright", "presets")


def test_presets_are_found_beside_the_package_wherever_it_lies(tmp_path, monkeypatch):
    """In the wheel the three folders lie inside ``poolwright/``."""
    house = tmp_path / "site-packages" / "poolwright"
    shutil.copytree(built_in_folder(), house / "presets")
    (house / "model").mkdir()
    monkeypatch.setattr("model.presets.__file__", str(house / "model" / "presets.py"))
    assert built_in_folder() == house / "presets"
    assert len(presets()) == len(BUILT_IN)
