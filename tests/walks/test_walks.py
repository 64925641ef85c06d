"""Every walk in this folder, on a small screen and on a large one."""

from pathlib import Path

import pytest

from tests.walks.runner import Walk

HERE = Path(__file__).parent
WALKS = sorted(HERE.glob("*.walk"))
SIZES = [(80, 24), (120, 40)]


def test_there_are_walks():
    assert len(WALKS) >= 3


@pytest.mark.parametrize("size", SIZES, ids=lambda size: "x".join(map(str, size)))
@pytest.mark.parametrize("walk", WALKS, ids=lambda walk: walk.stem)
async def test_walk(walk, size):
    await Walk(size).run(walk)


async def test_a_walk_that_does_not_see_what_it_should_says_where(tmp_path, monkeypatch):
    right, wrong = tmp_path / "right.walk", tmp_path / "wrong.walk"
    right.write_text('start demo\nsee "Next:"\n')
    wrong.write_text('# nothing\n\nsee "no such text"\n')
    walk = Walk((80, 24))
    async with walk.stack:
        await walk.follow(right)
        monkeypatch.setattr("tests.tui.fakes.PATIENCE", 0.2)
        with pytest.raises(AssertionError, match=r"wrong.walk line 3: see .no such text"):
            await walk.follow(wrong)
