"""Questions that come in front of the session."""
