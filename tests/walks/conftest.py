"""The walks have folders of their own and an app that is waited for, as the tests of the session have."""

from tests.tui.conftest import folders, waits

__all__ = ["folders", "waits"]
