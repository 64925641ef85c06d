"""The model of a pipe-frame underwater vehicle: no screen, no clock, no network."""
