"""The air in the pipes: what is caught, what lets it out, and how long that takes."""
