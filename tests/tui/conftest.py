"""Each test of the session has folders of its own, a clean environment and an app that it waits for."""

import pytest

from tests.tui.fakes import box_design, settled


@pytest.fixture(autouse=True)
def waits(monkeypatch):
    """After a key or a pause the app has done all that followed from it, however busy the machine is.

    Textual takes a process that used no processor time for idle; on a busy machine it may just have been kept
    waiting.
    """
    for module in ("app", "pilot"):
        monkeypatch.setattr(f"textual.{module}.wait_for_idle", settled)


@pytest.fixture(autouse=True)
def folders(tmp_path, monkeypatch):
    """The program's own folder, the team's and the mentor's, all empty."""
    for variable, name in (("STATE", "state"), ("DESIGNS", "designs"), ("PRESETS", "presets")):
        monkeypatch.setenv(f"POOLWRIGHT_{variable}", str(tmp_path / name))
    monkeypatch.delenv("POOLWRIGHT_ASCII", raising=False)
    monkeypatch.delenv("NO_COLOR", raising=False)
    return tmp_path


@pytest.fixture
def box_file(tmp_path):
    """A saved design with nothing but a frame in it, so that the coach has much to say."""
    from model.files import save_design

    path = tmp_path / "box.toml"
    save_design(box_design(), path, None)
    return path
