"""Edits that may clear a finding, the best first.  Each is proved before it is offered."""
