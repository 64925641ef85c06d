"""The walks have folders of their own, as the tests of the session have."""

from tests.tui.conftest import folders

__all__ = ["folders"]
