"""Scenes to rows of text: pure functions of a scene and a size in cells, without a widget."""
