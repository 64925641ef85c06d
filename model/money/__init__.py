"""What the vehicle costs, against the spending limit."""
