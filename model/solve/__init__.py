"""Work that is done for the team: proposals that are edits to look at, take and undo."""
