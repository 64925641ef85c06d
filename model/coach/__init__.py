"""What the coach says about a design, and what would put it right."""
