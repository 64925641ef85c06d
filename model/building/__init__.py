"""The build: the order of work for one design, its cautions, and what was really built."""
