"""The panels that are always there: steps, drawing, numbers, findings, the next thing to do, the keys."""
