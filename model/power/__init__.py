"""Volts from the battery to the motors: wires, motor curves, the circuit solved as a whole, its diagram."""
