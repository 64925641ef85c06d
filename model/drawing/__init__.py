"""Drawings of a surveyed design: pure scenes in millimetres, which screens and pages then render."""
