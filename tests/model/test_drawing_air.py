"""Pockets of air in the drawing: where they are, and only if they matter."""

import pytest

from model.drawing.views import view_scene
from model.preset_files import read_preset
from model.presets import built_in_folder
from model.survey import survey

DEMO = built_in_folder() / "demo" / "newt.toml"


def marks(design, view):
    return [mark for mark in view_scene(survey(design), view).marks if mark.role == "air"]


@pytest.mark.parametrize(("view", "axes"), [("front", (1, 2)), ("top", (1, 0)), ("side", (0, 2))])
def test_a_caught_pocket_is_marked_where_it_is(view, axes):
    design = read_preset(DEMO).payload.arranged(openings=())
    found = survey(design)
    large = [p for p in found.air.level.caught.pockets if p.volume >= 5e-6]
    shown = marks(design, view)
    assert large
    assert len(shown) == len(large)
    for mark, pocket in zip(shown, large, strict=True):
        places = sorted(abs(step) for step in mark.at)
        assert places == pytest.approx(sorted(abs(pocket.at[axis]) * 1000 for axis in axes), abs=1e-6)


def test_a_frame_that_lets_its_air_out_shows_none():
    assert marks(read_preset(DEMO).payload, "front") == []
