"""Numbers that say where they come from."""

import re

import pytest

from model.design import Design, Float
from model.explain import quantities
from model.preset_files import read_preset
from model.presets import built_in_folder
from model.survey import survey
from tests import worked

DESIGNS = sorted([*built_in_folder().glob("starters/*.toml"), *built_in_folder().glob("demo/*.toml")])


def named(found):
    return {quantity.name: quantity for quantity in quantities(found)}


@pytest.mark.parametrize("path", DESIGNS, ids=[path.stem for path in DESIGNS])
def test_every_headline_number_has_a_formula_and_a_source(path):
    design = read_preset(path).payload
    assert isinstance(design, Design)
    found = named(survey(design))
    wanted = {
        "overall length",
        "overall width",
        "overall height",
        "weight",
        "spare buoyancy",
        "trim at rest",
        "spent",
    }
    assert wanted <= found.keys()
    for quantity in found.values():
        assert quantity.formula
        assert quantity.source
        assert not re.search(r"(?<![\d/])-\d", " ".join(text for _, text in quantity.inputs)), quantity


def test_a_cut_is_explained_by_numbers_that_add_up():
    found = survey(worked.design(worked.box()))
    (cut,) = [q for q in quantities(found) if q.name.startswith("cut A")]
    values = {name: float(text.split()[0]) for name, text in cut.inputs}
    total = (
        values["centre to centre"]
        - values["centre to face at its start"]
        - values["centre to face at its end"]
        + values["push-in depth at its start"]
        + values["push-in depth at its end"]
    )
    assert float(cut.text.split()[0]) == pytest.approx(total, abs=0.25)


def test_weights_in_the_explanation_add_up():
    foam = Float(id="f", name="f", foam="noodle", bar="b1", length=0.1)
    found = survey(worked.design(worked.box(floats=(foam,))))
    weight = named(found)["weight"]
    parts = sum(float(text.split()[0]) for _, text in weight.inputs)
    assert parts == pytest.approx(found.balance.mass * 1000, abs=2)


def test_nothing_to_explain_without_a_frame():
    bare = worked.design(worked.arrangement((0.0,), (0.0,), (0.0,), []))
    assert "overall length" not in named(survey(bare))
