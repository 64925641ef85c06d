"""Colours: surfaces from the grey ramp of 256-colour terminals, so that they keep apart there too."""

from __future__ import annotations

from textual.theme import Theme

DARK = Theme(
    name="poolwright-dark",
    primary="#5fafd7",
    secondary="#87afaf",
    accent="#ffd75f",
    success="#87d787",
    warning="#ffaf5f",
    error="#ff8787",
    foreground="#eeeeee",
    background="#121212",
    surface="#1c1c1c",
    panel="#303030",
    dark=True,
)
LIGHT = Theme(
    name="poolwright-light",
    primary="#005f87",
    secondary="#5f8787",
    accent="#875f00",
    success="#005f00",
    warning="#875f00",
    error="#af0000",
    foreground="#121212",
    background="#ffffff",
    surface="#eeeeee",
    panel="#dadada",
    dark=False,
)
