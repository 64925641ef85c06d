"""What the thrusters can do."""
